//! Writing down what is wrong: the finding, the hole it leaves, the stand-in that fills it.

use std::ops::Range;

use serde_yaml::Value;

use super::check::{Mode, Walk};
use super::{Hole, MOST_FAULTS, Shape};
use crate::finding::faults::BAD_VALUE;
use crate::finding::rule::Rule;
use crate::finding::{Finding, Spot};
use crate::place::route::spelled;
use crate::place::{FileId, Step};
use crate::source::NodeId;

impl<'a> Walk<'a> {
    pub(super) fn bad(&mut self, id: NodeId, what: &str, label: &str, help: &str) {
        let message = format!("{} {what}", self.whole());
        self.report(&BAD_VALUE, self.document.node(id).span.clone(), message, label, help);
    }

    pub(super) fn report(
        &mut self,
        rule: &'static Rule,
        span: Range<usize>,
        message: String,
        label: impl Into<String>,
        help: impl Into<String>,
    ) {
        self.faults += 1;
        if self.mode == Mode::Completed || self.done.findings.len() >= MOST_FAULTS {
            return;
        }
        let (file, label, help) = (self.file, label.into(), help.into());
        if let Some(at) = self.uses.first() {
            // What is wrong where it is defined is wrong once, however often it is used.
            let defined = Spot::Bytes(file, span.clone());
            let same = |finding: &&mut Finding| {
                finding.rule == rule && finding.labels[0].spot == defined && finding.help.as_deref() == Some(&help)
            };
            if let Some(finding) = self.done.findings.iter_mut().find(same) {
                finding.because(Spot::Bytes(file, at.clone()), "used here too");
                return;
            }
        }
        let mut finding = match self.uses.first() {
            Some(at) => {
                let mut finding = Finding::new(rule, Spot::Bytes(file, at.clone()), message, "used here");
                finding.because(Spot::Bytes(file, span), format!("{label} (defined here)"));
                finding
            }
            None => Finding::new(rule, Spot::Bytes(file, span), message, label),
        };
        finding.help(help);
        self.done.findings.push(finding);
    }

    /// Says that putting `text` in fixes the finding just made about `span`.
    pub(super) fn fixable(&mut self, span: &Range<usize>, text: String) {
        let spot = Spot::Bytes(self.file, span.clone());
        let last = self.done.findings.last_mut();
        if let Some(finding) = last.filter(|finding| finding.labels.iter().any(|label| label.spot == spot)) {
            finding.fix(spot, text);
        }
    }

    /// Says what to put in place of a wider span than the label of the last finding.
    pub(super) fn fixable_at(&mut self, label: &Range<usize>, span: &Range<usize>, text: String) {
        let shown = Spot::Bytes(self.file, label.clone());
        let last = self.done.findings.last_mut();
        if let Some(finding) = last.filter(|finding| finding.labels.iter().any(|label| label.spot == shown)) {
            finding.fix(Spot::Bytes(self.file, span.clone()), text);
        }
    }

    /// Marks the value being walked as broken and puts a stand-in there.
    pub(super) fn refill(&mut self, shape: &Shape, at: Range<usize>) {
        self.repair(Some(shape.stand_in()));
        self.hole(at);
    }

    /// Puts a stand-in under a key that is missing.
    pub(super) fn fill(&mut self, name: &'a str, shape: &Shape) {
        self.below(name, |walk| walk.repair(Some(shape.stand_in())));
    }

    pub(super) fn repair(&mut self, value: Option<Value>) {
        self.done.mends.put(&self.route, value);
    }

    pub(super) fn hole(&mut self, at: Range<usize>) {
        // What is used is what the reader looks at, even where it is defined elsewhere.
        let at = self.uses.first().cloned().unwrap_or(at);
        self.hole_in(self.file, at);
    }

    pub(super) fn hole_in(&mut self, file: FileId, at: Range<usize>) {
        let (route, named) = (spelled(self.route.iter().copied()), self.written_route());
        self.done.holes.push(Hole { route, named, file, at });
    }

    pub(super) fn below(&mut self, key: &'a str, then: impl FnOnce(&mut Self)) {
        self.route.push(Step::Key(key));
        then(self);
        self.route.pop();
    }

    /// The route of the node being walked. What has its place elsewhere in the same document goes by that.
    fn written_route(&self) -> String {
        let moved = self.marks.last().filter(|_| !self.is_foreign());
        match moved {
            Some((length, origin)) => {
                let below = spelled(self.route[*length..].iter().copied());
                let dot = if below.is_empty() || below.starts_with('[') { "" } else { "." };
                format!("{}{dot}{below}", origin.route)
            }
            None => spelled(self.route.iter().copied()),
        }
    }

    /// The node being walked, as a message names it.
    pub(super) fn whole(&self) -> String {
        let route = self.written_route();
        if route.is_empty() { format!("this {}", self.kind) } else { format!("`{route}`") }
    }
}
