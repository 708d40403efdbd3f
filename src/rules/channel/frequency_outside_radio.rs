//! The channel does not fit in the band of a radio.

use crate::rules::prelude::*;

rule! {
    /// The channel does not fit in the band of a radio.
    ///
    /// The whole channel, centre frequency and half the bandwidth each way, must lie where the sender can send and the
    /// receiver can listen.
    ///
    /// Source: the bands on the radio's data sheet.
    severity: Error,
    check: Direction(check),
}

fn check(hop: &HopSheet<'_>, direction: &Direction<'_>, found: &mut Findings) {
    if hop.same_half() {
        return;
    }
    let (sending, listening) = (direction.sender.half, direction.receiver.half);
    let tests =
        [(&sending.transmit, at!(sending.transmit), "sends"), (&listening.receive, at!(listening.receive), "listens")];
    for (window, place, does) in tests {
        let Some(channel) = outside(hop, direction, window) else { continue };
        let message =
            format!("{}: the channel of {channel} is not within {window}, where the radio {does}", direction.title);
        let finding = found.report(&RULE, hop.frequency_place(direction), message, "the centre of that channel");
        finding.because(place, format!("it {does} here"));
        finding.help(centre_help(hop, window));
    }
}
