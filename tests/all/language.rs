//! The language as its three readers see it: the quantity reader, the JSON Schemas of editors, and the shape check.

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use crate::fixture::files_with;
use hopwright::network::Scope;
use hopwright::place::FileId;
use hopwright::place::Step;
use hopwright::shape;
use hopwright::source::{parse, to_value};
use hopwright::spec::{Kind, schema_of};
use hopwright::units::{self, Given, Quantity};
use hopwright::verdict::evaluate;
use jsonschema::error::ValidationErrorKind;
use serde_json::Value;

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

// Quantities

/// Texts no quantity takes, whatever its units.
const WRONG: [&str; 7] = ["", "m", "--5 m", "5 parsecs", "1.2.3", "five m", "5 m 3"];

/// Every unit word of a kind reads, prints as it was written, reads back to the same bits, and fits the schema.
fn holds<Q: Quantity>() {
    let kind = Q::KIND;
    let schema = schemars::schema_for!(Given<Q>).to_value();
    let editor = jsonschema::validator_for(&schema).expect("a schema");
    let typed = |text: &str| serde_yaml::from_value::<Given<Q>>(text.into());
    let mut seen = 0;
    for word in kind.words() {
        // Latitudes are the narrowest range, gauges whole; tenths of small numbers fit everything else.
        // Air has some hundreds of its base unit.
        let tenths = |n: u32| vec![format!("{}.{n}", n / 7), format!("{}.{n}", n * 4)];
        for number in (1..=24).flat_map(|n| if word == "AWG" { vec![n.to_string()] } else { tenths(n) }) {
            for gap in ["", " "] {
                let text = format!("{number}{gap}{word}");
                let Ok(value) = units::read(kind, &text) else { continue };
                seen += 1;
                let given = typed(&text).unwrap_or_else(|error| panic!("{text}: {error}"));
                assert_eq!(given.value.base().to_bits(), value.to_bits(), "{text}");
                assert_eq!(given.to_string(), text);
                let again = typed(&given.to_string()).expect("what was printed");
                assert_eq!(again.value.base().to_bits(), given.value.base().to_bits(), "{text}");
                assert!(editor.is_valid(&text.as_str().into()), "an editor would refuse `{text}` of {}", kind.name);
            }
        }
        let example = format!("{} {word}", kind.example.split(' ').next().unwrap_or_default());
        assert!(seen > 0 || units::read(kind, &example).is_ok(), "`{word}` of {} is never read", kind.name);
    }
    assert!(units::read(kind, kind.example).is_ok() && editor.is_valid(&kind.example.into()), "{}", kind.example);
    for text in WRONG {
        assert!(units::read(kind, text).is_err(), "`{text}` is no {}", kind.name);
    }
}

macro_rules! quantities {
    ($($type:ident)+) => {
        #[test]
        fn what_is_written_is_read_printed_and_read_again() {
            $(holds::<units::$type>();)+
        }

        /// Name and unit words of every kind an author can write.
        fn written_kinds() -> Vec<&'static units::Kind> {
            vec![$(units::$type::KIND),+]
        }
    };
}

quantities! {
    Metres Millimetres SquareMillimetres SquareMetres Degrees Latitude Longitude Gigahertz Megahertz Dbm Decibels Dbi DecibelsPerKilometre
    Volts Watts Amperes Ohms OhmsPerKilometre MillimetresPerHour RainDepth GramsPerCubicMetre Celsius Kelvins Percent
    MegabitsPerSecond Kilograms NewtonMetres MetresPerSecond Hectopascals MetresPerYear LineVolts ImpulseVolts Kiloamperes KilogramsPerCubicMetre Newtons Minutes Hours Milliseconds
}

#[test]
fn notations_of_the_trade_fit_reader_and_editor() {
    let takes = |schema: Value, kind: &units::Kind, text: &str| {
        assert!(units::read(kind, text).is_ok(), "{text}");
        assert!(jsonschema::validator_for(&schema).expect("a schema").is_valid(&text.into()), "{text}");
    };
    let length = schemars::schema_for!(Given<units::Metres>).to_value();
    for text in ["51 ft 6 in", "51' 6 1/2\"", "12 1/2 ft", "-3 m", "\u{2212}3 m", "1e3 m"] {
        takes(length.clone(), units::Metres::KIND, text);
    }
    let size = schemars::schema_for!(Given<units::SquareMillimetres>).to_value();
    for text in ["1/0 AWG", "4/0 AWG", "10 AWG", "16 mm²", "16 mm2"] {
        takes(size.clone(), units::SquareMillimetres::KIND, text);
    }
    let place = schema_of(Kind::Site).to_value();
    let tube = place["properties"]["supports"]["items"]["properties"]["outside_diameter"].clone();
    let kind = units::Kind::named("tube diameter").expect("a kind");
    for text in ["DN 50", "DN65 EN 10255", "NPS 2 1/2", "NPS 2-1/2", "NPS 1/2", "DN 65 ASME B36.10M", "76.1 mm", "3 in"]
    {
        takes(tube.clone(), kind, text);
    }
    let bracket = schema_of(Kind::Bracket).to_value();
    let clamp = bracket["properties"]["pole"]["properties"]["max"].clone();
    takes(clamp, kind, "NPS 4");
    assert!(units::read(units::Millimetres::KIND, "DN 50").is_err(), "a wall or a bend has no nominal size");
    let latitude = schemars::schema_for!(Given<units::Latitude>).to_value();
    for text in ["46.51234 deg", "46.5° S", "46°30'44.4\" N", "46 30 44.4 S"] {
        takes(latitude.clone(), units::Latitude::KIND, text);
    }
}

#[test]
fn the_readme_lists_every_unit() {
    let readme = fs::read_to_string(root().join("README.md")).expect("a README");
    let row = |line: &str| {
        let mut cells = line.strip_prefix("| ")?.split(" | ");
        let (name, units) = (cells.next()?.to_owned(), cells.next()?.trim_end_matches(" |").to_owned());
        units.starts_with('`').then(|| {
            let words: BTreeSet<String> = units.split(", ").map(|word| word.trim_matches('`').to_owned()).collect();
            (name, words)
        })
    };
    let start = readme.find("| quantity | units |").expect("the table");
    let table: Vec<(String, BTreeSet<String>)> =
        readme[start..].lines().take_while(|line| line.starts_with('|')).filter_map(row).collect();
    let mut listed = BTreeSet::new();
    for kind in written_kinds() {
        // U+2126 is the ohm sign of old character sets; it looks like the letter.
        let words: BTreeSet<String> =
            kind.words().filter(|word| !word.contains('\u{2126}')).map(str::to_owned).collect();
        let found = table.iter().find(|(name, _)| name == kind.name);
        assert_eq!(found.map(|(_, words)| words), Some(&words), "the README's row of {}", kind.name);
        listed.insert(kind.name);
    }
    let unknown: Vec<&String> =
        table.iter().map(|(name, _)| name).filter(|name| !listed.contains(name.as_str())).collect();
    assert!(unknown.is_empty(), "rows of no quantity: {unknown:?}");
}

// Editors

/// A key as a JSON pointer spells it.
fn pointer(key: &str) -> String {
    key.replace('~', "~0").replace('/', "~1")
}

/// Where the schema of an editor finds fault: routes of values, of missing keys and of unknown ones.
fn faults_of_editor(kind: Kind, value: &Value) -> BTreeSet<String> {
    let schema = schema_of(kind).to_value();
    let validator = jsonschema::validator_for(&schema).expect("a schema");
    let mut places = BTreeSet::new();
    for error in validator.iter_errors(value) {
        let at = error.instance_path().to_string();
        match error.kind() {
            ValidationErrorKind::Required { property } => {
                places.insert(format!("{at}/{}", property.as_str().unwrap_or_default()));
            }
            ValidationErrorKind::AdditionalProperties { unexpected } => {
                places.extend(unexpected.iter().map(|key| format!("{at}/{}", pointer(key))));
            }
            _ => {
                places.insert(at);
            }
        }
    }
    places
}

/// Where the shape check finds fault.
fn faults_of_ours(text: &str, number: usize, kind: Kind) -> BTreeSet<String> {
    let parsed = parse(text);
    let checked = shape::check(&parsed.documents[number], text, FileId(0), kind, &[]);
    let spell = |route: &[Step<'_>]| {
        route.iter().fold(String::new(), |path, segment| match segment {
            Step::Key(key) | Step::Named(key) => format!("{path}/{}", pointer(key)),
            Step::Index(index) => format!("{path}/{index}"),
        })
    };
    checked.mends.routes().iter().map(|route| spell(route)).collect()
}

/// An editor underlines nothing that `check` does not, in good files and bad ones; and what is broken in shape fails in both.
#[test]
fn editors_and_check_find_fault_in_the_same_places() {
    let mut files = Vec::new();
    for folder in ["examples", "tests/nasty", "tests/rules/base", "src/scaffold"] {
        files.extend(files_with(&root().join(folder), "yaml"));
    }
    files.sort();
    let (mut faulty, mut clean, mut missed) = (0, 0, Vec::new());
    for path in files {
        let Ok(text) = fs::read_to_string(&path) else { continue };
        let parsed = parse(&text);
        if !parsed.faults.is_empty() || text.contains('⟨') {
            continue;
        }
        for (number, document) in parsed.documents.iter().enumerate() {
            let word =
                document.get(document.root(), "kind").and_then(|(_, kind)| document.text(document.resolve(kind)));
            let Some(kind) = word.and_then(Kind::from_word) else { continue };
            let Ok(value) = serde_json::to_value(to_value(document, document.root())) else { continue };
            let (editor, ours) = (faults_of_editor(kind, &value), faults_of_ours(&text, number, kind));
            missed.extend(editor.difference(&ours).map(|place| format!("{} {number}: {place}", path.display())));
            if editor.is_empty() { clean += 1 } else { faulty += 1 }
        }
    }
    assert!(missed.is_empty(), "only the editor sees {missed:#?}");
    assert!(clean > 60 && faulty > 30, "{clean} clean and {faulty} faulty documents");
}

// One run

/// A bad value that five hops depend on is reported once, and each hop says once that it waits.
#[test]
fn one_cause_is_reported_once_and_each_hop_waits_once() {
    let folder = tempfile::tempdir().expect("a folder");
    let base = root().join("examples/varneck");
    for path in files_with(&base, "yaml") {
        let target = folder.path().join(path.strip_prefix(&base).expect("inside"));
        fs::create_dir_all(target.parent().expect("a parent")).expect("a folder");
        let text = fs::read_to_string(&path).expect("text");
        fs::write(target, text.replace("overload: -19 dBm", "overload: -19 dB")).expect("written");
    }
    let evaluation = evaluate(&Scope::of(&[folder.path().to_path_buf()]), |_, _| ());
    let mut rules: Vec<(&str, Option<&str>)> =
        evaluation.findings.iter().map(|finding| (finding.rule.name, finding.hop.as_deref())).collect();
    rules.sort_unstable();
    let hops =
        ["exchange-murrgrat", "exchange-untervarn", "murrgrat-kerbjoch", "solleralm-murrgrat", "solleralm-ostrenkar"];
    let mut expected: Vec<(&str, Option<&str>)> = hops.iter().map(|hop| ("hop-not-evaluated", Some(*hop))).collect();
    expected.push(("value-not-valid", None));
    assert_eq!(rules, expected);
}
