//! Each start of the demo prints new passwords; those of the start before open nothing any more, nor does what they had opened.

use std::collections::BTreeMap;
use std::path::Path;
use std::process::Command;

use chrono::DateTime;
use chrono::Utc;
use spoonround::service::sign_in;
use spoonround::service::sign_in::Entered;
use spoonround::store::Db;

const TODAY: &str = "2026-11-25";

fn now() -> DateTime<Utc> {
    format!("{TODAY}T12:00:00Z").parse().expect("an instant")
}

/// Starts the demo as from a shell; the passwords on the screen by name, and the whole of it.
fn start(file: &Path) -> (BTreeMap<String, String>, String) {
    let mut command = Command::new(env!("CARGO_BIN_EXE_seed-demo"));
    let ran = command.args(["--no-serve", "--as-of", TODAY, "--database"]).arg(file).output().expect("the demo starts");
    let screen = String::from_utf8(ran.stdout).expect("text");
    assert!(ran.status.success(), "{screen}{}", String::from_utf8_lossy(&ran.stderr));
    let table = screen.lines().skip_while(|line| !line.trim_start().starts_with("Role ")).skip(1).take_while(|line| !line.is_empty());
    let columns = table.map(|line| line.split_whitespace().map(str::to_owned).collect::<Vec<_>>());
    (columns.map(|column| (column[1].clone(), column[2].clone())).collect(), screen)
}

async fn enters(db: &Db, name: &str, password: &str) -> Option<String> {
    match sign_in::enter(db, now(), None, name, password.to_owned()).await.expect("tried") {
        Entered::In { key, .. } => Some(key),
        Entered::Wrong => None,
        Entered::Wait { seconds } => panic!("{name} has to wait {seconds} seconds"),
    }
}

#[tokio::test]
async fn the_passwords_of_an_earlier_start_open_nothing() {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("demo.db");
    let place = file.display().to_string();

    let (first, screen) = start(&file);
    assert!(screen.contains("Made 240 children"), "{screen}");
    assert_eq!(first.len(), 4, "somebody of each role: {screen}");
    let db = Db::open(&place).await.expect("a demo");
    let mut sessions = Vec::new();
    for (name, password) in &first {
        sessions.push(enters(&db, name, password).await.unwrap_or_else(|| panic!("{name} comes in with what was printed: {screen}")));
    }
    db.close().await.expect("closed");

    let (second, screen) = start(&file);
    assert!(screen.contains("Using the demo in") && screen.contains("These passwords are new"), "{screen}");
    assert_eq!(first.keys().collect::<Vec<_>>(), second.keys().collect::<Vec<_>>(), "the same people");
    let db = Db::open(&place).await.expect("a demo");
    for session in &sessions {
        assert!(sign_in::recall(&db, session, now()).await.expect("readable").is_none(), "a session of before is still open");
    }
    for (name, new) in &second {
        assert_eq!(enters(&db, name, &first[name]).await, None, "{name} comes in with the password of before");
        assert!(enters(&db, name, new).await.is_some(), "{name} comes in with the new one: {screen}");
    }
}
