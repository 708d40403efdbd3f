//! Dishes: gain, beam, side lobes, and the pattern around them.

use hopwright::physics::antenna::{
    ILLUMINATIONS, USUAL_EFFICIENCY, beam_of_gain, beamwidth, cross_polar_level, efficiency, electrical_diameter,
    estimated_diameter, estimated_gain, gain, gain_of_beam, measured_lobes, pointing_loss, polarisation_loss,
    side_lobes,
};
use hopwright::physics::pattern::{OutOfRange, average, peak_envelope};
use hopwright::units::{Dbi, Decibels, Degrees, Gigahertz, Millimetres};

use super::table::{Row, rows};

fn dish(row: &Row) -> (Gigahertz, Millimetres) {
    (Gigahertz(row.number("frequency")), Millimetres(row.number("diameter")))
}

#[test]
fn dishes_match_the_table() {
    for row in rows(include_str!("../../tables/dish.csv")) {
        let (f, diameter) = dish(&row);
        row.check_relative("beamwidth", beamwidth(f, diameter).0);
        row.check_relative("gain", gain(f, diameter, 0.55).0);
        row.check_relative("estimate", estimated_gain(f, diameter).0);

        let lobes = side_lobes(f, diameter).expect("a dish");
        let thousandth = |column| 1e-3 * row.number(column);
        row.check("null", lobes.first_null[0].0, thousandth("null"));
        row.check("side_lobe", lobes.first_null[1].0, thousandth("side_lobe"));
        row.check("side_lobe", lobes.first_side_lobe[0].0, thousandth("side_lobe"));
        row.check("tapered_side_lobe", lobes.first_side_lobe[1].0, thousandth("tapered_side_lobe"));
        assert_eq!(lobes.level, [Decibels(-17.57), Decibels(-24.64)]);
    }
    assert_eq!(side_lobes(Gigahertz(60.0), Millimetres(10.0)), None);
}

#[test]
fn apertures_match_the_table() {
    for (row, light) in rows(include_str!("../../tables/illumination.csv")).zip(ILLUMINATIONS) {
        row.check("beamwidth", light.beamwidth, 0.005);
        row.check("null", light.first_null, 5e-4);
        row.check("side_lobe", light.first_side_lobe, 5e-4);
        row.check("level", light.side_lobe_level.0, 0.005);
        row.check("efficiency", light.efficiency, 5e-4);
    }
}

#[test]
fn efficiency_is_what_the_gain_was_made_from() {
    let (f, diameter) = (Gigahertz(73.5), Millimetres(600.0));
    for eta in [0.3, 0.55, 1.0] {
        assert!((efficiency(f, diameter, gain(f, diameter, eta)) - eta).abs() < 1e-12);
    }
    assert!(USUAL_EFFICIENCY.contains(&efficiency(f, diameter, estimated_gain(f, diameter))));
    assert!(!USUAL_EFFICIENCY.contains(&efficiency(f, Millimetres(300.0), gain(f, diameter, 0.55))));
}

#[test]
fn beam_and_gain_agree() {
    for size in [200.0, 300.0, 600.0] {
        let (f, diameter) = (Gigahertz(73.5), Millimetres(size));
        let by_beam = gain_of_beam(beamwidth(f, diameter));
        assert!((by_beam - gain(f, diameter, 0.55)).0.abs() < 0.3);
        let narrow = gain_of_beam(Degrees(beamwidth(f, diameter).0 / 2.0));
        assert!(((narrow - by_beam).0 - 6.020_6).abs() < 1e-4);
    }
}

#[test]
fn pointing_losses_match_the_table() {
    for row in rows(include_str!("../../tables/pointing_loss.csv")) {
        let error = Degrees(row.number("error"));
        let loss = pointing_loss(error, Degrees(row.number("beamwidth")));
        assert_eq!(loss, pointing_loss(-error, Degrees(row.number("beamwidth"))));
        match row.text("used") {
            "yes" => row.check("loss", loss.expect("in the main beam").0, 1e-6),
            _ => assert_eq!(loss, None),
        }
    }
    assert!(pointing_loss(Degrees(0.9), Degrees(1.0)).is_some());
    assert_eq!(pointing_loss(Degrees(0.1), Degrees(0.0)), None);
}

#[test]
fn a_turned_feed_loses_little_and_lets_much_across() {
    for (turned, level) in [(1.0, -35.2), (2.0, -29.1), (3.0, -25.6), (5.0, -21.2), (10.0, -15.1)] {
        assert!((cross_polar_level(Degrees(turned)) - Decibels(level)).0.abs() < 0.05);
    }
    assert_eq!(polarisation_loss(Degrees(0.0)), Decibels(0.0));
    assert!((polarisation_loss(Degrees(45.0)) - Decibels(3.0103)).0.abs() < 1e-4);
    assert!(polarisation_loss(Degrees(90.0)) > Decibels(300.0));
    assert_eq!(cross_polar_level(Degrees(0.0)), Decibels(f64::NEG_INFINITY));
}

#[test]
fn patterns_match_the_table() {
    for row in rows(include_str!("../../tables/pattern.csv")) {
        let (f, diameter) = dish(&row);
        let (gain, angle) = (Dbi(row.number("gain")), Degrees(row.number("off_axis")));
        row.check_relative("electrical", electrical_diameter(f, diameter));
        row.check_relative("peak", peak_envelope(f, diameter, gain, angle).expect("in range").0);
        row.check_relative("mean", average(f, diameter, gain, angle).expect("in range").0);
    }
}

#[test]
fn patterns_fall_from_the_axis_and_the_mean_stays_below_the_peaks() {
    for (f, size) in [(23.0, 600.0), (60.0, 200.0), (73.5, 300.0), (73.5, 600.0), (86.0, 1200.0), (6.0, 1200.0)] {
        let (f, diameter) = (Gigahertz(f), Millimetres(size));
        let gain = estimated_gain(f, diameter);
        let (mut last_peak, mut last_mean) = (gain, gain);
        for hundredth in 0..=18_000 {
            let angle = Degrees(f64::from(hundredth) / 100.0);
            let peak = peak_envelope(f, diameter, gain, angle).expect("in range");
            let mean = average(f, diameter, gain, angle).expect("in range");
            let slack = Decibels(0.04);
            assert!(peak <= last_peak + slack && mean <= last_mean + slack && mean <= peak + slack, "{f} at {angle}");
            (last_peak, last_mean) = (peak, mean);
        }
        assert_eq!(peak_envelope(f, diameter, gain, Degrees(0.0)), Ok(gain));
    }
}

#[test]
fn the_branches_of_the_patterns_meet() {
    for (f, size) in [(23.0, 600.0), (38.0, 300.0), (60.0, 200.0), (60.0, 900.0), (73.5, 300.0), (83.5, 600.0)] {
        let (f, diameter) = (Gigahertz(f), Millimetres(size));
        let (ratio, gain) = (electrical_diameter(f, diameter), estimated_gain(f, diameter));
        let large = ratio > 100.0;
        let floor = if f > Gigahertz(70.0) { 120.0 } else { 48.0 };
        let jump = |pattern: fn(_, _, _, _) -> Result<Dbi, OutOfRange>, joint: f64| {
            let at = |angle| pattern(f, diameter, gain, Degrees(angle)).expect("in range");
            (at(joint - 1e-9) - at(joint + 1e-9)).0.abs()
        };
        let ledge = if large { 15.85 * ratio.powf(-0.6) } else { 100.0 / ratio };
        assert!(jump(peak_envelope, ledge) < 0.04 && jump(peak_envelope, floor) < 0.04, "{f}, {diameter}");
        let main_beam = 20.0 / ratio * (gain.0 - 2.0 - 15.0 * ratio.log10()).sqrt();
        assert!(jump(peak_envelope, main_beam) < 1e-6 && jump(average, floor) < 0.04);
        if large {
            assert!(jump(average, main_beam.max(12.02 * ratio.powf(-0.6))) < 0.04, "{f}, {diameter}");
        }
    }
}

#[test]
fn patterns_end_where_they_say() {
    let at = |f, diameter, angle| {
        let peak = peak_envelope(Gigahertz(f), Millimetres(diameter), Dbi(45.0), Degrees(angle)).map(|_| ());
        assert_eq!(peak, average(Gigahertz(f), Millimetres(diameter), Dbi(45.0), Degrees(angle)).map(|_| ()));
        peak
    };
    assert_eq!(at(1.0, 3000.0, 180.0), Ok(()));
    assert_eq!(at(86.0, 300.0, 0.0), Ok(()));
    assert_eq!(at(86.1, 300.0, 0.0), Err(OutOfRange::Frequency(Gigahertz(86.1))));
    assert_eq!(at(80.0, 0.0, 0.0), Err(OutOfRange::Diameter(Millimetres(0.0))));
    assert_eq!(at(80.0, 300.0, -0.1), Err(OutOfRange::Angle(Degrees(-0.1))));
    assert_eq!(at(80.0, 300.0, 180.1), Err(OutOfRange::Angle(Degrees(180.1))));
    // The floor begins later, and lower, above 70 GHz.
    let floor = |f| peak_envelope(Gigahertz(f), Millimetres(300.0), Dbi(44.0), Degrees(100.0)).expect("in range");
    assert!(floor(70.0) - floor(70.001) > Decibels(7.0));
}

#[test]
fn diameter_and_beam_follow_from_a_gain() {
    for size in [180.0, 300.0, 600.0] {
        let (f, diameter) = (Gigahertz(73.5), Millimetres(size));
        assert!((estimated_diameter(f, estimated_gain(f, diameter)).0 / size - 1.0).abs() < 1e-12);
    }
    for beam in [0.48, 0.95, 2.0] {
        assert!((beam_of_gain(gain_of_beam(Degrees(beam))).0 / beam - 1.0).abs() < 1e-12);
    }
}

#[test]
fn a_measured_pattern_has_its_first_dip_and_the_peak_behind() {
    let pattern = |points: &[(f64, f64)]| -> Vec<(Degrees, Decibels)> {
        points.iter().map(|(angle, below)| (Degrees(*angle), Decibels(*below))).collect()
    };
    let dish = pattern(&[(0.0, 0.0), (0.5, 3.0), (1.2, 38.0), (1.4, 25.0), (1.6, 21.5), (1.8, 24.0), (2.4, 40.0)]);
    let lobes = measured_lobes(&dish).expect("a lobe");
    assert_eq!((lobes.first_null[0], lobes.first_side_lobe[1]), (Degrees(1.2), Degrees(1.6)));
    assert_eq!(lobes.level, [Decibels(-21.5); 2]);
    // An envelope never dips, and a pattern that ends on the way up shows no peak.
    assert_eq!(measured_lobes(&pattern(&[(0.0, 0.0), (1.0, 12.0), (5.0, 30.0)])), None);
    assert_eq!(measured_lobes(&dish[..5]), None);
    assert_eq!(measured_lobes(&[]), None);
}
