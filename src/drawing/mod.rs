//! Line drawings in black on white, as SVG. Whoever draws gives millimetres; `y` grows downwards.
//!
//! No colour, no script, no font of its own: a drawing reads the same on a copier and in a pull request.

pub mod letters;
pub mod paper;
pub mod svg;

use std::fmt::Display;

use svg::{Attribute, Markup};

/// A point, in millimetres from the upper left corner.
pub type Point = (f64, f64);

/// How a line is drawn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Pen {
    /// What is only there for orientation.
    Thin,
    /// What is drawn.
    Firm,
    /// What the drawing is about.
    Heavy,
    /// What is not there but counts: limits, directions.
    Dashed,
    /// A second line of that kind.
    Dotted,
}

impl Pen {
    /// Its width and its dashes.
    const fn stroke(self) -> (&'static str, Option<&'static str>) {
        match self {
            Self::Thin => ("0.15", None),
            Self::Firm => ("0.35", None),
            Self::Heavy => ("0.8", None),
            Self::Dashed => ("0.3", Some("2 1.2")),
            Self::Dotted => ("0.3", Some("0.5 0.9")),
        }
    }
}

/// What a shape is filled with.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Fill {
    /// Nothing.
    None,
    /// White, to stand before something.
    White,
    /// A light grey that still shows on a bad copy.
    Grey,
    /// Black.
    Black,
}

impl Fill {
    const fn colour(self) -> &'static str {
        match self {
            Self::None => "none",
            Self::White => "white",
            Self::Grey => "#d4d4d4",
            Self::Black => "black",
        }
    }
}

/// Which end of a text lies at its point.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Anchor {
    /// Its start.
    Start,
    /// Its middle.
    Middle,
    /// Its end.
    End,
}

/// A drawing that grows.
#[derive(Debug, Clone)]
pub struct Drawing {
    width: f64,
    height: f64,
    body: Markup,
}

impl Drawing {
    /// An empty sheet of a size.
    #[must_use]
    pub fn new(width: f64, height: f64) -> Self {
        Self { width, height, body: Markup::default() }
    }

    /// A straight line.
    pub fn line(&mut self, (x1, y1): Point, (x2, y2): Point, pen: Pen) {
        let at = [x1, y1, x2, y2].map(round);
        self.add("line", &[("x1", &at[0]), ("y1", &at[1]), ("x2", &at[2]), ("y2", &at[3])], Some(pen));
    }

    /// An arrow, its head at `to`.
    pub fn arrow(&mut self, from: Point, to: Point, pen: Pen) {
        const HEAD: f64 = 2.4;
        let (dx, dy) = (to.0 - from.0, to.1 - from.1);
        let length = libm::hypot(dx, dy).max(1e-9);
        let (ux, uy) = (dx / length, dy / length);
        let foot = (to.0 - HEAD * ux, to.1 - HEAD * uy);
        let side = HEAD * 0.32;
        self.line(from, foot, pen);
        let corners = [to, (foot.0 - side * uy, foot.1 + side * ux), (foot.0 + side * uy, foot.1 - side * ux)];
        self.polygon(&corners, Fill::Black, None);
    }

    /// A line with an arrow head at each end, as for a dimension.
    pub fn dimension(&mut self, from: Point, to: Point) {
        let middle = (f64::midpoint(from.0, to.0), f64::midpoint(from.1, to.1));
        self.arrow(middle, from, Pen::Thin);
        self.arrow(middle, to, Pen::Thin);
    }

    /// An open line through points.
    pub fn path(&mut self, points: &[Point], pen: Pen) {
        self.add("polyline", &[("points", &listed(points)), ("fill", &"none")], Some(pen));
    }

    /// A closed shape.
    pub fn polygon(&mut self, points: &[Point], fill: Fill, pen: Option<Pen>) {
        self.add("polygon", &[("points", &listed(points)), ("fill", &fill.colour())], pen);
    }

    /// A rectangle from its upper left corner.
    pub fn rect(&mut self, (x, y): Point, (width, height): Point, fill: Fill, pen: Option<Pen>) {
        let corners = [(x, y), (x + width, y), (x + width, y + height), (x, y + height)];
        self.polygon(&corners, fill, pen);
    }

    /// A circle.
    pub fn circle(&mut self, (x, y): Point, radius: f64, fill: Fill, pen: Pen) {
        let (x, y, radius) = (round(x), round(y), round(radius));
        self.add("circle", &[("cx", &x), ("cy", &y), ("r", &radius), ("fill", &fill.colour())], Some(pen));
    }

    /// Slanting lines over a rectangle, for an area that must show without colour.
    pub fn hatch(&mut self, (x, y): Point, (width, height): Point) {
        const APART: f64 = 1.6;
        let mut at = -height;
        while at < width {
            let (start, end) = (at.max(0.0), (at + height).min(width));
            if start < end {
                self.line((x + start, y + height - (start - at)), (x + end, y + height - (end - at)), Pen::Thin);
            }
            at += APART;
        }
        self.rect((x, y), (width, height), Fill::None, Some(Pen::Thin));
    }

    /// A line of text, `size` high.
    pub fn text(&mut self, (x, y): Point, anchor: Anchor, size: f64, heavy: bool, words: &str) {
        let anchor = match anchor {
            Anchor::Start => "start",
            Anchor::Middle => "middle",
            Anchor::End => "end",
        };
        let (x, y) = (round(x), round(y));
        let attributes: [Attribute<'_>; 5] =
            [("x", &x), ("y", &y), ("font-size", &size), ("text-anchor", &anchor), ("font-weight", &"600")];
        let count = if heavy { 5 } else { 4 };
        self.body.text(&attributes[..count], words);
    }

    /// The whole as an SVG document with its meaning in words.
    #[must_use]
    pub fn svg(&self, meaning: &str) -> String {
        let (width, height) = (round(self.width), round(self.height));
        let attributes: [Attribute<'_>; 5] = [
            ("width", &format!("{width}mm")),
            ("height", &format!("{height}mm")),
            ("viewBox", &format!("0 0 {width} {height}")),
            ("font-family", &"IBM Plex Sans, sans-serif"),
            ("role", &"img"),
        ];
        self.body.document(&attributes, meaning)
    }

    fn add(&mut self, name: &str, shape: &[Attribute<'_>], pen: Option<Pen>) {
        let mut attributes = shape.to_vec();
        let stroke = pen.map(Pen::stroke);
        if let Some((width, dashes)) = &stroke {
            attributes.extend([("stroke", &"black" as &dyn Display), ("stroke-width", width)]);
            attributes.extend(dashes.as_ref().map(|dashes| ("stroke-dasharray", dashes as &dyn Display)));
        }
        self.body.element(name, &attributes);
    }
}

/// How many of something there are, as a length.
#[must_use]
pub fn times(number: usize) -> f64 {
    u32::try_from(number).map_or(f64::from(u32::MAX), f64::from)
}

/// To a hundredth of a millimetre, so that equal input gives equal bytes.
fn round(value: f64) -> f64 {
    let rounded = (value * 100.0).round() / 100.0;
    if rounded.is_finite() { rounded + 0.0 } else { 0.0 }
}

fn listed(points: &[Point]) -> String {
    points.iter().map(|(x, y)| format!("{},{}", round(*x), round(*y))).collect::<Vec<_>>().join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_no_number_does_not_reach_the_page() {
        let mut drawing = Drawing::new(10.0, 5.0);
        drawing.line((f64::NAN, 1.0), (f64::INFINITY, -0.0), Pen::Firm);
        assert!(drawing.svg("").contains(r#"x1="0" y1="1" x2="0" y2="0""#));
    }
}
