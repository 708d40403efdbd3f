//! Standard parts: documents like any other, named `std:…`, that nobody fixes and nobody can take the name of.

use hopwright::network::{Home, Scope};
use hopwright::physics::fastener::{self, Strength};
use hopwright::source::{parse, to_value};
use hopwright::spec::{Kind, schema_text};
use hopwright::standard::{Size, parts, sizes};
use hopwright::units::{self, Kind as Quantity, Quantity as _, SquareMillimetres};
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

fn of(group: &str) -> impl Iterator<Item = &'static Size> + use<'_> {
    sizes().iter().filter(move |size| size.group == group)
}

/// The number before a unit in what is said of a size.
fn said(size: &Size, after: &str, unit: &str) -> f64 {
    let rest = size.says.split(after).nth(1).unwrap_or_else(|| panic!("{}: no `{after}`", size.name));
    let number = rest.split(unit).next().expect("a part").trim();
    number.parse().unwrap_or_else(|_| panic!("{}: `{number}`", size.name))
}

/// A name that is listed is read where it is to be written, and stands for what is said of it.
#[test]
fn sizes_are_what_reads_them_takes_them_for() {
    let tube = Quantity::named("tube diameter").expect("a kind");
    for size in of("tube") {
        let outside: f64 = size.says.split(' ').next().expect("a number").parse().expect("a number");
        assert_eq!(units::read(tube, size.name), Ok(outside), "{}", size.name);
    }
    for size in of("conductor") {
        let area = units::read(SquareMillimetres::KIND, size.name).expect("a size");
        if size.name.ends_with("AWG") {
            let listed: f64 = size.says.split(' ').next().expect("a number").parse().expect("a number");
            assert!((area - listed).abs() <= 0.006, "{}: {area}", size.name);
        }
        // The size of the other system is nowhere thinner.
        if let Some(other) = size.says.split("in its place ").nth(1).and_then(|rest| rest.split(" or thicker").next()) {
            let other = units::read(SquareMillimetres::KIND, other).expect("a size");
            assert!(other >= 0.999 * area, "{} {other}", size.name);
        }
    }
    for size in of("thread") {
        let area = fastener::stress_area(size.name).expect("a thread").0;
        assert!((area - said(size, "stress area", "mm²")).abs() <= 0.051, "{}: {area}", size.name);
        let torque = |strength, friction| {
            let proof = fastener::proof(size.name, strength).expect("a thread");
            fastener::torque(size.name, proof, fastener::SHARE, friction).expect("a thread").0
        };
        let near = |listed: f64, found: f64| assert!((listed - found).abs() <= 0.051, "{}: {found}", size.name);
        if let Some(wrench) = fastener::across_flats(size.name) {
            near(said(size, "wrench", "mm"), f64::from(wrench));
            near(said(size, "A2-70 dry", "N·m"), torque(Strength::Stainless70, fastener::DRY));
            near(said(size, "8.8 galvanised", "N·m"), torque(Strength::S88, fastener::GALVANISED));
        } else {
            near(said(size, "grade 5 dry", "N·m"), torque(Strength::Grade5, fastener::DRY));
        }
    }
    assert!(["tube", "conductor", "thread", "gland"].into_iter().all(|group| of(group).count() >= 8));
}

#[test]
fn the_command_lists_sizes_with_their_standard() {
    let said = |words: &[&str]| run(&[&["parts"], words].concat()).out;
    assert!(said(&[]).contains("gland: to choose by"));
    let threads = said(&["thread", "iso"]);
    assert!(threads.contains("M10") && threads.contains("ISO 898-1") && !threads.contains("UNC"), "{threads}");
    assert!(said(&["dn 65"]).contains("76.1 mm outside"));
}

/// A light of the village by standard parts: glass for the data, two cores for the power.
#[test]
fn fibre_and_two_cores_may_be_standard_parts() {
    let folder = tempfile::tempdir().expect("a folder");
    std::fs::create_dir(folder.path().join(".git")).expect("writable");
    let network = crate::fixture::copy_example("osierlea", folder.path());
    let hop = network.join("hops/forge-mill.yaml");
    let text = std::fs::read_to_string(&hop).expect("there");
    let text = text
        .replace("fibre: lawn-os2", "fibre: std:os2-g652d-outdoor")
        .replace("cable: duo-4", "cable: std:dc-2x4-mm2");
    std::fs::write(&hop, text).expect("writable");
    let sheet = run_in(&network, &["sheet", "--full", "forge-mill"]).out;
    for wanted in ["fibre std:os2-g652d-outdoor", "cable std:dc-2x4-mm2", "IEC 60228 class 5", "2 × 4 mm2"] {
        assert!(sheet.contains(wanted), "{wanted} is not in {sheet}");
    }
    let checked = run_in(&network, &["check", "--format", "concise"]).out;
    // Nobody states what current it may carry, and its diameter is open.
    assert!(!checked.contains("error["), "{checked}");
}
