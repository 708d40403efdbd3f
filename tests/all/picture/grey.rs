//! A page as a picture in grey.

use std::fs;
use std::io::Cursor;
use std::path::Path;

use hayro::hayro_interpret::InterpreterSettings;
use hayro::hayro_syntax::Pdf;
use hayro::vello_cpu::color::palette::css::WHITE;
use hayro::{RenderCache, RenderSettings, render};

/// Dots in an inch: a digit in the smallest type is four high, enough to see it change.
pub const DPI: f32 = 48.0;

/// Steps of grey are this far apart in a reference: sixteen of them, four bits a dot.
const STEP: u8 = 17;

/// A page, row by row from the top; 0 is black, 255 white.
#[derive(Clone, PartialEq, Eq)]
pub struct Grey {
    /// Dots across.
    pub width: usize,
    /// Dots, `width` to a row.
    pub dots: Vec<u8>,
}

/// A page as it came out of the renderer.
pub struct Rendered {
    /// What is compared.
    pub grey: Grey,
    /// The first dot that is no grey: across, down, its red, green and blue.
    pub coloured: Option<(usize, usize, [u8; 3])>,
}

/// The pages of a PDF.
pub fn render_pages(bytes: Vec<u8>) -> Vec<Rendered> {
    let pdf = Pdf::new(bytes).unwrap_or_else(|error| panic!("no readable PDF: {error:?}"));
    let (cache, interpreter) = (RenderCache::new(), InterpreterSettings::default());
    let scale = DPI / 72.0;
    let settings = RenderSettings { x_scale: scale, y_scale: scale, bg_color: WHITE, ..RenderSettings::default() };
    let pages = pdf.pages().iter().map(|page| {
        let pixmap = render(page, &cache, &interpreter, &settings);
        let width = usize::from(pixmap.width());
        let dots = pixmap.data();
        let coloured = dots.iter().position(|dot| dot.r != dot.g || dot.g != dot.b).map(|at| {
            let dot = dots[at];
            (at % width, at / width, [dot.r, dot.g, dot.b])
        });
        Rendered { grey: Grey { width, dots: dots.iter().map(|dot| dot.g).collect() }, coloured }
    });
    pages.collect()
}

impl Grey {
    /// Dots down.
    pub fn height(&self) -> usize {
        self.dots.len() / self.width
    }

    /// The grey at a spot.
    pub fn at(&self, x: usize, y: usize) -> u8 {
        self.dots[y * self.width + x]
    }

    /// One row of dots.
    pub fn row(&self, y: usize) -> &[u8] {
        &self.dots[y * self.width..(y + 1) * self.width]
    }

    /// A picture in grey on disk.
    ///
    /// # Errors
    /// No file there, or no picture in grey of four or eight bits.
    pub fn read(path: &Path) -> Result<Self, String> {
        let bytes = fs::read(path).map_err(|error| error.to_string())?;
        let mut decoder = png::Decoder::new(Cursor::new(bytes));
        decoder.set_transformations(png::Transformations::EXPAND);
        let mut reader = decoder.read_info().map_err(|error| error.to_string())?;
        let size = reader.output_buffer_size().ok_or("too large")?;
        let mut dots = vec![0; size];
        let frame = reader.next_frame(&mut dots).map_err(|error| error.to_string())?;
        if (frame.color_type, frame.bit_depth) != (png::ColorType::Grayscale, png::BitDepth::Eight) {
            return Err(format!("{:?} of {:?} bits, not grey", frame.color_type, frame.bit_depth));
        }
        dots.truncate(frame.buffer_size());
        Ok(Self { width: frame.width as usize, dots })
    }

    /// Writes it in sixteen greys: half the bytes, and the comparison does not see the difference.
    ///
    /// # Errors
    /// The file cannot be written.
    pub fn write(&self, path: &Path) -> Result<(), String> {
        let nibble = |dot: u8| dot.saturating_add(STEP / 2) / STEP;
        let row = |row: &[u8]| -> Vec<u8> {
            let pair = |pair: &[u8]| (nibble(pair[0]) << 4) | pair.get(1).map_or(0, |dot| nibble(*dot));
            row.chunks(2).map(pair).collect()
        };
        let packed: Vec<u8> = self.dots.chunks(self.width).flat_map(row).collect();
        write_png(path, (self.width, self.height()), png::ColorType::Grayscale, png::BitDepth::Four, &packed)
    }
}

/// Writes a picture, as small as it gets.
///
/// # Errors
/// The file cannot be written.
pub fn write_png(
    path: &Path,
    (width, height): (usize, usize),
    color: png::ColorType,
    depth: png::BitDepth,
    data: &[u8],
) -> Result<(), String> {
    let folder = path.parent().ok_or("no folder")?;
    fs::create_dir_all(folder).map_err(|error| error.to_string())?;
    let size = |dots: usize| u32::try_from(dots).map_err(|error| error.to_string());
    // Which filter packs text best is not known beforehand.
    let mut smallest: Option<Vec<u8>> = None;
    for filter in [png::Filter::NoFilter, png::Filter::Up, png::Filter::Adaptive] {
        let mut bytes = Vec::new();
        let mut encoder = png::Encoder::new(&mut bytes, size(width)?, size(height)?);
        encoder.set_color(color);
        encoder.set_depth(depth);
        encoder.set_deflate_compression(png::DeflateCompression::Level(9));
        encoder.set_filter(filter);
        let mut writer = encoder.write_header().map_err(|error| error.to_string())?;
        writer.write_image_data(data).map_err(|error| error.to_string())?;
        writer.finish().map_err(|error| error.to_string())?;
        if smallest.as_ref().is_none_or(|best| bytes.len() < best.len()) {
            smallest = Some(bytes);
        }
    }
    fs::write(path, smallest.ok_or("no bytes")?).map_err(|error| error.to_string())
}
