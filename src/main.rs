//! The `hopwright` program; everything is in the library.

use std::process::ExitCode;

fn main() -> ExitCode {
    hopwright::cli::run().into()
}
