//! Both ends are the same half of a duplex pair.

use crate::place::Placed as _;
use crate::rules::prelude::*;

rule! {
    /// Both ends are the same half of a duplex pair.
    ///
    /// One half sends where the other listens. Two radios of the same half both shout into the band neither of them hears:
    /// the hop never comes up, however well it is aimed, and the wrong box has been shipped.
    ///
    /// Source: physics; channel plans such as ECC/REC/(05)07 pair 71–76 with 81–86 GHz.
    severity: Error,
    waivable: SERVICE,
    check: Hop(check),
}

fn check(hop: &HopSheet<'_>, found: &mut Findings) {
    if !hop.same_half() {
        return;
    }
    let (a, b) = (&hop.resolved.ends.a, &hop.resolved.ends.b);
    let (end_a, end_b, half_a, half_b) = (a.end, b.end, a.half, b.half);
    let message = format!("both ends send in {} and listen in {}", half_b.transmit, half_b.receive);
    let spot = if end_b.half.is_some() { at!(end_b.half) } else { at!(end_b.radio) };
    let finding = found.report(&RULE, spot, message, format!("the `{}` half, as at the far end", half_b.id));
    finding.of_whole_hop();
    finding.because(
        if end_a.half.is_some() { at!(end_a.half) } else { at!(end_a.radio) },
        format!("the `{}` half", half_a.id),
    );
    finding.because(half_b.place(), format!("sends in {}, listens in {}", half_b.transmit, half_b.receive));
    if half_a.place() != half_b.place() {
        finding.because(half_a.place(), format!("sends in {}, listens in {}", half_a.transmit, half_a.receive));
    }
    let other =
        b.radio.halves.iter().find(|half| half.transmit.min.value > half_a.receive.max.value || half.id != half_b.id);
    finding.help(match other {
        Some(other) => format!("make one end the `{}` half, and let it send on the channel of that half", other.id),
        None => "one end needs the radio that is the other half of the pair".into(),
    });
}
