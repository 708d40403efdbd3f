//! The text of the published rain map.
//!
//! Three matrices go in, a [`RainMap`] comes out. The ITU issues them with Recommendation P.837-7 as `R001.TXT`,
//! `Lat_R001.TXT` and `Lon_R001.TXT`: rate, latitude and longitude of each cell, a line for a row, white space between
//! cells. They are not part of this program: its user brings them. Size, order and unit
//! ([`P837`](super::rain_map::P837)) are those of a public copy of the numbers; the names and the layout of the text
//! are from memory, not seen, so nothing of them is taken for granted but the white space and the lines.

use std::fmt;

use super::geodesy::Position;
use super::rain_map::{Grid, RainMap, index};
use crate::units::{Degrees, Latitude, Longitude, MillimetresPerHour, Quantity};

/// How far a cell's latitude or longitude may be from its place on an even grid, in degrees: rounding in the text.
const ROUNDING: f64 = 0.01;

/// One of the three files of a map.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Matrix {
    /// Rain rates.
    Values,
    /// Latitudes of the same cells.
    Latitudes,
    /// Longitudes of the same cells.
    Longitudes,
}

/// Why a text is no map. Rows and columns count from one.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum MapError {
    /// A cell that is no number, or no rain rate.
    Cell(Matrix, usize, usize, Box<str>),
    /// A row has this many cells, not as many as the first.
    Ragged(Matrix, usize, usize),
    /// A matrix has this many rows and columns: fewer than two, or not as many as the values or the grid.
    Size(Matrix, usize, usize),
    /// A latitude or longitude that is not where an even grid has it.
    OffGrid(Matrix, usize, usize),
}

impl std::error::Error for MapError {}

impl fmt::Display for Matrix {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Values => "rain rates",
            Self::Latitudes => "latitudes",
            Self::Longitudes => "longitudes",
        })
    }
}

impl fmt::Display for MapError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Cell(matrix, row, column, text) => {
                write!(f, "`{text}` in row {row}, column {column} is not one of the {matrix}")
            }
            Self::Ragged(matrix, row, cells) => {
                write!(f, "row {row} of the {matrix} is not like the first: {cells} cells")
            }
            Self::Size(matrix, rows, columns) => {
                write!(f, "the {matrix} are {rows} rows of {columns}, which does not fit the map")
            }
            Self::OffGrid(matrix, row, column) => {
                write!(f, "row {row}, column {column} of the {matrix} is not on an even grid")
            }
        }
    }
}

/// The map in three matrices of text.
///
/// Every cell is read and checked: the matrices are of one size, rates lie in what [`MillimetresPerHour`] may be,
/// and latitudes and longitudes on an even grid, the one in steps from row to row, the other eastward from column to
/// column. Empty lines are passed over.
///
/// # Errors
/// The first cell or row that is not so.
pub fn parse(values: &str, latitudes: &str, longitudes: &str) -> Result<RainMap, MapError> {
    let mut rates = Vec::new();
    let (rows, columns) = scan(values, Matrix::Values, |_, _, rate| {
        rates.push(MillimetresPerHour(rate));
        is_rate(rate).then_some(()).ok_or(Fault::Cell)
    })?;
    if rows < 2 || columns < 2 {
        return Err(MapError::Size(Matrix::Values, rows, columns));
    }
    let size = (rows, columns);
    let (first_latitude, latitude_step) = axis(latitudes, Matrix::Latitudes, size, |row, _| row)?;
    let (first_longitude, longitude_step) = axis(longitudes, Matrix::Longitudes, size, |_, column| column)?;
    if longitude_step < 0.0 {
        return Err(MapError::OffGrid(Matrix::Longitudes, 1, 2));
    }
    let grid = Grid {
        rows,
        columns,
        first_latitude: Latitude(first_latitude),
        first_longitude: Longitude(first_longitude),
        latitude_step: Degrees(latitude_step),
        longitude_step: Degrees(longitude_step),
    };
    RainMap::new(grid, rates).map_err(|_| MapError::Size(Matrix::Values, rows, columns))
}

/// `R_0.01` at one position from the text of the rates alone, of a grid that is known: what [`RainMap::rate`] gives, by
/// reading no more than four cells. Nothing else is checked. None outside the map.
///
/// # Errors
/// One of the four cells is not there, or no rain rate.
pub fn rate_at(values: &str, grid: &Grid, position: Position) -> Result<Option<MillimetresPerHour>, MapError> {
    let Some(spot) = grid.locate(position) else { return Ok(None) };
    let mut lines = rows(values).skip(spot.row);
    let mut pair = |row: usize| {
        let mut words = lines.next().unwrap_or_default().split_ascii_whitespace().skip(spot.column);
        let mut rate = |column: usize| {
            let word = words.next().unwrap_or_default();
            let rate = number(word).filter(|rate| is_rate(*rate)).map(MillimetresPerHour);
            rate.ok_or_else(|| bad(Matrix::Values, row, column, word))
        };
        Ok([rate(spot.column)?, rate(spot.column + 1)?])
    };
    Ok(Some(spot.between([pair(spot.row)?, pair(spot.row + 1)?])))
}

/// What may be wrong with a number.
enum Fault {
    Cell,
    OffGrid,
}

/// Hands row, column (from zero) and number of every cell to `each`, and gives the size.
fn scan(
    text: &str,
    matrix: Matrix,
    mut each: impl FnMut(usize, usize, f64) -> Result<(), Fault>,
) -> Result<(usize, usize), MapError> {
    let (mut height, mut width) = (0, 0);
    for (row, line) in rows(text).enumerate() {
        let mut cells = 0;
        for word in line.split_ascii_whitespace() {
            match number(word).ok_or(Fault::Cell).and_then(|number| each(row, cells, number)) {
                Ok(()) => cells += 1,
                Err(Fault::Cell) => return Err(bad(matrix, row, cells, word)),
                Err(Fault::OffGrid) => return Err(MapError::OffGrid(matrix, row + 1, cells + 1)),
            }
        }
        if row == 0 {
            width = cells;
        } else if cells != width {
            return Err(MapError::Ragged(matrix, row + 1, cells));
        }
        height += 1;
    }
    Ok((height, width))
}

/// First value and step of an even axis, of which each cell holds the value that `place` says it has.
fn axis(
    text: &str,
    matrix: Matrix,
    size: (usize, usize),
    place: impl Fn(usize, usize) -> usize,
) -> Result<(f64, f64), MapError> {
    let width = rows(text).next().map_or(0, |line| line.split_ascii_whitespace().count());
    let found = (rows(text).count(), width);
    if found != size {
        return Err(MapError::Size(matrix, found.0, found.1));
    }
    let mut words = text.split_ascii_whitespace();
    let (Some(first), Some(last)) = (words.next().and_then(number), words.next_back().and_then(number)) else {
        // One of these two is no number: the scan finds where it, or one before it, stands.
        return scan(text, matrix, |_, _, _| Ok(())).map(|_| (0.0, 0.0));
    };
    let step = (last - first) / index(place(size.0 - 1, size.1 - 1));
    scan(text, matrix, |row, column, value| {
        let off = value - (first + index(place(row, column)) * step);
        (off.abs() <= ROUNDING && step.abs() > ROUNDING).then_some(()).ok_or(Fault::OffGrid)
    })?;
    Ok((first, step))
}

fn rows(text: &str) -> impl Iterator<Item = &str> {
    text.lines().filter(|line| !line.trim_ascii().is_empty())
}

fn is_rate(rate: f64) -> bool {
    let (least, most) = MillimetresPerHour::KIND.range;
    (least..=most).contains(&rate)
}

fn bad(matrix: Matrix, row: usize, column: usize, word: &str) -> MapError {
    MapError::Cell(matrix, row + 1, column + 1, word.chars().take(20).collect())
}

/// A finite decimal number. Up to nine digits are read as a whole number over a power of ten, which is exact and quick;
/// all else goes the long way.
fn number(word: &str) -> Option<f64> {
    const POWERS: [f64; 10] = [1.0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9];
    let unsigned = word.strip_prefix('-').unwrap_or(word);
    let long_way = || word.parse().ok().filter(|number: &f64| number.is_finite());
    if !(2..=10).contains(&unsigned.len()) {
        return long_way();
    }
    let (mut digits, mut point) = (0_u32, None);
    for (at, byte) in unsigned.bytes().enumerate() {
        match byte {
            b'0'..=b'9' => digits = digits.wrapping_mul(10).wrapping_add(u32::from(byte - b'0')),
            b'.' if point.is_none() => point = Some(at),
            _ => return long_way(),
        }
    }
    let Some(point) = point else { return long_way() };
    let value = f64::from(digits) / POWERS[unsigned.len() - 1 - point];
    Some(if unsigned.len() == word.len() { value } else { -value })
}
