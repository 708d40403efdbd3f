//! The plan as a drawing: frequencies to the right, a row for each hop.
//!
//! Each channel is a box over its frequencies. What tells the polarisations apart is how it is ruled: along for horizontal,
//! across for vertical, both for two carriers. The letter in front says which end sends there; a firm frame is the upper half.

use super::lines::Line;
use crate::drawing::{Anchor, Drawing, Fill, Pen, times};
use crate::spec::{EndName, Polarisation};
use crate::text::plain::spelled;

/// Room for the names of the hops, width of all frequencies, and what is left free at the right.
const LEFT: f64 = 42.0;
const PLOT: f64 = 132.0;
const RIGHT: f64 = 6.0;
/// Height of the head, of a row and of the foot.
const HEAD: f64 = 14.0;
const ROW: f64 = 6.0;
const FOOT: f64 = 24.0;
/// Size of the text.
const TEXT: f64 = 2.8;
/// Between two bands.
const GAP: f64 = 6.0;
/// Frequencies further apart than this, in GHz, are two bands.
const APART: f64 = 1.0;
/// A band is shown at least this wide, in GHz.
const LEAST: f64 = 0.2;

/// Frequencies that are shown side by side: from, to, and where they begin on the paper with how many millimetres a GHz.
struct Band {
    from: f64,
    to: f64,
    x: f64,
    scale: f64,
}

/// The drawing of a network as SVG. None of nothing.
#[must_use]
pub fn drawn(lines: &[Line]) -> Option<String> {
    let network = spelled(&lines.first()?.network);
    let mut hops: Vec<&str> = lines.iter().map(|line| line.hop.as_str()).collect();
    hops.sort_unstable();
    hops.dedup();
    let bands = bands(lines);
    let bottom = HEAD + ROW * times(hops.len());
    let mut drawing = Drawing::new(LEFT + PLOT + RIGHT, bottom + FOOT);
    drawing.text((2.0, 6.0), Anchor::Start, 4.0, true, &format!("{network}: frequency plan"));
    for band in &bands {
        axis(&mut drawing, band, bottom);
    }
    for (number, hop) in hops.iter().enumerate() {
        let y = HEAD + ROW * times(number);
        drawing.line((2.0, y + ROW), (LEFT + PLOT, y + ROW), Pen::Thin);
        drawing.text((LEFT - 5.0, y + ROW / 2.0 + 1.0), Anchor::End, TEXT, false, &shortened(hop));
        let of_hop: Vec<&Line> = lines.iter().filter(|line| line.hop == *hop).collect();
        for line in &of_hop {
            let others = || of_hop.iter().filter(|other| other.end != line.end);
            // Ends that take turns share one box.
            let shared = others().any(|other| other.sends == line.sends);
            if shared && line.end == EndName::B {
                continue;
            }
            let upper = others().any(|other| other.sends < line.sends);
            let letters = if shared { "ab" } else { line.end.letter() };
            channel(&mut drawing, &bands, line, (letters, upper), y);
        }
    }
    legend(&mut drawing, bottom + 12.0);
    let meaning =
        format!("Frequency plan of {network}: {} hops, a row each, channels over their frequencies", hops.len());
    Some(drawing.svg(&meaning))
}

/// Where the channels lie, bands that are far apart moved together.
fn bands(lines: &[Line]) -> Vec<Band> {
    let mut spans: Vec<(f64, f64)> = lines.iter().map(edges).collect();
    spans.sort_by(|one, other| one.0.total_cmp(&other.0));
    let mut bands: Vec<(f64, f64)> = Vec::new();
    for (low, high) in spans {
        match bands.last_mut() {
            Some((_, to)) if low <= *to + APART => *to = to.max(high),
            _ => bands.push((low, high)),
        }
    }
    let wide = |(from, to): &(f64, f64)| (to - from).max(LEAST);
    let all: f64 = bands.iter().map(wide).sum();
    let scale = (PLOT - GAP * times(bands.len().saturating_sub(1))).max(PLOT / 4.0) / all;
    let mut x = LEFT;
    let mut placed = Vec::new();
    for band in bands {
        placed.push(Band { from: band.0, to: band.0 + wide(&band), x, scale });
        x += scale * wide(&band) + GAP;
    }
    placed
}

/// Lower and upper edge of a channel, in GHz.
fn edges(line: &Line) -> (f64, f64) {
    let half = line.bandwidth.0 / 2000.0;
    (line.sends.0 - half, line.sends.0 + half)
}

impl Band {
    fn at(&self, frequency: f64) -> f64 {
        self.x + (frequency - self.from) * self.scale
    }
}

fn axis(drawing: &mut Drawing, band: &Band, bottom: f64) {
    let (start, end) = (band.at(band.from), band.at(band.to));
    drawing.line((start, bottom), (end, bottom), Pen::Firm);
    let mut written = f64::NEG_INFINITY;
    // The finest step whose words do not run into each other.
    let steps = [0.05, 0.1, 0.25, 0.5, 1.0, 2.0, 5.0];
    let step = steps.into_iter().find(|step| step * band.scale >= 11.0).unwrap_or(10.0);
    let mut number = (band.from / step).ceil();
    while number * step <= band.to + 1e-9 {
        let (frequency, x) = (number * step, band.at(number * step));
        drawing.line((x, HEAD), (x, bottom + 1.5), Pen::Thin);
        if x - written >= 9.0 {
            drawing.text((x, bottom + 5.0), Anchor::Middle, TEXT, false, &format!("{frequency:.2}"));
            written = x;
        }
        number += 1.0;
    }
    drawing.text((end, bottom + 8.5), Anchor::End, TEXT, false, "GHz");
}

fn channel(drawing: &mut Drawing, bands: &[Band], line: &Line, (letters, upper): (&str, bool), y: f64) {
    let (low, high) = edges(line);
    let Some(band) = bands.iter().find(|band| band.from <= low + 1e-9 && high <= band.to + 1e-9) else { return };
    let (from, to) = (band.at(low), band.at(high));
    let (top, height) = (y + 1.2, ROW - 2.4);
    drawing.rect((from, top), (to - from, height), Fill::White, None);
    ruled(drawing, line.polarisation, (from, top), (to - from, height));
    drawing.rect((from, top), (to - from, height), Fill::None, Some(if upper { Pen::Heavy } else { Pen::Thin }));
    drawing.text((from - 0.6, top + height - 0.6), Anchor::End, TEXT, false, letters);
}

/// Lines along a box, across it, or both.
fn ruled(drawing: &mut Drawing, polarisation: Polarisation, (x, y): (f64, f64), (width, height): (f64, f64)) {
    if polarisation != Polarisation::Vertical {
        for share in [0.25, 0.5, 0.75] {
            drawing.line((x, y + share * height), (x + width, y + share * height), Pen::Thin);
        }
    }
    if polarisation != Polarisation::Horizontal {
        let mut at = 0.9;
        while at < width {
            drawing.line((x + at, y), (x + at, y + height), Pen::Thin);
            at += 0.9;
        }
    }
}

fn legend(drawing: &mut Drawing, y: f64) {
    let (size, mut x) = ((8.0, ROW - 2.4), LEFT);
    for (polarisation, words) in
        [(Polarisation::Horizontal, "horizontal"), (Polarisation::Vertical, "vertical"), (Polarisation::Dual, "both")]
    {
        ruled(drawing, polarisation, (x, y), size);
        drawing.rect((x, y), size, Fill::None, Some(Pen::Thin));
        drawing.text((x + 10.0, y + 2.9), Anchor::Start, TEXT, false, words);
        x += 30.0;
    }
    drawing.rect((x, y), size, Fill::None, Some(Pen::Heavy));
    drawing.text((x + 10.0, y + 2.9), Anchor::Start, TEXT, false, "upper half");
    drawing.text((LEFT, y + 8.0), Anchor::Start, TEXT, false, "a and b: the end that sends there");
}

/// A name that fits in front of its row.
fn shortened(hop: &str) -> String {
    const MOST: usize = 24;
    let name = spelled(hop);
    if name.chars().count() <= MOST { name } else { name.chars().take(MOST - 1).chain(['…']).collect() }
}
