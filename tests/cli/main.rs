//! The program as it is started from a shell: what it prints, where, and with which exit status. 0: done; 1: something that was checked
//! did not hold; 2: it could not run, or was asked wrongly.

mod export;
mod office;
mod place;
mod protocols;
mod scores;
mod starting;

use crate::place::Place;

#[test]
fn every_command_explains_itself_with_an_example() {
    let place = Place::new();
    for command in [
        "",
        "serve",
        "migrate",
        "add-user",
        "score",
        "protocol check",
        "protocol print",
        "protocol rehearse",
        "protocol adopt",
        "due",
        "export",
        "tick",
        "recheck",
    ] {
        let mut args: Vec<&str> = command.split_whitespace().collect();
        args.push("--help");
        let ran = place.run(&args);
        ran.is(0).prints("Example:\n").prints(format!("spoonround {command}").trim_end());
    }
    place.run(&[]).is(2).complains("Usage:");
    place.run(&["scor"]).is(2).complains("scor");
    assert_eq!(std::fs::read_dir(place.path()).expect("readable").count(), 0, "explaining leaves no file behind");
}
