//! How many children with ten visits are judged in a second, and how much memory that takes.
//! `cargo bench --bench assess`

use chrono::NaiveDate;
use divan::AllocProfiler;
use divan::Bencher;
use divan::counter::ItemsCount;
use domain::assess::assess;
use domain::child::Child;
use domain::child::ChildStatus;
use domain::child::Sex;
use domain::food::FoodCode;
use domain::food::FoodGroup;
use domain::food::Response;
use domain::food::Texture;
use domain::ids::VisitId;
use domain::protocol::Protocols;
use domain::units::Length;
use domain::units::Muac;
use domain::units::Weight;
use domain::visit::Contact;
use domain::visit::FoodOffer;
use domain::visit::Visit;
use spoonround::files::protocol_toml::default_protocol;

#[global_allocator]
static ALLOC: AllocProfiler = AllocProfiler::system();

fn main() {
    divan::main();
}

fn day(text: &str) -> NaiveDate {
    text.parse().expect("a date")
}

fn child() -> Child {
    Child {
        sex: Sex::Female,
        born: day("2025-01-10"),
        birth_day_known: true,
        gestation_days: Some(275),
        birth_weight: Weight::from_grams(3_150).ok(),
        registered_on: day("2025-01-20"),
        ever_breastfed: Some(true),
        severe_eczema: Some(false),
        known_food_allergy: None,
        status: ChildStatus::Active,
        looks_like_another: false,
    }
}

/// Ten ordinary visits; with `troubled`, one that gains too little and eats too few things, so that follow-ups open and stay.
fn visits(troubled: bool) -> Vec<Visit> {
    let days = [
        "2025-01-20",
        "2025-02-21",
        "2025-04-18",
        "2025-06-10",
        "2025-07-12",
        "2025-08-11",
        "2025-09-12",
        "2025-10-10",
        "2025-11-12",
        "2026-01-09",
    ];
    let grams = [3_200, 4_150, 5_700, 6_700, 7_150, 7_500, 7_850, 8_100, 8_350, 8_800];
    let mut number = 0;
    let visit = |(on, grams): (&str, u32)| {
        number += 1;
        let mut visit = Visit::empty(VisitId(number), day(on), Contact::Home);
        let grams = if troubled { grams * 4 / 5 } else { grams };
        visit.weight = Weight::from_grams(grams).ok();
        visit.length = Length::from_mm(510 + u16::try_from(number).expect("small") * 22).ok();
        visit.muac = Muac::from_mm(if troubled { 122 } else { 140 }).ok();
        visit.oedema = Some(false);
        visit.danger_signs = Some([].into());
        visit.breastfed = Some(true);
        visit.solids_yesterday = Some(number > 5);
        if number > 5 {
            visit.meals = Some(if troubled { 1 } else { 3 });
            visit.texture_usual = Texture::new(2);
            visit.texture_best = Texture::new(if troubled { 1 } else { 3 });
            let groups = [FoodGroup::BreastMilk, FoodGroup::GrainsRoots, FoodGroup::Flesh, FoodGroup::VitA, FoodGroup::OtherFv];
            visit.groups = Some(groups.into_iter().take(if troubled { 2 } else { 5 }).collect());
            visit.iron_source = Some(false);
            visit.sweet_drink = Some(false);
            visit.bottle = Some(false);
            visit.low_value = Some([].into());
            visit.foods.push(FoodOffer {
                code: FoodCode("pumpkin".to_owned()),
                offers: 2,
                response: Some(Response::Accepted),
                unsafe_form: None,
                signs: None,
                minutes_after: None,
                hold_lifted: false,
            });
        }
        visit
    };
    days.into_iter().zip(grams).map(visit).collect()
}

#[divan::bench(args = [false, true])]
fn ten_visits(bencher: Bencher<'_, '_>, troubled: bool) {
    let (child, visits) = (child(), visits(troubled));
    let protocols = Protocols::one(default_protocol().clone());
    let as_of = day("2026-01-15");
    bencher.counter(ItemsCount::new(1_usize)).bench(|| assess(divan::black_box(&child), divan::black_box(&visits), &protocols, as_of));
}
