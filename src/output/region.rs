//! Where a spot is, as other programs count it: a path from the root of the repository, lines, UTF-16 columns.

use std::ops::Range;
use std::path::{Component, Path, PathBuf};

use crate::door::{canonical, repository_of};
use crate::finding::Spot;
use crate::network::{Files, SourceFile};
use crate::source::Position;

/// How many bytes of a long line are told before a place and after it.
const BEFORE: usize = 200;
const AFTER: usize = 400;

/// Where paths are counted from: the root of the repository, or where one stands if there is none.
#[derive(Debug, Clone)]
pub struct Base {
    here: PathBuf,
    root: PathBuf,
}

impl Base {
    /// That of the working folder.
    #[must_use]
    pub fn here() -> Self {
        let here = canonical(Path::new("."));
        let root = repository_of(&here).unwrap_or_else(|| here.clone());
        Self { here, root }
    }

    /// The path of a file with forward slashes, links followed; `../` where it lies outside.
    #[must_use]
    pub fn path(&self, file: &SourceFile) -> String {
        self.relative(&file.origin)
    }

    fn relative(&self, path: &Path) -> String {
        let whole = canonical(&self.here.join(path));
        let steps = |path: &Path| -> Vec<String> {
            let normal = |part| matches!(part, Component::Normal(_)).then(|| Path::new(&part).to_string_lossy().into());
            path.components().filter_map(normal).collect()
        };
        let (root, own) = (steps(&self.root), steps(&whole));
        let shared = root.iter().zip(&own).take_while(|(a, b)| a == b).count();
        let up = root[shared..].iter().map(|_| "..");
        up.chain(own[shared..].iter().map(String::as_str)).collect::<Vec<_>>().join("/")
    }
}

/// A spot with everything a machine may ask of it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Region {
    /// As it is printed to people.
    pub shown: String,
    /// From the root of the repository.
    pub path: String,
    /// The lines and columns; none for a path without text.
    pub range: Option<(Position, Position)>,
    /// The text of the line it starts on, for people who hear it.
    pub line: String,
}

impl Region {
    pub(super) fn of(spot: &Spot, files: &Files, base: &Base) -> Self {
        let Some((file, span)) = located(spot, files) else {
            let shown = if let Spot::Path(path) = spot { path.clone() } else { String::new() };
            return Self { path: base.relative(Path::new(&shown)), shown, range: None, line: String::new() };
        };
        let span = within_a_line(&file.text, span);
        Self {
            shown: file.path.clone(),
            path: base.path(file),
            range: Some((file.position(span.start), file.position(span.end))),
            line: line_around(&file.text, span.start),
        }
    }

    /// `path:line:column`.
    pub(super) fn place(&self) -> String {
        match self.range {
            Some((start, _)) => format!("{}:{}:{}", self.shown, start.line, start.column),
            None => self.shown.clone(),
        }
    }
}

/// The line a byte stands on; of a long one the part around it.
fn line_around(text: &str, at: usize) -> String {
    let (from, to) = (text.floor_char_boundary(at.saturating_sub(BEFORE)), text.ceil_char_boundary(at + AFTER));
    let start = text[from..at].rfind(['\n', '\r']).map_or(from, |line| from + line + 1);
    let end = text[at..to].find(['\n', '\r']).map_or(to, |line| at + line);
    let cut = |is_cut: bool| if is_cut { "…" } else { "" };
    let before = cut(start == from && from > 0 && !text[..from].ends_with(['\n', '\r']));
    let after = cut(end == to && to < text.len() && !text[to..].starts_with(['\n', '\r']));
    format!("{before}{}{after}", text[start..end].trim().trim_start_matches('\u{feff}'))
}

/// The file of a spot and its bytes there.
pub(super) fn located<'f>(spot: &Spot, files: &'f Files) -> Option<(&'f SourceFile, Range<usize>)> {
    let found = files.locate(spot)?;
    files.get(found.file).map(|file| (file, found.span))
}

/// The same bytes, at least one character of the text: nothing can be drawn under nothing.
pub(super) fn at_least_one(text: &str, span: Range<usize>) -> Range<usize> {
    let beyond = span.start >= text.len();
    let start = if beyond { text.trim_end().len().saturating_sub(1) } else { span.start };
    let start = text.floor_char_boundary(start);
    let least = text[start..].chars().next().map_or(0, char::len_utf8);
    let end = if beyond { start } else { span.end.min(text.len()) };
    start..end.max(start + least)
}

/// The same, within a line: what is missing at the end of one shows at the last character before it.
fn within_a_line(text: &str, span: Range<usize>) -> Range<usize> {
    let empty_at = (span.end <= span.start).then(|| text.get(span.start..)).flatten();
    let line_ends = empty_at.is_some_and(|rest| rest.starts_with(['\n', '\r']));
    let before = text.get(..span.start).and_then(|before| before.chars().next_back());
    match before.filter(|before| line_ends && !matches!(before, '\n' | '\r')) {
        Some(before) => span.start - before.len_utf8()..span.start,
        None => at_least_one(text, span),
    }
}

#[cfg(test)]
mod tests {
    use super::{Base, at_least_one, within_a_line};
    use std::path::{Path, PathBuf};

    #[test]
    fn a_span_has_a_character_of_the_text() {
        assert_eq!(at_least_one("ab é\n", 1..2), 1..2);
        assert_eq!(at_least_one("ab é\n", 3..3), 3..5);
        assert_eq!(at_least_one("ab é\n", 6..6), 3..5);
        assert_eq!(within_a_line("ab é\nc", 5..5), 3..5, "the end of a line");
        assert_eq!(within_a_line("a\n\nc", 2..2), 2..3, "an empty line");
        assert_eq!(within_a_line("ab", 0..1), 0..1);
        assert_eq!(at_least_one("ab", 9..12), 1..2);
        assert_eq!(at_least_one("", 0..0), 0..0);
    }

    #[test]
    fn paths_are_counted_from_the_root() {
        let base = Base { here: PathBuf::from("/no-such/net/hops"), root: PathBuf::from("/no-such/net") };
        for (path, shown) in
            [("a.yaml", "hops/a.yaml"), ("/no-such/net/b.yaml", "b.yaml"), ("/other/c.yaml", "../../other/c.yaml")]
        {
            assert_eq!(base.relative(Path::new(path)), shown);
        }
    }
}
