//! The numbers of a child's page beside how far they could be off.

use super::*;

#[test]
fn every_measurement_stands_beside_how_far_another_could_have_lain() {
    let page = shown(|_| {});
    let rows = texts(&page, "table tbody tr");
    let row = |start: &str| rows.iter().find(|row| row.starts_with(start)).unwrap_or_else(|| panic!("{start}: {rows:?}"));
    // 100 g, 0.7 cm and 5 mm: WHO growth study, de Onis 2004 (from memory).
    for said in ["7.40 ± 0.10", "71.1 ± 0.7", "113 ± 5", "−100 g, may be the scale"] {
        assert!(row("20 Nov").contains(said), "{said}: {}", row("20 Nov"));
    }
    assert!(row("15 Oct").contains("1.30 kg") && !row("15 Oct").contains("may be"), "a suspect weight is not compared with");
    let paragraphs = texts(&page, "p, figcaption").join(" ");
    assert!(
        paragraphs.contains("up to 100 g apart") && paragraphs.contains("may be no more than that: weigh a second time"),
        "{paragraphs}"
    );
    assert!(paragraphs.contains("The bars at the points"), "{paragraphs}");
    let finer = MeasuringError { weight_g: 50, length_mm: 7, arm_mm: 5 };
    let page = shown(|page| page.measured.iter_mut().for_each(|m| m.error = finer));
    assert!(
        texts(&page, "p, figcaption")
            .join(" ")
            .contains("up to 50 g apart by measuring error alone. The last change of weight is more than that.")
    );
}
