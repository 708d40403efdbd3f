//! The words that text and Markdown share.

use super::Comparison;
use super::cause::Cause;
use super::change::{Change, FindingChange, HopChange, Outcome, Shown, Status};
use super::groups::{Group, Range};
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
    (difference != 0.0).then(|| signed(difference, unit))
}

/// A difference with its sign, and as many digits as it takes to see it.
fn signed(difference: f64, unit: &str) -> String {
    let told = |digits: &usize| format!("{difference:.digits$}").bytes().any(|byte| (b'1'..=b'9').contains(&byte));
    let digits = (decimals(unit)..=9).find(told).unwrap_or(9);
    // Two levels differ by decibels.
    let unit = if matches!(unit, "dBm" | "dBi") { "dB" } else { unit };
    format!("{difference:+.digits$}{}{unit}", gap(unit))
}

/// The decimals a unit is told with.
fn decimals(unit: &str) -> usize {
    match unit {
        "%" => 4,
        "°" | "V" | "A" | "Ω" | "dB/km" | "W/m²" | "1" => 2,
        _ => 1,
    }
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

/// `gain: 43.5 dBi → 42.5 dBi (equipment/dish.yaml:5)`, one after the other.
pub(super) fn reason(group: &Group) -> String {
    let each = group.causes.iter().map(|cause| format!("{} ({})", edit(cause), place(cause)));
    each.collect::<Vec<_>>().join("; ")
}

/// `800 hops: 12 now fail, 788 without error`.
pub(super) fn of_group(group: &Group) -> String {
    let told = group.outcomes.iter().map(|(outcome, count)| {
        let [one, many] = outcome.words();
        format!("{count} {}", if *count == 1 { one } else { many })
    });
    format!("{} hops: {}", group.hops.len(), told.collect::<Vec<_>>().join(", "))
}

/// `-1.0 dB each`, or from the least to the greatest.
pub(super) fn change_of(range: &Range) -> String {
    let [least, most] = range.change;
    if (most - least).abs() < 0.05 * least.abs().max(most.abs()) {
        let mean = f64::midpoint(least, most);
        return format!("{} each", signed(mean, range.unit));
    }
    format!("{} to {}", signed(least, range.unit), signed(most, range.unit))
}

/// `0.3 dB at ridge`.
pub(super) fn least_of(range: &Range) -> Option<String> {
    let (left, hop) = range.least.as_ref()?;
    // What is left of a level is a difference.
    let unit = if matches!(range.unit, "dBm" | "dBi") { "dB" } else { range.unit };
    Some(format!("{left:.*}{}{unit} at {hop}", decimals(unit), gap(unit)))
}

/// The quantity of a hop that lost most, a turned verdict first.
pub(super) fn tightest(hop: &HopChange) -> Option<&Change> {
    hop.quantities.iter().max_by(|one, other| one.turns().cmp(&other.turns()).then(one.loss.total_cmp(&other.loss)))
}

/// A hop in a line: outcome, what is tightest, the first cause.
pub(super) fn row(hop: &HopChange) -> String {
    let tight = tightest(hop).map(|change| {
        let [before, after] = both(&change.values, change.unit);
        let left = change.margins.as_ref().map(|margins| format!(", in hand {}", both(margins, change.unit)[1]));
        format!("; {} {before} → {after}{}", change.name, left.unwrap_or_default())
    });
    let cause = hop.causes.first().map(|cause| format!("; {}", place(cause)));
    format!("{}: {}{}{}", hop.hop, outcome(hop), tight.unwrap_or_default(), cause.unwrap_or_default())
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
