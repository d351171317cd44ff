//! Which children a question may reach, as a condition inside the query. It knows nothing of roles beyond these three.

use chrono::NaiveDate;
use domain::ids::PersonId;
use sea_orm::Condition;
use sea_orm::sea_query::Expr;
use sea_orm::sea_query::ExprTrait;
use sea_orm::sea_query::IntoColumnRef;
use sea_orm::sea_query::Query;

use crate::store::codes::uuid;
use crate::store::entity::cover;
use crate::store::entity::supervised_area;
use crate::store::entity::supervised_worker;

/// Who asks. Outside of it nothing is found.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Scope {
    /// Own children, and those of colleagues covered for on this day.
    Worker {
        /// The worker.
        person: PersonId,
        /// The day that decides which covers count.
        today: NaiveDate,
    },
    /// Children of the areas or of the workers assigned.
    Supervisor {
        /// The supervisor.
        person: PersonId,
    },
    /// Every child: the command line, the daily tick, monthly aggregates.
    Everything,
}

impl Scope {
    /// The condition on a table that has an area and a worker on each row.
    pub(crate) fn on<A: IntoColumnRef, W: IntoColumnRef + Clone>(self, area: A, worker: W) -> Condition {
        match self {
            Self::Worker { person, today } => Condition::any().add(Expr::col(worker.clone()).eq(uuid(person.0))).add(
                Expr::col(worker).in_subquery(
                    Query::select()
                        .column(cover::Column::WorkerId)
                        .from(cover::Entity)
                        .and_where(Expr::col(cover::Column::CoveredBy).eq(uuid(person.0)))
                        .and_where(Expr::col(cover::Column::FromOn).lte(today))
                        .and_where(Expr::col(cover::Column::ToOn).gte(today))
                        .take(),
                ),
            ),
            Self::Supervisor { person } => Condition::any()
                .add(
                    Expr::col(area).in_subquery(
                        Query::select()
                            .column(supervised_area::Column::AreaId)
                            .from(supervised_area::Entity)
                            .and_where(Expr::col(supervised_area::Column::PersonId).eq(uuid(person.0)))
                            .take(),
                    ),
                )
                .add(
                    Expr::col(worker).in_subquery(
                        Query::select()
                            .column(supervised_worker::Column::WorkerId)
                            .from(supervised_worker::Entity)
                            .and_where(Expr::col(supervised_worker::Column::PersonId).eq(uuid(person.0)))
                            .take(),
                    ),
                ),
            Self::Everything => Condition::all(),
        }
    }
}
