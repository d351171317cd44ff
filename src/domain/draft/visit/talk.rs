//! What was talked about at a visit, as its form names it: `coach` (keys of lines told); `step1` to `step3` (`line:KEY`, `rule:CODE` or
//! `own:WORDS`) with `step1_words` to `step3_words`; for each step asked about `told_VISIT_PLACE` and `way_VISIT_PLACE`, where VISIT is
//! the key of the visit at which it was agreed. There is no fourth place to fill, and no answer means not asked.

use std::collections::BTreeMap;
use std::collections::BTreeSet;

use crate::counsel::Place;
use crate::counsel::Step;
use crate::counsel::StepAnswer;
use crate::counsel::StepId;
use crate::counsel::Talk;
use crate::counsel::Told;
use crate::draft::Reader;
use crate::fault::Fault;
use crate::ids::VisitId;
use crate::rule::RuleId;

/// The longest step or reason, in characters.
pub const MOST_WORDS: usize = 300;
/// The longest key of a coaching line.
const MOST_KEY: usize = 80;

/// The field of a step's choice.
#[must_use]
pub fn step_field(place: Place) -> String {
    format!("step{}", place.number())
}

/// The field of a step's words.
#[must_use]
pub fn words_field(place: Place) -> String {
    format!("step{}_words", place.number())
}

/// The field of what became of a step.
#[must_use]
pub fn told_field(id: StepId) -> String {
    format!("told_{}", tail(id))
}

/// The field of what was in the way.
#[must_use]
pub fn way_field(id: StepId) -> String {
    format!("way_{}", tail(id))
}

fn tail(id: StepId) -> String {
    format!("{:032x}_{}", id.visit.0, id.place.number())
}

fn id_of(tail: &str) -> Option<StepId> {
    let (visit, place) = tail.split_once('_')?;
    Some(StepId { visit: VisitId(u128::from_str_radix(visit, 16).ok()?), place: Place::of(place.parse().ok()?)? })
}

/// The value that chooses a step again.
#[must_use]
pub fn choice_of(step: &Step) -> String {
    match step {
        Step::Line { key, .. } => format!("line:{key}"),
        Step::FollowUp { rule, .. } => format!("rule:{}", rule.code()),
        Step::Own { words } => format!("own:{words}"),
    }
}

/// Reads the talk of a form.
pub(super) fn read(r: &mut Reader<'_>) -> Talk {
    let lines: BTreeSet<String> = r.all("coach").filter(|key| is_key(key)).map(str::to_owned).collect();
    if r.all("coach").any(|key| !is_key(key)) {
        r.fault("coach", Fault::UnknownChoice);
    }
    let agreed = Place::ALL.into_iter().filter_map(|place| Some((place, step(r, place)?))).collect();
    Talk { lines, agreed, told: told(r) }
}

fn is_key(key: &str) -> bool {
    key.len() <= MOST_KEY && key.chars().all(|c| c.is_ascii_alphanumeric() || c == '_')
}

/// A step of the form. Words beside a choice say more of it; words alone are a step of their own, and so are words beside words.
fn step(r: &mut Reader<'_>, place: Place) -> Option<Step> {
    let words = r.optional(&words_field(place), MOST_WORDS);
    let field = step_field(place);
    let choice = r.text(&field);
    match choice.split_once(':') {
        None if choice.is_empty() => words.map(|words| Step::Own { words }),
        Some(("line", key)) if !key.is_empty() && is_key(key) => Some(Step::Line { key: key.to_owned(), words }),
        Some(("rule", code)) if RuleId::from_code(code).is_ok() => RuleId::from_code(code).ok().map(|rule| Step::FollowUp { rule, words }),
        Some(("own", again)) if !again.is_empty() && again.chars().count() <= 2 * MOST_WORDS => {
            let words = words.map_or_else(|| again.to_owned(), |more| format!("{again}. {more}"));
            Some(Step::Own { words })
        }
        _ => {
            r.fault(&field, Fault::UnknownChoice);
            words.map(|words| Step::Own { words })
        }
    }
}

fn told(r: &mut Reader<'_>) -> BTreeMap<StepId, Told> {
    let tails: BTreeSet<&str> = r.named("told_").chain(r.named("way_")).map(|(tail, _)| tail).collect();
    let mut told = BTreeMap::new();
    for tail in tails {
        let Some(id) = id_of(tail) else { continue };
        let answer = r.choice(&told_field(id), |code| StepAnswer::from_code(code).ok());
        let way = r.optional(&way_field(id), MOST_WORDS);
        if let Some(words) = Told::of(answer, way) {
            told.insert(id, words);
        }
    }
    told
}

/// The pairs of a talk's form. Reading them again gives the same talk.
#[must_use]
pub fn pairs_of(talk: &Talk) -> Vec<(String, String)> {
    let mut pairs: Vec<(String, String)> = talk.lines.iter().map(|key| ("coach".to_owned(), key.clone())).collect();
    for (place, step) in &talk.agreed {
        let words = match step {
            Step::Own { words } => Some(words),
            Step::Line { words, .. } | Step::FollowUp { words, .. } => {
                pairs.push((step_field(*place), choice_of(step)));
                words.as_ref()
            }
        };
        pairs.extend(words.map(|words| (words_field(*place), words.clone())));
    }
    for (id, told) in &talk.told {
        pairs.extend(told.answer().map(|answer| (told_field(*id), answer.code().to_owned())));
        pairs.extend(told.in_the_way().map(|words| (way_field(*id), words.to_owned())));
    }
    pairs
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read_pairs(pairs: &[(String, String)]) -> (Talk, Vec<String>) {
        let mut r = Reader::new(pairs);
        let talk = read(&mut r);
        (talk, r.faults.iter().map(|(field, _)| field.to_owned()).collect())
    }

    fn typed(pairs: &[(&str, &str)]) -> (Talk, Vec<String>) {
        read_pairs(&pairs.iter().map(|(k, v)| ((*k).to_owned(), (*v).to_owned())).collect::<Vec<_>>())
    }

    fn id(visit: u128, place: u8) -> StepId {
        StepId { visit: VisitId(visit), place: Place::of(place).expect("one of three") }
    }

    fn at(talk: &Talk, place: u8) -> Option<&Step> {
        talk.agreed.get(&Place::of(place).expect("one of three"))
    }

    #[test]
    fn a_filled_talk_gives_itself_back() {
        let words = |text: &str| Some(text.to_owned());
        let talk = Talk {
            lines: BTreeSet::from(["small_spoon".to_owned(), "mid_morning".to_owned()]),
            agreed: BTreeMap::from([
                (id(0, 1).place, Step::Line { key: "fish_egg_or_meat".to_owned(), words: words("Fridays") }),
                (id(0, 2).place, Step::FollowUp { rule: RuleId::WeightLow, words: None }),
                (id(0, 3).place, Step::Own { words: "own: plate".to_owned() }),
            ]),
            told: BTreeMap::from([
                (id(u128::MAX, 1), Told::of(Some(StepAnswer::Done), None).expect("told")),
                (id(7, 2), Told::of(Some(StepAnswer::Not), words("no fish at the lake")).expect("told")),
                (id(7, 3), Told::of(None, words("away")).expect("told")),
            ]),
        };
        assert_eq!(read_pairs(&pairs_of(&talk)), (talk, Vec::new()));
        assert_eq!(read_pairs(&[]), (Talk::default(), Vec::new()));
    }

    #[test]
    fn a_fourth_step_has_no_place_and_refuses_nothing() {
        let (talk, faults) =
            typed(&[("step1_words", "a"), ("step2_words", "b"), ("step3_words", "c"), ("step4_words", "d"), ("step4", "line:e")]);
        assert_eq!((talk.agreed.len(), faults), (3, Vec::new()));
    }

    #[test]
    fn a_step_is_taken_up_again_with_its_words() {
        let (talk, _) = typed(&[("step1", "own:egg on market day"), ("step2", "own:egg"), ("step2_words", "and fish")]);
        assert_eq!(at(&talk, 1), Some(&Step::Own { words: "egg on market day".to_owned() }));
        assert_eq!(at(&talk, 2), Some(&Step::Own { words: "egg. and fish".to_owned() }));
    }

    #[test]
    fn a_step_taken_up_again_has_words_and_no_more_than_two_fields_hold() {
        let again = |count: usize| typed(&[("step1", &format!("own:{}", "é".repeat(count)))]);
        assert_eq!(again(0), (Talk::default(), vec!["step1".to_owned()]));
        assert_eq!(again(2 * MOST_WORDS).1, Vec::<String>::new());
        assert_eq!(again(2 * MOST_WORDS + 1), (Talk::default(), vec!["step1".to_owned()]));
    }

    #[test]
    fn unknown_choices_are_named_and_words_beside_them_kept() {
        let (talk, faults) = typed(&[
            ("coach", "<b>"),
            ("step1", "rule:no.such"),
            ("step1_words", "kept"),
            ("step2", "what"),
            ("told_00000000000000000000000000000007_1", "perhaps"),
            ("told_zz_9", "done"),
        ]);
        assert_eq!(at(&talk, 1), Some(&Step::Own { words: "kept".to_owned() }));
        assert_eq!((at(&talk, 2), talk.told.len()), (None, 0));
        assert_eq!(faults, ["coach", "step1", "step2", "told_00000000000000000000000000000007_1"]);
    }
}
