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
