//! The `waiver` document: a departure somebody with authority has accepted, for a while.

use schemars::JsonSchema;
use serde::Deserialize;

use super::{Date, EndName, Hop, Id, Kind, Ref, Text};

/// A known departure from a rule: accepted by name, on record, until a day.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Waiver {
    /// Always `waiver`.
    #[schemars(extend("const" = "waiver"))]
    pub kind: Kind,
    /// Short name; packs and reports call it by this.
    pub id: Id,
    /// The rule that is departed from. Rules about people's safety, grounding and licences cannot be waived.
    pub rule: Text,
    /// What it holds for.
    pub target: WaiverTarget,
    /// Accepted before or after it was built.
    pub departure: Departure,
    /// Why it is acceptable here.
    pub reason: Text,
    /// Who accepted it.
    pub approver: Text,
    /// The day it was accepted.
    pub approved_on: Date,
    /// The last day it holds.
    pub expires: Date,
    /// The record of the decision: a number, a letter, a ticket.
    pub reference: Text,
    /// The worst value accepted, such as `14 dB`. Without it any value is, for as long as it holds, and `check` warns of that.
    pub accepts: Option<Text>,
    /// What is done instead.
    pub compensation: Option<Text>,
}

/// What a waiver holds for.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct WaiverTarget {
    /// The hop.
    pub hop: Ref<Hop>,
    /// One end of it; both, if none is named.
    pub end: Option<EndName>,
    /// One field of what the finding points at, such as `ends.a.bracket` or `supports[north-pole].outside_diameter`.
    pub field: Option<Text>,
}

/// When a departure was accepted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum Departure {
    /// Before it is built.
    Deviation,
    /// After it was built.
    Concession,
}

impl Departure {
    /// The word as written.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Deviation => "deviation",
            Self::Concession => "concession",
        }
    }
}

/// How long waivers may hold.
#[derive(Debug, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct WaiverTerms {
    /// The most months from approval to expiry. Default 12.
    pub longest_months: Option<u8>,
    /// Days before expiry from which it is announced. Default 30.
    pub notice_days: Option<u8>,
}
