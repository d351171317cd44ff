//! Fills a demo database with invented families and serves it.

fn main() {}
