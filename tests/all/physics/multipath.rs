//! Multipath fading in clear air.

use hopwright::physics::multipath::{ClearAirPath, Multipath, OutOfRange, SHORTEST, mean_terrain};
use hopwright::units::{Decibels, Gigahertz, Latitude, Metres, Percent};

use super::table::{Row, rows};

fn path(row: &Row) -> ClearAirPath {
    ClearAirPath {
        distance: Metres(1000.0 * row.number("distance_km")),
        frequency: Gigahertz(row.number("frequency")),
        antennas: ["antenna_1", "antenna_2"].map(|column| Metres(row.number(column))),
        terrain: Metres(row.number("terrain")),
        log_k: row.number("log_k"),
        dn_75: row.number("dn_75"),
    }
}

const HOP: ClearAirPath = ClearAirPath {
    distance: Metres(20_000.0),
    frequency: Gigahertz(18.0),
    antennas: [Metres(300.0), Metres(350.0)],
    terrain: Metres(200.0),
    log_k: -4.0,
    dn_75: 40.0,
};

#[test]
fn multipath_fades_match_the_table() {
    for row in rows(include_str!("../../tables/multipath.csv")) {
        let multipath = Multipath::new(&path(&row)).expect("in range");
        let (fade, latitude) = (Decibels(row.number("fade")), Latitude(row.number("latitude")));
        row.check_relative("occurrence", multipath.occurrence.0);
        row.check_relative("deep", multipath.worst_month_deep(fade).0);
        row.check_relative("transition", multipath.transition().0);
        row.check_relative("any", multipath.worst_month(fade).expect("a share").0);
        row.check_relative("delta_g", multipath.year_over_worst_month(latitude).0);
        if fade >= multipath.transition() {
            row.check_relative("year_deep", multipath.year(fade, latitude).expect("a share").0);
        }
    }
}

#[test]
fn swapping_the_ends_changes_no_multipath() {
    for row in rows(include_str!("../../tables/multipath.csv")) {
        let there = path(&row);
        let [near, far] = there.antennas;
        let back = ClearAirPath { antennas: [far, near], ..there };
        assert_eq!(Multipath::new(&there), Multipath::new(&back));
    }
}

#[test]
fn deeper_fades_are_rarer_and_both_laws_meet() {
    for row in rows(include_str!("../../tables/multipath.csv")) {
        let multipath = Multipath::new(&path(&row)).expect("in range");
        let share = |fade| multipath.worst_month(Decibels(fade)).expect("a share").0;
        assert!((0..600).map(|tenth| share(f64::from(tenth) / 10.0)).is_sorted_by(|a, b| a > b));
        let Decibels(joint) = multipath.transition();
        assert!((share(joint - 1e-9) / share(joint) - 1.0).abs() < 1e-8);
    }
}

#[test]
fn a_year_is_no_rarer_than_a_twelfth_of_its_worst_month() {
    for latitude in [-90, -60, -45, 0, 30, 45, 46, 60, 90] {
        for kilometres in [5.1, 10.0, 60.0, 180.0] {
            let distance = Metres(1000.0 * kilometres);
            let multipath =
                Multipath::new(&ClearAirPath { distance, log_k: -9.0, dn_75: 0.1, ..HOP }).expect("in range");
            assert!(multipath.year_over_worst_month(Latitude(f64::from(latitude))) <= Decibels(10.8));
        }
    }
    // Steep and short in the north: the formula alone would give 14 dB.
    let steep = ClearAirPath { distance: Metres(5100.0), antennas: [Metres(0.0), Metres(2000.0)], ..HOP };
    let multipath = Multipath::new(&steep).expect("in range");
    assert_eq!(multipath.year_over_worst_month(Latitude(60.0)), Decibels(10.8));
}

#[test]
fn multipath_is_modelled_where_it_says() {
    let at = |distance, frequency| {
        let path = ClearAirPath { distance: Metres(distance), frequency: Gigahertz(frequency), ..HOP };
        Multipath::new(&path).map(|_| ())
    };
    assert_eq!(at(5001.0, 45.0), Ok(()));
    assert_eq!(at(10_000.0, 1.5), Ok(()));
    assert_eq!(at(SHORTEST.0, 18.0), Err(OutOfRange::Short(SHORTEST)));
    assert_eq!(at(300.0, 73.5), Err(OutOfRange::Short(Metres(300.0))));
    assert_eq!(at(0.0, 18.0), Err(OutOfRange::Distance(Metres(0.0))));
    assert_eq!(at(185_001.0, 18.0), Err(OutOfRange::Distance(Metres(185_001.0))));
    assert_eq!(at(10_000.0, 45.1), Err(OutOfRange::Frequency(Gigahertz(45.1))));
    assert_eq!(at(10_000.0, 1.49), Err(OutOfRange::Frequency(Gigahertz(1.49))));
    assert!(at(f64::NAN, 18.0).is_err() && at(10_000.0, f64::NAN).is_err());

    let wild = Multipath::new(&ClearAirPath { log_k: 2.0, ..HOP });
    assert!(matches!(wild, Err(OutOfRange::Occurrence(share)) if share > Percent(2000.0)));
    assert!(Multipath::new(&ClearAirPath { log_k: f64::NAN, ..HOP }).is_err());
    let calm = Multipath::new(&ClearAirPath { log_k: f64::NEG_INFINITY, ..HOP }).expect("in range");
    assert_eq!(calm.worst_month(Decibels(3.0)), Some(Percent(0.0)));
    assert_eq!(calm.worst_month(Decibels(-0.1)), None);
}

/// The points of a profile, `0:33.4;0.564:6.9`.
fn points(row: &Row) -> Vec<(Metres, Metres)> {
    let number = |text: &str| text.parse::<f64>().expect("a number");
    let point = |text: &str| {
        let (distance, height) = text.split_once(':').expect("distance and height");
        (Metres(1000.0 * number(distance)), Metres(number(height)))
    };
    row.text("profile").split(';').map(point).collect()
}

#[test]
fn the_ground_of_a_profile_and_all_depths_of_the_year_match_the_table() {
    let mut computed = 0;
    for row in rows(include_str!("../../tables/multipath_profile.csv")) {
        let terrain = mean_terrain(&points(&row)).expect("a length");
        row.check_relative("ht_m", terrain.0);
        let path = ClearAirPath {
            distance: Metres(1000.0 * row.number("d_km")),
            frequency: Gigahertz(row.number("f_ghz")),
            antennas: ["he_m", "hr_m"].map(|column| Metres(row.number(column))),
            terrain,
            log_k: row.number("log10_k"),
            dn_75: row.number("dn75"),
        };
        if row.text("status") != "computed" {
            assert!(Multipath::new(&path).is_err(), "{}", row.text("status"));
            continue;
        }
        computed += 1;
        let (multipath, fade) = (Multipath::new(&path).expect("in range"), Decibels(row.number("fade_db")));
        row.check_relative("p0_pct", multipath.occurrence.0);
        row.check_relative("at_db", multipath.transition().0);
        row.check_relative("pw_pct", multipath.worst_month(fade).expect("a share").0);
        let latitude = Latitude(row.number("lat"));
        row.check_relative("delta_g_db", multipath.year_over_worst_month(latitude).0);
        row.check_relative("p_year_pct", multipath.year(fade, latitude).expect("a share").0);
        // The mean of the two ends, which is no mean of the path, says something else.
        let ends = ClearAirPath { terrain: Metres(row.number("ht_ends_only_m")), ..path };
        row.check_relative(
            "pw_ends_only_pct",
            Multipath::new(&ends).expect("in range").worst_month(fade).expect("a share").0,
        );
    }
    assert!(computed > 20);
}

#[test]
fn the_year_of_a_fade_of_any_depth_is_rarer_than_its_worst_month_and_never_than_a_twelfth() {
    for row in rows(include_str!("../../tables/multipath.csv")) {
        let multipath = Multipath::new(&path(&row)).expect("in range");
        let latitude = Latitude(row.number("latitude"));
        let year = |fade: f64| multipath.year(Decibels(fade), latitude).expect("a share").0;
        assert!((0..600).map(|tenth| year(f64::from(tenth) / 10.0)).is_sorted_by(|a, b| a > b));
        let Decibels(joint) = multipath.transition();
        assert!((year(joint - 1e-9) / year(joint) - 1.0).abs() < 1e-8);
        let month = multipath.worst_month(Decibels(joint)).expect("a share").0;
        assert!(year(joint) <= month && year(joint) >= month / 12.03);
    }
}
