//! Which pack of a hop, and of which end.

use crate::spec::EndName;

/// Which pack of a hop.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Pack {
    /// For review at a desk.
    Design,
    /// For the crew at one end.
    Install(EndName),
    /// What came back from one end, to sign.
    Acceptance(EndName),
}

impl Pack {
    /// All packs of a hop.
    pub const ALL: [Self; 5] = [
        Self::Design,
        Self::Install(EndName::A),
        Self::Install(EndName::B),
        Self::Acceptance(EndName::A),
        Self::Acceptance(EndName::B),
    ];
}
