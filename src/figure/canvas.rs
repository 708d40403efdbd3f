//! The sheet that is drawn on: black on white, in the units of the picture.

use super::scale::SIZE;
use crate::drawing::svg::{Attribute, HATCH, Markup};
use crate::voice::Voice;

/// What is drawn so far, and how its words are said.
pub(super) struct Canvas {
    markup: Markup,
    pub(super) voice: Voice,
}

impl Canvas {
    pub(super) fn new(voice: Voice) -> Self {
        let mut markup = Markup::default();
        markup.define_hatch();
        markup.element("rect", &[("width", &SIZE.0), ("height", &SIZE.1), ("fill", &"#fff")]);
        Self { markup, voice }
    }

    pub(super) fn text(&mut self, x: f64, y: f64, anchor: &str, words: &str) {
        let place = [format!("{x:.1}"), format!("{y:.1}")];
        self.markup.text(&[("x", &place[0]), ("y", &place[1]), ("text-anchor", &anchor)], words);
    }

    /// A line; without dashes it is unbroken.
    pub(super) fn stroke(&mut self, path: &str, width: f64, dashes: &str) {
        let attributes: [Attribute<'_>; 5] = [
            ("d", &path),
            ("fill", &"none"),
            ("stroke", &"#000"),
            ("stroke-width", &width),
            ("stroke-dasharray", &dashes),
        ];
        let count = if dashes.is_empty() { 4 } else { 5 };
        self.markup.element("path", &attributes[..count]);
    }

    pub(super) fn hatched(&mut self, path: &str) {
        self.markup.element("path", &[("d", &path), ("fill", &HATCH)]);
    }

    pub(super) fn outlined(&mut self, path: &str, fill: &str) {
        self.markup.element("path", &[("d", &path), ("fill", &fill), ("stroke", &"#000"), ("stroke-width", &1)]);
    }

    pub(super) fn dot(&mut self, x: f64, y: f64) {
        let place = [format!("{x:.1}"), format!("{y:.1}")];
        self.markup.element("circle", &[("cx", &place[0]), ("cy", &place[1]), ("r", &3.2)]);
    }

    /// The whole, with its meaning in words.
    pub(super) fn done(self, meaning: &str) -> String {
        let (width, height) = SIZE;
        let attributes: [Attribute<'_>; 7] = [
            ("viewBox", &format!("0 0 {width} {height}")),
            ("width", &width),
            ("height", &height),
            ("role", &"img"),
            ("font-family", &"IBM Plex Sans, Helvetica, Arial, sans-serif"),
            ("font-size", &13),
            ("fill", &"#000"),
        ];
        self.markup.document(&attributes, meaning)
    }
}
