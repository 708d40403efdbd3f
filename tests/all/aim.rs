//! What the sheet says of antennas: side lobes and what they read, the cost of aim, the tolerance of the level.

use crate::fixture::Bench;

fn near(found: f64, wanted: f64, within: f64) {
    assert!((found - wanted).abs() <= within, "{found} is not {wanted} ± {within}");
}

const DISH: (&str, &str, &str) =
    ("equipment/mounting.yaml", "beamwidth: 0.95 deg", "beamwidth: 0.95 deg\ndiameter: 300 mm");

/// End b listens at 73.375 GHz, λ = 4.0858 mm, with 300 mm: the lobes of `J1(u)/u` and `J2(u)/u²`, whose extremes lie at
/// 1.635 and 2.031 λ/D with -17.57 and -24.64 dB (Abramowitz and Stegun, table 9.1; independently computed).
#[test]
fn side_lobes_are_those_of_the_aperture() {
    let sheet = Bench::with(&[DISH]).numbers();
    let wavelength = 299.792_458 / 73.375;
    let angle = |factor: f64| f64::asin(factor * wavelength / 300.0).to_degrees();
    near(sheet["ends.b.side_lobes.first_null_least"], angle(1.22), 1e-9);
    near(sheet["ends.b.side_lobes.first_null_most"], angle(1.635), 1e-9);
    near(sheet["ends.b.side_lobes.side_lobe_most"], angle(2.031), 1e-9);
    near(sheet["ends.b.side_lobes.sweep"], 2.0 * angle(2.031), 1e-9);
    let level = sheet["ends.b.target_level"];
    near(sheet["ends.b.side_lobes.here.level_most"], level - 17.57, 1e-9);
    near(sheet["ends.b.side_lobes.here.level_least"], level - 24.64, 1e-9);
    near(sheet["ends.b.side_lobes.both.level_most"], level - 35.14, 1e-9);
    // 10 mV a decibel, from 0.30 V at -30 dBm.
    let volts = |level: f64| 0.30 + (-30.0 - level) / 100.0;
    near(sheet["ends.b.side_lobes.here.voltage_at_most"], volts(level - 17.57), 1e-9);
    near(sheet["ends.b.side_lobes.there.voltage_at_least"], volts(level - 24.64), 1e-9);
}

#[test]
fn readings_stop_where_the_meter_does() {
    let range = ("equipment/radio.yaml", "range: { min: 0.25 V, max: 0.9 V }", "range: { min: 0.25 V, max: 0.6 V }");
    let sheet = Bench::with(&[DISH, range]).numbers();
    near(sheet["ends.b.side_lobes.both.voltage_at_least"], 0.6, 0.0);
}

/// An antenna of which only the gain is known has the size that ITU-R F.699-8 gives it: `G = 20 lg(D/λ) + 7.7`.
#[test]
fn without_a_diameter_the_gain_gives_it() {
    let sheet = Bench::with(&[]).numbers();
    let ratio = f64::powf(10.0, (44.5 - 7.7) / 20.0);
    near(sheet["ends.b.side_lobes.side_lobe_least"], f64::asin(1.635 / ratio).to_degrees(), 1e-9);
}

#[test]
fn a_measured_pattern_counts_before_the_aperture() {
    let pattern = "pattern:\n  - { angle: 0.5 deg, below: 3 dB }\n  - { angle: 1.3 deg, below: 40 dB }\n  \
                   - { angle: 1.7 deg, below: 21 dB }\n  - { angle: 2.2 deg, below: 35 dB }";
    let measured = (DISH.0, DISH.1, format!("{}\n{pattern}", DISH.1));
    let sheet = Bench::with(&[(measured.0, measured.1, &measured.2)]).numbers();
    near(sheet["ends.b.side_lobes.first_null_least"], 1.3, 1e-12);
    near(sheet["ends.b.side_lobes.sweep"], 3.4, 1e-12);
    let level = sheet["ends.b.target_level"];
    near(sheet["ends.b.side_lobes.here.level_least"], level - 21.0, 1e-9);
    assert!(!sheet.contains_key("ends.b.side_lobes.envelope"), "the pattern is measured");
}

/// 12 (0.2/0.95)² and 12 (0.1/0.48)² (ITU-R F.699-8, main beam) come off the margin, not off the level.
#[test]
fn the_aim_costs_margin() {
    let before = Bench::with(&[]).numbers();
    let after = Bench::with(&[
        ("hops/ridge.yaml", "transmit_power: 10 dBm", "transmit_power: 10 dBm\n    aim_error: 0.1 deg"),
        ("hops/ridge.yaml", "transmit_power: 12 dBm", "transmit_power: 12 dBm\n    aim_error: 0.2 deg"),
    ])
    .numbers();
    let loss = 12.0 * (0.2 / 0.95_f64).powi(2) + 12.0 * (0.1 / 0.48_f64).powi(2);
    near(after["a_to_b.aim_loss"], loss, 1e-9);
    near(after["a_to_b.level"], before["a_to_b.level"], 0.0);
    near(after["b_to_a.states[0].margin"], before["b_to_a.states[0].margin"] - loss, 1e-9);
}

/// Limits of 2, 1, 0.5 and 1 dB: `2 √(4 + 1 + 0.25 + 1) / √3` (JCGM 100:2008, 4.3.7 and 5.1.2; clauses from memory).
#[test]
fn tolerances_add_as_squares() {
    let sheet = Bench::with(&[
        ("equipment/radio.yaml", "overload: -30 dBm", "overload: -30 dBm\ntransmit_tolerance: 2 dB"),
        ("equipment/radio.yaml", "level: -70 dBm }", "level: -70 dBm }\n  tolerance: 1 dB"),
        ("equipment/mounting.yaml", "gain: 50.5 dBi", "gain: 50.5 dBi\ngain_tolerance: 1 dB"),
        ("equipment/mounting.yaml", "gain: 44.5 dBi", "gain: 44.5 dBi\ngain_tolerance: 0.5 dB"),
    ])
    .numbers();
    near(sheet["ends.a.level_uncertainty"], 2.0 * 6.25_f64.sqrt() / 3.0_f64.sqrt(), 1e-12);
    near(sheet["ends.a.level_uncertainty"], sheet["ends.b.level_uncertainty"], 1e-12);
}
