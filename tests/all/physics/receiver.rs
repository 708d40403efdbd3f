//! Noise, thresholds, interference, and tolerances.

use hopwright::physics::interference::{degradation, sum};
use hopwright::physics::receiver::{Plausibility, judge_threshold, noise, shannon_limit, thermal_noise, uncoded};
use hopwright::physics::uncertainty::{combined, expanded, from_limits};
use hopwright::units::{Dbm, Decibels, Megahertz};

use super::table::rows;

#[test]
fn noise_and_degradation_match_the_table() {
    for row in rows(include_str!("../../tables/receiver.csv")) {
        let bandwidth = Megahertz(row.number("bandwidth"));
        row.check_relative("noise", noise(bandwidth, Decibels(row.number("noise_figure"))).0);
        row.check_relative("degradation", degradation(Decibels(row.number("over_noise"))).0);
    }
    for (bandwidth, level) in [(28.0, -99.50), (250.0, -90.00), (2000.0, -80.96)] {
        assert!((thermal_noise(Megahertz(bandwidth)) - Dbm(level)).0.abs() < 0.005);
    }
    let threshold = noise(Megahertz(500.0), Decibels(8.0)) + Decibels(26.0);
    assert!((threshold - Dbm(-52.99)).0.abs() < 0.005);
}

#[test]
fn signal_over_noise_matches_the_table() {
    for row in rows(include_str!("../../tables/signal_over_noise.csv")) {
        let bits = row.text("bits").parse().expect("a small number");
        row.check("shannon", shannon_limit(bits).0, 5.01e-7);
        row.check("uncoded", uncoded(bits).expect("in use").0, 1e-9);
        assert!(shannon_limit(bits) < uncoded(bits).expect("in use"));
    }
    assert_eq!(uncoded(3), None);
}

#[test]
fn interferers_add_as_powers() {
    let of = |levels: &[f64]| sum(levels.iter().copied().map(Dbm));
    assert!((of(&[-90.0, -90.0]).expect("a level") - Dbm(-86.989_7)).0.abs() < 1e-4);
    assert!((of(&[-90.0, -200.0]).expect("a level") - Dbm(-90.0)).0.abs() < 1e-9);
    assert_eq!(of(&[-90.0]), Some(Dbm(-90.0)));
    assert_eq!(of(&[]), None);
    assert_eq!(of(&[-5000.0]), None);
    let (noise, interference) = (Dbm(-80.0), Dbm(-85.0));
    let together = of(&[noise.0, interference.0]).expect("a level");
    assert!((degradation(interference - noise) - (together - noise)).0.abs() < 1e-12);
    assert_eq!(degradation(Decibels(f64::NEG_INFINITY)), Decibels(0.0));
}

#[test]
fn thresholds_are_judged_by_noise_and_constellation() {
    let floor = noise(Megahertz(500.0), Decibels(8.0));
    let judge = |snr, bits| judge_threshold(floor + Decibels(snr), floor, bits);
    assert_eq!(judge(26.0, 8), Plausibility::Plausible);
    assert_eq!(judge(21.5, 8), Plausibility::Impossible);
    assert_eq!(judge(37.5, 8), Plausibility::Plausible);
    assert_eq!(judge(37.7, 8), Plausibility::Suspicious);
    assert_eq!(judge(7.5, 3), Plausibility::Plausible);
    assert_eq!(judge(7.3, 3), Plausibility::Impossible);
    assert_eq!(judge(60.0, 3), Plausibility::Plausible);
}

#[test]
fn tolerances_add_as_squares() {
    let parts = [3.0, -4.0, 12.0].map(Decibels);
    assert!((combined(&parts) - Decibels(13.0)).0.abs() < 1e-12);
    assert_eq!(combined(&[]), Decibels(0.0));
    assert_eq!(combined(&[Decibels(-2.0)]), Decibels(2.0));
    assert!((from_limits(Decibels(3.0)) - Decibels(1.732_05)).0.abs() < 1e-5);
    assert_eq!(expanded(Decibels(1.5), 2.0), Decibels(3.0));
}
