//! Time alone changes lists: a child turns six months, a slot closes, the exit age comes. Only children whose day has come
//! are looked at.

use chrono::DateTime;
use chrono::NaiveDate;
use chrono::Utc;
use domain::child::ChildStatus;
use domain::ids::ChildId;
use domain::protocol::Protocols;

use crate::service::reassess::Moment;
use crate::service::reassess::reassess;
use crate::store::Db;
use crate::store::StoreError;
use crate::store::children;
use crate::store::placements;
use crate::store::placements::StatusRecord;
use crate::store::summaries;

/// Children brought up to date in one transaction.
const AT_A_TIME: u64 = 100;

/// Brings every child whose day has come up to date; answers how many.
///
/// # Errors
/// [`StoreError`]; what was done before stays done.
pub async fn tick(db: &Db, protocols: &Protocols, today: NaiveDate, now: DateTime<Utc>) -> Result<u64, StoreError> {
    // Everything may read differently from the first day of a protocol on, also for a child stored by somebody who did not know of it.
    for protocol in protocols.iter().filter(|protocol| protocol.effective_from > today) {
        summaries::look_again_on(db.direct(), protocol.effective_from).await?;
    }
    let mut done = 0;
    let mut after = None;
    loop {
        let due: Vec<(NaiveDate, ChildId)> = summaries::due_for_tick(db.direct(), today, after, AT_A_TIME).await?;
        let Some(&last) = due.last() else { break };
        after = Some(last);
        db.write::<_, StoreError, _>(async |tx| {
            for (_, child) in &due {
                let assessment = reassess(tx, protocols, *child, Moment { today, now, by: None }).await?;
                if assessment.ages_out_on.is_some_and(|day| day <= today) {
                    let Some(record) = children::by_ids(tx, &[*child]).await?.pop() else { continue };
                    if record.facts.status == ChildStatus::Active {
                        let left = StatusRecord {
                            status: ChildStatus::AgedOut,
                            on: assessment.ages_out_on.unwrap_or(today),
                            by: None,
                            note: None,
                            at: now,
                        };
                        placements::change_status(tx, *child, record.version, &left).await?;
                        reassess(tx, protocols, *child, Moment { today, now, by: None }).await?;
                    }
                }
            }
            Ok(())
        })
        .await?;
        done += u64::try_from(due.len()).unwrap_or(0);
    }
    if done > 0 {
        db.refresh_statistics().await?;
    }
    Ok(done)
}
