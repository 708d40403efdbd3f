//! The level found is that of crossed polarisation.

use super::{measured_at, read_at};
use crate::rules::prelude::*;
use crate::spec::Polarisation;

rule! {
    /// The level found is that of crossed polarisation.
    ///
    /// With one antenna turned by 90 degrees only the cross-polar remainder arrives, some 25 to 35 dB down, and it peaks like
    /// the real thing. Said only where no side lobe explains the level, and not of dual-polarised hops, which have a carrier either way.
    ///
    /// Source: common practice, no source.
    severity: Warning,
    waivable: SERVICE,
    check: Record(check),
}

fn check(hop: &HopSheet<'_>, sheet: &RecordSheet<'_>, found: &mut Findings) {
    let end = &hop.ends[sheet.end];
    let Some(below) = sheet.lines.difference.get().filter(|_| sheet.looks_crossed(end)) else { return };
    if hop.resolved.hop.channel.polarisation == Polarisation::Dual {
        return;
    }
    let (lines, spec, record) = (&sheet.lines, hop.resolved.hop, sheet.document);
    let down = -below;
    let message = format!("end {}: {down} too weak is what crossed polarisation leaves", sheet.end);
    let label = format!("crossed, {} to {} would be read", line(&lines.crossed_least), line(&lines.crossed_most));
    let finding = found.report(&RULE, measured_at(sheet), message, label);
    finding.measured(below, Worse::Lower).known_at(read_at(sheet));
    finding.because(at!(spec.channel.polarisation), "at both ends");
    if record.settings.polarisation.is_some() {
        finding.because(at!(record.settings.polarisation), "as written here");
    }
    finding.help("look at the marks on both antennas and turn the one that is wrong by 90 degrees");
}
