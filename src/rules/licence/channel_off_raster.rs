//! The centre of a channel is not on the raster that goes with the code.

use super::ASK;
use crate::rules::prelude::*;

rule! {
    /// The centre of a channel is not on the raster that goes with the code.
    ///
    /// Regulators assign channels by a plan: ECC/REC/(05)07 for `EN 302 217`, slots of 50 MHz for `ECC/REC/(09)01`. A
    /// centre beside it is mostly a slip of the pen. A width that the plan does not list may be a sum of its narrowest
    /// channels side by side. Countries may assign otherwise, so this is a warning: check with the national regulator.
    ///
    /// Source: ECC/REC/(05)07 annex 4 by a national interface specification that cites it, published; ECC/REC/(09)01,
    /// whose first slot is from memory.
    severity: Warning,
    never_waived: IS_LAW,
    check: Direction(check),
}

fn check(hop: &HopSheet<'_>, direction: &Direction<'_>, found: &mut Findings) {
    let spec = hop.resolved.hop;
    let bandwidth = &spec.channel.bandwidth;
    for code in &hop.licence[direction.way].codes {
        let Some(raster) = &code.raster else { continue };
        if code.lines.channel.value().is_ok() {
            continue;
        }
        let known = raster.known.word();
        let centre = direction.lines.frequency.value().ok();
        let (message, help) = if let (Some(nearest), Some(centre)) = (raster.nearest, centre) {
            let (has, near, off) = apart(centre.value, nearest);
            let message = format!("{}: {has} is {off} off the raster of {} ({known})", direction.way, raster.name);
            (message, format!("the nearest channel of {bandwidth} has its centre at {near}; {ASK}"))
        } else {
            let message =
                format!("{}: no channels of {bandwidth} are known of {} ({known})", direction.way, raster.name);
            (message, format!("take a bandwidth of that plan; {ASK} whether others are assigned"))
        };
        let finding = found.report(&RULE, hop.resolved.frequency_at(direction.way), message, "this centre");
        finding.about(raster.name);
        if let (Some(nearest), Some(centre)) = (raster.nearest, centre) {
            let off = megahertz_apart(centre.value, nearest);
            finding.measured(Megahertz(off.0.abs()), Worse::Higher);
        }
        finding.because(at!(spec.channel.bandwidth), "for this bandwidth");
        finding.because(code.place, format!("goes with {}", raster.name));
        finding.help(help);
    }
}
