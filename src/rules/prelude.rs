//! What the rule files share: names they all use, and the few helpers that more than one of them needs.

pub(super) use crate::at;
use crate::finding::rule::Rule;
pub(super) use crate::finding::rule::Severity;
pub(super) use crate::finding::{Finding, Findings, Worse};
use crate::network::Part;
use crate::place::Place;
pub(super) use crate::rule;
pub(super) use crate::sheet::{Direction, EndSheet, HopSheet, Line, Mend, RecordSheet, RunSheet, Wanted};
use crate::spec::Run;
pub(super) use crate::spec::{Both, Carried, EndName, Sky, TestResult, Verdict, Window};
pub(super) use crate::units::{
    Celsius, Decibels, Degrees, Gigahertz, Megahertz, MeterVolts, Metres, Millimetres, Quantity, Volts, apart,
};

/// A line as it is printed; a dash for one that has no value.
pub(super) fn line<Q: Quantity>(line: &Line<Q>) -> String {
    line.get().map_or_else(|| "—".into(), |value| value.to_string())
}

/// How many antennas of other hops push the same pole, in words; nothing of none.
pub(super) fn with_others(sheet: &EndSheet<'_>) -> String {
    match sheet.beside.len() {
        0 => String::new(),
        1 => ", with the antenna of another hop on it".into(),
        many => format!(", with the antennas of {many} other ends on it"),
    }
}

/// Labels what they put there.
pub(super) fn push_others(sheet: &EndSheet<'_>, finding: &mut Finding) {
    for fellow in &sheet.beside {
        let (end, dish) = (fellow.end.end, fellow.end.antenna);
        finding
            .because(at!(end.height), format!("hop `{}`, end {} stands there too", fellow.hop.hop.id, fellow.end.name));
        finding.decided_by(at!(dish.wind_area));
    }
}

/// How much of a margin interference takes, where it takes any.
pub(super) fn lost_to_interference(direction: &Direction<'_>) -> String {
    let lost = direction.heard.degradation.get().filter(|lost| lost.tidy().0 > 0.0);
    lost.map_or_else(String::new, |lost| format!("; interference takes {lost} of it"))
}

/// Single changes that would do, in words; `otherwise` if none does.
pub(super) fn any_of(mend: &Mend, otherwise: &str) -> String {
    match mend.words().as_slice() {
        [] => otherwise.to_owned(),
        [only] => format!("{only} would be enough"),
        many => format!("any one of these is enough: {}", many.join("; ")),
    }
}

/// The edges of the channel, in words, if it is not wholly inside a band.
pub(super) fn outside(hop: &HopSheet<'_>, direction: &Direction<'_>, band: &Window<Gigahertz>) -> Option<String> {
    let (low, high) = hop.channel_edges(direction.way);
    let inside = band.min.value <= low && high <= band.max.value;
    (!inside).then(|| format!("{low} to {high}"))
}

/// How far the worse edge of the channel lies outside a band: in megahertz, for no frequency is so low.
pub(super) fn beyond(hop: &HopSheet<'_>, direction: &Direction<'_>, band: &Window<Gigahertz>) -> Megahertz {
    let (low, high) = hop.channel_edges(direction.way);
    let (below, above) = (megahertz_apart(band.min.value, low), megahertz_apart(high, band.max.value));
    if below > above { below } else { above }
}

/// One frequency less another.
pub(super) fn megahertz_apart(one: Gigahertz, other: Gigahertz) -> Megahertz {
    Megahertz((one.0 - other.0) * 1000.0)
}

/// The farthest of some distances.
pub(super) fn farthest(distances: impl Iterator<Item = Megahertz>) -> Megahertz {
    distances.fold(Megahertz(0.0), |one, other| if other > one { other } else { one })
}

/// Where the centre of a channel may lie so that it is within all of some bands, and what else would do.
pub(super) fn centre_help(hop: &HopSheet<'_>, bands: &[&Window<Gigahertz>], other: &str) -> String {
    let half = hop.half_bandwidth();
    let low = bands.iter().map(|band| band.min.value + half).fold(Gigahertz(0.0), |a, b| if a < b { b } else { a });
    let high = bands.iter().map(|band| band.max.value - half);
    let high = high.fold(Gigahertz(f64::INFINITY), |a, b| if b < a { b } else { a });
    if low <= high {
        format!("a centre from {low} to {high}, or {other}")
    } else {
        format!("no centre fits {} of bandwidth: {other}", hop.resolved.hop.channel.bandwidth)
    }
}

/// Reports that too little reaches the radio of a run: with what feeds it, what it feeds, and what would bring more.
pub(super) fn starving<'f>(
    rule: &'static Rule,
    sheet: &EndSheet<'_>,
    run: &RunSheet<'_>,
    message: String,
    found: &'f mut Findings,
) -> &'f mut Finding {
    let (spec, cable, radio) = (run.resolved.run, run.resolved.cable, sheet.resolved.radio);
    let loop_resistance = format!("loop resistance {}", line(&run.lines.loop_resistance));
    let finding = found.report(rule, at!(spec.outdoor), message, loop_resistance);
    finding.because(at!(spec.supply), format!("gives {}", line(&run.lines.supply_voltage)));
    finding.because(at!(radio.power.voltage), "what the radio runs on");
    finding.because(at!(radio.power.draw), "the most the radio draws");
    let wire = if cable.resistance.is_some() { at!(cable.resistance) } else { at!(cable.conductor) };
    finding.because(wire, "the conductors of the cable");
    for other in sheet.runs.iter().filter(|other| other.onward.is_some()) {
        let other = other.resolved.run;
        finding.because(fed_at(other), "fed through the radio");
    }
    finding.help(run.more_volts());
    finding
}

/// Where it is written what a run hands power to.
pub(super) fn fed_at(run: Part<'_, Run>) -> Place {
    if run.ends_at.is_some() { at!(run.ends_at) } else { at!(run.feeds) }
}

/// What of a climate lies outside a window, in words: the air of the network against what a thing bears.
pub(super) fn climate_outside(window: &Window<Celsius>, coldest: Option<Celsius>, hottest: Celsius) -> Option<String> {
    if let Some(cold) = coldest.filter(|cold| *cold < window.min.value) {
        let (has, bears, below) = degrees_apart(cold, window.min.value);
        return Some(format!("{has}, {below} below the {bears} it bears"));
    }
    if hottest > window.max.value {
        let (has, bears, above) = degrees_apart(hottest, window.max.value);
        return Some(format!("{has}, {above} above the {bears} it bears"));
    }
    None
}

/// Gives a finding the air that is outside a window, as [`climate_outside`] says it.
pub(super) fn measured_air(
    finding: &mut Finding,
    window: &Window<Celsius>,
    coldest: Option<Celsius>,
    hottest: Celsius,
) {
    match coldest.filter(|cold| *cold < window.min.value) {
        Some(cold) => finding.measured(cold, Worse::Lower),
        None => finding.measured(hottest, Worse::Higher),
    };
}

/// Two temperatures and their distance, with enough decimals to be told apart.
fn degrees_apart(one: Celsius, other: Celsius) -> (String, String, String) {
    use crate::units::Kelvins;
    let distance = Kelvins((one.0 - other.0).abs());
    let decimals = (0..4).find(|d| distance.with_decimals(*d) != Kelvins(0.0).with_decimals(*d)).unwrap_or(4);
    (one.with_decimals(decimals), other.with_decimals(decimals), distance.with_decimals(decimals))
}

/// Labels the air that is outside a window.
pub(super) fn air_labels(sheet: &EndSheet<'_>, window: &Window<Celsius>, finding: &mut Finding) {
    let cold = sheet.practice.coldest_air.as_ref().filter(|cold| cold.value() < window.min.value);
    match cold {
        Some(cold) => threshold(finding, cold, "the coldest air".into()),
        None => threshold(finding, &sheet.hottest_air, "the hottest air".into()),
    }
}

/// The air of a network, in words: `-20 °C to 40 °C`.
pub(super) fn climate_words(sheet: &EndSheet<'_>) -> String {
    let hottest = &sheet.hottest_air.given;
    match &sheet.practice.coldest_air {
        Some(cold) => format!("{} to {hottest}", cold.given),
        None => format!("{hottest}"),
    }
}

/// Labels a threshold of common practice where the network sets it; a default stands nowhere.
pub(super) fn threshold<Q>(finding: &mut Finding, limit: &Wanted<Q>, label: String) {
    if !limit.assumed {
        finding.because(limit.place, label);
    }
}
