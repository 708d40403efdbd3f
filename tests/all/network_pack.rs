//! The pack of a network: what it says of every hop, how it grows, when it is a draft, what it is held by.

use std::collections::HashSet;
use std::fs;
use std::path::Path;

use crate::fixture::copy;
use crate::fixture::program::{Ran, run};
use crate::packs::{example, pages};
use crate::synthetic::{Plan, write};
use tempfile::TempDir;

/// A network in a folder of its own, which the search for networks does not leave.
fn folder() -> TempDir {
    let folder = tempfile::tempdir().expect("a temporary folder");
    fs::create_dir(folder.path().join(".git")).expect("writable");
    folder
}

fn varneck() -> TempDir {
    let folder = folder();
    copy(&example("varneck"), folder.path());
    folder
}

fn printed(network: &Path, more: &[&str]) -> (Ran, Vec<u8>) {
    let (network, out) = (network.display().to_string(), tempfile::tempdir().expect("a folder"));
    let into = out.path().display().to_string();
    let ran = run(&[&["pack", "network", "--network", &network, "--out", &into], more].concat());
    let file = fs::read_dir(out.path()).expect("a folder").next().map(|file| file.expect("readable").path());
    let bytes = file.map(|file| fs::read(file).expect("readable")).unwrap_or_default();
    (ran, bytes)
}

#[test]
fn every_hop_site_and_service_of_an_example_is_in_its_pack() {
    let network = varneck();
    let (ran, bytes) = printed(network.path(), &[]);
    assert_eq!((ran.code, ran.err.as_str()), (0, ""));
    assert!(ran.out.ends_with("varneck-network.pdf\n"), "{}", ran.out);
    let text = pages(&bytes).join(" ");
    for hop in
        ["exchange-murrgrat", "exchange-untervarn", "murrgrat-kerbjoch", "solleralm-murrgrat", "solleralm-ostrenkar"]
    {
        assert!(text.contains(hop), "{hop}");
        for end in ["a", "b"] {
            // In the plan and in the visits.
            assert!(text.matches(&format!("{hop}/{end}")).count() >= 2, "{hop}/{end} in {text}");
        }
    }
    assert!(text.contains("5 hops, 5 sound"), "{text}");
    assert!(text.contains("Cameras and weather station at Kerbjoch"), "{text}");
    assert!(text.contains("99.9589 % (≥ 99.95 %)"), "{text}");
    // Ten ends, ten radios: four kinds at most, each counted.
    let radios: usize =
        text.split(" Radio ").filter_map(|before| before.rsplit(' ').next()?.parse::<usize>().ok()).sum();
    assert_eq!(radios, 10, "{text}");
}

#[test]
fn german_pages_say_the_same_in_german() {
    let network = varneck();
    let (ran, bytes) = printed(network.path(), &["--language", "de"]);
    assert_eq!(ran.code, 0, "{}", ran.err);
    let text = pages(&bytes).join(" ");
    for words in
        ["5 Strecken, 5 ohne Befund", "Frequenzplan", "Einsätze nach Standort", "Dienste", "99.9589 % (≥ 99.95 %)"]
    {
        assert!(text.contains(words), "{words} in {text}");
    }
}

#[test]
fn a_network_with_errors_is_a_draft_or_nothing_and_groups_them_by_rule() {
    let network = varneck();
    let hop = network.path().join("hops/exchange-murrgrat.yaml");
    let text = fs::read_to_string(&hop).expect("there");
    fs::write(&hop, text.replace("transmit_power: 12.5 dBm", "transmit_power: -9 dBm")).expect("writable");
    let (ran, bytes) = printed(network.path(), &[]);
    assert_eq!(ran.code, 1);
    assert!(bytes.is_empty() && ran.err.contains("is not printed"), "{}", ran.err);
    let (ran, bytes) = printed(network.path(), &["--draft"]);
    assert_eq!(ran.code, 1, "{}", ran.err);
    let pages = pages(&bytes);
    for page in &pages {
        assert!(page.contains("DRAFT"), "{page}");
    }
    let text = pages.join(" ");
    assert!(text.contains("with errors") && text.contains("availability-below-objective"), "{text}");
    // What a baseline knows is counted and not listed.
    let known = network.path().join("known.json").display().to_string();
    let ran = run(&["baseline", "create", &known, &network.path().display().to_string()]);
    assert_eq!(ran.code, 0, "{}", ran.err);
    let (ran, bytes) = printed(network.path(), &["--draft", "--baseline", &known]);
    let text = crate::packs::pages(&bytes).join(" ");
    assert!(text.contains("known.json") && text.contains("known by the baseline"), "{} {text}", ran.err);
}

#[test]
fn a_network_of_many_hops_goes_on_over_pages_and_leaves_none_out() {
    let network = folder();
    write(network.path(), Plan { hops: 40, seed: 7, faults: false, points: 0 }).expect("writable");
    let (ran, bytes) = printed(network.path(), &["--draft", "--plain"]);
    assert!(ran.code <= 1, "{}", ran.err);
    let pages = pages(&bytes);
    assert!(pages.len() > 4, "{}", pages.len());
    let text = pages.join(" ");
    let words: HashSet<&str> = text.split(' ').collect();
    for number in 0..40 {
        assert!(words.contains(format!("h{number}").as_str()), "h{number}");
    }
    // The heads of a table stand on every page it goes on to.
    assert!(text.matches("Sends on").count() >= 2, "{text}");
}

#[test]
fn the_pages_of_one_network_are_the_same_bytes_and_carry_their_sources() {
    let network = varneck();
    let (_, one) = printed(network.path(), &[]);
    let (_, other) = printed(network.path(), &[]);
    assert!(one == other && !one.is_empty());
    let raw = String::from_utf8_lossy(&one);
    assert!(raw.contains("services.yaml") || raw.contains("EmbeddedFile"), "no sources inside");
}
