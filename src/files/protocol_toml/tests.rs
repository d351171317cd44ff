//! The default protocol reads; what is broken in a copy of it is named.

use super::*;

#[test]
fn the_default_protocol_reads() {
    if let Err(faults) = parse_protocol(DEFAULT_TEXT, DEFAULT_NAME) {
        let all: Vec<String> = faults.iter().map(ToString::to_string).collect();
        panic!("{}", all.join("\n"));
    }
}
