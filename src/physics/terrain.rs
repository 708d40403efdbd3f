//! Heights of the ground off tiles.
//!
//! The bytes of a tile go in, a [`Tile`] comes out that knows its corners; a position goes in, a height comes out by
//! bilinear interpolation, or that the tile has none there. Nothing is ever taken for sea level.

use std::collections::{BTreeSet, HashMap};
use std::io::{Read, Seek};

use tiff::decoder::{Decoder, DecodingResult, Limits};
use tiff::tags::Tag;

use super::geodesy::Position;
use crate::units::Metres;

/// A tile of more samples than this is refused: cut it up.
const MOST_SAMPLES: usize = 40_000_000;

/// What a cell of an `.hgt` tile holds where nothing was measured.
const HGT_VOID: i16 = i16::MIN;

/// Why bytes are no tile.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{0}")]
pub struct NotATile(String);

fn refuse(reason: impl Into<String>) -> NotATile {
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
    /// Rows and columns from the north-west sample, if the tile reaches there.
    fn place(&self, position: Position) -> Option<(f64, f64)> {
        let row = (self.north - position.latitude.0) / self.row_step;
        let column = (position.longitude.0 - self.west) / self.column_step;
        // A hair for the rounding of degrees; a cell reaches half a step beyond its sample.
        let hair = if self.cells { 0.5 + 1e-6 } else { 1e-6 };
        let (last_row, last_column) = (count(self.rows) - 1.0, count(self.columns) - 1.0);
        let inside = (-hair..=last_row + hair).contains(&row) && (-hair..=last_column + hair).contains(&column);
        inside.then(|| (row.clamp(0.0, last_row), column.clamp(0.0, last_column)))
    }

    /// Whether the tile reaches a position.
    #[must_use]
    pub fn holds(&self, position: Position) -> bool {
        self.place(position).is_some()
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
    /// A tile in SRTM layout: big-endian sixteen-bit metres, from the north-west, row by row; -32768 is a void.
    ///
    /// # Errors
    /// See [`Grid::of_hgt`].
    ///
    /// Source: USGS, SRTM Topography, section 2, file format (from memory).
    pub fn hgt(name: &str, bytes: &[u8]) -> Result<Self, NotATile> {
        let grid = Grid::of_hgt(name, bytes.len() as u64)?;
        let height = |pair: &[u8]| {
            let height = i16::from_be_bytes([pair[0], pair[1]]);
            if height == HGT_VOID { f32::NAN } else { f32::from(height) }
        };
        let heights = bytes.chunks_exact(2).map(height).collect();
        Ok(Self { grid, piece: (grid.rows, grid.columns), pieces: HashMap::from([(0, (grid.columns, heights))]) })
    }

    /// The heights of a `GeoTIFF` around some positions: one band of metres on a north-up grid of degrees. Takes what is
    /// decoded out of `samples`, for a file of a few bytes may hold millions of them.
    ///
    /// # Errors
    /// No TIFF, too large, more than one band, a grid that is not of degrees, or more to decode than `samples`.
    ///
    /// Source: OGC 19-008r4, `GeoTIFF` 1.1, for the tags and keys.
    pub fn geotiff(
        reader: impl Read + Seek,
        positions: impl IntoIterator<Item = Position>,
        samples: &mut usize,
    ) -> Result<Self, NotATile> {
        let (grid, void, mut decoder) = open(reader)?;
        let (columns, rows) = decoder.chunk_dimensions();
        let piece = ((rows as usize).clamp(1, grid.rows), (columns as usize).clamp(1, grid.columns));
        let mut tile = Self { grid, piece, pieces: HashMap::new() };
        let wanted: BTreeSet<usize> = positions
            .into_iter()
            .flat_map(|position| tile.corners(position))
            .map(|(i, j, _)| tile.number(i, j))
            .collect();
        for number in wanted {
            let count = u32::try_from(number).map_err(|_| refuse("it has too many pieces"))?;
            let (width, height) = decoder.chunk_data_dimensions(count);
            let size = (width as usize).saturating_mul(height as usize);
            *samples = samples.checked_sub(size).ok_or_else(|| refuse(SPENT))?;
            let read = decoder.read_chunk(count).map_err(|error| refuse(format!("it cannot be decoded: {error}")))?;
            let heights = narrowed(read, void)?;
            if heights.len() != size {
                return Err(refuse("it has more than one band"));
            }
            tile.pieces.insert(number, (width as usize, heights));
        }
        Ok(tile)
    }

    /// The number of the piece a sample is in.
    fn number(&self, i: usize, j: usize) -> usize {
        i / self.piece.0 * self.grid.columns.div_ceil(self.piece.1) + j / self.piece.1
    }

    /// A sample; not a number where it is a void or has not been read.
    fn sample(&self, i: usize, j: usize) -> f32 {
        let (row, column) = (i % self.piece.0, j % self.piece.1);
        let piece = self.pieces.get(&self.number(i, j));
        piece.and_then(|(width, heights)| heights.get(row * width + column)).copied().unwrap_or(f32::NAN)
    }

    /// The samples around a position and their weights; those without weight are left out. None outside.
    fn corners(&self, position: Position) -> impl Iterator<Item = (usize, usize, f64)> + use<> {
        let whole = |value: f64, most: usize| {
            #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "clamped to the grid")]
            let index = (value.floor() as usize).min(most - 2);
            (index, value - count(index))
        };
        let corners = self.grid.place(position).map(|(row, column)| {
            let ((i, u), (j, v)) = (whole(row, self.grid.rows), whole(column, self.grid.columns));
            [(i, j, (1.0 - u) * (1.0 - v)), (i + 1, j, u * (1.0 - v)), (i, j + 1, (1.0 - u) * v), (i + 1, j + 1, u * v)]
        });
        corners.into_iter().flatten().filter(|(_, _, weight)| *weight > 0.0)
    }

    /// The height at a position, bilinear between the four samples around it.
    ///
    /// ```text
    /// h = h₀₀ (1-u) (1-v) + h₁₀ u (1-v) + h₀₁ (1-u) v + h₁₁ u v
    /// ```
    ///
    /// A sample without weight may be void.
    ///
    /// Source: Recommendation ITU-R P.1144-12, bilinear interpolation.
    #[must_use]
    pub fn height(&self, position: Position) -> Ground {
        if !self.grid.holds(position) {
            return Ground::Outside;
        }
        let mut sum = 0.0;
        for (i, j, weight) in self.corners(position) {
            sum += weight * f64::from(self.sample(i, j));
        }
        if sum.is_nan() { Ground::Void } else { Ground::Height(Metres(sum)) }
    }
}

/// What is said of a tile for which no samples are left.
pub const SPENT: &str = "the tiles hold more samples along the hops than are read in one run";

/// The samples as heights; not a number in a void.
fn narrowed(read: DecodingResult, void: Option<f64>) -> Result<Vec<f32>, NotATile> {
    #[expect(clippy::cast_possible_truncation, reason = "a height to a hundredth of a millimetre is enough")]
    let narrow = |value: f64| if Some(value) == void || !value.is_finite() { f32::NAN } else { value as f32 };
    Ok(match read {
        DecodingResult::I16(values) => values.into_iter().map(|value| narrow(value.into())).collect(),
        DecodingResult::U16(values) => values.into_iter().map(|value| narrow(value.into())).collect(),
        DecodingResult::I32(values) => values.into_iter().map(|value| narrow(value.into())).collect(),
        DecodingResult::F32(values) => values.into_iter().map(|value| narrow(value.into())).collect(),
        DecodingResult::F64(values) => values.into_iter().map(narrow).collect(),
        _ => return Err(refuse("its samples are neither 16- or 32-bit whole numbers nor floating ones")),
    })
}

/// The grid of a `GeoTIFF`, without its heights.
///
/// # Errors
/// As [`Tile::geotiff`].
pub fn geotiff_grid(reader: impl Read + Seek) -> Result<Grid, NotATile> {
    open(reader).map(|(grid, _, _)| grid)
}

/// Keys of the `GeoTIFF` directory that are looked at, and what they must hold.
const MODEL_TYPE: (u16, u16) = (1024, 2);
const RASTER_TYPE: u16 = 1025;
const PIXEL_IS_POINT: u16 = 2;
const GEODETIC_SYSTEM: u16 = 2048;
/// WGS 84, ETRS89 and NAD83: within two metres of each other.
const SYSTEMS: [u16; 3] = [4326, 4258, 4269];
const VERTICAL_UNITS: u16 = 4099;
const METRE: u16 = 9001;

fn open<R: Read + Seek>(reader: R) -> Result<(Grid, Option<f64>, Decoder<R>), NotATile> {
    let mut limits = Limits::default();
    limits.decoding_buffer_size = MOST_SAMPLES * 4;
    let mut decoder =
        Decoder::new(reader).map_err(|error| refuse(format!("it is no TIFF: {error}")))?.with_limits(limits);
    let (width, height) = decoder.dimensions().map_err(|error| refuse(error.to_string()))?;
    let (columns, rows) = (width as usize, height as usize);
    if rows < 2 || columns < 2 || rows.saturating_mul(columns) > MOST_SAMPLES {
        return Err(refuse(format!("{columns} × {rows} samples are too few or too many; cut it into smaller tiles")));
    }
    let keys =
        decoder.get_tag_u16_vec(Tag::GeoKeyDirectoryTag).map_err(|_| refuse("it is a TIFF without a position"))?;
    // Four words a key: its number, where its value is (0: here), how many, the value.
    let key = |wanted: u16| keys.chunks_exact(4).skip(1).find(|key| key[0] == wanted && key[1] == 0).map(|key| key[3]);
    if key(MODEL_TYPE.0) != Some(MODEL_TYPE.1) || !key(GEODETIC_SYSTEM).is_some_and(|code| SYSTEMS.contains(&code)) {
        return Err(refuse("its grid is not one of WGS 84 degrees; convert it to EPSG:4326"));
    }
    if key(VERTICAL_UNITS).is_some_and(|unit| unit != METRE) {
        return Err(refuse("its heights are not in metres"));
    }
    let scale = decoder.get_tag_f64_vec(Tag::ModelPixelScaleTag);
    let tie = decoder.get_tag_f64_vec(Tag::ModelTiepointTag);
    let (Ok([column_step, row_step, ..]), Ok([i, j, _, x, y, _])) = (scale.as_deref(), tie.as_deref()) else {
        return Err(refuse("it has no single corner and scale; write it north up"));
    };
    let cells = key(RASTER_TYPE) != Some(PIXEL_IS_POINT);
    let shift = if cells { 0.5 } else { 0.0 };
    let (north, west) = (y + (j - shift) * row_step, x - (i - shift) * column_step);
    let grid = Grid { north, west, row_step: *row_step, column_step: *column_step, rows, columns, cells };
    if ![north, west, *row_step, *column_step].iter().all(|value| value.is_finite())
        || *row_step <= 0.0
        || *column_step <= 0.0
    {
        return Err(refuse("its corner or scale is no number above zero"));
    }
    let void = decoder
        .get_tag_ascii_string(Tag::GdalNodata)
        .ok()
        .and_then(|text| text.trim().trim_end_matches('\0').parse().ok());
    Ok((grid, void, decoder))
}
