//! What can be wrong between templates: one that is like itself in the end, one that has nothing for what names it.

use super::hop::lacks;
use super::{Givers, SECTIONS, text_of};
use crate::finding::faults::DANGLING;
use crate::finding::{Finding, Spot};
use crate::source::Layer;
use crate::spec::Kind;

/// Faults between the templates and defaults of a network. A template that is not there is told where references are.
pub(in super::super) fn faults(givers: &Givers) -> Vec<Finding> {
    let mut found = Vec::new();
    for number in 0..givers.list.len() {
        let root = givers.root(number);
        let template = (givers.list[number].kind == Kind::Template).then(|| &*givers.list[number].id);
        let holders: Vec<Layer<'_>> = match template {
            Some(_) => vec![root],
            None => with_defaults(&root),
        };
        for (holder, section) in holders.iter().flat_map(|holder| SECTIONS.map(|section| (holder, section))) {
            let Some(layer) = holder.below(section) else { continue };
            of_chain(givers, &layer, section, template, &mut found);
        }
    }
    found
}

/// The defaults of a network, or those of a site and its supports.
fn with_defaults<'g>(root: &Layer<'g>) -> Vec<Layer<'g>> {
    let supports = root.below("supports");
    let count = supports.as_ref().map_or(0, |list| list.tree.items(list.node).count());
    let each = (0..count).filter_map(|number| supports.as_ref()?.item(number));
    each.chain([root.clone()]).filter_map(|holder| holder.below("defaults")).collect()
}

fn of_chain(givers: &Givers, start: &Layer<'_>, section: &str, name: Option<&str>, found: &mut Vec<Finding>) {
    let spot = |layer: &Layer<'_>| {
        let file = givers.texts[layer.giver].document.file;
        layer.below("like").map(|like| Spot::Bytes(file, like.tree.node(like.node).span.clone()))
    };
    let (mut at, mut way): (Layer<'_>, Vec<&str>) = (start.clone(), name.into_iter().collect());
    let mut others: Vec<Spot> = Vec::new();
    while let Some(id) = text_of(&at, "like") {
        // Of a circle one of its templates tells, the first by its name.
        if name == Some(id) {
            if let Some(here) = spot(start).filter(|_| way.iter().all(|other| *other >= id)) {
                let words = way.iter().chain([&id]).map(|id| format!("`{id}`")).collect::<Vec<_>>().join(", like ");
                let message = format!("template {words}: it is like itself");
                let mut finding = Finding::new(&DANGLING, here, message, "leads back here in the end");
                for spot in others {
                    finding.because(spot, "by way of this");
                }
                finding.help("take one `like` of the circle out");
                found.push(finding);
            }
            return;
        }
        if way.contains(&id) {
            return;
        }
        let Some(number) = givers.templates.get(id) else { return };
        let Some(next) = givers.root(*number).below(section) else {
            // A longer way is told at its last step.
            if way.len() == usize::from(name.is_some()) {
                found.extend(spot(&at).map(|spot| lacks(id, section, spot)));
            }
            return;
        };
        way.push(id);
        others.extend(spot(&next));
        at = next;
    }
}
