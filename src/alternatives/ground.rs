//! What changes are made of: the hop that is looked at, what else it may be set to, what a finding asks for.

use super::reach::{Lever, Turn, levers};
use super::scale::on_grid;
use super::verdict::Found;
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
    pub(super) fn ends(self) -> impl Iterator<Item = EndName> {
        EndName::BOTH.into_iter().filter(move |end| self.end.is_none_or(|only| only == *end))
    }

    /// Whether a run is one to look at.
    pub(super) fn is_about(self, run: usize) -> bool {
        self.run.is_none_or(|only| only == run)
    }
}

/// What some findings ask to be changed. Of what is found about another hop, it is this one that gives way.
pub(super) fn needs(found: &[&Found], hop: &str) -> Vec<Need> {
    let mut needs: Vec<Need> = Vec::new();
    for one in found {
        let is_own = one.hop.as_deref() == Some(hop);
        for (lever, turn) in levers(one.rule.name) {
            let there = is_own && lever.is_of_its_end();
            let (end, run) = if there { (one.end, one.run) } else { (None, None) };
            let need = Need { lever: *lever, turn: if is_own { *turn } else { Turn::Any }, end, run };
            if !needs.contains(&need) {
                needs.push(need);
            }
        }
    }
    needs
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

/// Whether a window holds both channels of the hop, edges included.
pub(super) fn holds_channels(ground: &Ground<'_>, window: &Window<Gigahertz>) -> bool {
    ground.sheet.directions.iter().all(|direction| {
        let (low, high) = ground.sheet.channel_edges(direction.way);
        window.min.value <= low && high <= window.max.value
    })
}

/// So many of a sorted list, the first and the last among them and the rest evenly between.
pub(super) fn spread<T: Clone>(list: &[T], most: usize) -> Vec<T> {
    if list.len() <= most || most < 2 {
        return list.iter().take(most.max(1)).cloned().collect();
    }
    (0..most).map(|number| list[number * (list.len() - 1) / (most - 1)].clone()).collect()
}

/// The greatest whole number of steps that is not above a value.
pub(super) fn floored<Q: Quantity>(value: Q, step: f64) -> f64 {
    on_grid((value.base() / step + 1e-9).floor() * step, step)
}

/// The least whole number of steps that is not below a value.
pub(super) fn ceiled<Q: Quantity>(value: Q, step: f64) -> f64 {
    on_grid((value.base() / step - 1e-9).ceil() * step, step)
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
