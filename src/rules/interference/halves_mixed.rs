//! A receiver listens in the band that another hop sends in at the same site.

use crate::rules::prelude::*;

rule! {
    /// A receiver listens in the band that another hop sends in at the same site.
    ///
    /// Of a duplex band all radios of one site are to be the same half: all send in the upper one or all in the lower one. A high
    /// beside a low one sends, some metres away and with a million million times the power, on frequencies the other listens to. What
    /// antennas on one mast put into each other is not computed here, so nothing else speaks of it. Exchange the halves of one hop;
    /// where hops close a ring of an odd number of sides that cannot be done for all, and one of them needs another band. Radios that
    /// take turns on one frequency are held against it where their channels lie on each other: such radios have to be
    /// synchronised.
    ///
    /// Source: common practice, no source.
    severity: Warning,
    waivable: SERVICE,
    check: Direction(check),
}

fn check(hop: &HopSheet<'_>, direction: &Direction<'_>, found: &mut Findings) {
    let end = direction.receiver.end;
    for beside in &hop.heard[direction.way].beside {
        let message = format!("end {} listens where {} sends at the same site", direction.receiver.name, beside.called);
        let finding = found.report(&RULE, at!(end.radio), message, "this receiver");
        finding.about(beside.called.clone());
        finding.because(beside.place, "this sender");
        finding.help(if hop.heard[direction.way].halves_exchange {
            "exchange the two halves of this hop: tried, it leaves no receiver with another half beside it"
        } else {
            "exchange the two halves of one of the hops, and of those that follow from it round the ring"
        });
    }
}
