//! Lightning protection as it is stated: printed for reviewers and crews in both languages, of the right structure, and never
//! taken for said where nobody said it.

use std::fs;
use std::path::Path;
use std::process::Command;

use crate::fixture::Bench;
use crate::packs::{example, pages};

/// The text of a pack as the program writes it.
pub fn printed(folder: &Path, kind: &str, which: &str, language: &str) -> String {
    let out = tempfile::tempdir().expect("a folder");
    let mut command = Command::new(env!("CARGO_BIN_EXE_hopwright"));
    command.args(["pack", kind, which, "--language", language, "--draft", "--network"]).arg(folder);
    let done = command.arg("--out").arg(out.path()).output().expect("the program runs");
    assert_eq!(done.status.code(), Some(0), "{}", String::from_utf8_lossy(&done.stderr));
    let file = String::from_utf8_lossy(&done.stdout).lines().next().expect("a pack").to_owned();
    pages(&fs::read(file).expect("written")).join(" ")
}

#[test]
fn a_crew_is_told_what_to_keep_away_from_in_its_language() {
    let network = example("osierlea");
    let english = printed(&network, "install", "green-forge/a", "en");
    for wanted in [
        "the structure has a system of class III",
        "kept apart from it",
        "Keep antenna, bracket and every cable at least 0.35 m (1.1 ft) from all conductors",
        "Hexgrove Stop 1G (C2 5 kA, D1 2.5 kA)",
    ] {
        assert!(english.contains(wanted), "{wanted} is not in {english}");
    }
    let german = printed(&network, "install", "green-forge/a", "de");
    for wanted in ["das Bauwerk hat einen der Klasse III", "davon getrennt gehalten", "mindestens 0.35 m (1.1 ft)"] {
        assert!(german.contains(wanted), "{wanted} is not in {german}");
    }
    // Nothing to keep away from where there is none.
    let without = printed(&network, "install", "green-forge/b", "en");
    assert!(without.contains("no system, says the design") && !without.contains("from all conductors"), "{without}");
}

#[test]
fn a_reviewer_sees_who_states_it_and_that_nothing_is_designed() {
    let english = printed(&example("osierlea"), "design", "green-forge", "en");
    for wanted in ["Inspection of the hall", "LPZ 0B", "LPZ 0A", "hopwright designs and certifies none"] {
        assert!(english.contains(wanted), "{wanted} is not in {english}");
    }
    let german = printed(&example("osierlea"), "design", "green-forge", "de");
    assert!(german.contains("hopwright plant und bescheinigt keinen"), "{german}");
}

#[test]
fn nothing_stated_is_said_and_not_judged() {
    let bench = Bench::new();
    assert!(bench.judge().findings.is_empty());
    let install = printed(&bench.path(""), "install", "ridge/a", "en");
    assert!(install.contains("Lightning protection NOT STATED: ask"), "{install}");
    let design = printed(&bench.path(""), "design", "ridge", "en");
    assert!(design.contains("Lightning protection system of the structure not stated"), "{design}");
}

/// A mast beside the house has a system of its own.
#[test]
fn what_a_support_says_counts_as_a_whole() {
    let bench = Bench::with(&[
        (
            "sites/scar.yaml",
            "hazards:",
            "lightning_protection: { system: present, class: II, stated_by: Report 1 }\nhazards:",
        ),
        ("sites/scar.yaml", "free_length: 3 m", "free_length: 3 m\n    lightning_protection: { system: absent }"),
        (
            "equipment/power.yaml",
            "series_resistance:",
            "impulse_tests: [{ category: D1, current: 1 kA }]\nseries_resistance:",
        ),
    ]);
    let evaluation = bench.judge();
    // Neither the class of the house nor who states it of the house.
    assert!(evaluation.findings.is_empty(), "{}", bench.shown(&evaluation));
    let install = printed(&bench.path(""), "install", "ridge/a", "en");
    assert!(install.contains("no system, says the design") && !install.contains("class II"), "{install}");
}
