//! What codes and the licence allow, for the design pack, and what a crew must not pass.

use super::phrases::label;
use super::words::Table;
use crate::sheet::{Cause, CodeSheet, HopSheet, Licence, Row};
use crate::spec::{Both, EndName};
use crate::voice::{Voice, shown};

/// Codes and licence of both directions, then each code with its limits.
pub(super) fn table(sheet: &HopSheet<'_>, voice: Voice) -> Table {
    let mut table = Table::new(voice, ["item", "a-to-b", "b-to-a"]);
    let rows = |licence: &Licence| {
        let mut rows = Vec::new();
        licence.lines.rows("", &mut rows);
        Some(rows)
    };
    add(&mut table, &sheet.licence.each_ref().map(rows), voice);
    let mut names: Vec<&str> = Vec::new();
    for code in sheet.licence.iter().flat_map(|licence| &licence.codes) {
        if !names.contains(&code.name) {
            names.push(code.name);
        }
    }
    if names.is_empty() {
        table.row([voice.say("code-of-practice"), voice.say("none-stated"), voice.say("none-stated")]);
    }
    for name in names {
        let of = |licence: &Licence| {
            let code: &CodeSheet = licence.codes.iter().find(|code| code.name == name)?;
            let mut rows = Vec::new();
            code.lines.rows("", &mut rows);
            Some(rows)
        };
        add(&mut table, &sheet.licence.each_ref().map(of), voice);
    }
    table
}

/// The rows of both directions side by side; those that nobody asked about are left out.
fn add(table: &mut Table, rows: &Both<Option<Vec<Row>>>, voice: Voice) {
    let count = rows.iter().flatten().next().map_or(0, Vec::len);
    for i in 0..count {
        let cells = rows.each_ref().map(|rows| rows.as_ref().map(|rows| &rows[i]));
        let asked = |row: &&Row| row.text.as_ref().err().is_none_or(|missing| missing.cause != Cause::Judged);
        let Some(first) = cells.iter().flatten().copied().find(|row| asked(row)) else { continue };
        let cell = |row: Option<&Row>| row.map_or_else(|| voice.say("nothing"), |row| voice.row(row));
        table.row([label(first, voice), cell(cells.a), cell(cells.b)]);
    }
}

/// The power a crew must not pass at the end that sends, and the number it sends under.
pub(super) fn ceiling(licence: &Licence, voice: Voice) -> Option<String> {
    let lines = &licence.lines;
    let most = voice.number(lines.highest_power.get()?);
    Some(match &lines.number.value {
        Ok(number) => voice.with("step-ceiling-licence", &[("most", &most), ("number", number)]),
        Err(_) => voice.with("step-ceiling", &[("most", &most)]),
    })
}

/// The number a hop sends under, for the record.
pub(super) fn number(sheet: &HopSheet<'_>, voice: Voice) -> String {
    let lines = &sheet.licence[EndName::A].lines;
    lines.number.value.as_ref().map_or_else(|_| voice.say("not-stated"), |number| shown(&number.to_string()))
}
