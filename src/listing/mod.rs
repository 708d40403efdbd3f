//! A sheet as a list of lines, for people and for machines: what `sheet` prints and what a pack carries along.

use std::fmt::Write as _;

use serde::Serialize;

use crate::finding::Spot;
use crate::network::Files;
use crate::place::Place;
use crate::sheet::{Cause, HopSheet, Section};
use crate::text::plain::spelled;

/// The lines of one hop, free of the library they came from.
#[derive(Debug, Clone)]
pub struct HopListing {
    /// Network the hop belongs to.
    pub network: String,
    /// The hop's id.
    pub hop: String,
    /// The hop's title, or its id.
    pub title: String,
    /// All lines.
    pub sections: Vec<Section>,
    /// Defaults that stood in.
    pub assumptions: Vec<String>,
}

impl HopListing {
    /// Takes the lines out of a sheet.
    #[must_use]
    pub fn of(sheet: &HopSheet<'_>) -> Self {
        let hop = sheet.resolved.hop;
        Self {
            network: sheet.resolved.network.id.to_string(),
            hop: hop.id.to_string(),
            title: hop.title.as_ref().map_or_else(|| hop.id.to_string(), ToString::to_string),
            sections: sheet.sections(),
            assumptions: sheet.target.assumptions().iter().map(ToString::to_string).collect(),
        }
    }
}

impl HopListing {
    /// The same without the lines of records.
    #[must_use]
    pub fn of_design(&self) -> Self {
        let mut design = self.clone();
        design.sections.retain(|section| !section.key.is_of_a_record());
        design
    }
}

/// The lines in columns. With `sources`, the method and the inputs follow each line.
#[must_use]
pub fn table(hops: &[&HopListing], sources: bool, files: &Files) -> String {
    let places = Places::new(files);
    let mut out = String::new();
    for (number, hop) in hops.iter().enumerate() {
        let gap = if number == 0 { "" } else { "\n" };
        let _ = writeln!(out, "{gap}{}/{}: {}", hop.network, hop.hop, spelled(&hop.title));
        for section in &hop.sections {
            let _ = writeln!(out, "\n  {}", section.title);
            for row in &section.rows {
                match &row.text {
                    Ok(text) => {
                        let _ =
                            writeln!(out, "    {:<46} {:>8}  {}", row.words, row.symbol, spelled(&text.to_string()));
                    }
                    Err(missing) if missing.cause == Cause::Judged => {}
                    Err(missing) => {
                        let _ = writeln!(
                            out,
                            "    {:<46} {:>8}  — ({})",
                            row.words,
                            row.symbol,
                            spelled(&missing.reason.to_string())
                        );
                    }
                }
                if sources && row.text.is_ok() {
                    let written: Vec<String> = row.from.list().iter().map(|place| places.written(place)).collect();
                    let _ = writeln!(out, "        {}", row.method);
                    for place in unique(written) {
                        let _ = writeln!(out, "        from {}", spelled(&place));
                    }
                }
            }
        }
        if sources {
            let _ = writeln!(out, "\n  Assumptions");
            for assumption in &hop.assumptions {
                let _ = writeln!(out, "    {}", spelled(assumption));
            }
        }
    }
    out
}

#[derive(Serialize)]
struct Document<'a> {
    format_version: u32,
    hops: Vec<Entry<'a>>,
}

#[derive(Serialize)]
struct Entry<'a> {
    network: &'a str,
    hop: &'a str,
    title: &'a str,
    lines: Vec<Line<'a>>,
    assumptions: &'a [String],
}

#[derive(Serialize)]
struct Line<'a> {
    key: String,
    words: &'a str,
    symbol: &'a str,
    text: Option<String>,
    value: Option<f64>,
    unit: Option<&'a str>,
    missing: Option<String>,
    method: &'a str,
    from: Vec<String>,
}

/// The lines as one JSON object, version 1. `value` is in `unit`, unrounded; `text` is what every page prints.
#[must_use]
pub fn json(hops: &[&HopListing], files: &Files) -> String {
    let places = Places::new(files);
    let hops = hops.iter().map(|hop| Entry {
        network: &hop.network,
        hop: &hop.hop,
        title: &hop.title,
        lines: hop.sections.iter().flat_map(|section| &section.rows).map(|row| line(row, &places)).collect(),
        assumptions: &hop.assumptions,
    });
    let document = Document { format_version: 1, hops: hops.collect() };
    let mut text = serde_json::to_string_pretty(&document).expect("strings and finite numbers always serialise");
    text.push('\n');
    text
}

fn line<'a>(row: &'a crate::sheet::Row, places: &Places<'_>) -> Line<'a> {
    Line {
        key: row.key.to_string(),
        words: row.words,
        symbol: row.symbol,
        text: row.text.as_ref().ok().map(ToString::to_string),
        value: row.number.map(|(value, _)| value).filter(|value| value.is_finite()),
        unit: row.number.map(|(_, unit)| unit),
        missing: row.text.as_ref().err().map(|missing| missing.reason.to_string()),
        method: row.method.words(),
        from: unique(row.from.list().iter().map(|place| places.written(place)).collect()),
    }
}

/// Where things are written.
pub(crate) struct Places<'f> {
    files: &'f Files,
}

impl<'f> Places<'f> {
    pub(crate) fn new(files: &'f Files) -> Self {
        Self { files }
    }

    /// `hops/ridge.yaml:12 ends.a.height`.
    fn written(&self, place: &Place) -> String {
        match self.line(&Spot::Field(*place)) {
            Some((file, line)) => format!("{file}:{line} {}", place.route()),
            None => place.route(),
        }
    }

    /// The file and the line of a spot.
    pub(crate) fn line(&self, spot: &Spot) -> Option<(&'f str, usize)> {
        let found = self.files.locate(spot)?;
        let file = self.files.get(found.file)?;
        Some((&file.path, file.position(found.span.start).line))
    }
}

fn unique(mut places: Vec<String>) -> Vec<String> {
    let mut seen = std::collections::HashSet::new();
    places.retain(|place| seen.insert(place.clone()));
    places
}
