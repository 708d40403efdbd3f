//! What lies between radio and antenna, gain by frequency, near field, and gas in other air: from files to numbers.

use std::collections::HashMap;

use crate::fixture::Bench;

const HOP: &str = "hops/ridge.yaml";
const ANTENNAS: &str = "equipment/mounting.yaml";

/// The number of a line.
fn number(numbers: &HashMap<String, f64>, key: &str) -> f64 {
    *numbers.get(key).unwrap_or_else(|| panic!("no number for {key}"))
}

/// How much a line moves by some changes.
fn moved(changes: &[(&str, &str, &str)], key: &str) -> f64 {
    number(&Bench::with(changes).numbers(), key) - number(&Bench::new().numbers(), key)
}

/// Something between the radio and the antenna of end a, and of end b.
const AT_A: (&str, &str, &str) = (
    HOP,
    "transmit_power: 10 dBm",
    "transmit_power: 10 dBm\n    losses: [{ title: Flexible guide, loss: 0.8 dB }, { title: \"Coupler, main branch\", loss: 1.6 dB }]",
);
const AT_B: (&str, &str, &str) =
    (HOP, "transmit_power: 12 dBm", "transmit_power: 12 dBm\n    losses: [{ title: Coupler, loss: 6.4 dB }]");

fn near(one: f64, other: f64) {
    assert!((one - other).abs() < 1e-9, "{one}, not {other}");
}

#[test]
fn what_lies_between_radio_and_antenna_takes_from_both_directions() {
    for way in ["a_to_b", "b_to_a"] {
        let level = format!("{way}.level");
        near(moved(&[AT_A], &level), -2.4);
        near(moved(&[AT_B], &level), -6.4);
        near(moved(&[AT_A, AT_B], &level), -8.8);
        near(moved(&[AT_A, AT_B], &format!("{way}.margins.fade_margin")), -8.8);
    }
    let both = Bench::with(&[AT_A, AT_B]).numbers();
    near(number(&both, "a_to_b.transmit_loss"), 2.4);
    near(number(&both, "a_to_b.receive_loss"), 6.4);
    near(number(&both, "b_to_a.transmit_loss"), 6.4);
    near(number(&both, "b_to_a.receive_loss"), 2.4);
    assert!(!Bench::new().numbers().contains_key("a_to_b.transmit_loss"));
}

#[test]
fn what_is_lost_before_the_antenna_is_not_radiated() {
    near(moved(&[AT_A], "a_to_b.licence.eirp"), -2.4);
    near(moved(&[AT_A], "b_to_a.licence.eirp"), 0.0);
    // EN 302 217 has a ceiling on the power itself, 15 dB below the gain, which losses do not lift.
    let ceiling = (HOP, "channel:", "licence:\n  max_eirp: 55 dBm\n\nchannel:");
    let highest =
        |changes: &[(&str, &str, &str)]| number(&Bench::with(changes).numbers(), "a_to_b.licence.highest_power");
    near(highest(&[AT_A, ceiling]) - highest(&[ceiling]), 2.4);
    near(moved(&[AT_A], "a_to_b.licence.codes[0].port_power_limit"), 0.0);
    near(moved(&[AT_A], "a_to_b.licence.codes[0].eirp_limit"), 0.0);
}

#[test]
fn the_parts_are_named_in_the_budget() {
    let bench = Bench::with(&[AT_A]);
    let said = hopwright::verdict::evaluate(&hopwright::network::Scope::of(&[bench.path("")]), |sheet, _| {
        let there = &sheet.directions.a.lines;
        (there.transmit_losses.value().expect("known").to_string(), there.receive_losses.value().is_err())
    });
    let (names, none) = said.hops.into_iter().next().expect("a hop");
    assert_eq!(names, "Flexible guide 0.8 dB, Coupler, main branch 1.6 dB");
    assert!(none);
}

/// The larger dish with its gain stated at the lower frequency, or in a table.
fn gain(more: &str) -> (&'static str, &'static str, String) {
    (ANTENNAS, "id: dish-60\n", format!("id: dish-60\n{more}\n"))
}

#[test]
fn a_gain_with_its_frequency_differs_between_the_halves() {
    let (file, old, new) = gain("gain_at: 73.375 GHz");
    let changes = [(file, old, new.as_str())];
    let more = 20.0 * (83.375_f64 / 73.375).log10();
    near(moved(&changes, "a_to_b.level"), 0.0);
    assert!((moved(&changes, "b_to_a.level") - more).abs() < 1e-6);
    assert!((moved(&changes, "b_to_a.receive_gain") - more).abs() < 1e-6);
    near(moved(&changes, "b_to_a.licence.eirp"), 0.0);
}

#[test]
fn a_table_of_gains_stands_above_the_one_figure() {
    let (file, old, new) = gain(
        "gain_at: 60 GHz\ngain_by_frequency:\n  - { frequency: 73 GHz, gain: 49 dBi }\n  - { frequency: 84 GHz, gain: 51.2 dBi }",
    );
    let bench = Bench::with(&[(file, old, new.as_str())]);
    let numbers = bench.numbers();
    near(number(&numbers, "a_to_b.transmit_gain"), 49.075);
    near(number(&numbers, "b_to_a.receive_gain"), 51.075);
    near(number(&numbers, "a_to_b.licence.eirp"), 59.075);
}

#[test]
fn ends_are_compared_by_what_the_levels_do_not_count() {
    let favour = |changes: &[(&str, &str, &str)]| {
        let bench = Bench::with(changes);
        let found = hopwright::verdict::evaluate(&hopwright::network::Scope::of(&[bench.path("")]), |sheet, _| {
            sheet.gain_in_favour_of_a().expect("two frequencies").0
        });
        found.hops.into_iter().next().expect("a hop")
    };
    let one = 20.0 * (83.375_f64 / 73.375).log10();
    near(favour(&[]), 2.0 * one);
    let (file, old, new) = gain("gain_at: 73.375 GHz");
    near(favour(&[(file, old, new.as_str())]), one);
}

/// The ends a hundred metres apart and level.
const CLOSE: [(&str, &str, &str); 5] = [
    (ANTENNAS, "beamwidth: 0.48 deg", "beamwidth: 0.48 deg\ndiameter: 600 mm"),
    (ANTENNAS, "beamwidth: 0.95 deg", "beamwidth: 0.95 deg\ndiameter: 300 mm"),
    ("sites/scar.yaml", "ground_height: 850 m", "ground_height: 363 m"),
    ("sites/mill.yaml", "latitude: 54.320000 deg", "latitude: 54.300500 deg"),
    ("sites/mill.yaml", "longitude: -32.170000 deg", "longitude: -32.200000 deg"),
];

#[test]
fn a_short_hop_loses_what_its_dishes_are_too_large_for() {
    let numbers = Bench::with(&CLOSE).numbers();
    for way in ["a_to_b", "b_to_a"] {
        let of = |line: &str| number(&numbers, &format!("{way}.{line}"));
        let lost = of("near_field_loss");
        assert!(lost > 0.5, "{lost}");
        let level =
            of("transmit_power") + of("transmit_gain") + of("receive_gain") - of("free_space_loss") - of("gas_loss");
        near(of("level"), level - lost);
    }
    assert!(number(&numbers, "b_to_a.near_field_loss") > number(&numbers, "a_to_b.near_field_loss"));
    assert!(!Bench::new().numbers().contains_key("a_to_b.near_field_loss"), "nothing is lost at three kilometres");
}

#[test]
fn gas_is_shown_in_the_coldest_and_the_hottest_air() {
    let cold = ("network.yaml", "  hottest_air: 35 °C", "  hottest_air: 35 °C\n  coldest_air: -25 °C");
    let oxygen = ("network.yaml", "climate:\n", "climate:\n  air: { humidity: 0 % }\n");
    let of = |changes: &[(&str, &str, &str)]| {
        let numbers = Bench::with(changes).numbers();
        ["a_to_b.gas.coldest", "a_to_b.gas_loss", "a_to_b.gas.hottest"].map(|key| number(&numbers, key))
    };
    // Warm air holds more water, which absorbs here; of dry air cold absorbs more.
    let [coldest, usual, hottest] = of(&[cold]);
    assert!(coldest < usual && usual < hottest, "{coldest}, {usual}, {hottest}");
    let [coldest, usual, hottest] = of(&[cold, oxygen]);
    assert!(coldest > usual && usual > hottest, "{coldest}, {usual}, {hottest}");
    assert!(!Bench::new().numbers().contains_key("a_to_b.gas.coldest"), "no coldest air is given");
}

/// A guide at end a, and of end b a cable.
fn feeders(a: &str, b: &str) -> Bench {
    let bench = Bench::new();
    bench.change(HOP, "transmit_power: 10 dBm", &format!("transmit_power: 10 dBm\n    feeder: {a}"));
    bench.change(HOP, "transmit_power: 12 dBm", &format!("transmit_power: 12 dBm\n    feeder: {b}"));
    let sheets = "kind: feeder\nid: guide\ntitle: Tamwick Flexguide 12\nconstruction: waveguide\nband: { min: 60 GHz, max: 90 GHz }\n\
                  loss_by_frequency:\n  - { frequency: 60 GHz, loss: 4 dB/m }\n  - { frequency: 80 GHz, loss: 3 dB/m }\n---\n\
                  kind: feeder\nid: cable\ntitle: Tamwick 1.85\nconstruction: coaxial\nband: { min: 1 GHz, max: 90 GHz }\n\
                  loss_by_frequency:\n  - { frequency: 40 GHz, loss: 900 dB/100m }\n";
    std::fs::write(bench.path("equipment/feeders.yaml"), sheets).expect("writable");
    bench
}

#[test]
fn a_feeder_takes_from_both_directions_by_its_length_and_the_frequency() {
    let bench = feeders("{ model: cable, length: 0.1 m }", "{ model: cable, length: 0.2 m }");
    bench.change(HOP, "feeder: { model: cable, length: 0.2 m }", "losses: [{ title: Coupler, loss: 1 dB }]");
    let (numbers, before) = (bench.numbers(), Bench::new().numbers());
    let (there, back) = (0.9 * (73.375_f64 / 40.0).sqrt(), 0.9 * (83.375_f64 / 40.0).sqrt());
    near(number(&numbers, "a_to_b.transmit_loss"), there);
    near(number(&numbers, "b_to_a.receive_loss"), back);
    near(number(&numbers, "a_to_b.receive_loss"), 1.0);
    near(number(&numbers, "a_to_b.level") - number(&before, "a_to_b.level"), -1.0 - there);
    near(number(&numbers, "b_to_a.level") - number(&before, "b_to_a.level"), -1.0 - back);
    near(number(&numbers, "a_to_b.licence.eirp") - number(&before, "a_to_b.licence.eirp"), -there);
    near(number(&numbers, "b_to_a.licence.eirp") - number(&before, "b_to_a.licence.eirp"), -1.0);
}

#[test]
fn a_guide_beyond_its_sheet_needs_its_size() {
    let bench = feeders("{ model: guide, length: 0.1 m }", "{ model: guide, length: 0.1 m }");
    let evaluation = bench.judge();
    let told = evaluation.findings.iter().find(|finding| finding.rule.name == "hop-not-evaluated").expect("told");
    assert!(told.message.contains("the feeder states no loss at this frequency"), "{}", told.message);
    let numbers = bench.numbers();
    // 73.375 GHz lies between its points, 83.375 GHz does not.
    let slope = (3.0_f64 / 4.0).ln() / (80.0_f64 / 60.0).ln();
    near(number(&numbers, "a_to_b.transmit_loss"), 0.4 * (73.375_f64 / 60.0).powf(slope));
    assert!(!numbers.contains_key("b_to_a.transmit_loss") && !numbers.contains_key("b_to_a.level"));
    bench.change(
        "equipment/feeders.yaml",
        "max: 90 GHz }\nloss",
        "max: 90 GHz }\ninside: { width: 3.0988 mm, height: 1.5494 mm }\nloss",
    );
    let beyond = number(&bench.numbers(), "b_to_a.transmit_loss");
    assert!(beyond < 0.3 && beyond > 0.28, "{beyond}");
}
