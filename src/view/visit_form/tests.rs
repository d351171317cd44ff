//! The page of a visit: what fits the age stands open, everything can be entered, and nothing typed is ever lost.

mod typed;

use std::collections::BTreeSet;

use domain::child::Child;
use domain::child::ChildStatus;
use domain::draft::fill::pairs_of;
use domain::draft::questions::Before;
use domain::draft::visit::VisitFrame;
use domain::draft::visit::VisitRead;
use domain::draft::visit::read_visit;
use domain::fault::Fault;
use domain::ids::VisitId;
use domain::protocol::Eaten;
use domain::units::Weight;
use domain::unusual::unusual;
use domain::visit::Contact;
use scraper::Html;
use scraper::Selector;

use super::*;
use crate::i18n::Lang;
use crate::i18n::words;
use crate::view::visit_form::tests::typed::ALL;

fn d(text: &str) -> NaiveDate {
    text.parse().expect("a date")
}

fn child(born: &str) -> Child {
    Child {
        sex: Sex::Female,
        born: d(born),
        birth_day_known: true,
        gestation_days: None,
        birth_weight: None,
        registered_on: d(born),
        ever_breastfed: None,
        severe_eczema: None,
        known_food_allergy: None,
        status: ChildStatus::Active,
        looks_like_another: false,
    }
}

fn foods() -> Vec<(String, String)> {
    [("beans", "Beans"), ("egg", "Egg"), ("honey", "Honey"), ("mango", "Mango")].map(|(c, n)| (c.to_owned(), n.to_owned())).to_vec()
}

fn protocol() -> &'static domain::protocol::Protocol {
    crate::files::protocol_toml::default_protocol()
}

struct Shown {
    born: &'static str,
    lang: Lang,
    open: Vec<OpenLine>,
    talk: TalkPart,
    filled: Filled,
    faults: Faults,
    visits: Vec<Visit>,
    read: Option<VisitRead>,
    correcting: bool,
    recipes: Vec<RecipeLine>,
}

impl Shown {
    fn new(born: &'static str) -> Self {
        Self {
            born,
            lang: Lang::En,
            open: Vec::new(),
            talk: TalkPart::default(),
            filled: Filled::default(),
            faults: Faults::new(),
            visits: Vec::new(),
            read: None,
            correcting: false,
            recipes: vec![RecipeLine {
                code: "fish_stew".into(),
                name: "Fish stew".into(),
                foods: vec!["Fish".into(), "Beans".into()],
                held: false,
            }],
        }
    }

    fn typed(mut self, pairs: &[(&str, &str)]) -> Self {
        self.filled = Filled(pairs.iter().map(|(k, v)| ((*k).to_owned(), (*v).to_owned())).collect());
        let known = |code: &str| foods().iter().any(|(c, _)| c == code);
        let frame = VisitFrame {
            id: VisitId(9),
            born: d(self.born),
            today: d("2026-11-25"),
            foods: &known,
            eaten: &|_| Some(Eaten::default()),
            like: &|_| None,
        };
        let read = read_visit(&self.filled.0, &frame);
        self.faults = read.faults.clone();
        self.read = Some(read);
        self
    }

    fn html(&self) -> String {
        let child = child(self.born);
        let rules: BTreeSet<RuleId> = self.open.iter().map(|line| line.rule).collect();
        let questions = Questions::of(&Before { child: &child, visits: &self.visits, open: &rules, on: d("2026-11-25") });
        let odd = self.read.as_ref().map(|read| unusual(&child, &self.visits, &read.visit, protocol()));
        body(&VisitForm {
            w: words(self.lang),
            examples: &|group| (group == domain::food::FoodGroup::Flesh).then(|| "⟦minnows⟧".to_owned()),
            action: "/children/CDEF/visits/new",
            token: "t",
            key: "k",
            name: "Neruka",
            sex: Sex::Female,
            code: "CDEF",
            born: child.born,
            today: d("2026-11-25"),
            questions: &questions,
            open: &self.open,
            talk: &self.talk,
            foods: &[
                FoodLine { code: "beans".into(), name: "Beans".into(), choking: false, on_hold: false },
                FoodLine { code: "egg".into(), name: "Egg".into(), choking: false, on_hold: true },
            ],
            recipes: &self.recipes,
            all_foods: &foods(),
            filled: &self.filled,
            faults: &self.faults,
            unusual: odd.as_deref().zip(self.read.as_ref().map(|read| &read.visit)),
            danger: None,
            rest: false,
            correcting: self.correcting.then_some(Correcting {
                seq: 44,
                on: d("2026-11-25"),
                unfinished: false,
                result: "/",
                version: 1,
                newest: None,
            }),
            gone: false,
        })
        .into_string()
    }

    fn page(&self) -> Html {
        Html::parse_document(&self.html())
    }
}

fn selector(text: &str) -> Selector {
    Selector::parse(text).expect("a selector")
}

fn has(page: &Html, text: &str) -> bool {
    page.select(&selector(text)).next().is_some()
}

/// Whether it is on the page and no tap away.
fn stands_open(page: &Html, text: &str) -> bool {
    has(page, text) && !has(page, &format!("details:not([open]) {text}"))
}

/// What a browser would send back of a page.
fn sent(page: &Html) -> Vec<(String, String)> {
    let mut pairs = Vec::new();
    for element in page.select(&selector("form input, form select, form textarea")) {
        let Some(name) = element.attr("name") else { continue };
        let value = match (element.value().name(), element.attr("type")) {
            ("textarea", _) => Some(element.text().collect()),
            ("select", _) => element.select(&selector("option[selected]")).next().and_then(|o| o.attr("value")).map(str::to_owned),
            (_, Some("radio" | "checkbox")) => element.attr("checked").map(|_| element.attr("value").unwrap_or_default().to_owned()),
            _ => element.attr("value").map(str::to_owned),
        };
        pairs.extend(value.map(|value| (name.to_owned(), value)));
    }
    pairs
}

fn open_line() -> OpenLine {
    OpenLine {
        rule: RuleId::WeightLow,
        class: Class::Fortnight,
        opened_on: d("2026-11-01"),
        why: "Weight low.".to_owned(),
        from_before: true,
    }
}

#[test]
fn everything_can_be_entered_at_every_age_and_everything_typed_comes_back() {
    for born in ["2026-11-10", "2026-07-01", "2026-03-14", "2025-06-01"] {
        let mut shown = Shown::new(born).typed(&ALL);
        shown.open = vec![open_line()];
        let back = sent(&shown.page());
        for (name, value) in ALL.iter().filter(|(_, value)| !value.is_empty()) {
            let pair = ((*name).to_owned(), (*value).to_owned());
            // At an age at which a line is not in the quick list, it is a question of its own.
            let own = *name == "also"
                && (has(&shown.page(), &format!("[name=\"{value}\"]")) || has(&shown.page(), "[name=\"low_value\"]") || *value == "honey")
                || (*name == "other_milk" && !has(&shown.page(), "[name=other_milk]"));
            assert!(back.contains(&pair) || own, "born {born}: {name}={value} is lost");
        }
    }
}

#[test]
fn recipes_are_a_tap_away_and_say_what_they_tick() {
    let closed = Shown::new("2026-03-14").page();
    assert!(has(&closed, "details:not([open]) [name=recipes]"));
    assert!(closed.html().contains("fish, beans"), "what naming it ticks");
    assert!(stands_open(&Shown::new("2026-03-14").typed(&[("recipes", "fish_stew")]).page(), "[name=recipes][checked]"));
    let mut held = Shown::new("2026-03-14");
    held.recipes[0].held = true;
    assert!(held.html().contains("Holds a food on hold: fish, beans"));
    let mut without = Shown::new("2026-03-14");
    without.recipes.clear();
    assert!(!has(&without.page(), "[name=recipes]") && !without.html().contains("Was it made by a recipe?"));
}

#[test]
fn a_form_with_faults_keeps_what_could_not_be_read() {
    let shown = Shown::new("2026-03-14").typed(&[("weight", "735"), ("length", "lang"), ("meals", "viele"), ("danger", "fits_now")]);
    let page = shown.page();
    let back = sent(&page);
    for pair in [("weight", "735"), ("length", "lang"), ("meals", "viele"), ("danger", "fits_now")] {
        assert!(back.contains(&(pair.0.to_owned(), pair.1.to_owned())), "{pair:?}");
    }
    let links: Vec<_> = page.select(&selector("#summary a")).filter_map(|a| a.attr("href")).collect();
    assert_eq!(links, ["#weight", "#length", "#meals"]);
    assert_eq!(page.select(&selector("p.fault")).count(), 3);
}

#[test]
fn every_fault_has_a_box_to_go_to() {
    let wrong: Vec<(&str, &str)> = vec![
        ("day", "other"),
        ("on_day", "31"),
        ("on_month", "2"),
        ("on_year", "2026"),
        ("contact", "dream"),
        ("outcome_weight.low", "x"),
        ("referrals", "x"),
        ("weight", "0,2"),
        ("length", "x"),
        ("position", "x"),
        ("arm", "5"),
        ("head", "x"),
        ("feet", "x"),
        ("breastfed", "x"),
        ("breast_only", "x"),
        ("formula_times", "99"),
        ("animal_milk_times", "x"),
        ("drink_yogurt_times", "x"),
        ("spoon_yogurt_times", "x"),
        ("other_drink", "x"),
        ("solids_yesterday", "x"),
        ("started_day", "1"),
        ("started_month", "1"),
        ("started_year", "2020"),
        ("groups", "x"),
        ("meals", "31"),
        ("texture_usual", "9"),
        ("texture_best", "9"),
        ("also", "x"),
        ("readiness", "x"),
        ("food_beans", "x"),
        ("offers_beans", "999"),
        ("minutes_egg", "9999"),
        ("food_egg", "reaction"),
        ("rsign_egg", "x"),
        ("other1_food", "mango"),
        ("other2_taken", "accepted"),
        ("danger", "x"),
        ("swallow_trouble", "x"),
        ("appetite_poor_days", "400"),
        ("plans", "x"),
    ];
    for born in ["2026-11-10", "2026-07-01", "2026-03-14", "2025-06-01"] {
        let mut shown = Shown::new(born).typed(&wrong);
        shown.open = vec![open_line()];
        let page = shown.page();
        let faults: Vec<&str> = shown.faults.iter().map(|(field, _)| field).collect();
        assert!(faults.len() >= 34, "{faults:?}");
        for a in page.select(&selector("#summary a")) {
            let id = a.attr("href").unwrap_or_default().trim_start_matches('#').to_owned();
            let found = page.select(&selector("[id]")).any(|e| e.attr("id") == Some(&id));
            assert!(found, "born {born}: {id} leads nowhere");
        }
        assert_eq!(page.select(&selector("#summary a")).count(), faults.len());
        let closed = page.select(&selector("details:not([open]) p.fault")).count();
        assert_eq!(closed, 0, "born {born}: a fault is folded away");
        assert_eq!(page.select(&selector("form p.fault")).count(), faults.len(), "born {born}");
    }
}

#[test]
fn under_six_months_food_waits_for_one_question_and_none_is_suggested() {
    let page = Shown::new("2026-07-01").page();
    assert!(stands_open(&page, "[name=breast_only]"));
    for field in ["groups", "meals", "texture_usual", "food_beans", "formula_times", "other_drink"] {
        assert!(has(&page, &format!(".when-besides [name={field}]")), "{field} must wait for a yes");
    }
    let older = Shown::new("2026-03-14").page();
    assert!(stands_open(&older, "[name=groups]") && !has(&older, ".when-besides"));
}

#[test]
fn signs_are_never_folded_away_and_fit_the_age() {
    for (born, breaths) in [("2026-11-10", "60"), ("2026-03-14", "50"), ("2025-06-01", "40")] {
        let shown = Shown::new(born);
        let page = shown.page();
        assert!(stands_open(&page, "[name=danger]") && stands_open(&page, "[name=danger_none]") && stands_open(&page, "[name=feet]"));
        assert!(!has(&page, "details [name=danger]"));
        assert!(shown.html().contains(&format!("{breaths} a minute")), "{born}");
        let first = page.select(&selector("[name=danger]")).next().and_then(|e| e.attr("value"));
        assert_eq!(first, Some(if breaths == "60" { "not_feeding_well" } else { "cannot_feed" }));
        assert!(!has(&page, "[name=danger][checked]") && !has(&page, "[name=danger_none][checked]"), "nothing is preselected");
    }
}

#[test]
fn the_emergency_page_is_one_tap_from_the_top() {
    let text = Shown::new("2026-03-14").html();
    assert!(text.find("/children/CDEF/emergency") < text.find("<form"), "before the form");
}

#[test]
fn without_looking_inside_every_question_is_there() {
    // Sub-questions are hidden by style alone, and only where the browser can undo it.
    let style = include_str!("../../assets/style.css");
    let rule = style.find("@supports selector(:has(*))").expect("the rule");
    for class in ["when-other-day", "when-besides", "when-solids", "when-milk", "when-new", "when-reaction"] {
        let hidden = format!(".{class}:not(:has(.bad))");
        assert!(style.find(&hidden).is_some_and(|at| at > rule), "{class}");
        assert!(!style[..rule].contains(&format!(".{class}{{display:none")), "{class}");
    }
    assert!(!Shown::new("2026-03-14").html().contains(" hidden"), "nothing is hidden by the page itself");
}

#[test]
fn an_unusual_weight_is_asked_about_without_a_leading_guess() {
    let mut before = Visit::empty(VisitId(1), d("2026-10-16"), Contact::Home);
    before.weight = Weight::from_grams(7000).ok();
    let mut shown = Shown::new("2026-05-30").typed(&[("weight", "12,4")]);
    shown.visits = vec![before];
    let text = shown.html();
    assert!(text.contains("12.40 kg: look again") && text.contains("Last time it was 7.00 kg on 16 October."), "{text}");
    assert!(text.contains("Weigh again, then type") && !text.contains("7.4"));
    assert!(sent(&shown.page()).contains(&("asked_again".to_owned(), "weight:12400".to_owned())));
    let read = shown.read.as_ref().expect("read");
    let odd = unusual(&child("2026-05-30"), &shown.visits, &read.visit, protocol());
    assert!(measure::was_asked("weight:12400", &odd, &read.visit) && !measure::was_asked("weight:12000", &odd, &read.visit));
}

#[test]
fn correcting_shows_what_was_saved_and_saves_it_again_unchanged() {
    let shown = Shown::new("2026-03-14").typed(&ALL);
    let mut visit = shown.read.as_ref().expect("read").visit.clone();
    visit.outcomes.clear();
    visit.referrals.clear();
    let mut again = Shown::new("2026-03-14");
    again.filled = Filled(pairs_of(&visit, None, d("2026-11-25")));
    again.correcting = true;
    // Foods of the visit stand on the page by name.
    let pairs = sent(&again.page());
    let known = |code: &str| foods().iter().any(|(c, _)| c == code);
    let read = read_visit(
        &pairs,
        &VisitFrame {
            id: VisitId(9),
            born: d("2026-03-14"),
            today: d("2026-11-25"),
            foods: &known,
            eaten: &|_| Some(Eaten::default()),
            like: &|_| None,
        },
    );
    assert!(read.faults.is_empty(), "{:?}", read.faults);
    let mut on_page = visit;
    on_page.foods.retain(|f| ["beans", "egg"].contains(&f.code.as_str()));
    // Foods on hold stand first on the page.
    let mut visit = read.visit;
    visit.foods.sort_by(|a, b| a.code.cmp(&b.code));
    assert_eq!(visit, on_page);
    assert!(pairs.iter().any(|(name, _)| name == "reason"));
}

#[test]
fn every_word_is_there_in_every_language() {
    for lang in [Lang::En, Lang::Fr] {
        for born in ["2026-11-10", "2026-07-01", "2026-03-14", "2025-06-01"] {
            let mut shown = Shown::new(born).typed(&ALL);
            shown.lang = lang;
            shown.faults.add("form", Fault::Missing);
            shown.open = vec![open_line()];
            let text = shown.html();
            assert!(!text.contains('{') && !text.contains('}'), "{}: {text}", lang.code());
        }
    }
}
