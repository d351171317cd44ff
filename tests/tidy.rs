//! Keeps the rooms apart and the files in order. Reads source text only; a scan can be fooled on purpose, and that is fine.

use std::fs;
use std::path::Path;
use std::path::PathBuf;

/// What a room under `src/` must never name.
const ROOMS: &[(&str, &[&str])] = &[
    (
        "src/domain/",
        &[
            "sea_orm",
            "actix",
            "maud",
            "tokio",
            "serde",
            "csv::",
            "argon2",
            "std::fs",
            "std::env",
            "std::net",
            "::now(",
            "async fn",
            "std::time",
            "use rand",
            "getrandom",
        ],
    ),
    ("src/store/", &["actix", "maud", "crate::service", "crate::view", "crate::web", "crate::i18n", "::now()"]),
    ("src/service/", &["actix", "maud", "sea_orm", "store::entity", "crate::view", "crate::web", "::now()"]),
    ("src/i18n/", &["crate::store", "crate::service", "crate::web", "crate::view", "sea_orm", "actix"]),
    ("src/view/", &["crate::store", "crate::service", "crate::web", "sea_orm", "actix", ".await"]),
    ("src/web/", &["sea_orm", "PreEscaped", "web::Form<"]),
    ("src/files/", &["sea_orm", "actix", "maud", "crate::store", "crate::service", "crate::view", "crate::web", "::now()"]),
];

/// Files that may do what their room may not, each for a stated reason.
const EXCEPT: &[(&str, &str)] = &[
    // The one place a body is read; it hands on text only.
    ("src/web/form.rs", "web::Form<"),
    // Keys made by the server are named by the time they were made (UUIDv7).
    ("src/web/extract.rs", "::now()"),
];

/// Longest file: past this a reader loses the thread.
const MOST_LINES: usize = 400;
/// Tests are read a case at a time, so a file of them may be longer.
const MOST_TEST_LINES: usize = 500;

fn files(folder: &Path, found: &mut Vec<PathBuf>) {
    let mut entries: Vec<_> = fs::read_dir(folder).expect("a folder").map(|e| e.expect("an entry").path()).collect();
    entries.sort();
    for path in entries {
        if path.is_dir() {
            if !path.ends_with("target") {
                files(&path, found);
            }
        } else if path.extension().is_some_and(|e| e == "rs") {
            found.push(path);
        }
    }
}

/// The code of a line, without what follows `//`. Good enough for source that keeps `//` out of strings but for addresses.
fn code(line: &str) -> &str {
    match line.find("//") {
        Some(at) if !line[..at].ends_with(':') => &line[..at],
        _ => line,
    }
}

fn faults(path: &str, text: &str) -> Vec<String> {
    let mut faults = Vec::new();
    let mut fault = |line: usize, what: String| faults.push(format!("{path}:{}: {what}", line + 1));
    if !text.starts_with("//!") {
        fault(0, "begins without a `//!` line that says what the file is for".to_owned());
    }
    let long = text.lines().count();
    let most = if path.ends_with("tests.rs") { MOST_TEST_LINES } else { MOST_LINES };
    if long > most {
        fault(long, format!("has {long} lines; split it (at most {most})"));
    }
    for (at, line) in text.lines().enumerate() {
        let code = code(line);
        for (room, banned) in ROOMS.iter().filter(|(room, _)| path.starts_with(room)) {
            for word in banned.iter().filter(|word| code.contains(*word)) {
                if !EXCEPT.iter().any(|(file, allowed)| *file == path && allowed == word) {
                    fault(at, format!("{room} must not name `{word}`"));
                }
            }
        }
        if code.contains("use crate::{") {
            fault(at, "a group would hide a room's name on the next line; write one path a line".to_owned());
        }
        if code.contains("PreEscaped(") && !matches!(path, "src/view/parts.rs" | "src/view/icons.rs") {
            fault(at, "unescaped text is made in src/view/parts.rs and src/view/icons.rs only".to_owned());
        }
        if code.contains(".begin()") && path != "src/store/db.rs" {
            fault(at, "transactions begin in src/store/db.rs, where they are immediate".to_owned());
        }
        for word in ["todo!(", "dbg!(", "unimplemented!("] {
            if code.contains(word) {
                fault(at, format!("`{word}…)` is left over"));
            }
        }
    }
    if path.starts_with("migrations/src/m2") && !text.contains("Some(true)") {
        fault(0, "a migration runs in a transaction: `use_transaction` must be `Some(true)`".to_owned());
    }
    faults
}

#[test]
fn the_rooms_keep_apart() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut found = Vec::new();
    for folder in ["src", "migrations", "seed-demo"] {
        files(&root.join(folder), &mut found);
    }
    assert!(found.len() > 30, "only {} files were read", found.len());
    let all: Vec<String> = found
        .iter()
        .flat_map(|path| {
            let short = path.strip_prefix(root).expect("inside").to_string_lossy().into_owned();
            faults(&short, &fs::read_to_string(path).expect("readable"))
        })
        .collect();
    assert!(all.is_empty(), "\n{}", all.join("\n"));
}

#[test]
fn a_planted_fault_of_each_kind_is_found() {
    for (path, text, what) in [
        ("src/domain/x.rs", "//! X.\nuse sea_orm::Entity;\n", "must not name `sea_orm`"),
        ("src/domain/x.rs", "//! X.\nlet t = chrono::Utc::now();\n", "must not name `::now(`"),
        ("src/view/x.rs", "//! X.\nuse crate::store::Db;\n", "must not name `crate::store`"),
        ("src/service/x.rs", "//! X.\nuse actix_web::web;\n", "must not name `actix`"),
        ("src/web/x.rs", "//! X.\nuse crate::{store, view};\n", "one path a line"),
        ("src/view/x.rs", "//! X.\nlet m = PreEscaped(text);\n", "unescaped text"),
        ("src/service/x.rs", "//! X.\nlet tx = db.begin().await?;\n", "immediate"),
        ("src/cli/x.rs", "use std::fs;\n", "`//!` line"),
        ("src/cli/x.rs", "//! X.\ntodo!(\"later\")\n", "left over"),
        ("migrations/src/m20260101_x.rs", "//! X.\n", "Some(true)"),
    ] {
        let faults = faults(path, text);
        assert!(faults.len() == 1 && faults[0].contains(what), "{path}: {faults:?}");
    }
    assert_eq!(faults("src/domain/x.rs", "//! X.\n// sea_orm is not known here\n"), Vec::<String>::new());
    let long = format!("//! X.\n{}", "fn f() {}\n".repeat(400));
    assert!(faults("src/cli/x.rs", &long)[0].contains("split it"));
}

/// A programme's clinician reads DEVELOPERS.md before touching a figure: each rule's line there names its keys, all and only them.
#[test]
fn the_guide_names_the_keys_of_every_rule() {
    use std::collections::BTreeSet;

    let guide = fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("DEVELOPERS.md")).expect("the guide");
    for rule in domain::rule::RuleId::ALL {
        let start = format!("- `{}`: ", rule.code());
        let line =
            guide.lines().find_map(|line| line.strip_prefix(start.as_str())).unwrap_or_else(|| panic!("no line for {}", rule.code()));
        let named: BTreeSet<&str> = line.split('`').skip(1).step_by(2).collect();
        let keys: BTreeSet<&str> = domain::protocol::Rules::keys(*rule).iter().copied().collect();
        assert_eq!(named, keys, "keys of {}", rule.code());
    }
}
