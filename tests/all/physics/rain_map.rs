//! The rain map: between its cells, around the Earth, and in its text.

use hopwright::physics::geodesy::Position;
use hopwright::physics::rain_map::{Grid, P837, RainMap, WrongSize};
use hopwright::physics::rain_map_text::{MapError, Matrix, parse, rate_at};
use hopwright::units::{Degrees, Latitude, Longitude, MillimetresPerHour};

use super::table::rows;

fn at(latitude: f64, longitude: f64) -> Position {
    Position { latitude: Latitude(latitude), longitude: Longitude(longitude) }
}

/// A grid of the whole Earth in steps of 45°, 5 by 9, and a rate for each cell: column and row in its digits.
const WORLD: Grid = Grid {
    rows: 5,
    columns: 9,
    first_latitude: Latitude(-90.0),
    first_longitude: Longitude(-180.0),
    latitude_step: Degrees(45.0),
    longitude_step: Degrees(45.0),
};

fn rate(row: u32, column: u32) -> f64 {
    f64::from(10 * row + column % 8)
}

fn world() -> RainMap {
    let rates = (0..5).flat_map(|row| (0..9).map(move |column| MillimetresPerHour(rate(row, column))));
    RainMap::new(WORLD, rates.collect()).expect("a map")
}

/// The three matrices of a map with one number for each cell.
fn text(cell: impl Fn(u32, u32) -> String) -> String {
    let line = |row| (0..9).map(|column| cell(row, column)).collect::<Vec<_>>().join("  ");
    (0..5).map(|row| format!("  {}\r\n", line(row))).collect::<Vec<_>>().concat()
}

fn matrices() -> [String; 3] {
    [
        text(|row, column| format!("{:.3}", rate(row, column))),
        text(|row, _| format!("{:.3}", f64::from(row) * 45.0 - 90.0)),
        text(|_, column| format!("{:.3}", f64::from(column) * 45.0 - 180.0)),
    ]
}

fn fault([values, latitudes, longitudes]: [&str; 3]) -> MapError {
    parse(values, latitudes, longitudes).expect_err("a fault")
}

/// `text` with one cell, counted from zero, replaced.
fn with_cell(text: &str, row: usize, column: usize, cell: &str) -> String {
    let lines = text.lines().enumerate().map(|(at, line)| {
        let mut words: Vec<&str> = line.split_whitespace().collect();
        if at == row {
            words[column] = cell;
        }
        words.join("\t") + "\n"
    });
    lines.collect()
}

#[test]
fn cells_of_the_published_map_are_found_where_they_are() {
    for row in rows(include_str!("../../tables/rain_map.csv")) {
        let (latitude, longitude) = (row.number("latitude"), row.number("longitude"));
        // The four cells around the point, the second row like the first.
        let grid = Grid {
            rows: 2,
            columns: 2,
            first_latitude: Latitude(latitude.min(89.875)),
            first_longitude: Longitude((longitude * 8.0).floor().min(1439.0) / 8.0),
            ..P837
        };
        let rates = ["west", "east", "west", "east"].map(|column| MillimetresPerHour(row.number(column)));
        let map = RainMap::new(grid, rates.to_vec()).expect("a map");
        row.check("rate", map.rate(at(latitude, longitude)).expect("inside").0, 1e-9);
    }
}

#[test]
fn between_cells_the_rate_is_bilinear() {
    let map = world();
    for (position, expected) in [
        (at(0.0, 0.0), 24.0),
        (at(22.5, 0.0), 29.0),
        (at(0.0, 22.5), 24.5),
        (at(11.25, 33.75), 0.75 * 24.75 + 0.25 * 34.75),
        (at(-45.0, -180.0), 10.0),
    ] {
        let got = map.rate(position).expect("inside");
        assert!((got.0 - expected).abs() < 1e-12, "{got} is not {expected}");
    }
}

#[test]
fn the_map_goes_around_the_earth_and_ends_at_the_poles() {
    let map = world();
    for latitude in [-90.0, -10.0, 45.0, 90.0] {
        assert_eq!(map.rate(at(latitude, 180.0)), map.rate(at(latitude, -180.0)));
        assert_eq!(map.rate(at(latitude, 190.0)), map.rate(at(latitude, -170.0)));
        let across =
            [179.999_999, 180.0, -179.999_999].map(|longitude| map.rate(at(latitude, longitude)).expect("inside"));
        assert!((across[0] - across[1]).0.abs() < 1e-5 && (across[2] - across[1]).0.abs() < 1e-5);
    }
    assert_eq!(map.rate(at(90.0, 0.0)), Some(MillimetresPerHour(44.0)));
    assert_eq!(map.rate(at(-90.0, 45.0)), Some(MillimetresPerHour(5.0)));
    assert_eq!(map.rate(at(90.1, 0.0)), None);
    assert_eq!(map.rate(at(f64::NAN, 0.0)), None);
    assert_eq!(map.rate(at(0.0, f64::INFINITY)), None);
}

#[test]
fn a_map_of_a_region_ends_at_its_rim() {
    let grid = Grid { rows: 2, columns: 3, first_latitude: Latitude(46.0), first_longitude: Longitude(171.0), ..P837 };
    let map = RainMap::new(grid, vec![MillimetresPerHour(0.0); 6]).expect("a map");
    assert_eq!(map.rate(at(46.1, 171.2)), Some(MillimetresPerHour(0.0)), "no rain is a rate like others");
    for outside in [at(45.99, 171.1), at(46.13, 171.1), at(46.1, 170.99), at(46.1, 171.26), at(46.1, -8.9)] {
        assert_eq!(map.rate(outside), None);
    }
    let wrong = RainMap::new(grid, vec![MillimetresPerHour(0.0); 5]).expect_err("a rate too few");
    assert_eq!(wrong, WrongSize { rows: 2, columns: 3, rates: 5 });
    assert_eq!(wrong.to_string(), "5 rain rates do not make a map of 2 rows and 3 columns");
    assert!(RainMap::new(Grid { rows: 1, ..grid }, vec![MillimetresPerHour(0.0); 3]).is_err());
}

#[test]
fn three_matrices_of_text_are_the_map() {
    let [values, latitudes, longitudes] = matrices();
    assert_eq!(parse(&values, &latitudes, &longitudes), Ok(world()));

    // Upside down, in exponents, with empty lines: still the same rates in the same places.
    let flip = |text: &str| text.lines().rev().collect::<Vec<_>>().join("\n\n");
    let exponents = text(|row, column| format!("{:.7e}", rate(row, column)));
    let flipped = parse(&flip(&exponents), &flip(&latitudes), &flip(&longitudes)).expect("a map");
    assert_eq!(flipped.grid().latitude_step, Degrees(-45.0));
    for position in [at(90.0, 0.0), at(-90.0, 12.0), at(17.0, 179.0), at(-1.0, -60.0)] {
        let [a, b] = [&flipped, &world()].map(|map| map.rate(position).expect("inside").0);
        assert!((a - b).abs() < 1e-9);
    }
}

#[test]
fn one_point_needs_but_four_cells() {
    let [values, _, _] = matrices();
    for latitude in [-90.0, -60.0, 0.0, 31.0, 90.0] {
        for longitude in [-180.0, -100.0, 0.0, 44.9, 180.0] {
            let position = at(latitude, longitude);
            assert_eq!(rate_at(&values, &WORLD, position), Ok(world().rate(position)));
        }
    }
    let broken = with_cell(&with_cell(&values, 0, 0, "?"), 4, 8, "-1");
    assert_eq!(rate_at(&broken, &WORLD, at(1.0, 1.0)), Ok(world().rate(at(1.0, 1.0))));
    assert_eq!(rate_at(&broken, &WORLD, at(89.0, 179.0)), Err(MapError::Cell(Matrix::Values, 5, 9, "-1".into())));
    assert_eq!(rate_at(&values, &P837, at(-90.0, 0.0)), Err(MapError::Cell(Matrix::Values, 1, 1441, "".into())));
    assert_eq!(rate_at(&values, &WORLD, at(91.0, 0.0)), Ok(None));
}

#[test]
fn a_bad_cell_is_named_by_row_and_column() {
    let [values, latitudes, longitudes] = matrices();
    for bad in ["x", "NaN", "inf", "-0.001", "300.1", "1,5", "1.2.3", "--1", "."] {
        let fault = fault([&with_cell(&values, 2, 7, bad), &latitudes, &longitudes]);
        assert_eq!(fault, MapError::Cell(Matrix::Values, 3, 8, bad.into()));
    }
    let words = fault([&with_cell(&values, 2, 7, "x"), &latitudes, &longitudes]).to_string();
    assert_eq!(words, "`x` in row 3, column 8 is not one of the rain rates");
    for (row, column) in [(0, 0), (3, 4), (4, 8)] {
        let fault = fault([&values, &with_cell(&latitudes, row, column, "N"), &longitudes]);
        assert_eq!(fault, MapError::Cell(Matrix::Latitudes, row + 1, column + 1, "N".into()));
    }
}

#[test]
fn an_uneven_grid_is_refused() {
    let [values, latitudes, longitudes] = matrices();
    let off = fault([&values, &with_cell(&latitudes, 3, 4, "45.020"), &longitudes]);
    assert_eq!(off, MapError::OffGrid(Matrix::Latitudes, 4, 5));
    let off = fault([&values, &latitudes, &with_cell(&longitudes, 1, 8, "-180.000")]);
    assert_eq!(off, MapError::OffGrid(Matrix::Longitudes, 2, 9));
    assert_eq!(off.to_string(), "row 2, column 9 of the longitudes is not on an even grid");
    // The two exchanged, and one that runs westward.
    assert_eq!(fault([&values, &longitudes, &latitudes]), MapError::OffGrid(Matrix::Latitudes, 1, 2));
    let westward = text(|_, column| format!("{:.3}", 180.0 - f64::from(column) * 45.0));
    assert_eq!(fault([&values, &latitudes, &westward]), MapError::OffGrid(Matrix::Longitudes, 1, 2));
}

#[test]
fn matrices_of_other_sizes_are_refused() {
    let [values, latitudes, longitudes] = matrices();
    let short = values.replacen("  0.000", "", 1);
    assert_eq!(fault([&short, &latitudes, &longitudes]), MapError::Ragged(Matrix::Values, 2, 9));
    let less = latitudes.lines().take(4).collect::<Vec<_>>().join("\n");
    assert_eq!(fault([&values, &less, &longitudes]), MapError::Size(Matrix::Latitudes, 4, 9));
    assert_eq!(fault([&values, &latitudes, ""]), MapError::Size(Matrix::Longitudes, 0, 0));
    for nothing in ["", "\n\n", "1.0", "1.0 2.0"] {
        assert!(matches!(fault([nothing, nothing, nothing]), MapError::Size(Matrix::Values, _, _)));
    }
    let fault = fault(["", "", ""]).to_string();
    assert_eq!(fault, "the rain rates are 0 rows of 0, which does not fit the map");
}
