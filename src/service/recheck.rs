//! Works everything out anew from the visits and holds it against what is stored: follow-ups with the end of their history, the
//! judgement kept with each visit, the line in the lists with the day of its next change. It changes nothing unless told to mend.

mod compare;

use std::collections::BTreeMap;

use chrono::DateTime;
use chrono::NaiveDate;
use chrono::Utc;
use domain::ids::ChildId;
use domain::protocol::Protocols;

use crate::service::reassess;
use crate::service::reassess::Moment;
use crate::store::Db;
use crate::store::Scope;
use crate::store::StoreError;
use crate::store::Tx;
use crate::store::children;
use crate::store::children::ChildRecord;
use crate::store::follow_ups;
use crate::store::summaries;
use crate::store::visits;

pub use crate::service::recheck::compare::Difference;

/// Children worked out at a time, from one view of the database.
const AT_A_TIME: u64 = 200;

/// What was found.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Rechecked {
    /// Children worked out.
    pub children: u64,
    /// Visits worked out.
    pub visits: u64,
    /// Follow-ups worked out.
    pub follow_ups: u64,
    /// Closed follow-ups that no visit gives any more: kept on record since a correction or a late entry.
    pub kept_from_before: u64,
    /// Children whose day has come and who have not been looked at yet: the daily tick is behind.
    pub waiting: u64,
    /// Every difference, by child.
    pub differences: Vec<Difference>,
    /// Children brought in step.
    pub mended: u64,
}

/// Compares every child as of a day; each visit is judged by the protocol in force on its day, as it was when it was recorded.
/// `progress` is told how many children are done, and of how many. With `mend`, children that differ are worked out and stored anew.
///
/// # Errors
/// [`StoreError`].
pub async fn recheck(
    db: &Db,
    protocols: &Protocols,
    today: NaiveDate,
    mend: Option<DateTime<Utc>>,
    progress: &mut dyn FnMut(u64, u64),
) -> Result<Rechecked, StoreError> {
    let all = children::count_in_scope(db.direct(), Scope::Everything).await?;
    let mut found = Rechecked::default();
    let mut after = None;
    progress(0, all);
    loop {
        let some = db.read::<_, StoreError, _>(async |tx| batch(tx, protocols, today, after, &mut found).await).await?;
        let Some(last) = some.last else { break };
        after = Some(last);
        if let Some(now) = mend {
            for child in &some.differing {
                let moment = Moment { today, now, by: None };
                db.write::<_, StoreError, _>(async |tx| reassess::reassess(tx, protocols, *child, moment).await.map(drop)).await?;
                found.mended += 1;
            }
        }
        progress(found.children, Ord::max(all, found.children));
    }
    Ok(found)
}

/// What a batch leaves to do.
struct Batch {
    last: Option<ChildId>,
    differing: Vec<ChildId>,
}

async fn batch(
    tx: &Tx,
    protocols: &Protocols,
    today: NaiveDate,
    after: Option<ChildId>,
    found: &mut Rechecked,
) -> Result<Batch, StoreError> {
    let page = children::page_in_scope(tx, Scope::Everything, after, AT_A_TIME).await?;
    let ids: Vec<ChildId> = page.iter().map(|child| child.id).collect();
    let mut stories = visits::of_children_up_to(tx, &ids, today).await?;
    let mut stored = follow_ups::of_children(tx, &ids).await?;
    let mut lines = summaries::of_children(tx, &ids).await?;
    let history = follow_ups::last_events(tx, &ids).await?;
    let mut differing = Vec::new();
    for child in &page {
        let before = found.differences.len();
        let records = stories.remove(&child.id).unwrap_or_default();
        let kept = stored.remove(&child.id).unwrap_or_default();
        let line = lines.remove(&child.id);
        let held = compare::Held { child, records: &records, follow_ups: &kept, last_events: &history, line: line.as_ref() };
        compare::compare(&held, protocols, today, found);
        found.children += 1;
        if found.differences.len() > before {
            differing.push(child.id);
        }
    }
    Ok(Batch { last: page.last().map(|child: &ChildRecord| child.id), differing })
}

/// The differences of each child, for a report that is read child by child.
#[must_use]
pub fn by_child(differences: &[Difference]) -> BTreeMap<&str, Vec<&Difference>> {
    let mut by_child: BTreeMap<&str, Vec<&Difference>> = BTreeMap::new();
    for difference in differences {
        by_child.entry(&difference.child).or_default().push(difference);
    }
    by_child
}
