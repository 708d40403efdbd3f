//! Changes that go together: what they are called, what they cost, which stand before which.

use std::cmp::Ordering;
use std::collections::BTreeSet;

use super::added::Added;
use super::change::Change;

fn spelled(changes: &[Change], one: impl Fn(&Change) -> String) -> String {
    let mut keys: Vec<String> = changes.iter().map(one).collect();
    keys.sort();
    keys.join("; ")
}

/// What tells some changes from all others.
pub(super) fn key(changes: &[Change]) -> String {
    spelled(changes, Change::key)
}

/// What some changes are about: of those about the same things only the best is offered.
pub(super) fn touched(changes: &[Change]) -> String {
    let places: BTreeSet<String> = changes.iter().flat_map(Change::touched).collect();
    places.into_iter().collect::<Vec<_>>().join("; ")
}

/// What each of them is, whatever the values that could be a little less.
pub(super) fn shapes(changes: &[Change]) -> BTreeSet<String> {
    changes.iter().map(Change::shape).collect()
}

/// How many currencies costs are in.
fn currencies(added: &[Added]) -> usize {
    let names: BTreeSet<&String> = added
        .iter()
        .flat_map(|added| match added {
            Added::Known(sums) => sums.keys().collect::<Vec<_>>(),
            Added::Unknown => Vec::new(),
        })
        .collect();
    names.len()
}

/// Whether what each of some proposals costs can be held against the others: not where it is in several currencies.
pub(super) fn costs_compare<'c>(all: impl Iterator<Item = &'c Vec<Change>>) -> bool {
    currencies(&all.map(|changes| added(changes)).collect::<Vec<_>>()) < 2
}

/// What some changes add to the cost.
pub(super) fn added(changes: &[Change]) -> Added {
    changes.iter().fold(Added::default(), |sum, change| sum.and(change.added()))
}

/// The order of proposals: the fewest changes, the least cost where costs can be compared, the least change. What states no cost
/// comes after what does.
pub(super) fn order(one: &[Change], other: &[Change], compare_costs: bool) -> Ordering {
    let cost = |changes: &[Change]| match added(changes).single() {
        Some((_, amount)) if compare_costs => (false, amount),
        None if compare_costs => (true, 0.0),
        _ => (false, 0.0),
    };
    let size = |changes: &[Change]| {
        changes
            .iter()
            .map(Change::size)
            .fold((0_u32, 0.0), |(weight, moved), (more, steps)| (weight.saturating_add(more), moved + steps))
    };
    let keys = |changes: &[Change]| changes.iter().map(Change::key).collect::<Vec<_>>();
    let ((unknown, amount), (other_unknown, other_amount)) = (cost(one), cost(other));
    let ((weight, moved), (other_weight, other_moved)) = (size(one), size(other));
    one.len()
        .cmp(&other.len())
        .then(unknown.cmp(&other_unknown))
        .then(amount.total_cmp(&other_amount))
        .then(weight.cmp(&other_weight))
        .then(moved.total_cmp(&other_moved))
        .then_with(|| keys(one).cmp(&keys(other)))
}
