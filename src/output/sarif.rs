//! Findings as SARIF 2.1.0, for the services that show them beside the code.
//!
//! One run with every rule there is. Paths are counted from the root of the repository, columns in UTF-16 units. What could
//! not be judged is `open`, not a failure.

use std::fmt::Write as _;

use serde_json::{Map, Value, json};

use super::about;
use super::region::{Base, Region};
use crate::finding::faults::NOT_EVALUATED;
use crate::finding::rule::{Rule, Severity};
use crate::finding::{Finding, Label};
use crate::network::Files;
use crate::rules::{self, Quieted};
use crate::verdict::{Evaluation, SetAside};

/// The schema the report keeps to.
const SCHEMA: &str = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";

/// Where the project is at home: empty until its manifest says so. An address that leads nowhere would be worse than none.
const HOME: &str = env!("CARGO_PKG_REPOSITORY");

/// What paths are counted from.
const ROOT: &str = "ROOT";

/// The longest full description that is shown.
const LONGEST: usize = 1024;

/// The report. What is waived is left out, for services keep an alert open as long as its result is there; with
/// `include_waived` it is there as suppressed, and every result says whether it is.
#[must_use]
pub fn sarif<R>(evaluation: &Evaluation<R>, base: &Base, include_waived: bool) -> String {
    let mut rules: Vec<&'static Rule> = rules::every().collect();
    rules.sort_by_key(|rule| rule.name);
    let waived = evaluation.waived.iter().filter(|_| include_waived);
    let results = evaluation.findings.iter().chain(waived).map(|finding| {
        let mut result = result(finding, &rules, &evaluation.files, base);
        if include_waived {
            result["suppressions"] = suppressions(finding, &evaluation.files, base);
        }
        result
    });
    let results: Vec<Value> = results.collect();
    let mut driver = json!({
        "name": "hopwright",
        "semanticVersion": env!("CARGO_PKG_VERSION"),
        "rules": rules.iter().map(|rule| described(rule)).collect::<Vec<_>>(),
    });
    if !HOME.is_empty() {
        driver["informationUri"] = HOME.into();
    }
    let aside = SetAside::of(evaluation);
    let overrides: Vec<Value> = aside.quieted.iter().map(|one| overridden(one, &rules)).collect();
    let report = json!({
        "$schema": SCHEMA,
        "version": "2.1.0",
        "runs": [{
            "tool": { "driver": driver },
            "invocations": [{ "executionSuccessful": true, "ruleConfigurationOverrides": overrides }],
            "originalUriBaseIds": { ROOT: { "description": { "text": "The root of the repository." } } },
            "columnKind": "utf16CodeUnits",
            "results": results,
            "properties": {
                "rulesOff": aside.off().len(),
                "rulesLowered": aside.lowered().len(),
                "hopsNotJudged": aside.not_judged,
                "findingsWaived": aside.waived,
                "findingsInBaseline": aside.baselined,
            },
        }],
    });
    let mut text = serde_json::to_string_pretty(&report).expect("strings and numbers always serialise");
    text.push('\n');
    text
}

/// A rule that a network has switched off or lowered.
fn overridden(one: &Quieted, rules: &[&'static Rule]) -> Value {
    let configuration = match one.to {
        None => json!({ "enabled": false }),
        Some(severity) => json!({ "level": level(severity) }),
    };
    let index = rules.iter().position(|rule| *rule == one.rule);
    let mut overridden =
        json!({ "configuration": configuration, "descriptor": { "id": one.rule.name, "index": index } });
    if let Some(paths) = &one.paths {
        overridden["properties"] = json!({ "paths": paths });
    }
    overridden
}

const fn level(severity: Severity) -> &'static str {
    match severity {
        Severity::Error => "error",
        Severity::Warning => "warning",
        Severity::Advice => "note",
    }
}

fn described(rule: &Rule) -> Value {
    let manual: Vec<&str> = rule.manual.lines().map(str::trim).collect();
    let manual = manual.join("\n").trim().to_owned();
    let paragraphs: Vec<String> = manual.split("\n\n").map(|paragraph| paragraph.replace('\n', " ")).collect();
    let full: String = paragraphs.join(" ").chars().take(LONGEST).collect();
    let problem = match rule.severity {
        Severity::Error => "error",
        Severity::Warning => "warning",
        Severity::Advice => "recommendation",
    };
    let mut described = json!({
        "id": rule.name,
        "name": rule.name,
        "shortDescription": { "text": rule.summary() },
        "fullDescription": { "text": full },
        "help": { "text": manual, "markdown": paragraphs.join("\n\n") },
        "defaultConfiguration": { "level": level(rule.severity) },
        "properties": {
            "tags": [rule.family],
            "precision": "high",
            "problem.severity": problem,
            "waivable": rule.never_waived().is_none(),
        },
    });
    if !HOME.is_empty() {
        described["helpUri"] = format!("{HOME}#{}", rule.name).into();
    }
    described
}

fn result(finding: &Finding, rules: &[&'static Rule], files: &Files, base: &Base) -> Value {
    let (kind, level) = match finding.severity {
        _ if *finding.rule == NOT_EVALUATED => ("open", "none"),
        severity => ("fail", level(severity)),
    };
    let mut result = json!({
        "ruleId": finding.rule.name,
        "ruleIndex": rules.iter().position(|rule| *rule == finding.rule),
        "kind": kind,
        "level": level,
        "message": { "text": message(finding) },
        "locations": [location(finding, files, base)],
        "partialFingerprints": { "hopwright/v1": finding.fingerprint.to_string() },
    });
    let others = finding.labels.iter().enumerate().skip(1);
    let related: Vec<Value> = others
        .map(|(number, label)| {
            json!({ "id": number, "physicalLocation": physical(label, files, base), "message": { "text": plain(&label.text) } })
        })
        .collect();
    if !related.is_empty() {
        result["relatedLocations"] = related.into();
    }
    result
}

/// The waiver of a finding; none for an open one.
fn suppressions(finding: &Finding, files: &Files, base: &Base) -> Value {
    let each = finding.waived.iter().map(|waived| {
        let justification = format!(
            "{} `{}`: {} Approved by {} on {}, until {}; {}.",
            waived.departure,
            waived.id,
            waived.reason,
            waived.approver,
            waived.approved_on,
            waived.expires,
            waived.reference
        );
        let label = Label { spot: waived.place.into(), text: String::new() };
        json!({
            "kind": "external",
            "status": "accepted",
            "justification": plain(&justification),
            "location": { "physicalLocation": physical(&label, files, base) },
        })
    });
    each.collect()
}

/// The message as one sentence, then the help, then a link to each label: services show related places only through one.
fn message(finding: &Finding) -> String {
    let mut text = format!("{}.", plain(&about(finding)).trim_end_matches('.'));
    if let Some(help) = &finding.help {
        text = format!("{text} Help: {}.", plain(help).trim_end_matches('.'));
    }
    if let Some(gathered) = super::gathered(finding) {
        text = format!("{text} {}.", plain(&gathered));
    }
    for (number, label) in finding.labels.iter().enumerate().skip(1) {
        let escaped = plain(&label.text).replace('\\', r"\\").replace('[', r"\[").replace(']', r"\]");
        text = format!("{text} See [{escaped}]({number}).");
    }
    text
}

/// Text of a specification must not make a link of its own, nor break a line.
fn plain(text: &str) -> String {
    text.replace("](", "] (").replace(|c: char| c.is_control(), " ")
}

fn location(finding: &Finding, files: &Files, base: &Base) -> Value {
    let mut location = Map::new();
    let mut logical = Vec::new();
    let mut name = |kind: &str, id: &str| {
        let whole = format!("{kind}/{id}");
        logical.push(json!({ "name": id, "fullyQualifiedName": whole, "kind": "object" }));
    };
    if let Some(hop) = &finding.hop {
        name("hop", hop);
    }
    if let Some(label) = finding.labels.first() {
        location.insert("physicalLocation".into(), physical(label, files, base));
        let target = files.target(&label.spot);
        if target.kind != "file" && (target.kind != "hop" || finding.hop.as_ref() != Some(&target.id)) {
            name(&target.kind, &target.id);
        }
    }
    if !logical.is_empty() {
        location.insert("logicalLocations".into(), logical.into());
    }
    location.into()
}

fn physical(label: &Label, files: &Files, base: &Base) -> Value {
    let region = Region::of(&label.spot, files, base);
    let mut place = json!({ "artifactLocation": { "uri": uri(&region.path), "uriBaseId": ROOT } });
    if let Some((start, end)) = region.range {
        place["region"] = json!({
            "startLine": start.line,
            "startColumn": start.column,
            "endLine": end.line,
            "endColumn": end.column,
        });
    }
    place
}

/// A path as a relative URI: what has a meaning of its own in one is written in percent.
fn uri(path: &str) -> String {
    let mut out = String::new();
    for byte in path.bytes() {
        match byte {
            b'/' | b'.' | b'-' | b'_' | b'~' => out.push(byte.into()),
            byte if byte.is_ascii_alphanumeric() => out.push(byte.into()),
            byte => {
                let _ = write!(out, "%{byte:02X}");
            }
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::{plain, uri};

    #[test]
    fn a_path_is_a_relative_uri() {
        assert_eq!(uri("netz zürvel/a:b#1%.yaml"), "netz%20z%C3%BCrvel/a%3Ab%231%25.yaml");
        assert_eq!(plain("see [this](1)\nand"), "see [this] (1) and");
    }
}
