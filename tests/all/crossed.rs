//! Two carriers of crossed polarisations on one channel, and the hysteresis of a state.

use std::collections::HashMap;

use crate::fixture::{Bench, Edit, tests_folder};

const RADIO: &str = "equipment/radio.yaml";
const HOP: &str = "hops/ridge.yaml";
const QPSK: &str = "carrier_to_interference: 14 dB";
const HEAVY: (&str, &str, &str) = ("network.yaml", "rain_rate: 22 mm/h", "rain_rate: 90 mm/h");

/// The hop of 18 GHz that `crossing-not-judged` keeps quiet at, with some changes more.
fn at_18_ghz(changes: &[(&str, &str, &str)]) -> HashMap<String, f64> {
    let bench = Bench::edited(&Edit::read(&tests_folder().join("rules/crossing-not-judged/good.edit")));
    for (file, old, new) in changes {
        bench.change(file, old, new);
    }
    bench.numbers()
}

fn near(found: f64, wanted: f64) {
    assert!((found - wanted).abs() <= 1e-9 * wanted.abs().max(1.0), "{found} is not {wanted}");
}

#[test]
fn both_carriers_carry_and_rain_is_that_of_the_one_it_fades_more() {
    let dual = at_18_ghz(&[]);
    let horizontal = at_18_ghz(&[(HOP, "polarisation: dual", "polarisation: horizontal")]);
    near(dual["a_to_b.states[0].capacity"], 2.0 * horizontal["a_to_b.states[0].capacity"]);
    for line in ["a_to_b.rain_fade", "b_to_a.rain_fade", "a_to_b.states[0].rain_outage", "a_to_b.level"] {
        near(dual[line], horizontal[line]);
    }
    assert!(!horizontal.contains_key("a_to_b.crossed.rain"));
}

/// Two carriers are twice the power in front of an antenna.
#[test]
fn people_keep_clear_of_both_carriers() {
    let dual = at_18_ghz(&[]);
    let one = at_18_ghz(&[(HOP, "polarisation: dual", "polarisation: horizontal")]);
    near(dual["ends.a.people.at_cover"], 2.0 * one["ends.a.people.at_cover"]);
    near(dual["ends.a.people.set_power"], one["ends.a.people.set_power"]);
}

/// Worked by hand from the rain fade on the sheet: `U` = 15 + 30 lg f, `V` = 12.8 f^0.19, as ITU-R P.530-18 §4.2 has it.
#[test]
fn rain_takes_the_larger_of_its_fades_and_its_crossing() {
    let without = (RADIO, "cross_polar_cancelling: 20 dB", "cross_polar_cancelling: 0 dB");
    let needs = (RADIO, QPSK, "carrier_to_interference: 22 dB");
    let sheet = at_18_ghz(&[without, needs, HEAVY]);
    let (f, fade) = (18.2_f64, sheet["a_to_b.rain_fade"]);
    let equal = f64::powf(10.0, (15.0 + 30.0 * f.log10() - 22.0) / (12.8 * f.powf(0.19)));
    let m = 23.26 * (equal / (0.12 * fade)).log10();
    let crosses = f64::powf(10.0, f64::midpoint(-12.7, (161.23 - 4.0 * m).sqrt()));
    near(sheet["a_to_b.crossed.rain"], crosses);
    assert!(crosses > sheet["a_to_b.states[0].rain_outage"], "the other carrier breaks the state first");
    near(sheet["a_to_b.states[0].outage"], crosses);
    // With a canceller the fades do.
    let cancelled = at_18_ghz(&[needs, HEAVY]);
    assert!(cancelled["a_to_b.crossed.rain"] < cancelled["a_to_b.states[0].rain_outage"]);
    near(cancelled["a_to_b.states[0].outage"], cancelled["a_to_b.states[0].rain_outage"]);
}

/// What is to be 3 dB above the threshold before it is taken again is out as long as one with a threshold 3 dB higher.
#[test]
fn a_state_is_lost_until_the_level_is_back_above_its_hysteresis() {
    let slow = at_18_ghz(&[(RADIO, QPSK, "carrier_to_interference: 14 dB, hysteresis: 3 dB"), HEAVY]);
    let deaf = at_18_ghz(&[(RADIO, "threshold: -65 dBm", "threshold: -62 dBm"), HEAVY]);
    near(slow["a_to_b.states[0].rain_outage"], deaf["a_to_b.states[0].rain_outage"]);
    near(slow["a_to_b.states[0].margin"], deaf["a_to_b.states[0].margin"] + 3.0);
}

/// Over 5.3 km at 32 GHz, where layers of clear air cross the carriers too.
fn over_five_kilometres(needs: &str) -> HashMap<String, f64> {
    let bench = Bench::edited(&Edit::read(&tests_folder().join("rules/multipath-not-judged/good-stated.edit")));
    bench.change(HOP, "a_to_b: 38.25 GHz", "a_to_b: 32 GHz");
    bench.change(HOP, "b_to_a: 39.5 GHz", "b_to_a: 33 GHz");
    bench.change(HOP, "polarisation: vertical", "polarisation: dual");
    bench.change("equipment/mounting.yaml", "gain: 50.5 dBi", "gain: 50.5 dBi\ncross_polar: 30 dB");
    bench.change("equipment/mounting.yaml", "gain: 44.5 dBi", "gain: 44.5 dBi\ncross_polar: 33 dB");
    bench.change(RADIO, "threshold: -65 dBm", &format!("threshold: -65 dBm, carrier_to_interference: {needs}"));
    bench.numbers()
}

/// `P_XP` goes with 10^(C₀/I / 10), as ITU-R P.530-18 §4.1 has it; fades and crossing in clear air come one after the other.
#[test]
fn clear_air_takes_its_fades_and_its_crossing() {
    let (easy, hard) = (over_five_kilometres("14 dB"), over_five_kilometres("24 dB"));
    for line in ["a_to_b.crossed.clear_air", "a_to_b.crossed.clear_air_worst_month"] {
        assert!(easy[line] > 0.0);
        near(hard[line] / easy[line], 10.0);
    }
    near(hard["a_to_b.crossed.discrimination"], 30.0);
    near(hard["a_to_b.crossed.in_hand"], 6.0);
    let state = |line: &str| hard[&format!("a_to_b.states[0].{line}")];
    let rain = state("rain_outage").max(hard["a_to_b.crossed.rain"]);
    near(state("outage"), rain + state("multipath") + hard["a_to_b.crossed.clear_air"]);
    let both = |line: &str| hard[&format!("a_to_b.crossed.{line}")] + hard[&format!("b_to_a.crossed.{line}")];
    near(hard["service.crossing_clear_air"], both("clear_air"));
    near(hard["service.crossing_worst_month"], both("clear_air_worst_month"));
}
