//! Commands and options. Texts are complete sentences; each command ends with an example.

use std::net::SocketAddr;
use std::path::PathBuf;

use chrono::NaiveDate;
use clap::Args;
use clap::Parser;
use clap::Subcommand;
use domain::report::period::Period;

use crate::i18n::Lang;

/// Works out which infants need a follow-up, why, and by when.
#[derive(Debug, Parser)]
#[command(name = "spoonround", version, verbatim_doc_comment, after_help = "Example:\n  spoonround serve --listen 127.0.0.1:8080")]
pub struct Cli {
    /// Reads settings from this TOML file; without it, spoonround.toml is read if it is here. Variables named SPOONROUND_… win over the file.
    #[arg(verbatim_doc_comment, long, global = true, value_name = "FILE")]
    pub config: Option<PathBuf>,
    /// What to do.
    #[command(subcommand)]
    pub command: Command,
}

/// What to do.
#[derive(Debug, Subcommand)]
pub enum Command {
    /// Serves the pages and keeps the follow-up lists up to date each day.
    #[command(verbatim_doc_comment, after_help = "Example:\n  SPOONROUND_DATABASE=data/kesara.db spoonround serve --listen 127.0.0.1:8080")]
    Serve {
        /// Serves on this address and port instead of the configured one.
        #[arg(verbatim_doc_comment, long, value_name = "ADDRESS:PORT")]
        listen: Option<SocketAddr>,
        /// Prints the effective configuration without secrets and stops.
        #[arg(verbatim_doc_comment, long)]
        check: bool,
    },
    /// Brings the database up to this version's schema; serving does so by itself.
    #[command(verbatim_doc_comment, after_help = "Example:\n  spoonround migrate")]
    Migrate,
    /// Adds somebody who signs in, and prints a one-time code for the first sign-in (good for 72 hours).
    #[command(
        verbatim_doc_comment,
        after_help = "Example:\n  spoonround add-user --name \"Teveli Ndora\" --sign-in teveli --role administrator"
    )]
    AddUser(NewUser),
    /// Computes z-scores, flags and reasons for measurements read as CSV.
    #[command(
        verbatim_doc_comment,
        after_help = "Reads the columns id, sex (F or M), age_days, weight_kg, length_cm, measured (L lying, H standing), muac_mm, oedema (0 or 1)\nand, if there is one, head_mm. Writes them back with waz, laz, wlz, bmiz, mauz, flags, hcz and reasons.\n\nExample:\n  spoonround score < measurements.csv > scores.csv"
    )]
    Score {
        /// Reads this file instead of standard input.
        #[arg(verbatim_doc_comment, value_name = "FILE")]
        input: Option<PathBuf>,
    },
    /// Works with feeding protocols.
    #[command(verbatim_doc_comment, after_help = "Example:\n  spoonround protocol check default tests/cases/worked.toml")]
    Protocol {
        /// What to do with it.
        #[command(subcommand)]
        command: ProtocolCommand,
    },
    /// Prints the follow-up list as CSV, as it stands today or stood on a past day.
    #[command(verbatim_doc_comment, after_help = "Example:\n  spoonround due --as-of 2026-11-02 > due.csv")]
    Due {
        /// Shows the list of this day; visits after it are not looked at.
        #[arg(verbatim_doc_comment, long, value_name = "YYYY-MM-DD", value_parser = parse_day)]
        as_of: Option<NaiveDate>,
        /// Shows the children of this area only, named by its code.
        #[arg(verbatim_doc_comment, long, value_name = "CODE")]
        area: Option<String>,
    },
    /// Writes the reports of a month, quarter or year into a folder: CSV files with their descriptions, definitions and a page of totals.
    #[command(
        verbatim_doc_comment,
        after_help = "Example:\n  spoonround export 2026-10 --into export/2026-10\n  spoonround export 2026-Q3 --into export --zip --language fr"
    )]
    Export {
        /// The month, quarter or year, such as 2026-10, 2026-Q3 or 2026.
        #[arg(verbatim_doc_comment, value_name = "PERIOD", value_parser = parse_period)]
        period: Period,
        /// Writes into this folder, which is made if it is not there.
        #[arg(verbatim_doc_comment, long, value_name = "FOLDER")]
        into: PathBuf,
        /// Writes one archive instead of the files.
        #[arg(verbatim_doc_comment, long)]
        zip: bool,
        /// Writes this revision instead of the latest; 0 is the first release.
        #[arg(verbatim_doc_comment, long, value_name = "NUMBER")]
        revision: Option<u32>,
        /// Writes what people read in this language: en or fr.
        #[arg(verbatim_doc_comment, long, value_name = "LANGUAGE", default_value = "en", value_parser = parse_language)]
        language: Lang,
    },
    /// Brings the lists up to date for children for whom something has changed by the passing of days, and releases reports whose day has come. Serving does so by itself.
    #[command(verbatim_doc_comment, after_help = "Example:\n  spoonround tick")]
    Tick {
        /// Takes this day for today; in a database marked as a demo only.
        #[arg(verbatim_doc_comment, long, value_name = "YYYY-MM-DD", value_parser = parse_day, hide = true)]
        as_of: Option<NaiveDate>,
    },
    /// Works everything out anew from the visits and reports where what is stored differs; there must be no difference.
    #[command(
        verbatim_doc_comment,
        after_help = "Bring the lists up to date first (serving and tick do). Exit status 1 when something differs.\n\nExample:\n  spoonround recheck"
    )]
    Recheck {
        /// Stores anew what differs, after reporting it.
        #[arg(verbatim_doc_comment, long)]
        repair: bool,
        /// Takes this day for today; in a database marked as a demo only.
        #[arg(verbatim_doc_comment, long, value_name = "YYYY-MM-DD", value_parser = parse_day, hide = true)]
        as_of: Option<NaiveDate>,
    },
}

/// What to do with a protocol.
#[derive(Debug, Subcommand)]
pub enum ProtocolCommand {
    /// Checks a protocol against worked cases and closes with how many passed and failed.
    #[command(verbatim_doc_comment, after_help = "Example:\n  spoonround protocol check default tests/cases/worked.toml")]
    Check {
        /// The protocol file, or the word default for the built-in one.
        #[arg(verbatim_doc_comment, value_name = "PROTOCOL.toml|default")]
        protocol: String,
        /// Files of worked cases.
        #[arg(verbatim_doc_comment, value_name = "CASES", required = true)]
        cases: Vec<PathBuf>,
    },
    /// Prints a protocol as a document that a clinician can review and sign, as Markdown.
    #[command(verbatim_doc_comment, after_help = "Example:\n  spoonround protocol print active --language fr > protocol.md")]
    Print {
        /// The protocol file, the word default for the built-in one, or the word active for the one in force today.
        #[arg(verbatim_doc_comment, value_name = "PROTOCOL.toml|default|active", default_value = "active")]
        protocol: String,
        /// Writes in this language: en or fr.
        #[arg(verbatim_doc_comment, long, value_name = "LANGUAGE", default_value = "en", value_parser = parse_language)]
        language: Lang,
    },
    /// Shows how the follow-up list of a day would change under a new protocol. It keeps and changes nothing.
    #[command(verbatim_doc_comment, after_help = "Example:\n  spoonround protocol rehearse district.toml --as-of 2026-11-25")]
    Rehearse {
        /// The new protocol file, or the word default for the built-in one.
        #[arg(verbatim_doc_comment, value_name = "NEW.toml|default")]
        protocol: String,
        /// Compares the list of this day; visits after it are not looked at. Without it, today's.
        #[arg(verbatim_doc_comment, long, value_name = "YYYY-MM-DD", value_parser = parse_day)]
        as_of: Option<NaiveDate>,
        /// Lists the children behind the numbers too, by their codes.
        #[arg(verbatim_doc_comment, long)]
        children: bool,
    },
    /// Adopts a protocol from a day on and keeps who approved it and why. Visits before that day keep the version that judged them.
    #[command(
        verbatim_doc_comment,
        // Lines are not broken, so that the example can be pasted.
        term_width = 0,
        after_help = "Example:\n  spoonround protocol adopt district.toml --approved-by \"Dr Oru Saneth\" --from 2026-12-01 --reason \"New limit for the arm\""
    )]
    Adopt {
        /// The protocol file, or the word default for the built-in one.
        #[arg(verbatim_doc_comment, value_name = "PROTOCOL.toml|default")]
        protocol: String,
        /// Names the clinician or responsible person who approved it.
        #[arg(verbatim_doc_comment, long, value_name = "NAME")]
        approved_by: String,
        /// Sets the first day on which visits are judged by it; today or later.
        #[arg(verbatim_doc_comment, long, value_name = "YYYY-MM-DD", value_parser = parse_day)]
        from: NaiveDate,
        /// Says what changes and who asked for it.
        #[arg(verbatim_doc_comment, long, value_name = "TEXT", default_value = "", hide_default_value = true)]
        reason: String,
        /// Allows a day before today: visits since then are judged anew.
        #[arg(verbatim_doc_comment, long)]
        backdated: bool,
    },
}

/// Somebody to add.
#[derive(Debug, Args)]
pub struct NewUser {
    /// The full name, as colleagues know it.
    #[arg(verbatim_doc_comment, long, value_name = "NAME")]
    pub name: String,
    /// The name to sign in with: small letters, digits, point and hyphen.
    #[arg(verbatim_doc_comment, long = "sign-in", value_name = "NAME")]
    pub sign_in: String,
    /// What they are: worker, supervisor, manager or administrator.
    #[arg(verbatim_doc_comment, long, default_value = "administrator", value_parser = parse_role)]
    pub role: domain::role::Role,
}

fn parse_day(text: &str) -> Result<NaiveDate, String> {
    text.parse().map_err(|_| format!("there is no day {text:?}; write year, month and day, such as 2026-11-25"))
}

fn parse_period(text: &str) -> Result<Period, String> {
    Period::parse(text).ok_or_else(|| format!("{text:?} is no month, quarter or year; write it like 2026-10, 2026-Q3 or 2026"))
}

fn parse_language(text: &str) -> Result<Lang, String> {
    Lang::OFFERED
        .iter()
        .copied()
        .find(|lang| lang.code() == text)
        .ok_or_else(|| format!("{text:?} is not a language of the program; use en or fr"))
}

fn parse_role(text: &str) -> Result<domain::role::Role, String> {
    domain::role::Role::from_code(text).map_err(|_| format!("{text:?} is no role; use worker, supervisor, manager or administrator"))
}

#[cfg(test)]
mod tests {
    use clap::CommandFactory;

    use super::*;

    #[test]
    fn the_commands_are_well_formed() {
        Cli::command().debug_assert();
    }

    /// The help of every command, by its name.
    fn helps(command: &mut clap::Command, into: &mut Vec<(String, Vec<String>, String)>) {
        let after = command.get_after_help().map(ToString::to_string).unwrap_or_default();
        let examples = after.lines().filter(|line| line.starts_with("  ")).map(str::to_owned).collect();
        into.push((command.get_name().to_owned(), examples, command.render_long_help().to_string()));
        command.get_subcommands_mut().for_each(|sub| helps(sub, into));
    }

    #[test]
    fn every_example_can_be_pasted_and_no_empty_default_is_told() {
        let mut command = Cli::command();
        command.build();
        let mut all = Vec::new();
        helps(&mut command, &mut all);
        assert!(all.iter().any(|(name, ..)| name == "adopt"), "all commands are walked through");
        for (name, examples, help) in all {
            for example in examples {
                assert!(help.lines().any(|line| line == example), "{name}: {example:?} is broken into lines:\n{help}");
            }
            assert!(!help.contains("[default: ]") && !help.contains("[default: \"\"]"), "{name}:\n{help}");
        }
    }

    #[test]
    fn a_day_that_there_is_not_is_said_to_be_none() {
        assert_eq!(parse_day("2028-02-29").map(|day| day.to_string()).as_deref(), Ok("2028-02-29"));
        for text in ["2026-02-31", "2026-13-01", "yesterday", "31.1.2026", ""] {
            let said = parse_day(text).expect_err("no day");
            assert!(said.contains("there is no day") && said.contains("such as 2026-11-25"), "{said}");
        }
    }

    #[test]
    fn every_help_text_is_a_sentence() {
        fn walk(command: &clap::Command) {
            let about = command.get_about().map(ToString::to_string).unwrap_or_default();
            assert!(command.get_name() == "help" || about.ends_with('.'), "{}: {about:?}", command.get_name());
            for arg in command.get_arguments().filter(|a| !matches!(a.get_id().as_str(), "help" | "version")) {
                let help = arg.get_help().map(ToString::to_string).unwrap_or_default();
                assert!(help.ends_with('.') || help.contains(". "), "{} {}: {help:?}", command.get_name(), arg.get_id());
            }
            command.get_subcommands().for_each(walk);
        }
        walk(&Cli::command());
    }
}
