//! A hop in a dozen lines: what came of it, and the numbers that people ask for first.

use std::fmt::Write as _;

use crate::finding::Finding;
use crate::finding::rule::Severity;
use crate::sheet::{EndSheet, HopSheet, Line, ServiceSheet, Shown};
use crate::spec::{Both, EndName};
use crate::text::plain::spelled;

/// The verdict on a hop and its main numbers.
#[must_use]
pub fn summary(sheet: &HopSheet<'_>, findings: &[Finding]) -> String {
    let (hop, network) = (sheet.resolved.hop, sheet.resolved.network);
    let title = hop.title.as_ref().map_or_else(|| hop.id.to_string(), ToString::to_string);
    let mut out = format!("{}/{}: {}\n", network.id, hop.id, spelled(&title));
    let _ = writeln!(out, "  {}\n", verdict(findings));
    let one = |out: &mut String, words: &str, text: String| {
        let _ = writeln!(out, "  {words:<22} {text}");
    };
    one(&mut out, "length", told(&sheet.path.distance));
    one(&mut out, "clearance in hand", format!("{} (of the first Fresnel zone)", told(&sheet.profile.lines.in_hand)));
    let wanted = &sheet.target.availability;
    one(&mut out, "availability", format!("{} ({} asked for)", told(&sheet.service.counted), wanted.given));
    let _ = writeln!(out, "\n  {:<22} {:<22} {}", "", of(sheet, EndName::A), of(sheet, EndName::B));
    let rows: [(&str, Both<String>); 7] = [
        ("bearing, true", ends(sheet, |end| told(&end.lines.true_bearing))),
        ("tilt", ends(sheet, |end| told(&end.lines.tilt))),
        ("level in service", ends(sheet, |end| told(&sheet.directions[end.name.incoming()].levels.service_level))),
        ("fade margin", ends(sheet, |end| told(&sheet.directions[end.name.incoming()].margins.fade_margin))),
        ("below overload", ends(sheet, |end| told(&sheet.directions[end.name.incoming()].margins.overload_in_hand))),
        ("align to", ends(sheet, aim)),
        ("least voltage at radio", ends(sheet, voltage)),
    ];
    for (words, Both { a, b }) in rows {
        let _ = writeln!(out, "  {words:<22} {a:<22} {b}");
    }
    out
}

/// The verdict on a service and what is asked of it.
#[must_use]
pub fn summary_of_service(sheet: &ServiceSheet<'_>) -> String {
    let service = sheet.resolved.service;
    let title = service.title.as_ref().map_or_else(|| service.id.to_string(), ToString::to_string);
    let lines = &sheet.lines;
    format!(
        "{}, service {}: {}\n  {:<22} {}\n  {:<22} {}\n",
        sheet.resolved.network.id,
        service.id,
        spelled(&title),
        "availability",
        told(&lines.availability),
        "capacity",
        told(&lines.capacity),
    )
}

/// `sound: no findings`, or how many of each severity are open.
fn verdict(findings: &[Finding]) -> String {
    let open = || findings.iter().filter(|finding| finding.waived.is_none());
    let waived = findings.iter().filter(|finding| finding.waived.is_some()).count();
    let count = |severity, one: &str, many: &str| match open().filter(|found| found.severity == severity).count() {
        0 => None,
        1 => Some(format!("1 {one}")),
        count => Some(format!("{count} {many}")),
    };
    let counts: Vec<String> = [
        count(Severity::Error, "error", "errors"),
        count(Severity::Warning, "warning", "warnings"),
        count(Severity::Advice, "piece of advice", "pieces of advice"),
    ]
    .into_iter()
    .flatten()
    .collect();
    let waived = if waived == 0 { String::new() } else { format!("; {waived} waived") };
    if counts.is_empty() {
        return format!("no findings{waived}");
    }
    format!("{}{waived}: `check` shows them", counts.join(", "))
}

fn of(sheet: &HopSheet<'_>, end: EndName) -> String {
    let name = format!("{end}: {}", sheet.resolved.ends[end].site.id);
    if name.chars().count() > 21 { name.chars().take(20).chain(['…']).collect() } else { name }
}

fn ends(sheet: &HopSheet<'_>, say: impl Fn(&EndSheet<'_>) -> String) -> Both<String> {
    Both { a: say(&sheet.ends.a), b: say(&sheet.ends.b) }
}

/// The reading or the level that the crew comes to.
fn aim(end: &EndSheet<'_>) -> String {
    let level = told(&end.lines.target_level);
    match end.lines.target_voltage.value() {
        Ok(volts) => format!("{volts} ({level})"),
        Err(_) => level,
    }
}

/// The lowest of its runs.
fn voltage(end: &EndSheet<'_>) -> String {
    let volts = end.runs.iter().filter_map(|run| run.lines.radio_voltage.get());
    volts
        .reduce(|one, other| if other < one { other } else { one })
        .map_or_else(|| "—".into(), |volts| volts.to_string())
}

fn told<T: Shown + Clone>(line: &Line<T>) -> String {
    line.value().map_or_else(|_| "—".into(), |value| spelled(&value.told().to_string()))
}
