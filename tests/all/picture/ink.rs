//! What is drawn on a page, piece by piece: where each letter stands, in what colour, and whether its font has a shape for it.

use hayro::hayro_interpret::font::Glyph;
use hayro::hayro_interpret::hayro_cmap::BfString;
use hayro::hayro_interpret::hayro_syntax::Pdf;
use hayro::hayro_interpret::{
    BlendMode, ClipPath, Context, Device, GlyphDrawMode, Image, InterpreterCache, InterpreterSettings, Paint,
    PathDrawMode, SoftMask, TransformExt as _, interpret_page,
};
use hayro::vello_cpu::kurbo::{Affine, BezPath, Rect, Shape as _};

/// One piece of ink.
pub struct Ink {
    /// The letters, if it is type.
    pub letters: Option<String>,
    /// The font has no shape for it, and draws the box that says so.
    pub missing: bool,
    /// Where it is, in points from the upper left corner of the page.
    pub area: Rect,
    /// Red, green, blue, opacity; none for a pattern.
    pub colour: Option<[u8; 4]>,
}

/// A page and what is on it.
pub struct Sheet {
    /// Width and height in points.
    pub size: (f64, f64),
    /// All ink in the order it is drawn.
    pub ink: Vec<Ink>,
    /// Images of dots; drawings made of lines are no images.
    pub images: usize,
}

/// The pages of a PDF.
pub fn sheets(bytes: Vec<u8>) -> Vec<Sheet> {
    let pdf = Pdf::new(bytes).unwrap_or_else(|error| panic!("no readable PDF: {error:?}"));
    let cache = InterpreterCache::new();
    let pages = pdf.pages().iter().map(|page| {
        let (width, height) = page.render_dimensions();
        let size = (f64::from(width), f64::from(height));
        let area = Rect::new(0.0, 0.0, size.0, size.1);
        let upright = page.initial_transform(true).to_kurbo();
        let mut state = Context::new(upright, area, &cache, page.xref(), InterpreterSettings::default());
        let mut list = List { sheet: Sheet { size, ink: Vec::new(), images: 0 } };
        interpret_page(page, &mut state, &mut list);
        list.sheet
    });
    pages.collect()
}

impl Sheet {
    /// The letters of the page in the order they are drawn.
    pub fn text(&self) -> String {
        self.ink.iter().filter_map(|ink| ink.letters.as_deref()).collect()
    }
}

/// A device that notes instead of drawing.
struct List {
    sheet: Sheet,
}

fn colour(paint: &Paint<'_>) -> Option<[u8; 4]> {
    match paint {
        Paint::Color(color) => Some(color.to_rgba().to_rgba8()),
        Paint::Pattern(_) => None,
    }
}

impl<'a> Device<'a> for List {
    fn draw_path(&mut self, path: &BezPath, transform: Affine, paint: &Paint<'a>, _: &PathDrawMode) {
        let area = (transform * path.clone()).bounding_box();
        self.sheet.ink.push(Ink { letters: None, missing: false, area, colour: colour(paint) });
    }

    fn draw_glyph(&mut self, glyph: &Glyph<'a>, at: Affine, shape: Affine, paint: &Paint<'a>, mode: &GlyphDrawMode) {
        if matches!(mode, GlyphDrawMode::Invisible) {
            return;
        }
        let letters = glyph.as_unicode().map_or_else(String::new, |letters| match letters {
            BfString::Char(one) => one.to_string(),
            BfString::String(several) => several,
        });
        let (area, missing) = match glyph {
            Glyph::Outline(outline) => {
                ((at * shape * outline.outline()).bounding_box(), outline.glyph_id().to_u32() == 0)
            }
            // We ship no font of drawings; one that turned up would be a box for all we know.
            Glyph::Type3(_) => (Rect::ZERO, true),
        };
        self.sheet.ink.push(Ink { letters: Some(letters), missing, area, colour: colour(paint) });
    }

    fn draw_image(&mut self, _: Image<'a, '_>, _: Affine) {
        self.sheet.images += 1;
    }

    fn set_soft_mask(&mut self, _: Option<SoftMask<'a>>) {}
    fn set_blend_mode(&mut self, _: BlendMode) {}
    fn push_clip_path(&mut self, _: &ClipPath) {}
    fn push_transparency_group(&mut self, _: f32, _: Option<SoftMask<'a>>, _: BlendMode) {}
    fn pop_clip_path(&mut self) {}
    fn pop_transparency_group(&mut self) {}
}
