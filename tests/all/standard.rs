//! Standard parts: documents like any other, named `std:…`, that nobody mends and nobody can take the name of.

use hopwright::network::{Home, Scope};
use hopwright::source::{parse, to_value};
use hopwright::spec::{Kind, schema_text};
use hopwright::standard::parts;
use hopwright::verdict::evaluate;
use serde_json::Value;

use crate::fixture::Bench;
use crate::fixture::program::{run, run_in};

const CABLE: [(&str, &str, &str); 1] = [("hops/ridge.yaml", "cable: out-5e", "cable: std:cat-6-f-utp-23awg-pe")];

#[test]
fn every_part_fits_the_schema_of_its_kind() {
    for part in parts() {
        let kind = Kind::from_word(part.kind).expect("a kind");
        let schema: Value = serde_json::from_str(&schema_text(kind)).expect("JSON");
        let document = &parse(part.text).documents[0];
        let value = serde_json::to_value(to_value(document, document.root())).expect("plain values");
        let validator = jsonschema::validator_for(&schema).expect("a schema");
        let said: Vec<String> = validator.iter_errors(&value).map(|error| error.to_string()).collect();
        assert_eq!(said, [""; 0], "{}", part.id);
        // How sure each figure is, and nothing of a maker.
        assert!(value["sources"].as_array().is_some_and(|sources| !sources.is_empty()), "{} has no source", part.id);
    }
}

#[test]
fn every_part_is_read_without_a_fault() {
    let bench = Bench::new();
    // A comment names them all, so that all are read.
    let names: Vec<String> = parts().iter().map(|part| format!("# {}", part.name())).collect();
    bench.change("network.yaml", "codes:", &format!("{}\ncodes:", names.join("\n")));
    let evaluation = bench.judge();
    assert!(evaluation.findings.is_empty(), "{}", bench.shown(&evaluation));
    let read = evaluation.files.list.iter().filter(|file| file.home == Home::Standard).count();
    assert_eq!(read, parts().len());
}

#[test]
fn a_standard_part_stands_in_the_sheet_with_its_source() {
    let bench = Bench::with(&CABLE);
    let text = run_in(&bench.path(""), &["sheet", "--sources"]).out;
    for wanted in [
        "From elsewhere: cable std:cat-6-f-utp-23awg-pe",
        "standard part, shipped in the program",
        "category, screening: ISO/IEC 11801-1, class E, 250 MHz (from memory) [limit]",
        "[range of the trade]",
        "7 mm to 8 mm",
        "std:cat-6-f-utp-23awg-pe:",
    ] {
        assert!(text.contains(wanted), "{wanted} is not in {text}");
    }
}

#[test]
fn a_finding_on_a_standard_part_names_it_and_offers_no_mend() {
    let bench = Bench::with(&[("hops/ridge.yaml", "cable: out-5e", "cable: std:cat-5e-f-utp-24awg-pe")]);
    let evaluation = evaluate(&Scope::of(&[bench.path("")]), |_, _| ());
    let shown = bench.shown(&evaluation);
    assert!(shown.contains("std:cat-5e-f-utp-24awg-pe:"), "{shown}");
    assert!(evaluation.findings.iter().all(|finding| finding.fix.is_none()), "{shown}");
}

#[test]
fn the_command_lists_and_prints() {
    let said = |words: &[&str]| {
        let ran = run(&[&["parts"], words].concat());
        (ran.code, ran.out + &ran.err)
    };
    let (code, all) = said(&[]);
    assert_eq!(code, 0);
    assert!(parts().iter().all(|part| all.contains(&part.name())), "{all}");
    let (_, some) = said(&["6a", "f/utp"]);
    assert!(some.contains("std:cat-6a-f-utp-23awg-pe") && !some.contains("cat-5e"), "{some}");
    let (_, one) = said(&["std:802-3bt-class6"]);
    assert!(one.contains("power: 60 W") && one.contains("sure: limit"), "{one}");
    let (code, none) = said(&["std:802-3bt-clas6"]);
    assert!(code == 2 && none.contains("802-3bt-class6"), "{none}");
}
