//! Following one reference: to a document, or to a part of one by its id.

use std::borrow::Borrow;

use super::super::elsewhere::no_standard;
use super::super::library::{Library, Shelved};
use super::super::shelf::{Document, Look};
use crate::at;
use crate::finding::faults::{DANGLING, NOT_EVALUATED};
use crate::finding::{Findings, Spot};
use crate::place::{DocumentId, Place};
use crate::spec::{Hop, Id, Ref};
use crate::text::few::few;
use crate::text::nearest::{did_you_mean, nearest};

/// Something broken that a hop waits for.
struct Wait {
    /// What it is, as a message names it.
    cause: String,
    /// The reference that leads to a broken document, or the broken value itself.
    spot: Spot,
    /// The broken document.
    shown: Option<DocumentId>,
}

/// The references of one hop.
pub(super) struct Follow<'n, 'f> {
    pub(super) library: &'n Library,
    pub(super) hop: &'n Document<Hop>,
    /// What is broken and the hop depends on.
    waits: Vec<Wait>,
    pub(super) findings: &'f mut Findings,
}

impl<'n, 'f> Follow<'n, 'f> {
    /// Sets out to follow the references of a hop.
    pub(super) fn new(library: &'n Library, hop: &'n Document<Hop>, findings: &'f mut Findings) -> Self {
        Self { library, hop, waits: Vec::new(), findings }
    }

    pub(super) fn document<T: Shelved>(&mut self, reference: &Ref<T>, place: Place) -> Option<&'n Document<T>> {
        if self.broken(place) {
            return None;
        }
        match self.library.look(reference) {
            Look::Found(document) => return Some(document),
            Look::Broken(document) => {
                let cause = format!("{} `{reference}`", T::KIND);
                self.waits.push(Wait { cause, spot: place.into(), shown: Some(document) });
            }
            Look::Missing(_) if self.takes_in(place) => {
                // It is told where it is written, and once.
                let cause = format!("`{}`", place.route());
                self.waits.push(Wait { cause, spot: place.into(), shown: None });
            }
            Look::Missing(guess) => {
                if let Some((message, help)) = no_standard(T::KIND, reference) {
                    let finding = self.findings.report(&DANGLING, place, message, "unresolved reference");
                    finding.hop = Some(self.hop.id.to_string());
                    finding.help(help);
                    return None;
                }
                let known = T::shelf(self.library).ids();
                self.dangling(reference, place, T::KIND.word(), guess, known, "the network");
            }
        }
        None
    }

    /// Whether the value at a place is written in another document.
    fn takes_in(&self, place: Place) -> bool {
        let taken = self.hop.inherits.as_ref().filter(|_| place.document == self.hop.at);
        taken.is_some_and(|inherits| inherits.find(&place).is_some())
    }

    /// Whether the value at a place is broken; the hop then waits for it.
    pub(super) fn broken(&mut self, place: Place) -> bool {
        let Some((cause, spot)) = self.library.holes.at(&place) else { return false };
        self.waits.push(Wait { cause: cause.to_string(), spot, shown: None });
        true
    }

    /// The number of the thing called `id` among its siblings.
    pub(super) fn named(
        &mut self,
        id: &Id,
        place: Place,
        what: &str,
        siblings: impl Iterator<Item = &'n Id>,
        owner: (&Id, Place),
    ) -> Option<usize> {
        let (owner, list) = owner;
        if self.broken(place) || self.broken(list) {
            return None;
        }
        let known: Vec<&str> = siblings.map(|sibling| &**sibling).collect();
        let found = known.iter().position(|sibling| *sibling == &**id);
        if found.is_none() {
            let guess = nearest(id, known.iter().copied());
            self.dangling(id, place, what, guess, &known, &format!("`{owner}`"));
        }
        found
    }

    fn dangling<S: Borrow<str>>(
        &mut self,
        id: &Id,
        place: Place,
        what: &str,
        guess: Option<&str>,
        known: &[S],
        owner: &str,
    ) {
        let message = format!("{owner} has no {what} `{id}`");
        let finding = self.findings.report(&DANGLING, place, message, "unresolved reference");
        finding.hop = Some(self.hop.id.to_string());
        finding.help(match guess {
            Some(guess) => format!("{} The hop will be checked once this is resolved", did_you_mean(guess)),
            None if known.is_empty() => format!("there is no {what} at all; add one"),
            None => format!("there are: {}", few(known)),
        });
    }

    pub(super) fn report_waits(&mut self) {
        let Some(first) = self.waits.first() else { return };
        let mut causes: Vec<&str> = Vec::new();
        for wait in &self.waits {
            if !causes.contains(&wait.cause.as_str()) {
                causes.push(&wait.cause);
            }
        }
        let hop = self.hop;
        let message = format!("cannot be evaluated because of errors in {}", causes.join(", "));
        let finding = self.findings.report(&NOT_EVALUATED, at!(hop.id), message, "not judged");
        finding.hop = Some(hop.id.to_string());
        finding.because(first.spot.clone(), "waits for this");
        let mut shown = Vec::new();
        for wait in &self.waits {
            let Some(document) = wait.shown.filter(|document| !shown.contains(document)) else { continue };
            shown.push(document);
            finding.because(Place::document(document).below(&"id", &[]), format!("{} is here", wait.cause));
        }
        finding.help("fix this first; the hop will then be checked");
    }
}
