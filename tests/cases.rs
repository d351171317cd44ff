//! The worked cases that the project ships, through the same command that a programme runs.

use std::path::Path;
use std::path::PathBuf;

use spoonround::cli::protocol_check;

fn case_files() -> Vec<PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/cases");
    ["worked.toml", "generated.toml"].map(|name| folder.join(name)).to_vec()
}

#[test]
fn every_shipped_case_agrees_with_the_default_protocol() {
    let mut out = Vec::new();
    let summary = protocol_check::run(protocol_check::DEFAULT, &case_files(), &mut out).expect("files without faults");
    let said = String::from_utf8(out).expect("text");
    assert!(summary.all_passed(), "{said}");
    assert_eq!((summary.passed, said.trim_end()), (319, "319 passed, 0 failed"));
}

/// Writes text to a file of its own and checks it against the default protocol.
fn check(protocol: &str, text: &str) -> (Result<protocol_check::CheckSummary, protocol_check::CheckError>, String) {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("mine.toml");
    std::fs::write(&path, text).expect("written");
    let mut out = Vec::new();
    let summary = protocol_check::run(protocol, &[path], &mut out);
    (summary, String::from_utf8(out).expect("text"))
}

const CASES: &str = r#"
[[case]]
id = "thin-arm"
[case.infant]
sex = "F"
birth_date = 2025-01-18
[[case.visit]]
date = 2025-11-03
muac_mm = 114
[case.visit.expect]
fires = [["wasting.severe", "today"]]
[[case]]
id = "arm-on-the-limit"
[case.infant]
sex = "F"
birth_date = 2025-01-18
[[case.visit]]
date = 2025-11-03
muac_mm = 115
[case.visit.expect]
fires = [["wasting.severe", "today"]]
"#;

#[test]
fn a_line_for_each_disagreement_and_the_count_at_the_end() {
    let (summary, said) = check("default", CASES);
    let summary = summary.expect("checked");
    assert_eq!((summary.passed, summary.failed, summary.all_passed()), (1, 1, false));
    let lines: Vec<&str> = said.lines().collect();
    assert_eq!(lines.len(), 2, "{said}");
    assert!(
        lines[0].ends_with("arm-on-the-limit: visit 1 (2025-11-03), fires: expected wasting.severe today; got wasting.moderate week"),
        "{said}"
    );
    assert_eq!(lines[1], "1 passed, 1 failed");
}

#[test]
fn a_file_with_faults_is_not_judged_and_every_fault_is_named() {
    let (summary, said) = check("default", &CASES.replace("muac_mm", "muac_cm"));
    let faults = summary.expect_err("faults").to_string();
    assert_eq!((said.as_str(), faults.lines().count()), ("", 2), "{faults}");
    assert!(faults.contains("mine.toml:9: case thin-arm, visit 1.muac_cm: is not a known key"), "{faults}");
    let (summary, _) = check("nowhere.toml", CASES);
    assert!(summary.expect_err("no file").to_string().starts_with("nowhere.toml: cannot be read: "));
}

#[test]
fn a_programmes_own_protocol_is_checked_by_its_own_figures() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("own.toml");
    let own = spoonround::files::protocol_toml::DEFAULT_TEXT.replacen("muac_below_mm = 115\nclear", "muac_below_mm = 116\nclear", 1);
    std::fs::write(&path, own).expect("written");
    let (summary, said) = check(path.to_str().expect("a path"), CASES);
    assert!(summary.expect("checked").all_passed(), "{said}");
}
