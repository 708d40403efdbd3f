//! Radios that pass power on, and the classes of power over Ethernet.

use hopwright::physics::conductor::resistance_per_km;
use hopwright::physics::ethernet_power::{CLASSES, by_number, for_draw};
use hopwright::physics::power_chain::{Chain, Onward, Wants, settle};
use hopwright::physics::power_feed::{Feeder, Pairs, longest_run, operating_point};
use hopwright::units::{Celsius, Metres, Ohms, OhmsPerKilometre, SquareMillimetres, Volts, Watts};
use proptest::prelude::{prop_assert, prop_assume, proptest};

use super::table::rows;

#[test]
fn chains_settle_as_the_table_says() {
    for row in rows(include_str!("../../tables/power_chain.csv")) {
        let onward = Onward {
            loop_resistance: Ohms(row.number("onward_loop")),
            draw: Watts(row.number("onward_power")),
            onward: Vec::new(),
        };
        let source = Volts(row.number("source"));
        let settled = settle(source, Ohms(row.number("loop")), Watts(row.number("power")), &[onward]);
        assert_eq!(settled.is_ok(), row.maybe("load").is_some());
        let Ok(chain) = settled else { continue };
        row.check_relative("load", chain.first.load.0);
        row.check_relative("onward_load", chain.onward[0].first.load.0);
        row.check_relative("current", chain.first.current.0);
        row.check_relative("onward_current", chain.onward[0].first.current.0);
        row.check_relative("source_power", chain.first.source_power.0);
    }
}

#[test]
fn nothing_fed_onward_is_the_plain_feed() {
    let plain = operating_point(Volts(48.0), Watts(25.0), Ohms(8.4)).expect("it runs");
    assert_eq!(settle(Volts(48.0), Ohms(8.4), Watts(25.0), &[]).expect("it runs").first, plain);
    // A device of no power is none, but for the last bits of the iteration.
    let idle = Onward { loop_resistance: Ohms(1.0), draw: Watts(0.0), onward: Vec::new() };
    let chain = settle(Volts(48.0), Ohms(8.4), Watts(25.0), &[idle]).expect("it runs");
    assert!((chain.first.load - plain.load).0.abs() < 1e-9);
}

#[test]
fn a_chain_runs_up_to_its_edge_and_no_further() {
    // A loop of nothing in between makes the two loads one, and the edge is that of one: V² = 4 R P.
    let second = |watts| [Onward { loop_resistance: Ohms(0.0), draw: Watts(watts), onward: Vec::new() }];
    let edge = settle(Volts(48.0), Ohms(10.0), Watts(30.0), &second(27.599_999)).expect("just");
    assert!((edge.first.load.0 - 24.0).abs() < 0.01, "{}", edge.first.load);
    assert!(settle(Volts(48.0), Ohms(10.0), Watts(30.0), &second(27.601)).is_err());
    assert!(settle(Volts(0.0), Ohms(10.0), Watts(30.0), &second(1.0)).is_err());
}

/// Three radios one behind the other, a camera on the middle one.
fn lamp_posts(draw: [f64; 4]) -> Vec<Onward> {
    let device = |loops, draw, onward| Onward { loop_resistance: Ohms(loops), draw: Watts(draw), onward };
    let last = device(0.3, draw[2], Vec::new());
    let camera = device(1.1, draw[3], Vec::new());
    vec![device(0.2, draw[1], vec![last, camera])]
}

/// Ohm and Kirchhoff, node by node.
fn holds(before: Volts, loops: Ohms, draw: Watts, devices: &[Onward], chain: &Chain) {
    let passed: f64 = chain.onward.iter().map(|next| next.first.current.0).sum();
    let current = draw.0 / chain.first.load.0 + passed;
    assert!((current - chain.first.current.0).abs() < 1e-9);
    assert!((before.0 - loops.0 * current - chain.first.load.0).abs() < 1e-9);
    assert!((chain.first.source_power.0 - before.0 * current).abs() < 1e-9);
    assert_eq!(devices.len(), chain.onward.len());
    for (device, next) in devices.iter().zip(&chain.onward) {
        holds(chain.first.load, device.loop_resistance, device.draw, &device.onward, next);
    }
}

#[test]
fn a_chain_of_any_length_obeys_ohm_and_kirchhoff_and_is_the_highest_such() {
    let devices = lamp_posts([0.0, 20.0, 18.0, 7.0]);
    let chain = settle(Volts(52.0), Ohms(3.0), Watts(25.0), &devices).expect("it runs");
    holds(Volts(52.0), Ohms(3.0), Watts(25.0), &devices, &chain);
    // Whoever starts at the source and lets the voltages sink comes to the highest solution and stops there.
    let mut volts = [52.0; 4];
    for _ in 0..500 {
        let [v1, v2, v3, v4] = volts;
        let (i3, i4) = (18.0 / v3, 7.0 / v4);
        let i2 = 20.0 / v2 + i3 + i4;
        let i1 = 25.0 / v1 + i2;
        volts = [52.0 - 3.0 * i1, v1 - 0.2 * i2, v2 - 0.3 * i3, v2 - 1.1 * i4];
    }
    let second = &chain.onward[0];
    let settled = [&chain, second, &second.onward[0], &second.onward[1]].map(|at| at.first.load.0);
    for (one, other) in volts.iter().zip(settled) {
        assert!((one - other).abs() < 1e-9, "{volts:?} {settled:?}");
    }
    // Without resistance in between all of them are one load: V² = 4 R P at the edge.
    let none = |watts: f64| {
        let last = Onward { loop_resistance: Ohms(0.0), draw: Watts(watts), onward: Vec::new() };
        let middle = Onward { loop_resistance: Ohms(0.0), draw: Watts(20.0), onward: vec![last] };
        settle(Volts(48.0), Ohms(10.0), Watts(10.0), &[middle])
    };
    assert!(none(27.599).is_ok() && none(27.601).is_err());
}

#[test]
fn the_most_loop_is_that_of_the_longest_run() {
    let feeder = Feeder { pairs: Pairs::Two, conductor: OhmsPerKilometre(97.454), inline: Ohms(0.4) };
    let length = longest_run(Volts(48.0), Watts(25.0), Volts(37.0), &feeder).expect("some");
    let wants = Wants { own: Watts(25.0), least: Volts(37.0), onward: Vec::new() };
    let most = wants.most_loop(Volts(48.0)).expect("some");
    assert!((most.0 - feeder.loop_resistance(length).0).abs() < 1e-9, "{most}");
    // Back from the loop to the source.
    assert!((wants.least_source(most).expect("some").0 - 48.0).abs() < 1e-9);
    assert_eq!(Wants { least: Volts(48.1), ..wants.clone() }.most_loop(Volts(48.0)), None);
    let idle = Wants { own: Watts(0.0), ..wants };
    assert!(idle.most_loop(Volts(48.0)).expect("any").0.is_infinite());
}

#[test]
fn classes_give_devices_what_the_standard_prints() {
    for row in rows(include_str!("../../tables/power_standard.csv")) {
        let class = by_number(row.text("class").parse().expect("a number")).expect("a class");
        assert_eq!(class.source_power, Watts(row.number("source_power")), "class {}", class.number);
        assert_eq!(class.device_power, Watts(row.number("standard_power")), "class {}", class.number);
        assert_eq!(class.source_voltage, Volts(row.number("source")), "class {}", class.number);
        assert_eq!(class.pairs.to_string(), row.text("pairs"));
    }
    assert_eq!(CLASSES.map(|class| class.number), [0, 1, 2, 3, 4, 5, 6, 7, 8]);
    assert_eq!(by_number(9), None);
    assert_eq!(for_draw(Watts(25.5)).map(|class| class.number), Some(4));
    assert_eq!(for_draw(Watts(25.6)).map(|class| class.number), Some(5));
    assert_eq!(for_draw(Watts(71.4)), None);
}

proptest! {
    /// Longer, thinner or hotter never raises a voltage, nor does a heavier load at the end of the chain.
    #[test]
    fn nothing_that_resists_more_raises_a_voltage(
        length in 1.0..150.0_f64, more in 0.0..100.0_f64,
        area in 0.1..0.5_f64, thinner in 0.3..1.0_f64,
        celsius in -40.0..60.0_f64, hotter in 0.0..30.0_f64,
        own in 1.0..60.0_f64, onward in 0.0..30.0_f64, heavier in 0.0..10.0_f64,
    ) {
        let volts = |length: f64, area: f64, celsius: f64, onward: f64| {
            let conductor = resistance_per_km(SquareMillimetres(area), Celsius(celsius));
            let feeder = Feeder { pairs: Pairs::Four, conductor, inline: Ohms(0.6) };
            let device = Onward { loop_resistance: Ohms(0.5), draw: Watts(onward), onward: Vec::new() };
            settle(Volts(52.0), feeder.loop_resistance(Metres(length)), Watts(own), &[device]).ok()
        };
        let Some(base) = volts(length, area, celsius, onward) else { return Ok(()) };
        prop_assume!(base.first.load.0 > 0.0);
        let changed = [
            volts(length + more, area, celsius, onward),
            volts(length, area * thinner, celsius, onward),
            volts(length, area, celsius + hotter, onward),
            volts(length, area, celsius, onward + heavier),
        ];
        for worse in changed.into_iter().flatten() {
            prop_assert!(worse.first.load.0 <= base.first.load.0 + 1e-9);
            prop_assert!(worse.onward[0].first.load.0 <= base.onward[0].first.load.0 + 1e-9);
            prop_assert!(worse.first.source_power.0 >= base.first.source_power.0 - 1e-9);
        }
    }
}
