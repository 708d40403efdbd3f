//! A hop is long enough for multipath fading, and nothing says how much there is.

use crate::finding::rule::Severity;
use crate::rules::prelude::*;
use crate::sheet::{Cause, HIGHEST_MULTIPATH, Reason, SHORTEST_MULTIPATH};

rule! {
    /// A hop is long enough for multipath fading, and nothing says how much there is.
    ///
    /// On still nights layers of air bend the beam off or onto itself. Over 5 km that may cost more time than rain does. It
    /// counts in the availability once two things are given: `climate.refractivity`, two values of published maps, and a
    /// profile, for the mean height of the ground changes it by a power of ten. Beyond 185 km, above 45 GHz, or where the
    /// climate is worse than the method bears, it cannot be computed. Above 45 GHz there is no method at all, and this is
    /// advice; without refractivity or profile it is a warning; a climate that is worse than the method bears is an error.
    ///
    /// Source: ITU-R P.530-18 §2.3; that it does not matter up to 5 km is §2.3.1 (from memory, not seen).
    severity: Error,
    never_off: NOT_JUDGED,
    check: Hop(check),
}

fn check(hop: &HopSheet<'_>, found: &mut Findings) {
    let Some(distance) = hop.path.distance.get().filter(|distance| *distance > SHORTEST_MULTIPATH) else { return };
    let open = hop.directions.iter().find_map(|direction| {
        let missing = direction.margins.multipath.value().err()?;
        Some((direction, missing)).filter(|(_, missing)| missing.cause == Cause::Judged)
    });
    let Some((direction, missing)) = open else { return };
    let (spec, high) = (hop.resolved.hop, hop.resolved.hop.channel.frequency(direction.way).value > HIGHEST_MULTIPATH);
    let why = if high { "no method reaches above 45 GHz".to_owned() } else { missing.reason.to_string() };
    let message = format!("over {distance} multipath fading is not judged: {why}");
    let finding = found.report(&RULE, at!(spec.id), message, "this hop");
    finding.measured(distance, Worse::Higher).of_whole_hop();
    finding.at_most(match &missing.reason {
        _ if high => Severity::Advice,
        Reason::MultipathOccurrence { .. } => Severity::Error,
        _ => Severity::Warning,
    });
    if high {
        finding.because(hop.resolved.frequency_at(direction.way), "this frequency");
        finding.help("ask for more margin than rain needs, or for a shorter hop; none can be computed");
    } else if missing.reason == Reason::NoRefractivity {
        let (latitude, longitude) = (line(&hop.path.middle_latitude), line(&hop.path.middle_longitude));
        finding.help(format!(
            "add `climate: {{ refractivity: {{ log_k: …, dn_75: … }} }}`: look up lg K and dN75 in the maps that ITU-R \
             publishes with P.530-18, at {latitude} north, {longitude} east"
        ));
    } else if missing.reason == Reason::NoProfile {
        finding.help("add a profile under `path`: the mean height of the ground along it is computed from that");
    } else {
        finding.because(missing.spot.clone(), "the clear air it is computed from");
        finding
            .help("check `log_k` and `dn_75`; if they are right, the hop is too long for this climate to be computed");
    }
}
