//! What codes and the licence allow, for the design pack, and what a crew must not pass.

use super::phrases::label;
use super::words::Table;
use crate::sheet::{Cause, HopSheet, Licence, PeopleLines, Row, SectionKey};
use crate::spec::{Both, EndName, Way};
use crate::voice::{Voice, shown};

/// Codes and licence of both directions, then each code with its limits.
pub(super) fn table(sheet: &HopSheet<'_>, voice: Voice) -> Table {
    let mut table = Table::new(voice, ["item", "a-to-b", "b-to-a"]);
    let of_licence = |way: Way| Some(sheet.licence[way].lines.rows(&SectionKey::Licence(way)));
    add(&mut table, &Both::ways(of_licence), voice);
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
        let of_code = |way: Way| {
            let codes = &sheet.licence[way].codes;
            let number = codes.iter().position(|code| code.name == name)?;
            Some(codes[number].lines.rows(&SectionKey::Code(way, number)))
        };
        add(&mut table, &Both::ways(of_code), voice);
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
///
/// It is the least of what codes and licence allow, of what the radio can, and of what the keep-clear distance is for.
pub(super) fn ceiling(licence: &Licence, people: &PeopleLines, voice: Voice) -> Option<String> {
    let lines = &licence.lines;
    let ceilings = [lines.highest_power.get(), people.set_power.get()];
    let most = ceilings.into_iter().flatten().reduce(|one, other| if other < one { other } else { one })?;
    let most = voice.number(most);
    Some(match lines.number.value() {
        Ok(number) => voice.with("step-ceiling-licence", &[("most", &most), ("number", number)]),
        Err(_) => voice.with("step-ceiling", &[("most", &most)]),
    })
}

/// The number a hop sends under, for the record.
pub(super) fn number(sheet: &HopSheet<'_>, voice: Voice) -> String {
    let lines = &sheet.licence[EndName::A].lines;
    lines.number.value().map_or_else(|_| voice.say("not-stated"), |number| shown(&number.to_string()))
}
