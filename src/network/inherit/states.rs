//! The modulation states of a radio written out: one for each bandwidth where a state has figures by bandwidth.

use crate::source::{Document, Graft, Grafted, Layer, NodeId};

/// Writes out the states of a radio; none if no state has figures by bandwidth, or there are too many.
pub(in super::super) fn of_radio(tree: &Document, text: &str) -> Option<Grafted> {
    if !text.contains(KEY) {
        return None;
    }
    let (_, states) = tree.get(tree.root(), "states")?;
    let list = Layer::whole(0, tree).below("states")?;
    let mut graft = Graft::of(tree);
    let mut written: Vec<NodeId> = Vec::new();
    for number in 0..tree.items(states).count() {
        let state = list.item(number)?;
        let rows: Vec<Layer<'_>> = state.below(KEY).iter().flat_map(items).collect();
        if rows.is_empty() {
            written.push(graft.take(&[Layer { except: KEY, ..state }]));
            continue;
        }
        for row in rows {
            written.push(graft.take(&[row, Layer { except: KEY, ..state.clone() }]));
        }
    }
    let list = graft.with_items(states, written);
    let root = graft.put(tree.root(), "states", list);
    graft.rooted(root).ok().flatten()
}

const KEY: &str = "by_bandwidth";

fn items<'g>(list: &Layer<'g>) -> Vec<Layer<'g>> {
    let count = list.tree.items(list.node).count();
    (0..count).filter_map(|number| list.item(number)).collect()
}
