//! Heights out of a `GeoTIFF`: one band on a north-up grid of degrees.
//!
//! What cannot be read right is refused by its name: a tile is trusted for whether a path is clear.
//!
//! Source: OGC 19-008r4, `GeoTIFF` 1.1, for the tags and keys.

use std::io::{Read, Seek};

use tiff::ColorType;
use tiff::decoder::{Decoder, DecodingResult, Limits};
use tiff::tags::Tag;

use super::geodesy::Position;
use super::geotiff_heights::Heights;
use super::terrain::{Grid, MOST_SAMPLES, NotATile, SPENT, Tile, refuse};

/// Keys of the `GeoTIFF` directory that are looked at, and what they must hold.
const MODEL_TYPE: (u16, u16) = (1024, 2);
const RASTER_TYPE: u16 = 1025;
const PIXEL_IS_POINT: u16 = 2;
const GEODETIC_SYSTEM: u16 = 2048;
/// WGS 84, ETRS89 and NAD83: within two metres of each other.
const SYSTEMS: [u16; 3] = [4326, 4258, 4269];
/// The same with heights above the ellipsoid: WGS 84, ETRS89, NAD83(2011) (from memory).
const SPATIAL_SYSTEMS: [u16; 3] = [4979, 4937, 6319];
const VERTICAL_SYSTEM: u16 = 4096;
const VERTICAL_UNIT: u16 = 4099;
/// The metadata that scale, offset and unit of a band stand in, as XML.
const METADATA: Tag = Tag::Unknown(42112);
/// Most samples on a side.
const MOST_SIDE: u32 = 100_000;
/// Most pictures in a file that are looked at for a mask: a tile has a few of itself made smaller.
const MOST_PICTURES: usize = 64;
/// The bit of `NewSubfileType` that says a picture is the mask of another one (TIFF 6.0).
const IS_MASK: u32 = 4;

/// The grid of a `GeoTIFF`, without its heights.
///
/// # Errors
/// As [`tile`].
pub fn grid(reader: impl Read + Seek) -> Result<Grid, NotATile> {
    open(reader).map(|(grid, _, _)| grid)
}

/// The heights of a `GeoTIFF` around some positions, strip by strip. Takes what is decoded out of `samples`, for a file of
/// a few bytes may hold millions of them.
///
/// # Errors
/// No TIFF, too large, more than one band, a grid that is not of degrees, heights whose meaning is not plain, or more to
/// decode than `samples`.
pub fn tile(
    reader: impl Read + Seek,
    positions: impl IntoIterator<Item = Position>,
    samples: &mut usize,
) -> Result<Tile, NotATile> {
    let (grid, heights, mut decoder) = open(reader)?;
    let (columns, rows) = decoder.chunk_dimensions();
    let piece = ((rows as usize).clamp(1, grid.rows), (columns as usize).clamp(1, grid.columns));
    let mut tile = Tile::empty(grid, piece);
    for number in tile.wanted(positions) {
        let count = u32::try_from(number).map_err(|_| refuse("it has too many pieces"))?;
        let (width, height) = decoder.chunk_data_dimensions(count);
        let size = (width as usize).saturating_mul(height as usize);
        if size > MOST_SAMPLES {
            return Err(refuse("a strip of it is too large; write it in strips of a few rows, or tiled"));
        }
        *samples = samples.checked_sub(size).ok_or_else(|| refuse(SPENT))?;
        let read = decoder.read_chunk(count).map_err(|error| refuse(format!("it cannot be decoded: {error}")))?;
        let heights = in_metres(read, &heights)?;
        if heights.len() != size {
            return Err(refuse("it has more than one band"));
        }
        tile.put(number, width as usize, heights);
    }
    Ok(tile)
}

/// The samples as heights; not a number in a void.
fn in_metres(read: DecodingResult, heights: &Heights) -> Result<Vec<f32>, NotATile> {
    Ok(match read {
        DecodingResult::I16(values) => values.into_iter().map(|value| heights.of(value)).collect(),
        DecodingResult::U16(values) => values.into_iter().map(|value| heights.of(value)).collect(),
        DecodingResult::I32(values) => values.into_iter().map(|value| heights.of(value)).collect(),
        DecodingResult::F32(values) => values.into_iter().map(|value| heights.of(value)).collect(),
        DecodingResult::F64(values) => values.into_iter().map(|value| heights.of(value)).collect(),
        _ => return Err(refuse("its samples are neither 16- or 32-bit whole numbers nor floating ones")),
    })
}

fn open<R: Read + Seek>(reader: R) -> Result<(Grid, Heights, Decoder<R>), NotATile> {
    let mut limits = Limits::default();
    limits.decoding_buffer_size = MOST_SAMPLES * 4;
    let mut decoder =
        Decoder::new(reader).map_err(|error| refuse(format!("it is no TIFF: {error}")))?.with_limits(limits);
    let keys =
        decoder.get_tag_u16_vec(Tag::GeoKeyDirectoryTag).map_err(|_| refuse("it is a TIFF without a position"))?;
    // Four words a key: its number, where its value is (0: here), how many, the value.
    let key = |wanted: u16| keys.chunks_exact(4).skip(1).find(|key| key[0] == wanted && key[1] == 0).map(|key| key[3]);
    if let Some(system) = key(GEODETIC_SYSTEM).filter(|system| SPATIAL_SYSTEMS.contains(system)) {
        return Err(refuse(format!(
            "EPSG:{system} has heights above the ellipsoid; convert them to those above sea level"
        )));
    }
    if key(MODEL_TYPE.0) != Some(MODEL_TYPE.1) || !key(GEODETIC_SYSTEM).is_some_and(|code| SYSTEMS.contains(&code)) {
        return Err(refuse("its grid is not one of WGS 84 degrees; convert it to EPSG:4326"));
    }
    let cells = key(RASTER_TYPE) != Some(PIXEL_IS_POINT);
    let (system, unit) = (key(VERTICAL_SYSTEM), key(VERTICAL_UNIT));
    let grid = grid_of(&mut decoder, cells)?;
    match decoder.colortype() {
        Ok(ColorType::Gray(_)) => {}
        Ok(_) => return Err(refuse("it has more than one band")),
        Err(error) => return Err(refuse(format!("it cannot be decoded: {error}"))),
    }
    let void = decoder.get_tag_ascii_string(Tag::GdalNodata).ok();
    let metadata = decoder.get_tag_ascii_string(METADATA).ok();
    let heights = Heights::new(system, unit, void.as_deref(), metadata.as_deref())?;
    no_mask(&mut decoder)?;
    Ok((grid, heights, decoder))
}

fn grid_of<R: Read + Seek>(decoder: &mut Decoder<R>, cells: bool) -> Result<Grid, NotATile> {
    let (width, height) = decoder.dimensions().map_err(|error| refuse(error.to_string()))?;
    if !(2..=MOST_SIDE).contains(&width) || !(2..=MOST_SIDE).contains(&height) {
        return Err(refuse(format!("{width} × {height} samples are too few or too many; cut it into smaller tiles")));
    }
    let (columns, rows) = (width as usize, height as usize);
    let scale = decoder.get_tag_f64_vec(Tag::ModelPixelScaleTag);
    let tie = decoder.get_tag_f64_vec(Tag::ModelTiepointTag);
    let (Ok([column_step, row_step, ..]), Ok([i, j, _, x, y, _])) = (scale.as_deref(), tie.as_deref()) else {
        return Err(refuse("it has no single corner and scale; write it north up"));
    };
    let shift = if cells { 0.5 } else { 0.0 };
    let (north, west) = (y + (j - shift) * row_step, x - (i - shift) * column_step);
    let grid = Grid { north, west, row_step: *row_step, column_step: *column_step, rows, columns, cells };
    if ![north, west, *row_step, *column_step].iter().all(|value| value.is_finite())
        || *row_step <= 0.0
        || *column_step <= 0.0
    {
        return Err(refuse("its corner or scale is not a number above zero"));
    }
    Ok(grid)
}

/// Refuses a file in which another picture says what of the first is void: its bits are not read here.
fn no_mask<R: Read + Seek>(decoder: &mut Decoder<R>) -> Result<(), NotATile> {
    let unreadable = |error: tiff::TiffError| refuse(format!("it cannot be decoded: {error}"));
    let Some(first) = decoder.ifd_pointer() else { return Ok(()) };
    let mut next = decoder.read_directory(first).map_err(unreadable)?.next();
    for _ in 0..MOST_PICTURES {
        let Some(at) = next else { return Ok(()) };
        let picture = decoder.read_directory(at).map_err(unreadable)?;
        let kind: Option<u32> =
            decoder.read_directory_tags(&picture).find_tag_unsigned(Tag::NewSubfileType).map_err(unreadable)?;
        if kind.is_some_and(|kind| kind & IS_MASK != 0) {
            return Err(refuse("a mask inside says what of it is void; write the voids as a no-data value instead"));
        }
        next = picture.next();
    }
    Err(refuse(format!("it holds more than {MOST_PICTURES} pictures")))
}
