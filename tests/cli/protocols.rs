//! Protocols checked, printed, rehearsed and adopted.

use crate::place::Place;

const WORKED: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/cases/worked.toml");
const GENERATED: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/cases/generated.toml");
const DEFAULT_PROTOCOL: &str = include_str!("../../src/files/default_protocol.toml");

#[test]
fn the_built_in_protocol_passes_the_worked_cases() {
    let place = Place::new();
    for cases in [WORKED, GENERATED] {
        let written = std::fs::read_to_string(cases).expect("readable").matches("[[case]]").count();
        assert!(written > 0, "{cases} holds cases");
        let ran = place.run(&["protocol", "check", "default", cases]);
        assert_eq!(ran.is(0).out, format!("{written} passed, 0 failed\n"), "every case is judged and holds: {cases}");
    }
}

#[test]
fn a_case_that_does_not_hold_is_named_and_counted() {
    let place = Place::new();
    let worked = std::fs::read_to_string(WORKED).expect("readable");
    let changed = worked.replacen("fires = [[\"reaction.severe\", \"now\"]]", "fires = [[\"reaction.severe\", \"month\"]]", 1);
    assert_ne!(changed, worked, "a case expects class now");
    let ran = place.run(&["protocol", "check", "default", &place.file("changed.toml", &changed)]);
    ran.is(1).prints("changed.toml: ").prints("expected").prints("reaction.severe").prints(" passed, 1 failed\n");
}

#[test]
fn broken_files_tell_every_fault_at_once_and_judge_nothing() {
    let place = Place::new();
    let cases = place.file("broken.toml", "format = \"one\"\nfeeling = \"good\"\n");
    let protocol = place.file("protocol.toml", "[protocol]\nid = 7\nunheard_of = true\n");
    let ran = place.run(&["protocol", "check", &protocol, &cases]);
    ran.is(2).complains("protocol.toml").complains("unheard_of").complains("broken.toml").complains("feeling");
    assert_eq!(ran.out, "");
    place.run(&["protocol", "check", "default", "no-cases.toml"]).is(2).complains("no-cases.toml");
    place.run(&["protocol", "check", "no-protocol.toml", WORKED]).is(2).complains("no-protocol.toml");
}

#[test]
fn a_protocol_is_printed_as_a_document_in_either_language() {
    let place = Place::new();
    let ran = place.run(&["protocol", "print", "default"]);
    ran.is(0).prints("# Feeding protocol default-6-23, version 1.").prints("**Not approved by a clinician.**");
    ran.prints("upper arm under 115 mm").prints("Source: WHO/UNICEF 2009: 115 mm and -3").prints("Signature: ");
    assert_eq!(ran.out.matches("**What the worker does:**").count(), domain::rule::RuleId::ALL.len(), "every rule");
    assert_eq!(std::fs::read_dir(place.path()).expect("readable").count(), 0, "a file needs no database");
    let own = DEFAULT_PROTOCOL.replacen("muac_below_mm = 115", "muac_below_mm = 117", 1).replacen(
        "approved_by = \"\"",
        "approved_by = \"Dr Oru\"",
        1,
    );
    let own = place.file("own.toml", &own);
    let ran = place.run(&["protocol", "print", &own, "--language", "fr"]);
    ran.is(0).prints("bras sous 117 mm").prints("Approuvé par Dr Oru.").prints("Bouillie de mil");
    place.run(&["protocol", "print"]).is(0).prints("# Feeding protocol default-6-23");
    place.run(&["protocol", "print", "gone.toml"]).is(2).complains("gone.toml");
    place.run(&["protocol", "print", "default", "--language", "xx"]).is(2).complains("use en or fr");
}

#[test]
fn a_protocol_is_rehearsed_and_adopted_by_command_and_never_by_halves() {
    let place = Place::new();
    let broken = DEFAULT_PROTOCOL.replacen("muac_mm = 5", "muac_mm = 0", 1).replacen("id = \"bottle.used\"", "id = \"bottle.use\"", 1);
    let broken = place.file("broken.toml", &broken);
    let adopt =
        |file: &str, from: &str| place.run(&["protocol", "adopt", file, "--approved-by", "Dr Oru", "--from", from, "--reason", "agreed"]);
    for ran in [place.run(&["protocol", "rehearse", &broken]), adopt(&broken, "2999-01-01")] {
        ran.is(2).complains("tolerance.muac_mm").complains("unknown rule: \"bottle.use\"").complains("broken.toml:");
    }
    let new = DEFAULT_PROTOCOL.replacen("version = \"1", "version = \"7.0.0\"\n# was 1", 1).replacen(
        "muac_below_mm = 115",
        "muac_below_mm = 118",
        1,
    );
    let new = place.file("new.toml", &new);
    let ran = place.run(&["protocol", "rehearse", &new]);
    ran.is(0)
        .prints("default-6-23 7.0.0 instead of default-6-23 1.")
        .prints("0 children looked at, 0 of them touched")
        .prints("Nothing was kept");
    place.run(&["protocol", "rehearse", &new, "--as-of", "2999-01-01"]).is(2).complains("has not come yet");
    adopt(&new, "2020-01-01").is(2).complains("before today").complains("--backdated");
    place.run(&["protocol", "adopt", &new, "--approved-by", " ", "--from", "2999-01-01"]).is(2).complains("--approved-by is empty");
    place.run(&["protocol", "adopt", &new, "--from", "2999-01-01"]).is(2).complains("--approved-by");
    place.run(&["protocol", "print"]).is(0).prints("upper arm under 115 mm");
    adopt(&new, "2999-01-01").is(0).prints("default-6-23 7.0.0 is adopted and judges visits from 2999-01-01 on");
    adopt(&new, "2999-01-01").is(2).complains("adopted already");
    // Until then the built-in one judges, which a first adoption keeps for the days before.
    place.run(&["protocol", "print"]).is(0).prints("upper arm under 115 mm");
    let later = std::fs::read_to_string(&new).expect("there").replacen("7.0.0", "7.0.1", 1).replacen("= 118", "= 119", 1);
    let later = place.file("later.toml", &later);
    place.run(&["protocol", "adopt", &later, "--approved-by", "Dr Oru", "--from", "2026-02-01", "--backdated"]).is(0);
    place.run(&["protocol", "print"]).is(0).prints("upper arm under 119 mm").prints("Approved by Dr Oru.");
}

#[test]
fn looking_at_a_changed_file_does_not_adopt_it_and_starting_does() {
    let place = Place::new();
    place.file("own.toml", DEFAULT_PROTOCOL);
    place.file("spoonround.toml", "protocol_file = \"own.toml\"\n");
    place.run(&["migrate"]).is(0);
    let new = DEFAULT_PROTOCOL.replacen("version = \"1", "version = \"7.0.0\"\n# was 1", 1).replacen(
        "muac_below_mm = 115",
        "muac_below_mm = 118",
        1,
    );
    let own = place.file("own.toml", &new);
    place.run(&["protocol", "rehearse", &own]).is(0);
    place.run(&["recheck"]).is(0);
    place.run(&["protocol", "print"]).is(0).prints("upper arm under 115 mm");
    place.run(&["migrate"]).is(0);
    place.run(&["protocol", "print"]).is(0).prints("version 7.0.0").prints("upper arm under 118 mm");
    // Changed again without a new version: refused, and what is adopted stays.
    place.file("own.toml", &new.replacen("= 118", "= 119", 1));
    place.run(&["migrate"]).is(2).complains("version 7.0.0 is adopted already with another text");
    place.run(&["protocol", "print"]).is(0).prints("upper arm under 118 mm");
    // Without a configured file, a program that starts leaves what is adopted alone.
    place.file("spoonround.toml", "");
    place.run(&["migrate"]).is(0);
    place.run(&["protocol", "print"]).is(0).prints("upper arm under 118 mm");
}
