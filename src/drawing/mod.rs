//! Line drawings in black on white, as SVG. Whoever draws gives millimetres; `y` grows downwards.
//!
//! No colour, no script, no font of its own: a drawing reads the same on a copier and in a pull request.

use std::fmt::Write as _;

use crate::text::xml;

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
    const fn attributes(self) -> &'static str {
        match self {
            Self::Thin => r#"stroke="black" stroke-width="0.15""#,
            Self::Firm => r#"stroke="black" stroke-width="0.35""#,
            Self::Heavy => r#"stroke="black" stroke-width="0.8""#,
            Self::Dashed => r#"stroke="black" stroke-width="0.3" stroke-dasharray="2 1.2""#,
            Self::Dotted => r#"stroke="black" stroke-width="0.3" stroke-dasharray="0.5 0.9""#,
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
    body: String,
}

impl Drawing {
    /// An empty sheet of a size.
    #[must_use]
    pub fn new(width: f64, height: f64) -> Self {
        Self { width, height, body: String::new() }
    }

    /// A straight line.
    pub fn line(&mut self, (x1, y1): Point, (x2, y2): Point, pen: Pen) {
        self.add(&format!(
            r#"<line x1="{}" y1="{}" x2="{}" y2="{}" {}/>"#,
            round(x1),
            round(y1),
            round(x2),
            round(y2),
            pen.attributes()
        ));
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
        self.add(&format!(r#"<polyline points="{}" fill="none" {}/>"#, listed(points), pen.attributes()));
    }

    /// A closed shape.
    pub fn polygon(&mut self, points: &[Point], fill: Fill, pen: Option<Pen>) {
        let outline = pen.map_or("", Pen::attributes);
        self.add(&format!(r#"<polygon points="{}" fill="{}" {outline}/>"#, listed(points), fill.colour()));
    }

    /// A rectangle from its upper left corner.
    pub fn rect(&mut self, (x, y): Point, (width, height): Point, fill: Fill, pen: Option<Pen>) {
        let corners = [(x, y), (x + width, y), (x + width, y + height), (x, y + height)];
        self.polygon(&corners, fill, pen);
    }

    /// A circle.
    pub fn circle(&mut self, (x, y): Point, radius: f64, fill: Fill, pen: Pen) {
        let (x, y, radius) = (round(x), round(y), round(radius));
        self.add(&format!(r#"<circle cx="{x}" cy="{y}" r="{radius}" fill="{}" {}/>"#, fill.colour(), pen.attributes()));
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
        let weight = if heavy { r#" font-weight="600""# } else { "" };
        let (x, y) = (round(x), round(y));
        self.add(&format!(
            r#"<text x="{x}" y="{y}" font-size="{size}" text-anchor="{anchor}"{weight}>{}</text>"#,
            escaped(words)
        ));
    }

    /// The whole as an SVG document with its meaning in words.
    #[must_use]
    pub fn svg(&self, meaning: &str) -> String {
        let (width, height) = (round(self.width), round(self.height));
        format!(
            concat!(
                r#"<svg xmlns="http://www.w3.org/2000/svg" width="{w}mm" height="{h}mm" viewBox="0 0 {w} {h}" "#,
                r#"font-family="IBM Plex Sans, sans-serif" role="img">"#,
                "\n<title>{title}</title>\n{body}</svg>\n"
            ),
            w = width,
            h = height,
            title = escaped(meaning),
            body = self.body
        )
    }

    fn add(&mut self, element: &str) {
        let _ = writeln!(self.body, "{element}");
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

/// Text as XML takes it, on one line.
fn escaped(text: &str) -> String {
    xml::escaped(text, |_| " ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn text_is_text_and_nothing_else() {
        let mut drawing = Drawing::new(10.0, 5.0);
        drawing.text((1.0, 2.0), Anchor::Start, 3.0, true, "<a> & \"b\"\u{1}");
        let svg = drawing.svg("x < y");
        assert!(
            svg.contains("&lt;a&gt; &amp; &quot;b&quot; </text>") && svg.contains("<title>x &lt; y</title>"),
            "{svg}"
        );
    }

    #[test]
    fn what_is_no_number_does_not_reach_the_page() {
        let mut drawing = Drawing::new(10.0, 5.0);
        drawing.line((f64::NAN, 1.0), (f64::INFINITY, -0.0), Pen::Firm);
        assert!(drawing.svg("").contains(r#"x1="0" y1="1" x2="0" y2="0""#));
    }
}
