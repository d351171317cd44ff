//! The worked cases that the project ships, beside the rules themselves: a change of a rule shows here within seconds.

use super::*;
use crate::cases::{check, parse_cases};

const FILES: [(&str, &str); 2] = [
    ("worked.toml", include_str!("../../../../tests/cases/worked.toml")),
    ("generated.toml", include_str!("../../../../tests/cases/generated.toml")),
];

#[test]
fn every_shipped_case_agrees_with_the_shipped_protocol() {
    let mut checked = 0;
    for (name, text) in FILES {
        let file = parse_cases(text, name).expect("a file without faults");
        let mut protocol = default_protocol().clone();
        protocol.foods.add(file.foods);
        let protocols = Protocols::one(protocol);
        for case in &file.cases {
            let found = check(case, &protocols);
            assert!(found.is_empty(), "{name}: {}: {found:?}", case.id);
            checked += 1;
        }
    }
    assert_eq!(checked, 319);
}
