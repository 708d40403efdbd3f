//! A document with what it takes in from elsewhere, held against its shape.

use std::collections::HashMap;
use std::ops::Range;
use std::sync::Arc;

use super::inherit::{Givers, TakenIn, of_hop, of_radio};
use super::inherits::{Inherited, Inherits};
use crate::place::DocumentId;
use crate::shape::{self, Checked, Taken};
use crate::source::{Document, NodeId, Origin};
use crate::spec::Kind;

/// A document as it is written, and with what it takes in.
pub(super) struct Filled<'d> {
    tree: &'d Document,
    text: &'d str,
    document: DocumentId,
    kind: Kind,
    doubtful: &'d [Range<usize>],
    pub(super) taken: TakenIn,
    givers: &'d Givers,
    /// The document itself where it takes from no other one.
    own: Vec<shape::Giver>,
    none: HashMap<NodeId, Origin>,
}

impl<'d> Filled<'d> {
    /// Takes in what a document does not write itself. `text` is that of its file.
    pub(super) fn of(
        (tree, text): (&'d Document, &'d str),
        document: DocumentId,
        kind: Kind,
        doubtful: &'d [Range<usize>],
        givers: &'d Givers,
    ) -> Self {
        let taken = match kind {
            Kind::Hop => of_hop(tree, text, document.file, givers),
            Kind::Radio => TakenIn { grafted: of_radio(tree, text), ..TakenIn::default() },
            _ => TakenIn::default(),
        };
        let own = (kind != Kind::Hop && taken.grafted.is_some()).then(|| shape::Giver {
            document,
            text: text.into(),
            doubtful: doubtful.to_vec(),
        });
        let (own, none) = (own.into_iter().collect(), HashMap::new());
        Self { tree, text, document, kind, doubtful, taken, givers, own, none }
    }

    /// The tree to be typed.
    pub(super) fn tree(&self) -> &Document {
        self.taken.grafted.as_ref().map_or(self.tree, |grafted| &grafted.document)
    }

    fn texts(&self) -> &[shape::Giver] {
        if self.kind == Kind::Hop { &self.givers.texts } else { &self.own }
    }

    /// Holds it against its shape: as it is written, then for what is missing still.
    pub(super) fn check(&self) -> Checked<'_> {
        let file = self.document.file;
        if !self.taken.is_something() {
            return shape::check(self.tree, self.text, file, self.kind, self.doubtful);
        }
        let written = shape::check_written(self.tree, self.text, file, self.kind, self.doubtful);
        let origins = self.taken.grafted.as_ref().map_or(&self.none, |grafted| &grafted.origins);
        let (givers, unsure) = (self.texts(), self.taken.unsure.as_slice());
        let taken = Taken { document: self.document, origins, givers, unsure };
        let mut checked = shape::check_completed(self.tree(), self.text, self.kind, self.doubtful, taken);
        checked.findings.splice(0..0, written.findings);
        checked
    }

    /// What it was found to take in. `id` is its own.
    pub(super) fn inherits(&self, checked: &Checked<'_>, id: Option<&str>) -> Option<Arc<Inherits>> {
        let one = |taken: &shape::TakenIn| {
            let number = taken.origin.giver;
            let from = self.texts().get(number)?.document;
            let (kind, id) = match self.givers.list.get(number).filter(|_| self.kind == Kind::Hop) {
                Some(giver) => (giver.kind, Arc::clone(&giver.id)),
                None => (self.kind, id.unwrap_or_default().into()),
            };
            Some(Inherited { at: taken.at.clone(), from, kind, id, route: taken.origin.route.clone() })
        };
        Inherits::of(checked.taken.iter().filter_map(one)).map(Arc::new)
    }
}
