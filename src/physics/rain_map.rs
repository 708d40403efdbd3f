//! The rain rate of a place, read off a map.
//!
//! A [`Grid`] of rates and a position go in, the rate between the four nearest cells comes out. How the published map
//! is read is for [`super::rain_map_text`].

use super::geodesy::Position;
use crate::units::{Degrees, Latitude, Longitude, MillimetresPerHour};

/// Where the cells of a map lie.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Grid {
    /// Circles of latitude, at least two.
    pub rows: usize,
    /// Meridians, at least two.
    pub columns: usize,
    /// Latitude of the first row.
    pub first_latitude: Latitude,
    /// Longitude of the first column.
    pub first_longitude: Longitude,
    /// From one row to the next; negative if the first row is the northernmost.
    pub latitude_step: Degrees,
    /// From one column to the next, eastward.
    pub longitude_step: Degrees,
}

/// The grid of the P.837-7 map. First and last column are the same meridian.
pub const P837: Grid = Grid {
    rows: 1441,
    columns: 2881,
    first_latitude: Latitude(-90.0),
    first_longitude: Longitude(-180.0),
    latitude_step: Degrees(0.125),
    longitude_step: Degrees(0.125),
};

/// A position between four cells: those of `row` and the next, `column` and the next, and the share of the second each.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Spot {
    pub row: usize,
    pub column: usize,
    u: f64,
    v: f64,
}

impl Grid {
    /// Where a position lies; none outside the grid. Longitudes wrap.
    pub(super) fn locate(&self, position: Position) -> Option<Spot> {
        let y = (position.latitude.0 - self.first_latitude.0) / self.latitude_step.0;
        let x = (position.longitude.0 - self.first_longitude.0).rem_euclid(360.0) / self.longitude_step.0;
        let (row, u) = cell(y, self.rows)?;
        let (column, v) = cell(x, self.columns)?;
        Some(Spot { row, column, u, v })
    }
}

/// Whole and broken part of a place among `count` cells. On the last cell the whole part is the last but one.
fn cell(place: f64, count: usize) -> Option<(usize, f64)> {
    let last = count.checked_sub(2)?;
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "not below zero, and past the end is none"
    )]
    let whole = (place >= 0.0).then_some(place.floor() as usize)?.min(last);
    let broken = place - index(whole);
    (broken <= 1.0).then_some((whole, broken))
}

#[expect(clippy::cast_precision_loss, reason = "a map has fewer cells than a number has digits")]
pub(super) fn index(count: usize) -> f64 {
    count as f64
}

impl Spot {
    /// The rate between four cells, given by rows.
    ///
    /// ```text
    /// I = R(0,0) (1 - u) (1 - v) + R(1,0) u (1 - v) + R(0,1) (1 - u) v + R(1,1) u v
    /// ```
    ///
    /// Source: Recommendation ITU-R P.1144-12, Annex 1, section 1, bilinear interpolation (clause from memory, not
    /// seen).
    pub(super) fn between(&self, [lower, upper]: [[MillimetresPerHour; 2]; 2]) -> MillimetresPerHour {
        let along = |[west, east]: [MillimetresPerHour; 2]| west.0 * (1.0 - self.v) + east.0 * self.v;
        MillimetresPerHour(along(lower) * (1.0 - self.u) + along(upper) * self.u)
    }
}

/// A grid of fewer than two rows or columns, or not as many cells as there are rates.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct WrongSize {
    /// Rows of the grid.
    pub rows: usize,
    /// Columns of the grid.
    pub columns: usize,
    /// Rates there are for it.
    pub rates: usize,
}

impl std::error::Error for WrongSize {}

impl std::fmt::Display for WrongSize {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let Self { rows, columns, rates } = self;
        write!(f, "{rates} rain rates do not make a map of {rows} rows and {columns} columns")
    }
}

/// A map of the rain rate exceeded for 0.01 % of the average year, `R_0.01`.
#[derive(Debug, Clone, PartialEq)]
pub struct RainMap {
    grid: Grid,
    /// Row after row.
    rates: Vec<MillimetresPerHour>,
}

impl RainMap {
    /// A map from its rates, row after row.
    ///
    /// # Errors
    /// The grid has fewer than two rows or columns, or not as many cells as there are rates.
    pub fn new(grid: Grid, rates: Vec<MillimetresPerHour>) -> Result<Self, WrongSize> {
        let Grid { rows, columns, .. } = grid;
        if rows < 2 || columns < 2 || rows.checked_mul(columns) != Some(rates.len()) {
            return Err(WrongSize { rows, columns, rates: rates.len() });
        }
        Ok(Self { grid, rates })
    }

    /// Where its cells lie.
    #[must_use]
    pub fn grid(&self) -> &Grid {
        &self.grid
    }

    /// `R_0.01` at a position; none outside the map, which never happens on one of the whole Earth.
    ///
    /// Zero is a value like others: deserts and ice caps have it, and a hop there has no rain outage in the model. For
    /// a hop, ask for the middle of the path.
    ///
    /// Source: Recommendation ITU-R P.837-7, Annex 2, by the bilinear interpolation of P.1144-12 (clauses from memory,
    /// not seen).
    #[must_use]
    pub fn rate(&self, position: Position) -> Option<MillimetresPerHour> {
        let spot = self.grid.locate(position)?;
        let pair = |row: usize| {
            let at = row * self.grid.columns + spot.column;
            [self.rates[at], self.rates[at + 1]]
        };
        Some(spot.between([pair(spot.row), pair(spot.row + 1)]))
    }
}
