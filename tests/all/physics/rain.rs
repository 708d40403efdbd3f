//! Rain: what it costs, and how often.

use hopwright::physics::rain::{Coefficients, Polarisation, coefficients};
use hopwright::physics::rain_outage::{COMMONEST, OutOfRange, Outage, RAREST, RainFade};
use hopwright::sheet::Told;
use hopwright::units::{Decibels, Degrees, Gigahertz, Metres, MillimetresPerHour, Percent};

use super::table::{Row, rows};

const LEVEL: Degrees = Degrees(0.0);

fn polarisation(row: &Row) -> Polarisation {
    match row.text("polarisation") {
        "H" => Polarisation::Horizontal,
        "V" => Polarisation::Vertical,
        _ => Polarisation::Circular,
    }
}

/// A vertical hop at 73.5 GHz.
fn fade(kilometres: f64, rate: f64) -> RainFade {
    let (distance, rate) = (Metres(1000.0 * kilometres), MillimetresPerHour(rate));
    RainFade::new(Gigahertz(73.5), Polarisation::Vertical, LEVEL, distance, rate).expect("in range")
}

/// Percentages from end to end of the method's range.
fn shares() -> impl Iterator<Item = Percent> {
    (0..=60).map(|step| Percent(10_f64.powf(-3.0 + f64::from(step) / 20.0).clamp(RAREST.0, COMMONEST.0)))
}

#[test]
fn specific_attenuation_matches_the_workbook_and_the_computed_values() {
    for row in rows(include_str!("../../tables/rain.csv")) {
        let (f, elevation) = (Gigahertz(row.number("frequency")), Degrees(row.number("elevation")));
        let Coefficients { k, alpha } = coefficients(f, polarisation(&row), elevation);
        row.check_relative("k", k);
        row.check_relative("alpha", alpha);
        let rate = MillimetresPerHour(row.number("rate"));
        row.check_relative("attenuation", coefficients(f, polarisation(&row), elevation).specific_attenuation(rate).0);
    }
}

#[test]
fn coefficients_round_to_the_printed_ones() {
    for row in rows(include_str!("../../tables/rain_coefficients.csv")) {
        let f = Gigahertz(row.number("frequency"));
        let horizontal = coefficients(f, Polarisation::Horizontal, LEVEL);
        let vertical = coefficients(f, Polarisation::Vertical, LEVEL);
        row.check("k_h", horizontal.k, 5e-5);
        row.check("alpha_h", horizontal.alpha, 5e-5);
        row.check("k_v", vertical.k, 5e-5);
        row.check("alpha_v", vertical.alpha, 5e-5);
    }
}

#[test]
fn rain_fades_match_the_table() {
    for row in rows(include_str!("../../tables/rain_outage.csv")) {
        let distance = Metres(1000.0 * row.number("distance_km"));
        let (f, rate) = (Gigahertz(row.number("frequency")), MillimetresPerHour(row.number("rate")));
        let fade = RainFade::new(f, polarisation(&row), LEVEL, distance, rate).expect("in range");
        row.check_relative("specific", fade.specific_attenuation.0);
        row.check_relative("factor", fade.distance_factor);
        row.check_relative("effective_km", fade.effective_length.0 / 1000.0);
        row.check_relative("a_0_01", fade.attenuation_0_01.0);
        let columns = ["a_1", "a_0_1", "a_0_03", "a_0_01_scaled", "a_0_005", "a_0_001"];
        for (column, share) in columns.into_iter().zip([1.0, 0.1, 0.03, 0.01, 0.005, 0.001]) {
            row.check_relative(column, fade.attenuation(Percent(share)).expect("in range").0);
        }
        match fade.outage(Decibels(row.number("margin"))) {
            Outage::Within(share) => row.check_relative("outage", share.0),
            other => assert_eq!((other, row.text("status")), (Outage::Below, "below")),
        }
    }
}

#[test]
fn the_outage_of_a_fade_is_its_percentage() {
    for (kilometres, rate) in [(0.2, 30.0), (1.0, 42.0), (5.0, 95.0), (15.0, 20.0)] {
        let fade = fade(kilometres, rate);
        for share in shares().filter(|share| (RAREST.0 + 1e-9..COMMONEST.0 - 1e-9).contains(&share.0)) {
            let margin = fade.attenuation(share).expect("in range");
            let Outage::Within(back) = fade.outage(margin) else { panic!("{share} left the range") };
            assert!((back.0 / share.0 - 1.0).abs() < 1e-9, "{share} came back as {back}");
        }
    }
}

#[test]
fn the_outage_never_leaves_the_range_of_the_method() {
    for rate in [0.0, 0.1, 5.0, 42.0, 150.0, 300.0] {
        for kilometres in [0.0, 0.01, 0.3, 2.0, 20.0, 60.0] {
            let fade = fade(kilometres, rate);
            let mut last = Outage::Above;
            for step in -20..2000 {
                let outage = fade.outage(Decibels(f64::from(step) / 10.0));
                if let Outage::Within(share) = outage {
                    assert!((RAREST..=COMMONEST).contains(&share));
                }
                assert!(outage <= last, "more margin, more outage: {outage:?} after {last:?}");
                last = outage;
            }
        }
    }
}

#[test]
fn the_ends_of_the_range_are_told_as_such() {
    let fade = fade(3.0, 42.0);
    let [rarest, commonest] = [RAREST, COMMONEST].map(|share| fade.attenuation(share).expect("in range"));
    assert_eq!(fade.outage(rarest), Outage::Below);
    assert_eq!(fade.outage(commonest), Outage::Above);
    assert_eq!(fade.outage(Decibels(1e6)), Outage::Below);
    assert_eq!(fade.attenuation(Percent(0.0009)), None);
    assert_eq!(fade.attenuation(Percent(1.1)), None);
    for nothing in [0.0, -3.0, f64::NEG_INFINITY, f64::NAN] {
        assert_eq!(fade.outage(Decibels(nothing)), Outage::Above);
    }

    let all = [Outage::Never, Outage::Below, Outage::Within(Percent(0.0123)), Outage::Above];
    assert_eq!(all.map(Outage::at_least), [0.0, 0.0, 0.0123, 1.0].map(Percent));
    assert_eq!(all.map(Outage::at_most), [0.0, 0.001, 0.0123, 100.0].map(Percent));
    let words = all.map(|outage| Told::from(outage).to_string());
    assert_eq!(words, ["none", "not more than 0.001 %", "0.0123 %", "at least 1 %"]);
}

#[test]
fn without_rain_there_is_no_rain_outage() {
    let dry = fade(3.0, 0.0);
    assert_eq!(dry.attenuation_0_01, Decibels(0.0));
    assert_eq!(dry.outage(Decibels(1e-6)), Outage::Never);
    assert_eq!(dry.outage(Decibels(-0.1)), Outage::Above);

    let (rate, distance) = (MillimetresPerHour(100.0), Metres(30_000.0));
    let low = |f| RainFade::new(Gigahertz(f), Polarisation::Horizontal, LEVEL, distance, rate).expect("in range");
    assert_eq!(low(4.999).outage(Decibels(0.1)), Outage::Never);
    assert!(low(5.0).outage(Decibels(0.1)) > Outage::Below);
    assert_eq!(fade(0.01, 0.1).outage(Decibels(1.0)), Outage::Below);
}

#[test]
fn more_rain_or_a_longer_hop_is_out_for_longer() {
    let margin = Decibels(25.0);
    let rates = [5.0, 10.0, 20.0, 42.0, 80.0, 150.0];
    assert!(rates.map(|rate| fade(3.0, rate).outage(margin)).is_sorted());
    let lengths = [0.1, 0.3, 0.5, 1.0, 3.0, 8.0, 15.0];
    assert!(lengths.map(|kilometres| fade(kilometres, 42.0).outage(margin)).is_sorted());
}

#[test]
fn the_method_ends_where_it_says() {
    let new = |f, d, rate| {
        RainFade::new(Gigahertz(f), Polarisation::Circular, LEVEL, Metres(d), MillimetresPerHour(rate)).map(|_| ())
    };
    assert_eq!(new(100.0, 60_000.0, 42.0), Ok(()));
    assert_eq!(new(1.0, 0.0, 0.0), Ok(()));
    assert_eq!(new(0.999, 1000.0, 42.0), Err(OutOfRange::Frequency(Gigahertz(0.999))));
    assert_eq!(new(100.001, 1000.0, 42.0), Err(OutOfRange::Frequency(Gigahertz(100.001))));
    assert_eq!(new(80.0, 60_001.0, 42.0), Err(OutOfRange::Distance(Metres(60_001.0))));
    assert_eq!(new(80.0, 1000.0, -1.0), Err(OutOfRange::RainRate(MillimetresPerHour(-1.0))));
    assert!(new(f64::NAN, 1.0, 1.0).is_err() && new(80.0, f64::NAN, 1.0).is_err() && new(80.0, 1.0, f64::NAN).is_err());
}
