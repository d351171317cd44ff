//! How fast pages are drawn, without a database: the round of 50 homes with its frame, and a growth chart with its curves.
//!
//! Run with `cargo bench --bench pages`. The rates are pages a second on one core.

use chrono::NaiveDate;
use divan::Bencher;
use divan::black_box;
use domain::child::Sex;
use domain::errand::Errand;
use domain::errand::FollowUpDue;
use domain::errand::VisitDue;
use domain::evidence::Evidence;
use domain::evidence::EvidenceKey;
use domain::evidence::Quantity;
use domain::growth::Indicator;
use domain::rule::Class;
use domain::rule::RuleId;
use spoonround::i18n::Lang;
use spoonround::i18n::words;
use spoonround::view::chart;
use spoonround::view::layout;
use spoonround::view::layout::Shell;
use spoonround::view::round;
use spoonround::view::round::Home;
use spoonround::view::round::RoundPage;

const HOMES: usize = 50;

fn main() {
    divan::main();
}

fn day(text: &str) -> NaiveDate {
    text.parse().expect("a date")
}

/// Two homes in three have a follow-up, the others a visit.
fn errands() -> Vec<Errand> {
    let classes = [Class::TwoDays, Class::Week, Class::Fortnight, Class::Month];
    (0..HOMES)
        .map(|at| {
            let visit = VisitDue::Open { target: day("2026-11-25"), until: day("2026-12-05") };
            if at % 3 == 0 {
                return Errand::Visit(visit);
            }
            let evidence =
                Evidence::from([(EvidenceKey::Waz, Quantity::ZHundredths(-233)), (EvidenceKey::Limit, Quantity::ZHundredths(-200))]);
            let first = FollowUpDue {
                class: classes[at % classes.len()],
                rule: RuleId::WeightLow,
                due_on: day("2026-11-24"),
                evidence,
                open_count: 2,
                unanswered_since: None,
            };
            Errand::FollowUp { first, visit: Some(visit) }
        })
        .collect()
}

#[divan::bench(args = [Lang::En, Lang::Fr])]
fn round_of_50_homes(bencher: Bencher<'_, '_>, lang: Lang) {
    let errands = errands();
    let names: Vec<String> = (0..HOMES).map(|at| format!("Neruka {at}")).collect();
    let food = |code: &str| code.to_owned();
    bencher.bench(|| {
        let w = words(lang);
        let homes = errands
            .iter()
            .zip(&names)
            .map(|(errand, name)| Home {
                code: "22222222",
                name,
                known_as: None,
                born: day("2026-03-14"),
                village: "Ulopi",
                phone: Some("000"),
                errand,
                last_seen_on: Some(day("2026-10-16")),
                household: None,
                noted: false,
                also: Vec::new(),
            })
            .collect();
        let page = RoundPage {
            day: day("2026-11-25"),
            whose: None,
            homes,
            later: Vec::new(),
            seen: Vec::new(),
            next_due: None,
            continues: false,
            more: None,
            print: "/round/print".to_owned(),
            query: "",
            arms: round::sheet::ArmLimits::of(spoonround::files::protocol_toml::default_protocol()),
            food: &food,
        };
        black_box(layout::page(&Shell::new(w, "Round"), round::body(w, &page)).into_string())
    });
}

/// The curves of a chart are most of a child's page.
#[divan::bench]
fn curves_of_a_chart() -> usize {
    chart::curves(black_box(Indicator::Waz), Sex::Female, 24).len()
}
