//! How two pictures of a page differ.
//!
//! Renderers and processors round differently, so no dot need be equal. What is compared is the mean of each dot and its eight
//! neighbours: rounding cancels out in it, a letter that is gone does not. A share of the page would be no measure: a digit
//! that changed is as wrong on a full page as on an empty one, so the spots are counted.

use std::path::Path;

use super::grey::{Grey, write_png};

/// A mean may be off by this much of 255. Sixteen greys in place of 256 move it by some 6, 8 for 3 in the smallest type by
/// 10 at the least, a letter that is gone by 60.
const LIMIT: i32 = 8;

/// What two pictures do not share.
pub struct Difference {
    /// Whether they are the same page for all that one can see.
    pub seen: bool,
    /// In words.
    pub words: String,
    /// Where, in dots from the upper left corner.
    spots: Vec<(usize, usize)>,
}

/// Holds `now` against `reference`.
pub fn between(reference: &Grey, now: &Grey) -> Difference {
    let sizes = [reference, now].map(|page| (page.width, page.height()));
    if sizes[0] != sizes[1] {
        let words = format!("{} x {} dots instead of {} x {}", sizes[1].0, sizes[1].1, sizes[0].0, sizes[0].1);
        return Difference { seen: true, words, spots: Vec::new() };
    }
    let mut worst = 0;
    let mut spots = Vec::new();
    for y in 1..sizes[0].1.saturating_sub(1) {
        let rows = [y - 1, y, y + 1].map(|y| (reference.row(y), now.row(y)));
        // Most rows of most pages are the same to the last dot.
        if rows.iter().all(|(old, new)| old == new) {
            continue;
        }
        let column = |x: usize| rows.iter().map(|(old, new)| i32::from(new[x]) - i32::from(old[x])).sum();
        let columns: Vec<i32> = (0..sizes[0].0).map(column).collect();
        for (x, around) in columns.windows(3).enumerate() {
            let mean = (around.iter().sum::<i32>() / 9).abs();
            worst = worst.max(mean);
            if mean > LIMIT {
                spots.push((x + 1, y));
            }
        }
    }
    let words = match (spots.first(), spots.last()) {
        (Some(first), Some(last)) => format!(
            "{} spots between {:.0} mm and {:.0} mm from the top, by up to {worst} of 255 greys",
            spots.len(),
            millimetres(first.1),
            millimetres(last.1)
        ),
        _ => format!("no spot; the largest difference is {worst} of 255 greys"),
    };
    Difference { seen: !spots.is_empty(), words, spots }
}

/// Dots as a length on paper.
fn millimetres(dots: usize) -> f32 {
    u16::try_from(dots).map_or(f32::NAN, f32::from) / super::grey::DPI * 25.4
}

impl Difference {
    /// Writes the page in pale grey with what differs in red.
    ///
    /// # Errors
    /// The file cannot be written.
    pub fn write(&self, now: &Grey, path: &Path) -> Result<(), String> {
        let mut data: Vec<u8> = now.dots.iter().flat_map(|dot| [170 + dot / 3; 3]).collect();
        for (x, y) in &self.spots {
            let at = 3 * (y * now.width + x);
            data[at..at + 3].copy_from_slice(&[200, 0, 0]);
        }
        write_png(path, (now.width, now.height()), png::ColorType::Rgb, png::BitDepth::Eight, &data)
    }
}
