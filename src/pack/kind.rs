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
