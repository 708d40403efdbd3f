//! Every fix a help proposes is count, and the rule is silent then.

use std::fs;

use crate::fixture::{Bench, Edit, edits, tests_folder};
use hopwright::network::Scope;
use hopwright::physics::geodesy::{Position, between, inverse};
use hopwright::sheet::{Mend, Mends};
use hopwright::spec::Both;
use hopwright::units::{Latitude, Longitude};
use hopwright::verdict::evaluate;

/// The rules whose helps name what was tried.
const TRIED: [&str; 2] = ["availability-below-objective", "fade-margin-below-objective"];

/// The line of a file that starts with a key, the first after `from`, with another value.
fn set(bench: &Bench, file: &str, from: &str, key: &str, value: &str) {
    let text = fs::read_to_string(bench.path(file)).expect("there");
    let start = text.find(from).unwrap_or_else(|| panic!("{file} has no {from}"));
    let at = start + text[start..].find(key).unwrap_or_else(|| panic!("{file} has no {key}"));
    let end = at + text[at..].find('\n').expect("a line");
    fs::write(bench.path(file), format!("{}{key} {value}{}", &text[..at], &text[end..])).expect("writable");
}

/// Every edit that breaks a rule.
fn broken(rule: &str) -> Vec<Edit> {
    let folder = tests_folder().join("rules").join(rule);
    let bad = edits(&folder).into_iter().filter(|name| name.starts_with("bad"));
    bad.map(|name| Edit::read(&folder.join(name).with_extension("edit"))).collect()
}

/// Makes one kind of fix wherever it is proposed, and says how often that was.
fn each_mend<T>(of: impl Fn(&Mend) -> Option<T>, words: impl Fn(&T) -> String, make: impl Fn(&Bench, &T)) -> usize {
    let mut count = 0;
    for (rule, edit) in TRIED.into_iter().flat_map(|rule| broken(rule).into_iter().map(move |edit| (rule, edit))) {
        let bench = Bench::edited(&edit);
        let mends: Vec<Mends> = evaluate(&Scope::of(&[bench.path("")]), |sheet, _| sheet.mends.clone()).hops;
        let mend = if rule == TRIED[0] { &mends[0].availability } else { &mends[0].margin };
        let Some(mend) = of(mend) else { continue };
        let said = bench.help(rule).expect("broken");
        assert!(said.contains(&words(&mend)), "{}: {said}", edit.why);
        make(&bench, &mend);
        assert_eq!(bench.help(rule), None, "{}", edit.why);
        count += 1;
    }
    count
}

#[test]
fn the_gain_that_is_named_is_enough() {
    let make = |bench: &Bench, gain: &hopwright::units::Decibels| {
        bench.change("equipment/mounting.yaml", "gain: 44.5 dBi", &format!("gain: {} dBi", 44.5 + gain.0));
    };
    assert!(each_mend(|mend| mend.gain, |gain| format!("{gain} more gain"), make) > 0);
}

#[test]
fn the_powers_that_are_named_are_enough() {
    let ends = ["\n  a:", "\n  b:"];
    let make = |bench: &Bench, powers: &Both<Option<hopwright::units::Dbm>>| {
        for (power, end) in powers.iter().zip(ends) {
            if let Some(power) = power {
                set(bench, "hops/ridge.yaml", end, "transmit_power:", &power.to_string());
            }
        }
    };
    let words = |powers: &Both<Option<hopwright::units::Dbm>>| {
        powers.iter().flatten().next().expect("one at least").to_string()
    };
    assert!(each_mend(|mend| mend.power, words, make) > 0);
}

#[test]
fn the_bandwidth_that_is_named_is_narrow_enough() {
    let make = |bench: &Bench, (width, _): &(hopwright::units::Megahertz, String)| {
        set(bench, "hops/ridge.yaml", "channel:", "bandwidth:", &width.to_string());
    };
    let words = |(width, state): &(hopwright::units::Megahertz, String)| format!("{width} with {state}");
    assert!(each_mend(|mend| mend.bandwidth.clone(), words, make) > 0);
}

#[test]
fn the_capacity_that_is_named_is_small_enough() {
    let make = |bench: &Bench, (rate, _): &(hopwright::units::MegabitsPerSecond, String)| {
        set(bench, "network.yaml", "objectives:", "capacity:", &rate.to_string());
    };
    let words = |(rate, state): &(hopwright::units::MegabitsPerSecond, String)| format!("{rate} ({state})");
    assert!(each_mend(|mend| mend.capacity.clone(), words, make) > 0);
}

#[test]
fn the_length_that_is_named_is_short_enough() {
    let degrees = |bench: &Bench, file: &str, key: &str| {
        let text = fs::read_to_string(bench.path(file)).expect("there");
        let (_, after) = text.split_once(key).expect("a position");
        after.trim_start().split(' ').next().expect("a number").parse::<f64>().expect("a number")
    };
    let position = |bench: &Bench, file: &str| Position {
        latitude: Latitude(degrees(bench, file, "latitude:")),
        longitude: Longitude(degrees(bench, file, "longitude:")),
    };
    let make = |bench: &Bench, length: &hopwright::units::Metres| {
        let (scar, mill) = (position(bench, "sites/scar.yaml"), position(bench, "sites/mill.yaml"));
        let place = between(scar, mill, length.0 / inverse(scar, mill).expect("apart").distance.0);
        set(bench, "sites/mill.yaml", "position:", "latitude:", &format!("{:.9} deg", place.latitude.0));
        set(bench, "sites/mill.yaml", "position:", "longitude:", &format!("{:.9} deg", place.longitude.0));
    };
    assert!(each_mend(|mend| mend.distance, |length| format!("a hop of {length}"), make) > 0);
}

#[test]
fn the_pipe_that_is_named_holds_still() {
    each_help("sway-too-great", "outside, wall", |bench, help| {
        let parts: Vec<&str> = help.split(['(', ')']).collect();
        let (outside, wall) = parts[1].split_once(" outside, wall ").expect("both");
        set(
            bench,
            "sites/scar.yaml",
            "supports:",
            "outside_diameter:",
            &format!("{outside}\n    wall_thickness: {wall}"),
        );
    });
}

#[test]
fn the_diameter_that_a_pipe_measures_is_a_diameter() {
    each_help("nominal-size-as-diameter", "write ", |bench, help| {
        set(bench, "sites/scar.yaml", "supports:", "outside_diameter:", &format!("{} mm", number(help, "mm")));
    });
}

/// The number before a unit in a help.
fn number(help: &str, unit: &str) -> String {
    let words: Vec<&str> = help.split_whitespace().collect();
    let at = words.iter().position(|word| word.trim_end_matches([',', ';']) == unit);
    words[at.unwrap_or_else(|| panic!("no {unit} in: {help}")) - 1].to_owned()
}

/// Makes the fix that the help of a rule names, for every edit that breaks it and whose help has the words.
fn each_help(rule: &str, having: &str, make: impl Fn(&Bench, &str)) {
    let mut count = 0;
    for edit in broken(rule) {
        let bench = Bench::edited(&edit);
        let said = bench.help(rule).expect("broken");
        if said.contains(having) {
            make(&bench, &said);
            assert_eq!(bench.help(rule), None, "{}: {said}", edit.why);
            count += 1;
        }
    }
    assert!(count > 0, "{rule} never says `{having}`");
}

#[test]
fn the_power_that_does_not_overload_does_not() {
    each_help("level-above-overload", "or less", |bench, help| {
        set(bench, "hops/ridge.yaml", "\n  a:", "transmit_power:", &format!("{} dBm", number(help, "dBm")));
    });
}

#[test]
fn the_power_to_align_with_brings_the_window_onto_the_meter() {
    each_help("level-off-readout", "align with", |bench, help| {
        set(bench, "hops/ridge.yaml", "\n  b:", "transmit_power:", &format!("{} dBm", number(help, "dBm")));
    });
}

#[test]
fn the_window_that_is_named_is_wide_enough() {
    each_help("acceptance-window-too-tight", "or more", |bench, help| {
        set(bench, "network.yaml", "objectives:", "acceptance_window:", &format!("{} dB", number(help, "dB")));
    });
}

#[test]
fn the_bandwidth_that_carries_the_capacity_does() {
    each_help("capacity-out-of-reach", " at ", |bench, help| {
        set(bench, "hops/ridge.yaml", "channel:", "bandwidth:", &format!("{} MHz", number(help, "MHz")));
    });
}
