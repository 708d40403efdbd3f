//! Findings: what is wrong, where, and what would fix it.

pub mod faults;
pub mod rule;

use std::ops::Range;
use std::sync::Arc;

use crate::finding::rule::{Rule, Severity};
use crate::place::{FileId, Place};
use crate::spec::EndName;
use crate::units::Quantity;

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

/// A fix a program can make.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fix {
    /// The texts to put in: at a field that is not written, its key comes with it.
    pub edits: Vec<(Spot, String)>,
    /// Why a person must agree; `None` if it can alter no value of the design.
    pub unsafe_because: Option<&'static str>,
}

/// Which way a value gets worse.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Worse {
    /// A stress, a length, a level above overload.
    Higher,
    /// A margin, a voltage, an availability.
    Lower,
}

/// The value a finding is about, in the base unit of its quantity.
#[derive(Debug, Clone, PartialEq)]
pub struct Measured {
    /// To ten digits, the same on every machine.
    pub value: f64,
    /// The quantity by name, as [`crate::units::Kind::named`] knows it.
    pub quantity: &'static str,
    /// The base unit.
    pub unit: &'static str,
    /// As it is printed.
    pub text: String,
    /// Which way it gets worse.
    pub worse: Worse,
}

impl Measured {
    /// A value and which way it gets worse.
    pub fn of<Q: Quantity>(value: Q, worse: Worse) -> Self {
        let digits = format!("{:.9e}", value.base()).parse().unwrap_or_else(|_| value.base());
        Self { value: digits, quantity: Q::KIND.name, unit: Q::KIND.unit, text: value.to_string(), worse }
    }

    /// Whether it is worse than another value of its quantity.
    #[must_use]
    pub fn is_worse_than(&self, other: f64) -> bool {
        self.worse.is_passed(self.value, other)
    }
}

impl Worse {
    /// Whether a value is worse than another one, by more than the dust of being written and read.
    #[must_use]
    pub fn is_passed(self, value: f64, other: f64) -> bool {
        let dust = 1e-9 * value.abs().max(other.abs());
        match self {
            Self::Higher => value > other + dust,
            Self::Lower => value < other - dust,
        }
    }
}

/// What a waiver says, for those who print it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Waived {
    /// Its id.
    pub id: String,
    /// `deviation` or `concession`.
    pub departure: &'static str,
    /// Why it is acceptable.
    pub reason: String,
    /// Who accepted it.
    pub approver: String,
    /// The day it was accepted, ISO 8601.
    pub approved_on: String,
    /// The last day it holds, ISO 8601.
    pub expires: String,
    /// The record of the decision.
    pub reference: String,
    /// What is done instead.
    pub compensation: Option<String>,
    /// The document.
    pub place: Place,
}

/// What a finding is known by from one run to the next: whatever the path, the line, the words or the program's version.
///
/// [`crate::verdict::fingerprint`] makes it.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Fingerprint {
    /// Hash of rule and target.
    pub key: u64,
    /// Its number among those of the same key, from 0.
    pub ordinal: u32,
}

impl Fingerprint {
    /// That of the first of the same key.
    #[must_use]
    pub fn first(self) -> Self {
        Self { ordinal: 0, ..self }
    }
}

/// What a finding is known by, beside its rule: never by which of several was the worst.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub enum Identity {
    /// The field of its primary label.
    #[default]
    Label,
    /// Another field, where the label goes to whichever is worst.
    Spot(Spot),
    /// The hop it is about, and nothing in it.
    Hop,
}

/// Findings that are told under another one: see [`crate::verdict::causes`].
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Gathered {
    /// The same fault of a shared document, found at other ends.
    pub alike: Vec<Finding>,
    /// What is found only because of it.
    pub follow: Vec<Finding>,
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
    /// Further fields that decided it, which need no word of their own: `compare` looks for its cause there too.
    pub decided_by: Vec<Place>,
    /// What to do, in numbers where it can.
    pub help: Option<String>,
    /// What a program can do about it.
    pub fix: Option<Fix>,
    /// The hop it is about, if it is about one.
    pub hop: Option<String>,
    /// Further hops it touches: those that share what is wrong, those that a service runs over.
    pub other_hops: Vec<String>,
    /// The end of the hop, if it is about one.
    pub end: Option<EndName>,
    /// The value that is wrong, where the rule compares one.
    pub measured: Option<Measured>,
    /// Tells apart what a rule says more than once of one spot: the name of a code.
    pub about: Option<String>,
    /// What it is known by.
    pub identity: Identity,
    /// The waiver that accepts it, if one does.
    pub waived: Option<Arc<Waived>>,
    /// The same as a number.
    pub fingerprint: Fingerprint,
    /// What is told under it.
    pub gathered: Option<Box<Gathered>>,
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
            decided_by: Vec::new(),
            help: None,
            fix: None,
            hop: None,
            other_hops: Vec::new(),
            end: None,
            measured: None,
            about: None,
            identity: Identity::Label,
            waived: None,
            fingerprint: Fingerprint::default(),
            gathered: None,
        }
    }

    /// What is alike, told under it.
    #[must_use]
    pub fn alike(&self) -> &[Finding] {
        self.gathered.as_ref().map_or(&[], |gathered| &gathered.alike)
    }

    /// What follows from it, told under it.
    #[must_use]
    pub fn follow(&self) -> &[Finding] {
        self.gathered.as_ref().map_or(&[], |gathered| &gathered.follow)
    }

    /// It and all that is told under it.
    pub fn with_gathered(&self) -> impl Iterator<Item = &Finding> {
        std::iter::once(self).chain(self.alike()).chain(self.follow())
    }

    /// Adds a spot that drove the value.
    pub fn because(&mut self, spot: impl Into<Spot>, text: impl Into<String>) -> &mut Self {
        self.labels.push(Label { spot: spot.into(), text: text.into() });
        self
    }

    /// Adds a field that decided it and needs no word of its own.
    pub fn decided_by(&mut self, place: Place) -> &mut Self {
        self.decided_by.push(place);
        self
    }

    /// Every hop it touches.
    pub fn hops(&self) -> impl Iterator<Item = &String> {
        self.hop.iter().chain(&self.other_hops)
    }

    /// Takes another finding in that says the same of another hop.
    pub fn takes_in(&mut self, other: &mut Self) -> bool {
        let same = other.says_the_same(self);
        if same {
            self.other_hops.extend(other.hop.take());
            self.other_hops.append(&mut other.other_hops);
        }
        same
    }

    /// Whether it tells a person nothing that another one does not, whatever hop they are about.
    #[must_use]
    pub fn says_the_same(&self, other: &Self) -> bool {
        let words =
            |finding: &Self| (finding.rule.name, finding.severity, finding.message.clone(), finding.help.clone());
        // Accepted for one hop is not accepted for another.
        words(self) == words(other) && self.labels == other.labels && self.waived == other.waived
    }

    /// Lowers its severity where what it goes by is less sure than the rule; a severity set by the network still counts.
    pub fn at_most(&mut self, severity: Severity) -> &mut Self {
        self.severity = self.severity.min(severity);
        self
    }

    /// Gives the value that is wrong and which way it gets worse.
    pub fn measured<Q: Quantity>(&mut self, value: Q, worse: Worse) -> &mut Self {
        self.measured = Some(Measured::of(value, worse));
        self
    }

    /// Tells it apart from another one of the same rule at the same spot.
    pub fn about(&mut self, name: impl Into<String>) -> &mut Self {
        self.about = Some(name.into());
        self
    }

    /// Makes it known by the hop alone: it is about all of it, and the label only goes to what is worst.
    pub fn of_whole_hop(&mut self) -> &mut Self {
        self.identity = Identity::Hop;
        self
    }

    /// Makes it known by a field that stays, where the label goes to whichever of several is worst or first.
    pub fn known_at(&mut self, spot: impl Into<Spot>) -> &mut Self {
        self.identity = Identity::Spot(spot.into());
        self
    }

    /// Says what would fix it.
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
