//! The acts on protocols beside checking them: printing one as a document, rehearsing one, adopting one.

use std::path::Path;
use std::process::ExitCode;

use chrono::NaiveDate;
use domain::protocol::Protocol;

use crate::cli::opened::Opened;
use crate::cli::opened::look;
use crate::cli::opened::open;
use crate::cli::progress::Progress;
use crate::cli::protocol_check::DEFAULT;
use crate::cli::rehearsed;
use crate::cli::run::Stop;
use crate::config::Config;
use crate::files::protocol_toml::DEFAULT_NAME;
use crate::files::protocol_toml::DEFAULT_TEXT;
use crate::files::protocol_toml::parse_protocol;
use crate::i18n::Lang;
use crate::i18n::words;
use crate::service::adopt_protocol;
use crate::service::adopt_protocol::Adoption;
use crate::service::protocols;
use crate::service::rehearse as rehearsing;
use crate::service::tick;
use crate::store::Scope;
use crate::view::protocol_doc;

/// The word that names the protocol in force.
const ACTIVE: &str = "active";

/// A file's name and text, or those of the built-in protocol.
fn named(file: &str) -> Result<(String, String), Stop> {
    if file == DEFAULT {
        return Ok((DEFAULT_NAME.to_owned(), DEFAULT_TEXT.to_owned()));
    }
    let unreadable = |e| Stop(format!("{file}: {e}; name a protocol file, or write default for the built-in protocol"));
    Ok((file.to_owned(), std::fs::read_to_string(file).map_err(unreadable)?))
}

/// A protocol from a file, or every fault of it.
fn parsed(file: &str) -> Result<Protocol, Stop> {
    let (name, text) = named(file)?;
    parse_protocol(&text, &name).map_err(|faults| {
        let told: Vec<String> = faults.iter().map(ToString::to_string).collect();
        Stop(format!("the protocol cannot be used; nothing was changed. Mend the following and try again\n{}", told.join("\n")))
    })
}

/// Prints a protocol as Markdown. Only the one in force needs the database.
///
/// # Errors
/// [`Stop`] with what to do.
pub async fn print(config: Option<&Path>, protocol: &str, language: Lang) -> Result<ExitCode, Stop> {
    let protocol = if protocol == ACTIVE {
        let office = look(&Config::read(config)?).await?;
        let active = (**office.protocols.on(office.today)).clone();
        office.db.close().await?;
        active
    } else {
        parsed(protocol)?
    };
    print!("{}", protocol_doc::document(words(language), &protocol).markdown(words(language)));
    Ok(ExitCode::SUCCESS)
}

/// Shows how the list of a day would change.
///
/// # Errors
/// [`Stop`] with what to do; every fault of a file that cannot be used.
pub async fn rehearse(config: &Config, protocol: &str, as_of: Option<NaiveDate>, children: bool) -> Result<ExitCode, Stop> {
    let new = parsed(protocol)?;
    let office = look(config).await?;
    let day = as_of.unwrap_or(office.today);
    if day > office.today {
        return Err(Stop(format!("{day} has not come yet; today is {}. Name a past day, or leave --as-of out", office.today)));
    }
    let mut bar = Progress::new("Judging children");
    let found =
        rehearsing::rehearse(&office.db, &office.protocols, &new, Scope::Everything, day, &mut |done, all| bar.to(done, all)).await?;
    bar.end();
    print!("{}", rehearsed::told(&found, children));
    office.db.close().await?;
    Ok(ExitCode::SUCCESS)
}

/// What is said of an adoption.
pub struct Wish<'a> {
    /// Who approved it.
    pub approved_by: &'a str,
    /// First day in force.
    pub from: NaiveDate,
    /// Why.
    pub reason: &'a str,
    /// Whether a past day is meant.
    pub backdated: bool,
}

/// Adopts a protocol and brings the lists up to date.
///
/// # Errors
/// [`Stop`] with what to do; nothing was changed then.
pub async fn adopt(config: &Config, protocol: &str, wish: &Wish<'_>) -> Result<ExitCode, Stop> {
    let (name, text) = named(protocol)?;
    let mut office = look(config).await?;
    if !protocols::any(&office.db).await? {
        // The days until then need a protocol too.
        office = open(config).await?;
    }
    let adoption = Adoption {
        file: &name,
        text: &text,
        approved_by: wish.approved_by,
        from: wish.from,
        backdated: wish.backdated,
        reason: wish.reason,
        by: None,
    };
    let adopted = adopt_protocol::adopt(&office.db, &adoption, office.today, office.now).await?;
    println!("{} {} is adopted and judges visits from {} on", adopted.id, adopted.version, wish.from);
    let Opened { db, today, now, .. } = office;
    let protocols = protocols::load(&db).await?;
    let looked_at = tick::tick(&db, &protocols, today, now).await?;
    println!("{looked_at} children looked at for {today}");
    db.close().await?;
    Ok(ExitCode::SUCCESS)
}
