//! The changes of one hop that could help: each with what has to be written for it. Nothing is judged here but what is plain,
//! such as a band that does not hold the channel: the rules say the rest.

mod antennas;
mod mounting;
mod power;
mod radios;
mod runs;
mod spectrum;

use super::change::Change;
use super::ground::{Ground, Need};
use super::reach::Lever;

/// The changes that some needs ask for, in the order of the needs, none twice.
pub(super) fn options(ground: &Ground<'_>, needs: &[Need]) -> Vec<Change> {
    let mut all: Vec<Change> = Vec::new();
    for need in needs {
        let made = match need.lever {
            Lever::Power => power::options(ground, *need),
            Lever::Antenna => antennas::options(ground, *need),
            Lever::Bandwidth | Lever::Channel if ground.is_licensed => Vec::new(),
            Lever::Bandwidth => spectrum::widths(ground),
            Lever::Channel => spectrum::channels(ground),
            Lever::Radio => radios::options(ground),
            Lever::Height => mounting::heights(ground, *need),
            Lever::Bracket => mounting::brackets(ground, *need),
            Lever::Arrester => runs::arresters(ground, *need),
            Lever::Supply => runs::supplies(ground, *need),
            Lever::Cable => runs::cables(ground, *need),
        };
        for change in made {
            if !all.iter().any(|known| known.key() == change.key()) {
                all.push(change);
            }
        }
    }
    all
}
