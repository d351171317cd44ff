//! Reads the command line and runs one command. It knows no more than which file holds which command.

use std::process::ExitCode;

use clap::Parser;
use spoonround::cli::args::Cli;

fn main() -> ExitCode {
    let _ = Cli::parse();
    ExitCode::SUCCESS
}
