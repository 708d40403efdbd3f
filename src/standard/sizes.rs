//! Sizes that public standards set and that a specification names as they are: tubes, conductors, threads; and the glands that
//! somebody chooses by their thread.

use std::sync::LazyLock;

/// The sizes as they are written, a line each.
const TEXT: &str = include_str!("sizes.txt");

/// A size by a public standard.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Size {
    /// What it is a size of: `tube`, `conductor`, `thread` or `gland`.
    pub group: &'static str,
    /// Its name, as it is written where one is asked for.
    pub name: &'static str,
    /// What it measures.
    pub says: &'static str,
    /// The standard, and how surely the figures are known.
    pub source: &'static str,
}

impl Size {
    fn of(line: &'static str) -> Option<Self> {
        let mut cells = line.split("; ");
        let size =
            Self { group: cells.next()?, name: cells.next()?, says: cells.next()?, source: cells.next()?.trim_end() };
        cells.next().is_none().then_some(size)
    }
}

/// All sizes, in the order they are listed.
#[must_use]
pub fn sizes() -> &'static [Size] {
    static SIZES: LazyLock<Vec<Size>> =
        LazyLock::new(|| TEXT.lines().filter(|line| !line.starts_with('#')).filter_map(Size::of).collect());
    &SIZES
}

#[cfg(test)]
mod tests {
    use super::{TEXT, sizes};

    #[test]
    fn every_line_is_a_size_and_every_name_stands_once_in_its_group() {
        assert_eq!(sizes().len(), TEXT.lines().filter(|line| !line.starts_with('#')).count());
        for one in sizes() {
            let same = |other: &&super::Size| (other.group, other.name) == (one.group, one.name);
            assert_eq!(sizes().iter().filter(same).count(), 1, "{}", one.name);
        }
    }
}
