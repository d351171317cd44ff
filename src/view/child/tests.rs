//! Tests of a child's page.

mod numbers;

use domain::evidence::Evidence;
use domain::evidence::EvidenceKey as K;
use domain::evidence::Quantity as Q;
use domain::feeding::thickness::MealsNeeded;
use domain::feeding::thickness::NotEstimated;
use domain::feeding::thickness::ThickerHelps;
use domain::food::Texture;
use domain::protocol::StageId;
use domain::rule::CloseReason;
use domain::rule::RuleId;
use domain::units::Weight;
use domain::visit::Contact;
use scraper::Html;
use scraper::Selector;

use super::*;
use crate::i18n::Lang;
use crate::i18n::words;

fn d(text: &str) -> NaiveDate {
    text.parse().expect("a date")
}

fn measured(on: &str, days: i32, weight_g: u32, arm_mm: Option<u16>, waz: i32) -> MeasuredOn {
    MeasuredOn {
        on: d(on),
        at_birth: false,
        growth_days: days,
        weight_g: Some(weight_g),
        length_mm: arm_mm.map(|_| 600 + u16::try_from(days / 3).expect("small")),
        arm_mm,
        z: [Some(waz), arm_mm.map(|_| -120), arm_mm.map(|_| -190)],
        weight_suspect: false,
        length_suspect: false,
        confirmed: false,
        error: MeasuringError { weight_g: 100, length_mm: 7, arm_mm: 5 },
    }
}

fn arm() -> Evidence {
    Evidence::from([(K::Muac, Q::Millimetres(113)), (K::Limit, Q::Millimetres(115))])
}

fn low() -> Evidence {
    Evidence::from([(K::Waz, Q::ZHundredths(-233)), (K::Limit, Q::ZHundredths(-200))])
}

fn open<'a>(rule: RuleId, class: Class, due: &str, evidence: &'a Evidence) -> OpenFollowUp<'a> {
    OpenFollowUp { rule, class, due_on: d(due), last_fired_on: d("2026-11-20"), number: 41, evidence }
}

fn visit(seq: i64, on: &str, weight_g: u32, version: u32) -> VisitLine<'static> {
    VisitLine {
        seq,
        on: d(on),
        contact: Contact::Home,
        weight_g: Some(weight_g),
        length_mm: None,
        arm_mm: Some(113),
        by: "⟦Mireni⟧",
        version,
        voided: false,
        note: None,
    }
}

fn stage<'a>() -> StageNow<'a> {
    StageNow {
        code: "lumps_9_11",
        texture: Texture::new(3).zip(Texture::new(3)),
        usual: Texture::new(2),
        meals: (3, 4),
        breastfed: Some(true),
        snacks: (1, 2),
        cups: Some((0.5, 0.5)),
        tablespoons: None,
        months: ["0–5", "6–7", "8", "9–11", "12–23"].map(str::to_owned),
        next: Some(NextStage { code: "family_12_14", from: d("2026-12-20") }),
    }
}

/// 8.0 kg at 9 to 11 months, breastfed: 300 kcal over 240 g of each density.
fn thickness<'a>() -> Thickness<'a> {
    let needed = |kcal_per_g: f64, meals| MealsNeeded {
        stage: StageId::Lumps911,
        breastfed: true,
        kcal_a_day: 300,
        weight: Weight::from_grams(8_000).expect("a weight"),
        meal_g: 240.0,
        kcal_per_g,
        meal_kcal: 240.0 * kcal_per_g,
        exact: 300.0 / (240.0 * kcal_per_g),
        least: 3,
        meals,
    };
    let meals = [needed(0.3, 5), needed(0.8, 3), needed(1.0, 3)];
    Thickness {
        now: Ok(meals),
        helps: Some(ThickerHelps::ThanNow { usual: Texture::ALL[0], meals_usual: 5, hoped: Texture::ALL[3], meals_hoped: 3 }),
        next: Some(("family_12_14", meals)),
        weighed_on: Some(d("2026-11-20")),
        stomach_g_per_kg: 30.0,
        stage_source: "a table",
        energy_source: "a guide",
        source_lang: "en",
    }
}

fn foods() -> Vec<FoodLine> {
    let line = |name: &str, standing| FoodLine { name: name.to_owned(), standing };
    vec![
        line("Millet porridge", FoodStanding::Accepted),
        line("Beans", FoodStanding::Trying { taken: 2 }),
        line("Small dried fish", FoodStanding::Refused { retry_on: d("2026-12-03"), rest: false }),
        line("Pumpkin", FoodStanding::Refused { retry_on: d("2026-12-03"), rest: true }),
        line("Groundnut paste", FoodStanding::OnHold { since: d("2026-10-15"), worst: "mild" }),
        line("Egg", FoodStanding::Cleared { on: d("2026-11-02") }),
    ]
}

fn page<'a>(evidence: &'a [Evidence; 2]) -> ChildPage<'a> {
    let who = Who {
        code: "K7QF2MZC",
        printed: "K7QF-2MZC".to_owned(),
        name: "Oku",
        known_as: None,
        sex: Sex::Male,
        born: d("2025-12-20"),
        birth_day_known: true,
        birth_weight_g: Some(2900),
        gestation_days: None,
        corrected_by_days: 0,
        due_date: None,
        village: "Ulopi",
        caregiver: "Teveli",
        relation: None,
        phone: Some("+00 123"),
        directions: Some("Behind the mill"),
        worker: None,
        status: ChildStatus::Active,
        left_on: None,
    };
    ChildPage {
        desk_notes: Vec::new(),
        notes_read: Vec::new(),
        who,
        day: d("2026-11-25"),
        can_supervise: false,
        number: Some("440"),
        query: "",
        measured: vec![
            MeasuredOn { at_birth: true, ..measured("2025-12-20", 0, 2900, None, -90) },
            measured("2026-01-24", 35, 4250, None, -60),
            measured("2026-04-01", 102, 6200, Some(128), -60),
            MeasuredOn { weight_g: None, z: [None; 3], ..measured("2026-05-21", 152, 0, None, 0) },
            MeasuredOn { weight_suspect: true, ..measured("2026-06-18", 180, 9900, Some(126), 200) },
            measured("2026-10-15", 299, 7500, Some(121), -180),
            measured("2026-11-20", 335, 7400, Some(113), -233),
        ],
        stage: Some(stage()),
        thickness: Some(thickness()),
        foods: foods(),
        not_tried: vec!["Mango".to_owned()],
        open: vec![
            open(RuleId::WastingSevere, Class::Today, "2026-11-22", &evidence[0]),
            open(RuleId::WeightLow, Class::Fortnight, "2026-12-04", &evidence[1]),
        ],
        past: vec![PastFollowUp {
            rule: RuleId::MealsFew,
            closed_on: d("2026-08-01"),
            reason: CloseReason::ResolvedByVisit,
            number: 7,
            evidence: &evidence[1],
        }],
        here: Vec::new(),
        agreed: Vec::new(),
        visits: vec![
            visit(44, "2026-11-20", 7400, 1),
            visit(40, "2026-10-15", 7500, 1),
            visit(31, "2026-06-18", 9900, 2),
            visit(29, "2026-05-21", 6900, 1),
            visit(12, "2026-04-01", 6200, 1),
        ],
        twin: None,
        corrections: Vec::new(),
        next_visit: Some((d("2026-12-13"), d("2026-12-30"))),
        food: &str::to_owned,
    }
}

fn texts(markup: &Markup, css: &str) -> Vec<String> {
    let html = Html::parse_fragment(&markup.0);
    let folded = |text: String| text.split_whitespace().collect::<Vec<_>>().join(" ");
    html.select(&Selector::parse(css).expect("a selector")).map(|e| folded(e.text().collect())).collect()
}

fn hrefs(markup: &Markup) -> Vec<String> {
    let html = Html::parse_fragment(&markup.0);
    html.select(&Selector::parse("a").expect("a selector")).filter_map(|e| e.value().attr("href").map(str::to_owned)).collect()
}

fn shown(change: impl FnOnce(&mut ChildPage<'_>)) -> Markup {
    let evidence = [arm(), low()];
    let mut page = page(&evidence);
    change(&mut page);
    body(words(Lang::En), &page)
}

#[test]
fn what_has_to_go_today_stands_before_everything_with_one_solid_act() {
    let page = shown(|_| ());
    assert_eq!(texts(&page, ".note.stop h2"), ["Refer today"]);
    assert!(page.0.find("note stop") < page.0.find("<h2>Growth"));
    assert_eq!(texts(&page, ".do:not(.second)"), ["Start a visit"]);
    assert!(hrefs(&page).contains(&"/children/K7QF2MZC/why/wasting.severe/41".to_owned()), "{:?}", hrefs(&page));
    assert!(hrefs(&page).contains(&"tel:+00123".to_owned()));
}

#[test]
fn an_emergency_is_the_heading_and_the_call_is_first() {
    let page = shown(|page| page.open[0].class = Class::Now);
    assert_eq!(texts(&page, "h1"), ["Oku: Much too thin: arm 113 mm, below 115 mm."]);
    assert!(page.0.find("tel:440") < page.0.find("Start a visit"));
    assert_eq!(texts(&page, ".do:not(.second)"), Vec::<String>::new(), "the call is the solid act");
}

#[test]
fn the_finding_skips_suspect_weights_and_says_between_which_lines() {
    assert_eq!(texts(&shown(|_| ()), "figcaption")[0], "Lost 100 g in 36 days. Now between the lines −3 and −2.");
    for (z, said) in [
        (-301, "Now below the line −3."),
        (-300, "Now on the line −3."),
        (-50, "Now between the lines −1 and 0."),
        (0, "Now on the line 0."),
        (120, "Now between the lines +1 and +2."),
        (300, "Now above the line +3."),
    ] {
        let page = shown(|page| page.measured[6].z[0] = Some(z));
        assert!(texts(&page, "figcaption")[0].ends_with(said), "{z}: {}", texts(&page, "figcaption")[0]);
    }
    let alone = shown(|page| page.measured.truncate(1));
    assert!(texts(&alone, "figcaption")[0].starts_with("One weight so far: 2.90 kg."));
}

#[test]
fn a_suspect_weight_is_a_gap_in_the_line_and_is_named_in_the_table() {
    let page = shown(|_| ());
    // Birth to April; then a gap for the visit without a weight and the suspect one; then October on.
    assert_eq!(texts(&page, "svg.chart polyline.kid").len(), 4, "two pieces of weight, one of the last weights closer, one of length");
    assert_eq!(
        texts(&page, "svg.chart circle").len(),
        5 + 2 + 4,
        "the suspect weight is no point; its length is one; the last two stand closer again"
    );
    let rows = texts(&page, ".scroll tbody tr");
    assert_eq!(rows.len(), 7);
    assert!(rows.iter().any(|row| row.contains("9.90") && row.contains("weigh and measure again")), "{rows:?}");
}

#[test]
fn before_the_due_date_the_page_says_that_growth_cannot_be_judged() {
    let early = shown(|page| {
        page.who.born = d("2026-10-25");
        page.who.due_date = Some(d("2026-12-01"));
        page.who.corrected_by_days = 37;
    });
    assert!(early.0.contains("Before the due date growth cannot be judged here: weekly weighing at the clinic."));
    assert_eq!(texts(&early, "svg.chart polyline").len(), 0);
    assert!(early.0.contains("Ages corrected by 6 weeks. Ask the clinic before starting solids."));
    assert!(!early.0.contains("iron drops"), "not before two months");
}

#[test]
fn born_small_or_early_means_asking_about_iron_from_two_months() {
    for (grams, due, born, asks) in [
        (2499, None, "2026-09-25", true),
        (2499, None, "2026-09-26", false),
        (2500, None, "2026-09-25", false),
        (2900, Some("2026-10-25"), "2026-09-25", true),
    ] {
        let page = shown(|page| {
            page.who.birth_weight_g = Some(grams);
            page.who.due_date = due.map(d);
            page.who.born = d(born);
        });
        assert_eq!(page.0.contains("ask the clinic about iron drops"), asks, "{grams} {due:?} {born}");
    }
}

#[test]
fn each_food_says_where_it_stands() {
    assert_eq!(
        texts(&shown(|_| ()), ".foods .state"),
        [
            "Taken",
            "Trying, taken 2 of 3",
            "Refused, again from 3 December",
            "Refused often: that is fine, offer others",
            "On hold since 15 October: mild reaction",
            "Allowed again on 2 November"
        ]
    );
    let past = shown(|page| page.day = d("2026-12-03"));
    assert_eq!(texts(&past, ".foods .state")[2], "Refused, time to offer it again");
    assert!(texts(&shown(|page| page.foods.truncate(1)), "p.quiet").iter().all(|p| !p.contains("on hold")));
}

#[test]
fn the_stage_is_drawn_and_said_with_what_comes_next() {
    let page = shown(|_| ());
    assert_eq!(
        texts(&page, ".tell p"),
        [
            "Hoped for: chopped, finger food (soft pieces that the baby picks up).",
            "3–4 meals a day. 1–2 snacks if wanted.",
            "½ cup of 250 ml at a meal. Follow the child’s hunger."
        ]
    );
    assert!(page.0.contains("From 20 December: Family food begins."));
    let milk = shown(|page| page.stage = Some(StageNow { code: "milk_only", texture: None, usual: None, ..stage() }));
    assert_eq!(texts(&milk, ".tell").len(), 0);
    assert!(milk.0.contains("No water, tea or food before 6 months."));
}

#[test]
fn supervisors_may_move_the_child_and_all_may_write_that_it_left() {
    let links = |page: &Markup, end: &str| hrefs(page).iter().filter(|h| h.ends_with(end)).count();
    let (own, team) = (shown(|_| ()), shown(|page| page.can_supervise = true));
    assert_eq!((links(&own, "/move"), links(&own, "/leave")), (0, 1));
    assert_eq!((links(&team, "/move"), links(&team, "/leave")), (1, 1));
    let gone = shown(|page| page.who.status = ChildStatus::Moved);
    assert_eq!((links(&gone, "/leave"), texts(&gone, ".note:not(.stop) p").first().map(String::as_str)), (0, Some("family moved away")));
}

#[test]
fn visits_can_be_corrected_and_all_are_a_link_away() {
    let page = shown(|_| ());
    let links = hrefs(&page);
    assert!(links.contains(&"/children/K7QF2MZC/visits/44/correct".to_owned()) && links.contains(&"/children/K7QF2MZC/visits".to_owned()));
    assert!(!links.contains(&"/children/K7QF2MZC/visits/12/correct".to_owned()), "only the latest are shown");
}

fn answered(question: &str, before: &str, after: Option<&str>, danger: bool) -> Answered {
    Answered {
        question: format!("⟦{question}⟧"), before: format!("⟦{before}⟧"), after: after.map(|after| format!("⟦{after}⟧")), danger
    }
}

fn versions<'a>() -> VisitsPage<'a> {
    let earlier = EarlierVersion {
        version: 1,
        replaced_on: d("2026-06-20"),
        by: "⟦Mireni⟧",
        reason: "⟦typed wrongly⟧",
        changed: vec![answered("Signs", "fits", Some("none"), true), answered("Meals", "2", Some("3"), false)],
    };
    let came = CorrectionLine {
        what: "⟦The visit was taken back⟧".to_owned(),
        other: None,
        note: "⟦her cousin⟧".to_owned(),
        by: "⟦Mireni⟧".to_owned(),
        on: "⟦21 June⟧".to_owned(),
    };
    let void = Kept {
        line: VisitLine { voided: true, ..visit(33, "2026-06-20", 7000, 1) },
        earlier: Vec::new(),
        came: Some(came),
        answers: vec![answered("Meals", "2", None, false)],
    };
    let corrected = Kept { line: visit(31, "2026-06-18", 9900, 2), earlier: vec![earlier], came: None, answers: Vec::new() };
    VisitsPage { code: "K7QF2MZC", name: "⟦Oku⟧", day: d("2026-11-25"), query: "", visits: vec![void, corrected] }
}

#[test]
fn all_visits_keep_what_corrections_replaced_and_those_taken_back() {
    let page = all_visits(words(Lang::En), &versions());
    let text = texts(&page, "main, h1, ul.rows").join(" ");
    assert!(text.contains("⟦fits⟧ → ⟦none⟧") && text.contains("⟦2⟧ → ⟦3⟧"), "{text}");
    assert_eq!(texts(&page, "strong"), ["⟦Signs⟧"], "danger stands out");
    assert!(text.contains("taken back: it never happened") && text.contains("⟦her cousin⟧") && text.contains("Its 1 answer"), "{text}");
    assert!(text.contains("1 visit"), "what was taken back is not counted: {text}");
    assert!(!hrefs(&page).contains(&"/children/K7QF2MZC/visits/33/correct".to_owned()));
}

fn framed(w: &crate::i18n::Words, body: Markup, urgent: bool) -> Markup {
    let mut shell = crate::view::layout::Shell::new(w, "⟦x⟧");
    shell.role = Some(domain::role::Role::Supervisor);
    shell.person = Some("⟦Mireni⟧");
    shell.wide = true;
    shell.urgent = urgent;
    shell.emergency_number = Some("440");
    crate::view::layout::page(&shell, body)
}

fn pages(w: &crate::i18n::Words) -> Vec<(&'static str, Markup)> {
    let evidence = [arm(), low()];
    let mut usual = page(&evidence);
    usual.who.name = "⟦Oku⟧";
    usual.who.caregiver = "⟦Teveli⟧";
    let mut early = page(&evidence);
    early.who = Who {
        name: "⟦Ibo⟧",
        caregiver: "⟦Anwe⟧",
        birth_weight_g: Some(2100),
        due_date: Some(d("2026-02-01")),
        corrected_by_days: 43,
        known_as: Some("⟦Bo⟧"),
        worker: Some("⟦Tamsi⟧"),
        birth_day_known: false,
        ..early.who
    };
    early.can_supervise = true;
    early.open.clear();
    early.stage = Some(StageNow { code: "milk_only", texture: None, usual: None, next: None, ..stage() });
    let mut emergency = page(&evidence);
    emergency.who.name = "⟦Lomi⟧";
    emergency.who.caregiver = "⟦Teveli⟧";
    emergency.open[0].class = Class::Now;
    vec![
        ("child-usual", framed(w, body(w, &usual), false)),
        ("child-early", framed(w, body(w, &early), false)),
        ("child-emergency", framed(w, body(w, &emergency), true)),
        ("child-visits", framed(w, all_visits(w, &versions()), false)),
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
            assert!(!page.0.contains("{child-"), "{file}");
            std::fs::write(look.join(format!("{file}-{}.html", lang.code())), page.0.replace("\"/assets/", "\"")).expect("a page");
        }
    }
    for (file, page) in pages(words(Lang::Pseudo)) {
        assert_eq!(crate::view::checks::literal_words(&page.0), Vec::<String>::new(), "{file}");
    }
}

#[test]
fn thickness_is_reckoned_line_by_line_with_sources() {
    let page = shown(|_| ());
    let lines = texts(&page, "h3#thickness ~ details li");
    assert_eq!(
        lines[0],
        "Energy needed from food, besides breast milk, at this stage (Chopped, finger food): 300 kcal a day. Source: a table"
    );
    assert_eq!(lines[1], "A full meal: 8.00 kg × 30 g = 240 g. Weighed on 20 November. Source: a guide");
    assert_eq!(lines[2], "watery: 240 g × 0.30 kcal = 72 kcal a meal. 300 ÷ 72 = 4.17, rounded up: 5.");
    let smooth =
        "smooth and thick: 240 g × 0.80 kcal = 192 kcal a meal. 300 ÷ 192 = 1.56, rounded up: 2. Raised to 3, the least of the stage.";
    assert_eq!((lines[3].as_str(), lines[5].as_str()), (smooth, "Never fewer than 3 a day at this stage. Source: a table"));
    assert!(page.0.contains("Food as thin as now would need 5 meals a day; chopped, finger food: at least 3 meals."));
}

#[test]
fn thickness_without_an_estimate_gives_its_reason_and_no_number() {
    let without = |why| shown(|page| page.thickness = Some(Thickness { now: Err(why), helps: None, next: None, ..thickness() }));
    let page = without(NotEstimated::NoWeight);
    assert!(page.0.contains("no weight yet") && !page.0.contains("meals a day</span>"));
    assert!(!without(NotEstimated::MilkOnly).0.contains("Thickness counts"));
}
