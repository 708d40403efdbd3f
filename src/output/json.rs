//! Findings as JSON, version 1: stable keys in a stable order, lines and columns from 1, columns in UTF-16 units.
//!
//! The structs are the format; `schema/report.json` is made from them.

use schemars::JsonSchema;
use schemars::generate::SchemaSettings;
use serde::Serialize;

use super::region::located;
use super::statistics::counted;
use super::summary::Counts;
use crate::finding::rule::Severity;
use crate::finding::{Finding, Label, Spot};
use crate::network::Files;
use crate::rules::Quieted;
use crate::spec::{EndName, schema_id};
use crate::verdict::{Evaluation, SetAside};

/// What `check --format json` prints.
#[derive(Serialize, JsonSchema)]
#[schemars(title = "report")]
struct Report<'a> {
    /// Version of this format. Keys may be added under it; none is taken away or changes its meaning.
    format_version: u32,
    /// Always `hopwright`.
    program: &'static str,
    /// Version of the program.
    version: &'static str,
    /// What was looked at and what came of it.
    summary: Summary,
    /// Everything found that is open, in order of place; what follows from a finding comes after it.
    findings: Vec<Item<'a>>,
    /// What a waiver accepts; it counts for nothing else here.
    waived: Vec<Item<'a>>,
    /// What the baseline knows and has not got worse.
    baselined: Vec<Item<'a>>,
    /// Rules that networks have switched off or lowered.
    quieted: Vec<QuietedRule<'a>>,
    /// How many open findings each rule has, most first.
    statistics: Vec<Count>,
}

/// What was looked at and what came of it.
#[derive(Serialize, JsonSchema)]
#[schemars(inline)]
struct Summary {
    /// Files read.
    files: usize,
    /// Hops there are, those that cannot be evaluated included.
    hops: usize,
    /// Open findings that say it must not be built.
    errors: usize,
    /// Open findings that are likely to hurt.
    warnings: usize,
    /// Open findings worth knowing.
    advice: usize,
    /// Findings that a waiver accepts.
    waived: usize,
    /// Findings that the baseline knows.
    baselined: usize,
    /// Rules that networks have switched off, for all files or for some.
    rules_off: usize,
    /// Rules that networks have lowered and nowhere switched off.
    rules_lowered: usize,
    /// Hops that were not judged, or not in full.
    hops_not_judged: usize,
    /// The day waivers were held against, if there are any or a day was given.
    waivers_as_of: Option<String>,
}

/// A rule that a network has switched off or lowered.
#[derive(Serialize, JsonSchema)]
#[schemars(rename = "quieted")]
struct QuietedRule<'a> {
    /// Name of the rule.
    rule: &'static str,
    /// The severity it has of its own.
    from: &'static str,
    /// `off`, or the severity it was given.
    to: &'static str,
    /// The files it holds for, as the network names them; all if none are named.
    paths: Option<&'a str>,
}

/// A finding.
#[derive(Serialize, JsonSchema)]
#[schemars(rename = "finding")]
struct Item<'a> {
    /// Name of the rule; `explain` prints its manual.
    rule: &'static str,
    /// Family of the rule.
    family: &'static str,
    /// `error`, `warning` or `advice`, as the network sets it.
    severity: &'static str,
    /// The same, as the rule has it.
    default_severity: &'static str,
    /// The hop it is about.
    hop: Option<&'a str>,
    /// The end of the hop it is about, `a` or `b`.
    end: Option<&'static str>,
    /// What is wrong: a clause with value, limit and margin.
    message: &'a str,
    /// What would fix it.
    help: Option<&'a str>,
    /// Sixteen digits it is known by: independent of path, line, words and version of the program.
    fingerprint: String,
    /// The value that is wrong, where the rule compares one.
    measured: Option<Measured<'a>>,
    /// The waiver that accepts it; only for findings under `waived`.
    #[serde(skip_serializing_if = "Option::is_none")]
    waiver: Option<Waiver<'a>>,
    /// The fingerprint of the finding that this one follows from, or is alike: it goes when that does.
    #[serde(skip_serializing_if = "Option::is_none")]
    follows: Option<String>,
    /// Where it shows, the input to change first.
    labels: Vec<Mark<'a>>,
}

/// What a waiver says.
#[derive(Serialize, JsonSchema)]
#[schemars(inline)]
struct Waiver<'a> {
    /// Its id.
    id: &'a str,
    /// `deviation` or `concession`.
    departure: &'static str,
    /// Why it is acceptable.
    reason: &'a str,
    /// Who accepted it.
    approver: &'a str,
    /// The day it was accepted, ISO 8601.
    approved_on: &'a str,
    /// The last day it holds, ISO 8601.
    expires: &'a str,
    /// The record of the decision.
    reference: &'a str,
    /// What is done instead.
    compensation: Option<&'a str>,
}

/// A value.
#[derive(Serialize, JsonSchema)]
#[schemars(inline)]
struct Measured<'a> {
    /// To ten digits, in the base unit.
    value: f64,
    /// The base unit.
    unit: &'static str,
    /// As it is printed.
    text: &'a str,
}

/// A place and what is said there.
#[derive(Serialize, JsonSchema)]
#[schemars(inline)]
struct Mark<'a> {
    /// Whether it is the input to change first.
    primary: bool,
    /// What is said there.
    text: &'a str,
    /// The file, from where the program was run.
    path: String,
    /// The text it is about; left out for a file that has none to show.
    #[serde(skip_serializing_if = "Option::is_none")]
    range: Option<Range>,
}

/// A stretch of text; the end is not part of it.
#[derive(Serialize, JsonSchema)]
#[schemars(inline)]
struct Range {
    /// First byte, from 0.
    start_byte: usize,
    /// The byte after the last.
    end_byte: usize,
    /// Line, from 1.
    start_line: usize,
    /// Column in UTF-16 units, from 1.
    start_column: usize,
    /// Line of the end, from 1.
    end_line: usize,
    /// Column of the end in UTF-16 units, from 1.
    end_column: usize,
}

/// How often a rule found something.
#[derive(Serialize, JsonSchema)]
#[schemars(inline)]
struct Count {
    /// Name of the rule.
    rule: &'static str,
    /// How many findings.
    count: usize,
}

/// The schema of the report, JSON Schema 2020-12, as it is written to a file.
#[must_use]
pub fn report_schema() -> String {
    let mut schema =
        SchemaSettings::draft2020_12().for_serialize().into_generator().into_root_schema_for::<Report<'_>>();
    schema.insert("$id".into(), schema_id("report").into());
    printed(&schema)
}

/// All findings with their places, one JSON object.
#[must_use]
pub fn json<R>(evaluation: &Evaluation<R>) -> String {
    let (counts, aside) = (Counts::of(evaluation.everything()), SetAside::of(evaluation));
    printed(&Report {
        format_version: 1,
        program: "hopwright",
        version: env!("CARGO_PKG_VERSION"),
        summary: Summary {
            files: evaluation.files.read_count(),
            hops: evaluation.hop_count,
            errors: counts.errors,
            warnings: counts.warnings,
            advice: counts.advice,
            waived: aside.waived,
            baselined: aside.baselined,
            rules_off: aside.off().len(),
            rules_lowered: aside.lowered().len(),
            hops_not_judged: aside.not_judged,
            waivers_as_of: evaluation.today.map(|day| day.to_string()),
        },
        findings: findings(evaluation),
        waived: evaluation.waived.iter().map(|finding| item(finding, &evaluation.files)).collect(),
        baselined: evaluation.baselined.iter().map(|finding| item(finding, &evaluation.files)).collect(),
        quieted: aside.quieted.iter().map(quieted).collect(),
        statistics: counted(evaluation).into_iter().map(|(rule, count)| Count { rule: rule.name, count }).collect(),
    })
}

/// Every finding, those told under another one after it.
fn findings<R>(evaluation: &Evaluation<R>) -> Vec<Item<'_>> {
    let files = &evaluation.files;
    let with_gathered = evaluation.findings.iter().flat_map(|head| {
        let under = head.with_gathered().skip(1);
        let under = under.map(|one| Item { follows: Some(head.fingerprint.to_string()), ..item(one, files) });
        std::iter::once(item(head, files)).chain(under)
    });
    with_gathered.collect()
}

fn quieted(one: &Quieted) -> QuietedRule<'_> {
    QuietedRule {
        rule: one.rule.name,
        from: one.rule.severity.word(),
        to: one.to.map_or("off", Severity::word),
        paths: one.paths.as_deref(),
    }
}

fn printed(value: &impl Serialize) -> String {
    let mut text = serde_json::to_string_pretty(value).expect("strings and numbers always serialise");
    text.push('\n');
    text
}

fn item<'a>(finding: &'a Finding, files: &Files) -> Item<'a> {
    Item {
        rule: finding.rule.name,
        family: finding.rule.family,
        severity: finding.severity.word(),
        default_severity: finding.rule.severity.word(),
        hop: finding.hop.as_deref(),
        end: finding.end.map(EndName::letter),
        message: &finding.message,
        help: finding.help.as_deref(),
        fingerprint: finding.fingerprint.to_string(),
        measured: finding.measured.as_ref().map(|measured| Measured {
            value: measured.value,
            unit: measured.unit,
            text: &measured.text,
        }),
        waiver: finding.waived.as_ref().map(|waived| Waiver {
            id: &waived.id,
            departure: waived.departure,
            reason: &waived.reason,
            approver: &waived.approver,
            approved_on: &waived.approved_on,
            expires: &waived.expires,
            reference: &waived.reference,
            compensation: waived.compensation.as_deref(),
        }),
        follows: None,
        labels: finding.labels.iter().enumerate().map(|(number, label)| mark(label, number == 0, files)).collect(),
    }
}

fn mark<'a>(label: &'a Label, primary: bool, files: &Files) -> Mark<'a> {
    let (path, range) = match (located(&label.spot, files), &label.spot) {
        (Some((file, span)), _) => {
            let (start, end) = (file.position(span.start), file.position(span.end));
            let range = Range {
                start_byte: span.start,
                end_byte: span.end,
                start_line: start.line,
                start_column: start.column,
                end_line: end.line,
                end_column: end.column,
            };
            (file.path.clone(), Some(range))
        }
        (None, Spot::Path(path)) => (path.clone(), None),
        (None, _) => (String::new(), None),
    };
    Mark { primary, text: &label.text, path, range }
}
