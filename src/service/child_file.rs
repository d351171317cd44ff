//! Everything a page of one child needs, as it stands or stood on a day.

use chrono::NaiveDate;
use domain::assess::Assessment;
use domain::child_code::ChildCode;
use domain::ids::ChildId;
use domain::ids::PersonId;
use domain::role::Action;
use domain::role::Role;

use crate::service::Context;
use crate::service::Refusal;
use crate::service::reassess::judge;
use crate::store::Scope;
use crate::store::StoreError;
use crate::store::areas;
use crate::store::children;
use crate::store::children::ChildRecord;
use crate::store::follow_ups;
use crate::store::follow_ups::FollowUpRecord;
use crate::store::people;
use crate::store::visits;
use crate::store::visits::VisitRecord;

/// One child's file.
#[derive(Debug, Clone)]
pub struct ChildFile {
    /// Registration.
    pub record: ChildRecord,
    /// The village's name.
    pub area_name: String,
    /// The worker's name.
    pub worker_name: String,
    /// Visits up to the day, by date, then in order of entry.
    pub visits: Vec<VisitRecord>,
    /// Follow-ups as stored today, with who closed them.
    pub follow_ups: Vec<FollowUpRecord>,
    /// The judgement as of the day.
    pub assessment: Assessment,
    /// The day.
    pub as_of: NaiveDate,
}

impl ChildFile {
    /// What the child is called.
    #[must_use]
    pub fn called(&self) -> &str {
        self.record.known_as.as_deref().unwrap_or(&self.record.name)
    }

    /// The visit with this number in the order of entry.
    #[must_use]
    pub fn visit(&self, seq: i64) -> Option<&VisitRecord> {
        self.visits.iter().find(|v| v.entry_seq == seq)
    }
}

/// Which children the actor may reach today.
#[must_use]
pub const fn scope(ctx: &Context) -> Scope {
    match ctx.actor.role {
        Role::Supervisor => Scope::Supervisor { person: ctx.actor.person },
        // Managers and administrators reach no child: their own key is in no child's row.
        Role::Worker | Role::Manager | Role::Administrator => Scope::Worker { person: ctx.actor.person, today: ctx.today },
    }
}

/// Opens a child's file as of a day.
///
/// # Errors
/// [`Refusal::NotFound`] outside the scope; [`Refusal::Forbidden`]; [`Refusal::Store`].
pub async fn open(ctx: &Context, code: &ChildCode, as_of: NaiveDate) -> Result<ChildFile, Refusal> {
    ctx.needs(Action::SeeChildren)?;
    ctx.db
        .read(async |tx| {
            let record = children::by_code_in_scope(tx, scope(ctx), code.as_str()).await?.ok_or(Refusal::NotFound)?;
            let visits = visits::of_child_up_to(tx, record.id, as_of).await?;
            let follow_ups = follow_ups::of_child(tx, record.id).await?;
            let (area_name, worker_name) = names(tx, record.area, record.worker).await?;
            let assessment = judge(&ctx.protocols, &record, &visits, &follow_ups, as_of);
            Ok(ChildFile { record, area_name, worker_name, visits, follow_ups, assessment, as_of })
        })
        .await
}

/// The key of a child in scope.
///
/// # Errors
/// [`Refusal::NotFound`] outside the scope; [`Refusal::Store`].
pub async fn find(tx: &crate::store::Tx, ctx: &Context, code: &ChildCode) -> Result<ChildRecord, Refusal> {
    children::by_code_in_scope(tx, scope(ctx), code.as_str()).await?.ok_or(Refusal::NotFound)
}

async fn names(tx: &crate::store::Tx, area: domain::ids::AreaId, worker: PersonId) -> Result<(String, String), StoreError> {
    let area = areas::by_id(tx, area).await?.map_or_else(String::new, |a| a.name);
    let worker = people::by_id(tx, worker).await?.map_or_else(String::new, |p| p.full_name);
    Ok((area, worker))
}

/// Children by key in scope, for those who follow links between records.
///
/// # Errors
/// [`Refusal::Store`].
pub async fn by_id(ctx: &Context, id: ChildId) -> Result<Option<ChildRecord>, Refusal> {
    Ok(children::by_id_in_scope(ctx.db.direct(), scope(ctx), id).await?)
}
