//! Tests of the round and its sheet.

use domain::errand::FollowUpDue;
use domain::errand::VisitDue;
use domain::evidence::Evidence;
use domain::evidence::EvidenceKey;
use domain::evidence::Quantity;
use domain::rule::Class;
use domain::rule::RuleId;
use scraper::Html;
use scraper::Selector;

use super::*;
use crate::i18n::Lang;
use crate::i18n::words;

fn d(text: &str) -> NaiveDate {
    text.parse().expect("a date")
}

fn food(code: &str) -> String {
    code.to_owned()
}

fn follow_up(class: Class, due: &str) -> Errand {
    let evidence = Evidence(vec![(EvidenceKey::Muac, Quantity::Millimetres(113)), (EvidenceKey::Limit, Quantity::Millimetres(115))]);
    let first = FollowUpDue { class, rule: RuleId::WastingSevere, due_on: d(due), evidence, open_count: 1, unanswered_since: None };
    Errand::FollowUp { first, visit: None }
}

fn visit() -> Errand {
    Errand::Visit(VisitDue::Open { target: d("2026-11-23"), until: d("2026-12-03") })
}

fn home<'a>(name: &'a str, village: &'a str, errand: &'a Errand) -> Home<'a> {
    Home { code: "CH000001", name, known_as: None, born: d("2026-01-23"), village, phone: None, errand, last_seen_on: None }
}

fn page<'a>(homes: Vec<Home<'a>>) -> RoundPage<'a> {
    RoundPage {
        day: d("2026-11-25"),
        whose: None,
        homes,
        later: Vec::new(),
        seen: Vec::new(),
        next_due: None,
        continues: false,
        more: None,
        print: "/round/print".to_owned(),
        query: "",
        food: &food,
    }
}

fn texts(markup: &Markup, css: &str) -> Vec<String> {
    let html = Html::parse_fragment(&markup.0);
    let folded = |text: String| text.split_whitespace().collect::<Vec<_>>().join(" ");
    html.select(&Selector::parse(css).expect("a selector")).map(|e| folded(e.text().collect())).collect()
}

#[test]
fn the_heading_says_how_many_and_who_comes_first() {
    let w = words(Lang::En);
    let (today, two, week) =
        (follow_up(Class::Today, "2026-11-25"), follow_up(Class::TwoDays, "2026-11-18"), follow_up(Class::Week, "2026-11-26"));
    let heading = |page: RoundPage<'_>| texts(&body(w, &page), "h1").join("");
    let two_pressing = vec![home("Sela", "Sanga Point", &today), home("Pemba", "Ulopi", &two), home("Fanu", "Ulopi", &week)];
    assert_eq!(heading(page(two_pressing.clone())), "3 homes left. Sela and Pemba first.");
    assert_eq!(heading(page(vec![home("Fanu", "Ulopi", &week)])), "1 home left. Fanu first.");
    let many = (0..5).map(|_| home("Sela", "Ulopi", &today)).collect();
    assert_eq!(heading(page(many)), "5 homes left. Sela, Sela and 3 others first.");
    let over = RoundPage { more: Some("/round?after=x".to_owned()), ..page(two_pressing.clone()) };
    assert_eq!(heading(over), "More than 3 homes left. Sela and Pemba first.");
    assert_eq!(heading(RoundPage { continues: true, ..page(two_pressing) }), "3 homes more. Sela and Pemba first.");
    assert_eq!(heading(page(Vec::new())), "No homes are due today");
}

#[test]
fn every_pressing_line_carries_its_village_and_the_others_rest_in_theirs() {
    let w = words(Lang::En);
    let (now, week, fort) =
        (follow_up(Class::Now, "2026-11-25"), follow_up(Class::Week, "2026-11-26"), follow_up(Class::Fortnight, "2026-11-30"));
    let shown = body(
        w,
        &page(vec![
            home("Sela", "Sanga Point", &now),
            home("Fanu", "Ulopi", &week),
            home("Tavi", "Ulopi", &fort),
            home("Ibo", "Mbiro Hill", &fort),
        ]),
    );
    assert!(texts(&shown, ".path > li:first-child .quiet")[0].ends_with("Sanga Point"));
    assert_eq!(texts(&shown, ".path > .place"), ["Ulopi", "Mbiro Hill"]);
    assert!(
        texts(&shown, ".path .when")
            .iter()
            .zip(["Emergency", "Within 7 days · due tomorrow", "Within 14 days · by Monday"])
            .all(|(a, b)| a == b)
    );
}

#[test]
fn late_is_said_with_its_days_and_a_visit_due_beside_a_follow_up_appears_once() {
    let w = words(Lang::En);
    let Errand::FollowUp { first, .. } = follow_up(Class::TwoDays, "2026-11-18") else { panic!("a follow-up") };
    let first = FollowUpDue { open_count: 3, ..first };
    let errand = Errand::FollowUp { first, visit: Some(VisitDue::Late { closed_on: d("2026-11-16") }) };
    let shown = body(w, &page(vec![home("Pemba", "Ulopi", &errand)]));
    assert_eq!(texts(&shown, ".when"), ["Within 2 days · 7 days late"]);
    assert_eq!(texts(&shown, ".why"), ["Much too thin: arm 113 mm, below 115 mm. And 2 more to follow up. Visit due too: 9 days late."]);
    assert_eq!(texts(&shown, ".home").len(), 1);
}

#[test]
fn an_unanswered_referral_asks_whether_they_arrived_from_the_next_day_on() {
    let w = words(Lang::En);
    for (since, asks) in [("2026-11-24", true), ("2026-11-25", false)] {
        let Errand::FollowUp { first, .. } = follow_up(Class::Today, "2026-11-25") else { panic!("a follow-up") };
        let errand = Errand::FollowUp { first: FollowUpDue { unanswered_since: Some(d(since)), ..first }, visit: None };
        let why = texts(&body(w, &page(vec![home("Sela", "Ulopi", &errand)])), ".why").join("");
        assert_eq!(why.contains("Did they reach the clinic?"), asks, "{since}: {why}");
    }
}

#[test]
fn a_finished_home_says_what_nobody_looked_at() {
    let w = words(Lang::En);
    let said = |not_checked: &[Check], errand: Option<&Errand>| {
        let seen = SeenHome { code: "CH000002", name: "Rumi", born: d("2026-04-25"), not_checked, errand };
        let shown = body(w, &RoundPage { seen: vec![seen], ..page(Vec::new()) });
        texts(&shown, ".done .why").join("")
    };
    assert_eq!(said(&[], None), "Seen. No concern in what you checked.");
    assert_eq!(said(&[Check::Length, Check::Feet], None), "Seen. No concern in what you checked. Not checked: length and feet.");
    assert_eq!(said(&Check::ALL, None), "Seen. Nothing was measured or checked.");
    let week = follow_up(Class::Week, "2026-12-02");
    assert_eq!(
        said(&[Check::Feet], Some(&week)),
        "Seen. Much too thin: arm 113 mm, below 115 mm. Within 7 days, by 2 December. Not checked: feet."
    );
}

#[test]
fn a_visit_is_called_by_the_age_it_aims_at() {
    let shown = body(words(Lang::En), &page(vec![home("Neruka", "Ulopi", &visit())]));
    assert_eq!(
        (texts(&shown, ".when"), texts(&shown, ".why")),
        (vec!["Visit · until 3 December".to_owned()], vec!["Visit at 10 months.".to_owned()])
    );
}

#[test]
fn names_cannot_break_out() {
    let visit = visit();
    let shown = body(words(Lang::En), &page(vec![home("<script>x</script>", "<i>U</i>", &visit)])).0;
    assert!(!shown.contains("<script>") && !shown.contains("<i>U"), "{shown}");
}

#[test]
fn the_sheet_has_a_line_a_home_with_all_its_boxes() {
    let (visit, today) = (visit(), follow_up(Class::Today, "2026-11-25"));
    let mut young = home("Ibomi", "Sanga Point", &visit);
    young.born = d("2026-08-01");
    let shown = sheet::body(words(Lang::En), &page(vec![home("Sela", "Ulopi", &today), young]), Some("440"));
    assert_eq!(texts(&shown, "tbody tr").len(), 2);
    let (old, young) = (texts(&shown, "tbody tr:first-child td"), texts(&shown, "tbody tr:last-child td"));
    assert_eq!((old[2].as_str(), young[2].as_str()), ("under 115? not done", "under 110? not done"));
    assert!(old.iter().any(|cell| cell.contains("A B C D E F G none not done")), "{old:?}");
    assert!(young.iter().any(|cell| cell.contains("Anything besides breast milk?")), "{young:?}");
    assert!(texts(&shown, ".sheet-foot").join("").contains("Emergency: 440"));
}

#[test]
fn arm_limits_begin_at_six_weeks_and_change_at_six_months() {
    let born = d("2026-05-25");
    for (day, limit) in [("2026-07-05", None), ("2026-07-06", Some(110)), ("2026-11-24", Some(110)), ("2026-11-25", Some(115))] {
        assert_eq!(sheet::arm_limit_mm(born, d(day)), limit, "{day}");
    }
}
