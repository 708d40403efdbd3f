//! Safety messages in our own words. Each names its hazard, what it does to people, and how to avoid it; all of them defer
//! to local codes and to licensed or competent persons. None says that anything is safe.

use serde::Serialize;

use crate::voice::Voice;

/// What a message warns of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Hazard {
    /// Falling.
    Height,
    /// Overhead lines.
    Lines,
    /// Lightning, wind and ice.
    Weather,
    /// Mains and supplies.
    Electricity,
    /// The beam.
    Radiation,
    /// Lifting, and the structure.
    Load,
    /// The sheets of the makers.
    Makers,
}

/// A safety message.
#[derive(Debug, Clone, Serialize)]
pub(super) struct Caution {
    word: String,
    /// Whether only things are at stake, not people.
    things_only: bool,
    hazard: String,
    consequence: String,
    avoid: String,
}

impl Hazard {
    /// Those that are read before anything is touched.
    const GENERAL: [Self; 7] =
        [Self::Height, Self::Lines, Self::Weather, Self::Electricity, Self::Radiation, Self::Load, Self::Makers];

    /// The key of the signal word, by how bad it may get, and that of the hazard.
    const fn keys(self) -> (&'static str, &'static str) {
        match self {
            Self::Height => ("signal-danger", "caution-height"),
            Self::Lines => ("signal-danger", "caution-lines"),
            Self::Weather => ("signal-warning", "caution-weather"),
            Self::Electricity => ("signal-warning", "caution-electricity"),
            Self::Radiation => ("signal-warning", "caution-radiation"),
            Self::Load => ("signal-warning", "caution-load"),
            Self::Makers => ("signal-notice", "caution-makers"),
        }
    }

    /// The message in words.
    pub(super) fn caution(self, voice: Voice) -> Caution {
        let (word, hazard) = self.keys();
        Caution {
            word: voice.say(word),
            things_only: self == Self::Makers,
            hazard: voice.say(hazard),
            consequence: voice.say(&format!("{hazard}-consequence")),
            avoid: voice.say(&format!("{hazard}-avoid")),
        }
    }
}

/// The messages that are read before anything is touched.
pub(super) fn general(voice: Voice) -> Vec<Caution> {
    Hazard::GENERAL.iter().map(|hazard| hazard.caution(voice)).collect()
}
