//! What antennas lose that stand too close together, and gain over a band.

use hopwright::physics::antenna_gain::{by_frequency, scaled};
use hopwright::physics::free_space::wavelength;
use hopwright::physics::near_field::{EDGE_FIELD, Pair};
use hopwright::units::{Dbi, Decibels, Gigahertz, Metres, Millimetres};
use proptest::prelude::*;

use super::table::rows;

const F: Gigahertz = Gigahertz(73.5);

/// What a loss of less than a thousandth of a decibel is given as.
fn or_nothing(loss: f64) -> f64 {
    if loss < 1e-3 { 0.0 } else { loss }
}

#[test]
fn pairs_of_apertures_match_the_table() {
    let rows = rows(include_str!("../../tables/near_field.csv")).filter(|row| row.text("n") == "1");
    let mut seen = 0;
    for row in rows {
        let edge = row.number("edge_field");
        let far_field = 2.0 * 0.36 / wavelength(F).0;
        let distance = Metres(row.number("distance_over_far_field") * far_field);
        let pair =
            Pair::new(F, [Millimetres(600.0), Millimetres(600.0 * row.number("diameter_ratio"))], distance, edge);
        assert!((or_nothing(row.number("loss_pair_db")) > 0.0) == (pair.loss().expect("far enough").0 > 0.0));
        if or_nothing(row.number("loss_pair_db")) > 0.0 {
            row.check("loss_pair_db", pair.loss().expect("far enough").0, 6e-8);
        }
        row.check_relative("loss_pair_approx_db", pair.small_loss().0);
        seen += 1;
    }
    assert_eq!(seen, 52);
}

#[test]
fn whole_hops_match_the_table() {
    let rows = rows(include_str!("../../tables/near_field_hops.csv")).filter(|row| row.text("n") == "1");
    for row in rows {
        let diameters = ["diameter1_m", "diameter2_m"].map(|column| Millimetres((1000.0 * row.number(column)).round()));
        let edge = libm::exp10(row.number("edge_db") / 20.0);
        let f = Gigahertz(row.number("f_ghz"));
        let pair = Pair::new(f, diameters, Metres(row.number("distance_m")), edge);
        row.check("loss_pair_db", pair.loss().expect("far enough").0, 2e-8);
    }
}

#[test]
fn far_apart_nothing_is_lost_and_next_to_each_other_nobody_can_tell() {
    let loss = |metres: f64| Pair::new(F, [Millimetres(600.0); 2], Metres(metres), EDGE_FIELD).loss();
    assert_eq!(loss(20_000.0), Some(Decibels(0.0)));
    assert!(loss(2.5).is_some());
    for metres in [0.0, 0.5, f64::NAN] {
        assert_eq!(loss(metres), None, "{metres}");
    }
}

#[test]
fn the_gain_of_an_aperture_over_its_band_matches_the_table() {
    for row in rows(include_str!("../../tables/antenna_gain.csv")) {
        let [stated, used] = ["f0_ghz", "f_ghz"].map(|column| Gigahertz(row.number(column)));
        row.check_relative("gain_f_dbi", scaled(Dbi(row.number("gain_f0_dbi")), stated, used).0);
    }
}

#[test]
fn between_the_points_of_a_table_the_gain_is_straight_and_beyond_them_that_of_an_aperture() {
    let table = [(Gigahertz(86.0), Dbi(51.2)), (Gigahertz(71.0), Dbi(49.0)), (Gigahertz(76.0), Dbi(50.0))];
    let at = |f: f64| by_frequency(&table, Gigahertz(f)).expect("a table").0;
    for (f, gain) in [(71.0, 49.0), (76.0, 50.0), (86.0, 51.2), (73.5, 49.5), (81.0, 50.6)] {
        assert!((at(f) - gain).abs() < 1e-12, "{f}: {}", at(f));
    }
    assert!((at(35.5) - (49.0 - 20.0 * 2.0_f64.log10())).abs() < 1e-12);
    assert!((at(172.0) - (51.2 + 20.0 * 2.0_f64.log10())).abs() < 1e-12);
    assert_eq!(by_frequency(&[], F), None);
}

proptest! {
    /// Whichever end is called the first, and a path that is longer loses no more where the loss is no ripple.
    #[test]
    fn a_pair_is_the_same_from_both_ends(one in 100.0..1200.0_f64, two in 100.0..1200.0_f64, distance in 3.0..3000.0_f64) {
        let loss = |diameters: [f64; 2], distance| Pair::new(F, diameters.map(Millimetres), Metres(distance), EDGE_FIELD).loss();
        let (there, back) = (loss([one, two], distance), loss([two, one], distance));
        match (there, back) {
            (Some(there), Some(back)) => prop_assert!((there.0 - back.0).abs() < 1e-9, "{there:?}, {back:?}"),
            (there, back) => prop_assert_eq!(there, back),
        }
        let small = Pair::new(F, [one, two].map(Millimetres), Metres(distance), EDGE_FIELD).small_loss();
        if small.0 < 0.5 {
            let farther = loss([one, two], distance * 1.1).expect("far enough");
            prop_assert!(farther <= there.expect("far enough"));
        }
    }
}
