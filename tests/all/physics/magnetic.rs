//! Declination against the test values issued with the model.

use hopwright::physics::geodesy::Position;
use hopwright::physics::magnetic::{Declination, MagneticError, declination, magnetic_bearing};
use hopwright::sheet::Reason;
use hopwright::units::{Degrees, Latitude, Longitude, Metres};

use super::table::{Row, rows};

/// What single precision and whole days cost.
const MODEL_TOLERANCE: f64 = 0.001;

const SEA: Position = Position { latitude: Latitude(46.67), longitude: Longitude(171.16) };

#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "the table holds whole numbers")]
fn declined(row: &Row) -> Result<Declination, MagneticError> {
    let date = (row.number("year") as i32, row.number("month") as u8, row.number("day") as u8);
    let (latitude, longitude) = (Latitude(row.number("latitude")), Longitude(row.number("longitude")));
    declination(Position { latitude, longitude }, Metres(1000.0 * row.number("height_km")), date)
}

#[test]
fn declination_matches_the_table() {
    for row in rows(include_str!("../../tables/declination.csv")) {
        let horizontal = row.number("horizontal");
        let Ok(found) = declined(&row) else {
            assert!(horizontal < 2000.0, "refused at {horizontal} nT");
            continue;
        };
        assert!(horizontal >= 2000.0);
        row.check("model", found.angle.0, MODEL_TOLERANCE);
        // The published values are rounded to 0.01°.
        if row.text("kind") == "published" {
            row.check("published", found.angle.0, 0.005 + MODEL_TOLERANCE);
        }
        row.check("uncertainty", found.uncertainty.0, 1e-4);
        assert_eq!(found.caution, horizontal < 6000.0);
    }
}

#[test]
fn a_compass_bearing_is_the_true_one_less_declination() {
    for row in rows(include_str!("../../tables/declination.csv")).filter(|row| row.text("kind") == "site") {
        let found = declined(&row).expect("a site has a declination");
        let bearing = magnetic_bearing(Degrees(row.number("true")), found.angle);
        row.check("magnetic", bearing.0, MODEL_TOLERANCE);
    }
    assert_eq!(magnetic_bearing(Degrees(10.0), Degrees(13.0)), Degrees(357.0));
}

#[test]
fn only_the_five_years_of_the_model_are_answered() {
    let on = |date| {
        let found = declination(SEA, Metres(300.0), date).map(|found| found.angle);
        found.map_err(|error| Reason::from(error).to_string())
    };
    assert!(on((2025, 1, 1)).is_ok() && on((2029, 12, 31)).is_ok());
    let outside = |date| format!("{date} is outside 2025 to 2029, the years of the magnetic model");
    assert_eq!(on((2024, 12, 31)), Err(outside("2024-12-31")));
    assert_eq!(on((2030, 1, 1)), Err(outside("2030-01-01")));
    assert_eq!(on((2026, 2, 29)), Err("2026-02-29 is not a date".into()));
    assert_eq!(on((2026, 13, 1)), Err("2026-13-01 is not a date".into()));
}

#[test]
fn places_without_a_compass_are_refused() {
    let north = Position { latitude: Latitude(86.0), longitude: Longitude(150.0) };
    let refused = declination(north, Metres(0.0), (2026, 6, 1)).expect_err("near the magnetic pole");
    assert!(matches!(refused, MagneticError::Blackout(horizontal) if horizontal < 2000.0), "{refused:?}");
    assert!(Reason::from(refused).to_string().ends_with("nT is below 2000 nT, too weak for a compass"));

    let above = declination(SEA, Metres(900_000.0), (2026, 6, 1));
    assert_eq!(above, Err(MagneticError::Height(Metres(900_000.0))));
    let nowhere = Position { latitude: Latitude(91.0), ..SEA };
    assert_eq!(declination(nowhere, Metres(0.0), (2026, 6, 1)), Err(MagneticError::Position(nowhere)));
}
