//! Lines that are longer than the page, cut down to the part a label is about.

use std::ops::Range;

/// A stretch that was kept.
#[derive(Debug, Clone, Copy)]
struct Piece {
    /// Where it begins in the whole text.
    whole: usize,
    /// Where it begins in the cut text.
    cut: usize,
    /// Its length.
    length: usize,
}

/// A text with its long lines cut, and the way back.
#[derive(Debug, Clone)]
pub(super) struct Clipped {
    /// What is shown; it has the lines of the whole text, by number.
    pub text: String,
    pieces: Vec<Piece>,
}

/// Cuts lines of more than `room` characters around the spans in them; `None` if no line is that long.
pub(super) fn clip(text: &str, spans: &[Range<usize>], room: usize, dots: &str) -> Option<Clipped> {
    if text.lines().all(|line| line.chars().count() <= room) {
        return None;
    }
    let mut clipped = Clipped { text: String::new(), pieces: Vec::new() };
    let mut start = 0;
    for line in text.split_inclusive('\n') {
        let content = line.trim_end_matches(['\n', '\r']);
        let end = start + content.len();
        let kept = window(content, start, spans, room.saturating_sub(2 * dots.chars().count()).max(1), room);
        if kept.start > start {
            clipped.text.push_str(dots);
        }
        clipped.keep(text, kept.clone());
        if kept.end < end {
            clipped.text.push_str(dots);
        }
        clipped.keep(text, end..start + line.len());
        start += line.len();
    }
    Some(clipped)
}

/// The part of a line to keep: a third of the room before the first span, the rest after it.
fn window(line: &str, start: usize, spans: &[Range<usize>], some: usize, room: usize) -> Range<usize> {
    let places: Vec<usize> = line.char_indices().map(|(at, _)| at).chain([line.len()]).collect();
    let length = places.len() - 1;
    if length <= room {
        return start..start + line.len();
    }
    let inside = spans.iter().filter(|span| (start..=start + line.len()).contains(&span.start));
    let first = inside.map(|span| span.start - start).min().unwrap_or_default();
    let column = places.partition_point(|place| *place < first);
    let from = column.saturating_sub(some / 3).min(length - some);
    start + places[from]..start + places[from + some]
}

impl Clipped {
    fn keep(&mut self, whole: &str, range: Range<usize>) {
        self.pieces.push(Piece { whole: range.start, cut: self.text.len(), length: range.len() });
        self.text.push_str(&whole[range]);
    }

    /// Where bytes of the whole text are shown.
    pub(super) fn shown(&self, span: &Range<usize>) -> Range<usize> {
        let at = |offset: usize| {
            let number = self.pieces.partition_point(|piece| piece.whole <= offset).max(1);
            let piece = self.pieces[number - 1];
            piece.cut + (offset - piece.whole.min(offset)).min(piece.length)
        };
        // The end belongs to the piece of the last byte, not to what follows it.
        let end = if span.end > span.start { at(span.end - 1) + 1 } else { at(span.end) };
        let start = self.text.floor_char_boundary(at(span.start));
        start..self.text.ceil_char_boundary(end).max(start)
    }

    /// Where a byte that is shown stands in the whole text.
    pub(super) fn whole(&self, offset: usize) -> usize {
        let number = self.pieces.partition_point(|piece| piece.cut <= offset).max(1);
        let piece = self.pieces[number - 1];
        piece.whole + (offset - piece.cut.min(offset)).min(piece.length)
    }
}

#[cfg(test)]
mod tests {
    use super::clip;

    #[test]
    fn a_long_line_is_cut_around_its_span() {
        let text = format!("a: 1\nnotes: {} here {}\nb: 2\n", "x".repeat(100), "é".repeat(100));
        let at = text.find("here").expect("there");
        let clipped = clip(&text, std::slice::from_ref(&(at..at + 4)), 30, "…").expect("cut");
        let shown = clipped.shown(&(at..at + 4));
        assert_eq!(&clipped.text[shown.clone()], "here");
        assert_eq!(clipped.whole(shown.start), at);
        let lines: Vec<&str> = clipped.text.lines().collect();
        assert_eq!((lines[0], lines[2]), ("a: 1", "b: 2"));
        assert_eq!(lines[1].chars().count(), 30, "{}", lines[1]);
        assert!(lines[1].starts_with('…') && lines[1].ends_with('…'));
        let last = text.rfind("b: 2").expect("there");
        assert_eq!(&clipped.text[clipped.shown(&(last..last + 4))], "b: 2");
        assert!(clip("short\n", &[], 30, "…").is_none());
    }

    #[test]
    fn a_span_longer_than_the_room_keeps_its_start() {
        let text = format!("k: {}\n", "v".repeat(90));
        let clipped = clip(&text, std::slice::from_ref(&(3..93)), 20, "...").expect("cut");
        let shown = clipped.shown(&(3..93));
        assert!(clipped.text[shown].starts_with("vvvvvvvvv"));
        assert!(clipped.text.lines().all(|line| line.chars().count() <= 20), "{}", clipped.text);
    }
}
