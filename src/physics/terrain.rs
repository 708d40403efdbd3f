//! Heights of the ground off tiles.
//!
//! The bytes of a tile go in, a [`Tile`] comes out that knows its corners; a position goes in, a height comes out by
//! bilinear interpolation, or that the tile has none there. Nothing is ever taken for sea level.

use std::collections::{BTreeSet, HashMap};

use super::geodesy::Position;
use crate::units::Metres;

/// An `.hgt` tile, or a piece of another, of more samples than this is refused: cut it up.
pub(super) const MOST_SAMPLES: usize = 40_000_000;

/// No ground is lower or higher, in metres: the shore of the Dead Sea is at some -430 m, the summit of Everest at 8849 m
/// (from memory). What a tile has beyond is a void that it does not own up to.
pub(super) const GROUND: std::ops::RangeInclusive<f64> = -500.0..=9000.0;

/// What is said of a tile for which no samples are left.
pub const SPENT: &str = "the tiles hold more samples along the hops than are read in one run";

/// Steps of a grid that are nothing: what rounding of degrees makes.
const HAIR: f64 = 1e-6;

/// What a cell of an `.hgt` tile holds where nothing was measured.
const HGT_VOID: i16 = i16::MIN;

/// Why bytes are no tile.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{0}")]
pub struct NotATile(String);

pub(super) fn refuse(reason: impl Into<String>) -> NotATile {
    NotATile(reason.into())
}

/// Where the samples of a tile lie.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Grid {
    /// Latitude of the northernmost row of samples, in degrees.
    pub north: f64,
    /// Longitude of the westernmost column, in degrees.
    pub west: f64,
    /// Degrees from one row to the next, southwards; above zero.
    pub row_step: f64,
    /// Degrees from one column to the next, eastwards; above zero.
    pub column_step: f64,
    /// How many rows, at least two.
    pub rows: usize,
    /// How many columns, at least two.
    pub columns: usize,
    /// Whether a sample stands for the cell around it, so that the tile reaches half a step further.
    pub cells: bool,
}

impl Grid {
    /// Rows and columns from the north-west sample; below zero and beyond the last outside the samples.
    fn place(&self, position: Position) -> (f64, f64) {
        let row = (self.north - position.latitude.0) / self.row_step;
        let column = (position.longitude.0 - self.west) / self.column_step;
        (row, column)
    }

    /// Whether a position is within the tile: between its samples, or in the cell around one.
    #[must_use]
    pub fn holds(&self, position: Position) -> bool {
        let (row, column) = self.place(position);
        let over = if self.cells { 0.5 + HAIR } else { HAIR };
        let inside = |at: f64, many: usize| (-over..=count(many) - 1.0 + over).contains(&at);
        inside(row, self.rows) && inside(column, self.columns)
    }

    /// Whether a position is less than a step from a sample, so that the tile has a share in its height.
    #[must_use]
    pub fn reaches(&self, position: Position) -> bool {
        self.corners(position).next().is_some()
    }

    /// The samples around a position and their weights; those without weight are left out. Near an edge some of the four
    /// are those of the tile beyond.
    pub(super) fn corners(&self, position: Position) -> impl Iterator<Item = (usize, usize, f64)> + use<> {
        let (row, column) = self.place(position);
        let near = |at: f64, many: usize| {
            let before = at.floor();
            [(before, 1.0 - (at - before)), (before + 1.0, at - before)].map(|(index, weight)| {
                let inside = (0.0..count(many)).contains(&index) && weight > HAIR;
                #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "within the grid")]
                inside.then_some((index as usize, weight))
            })
        };
        let columns = near(column, self.columns);
        let rows = near(row, self.rows).into_iter().flatten();
        rows.flat_map(move |(i, u)| columns.into_iter().flatten().map(move |(j, v)| (i, j, u * v)))
    }

    /// Distance from row to row along a meridian, on the sphere of 6371 km.
    #[must_use]
    pub fn spacing(&self) -> Metres {
        Metres(self.row_step.to_radians() * super::geodesy::EARTH_RADIUS.0)
    }

    /// The grid of an `.hgt` tile, by its name and the number of its bytes.
    ///
    /// # Errors
    /// The name is not of the form `N46E171`, or the bytes are no square of two-byte samples.
    pub fn of_hgt(name: &str, bytes: u64) -> Result<Self, NotATile> {
        let (south, west) = corner(name).ok_or_else(|| refuse("the name is not of the form `N46E171.hgt`"))?;
        let samples = usize::try_from(bytes / 2).unwrap_or(usize::MAX);
        let side = samples.isqrt();
        if !bytes.is_multiple_of(2) || side < 2 || side * side != samples || samples > MOST_SAMPLES {
            return Err(refuse(format!("{bytes} bytes are no square of two-byte heights, such as 3601 × 3601")));
        }
        let step = 1.0 / (count(side) - 1.0);
        let north = f64::from(south + 1);
        let west = f64::from(west);
        Ok(Self { north, west, row_step: step, column_step: step, rows: side, columns: side, cells: false })
    }
}

#[expect(clippy::cast_precision_loss, reason = "a tile has fewer samples than 2^52")]
fn count(number: usize) -> f64 {
    number as f64
}

/// South-west corner in whole degrees of a name such as `N46E171`.
fn corner(name: &str) -> Option<(i32, i32)> {
    let (latitude, longitude) = (name.get(..3)?, name.get(3..)?);
    let degrees = |text: &str, positive: char, negative: char, digits: usize| {
        let number = text.get(1..).filter(|rest| rest.len() == digits && rest.bytes().all(|b| b.is_ascii_digit()))?;
        let number: i32 = number.parse().ok()?;
        let letter = text.chars().next()?.to_ascii_uppercase();
        if letter == positive { Some(number) } else { (letter == negative).then_some(-number) }
    };
    Some((degrees(latitude, 'N', 'S', 2)?, degrees(longitude, 'E', 'W', 3)?))
}

/// The name of the one-degree tile a position lies in: `N46E171`.
#[must_use]
pub fn tile_name(position: Position) -> String {
    let (latitude, longitude) = (position.latitude.0.floor(), position.longitude.0.floor());
    let (ns, ew) = (if latitude < 0.0 { 'S' } else { 'N' }, if longitude < 0.0 { 'W' } else { 'E' });
    format!("{ns}{:02.0}{ew}{:03.0}", latitude.abs(), longitude.abs())
}

/// The height a tile gives for a position.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Ground {
    /// Above the tile's sea level.
    Height(Metres),
    /// The tile has a void there.
    Void,
    /// The tile does not reach there.
    Outside,
}

/// What one tile has to say of the height of a position. Between two tiles that meet, each has a share.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Share {
    /// Weight of its samples among the four around the position, above 0, at most 1.
    pub weight: f64,
    /// Mean of its samples by their weights; none where one of them is a void.
    pub height: Option<Metres>,
    /// Whether the position is within the tile.
    pub holds: bool,
}

/// Heights on a grid of latitudes and longitudes.
#[derive(Debug)]
pub struct Tile {
    /// Where they lie.
    pub grid: Grid,
    /// Rows and columns of a piece: tiles are read piece by piece, and only those that are asked for.
    piece: (usize, usize),
    /// By number, row by row from the north-west: how many columns a piece has, and its heights, row by row; not a number
    /// in a void.
    pieces: HashMap<usize, (usize, Vec<f32>)>,
}

impl Tile {
    /// A tile in SRTM layout: big-endian sixteen-bit metres, from the north-west, row by row; -32768 is a void, and so is
    /// what no ground is as low or high as.
    ///
    /// # Errors
    /// See [`Grid::of_hgt`].
    ///
    /// Source: USGS, SRTM Topography, section 2, file format (from memory).
    pub fn hgt(name: &str, bytes: &[u8]) -> Result<Self, NotATile> {
        let grid = Grid::of_hgt(name, bytes.len() as u64)?;
        let height = |pair: &[u8]| {
            let height = i16::from_be_bytes([pair[0], pair[1]]);
            if height == HGT_VOID || !GROUND.contains(&f64::from(height)) { f32::NAN } else { f32::from(height) }
        };
        let mut tile = Self::empty(grid, (grid.rows, grid.columns));
        tile.put(0, grid.columns, bytes.chunks_exact(2).map(height).collect());
        Ok(tile)
    }

    /// A tile none of whose pieces has been read, of so many rows and columns each.
    pub(super) fn empty(grid: Grid, piece: (usize, usize)) -> Self {
        Self { grid, piece, pieces: HashMap::new() }
    }

    /// Puts a piece where it belongs: its number, its columns, its heights.
    pub(super) fn put(&mut self, number: usize, columns: usize, heights: Vec<f32>) {
        self.pieces.insert(number, (columns, heights));
    }

    /// The numbers of the pieces that have a sample around a position.
    pub(super) fn wanted(&self, positions: impl IntoIterator<Item = Position>) -> BTreeSet<usize> {
        let corners = positions.into_iter().flat_map(|position| self.grid.corners(position));
        corners.map(|(i, j, _)| self.number(i, j)).collect()
    }

    /// The number of the piece a sample is in.
    fn number(&self, i: usize, j: usize) -> usize {
        i / self.piece.0 * self.grid.columns.div_ceil(self.piece.1) + j / self.piece.1
    }

    /// A sample; not a number where it is a void or has not been read.
    fn sample(&self, i: usize, j: usize) -> f32 {
        let (row, column) = (i % self.piece.0, j % self.piece.1);
        let piece = self.pieces.get(&self.number(i, j));
        piece.and_then(|(columns, heights)| heights.get(row * columns + column)).copied().unwrap_or(f32::NAN)
    }

    /// What the tile has to say of a position, bilinear between the four samples around it as far as they are its own.
    ///
    /// ```text
    /// h = h₀₀ (1-u) (1-v) + h₁₀ u (1-v) + h₀₁ (1-u) v + h₁₁ u v
    /// ```
    ///
    /// A sample without weight may be void.
    ///
    /// Source: Recommendation ITU-R P.1144-12, bilinear interpolation.
    #[must_use]
    pub fn share(&self, position: Position) -> Option<Share> {
        let (mut weight, mut sum) = (0.0, 0.0);
        for (i, j, part) in self.grid.corners(position) {
            weight += part;
            sum += part * f64::from(self.sample(i, j));
        }
        let height = (!sum.is_nan()).then_some(Metres(sum / weight));
        (weight > 0.0).then(|| Share { weight, height, holds: self.grid.holds(position) })
    }

    /// The height the tile gives for a position by itself.
    #[must_use]
    pub fn height(&self, position: Position) -> Ground {
        match self.share(position).filter(|share| share.holds) {
            None => Ground::Outside,
            Some(share) => share.height.map_or(Ground::Void, Ground::Height),
        }
    }
}

/// A height put together out of the shares of tiles, in the order they are asked.
///
/// Each gives as much as is still open, so that the ground is continuous where one tile ends in the middle of another and
/// where two meet whose samples stand half a step from their edges.
#[derive(Debug, Clone, Copy, Default)]
pub struct Gathered {
    weight: f64,
    sum: f64,
    held: bool,
    void: bool,
}

impl Gathered {
    /// Takes in a share; true if it brought a height.
    pub fn take(&mut self, share: Share) -> bool {
        let Some(height) = share.height else {
            self.void = true;
            return false;
        };
        let part = share.weight.min(1.0 - self.weight);
        self.weight += part;
        self.sum += part * height.0;
        self.held |= share.holds;
        true
    }

    /// Whether nothing is open.
    #[must_use]
    pub fn whole(&self) -> bool {
        self.weight >= 1.0 - 2.0 * HAIR
    }

    /// Whether a tile had a void there.
    #[must_use]
    pub fn void(&self) -> bool {
        self.void
    }

    /// The height, once all tiles were asked: of a position that nothing of is open, or in the outermost half cells.
    #[must_use]
    pub fn height(&self) -> Option<Metres> {
        (self.whole() || self.weight > 0.0 && self.held && !self.void).then(|| Metres(self.sum / self.weight))
    }
}
