//! The path profile as a drawing: geometry computed once, set as SVG for a pull request and for the design pack.
//!
//! Black on white: what a line is, its pattern says. Everything drawn comes from the sheet; text of authors is escaped.

mod axes;
mod beam;
mod canvas;
mod ground;
mod labels;
mod scale;
mod ticks;
mod words;

use crate::sheet::HopSheet;
use crate::voice::Voice;

pub use words::verdict;

/// A drawing.
#[derive(Debug, Clone)]
pub struct Figure {
    /// The picture.
    pub svg: String,
    /// What it shows, in words, with the verdict.
    pub alt: String,
}

/// The profile of a hop, if it has one.
#[must_use]
pub fn of(sheet: &HopSheet<'_>, voice: Voice) -> Option<Figure> {
    let profile = &sheet.profile;
    // What came from something broken is not drawn.
    profile.lines.spacing.get()?;
    let points = profile.along();
    let scale = scale::Scale::of(sheet, &points)?;
    let points = scale::thinned(&points, &scale);
    let mut canvas = canvas::Canvas::new(voice);
    ground::ground(&mut canvas, &points, &scale);
    ground::standing(&mut canvas, &points, &scale);
    beam::beam(&mut canvas, &points, &scale);
    beam::ends(&mut canvas, sheet, &scale);
    axes::axes(&mut canvas, &scale);
    labels::worst(&mut canvas, sheet, &scale);
    labels::caption(&mut canvas, sheet, &points, &scale);
    let alt = words::alt(sheet, voice);
    Some(Figure { svg: canvas.done(&alt), alt })
}
