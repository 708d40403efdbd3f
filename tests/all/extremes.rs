//! Numbers at the edges of what may be written: whatever is accepted leads to no infinity and to nothing that is no number,
//! in any output; whatever is not is refused with the value, the limits and an example.

use std::collections::BTreeSet;
use std::fs;
use std::ops::Range;
use std::path::Path;

use crate::fixture::{Bench, copy, files_with, tests_folder};
use hopwright::listing::{self, HopListing};
use hopwright::network::Scope;
use hopwright::output::{self, Look};
use hopwright::shape::Shape;
use hopwright::source::{Document, NodeId, parse};
use hopwright::spec::Kind;
use hopwright::units;
use hopwright::verdict::evaluate;

/// A quantity somewhere in a file.
struct Field {
    route: String,
    span: Range<usize>,
    kind: &'static units::Kind,
    bounds: [Option<f64>; 2],
}

fn fields(document: &Document, node: NodeId, shape: &Shape, route: &str, found: &mut Vec<Field>) {
    match shape {
        Shape::Quantity(kind, bounds) => {
            let span = document.node(document.resolve(node)).span.clone();
            found.push(Field { route: route.to_owned(), span, kind, bounds: *bounds });
        }
        Shape::Map(keys) => {
            for (key, value) in document.entries(node) {
                let name = document.text(key).unwrap_or_default();
                if let Some(field) = keys.iter().find(|field| field.name == name) {
                    fields(document, value, &field.shape, &format!("{route}.{name}"), found);
                }
            }
        }
        Shape::List(item) => document.items(node).for_each(|node| fields(document, node, item, route, found)),
        _ => {}
    }
}

fn fields_of(text: &str) -> Vec<Field> {
    let mut found = Vec::new();
    for document in &parse(text).documents {
        let kind = document.get(document.root(), "kind").and_then(|(_, value)| document.text(value));
        let kind = kind.and_then(Kind::from_word).expect("a kind");
        fields(document, document.root(), Shape::of(kind), kind.word(), &mut found);
    }
    found
}

/// What may just be written there, in the base unit.
fn edges(field: &Field) -> Vec<String> {
    let ((low, high), [least, most]) = (field.kind.range, field.bounds);
    let (low, high) = (least.unwrap_or(low).max(low), most.unwrap_or(high).min(high));
    let grain = field.kind.grain;
    let edges = [Some(low), Some(high), Some(grain).filter(|grain| *grain > low), Some(0.0).filter(|_| low < 0.0)];
    edges.into_iter().flatten().map(|value| format!("{value} {}", field.kind.unit)).collect()
}

/// Everything that is said of a network.
fn told(folder: &Path) -> String {
    let evaluation = evaluate(&Scope::of(&[folder.to_path_buf()]), |sheet, _| HopListing::of(sheet));
    let hops: Vec<&HopListing> = evaluation.hops.iter().collect();
    let look = Look { width: 100, colour: false, unicode: true };
    [
        output::full(&evaluation, look),
        output::json(&evaluation),
        hops.iter().map(|hop| listing::table(hop, None)).collect(),
        listing::json(&hops, None),
    ]
    .concat()
}

fn endless(text: &str) -> Option<&str> {
    text.lines().find(|line| {
        line.split(|c: char| !c.is_alphanumeric()).any(|word| ["inf", "NaN", "nan", "infinity"].contains(&word))
            || line.contains('∞')
    })
}

/// Tries the edges of every quantity of a network that no network before it had.
fn try_all(network: &Path, tried: &mut BTreeSet<String>, wrong: &mut Vec<String>) {
    let root = tempfile::tempdir().expect("a folder");
    fs::create_dir(root.path().join(".git")).expect("writable");
    copy(network, root.path());
    for path in files_with(root.path(), "yaml") {
        let text = fs::read_to_string(&path).expect("readable");
        for field in fields_of(&text) {
            if !tried.insert(field.route.clone()) {
                continue;
            }
            for value in edges(&field) {
                let mut changed = text.clone();
                changed.replace_range(field.span.clone(), &value);
                fs::write(&path, changed).expect("writable");
                let told = told(root.path());
                if told.contains(&format!("`{value}` is outside")) {
                    wrong.push(format!("{} = {value} is refused", field.route));
                }
                wrong.extend(endless(&told).map(|line| format!("{} = {value}: {line}", field.route)));
            }
        }
        fs::write(&path, text).expect("writable");
    }
}

#[test]
fn no_edge_of_any_quantity_leads_to_an_infinity() {
    let (mut tried, mut wrong) = (BTreeSet::new(), Vec::new());
    try_all(&tests_folder().join("rules/base"), &mut tried, &mut wrong);
    assert!(tried.len() > 60, "{tried:?}");
    assert!(wrong.is_empty(), "{wrong:#?}");
}

#[test]
#[ignore = "takes minutes without optimisation; run it after a change to a range or a formula"]
fn nor_of_any_quantity_of_the_examples() {
    let (mut tried, mut wrong) = (BTreeSet::new(), Vec::new());
    for network in ["examples/varneck", "examples/saltmere"] {
        try_all(&Path::new(env!("CARGO_MANIFEST_DIR")).join(network), &mut tried, &mut wrong);
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}

/// What a change of the base network is told.
fn refused(file: &str, old: &str, new: &str) -> String {
    let bench = Bench::new();
    bench.change(file, old, new);
    told(&bench.path(""))
}

#[test]
fn the_least_of_numbers_is_refused_with_its_limits() {
    for (file, old, new, words) in [
        ("sites/mill.yaml", "101.6 mm", "1e-300 mm", "`1e-300 mm` is outside the allowed range"),
        ("hops/ridge.yaml", "conductor: 16 mm2", "conductor: 0 mm2", "from 0.001 mm² to 1000 mm²"),
        ("equipment/power.yaml", "power: 60 W", "power: 0 W", "from 0.001 W to 100000 W"),
        ("hops/ridge.yaml", "height: 8 m", "height: 1e-9 m", "in steps of 0.000001 m or more"),
    ] {
        let told = refused(file, old, new);
        assert!(told.contains(words) && endless(&told).is_none(), "{new}: {told}");
    }
}

#[test]
fn an_id_has_a_length() {
    let long = "a".repeat(65);
    let told = refused("hops/ridge.yaml", "id: ridge", &format!("id: {long}"));
    assert!(
        told.contains("`id` is an id of 65 characters") && told.contains("an id has at most 64 characters"),
        "{told}"
    );
    let told = refused("hops/ridge.yaml", "id: ridge", &format!("id: {}", "a".repeat(64)));
    assert!(!told.contains("is an id of"), "{told}");
}

#[test]
fn a_title_fits_a_heading() {
    for (title, words) in [
        ("x".repeat(301), "`title` has 301 characters"),
        (" \\u200b ".into(), "`title` holds nothing that can be seen"),
    ] {
        let told = refused("sites/mill.yaml", "title: Nevvel Mill", &format!("title: \"{title}\""));
        assert!(told.contains(words), "{told}");
    }
}

#[test]
fn a_survey_of_the_year_0_or_9999_is_refused() {
    for (date, ok) in [("0000-05-01", false), ("9999-12-31", false), ("1899-12-31", false), ("1900-01-01", true)] {
        let path = format!("id: ridge\npath: {{ date: {date} }}");
        let told = refused("hops/ridge.yaml", "id: ridge", &path);
        assert_eq!(!told.contains("cannot be in the year"), ok, "{date}: {told}");
        assert!(ok || told.contains("years from 1900 to 2199"), "{date}");
    }
}
