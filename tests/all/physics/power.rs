//! Power over the cable, and the wire it goes through.

use hopwright::physics::conductor::{
    copper_clad_aluminium_factor, gauge, gauge_at_least, resistance_per_km, temperature_factor,
};
use hopwright::physics::power_feed::{Feeder, NoOperatingPoint, Pairs, longest_run, operating_point};
use hopwright::sheet::Reason;
use hopwright::units::{
    Celsius, Metres, Ohms, OhmsPerKilometre, Percent, Quantity, SquareMillimetres, Volts, Watts, read,
};

use super::table::{Row, rows};

/// The feeder of a row of `power_feed.csv`.
fn feeder(row: &Row) -> Feeder {
    let words = format!("{} AWG", row.text("gauge"));
    let area = SquareMillimetres(read(SquareMillimetres::KIND, &words).expect("a gauge"));
    let mut conductor = resistance_per_km(area, Celsius(row.number("temperature")));
    if row.text("conductor") == "cca" {
        conductor.0 *= copper_clad_aluminium_factor(Percent(10.0));
    }
    let pairs = if row.text("pairs") == "4" { Pairs::Four } else { Pairs::Two };
    Feeder { pairs, conductor, inline: Ohms(row.number("inline")) }
}

#[test]
fn devices_get_the_voltage_the_standard_promises() {
    for row in rows(include_str!("../../tables/power_standard.csv")) {
        let (source, power) = (Volts(row.number("source")), Watts(row.number("load_power")));
        let point = operating_point(source, power, Ohms(row.number("loop"))).expect("it runs");
        row.check_relative("load", point.load.0);
        row.check_relative("source_power", point.source_power.0);
        row.check("standard_power", power.0, 0.1);
        if row.maybe("standard_load").is_some() {
            row.check("standard_load", point.load.0, 0.1);
        }
    }
}

#[test]
fn operating_points_match_the_table() {
    for row in rows(include_str!("../../tables/power_feed.csv")) {
        let (source, power) = (Volts(row.number("source")), Watts(row.number("power")));
        let resistance = feeder(&row).loop_resistance(Metres(row.number("length")));
        row.check_relative("loop", resistance.0);
        match operating_point(source, power, resistance) {
            Ok(point) => {
                row.check_relative("load", point.load.0);
                row.check_relative("current", point.current.0);
                row.check_relative("cable_loss", point.cable_loss.0);
                row.check_relative("source_power", point.source_power.0);
                // Both roots sum to the source voltage and multiply to R P.
                row.check_relative("low_root", (source - point.load).0);
                let product = point.load.0 * row.number("low_root");
                assert!((product / (resistance.0 * power.0) - 1.0).abs() < 1e-6);
            }
            Err(NoOperatingPoint { most_power }) => {
                row.check_relative("most_power", most_power.0);
                assert_eq!(row.maybe("load"), None);
                assert!(most_power < power);
            }
        }
    }
}

#[test]
fn a_loop_is_two_conductors_divided_by_the_pairs() {
    let one_conductor = Feeder { pairs: Pairs::One, conductor: OhmsPerKilometre(93.8), inline: Ohms(0.62) };
    let ohms = |pairs| Feeder { pairs, ..one_conductor }.loop_resistance(Metres(100.0));
    assert_eq!([Pairs::One, Pairs::Two, Pairs::Four].map(ohms), [20.0, 10.0, 5.0].map(Ohms));
}

#[test]
fn a_load_runs_up_to_the_most_power_and_no_further() {
    let (source, resistance) = (Volts(48.0), Ohms(10.0));
    let edge = operating_point(source, Watts(57.6), resistance).expect("the most there is");
    assert_eq!(edge.load, Volts(24.0));
    let beyond = operating_point(source, Watts(57.7), resistance);
    assert_eq!(beyond, Err(NoOperatingPoint { most_power: Watts(57.6) }));
    let words = beyond.map_err(|limit| Reason::from(limit).to_string());
    assert_eq!(words, Err("no more than 57.6 W can reach the far end of the cable".into()));

    let idle = operating_point(source, Watts(0.0), resistance).expect("nothing to carry");
    assert_eq!((idle.load, idle.cable_loss), (source, Watts(0.0)));
    let dead = operating_point(Volts(0.0), Watts(0.0), resistance);
    assert_eq!(dead, Err(NoOperatingPoint { most_power: Watts(0.0) }));
}

#[test]
fn the_longest_run_leaves_just_the_least_voltage() {
    for row in rows(include_str!("../../tables/longest_run.csv")) {
        let (source, power) = (Volts(row.number("source")), Watts(row.number("power")));
        let (minimum, conductor) = (Volts(row.number("minimum")), OhmsPerKilometre(row.number("conductor")));
        let bare = Feeder { pairs: Pairs::Two, conductor, inline: Ohms(0.0) };
        row.check("length", longest_run(source, power, minimum, &bare).expect("some length").0, 0.05);

        for pairs in [Pairs::One, Pairs::Two, Pairs::Four] {
            let feeder = Feeder { pairs, inline: Ohms(0.4), ..bare };
            let length = longest_run(source, power, minimum, &feeder).expect("some length");
            let point = operating_point(source, power, feeder.loop_resistance(length)).expect("it runs");
            assert!((point.load - minimum).0.abs() < 1e-9, "{} is left, not {minimum}", point.load);
        }
    }
}

#[test]
fn no_run_is_long_enough_for_too_high_a_voltage() {
    let feeder = Feeder { pairs: Pairs::Two, conductor: OhmsPerKilometre(93.8), inline: Ohms(1.0) };
    let run = |minimum| longest_run(Volts(48.0), Watts(25.0), Volts(minimum), &feeder);
    assert_eq!(run(50.0), None);
    assert_eq!(run(47.9), None);
    // Below half of the source the load collapses, whatever it would accept.
    assert_eq!(run(10.0), run(24.0));
}

#[test]
fn gauges_match_the_table_both_ways() {
    for row in rows(include_str!("../../tables/gauge.csv")) {
        let name = format!("{} AWG", row.text("gauge"));
        let area = SquareMillimetres(read(SquareMillimetres::KIND, &name).expect("a gauge"));
        row.check_relative("area", area.0);
        row.check("number", gauge(area), 1e-9);
        row.check_relative("resistance", resistance_per_km(area, Celsius(20.0)).0);
        assert_eq!(gauge_at_least(area), Some(name));
    }
}

#[test]
fn metric_sizes_are_named_by_the_next_thicker_gauge() {
    let name = |area| gauge_at_least(SquareMillimetres(area));
    assert_eq!(name(16.0).as_deref(), Some("5 AWG"));
    assert_eq!(name(4.0).as_deref(), Some("11 AWG"));
    assert_eq!(name(50.0).as_deref(), Some("1/0 AWG"));
    // 16 AWG is 1.309 mm² and printed as 1.31 mm².
    assert_eq!(name(1.31).as_deref(), Some("16 AWG"));
    assert_eq!(name(0.0).as_deref(), Some("40 AWG"));
    assert_eq!(name(120.0), None);
}

#[test]
fn hot_copper_and_clad_aluminium_resist_more() {
    assert!((temperature_factor(Celsius(60.0)) - 1.1572).abs() < 1e-12);
    assert!((copper_clad_aluminium_factor(Percent(10.0)) - 1.541).abs() < 5e-4);
    assert!((copper_clad_aluminium_factor(Percent(15.0)) - 1.496).abs() < 5e-4);
    assert!((copper_clad_aluminium_factor(Percent(100.0)) - 1.0).abs() < 1e-12);
}
