//! The audit: every number of the examples is changed by a little, one at a time. Every line of the sheet that moves must
//! name it among its sources, and `compare` must name it as the cause.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::ops::Range;
use std::path::{Path, PathBuf};

use crate::fixture::files_with;
use hopwright::compare::{HopSide, Noise, Side, Threshold, compare};
use hopwright::network::Scope;
use hopwright::place::Place;
use hopwright::place::route::{lies_in, spelled};
use hopwright::place::{DocumentId, Step};
use hopwright::sheet::Sources;
use hopwright::source::{Document, NodeId, parse};
use rayon::prelude::*;

/// A number as it stands in a file.
struct Number {
    file: PathBuf,
    document: u16,
    /// The ways to it: more than one where an alias repeats it.
    routes: Vec<String>,
    line: usize,
    span: Range<usize>,
    text: String,
}

/// Keys under which a number is a name or a word and no quantity.
const WORDS: [&str; 14] = [
    "id",
    "title",
    "notes",
    "description",
    "reference",
    "revision",
    "thread",
    "pages",
    "mark",
    "serial",
    "number",
    "pairs",
    "bits",
    "count",
];

/// The first run of digits with its decimals that a scalar opens with, if that is all of its number.
fn leading(text: &str) -> Option<Range<usize>> {
    let start = text.find(|c: char| c.is_ascii_digit())?;
    let opens = text[..start].chars().all(|c| matches!(c, '-' | '+' | '"' | '\''));
    let end = start + text[start..].find(|c: char| !c.is_ascii_digit() && c != '.').unwrap_or(text.len() - start);
    let rest = text[end..].trim_start_matches(['"', '\'']);
    // A day, a fraction or a version is no number that can be a little more.
    let plain = rest.is_empty() || rest.starts_with([' ', '°', '%']);
    let fraction = rest.trim_start().starts_with(|c: char| c.is_ascii_digit());
    (opens && plain && !fraction).then_some(start..end)
}

/// The number a thousandth greater, in as many digits as that takes.
fn nudged(number: &str) -> String {
    let value: f64 = number.parse().expect("digits");
    let more = if value == 0.0 { 0.001 } else { value * 1.001 };
    format!("{more:.6}")
}

fn numbers(folder: &Path) -> Vec<Number> {
    let mut found = Vec::new();
    for file in files_with(folder, "yaml") {
        let text = fs::read_to_string(&file).expect("UTF-8");
        for (document, number) in parse(&text).documents.iter().zip(0_u16..) {
            let mut gather = Gather { file: &file, text: &text, number, found: &mut found };
            gather.walk(document, document.root(), &mut Vec::new());
        }
    }
    found
}

struct Gather<'a> {
    file: &'a Path,
    text: &'a str,
    number: u16,
    found: &'a mut Vec<Number>,
}

impl Gather<'_> {
    fn walk<'d>(&mut self, document: &'d Document, node: NodeId, route: &mut Vec<Step<'d>>) {
        for (key, value) in document.entries(node) {
            let word = document.text(key).expect("a key");
            if !WORDS.contains(&word) {
                route.push(Step::Key(word));
                self.walk(document, value, route);
                route.pop();
            }
        }
        for (index, item) in document.items(node).enumerate() {
            route.push(Step::Index(index));
            self.walk(document, item, route);
            route.pop();
        }
        let span = document.node(node).span.clone();
        if document.text(node).is_none() || document.resolve(node) != node {
            return;
        }
        let Some(digits) = leading(&self.text[span.clone()]) else { return };
        let span = span.start + digits.start..span.start + digits.end;
        let route = spelled(route.iter().copied());
        let known = self.found.iter_mut().find(|number| number.file == self.file && number.span == span);
        if let Some(number) = known {
            number.routes.push(route);
            return;
        }
        self.found.push(Number {
            file: self.file.to_path_buf(),
            document: self.number,
            routes: vec![route],
            line: self.text[..span.start].matches('\n').count() + 1,
            text: self.text[span.clone()].to_owned(),
            span,
        });
    }
}

/// The lines of a hop by key: number, text and sources.
type Lines<'s> = BTreeMap<&'s str, (Option<u64>, Option<String>, &'s Sources)>;

/// The lines of a hop that are not the same on both sides, with their places. One that is there on one side only moves too.
fn moved<'s>(old: &'s HopSide, new: &'s HopSide) -> Vec<(&'s str, Vec<Place>)> {
    let of = |side: &'s HopSide| -> Lines<'s> {
        let lines = side.lines.iter().map(|line| {
            let number = line.number.map(|(number, _)| number.to_bits());
            let text = line.text.as_ref().ok().map(ToString::to_string);
            (line.key.as_str(), (number, text, &line.from))
        });
        lines.collect()
    };
    let (before, after) = (of(old), of(new));
    let keys: BTreeSet<&str> = before.keys().chain(after.keys()).copied().collect();
    let differ = keys.into_iter().filter(|key| {
        let seen = |side: &Lines<'_>| side.get(key).map(|(number, text, _)| (*number, text.clone()));
        seen(&before) != seen(&after)
    });
    let places = |key: &str| {
        [&before, &after].into_iter().filter_map(|side| side.get(key)).flat_map(|line| line.2.list()).collect()
    };
    differ.map(|key| (key, places(key))).collect()
}

/// What is wrong with the tracing of one number; none if nothing is.
fn complaints(folder: &Path, old: &Side, number: &Number) -> Vec<String> {
    let mut text = fs::read_to_string(&number.file).expect("UTF-8");
    text.replace_range(number.span.clone(), &nudged(&number.text));
    let new =
        Side::of(&Scope::of(&[folder.to_path_buf()]).with_texts(&[(number.file.clone(), text.into())]), "new".into());
    let mut said = Vec::new();
    let number_route = &number.routes[0];
    let named = |place: &Place, side: &Side| {
        // What is taken in is written elsewhere.
        let (DocumentId { file, number: document }, route) = match side.files().taken(place) {
            Some((taken, steps)) => (taken.from, spelled(steps)),
            None => (place.document, place.route()),
        };
        let same = side.files().get(file).is_some_and(|file| file.origin == number.file);
        same && document == number.document
            && number.routes.iter().any(|own| route.is_empty() || lies_in(&route, own) || lies_in(own, &route))
    };
    let after = new.hops();
    for hop in &old.hops() {
        let Some(after) = after.iter().find(|other| other.hop == hop.hop) else {
            return vec![format!("{number_route}: hop {} is gone", hop.hop)];
        };
        for (key, from) in moved(hop, after) {
            if !from.iter().any(|place| named(place, old)) {
                said.push(format!("{number_route} moves {} {key}, which does not name it", hop.hop));
            }
        }
    }
    let all: Noise =
        Noise::new(UNITS.iter().map(|unit| Threshold { of: (*unit).into(), absolute: 0.0, relative: 0.0 }).collect());
    for hop in compare(old, &new, &all).hops {
        for change in hop.quantities.iter().chain(&hop.others) {
            let mut causes = change.causes.iter().map(|cause| &hop.causes[*cause]);
            if !causes.any(|cause| {
                cause.line == number.line && number.file.ends_with(Path::new(&cause.path).file_name().expect("a file"))
            }) {
                said.push(format!("{number_route} changes {} {}, and compare does not say so", hop.hop, change.key));
            }
        }
    }
    said
}

/// Every unit that a line can have: with these at nought no change is too small.
const UNITS: [&str; 30] = [
    "dB", "dBm", "dBi", "dB/km", "m", "mm", "°", "%", "min", "V", "A", "W", "°C", "hPa", "mm/h", "W/m²", "Ω", "1",
    "F1", "GHz", "MHz", "Mbit/s", "mm²", "µH", "N", "Pa", "MPa", "kg", "K", "g/m³",
];

fn audit(name: &str) {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("examples").join(name);
    let old = Side::of(&Scope::of(std::slice::from_ref(&folder)), "old".into());
    let numbers = numbers(&folder);
    assert!(numbers.len() > 150, "{} numbers are too few to be all of them", numbers.len());
    let started = std::time::Instant::now();
    let said: Vec<String> = numbers.par_iter().flat_map_iter(|number| complaints(&folder, &old, number)).collect();
    eprintln!("{name}: {} numbers in {:?}", numbers.len(), started.elapsed());
    assert!(said.is_empty(), "{} of {}:\n{}", said.len(), numbers.len(), said.join("\n"));
}

#[test]
fn every_number_of_varneck_is_traced() {
    audit("varneck");
}

#[test]
fn every_number_of_saltmere_is_traced() {
    audit("saltmere");
}

#[test]
fn every_number_of_osierlea_is_traced() {
    audit("osierlea");
}
