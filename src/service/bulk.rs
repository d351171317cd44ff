//! Children with their whole story at once, left in the database as recording it day by day would have left it: follow-ups with
//! their history, scores, lists. For loading records from elsewhere and for the demo; it asks for no scope, as nobody is signed in.

use chrono::NaiveDate;
use domain::calendar::days_between;
use domain::child::ChildStatus;
use domain::counsel::Talk;
use domain::ids::AreaId;
use domain::ids::HouseholdId;
use domain::ids::PersonId;

use domain::protocol::Protocols;
use domain::rule::RuleId;
use domain::visit::Visit;

use crate::service::change_status::reason_of;
use crate::service::in_step;
use crate::service::reassess;
use crate::service::reassess::Moment;
use crate::store::Db;
use crate::store::Scope;
use crate::store::StoreError;
use crate::store::Tx;
use crate::store::children;
use crate::store::children::ChildRecord;
use crate::store::follow_ups;
use crate::store::follow_ups::FollowUpRecord;
use crate::store::follow_ups::Recorded;
use crate::store::households;
use crate::store::placements;
use crate::store::placements::PlacementRecord;
use crate::store::placements::StatusRecord;
use crate::store::summaries;
use crate::store::visits;
use crate::store::visits::Correction;
use crate::store::visits::Indices;
use crate::store::visits::VisitRecord;

/// A child and what happened to it.
#[derive(Debug, Clone)]
pub struct Life {
    /// As registered: active, at version 1.
    pub child: ChildRecord,
    /// The home it shares with other children.
    pub home: Option<HouseholdId>,
    /// What happened since, in the order in which it was recorded.
    pub happened: Vec<Happened>,
}

/// Something that was recorded of a child.
#[derive(Debug, Clone)]
pub struct Happened {
    /// When and by whom.
    pub moment: Moment,
    /// What.
    pub what: What,
}

/// What can be recorded of a child.
#[derive(Debug, Clone)]
pub enum What {
    /// A contact.
    Visit {
        /// Its content; the key is kept.
        visit: Box<Visit>,
        /// What was talked about and agreed.
        talk: Talk,
        /// A note.
        note: Option<String>,
    },
    /// A contact told anew.
    Correction {
        /// Its content; the key says which.
        becomes: Box<Visit>,
        /// Why.
        reason: String,
    },
    /// A supervisor closed the open follow-up of a rule, if there was one.
    ClosedBySupervisor {
        /// The rule.
        rule: RuleId,
        /// The kind of reason.
        category: String,
        /// The reason in words.
        note: String,
    },
    /// The child has another worker or area from this day on.
    Moved {
        /// The area.
        area: AreaId,
        /// The worker.
        worker: PersonId,
        /// Why.
        reason: String,
    },
    /// The child left on this day.
    Left {
        /// How.
        status: ChildStatus,
        /// A word about it.
        note: Option<String>,
    },
}

/// Writes these children in one transaction, and brings their lines in the lists up to `until`.
///
/// # Errors
/// [`StoreError`]; nothing of these children is written then. [`StoreError::Conflict`] when a key or code is taken, when a
/// correction names a visit that is not there, or when a supervisor closes what is not open.
pub async fn load(db: &Db, protocols: &Protocols, lives: &[Life], until: Moment) -> Result<(), StoreError> {
    db.write(async |tx| {
        for life in lives {
            let mut growing = Growing::begin(tx, protocols, &life.child).await?;
            if let Some(home) = life.home {
                let by = life.child.registered_by;
                households::join(tx, life.child.id, home, by, life.child.recorded_at).await?;
            }
            for happened in &life.happened {
                growing.happen(happened).await?;
            }
            growing.finish(until).await?;
        }
        Ok(())
    })
    .await
}

/// A child whose story is being written: what the database holds of it is held here too, so that nothing is read back.
struct Growing<'a> {
    tx: &'a Tx,
    protocols: &'a Protocols,
    child: ChildRecord,
    placed: Vec<(NaiveDate, AreaId, PersonId)>,
    records: Vec<VisitRecord>,
    follow_ups: Vec<FollowUpRecord>,
}

impl<'a> Growing<'a> {
    async fn begin(tx: &'a Tx, protocols: &'a Protocols, child: &ChildRecord) -> Result<Self, StoreError> {
        children::insert(tx, child).await?;
        let placed = vec![(child.facts.registered_on, child.area, child.worker)];
        Ok(Self { tx, protocols, child: child.clone(), placed, records: Vec::new(), follow_ups: Vec::new() })
    }

    async fn happen(&mut self, happened: &Happened) -> Result<(), StoreError> {
        let moment = happened.moment;
        match &happened.what {
            What::Visit { visit, talk, note } => {
                let record = self.record(visit, talk, note.as_deref(), moment);
                let entry_seq = visits::insert(self.tx, &record).await?;
                self.records.push(VisitRecord { entry_seq, ..record });
                self.records.sort_by_key(|record| (record.visit.on, record.entry_seq));
            }
            What::Correction { becomes, reason } => self.correct(becomes, reason, moment).await?,
            What::ClosedBySupervisor { rule, category, note } => self.close(*rule, category, note, moment).await?,
            What::Moved { area, worker, reason } => {
                let to = PlacementRecord {
                    from_on: moment.today,
                    to_on: None,
                    area: *area,
                    worker: *worker,
                    by: moment.by.unwrap_or(*worker),
                    reason: reason.clone(),
                };
                placements::place(self.tx, self.child.id, self.child.version, &to).await?;
                (self.child.area, self.child.worker) = (*area, *worker);
                self.child.version += 1;
                self.placed.push((moment.today, *area, *worker));
                self.follow_ups = follow_ups::of_child(self.tx, self.child.id).await?;
            }
            What::Left { status, note } => {
                let change = StatusRecord { status: *status, on: moment.today, by: moment.by, note: note.clone(), at: moment.now };
                placements::change_status(self.tx, self.child.id, self.child.version, &change).await?;
                self.child.version += 1;
                self.child.facts.status = *status;
                self.child.left_on = (*status != ChildStatus::Active).then_some(moment.today);
                self.child.left_note = self.child.left_on.and(note.clone());
                // What a person records ends by that person; what time does is found by the judgement below.
                if let Some(reason) = reason_of(*status).filter(|_| moment.by.is_some()) {
                    in_step::end_all(self.tx, self.child.id, reason, moment.today, recorded(moment)).await?;
                    self.follow_ups = follow_ups::of_child(self.tx, self.child.id).await?;
                }
            }
        }
        self.settle(moment).await
    }

    /// Brings the lists up to the last day; the follow-ups are so already, as time alone opens and closes none.
    async fn finish(self, until: Moment) -> Result<(), StoreError> {
        let assessment = reassess::judge(self.protocols, &self.child, &self.records, &self.follow_ups, until.today);
        summaries::upsert(self.tx, &reassess::summary(&self.child, &self.records, &assessment)).await
    }

    /// What [`reassess::reassess_loaded`] does, but for the line in the lists, and without asking the database for what has not changed.
    async fn settle(&mut self, moment: Moment) -> Result<(), StoreError> {
        let assessment = reassess::judge(self.protocols, &self.child, &self.records, &self.follow_ups, moment.today);
        for record in &mut self.records {
            if let Some(judged) = assessment.visit(record.visit.id) {
                let after = reassess::judged_record(record, judged);
                if after != *record {
                    visits::judged(self.tx, &after).await?;
                    *record = after;
                }
            }
        }
        let found = reassess::follow_up_records(&self.child, &assessment, &self.follow_ups);
        let new = found.iter().any(|f| !self.follow_ups.contains(f));
        let gone = self.follow_ups.iter().any(|f| follow_ups::loses_its_cause(f) && found.iter().all(|other| other.id != f.id));
        if new || gone {
            follow_ups::replace_all_of_child(self.tx, self.child.id, &found, recorded(moment)).await?;
            self.follow_ups = follow_ups::of_child(self.tx, self.child.id).await?;
        }
        Ok(())
    }

    fn record(&self, visit: &Visit, talk: &Talk, note: Option<&str>, moment: Moment) -> VisitRecord {
        let (area, worker) = self.placed_on(visit.on);
        VisitRecord {
            visit: visit.clone(),
            child: self.child.id,
            area,
            worker,
            recorded_by: moment.by.unwrap_or(worker),
            sex: self.child.facts.sex,
            age_days: u16::try_from(days_between(self.child.facts.born, visit.on)).unwrap_or(0),
            recorded_at: moment.now,
            entry_seq: 0,
            version: 1,
            voided_at: None,
            talk: talk.clone(),
            note: note.map(str::to_owned),
            outcome_notes: Vec::new(),
            indices: Indices::default(),
            suspect: std::collections::BTreeSet::new(),
            protocol_id: String::new(),
            protocol_version: String::new(),
            stage: String::new(),
        }
    }

    async fn correct(&mut self, becomes: &Visit, reason: &str, moment: Moment) -> Result<(), StoreError> {
        let (area, worker) = self.placed_on(becomes.on);
        let record = self.records.iter_mut().find(|record| record.visit.id == becomes.id).ok_or_else(|| missing("visits"))?;
        record.visit = becomes.clone();
        (record.area, record.worker) = (area, worker);
        record.age_days = u16::try_from(days_between(self.child.facts.born, becomes.on)).unwrap_or(0);
        let by = moment.by.unwrap_or(worker);
        visits::replace(self.tx, record, Correction { by, at: moment.now, reason }).await?;
        record.version += 1;
        Ok(())
    }

    async fn close(&mut self, rule: RuleId, category: &str, note: &str, moment: Moment) -> Result<(), StoreError> {
        let open = self.follow_ups.iter().find(|f| f.rule == rule && f.closing.is_none()).ok_or_else(|| missing("follow_ups"))?;
        let by = moment.by.unwrap_or(self.child.worker);
        follow_ups::close_by_supervisor(self.tx, Scope::Everything, open.id, by, category, note, recorded(moment)).await?;
        self.follow_ups = follow_ups::of_child(self.tx, self.child.id).await?;
        Ok(())
    }

    /// Area and worker of the child on a day.
    fn placed_on(&self, on: NaiveDate) -> (AreaId, PersonId) {
        let then = self.placed.iter().rev().find(|(from, _, _)| *from <= on).or_else(|| self.placed.first());
        then.map_or((self.child.area, self.child.worker), |&(_, area, worker)| (area, worker))
    }
}

const fn recorded(moment: Moment) -> Recorded {
    Recorded { at: moment.now, today: moment.today, by: moment.by }
}

fn missing(table: &str) -> StoreError {
    StoreError::Conflict { what: table.to_owned() }
}
