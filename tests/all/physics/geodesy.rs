//! Distance, azimuth, slant distance and elevation.

use hopwright::physics::geodesy::{
    Coincident, EARTH_RADIUS, Geodesic, MEDIAN_K, Position, bearing, elevation, inverse,
};
use hopwright::physics::off_axis::slant;
use hopwright::sheet::Reason;
use hopwright::units::{Degrees, Latitude, Longitude, Metres};

use super::table::{Row, rows};

fn position(row: &Row, latitude: &str, longitude: &str) -> Position {
    Position { latitude: Latitude(row.number(latitude)), longitude: Longitude(row.number(longitude)) }
}

fn ends(row: &Row) -> (Position, Position) {
    (position(row, "latitude_1", "longitude_1"), position(row, "latitude_2", "longitude_2"))
}

#[test]
fn geodesics_match_the_table() {
    for row in rows(include_str!("../../tables/geodesic.csv")) {
        let (from, to) = ends(&row);
        let Ok(path) = inverse(from, to) else {
            row.check("distance", 0.0, 0.0);
            assert_eq!(row.maybe("azimuth_12"), None);
            continue;
        };
        let azimuth_tolerance = if path.distance < Metres(100.0) { 1e-4 } else { 1e-6 };
        row.check("distance", path.distance.0, 1e-3);
        row.check("azimuth_12", path.azimuth.0, azimuth_tolerance);
        row.check("azimuth_21", path.back_azimuth.0, azimuth_tolerance);
    }
}

#[test]
fn swapping_the_ends_mirrors_the_geodesic() {
    for row in rows(include_str!("../../tables/geodesic.csv")) {
        let (from, to) = ends(&row);
        let (Ok(there), Ok(back)) = (inverse(from, to), inverse(to, from)) else { continue };
        let mirrored = Geodesic { distance: back.distance, azimuth: back.back_azimuth, back_azimuth: back.azimuth };
        assert!((there.distance - mirrored.distance).0.abs() < 1e-6);
        assert!((there.azimuth - mirrored.azimuth).0.abs() < 1e-8);
        assert!((there.back_azimuth - mirrored.back_azimuth).0.abs() < 1e-8);
    }
}

#[test]
fn one_place_has_no_azimuth() {
    let at = |latitude, longitude| Position { latitude: Latitude(latitude), longitude: Longitude(longitude) };
    assert_eq!(inverse(at(46.5, 171.2), at(46.5, 171.2)), Err(Coincident));
    assert_eq!(inverse(at(10.0, 180.0), at(10.0, -180.0)), Err(Coincident));
    assert_eq!(inverse(at(90.0, 0.0), at(90.0, 77.0)), Err(Coincident));
    assert_eq!(Reason::from(Coincident).to_string(), "both ends are at the same position");
}

#[test]
fn bearings_stay_below_the_full_turn() {
    for (angle, expected) in [(0.0, 0.0), (360.0, 0.0), (-90.0, 270.0), (725.0, 5.0), (-1e-20, 0.0)] {
        assert_eq!(bearing(Degrees(angle)), Degrees(expected));
    }
}

#[test]
fn slant_distance_matches_the_table() {
    for row in rows(include_str!("../../tables/slant.csv")) {
        let (from, to) = ends(&row);
        let (low, high) = (Metres(row.number("height_1")), Metres(row.number("height_2")));
        row.check("slant", slant(from, low, to, high).0, 1e-3);
        row.check("slant", slant(to, high, from, low).0, 1e-3);
    }
}

#[test]
fn slant_distance_is_nearly_that_over_a_sphere() {
    for row in rows(include_str!("../../tables/slant.csv")) {
        let (from, to) = ends(&row);
        let (low, high) = (row.number("height_1"), row.number("height_2"));
        let ground = inverse(from, to).map_or(0.0, |path| path.distance.0);
        let raised = ground * (1.0 + f64::midpoint(low, high) / EARTH_RADIUS.0);
        row.check("slant", raised.hypot(high - low), 3e-6 * row.number("slant"));
    }
}

#[test]
fn elevation_matches_the_table() {
    for row in rows(include_str!("../../tables/elevation.csv")) {
        let (d, k) = (Metres(1000.0 * row.number("distance_km")), row.number("k"));
        let (near, far) = (Metres(row.number("height_1")), Metres(row.number("height_2")));
        row.check("elevation_1", elevation(d, near, far, k).0, 1e-6);
        row.check("elevation_2", elevation(d, far, near, k).0, 1e-6);
    }
}

#[test]
fn elevations_of_both_ends_sum_to_the_angle_between_them() {
    let (d, low, high) = (Metres(12_000.0), Metres(150.0), Metres(900.0));
    let sum = elevation(d, low, high, MEDIAN_K) + elevation(d, high, low, MEDIAN_K);
    let between = (d.0 / (MEDIAN_K * EARTH_RADIUS.0)).to_degrees();
    assert!((sum.0 + between).abs() < 1e-9);
    assert_eq!(elevation(Metres(0.0), low, high, MEDIAN_K), Degrees(90.0));
    assert!((MEDIAN_K - 1.333_333_333).abs() < 1e-9);
}

#[test]
fn the_middle_is_half_way_from_both_ends() {
    let place = |latitude, longitude| Position { latitude: Latitude(latitude), longitude: Longitude(longitude) };
    for (from, to) in [(place(46.5, 171.2), place(46.6, 171.4)), (place(-17.0, 179.9), place(-17.1, -179.9))] {
        let middle = hopwright::physics::geodesy::between(from, to, 0.5);
        let [whole, half, other] = [(from, to), (from, middle), (middle, to)]
            .map(|(a, b)| hopwright::physics::geodesy::inverse(a, b).expect("apart").distance.0);
        assert!((half - whole / 2.0).abs() < 1e-6 && (other - half).abs() < 1e-6);
    }
}
