//! Which pack of a hop, and of which end.

/// One end of a hop.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum End {
    /// End `a`.
    A,
    /// End `b`.
    B,
}

impl End {
    /// Both.
    pub const BOTH: [Self; 2] = [Self::A, Self::B];

    /// The letter as written in a hop.
    #[must_use]
    pub const fn letter(self) -> &'static str {
        match self {
            Self::A => "a",
            Self::B => "b",
        }
    }
}

/// Which pack of a hop.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Pack {
    /// For review at a desk.
    Design,
    /// For the crew at one end.
    Install(End),
    /// What came back from one end, to sign.
    Acceptance(End),
}
