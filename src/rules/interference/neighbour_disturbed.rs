//! A sender comes through to a receiver of another owner.

use crate::rules::prelude::*;

rule! {
    /// A sender comes through to a receiver of another owner.
    ///
    /// What `neighbour` documents say of hops of other owners is judged as the network's own hops are: the level at their receiver by
    /// angles in space, patterns, free space and gas, in clear air with nothing in the way. The limit for one sender is
    /// `limits.neighbour_disturbance` of the network, −10 dB over their noise where it says nothing. What their licence protects
    /// them from is for whoever licenses both to say.
    ///
    /// Source: patterns of ITU-R F.699-8 where none is measured. The limit is common practice, no source.
    severity: Warning,
    waivable: SERVICE,
    check: Direction(check),
}

fn check(hop: &HopSheet<'_>, direction: &Direction<'_>, found: &mut Findings) {
    let (end, limit) = (direction.sender.end, hop.disturbed[direction.way].limit.value());
    for reached in &hop.disturbed[direction.way].above {
        let (name, called) = (direction.sender.name, &reached.called);
        let message = match reached.over_noise {
            Some(over) => format!("end {name} comes through to {called} {over} over its noise, more than {limit}"),
            None => format!("end {name} sends where {called} listens at the same site"),
        };
        let finding = found.report(&RULE, at!(end.transmit_power), message, "sent with this power");
        finding.about(called.clone());
        finding.because(reached.place, "the neighbour");
        if let Some(over) = reached.over_noise {
            finding.measured(over, Worse::Higher);
            let less = (over - limit).rounded_up();
            finding.help(format!(
                "send {less} less, or with an antenna that is so much weaker that way, in the other polarisation or on another channel"
            ));
        } else {
            finding.help("exchange the halves, or choose another channel");
        }
    }
}
