//! The changes of one hop that could help: each with what has to be written for it. Nothing is judged here but what is plain,
//! such as a band that does not hold the channel: the rules say the rest.

mod antennas;
mod mounting;
mod power;
mod radios;
mod runs;
mod spectrum;

use super::change::Change;
use super::reach::{Lever, Turn};
use crate::network::{Library, ResolvedHop};
use crate::plan::Move;
use crate::sheet::HopSheet;
use crate::spec::{EndName, Window};
use crate::units::{Gigahertz, Quantity};

/// The most models of one kind that are tried for one thing.
pub(super) const MOST_MODELS: usize = 10;

/// What a finding asks to be changed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub(super) struct Need {
    pub(super) lever: Lever,
    pub(super) turn: Turn,
    /// The one end it can be changed at, if it is only one.
    pub(super) end: Option<EndName>,
    /// The one run there.
    pub(super) run: Option<usize>,
}

impl Need {
    /// The ends to look at.
    fn ends(self) -> impl Iterator<Item = EndName> {
        EndName::BOTH.into_iter().filter(move |end| self.end.is_none_or(|only| only == *end))
    }

    /// Whether a run is one to look at.
    fn is_about(self, run: usize) -> bool {
        self.run.is_none_or(|only| only == run)
    }
}

/// The hop that is looked at, with all that changes are made of.
pub(super) struct Ground<'g> {
    pub(super) hop: &'g ResolvedHop<'g>,
    pub(super) sheet: &'g HopSheet<'g>,
    pub(super) library: &'g Library,
    /// What else it may be set to, at the bandwidth it has.
    pub(super) moves: &'g [Move],
    /// The same at each other bandwidth that both its radios have.
    pub(super) widths: &'g [Width],
    /// Whether its channel and its bandwidth are those of a licence.
    pub(super) is_licensed: bool,
}

/// Another bandwidth, and the channels that go with it.
pub(super) struct Width {
    pub(super) written: String,
    pub(super) moves: Vec<Move>,
}

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

/// Whether a window holds both channels of the hop, edges included.
fn holds_channels(ground: &Ground<'_>, window: &Window<Gigahertz>) -> bool {
    ground.sheet.directions.iter().all(|direction| {
        let (low, high) = ground.sheet.channel_edges(direction.way);
        window.min.value <= low && high <= window.max.value
    })
}

/// So many of a sorted list, the first and the last among them and the rest evenly between.
fn spread<T: Clone>(list: &[T], most: usize) -> Vec<T> {
    if list.len() <= most || most < 2 {
        return list.iter().take(most.max(1)).cloned().collect();
    }
    (0..most).map(|number| list[number * (list.len() - 1) / (most - 1)].clone()).collect()
}

/// The greatest whole number of steps that is not above a value.
fn floored<Q: Quantity>(value: Q, step: f64) -> f64 {
    super::change::on_grid((value.base() / step + 1e-9).floor() * step, step)
}

/// The least whole number of steps that is not below a value.
fn ceiled<Q: Quantity>(value: Q, step: f64) -> f64 {
    super::change::on_grid((value.base() / step - 1e-9).ceil() * step, step)
}

#[cfg(test)]
mod tests {
    use super::{ceiled, floored, spread};
    use crate::units::Dbm;

    #[test]
    fn values_are_cut_to_whole_steps_and_lists_keep_their_ends() {
        assert_eq!((floored(Dbm(12.7), 0.5), ceiled(Dbm(12.7), 0.5)), (12.5, 13.0));
        assert_eq!((floored(Dbm(-0.2), 0.5), ceiled(Dbm(13.0), 0.5)), (-0.5, 13.0));
        assert_eq!(spread(&[1, 2, 3, 4, 5, 6, 7, 8, 9], 3), [1, 5, 9]);
        assert_eq!(spread(&[1, 2], 3), [1, 2]);
    }
}
