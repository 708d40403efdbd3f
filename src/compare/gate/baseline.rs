//! A baseline that knows more than it did lets more through.

use super::effect::Effect;
use super::part::{GateChange, Part};
use crate::compare::known::KnownSide;
use crate::verdict::baseline::Known;

/// The entries that came, went or changed.
pub(super) fn grown(old: Option<&KnownSide>, new: Option<&KnownSide>) -> Vec<GateChange> {
    let [before, after] = [old, new].map(|side| side.map(KnownSide::entries).unwrap_or_default());
    let mut names: Vec<&str> = before.keys().chain(after.keys()).copied().collect();
    names.sort_unstable();
    names.dedup();
    let changed = |name: &str| {
        let both = [before.get(name).copied(), after.get(name).copied()];
        let effect = match both {
            [Some(old), Some(new)] if old == new => return None,
            [Some(old), Some(new)] if old.covers(new) => Effect::Stricter,
            [Some(_), None] => Effect::Stricter,
            _ => Effect::Weaker,
        };
        let known = both[1].or(both[0])?;
        let side = if both[1].is_some() { new } else { old };
        Some(GateChange {
            part: Part::Baseline,
            effect,
            document: side.map(|side| side.path.clone()).unwrap_or_default(),
            field: known.rule.clone(),
            before: both[0].map(Known::told),
            after: both[1].map(Known::told),
            place: side.map(|side| side.place(name)),
            gone: both[1].is_none(),
            hops: known.hop.iter().cloned().collect(),
        })
    };
    names.into_iter().filter_map(changed).collect()
}
