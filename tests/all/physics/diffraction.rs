//! Clearance, and what obstacles cost.

use hopwright::physics::bullington::diffraction;
use hopwright::physics::clearance::{Point, Raise, Sightline, earth_bulge, first_fresnel_radius};
use hopwright::physics::geodesy::MEDIAN_K;
use hopwright::physics::knife_edge::{loss, parameter};
use hopwright::units::{Decibels, Gigahertz, Metres};

use super::table::{Row, rows};

const F: Gigahertz = Gigahertz(73.5);

/// Loss over a knife edge by the integrals themselves.
///
/// ```text
/// J = -20 lg( √( (1 - C - S)² + (C - S)² ) / 2 ),   C + i S = ∫ exp(i π t² / 2) dt from 0 to ν
/// ```
///
/// Source: Recommendation ITU-R P.526-15, section 4.1, equation (30).
fn exact_loss(nu: f64) -> f64 {
    let steps = 4000;
    let width = nu / f64::from(steps);
    let simpson = |value: fn(f64) -> f64| {
        let at = |step: i32| value(std::f64::consts::FRAC_PI_2 * (f64::from(step) * width).powi(2));
        let inner: f64 = (1..steps).map(|step| f64::from(2 + 2 * (step % 2)) * at(step)).sum();
        (at(0) + inner + at(steps)) * width / 3.0
    };
    let (c, s) = (simpson(f64::cos), simpson(f64::sin));
    -20.0 * ((1.0 - c - s).hypot(c - s) / 2.0).log10()
}

fn profile(row: &Row) -> Vec<Point> {
    let number = |text: &str| text.parse::<f64>().expect("a number");
    let pairs = row.text("profile").split(';').map(|pair| pair.split_once(':').expect("km:m"));
    pairs.map(|(km, m)| Point { distance: Metres(1000.0 * number(km)), top: Metres(number(m)) }).collect()
}

fn line(row: &Row, profile: &[Point]) -> Sightline {
    let length = profile.last().expect("a profile").distance;
    let k = if row.text("k").starts_with("1.3333") { MEDIAN_K } else { row.number("k") };
    let k = if row.text("k").starts_with("0.6666") { 2.0 / 3.0 } else { k };
    Sightline { near: Metres(row.number("near")), far: Metres(row.number("far")), length, k }
}

/// The same hop seen from the other end.
fn turned(line: &Sightline, profile: &[Point]) -> (Sightline, Vec<Point>) {
    let turn = |point: &Point| Point { distance: line.length - point.distance, top: point.top };
    (Sightline { near: line.far, far: line.near, ..*line }, profile.iter().map(turn).collect())
}

#[test]
fn fresnel_radii_and_knife_edges_match_the_table() {
    for row in rows(include_str!("../../tables/knife_edge.csv")) {
        let f = Gigahertz(row.number("frequency"));
        let [near, far] = ["near_km", "far_km"].map(|column| Metres(1000.0 * row.number(column)));
        row.check_relative("radius", first_fresnel_radius(f, near, far).0);
        let nu = parameter(Metres(row.number("height")), f, near, far);
        row.check_relative("nu", nu);
        row.check("loss", loss(nu).0, 1e-6);
        row.check("exact", exact_loss(nu), 1e-6);
    }
}

#[test]
fn the_knife_edge_is_near_its_integrals() {
    for hundredth in -77..=1000 {
        let nu = f64::from(hundredth) / 100.0;
        assert!((loss(nu).0 - exact_loss(nu)).abs() < 0.15, "at {nu}");
        assert!(loss(nu) < loss(nu + 0.01));
    }
    for hundredth in -500..-78 {
        assert!(exact_loss(f64::from(hundredth) / 100.0).abs() < 1.5);
    }
    assert_eq!(loss(-0.78), Decibels(0.0));
    assert_eq!(loss(f64::NEG_INFINITY), Decibels(0.0));
    assert!((loss(0.0) - Decibels(6.033)).0.abs() < 5e-4);
}

#[test]
fn bulges_match_the_table() {
    for row in rows(include_str!("../../tables/bulge.csv")) {
        let (d, k) = (1000.0 * row.number("distance_km"), row.number("k"));
        let bulge = |share: f64| earth_bulge(Metres(share * d), Metres((1.0 - share) * d), k).0;
        row.check_relative("middle", bulge(0.5));
        row.check_relative("quarter", bulge(0.25));
        row.check_relative("quarter", bulge(0.75));
    }
}

#[test]
fn profiles_match_the_table() {
    for row in rows(include_str!("../../tables/bullington.csv")) {
        let profile = profile(&row);
        let line = line(&row, &profile);
        let got = diffraction(&line, Gigahertz(row.number("frequency")), &profile);
        row.check_relative("nu", got.nu);
        row.check("edge", got.edge.0, 1e-6);
        row.check("terrain", got.terrain.0, 1e-6);
        let (line, profile) = turned(&line, &profile);
        let back = diffraction(&line, Gigahertz(row.number("frequency")), &profile);
        row.check("terrain", back.terrain.0, 1e-6);
    }
}

#[test]
fn one_point_is_a_knife_edge() {
    let line = Sightline { near: Metres(120.0), far: Metres(150.0), length: Metres(4000.0), k: MEDIAN_K };
    for top in [100.0, 126.5, 127.2, 127.4, 128.0, 140.0] {
        let point = Point { distance: Metres(1000.0), top: Metres(top) };
        let above = Metres(-line.clearance(point).0);
        let nu = parameter(above, F, point.distance, line.beyond(point));
        let got = diffraction(&line, F, &[point]);
        assert!((got.nu - nu).abs() < 1e-6 * nu.abs().max(1.0), "{} is not {nu}", got.nu);
        assert_eq!(got.edge, loss(got.nu));
        assert!(got.terrain >= got.edge);
    }
    let touching = line.height(Point { distance: Metres(1000.0), top: Metres(0.0) });
    let got = diffraction(&line, F, &[Point { distance: Metres(1000.0), top: touching }]);
    assert_eq!((got.nu, got.edge), (0.0, loss(0.0)));
    let ends = [0.0, 4000.0].map(|distance| Point { distance: Metres(distance), top: Metres(999.0) });
    let clear = diffraction(&line, F, &ends);
    assert_eq!((clear.nu, clear.edge, clear.terrain), (f64::NEG_INFINITY, Decibels(0.0), Decibels(0.0)));
}

#[test]
fn clearance_is_height_over_the_swollen_ground() {
    let line = Sightline { near: Metres(100.0), far: Metres(140.0), length: Metres(10_000.0), k: MEDIAN_K };
    let point = Point { distance: Metres(5000.0), top: Metres(110.0) };
    // 120 m in the middle, less 1.472 m of bulge, less 110 m.
    assert!((line.clearance(point) - Metres(8.528_488)).0.abs() < 1e-6);
    assert_eq!(line.height(Point { distance: Metres(0.0), ..point }), line.near);
    assert_eq!(line.height(Point { distance: line.length, ..point }), line.far);
    assert_eq!(line.radius(F, Point { distance: Metres(0.0), ..point }), Metres(0.0));
    let bent = Sightline { k: 2.0 / 3.0, ..line };
    assert!(bent.clearance(point) < line.clearance(point));
}

#[test]
fn raised_antennas_clear_every_point_and_no_more() {
    for row in rows(include_str!("../../tables/bullington.csv")) {
        let profile = profile(&row);
        let line = line(&row, &profile);
        for fraction in [0.0, 0.6, 1.0] {
            for raise in [Raise::Near, Raise::Far, Raise::Both] {
                let by = line.least_raise(F, fraction, &profile, raise);
                let raised = match raise {
                    Raise::Near => Sightline { near: line.near + by, ..line },
                    Raise::Far => Sightline { far: line.far + by, ..line },
                    Raise::Both => Sightline { near: line.near + by, far: line.far + by, ..line },
                };
                let between = profile.iter().filter(|point| line.spans(**point));
                let spare = between.map(|point| raised.clearance(*point).0 - fraction * raised.radius(F, *point).0);
                let least = spare.fold(f64::INFINITY, f64::min);
                assert!(least > -1e-9, "a point still lacks {least}");
                assert!(by == Metres(0.0) || least < 1e-9, "raised by {by} for {least} too much");
                assert!(raised.least_raise(F, fraction, &profile, raise) < Metres(1e-9));
            }
        }
    }
}

#[test]
fn raising_one_end_takes_more_than_raising_both() {
    let line = Sightline { near: Metres(100.0), far: Metres(100.0), length: Metres(4000.0), k: MEDIAN_K };
    let point = [Point { distance: Metres(1000.0), top: Metres(101.0) }];
    let raise = |raise| line.least_raise(F, 1.0, &point, raise).0;
    let both = raise(Raise::Both);
    assert!((raise(Raise::Near) - both * 4.0 / 3.0).abs() < 1e-9);
    assert!((raise(Raise::Far) - both * 4.0).abs() < 1e-9);
}
