//! Rows of what was talked about at a visit.

use domain::counsel::Place;
use domain::counsel::Step;
use domain::counsel::StepAnswer;
use domain::counsel::StepId;
use domain::counsel::Talk;
use domain::counsel::Told;
use domain::ids::VisitId;
use domain::rule::RuleId;
use sea_orm::ActiveModelTrait;
use sea_orm::ColumnTrait;
use sea_orm::ConnectionTrait;
use sea_orm::EntityTrait;
use sea_orm::IntoActiveModel;
use sea_orm::QueryFilter;
use uuid::Uuid;

use crate::store::codes::Reading;
use crate::store::codes::uuid;
use crate::store::entity::visit_line;
use crate::store::entity::visit_step;
use crate::store::entity::visit_step_told;
use crate::store::error::StoreError;

/// A place from its number.
pub fn place(r: Reading<Uuid>, number: i32) -> Result<Place, StoreError> {
    u8::try_from(number).ok().and_then(Place::of).ok_or_else(|| r.corrupt(format!("there is no place {number}")))
}

/// A step from its row.
pub fn step(row: visit_step::Model) -> Result<(Place, Step), StoreError> {
    let r = Reading { table: "visit_steps", id: row.visit_id };
    let at = place(r, row.place)?;
    let step = match (row.line_key, row.rule, row.words) {
        (Some(key), None, words) => Step::Line { key, words },
        (None, Some(rule), words) => Step::FollowUp { rule: r.code(&rule, RuleId::from_code)?, words },
        (None, None, Some(words)) => Step::Own { words },
        _ => return Err(r.corrupt("a step is from a line, from a rule or in own words")),
    };
    Ok((at, step))
}

/// What was told of a step, from its row.
pub fn told(row: visit_step_told::Model) -> Result<(StepId, Told), StoreError> {
    let r = Reading { table: "visit_steps_told", id: row.visit_id };
    let id = StepId { visit: VisitId(row.of_visit_id.as_u128()), place: place(r, row.of_place)? };
    let answer = r.maybe_code(row.answer.as_deref(), StepAnswer::from_code)?;
    Told::of(answer, row.in_the_way).map(|told| (id, told)).ok_or_else(|| r.corrupt("neither an answer nor a reason"))
}

/// Writes the talk of a visit that has none yet.
pub async fn insert(c: &impl ConnectionTrait, visit: VisitId, talk: &Talk) -> Result<(), StoreError> {
    let visit_id = uuid(visit.0);
    if !talk.lines.is_empty() {
        let rows = talk.lines.iter().map(|key| visit_line::Model { visit_id, line_key: key.clone() }.into_active_model().reset_all());
        visit_line::Entity::insert_many(rows).exec_without_returning(c).await?;
    }
    if !talk.agreed.is_empty() {
        let rows = talk.agreed.iter().map(|(place, step)| step_row(visit_id, *place, step).into_active_model().reset_all());
        visit_step::Entity::insert_many(rows).exec_without_returning(c).await?;
    }
    if !talk.told.is_empty() {
        let rows = talk.told.iter().map(|(id, told)| told_row(visit_id, *id, told).into_active_model().reset_all());
        visit_step_told::Entity::insert_many(rows).exec_without_returning(c).await?;
    }
    Ok(())
}

/// Takes the talk of a visit away, before it is written anew.
pub async fn delete(c: &impl ConnectionTrait, visit: Uuid) -> Result<(), StoreError> {
    visit_line::Entity::delete_many().filter(visit_line::Column::VisitId.eq(visit)).exec(c).await?;
    visit_step::Entity::delete_many().filter(visit_step::Column::VisitId.eq(visit)).exec(c).await?;
    visit_step_told::Entity::delete_many().filter(visit_step_told::Column::VisitId.eq(visit)).exec(c).await?;
    Ok(())
}

fn step_row(visit_id: Uuid, place: Place, step: &Step) -> visit_step::Model {
    let place = i32::from(place.number());
    let (line_key, rule, words) = match step {
        Step::Line { key, words } => (Some(key.clone()), None, words.clone()),
        Step::FollowUp { rule, words } => (None, Some(rule.code().to_owned()), words.clone()),
        Step::Own { words } => (None, None, Some(words.clone())),
    };
    visit_step::Model { visit_id, place, line_key, rule, words }
}

fn told_row(visit_id: Uuid, id: StepId, told: &Told) -> visit_step_told::Model {
    visit_step_told::Model {
        visit_id,
        of_visit_id: uuid(id.visit.0),
        of_place: i32::from(id.place.number()),
        answer: told.answer().map(|answer| answer.code().to_owned()),
        in_the_way: told.in_the_way().map(str::to_owned),
    }
}

/// The talk as text, one answer a line, for the versions that are kept: name and value.
pub fn text(talk: &Talk) -> Vec<(String, String)> {
    let and = |words: &Option<String>| words.as_ref().map(|words| format!("; words={words}")).unwrap_or_default();
    let mut lines: Vec<(String, String)> = talk.lines.iter().map(|key| (format!("told_line.{key}"), "true".to_owned())).collect();
    for (place, step) in &talk.agreed {
        let value = match step {
            Step::Line { key, words } => format!("line={key}{}", and(words)),
            Step::FollowUp { rule, words } => format!("rule={}{}", rule.code(), and(words)),
            Step::Own { words } => format!("words={words}"),
        };
        lines.push((format!("step.{}", place.number()), value));
    }
    for (id, told) in &talk.told {
        let answer = told.answer().map_or("", StepAnswer::code);
        let way = told.in_the_way().map(|way| format!("; in_the_way={way}")).unwrap_or_default();
        lines.push((format!("step_told.{}.{}", uuid(id.visit.0), id.place.number()), format!("{answer}{way}")));
    }
    lines
}
