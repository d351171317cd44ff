//! The answers of a kept version of a visit, in words: what was asked, and what was told then. The text is the one that the store
//! keeps, column by column; a word that is not known any more is shown as it stands.

use std::collections::BTreeMap;

use chrono::NaiveDate;
use domain::counsel::Step;
use domain::food::Texture;
use domain::protocol::Protocols;
use domain::rule::RuleId;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::format;
use crate::service::child_visits::answers;
use crate::view::child::Answered;
use crate::web::pages::talk;

/// How a column is said.
#[derive(Debug, Clone, Copy)]
enum Said {
    YesNo,
    Kg,
    Cm,
    Mm,
    Count,
    Day,
    Texture,
    /// Codes with a space between them; the beginning of the id of their words.
    Codes(&'static str),
    Rules,
    Recipes,
    Text,
}

/// Columns in the order they are told, danger first: column, what it asks, how its answer is said.
const COLUMNS: [(&str, &str, Said); 40] = [
    ("danger_signs", "visit-signs", Said::Codes("danger-sign")),
    ("oedema", "visit-feet", Said::YesNo),
    ("swallow_trouble", "visit-swallow", Said::Codes("swallow-trouble")),
    ("visited_on", "visit-day", Said::Day),
    ("contact", "visit-contact", Said::Codes("contact")),
    ("weight_g", "visit-weight", Said::Kg),
    ("length_mm", "evidence-length", Said::Cm),
    ("muac_mm", "visit-arm", Said::Mm),
    ("head_mm", "visit-head", Said::Cm),
    ("position", "visit-position", Said::Codes("position")),
    ("confirmed", "child-version-confirmed", Said::Codes("measurement")),
    ("ill", "visit-also-ill", Said::YesNo),
    ("breastfed", "visit-breastfed", Said::YesNo),
    ("breast_only", "visit-breast-only", Said::YesNo),
    ("breastfeeding_trouble", "visit-also-breastfeeding-trouble", Said::YesNo),
    ("formula_times", "visit-formula-times", Said::Count),
    ("animal_milk_times", "visit-animal-milk-times", Said::Count),
    ("drink_yogurt_times", "visit-drink-yogurt-times", Said::Count),
    ("spoon_yogurt_times", "visit-spoon-yogurt-times", Said::Count),
    ("other_drink", "visit-other-drink", Said::YesNo),
    ("solids_yesterday", "visit-solids-yesterday", Said::YesNo),
    ("solids_started_on", "visit-started", Said::Day),
    ("meals", "visit-meals", Said::Count),
    ("texture_usual", "visit-texture", Said::Texture),
    ("texture_best", "visit-texture-best", Said::Texture),
    ("recipes", "visit-recipes", Said::Recipes),
    ("food_groups", "visit-groups", Said::Codes("food-group")),
    ("iron_source", "visit-also-iron-source", Said::YesNo),
    ("sweet_drink", "visit-also-sweet-drink", Said::YesNo),
    ("unhealthy_food", "visit-also-unhealthy-food", Said::YesNo),
    ("bottle", "visit-also-bottle", Said::YesNo),
    ("low_value", "visit-low-value", Said::Codes("low-value")),
    ("appetite_poor_days", "visit-appetite", Said::Count),
    ("readiness_signs", "visit-readiness", Said::Codes("readiness-sign")),
    ("plans", "visit-plans", Said::Rules),
    ("referrals", "visit-referrals", Said::Rules),
    ("outcome", "visit-outcome", Said::Text),
    ("told_line", "talk-say", Said::Text),
    ("step", "talk-agreed", Said::Text),
    ("step_told", "talk-last", Said::Text),
];

/// Behind the danger that is a column of its own: a reaction to a food.
const REACTIONS: usize = 3;
/// Behind everything that is a column: foods, and at last the note.
const FOODS: usize = COLUMNS.len();
const NOTE: usize = FOODS + 1;

/// Tells answers in words.
#[derive(Clone, Copy)]
pub struct Telling<'a> {
    /// The reader's words.
    pub w: &'a Words,
    /// Every protocol, for the names of foods, recipes and lines.
    pub protocols: &'a Protocols,
    /// The day shown.
    pub day: NaiveDate,
}

impl Telling<'_> {
    /// What differs between two texts, danger first.
    pub fn changed(self, before: &str, after: &str) -> Vec<Answered> {
        let (before, after) = (by_name(before), by_name(after));
        let names: std::collections::BTreeSet<&String> = before.keys().chain(after.keys()).collect();
        let mut told: Vec<(usize, Answered)> = Vec::new();
        for name in names {
            let (old, new) = (before.get(name).map(String::as_str), after.get(name).map(String::as_str));
            if old == new || matches!((name.as_str(), old, new), ("referrals" | "confirmed", None | Some(""), None | Some(""))) {
                continue;
            }
            let Some((place, question)) = self.question(name, old, new) else { continue };
            told.push((
                place,
                Answered { question, before: self.answer(name, old), after: Some(self.answer(name, new)), danger: place <= REACTIONS },
            ));
        }
        told.sort_by_key(|(place, _)| *place);
        told.into_iter().map(|(_, answered)| answered).collect()
    }

    /// Every answer of a text, danger first.
    pub fn all(self, content: &str) -> Vec<Answered> {
        let mut told: Vec<(usize, Answered)> = Vec::new();
        for (name, value) in by_name(content) {
            // "Nothing was sent anywhere" is no answer of anybody's.
            if matches!(name.as_str(), "referrals" | "confirmed") && value.is_empty() {
                continue;
            }
            if let Some((place, question)) = self.question(&name, Some(&value), None) {
                let before = self.answer(&name, Some(&value));
                told.push((place, Answered { question, before, after: None, danger: place <= REACTIONS }));
            }
        }
        told.sort_by_key(|(place, _)| *place);
        told.into_iter().map(|(_, answered)| answered).collect()
    }

    /// Where an answer stands among the others and what it was about; `None` for what nobody answered.
    fn question(self, name: &str, old: Option<&str>, new: Option<&str>) -> Option<(usize, String)> {
        if name == "note" {
            return Some((NOTE, self.w.say("visit-note")));
        }
        let (column, rest) = name.split_once('.').unwrap_or((name, ""));
        if column == "food" {
            let reacted = |value: Option<&str>| value.is_some_and(|value| value.contains("response=reaction"));
            let place = if reacted(old) || reacted(new) { REACTIONS } else { FOODS };
            return Some((place, self.food(rest)));
        }
        let at = COLUMNS.iter().position(|(known, ..)| *known == column)?;
        // What stands after the reactions moves one place on, so that no question shares their place.
        let place = if at < REACTIONS { at } else { at + 1 };
        let question = match (column, RuleId::from_code(rest)) {
            ("outcome", Ok(rule)) => codes::rule_name(self.w, rule),
            _ => self.w.say(COLUMNS[at].1),
        };
        Some((place.min(FOODS), question))
    }

    fn answer(self, name: &str, value: Option<&str>) -> String {
        let Some(value) = value else { return self.w.say("stands-nothing") };
        let (column, rest) = name.split_once('.').unwrap_or((name, ""));
        match column {
            "food" => self.offer(value),
            "outcome" => self.outcome(value),
            "told_line" => talk::words_of(&Step::Line { key: rest.to_owned(), words: None }, self.protocols, self.w),
            "step" => self.step(value),
            "step_told" => self.step_told(value),
            _ => {
                COLUMNS.iter().find(|(known, ..)| *known == column).map_or_else(|| value.to_owned(), |(_, _, said)| self.say(*said, value))
            }
        }
    }

    fn say(self, said: Said, value: &str) -> String {
        let w = self.w;
        let number = value.parse::<i64>().ok();
        let word = match said {
            Said::YesNo => Some(w.say(if value == "true" { "common-yes" } else { "common-no" })),
            Said::Kg => number.map(|grams| format::kg(w, grams)),
            Said::Cm => number.map(|mm| format::cm(w, mm)),
            Said::Mm => number.map(|mm| format::mm(w, mm)),
            Said::Count => number.map(|count| format::count(w, count.unsigned_abs())),
            Said::Day => value.parse().ok().map(|day| format::day_near(w, day, self.day)),
            Said::Texture => number.and_then(|level| Texture::new(u8::try_from(level).ok()?)).map(|texture| codes::texture(w, texture)),
            Said::Codes(kind) => Some(self.each(value, |code| self.code(kind, code))),
            Said::Rules => {
                Some(self.each(value, |code| RuleId::from_code(code).map_or_else(|_| code.to_owned(), |r| codes::rule_name(w, r))))
            }
            Said::Recipes => Some(self.each(value, |code| self.recipe(code))),
            Said::Text => None,
        };
        word.unwrap_or_else(|| value.to_owned())
    }

    fn each(self, value: &str, words: impl Fn(&str) -> String) -> String {
        let said: Vec<String> = value.split(' ').filter(|code| !code.is_empty()).map(words).collect();
        if said.is_empty() { self.w.say("common-none-of-these") } else { said.join(", ") }
    }

    fn code(self, kind: &str, code: &str) -> String {
        let id = codes::id(kind, code);
        if self.w.has(&id) { self.w.say(&id) } else { code.to_owned() }
    }

    fn food(self, code: &str) -> String {
        let known = domain::food::FoodCode(code.to_owned());
        let lang = self.w.lang().code();
        self.protocols.iter().filter_map(|p| p.food(&known)).last().map_or_else(|| code.to_owned(), |food| food.name(lang).to_owned())
    }

    fn recipe(self, code: &str) -> String {
        let lang = self.w.lang().code();
        self.protocols.iter().filter_map(|p| p.recipe(code)).last().map_or_else(|| code.to_owned(), |recipe| recipe.text(lang).name.clone())
    }

    /// How a food was taken, with all that was told of it.
    fn offer(self, value: &str) -> String {
        let w = self.w;
        let mut said = Vec::new();
        for (part, value) in value.split("; ").filter_map(|part| part.split_once('=')) {
            let number = || value.parse::<i64>().unwrap_or_default();
            said.push(match (part, value) {
                ("response", _) => self.code("response", value),
                ("signs", _) => self.each(value, |code| self.code("reaction-sign", code)),
                ("minutes_after", _) => w.say_with("common-minutes", args!["count" => number()]),
                ("offers", _) => w.say_with("common-times", args!["count" => number()]),
                ("unsafe_form", "true") => w.say("child-version-unsafe"),
                ("hold_lifted", "true") => w.say("child-version-lifted"),
                _ => continue,
            });
        }
        said.join(", ")
    }

    fn outcome(self, value: &str) -> String {
        let (outcome, note) = value.split_once("; note=").map_or((value, None), |(outcome, note)| (outcome, Some(note)));
        let said = self.code("outcome", outcome);
        note.map_or_else(|| said.clone(), |note| self.w.say_with("talk-step-and-words", args!["step" => said.as_str(), "words" => note]))
    }

    fn step(self, value: &str) -> String {
        let (from, words) = value.split_once("; words=").map_or((value, None), |(from, words)| (from, Some(words.to_owned())));
        let step = match from.split_once('=') {
            Some(("line", key)) => Step::Line { key: key.to_owned(), words },
            Some(("rule", code)) => match RuleId::from_code(code) {
                Ok(rule) => Step::FollowUp { rule, words },
                Err(_) => return value.to_owned(),
            },
            Some(("words", own)) => Step::Own { words: own.to_owned() },
            _ => return value.to_owned(),
        };
        talk::words_of(&step, self.protocols, self.w)
    }

    fn step_told(self, value: &str) -> String {
        let (answer, way) = value.split_once("; in_the_way=").map_or((value, None), |(answer, way)| (answer, Some(way)));
        let answer = (!answer.is_empty()).then(|| self.code("step-answer", answer));
        let way = way.map(|way| self.w.say_with("talk-way", args!["words" => way]));
        answer.into_iter().chain(way).collect::<Vec<_>>().join(", ")
    }
}

/// Answers by a name that stays the same when the order of lines changes: a food by its code, an outcome by its rule.
fn by_name(content: &str) -> BTreeMap<String, String> {
    let named = |(name, value): (&str, &str)| {
        let value = plain(value);
        match name.split_once('.') {
            Some(("food", _)) => {
                let (code, rest) = value.split_once("; ").unwrap_or((&value, ""));
                (format!("food.{code}"), rest.to_owned())
            }
            Some(("outcome", _)) => {
                let (rule, rest) = value.split_once('=').unwrap_or((&value, ""));
                (format!("outcome.{rule}"), rest.to_owned())
            }
            _ => (name.to_owned(), value),
        }
    };
    answers(content).into_iter().map(named).collect()
}

/// A value as it was typed: the store writes a line's end as two signs.
fn plain(value: &str) -> String {
    let mut text = String::new();
    let mut signs = value.chars();
    while let Some(sign) = signs.next() {
        text.push(match (sign, if sign == '\\' { signs.next() } else { None }) {
            ('\\', Some('n')) => '\n',
            ('\\', Some('r')) => '\r',
            ('\\', Some(other)) => other,
            (sign, _) => sign,
        });
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::i18n::Lang;
    use crate::i18n::words;
    use crate::service::protocols;

    fn changes(lang: Lang, before: &str, after: &str) -> Vec<(String, String, String)> {
        let protocols = protocols::for_tests();
        let telling = Telling { w: words(lang), protocols: &protocols, day: "2026-11-25".parse().expect("a date") };
        telling.changed(before, after).into_iter().map(|a| (a.question, a.before, a.after.expect("what replaced it"))).collect()
    }

    #[test]
    fn every_changed_answer_is_told_in_words_with_danger_first() {
        let before = "id\tx\nmeals\t2\nweight_g\t6900\nfood.1\tmango; offers=1; response=accepted\nwaz_h\t-100\nreferrals\t\n";
        let after = "id\tx\nmeals\t3\nweight_g\t7900\nnote\ttwo\\nlines\ndanger_signs\tfits_now lethargic\noedema\tfalse\n\
                     food.1\tbeans; offers=1\nfood.2\tmango; offers=2; response=reaction; signs=hives_widespread; minutes_after=20\nwaz_h\t20\nreferrals\t\n";
        let told = changes(Lang::En, before, after);
        let questions: Vec<&str> = told.iter().map(|(question, ..)| question.as_str()).collect();
        assert_eq!(
            questions,
            ["Signs today", "Both feet swollen?", "Mango, ripe", "Weight", "Meals and snacks", "Beans", "Anything else?"],
            "{told:?}"
        );
        assert_eq!((told[0].1.as_str(), told[1].2.as_str()), ("no answer", "No"));
        assert!(told[0].2.contains(", "), "both signs: {told:?}");
        assert!(told[2].2.contains("20 minutes") && told[2].2.contains("2 times"), "{told:?}");
        assert_eq!((told[3].1.as_str(), told[3].2.as_str()), ("6.90 kg", "7.90 kg"));
        assert_eq!(told[6].2, "two\nlines");
        assert_eq!(changes(Lang::En, after, after), []);
    }

    /// A column without words would be left out of what a correction replaced.
    #[test]
    fn every_answer_of_a_visit_has_its_question() {
        let protocols = protocols::for_tests();
        let telling = Telling { w: words(Lang::En), protocols: &protocols, day: "2026-11-25".parse().expect("a date") };
        for column in crate::store::visits::columns() {
            let known = telling.question(&column, None, None).is_some();
            assert_eq!(known, !NOT_ANSWERS.contains(&column.as_str()), "{column}");
        }
        for (_, question, said) in COLUMNS {
            for lang in [Lang::En, Lang::Fr] {
                assert!(words(lang).has(question), "{question} for {said:?} in {}", lang.code());
            }
        }
    }

    /// What nobody answered: who and when, and what the program worked out.
    const NOT_ANSWERS: [&str; 21] = [
        "id",
        "entry_seq",
        "child_id",
        "area_id",
        "worker_id",
        "recorded_by",
        "sex",
        "age_days",
        "recorded_at",
        "version",
        "voided_at",
        "waz_h",
        "laz_h",
        "wlz_h",
        "bmiz_h",
        "mauz_h",
        "hcz_h",
        "suspect",
        "protocol_id",
        "protocol_version",
        "stage",
    ];
}
