//! What the rule files share: names they all use, and the few helpers that more than one of them needs.

pub(super) use crate::at;
pub(super) use crate::finding::{Findings, Worse};
pub(super) use crate::rule;
pub(super) use crate::sheet::{Direction, EndSheet, HopSheet, Line, Mend, RunSheet};
pub(super) use crate::spec::{Service, Window};
pub(super) use crate::units::{Gigahertz, MeterVolts, Quantity, Volts, apart};

/// A line as it is printed; a dash for one that has no value.
pub(super) fn line<Q: Quantity>(line: &Line<Q>) -> String {
    line.get().map_or_else(|| "—".into(), |value| value.to_string())
}

/// Single changes that would do, in words; `otherwise` if none does.
pub(super) fn any_of(mend: &Mend, otherwise: &str) -> String {
    match mend.words().as_slice() {
        [] => otherwise.to_owned(),
        [only] => format!("{only} gives it"),
        many => format!("any one of these gives it: {}", many.join("; ")),
    }
}

/// The edges of the channel, in words, if it is not wholly inside a band.
pub(super) fn outside(hop: &HopSheet<'_>, direction: &Direction<'_>, band: &Window<Gigahertz>) -> Option<String> {
    let (low, high) = hop.channel_edges(direction);
    let inside = band.min.value <= low && high <= band.max.value;
    (!inside).then(|| format!("{low} to {high}"))
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
