//! Whether a visit fits another child, and whether two records fit one child. It judges no growth and no feeding, and knows no
//! storage: who may correct, and how it is written, is decided elsewhere.

mod merging;
mod moving;

pub use merging::{Answers, Contradiction, Half, Merged, Question, Side, merged, questions, same_days};
pub use moving::{Doubt, Obstacle, against_moving};
