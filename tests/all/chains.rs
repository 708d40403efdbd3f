//! Radios that hand data and power to each other, over runs that end at a port of another hop's radio.

use std::collections::BTreeMap;
use std::path::Path;

use tempfile::TempDir;

use crate::fixture::copy_example;
use crate::picture::example;
use hopwright::listing::HopListing;
use hopwright::network::Scope;
use hopwright::verdict::evaluate;

/// The lines of each hop by their keys: the number, or what is said.
type Lines = BTreeMap<String, (Option<f64>, String)>;

/// All hops of a network, and its findings by rule.
fn judged(network: &Path) -> (BTreeMap<String, Lines>, Vec<(&'static str, String)>) {
    let scope = Scope::of(&[network.to_owned()]);
    let evaluation = evaluate(&scope, |sheet, _| (sheet.id().to_owned(), HopListing::of(sheet)));
    let of = |listing: HopListing| -> Lines {
        let rows = listing.sections.into_iter().flat_map(|section| section.rows);
        let told = |row: hopwright::sheet::Row| {
            let text = row.text.map_or_else(|why| why.reason.to_string(), |told| told.to_string());
            (row.key.to_string(), (row.number.map(|(number, _)| number), text))
        };
        rows.map(told).collect()
    };
    let findings = evaluation.findings.iter().map(|finding| (finding.rule.name, finding.message.clone())).collect();
    (evaluation.hops.into_iter().map(|(id, listing)| (id, of(listing))).collect(), findings)
}

/// The lamp posts, with a file of theirs changed.
fn posts(changes: &[(&str, &str, &str)]) -> TempDir {
    let folder = TempDir::new().expect("a folder");
    let network = copy_example("osierlea", folder.path());
    std::fs::create_dir(folder.path().join(".git")).expect("writable");
    for (file, old, new) in changes {
        let path = network.join(file);
        let text = std::fs::read_to_string(&path).expect("there");
        assert!(text.contains(old), "{file}: {old}");
        std::fs::write(&path, text.replace(old, new)).expect("writable");
    }
    folder
}

#[test]
fn the_lamp_posts_are_sound() {
    let (hops, findings) = judged(&example("osierlea"));
    assert_eq!((hops.len(), findings), (3, Vec::new()));
}

/// Whoever starts at the source and lets the voltages sink comes to the highest solution and stops there: a way of its own,
/// from the loops and draws that the sheets print.
#[test]
fn three_radios_and_a_camera_are_solved_as_one() {
    let (hops, _) = judged(&example("osierlea"));
    let number = |hop: &str, key: &str| hops[hop][key].0.unwrap_or_else(|| panic!("{hop}: {key}"));
    let source = number("green-forge", "ends.b.runs[0].supply_voltage");
    let loops = [
        number("green-forge", "ends.b.runs[0].loop_resistance"),
        number("green-forge", "ends.b.runs[1].onward.loop_resistance"),
        number("forge-mill", "ends.a.runs[0].onward.loop_resistance"),
        number("forge-well", "ends.a.runs[0].onward.loop_resistance"),
    ];
    let draws = [13.0, 13.0, 13.0, 5.0];
    let mut volts = [source; 4];
    for _ in 0..300 {
        let mut current = 0.0;
        let mut currents = [0.0; 4];
        for number in (0..4).rev() {
            current += draws[number] / volts[number];
            currents[number] = current;
        }
        let mut before = source;
        for number in 0..4 {
            before -= loops[number] * currents[number];
            volts[number] = before;
        }
    }
    let said = [
        number("green-forge", "ends.b.runs[0].radio_voltage"),
        number("forge-mill", "ends.a.arrivals[0].voltage"),
        number("forge-well", "ends.a.arrivals[0].voltage"),
        number("forge-well", "ends.a.runs[0].onward.voltage"),
    ];
    for (one, other) in volts.iter().zip(said) {
        assert!((one - other).abs() < 1e-9, "{volts:?} {said:?}");
    }
    // The same number stands at the end that hands it on.
    assert!((number("green-forge", "ends.b.runs[1].onward.voltage") - said[1]).abs() < 1e-12);
    assert!((number("forge-mill", "ends.a.runs[0].onward.voltage") - said[2]).abs() < 1e-12);
}

#[test]
fn more_on_the_last_radio_lowers_the_first() {
    let heavier = posts(&[("hops/forge-well.yaml", "draw: 5 W", "draw: 12 W")]);
    let (before, after) = (judged(&example("osierlea")).0, judged(&heavier.path().join("osierlea")).0);
    for (hop, key) in [
        ("green-forge", "ends.b.runs[0].radio_voltage"),
        ("forge-mill", "ends.a.arrivals[0].voltage"),
        ("forge-well", "ends.a.arrivals[0].voltage"),
    ] {
        assert!(after[hop][key].0.expect("a number") < before[hop][key].0.expect("a number"), "{hop} {key}");
    }
}

#[test]
fn radios_that_feed_each_other_have_no_power() {
    let circle = posts(&[
        ("hops/green-forge.yaml", "like: from-cabinet", "port: in\n        carries: [data]\n        entry: cabinet"),
        (
            "hops/forge-well.yaml",
            "feeds: { title: Camera at the crossing, draw: 5 W, voltage: { min: 36 V, max: 58 V } }",
            "ends_at: { hop: green-forge, end: b, port: dc }",
        ),
    ]);
    let (hops, findings) = judged(&circle.path().join("osierlea"));
    assert_eq!(hops.len(), 3, "all of them are judged");
    let unpowered = findings.iter().filter(|(rule, message)| *rule == "radio-unpowered" && message.contains("circle"));
    assert_eq!(unpowered.count(), 3, "{findings:?}");
}

#[test]
fn a_run_stays_at_its_site_and_leads_to_a_port() {
    for (old, new, said) in [
        ("hop: forge-mill, end: a, port: in", "hop: forge-mill, end: b, port: in", "not at `forge`"),
        ("hop: forge-mill, end: a, port: in", "hop: forge-mill, end: a, port: inn", "has no port `inn`"),
        ("hop: forge-mill, end: a, port: in", "hop: forge-mills, end: a, port: in", "has no hop `forge-mills`"),
    ] {
        let folder = posts(&[("hops/green-forge.yaml", old, new)]);
        let (hops, findings) = judged(&folder.path().join("osierlea"));
        assert!(!hops.contains_key("green-forge"));
        let dangling = findings.iter().any(|(rule, message)| *rule == "reference-dangling" && message.contains(said));
        assert!(dangling, "{findings:?}");
    }
}
