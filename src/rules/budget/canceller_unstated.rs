//! Two carriers share a channel, and a radio states no canceller.

use crate::rules::prelude::*;

rule! {
    /// Two carriers share a channel, and a radio states no canceller.
    ///
    /// Radios for dual-polarised hops have a canceller of cross-polar interference, worth some 20 dB (from memory); without one
    /// the faster states rarely hold in rain. None is counted where none is stated: if the radio has one, add
    /// `cross_polar_cancelling`.
    ///
    /// Source: the data sheet of the radio.
    severity: Advice,
    waivable: SERVICE,
    check: Hop(check),
}

fn check(hop: &HopSheet<'_>, found: &mut Findings) {
    let spec = hop.resolved.hop;
    let (a, b) = (hop.resolved.ends.a.radio, hop.resolved.ends.b.radio);
    if spec.channel.polarisation.carriers() == 1 {
        return;
    }
    let mut without: Vec<_> = [a, b].into_iter().filter(|radio| radio.cross_polar_cancelling.is_none()).collect();
    without.dedup_by(|one, other| one.at == other.at);
    let Some(first) = without.first() else { return };
    let message = format!("radio `{}` states no canceller for two carriers on one channel", first.id);
    let finding = found.report(&RULE, at!(spec.channel.polarisation), message, "two carriers on one channel");
    finding.of_whole_hop();
    for radio in without {
        finding.because(at!(radio.id), "no `cross_polar_cancelling`");
    }
    finding.help("add `cross_polar_cancelling` to the radio, or `0 dB` if it has none");
}
