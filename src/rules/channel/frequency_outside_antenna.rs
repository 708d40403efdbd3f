//! The channel does not fit in the band of an antenna.

use crate::rules::prelude::*;

rule! {
    /// The channel does not fit in the band of an antenna.
    ///
    /// Outside its band an antenna has less gain than its sheet says, a wider beam and a poor match.
    ///
    /// Source: the band on the antenna's data sheet.
    severity: Error,
    check: Direction(check),
}

fn check(hop: &HopSheet<'_>, direction: &Direction<'_>, found: &mut Findings) {
    let (sender, receiver) = (direction.sender, direction.receiver);
    let same = sender.antenna.at == receiver.antenna.at;
    let mounted = [(sender.antenna, sender.end), (receiver.antenna, receiver.end)];
    // Of one model at both ends there is one thing to say.
    for (antenna, end) in mounted.into_iter().take(if same { 1 } else { 2 }) {
        let Some(channel) = outside(hop, direction, &antenna.band) else { continue };
        let message = format!(
            "{}: the channel of {channel} is not within {}, the band of antenna `{}`",
            direction.way, antenna.band, antenna.id
        );
        let finding =
            found.report(&RULE, hop.resolved.frequency_at(direction.way), message, "the centre of that channel");
        finding.because(at!(end.antenna), "this antenna");
        if same {
            let far = receiver.end;
            finding.because(at!(far.antenna), "the same at the far end");
        }
        finding.because(at!(antenna.band), "is made for this band");
        finding.help(centre_help(hop, &[&antenna.band], "another antenna"));
    }
}
