//! Growth: z-scores by the WHO standards, ages corrected for early birth, least expected gain. It knows no follow-up and no text.
//!
//! Figures: WHO Child Growth Standards 2006 (weight, length, weight for length, body mass index), 2007 (arm and head
//! circumference) and 2009 (weight velocity). `tables/README.md` gives the publications and the rights on the figures.

mod age;
mod error;
mod gain;
mod lms;
mod measured;
mod reference;
mod score;
mod tables;

#[cfg(test)]
mod check_values;
#[cfg(test)]
mod properties;

pub use age::{AgesOn, GrowthAge, TERM_DAYS, ages_on, corrected_birth_date, correction_days, growth_age, stage_months};
pub use error::weight_error_z;
pub use gain::{FLOOR_SOURCE, IncrementMark, WeightIncrement, least_expected_gain_grams, weight_increment_z, weight_increments};
pub use measured::{
    AdjustedLength, Figures, Measured, STANDING_FROM_DAY, Scores, VisitScores, WeighedAndMeasured, adjusted_length, scores, scores_of,
    three_indices,
};
pub use reference::{ReferenceTable, reference_range, reference_value, table_value};
pub use score::{Indicator, NotComputable, Score, Z, ZHundredths, outside_limits};
