//! The program as it is started from a shell: what it prints, where, and with which exit status. 0: done; 1: something that was checked
//! did not hold; 2: it could not run, or was asked wrongly.

use std::io::BufRead;
use std::io::BufReader;
use std::io::Read;
use std::io::Write;
use std::net::TcpListener;
use std::path::Path;
use std::process::Child;
use std::process::Command;
use std::process::Output;
use std::process::Stdio;

use sea_orm::ConnectionTrait;
use spoonround::store::Db;
use tempfile::TempDir;

/// 400 measurements with z-scores, made outside this project from the WHO Child Growth Standards 2006 and 2007.
const CHECK_VALUES: &str = include_str!("data/growth/golden_public.csv");
const WORKED: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/cases/worked.toml");
const GENERATED: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/cases/generated.toml");

/// An empty folder to start the program in, with nothing of the shell's settings.
struct Place(TempDir);

impl Place {
    fn new() -> Self {
        Self(tempfile::tempdir().expect("a folder"))
    }

    fn path(&self) -> &Path {
        self.0.path()
    }

    fn command(&self, args: &[&str]) -> Command {
        let mut command = Command::new(env!("CARGO_BIN_EXE_spoonround"));
        command.args(args).current_dir(self.path()).env_clear().stdin(Stdio::null());
        command
    }

    fn run(&self, args: &[&str]) -> Ran {
        Ran::of(&self.command(args).output().expect("the program starts"))
    }

    fn run_with(&self, args: &[&str], input: &str) -> Ran {
        let mut child =
            self.command(args).stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().expect("the program starts");
        let mut stdin = child.stdin.take().expect("an input");
        let input = input.to_owned();
        let writing = std::thread::spawn(move || stdin.write_all(input.as_bytes()));
        let ran = Ran::of(&child.wait_with_output().expect("the program ends"));
        // A program that refuses early does not read to the end.
        let _ = writing.join().expect("written");
        ran
    }

    fn file(&self, name: &str, text: &str) -> String {
        let path = self.path().join(name);
        std::fs::write(&path, text).expect("written");
        path.display().to_string()
    }
}

/// What a run left.
#[derive(Debug)]
struct Ran {
    status: Option<i32>,
    out: String,
    err: String,
}

impl Ran {
    fn of(output: &Output) -> Self {
        let text = |bytes: &[u8]| String::from_utf8(bytes.to_vec()).expect("text");
        Self { status: output.status.code(), out: text(&output.stdout), err: text(&output.stderr) }
    }

    #[track_caller]
    fn is(&self, status: i32) -> &Self {
        assert_eq!(self.status, Some(status), "{self:#?}");
        self
    }

    #[track_caller]
    fn complains(&self, text: &str) -> &Self {
        assert!(self.err.contains(text), "standard error does not say {text:?}: {self:#?}");
        assert!(!self.err.contains("panicked"), "{self:#?}");
        self
    }

    #[track_caller]
    fn prints(&self, text: &str) -> &Self {
        assert!(self.out.contains(text), "standard output does not say {text:?}: {self:#?}");
        self
    }
}

/// A server that is ended with the test.
struct Serving(Child);

impl Drop for Serving {
    fn drop(&mut self) {
        let _ = self.0.kill();
        let _ = self.0.wait();
    }
}

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

#[test]
fn score_reproduces_the_check_values_byte_for_byte() {
    let place = Place::new();
    let measured: String = CHECK_VALUES.lines().map(|line| line.split(',').take(8).collect::<Vec<_>>().join(",") + "\n").collect();
    let from_input = place.run_with(&["score"], &measured);
    from_input.is(0);
    let columns: String = from_input.out.lines().map(|line| line.split(',').take(14).collect::<Vec<_>>().join(",") + "\n").collect();
    assert_eq!(columns, CHECK_VALUES);
    assert_eq!(columns.lines().count(), 401);
    assert_eq!(from_input.out.lines().next(), Some(&*format!("{},hcz,reasons", CHECK_VALUES.lines().next().expect("a first line"))));
    let from_file = place.run(&["score", &place.file("measured.csv", &measured)]);
    assert_eq!(from_file.is(0).out, from_input.out);
}

#[test]
fn score_names_a_bad_row_and_scores_the_others() {
    let place = Place::new();
    let ran = place.run_with(&["score"], "id,sex,age_days,weight_kg\nA,F,202,7.10\nB,F,202,7.x\n");
    ran.is(1).prints("A,F,202,7.10,").complains("line 3 (id B), column weight_kg: \"7.x\"").complains("1 rows scored, 1 not scored");
    place.run_with(&["score"], "name\nA\n").is(2).complains("sex").complains("age_days");
    place.run(&["score", "not-there.csv"]).is(2).complains("not-there.csv").complains("standard input");
}

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
fn the_effective_configuration_is_shown_without_secrets() {
    let place = Place::new();
    let ran = Ran::of(
        &place
            .command(&["serve", "--check", "--listen", "127.0.0.1:4141"])
            .env("SPOONROUND_DATABASE", "postgres://app:hunter2@db/spoon")
            .output()
            .expect("the program starts"),
    );
    ran.is(0).prints("listen = \"127.0.0.1:4141\"").prints("postgres://app:…@db/spoon");
    assert!(!ran.out.contains("hunter2") && !ran.err.contains("hunter2"), "{ran:#?}");
    assert_eq!(std::fs::read_dir(place.path()).expect("readable").count(), 0, "checking opens nothing");
}

#[test]
fn an_unknown_key_is_refused_in_file_and_environment() {
    let place = Place::new();
    let file = place.file("own.toml", "listn = \"127.0.0.1:1\"\nlog_format = \"loud\"\n");
    place.run(&["serve", "--check", "--config", &file]).is(2).complains("listn").complains("own.toml");
    let ran = Ran::of(&place.command(&["serve", "--check"]).env("SPOONROUND_LISTN", "x").output().expect("the program starts"));
    ran.is(2).complains("listn");
    place.run(&["serve", "--check", "--config", "gone.toml"]).is(2).complains("gone.toml");
}

#[test]
fn a_served_port_answers_and_a_second_server_is_told_that_it_is_in_use() {
    let place = Place::new();
    let mut serving = place
        .command(&["serve", "--listen", "127.0.0.1:0"])
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .map(Serving)
        .expect("the program starts");
    let mut said = String::new();
    BufReader::new(serving.0.stdout.take().expect("an output")).read_line(&mut said).expect("a line");
    let address = said.trim().strip_prefix("Spoonround serves on http://").unwrap_or_else(|| panic!("{said:?}")).to_owned();
    let mut asking = std::net::TcpStream::connect(&address).expect("somebody listens");
    asking.write_all(b"GET /health HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n").expect("sent");
    let mut answer = String::new();
    asking.read_to_string(&mut answer).expect("an answer");
    assert!(answer.starts_with("HTTP/1.1 200"), "{answer}");
    Place::new().run(&["serve", "--listen", &address]).is(2).complains(&format!("{address} is in use")).complains("--listen");
}

#[test]
fn a_port_that_another_program_has_is_named() {
    let taken = TcpListener::bind("127.0.0.1:0").expect("a port");
    let address = taken.local_addr().expect("an address").to_string();
    Place::new().run(&["serve", "--listen", &address]).is(2).complains(&address).complains("in use");
}

#[test]
fn a_data_folder_that_cannot_be_written_is_named() {
    let place = Place::new();
    // A file where the folder should be: nobody can write there, not even the administrator of the machine.
    place.file("data", "in the way");
    for command in [&["migrate"][..], &["serve", "--listen", "127.0.0.1:0"], &["due"]] {
        place.run(command).is(2).complains("data/spoonround.db").complains("SPOONROUND_DATABASE");
    }
    let place = Place::new();
    std::fs::create_dir(place.path().join("data")).expect("a folder");
    place.file("data/spoonround.db", &"not a database, but long enough to have the header of one; ".repeat(4));
    place.run(&["migrate"]).is(2).complains("data/spoonround.db");
}

#[tokio::test]
async fn a_database_of_a_newer_program_is_left_alone() {
    let place = Place::new();
    place.run(&["migrate"]).is(0).prints("up to date");
    let file = place.path().join("data/spoonround.db");
    let db = Db::open(&file.display().to_string()).await.expect("made above");
    db.direct()
        .execute_unprepared("INSERT INTO seaql_migrations (version, applied_at) VALUES ('m20990101_000001_new_world', 0)")
        .await
        .expect("a step of a later program");
    db.close().await.expect("closed");
    let before = std::fs::read(&file).expect("there");
    for command in [&["migrate"][..], &["serve", "--listen", "127.0.0.1:0"], &["due"], &["tick"]] {
        place.run(command).is(2).complains("newer version").complains("m20990101_000001_new_world");
    }
    assert_eq!(std::fs::read(&file).expect("there"), before, "nothing was changed");
}

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

const DEFAULT_PROTOCOL: &str = include_str!("../src/files/default_protocol.toml");

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
    place.run(&["due", "--as-of", "yesterday"]).is(2).complains("yesterday");
    place.run(&["export", "2026-13", "--into", "x"]).is(2).complains("write it like 2026-10");
}
