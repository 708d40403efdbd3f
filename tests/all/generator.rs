//! The generator behind the benches: what it means to be sound is sound, and what it means to break is found.

use std::collections::BTreeSet;

use crate::synthetic::Plan;
use hopwright::network::Scope;
use hopwright::verdict::evaluate;

fn rules(plan: Plan) -> (usize, BTreeSet<&'static str>) {
    let folder = tempfile::tempdir().expect("a folder");
    std::fs::create_dir(folder.path().join(".git")).expect("writable");
    crate::synthetic::write(folder.path(), plan).expect("writable");
    let evaluation = evaluate(&Scope::of(&[folder.path().to_path_buf()]), |_, _| ());
    (evaluation.hops.len(), evaluation.findings.iter().map(|finding| finding.rule.name).collect())
}

#[test]
fn a_sound_network_of_any_size_is_sound() {
    assert_eq!(rules(Plan { hops: 300, seed: 1, faults: false, points: 0 }), (300, BTreeSet::new()));
}

#[test]
fn faults_that_are_sprinkled_in_are_found() {
    let (_, found) = rules(Plan { hops: 500, seed: 1, faults: true, points: 0 });
    for rule in ["value-not-valid", "key-unknown", "reference-dangling", "transmit-power-out-of-range", "run-too-long"]
    {
        assert!(found.contains(rule), "no {rule} in {found:?}");
    }
}
