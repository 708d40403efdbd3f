//! What of a sheet is taken: lines and words, so that more words find free paper.

use super::Point;

/// A rectangle by its left, upper, right and lower edge.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Area {
    /// Left edge.
    pub left: f64,
    /// Upper edge.
    pub top: f64,
    /// Right edge.
    pub right: f64,
    /// Lower edge.
    pub bottom: f64,
}

impl Area {
    /// The one around a middle.
    #[must_use]
    pub fn around((x, y): Point, width: f64, height: f64) -> Self {
        let (half, tall) = (width / 2.0, height / 2.0);
        Self { left: x - half, top: y - tall, right: x + half, bottom: y + tall }
    }

    /// The same with a margin.
    #[must_use]
    pub fn grown(self, by: f64) -> Self {
        Self { left: self.left - by, top: self.top - by, right: self.right + by, bottom: self.bottom + by }
    }

    /// Whether it and another one have paper in common.
    #[must_use]
    pub fn overlaps(self, other: Self) -> bool {
        self.left < other.right && other.left < self.right && self.top < other.bottom && other.top < self.bottom
    }

    fn holds(self, other: Self) -> bool {
        self.left <= other.left && other.right <= self.right && self.top <= other.top && other.bottom <= self.bottom
    }

    /// Whether a straight line touches it.
    #[must_use]
    pub fn is_crossed(self, from: Point, to: Point) -> bool {
        let (mut start, mut end) = (0.0_f64, 1.0_f64);
        let sides = [(from.0, to.0 - from.0, self.left, self.right), (from.1, to.1 - from.1, self.top, self.bottom)];
        for (at, along, low, high) in sides {
            if along.abs() < 1e-9 {
                if at < low || at > high {
                    return false;
                }
                continue;
            }
            let (one, other) = ((low - at) / along, (high - at) / along);
            start = start.max(one.min(other));
            end = end.min(one.max(other));
        }
        start <= end
    }
}

/// A sheet and what is on it.
#[derive(Debug, Clone)]
pub struct Paper {
    bounds: Area,
    areas: Vec<Area>,
    lines: Vec<(Point, Point)>,
}

impl Paper {
    /// An empty one.
    #[must_use]
    pub const fn new(bounds: Area) -> Self {
        Self { bounds, areas: Vec::new(), lines: Vec::new() }
    }

    /// Takes what a line covers.
    pub fn line(&mut self, from: Point, to: Point) {
        self.lines.push((from, to));
    }

    /// Takes an area.
    pub fn area(&mut self, area: Area) {
        self.areas.push(area);
    }

    /// Whether an area is free, but for the one line it may lie on.
    #[must_use]
    pub fn is_free(&self, area: Area, but: Option<(Point, Point)>) -> bool {
        self.bounds.holds(area)
            && !self.areas.iter().any(|other| other.overlaps(area))
            && !self.lines.iter().any(|line| Some(*line) != but && area.is_crossed(line.0, line.1))
    }

    /// Takes the first of some areas that is free; gives its number.
    pub fn take_first(&mut self, areas: &[Area], but: Option<(Point, Point)>) -> Option<usize> {
        let number = areas.iter().position(|area| self.is_free(area.grown(0.4), but))?;
        self.area(areas[number]);
        Some(number)
    }
}

#[cfg(test)]
mod tests {
    use super::{Area, Paper};

    #[test]
    fn words_find_paper_that_neither_words_nor_lines_have() {
        let mut paper = Paper::new(Area { left: 0.0, top: 0.0, right: 100.0, bottom: 100.0 });
        paper.line((0.0, 50.0), (100.0, 50.0));
        let on_it = Area::around((50.0, 50.0), 20.0, 4.0);
        let above = Area::around((50.0, 40.0), 20.0, 4.0);
        let outside = Area::around((95.0, 20.0), 20.0, 4.0);
        assert_eq!(paper.take_first(&[on_it, outside, above], None), Some(2));
        assert_eq!(paper.take_first(&[above], None), None, "taken");
        assert_eq!(paper.take_first(&[on_it], Some(((0.0, 50.0), (100.0, 50.0)))), Some(0), "its own line");
    }

    #[test]
    fn a_line_that_passes_by_does_not_cross() {
        let area = Area::around((5.0, 5.0), 4.0, 4.0);
        assert!(area.is_crossed((0.0, 0.0), (10.0, 10.0)) && area.is_crossed((5.0, 5.0), (5.0, 6.0)));
        assert!(!area.is_crossed((0.0, 8.0), (10.0, 8.0)) && !area.is_crossed((0.0, 0.0), (2.0, 2.0)));
    }
}
