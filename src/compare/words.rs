//! The words that text and Markdown share.

use super::Comparison;
use super::cause::Cause;
use super::change::{Change, FindingChange, HopChange, Outcome, Shown, Status};
use super::noise::differ;

/// Before and after as printed; with more digits where both would look the same.
pub(super) fn both(values: &[Shown; 2], unit: Option<&str>) -> [String; 2] {
    let [before, after] = values;
    if let (Some(old), Some(new), Some(unit)) = (before.number, after.number, unit)
        && differ(old, new)
        && before.text == after.text
    {
        let digits = (1..=9).find(|digits| format!("{old:.digits$}") != format!("{new:.digits$}")).unwrap_or(9);
        return [old, new].map(|number| format!("{number:.digits$}{}{unit}", gap(unit)));
    }
    [before, after].map(|shown| match (&shown.text, &shown.lost) {
        (Some(text), _) => text.to_string(),
        (None, Some(why)) => format!("not computable ({why})"),
        (None, None) => "—".into(),
    })
}

/// `-15.0 dB`, with a sign; nothing where there is no number on one side.
pub(super) fn difference(change: &Change) -> Option<String> {
    let (difference, unit) = (change.difference()?, change.unit?);
    if difference == 0.0 {
        return None;
    }
    let least = match unit {
        "%" => 4,
        "°" | "V" | "A" | "Ω" | "dB/km" | "W/m²" | "1" => 2,
        _ => 1,
    };
    let told = |digits: &usize| format!("{difference:.digits$}").bytes().any(|byte| (b'1'..=b'9').contains(&byte));
    let digits = (least..=9).find(told).unwrap_or(9);
    // Two levels differ by decibels.
    let unit = if matches!(unit, "dBm" | "dBi") { "dB" } else { unit };
    Some(format!("{difference:+.digits$}{}{unit}", gap(unit)))
}

fn gap(unit: &str) -> &'static str {
    if unit == "°" { "" } else { " " }
}

/// `≥ 20 dB`, or both where the limit moved.
pub(super) fn limit(change: &Change) -> Option<String> {
    match &change.limits {
        [Some(before), Some(after)] if before == after => Some(after.clone()),
        [Some(before), Some(after)] => Some(format!("{after} (was {before})")),
        [before, after] => after.clone().or_else(|| before.clone()),
    }
}

/// Whether the limit is met, where that is worth a word.
pub(super) fn verdict(change: &Change) -> Option<&'static str> {
    match change.met {
        [Some(true), Some(false)] => Some("NOW NOT MET"),
        [Some(false), Some(true)] => Some("now met"),
        [_, Some(false)] => Some("NOT MET"),
        _ => None,
    }
}

/// `ends.a.transmit_power: 10 dBm → -5 dBm`.
pub(super) fn edit(cause: &Cause) -> String {
    let said = match (&cause.before, &cause.after) {
        (Some(before), Some(after)) => format!("{before} → {after}"),
        (None, Some(after)) => format!("{after}, which is new"),
        (Some(before), None) => format!("{before}, which is gone"),
        (None, None) => String::new(),
    };
    format!("{}: {said}", cause.route)
}

/// `hops/ridge.yaml:18`, and that it is a place of the old side if it is.
pub(super) fn place(cause: &Cause) -> String {
    let gone = if cause.gone { " (before)" } else { "" };
    format!("{}:{}{gone}", cause.path, cause.line)
}

/// What is said where no edited field is behind a change.
pub(super) const NO_FIELD: &str =
    "unknown: no edited field is among its inputs; look at files beside the documents, such as a rain map";

/// Whether that has to be said.
pub(super) fn lacks_cause(hop: &HopChange) -> bool {
    hop.quantities.iter().chain(&hop.others).any(|change| change.causes.is_empty())
}

/// What became of a hop.
pub(super) fn outcome(hop: &HopChange) -> String {
    let [one, _] = hop.outcome.words();
    match (&hop.renamed_from, hop.outcome, &hop.not_computed) {
        (Some(from), Outcome::Renamed, _) => format!("renamed, it was {from}"),
        (_, Outcome::NotJudged, [_, Some(why)]) => format!("{one}: {why}"),
        (_, Outcome::JudgedAgain, [Some(why), _]) => format!("{one}; before: {why}"),
        (_, Outcome::NewAndFails, [_, Some(why)]) => format!("new and not computable: {why}"),
        (_, Outcome::Removed, [Some(why), _]) => format!("{one}; it was not computable: {why}"),
        _ => one.to_owned(),
    }
}

/// What was edited, by sort: `edited: 2 fields of hops and sites, 1 of the network document`.
pub(super) fn edited(comparison: &Comparison) -> Option<String> {
    use super::cause::Class;
    let count = |class| comparison.edits.iter().filter(|edit| edit.class == class).count();
    let parts = [
        (count(Class::Design), "of hops and sites"),
        (count(Class::Network), "of the network document"),
        (count(Class::Catalogue), "of equipment"),
    ];
    let told: Vec<String> =
        parts.iter().filter(|(count, _)| *count > 0).map(|(count, of)| format!("{count} {of}")).collect();
    (!told.is_empty()).then(|| format!("fields edited: {}", told.join(", ")))
}

/// `and 3 findings as before`.
pub(super) fn as_before(hop: &HopChange) -> Option<String> {
    match hop.existing() {
        0 => None,
        1 => Some("1 finding as before".into()),
        count => Some(format!("{count} findings as before")),
    }
}

/// What is said after a finding that the gate of the change lets pass.
pub(super) fn aside(finding: &FindingChange) -> String {
    finding.aside.map(|aside| format!("; {}", aside.words())).unwrap_or_default()
}

/// The word before a finding.
pub(super) fn status(status: Status) -> &'static str {
    status.word()
}
