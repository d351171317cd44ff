//! A visit's foods, outcomes and talk as one text each beside its row, so that a story of any length is one statement. It knows the two
//! engines' ways of folding rows into JSON, and nothing of what the rows mean.

use domain::counsel::Talk;
use sea_orm::ConnectionTrait;
use sea_orm::DbBackend;
use sea_orm::FromQueryResult;
use sea_orm::QuerySelect;
use sea_orm::Select;
use sea_orm::sea_query::Expr;
use serde::Deserialize;

use crate::store::entity::visit;
use crate::store::entity::visit_food;
use crate::store::entity::visit_outcome;
use crate::store::entity::visit_step;
use crate::store::entity::visit_step_told;
use crate::store::error::StoreError;
use crate::store::rows;
use crate::store::visits::VisitRecord;

/// Columns as the arrays below name them. Both engines write numbers and texts alike; a yes or no is spelt out as 1, 0 or nothing.
const FOODS: &str = "seq, food_code, offers, response, CASE WHEN unsafe_form THEN 1 WHEN NOT unsafe_form THEN 0 END, signs, \
     minutes_after, CASE WHEN hold_lifted THEN 1 ELSE 0 END";
const OUTCOMES: &str = "seq, rule, outcome, note";

const TOLD_LINES: &str = "line_key";
const STEPS: &str = "place, line_key, rule, words";

/// A key as hexadecimal digits in both engines.
const fn steps_told(engine: DbBackend) -> &'static str {
    match engine {
        DbBackend::Postgres => "replace(of_visit_id::text, '-', ''), of_place, answer, in_the_way",
        _ => "hex(of_visit_id), of_place, answer, in_the_way",
    }
}

type FoodLine = (i32, String, i32, Option<String>, Option<u8>, Option<String>, Option<i32>, u8);
type OutcomeLine = (i32, String, String, Option<String>);
type StepLine = (i32, Option<String>, Option<String>, Option<String>);
type ToldLine = (String, i32, Option<String>, Option<String>);

#[derive(FromQueryResult)]
struct Row {
    #[sea_orm(nested)]
    visit: visit::Model,
    food_lines: String,
    outcome_lines: String,
    told_lines: String,
    step_lines: String,
    step_told_lines: String,
}

/// The visits of a query with their foods, outcomes and talks, in the query's order.
pub(super) async fn read(c: &impl ConnectionTrait, query: Select<visit::Entity>) -> Result<Vec<VisitRecord>, StoreError> {
    let engine = c.get_database_backend();
    let query = query
        .expr_as(Expr::cust(folded(engine, FOODS, "visit_foods")), "food_lines")
        .expr_as(Expr::cust(folded(engine, OUTCOMES, "visit_outcomes")), "outcome_lines")
        .expr_as(Expr::cust(folded(engine, TOLD_LINES, "visit_lines")), "told_lines")
        .expr_as(Expr::cust(folded(engine, STEPS, "visit_steps")), "step_lines")
        .expr_as(Expr::cust(folded(engine, steps_told(engine), "visit_steps_told")), "step_told_lines");
    query.into_model::<Row>().all(c).await?.into_iter().map(record).collect()
}

/// An expression that answers the lines of a visit as a JSON array of arrays, in no order.
fn folded(engine: DbBackend, columns: &str, table: &str) -> String {
    match engine {
        DbBackend::Postgres => {
            format!("(SELECT COALESCE(json_agg(json_build_array({columns})), '[]')::text FROM {table} WHERE visit_id = visits.id)")
        }
        _ => format!("(SELECT json_group_array(json_array({columns})) FROM {table} WHERE visit_id = visits.id)"),
    }
}

fn record(row: Row) -> Result<VisitRecord, StoreError> {
    let visit_id = row.visit.id;
    let mut foods: Vec<FoodLine> = lines(&row.food_lines, "visit_foods", visit_id)?;
    let mut outcomes: Vec<OutcomeLine> = lines(&row.outcome_lines, "visit_outcomes", visit_id)?;
    foods.sort_by_key(|line| line.0);
    outcomes.sort_by_key(|line| line.0);
    let food = |(seq, food_code, offers, response, unsafe_form, signs, minutes_after, hold_lifted): FoodLine| visit_food::Model {
        visit_id,
        seq,
        food_code,
        offers,
        response,
        unsafe_form: unsafe_form.map(|told| told == 1),
        signs,
        minutes_after,
        hold_lifted: hold_lifted == 1,
    };
    let outcome = |(seq, rule, outcome, note): OutcomeLine| visit_outcome::Model { visit_id, seq, rule, outcome, note };
    let talk = talk(visit_id, &row.told_lines, &row.step_lines, &row.step_told_lines)?;
    let record = rows::visit::read(row.visit, foods.into_iter().map(food).collect(), outcomes.into_iter().map(outcome).collect())?;
    Ok(VisitRecord { talk, ..record })
}

fn talk(visit_id: uuid::Uuid, told: &str, steps: &str, steps_told: &str) -> Result<Talk, StoreError> {
    let told: Vec<(String,)> = lines(told, "visit_lines", visit_id)?;
    let steps: Vec<StepLine> = lines(steps, "visit_steps", visit_id)?;
    let steps_told: Vec<ToldLine> = lines(steps_told, "visit_steps_told", visit_id)?;
    let step = |(place, line_key, rule, words): StepLine| rows::talk::step(visit_step::Model { visit_id, place, line_key, rule, words });
    let answer = |(of, of_place, answer, in_the_way): ToldLine| {
        let of_visit_id = uuid::Uuid::parse_str(&of).map_err(|e| StoreError::corrupt("visit_steps_told", visit_id, e))?;
        rows::talk::told(visit_step_told::Model { visit_id, of_visit_id, of_place, answer, in_the_way })
    };
    Ok(Talk {
        lines: told.into_iter().map(|(key,)| key).collect(),
        agreed: steps.into_iter().map(step).collect::<Result<_, _>>()?,
        told: steps_told.into_iter().map(answer).collect::<Result<_, _>>()?,
    })
}

fn lines<T: for<'de> Deserialize<'de>>(text: &str, table: &'static str, visit: uuid::Uuid) -> Result<Vec<T>, StoreError> {
    serde_json::from_str(text).map_err(|e| StoreError::corrupt(table, visit, e))
}
