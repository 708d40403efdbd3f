//! Levels, margins, minutes, and the voltmeter that shows them.

use hopwright::physics::emission::necessary_bandwidth;
use hopwright::physics::link::{availability, fade_margin, minutes_per_year, received_level, two_way};
use hopwright::physics::rain_outage::Outage;
use hopwright::physics::readout::{DegenerateScale, Scale};
use hopwright::units::{Dbi, Dbm, Decibels, Megahertz, Percent, Volts};

use super::table::rows;

#[test]
fn a_received_level_is_the_sum_of_what_helps_and_what_costs() {
    let losses = [Decibels(129.8), Decibels(0.4), Decibels(1.0)];
    let level = received_level(Dbm(14.0), [Dbi(43.5), Dbi(50.5)], &losses);
    assert!((level - Dbm(-23.2)).0.abs() < 1e-9);
    assert!((fade_margin(level, Dbm(-60.0)) - Decibels(36.8)).0.abs() < 1e-9);
    assert_eq!(fade_margin(Dbm(-65.0), Dbm(-60.0)), Decibels(-5.0));
}

#[test]
fn minutes_match_the_table() {
    for row in rows(include_str!("../../tables/outage_minutes.csv")) {
        row.check("minutes", minutes_per_year(Percent(row.number("outage"))).0, 1e-9);
    }
    assert_eq!(availability(Percent(0.5)), Percent(99.5));
}

#[test]
fn two_ways_are_out_as_long_as_the_worse_one() {
    let ordered =
        [Outage::Never, Outage::Below, Outage::Within(Percent(0.002)), Outage::Within(Percent(0.9)), Outage::Above];
    assert!(ordered.is_sorted());
    for pair in ordered.windows(2) {
        assert_eq!(two_way(pair[0], pair[1]), pair[1]);
        assert_eq!(two_way(pair[1], pair[0]), pair[1]);
    }
}

#[test]
fn the_common_voltmeter_scale_matches_the_table() {
    let scale = Scale::through((Volts(0.0), Dbm(0.0)), (Volts(1.0), Dbm(-100.0))).expect("a scale");
    assert!(!scale.rises());
    for row in rows(include_str!("../../tables/voltmeter.csv")) {
        row.check("volts", scale.volts(Dbm(row.number("level"))).0, 1e-12);
        row.check("level", scale.level(Volts(row.number("volts"))).0, 1e-12);
    }
}

#[test]
fn a_scale_is_the_same_from_either_end() {
    let (weak, strong) = ((Volts(0.2), Dbm(-80.0)), (Volts(0.5), Dbm(-20.0)));
    for scale in [Scale::through(weak, strong), Scale::through(strong, weak)] {
        let scale = scale.expect("a scale");
        assert!(scale.rises());
        assert!((scale.volts(Dbm(-50.0)) - Volts(0.35)).0.abs() < 1e-12);
        assert!((scale.level(Volts(0.35)) - Dbm(-50.0)).0.abs() < 1e-12);
    }
}

#[test]
fn two_equal_points_make_no_scale() {
    let scale = |a, b| Scale::through((Volts(0.2), Dbm(-20.0)), (Volts(a), Dbm(b))).map(|_| ());
    assert_eq!(scale(0.2, -80.0), Err(DegenerateScale));
    assert_eq!(scale(0.8, -20.0), Err(DegenerateScale));
    assert_eq!(scale(0.2, -20.0), Err(DegenerateScale));
    assert_eq!(scale(f64::NAN, -80.0), Err(DegenerateScale));
    assert_eq!(scale(0.8, -80.0), Ok(()));
}

#[test]
fn bandwidths_are_designated_as_the_radio_regulations_print_them() {
    for row in rows(include_str!("../../tables/necessary_bandwidth.csv")) {
        let designation = necessary_bandwidth(Megahertz(row.number("bandwidth_mhz")));
        assert_eq!(designation.as_deref(), Some(row.text("designation")));
    }
    assert_eq!(necessary_bandwidth(Megahertz(0.0)), None);
}
