//! One hop filled: end by end, then each of its runs, then its grounding.

use super::{Givers, text_of};
use crate::finding::faults::{DANGLING, TOO_LARGE};
use crate::finding::{Finding, Spot};
use crate::place::FileId;
use crate::source::{Document, Graft, Grafted, Layer, NodeId};
use crate::spec::EndName;

/// A hop with what it takes in.
#[derive(Debug, Default)]
pub(in super::super) struct TakenIn {
    /// Its tree; none if it takes in nothing.
    pub(in super::super) grafted: Option<Grafted>,
    /// Routes below which something may be missing because what should be taken in there cannot be read.
    pub(in super::super) unsure: Vec<String>,
    /// What is wrong with it.
    pub(in super::super) findings: Vec<Finding>,
}

impl TakenIn {
    /// Whether the document is not what it is written as.
    pub(in super::super) fn is_something(&self) -> bool {
        self.grafted.is_some() || !self.unsure.is_empty()
    }
}

/// The lists of an end, each with the section that fills its items.
const LISTS: [(&str, &str); 2] = [("runs", "run"), ("fibre_runs", "fibre_run")];

/// Fills a hop. `text` is that of its file.
pub(in super::super) fn of_hop(tree: &Document, text: &str, file: FileId, givers: &Givers) -> TakenIn {
    if !givers.has_defaults() && !text.contains("like") {
        return TakenIn::default();
    }
    let Some((_, ends)) = tree.get(tree.root(), "ends") else { return TakenIn::default() };
    let mut taking = Taking { givers, graft: Graft::of(tree), file, out: TakenIn::default() };
    let mut filled = ends;
    for name in EndName::BOTH {
        let Some((_, end)) = taking.graft.tree().get(filled, name.letter()) else { continue };
        let end = taking.end(end, &format!("ends.{name}"));
        filled = taking.graft.put(filled, name.letter(), end);
    }
    let root = taking.graft.tree().root();
    let root = taking.graft.put(root, "ends", filled);
    let Taking { graft, mut out, .. } = taking;
    match graft.rooted(root) {
        Ok(grafted) => out.grafted = grafted,
        Err(most) => {
            let span = tree.find(&[]).span;
            let message = format!("this hop takes in more than {most} values from templates and defaults");
            let mut finding = Finding::new(&TOO_LARGE, Spot::Bytes(file, span), message, "nothing is taken in");
            finding.help("make the lists in the templates and defaults shorter");
            out.findings.push(finding);
            out.unsure.push("ends".into());
        }
    }
    out
}

struct Taking<'g> {
    givers: &'g Givers,
    graft: Graft,
    file: FileId,
    out: TakenIn,
}

impl<'g> Taking<'g> {
    fn end(&mut self, end: NodeId, route: &str) -> NodeId {
        if self.givers.unreadable {
            self.out.unsure.push(route.to_owned());
        }
        let beneath = self.beneath(end);
        let layers = self.layers(Some(end), "end", &beneath, route);
        let mut end = self.graft.merged(Some(end), &layers).unwrap_or(end);
        for (key, section) in LISTS {
            let Some((_, list)) = self.graft.tree().get(end, key) else { continue };
            let items: Vec<NodeId> = self.graft.tree().items(list).collect();
            let fill = |(number, item): (usize, NodeId)| {
                let layers = self.layers(Some(item), section, &beneath, &format!("{route}.{key}[{number}]"));
                self.graft.merged(Some(item), &layers).unwrap_or(item)
            };
            let items = items.into_iter().enumerate().map(fill).collect();
            let list = self.graft.with_items(list, items);
            end = self.graft.put(end, key, list);
        }
        let own = self.graft.tree().get(end, "grounding").map(|(_, value)| value);
        let layers = self.layers(own, "grounding", &beneath, &format!("{route}.grounding"));
        match self.graft.merged(own, &layers) {
            Some(grounding) => self.graft.put(end, "grounding", grounding),
            None => end,
        }
    }

    /// The defaults an end falls back on: of its support, its site, its network.
    fn beneath(&self, end: NodeId) -> Vec<Layer<'g>> {
        let tree = self.graft.tree();
        let word = |key| tree.get(end, key).and_then(|(_, value)| tree.text(value));
        let site = word("site").and_then(|site| self.givers.sites.get(site)).map(|number| self.givers.root(*number));
        let support = site.as_ref().zip(word("support")).and_then(|(site, support)| {
            let supports = site.below("supports")?;
            let count = supports.tree.items(supports.node).count();
            let mut each = (0..count).filter_map(|number| supports.item(number));
            each.find(|one| text_of(one, "id") == Some(support))
        });
        let network = self.givers.network.map(|number| self.givers.root(number));
        [support, site, network].into_iter().flatten().filter_map(|holder| holder.below("defaults")).collect()
    }

    /// What fills a value, the first to count first: the template it names, then its defaults. Each brings along what that is
    /// like.
    fn layers(&mut self, own: Option<NodeId>, section: &str, beneath: &[Layer<'g>], route: &str) -> Vec<Layer<'g>> {
        let mut layers = Vec::new();
        let like = own.and_then(|own| self.graft.tree().get(own, "like")).map(|(_, value)| value);
        if let Some(like) = like {
            let tree = self.graft.tree();
            let id = tree.text(like).unwrap_or_default().to_owned();
            let span = tree.node(like).span.clone();
            if !self.chain(&id, section, &mut layers) {
                self.out.unsure.push(route.to_owned());
                // One that is not there is told when references are followed.
                if layers.is_empty() && self.givers.templates.contains_key(&id) {
                    let spot = Spot::Bytes(self.file, span);
                    self.out.findings.push(lacks(&id, section, spot));
                }
            }
        }
        for defaults in beneath {
            let Some(layer) = defaults.below(section) else { continue };
            let like = text_of(&layer, "like");
            layers.push(layer);
            if like.is_some_and(|like| !self.chain(like, section, &mut layers)) {
                self.out.unsure.push(route.to_owned());
            }
        }
        layers
    }

    /// A template and those it is like; whether all of it is there.
    fn chain(&self, first: &str, section: &str, layers: &mut Vec<Layer<'g>>) -> bool {
        let (mut id, mut seen) = (first, Vec::new());
        loop {
            if seen.contains(&id) {
                return false;
            }
            let template = self.givers.templates.get(id).map(|number| self.givers.root(*number));
            let Some(layer) = template.and_then(|template| template.below(section)) else { return false };
            seen.push(id);
            let like = text_of(&layer, "like");
            layers.push(layer);
            match like {
                Some(like) => id = like,
                None => return true,
            }
        }
    }
}

/// A template that has nothing for the place it is named at.
pub(super) fn lacks(id: &str, section: &str, spot: Spot) -> Finding {
    let message = format!("template `{id}` has no `{section}`");
    let mut finding = Finding::new(&DANGLING, spot, message, "nothing to take from it here");
    finding.help(format!("add `{section}:` to the template, or name another one"));
    finding
}
