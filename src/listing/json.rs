//! A sheet for machines: a line of text for each line of the sheet, so that a difference shows what changed.

use std::collections::HashMap;

use serde::Serialize;

use super::{HopListing, Places, ServiceListing};
use crate::network::Inherited;
use crate::sheet::{self, Listed, Row, Section};

/// What stands before the first hop; it says the version of the form.
pub const BEFORE: &str = "{\"format_version\":2,\"hops\":[\n";
/// What stands between two hops.
pub const BETWEEN: &str = ",\n";
/// What stands between the last hop and the first service.
pub const SERVICES: &str = "\n],\"services\":[\n";
/// What stands behind the last.
pub const AFTER: &str = "\n]}\n";

/// Bytes that the lines of a hop usually take.
const USUAL: usize = 40_000;

/// A line. What there is nothing of is left out.
#[derive(Serialize)]
struct Line<'a> {
    key: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    words: Option<&'a str>,
    #[serde(skip_serializing_if = "str::is_empty")]
    symbol: &'a str,
    #[serde(skip_serializing_if = "Option::is_none")]
    text: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    value: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    unit: Option<&'a str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    missing: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    method: Option<usize>,
    #[serde(skip_serializing_if = "Option::is_none")]
    from: Option<Vec<usize>>,
}

/// A value that the hop does not write itself.
#[derive(Serialize)]
struct Taken<'a> {
    field: &'a str,
    from: String,
    route: &'a str,
}

impl<'a> Taken<'a> {
    fn of(one: &'a Inherited) -> Self {
        Self { field: &one.at, from: one.giver(), route: &one.route }
    }
}

/// One hop as a JSON object, version 2. `value` is in `unit`, unrounded; `text` is what every page prints, `missing` why
/// there is nothing. `taken` are the values that stand in a template or in defaults, if there are any.
///
/// With `places`, the hop lists its methods and the places of its inputs, each once. A line then has their numbers, from 0,
/// and says in words and by its symbol what it is.
#[must_use]
pub fn json_of_hop(hop: &HopListing, places: Option<&Places<'_>>) -> String {
    let named = [("network", &hop.network), ("hop", &hop.hop), ("title", &hop.title)];
    object(named, Some(hop), &hop.sections, places)
}

/// One service as a JSON object, in the same form.
#[must_use]
pub fn json_of_service(service: &ServiceListing, places: Option<&Places<'_>>) -> String {
    let named = [("network", &service.network), ("service", &service.service), ("title", &service.title)];
    object(named, None, &service.sections, places)
}

fn object(
    named: [(&str, &String); 3],
    hop: Option<&HopListing>,
    sections: &[Section],
    places: Option<&Places<'_>>,
) -> String {
    let mut sources = places.map(Sources::of);
    let mut lines = List::of("lines", USUAL);
    sections.iter().flat_map(|section| &section.rows).for_each(|row| lines.add(&line(row, sources.as_mut())));
    let mut out = String::with_capacity(lines.text.len() + USUAL);
    out.push('{');
    for (key, value) in named {
        out.extend(["\"", key, "\":", &spelled(value), ","]);
    }
    if let Some(hop) = hop {
        out.extend([&List::whole("assumptions", &hop.assumptions), ","]);
        let taken: Vec<Taken<'_>> = hop.taken.iter().map(Taken::of).collect();
        if !taken.is_empty() {
            out.extend([&List::whole("taken", &taken), ","]);
        }
    }
    if let Some(sources) = &sources {
        out.extend([&List::whole("methods", &sources.methods.named), ","]);
        out.extend([&List::whole("places", &sources.written.named), ","]);
    }
    out.extend([&lines.ended(), "}"]);
    out
}

/// Hops as one JSON document.
#[must_use]
pub fn json(hops: &[&HopListing], places: Option<&Places<'_>>) -> String {
    let hops: Vec<String> = hops.iter().map(|hop| json_of_hop(hop, places)).collect();
    [BEFORE, &hops.join(BETWEEN), AFTER].concat()
}

fn line<'a>(row: &'a Row, mut sources: Option<&mut Sources<'_>>) -> Line<'a> {
    let (value, unit) = row.number.unzip();
    Line {
        key: row.key.to_string(),
        words: sources.is_some().then_some(row.words),
        symbol: if sources.is_some() { row.symbol } else { "" },
        text: row.text.as_ref().ok().map(ToString::to_string),
        value: value.filter(|value| value.is_finite()),
        unit,
        missing: row.text.as_ref().err().map(|missing| missing.reason.to_string()),
        method: sources.as_mut().map(|sources| sources.methods.number(row.method.words().to_owned())),
        from: sources.map(|sources| sources.numbers(&row.from)),
    }
}

/// What lines come from, each once, while they are listed.
struct Sources<'p> {
    places: &'p Places<'p>,
    methods: Numbered,
    listed: Listed,
    written: Numbered,
    /// The number under which each listed place is written: two may be written alike.
    numbers: Vec<usize>,
}

/// Texts in the order in which they came.
#[derive(Default)]
struct Numbered {
    named: Vec<String>,
    numbers: HashMap<String, usize>,
}

impl<'p> Sources<'p> {
    fn of(places: &'p Places<'p>) -> Self {
        let (methods, listed, written) = <(Numbered, Listed, Numbered)>::default();
        Self { places, methods, listed, written, numbers: Vec::new() }
    }

    /// The numbers of the places a line comes from, each once.
    fn numbers(&mut self, from: &sheet::Sources) -> Vec<usize> {
        let listed = self.listed.numbers(from);
        for place in &self.listed.places()[self.numbers.len()..] {
            self.numbers.push(self.written.number(self.places.written(place)));
        }
        let mut numbers = Vec::with_capacity(listed.len());
        for number in listed.into_iter().map(|number| self.numbers[number]) {
            if !numbers.contains(&number) {
                numbers.push(number);
            }
        }
        numbers
    }
}

impl Numbered {
    fn number(&mut self, text: String) -> usize {
        let named = &mut self.named;
        *self.numbers.entry(text).or_insert_with_key(|text| {
            named.push(text.clone());
            named.len() - 1
        })
    }
}

/// A list under its key, each item on a line of its own.
struct List {
    text: String,
    empty: bool,
}

impl List {
    fn of(key: &str, room: usize) -> Self {
        let mut text = String::with_capacity(room);
        text.extend(["\"", key, "\":["]);
        Self { text, empty: true }
    }

    fn add(&mut self, item: &impl Serialize) {
        self.text.push_str(if self.empty { "\n" } else { ",\n" });
        self.text.push_str(&spelled(item));
        self.empty = false;
    }

    fn ended(mut self) -> String {
        self.text.push_str(if self.empty { "]" } else { "\n]" });
        self.text
    }

    fn whole(key: &str, items: &[impl Serialize]) -> String {
        let mut list = Self::of(key, 0);
        for item in items {
            list.add(item);
        }
        list.ended()
    }
}

fn spelled(value: &(impl Serialize + ?Sized)) -> String {
    serde_json::to_string(value).expect("strings and finite numbers always serialise")
}
