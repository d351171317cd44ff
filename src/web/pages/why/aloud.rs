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
use crate::i18n::number_line;
use crate::i18n::rule_in_words;
use crate::i18n::scale;
use crate::service::why::Explained;
use crate::store::visits::VisitRecord;
use crate::view::aloud::Aloud;
use crate::view::aloud::Section;
use crate::web::pages::find::printed;
use crate::web::pages::why::told;

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
    sections.push(rule(w, found));
    sections.extend(also_true(w, found, food));
    sections.push(history(w, found, food));
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
        let (name, value) = number_line(VOICE, f.rule, (*key, quantity), w, food);
        // A voice says what kind of number it is; on a page the name tells.
        let (name, value) = match name.strip_suffix(" (z)") {
            Some(short) => (short.to_owned(), w.say_with("aloud-z", args!["number" => value])),
            None => (name, value),
        };
        w.say_with("aloud-number", args!["name" => name, "value" => value])
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
            parts.extend(
                judged
                    .scores
                    .get(indicator)
                    .rounded()
                    .map(|z| value(id, w.say_with("aloud-z", args!["number" => VOICE.z(w, z.hundredths())]))),
            );
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

/// What the rule looks at, in the figures of the protocol that judged it, where they come from, and which version that was.
fn rule(w: &Words, found: &Explained) -> Section {
    let f = &found.follow_up;
    let words = found.judged.as_ref().map_or_else(|| codes::rule_explain(w, f.rule), |judged| rule_in_words(w, &judged.protocol, f.rule));
    let mut lines = vec![VOICE.spell(w, &words)];
    if let Some(judged) = &found.judged {
        let source = VOICE.spell(w, judged.protocol.rules.source(f.rule));
        lines.push(w.say_with("aloud-number", args!["name" => w.say("why-protocol-source"), "value" => source.trim_end_matches('.')]));
    }
    lines.push(w.say_with("aloud-protocol", args!["protocol" => &f.protocol_id, "version" => &f.protocol_version]));
    (w.say("why-source"), lines)
}

/// What is true too and opens nothing, and why; nothing if there is none.
fn also_true(w: &Words, found: &Explained, food: &dyn Fn(&str) -> String) -> Option<Section> {
    let lines: Vec<String> = found
        .follow_up
        .also_true
        .iter()
        .flat_map(|rule| {
            let also = told::also(w, found, *rule, food);
            let head = match also.reason {
                Some(reason) => w.say_with("aloud-number", args!["name" => also.name, "value" => reason]),
                None => format!("{}.", also.name),
            };
            [Some(head), also.why.map(|why| VOICE.spell(w, &why))].into_iter().flatten()
        })
        .collect();
    (!lines.is_empty()).then(|| (w.say("why-also"), lines))
}

/// Class and day of the check through its time. By whom is left out, as everywhere here.
fn history(w: &Words, found: &Explained, food: &dyn Fn(&str) -> String) -> Section {
    let steps = found.steps.iter().map(|step| {
        let told = told::step(w, found, step, food);
        let class = codes::class_word(w, step.class);
        let (on, due) = (format::day_and_year(w, step.on), format::day_and_year(w, step.due_on));
        let line =
            w.say_with("aloud-step", args!["date" => on, "what" => told.what, "why" => VOICE.spell(w, told.reason.trim_end_matches('.'))]);
        format!("{line} {}", w.say_with("aloud-urgency", args!["class" => class, "date" => due]))
    });
    let mut lines: Vec<String> = steps.collect();
    if lines.is_empty() {
        lines = found
            .history
            .iter()
            .map(|event| told::of_record(w, event))
            .map(|(on, what)| w.say_with("aloud-number", args!["name" => on, "value" => what]))
            .collect();
    }
    (w.say("why-history"), lines)
}

fn cautions(w: &Words, found: &Explained) -> Section {
    let protocol = found.protocol();
    let mut lines = vec![w.say("why-caution"), w.say("common-caution-2")];
    if protocol.approved_by.is_none() {
        lines.push(w.say("common-protocol-not-approved"));
    }
    (w.say("aloud-cautions"), lines)
}
