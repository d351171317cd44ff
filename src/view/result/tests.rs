//! What to do now: one clear act first, and nothing said of what was not looked at.

use domain::food::FoodGroup;
use domain::food::Texture;
use domain::ids::VisitId;
use domain::units::Weight;
use domain::visit::Contact;

use super::*;
use crate::i18n::Lang;
use crate::i18n::words;
use crate::view::emergency::Kind;

fn d(text: &str) -> NaiveDate {
    text.parse().expect("a date")
}

fn found(class: Class, name: &str) -> Found {
    Found {
        class,
        name: name.to_owned(),
        why: format!("Why {name}."),
        scale: None,
        act: format!("Coaching for {name}."),
        due: Some(d("2026-11-27")),
        told: None,
        about_data: false,
    }
}

fn visit() -> Visit {
    let mut v = Visit::empty(VisitId(1), d("2026-11-25"), Contact::Home);
    v.weight = Weight::from_grams(7350).ok();
    v.muac = domain::units::Muac::from_mm(134).ok();
    v
}

fn advice() -> Advice {
    Advice {
        stage: "mid_8".to_owned(),
        texture: Texture::new(2),
        meals: (2, 3),
        snacks: (1, 2),
        amount: Some(("Half a cup a meal.".to_owned(), 0.5)),
        breastfed: Some(true),
        thickness: Some("Thin food would need 5 meals.".to_owned()),
        new_food: Some(("Beans".to_owned(), Some(FoodGroup::PulsesNuts))),
    }
}

fn page(lang: Lang, found: &[Found], unchecked: &[Unchecked], emergency: bool) -> String {
    page_with(lang, found, &[], (unchecked, false), emergency)
}

fn page_with(
    lang: Lang,
    found: &[Found],
    still_open: &[Found],
    (unchecked, nothing_checked): (&[Unchecked], bool),
    emergency: bool,
) -> String {
    let v = visit();
    let advice = advice();
    let emergency = emergency.then(|| Emergency {
        name: "Neruka",
        sex: Sex::Female,
        age: "8 months".to_owned(),
        under_one: true,
        kinds: vec![Kind::Other],
        seen: Vec::new(),
        number: None,
    });
    body(&ResultPage {
        w: words(lang),
        name: "Neruka",
        sex: Sex::Female,
        code: "CDEF",
        born: d("2026-03-14"),
        today: d("2026-11-25"),
        seq: 4,
        visit: &v,
        found,
        still_open,
        closed: &[],
        emergency,
        seen: &[],
        unchecked,
        nothing_checked,
        gain: Some((450, d("2026-10-16"))),
        tolerance_g: 100,
        corrected_by_days: 0,
        here: &[],
        agreed: &[],
        advice: Some(&advice),
        next: Some(NextVisit { opens: d("2026-12-07"), closes: d("2026-12-24") }),
        number: None,
        area: "Ulopi",
        worker: "Amaro",
    })
    .into_string()
}

#[test]
fn what_was_not_checked_is_named_and_never_called_fine() {
    let text = page(Lang::En, &[], &[Unchecked::Feet, Unchecked::Length], false);
    assert!(text.contains("No concern in what you checked") && text.contains("Not checked: feet and length."), "{text}");
    assert!(!text.to_lowercase().contains("nothing to follow up"));
    assert!(text.contains("7.35 kg") && text.contains("134 mm (13.4 cm)"), "what was understood is said back");
    assert!(text.contains("450 g") && text.contains("7 December") && text.contains("/children/CDEF/visits/4/correct"));
}

#[test]
fn where_nothing_was_checked_or_something_urgent_is_open_there_is_no_word_of_no_concern() {
    let open = [found(Class::Now, "danger")];
    for lang in [Lang::En, Lang::Fr] {
        let w = words(lang);
        let no_concern = w.say_with("result-no-concern", args!["name" => "Neruka"]);
        let said = |still_open: &[Found], nothing| page_with(lang, &[], still_open, (Unchecked::ALL, nothing), false);
        let nothing = w.say_with("result-nothing-checked", args!["name" => "Neruka"]);
        let heading = |text: &str| format!("<h1>{text}</h1>");
        assert!(said(&[], false).contains(&heading(&no_concern)), "the words are what is looked for below");
        for text in [said(&[], true), said(&open, true)] {
            assert!(text.contains(&heading(&nothing)) && !text.contains(&no_concern), "{text}");
        }
        let open_are = w.say_with("result-open-are", args!["open" => "danger"]);
        assert!(said(&open, true).contains(&open_are) && !said(&[], true).contains(&open_are));
        let text = said(&open, false);
        let open_for = w.say_with("result-open-for", args!["name" => "Neruka", "open" => "danger"]);
        assert!(text.contains(&heading(&open_for)) && !text.contains(&no_concern), "{text}");
        let milder = said(&[found(Class::Month, "meals")], false);
        assert!(milder.contains(&no_concern), "what is not urgent stands below: {milder}");
    }
}

#[test]
fn an_emergency_hides_the_advice_of_the_visit() {
    let text = page(Lang::En, &[found(Class::Now, "danger"), found(Class::Week, "texture")], &[], true);
    assert!(text.contains("Why danger.") && text.contains("class=\"alert\"") && text.contains("your local emergency number"));
    assert!(text.contains("Why texture.") && !text.contains("Coaching for texture."), "{text}");
    assert!(!text.contains("Half a cup") && !text.contains("450 g"));
    assert!(text.find("class=\"alert\"") < text.find("Why texture."));
}

#[test]
fn refer_today_comes_with_a_note_and_without_coaching() {
    let text = page(Lang::En, &[found(Class::Today, "thin"), found(Class::Fortnight, "low")], &[], false);
    assert!(text.contains("Refer today") && text.contains("id=\"note\"") && text.contains("href=\"#note\""));
    assert!(!text.contains("Coaching for low.") && !text.contains("Half a cup"));
    let note = &text[text.find("id=\"note\"").expect("a note")..];
    assert!(note.contains("Neruka") && note.contains("Why thin.") && note.contains("Amaro"));
}

#[test]
fn a_milder_finding_keeps_the_advice() {
    let text = page(Lang::En, &[found(Class::Week, "gain")], &[], false);
    assert!(text.contains("Coaching for gain.") && text.contains("Half a cup") && !text.contains("No concern"));
}

#[test]
fn every_word_is_there_in_every_language() {
    for lang in [Lang::En, Lang::Fr] {
        for findings in [vec![], vec![found(Class::Now, "a")], vec![found(Class::Today, "a")], vec![found(Class::Month, "a")]] {
            let text = page(lang, &findings, Unchecked::ALL, true);
            assert!(!text.contains('{') && !text.contains('}'), "{}: {text}", lang.code());
        }
    }
}

#[test]
fn beside_a_gain_stands_what_the_scale_could_make_of_it() {
    let text = page(Lang::En, &[], &[], false);
    assert!(text.contains("up to 100 g apart") && text.contains("The last change of weight is more than that."), "{text}");
}

#[test]
fn a_finding_says_whether_it_may_be_the_scale_in_every_place_it_stands() {
    let doubt = |class| Found { scale: Some("Perhaps the scale.".to_owned()), ..found(class, "loss") };
    for class in [Class::Now, Class::Today, Class::Week] {
        let text = page(Lang::En, &[doubt(class)], &[], class == Class::Now);
        assert_eq!(text.matches("Perhaps the scale.").count(), 1, "{class:?}: {text}");
        let below = page(Lang::En, &[found(class, "first"), doubt(Class::Month)], &[], class == Class::Now);
        assert_eq!(below.matches("Perhaps the scale.").count(), 1, "below {class:?}");
    }
}
