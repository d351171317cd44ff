//! Reading and writing files of people: TOML and CSV become values of the domain here, with every fault named.

pub mod archive;
pub mod cases;
pub mod csv_text;
pub mod csvw;
mod faults;
pub mod folder;
pub mod late_csv;
pub mod pictures_csv;
pub mod protocol_toml;
pub mod quality_csv;
pub mod release_text;
pub mod report_csv;
mod saying;
pub mod score_csv;
mod toml_reader;

pub use faults::FileFault;
pub use saying::Gap;
pub use saying::Saying;
pub use saying::say;
