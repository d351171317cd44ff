//! Merging two records of one child: visits, follow-ups with their history, outcomes and food holds come together in the record
//! that goes on; the code of the other leads to it.

use std::collections::BTreeSet;

use chrono::NaiveDate;
use domain::calendar::days_between;
use domain::draft::correction::MergeForm;
use domain::draft::correction::read_merge;
use domain::follow_up::FollowUp;
use domain::record::Answers;
use domain::record::Contradiction;
use domain::record::Half;
use domain::record::Merged;
use domain::record::Question;
use domain::record::Side;
use domain::record::merged;
use domain::record::questions;
use domain::record::same_days;
use domain::role::Action;
use domain::visit::Visit;

use crate::service::Context;
use crate::service::Refusal;
use crate::service::audit;
use crate::service::child_file;
use crate::service::child_file::ChildFile;
use crate::service::once;
use crate::service::once::Sent;
use crate::service::reassess;
use crate::service::why;
use crate::store::StoreError;
use crate::store::Tx;
use crate::store::children;
use crate::store::children::ChildRecord;
use crate::store::corrections;
use crate::store::corrections::Corrected;
use crate::store::corrections::RecordCorrection;
use crate::store::households;
use crate::store::placements;
use crate::store::placements::StatusRecord;
use crate::store::summaries;
use crate::store::visits;
use crate::store::visits::Correction;
use crate::store::visits::VisitRecord;

/// What kind of reason every merge has.
const SAME_CHILD: &str = "same_child";

/// Two records side by side.
#[derive(Debug, Clone)]
pub struct ToMerge {
    /// The one that was opened.
    pub first: ChildFile,
    /// The one that may be the same child.
    pub second: ChildFile,
    /// What has to be said.
    pub questions: Vec<Question>,
    /// What contradicts whatever is answered.
    pub contradictions: BTreeSet<Contradiction>,
    /// Days with a visit in both: both are kept.
    pub same_days: Vec<NaiveDate>,
    /// What would be open, as long as no answer decides it.
    pub open_then: Option<Vec<FollowUp>>,
}

fn story(records: &[VisitRecord]) -> Vec<Visit> {
    records.iter().map(|v| v.visit.clone()).collect()
}

/// Opens two records side by side; `None` when they are one already.
///
/// # Errors
/// [`Refusal::NotFound`] when one of them is outside the scope; [`Refusal::Forbidden`], [`Refusal::Store`].
pub async fn open(ctx: &Context, first: &str, second: &str) -> Result<Option<ToMerge>, Refusal> {
    ctx.needs(Action::Supervise)?;
    let code = |text: &str| domain::child_code::ChildCode::parse(text).map_err(|_| Refusal::NotFound);
    let first = child_file::open(ctx, &code(first)?, ctx.today).await?;
    let second = child_file::open(ctx, &code(second)?, ctx.today).await?;
    if first.record.id == second.record.id {
        return Ok(None);
    }
    let (a_story, b_story) = (story(&first.visits), story(&second.visits));
    let a = Half { child: &first.record.facts, left_on: first.record.left_on, visits: &a_story };
    let b = Half { child: &second.record.facts, left_on: second.record.left_on, visits: &b_story };
    let asked = questions(&a, &b);
    let one = merged(&a, &b, Side::First, &Answers::default());
    let same_days = same_days(&a, &b);
    let open_then = one.as_ref().ok().filter(|_| asked.is_empty()).map(|one| open_then(ctx, &first, &second, one));
    let whatever = |c: &Contradiction| !matches!(c, Contradiction::VisitBeforeBirth(_) | Contradiction::RegisteredBeforeBirth(_));
    let contradictions = one.err().unwrap_or_default().into_iter().filter(|c| whatever(c) || !asked.contains(&Question::Born)).collect();
    Ok(Some(ToMerge { questions: asked, contradictions, same_days, open_then, first, second }))
}

fn open_then(ctx: &Context, first: &ChildFile, second: &ChildFile, one: &Merged) -> Vec<FollowUp> {
    let record = ChildRecord { facts: one.child.clone(), left_on: one.left_on, ..first.record.clone() };
    let visits = together(&first.visits, &second.visits);
    let stored: Vec<_> = second.follow_ups.iter().chain(&first.follow_ups).cloned().collect();
    let assessment = reassess::judge(&ctx.protocols, &record, &visits, &stored, ctx.today);
    assessment.open().into_iter().cloned().collect()
}

fn together(a: &[VisitRecord], b: &[VisitRecord]) -> Vec<VisitRecord> {
    let mut all: Vec<VisitRecord> = a.iter().chain(b).cloned().collect();
    all.sort_by_key(|v| (v.visit.on, v.entry_seq));
    all
}

/// What came of it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Merging {
    /// Merged now, or by the same form before; where to look.
    Done(String),
    /// Somebody changed one of the records since the form was shown; nothing was done.
    Changed,
    /// Somebody merged them already; where to look.
    Already(String),
    /// As they were answered, the two cannot be one child; nothing was done.
    Contradicts(BTreeSet<Contradiction>),
}

/// Merges the two records, if nobody has changed them since the form was shown at these versions.
///
/// # Errors
/// [`Refusal::Invalid`] with every fault; [`Refusal::NotFound`], [`Refusal::Forbidden`], [`Refusal::Conflict`],
/// [`Refusal::Store`].
pub async fn merge(
    ctx: &Context,
    sent: Sent,
    (first, second): (&str, &str),
    versions: (u32, u32),
    pairs: &[(String, String)],
) -> Result<Merging, Refusal> {
    ctx.needs(Action::Supervise)?;
    ctx.db
        .write(async |tx| {
            if let Some(outcome) = once::before(tx, ctx, sent).await? {
                return Ok(Merging::Done(outcome));
            }
            let first = why::child(tx, ctx, first).await?;
            let second = why::child(tx, ctx, second).await?;
            if first.id == second.id {
                return Ok(Merging::Already(format!("/children/{}", first.code)));
            }
            if (first.version, second.version) != versions {
                return Ok(Merging::Changed);
            }
            let a_visits = visits::of_child_up_to(tx, first.id, ctx.today).await?;
            let b_visits = visits::of_child_up_to(tx, second.id, ctx.today).await?;
            let (a_story, b_story) = (story(&a_visits), story(&b_visits));
            let a = Half { child: &first.facts, left_on: first.left_on, visits: &a_story };
            let b = Half { child: &second.facts, left_on: second.left_on, visits: &b_story };
            let form = read_merge(pairs, &questions(&a, &b)).map_err(Refusal::Invalid)?;
            let one = match merged(&a, &b, form.survivor, &form.answers) {
                Ok(one) => one,
                Err(contradictions) => return Ok(Merging::Contradicts(contradictions)),
            };
            let merging = match form.survivor {
                Side::First => Both { stays: first, goes: second, stay_visits: a_visits, go_visits: b_visits },
                Side::Second => Both { stays: second, goes: first, stay_visits: b_visits, go_visits: a_visits },
            };
            let path = merging.write(tx, ctx, &form, &one).await?;
            once::remember(tx, ctx, sent, &path).await?;
            Ok(Merging::Done(path))
        })
        .await
}

/// The record that goes on and the one that leads to it from now on.
struct Both {
    stays: ChildRecord,
    goes: ChildRecord,
    stay_visits: Vec<VisitRecord>,
    go_visits: Vec<VisitRecord>,
}

impl Both {
    /// Everything in the transaction at hand; answers where to look.
    async fn write(&self, tx: &Tx, ctx: &Context, form: &MergeForm, one: &Merged) -> Result<String, StoreError> {
        self.facts(tx, ctx, form, one).await?;
        self.places(tx).await?;
        let why = Correction { by: ctx.actor.person, at: ctx.now, reason: &form.note };
        let age = |record: &VisitRecord| u16::try_from(days_between(one.child.born, record.visit.on)).unwrap_or(0);
        for record in &self.go_visits {
            let moved = VisitRecord { child: self.stays.id, sex: one.child.sex, age_days: age(record), ..record.clone() };
            visits::rehome(tx, &moved, why).await?;
        }
        for record in &self.stay_visits {
            let aged = VisitRecord { sex: one.child.sex, age_days: age(record), ..record.clone() };
            if aged != *record {
                visits::born_otherwise(tx, &aged).await?;
            }
        }
        let correction = RecordCorrection {
            what: Corrected::Merge { into: self.stays.id },
            child: self.goes.id,
            from_on: self.go_visits.first().map_or(self.goes.facts.registered_on, |v| v.visit.on),
            reason: SAME_CHILD.to_owned(),
            note: form.note.clone(),
            by: ctx.actor.person,
            at: ctx.now,
        };
        corrections::append(tx, &correction).await?;
        self.home(tx, ctx).await?;
        summaries::remove(tx, self.goes.id).await?;
        reassess::reassess_merged(tx, &ctx.protocols, self.stays.id, self.goes.id, reassess::Moment::of(ctx)).await?;
        for record in [&self.stays, &self.goes] {
            audit::note(tx, ctx, "child.merge", "child", &record.code, &["record", "note"]).await?;
        }
        Ok(format!("/children/{}?done=merged", self.stays.code))
    }

    /// What is known of the child from both records; what only the family knows stays as the record that goes on has it.
    async fn facts(&self, tx: &Tx, ctx: &Context, form: &MergeForm, one: &Merged) -> Result<(), StoreError> {
        let (stays, goes) = (&self.stays, &self.goes);
        let gestation = if one.gestation == form.survivor { stays } else { goes };
        let (looks_like, decided) = match (stays.looks_like, goes.looks_like) {
            (Some(other), _) if other != goes.id => (Some(other), stays.different_child_decided),
            (_, Some(other)) if other != stays.id => (Some(other), goes.different_child_decided),
            _ => (None, false),
        };
        let record = ChildRecord {
            facts: domain::child::Child { status: stays.facts.status, ..one.child.clone() },
            gestation_source: gestation.gestation_source,
            known_as: stays.known_as.clone().or_else(|| goes.known_as.clone()),
            caregiver_relation: stays.caregiver_relation.clone().or_else(|| goes.caregiver_relation.clone()),
            phone: stays.phone.clone().or_else(|| goes.phone.clone()),
            directions: stays.directions.clone().or_else(|| goes.directions.clone()),
            consent_on: stays.consent_on.min(goes.consent_on),
            early_breastfeeding: stays.early_breastfeeding.or(goes.early_breastfeeding),
            first_two_days_milk_only: stays.first_two_days_milk_only.or(goes.first_two_days_milk_only),
            returns_to_work_on: stays.returns_to_work_on.or(goes.returns_to_work_on),
            looks_like,
            different_child_decided: decided,
            ..stays.clone()
        };
        children::update(tx, &record).await?;
        if (one.child.status, one.left_on) == (stays.facts.status, stays.left_on) {
            return Ok(());
        }
        let change = StatusRecord {
            status: one.child.status,
            // A child that is there after all has never been away.
            on: one.left_on.or(stays.left_on).unwrap_or(ctx.today),
            by: Some(ctx.actor.person),
            note: one.left_on.and(goes.left_note.clone()),
            at: ctx.now,
        };
        placements::change_status(tx, stays.id, stays.version + 1, &change).await
    }

    /// The child lives in the home either record knew; the record that goes lives nowhere.
    async fn home(&self, tx: &Tx, ctx: &Context) -> Result<(), StoreError> {
        if households::of_child(tx, self.stays.id).await?.is_none()
            && let Some(home) = households::of_child(tx, self.goes.id).await?
        {
            households::join(tx, self.stays.id, home, ctx.actor.person, ctx.now).await?;
        }
        households::leave(tx, self.goes.id).await
    }

    /// Where the child was before the record that goes on began.
    async fn places(&self, tx: &Tx) -> Result<(), StoreError> {
        let begun = self.stays.facts.registered_on;
        if self.goes.facts.registered_on >= begun {
            return Ok(());
        }
        let mut earlier = placements::of_child(tx, self.goes.id).await?;
        earlier.retain(|place| place.from_on < begun);
        if let Some(last) = earlier.last_mut() {
            last.to_on = begun.pred_opt();
        }
        placements::precede(tx, self.stays.id, &earlier).await
    }
}
