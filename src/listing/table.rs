//! A sheet in columns, for people.

use std::collections::HashSet;
use std::fmt::Write as _;

use super::{HopListing, Places, ServiceListing};
use crate::network::Inherited;
use crate::sheet::{Cause, Row, Section};
use crate::text::plain::spelled;

/// The lines of a hop in columns. With `places`, the method and the inputs follow each line.
#[must_use]
pub fn table(hop: &HopListing, places: Option<&Places<'_>>) -> String {
    let mut out = String::new();
    let _ = writeln!(out, "{}/{}: {}", hop.network, hop.hop, spelled(&hop.title));
    rows(&hop.sections, places, &mut out);
    if places.is_some() {
        let _ = writeln!(out, "\n  Assumptions");
        for assumption in &hop.assumptions {
            let _ = writeln!(out, "    {}", spelled(assumption));
        }
    }
    taken(&hop.taken, &mut out);
    out
}

/// What the hop does not write itself, by what gives it.
fn taken(list: &[Inherited], out: &mut String) {
    let mut givers: Vec<(String, Vec<&str>)> = Vec::new();
    for one in list {
        let giver = one.giver();
        match givers.iter_mut().find(|(known, _)| *known == giver) {
            Some((_, fields)) => fields.push(&one.at),
            None => givers.push((giver, vec![&one.at])),
        }
    }
    if !givers.is_empty() {
        let _ = writeln!(out, "\n  Taken from templates and defaults");
    }
    for (giver, fields) in givers {
        let _ = writeln!(out, "    {}: {}", spelled(&giver), fields.join(", "));
    }
}

/// The same of a service.
#[must_use]
pub fn table_of_service(service: &ServiceListing, places: Option<&Places<'_>>) -> String {
    let mut out = String::new();
    let _ = writeln!(out, "{}, service {}: {}", service.network, service.service, spelled(&service.title));
    rows(&service.sections, places, &mut out);
    out
}

fn rows(sections: &[Section], places: Option<&Places<'_>>, out: &mut String) {
    for section in sections {
        let _ = writeln!(out, "\n  {}", section.title);
        for row in &section.rows {
            line(row, out);
            if let Some(places) = places.filter(|_| row.text.is_ok()) {
                sources(row, places, out);
            }
        }
    }
}

fn line(row: &Row, out: &mut String) {
    let (words, symbol) = (row.words, row.symbol);
    let said = match &row.text {
        Ok(text) => spelled(&text.to_string()),
        Err(missing) if missing.cause == Cause::Judged => return,
        Err(missing) => format!("— ({})", spelled(&missing.reason.to_string())),
    };
    let _ = writeln!(out, "    {words:<46} {symbol:>8}  {said}");
}

/// How the line was computed, and from what.
fn sources(row: &Row, places: &Places<'_>, out: &mut String) {
    let _ = writeln!(out, "        {}", row.method);
    let mut said = HashSet::new();
    for place in row.from.list() {
        let written = places.written(&place);
        if !said.contains(&written) {
            let _ = writeln!(out, "        from {}", spelled(&written));
            said.insert(written);
        }
    }
}
