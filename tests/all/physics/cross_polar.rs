//! Crossed carriers on one channel, in clear air and in rain.

use hopwright::physics::cross_polar::{CoChannel, CrossClearAir, CrossRain, OutOfRange, Senders, larger};
use hopwright::physics::rain_outage::Outage;
use hopwright::units::{Decibels, Gigahertz, Metres, Percent};

use super::table::{Row, rows};

const TABLE: &str = include_str!("../../tables/xpd_outage.csv");

fn carriers(row: &Row) -> CoChannel {
    CoChannel { needed: Decibels(row.number("c0_i_db")), improvement: Decibels(row.number("xpif_db")) }
}

fn clear_air(row: &Row) -> CrossClearAir {
    let frequency = Gigahertz(row.number("f_ghz"));
    let senders = row.maybe("s_t_m").map_or(Senders::One, |apart| Senders::Two(Metres(apart), frequency));
    let guaranteed = Decibels(row.number("xpd_g_db"));
    CrossClearAir::new(guaranteed, senders, Percent(row.number("p0_pct"))).expect("in range")
}

fn rain(row: &Row) -> Result<CrossRain, OutOfRange> {
    CrossRain::new(Gigahertz(row.number("f_ghz")), Decibels(row.number("a001_db")))
}

#[test]
fn crossing_in_clear_air_matches_the_table() {
    for row in rows(TABLE) {
        let (carriers, air) = (carriers(&row), clear_air(&row));
        row.check_relative("xpd0_db", air.discrimination.0);
        row.check_relative("eta", air.activity);
        row.check_relative("k_xp", air.senders);
        row.check_relative("c_db", air.left().expect("multipath").0);
        row.check_relative("m_xpd_db", air.margin(&carriers).expect("multipath").0);
        row.check_relative("p_xp", air.worst_month(&carriers).0 / 100.0);
    }
}

#[test]
fn crossing_in_rain_matches_the_table() {
    let mut statuses = Vec::new();
    for row in rows(TABLE) {
        let (carriers, status) = (carriers(&row), row.text("xpr_status"));
        statuses.push(status);
        let rain = match (rain(&row), status) {
            (Err(outside), "out_of_range") => {
                assert_eq!(outside, OutOfRange::Frequency(Gigahertz(row.number("f_ghz"))));
                continue;
            }
            (rain, _) => rain.expect("in range"),
        };
        row.check_relative("u_db", rain.at_one_decibel);
        row.check_relative("v", rain.slope);
        row.check_relative("a_eq_db", rain.equivalent(&carriers).0);
        row.check_relative("m", rain.m(&carriers));
        row.check_relative("n", rain.exponent(&carriers));
        row.check_relative("p_xpr", libm::exp10(rain.exponent(&carriers) - 2.0));
        let crosses = rain.year(&carriers);
        match status {
            "in_range" => row.check_relative("p_xpr", crosses.at_most().0 / 100.0),
            _ => assert_eq!(crosses, Outage::Below),
        }
        if row.text("rain_status") == "in_range" {
            let fades = Outage::Within(Percent(row.number("p_rain_pct")));
            row.check_relative("p_rain_total_pct", larger(fades, crosses).at_most().0);
        }
    }
    for status in ["in_range", "n_below_-3", "out_of_range"] {
        assert!(statuses.contains(&status), "no row is {status}");
    }
}

#[test]
fn a_worse_state_and_a_better_canceller_move_both_outages_their_way() {
    for row in rows(TABLE) {
        let carriers = carriers(&row);
        let slower = CoChannel { needed: carriers.needed - Decibels(3.0), ..carriers };
        let cancelled = CoChannel { improvement: carriers.improvement + Decibels(3.0), ..carriers };
        let air = clear_air(&row);
        for better in [slower, cancelled] {
            assert!(air.worst_month(&better) < air.worst_month(&carriers));
            let Ok(rain) = rain(&row) else { continue };
            assert!(rain.year(&better) <= rain.year(&carriers));
        }
    }
}

#[test]
fn crossing_is_modelled_where_it_says() {
    let at = |f: f64, fade: f64| CrossRain::new(Gigahertz(f), Decibels(fade)).map(|_| ());
    assert_eq!(at(8.0, 10.0), Ok(()));
    assert_eq!(at(35.0, 10.0), Ok(()));
    assert_eq!(at(7.999, 10.0), Err(OutOfRange::Frequency(Gigahertz(7.999))));
    assert_eq!(at(73.5, 10.0), Err(OutOfRange::Frequency(Gigahertz(73.5))));
    assert_eq!(at(18.0, -1.0), Err(OutOfRange::Fade(Decibels(-1.0))));
    assert!(at(f64::NAN, 1.0).is_err() && at(18.0, f64::NAN).is_err());

    let of = |share: f64| CrossClearAir::new(Decibels(30.0), Senders::One, Percent(share));
    assert_eq!(of(-1.0), Err(OutOfRange::Occurrence(Percent(-1.0))));
    assert!(of(f64::NAN).is_err() && of(f64::INFINITY).is_err());
}

#[test]
fn without_rain_or_multipath_nothing_crosses_and_no_share_is_more_than_all() {
    let needs = |needed: f64| CoChannel { needed: Decibels(needed), improvement: Decibels(0.0) };
    let calm = CrossClearAir::new(Decibels(30.0), Senders::One, Percent(0.0)).expect("in range");
    assert_eq!((calm.left(), calm.worst_month(&needs(20.0))), (None, Percent(0.0)));
    let wild = CrossClearAir::new(Decibels(10.0), Senders::One, Percent(2000.0)).expect("in range");
    assert_eq!(wild.worst_month(&needs(60.0)), Percent(100.0));

    let dry = CrossRain::new(Gigahertz(18.0), Decibels(0.0)).expect("in range");
    assert_eq!(dry.year(&needs(20.0)), Outage::Never);
    let wet = CrossRain::new(Gigahertz(18.0), Decibels(20.0)).expect("in range");
    assert_eq!(wet.year(&needs(60.0)), Outage::Above);
    assert_eq!(larger(Outage::Below, Outage::Above), Outage::Above);
    assert_eq!(larger(Outage::Within(Percent(0.1)), Outage::Below), Outage::Within(Percent(0.1)));
}
