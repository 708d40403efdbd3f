//! What a comparison is made of.

use std::cmp::Ordering;

use super::cause::Cause;
use crate::finding::rule::Severity;
use crate::sheet::{Reason, Told};

/// A hop that is not what it was.
#[derive(Debug)]
pub struct HopChange {
    /// Network it belongs to.
    pub network: String,
    /// Its id.
    pub hop: String,
    /// The id it had, if it was renamed.
    pub renamed_from: Option<String>,
    /// Its title, or its id.
    pub title: String,
    /// Ends, frequencies, bandwidth; empty if it cannot be computed.
    pub context: String,
    /// What became of it.
    pub outcome: Outcome,
    /// Why it cannot be computed, before and after.
    pub not_computed: [Option<String>; 2],
    /// The quantities it is decided by, those that change.
    pub quantities: Vec<Change>,
    /// Other lines that change, greatest first.
    pub others: Vec<Change>,
    /// Lines whose change is too small to list.
    pub small: usize,
    /// Its findings.
    pub findings: Vec<FindingChange>,
    /// The edits behind all that, in order of file and line.
    pub causes: Vec<Cause>,
    /// The greatest loss of a margin, as a share of what there was; 0 if none is lost.
    pub loss: f64,
    /// The greatest change, in thresholds.
    pub size: f64,
}

/// What became of a hop. It is judged by the gate that was there before, and by its own where that is stricter.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Outcome {
    /// It passed and has errors now.
    NowFails,
    /// It is new and has errors.
    NewAndFails,
    /// It was judged and cannot be any more, or what would fail it is switched off.
    NotJudged,
    /// It had errors and has more of them, or worse ones.
    FailsWorse,
    /// It would fail by what was asked for before, and passes because less is.
    PassesByLoweredLimit,
    /// It would fail, and the change brings the waiver that accepts it.
    NewlyWaived,
    /// It had errors and still has.
    StillFails,
    /// It passes, with a warning that was not there.
    NewWarning,
    /// It passes, as before.
    NoError,
    /// It had errors and passes now.
    NowPasses,
    /// It could not be judged and can now.
    JudgedAgain,
    /// It is new and passes.
    New,
    /// It is gone.
    Removed,
    /// Nothing but its id changed.
    Renamed,
}

impl Outcome {
    /// All of them, worst first.
    pub const ALL: [Self; 14] = [
        Self::NowFails,
        Self::NewAndFails,
        Self::NotJudged,
        Self::FailsWorse,
        Self::PassesByLoweredLimit,
        Self::NewlyWaived,
        Self::StillFails,
        Self::NewWarning,
        Self::NoError,
        Self::NowPasses,
        Self::JudgedAgain,
        Self::New,
        Self::Removed,
        Self::Renamed,
    ];

    /// Said of one hop; of several, where that is another word.
    #[must_use]
    pub const fn words(self) -> [&'static str; 2] {
        match self {
            Self::NowFails => ["now fails", "now fail"],
            Self::NewAndFails => ["new and fails", "new and fail"],
            Self::NotJudged => ["no longer judged", "no longer judged"],
            Self::FailsWorse => ["fails worse", "fail worse"],
            Self::PassesByLoweredLimit => ["passes by a lowered limit", "pass by a lowered limit"],
            Self::NewlyWaived => ["newly waived", "newly waived"],
            Self::StillFails => ["still fails", "still fail"],
            Self::NewWarning => ["new warning", "with a new warning"],
            Self::NoError => ["no error", "without error"],
            Self::NowPasses => ["now passes", "now pass"],
            Self::JudgedAgain => ["judged again", "judged again"],
            Self::New => ["new", "new"],
            Self::Removed => ["removed", "removed"],
            Self::Renamed => ["renamed", "renamed"],
        }
    }

    /// The word for it in JSON.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::NowFails => "now-fails",
            Self::NewAndFails => "new-and-fails",
            Self::NotJudged => "not-judged",
            Self::FailsWorse => "fails-worse",
            Self::PassesByLoweredLimit => "passes-by-lowered-limit",
            Self::NewlyWaived => "newly-waived",
            Self::StillFails => "still-fails",
            Self::NewWarning => "new-warning",
            Self::NoError => "no-error",
            Self::NowPasses => "now-passes",
            Self::JudgedAgain => "judged-again",
            Self::New => "new",
            Self::Removed => "removed",
            Self::Renamed => "renamed",
        }
    }

    /// What it is when the comparison is made the other way round, how bad it got left aside.
    #[must_use]
    pub const fn mirrored(self, failed: bool) -> Self {
        match self {
            Self::NowFails => Self::NowPasses,
            Self::NowPasses | Self::PassesByLoweredLimit | Self::NewlyWaived => Self::NowFails,
            Self::NotJudged => Self::JudgedAgain,
            Self::JudgedAgain => Self::NotJudged,
            Self::NewAndFails | Self::New => Self::Removed,
            Self::Removed if failed => Self::NewAndFails,
            Self::Removed => Self::New,
            Self::StillFails | Self::FailsWorse => Self::StillFails,
            Self::NoError | Self::NewWarning => Self::NoError,
            Self::Renamed => self,
        }
    }
}

/// A value of one side.
#[derive(Debug, Clone, PartialEq)]
pub struct Shown {
    /// As printed; `None` if there is none.
    pub text: Option<Told>,
    /// The number in its base unit.
    pub number: Option<f64>,
    /// Why it cannot be computed, if it should be there and is not.
    pub lost: Option<Reason>,
}

/// A line that is not what it was.
#[derive(Debug, Clone)]
pub struct Change {
    /// Its key.
    pub key: String,
    /// What it is.
    pub name: String,
    /// Its base unit, if it is a number.
    pub unit: Option<&'static str>,
    /// Before and after.
    pub values: [Shown; 2],
    /// The limit it is held against.
    pub limits: [Option<String>; 2],
    /// What is left.
    pub margins: Option<[Shown; 2]>,
    /// Whether the limit is met.
    pub met: [Option<bool>; 2],
    /// The loss of margin, as a share of what there was; negative for a gain.
    pub loss: f64,
    /// The change in thresholds; infinite where there is nothing on one side.
    pub size: f64,
    /// The edits behind it, by number in the list of the hop.
    pub causes: Vec<usize>,
}

impl Change {
    /// After less before, in the base unit.
    #[must_use]
    pub fn difference(&self) -> Option<f64> {
        let [before, after] = &self.values;
        Some(after.number? - before.number?)
    }

    /// Whether the verdict on it turned.
    #[must_use]
    pub fn turns(&self) -> bool {
        matches!(self.met, [Some(before), Some(after)] if before != after)
    }
}

/// Whether a finding is on one side or on both.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Status {
    /// Only after.
    New,
    /// On both, of a higher severity after.
    Raised,
    /// An error on both, worse after.
    Worse,
    /// An error on both, better after.
    Better,
    /// On both, of a lower severity after.
    Lowered,
    /// Only before.
    Fixed,
    /// On both.
    Existing,
}

impl Status {
    /// The word for it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::New => "new",
            Self::Raised => "raised",
            Self::Worse => "worse",
            Self::Better => "better",
            Self::Lowered => "lowered",
            Self::Fixed => "fixed",
            Self::Existing => "existing",
        }
    }
}

/// Why a finding that counts by the gate before does not by the gate of the change.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Aside {
    /// Its rule is switched off, or does not run there.
    Off,
    /// Its rule is lowered.
    Lowered,
    /// A waiver accepts it.
    Waived,
    /// The value meets what is asked for now.
    Limit,
}

impl Aside {
    /// The word for it in JSON.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Off => "switched-off",
            Self::Lowered => "lowered",
            Self::Waived => "waived",
            Self::Limit => "limit",
        }
    }

    /// Said after the finding.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Off => "the change switches this off",
            Self::Lowered => "the change lowers this",
            Self::Waived => "the change waives this",
            Self::Limit => "the change asks for less",
        }
    }
}

/// A finding and which side has it.
#[derive(Debug, Clone)]
pub struct FindingChange {
    /// Which side.
    pub status: Status,
    /// The rule.
    pub rule: &'static str,
    /// Severity after, or before if it is fixed.
    pub severity: Severity,
    /// What it says, after or, if it is fixed, before.
    pub message: String,
    /// File and line of its first label.
    pub place: Option<(String, usize)>,
    /// Why the gate of the change lets it pass, if it does.
    pub aside: Option<Aside>,
}

impl FindingChange {
    /// An error that was not there, or is worse.
    #[must_use]
    pub fn regresses(&self) -> bool {
        self.severity == Severity::Error && matches!(self.status, Status::New | Status::Raised | Status::Worse)
    }

    /// Whether it is there only now, or graver than it was.
    #[must_use]
    pub fn is_news(&self) -> bool {
        matches!(self.status, Status::New | Status::Raised)
    }

    /// Whether it is worth a line.
    #[must_use]
    pub fn is_told(&self) -> bool {
        self.status != Status::Existing || self.aside.is_some()
    }
}

impl HopChange {
    /// Whether it got worse than it may.
    #[must_use]
    pub fn regresses(&self) -> bool {
        matches!(self.outcome, Outcome::NowFails | Outcome::NewAndFails | Outcome::NotJudged)
            || self.findings.iter().any(FindingChange::regresses)
    }

    /// Findings it has on both sides.
    #[must_use]
    pub fn existing(&self) -> usize {
        self.findings.iter().filter(|finding| !finding.is_told()).count()
    }

    /// New findings first of all, then a loss of margin.
    fn rank(&self) -> (u8, usize, f64) {
        let new = self.findings.iter().filter(|finding| matches!(finding.status, Status::New | Status::Raised)).count();
        match self.outcome {
            Outcome::NowFails => (0, new, self.loss),
            Outcome::NewAndFails => (1, new, self.loss),
            Outcome::NotJudged => (2, new, self.loss),
            Outcome::FailsWorse | Outcome::PassesByLoweredLimit | Outcome::NewlyWaived => (3, new, self.loss),
            Outcome::StillFails | Outcome::NewWarning | Outcome::NoError if new > 0 || self.loss > 0.0 => {
                (4, new, self.loss)
            }
            Outcome::NowPasses => (5, new, self.size),
            _ => (6, new, self.size),
        }
    }
}

/// Pass to fail, no longer computable, loss of margin by its share, fail to pass, the rest by size, then by id.
pub(super) fn worst_first(one: &HopChange, other: &HopChange) -> Ordering {
    let ((class, new, size), (other_class, other_new, other_size)) = (one.rank(), other.rank());
    class
        .cmp(&other_class)
        .then(other_new.cmp(&new))
        .then(other_size.total_cmp(&size))
        .then_with(|| one.network.cmp(&other.network))
        .then_with(|| one.hop.cmp(&other.hop))
}
