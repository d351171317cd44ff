//! Which protocols are adopted. Every one is kept as text with its date of effect, so that a visit is always judged by the
//! one in force on its day.

use chrono::DateTime;
use chrono::Utc;
use domain::protocol::Protocols;

use crate::files::protocol_toml::DEFAULT_TEXT;
use crate::files::protocol_toml::ProtocolFault;
#[cfg(any(test, feature = "testing"))]
use crate::files::protocol_toml::default_protocol;
use crate::files::protocol_toml::parse_protocol;
use crate::store::Db;
use crate::store::StoreError;
use crate::store::protocols;
use crate::store::protocols::ProtocolRecord;

/// The protocol cannot be used.
#[derive(Debug, thiserror::Error)]
pub enum ProtocolTrouble {
    /// The file has faults.
    #[error("the protocol cannot be used; mend the following and start again\n{}", .0.join("\n"))]
    Faults(Vec<String>),
    /// The file was changed without a new version.
    #[error(
        "protocol {id} version {version} is adopted already with another text; give the changed file a new version and a date of effect (`version`, `effective_from`)"
    )]
    SameVersion {
        /// Protocol id.
        id: String,
        /// Version.
        version: String,
    },
    /// The database refused.
    #[error("store")]
    Store(#[from] StoreError),
}

/// Adopts the configured protocol (name of its file and text; the built-in one if none is) and returns all adopted ones.
///
/// # Errors
/// [`ProtocolTrouble`], every fault at once.
pub async fn adopt(db: &Db, configured: Option<(&str, &str)>, now: DateTime<Utc>) -> Result<Protocols, ProtocolTrouble> {
    let (name, text) = configured.unwrap_or(("the built-in protocol", DEFAULT_TEXT));
    let faults = |faults: Vec<ProtocolFault>| ProtocolTrouble::Faults(faults.iter().map(ToString::to_string).collect());
    let protocol = parse_protocol(text, name).map_err(faults)?;
    let record = ProtocolRecord {
        id: protocol.id.clone(),
        version: protocol.version.clone(),
        body: text.to_owned(),
        effective_from: protocol.effective_from,
        adopted_at: now,
        adopted_by: None,
        approved_by: protocol.approved_by.clone().unwrap_or_default(),
    };
    let stored = db
        .write(async |tx| {
            let stored = protocols::all(tx).await?;
            match stored.iter().find(|p| p.id == record.id && p.version == record.version) {
                Some(same) if same.body == record.body => Ok(stored),
                Some(_) => Err(ProtocolTrouble::SameVersion { id: record.id.clone(), version: record.version.clone() }),
                None => {
                    protocols::insert(tx, &record).await?;
                    Ok(protocols::all(tx).await?)
                }
            }
        })
        .await?;
    let mut parsed = Vec::with_capacity(stored.len());
    for record in &stored {
        parsed.push(parse_protocol(&record.body, &format!("adopted protocol {} {}", record.id, record.version)).map_err(faults)?);
    }
    Protocols::new(parsed).ok_or_else(|| ProtocolTrouble::Faults(vec!["no protocol is adopted".to_owned()]))
}

/// The protocol of the program for every day: for tests of pages.
#[cfg(any(test, feature = "testing"))]
#[must_use]
pub fn for_tests() -> Protocols {
    Protocols::one(default_protocol().clone())
}
