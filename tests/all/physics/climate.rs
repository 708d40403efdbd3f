//! Rain of a place and a month, fog and snow.

use hopwright::physics::fog::{self, MEDIUM_FOG, THICK_FOG};
use hopwright::physics::rain_rate::{Month, NoClimate, RainClimate};
use hopwright::physics::snow::{Precipitation, multiplier, precipitation, rain_height};
use hopwright::physics::worst_month::{annual, worst_month};
use hopwright::sheet::Reason;
use hopwright::units::{Celsius, Gigahertz, GramsPerCubicMetre, Metres, Millimetres, MillimetresPerHour, Percent};

use super::table::{Row, rows};

/// Shares of time from far below the range of use to the whole year.
fn shares() -> impl Iterator<Item = Percent> {
    (0..=900).map(|step| Percent(10_f64.powf(f64::from(step) / 100.0 - 7.0).min(100.0)))
}

#[test]
fn worst_months_match_the_table() {
    for row in rows(include_str!("../../tables/worst_month.csv")) {
        let (year, month) = (Percent(row.number("annual")), Percent(row.number("worst_month")));
        row.check_relative("worst_month", worst_month(year).expect("a share").0);
        row.check_relative("annual", annual(month).expect("a share").0);
    }
}

#[test]
fn a_worst_month_leads_back_to_its_year() {
    for year in shares() {
        let month = worst_month(year).expect("a share");
        let back = annual(month).expect("a share");
        assert!((back.0 / year.0 - 1.0).abs() < 1e-12, "{year} came back as {back}");
    }
    assert!(shares().map(|year| worst_month(year).expect("a share").0).is_sorted_by(|a, b| a < b));
}

#[test]
fn a_worst_month_is_worse_by_one_to_twelve() {
    for year in shares() {
        let ratio = worst_month(year).expect("a share").0 / year.0;
        assert!((1.0 - 1e-12..=12.0 + 1e-12).contains(&ratio), "{year}: {ratio}");
    }
    for whole in [0.0, 100.0].map(Percent) {
        assert_eq!(worst_month(whole), Some(whole));
        assert!((annual(whole).expect("a share") - whole).0.abs() < 1e-10);
    }
    assert_eq!(worst_month(Percent(1e-5)), Some(Percent(12.0 * 1e-5)));
    for none in [-1e-9, 100.1, f64::NAN].map(Percent) {
        assert_eq!((worst_month(none), annual(none)), (None, None));
    }
}

#[test]
fn the_parts_of_the_worst_month_meet() {
    for joint in [1.579_5e-5, 3.0, 30.0] {
        let [below, above] =
            [joint * (1.0 - 1e-9), joint * (1.0 + 1e-9)].map(|p| worst_month(Percent(p)).expect("share"));
        assert!((above.0 / below.0 - 1.0).abs() < 1e-8, "jump at {joint} %");
    }
}

fn normals(row: &Row) -> [Month; 12] {
    std::array::from_fn(|index| Month {
        rain: Millimetres(row.number(&format!("rain_{:02}", index + 1))),
        temperature: Celsius(row.number(&format!("temperature_{:02}", index + 1))),
    })
}

#[test]
fn rain_rates_match_the_workbook_and_the_computed_values() {
    for row in rows(include_str!("../../tables/rain_rate.csv")) {
        let climate = RainClimate::new(&normals(&row)).expect("a climate");
        let rate = climate.rate(Percent(row.number("share"))).expect("a rate");
        row.check_relative("rain_time", climate.rain_time().0);
        match row.text("origin") {
            "workbook" => row.check("rate", rate.0, 1e-5 * row.number("rate")),
            _ => row.check_relative("rate", rate.0),
        }
    }
}

/// Twelve equal months.
fn even(rain: f64, temperature: f64) -> RainClimate {
    let month = Month { rain: Millimetres(rain), temperature: Celsius(temperature) };
    RainClimate::new(&[month; 12]).expect("a climate")
}

#[test]
fn the_rate_of_a_share_is_exceeded_for_that_share() {
    let climate = even(80.0, 12.0);
    for share in [1e-300, 1e-9, 0.001, 0.01, 0.1, 1.0, 0.999 * climate.rain_time().0] {
        let rate = climate.rate(Percent(share)).expect("a rate");
        assert!((climate.time_above(rate).0 / share - 1.0).abs() < 1e-7, "{share}: {rate}");
        assert_eq!(climate.rate(Percent(share)), Some(rate));
    }
    assert_eq!(climate.time_above(MillimetresPerHour(0.0)), climate.rain_time());
    assert_eq!(climate.rate(climate.rain_time()), Some(MillimetresPerHour(0.0)));
    assert_eq!(climate.rate(Percent(0.0)), None);
    assert_eq!(climate.rate(Percent(f64::NAN)), None);
}

#[test]
fn more_rain_or_more_warmth_means_harder_rain() {
    let r_0_01 = |rain, temperature| even(rain, temperature).rate(Percent(0.01)).expect("a rate");
    assert!([0.0, 5.0, 20.0, 80.0, 300.0, 1500.0].map(|rain| r_0_01(rain, 12.0)).is_sorted());
    assert!([-20.0, 0.0, 10.0, 20.0, 30.0].map(|temperature| r_0_01(80.0, temperature)).is_sorted());
    assert_eq!(r_0_01(80.0, -20.0), r_0_01(80.0, 0.0));
    assert_eq!(r_0_01(0.0, 30.0), MillimetresPerHour(0.0));
}

#[test]
fn it_never_rains_for_more_than_seventy_percent() {
    let wet = even(2000.0, -5.0);
    assert!((wet.rain_time() - Percent(70.0)).0.abs() < 1e-12);
    // 0.5874 mm/h for 70 % of a month of 31 days is 305.9 mm: a little more goes into the rate, and nothing jumps.
    let [just, above] = [283.0, 284.0].map(|rain| even(rain, -5.0).rate(Percent(0.01)).expect("a rate").0);
    assert!(above > just && above / just < 1.01);
}

#[test]
fn weather_without_numbers_is_no_climate() {
    let mut months = [Month { rain: Millimetres(50.0), temperature: Celsius(10.0) }; 12];
    months[6].rain = Millimetres(-1.0);
    let fault = RainClimate::new(&months).expect_err("negative rain");
    assert_eq!(fault, NoClimate(7, months[6]));
    let words = Reason::from(fault).to_string();
    assert_eq!(words, "-1.0 mm of rain at 10 °C cannot be the weather of month 7");
    months[6] = Month { rain: Millimetres(1.0), temperature: Celsius(f64::NAN) };
    assert!(RainClimate::new(&months).is_err());
}

#[test]
fn fog_matches_the_table() {
    for row in rows(include_str!("../../tables/fog.csv")) {
        let (f, t) = (Gigahertz(row.number("frequency")), Celsius(row.number("temperature") - 273.15));
        let water = GramsPerCubicMetre(row.number("water"));
        row.check_relative("coefficient", fog::coefficient(f, t));
        row.check_relative("attenuation", fog::specific_attenuation(f, t, water).0);
        row.check_relative("attenuation", fog::loss(f, t, water, Metres(1000.0)).0);
    }
}

#[test]
fn thicker_or_colder_fog_costs_more() {
    let loss = |t, water| fog::specific_attenuation(Gigahertz(83.5), Celsius(t), water);
    assert!(loss(10.0, THICK_FOG) > loss(10.0, MEDIUM_FOG));
    assert!(loss(0.0, THICK_FOG) > loss(10.0, THICK_FOG));
    assert!((loss(10.0, THICK_FOG).0 - 1.78).abs() < 0.005);
}

#[test]
fn snow_melts_in_a_band_around_the_rain_height() {
    let h_r = rain_height(Metres(2640.0));
    assert_eq!(h_r, Metres(3000.0));
    let falls = |a, b| precipitation([Metres(a), Metres(b)], h_r);
    assert_eq!(falls(-700.0, -600.0), Precipitation::Rain);
    assert_eq!(falls(-700.0, -599.0), Precipitation::MeltingSnow);
    assert_eq!(falls(5400.0, 5500.0), Precipitation::MeltingSnow);
    assert_eq!(falls(5500.0, 5401.0), Precipitation::DrySnow);
    assert_eq!(falls(-700.0, 5500.0), falls(5500.0, -700.0));
}

#[test]
fn melting_snow_costs_up_to_three_and_a_half_times_the_rain() {
    let peak = (0..=1200).map(|down| (multiplier(Metres(f64::from(-down))), down)).max_by(|a, b| a.0.total_cmp(&b.0));
    let (most, down) = peak.expect("a peak");
    assert!((most - 3.53).abs() < 0.005 && down == 241, "{most} at {down} m below");
    for (above, expected, tolerance) in [(0.1, 0.0, 0.0), (0.0, 0.0, 0.0), (-1200.0, 1.0, 0.03), (-1200.1, 1.0, 0.0)] {
        assert!((multiplier(Metres(above)) - expected).abs() <= tolerance, "at {above} m");
    }
}
