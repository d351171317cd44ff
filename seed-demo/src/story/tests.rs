//! The stories hold on every day they can be told: the same twice, never before birth, never in the future.

use std::collections::BTreeSet;

use chrono::NaiveDate;
use domain::calendar::days_between;
use domain::child::ChildStatus;

use super::*;

/// A leap day, a first, a last, and an ordinary day.
pub(crate) const DAYS: [&str; 4] = ["2028-02-29", "2026-09-01", "2026-12-31", "2026-11-25"];

pub(crate) fn day(text: &str) -> NaiveDate {
    text.parse().expect("a date")
}

const CHILDREN: u32 = 600;

fn told(today: NaiveDate) -> Vec<Story> {
    let cast = Cast::of(CHILDREN, today);
    (0..CHILDREN).map(|number| tell(number, &cast, today)).collect()
}

#[test]
fn a_story_is_the_same_however_often_and_in_whatever_order_it_is_told() {
    let today = day("2026-11-25");
    let cast = Cast::of(CHILDREN, today);
    let forwards = told(today);
    for number in (0..CHILDREN).rev() {
        assert_eq!(tell(number, &cast, today), forwards[usize::try_from(number).expect("small")]);
    }
    assert_ne!(forwards[1].child.name, forwards[2].child.name);
}

/// The database refuses a word on a step of a visit that it does not hold yet.
#[test]
fn nobody_is_asked_about_a_step_of_a_visit_that_is_entered_later() {
    let entered = |told: &Told| (domain::calendar::add_days(told.visit.on, i32::from(told.entered.days_later)), told.entered.minute);
    for today in [day("2026-11-28"), day("2026-11-25")] {
        let cast = Cast::of(2_000, today);
        for story in (0..2_000).map(|number| tell(number, &cast, today)) {
            for told in &story.visits {
                for step in told.talk.told.keys() {
                    let agreed = story.visits.iter().find(|earlier| earlier.visit.id == step.visit).expect("a visit of the story");
                    assert!(entered(agreed) <= entered(told), "{today}, child {}: {} of {}", story.number, told.visit.on, agreed.visit.on);
                }
            }
        }
    }
}

/// What an open reaction speaks against is agreed on with nobody, at that visit or later.
#[test]
fn after_a_reaction_no_family_agrees_to_try_more_of_the_kind() {
    let against = |key: &str| {
        let coaching = &spoonround::files::protocol_toml::default_protocol().coaching;
        coaching.iter().any(|line| line.key == key && line.not_with.contains(&domain::rule::RuleId::ReactionSevere))
    };
    let (mut reactions, mut agreed) = (0, 0);
    let cast = Cast::of(2_000, day("2026-11-25"));
    for story in (0..2_000).map(|number| tell(number, &cast, day("2026-11-25"))) {
        let mut reacted = false;
        for told in &story.visits {
            reacted |= told.visit.foods.iter().any(|food| food.response == Some(domain::food::Response::Reaction));
            let lines = told.talk.agreed.values().filter(|step| matches!(step, domain::counsel::Step::Line { key, .. } if against(key)));
            let count = lines.count();
            assert!(!reacted || count == 0, "child {}, {}", story.number, told.visit.on);
            agreed += count;
        }
        reactions += usize::from(reacted);
    }
    assert!(reactions > 5 && agreed > 20, "{reactions} children with a reaction, {agreed} such steps with others");
}

#[test]
fn nothing_happens_before_birth_or_registration_or_after_today_or_the_end() {
    for today in DAYS.map(day) {
        for story in told(today) {
            let who = format!("{today}, child {} ({:?})", story.number, story.plot);
            assert!(story.child.born <= story.registered_on && story.registered_on <= today, "{who}");
            assert!(story.registered_on >= Cast::started_on(today), "{who}");
            assert!(days_between(story.child.born, story.registered_on) < 720, "{who}");
            assert!(!story.visits.is_empty(), "{who}");
            let end = story.exit.as_ref().map_or(today, |exit| exit.on);
            assert!(end <= today, "{who}");
            for told in &story.visits {
                assert!(told.visit.on >= story.registered_on && told.visit.on <= end, "{who}: {}", told.visit.on);
                assert!(days_between(told.visit.on, today) >= i32::from(told.entered.days_later), "{who}");
                assert!(told.visit.solids_started_on.is_none_or(|on| on <= told.visit.on && on >= story.child.born), "{who}");
            }
            assert!(story.visits.is_sorted_by_key(|told| told.visit.on), "{who}");
            for correction in &story.corrections {
                let visit = &story.visits[correction.visit].visit;
                assert_eq!((visit.id, visit.on), (correction.becomes.id, correction.becomes.on), "{who}");
                assert!(correction.on >= visit.on && correction.on <= today, "{who}");
            }
            for moved in &story.moves {
                assert!(moved.on > story.registered_on && moved.on <= end, "{who}");
            }
        }
    }
}

#[test]
fn keys_and_codes_are_all_different() {
    let stories = told(day("2026-11-25"));
    let keys: BTreeSet<u128> = stories.iter().flat_map(|s| s.visits.iter().map(|t| t.visit.id.0).chain([s.id.0])).collect();
    let count: usize = stories.iter().map(|s| s.visits.len() + 1).sum();
    assert_eq!(keys.len(), count);
    let codes: BTreeSet<&str> = stories.iter().map(|s| s.code.as_str()).collect();
    assert_eq!(codes.len(), stories.len());
}

#[test]
fn every_plot_is_told_within_the_default_size_and_every_exit_is_there() {
    assert!(plots::children_for_all() <= 240, "{}", plots::children_for_all());
    let names: BTreeSet<&str> = plots::all().map(|plot| plot.name).collect();
    assert_eq!(names.len(), plots::all().count(), "two plots of one name");
    let today = day("2026-11-25");
    let cast = Cast::of(240, today);
    let stories: Vec<Story> = (0..240).map(|number| tell(number, &cast, today)).collect();
    assert_eq!(stories.iter().filter_map(|s| s.plot).collect::<BTreeSet<_>>(), names);
    let statuses: BTreeSet<ChildStatus> = stories.iter().map(|s| s.facts().status).collect();
    assert_eq!(statuses.len(), ChildStatus::ALL.len());
}

#[test]
fn the_programme_has_about_as_many_active_children_and_visits_as_it_should() {
    let stories = told(day("2026-11-25"));
    let active = stories.iter().filter(|s| s.exit.is_none()).count();
    let visits: usize = stories.iter().map(|s| s.visits.len()).sum();
    let all = usize::try_from(CHILDREN).expect("small");
    assert!((all * 7 / 10..all * 95 / 100).contains(&active), "{active} of {all}");
    assert!((all * 4..all * 12).contains(&visits), "{visits}");
}

#[test]
fn twins_and_siblings_share_a_home_caregiver_and_worker() {
    for today in DAYS.map(day) {
        let mut homes: std::collections::BTreeMap<u128, Vec<Story>> = std::collections::BTreeMap::new();
        for story in told(today) {
            if let Some(home) = story.home {
                homes.entry(home.0).or_default().push(story);
            }
        }
        assert!(homes.len() >= 2, "{today}");
        for children in homes.values() {
            assert_eq!(children.len(), 2, "{today}");
            let shared = |s: &Story| (s.child.caregiver.clone(), s.child.phone.clone(), s.child.area.clone(), s.worker);
            assert_eq!(shared(&children[0]), shared(&children[1]), "{today}");
        }
        assert!(homes.values().any(|c| c[0].child.born == c[1].child.born), "twins, {today}");
        assert!(homes.values().any(|c| c[0].child.born != c[1].child.born), "siblings, {today}");
    }
}

#[test]
fn agreed_steps_are_there_in_every_state_and_lines_are_told_once() {
    use domain::counsel;
    use domain::counsel::StepAnswer;
    use domain::counsel::TalkAt;
    let stories = told(day("2026-11-25"));
    let mut states: BTreeSet<Option<StepAnswer>> = BTreeSet::new();
    for story in &stories {
        let talks: Vec<TalkAt<'_>> =
            story.visits.iter().map(|told| TalkAt { visit: told.visit.id, on: told.visit.on, talk: &told.talk }).collect();
        states.extend(counsel::steps(&talks).iter().map(counsel::StepLine::answer));
        let told: Vec<&String> = talks.iter().flat_map(|at| &at.talk.lines).collect();
        assert_eq!(told.len(), told.iter().collect::<BTreeSet<_>>().len(), "child {}: a line told twice", story.number);
    }
    assert_eq!(states.len(), StepAnswer::ALL.len() + 1, "{states:?}");
}
