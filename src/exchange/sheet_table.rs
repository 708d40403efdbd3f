//! Sheets as one table: a row a hop, a column a line, its unit in the header.

use std::collections::HashMap;

use super::figures::{fixed, significant};
use crate::listing::HopListing;
use crate::sheet::Row;
use crate::text::csv::{Marks, Out, Writer};

/// The lines of one hop as cells.
#[derive(Debug)]
pub struct SheetRow {
    network: String,
    hop: String,
    title: String,
    /// Header and cell of each line that has a value.
    cells: Vec<(String, Out)>,
}

impl SheetRow {
    /// Takes the cells out of a listing.
    #[must_use]
    pub fn of(listing: &HopListing) -> Self {
        let rows = listing.sections.iter().flat_map(|section| &section.rows);
        Self {
            network: listing.network.clone(),
            hop: listing.hop.clone(),
            title: listing.title.clone(),
            cells: rows.filter_map(cell).collect(),
        }
    }
}

fn cell(row: &Row) -> Option<(String, Out)> {
    let told = row.text.as_ref().ok()?;
    Some(match row.number {
        Some((value, unit)) => {
            let number = match unit {
                "m" => fixed(value, 2),
                "°" => fixed(value, 7),
                _ => significant(value),
            };
            let unit = if unit == "°" { "deg" } else { unit };
            (format!("{} [{unit}]", row.key), Out::Number(number))
        }
        None => (row.key.to_string(), Out::Text(told.to_string())),
    })
}

/// All of them as a table. The columns are those that any hop has, in the order of the first that has them.
#[must_use]
pub fn sheet_table(rows: &[SheetRow], marks: Marks) -> String {
    let mut places: HashMap<&str, usize> = HashMap::new();
    let mut headers: Vec<&str> = Vec::new();
    for (header, _) in rows.iter().flat_map(|row| &row.cells) {
        places.entry(header).or_insert_with(|| {
            headers.push(header);
            headers.len() - 1
        });
    }
    let mut out = Writer::new(marks);
    let named = ["network", "hop", "title"].into_iter().chain(headers.iter().copied());
    out.row(named.map(|header| Out::Text(header.to_owned())));
    for row in rows {
        let mut cells = vec![Out::Empty; headers.len()];
        for (header, cell) in &row.cells {
            cells[places[header.as_str()]] = cell.clone();
        }
        let named = [&row.network, &row.hop, &row.title].map(|text| Out::Text(text.clone()));
        out.row(named.into_iter().chain(cells));
    }
    out.text().to_owned()
}
