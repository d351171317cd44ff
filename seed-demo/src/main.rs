//! Builds the demo if it is not there, prints the sign-ins, and serves.

use std::process::ExitCode;

use clap::Parser;
use seed_demo::options::Options;
use seed_demo::run;

fn main() -> ExitCode {
    let options = Options::parse();
    match spoonround::web::server::block_on(run::run(&options)) {
        Ok(()) => ExitCode::SUCCESS,
        Err(text) => {
            eprintln!("seed-demo: {text}");
            ExitCode::from(2)
        }
    }
}
