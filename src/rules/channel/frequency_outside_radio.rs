//! The channel does not fit in the band of a radio.

use crate::rules::prelude::*;
use crate::sheet::slips;
use crate::spec::Way;

rule! {
    /// The channel does not fit in the band of a radio.
    ///
    /// The whole channel, centre frequency and half the bandwidth each way, must lie where the sender can send and the
    /// receiver can listen.
    ///
    /// Source: the bands on the radio's data sheet.
    severity: Error,
    waivable: SERVICE,
    check: Direction(check),
}

fn check(hop: &HopSheet<'_>, direction: &Direction<'_>, found: &mut Findings) {
    if hop.same_half() {
        return;
    }
    let (sending, listening) = (direction.sender.half, direction.receiver.half);
    let sends = (&sending.transmit, at!(sending.transmit), "sends");
    let listens = (&listening.receive, at!(listening.receive), "listens");
    let missed: Vec<_> =
        [sends, listens].into_iter().filter(|(band, ..)| outside(hop, direction, band).is_some()).collect();
    let Some((band, _, does)) = missed.first() else { return };
    let exchanged = slips::halves_exchange(hop);
    if exchanged && direction.way == Way::BToA {
        // One slip, told once.
        return;
    }
    let channel = outside(hop, direction, band).unwrap_or_default();
    let message = format!("{}: the channel of {channel} is not within {band}, where the radio {does}", direction.way);
    let finding = found.report(&RULE, hop.resolved.frequency_at(direction.way), message, "the centre of that channel");
    let off = missed.iter().map(|(band, ..)| beyond(hop, direction, band));
    finding.measured(farthest(off), Worse::Higher);
    for (_, place, does) in &missed {
        finding.because(*place, format!("its band where it {does}"));
    }
    let bands: Vec<_> = missed.iter().map(|(band, ..)| *band).collect();
    if exchanged {
        let spec = hop.resolved.hop;
        finding.because(at!(spec.ends), "with the halves of the two ends swapped it fits");
        finding.help("swap the two channels, or `half` of the two ends: with that both channels fit both radios");
        return;
    }
    finding.help(centre_help(hop, &bands, "another radio"));
}
