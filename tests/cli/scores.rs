//! Z-scores of measurements read as CSV.

use crate::place::Place;

/// 400 measurements with z-scores, made outside this project from the WHO Child Growth Standards 2006 and 2007.
const CHECK_VALUES: &str = include_str!("../data/growth/golden_public.csv");

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
