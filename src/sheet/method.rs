//! How a line was computed.

use std::fmt;

/// How a line was computed, and whether that names who says so: a page lists the methods with a source, while plain sums
/// and differences are left to the sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Method {
    words: &'static str,
    cited: bool,
}

impl Method {
    /// In English, as the catalogues have it for a key.
    #[must_use]
    pub const fn words(self) -> &'static str {
        self.words
    }

    /// Whether it names a source, be it common practice or memory.
    #[must_use]
    pub const fn names_a_source(self) -> bool {
        self.cited
    }
}

/// A method with its source.
pub(super) const fn cited(words: &'static str) -> Method {
    Method { words, cited: true }
}

/// A sum or a difference, or an input: nobody need vouch for it.
impl From<&'static str> for Method {
    fn from(words: &'static str) -> Self {
        Self { words, cited: false }
    }
}

impl fmt::Display for Method {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words)
    }
}
