//! Reading and writing files of people: TOML and CSV become values of the domain here, with every fault named.

pub mod score_csv;
