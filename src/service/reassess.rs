//! Works a child's story out anew inside the transaction that changed it, and keeps what lists need in step: follow-ups with
//! their history, the scores of each visit, and the child's one line.

use std::collections::BTreeMap;
use std::collections::BTreeSet;

use chrono::DateTime;
use chrono::NaiveDate;
use chrono::Utc;
use domain::assess::Acts;
use domain::assess::Assessment;
use domain::assess::VisitAssessment;
use domain::assess::assess_with;
use domain::child::ChildStatus;
use domain::feeding::FoodState;
use domain::follow_up::FollowUp;
use domain::follow_up::SupervisorAct;
use domain::growth::Indicator;
use domain::ids::ChildId;
use domain::ids::FollowUpId;
use domain::ids::PersonId;
use domain::ids::VisitId;
use domain::protocol::Protocols;
use domain::rule::CloseReason;
use domain::rule::RuleId;
use domain::visit::Contact;
use domain::visit::Measurement;
use domain::visit::Visit;

use crate::service::Context;
use crate::store::Connection;
use crate::store::StoreError;
use crate::store::children;
use crate::store::children::ChildRecord;
use crate::store::follow_ups;
use crate::store::follow_ups::Closing;
use crate::store::follow_ups::FollowUpRecord;
use crate::store::follow_ups::Recorded;
use crate::store::summaries;
use crate::store::summaries::SlotDays;
use crate::store::summaries::SummaryRecord;
use crate::store::summaries::TopFollowUp;
use crate::store::visits;
use crate::store::visits::Indices;
use crate::store::visits::VisitRecord;

/// When and by whom a change is made.
#[derive(Debug, Clone, Copy)]
pub struct Moment {
    /// The programme's day.
    pub today: NaiveDate,
    /// The instant.
    pub now: DateTime<Utc>,
    /// Who; `None` for time itself.
    pub by: Option<PersonId>,
}

impl Moment {
    /// Of a use case.
    #[must_use]
    pub const fn of(ctx: &Context) -> Self {
        Self { today: ctx.today, now: ctx.now, by: Some(ctx.actor.person) }
    }
}

/// Works the child out anew and stores what follows. Returns the judgement.
///
/// # Errors
/// [`StoreError`]; a child that is not there is corrupt, since the caller has just written it.
pub async fn reassess(tx: &impl Connection, protocols: &Protocols, id: ChildId, moment: Moment) -> Result<Assessment, StoreError> {
    let (child, records) = loaded(tx, id, moment).await?;
    let stored = follow_ups::of_child(tx, id).await?;
    reassess_loaded(tx, protocols, &child, &records, &stored, moment).await
}

async fn loaded(tx: &impl Connection, id: ChildId, moment: Moment) -> Result<(ChildRecord, Vec<VisitRecord>), StoreError> {
    let child = children::by_ids(tx, &[id]).await?.pop().ok_or(StoreError::Corrupt {
        table: "children",
        id: uuid::Uuid::from_u128(id.0).to_string(),
        what: "the child is not there".to_owned(),
    })?;
    Ok((child, visits::of_child_up_to(tx, id, moment.today).await?))
}

/// The same for a child whose record has just taken over the visits of `other`: what was stored of the other's follow-ups comes over.
///
/// # Errors
/// [`StoreError`].
pub async fn reassess_merged(
    tx: &impl Connection,
    protocols: &Protocols,
    id: ChildId,
    other: ChildId,
    moment: Moment,
) -> Result<Assessment, StoreError> {
    let mut stored = follow_ups::of_child(tx, other).await?;
    // Where both know one, the child's own counts.
    stored.extend(follow_ups::of_child(tx, id).await?);
    let (child, records) = loaded(tx, id, moment).await?;
    store_judged(tx, protocols, &child, &records, (&stored, Some(other)), moment).await
}

/// The same for a child whose story is loaded already.
///
/// # Errors
/// [`StoreError`].
pub async fn reassess_loaded(
    tx: &impl Connection,
    protocols: &Protocols,
    child: &ChildRecord,
    records: &[VisitRecord],
    stored: &[FollowUpRecord],
    moment: Moment,
) -> Result<Assessment, StoreError> {
    store_judged(tx, protocols, child, records, (stored, None), moment).await
}

/// Judges and stores. `stored` are the follow-ups as they stand, with the record whose follow-ups come over.
async fn store_judged(
    tx: &impl Connection,
    protocols: &Protocols,
    child: &ChildRecord,
    records: &[VisitRecord],
    (stored, other): (&[FollowUpRecord], Option<ChildId>),
    moment: Moment,
) -> Result<Assessment, StoreError> {
    let assessment = judge(protocols, child, records, stored, moment.today);
    for record in records {
        if let Some(judged) = assessment.visit(record.visit.id) {
            let after = judged_record(record, judged);
            if after != *record {
                visits::judged(tx, &after).await?;
            }
        }
    }
    let found = follow_up_records(child, &assessment, stored);
    let recorded = Recorded { at: moment.now, today: moment.today, by: moment.by };
    match other {
        None => follow_ups::replace_all_of_child(tx, child.id, &found, recorded).await?,
        Some(other) => follow_ups::bring_together(tx, child.id, other, &found, recorded).await?,
    }
    summaries::upsert(tx, &summary(child, records, &assessment)).await?;
    Ok(assessment)
}

/// The judgement of a stored story as of a day. Nothing is written.
#[must_use]
pub fn judge(
    protocols: &Protocols,
    child: &ChildRecord,
    records: &[VisitRecord],
    stored: &[FollowUpRecord],
    as_of: NaiveDate,
) -> Assessment {
    let story: Vec<Visit> = in_order_of_entry(records).into_iter().map(|r| r.visit.clone()).collect();
    let supervisor: Vec<SupervisorAct> = stored
        .iter()
        .filter_map(|f| {
            let closing = f.closing.as_ref().filter(|c| c.reason == CloseReason::SupervisorDecision && c.on <= as_of)?;
            Some(SupervisorAct { rule: f.rule, opened_by: f.opened_by_visit, closed_on: closing.on })
        })
        .collect();
    let mut facts = child.facts.clone();
    // On a day before it left, the child was in the programme.
    if child.left_on.is_some_and(|left| left > as_of) {
        facts.status = ChildStatus::Active;
    }
    let acts = Acts { supervisor: &supervisor, left_on: child.left_on };
    assess_with(&facts, &story, protocols, &acts, as_of)
}

fn in_order_of_entry(records: &[VisitRecord]) -> Vec<&VisitRecord> {
    let mut ordered: Vec<&VisitRecord> = records.iter().collect();
    ordered.sort_by_key(|r| r.entry_seq);
    ordered
}

pub(super) fn judged_record(record: &VisitRecord, judged: &VisitAssessment) -> VisitRecord {
    let z = |indicator| judged.scores.get(indicator).rounded().map(domain::growth::ZHundredths::hundredths);
    let mut suspect = BTreeSet::new();
    if judged.suspect.weight {
        suspect.insert(Measurement::Weight);
    }
    if judged.suspect.length {
        suspect.insert(Measurement::Length);
    }
    VisitRecord {
        indices: Indices {
            waz: z(Indicator::Waz),
            laz: z(Indicator::Laz),
            wlz: z(Indicator::Wlz),
            bmiz: z(Indicator::Bmiz),
            mauz: z(Indicator::Mauz),
            hcz: z(Indicator::Hcz),
        },
        suspect,
        protocol_id: judged.protocol.id.clone(),
        protocol_version: judged.protocol.version.clone(),
        stage: judged.stage.map_or("none", domain::protocol::StageId::code).to_owned(),
        ..record.clone()
    }
}

pub(super) fn follow_up_records(child: &ChildRecord, assessment: &Assessment, stored: &[FollowUpRecord]) -> Vec<FollowUpRecord> {
    let known: BTreeMap<(RuleId, VisitId), &FollowUpRecord> = stored.iter().map(|f| ((f.rule, f.opened_by_visit), f)).collect();
    assessment.follow_ups.iter().map(|f| follow_up_record(child, f, known.get(&(f.rule, f.opened_by)).copied())).collect()
}

pub(super) fn follow_up_record(child: &ChildRecord, f: &FollowUp, known: Option<&FollowUpRecord>) -> FollowUpRecord {
    let closing = f.closed.map(|closed| {
        // Who decided, and in which words, is known to the store alone.
        let decided = known.and_then(|k| k.closing.as_ref()).filter(|c| c.reason == closed.reason);
        Closing {
            reason: closed.reason,
            on: closed.on,
            by: decided.and_then(|c| c.by),
            category: decided.and_then(|c| c.category.clone()),
            note: decided.and_then(|c| c.note.clone()),
            replaced_by: closed.replaced_by.map(|(rule, _)| rule),
        }
    });
    FollowUpRecord {
        id: known.map_or_else(|| FollowUpId(uuid::Uuid::now_v7().as_u128()), |k| k.id),
        child: child.id,
        area: child.area,
        worker: child.worker,
        rule: f.rule,
        class: f.class,
        opened_by_visit: f.opened_by,
        opened_on: f.opened_on,
        due_on: f.due_on,
        last_fired_on: f.last_fired_on,
        last_fired_visit: f.last_fired_by,
        closing,
        evidence: f.evidence.clone(),
        also_true: f.also_true.iter().copied().collect(),
        protocol_id: f.protocol.id.clone(),
        protocol_version: f.protocol.version.clone(),
        first_followed_up_on: f.first_followed_up().map(|t| t.on),
        first_followed_up_due: f.first_followed_up().map(|t| t.due_on),
        first_outcome_on: f.first_outcome().map(|t| t.on),
        referred_on: f.referred_on,
    }
}

/// Since when the food that is longest on hold waits for somebody's word.
#[must_use]
pub fn hold_since(a: &Assessment) -> Option<NaiveDate> {
    let on_hold = |state: &FoodState| match state {
        FoodState::OnHold { since, .. } => Some(*since),
        _ => None,
    };
    a.foods.iter().filter_map(|line| on_hold(&line.state)).min()
}

/// The child's one line for the lists.
#[must_use]
pub fn summary(child: &ChildRecord, records: &[VisitRecord], a: &Assessment) -> SummaryRecord {
    let open = a.open();
    // The line shows the most severe class and that follow-up's reason, but the earliest due day of all.
    let top = open.first().map(|first| TopFollowUp {
        class: first.class,
        rule: first.rule,
        due_on: a.due_on().unwrap_or(first.due_on),
        evidence: first.evidence.clone(),
    });
    let weighed = records.iter().rev().find_map(|r| Some((r.visit.weight?, r.visit.on, r.visit.id)));
    let waz = weighed.and_then(|(_, _, id)| a.visit(id)?.scores.get(Indicator::Waz).rounded());
    let unanswered = open.iter().filter(|f| f.class.is_urgent() && !f.outcome_since_fired).map(|f| f.last_fired_on).min();
    let referral = open
        .iter()
        .filter(|f| !f.outcome_since_fired)
        .filter_map(|f| {
            let urgent = f.class.is_urgent().then(|| domain::calendar::add_days(f.last_fired_on, 2));
            let named = f.referred_since_fired.map(|on| domain::calendar::add_days(on, 7));
            urgent.into_iter().chain(named).min()
        })
        .min();
    let overdue = a.lists.iter().find(|l| l.rule == RuleId::VisitOverdue).map(|l| l.counted_from);
    SummaryRecord {
        child: child.id,
        code: child.code.clone(),
        area: child.area,
        worker: child.worker,
        born: child.facts.born,
        status: child.facts.status,
        name_key: child.name_key.clone(),
        top,
        open_count: u16::try_from(open.len()).unwrap_or(u16::MAX),
        urgent_unanswered_since: unanswered,
        referral_due_on: referral,
        slot: a.next_visit.map(|s| SlotDays { target: s.window.target, opens: s.window.opens(), closes: s.window.closes() }),
        overdue_since: overdue,
        hold_since: hold_since(a),
        last_seen_on: records.iter().filter(|r| r.visit.contact != Contact::Phone).map(|r| r.visit.on).max(),
        last_weight: weighed.map(|(weight, on, _)| (weight, on)),
        last_waz: waz.map(domain::growth::ZHundredths::hundredths),
        // Nothing in the line of a child that has left changes by the passing of days.
        next_change_on: if child.facts.status != ChildStatus::Active && child.left_on.is_none_or(|left| left <= a.as_of) {
            None
        } else {
            a.next_change
        },
        assessed_on: a.as_of,
        protocol_version: a.now.protocol.version.clone(),
    }
}
