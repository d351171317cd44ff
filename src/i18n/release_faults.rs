//! What is wrong with figures, in words: table, row as a spreadsheet numbers it, columns.

use domain::report::checks::Fault;

use crate::args;
use crate::i18n::Words;

/// The row of a file in which a table's row stands: the header is row 1.
fn row_number(row: usize) -> String {
    (row + 2).to_string()
}

/// A fault as a sentence.
#[must_use]
pub fn fault(w: &Words, fault: &Fault) -> String {
    match fault {
        Fault::PartExceedsWhole { table, row, part, whole } => {
            w.say_with("release-fault-part", args!["table" => *table, "row" => row_number(*row), "part" => *part, "whole" => *whole])
        }
        Fault::DoesNotAddUp { table, row, split, column } => {
            w.say_with("release-fault-sum", args!["table" => *table, "row" => row_number(*row), "split" => *split, "column" => *column])
        }
        Fault::RowDoesNotAddUp { table, row } => w.say_with("release-fault-row", args!["table" => *table, "row" => row_number(*row)]),
        Fault::SmallShown { table, row, column } => {
            w.say_with("release-fault-small", args!["table" => *table, "row" => row_number(*row), "column" => *column])
        }
        Fault::MixedRelease { table, column } => w.say_with("release-fault-mixed", args!["table" => *table, "column" => *column]),
        Fault::TextLikeAName { table, row, column } => {
            w.say_with("release-fault-name", args!["table" => *table, "row" => row_number(*row), "column" => *column])
        }
        Fault::MadExceeds { row } => w.say_with("release-fault-mad", args!["row" => row_number(*row)]),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::i18n::Lang;
    use crate::i18n::words;

    #[test]
    fn the_row_is_that_of_the_file() {
        let small = Fault::SmallShown { table: "growth", row: 0, column: "muac_n" };
        assert_eq!(fault(words(Lang::En), &small), "growth, row 2: muac_n is a small count that must be private");
    }

    #[test]
    fn every_fault_has_words() {
        for lang in Lang::OFFERED {
            for wrong in [
                Fault::PartExceedsWhole { table: "growth", row: 1, part: "waz_lt_m2", whole: "waz_n" },
                Fault::DoesNotAddUp { table: "growth", row: 1, split: "sex", column: "waz_n" },
                Fault::RowDoesNotAddUp { table: "visits", row: 1 },
                Fault::SmallShown { table: "growth", row: 1, column: "waz_n" },
                Fault::MixedRelease { table: "growth", column: "period" },
                Fault::TextLikeAName { table: "growth", row: 1, column: "area" },
                Fault::MadExceeds { row: 1 },
            ] {
                let text = fault(words(*lang), &wrong);
                assert!(!text.contains(['{', '$']), "{text}");
            }
        }
    }
}
