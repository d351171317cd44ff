//! Which protocols are adopted. Every one is kept as text with its date of effect, so that a visit is always judged by the
//! one in force on its day. A program that starts adopts the configured file when it is new; the built-in protocol only where
//! nothing was ever adopted, so that a newer program never changes what a programme works by.

use chrono::DateTime;
use chrono::Utc;
use domain::protocol::Protocol;
use domain::protocol::Protocols;

use crate::files::protocol_toml::DEFAULT_TEXT;
use crate::files::protocol_toml::ProtocolFault;
#[cfg(any(test, feature = "testing"))]
use crate::files::protocol_toml::default_protocol;
use crate::files::protocol_toml::parse_protocol;
use crate::store::Connection;
use crate::store::Db;
use crate::store::StoreError;
use crate::store::audit;
use crate::store::audit::AuditEntry;
use crate::store::protocols;
use crate::store::protocols::ProtocolRecord;
use crate::store::summaries;

/// Name and text of the built-in protocol.
const BUILT_IN: (&str, &str) = ("the built-in protocol", DEFAULT_TEXT);

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

impl From<Vec<ProtocolFault>> for ProtocolTrouble {
    fn from(faults: Vec<ProtocolFault>) -> Self {
        Self::Faults(faults.iter().map(ToString::to_string).collect())
    }
}

/// Whether a protocol (name of its file and text) can be adopted at all, told without a database.
///
/// # Errors
/// [`ProtocolTrouble`], every fault at once.
pub fn check((name, text): (&str, &str)) -> Result<(), ProtocolTrouble> {
    parse_protocol(text, name)?;
    Ok(())
}

/// Adopts the configured protocol (name of its file and text) if it is new, or the built-in one if none is configured and none was
/// ever adopted; returns all adopted ones.
///
/// # Errors
/// [`ProtocolTrouble`], every fault at once.
pub async fn adopt(db: &Db, configured: Option<(&str, &str)>, now: DateTime<Utc>) -> Result<Protocols, ProtocolTrouble> {
    let stored = db
        .write(async |tx| {
            let stored = protocols::all(tx).await?;
            let (name, text) = match configured {
                Some(configured) => configured,
                None if stored.is_empty() => BUILT_IN,
                None => return Ok(stored),
            };
            let protocol = parse_protocol(text, name)?;
            let record = ProtocolRecord {
                id: protocol.id.clone(),
                version: protocol.version.clone(),
                body: text.to_owned(),
                effective_from: protocol.effective_from,
                adopted_at: now,
                adopted_by: None,
                approved_by: protocol.approved_by.clone().unwrap_or_default(),
                reason: String::new(),
            };
            match stored.iter().find(|p| p.id == record.id && p.version == record.version) {
                Some(same) if same.body == record.body => Ok(stored),
                Some(_) => Err(ProtocolTrouble::SameVersion { id: record.id.clone(), version: record.version.clone() }),
                None => {
                    keep(tx, &record).await?;
                    Ok(protocols::all(tx).await?)
                }
            }
        })
        .await?;
    in_order(&stored)
}

/// The adopted protocols without adopting anything; where none ever was, those a first start would adopt. For commands that only
/// look: a configured file that was changed must not take effect because somebody looks at what it would do.
///
/// # Errors
/// [`ProtocolTrouble`], every fault at once.
pub async fn as_they_are(db: &Db, configured: Option<(&str, &str)>) -> Result<Protocols, ProtocolTrouble> {
    let stored = protocols::all(db.direct()).await?;
    if !stored.is_empty() {
        return in_order(&stored);
    }
    let (name, text) = configured.unwrap_or(BUILT_IN);
    Ok(Protocols::one(parse_protocol(text, name)?))
}

/// Whether a protocol was ever adopted.
///
/// # Errors
/// [`StoreError`].
pub async fn any(db: &Db) -> Result<bool, StoreError> {
    Ok(protocols::count(db.direct()).await? > 0)
}

/// Every adopted protocol as it stands in the database.
///
/// # Errors
/// [`ProtocolTrouble`].
pub async fn load(db: &Db) -> Result<Protocols, ProtocolTrouble> {
    in_order(&protocols::all(db.direct()).await?)
}

/// Keeps a protocol, has every child looked at again on its first day, and notes it in the audit.
///
/// # Errors
/// [`StoreError::Conflict`] when this id and version are adopted already.
pub(super) async fn keep(tx: &impl Connection, record: &ProtocolRecord) -> Result<(), StoreError> {
    protocols::insert(tx, record).await?;
    summaries::look_again_on(tx, record.effective_from).await?;
    let entry = AuditEntry {
        at: record.adopted_at,
        actor: record.adopted_by,
        action: "protocol.adopt".to_owned(),
        object_kind: "protocol".to_owned(),
        object_id: format!("{} {}", record.id, record.version),
        fields: ["body", "effective_from", "approved_by", "reason"].map(str::to_owned).to_vec(),
    };
    audit::append(tx, &entry).await
}

/// An adopted protocol as values: its date of effect and its approval are those of the adoption.
///
/// # Errors
/// Every fault of its text.
pub fn read(record: &ProtocolRecord) -> Result<Protocol, Vec<ProtocolFault>> {
    let mut protocol = parse_protocol(&record.body, &format!("adopted protocol {} {}", record.id, record.version))?;
    protocol.effective_from = record.effective_from;
    if !record.approved_by.is_empty() && protocol.approved_by.as_deref() != Some(&record.approved_by) {
        protocol.approved_by = Some(record.approved_by.clone());
        protocol.approved_on = None;
    }
    Ok(protocol)
}

fn in_order(stored: &[ProtocolRecord]) -> Result<Protocols, ProtocolTrouble> {
    let parsed = stored.iter().map(read).collect::<Result<Vec<_>, _>>()?;
    Protocols::new(parsed).ok_or_else(|| ProtocolTrouble::Faults(vec!["no protocol is adopted".to_owned()]))
}

/// The protocol of the program for every day: for tests of pages.
#[cfg(any(test, feature = "testing"))]
#[must_use]
pub fn for_tests() -> Protocols {
    Protocols::one(default_protocol().clone())
}
