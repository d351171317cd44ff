//! Runs a command and says what went wrong in a sentence. Exit status: 0 done, 1 something checked did not hold, 2 could not run.

use std::path::Path;
use std::process::ExitCode;

use crate::cli::args::Cli;
use crate::cli::args::Command;
use crate::cli::args::ProtocolCommand;
use crate::cli::export;
use crate::cli::office;
use crate::cli::protocol_check;
use crate::cli::protocol_office;
use crate::cli::recheck;
use crate::cli::score;
use crate::cli::serve;
use crate::config::Config;
use crate::config::LogFormat;

/// Something that stops a command, as a sentence for the person who typed it.
#[derive(Debug)]
pub struct Stop(pub String);

impl<E: std::error::Error> From<E> for Stop {
    fn from(error: E) -> Self {
        let mut text = error.to_string();
        let mut inner = error.source();
        while let Some(error) = inner {
            let reason = error.to_string();
            // Some errors tell their reason themselves.
            if !text.contains(&reason) {
                text.push_str(": ");
                text.push_str(&reason);
            }
            inner = error.source();
        }
        Self(text)
    }
}

/// Runs the command.
#[must_use]
pub fn run(cli: Cli) -> ExitCode {
    match dispatch(cli) {
        Ok(code) => code,
        Err(Stop(text)) => {
            eprintln!("spoonround: {text}");
            ExitCode::from(2)
        }
    }
}

fn dispatch(cli: Cli) -> Result<ExitCode, Stop> {
    let config = || Config::read(cli.config.as_deref());
    match cli.command {
        Command::Score { input } => scored(input.as_deref()),
        Command::Protocol { command: ProtocolCommand::Check { protocol, cases } } => {
            let summary = protocol_check::run(&protocol, &cases, &mut std::io::stdout().lock())?;
            Ok(if summary.failed == 0 { ExitCode::SUCCESS } else { ExitCode::FAILURE })
        }
        Command::Protocol { command: ProtocolCommand::Print { protocol, language } } => {
            block_on(protocol_office::print(cli.config.as_deref(), &protocol, language))
        }
        Command::Protocol { command: ProtocolCommand::Rehearse { protocol, as_of, children } } => {
            block_on(protocol_office::rehearse(&config()?, &protocol, as_of, children))
        }
        Command::Protocol { command: ProtocolCommand::Adopt { protocol, approved_by, from, reason, backdated } } => {
            let wish = protocol_office::Wish { approved_by: &approved_by, from, reason: &reason, backdated };
            block_on(protocol_office::adopt(&config()?, &protocol, &wish))
        }
        Command::Export { period, into, zip, revision, language } => {
            block_on(export::run(&config()?, export::Wish { period, revision, into: &into, zip, language }))
        }
        Command::Serve { listen, check } => {
            let mut config = config()?;
            if let Some(listen) = listen {
                config.listen = listen;
            }
            if check {
                print!("{}", config.shown());
                return Ok(ExitCode::SUCCESS);
            }
            start_log(&config);
            block_on(serve::serve(&config))
        }
        Command::Migrate => block_on(office::migrate(&config()?)),
        Command::AddUser(new) => block_on(office::add_user(&config()?, &new)),
        Command::Due { as_of, area } => block_on(office::due(&config()?, as_of, area.as_deref())),
        Command::Tick { as_of } => block_on(office::tick(&config()?, as_of)),
        Command::Recheck { repair, as_of } => block_on(recheck::run(&config()?, repair, as_of)),
    }
}

fn block_on(work: impl Future<Output = Result<ExitCode, Stop>>) -> Result<ExitCode, Stop> {
    crate::web::server::block_on(work)
}

fn scored(input: Option<&Path>) -> Result<ExitCode, Stop> {
    let output = std::io::BufWriter::new(std::io::stdout().lock());
    let summary = match input {
        Some(path) => {
            let file = std::fs::File::open(path)
                .map_err(|e| Stop(format!("{}: {e}; name a CSV file, or leave the name out to read standard input", path.display())))?;
            score::run(file, output)?
        }
        None => score::run(std::io::stdin().lock(), output)?,
    };
    summary.report(std::io::stderr().lock())?;
    Ok(if summary.all_scored() { ExitCode::SUCCESS } else { ExitCode::FAILURE })
}

/// Logs to standard error, so that standard output stays clean for CSV.
pub fn start_log(config: &Config) {
    let filter = tracing_subscriber::EnvFilter::try_new(&config.log).unwrap_or_else(|_| tracing_subscriber::EnvFilter::new("info"));
    let log = tracing_subscriber::fmt().with_env_filter(filter).with_writer(std::io::stderr);
    // A second start in one process (tests) keeps the first log.
    let _ = match config.log_format {
        LogFormat::Text => log.with_ansi(false).try_init(),
        LogFormat::Json => log.json().try_init(),
    };
}
