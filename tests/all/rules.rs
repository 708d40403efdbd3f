//! Every rule on a network that breaks it, and on one that just does not.

use crate::fixture::{Bench, edits, folders, run_all, tests_folder};
use hopwright::rules::ALL;

#[test]
fn the_base_network_is_sound() {
    let bench = Bench::new();
    let evaluation = bench.judge();
    assert_eq!(evaluation.hop_count, 1);
    assert!(evaluation.findings.is_empty(), "{}", bench.shown(&evaluation));
}

#[test]
fn every_rule_has_a_bad_and_a_good_edit_and_no_folder_is_without_a_rule() {
    let mut rules: Vec<&str> = ALL.iter().map(|entry| entry.rule.name).collect();
    rules.sort_unstable();
    let mut shown = folders(&tests_folder().join("rules"));
    shown.retain(|name| name != "base");
    assert_eq!(shown, rules);
    for rule in rules {
        let edits = edits(&tests_folder().join("rules").join(rule));
        for wanted in ["bad", "good"] {
            assert!(edits.iter().any(|edit| edit == wanted), "{rule} has no {wanted}.edit");
        }
    }
}

#[test]
fn every_edit_raises_its_rule_or_keeps_it_quiet() {
    run_all("rules");
}
