//! Corrections of the record itself in the demo: a visit taken back, a visit moved, two records merged, each made today through the
//! service, as people would. It knows no rule.

use std::sync::Arc;

use domain::ids::PersonId;
use domain::ids::SubmissionKey;
use domain::ids::VisitId;
use domain::protocol::Protocols;
use domain::role::Role;
use spoonround::service::Actor;
use spoonround::service::Context;
use spoonround::service::Refusal;
use spoonround::service::corrections::About;
use spoonround::service::corrections::merge_children;
use spoonround::service::corrections::move_visit;
use spoonround::service::corrections::void_visit;
use spoonround::service::once::Sent;
use spoonround::service::reassess::Moment;
use spoonround::store::Db;
use spoonround::store::children;
use spoonround::store::visits;

use crate::programme::Keys;
use crate::story::PutRight;
use crate::story::Story;

/// Makes the corrections of a story; `of` tells the story of another child by its number.
///
/// # Errors
/// [`Refusal`].
pub async fn put_right(
    db: &Db,
    protocols: &Protocols,
    keys: &Keys,
    story: &Story,
    of: &dyn Fn(u32) -> Story,
    until: Moment,
) -> Result<(), Refusal> {
    let as_role = |person: PersonId, role: Role| Context {
        db: db.clone(),
        protocols: Arc::new(protocols.clone()),
        actor: Actor { person, name: String::new(), role },
        today: until.today,
        now: until.now,
    };
    let worker = as_role(keys.workers[story.worker], Role::Worker);
    for correction in &story.put_right {
        match correction {
            PutRight::Void { visit, reason, note } => {
                let id = story.visits[*visit].visit.id;
                let (seq, version) = stored(db, story, id).await?;
                let pairs = pairs(&[("reason", reason), ("note", note)]);
                void_visit::void(&worker, sent(id.0), About { code: &story.code, seq, version }, &pairs).await?;
            }
            PutRight::Move { visit, to, note } => {
                let id = story.visits[*visit].visit.id;
                let (seq, version) = stored(db, story, id).await?;
                let pairs = pairs(&[("note", note), ("sure", "yes")]);
                move_visit::move_visit(&worker, sent(id.0), About { code: &story.code, seq, version }, &of(*to).code, &pairs).await?;
            }
            PutRight::Merge { into, note } => {
                let supervisor = as_role(keys.supervisor_of(story.village), Role::Supervisor);
                let goes_on = of(*into);
                let versions = (version(db, &goes_on).await?, version(db, story).await?);
                let pairs = pairs(&[("survivor", "first"), ("note", note), ("sure", "yes")]);
                let codes = (goes_on.code.as_str(), story.code.as_str());
                merge_children::merge(&supervisor, sent(story.id.0), codes, versions, &pairs).await?;
            }
        }
    }
    Ok(())
}

/// A key of its own for each correction, the same every time.
const fn sent(of: u128) -> Sent {
    Sent { key: SubmissionKey(of ^ 1), hash: [0; 32] }
}

fn pairs(list: &[(&str, &str)]) -> Vec<(String, String)> {
    list.iter().map(|(name, value)| ((*name).to_owned(), (*value).to_owned())).collect()
}

/// A visit's number and version as stored.
async fn stored(db: &Db, story: &Story, id: VisitId) -> Result<(i64, u32), Refusal> {
    let record = visits::by_id(db.direct(), story.id, id).await?.ok_or(Refusal::NotFound)?;
    Ok((record.entry_seq, record.version))
}

async fn version(db: &Db, story: &Story) -> Result<u32, Refusal> {
    let record = children::by_ids(db.direct(), &[story.id]).await?.pop().ok_or(Refusal::NotFound)?;
    Ok(record.version)
}
