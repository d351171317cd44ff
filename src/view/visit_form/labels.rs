//! What a field of the form is called in the summary of faults, and where a link to it leads.

use domain::rule::RuleId;

use crate::i18n::codes;
use crate::view::parts::Ask;
use crate::view::visit_form::VisitForm;

/// Labels of fields whose name is not the end of the message's id.
const LABELS: [(&str, &str); 19] = [
    ("on", "visit-on"),
    ("arm", "visit-arm"),
    ("also", "visit-also"),
    ("danger", "visit-danger"),
    ("started", "visit-started"),
    ("feet", "visit-feet"),
    ("day", "visit-day"),
    ("contact", "visit-contact"),
    ("weight", "visit-weight"),
    ("length", "visit-length"),
    ("head", "visit-head"),
    ("meals", "visit-meals"),
    ("appetite_poor_days", "visit-appetite"),
    ("note", "visit-note"),
    ("reason", "visit-reason"),
    ("groups", "visit-groups"),
    ("recipes", "visit-recipes"),
    ("texture_usual", "visit-texture"),
    ("coach", "talk-say"),
];

const TIMES: [&str; 4] = ["formula_times", "animal_milk_times", "drink_yogurt_times", "spoon_yogurt_times"];

/// The id of the box that a fault of this field points to.
pub(super) fn id_of(field: &str) -> String {
    for name in ["on", "started"] {
        if let Some(part) = field.strip_prefix(name).and_then(|rest| rest.strip_prefix('_')) {
            return if part == "day" { name.to_owned() } else { format!("{name}-{part}") };
        }
    }
    field.to_owned()
}

/// What is wrong with a day in three boxes, whichever box it is about.
pub(super) fn date_fault(ask: Ask<'_>, name: &str) -> Option<String> {
    ["day", "month", "year"].iter().find_map(|part| ask.faults.of(&format!("{name}_{part}"))).map(|fault| codes::fault(ask.w, fault))
}

/// The words of a field.
pub(super) fn label(f: &VisitForm<'_>, field: &str) -> String {
    let w = f.w;
    let base = ["_day", "_month", "_year"].iter().find_map(|tail| field.strip_suffix(tail)).unwrap_or(field);
    if let Some((_, id)) = LABELS.iter().find(|(name, _)| *name == base) {
        return w.say(id);
    }
    if TIMES.contains(&field) {
        return w.say(&codes::id("visit", field));
    }
    let own = codes::id("visit", base);
    if w.has(&own) {
        return w.say(&own);
    }
    if let Some(rule) = field.strip_prefix("outcome_").and_then(|code| RuleId::from_code(code).ok()) {
        return codes::rule_name(w, rule);
    }
    for beginning in ["food_", "offers_", "unsafe_", "rsign_none_", "rsign_", "minutes_", "lifted_"] {
        if let Some(code) = field.strip_prefix(beginning) {
            return food_name(f, code);
        }
    }
    if field.starts_with("told_") || field.starts_with("way_") {
        return w.say("talk-last");
    }
    if field.starts_with("step") {
        return w.say("talk-heading");
    }
    if field.starts_with("other") {
        return w.say("visit-other-food");
    }
    w.say("visit-answer")
}

/// The name of a food by its code; an unknown one is shown as it is.
pub(super) fn food_name(f: &VisitForm<'_>, code: &str) -> String {
    f.all_foods.iter().find(|(known, _)| known == code).map_or_else(|| code.to_owned(), |(_, name)| name.clone())
}
