//! Recipes as lists and cards: what may harm is said first, and a card can be read aloud without a table.

use domain::feeding::ReactionLevel;
use domain::food::FoodCode;
use scraper::Html;
use scraper::Selector;

use super::*;
use crate::i18n::Lang;
use crate::i18n::words;
use crate::view::checks;

fn d(text: &str) -> chrono::NaiveDate {
    text.parse().expect("a date")
}

fn food(code: &str) -> String {
    format!("⟦{code}⟧")
}

const fn en(words: &str) -> Said<'_> {
    Said { words, lang: "en" }
}

fn held() -> Remark {
    let code = FoodCode("groundnut_paste".to_owned());
    Remark::OnHold { food: code.clone(), held: code, since: d("2026-10-15"), worst: ReactionLevel::Mild }
}

fn line(name: &str, remarks: Vec<Remark>) -> Line<'_> {
    Line {
        path: "/recipes/mash".to_owned(),
        name: en(name),
        textures: &[Texture::ALL[1], Texture::ALL[2]],
        kcal_per_g: Some(0.964),
        too_thin: false,
        groups: vec![FoodGroup::GrainsRoots],
        allergens: vec![Allergen::Peanut],
        from_months: 6,
        fit: domain::feeding::recipe_fit::fit(&remarks),
        remarks,
    }
}

fn for_child<'a>() -> ForChild<'a> {
    ForChild { code: "CDEF", called: "Oku", milk_only: false, urgent: false, known_allergy: false, on_hold: Vec::new(), query: "" }
}

fn shown(lang: Lang, child: Option<ForChild<'_>>, lines: Vec<Line<'_>>) -> String {
    list(words(lang), &List { child, lines, day: d("2026-11-25"), food: &food }).into_string()
}

fn a_card(lang: Lang, child: Option<ForChild<'_>>, remarks: Vec<Remark>, change: impl FnOnce(&mut Card<'_>)) -> String {
    let mut page = Card {
        line: line("Mash", remarks),
        child,
        day: d("2026-11-25"),
        parts: vec![Part {
            measure: en("2 spoons"),
            grams: 40,
            food: en("Groundnut paste"),
            safe_form: Some(en("smooth")),
            energy: Some((598, en("a composition table"))),
        }],
        water_ml: 380,
        cooked_g: 250,
        kcal: Some(239.2),
        given: None,
        steps: vec![en("Boil."), en("Mash.")],
        warnings: vec![en("Never whole.")],
        flour_days: Some((7, 14)),
        cooked_hours: (2, 24),
        iron: false,
        least_density: 0.8,
        needed: None,
        source: en("our own choice"),
        food: &food,
    };
    change(&mut page);
    card(words(lang), &page).into_string()
}

fn texts(html: &str, css: &str) -> Vec<String> {
    let html = Html::parse_fragment(html);
    let folded = |text: String| text.split_whitespace().collect::<Vec<_>>().join(" ");
    html.select(&Selector::parse(css).expect("a selector")).map(|e| folded(e.text().collect())).collect()
}

#[test]
fn a_hold_and_an_allergy_stand_before_the_heading() {
    let child = ForChild { on_hold: vec![("Groundnut paste".to_owned(), d("2026-10-15"))], known_allergy: true, ..for_child() };
    let page = shown(Lang::En, Some(child), vec![line("Porridge", Vec::new()), line("Mash", vec![held()])]);
    let notes = texts(&page, ".note.stop");
    assert!(notes[0].contains("On hold since 15 October: Groundnut paste"), "{notes:?}");
    assert!(notes[1].contains("A clinician has named a food allergy"), "{notes:?}");
    assert!(page.find("note stop") < page.find("<h1"));
    assert_eq!(texts(&page, "h1"), ["1 recipe suits Oku"]);
    assert_eq!(texts(&page, "h2"), ["Not to be given now"]);
    // What is too thin for a meal is no recipe that suits: it stands by itself.
    let thin = Line { too_thin: true, ..line("Soup", Vec::new()) };
    let two = shown(Lang::En, Some(for_child()), vec![line("Porridge", Vec::new()), thin]);
    assert_eq!(
        (texts(&two, "h1"), texts(&two, "h2")),
        (vec!["1 recipe suits Oku".to_owned()], vec!["As a taste or a snack beside a meal".to_owned()])
    );
    let mash = page.find("Mash").expect("listed");
    assert!(
        page.find("Not to be given now").is_some_and(|at| at < mash) && page[mash..].contains("after a reaction (mild): ⟦groundnut_paste⟧")
    );
}

#[test]
fn what_is_urgent_comes_before_any_recipe() {
    let page = shown(Lang::En, Some(ForChild { urgent: true, ..for_child() }), vec![line("Porridge", Vec::new())]);
    assert!(page.find("Something urgent is open for Oku") < page.find("<h1") && page.contains("href=\"/children/CDEF\""));
}

#[test]
fn a_card_of_a_food_on_hold_begins_with_it_and_never_tells_how_to_try_it() {
    let page = a_card(Lang::En, Some(for_child()), vec![held()], |_| {});
    assert!(page.find("Do not give this now.") < page.find("<h1") && page.contains("note stop"));
    assert!(!page.contains("First taste"), "{page}");
    let free = a_card(Lang::En, None, Vec::new(), |_| {});
    assert!(free.contains("First taste in the morning") && !free.contains("note stop"));
}

#[test]
fn a_card_is_read_aloud_in_order_and_without_a_table() {
    let page = a_card(Lang::En, None, Vec::new(), |_| {});
    assert_eq!(texts(&page, "ol.steps li")[1..], ["Boil.", "Mash."]);
    assert!(!page.contains("<table"));
    let parts = texts(&page, "ul.rows li");
    assert_eq!(parts, ["2 spoons (40 g): Groundnut paste", "1½ cups of water (380 ml)"]);
    assert!(page.contains("at most 2 hours out of the cold") && page.contains("7 days, in the cold 14"));
}

#[test]
fn the_energy_is_worked_out_line_by_line_with_sources() {
    let page = a_card(Lang::En, None, Vec::new(), |_| {});
    let lines = texts(&page, "details ol li");
    assert_eq!(lines[0], "Groundnut paste: 40 g × 598 kcal in 100 g = 239 kcal. Source: a composition table");
    assert_eq!(lines[1], "Together 239 kcal in 250 g cooked = 0.96 kcal in a gram. Source: our own choice");
}

#[test]
fn a_thin_recipe_is_no_meal_and_water_is_counted_in_quarter_cups() {
    let thin = a_card(Lang::En, None, Vec::new(), |card| {
        card.line.too_thin = true;
        card.line.kcal_per_g = Some(0.6);
        card.water_ml = 190;
    });
    assert!(thin.contains("0.60 kcal in a gram, below 0.8: too thin for a meal"), "{thin}");
    assert!(thin.contains("¾ cup of water (190 ml)"));
    assert!(!a_card(Lang::En, None, Vec::new(), |card| card.water_ml = 0).contains("of water ("));
}

#[test]
fn cooked_food_that_does_not_keep_is_given_at_once() {
    let page = a_card(Lang::En, None, Vec::new(), |card| (card.cooked_hours, card.flour_days) = ((0, 0), None));
    assert!(page.contains("Give it at once. Do not keep it.") && !page.contains("refrigerator") && !page.contains("tin"));
}

#[test]
fn every_remark_is_a_sentence_in_every_language() {
    let code = |text: &str| FoodCode(text.to_owned());
    let remarks = [
        held(),
        Remark::OnHold { food: code("fish"), held: code("small_dried_fish"), since: d("2026-10-15"), worst: ReactionLevel::Severe },
        Remark::MilkOnly,
        Remark::TooYoung { food: code("honey"), from: d("2027-01-01") },
        Remark::Waits { food: code("rice"), from: d("2027-01-01") },
        Remark::KnownAllergy { allergens: vec![Allergen::Fish] },
        Remark::Eczema { allergens: vec![Allergen::Fish] },
        Remark::TextureAhead { texture: Texture::ALL[3], swallowing: false },
        Remark::TextureAhead { texture: Texture::ALL[3], swallowing: true },
        Remark::NewTogether { foods: vec![code("beans"), code("fish")] },
        Remark::NewAllergen { allergens: vec![Allergen::Fish, Allergen::Peanut], allergy_not_asked: true },
        Remark::Smoother { hoped: Texture::ALL[3] },
    ];
    for lang in [Lang::En, Lang::Fr] {
        let said: Vec<String> = remarks.iter().map(|r| remark::text(words(lang), r, d("2026-11-25"), &food)).collect();
        for text in &said {
            assert!(text.ends_with('.') && !text.contains(['{', '}']), "{}: {text}", lang.code());
        }
        let unlike: std::collections::BTreeSet<&String> = said.iter().collect();
        assert_eq!(unlike.len(), remarks.len());
    }
}

#[test]
fn lists_and_cards_are_sound_and_speak_through_the_translator() {
    let child = || ForChild { on_hold: vec![("⟦fish⟧".to_owned(), d("2026-10-15"))], urgent: true, called: "⟦Oku⟧", ..for_child() };
    let pages = [
        shown(Lang::Pseudo, None, vec![line("Mash", Vec::new())]),
        shown(Lang::Pseudo, None, Vec::new()),
        shown(Lang::Pseudo, Some(child()), vec![line("Mash", vec![held()]), line("Porridge", vec![Remark::MilkOnly])]),
        a_card(Lang::Pseudo, Some(child()), vec![held()], |_| {}),
        a_card(Lang::Pseudo, None, Vec::new(), |card| card.line.too_thin = true),
    ];
    for page in pages {
        assert_eq!(checks::literal_words(&page), Vec::<String>::new());
    }
}
