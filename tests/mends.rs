//! Every mend a help proposes is made, and the rule is silent then.

mod fixture;

use std::fs;

use fixture::{Bench, Edit, edits, tests_folder};
use hopwright::evaluate::evaluate;
use hopwright::network::Scope;
use hopwright::physics::geodesy::{Position, between, inverse};
use hopwright::sheet::Mends;
use hopwright::units::{Latitude, Longitude};

const RULES: [&str; 2] = ["availability-below-objective", "fade-margin-below-objective"];

fn raises(bench: &Bench, rule: &str) -> Option<String> {
    let found = bench.judge().findings.into_iter().find(|finding| finding.rule.name == rule)?;
    Some(found.help.expect("a help"))
}

fn change(bench: &Bench, file: &str, old: &str, new: &str) {
    let text = fs::read_to_string(bench.path(file)).expect("there");
    assert!(text.contains(old), "{file} has no {old}");
    fs::write(bench.path(file), text.replace(old, new)).expect("writable");
}

/// Every edit that breaks a rule.
fn broken() -> impl Iterator<Item = (&'static str, Edit)> {
    RULES.into_iter().flat_map(|rule| {
        let folder = tests_folder().join("rules").join(rule);
        let bad = edits(&folder).into_iter().filter(|name| name.starts_with("bad"));
        bad.map(move |name| (rule, Edit::read(&folder.join(name).with_extension("edit"))))
    })
}

#[test]
fn the_gain_that_is_named_is_enough() {
    for (rule, edit) in broken() {
        let bench = Bench::edited(&edit);
        let help = raises(&bench, rule).expect("broken");
        let words: Vec<&str> = help.split(' ').collect();
        let at = words.iter().position(|word| word.starts_with("dB")).expect("decibels");
        let more: f64 = words[at - 1].parse().expect("a number");
        change(&bench, "equipment/mounting.yaml", "gain: 44.5 dBi", &format!("gain: {:.1} dBi", 44.5 + more));
        assert_eq!(raises(&bench, rule), None, "{}", edit.why);
    }
}

#[test]
fn the_length_that_is_named_is_short_enough() {
    let position = |latitude, longitude| Position { latitude: Latitude(latitude), longitude: Longitude(longitude) };
    let (scar, mill) = (position(54.3, -2.2), position(54.32, -2.17));
    let whole = inverse(scar, mill).expect("apart").distance.0;
    let mut mended = 0;
    for (rule, edit) in broken() {
        let bench = Bench::edited(&edit);
        let mends: Vec<Mends> = evaluate(&Scope::of(&[bench.path("")]), |sheet, _| sheet.mends).hops;
        let length = if rule == RULES[0] { mends[0].availability_distance } else { mends[0].margin_distance };
        let Some(length) = length else { continue };
        assert!(raises(&bench, rule).expect("broken").contains(&length.to_string()), "{}", edit.why);
        let place = between(scar, mill, length.0 / whole);
        change(&bench, "sites/mill.yaml", "54.320000", &format!("{:.9}", place.latitude.0));
        change(&bench, "sites/mill.yaml", "-2.170000", &format!("{:.9}", place.longitude.0));
        assert_eq!(raises(&bench, rule), None, "{}", edit.why);
        mended += 1;
    }
    assert!(mended > 0);
}
