//! The channel does not fit in the band of a feeder.

use crate::rules::prelude::*;

rule! {
    /// The channel does not fit in the band of a feeder.
    ///
    /// Below its band a waveguide lets nothing through, above it waves of other shapes travel in it as well; a coaxial cable and its
    /// connectors do the same above theirs.
    ///
    /// Source: the band on the sheet of the feeder.
    severity: Error,
    waivable: SERVICE,
    check: Direction(check),
}

fn check(hop: &HopSheet<'_>, direction: &Direction<'_>, found: &mut Findings) {
    for own in [direction.sender, direction.receiver] {
        let Some(feeder) = own.feeder else { continue };
        let Some(channel) = outside(hop, direction, &feeder.band) else { continue };
        let (way, end) = (direction.way, own.end);
        let message = format!(
            "{way}: the channel of {channel} is not within {}, the band of feeder `{}`",
            feeder.band, feeder.id
        );
        let finding = found.report(&RULE, hop.resolved.frequency_at(way), message, "the centre of that channel");
        finding.measured(beyond(hop, direction, &feeder.band), Worse::Higher);
        finding.about(own.name.letter());
        finding.because(at!(end.feeder), format!("this feeder, at end {}", own.name));
        finding.because(at!(feeder.band), "is made for this band");
        finding.help(centre_help(hop, &[&feeder.band], "another feeder"));
    }
}
