//! The `hopwright` program; everything is in the library.

use std::process::ExitCode;

/// A network is hundreds of thousands of small values; the allocator of the system is slow at them.
#[global_allocator]
static ALLOCATOR: mimalloc::MiMalloc = mimalloc::MiMalloc;

fn main() -> ExitCode {
    hopwright::cli::run().into()
}
