//! The channel does not fit in the band of an antenna.

use crate::rules::prelude::*;

rule! {
    /// The channel does not fit in the band of an antenna.
    ///
    /// Outside its band an antenna has less gain than its sheet says, a wider beam and a poor match.
    ///
    /// Source: the band on the antenna's data sheet.
    severity: Error,
    waivable: SERVICE,
    check: Direction(check),
}

fn check(hop: &HopSheet<'_>, direction: &Direction<'_>, found: &mut Findings) {
    let (sender, receiver) = (direction.sender, direction.receiver);
    let mounted = [(sender.antenna, sender.end), (receiver.antenna, receiver.end)];
    let missed: Vec<_> =
        mounted.into_iter().filter(|(antenna, _)| outside(hop, direction, &antenna.band).is_some()).collect();
    let Some((first, end)) = missed.first() else { return };
    let (channel, way) = (outside(hop, direction, &first.band).unwrap_or_default(), direction.way);
    let message =
        format!("{way}: the channel of {channel} is not within {}, the band of antenna `{}`", first.band, first.id);
    let finding = found.report(&RULE, hop.resolved.frequency_at(way), message, "the centre of that channel");
    let off = missed.iter().map(|(antenna, _)| beyond(hop, direction, &antenna.band));
    finding.measured(farthest(off), Worse::Higher);
    finding.because(at!(end.antenna), "this antenna");
    let other = missed.get(1);
    let same = other.is_some_and(|(antenna, _)| antenna.at == first.at);
    if let Some((_, far)) = other {
        finding.because(at!(far.antenna), if same { "the same at the far end" } else { "nor that of the far end" });
    }
    finding.because(at!(first.band), "is made for this band");
    if let Some((antenna, _)) = other.filter(|_| !same) {
        finding.because(at!(antenna.band), "and that one for this");
    }
    let bands: Vec<_> = missed.iter().map(|(antenna, _)| &antenna.band).collect();
    finding.help(centre_help(hop, &bands, "another antenna"));
}
