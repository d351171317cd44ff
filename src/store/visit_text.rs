//! A visit as stable text, one answer a line, for the versions that are kept. It is for people and comparisons, not for rules.

use crate::store::rows;
use crate::store::visits::VisitRecord;
use sea_orm::Iterable;
use sea_orm::ModelTrait;
use sea_orm::Value;

use crate::store::entity::visit;

/// Column, tab, value; absent answers are left out. Foods, outcomes and what was talked about follow.
pub fn content(record: &VisitRecord) -> String {
    let row = rows::visit::write(record);
    let mut lines = String::new();
    for column in visit::Column::iter() {
        if let Some(text) = text(&row.get(column)) {
            line(&mut lines, sea_orm::IdenStatic::as_str(&column), &text);
        }
    }
    for food in rows::visit::write_foods(record) {
        let parts = [
            Some(food.food_code),
            Some(format!("offers={}", food.offers)),
            food.response.map(|r| format!("response={r}")),
            food.unsafe_form.map(|u| format!("unsafe_form={u}")),
            food.signs.map(|s| format!("signs={s}")),
            food.minutes_after.map(|m| format!("minutes_after={m}")),
            food.hold_lifted.then(|| "hold_lifted=true".to_owned()),
        ];
        line(&mut lines, &format!("food.{}", food.seq), &parts.into_iter().flatten().collect::<Vec<_>>().join("; "));
    }
    for told in rows::visit::write_outcomes(record) {
        let note = told.note.map(|n| format!("; note={n}")).unwrap_or_default();
        line(&mut lines, &format!("outcome.{}", told.seq), &format!("{}={}{note}", told.rule, told.outcome));
    }
    for (name, value) in rows::talk::text(&record.talk) {
        line(&mut lines, &name, &value);
    }
    lines
}

/// Every column that such a text can name.
#[cfg(test)]
pub fn columns() -> Vec<String> {
    visit::Column::iter().map(|column| sea_orm::IdenStatic::as_str(&column).to_owned()).collect()
}

fn line(lines: &mut String, name: &str, value: &str) {
    let value = value.replace('\\', "\\\\").replace('\n', "\\n").replace('\r', "\\r");
    lines.push_str(&format!("{name}\t{value}\n"));
}

fn text(value: &Value) -> Option<String> {
    match value {
        Value::Bool(v) => v.map(|v| v.to_string()),
        Value::Int(v) => v.map(|v| v.to_string()),
        Value::BigInt(v) => v.map(|v| v.to_string()),
        Value::String(v) => v.as_ref().map(ToString::to_string),
        Value::Uuid(v) => v.as_ref().map(ToString::to_string),
        Value::ChronoDate(v) => v.as_ref().map(ToString::to_string),
        Value::ChronoDateTimeUtc(v) => v.as_ref().map(|v| v.to_rfc3339()),
        _ => None,
    }
}
