//! Nothing says how much a hop may radiate.

use super::ASK;
use crate::rules::prelude::*;

rule! {
    /// Nothing says how much a hop may radiate.
    ///
    /// No code under `codes.licence` of the network, or under `licence` of the hop, holds the channel, and the hop states no
    /// limit of a licence. Radio law is national: without a code or a licence no limit on radiated power is judged, and
    /// silence would look like consent. Name the code the hop falls under, or state `max_eirp` or `max_power` of its
    /// licence.
    ///
    /// Source: common practice; whoever transmits needs the right to, by the radio law of every country.
    severity: Warning,
    never_waived: IS_LAW,
    check: Hop(check),
}

fn check(hop: &HopSheet<'_>, found: &mut Findings) {
    let open: Vec<&Direction<'_>> =
        hop.directions.iter().filter(|direction| !hop.licence[direction.way].is_stated()).collect();
    let Some(first) = open.first() else { return };
    let (spec, licence) = (hop.resolved.hop, &hop.licence[first.way]);
    let channels: Vec<String> = open
        .iter()
        .map(|direction| {
            let (low, high) = hop.channel_edges(direction.way);
            format!("{low} to {high}")
        })
        .collect();
    let channels = match channels.as_slice() {
        [one, other] if one != other => format!("{one}, nor {other}"),
        [one, ..] => one.clone(),
        [] => return,
    };
    let message = format!("no code of practice and no licence is stated for {channels}");
    let finding =
        found.report(&RULE, hop.resolved.frequency_at(first.way), message, "nothing limits what is radiated here");
    finding.of_whole_hop().because(licence.named_at, "the codes are named here");
    finding.because(at!(spec.licence), "a licence of the hop would stand here");
    finding.decided_by(at!(spec.channel.bandwidth));
    let candidates: Vec<String> = licence.candidates.iter().map(|name| format!("`{name}`")).collect();
    finding.help(match candidates.as_slice() {
        [] => format!("no code this program knows speaks of it: state `max_eirp` under `licence` of the hop; {ASK}"),
        names => format!(
            "name under `codes.licence` of the network what the hop falls under, one of {}; or state `max_eirp` under \
             `licence` of the hop; {ASK}",
            names.join(", ")
        ),
    });
}
