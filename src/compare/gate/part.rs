//! One change to a gate, and what sort of part of it that is to.

use super::effect::Effect;

/// What sort of part of a gate a change is to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Part {
    /// The severity of a rule, for all files or for some.
    Rule,
    /// A threshold of common practice.
    Limit,
    /// What a hop or a service must reach.
    Objective,
    /// A code of practice.
    Code,
    /// The weather to stand.
    Climate,
    /// What a licence allows.
    Licence,
    /// Files that are not read.
    Excluded,
    /// A departure that is accepted.
    Waiver,
    /// How long waivers may hold.
    WaiverTerms,
    /// What is known to be wrong.
    Baseline,
    /// A hop that is there no longer, or no longer judged.
    Hop,
    /// A network document that is new or gone.
    Network,
}

impl Part {
    /// The word for it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Rule => "rule",
            Self::Limit => "limit",
            Self::Objective => "objective",
            Self::Code => "code",
            Self::Climate => "climate",
            Self::Licence => "licence",
            Self::Excluded => "excluded",
            Self::Waiver => "waiver",
            Self::WaiverTerms => "waiver-terms",
            Self::Baseline => "baseline",
            Self::Hop => "hop",
            Self::Network => "network",
        }
    }

    /// The part a field of a document is.
    pub(super) fn of(kind: &str, route: &str) -> Self {
        match (kind, route.split(['.', '[']).next().unwrap_or_default()) {
            ("waiver", _) => Self::Waiver,
            ("service", _) | (_, "objectives") => Self::Objective,
            (_, "rules" | "rules_by_path") => Self::Rule,
            (_, "limits") => Self::Limit,
            (_, "codes") => Self::Code,
            (_, "climate") => Self::Climate,
            (_, "licence") if route.starts_with("licence.codes") => Self::Code,
            (_, "licence") => Self::Licence,
            (_, "exclude") => Self::Excluded,
            (_, "waivers") => Self::WaiverTerms,
            _ => Self::Network,
        }
    }
}

/// One change to the gate.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct GateChange {
    /// What sort of part it is to.
    pub part: Part,
    /// Whether it lets more through.
    pub effect: Effect,
    /// The document: `network ridge`; a path for a baseline.
    pub document: String,
    /// The field, or what happened to the whole of it.
    pub field: String,
    /// What it was; `None` if nothing was written.
    pub before: Option<String>,
    /// What it is; `None` if nothing is written.
    pub after: Option<String>,
    /// File and line, of the new side where it has them.
    pub place: Option<(String, usize)>,
    /// The place is one of the old side.
    pub gone: bool,
    /// The hops it touches, as far as can be told, sorted.
    pub hops: Vec<String>,
}

impl GateChange {
    /// Whether it may let more through.
    #[must_use]
    pub fn weakens(&self) -> bool {
        self.effect != Effect::Stricter
    }
}
