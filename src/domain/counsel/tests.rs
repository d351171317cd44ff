//! Which lines are offered, in which order, and once; which steps are asked about, and what is known of each.

use super::*;
use crate::protocol::CoachMark;
use crate::protocol_toml::default_protocol;

fn d(text: &str) -> NaiveDate {
    text.parse().expect("a date")
}

fn place(n: u8) -> Place {
    Place::of(n).expect("one of three")
}

fn own(words: &str) -> Step {
    Step::Own { words: words.to_owned() }
}

fn agreed(steps: &[(u8, Step)]) -> Talk {
    Talk { agreed: steps.iter().map(|(n, step)| (place(*n), step.clone())).collect(), ..Talk::default() }
}

fn telling(of: (u128, u8), answer: Option<StepAnswer>, way: Option<&str>) -> Talk {
    let id = StepId { visit: VisitId(of.0), place: place(of.1) };
    let told = Told::of(answer, way.map(str::to_owned)).expect("something was told");
    Talk { told: BTreeMap::from([(id, told)]), ..Talk::default() }
}

fn line(key: &str, stages: &[StageId], danger: bool) -> CoachingLine {
    CoachingLine {
        key: key.to_owned(),
        stages: stages.to_vec(),
        text: key.to_owned(),
        texts: BTreeMap::new(),
        danger,
        not_with: Vec::new(),
        mark: CoachMark::Practice,
        source: "common practice".to_owned(),
    }
}

fn keys<'a>(lines: &[&'a CoachingLine]) -> Vec<&'a str> {
    lines.iter().map(|line| line.key.as_str()).collect()
}

fn at<'a>(talks: &'a [(u128, &str, Talk)]) -> Vec<TalkAt<'a>> {
    talks.iter().map(|(id, on, talk)| TalkAt { visit: VisitId(*id), on: d(on), talk }).collect()
}

#[test]
fn lines_of_the_stage_not_given_yet_danger_first_at_most_five() {
    use StageId::{Early67, Mid8};
    let mut lines: Vec<CoachingLine> = ["a", "b", "c", "d", "e"].iter().map(|key| line(key, &[Mid8], false)).collect();
    lines.push(line("other_stage", &[Early67], true));
    lines.push(line("choking", &[Early67, Mid8], true));
    let none = BTreeSet::new();
    assert_eq!(keys(&offered(&lines, Some(Mid8), &none, &BTreeSet::new())), ["choking", "a", "b", "c", "d"]);
    let given = BTreeSet::from(["choking", "b"]);
    assert_eq!(keys(&offered(&lines, Some(Mid8), &given, &BTreeSet::new())), ["a", "c", "d", "e"]);
    assert_eq!(keys(&offered(&lines, Some(Early67), &none, &BTreeSet::new())), ["other_stage", "choking"]);
    assert!(offered(&lines, None, &none, &BTreeSet::new()).is_empty(), "nothing from the exit age on");
}

#[test]
fn a_line_is_silent_while_a_follow_up_says_otherwise() {
    let mut lumps = line("lumps", &[StageId::Mid8], false);
    lumps.not_with = vec![RuleId::FeedingSwallowTrouble];
    let lines = [lumps];
    let offered = |open: &[RuleId]| offered(&lines, Some(StageId::Mid8), &BTreeSet::new(), &open.iter().copied().collect()).len();
    assert_eq!((offered(&[]), offered(&[RuleId::WeightLow]), offered(&[RuleId::FeedingSwallowTrouble])), (1, 1, 0));
}

#[test]
fn a_line_is_given_once_told_or_agreed() {
    let mut first = agreed(&[(1, Step::Line { key: "spoon".to_owned(), words: None }), (2, own("egg on market day"))]);
    first.lines.insert("upright".to_owned());
    let talks = [(1, "2026-10-01", first), (2, "2026-10-20", Talk::default())];
    assert_eq!(given(&at(&talks)), BTreeSet::from(["spoon", "upright"]));
}

#[test]
fn the_next_visit_asks_about_the_steps_of_the_last_and_keeps_older_ones_apart() {
    let talks = [
        (1, "2026-09-01", agreed(&[(1, own("old"))])),
        (2, "2026-10-01", agreed(&[(1, own("first")), (3, own("third"))])),
        (3, "2026-10-20", Talk::default()),
    ];
    let asked = to_ask(&at(&talks));
    let words = |lines: &[StepLine]| lines.iter().map(|line| line.step.clone()).collect::<Vec<_>>();
    assert_eq!((words(&asked.last), words(&asked.earlier)), (vec![own("first"), own("third")], vec![own("old")]));
    assert_eq!(to_ask(&[]), ToAsk::default());
}

#[test]
fn an_answer_closes_a_step_and_a_reason_alone_does_not() {
    let mut talks =
        vec![(1, "2026-10-01", agreed(&[(1, own("egg"))])), (2, "2026-10-20", telling((1, 1), None, Some("the hens do not lay")))];
    let known = |talks: &[(u128, &str, Talk)]| steps(&at(talks)).remove(0);
    let line = known(&talks);
    assert_eq!((line.answer(), line.told.as_ref().map(|told| told.on)), (None, Some(d("2026-10-20"))), "unanswered stays unknown");
    assert_eq!(to_ask(&at(&talks)).last.len(), 1, "and is asked about again");
    talks.push((3, "2026-11-02", telling((1, 1), Some(StepAnswer::Partly), None)));
    assert_eq!(known(&talks).answer(), Some(StepAnswer::Partly));
    assert!(to_ask(&at(&talks)).last.is_empty());
    // A later remark without an answer takes no answer back; a later answer stands.
    talks.push((4, "2026-11-10", telling((1, 1), None, Some("ill"))));
    assert_eq!(known(&talks).answer(), Some(StepAnswer::Partly));
    talks.push((5, "2026-11-20", telling((1, 1), Some(StepAnswer::Done), None)));
    assert_eq!(known(&talks).answer(), Some(StepAnswer::Done));
}

#[test]
fn what_was_told_before_a_step_was_agreed_says_nothing_of_it() {
    let mut same = agreed(&[(1, own("egg"))]);
    same.told = telling((2, 1), Some(StepAnswer::Done), None).told;
    let talks = [(1, "2026-10-01", telling((2, 1), Some(StepAnswer::Done), None)), (2, "2026-10-20", same)];
    assert_eq!(steps(&at(&talks))[0].answer(), None);
}

#[test]
fn nothing_told_is_nothing() {
    assert_eq!(Told::of(None, None), None);
    assert_eq!(Told::of(None, Some("  ".to_owned())), None);
    assert_eq!((Place::of(0), Place::of(4)), (None, None), "there is no fourth place");
}

#[test]
fn the_shipped_protocol_has_lines_with_sources_for_every_stage_in_both_languages() {
    let lines = &default_protocol().coaching;
    for stage in StageId::ALL {
        let of: Vec<&CoachingLine> = lines.iter().filter(|line| line.stages.contains(stage)).collect();
        assert!(of.len() > MOST_LINES, "{} has only {} lines", stage.code(), of.len());
        assert!(of.iter().any(|line| line.danger), "{} has no line about danger", stage.code());
    }
    for line in lines {
        assert!(!line.source.is_empty() && !line.text.is_empty(), "{}", line.key);
        assert!(line.texts.get("fr").is_some_and(|text| !text.is_empty() && *text != line.text), "{} is not in French", line.key);
    }
}
