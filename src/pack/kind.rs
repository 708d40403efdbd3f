//! Which pack of a hop, and of which end.

use crate::spec::EndName;

/// Which pack of a hop.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Pack {
    /// For review at a desk.
    Design,
    /// What an application for a licence asks for.
    Licence,
    /// For the crew at one end.
    Install(EndName),
    /// What came back from one end, to sign.
    Acceptance(EndName),
}

impl Pack {
    /// All packs of a hop.
    pub const ALL: [Self; 6] = [
        Self::Design,
        Self::Licence,
        Self::Install(EndName::A),
        Self::Install(EndName::B),
        Self::Acceptance(EndName::A),
        Self::Acceptance(EndName::B),
    ];
}
