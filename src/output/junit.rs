//! Findings as a report of tests, in the XML of `JUnit`: a suite a hop, a case a rule, so that a server can show a history.
//!
//! Those that fail or say something are listed, and one case for a hop that is sound; with all, every rule that passed as well. A
//! case fails from the fail level on; what is below stands in its output. A rule that is off, or that could not run on a hop,
//! is skipped and never passes. Findings about files alone make a suite each file.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write as _;

use super::about;
use super::region::{Base, Region};
use crate::finding::Finding;
use crate::finding::rule::Severity;
use crate::rules::ALL;
use crate::verdict::{Evaluation, HopRun};

/// The cases of a suite, by the name of the rule.
type Cases<'f> = BTreeMap<&'static str, Vec<&'f Finding>>;

/// The case of a hop about which nothing is found.
const SOUND: &str = "every-rule";

/// The suite in which rules are skipped that a network has switched off, unless all cases are listed.
const OFF: &str = "rules.off";

/// How many cases there are of each sort.
#[derive(Default)]
struct Counts {
    tests: usize,
    failures: usize,
    skipped: usize,
}

impl std::fmt::Display for Counts {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let Self { tests, failures, skipped } = self;
        write!(f, r#"tests="{tests}" failures="{failures}" errors="0" skipped="{skipped}""#)
    }
}

/// The report; findings from `fail_on` on are failures. With `all`, the rules that pass are listed too.
#[must_use]
pub fn junit<R>(evaluation: &Evaluation<R>, base: &Base, fail_on: Severity, all: bool) -> String {
    let mut suites: BTreeMap<String, Cases<'_>> = BTreeMap::new();
    let mut off: BTreeSet<&'static str> = BTreeSet::new();
    for hop in evaluation.judged.iter().filter(|hop| hop.asked) {
        let cases = suites.entry(of_hop(&hop.id)).or_default();
        off.extend(&hop.off);
        if all {
            let of_hops = ALL.iter().filter(|entry| entry.check.is_of_hops());
            cases.extend(of_hops.map(|entry| (entry.rule.name, Vec::new())));
        }
    }
    // What follows from another finding fails all the same: no case may look as if it passed.
    for finding in evaluation.everything() {
        // What is told once for several hops fails each of them.
        let classes: BTreeSet<String> = match finding.hop {
            Some(_) => finding.hops().map(|hop| of_hop(hop)).collect(),
            None => BTreeSet::from([of_file(finding, evaluation, base)]),
        };
        for class in classes {
            suites.entry(class).or_default().entry(finding.rule.name).or_default().push(finding);
        }
    }
    if !all && !off.is_empty() {
        suites.insert(OFF.into(), off.into_iter().map(|rule| (rule, Vec::new())).collect());
    }
    let hops: BTreeMap<String, &HopRun> = evaluation.judged.iter().map(|hop| (of_hop(&hop.id), hop)).collect();
    let (mut body, mut total) = (String::new(), Counts::default());
    for (class, mut cases) in suites {
        if cases.is_empty() {
            cases.insert(SOUND, Vec::new());
        }
        let (mut text, mut counts) = (String::new(), Counts::default());
        for (rule, findings) in &cases {
            let skip = if class == OFF {
                Some("switched off by the network")
            } else {
                hops.get(&class).and_then(|hop| why_skipped(hop, rule))
            };
            case(&mut text, &class, rule, findings, skip, &mut counts, &told_by(evaluation, base, fail_on));
        }
        total.tests += counts.tests;
        total.failures += counts.failures;
        total.skipped += counts.skipped;
        let _ = write!(body, "  <testsuite name=\"{}\" {counts}>\n{text}  </testsuite>\n", xml(&class));
    }
    format!(
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<testsuites name=\"hopwright\" {total}>\n{body}</testsuites>\n"
    )
}

/// Which of some findings fail a case and which are only told, each as text.
type Told<'t> = dyn Fn(&[&Finding]) -> (Option<(String, Severity, String)>, Option<String>) + 't;

fn told_by<'t, R>(evaluation: &'t Evaluation<R>, base: &'t Base, fail_on: Severity) -> Box<Told<'t>> {
    Box::new(move |findings| {
        let (failed, noted): (Vec<&Finding>, _) = findings.iter().partition(|finding| finding.severity >= fail_on);
        let failed = failed.first().map(|first| (xml(&about(first)), first.severity, told(&failed, evaluation, base)));
        (failed, (!noted.is_empty()).then(|| told(&noted, evaluation, base)))
    })
}

/// One case of a suite.
fn case(
    out: &mut String,
    class: &str,
    rule: &str,
    findings: &[&Finding],
    skip: Option<&str>,
    counts: &mut Counts,
    told: &Told<'_>,
) {
    counts.tests += 1;
    let _ = write!(out, r#"    <testcase classname="{}" name="{rule}""#, xml(class));
    match skip {
        None if findings.is_empty() => out.push_str("/>\n"),
        Some(why) if findings.is_empty() => {
            counts.skipped += 1;
            let _ = writeln!(out, ">\n      <skipped message=\"{why}\"/>\n    </testcase>");
        }
        _ => {
            out.push_str(">\n");
            let (failed, noted) = told(findings);
            if let Some((message, kind, text)) = failed {
                counts.failures += 1;
                let _ = writeln!(out, r#"      <failure message="{message}" type="{kind}">{text}</failure>"#);
            }
            if let Some(noted) = noted {
                let _ = writeln!(out, "      <system-out>{noted}</system-out>");
            }
            out.push_str("    </testcase>\n");
        }
    }
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
