//! Reads the command line and runs one command. It knows no more than which file holds which command.

use std::process::ExitCode;

use clap::Parser;
use spoonround::cli::args::Cli;
use spoonround::cli::run;

fn main() -> ExitCode {
    run::run(Cli::parse())
}
