//! The one place where the program speaks: all it prints and all text it writes for others goes out here, made inert for
//! whatever reads it.
//!
//! What is said beside the product may be lost: a stderr that is closed or full ends nothing.

use std::io::{self, IsTerminal as _, Write as _};
use std::path::Path;

use super::Stop;
use crate::door::write::write_whole;
use crate::text::plain::{Form, inert, spelled};

/// The product, for people.
pub(super) fn out(text: &str) -> Result<(), Stop> {
    out_as(text, Form::People)
}

/// The product, for whatever reads that form.
pub(super) fn out_as(text: &str, form: Form) -> Result<(), Stop> {
    out_ready(&ready(text, form))
}

/// Text that is inert already, made so where nobody waits for it.
pub(super) struct Ready(String);

/// Makes text ready for whatever reads that form.
pub(super) fn ready(text: &str, form: Form) -> Ready {
    Ready(inert(text, form))
}

/// The product, one piece of it.
pub(super) fn out_ready(text: &Ready) -> Result<(), Stop> {
    let mut out = io::stdout().lock();
    out.write_all(text.0.as_bytes()).and_then(|()| out.flush()).map_err(Stop::Output)
}

/// The path of a file that was written, on a line of its own.
pub(super) fn path(path: &Path) -> Result<(), Stop> {
    out(&format!("{}\n", shown(path)))
}

/// A path as words within a line.
pub(super) fn shown(path: &Path) -> String {
    spelled(&path.display().to_string())
}

/// A remark, on a line that says who speaks.
pub(super) fn aside(text: &str) {
    beside(&format!("hopwright: {text}\n"), Form::People);
}

/// What to do next, as it stands.
pub(super) fn hint(text: &str) {
    beside(text, Form::People);
}

/// Text beside the product as it stands.
pub(super) fn beside(text: &str, form: Form) {
    // A stderr that is closed or full ends nothing.
    let _ = io::stderr().lock().write_all(inert(text, form).as_bytes());
}

/// Clears the terminal. The words are our own.
pub(super) fn clear() -> Result<(), Stop> {
    let mut out = io::stdout().lock();
    out.write_all(b"\x1b[2J\x1b[H").and_then(|()| out.flush()).map_err(Stop::Output)
}

/// Draws over the current line of a terminal. The words are our own.
#[cfg(feature = "pages")]
pub(super) fn redraw(line: &str) {
    let _ = write!(io::stderr().lock(), "\r{}", inert(line, Form::People));
}

/// Wipes so many columns of the current line.
#[cfg(feature = "pages")]
pub(super) fn wipe(columns: usize) {
    let _ = write!(io::stderr().lock(), "\r{}\r", " ".repeat(columns));
}

/// A text in a file of its own.
pub(super) fn save(path: &Path, text: &str, form: Form) -> Result<(), Stop> {
    let failed = |error| Stop::Write { path: path.display().to_string(), error };
    write_whole(path, inert(text, form).as_bytes()).map_err(failed)
}

/// Whether somebody looks at the product.
pub(super) fn is_seen() -> bool {
    io::stdout().is_terminal()
}

/// Whether somebody looks at what is said beside it.
pub(super) fn is_heard() -> bool {
    io::stderr().is_terminal()
}
