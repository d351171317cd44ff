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
    let evidence = Evidence::from([(EvidenceKey::Muac, Quantity::Millimetres(113)), (EvidenceKey::Limit, Quantity::Millimetres(115))]);
    let first = FollowUpDue { class, rule: RuleId::WastingSevere, due_on: d(due), evidence, open_count: 1, unanswered_since: None };
    Errand::FollowUp { first, visit: None }
}

fn visit() -> Errand {
    Errand::Visit(VisitDue::Open { target: d("2026-11-23"), until: d("2026-12-03") })
}

fn home<'a>(name: &'a str, village: &'a str, errand: &'a Errand) -> Home<'a> {
    Home {
        noted: false,
        code: "CH000001",
        name,
        known_as: None,
        born: d("2026-01-23"),
        village,
        phone: None,
        errand,
        last_seen_on: None,
        household: None,
        also: Vec::new(),
    }
}

fn arms() -> sheet::ArmLimits {
    sheet::ArmLimits::of(crate::files::protocol_toml::default_protocol())
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
        arms: arms(),
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
    assert_eq!(texts(&shown, ".path .where"), ["Sanga Point"]);
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
        assert_eq!(arms().on(born, d(day)), limit, "{day}");
    }
}

/// Pages as a worker meets them, by file name.
fn pages(w: &crate::i18n::Words) -> Vec<(&'static str, Markup)> {
    let Errand::FollowUp { first, .. } = follow_up(Class::Today, "2026-11-23") else { panic!("a follow-up") };
    let reached = FollowUpDue { unanswered_since: Some(d("2026-11-22")), open_count: 3, ..first };
    let errands = [
        Errand::FollowUp { first: reached, visit: Some(VisitDue::Late { closed_on: d("2026-11-16") }) },
        follow_up(Class::TwoDays, "2026-11-18"),
        follow_up(Class::Week, "2026-11-22"),
        follow_up(Class::Week, "2026-11-26"),
        Errand::Visit(VisitDue::Late { closed_on: d("2026-11-16") }),
        visit(),
        follow_up(Class::Fortnight, "2026-12-09"),
    ];
    let names =
        [("Sela", "Sanga Point"), ("Pemba", "Ulopi"), ("Fanu", "Ulopi"), ("Tavi", "Ulopi"), ("Oku", "Ulopi"), ("Neruka", "Sanga Point")];
    let mut homes: Vec<Home<'_>> = names.iter().zip(&errands).map(|((name, village), errand)| home(name, village, errand)).collect();
    for home in homes.iter_mut().filter(|home| home.name != "Tavi") {
        home.phone = Some("+00 123");
    }
    homes[1].known_as = Some("Pem");
    homes[5].born = d("2026-08-20");
    let later = vec![home("Ibomi", "Mbiro Hill", &errands[6])];
    let seen = vec![
        SeenHome { code: "CH000007", name: "Rumi", born: d("2026-04-25"), not_checked: &[Check::Length, Check::Feet], errand: None },
        SeenHome { code: "CH000008", name: "Lomi", born: d("2026-02-25"), not_checked: &[], errand: Some(&errands[3]) },
    ];
    let full = RoundPage { later, seen, ..page(homes) };
    let of_a_worker =
        RoundPage { whose: Some("⟦Mireni⟧"), more: Some("/round?after=x".to_owned()), homes: full.homes.clone(), ..page(Vec::new()) };
    let empty = RoundPage { next_due: Some(("⟦Neruka⟧", d("2026-11-30"))), ..page(Vec::new()) };
    let framed = |body: Markup, wide: bool| {
        let mut shell = crate::view::layout::Shell::new(w, "⟦x⟧");
        shell.role = Some(domain::role::Role::Worker);
        shell.person = Some("⟦Mireni⟧");
        shell.here = Some(crate::view::layout::Nav::Round);
        shell.wide = wide;
        shell.emergency_number = Some("440");
        crate::view::layout::page(&shell, body)
    };
    vec![
        ("day-round", framed(body(w, &full), true)),
        ("day-of", framed(body(w, &of_a_worker), true)),
        ("day-empty", framed(body(w, &empty), true)),
        ("day-sheet", framed(sheet::body(w, &full, Some("440")), true)),
    ]
}

#[test]
fn the_pages_are_sound_in_every_language_and_leave_nothing_untranslated() {
    let look = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("target/look");
    std::fs::create_dir_all(&look).expect("a folder to leave the pages in");
    for asset in crate::view::layout::assets::all() {
        std::fs::write(look.join(&asset.name), asset.body).expect("a file");
    }
    for lang in [Lang::En, Lang::Fr] {
        for (file, page) in pages(words(lang)) {
            assert_eq!(crate::view::checks::structure(&page.0), Vec::<String>::new(), "{file} in {}", lang.code());
            assert!(!page.0.contains("{round-") && !page.0.contains("{sheet-"), "{file}");
            std::fs::write(look.join(format!("{file}-{}.html", lang.code())), page.0.replace("\"/assets/", "\"")).expect("a page");
        }
    }
    for (file, page) in pages(words(Lang::Pseudo)) {
        let found = crate::view::checks::literal_words(&page.0);
        assert_eq!(found, Vec::<String>::new(), "{file}");
    }
}

#[test]
fn a_page_of_fifty_homes_is_light() {
    let errand = follow_up(Class::TwoDays, "2026-11-18");
    let homes = (0..50).map(|_| Home { phone: Some("+00 123 456"), ..home("Neruka", "Sanga Point", &errand) }).collect();
    let page = body(words(Lang::Fr), &page(homes)).0;
    // About 14 kB packed at most; text of this kind packs to a quarter or less.
    assert!(page.len() < 48 * 1024, "{} bytes", page.len());
}

#[test]
fn the_printed_limits_are_those_of_the_protocol() {
    let mut local = crate::files::protocol_toml::default_protocol().clone();
    local.rules.wasting_severe.limits.muac_below_mm = 117;
    local.rules.wasting_young.limits.muac_below_mm = 108;
    local.rules.wasting_young.limits.muac_from_age_days = 56;
    let errand = visit();
    let homes = vec![home("Oku", "Ulopi", &errand)];
    let shown = sheet::body(words(Lang::En), &RoundPage { arms: sheet::ArmLimits::of(&local), ..page(homes) }, None);
    let text = texts(&shown, "td.low, .sheet-foot").join(" ");
    assert!(text.contains("117") && text.contains("Arm under 117 mm from 6 months, under 108 mm from 8 weeks to 6 months"), "{text}");
    assert!(!text.contains("115"), "{text}");
}
