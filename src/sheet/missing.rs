//! Why a value could not be computed, and so who reports it.

use super::reason::Reason;
use crate::finding::Spot;

/// Why a value could not be computed.
#[derive(Debug, Clone, PartialEq)]
pub struct Missing {
    /// What a page says; for something broken, its name.
    pub reason: Reason,
    /// The input that is missing or out of range.
    pub spot: Spot,
    /// Who reports it.
    pub cause: Cause,
}

/// Why a value is missing, and so who reports it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Cause {
    /// An input is not there or out of range: reported once a hop.
    Input,
    /// A rule of its own speaks of it.
    Judged,
    /// An input is broken and was reported where it stands; once a hop it is said what waits for it.
    Broken,
}

impl Missing {
    /// A reason that nothing else will report.
    pub fn new(reason: impl Into<Reason>, spot: impl Into<Spot>) -> Self {
        Self { reason: reason.into(), spot: spot.into(), cause: Cause::Input }
    }

    /// A reason that a rule reports under its own name.
    pub fn judged(reason: impl Into<Reason>, spot: impl Into<Spot>) -> Self {
        Self { cause: Cause::Judged, ..Self::new(reason, spot) }
    }

    /// A value that comes from one that is broken: its name, and the place where that is shown.
    #[must_use]
    pub fn broken(name: impl Into<Reason>, spot: Spot) -> Self {
        Self { reason: name.into(), spot, cause: Cause::Broken }
    }
}
