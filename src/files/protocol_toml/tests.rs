//! The default protocol reads; what is broken in a copy of it is named with its line, its key and what to do.

use domain::food::FoodCode;
use domain::protocol::StageId;
use domain::rule::Class;
use domain::rule::RuleId;

use super::*;

fn said(text: &str) -> Vec<String> {
    parse_protocol(text, "mine.toml").err().unwrap_or_default().iter().map(ToString::to_string).collect()
}

/// The only fault of the default protocol with one place changed.
fn fault(from: &str, to: &str) -> String {
    assert!(DEFAULT_TEXT.contains(from), "the default protocol does not hold {from:?}");
    let said = said(&DEFAULT_TEXT.replacen(from, to, 1));
    assert_eq!(said.len(), 1, "{said:#?}");
    said[0].clone()
}

#[test]
fn the_default_protocol_reads() {
    assert_eq!(said(DEFAULT_TEXT), Vec::<String>::new());
    let protocol = default_protocol();
    assert_eq!((protocol.id.as_str(), protocol.version.as_str(), &protocol.approved_by), ("default-6-23", "1.1.1", &None));
    assert_eq!(Class::ALL.iter().map(|class| protocol.class_days(*class)).collect::<Vec<_>>(), [1, 2, 2, 7, 14, 30]);
    assert_eq!((protocol.foods.iter().count(), protocol.stages.iter().count(), protocol.schedule.slots.len()), (26, 7, 22));
    assert!(RuleId::ALL.iter().all(|rule| protocol.rules.is_on(*rule) && !protocol.rules.source(*rule).is_empty()));
    let codes: Vec<String> = protocol.schedule.slots.iter().map(|slot| slot.code()).collect();
    assert_eq!(&codes[..10], ["d003", "d007", "d014", "d042", "d070", "d098", "m04", "m05", "m06", "m06d14"]);
}

#[test]
fn foods_are_named_in_the_language_asked_for_or_in_that_of_the_file() {
    let protocol = default_protocol();
    let fish = FoodCode("small_dried_fish".to_owned());
    assert_eq!(protocol.food_name(&fish, "fr"), "Petits poissons séchés, en poudre");
    assert_eq!(protocol.food_name(&fish, "en"), "Small dried fish, powdered");
    assert_eq!(protocol.food_name(&fish, "sw"), "Small dried fish, powdered");
    assert_eq!(protocol.food_name(&FoodCode("snail".to_owned()), "fr"), "snail");
    let honey = protocol.food(&FoodCode("honey".to_owned())).expect("honey");
    assert_eq!((honey.earliest_days, honey.group), (365, None));
}

#[test]
fn figures_of_a_stage_read_as_written() {
    let stages = &default_protocol().stages;
    let lumps = stages.get(StageId::Lumps911).expect("a stage");
    assert_eq!((lumps.from_months, lumps.to_months, lumps.meals_min_bf, lumps.feeds_min_nbf), (9, 12, 3, 4));
    assert_eq!((lumps.kcal_bf, lumps.kcal_nbf, lumps.cups), (300, 700, Some((0.5, 0.5))));
    assert_eq!(stages.at(14).map(|stage| stage.id), Some(StageId::Family1214));
    assert_eq!(stages.at(24), None);
}

#[test]
fn each_fault_is_named_with_its_key_and_what_to_do() {
    for (from, to, key, what) in [
        ("start_age_days = 180", "start_age_days = 118", "ages.start_age_days", "from 119 to 184"),
        ("start_age_days = 180", "start_age_days = 185", "ages.start_age_days", "from 119 to 184"),
        ("exit_age_months = 24", "exit_age_months = 23", "ages.exit_age_months", "from 24 to 24"),
        ("settling_in_days = 14", "settling_in_dyas = 14", "ages.settling_in_days", "is missing"),
        ("version = \"1.1.1\"", "version = \"1.1\"", "protocol.version", "three numbers"),
        ("effective_from = 2026-01-01", "effective_from = \"soon\"", "protocol.effective_from", "a date like"),
        ("id = \"default-6-23\"", "id = \" \"", "protocol.id", "is empty"),
        ("weight_g = 100", "weight_g = 0", "tolerance.weight_g", "from 1 to"),
        ("mode = \"with_solids\"", "mode = \"local_wait\"", "allergen.mode", "approved_by"),
        ("mode = \"with_solids\"", "mode = \"soon\"", "allergen.mode", "unknown allergen mode"),
        ("week = { check_days = 7", "week = { check_days = 1", "classes.week.check_days", "not be less than"),
        ("smooth_kcal_per_g = 0.8", "smooth_kcal_per_g = 0", "energy.smooth_kcal_per_g", "above 0"),
        ("{ days = 42 }, { days = 70 }", "{ days = 70 }, { days = 42 }", "schedule.slots[5]", "later than the visit before"),
        ("below_z = -3.00\nurgent", "below_z = -3.005\nurgent", "rule weight.very_low.below_z", "two decimals"),
        ("below_z = -3.00\nurgent", "below_z = \"low\"\nurgent", "rule weight.very_low.below_z", "a number"),
        ("interval_days = [28, 122]", "interval_days = [122, 28]", "rule weight.drop.interval_days", "[from, to]"),
        ("large_loss_percent = 5.0", "large_loss_percent = 0", "rule weight.loss.large_loss_percent", "above 0"),
        (
            "class_after_severe = \"two_days\"",
            "class_after_severe = \"soon\"",
            "rule reaction.given_again.class_after_severe",
            "unknown class",
        ),
        ("source = \"local protocol\"", "source = \"\"", "rule food.local_wait.source", "is empty"),
        ("id = \"danger.other\"\non = true", "id = \"danger.other\"\non = false", "rule danger.other.on", "cannot be switched off"),
        ("id = \"food.honey\"\non = true", "id = \"food.honey\"\non = false", "rule food.honey.on", "cannot be switched off"),
        ("group = \"eggs\"", "group = \"egg\"", "food egg.group", "unknown food group"),
        ("code = \"rice\"", "code = \"Rice!\"", "food Rice!.code", "small letters"),
        ("code = \"rice\"", "code = \"cassava\"", "food cassava.code", "stands twice"),
        ("code = \"honey\"", "code = \"syrup\"", "food", "\"honey\" is missing"),
        ("safe_form = \"Cook through, mince", "safe_from = \"Cook through, mince", "food meat.safe_form", "made safe"),
    ] {
        let text = DEFAULT_TEXT.replacen(from, to, 1);
        assert_ne!(text, DEFAULT_TEXT, "{from:?} is not in the default protocol");
        let said = said(&text);
        let named = said.iter().find(|said| said.contains(&format!(": {key}: ")) && said.contains(what));
        assert!(named.is_some(), "{key}: {said:#?}");
    }
}

#[test]
fn a_fault_names_file_and_line() {
    let line = DEFAULT_TEXT.lines().position(|line| line == "start_age_days = 180").expect("a line") + 1;
    assert!(fault("start_age_days = 180", "start_age_days = 90").starts_with(&format!("mine.toml:{line}: ages.start_age_days: ")));
}

#[test]
fn stages_that_do_not_follow_each_other() {
    let gap = fault("from_months = 9\nto_months = 12", "from_months = 10\nto_months = 12");
    assert!(gap.contains("stage lumps_9_11.from_months") && gap.contains("no stage holds month 9"), "{gap}");
    let overlap = fault("from_months = 9\nto_months = 12", "from_months = 8\nto_months = 12");
    assert!(overlap.contains("overlaps"), "{overlap}");
    let short = fault("from_months = 15\nto_months = 24", "from_months = 15\nto_months = 23");
    assert!(short.contains("up to month 24"), "{short}");
    let falls = fault("texture_expected = [3, 4]\ntexture_floor = 3", "texture_expected = [2, 4]\ntexture_floor = 2");
    assert!(falls.contains("stage family_12_14.texture_expected") && falls.contains("never fall"), "{falls}");
    let twice = said(&DEFAULT_TEXT.replacen("id = \"mid_8\"", "id = \"lumps_9_11\"", 1));
    assert!(twice.iter().any(|said| said.contains("\"mid_8\" is missing")) && twice.iter().any(|said| said.contains("stands twice")));
}

#[test]
fn rules_missing_unknown_or_twice() {
    let unknown = said(&DEFAULT_TEXT.replacen("id = \"bottle.used\"", "id = \"bottle.use\"", 1));
    assert!(unknown.iter().any(|said| said.contains("unknown rule: \"bottle.use\"")), "{unknown:#?}");
    assert!(unknown.iter().any(|said| said.contains("the rule \"bottle.used\" is missing")), "{unknown:#?}");
    let switched_off = DEFAULT_TEXT.replacen("id = \"bottle.used\"\non = true", "id = \"bottle.used\"\non = false", 1);
    let off = parse_protocol(&switched_off, "mine.toml").expect("a protocol");
    assert!(!off.rules.is_on(RuleId::BottleUsed));
}

#[test]
fn unknown_keys_and_broken_toml() {
    let unknown = fault("muac_mm = 5", "muac_mm = 5\nhead_mm = 5");
    assert!(unknown.contains("tolerance.head_mm: is not a known key"), "{unknown}");
    let extra = fault("id = \"data.twin_record\"\n", "id = \"data.twin_record\"\nchain = \"twins\"\n");
    assert!(extra.contains("rule data.twin_record.chain: is not a known key"), "{extra}");
    let broken = said("[protocol]\nid = \"x\nversion = 1 2\n");
    assert!(
        broken.iter().all(|said| said.starts_with("mine.toml:") && said.contains("not valid TOML")) && !broken.is_empty(),
        "{broken:?}"
    );
    // Letters count, not bytes.
    let place = said("# é\n\"é\" = ?\n");
    assert!(place[0].starts_with("mine.toml:2: not valid TOML: the writing is at fault at line 2, column 7;"), "{place:?}");
    assert!(place[0].contains(". The parser says: "), "{place:?}");
    assert!(said("").iter().any(|said| said.contains("protocol: is missing")));
}

#[test]
fn several_faults_are_told_at_once_in_the_order_of_the_file() {
    let text = DEFAULT_TEXT.replacen("start_age_days = 180", "start_age_days = 90", 1).replacen("muac_mm = 5", "muac_mm = 0", 1);
    let text = text.replacen("group = \"eggs\"", "group = \"egg\"", 1);
    let said = said(&text);
    let keys: Vec<&str> = said.iter().filter_map(|said| said.split(": ").nth(1)).collect();
    assert_eq!(keys, ["ages.start_age_days", "tolerance.muac_mm", "food egg.group"]);
}

#[test]
fn a_broken_coaching_line_is_told_with_all_that_is_wrong_with_it() {
    let broken = r#"
[[coach]]
key = "odd"
stages = ["mid_8", "mid_9"]
mark = "hearsay"
not_with = ["feeding.swallow"]
loud = true

[[coach]]
key = "small_spoon"
stages = []
say = " "
mark = "own"
source = ""
"#;
    let said = said(&format!("{DEFAULT_TEXT}{broken}"));
    for what in [
        "coach odd.stages: unknown stage: \"mid_9\"",
        "coach odd.say: is missing",
        "coach odd.source: is missing",
        "coach odd.mark: unknown mark: \"hearsay\"",
        "coach odd.not_with: unknown rule: \"feeding.swallow\"",
        "coach odd.loud: is not a known key",
        "coach small_spoon.key: stands twice",
        "coach small_spoon.say: is empty",
        "coach small_spoon.source: is empty",
    ] {
        assert!(said.iter().any(|said| said.contains(what)), "{what}: {said:#?}");
    }
    assert_eq!(said.len(), 9, "{said:#?}");
    let nobody = "[[coach]]\nkey = \"odd\"\nstages = []\nsay = \"x\"\nmark = \"own\"\nsource = \"our own choice\"\n";
    let said = self::said(&format!("{DEFAULT_TEXT}\n{nobody}"));
    assert!(said.len() == 1 && said[0].contains("coach odd.stages: names no stage"), "{said:#?}");
}

#[test]
fn faults_of_every_kind_in_one_file_are_all_told_each_with_its_line_and_what_to_do() {
    let mut text = DEFAULT_TEXT.to_owned();
    let mut expected = Vec::new();
    for (from, to, on_line, key, what) in [
        ("settling_in_days = 14", "settling_in_dyas = 14", "settling_in_dyas", "ages.settling_in_dyas", "is not a known key; correct"),
        ("muac_mm = 5", "muac_mm = \"5\"", "muac_mm = \"5\"", "tolerance.muac_mm", "must be a whole number from 1 to 50, not the text"),
        (
            "from_months = 9\nto_months = 12",
            "from_months = 10\nto_months = 12",
            "from_months = 10",
            "stage lumps_9_11.from_months",
            "leaves a gap",
        ),
        ("id = \"bottle.used\"", "id = \"bottle.use\"", "id = \"bottle.use\"", ".id", "unknown rule: \"bottle.use\""),
        ("muac_below_mm = 115", "muac_below_mm = 115.5", "muac_below_mm = 115.5", "rule wasting.severe.muac_below_mm", "a whole number"),
        ("class_large = \"two_days\"", "class_large = \"soon\"", "class_large = \"soon\"", "rule weight.loss.class_large", "unknown class"),
        ("source = \"local protocol\"", "source = 7", "source = 7", "rule food.local_wait.source", "text in quotes, not 7"),
        ("group = \"eggs\"", "group = \"egg\"", "group = \"egg\"", "food egg.group", "unknown food group"),
        ("code = \"rice\"\nname = \"Rice\"", "code = 3\nnmae = \"Rice\"", "nmae", ".nmae", "is not a known key"),
    ] {
        assert!(text.contains(from), "{from:?} is not in the default protocol");
        text = text.replacen(from, to, 1);
        expected.push((on_line, key, what));
    }
    let said = said(&text);
    for (on_line, key, what) in expected {
        let line = text.lines().position(|line| line.starts_with(on_line) || line.contains(&format!(" {on_line}"))).expect("a line") + 1;
        let found = said.iter().any(|told| told.starts_with(&format!("mine.toml:{line}: ")) && told.contains(key) && told.contains(what));
        assert!(found, "line {line}, {key}: {what}\n{said:#?}");
    }
    assert!(said.iter().any(|told| told.contains("ages.settling_in_days: is missing; add")), "{said:#?}");
    assert!(said.iter().any(|told| told.contains("the rule \"bottle.used\" is missing; copy it")), "{said:#?}");
}

#[test]
fn figures_are_taken_up_to_their_limits_and_not_beyond() {
    let from = "urgent_below_z = -6.00";
    for within in ["urgent_below_z = -20.00", "urgent_below_z = -6.05"] {
        assert_eq!(said(&DEFAULT_TEXT.replacen(from, within, 1)), Vec::<String>::new(), "{within}");
    }
    for beyond in ["urgent_below_z = -20.01", "urgent_below_z = 20.01", "urgent_below_z = -6.005"] {
        let fault = fault(from, beyond);
        assert!(fault.contains("must be a z-score from -20 to 20 with at most two decimals"), "{beyond}: {fault}");
    }
    for (within, beyond) in [("muac_mm = 1", "muac_mm = 0"), ("muac_mm = 50", "muac_mm = 51")] {
        assert_eq!(said(&DEFAULT_TEXT.replacen("muac_mm = 5", within, 1)), Vec::<String>::new(), "{within}");
        assert!(fault("muac_mm = 5", beyond).contains("must be a whole number from 1 to 50"), "{beyond}");
    }
    let days = "skin_and_gut_within_minutes = 240";
    assert_eq!(said(&DEFAULT_TEXT.replacen(days, "skin_and_gut_within_minutes = 100000", 1)), Vec::<String>::new());
    assert!(fault(days, "skin_and_gut_within_minutes = 100001").contains("must be a whole number"));
    assert!(fault(days, "skin_and_gut_within_minutes = -1").contains("must be a whole number"));
}
