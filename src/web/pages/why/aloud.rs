//! The text to read to a clinician, put together from a follow-up. The child is told by its code, sex and age; name, caregiver, phone
//! and village are left out, since what is read or copied out of the program should say no more than the question needs.

use domain::growth;
use domain::growth::Indicator;
use domain::visit::Measurement;

use crate::args;
use crate::i18n::Voice;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::explain_in;
use crate::i18n::format;
use crate::i18n::quantity_in;
use crate::i18n::scale;
use crate::service::why::Explained;
use crate::store::visits::VisitRecord;
use crate::view::aloud::Aloud;
use crate::view::aloud::Section;
use crate::web::pages::find::printed;

const VOICE: Voice = Voice::Spoken;
/// Visits with measurements that are read.
const LAST: usize = 3;

/// The text.
pub fn text(w: &Words, found: &Explained, past: bool, food: &dyn Fn(&str) -> String) -> Aloud {
    let mut sections = vec![what_was_found(w, found, food)];
    if let Some(error) = &found.scale {
        sections.push((w.say("scale-heading"), scale::sentences_in(VOICE, w, error)));
    }
    sections.push(measurements(w, found));
    sections.push((w.say("aloud-signs"), vec![signs(w, found)]));
    sections.push((w.say("aloud-advised"), vec![codes::rule_do(w, found.follow_up.rule)]));
    sections.push((w.say("aloud-told"), told(w, found)));
    let also: Vec<String> = found
        .file
        .assessment
        .open()
        .into_iter()
        .filter(|f| (f.rule, f.opened_by) != (found.follow_up.rule, found.follow_up.opened_by_visit))
        .map(|f| w.say_with("aloud-also-line", args!["rule" => codes::rule_name(w, f.rule), "class" => codes::class_word(w, f.class)]))
        .collect();
    if !also.is_empty() {
        sections.push((w.say("aloud-also"), also));
    }
    sections.push(cautions(w, found));
    Aloud { who: who(w, found, past), sections }
}

fn who(w: &Words, found: &Explained, past: bool) -> Vec<String> {
    let file = &found.file;
    let facts = &file.record.facts;
    let age = format::age_exact(w, facts.born, file.as_of);
    let sex = codes::sex(w, facts.sex);
    let mut lines = vec![w.say_with("aloud-who", args!["code" => printed(&file.record.code), "sex" => sex, "age" => age])];
    if file.assessment.now.corrected_by_days > 0 {
        let age = format::age_exact(w, growth::corrected_birth_date(facts, file.as_of), file.as_of);
        lines.push(w.say_with("aloud-early", args!["age" => age]));
    } else if facts.gestation_days.is_none() {
        lines.push(w.say("aloud-not-corrected"));
    }
    if past {
        lines.push(w.say_with("aloud-as-of", args!["date" => format::day_and_year(w, file.as_of)]));
    }
    lines
}

fn what_was_found(w: &Words, found: &Explained, food: &dyn Fn(&str) -> String) -> Section {
    let f = &found.follow_up;
    let mut lines = Vec::new();
    if let Some(visit) = found.visit(f.last_fired_visit) {
        let contact = codes::contact(w, visit.visit.contact).to_lowercase();
        lines.push(w.say_with("aloud-seen", args!["date" => format::day_and_year(w, visit.visit.on), "where" => contact]));
    }
    lines.push(explain_in(VOICE, f.rule, &f.evidence, w, food));
    lines.extend(f.evidence.lines().iter().map(|(key, quantity)| {
        w.say_with("aloud-number", args!["name" => codes::evidence_name(w, *key), "value" => quantity_in(VOICE, *key, quantity, w, food)])
    }));
    lines.push(match &f.closing {
        None => {
            let due = format::day_and_year(w, f.due_on);
            w.say_with("aloud-urgency", args!["class" => codes::class_word(w, f.class), "date" => due])
        }
        Some(closing) => {
            let reason = codes::close_reason(w, closing.reason);
            w.say_with("aloud-closed", args!["date" => format::day_and_year(w, closing.on), "reason" => reason])
        }
    });
    (w.say("aloud-found"), lines)
}

fn measurements(w: &Words, found: &Explained) -> Section {
    let measured = |v: &&VisitRecord| v.visit.weight.is_some() || v.visit.length.is_some() || v.visit.muac.is_some();
    let mut last: Vec<&VisitRecord> = found.file.visits.iter().rev().filter(measured).take(LAST).collect();
    last.reverse();
    let mut lines: Vec<String> = last.into_iter().map(|visit| at(w, found, visit)).collect();
    if lines.is_empty() {
        lines.push(w.say("aloud-none-measured"));
    }
    (w.say("aloud-measured"), lines)
}

/// Everything measured at a visit, in one line.
fn at(w: &Words, found: &Explained, record: &VisitRecord) -> String {
    let visit = &record.visit;
    let born = found.file.record.facts.born;
    let value = |id: &str, said: String| w.say_with(id, args!["value" => said]);
    let mut parts = Vec::new();
    parts.extend(visit.weight.map(|weight| value("aloud-weight", VOICE.kg(w, i64::from(weight.grams())))));
    parts.extend(visit.length.map(|length| value("aloud-length", VOICE.cm(w, i64::from(length.mm())))));
    parts.extend(visit.muac.map(|arm| value("aloud-arm", VOICE.mm(w, i64::from(arm.mm())))));
    if let Some(judged) = found.file.assessment.visit(visit.id) {
        for (indicator, id) in [(Indicator::Waz, "aloud-waz"), (Indicator::Laz, "aloud-laz"), (Indicator::Wlz, "aloud-wlz")] {
            parts.extend(judged.scores.get(indicator).rounded().map(|z| value(id, VOICE.z(w, z.hundredths()))));
        }
        for (suspect, measurement) in [(judged.suspect.weight, Measurement::Weight), (judged.suspect.length, Measurement::Length)] {
            if suspect {
                parts.push(w.say_with("aloud-suspect", args!["measurement" => codes::measurement(w, measurement)]));
            }
        }
    }
    parts.extend(visit.oedema.map(|swollen| w.say(if swollen { "aloud-feet-swollen" } else { "aloud-feet-fine" })));
    let head = w.say_with("aloud-at", args!["date" => format::day_and_year(w, visit.on), "age" => format::age(w, born, visit.on)]);
    format!("{head} {}.", parts.join(", "))
}

/// Danger signs as last asked.
fn signs(w: &Words, found: &Explained) -> String {
    let asked = found.file.visits.iter().rev().find_map(|v| Some((v.visit.on, v.visit.danger_signs.as_ref()?)));
    match asked {
        None => w.say("aloud-signs-not-asked"),
        Some((on, signs)) if signs.is_empty() => w.say_with("aloud-signs-none", args!["date" => format::day_and_year(w, on)]),
        Some((on, signs)) => {
            let signs: Vec<String> = signs.iter().map(|sign| codes::danger_sign(w, *sign).to_lowercase()).collect();
            w.say_with("aloud-signs-seen", args!["date" => format::day_and_year(w, on), "signs" => format::list(w, &signs)])
        }
    }
}

fn told(w: &Words, found: &Explained) -> Vec<String> {
    let outcomes = found.judged.iter().flat_map(|judged| &judged.outcomes);
    let mut lines: Vec<String> = outcomes
        .map(|told| {
            let outcome = codes::outcome(w, told.outcome);
            w.say_with("aloud-told-line", args!["date" => format::day_and_year(w, told.on), "outcome" => outcome])
        })
        .collect();
    if lines.is_empty() {
        lines.push(w.say("aloud-told-none"));
    }
    lines
}

fn cautions(w: &Words, found: &Explained) -> Section {
    let protocol = found.protocol();
    let mut lines = vec![w.say("why-caution"), w.say("common-caution-2")];
    lines.push(w.say_with("aloud-protocol", args!["protocol" => &protocol.id, "version" => &protocol.version]));
    if protocol.approved_by.is_none() {
        lines.push(w.say("common-protocol-not-approved"));
    }
    (w.say("aloud-cautions"), lines)
}
