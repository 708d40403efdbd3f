//! Findings: what is wrong, where, and what would mend it.

use std::ops::Range;

use crate::place::{FileId, Place};
use crate::rule::{Rule, Severity};

/// Where a label points.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Spot {
    /// A field of a document.
    Field(Place),
    /// A key of the author's choosing in the mapping at a place.
    Entry(Place, String),
    /// Bytes of a file, found while reading it.
    Bytes(FileId, Range<usize>),
    /// A path that has no text to show: unreadable, missing, too large.
    Path(String),
}

impl Spot {
    /// The file it is in; `None` for a path without text.
    #[must_use]
    pub fn file(&self) -> Option<FileId> {
        match self {
            Self::Field(place) | Self::Entry(place, _) => Some(place.document.file),
            Self::Bytes(file, _) => Some(*file),
            Self::Path(_) => None,
        }
    }
}

impl From<Place> for Spot {
    fn from(place: Place) -> Self {
        Self::Field(place)
    }
}

/// A spot and what is to be said there.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Label {
    /// Where.
    pub spot: Spot,
    /// One clause, with the number that counts.
    pub text: String,
}

/// A mend a program can make.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fix {
    /// The texts to put in: at a field that is not written, its key comes with it.
    pub edits: Vec<(Spot, String)>,
    /// Why a person must agree; `None` if it can alter no value of the design.
    pub unsafe_because: Option<&'static str>,
}

/// One thing that is wrong.
#[derive(Debug, Clone, PartialEq)]
pub struct Finding {
    /// The rule that found it.
    pub rule: &'static Rule,
    /// Severity after the network's settings.
    pub severity: Severity,
    /// One lower-case clause with the value, the limit and the margin.
    pub message: String,
    /// The input to change first, then what drove it.
    pub labels: Vec<Label>,
    /// What to do, in numbers where it can.
    pub help: Option<String>,
    /// What a program can do about it.
    pub fix: Option<Fix>,
    /// The hop it is about, if it is about one.
    pub hop: Option<String>,
}

impl Finding {
    /// A finding with its primary label on `spot`.
    pub fn new(
        rule: &'static Rule,
        spot: impl Into<Spot>,
        message: impl Into<String>,
        label: impl Into<String>,
    ) -> Self {
        Self {
            rule,
            severity: rule.severity,
            message: message.into(),
            labels: vec![Label { spot: spot.into(), text: label.into() }],
            help: None,
            fix: None,
            hop: None,
        }
    }

    /// Adds a spot that drove the value.
    pub fn because(&mut self, spot: impl Into<Spot>, text: impl Into<String>) -> &mut Self {
        self.labels.push(Label { spot: spot.into(), text: text.into() });
        self
    }

    /// Whether it tells a person nothing that another one does not, whatever hop they are about.
    #[must_use]
    pub fn says_the_same(&self, other: &Self) -> bool {
        let words =
            |finding: &Self| (finding.rule.name, finding.severity, finding.message.clone(), finding.help.clone());
        words(self) == words(other) && self.labels == other.labels
    }

    /// Lowers its severity where what it goes by is less sure than the rule; a severity set by the network still counts.
    pub fn at_most(&mut self, severity: Severity) -> &mut Self {
        self.severity = self.severity.min(severity);
        self
    }

    /// Says what would mend it.
    pub fn help(&mut self, text: impl Into<String>) -> &mut Self {
        self.help = Some(text.into());
        self
    }

    /// Says what a program can do about it without altering a value of the design.
    pub fn fix(&mut self, spot: impl Into<Spot>, text: impl Into<String>) -> &mut Self {
        self.fix = Some(Fix { edits: vec![(spot.into(), text.into())], unsafe_because: None });
        self
    }

    /// Says what a program can do about it once a person agrees, and why that takes a person.
    pub fn fix_unsafely(&mut self, edits: Vec<(Spot, String)>, because: &'static str) -> &mut Self {
        self.fix = Some(Fix { edits, unsafe_because: Some(because) });
        self
    }
}

/// A list of findings to add to.
#[derive(Debug, Default)]
pub struct Findings {
    /// In the order they were made.
    pub list: Vec<Finding>,
}

impl Findings {
    /// Adds a finding and lends it for labels and help.
    pub fn report(
        &mut self,
        rule: &'static Rule,
        spot: impl Into<Spot>,
        message: impl Into<String>,
        label: impl Into<String>,
    ) -> &mut Finding {
        self.list.push(Finding::new(rule, spot, message, label));
        let last = self.list.len() - 1;
        &mut self.list[last]
    }
}
