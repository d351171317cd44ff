//! Adopting a protocol: a separate act with the approver's name, the date of effect and the reason, kept for good. It happens
//! wholly or not at all; visits before the date, and follow-ups they opened, keep the version that judged them.

use chrono::DateTime;
use chrono::NaiveDate;
use chrono::Utc;
use domain::draft::adopt::AdoptForm;
use domain::fault::Fault;
use domain::fault::Faults;
use domain::ids::PersonId;
use domain::protocol::Protocol;
use domain::role::Action;

use crate::files::protocol_toml::ProtocolFault;
use crate::files::protocol_toml::parse_protocol;
use crate::service::Context;
use crate::service::Refusal;
use crate::service::once;
use crate::service::once::Sent;
use crate::service::protocols::keep;
use crate::store::Db;
use crate::store::StoreError;
use crate::store::Tx;
use crate::store::people;
use crate::store::protocols;
use crate::store::protocols::ProtocolRecord;

/// Why a protocol was not adopted; nothing was changed.
#[derive(Debug, thiserror::Error)]
pub enum AdoptTrouble {
    /// The file has faults.
    #[error("the file cannot be used; mend the following and try again\n{}", .0.iter().map(ToString::to_string).collect::<Vec<_>>().join("\n"))]
    File(Vec<ProtocolFault>),
    /// This version is adopted.
    #[error("version {version} of {id} is adopted already; give the file a new version, rehearse it, and adopt that")]
    Taken {
        /// Protocol id.
        id: String,
        /// Version.
        version: String,
    },
    /// The date has passed.
    #[error(
        "{from} is before today, {today}: visits of the days between would be judged anew. Name today or a later day, or say --backdated if that is meant"
    )]
    Past {
        /// The date asked for.
        from: NaiveDate,
        /// Today.
        today: NaiveDate,
    },
    /// Nobody is named.
    #[error("--approved-by is empty; name the clinician or responsible person who approved it")]
    Nobody,
    /// The database refused.
    #[error("store")]
    Store(#[from] StoreError),
}

/// An adoption.
#[derive(Debug, Clone)]
pub struct Adoption<'a> {
    /// Name of the file, for its faults.
    pub file: &'a str,
    /// Its text.
    pub text: &'a str,
    /// Who approved it.
    pub approved_by: &'a str,
    /// First day in force.
    pub from: NaiveDate,
    /// Whether a day before today is meant.
    pub backdated: bool,
    /// Why.
    pub reason: &'a str,
    /// Who adopts it; `None` = the command line.
    pub by: Option<PersonId>,
}

/// Adopts a protocol.
///
/// # Errors
/// [`AdoptTrouble`]; nothing was changed then.
pub async fn adopt(db: &Db, adoption: &Adoption<'_>, today: NaiveDate, now: DateTime<Utc>) -> Result<Protocol, AdoptTrouble> {
    let protocol = parse_protocol(adoption.text, adoption.file).map_err(AdoptTrouble::File)?;
    if adoption.approved_by.trim().is_empty() {
        return Err(AdoptTrouble::Nobody);
    }
    if adoption.from < today && !adoption.backdated {
        return Err(AdoptTrouble::Past { from: adoption.from, today });
    }
    db.write(async |tx| store(tx, &protocol, adoption, now).await).await?;
    Ok(protocol)
}

async fn store(tx: &Tx, protocol: &Protocol, adoption: &Adoption<'_>, now: DateTime<Utc>) -> Result<(), AdoptTrouble> {
    let taken = protocols::all(tx).await?.iter().any(|p| p.id == protocol.id && p.version == protocol.version);
    if taken {
        return Err(AdoptTrouble::Taken { id: protocol.id.clone(), version: protocol.version.clone() });
    }
    let record = ProtocolRecord {
        id: protocol.id.clone(),
        version: protocol.version.clone(),
        body: adoption.text.to_owned(),
        effective_from: adoption.from,
        adopted_at: now,
        adopted_by: adoption.by,
        approved_by: adoption.approved_by.trim().to_owned(),
        reason: adoption.reason.trim().to_owned(),
    };
    Ok(keep(tx, &record).await?)
}

/// Adopts a protocol by the form of the page; the same form sent again changes nothing more.
///
/// # Errors
/// [`Refusal::Invalid`] when the version is taken; [`Refusal::Forbidden`], [`Refusal::Conflict`], [`Refusal::Store`].
pub async fn adopt_by_form(ctx: &Context, sent: Sent, protocol: &Protocol, text: &str, form: &AdoptForm) -> Result<(), Refusal> {
    ctx.needs(Action::Administer)?;
    let adoption = Adoption {
        file: "",
        text,
        approved_by: &form.approved_by,
        from: form.from,
        backdated: false,
        reason: &form.reason,
        by: Some(ctx.actor.person),
    };
    ctx.db
        .write(async |tx| {
            if once::before(tx, ctx, sent).await?.is_some() {
                return Ok(());
            }
            match store(tx, protocol, &adoption, ctx.now).await {
                Ok(()) => {}
                Err(AdoptTrouble::Taken { .. }) => return Err(Refusal::Invalid(Faults::one("text", Fault::Taken))),
                Err(AdoptTrouble::Store(error)) => return Err(error.into()),
                Err(other) => return Err(Refusal::Broken(other.to_string())),
            }
            once::remember(tx, ctx, sent, "/protocol").await
        })
        .await
}

/// An adopted protocol with who adopted it.
#[derive(Debug, Clone)]
pub struct Adopted {
    /// As kept.
    pub record: ProtocolRecord,
    /// Name of who adopted it, if it was a person signed in.
    pub by: Option<String>,
}

/// Every adopted protocol by date of effect.
///
/// # Errors
/// [`Refusal::Store`].
pub async fn all(ctx: &Context) -> Result<Vec<Adopted>, Refusal> {
    let records = protocols::all(ctx.db.direct()).await?;
    let ids: Vec<PersonId> = records.iter().filter_map(|record| record.adopted_by).collect();
    let names = people::names(ctx.db.direct(), &ids).await?;
    Ok(records.into_iter().map(|record| Adopted { by: record.adopted_by.and_then(|id| names.get(&id).cloned()), record }).collect())
}
