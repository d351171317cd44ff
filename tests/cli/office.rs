//! People, lists and days, without a browser.

use crate::place::Place;

#[test]
fn the_first_person_gets_a_code_that_is_shown_once() {
    let place = Place::new();
    let add = ["add-user", "--name", "Teveli Ndora", "--sign-in", "teveli", "--role", "administrator"];
    let ran = place.run(&add);
    ran.is(0).prints("Teveli Ndora can sign in as teveli with the one-time code ").prints("good until");
    let code = ran.out.split("one-time code ").nth(1).and_then(|rest| rest.split_whitespace().next()).expect("a code");
    assert!(code.replace('-', "").len() >= 12, "{code}");
    let kept = std::fs::read(place.path().join("data/spoonround.db")).expect("there");
    let log = std::fs::read(place.path().join("data/spoonround.db-wal")).unwrap_or_default();
    for bytes in [kept, log] {
        assert!(!bytes.windows(code.len()).any(|window| window == code.as_bytes()), "the code itself is nowhere kept");
    }
    place.run(&add).is(2).complains("taken");
    place.run(&["add-user", "--name", "X", "--sign-in", "No Good"]).is(2).complains("small letters");
    place.run(&["add-user", "--name", "X", "--sign-in", "xo", "--role", "doctor"]).is(2).complains("use worker, supervisor");
}

#[test]
fn a_recheck_says_what_it_looked_at_and_only_a_demo_is_taken_to_another_day() {
    let place = Place::new();
    place.run(&["recheck"]).is(0).prints("0 children, 0 visits, 0 follow-ups worked out for 20").prints("0 differences, in 0 children\n");
    for command in ["recheck", "tick"] {
        place.run(&[command, "--as-of", "2027-01-01"]).is(2).complains("only a demo allows");
    }
}

#[test]
fn the_list_of_an_empty_programme_has_its_columns_and_no_future() {
    let place = Place::new();
    let ran = place.run(&["due"]);
    ran.is(0);
    assert_eq!(ran.out, "as_of,child_code,area,worker,age_months,rule,class,due_on,days_late,protocol_version\r\n");
    place.run(&["due", "--as-of", "2999-01-01"]).is(2).complains("has not come yet");
    for (day, command) in [
        ("yesterday", &["due", "--as-of"][..]),
        ("2026-02-31", &["due", "--as-of"]),
        ("2026-02-31", &["tick", "--as-of"]),
        ("2026-02-31", &["recheck", "--as-of"]),
        ("2026-02-31", &["protocol", "rehearse", "default", "--as-of"]),
        ("2026-02-31", &["protocol", "adopt", "default", "--approved-by", "Dr Oru Saneth", "--from"]),
    ] {
        let ran = place.run(&[command, &[day]].concat());
        ran.is(2).complains(&format!("there is no day \"{day}\"; write year, month and day, such as 2026-11-25"));
    }
    let ran = place.run(&["due", "--area", "nope"]);
    ran.is(2).complains("no area has the code \"nope\"; there is no area yet");
    assert_eq!(ran.out, "", "no header that would read as an empty list");
    place.run(&["export", "2026-13", "--into", "x"]).is(2).complains("write it like 2026-10");
}
