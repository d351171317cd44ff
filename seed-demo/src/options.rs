//! What the demo is told on the command line.

use std::net::SocketAddr;
use std::path::PathBuf;

use chrono::NaiveDate;
use clap::Parser;

/// Makes a demo database of invented families, prints a sign-in for each role, and serves it.
#[derive(Debug, Clone, Parser)]
#[command(name = "seed-demo", version, about, after_help = "Example:\n  cargo run --release -p seed-demo -- --children 1000 --fresh")]
pub struct Options {
    /// Makes so many children; fewer than 240 would not show every kind of follow-up.
    #[arg(long, value_name = "N", default_value_t = 240, value_parser = clap::value_parser!(u32).range(240..=200_000))]
    pub children: u32,
    /// Builds the demo anew, even if there is one; only a database marked as a demo is ever replaced.
    #[arg(long)]
    pub fresh: bool,
    /// Keeps the demo in this file.
    #[arg(long, value_name = "FILE", default_value = "data/demo.db")]
    pub database: PathBuf,
    /// Serves on this address and port.
    #[arg(long, value_name = "ADDRESS:PORT", default_value = "127.0.0.1:8080")]
    pub listen: SocketAddr,
    /// Builds the demo and prints the sign-ins, but does not serve.
    #[arg(long)]
    pub no_serve: bool,
    /// Takes this day for today, for tests and pictures.
    #[arg(long, value_name = "YYYY-MM-DD", hide = true)]
    pub as_of: Option<NaiveDate>,
}

#[cfg(test)]
mod tests {
    use clap::CommandFactory;

    use super::*;

    #[test]
    fn the_usual_size_shows_every_plot() {
        Options::command().debug_assert();
        let usual = Options::parse_from(["seed-demo"]);
        assert!(usual.children >= crate::story::plots::children_for_all());
        assert!(Options::try_parse_from(["seed-demo", "--children", "12"]).is_err());
    }
}
