//! The levels of a hop while a crew aligns and under automatic power control.

use crate::fixture::Bench;

const RADIO: &str = "equipment/radio.yaml";
const HOP: &str = "hops/ridge.yaml";

fn near(found: f64, wanted: f64) {
    assert!((found - wanted).abs() <= 1e-9, "{found} is not {wanted}");
}

/// 16QAM takes 2 dB off the power; QPSK, the most robust, nothing.
#[test]
fn the_level_to_align_to_is_that_of_the_state_a_radio_aligns_in() {
    let plain = Bench::with(&[]).numbers();
    near(plain["ends.b.target_level"], plain["a_to_b.level"]);
    let aligned = Bench::with(&[(RADIO, "overload: -30 dBm", "overload: -30 dBm\naligns_in: 16QAM")]).numbers();
    for line in ["target_level", "level_least", "level_most", "side_lobes.here.level_most"] {
        let line = format!("ends.b.{line}");
        near(aligned[&line], plain[&line] - 2.0);
    }
    // 10 mV a decibel, more for a weaker signal.
    near(aligned["ends.b.target_voltage"], plain["ends.b.target_voltage"] + 0.02);
    near(aligned["a_to_b.levels.align_level"], plain["a_to_b.level"] - 2.0);
    near(aligned["a_to_b.margins.fade_margin"], plain["a_to_b.margins.fade_margin"]);
}

#[test]
fn control_lowers_the_level_in_service_as_far_as_it_reaches_and_takes_no_margin() {
    let plain = Bench::with(&[]).numbers();
    let held = |level: &str, range: &str| {
        let hold = format!("transmit_power: 10 dBm\n    held_level: {level}");
        let range = format!("overload: -30 dBm\npower_control_range: {range}");
        Bench::with(&[(HOP, "transmit_power: 10 dBm", &hold), (RADIO, "overload: -30 dBm", &range)]).numbers()
    };
    // In a clear sky the hop stands in 16QAM.
    let clear = plain["a_to_b.level"] - 2.0;
    near(plain["a_to_b.levels.service_level"], clear);
    assert!(!plain.contains_key("a_to_b.levels.lowered"));
    let enough = held("-45 dBm", "20 dB");
    near(enough["a_to_b.levels.service_level"], -45.0);
    near(enough["a_to_b.levels.lowered"], clear + 45.0);
    near(held("-45 dBm", "3 dB")["a_to_b.levels.service_level"], clear - 3.0);
    // The radio sends -10 dBm at the least, 20 dB less than is set.
    near(held("-90 dBm", "60 dB")["a_to_b.levels.lowered"], 20.0);
    near(held("-20 dBm", "20 dB")["a_to_b.levels.lowered"], 0.0);
    for line in ["margins.fade_margin", "margins.overload_in_hand", "states[0].outage", "level"] {
        let line = format!("a_to_b.{line}");
        near(enough[&line], plain[&line]);
    }
    near(enough["ends.b.target_level"], plain["ends.b.target_level"]);
}
