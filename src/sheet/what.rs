//! What stands on a path.

use super::saying::Saying;
use super::sentence::Term;
use crate::spec::ObstacleKind;

/// What stands somewhere on the path, or that nothing does.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct What {
    /// Its kind; none is bare ground.
    pub kind: Option<ObstacleKind>,
    /// What its author calls it.
    pub title: Option<Box<str>>,
}

impl What {
    /// Nothing stands there.
    pub const BARE_GROUND: Self = Self { kind: None, title: None };

    /// The word for it.
    #[must_use]
    pub const fn word(&self) -> &'static str {
        match self.kind {
            None => "bare ground",
            Some(ObstacleKind::PowerLine) => "power line",
            Some(kind) => kind.word(),
        }
    }

    /// Whether it is spoken of as many.
    #[must_use]
    pub fn is_many(&self) -> bool {
        self.kind == Some(ObstacleKind::Trees)
    }

    /// As a line tells it.
    #[must_use]
    pub fn said(&self) -> Saying {
        let kind = Term(self.word());
        match &self.title {
            Some(title) => Saying::Standing { kind, name: title.clone() },
            None => Saying::Word { word: kind },
        }
    }
}

/// As a message calls it: ``building `Mill` ``.
impl std::fmt::Display for What {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(self.word())?;
        self.title.as_ref().map_or(Ok(()), |title| write!(f, " `{title}`"))
    }
}
