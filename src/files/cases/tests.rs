//! What a case file may not hold is named with its file, its case and its key; what disagrees is told.

use domain::protocol::Protocols;

use super::super::protocol_toml::default_protocol;
use super::*;

const CASE: &str = r#"
[[case]]
id = "slow-gain"
[case.infant]
sex = "F"
birth_date = 2025-06-10
[[case.visit]]
date = 2025-09-12
weight_g = 5900
[[case.visit]]
date = 2025-10-10
weight_g = 6000
outcomes = [{ rule = "weight.low", outcome = "seen" }]
[[case.visit.food]]
code = "rice"
response = "accepted"
[case.visit.expect]
waz = -0.56
laz = "none"
fires = [["weight.slow_gain", "week"], ["solids.early", "fortnight"]]
open = [["weight.slow_gain", "week", 2025-10-17], ["solids.early", "fortnight", 2025-10-24]]
closed = []
[case.expect]
visits = []
"#;

fn said(text: &str) -> Vec<String> {
    parse_cases(text, "mine.toml").err().unwrap_or_default().iter().map(ToString::to_string).collect()
}

fn disagreements(text: &str) -> Vec<Disagreement> {
    let file = parse_cases(text, "mine.toml").expect("a case file");
    let mut protocol = default_protocol().clone();
    protocol.foods.add(file.foods);
    let protocols = Protocols::one(protocol);
    file.cases.iter().flat_map(|case| check(case, &protocols)).collect()
}

#[test]
fn a_case_that_agrees_and_one_that_does_not() {
    assert_eq!(disagreements(CASE), []);
    let found = disagreements(&CASE.replace("[\"weight.slow_gain\", \"week\"]", "[\"weight.slow_gain\", \"fortnight\"]"));
    assert_eq!(found.len(), 1);
    assert_eq!(found[0].place, "visit 2 (2025-10-10), fires");
    assert_eq!(found[0].expected, "weight.slow_gain fortnight, solids.early fortnight");
    assert_eq!(found[0].got, "weight.slow_gain week, solids.early fortnight");
    for (from, to, place) in [
        ("waz = -0.56", "waz = -0.57", "waz"),
        ("waz = -0.56", "waz = \"none\"", "waz"),
        ("laz = \"none\"", "laz = 0.00", "laz"),
        ("closed = []", "closed = [[\"weight.low\", \"replaced\"]]", "closed"),
        ("closed = []", "silenced = [\"weight.drop\"]", "silenced"),
        ("closed = []", "stage = \"none\"", "stage"),
        ("closed = []", "completed_months = 5", "completed_months"),
        ("2025-10-17]", "2025-10-18]", "open"),
        ("visits = []", "visits = [[\"visit.overdue\", 3]]", "visits"),
        ("visits = []", "next_visit = []", "next_visit"),
        ("visits = []", "open = []", "open"),
    ] {
        let found = disagreements(&CASE.replacen(from, to, 1));
        assert!(found.len() == 1 && found[0].place.ends_with(place), "{to}: {found:?}");
    }
}

#[test]
fn foods_of_the_file_add_to_the_protocol_or_take_the_place_of_its_foods() {
    // Rice as a drink is no solid food.
    let found = disagreements(&format!("[[food]]\ncode = \"rice\"\ndrink = true\n{CASE}"));
    assert_eq!(found.first().map(|found| found.got.as_str()), Some("weight.slow_gain week"));
}

#[test]
fn what_a_case_may_not_hold() {
    for (from, to, key, what) in [
        ("date = 2025-09-12", "date = 2025-06-09", "case slow-gain, visit 1.date", "before birth"),
        ("weight_g = 5900", "weight_g = 499", "case slow-gain, visit 1.weight_g", "from 500 to 25000"),
        ("weight_g = 5900", "length_mm = 1101", "case slow-gain, visit 1.length_mm", "from 300 to 1100"),
        ("weight_g = 5900", "muac_mm = 69", "case slow-gain, visit 1.muac_mm", "from 70 to 220"),
        ("weight_g = 5900", "weigth_g = 5900", "case slow-gain, visit 1.weigth_g", "not a known key"),
        ("weight_g = 5900", "weight_g = \"5900\"", "case slow-gain, visit 1.weight_g", "a whole number"),
        ("weight_g = 5900", "solids_started_on = 2025-09-13", "case slow-gain, visit 1.solids_started_on", "after the visit"),
        ("weight_g = 5900", "contact = \"letter\"", "case slow-gain, visit 1.contact", "unknown contact"),
        ("weight_g = 5900", "danger_signs = [\"sneezes\"]", "case slow-gain, visit 1.danger_signs", "unknown danger sign"),
        ("weight_g = 5900", "plans = [\"weight.low\"]", "case slow-gain, visit 1.plans", "can cover only"),
        ("weight_g = 5900", "texture_best = 5", "case slow-gain, visit 1.texture_best", "from 0 to 4"),
        ("rule = \"weight.low\", outcome", "rule = \"weight.lo\", outcome", "outcomes[1].rule", "unknown rule"),
        ("response = \"accepted\"", "response = \"liked\"", "case slow-gain, visit 2, food rice.response", "unknown response"),
        ("sex = \"F\"", "sex = \"girl\"", "case slow-gain, infant.sex", "unknown sex"),
        ("sex = \"F\"", "sex = \"F\"\nname = \"x\"", "case slow-gain, infant.name", "not a known key"),
        ("sex = \"F\"", "sex = \"F\"\nregistered_on = 2025-06-01", "case slow-gain, infant.registered_on", "before birth"),
        ("id = \"slow-gain\"", "id = \"slow-gain\"\nas_of = 2025-10-09", "case slow-gain.as_of", "before the last visit"),
        ("waz = -0.56", "waz = -0.565", "case slow-gain, visit 2, expect.waz", "two decimals"),
        ("waz = -0.56", "waz = \"nothing\"", "case slow-gain, visit 2, expect.waz", "a number"),
        ("\"week\"]", "\"weekly\"]", "case slow-gain, visit 2, expect.fires", "unknown class: \"weekly\""),
        ("\"week\"]", "7]", "case slow-gain, visit 2, expect.fires", "[rule, class]"),
        ("visits = []", "visits = [[\"weight.low\", 2]]", "case slow-gain, expect.visits", "[list, days overdue]"),
        ("closed = []", "clsoed = []", "case slow-gain, visit 2, expect.clsoed", "not a known key"),
    ] {
        let text = CASE.replacen(from, to, 1);
        assert_ne!(text, CASE, "{from:?} is not in the case");
        let said = said(&text);
        let named = said.iter().any(|said| said.starts_with("mine.toml:") && said.contains(key) && said.contains(what));
        assert!(named, "{key}: {said:#?}");
    }
    assert!(said(&format!("{CASE}{CASE}")).iter().any(|said| said.contains("stands twice")));
    assert!(said("").iter().any(|said| said.contains("at least one [[case]]")));
}

#[test]
fn one_fault_of_a_case_hides_none_of_the_others() {
    let text = CASE
        .replacen("sex = \"F\"", "sex = \"girl\"\nnmae = \"x\"", 1)
        .replacen("date = 2025-09-12", "date = 2025-06-09", 1)
        .replacen("weight_g = 6000", "weigth_g = 6000", 1)
        .replacen("[\"weight.slow_gain\", \"week\"]", "[\"weight.slow\", \"week\"]", 1)
        .replacen("\"week\", 2025-10-17", "\"weekly\", 2025-10-17", 1);
    let said = said(&format!("{text}clsoed = []\n{text}"));
    let told = |what: &str| said.iter().filter(|said| said.contains(what)).count();
    for (what, times) in [
        ("unknown sex", 2),
        ("infant.nmae", 2),
        ("before birth", 2),
        ("weigth_g", 2),
        ("unknown rule: \"weight.slow\"", 2),
        ("unknown class: \"weekly\"", 2),
        ("expect.clsoed", 1),
        ("stands twice", 1),
        ("must hold lists", 0),
    ] {
        assert_eq!(told(what), times, "{what}: {said:#?}");
    }
    let none = said.len();
    assert_eq!(none, 14, "{said:#?}");
}

#[test]
fn visits_stand_in_any_order_and_keep_their_expectations() {
    let (head, visits) = CASE.split_once("[[case.visit]]").expect("visits");
    let (first, second) = visits.split_once("[[case.visit]]").expect("two visits");
    let (second, end) = second.split_once("[case.expect]").expect("an end");
    let turned = format!("{head}[[case.visit]]{second}[[case.visit]]{first}[case.expect]{end}");
    assert_eq!(disagreements(&turned), []);
}
