//! Places: a document and a route of keys, from a field of a spec to a line of YAML.
//!
//! A place is made from the field itself by [`at!`](crate::at), so that a renamed field cannot leave a stale route
//! behind. It is small and `Copy`; the bytes it stands for are looked up only when something is printed.

pub mod route;

pub use route::Step;

/// A loaded file, by its order.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct FileId(pub u32);

/// A document: its file, and its number in the file from 0.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct DocumentId {
    /// The file it stands in.
    pub file: FileId,
    /// Its number there.
    pub number: u16,
}

/// A spot in a document: `ends.a.runs[1].cable` of document 7.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Place {
    /// The document.
    pub document: DocumentId,
    // Thin pointers to the words: a place is copied a thousand times for every hop.
    base: &'static &'static str,
    path: &'static &'static str,
    /// What the brackets of both stand for, in order; [`UNUSED`] from there on.
    index: [u16; 4],
}

/// A slot for an index that no bracket has taken.
const UNUSED: u16 = u16::MAX;

/// Something that stands in a document.
pub trait Placed {
    /// Where it stands.
    fn place(&self) -> Place;
}

impl<T: Placed + ?Sized> Placed for &T {
    fn place(&self) -> Place {
        (**self).place()
    }
}

impl Place {
    /// The whole document.
    #[must_use]
    pub const fn document(document: DocumentId) -> Self {
        Self { document, base: &"", path: &"", index: [UNUSED; 4] }
    }

    /// A part of the document that is a thing of its own, such as `ends.a.runs[i]`, with what its brackets stand for.
    #[must_use]
    pub fn part(self, base: &'static &'static str, index: &[usize]) -> Self {
        Self { base, index: fill([UNUSED; 4], 0, index), ..self }
    }

    /// A route below this part, its indices in the order of its brackets. [`at!`](crate::at) writes this call.
    #[must_use]
    pub fn below(self, path: &'static &'static str, index: &[usize]) -> Self {
        if index.is_empty() {
            return Self { path, ..self };
        }
        let taken = self.index.iter().position(|index| *index == UNUSED).unwrap_or(self.index.len());
        Self { path, index: fill(self.index, taken, index), ..self }
    }

    /// The steps from the root of the document.
    pub fn steps(&self) -> impl Iterator<Item = Step<'static>> + '_ {
        let mut indices = self.index.iter();
        let words = |text: &'static str| text.split(['.', ' ', ']']).filter(|part| !part.is_empty());
        words(self.base).chain(words(self.path)).flat_map(move |part| {
            // `runs[i` : a key, then an index; `[j` after another bracket: an index alone.
            let (key, bracket) = match part.split_once('[') {
                Some((key, _)) => (key, true),
                None => (part, false),
            };
            let key = (!key.is_empty()).then_some(Step::Key(key));
            let index = if bracket { indices.next().map(|index| Step::Index((*index).into())) } else { None };
            key.into_iter().chain(index)
        })
    }

    /// The route as people read it: `ends.a.runs[1].cable`.
    #[must_use]
    pub fn route(&self) -> String {
        route::spelled(self.steps())
    }
}

/// The indices with more of them put in from `start` on.
fn fill(mut all: [u16; 4], start: usize, more: &[usize]) -> [u16; 4] {
    for (slot, index) in all.iter_mut().skip(start).zip(more) {
        *slot = u16::try_from(*index).unwrap_or(UNUSED).min(UNUSED - 1);
    }
    all
}

/// The [`Place`] of a field: `at!(end.runs[i].cable)`.
///
/// The first word is something [`Placed`] that also has the fields; the rest is checked by the compiler and then spelled
/// as a route. Indices are plain variables.
#[macro_export]
macro_rules! at {
    (@indices [$($found:expr),*]) => { [$($found),*] };
    (@indices [$($found:expr),*] . $field:ident $($rest:tt)*) => { $crate::at!(@indices [$($found),*] $($rest)*) };
    (@indices [] [$index:expr] $($rest:tt)*) => { $crate::at!(@indices [$index] $($rest)*) };
    (@indices [$($found:expr),+] [$index:expr] $($rest:tt)*) => {
        $crate::at!(@indices [$($found),+, $index] $($rest)*)
    };
    ($thing:ident $($route:tt)+) => {{
        use $crate::place::Placed as _;
        let _ = &$thing $($route)+;
        let indices: &[usize] = &$crate::at!(@indices [] $($route)+);
        $thing.place().below(&stringify!($($route)+), indices)
    }};
}

#[cfg(test)]
mod tests {
    use super::{DocumentId, FileId, Place, Placed};

    const DOCUMENT: DocumentId = DocumentId { file: FileId(0), number: 3 };

    struct Cell {
        values: Vec<Vec<u8>>,
    }
    struct Thing {
        cells: Vec<Cell>,
    }

    impl Placed for Thing {
        fn place(&self) -> Place {
            Place::document(DOCUMENT).part(&"ends.a[i]", &[7])
        }
    }

    #[test]
    fn a_route_is_spelled_from_the_field() {
        let thing = Thing { cells: vec![Cell { values: vec![vec![1], vec![2, 3]] }] };
        let (i, j) = (0, 1);
        assert_eq!(at!(thing.cells[i].values[j][i]).route(), "ends.a[7].cells[0].values[1][0]");
        assert_eq!(at!(thing.cells).route(), "ends.a[7].cells");
        assert_eq!(Place::document(DOCUMENT).route(), "");
    }
}
