//! What codes and the licence allow, for the design pack, and what a crew must not pass.

use super::tables::{printed, sentence};
use super::words::{Table, say, shown};
use crate::sheet::{Cause, CodeSheet, Direction, HopSheet, Row};

/// Codes and licence of both directions, then each code with its limits.
pub(super) fn table(sheet: &HopSheet<'_>) -> Table {
    let mut table = Table::new(["Item", "a to b", "b to a"]);
    let directions = sheet.directions();
    let lines = directions.map(|direction| {
        let mut rows = Vec::new();
        sheet.licence(direction).lines.rows("", &mut rows);
        rows
    });
    add(&mut table, lines.map(Some));
    let mut names: Vec<&str> = Vec::new();
    for code in directions.iter().flat_map(|direction| &sheet.licence(direction).codes) {
        if !names.contains(&code.name) {
            names.push(code.name);
        }
    }
    if names.is_empty() {
        table.row(["Code of practice".into(), "none stated".into(), "none stated".into()]);
    }
    for name in names {
        let of = |direction: &Direction<'_>| {
            let code: &CodeSheet = sheet.licence(direction).codes.iter().find(|code| code.name == name)?;
            let mut rows = Vec::new();
            code.lines.rows("", &mut rows);
            Some(rows)
        };
        add(&mut table, directions.map(of));
    }
    table
}

/// The rows of both directions side by side; those that nobody asked about are left out.
fn add(table: &mut Table, [there, back]: [Option<Vec<Row>>; 2]) {
    let count = there.as_ref().or(back.as_ref()).map_or(0, Vec::len);
    for i in 0..count {
        let cells = [&there, &back].map(|rows| rows.as_ref().map(|rows| &rows[i]));
        let asked = |row: &&Row| row.text.as_ref().err().is_none_or(|missing| missing.cause != Cause::Judged);
        let Some(first) = cells.iter().flatten().copied().find(|row| asked(row)) else { continue };
        let cell = |row: Option<&Row>| row.map_or_else(|| "—".into(), printed);
        table.row([sentence(first.words), cell(cells[0]), cell(cells[1])]);
    }
}

/// The power a crew must not pass at the end that sends, and the number it sends under.
pub(super) fn ceiling(sheet: &HopSheet<'_>, direction: &Direction<'_>) -> Option<String> {
    let lines = &sheet.licence(direction).lines;
    let most = lines.highest_power.get()?;
    let number = lines.number.value.as_ref().map(|number| format!(" (licence {})", number.0)).unwrap_or_default();
    Some(shown(&format!("Never raise the transmit power above {most} here{number}: more is not allowed.")))
}

/// The number a hop sends under, for the record.
pub(super) fn number(sheet: &HopSheet<'_>) -> String {
    let lines = &sheet.licence[0].lines;
    if lines.number.value.is_ok() { say(&lines.number) } else { "not stated".into() }
}
