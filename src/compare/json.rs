//! A comparison for machines, version 1: stable keys in a stable order, everything there is, nothing cut.

use serde::Serialize;

use super::Comparison;
use super::cause::Cause;
use super::change::{Aside, Change, FindingChange, HopChange, Outcome, Shown};
use super::gate::GateChange;

#[derive(Serialize)]
struct Report<'a> {
    format_version: u32,
    program: &'static str,
    version: &'static str,
    old: &'a str,
    new: &'a str,
    weakening: bool,
    gate: Vec<Gate<'a>>,
    verdict: String,
    regression: bool,
    notes: &'a [String],
    summary: Counts,
    edits: Vec<Edit<'a>>,
    findings: Vec<Found<'a>>,
    hops: Vec<Entry<'a>>,
}

#[derive(Serialize)]
struct Gate<'a> {
    part: &'static str,
    effect: &'static str,
    document: &'a str,
    field: &'a str,
    before: Option<&'a str>,
    after: Option<&'a str>,
    path: Option<&'a str>,
    line: Option<usize>,
    place_of: &'static str,
    hops: &'a [String],
}

#[derive(Serialize)]
struct Counts {
    hops: usize,
    changed: usize,
    unchanged: usize,
    below_threshold: usize,
    computable_on_neither_side: usize,
    outcomes: serde_json::Map<String, serde_json::Value>,
}

#[derive(Serialize)]
struct Edit<'a> {
    class: &'static str,
    document: &'a str,
    field: &'a str,
    before: Option<&'a str>,
    after: Option<&'a str>,
    path: &'a str,
    line: usize,
    place_of: &'static str,
}

#[derive(Serialize)]
struct Found<'a> {
    status: &'static str,
    rule: &'a str,
    severity: &'static str,
    message: &'a str,
    path: Option<&'a str>,
    line: Option<usize>,
    /// Why the gate of the change lets it pass, if it does.
    #[serde(skip_serializing_if = "Option::is_none")]
    passed_by: Option<&'static str>,
}

#[derive(Serialize)]
struct Entry<'a> {
    network: &'a str,
    hop: &'a str,
    renamed_from: Option<&'a str>,
    title: &'a str,
    context: &'a str,
    outcome: &'static str,
    regression: bool,
    not_computed_before: Option<&'a str>,
    not_computed_after: Option<&'a str>,
    findings: Vec<Found<'a>>,
    quantities: Vec<Line<'a>>,
    lines: Vec<Line<'a>>,
    lines_below_threshold: usize,
    causes: Vec<Edit<'a>>,
}

#[derive(Serialize)]
struct Line<'a> {
    key: &'a str,
    words: &'a str,
    unit: Option<&'a str>,
    before: Reading,
    after: Reading,
    change: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    limit_before: Option<&'a str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    limit_after: Option<&'a str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    margin_before: Option<Reading>,
    #[serde(skip_serializing_if = "Option::is_none")]
    margin_after: Option<Reading>,
    #[serde(skip_serializing_if = "Option::is_none")]
    met_before: Option<bool>,
    #[serde(skip_serializing_if = "Option::is_none")]
    met_after: Option<bool>,
    causes: &'a [usize],
}

#[derive(Serialize)]
struct Reading {
    value: Option<f64>,
    text: Option<String>,
    missing: Option<String>,
}

/// The whole comparison as one JSON object. `causes` of a line are places in the list of its hop, from 0.
#[must_use]
pub fn json(comparison: &Comparison) -> String {
    let summary = &comparison.summary;
    let outcomes =
        Outcome::ALL.iter().map(|outcome| (outcome.word().to_owned(), summary.of(*outcome).into())).collect();
    let report = Report {
        format_version: 1,
        program: "hopwright",
        version: env!("CARGO_PKG_VERSION"),
        old: &comparison.names[0],
        new: &comparison.names[1],
        weakening: comparison.weakens(),
        gate: comparison.gate.iter().map(gate).collect(),
        verdict: summary.verdict(),
        regression: comparison.regresses(),
        notes: &comparison.notes,
        summary: Counts {
            hops: summary.hops,
            changed: summary.changed(),
            unchanged: summary.unchanged,
            below_threshold: summary.small,
            computable_on_neither_side: summary.never_computed,
            outcomes,
        },
        edits: comparison.edits.iter().map(edit).collect(),
        findings: comparison.findings.iter().map(found).collect(),
        hops: comparison.hops.iter().map(hop).collect(),
    };
    let mut text = serde_json::to_string_pretty(&report).expect("strings and finite numbers always serialise");
    text.push('\n');
    text
}

fn gate(change: &GateChange) -> Gate<'_> {
    Gate {
        part: change.part.word(),
        effect: change.effect.word(),
        document: &change.document,
        field: &change.field,
        before: change.before.as_deref(),
        after: change.after.as_deref(),
        path: change.place.as_ref().map(|(path, _)| path.as_str()),
        line: change.place.as_ref().map(|(_, line)| *line),
        place_of: if change.gone { "old" } else { "new" },
        hops: &change.hops,
    }
}

fn hop(change: &HopChange) -> Entry<'_> {
    Entry {
        network: &change.network,
        hop: &change.hop,
        renamed_from: change.renamed_from.as_deref(),
        title: &change.title,
        context: &change.context,
        outcome: change.outcome.word(),
        regression: change.regresses(),
        not_computed_before: change.not_computed[0].as_deref(),
        not_computed_after: change.not_computed[1].as_deref(),
        findings: change.findings.iter().map(found).collect(),
        quantities: change.quantities.iter().map(line).collect(),
        lines: change.others.iter().map(line).collect(),
        lines_below_threshold: change.small,
        causes: change.causes.iter().map(edit).collect(),
    }
}

fn line(change: &Change) -> Line<'_> {
    let margin = |side: usize| change.margins.as_ref().map(|margins| value(&margins[side]));
    Line {
        key: &change.key,
        words: &change.name,
        unit: change.unit,
        before: value(&change.values[0]),
        after: value(&change.values[1]),
        change: change.difference(),
        limit_before: change.limits[0].as_deref(),
        limit_after: change.limits[1].as_deref(),
        margin_before: margin(0),
        margin_after: margin(1),
        met_before: change.met[0],
        met_after: change.met[1],
        causes: &change.causes,
    }
}

fn value(shown: &Shown) -> Reading {
    Reading {
        value: shown.number,
        text: shown.text.as_ref().map(ToString::to_string),
        missing: shown.lost.as_ref().map(ToString::to_string),
    }
}

fn edit(cause: &Cause) -> Edit<'_> {
    Edit {
        class: cause.class.word(),
        document: &cause.document,
        field: &cause.route,
        before: cause.before.as_deref(),
        after: cause.after.as_deref(),
        path: &cause.path,
        line: cause.line,
        place_of: if cause.gone { "old" } else { "new" },
    }
}

fn found(finding: &FindingChange) -> Found<'_> {
    let place = finding.place.as_ref();
    Found {
        status: finding.status.word(),
        rule: finding.rule,
        severity: finding.severity.word(),
        message: &finding.message,
        path: place.map(|(path, _)| path.as_str()),
        line: place.map(|(_, line)| *line),
        passed_by: finding.aside.map(Aside::word),
    }
}
