//! Hops in a row and two rows side by side: sums by hand, the rows of whole hops, and what holds for any numbers.

use hopwright::physics::chain::{Row, added, apart, both_down, propagation, rain_at_once, rain_counted_once};
use hopwright::physics::geodesy::Position;
use hopwright::physics::unavailability::of_any;
use hopwright::units::{Latitude, Longitude, Metres, Percent};
use proptest::prelude::{Strategy, prop_assert, proptest};

use super::table::rows;

fn percent(shares: &[f64]) -> Vec<Percent> {
    shares.iter().copied().map(Percent).collect()
}

fn near(one: Percent, other: f64) {
    assert!((one.0 - other).abs() < 1e-12, "{one:?} {other}");
}

#[test]
fn a_row_is_down_for_the_sum_of_its_hops() {
    near(Row { rain: percent(&[0.01, 0.02, 0.005]), other: Percent(0.004) }.outage(), 0.039);
    near(Row { rain: percent(&[60.0, 50.0]), other: Percent(0.0) }.outage(), 100.0);
    near(added([]), 0.0);
}

#[test]
fn common_rain_counts_once_in_each_run_of_hops_that_are_all_near() {
    let rain = percent(&[0.01, 0.03, 0.02, 0.05]);
    // 0, 1 and 2 in a line, each near the next: 0 and 2 are not near, so 2 begins a run of its own, with 3.
    near(rain_counted_once(&rain, |one, other| one.abs_diff(other) <= 1), 0.03 + 0.05);
    near(rain_counted_once(&rain, |_, _| true), 0.05);
    near(rain_counted_once(&rain, |_, _| false), 0.11);
    near(rain_counted_once(&[], |_, _| true), 0.0);
}

#[test]
fn two_rows_are_down_together_as_their_causes_meet() {
    let one = Row { rain: percent(&[0.02, 0.01]), other: Percent(0.004) };
    let other = Row { rain: percent(&[0.03]), other: Percent(0.1) };
    // Far apart: every product. (0.03 + 0.004) % of (0.03 + 0.1) %.
    near(both_down(&one, &other, |_, _| false), 0.034 * 0.13 / 100.0);
    // The first hop of the one is near the other: the lesser of both outages is common.
    near(rain_at_once(&one.rain, &other.rain, |i, _| i == 0), 0.02 + 0.01 * 0.03 / 100.0);
    let rest = (0.03 * 0.1 + 0.004 * 0.03 + 0.004 * 0.1) / 100.0;
    near(both_down(&one, &other, |i, _| i == 0), 0.02 + 0.01 * 0.03 / 100.0 + rest);
    // All near: no more than either row has of rain.
    near(rain_at_once(&one.rain, &other.rain, |_, _| true), 0.03);
    // A row beside itself, all common, is no better than itself.
    near(both_down(&one, &one, |_, _| true), 0.03 + (2.0 * 0.03 * 0.004 + 0.004 * 0.004) / 100.0);
}

#[test]
fn whole_hops_of_the_table_come_together_within_a_hairs_breadth_of_independence() {
    let hops: Vec<Row> = rows(include_str!("../../tables/whole_hops_all_causes.csv"))
        .map(|row| {
            let rain = row.number("rain_snow12_year_pct").max(row.number("rain_snow21_year_pct"));
            let multipath =
                ["multipath12_year_pct", "multipath21_year_pct"].map(|column| row.maybe(column).unwrap_or(0.0));
            let other = multipath[0] + multipath[1] + row.number("equipment_pct") + row.number("power_pct");
            let hop = Row { rain: vec![Percent(rain)], other: Percent(other) };
            row.check("total_both_year_pct", hop.outage().0, 1e-8 * row.number("total_both_year_pct"));
            hop
        })
        .collect();
    assert!(hops.len() >= 20);
    for pair in hops.windows(2).filter(|pair| pair.iter().all(|hop| hop.outage().0 < 1.0)) {
        let row = Row { rain: [pair[0].rain[0], pair[1].rain[0]].into(), other: added([pair[0].other, pair[1].other]) };
        let independent = of_any(&[pair[0].outage(), pair[1].outage()]);
        assert!(row.outage() >= independent && row.outage().0 - independent.0 < 0.01, "{row:?}");
        let product = pair[0].outage().0 * pair[1].outage().0 / 100.0;
        assert!((both_down(&pair[0], &pair[1], |_, _| false).0 - product).abs() <= 1e-9 * product, "{pair:?}");
    }
}

#[test]
fn delay_is_length_over_the_speed_of_light_in_air() {
    // 299 792 458 m take a second in vacuum, and 0.0315 % more in air.
    assert!((propagation(Metres(299_792_458.0)).0 - 1000.315).abs() < 1e-9);
    assert!((propagation(Metres(30_000.0)).0 - 0.100_100_75).abs() < 1e-7);
}

fn at(latitude: f64, longitude: f64) -> Position {
    Position { latitude: Latitude(latitude), longitude: Longitude(longitude) }
}

#[test]
fn paths_are_as_far_apart_as_their_nearest_points() {
    // On the equator a degree of longitude is 111 319.49 m, of latitude 110 574 m.
    let path = [at(0.0, -30.0), at(0.0, -29.9)];
    assert_eq!(apart(path, [at(-0.05, -29.95), at(0.05, -29.95)]), Metres(0.0), "crossing");
    assert!(apart(path, [at(0.0, -29.9), at(0.1, -29.9)]).0 < 0.1, "touching at an end");
    let parallel = apart(path, [at(0.02, -30.0), at(0.02, -29.9)]).0;
    assert!((parallel - 2211.5).abs() < 1.0, "{parallel}");
    let behind = apart(path, [at(0.0, -29.88), at(0.0, -29.8)]).0;
    assert!((behind - 2226.4).abs() < 1.0, "{behind}");
    // From whichever path it is drawn.
    let one = [at(54.3, -32.2), at(54.4, -32.0)];
    let other = [at(54.5, -32.3), at(54.42, -32.15)];
    assert!((apart(one, other).0 - apart(other, one).0).abs() < 1.0);
    // Over the antimeridian.
    let here = apart([at(10.0, 179.95), at(10.0, 179.99)], [at(10.0, -179.99), at(10.0, -179.9)]).0;
    assert!((here - 2192.6).abs() < 2.0, "{here}");
}

/// Two rows of hops, which of them are near each other, and how much worse one hop becomes.
fn network() -> impl Strategy<Value = (Vec<f64>, Vec<f64>, [f64; 2], u64, usize, f64)> {
    let rain = || proptest::collection::vec(0.0..2.0_f64, 1..6);
    (rain(), rain(), [0.0..1.0_f64, 0.0..1.0], proptest::num::u64::ANY, 0..12_usize, 0.0..3.0_f64)
}

proptest! {
    #[test]
    fn a_worse_hop_never_improves_a_service((one, other, rest, bits, which, more) in network()) {
        let common = |i: usize, j: usize| bits >> (6 * i + j) & 1 == 1;
        let row = |rain: &[f64], rest: f64| Row { rain: percent(rain), other: Percent(rest) };
        let mut worse = one.clone();
        let at = which % one.len();
        worse[at] += more;
        let (before, after) = (row(&one, rest[0]), row(&worse, rest[0]));
        let beside = row(&other, rest[1]);
        let dust = 1e-12;
        prop_assert!(after.outage().0 >= before.outage().0);
        prop_assert!(rain_counted_once(&after.rain, common).0 >= rain_counted_once(&before.rain, common).0 - dust);
        prop_assert!(rain_counted_once(&before.rain, common).0 <= added(before.rain.iter().copied()).0 + dust);
        prop_assert!(both_down(&after, &beside, common).0 >= both_down(&before, &beside, common).0 - dust);
        let broken = row(&one, rest[0] + more);
        prop_assert!(both_down(&broken, &beside, common).0 >= both_down(&before, &beside, common).0 - dust);
        // A second route never harms, and what is said to be common is never the better for it.
        prop_assert!(both_down(&before, &beside, common).0 <= before.outage().0.min(beside.outage().0) + dust);
        prop_assert!(both_down(&before, &beside, |_, _| true).0 >= both_down(&before, &beside, common).0 - dust);
        prop_assert!(both_down(&before, &beside, common).0 >= both_down(&before, &beside, |_, _| false).0 - dust);
    }
}
