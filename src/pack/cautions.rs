//! Safety messages in our own words. Each names its hazard, what it does to people, and how to avoid it; all of them defer
//! to local codes and to licensed or competent persons. None says that anything is safe.

use serde::Serialize;

/// A safety message.
#[derive(Debug, Clone, Copy, Serialize)]
pub(super) struct Caution {
    word: &'static str,
    hazard: &'static str,
    consequence: &'static str,
    avoid: &'static str,
}

const fn caution(word: &'static str, hazard: &'static str, consequence: &'static str, avoid: &'static str) -> Caution {
    Caution { word, hazard, consequence, avoid }
}

/// Falling.
pub(super) const HEIGHT: Caution = caution(
    "DANGER",
    "Work at height.",
    "A fall kills.",
    "Climb only if you are trained, authorised and equipped for this structure, and never alone. Agree on the rescue plan \
     before anyone leaves the ground. Tie every tool. Keep people out from below.",
);

/// Overhead lines.
pub(super) const LINES: Caution = caution(
    "DANGER",
    "Power lines.",
    "Touching one, or coming near it, kills.",
    "Look up before anything is raised. Keep the distance that the owner of the line and the local code demand. If a pole, \
     a ladder or an antenna could fall onto a line, stop and ask the owner.",
);

/// Lightning, wind and ice.
pub(super) const WEATHER: Caution = caution(
    "WARNING",
    "Lightning, wind and ice.",
    "A strike anywhere near can kill; gusts and ice throw people and parts down.",
    "Come down at the first thunder, or when the site tells you to. Touch no cable in a storm. Do not climb in wind or ice \
     beyond the limits of your employer and of the site.",
);

/// Mains and supplies.
pub(super) const ELECTRICITY: Caution = caution(
    "WARNING",
    "Electricity.",
    "Shock and burns; a start at height can end in a fall.",
    "Leave mains work to a licensed or competent electrician under the local code. Isolate, lock and prove dead. Connect \
     the grounding conductor first and take it off last.",
);

/// The beam.
pub(super) const RADIATION: Caution = caution(
    "WARNING",
    "Radio waves from the antenna.",
    "Close in front of a transmitting antenna they can heat the body and harm the eyes.",
    "Keep everyone out of the space in front of the antenna while the transmitter is on. The distances \
     under “Before work” are for the power as set: the maker's distances and the person responsible at this site come first.",
);

/// Lifting, and the structure.
pub(super) const LOAD: Caution = caution(
    "WARNING",
    "Heavy parts and the structure that bears them.",
    "A dropped part or a failing support can kill people below.",
    "Have a competent engineer confirm that the structure bears the load; it is not assessed in this pack. Lift with a rope \
     and a tag line, with two people where one is not enough.",
);

/// The sheets of the makers.
pub(super) const MAKERS: Caution = caution(
    "NOTICE",
    "Makers' instructions and local codes.",
    "A part used against them may fail.",
    "They come before this pack. Where they ask for more than is printed here, do as they say and write it into the record.",
);

/// Those that are read before anything is touched.
pub(super) const GENERAL: [Caution; 7] = [HEIGHT, LINES, WEATHER, ELECTRICITY, RADIATION, LOAD, MAKERS];
