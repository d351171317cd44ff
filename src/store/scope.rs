//! Which children a question may reach, as a condition inside the query. It knows nothing of roles beyond these three.

use chrono::NaiveDate;
use domain::ids::PersonId;
use sea_orm::Condition;
use sea_orm::sea_query::CommonTableExpression;
use sea_orm::sea_query::Expr;
use sea_orm::sea_query::ExprTrait;
use sea_orm::sea_query::IntoColumnRef;
use sea_orm::sea_query::JoinType;
use sea_orm::sea_query::Query;
use sea_orm::sea_query::SelectStatement;
use sea_orm::sea_query::UnionType;
use sea_orm::sea_query::WithClause;

use crate::store::codes::uuid;
use crate::store::entity::area;
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
    /// Children of the areas assigned, of those that lie in them, or of the workers assigned.
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
            Self::Supervisor { person } => Condition::any().add(Expr::col(area).in_subquery(areas_of(person))).add(
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

/// The areas assigned to a supervisor and all that lie in them, however deep.
pub(crate) fn areas_of(person: PersonId) -> SelectStatement {
    let assigned = Query::select()
        .column(supervised_area::Column::AreaId)
        .from(supervised_area::Entity)
        .and_where(Expr::col(supervised_area::Column::PersonId).eq(uuid(person.0)))
        .take();
    let inside = Query::select()
        .column((area::Entity, area::Column::Id))
        .from(area::Entity)
        .join(JoinType::InnerJoin, "reach", Expr::col((area::Entity, area::Column::ParentId)).equals(("reach", "area_id")))
        .take();
    // `UNION` keeps each area once, so that areas that lie in each other by mistake come to an end.
    let reach = CommonTableExpression::new()
        .query(assigned.clone().union(UnionType::Distinct, inside).to_owned())
        .column("area_id")
        .table_name("reach")
        .to_owned();
    Query::select().column("area_id").from("reach").with_cte(WithClause::new().recursive(true).cte(reach).to_owned()).to_owned()
}

#[cfg(test)]
mod tests {
    use domain::ids::AreaId;
    use domain::role::Role;
    use sea_orm::EntityTrait;
    use sea_orm::QueryFilter;

    use super::*;
    use crate::store::areas;
    use crate::store::areas::AreaRecord;
    use crate::store::children;
    use crate::store::people;
    use crate::store::testing::TestDb;
    use crate::store::testing::a_child;
    use crate::store::testing::a_person;
    use crate::store::testing::an_area;

    /// A district 1 with a valley 2 in it and a village 3 in that; a village 4 elsewhere. A child in each, all with worker 1.
    #[tokio::test]
    async fn a_supervisor_of_a_larger_area_reaches_everything_inside_and_nothing_above_or_beside() {
        let test = TestDb::new().await;
        let c = test.db.direct();
        for (n, parent) in [(1, None), (2, Some(1)), (3, Some(2)), (4, None)] {
            areas::insert(c, &AreaRecord { parent: parent.map(AreaId), ..an_area(n) }).await.expect("an area");
        }
        for (n, role) in [(1, Role::Worker), (11, Role::Supervisor), (12, Role::Supervisor), (13, Role::Supervisor)] {
            people::insert(c, &a_person(n, role)).await.expect("a person");
        }
        for n in 1..=4 {
            children::insert(c, &a_child(n, AreaId(n), PersonId(1))).await.expect("a child");
        }
        for (supervisor, assigned, reached) in [(11, 1, vec![1, 2, 3]), (12, 2, vec![2, 3]), (13, 4, vec![4])] {
            people::assign(c, PersonId(supervisor), &[AreaId(assigned)], &[]).await.expect("assigned");
            use crate::store::entity::child;
            let scope = Scope::Supervisor { person: PersonId(supervisor) };
            let seen = child::Entity::find().filter(scope.on(child::Column::AreaId, child::Column::WorkerId)).all(c).await.expect("read");
            let mut seen: Vec<u128> = seen.into_iter().map(|row| row.id.as_u128()).collect();
            seen.sort_unstable();
            assert_eq!(seen, reached, "supervisor of {assigned}");
        }
    }
}
