//! Why a number changed: an edited field among the inputs of its line.

/// What sort of document an edit is in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Class {
    /// A hop or a site.
    Design,
    /// The network document: objectives, climate, codes, severities.
    Network,
    /// Equipment.
    Catalogue,
}

impl Class {
    /// The word for it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Design => "design",
            Self::Network => "network",
            Self::Catalogue => "catalogue",
        }
    }

    pub(super) fn of(kind: &str) -> Self {
        match kind {
            "network" => Self::Network,
            "radio" | "antenna" | "bracket" | "cable" | "fibre" | "feeder" | "supply" | "arrester" => Self::Catalogue,
            _ => Self::Design,
        }
    }
}

/// An edited field.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Cause {
    /// What sort of document it is in.
    pub class: Class,
    /// The document: `hop ridge`.
    pub document: String,
    /// The field: `ends.a.transmit_power`.
    pub route: String,
    /// What was written; `None` if nothing.
    pub before: Option<String>,
    /// What is written; `None` if nothing.
    pub after: Option<String>,
    /// The file, as it is printed.
    pub path: String,
    /// The line, from 1.
    pub line: usize,
    /// The place is one of the old side: the new one has it no longer.
    pub gone: bool,
}
