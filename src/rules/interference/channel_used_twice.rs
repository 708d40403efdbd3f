//! Two hops between the same supports use one channel in one polarisation.

use super::{is_twin, mends};
use crate::rules::prelude::*;

rule! {
    /// Two hops between the same supports use one channel in one polarisation.
    ///
    /// Each receiver stands in the beam of the other hop's sender and cannot tell the two apart: neither hop works. Give one of them
    /// another channel, or the other polarisation with antennas that keep them apart and state by how much (`cross_polar`); two
    /// carriers of crossed polarisations in one radio are `channel.polarisation: dual`.
    ///
    /// Source: powers of independent signals add; arithmetic.
    severity: Error,
    waivable: SERVICE,
    check: Direction(check),
}

fn check(hop: &HopSheet<'_>, direction: &Direction<'_>, found: &mut Findings) {
    let heard = &hop.heard[direction.way];
    let Some(other) = heard.aggressors.iter().find(|other| is_twin(other, hop, direction)) else { return };
    let spec = hop.resolved.hop;
    let message = format!(
        "end {} and {} send between the same supports on one channel in one polarisation: {} over the noise of end {}",
        direction.sender.name, other.called, other.over_noise, direction.receiver.name,
    );
    let finding = found.report(&RULE, at!(spec.channel), message, "this channel");
    finding.about(format!("{} {}", direction.way, other.called));
    finding.measured(other.over_noise, Worse::Higher);
    finding.because(other.place, "the other hop");
    finding.help(mends(hop, direction));
}
