//! Findings as a report of tests, in the XML of `JUnit`: one case a hop and rule, those that pass included, so that a
//! server can show a history.
//!
//! A case fails from the fail level on; what is below stands in its output. A rule that is off, or that could not run on a
//! hop, is skipped and never passes. Findings about files alone make a case each file and rule.

use std::collections::BTreeMap;
use std::fmt::Write as _;

use super::about;
use super::region::{Base, Region};
use crate::finding::Finding;
use crate::finding::rule::Severity;
use crate::rules::ALL;
use crate::verdict::{Evaluation, HopRun};

/// By class and name, which together are unique.
type Cases<'f> = BTreeMap<(String, &'static str), Vec<&'f Finding>>;

/// The report; findings from `fail_on` on are failures.
#[must_use]
pub fn junit<R>(evaluation: &Evaluation<R>, base: &Base, fail_on: Severity) -> String {
    let mut cases = Cases::new();
    for hop in evaluation.judged.iter().filter(|hop| hop.asked) {
        for entry in ALL.iter().filter(|entry| entry.check.is_of_hops()) {
            cases.entry((of_hop(&hop.id), entry.rule.name)).or_default();
        }
    }
    // What follows from another finding fails all the same: no case may look as if it passed.
    for finding in evaluation.everything() {
        let class = finding.hop.as_deref().map_or_else(|| of_file(finding, evaluation, base), of_hop);
        cases.entry((class, finding.rule.name)).or_default().push(finding);
    }
    let skipped: BTreeMap<String, &HopRun> = evaluation.judged.iter().map(|hop| (of_hop(&hop.id), hop)).collect();
    let (mut body, mut failures, mut skips) = (String::new(), 0, 0);
    for ((class, rule), findings) in &cases {
        let _ = write!(body, r#"    <testcase classname="{}" name="{rule}""#, xml(class));
        let skip = skipped.get(class).and_then(|hop| why_skipped(hop, rule));
        let (failed, noted): (Vec<&Finding>, _) = findings.iter().partition(|finding| finding.severity >= fail_on);
        match skip {
            None if findings.is_empty() => body.push_str("/>\n"),
            Some(why) if findings.is_empty() => {
                skips += 1;
                let _ = writeln!(body, ">\n      <skipped message=\"{why}\"/>\n    </testcase>");
            }
            _ => {
                body.push_str(">\n");
                if let Some(first) = failed.first() {
                    failures += 1;
                    let (message, kind) = (xml(&about(first)), first.severity);
                    let text = told(&failed, evaluation, base);
                    let _ = writeln!(body, r#"      <failure message="{message}" type="{kind}">{text}</failure>"#);
                }
                if !noted.is_empty() {
                    let _ = writeln!(body, "      <system-out>{}</system-out>", told(&noted, evaluation, base));
                }
                body.push_str("    </testcase>\n");
            }
        }
    }
    let counts = format!(r#"tests="{}" failures="{failures}" errors="0" skipped="{skips}""#, cases.len());
    format!(
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<testsuites name=\"hopwright\" {counts}>\n  \
         <testsuite name=\"hopwright\" {counts}>\n{body}  </testsuite>\n</testsuites>\n"
    )
}

fn of_hop(hop: &str) -> String {
    format!("hop.{hop}")
}

fn of_file<R>(finding: &Finding, evaluation: &Evaluation<R>, base: &Base) -> String {
    let region = finding.labels.first().map(|label| Region::of(&label.spot, &evaluation.files, base));
    format!("file.{}", region.map(|region| region.path).unwrap_or_default())
}

fn why_skipped(hop: &HopRun, rule: &str) -> Option<&'static str> {
    if hop.off.contains(&rule) {
        return Some("switched off by the network");
    }
    (!hop.evaluated).then_some("the hop cannot be evaluated in full")
}

/// Message, place and help of some findings, as the content of an element.
fn told<R>(findings: &[&Finding], evaluation: &Evaluation<R>, base: &Base) -> String {
    let each = findings.iter().map(|finding| {
        let region = finding.labels.first().map(|label| Region::of(&label.spot, &evaluation.files, base));
        let place = region.map(|region| match region.range {
            Some((start, _)) => format!("{}:{}:{}", region.path, start.line, start.column),
            None => region.path,
        });
        let help = finding.help.as_ref().map(|help| format!("\nhelp: {help}")).unwrap_or_default();
        xml(&format!("{}: {}: {}{help}", place.unwrap_or_default(), finding.severity, about(finding)))
    });
    each.collect::<Vec<_>>().join("\n")
}

/// Text as XML takes it, its lines kept in attributes too.
fn xml(text: &str) -> String {
    crate::text::xml::escaped(text, |c| match c {
        '\n' => "&#10;",
        '\t' => "&#9;",
        _ => "",
    })
}
