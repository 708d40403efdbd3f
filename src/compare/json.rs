//! A comparison for machines, version 2: stable keys in a stable order, everything there is, nothing cut.
//!
//! The structs are the format; `schema/comparison.json` is made from them.

use std::fmt::Write as _;

use schemars::JsonSchema;
use schemars::generate::SchemaSettings;
use serde::Serialize;

use super::Comparison;
use super::cause::Cause;
use super::change::{Aside, Change, FindingChange, HopChange, Outcome, Shown};
use super::gate::GateChange;
use super::groups::Group;
use crate::spec::schema_id;

/// What `compare --format json` prints.
#[derive(Serialize, JsonSchema)]
#[schemars(title = "comparison")]
struct Report<'a> {
    /// Version of this format. Keys may be added under it; none is taken away or changes its meaning.
    format_version: u32,
    /// Always `hopwright`.
    program: &'static str,
    /// Version of the program.
    version: &'static str,
    /// What the old side is called.
    old: &'a str,
    /// What the new side is called.
    new: &'a str,
    /// Whether the gate may let more through than before.
    weakening: bool,
    /// What the change does to the gate it is to pass, worst first.
    gate: Vec<Gate<'a>>,
    /// The verdict in a sentence.
    verdict: String,
    /// Whether something got worse than it may by the gate before.
    regression: bool,
    /// What holds for both sides and a reader must know.
    notes: &'a [String],
    /// How many of each there are.
    summary: Counts,
    /// Every field that was edited, in order of file and line.
    edits: Vec<Edit<'a>>,
    /// Hops that change for one reason: at least three with the same edits behind all that changes.
    groups: Vec<Together<'a>>,
    /// Findings about no hop that are on one side only, or weigh differently.
    findings: Vec<Found<'a>>,
    /// Hops that change, worst first.
    hops: Vec<Entry<'a>>,
}

/// Something that is done to the gate.
#[derive(Serialize, JsonSchema)]
#[schemars(inline)]
struct Gate<'a> {
    /// Rules, waivers, baseline, limits and so on.
    part: &'static str,
    /// `weaker`, `stricter`, or that it cannot be told.
    effect: &'static str,
    /// The document.
    document: &'a str,
    /// The field.
    field: &'a str,
    /// What was written.
    before: Option<&'a str>,
    /// What is written.
    after: Option<&'a str>,
    /// The file.
    path: Option<&'a str>,
    /// The line, from 1.
    line: Option<usize>,
    /// `old` or `new`: the side of the place.
    place_of: &'static str,
    /// The hops it touches.
    hops: &'a [String],
}

/// Hops that change for one reason.
#[derive(Serialize, JsonSchema)]
#[schemars(inline)]
struct Together<'a> {
    /// The edits behind all that changes in them.
    causes: Vec<Edit<'a>>,
    /// Their ids, worst first.
    hops: Vec<&'a str>,
    /// How many of them have each outcome.
    outcomes: serde_json::Map<String, serde_json::Value>,
    /// What changes in the quantities they are decided by.
    quantities: Vec<Span<'a>>,
}

/// A quantity over the hops of a group.
#[derive(Serialize, JsonSchema)]
#[schemars(inline)]
struct Span<'a> {
    /// What it is.
    words: &'a str,
    /// Its base unit.
    unit: &'static str,
    /// In how many hops it changes.
    hops: usize,
    /// The least change, in the base unit.
    least_change: f64,
    /// The greatest change, in the base unit.
    greatest_change: f64,
    /// What is left where the least is.
    least_in_hand: Option<f64>,
    /// Where that is.
    least_at: Option<&'a str>,
}

/// How many of each there are.
#[derive(Serialize, JsonSchema)]
#[schemars(inline)]
struct Counts {
    /// Hops of either side.
    hops: usize,
    /// Hops listed.
    changed: usize,
    /// Hops that do not change.
    unchanged: usize,
    /// Hops that change by less than is shown.
    below_threshold: usize,
    /// Hops that neither side can compute.
    computable_on_neither_side: usize,
    /// How many hops have each outcome.
    outcomes: serde_json::Map<String, serde_json::Value>,
}

/// An edited field.
#[derive(Serialize, JsonSchema)]
#[schemars(inline)]
struct Edit<'a> {
    /// `design`, `network` or `catalogue`.
    class: &'static str,
    /// The document.
    document: &'a str,
    /// The field.
    field: &'a str,
    /// What was written.
    before: Option<&'a str>,
    /// What is written.
    after: Option<&'a str>,
    /// The file.
    path: &'a str,
    /// The line, from 1.
    line: usize,
    /// `old` or `new`: the side of the place.
    place_of: &'static str,
}

/// A finding that is on one side only, or weighs differently.
#[derive(Serialize, JsonSchema)]
#[schemars(inline)]
struct Found<'a> {
    /// `new`, `raised`, `worse`, `better`, `lowered`, `fixed` or `existing`.
    status: &'static str,
    /// Name of the rule.
    rule: &'a str,
    /// Severity after, or before if it is fixed.
    severity: &'static str,
    /// What it says.
    message: &'a str,
    /// The file.
    path: Option<&'a str>,
    /// The line, from 1.
    line: Option<usize>,
    /// Why the gate of the change lets it pass, if it does.
    #[serde(skip_serializing_if = "Option::is_none")]
    passed_by: Option<&'static str>,
}

/// A hop that changes.
#[derive(Serialize, JsonSchema)]
#[schemars(inline)]
struct Entry<'a> {
    /// The network.
    network: &'a str,
    /// The hop.
    hop: &'a str,
    /// The id it had, if it was renamed.
    renamed_from: Option<&'a str>,
    /// Its title.
    title: &'a str,
    /// Ends, frequencies, bandwidth.
    context: &'a str,
    /// What became of it.
    outcome: &'static str,
    /// Whether it got worse than it may.
    regression: bool,
    /// Why it could not be computed.
    not_computed_before: Option<&'a str>,
    /// Why it cannot be computed.
    not_computed_after: Option<&'a str>,
    /// Its findings that are not as they were, and those that are.
    findings: Vec<Found<'a>>,
    /// What it is decided by and changes.
    quantities: Vec<Line<'a>>,
    /// Other lines that change, greatest first.
    lines: Vec<Other<'a>>,
    /// Lines whose change is too small to list.
    lines_below_threshold: usize,
    /// The edits behind it; numbers of lines point here, from 0.
    causes: Vec<Edit<'a>>,
}

/// A line of a hop that changes.
#[derive(Serialize, JsonSchema)]
#[schemars(inline)]
struct Line<'a> {
    /// The key of the line.
    key: &'a str,
    /// What it is.
    words: &'a str,
    /// Its base unit.
    unit: Option<&'a str>,
    /// The old value.
    before: Reading,
    /// The new value.
    after: Reading,
    /// After less before, in the base unit.
    change: Option<f64>,
    /// The limit it was held against.
    #[serde(skip_serializing_if = "Option::is_none")]
    limit_before: Option<&'a str>,
    /// The limit it is held against.
    #[serde(skip_serializing_if = "Option::is_none")]
    limit_after: Option<&'a str>,
    /// What was left.
    #[serde(skip_serializing_if = "Option::is_none")]
    margin_before: Option<Reading>,
    /// What is left.
    #[serde(skip_serializing_if = "Option::is_none")]
    margin_after: Option<Reading>,
    /// Whether the limit was met.
    #[serde(skip_serializing_if = "Option::is_none")]
    met_before: Option<bool>,
    /// Whether it is met.
    #[serde(skip_serializing_if = "Option::is_none")]
    met_after: Option<bool>,
    /// Numbers of `causes`.
    causes: &'a [usize],
}

/// A line of a hop that changes and is held against no limit: as printed, for there are many. `sheet` has the numbers.
#[derive(Serialize, JsonSchema)]
#[schemars(inline)]
struct Other<'a> {
    /// The key of the line.
    key: &'a str,
    /// The old value, or why there is none.
    before: Option<String>,
    /// The new value, or why there is none.
    after: Option<String>,
    /// Numbers of `causes`.
    causes: &'a [usize],
}

/// A value of one side.
#[derive(Serialize, JsonSchema)]
#[schemars(inline)]
struct Reading {
    /// In the base unit.
    #[serde(skip_serializing_if = "Option::is_none")]
    value: Option<f64>,
    /// As printed.
    #[serde(skip_serializing_if = "Option::is_none")]
    text: Option<String>,
    /// Why there is none.
    #[serde(skip_serializing_if = "Option::is_none")]
    missing: Option<String>,
}

/// The whole comparison as one JSON object. `causes` of a line are places in the list of its hop, from 0.
#[must_use]
pub fn json(comparison: &Comparison) -> String {
    let summary = &comparison.summary;
    let outcomes =
        Outcome::ALL.iter().map(|outcome| (outcome.word().to_owned(), summary.of(*outcome).into())).collect();
    let report = Report {
        format_version: 2,
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
        groups: comparison.groups.iter().map(|group| together(comparison, group)).collect(),
        findings: comparison.findings.iter().map(found).collect(),
        hops: comparison.hops.iter().map(hop).collect(),
    };
    by_lines(&report)
}

/// The schema of the comparison, JSON Schema 2020-12, as it is written to a file.
#[must_use]
pub fn comparison_schema() -> String {
    let mut schema =
        SchemaSettings::draft2020_12().for_serialize().into_generator().into_root_schema_for::<Report<'_>>();
    schema.insert("$id".into(), schema_id("comparison").into());
    let mut text = serde_json::to_string_pretty(&schema).expect("strings and numbers always serialise");
    text.push('\n');
    text
}

/// A line of text for each key, and for each hop, group, edit and finding: what two runs print can be held against each other
/// line by line, and white space is no third of the whole.
fn by_lines(report: &Report<'_>) -> String {
    let whole = serde_json::to_value(report).expect("strings and finite numbers always serialise");
    let mut text = String::from("{\n");
    let keys = whole.as_object().into_iter().flatten().collect::<Vec<_>>();
    for (number, (key, value)) in keys.iter().enumerate() {
        let comma = if number + 1 < keys.len() { "," } else { "" };
        match value.as_array().filter(|items| !items.is_empty()) {
            Some(items) => {
                let rows: Vec<String> = items.iter().map(ToString::to_string).collect();
                let _ = writeln!(text, "  \"{key}\": [\n    {}\n  ]{comma}", rows.join(",\n    "));
            }
            None => {
                let _ = writeln!(text, "  \"{key}\": {value}{comma}");
            }
        }
    }
    text.push_str("}\n");
    text
}

fn together<'a>(comparison: &'a Comparison, group: &'a Group) -> Together<'a> {
    let outcomes = group.outcomes.iter().map(|(outcome, count)| (outcome.word().to_owned(), (*count).into()));
    Together {
        causes: group.causes.iter().map(edit).collect(),
        hops: group.hops.iter().map(|number| comparison.hops[*number].hop.as_str()).collect(),
        outcomes: outcomes.collect(),
        quantities: group
            .ranges
            .iter()
            .map(|range| Span {
                words: &range.name,
                unit: range.unit,
                hops: range.hops,
                least_change: range.change[0],
                greatest_change: range.change[1],
                least_in_hand: range.least.as_ref().map(|(left, _)| *left),
                least_at: range.least.as_ref().map(|(_, hop)| hop.as_str()),
            })
            .collect(),
    }
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
        lines: change.others.iter().map(other).collect(),
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

fn other(change: &Change) -> Other<'_> {
    let told = |shown: &Shown| {
        let text = shown.text.as_ref().map(ToString::to_string);
        text.or_else(|| shown.lost.as_ref().map(|why| format!("not computable ({why})")))
    };
    let [before, after] = [&change.values[0], &change.values[1]].map(told);
    Other { key: &change.key, before, after, causes: &change.causes }
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
