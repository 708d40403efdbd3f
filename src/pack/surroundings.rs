//! What presses on an end and who stands before it, as tables of a design pack.

use super::phrases::label;
use super::tables::unasked;
use super::words::Table;
use crate::sheet::{EndSheet, HopSheet, Reason, Row, SectionKey};
use crate::voice::Voice;

/// Wind, and the people in front of the antenna.
pub(super) fn surroundings(sheet: &HopSheet<'_>, voice: Voice) -> Table {
    asked_for(sheet, voice, |end| {
        let mut rows = end.wind.rows(&SectionKey::Wind(end.name));
        rows.extend(end.people.rows(&SectionKey::People(end.name)));
        rows
    })
}

/// Ice, and what holds the support; empty where neither is stated.
pub(super) fn loads(sheet: &HopSheet<'_>, voice: Voice) -> Table {
    asked_for(sheet, voice, |end| {
        let mut rows = end.ice.rows(&SectionKey::Ice(end.name));
        rows.extend(end.fixings.rows(&SectionKey::Fixings(end.name)));
        rows
    })
}

/// Rows with a cell for each end. Those that nobody asked about are left out.
fn asked_for(sheet: &HopSheet<'_>, voice: Voice, rows: impl Fn(&EndSheet<'_>) -> Vec<Row>) -> Table {
    let mut table = Table::new(voice, ["item", "end-a", "end-b"]);
    for (a, b) in rows(&sheet.ends.a).into_iter().zip(rows(&sheet.ends.b)) {
        if !(unasked(&a) && unasked(&b)) {
            table.row([label(&a, voice), cell(&a, voice), cell(&b, voice)]);
        }
    }
    table
}

fn cell(row: &Row, voice: Voice) -> String {
    match row.text.as_ref().map_err(|missing| &missing.reason) {
        Err(Reason::StandsAlone) => voice.say("nothing"),
        Err(Reason::NoOrography | Reason::NoIce | Reason::NoFixings | Reason::NobodySays) => voice.say("not-stated"),
        Err(_) if unasked(row) => voice.say("not-assessed"),
        _ => voice.row(row),
    }
}
