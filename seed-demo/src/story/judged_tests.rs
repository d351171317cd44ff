//! What the rules say of the stories, on a leap day, a first, a last and an ordinary day.

use std::collections::BTreeSet;

use domain::assess::Acts;
use domain::assess::Assessment;
use domain::assess::assess_with;
use domain::child::Child;
use domain::child::ChildStatus;
use domain::follow_up::SupervisorAct;
use domain::protocol::Protocols;
use domain::rule::CloseReason;
use domain::rule::RuleId;
use domain::rule::Theme;
use domain::visit::Visit;
use spoonround::files::protocol_toml::parse_protocol;

use super::tests::DAYS;
use super::tests::day;
use super::*;

fn protocols() -> Protocols {
    let text = crate::programme::protocol_text();
    Protocols::one(parse_protocol(&text, crate::programme::PROTOCOL_NAME).expect("no fault"))
}

/// The whole judgement of a story on its last day, supervisors' closings included.
fn judge(story: &Story, visits: &[Visit], protocols: &Protocols, today: NaiveDate) -> Assessment {
    let active = Child { status: ChildStatus::Active, ..story.facts() };
    let mut acts: Vec<SupervisorAct> = Vec::new();
    for closing in &story.closings {
        let before = assess_with(&active, visits, protocols, &Acts { supervisor: &acts, left_on: None }, closing.on);
        let open = before.open().into_iter().find(|f| f.rule == closing.rule).unwrap_or_else(|| panic!("{:?}: {:?}", story.plot, closing));
        acts.push(SupervisorAct { rule: closing.rule, opened_by: open.opened_by, closed_on: closing.on });
    }
    let left_on = story.exit.as_ref().map(|exit| exit.on);
    assess_with(&story.facts(), visits, protocols, &Acts { supervisor: &acts, left_on }, today)
}

fn as_told(story: &Story) -> Vec<Visit> {
    story.visits.iter().map(|told| told.visit.clone()).collect()
}

#[test]
fn every_plot_shows_what_it_says() {
    let protocols = protocols();
    let mut faults = Vec::new();
    for today in DAYS.map(day) {
        let cast = Cast::of(240, today);
        for story in (0..plots::children_for_all()).map(|number| tell(number, &cast, today)) {
            let Some(plot) = plots::of_number(story.number) else { continue };
            let judged = judge(&story, &story.visits_as_corrected(), &protocols, today);
            let open: BTreeSet<RuleId> = judged.open().iter().map(|f| f.rule).collect();
            for rule in plot.open.iter().filter(|rule| !open.contains(rule)) {
                faults.push(format!("{today} {}: {} is not open, but {open:?}", plot.name, rule.code()));
            }
            for (rule, reason) in plot.closed {
                let shown = if *reason == CloseReason::RecordCorrected {
                    let before = judge(&story, &as_told(&story), &protocols, today);
                    before.open().iter().any(|f| f.rule == *rule) && !judged.follow_ups.iter().any(|f| f.rule == *rule)
                } else {
                    judged.follow_ups.iter().any(|f| f.rule == *rule && f.closed.is_some_and(|closed| closed.reason == *reason))
                };
                if !shown {
                    let all: Vec<_> = judged.follow_ups.iter().map(|f| (f.rule.code(), f.opened_on, f.closed.map(|c| c.reason))).collect();
                    faults.push(format!("{today} {}: {} is not closed as {}, but {all:?}", plot.name, rule.code(), reason.code()));
                }
            }
            let lists: BTreeSet<RuleId> = judged.lists.iter().map(|l| l.rule).collect();
            for rule in plot.lists.iter().filter(|rule| !lists.contains(rule)) {
                faults.push(format!("{today} {}: is not on {}, but {lists:?}", plot.name, rule.code()));
            }
            if plot.open.is_empty() && !open.is_empty() {
                faults.push(format!("{today} {}: nothing was to be open, but {open:?}", plot.name));
            }
        }
    }
    assert!(faults.is_empty(), "{} faults:\n{}", faults.len(), faults.join("\n"));
}

#[test]
fn together_the_plots_open_every_rule_close_in_every_way_and_are_on_every_list() {
    let open: BTreeSet<RuleId> = plots::all().flat_map(|plot| plot.open).copied().collect();
    let lists: BTreeSet<RuleId> = plots::all().flat_map(|plot| plot.lists).copied().collect();
    let reasons: BTreeSet<CloseReason> = plots::all().flat_map(|plot| plot.closed).map(|(_, reason)| *reason).collect();
    let missing: Vec<&str> = RuleId::ALL
        .iter()
        .filter(|rule| if rule.theme() == Theme::Visit { !lists.contains(rule) } else { !open.contains(rule) })
        .map(|rule| rule.code())
        .collect();
    assert_eq!(missing, Vec::<&str>::new());
    assert_eq!(reasons.len(), CloseReason::ALL.len(), "{reasons:?}");
}

#[test]
fn most_ordinary_children_have_nothing_open_and_few_are_urgent() {
    let protocols = protocols();
    let today = day("2026-11-25");
    let cast = Cast::of(600, today);
    let (mut active, mut with_open, mut urgent) = (0, 0, 0);
    let mut by_rule = std::collections::BTreeMap::<&str, usize>::new();
    for story in (0..600).map(|number| tell(number, &cast, today)).filter(|story| story.plot.is_none() && story.exit.is_none()) {
        let judged = judge(&story, &story.visits_as_corrected(), &protocols, today);
        active += 1;
        with_open += usize::from(!judged.open().is_empty());
        urgent += usize::from(judged.class().is_some_and(domain::rule::Class::is_urgent));
        for follow_up in judged.open() {
            *by_rule.entry(follow_up.rule.code()).or_default() += 1;
        }
    }
    // Nearly a fifth are small all along, which stays open.
    assert!((active * 8 / 100..=active * 30 / 100).contains(&with_open), "{with_open} of {active}: {by_rule:?}");
    assert!(urgent * 100 <= active * 3, "{urgent} of {active}: {by_rule:?}");
}
