//! How often each rule found something: where to begin in an old network.

use std::collections::BTreeMap;
use std::fmt::Write as _;

use crate::finding::rule::Rule;
use crate::verdict::Evaluation;

/// How many findings each rule has, most first.
#[must_use]
pub fn counted<R>(evaluation: &Evaluation<R>) -> Vec<(&'static Rule, usize)> {
    let mut counts: BTreeMap<&str, (&'static Rule, usize)> = BTreeMap::new();
    for finding in evaluation.everything() {
        counts.entry(finding.rule.name).or_insert((finding.rule, 0)).1 += 1;
    }
    let mut counts: Vec<_> = counts.into_values().collect();
    counts.sort_by_key(|(_, count)| std::cmp::Reverse(*count));
    counts
}

/// A line a rule: count, name, what it is.
#[must_use]
pub fn statistics<R>(evaluation: &Evaluation<R>) -> String {
    let counts = counted(evaluation);
    let width = counts.iter().map(|(rule, _)| rule.name.len()).max().unwrap_or_default();
    counts.iter().fold(String::new(), |mut out, (rule, count)| {
        let _ = writeln!(out, "{count:>5}  {:width$}  {}", rule.name, rule.summary());
        out
    })
}
