//! The level found is that of a side lobe.

use super::{far_of, measured_at, read_at, sweeps};
use crate::rules::prelude::*;

rule! {
    /// The level found is that of a side lobe.
    ///
    /// A side lobe peaks as cleanly as the beam. What gives it away is the level: a good 17 dB down with one end on it, twice
    /// that with both. The level found is brought to the air of the design and held against those the sheet computes for
    /// this end, the far end and both on their first side lobe.
    ///
    /// Source: Fraunhofer pattern of a round aperture between even light and a taper, or the measured pattern.
    severity: Warning,
    waivable: SERVICE,
    check: Record(check),
}

fn check(hop: &HopSheet<'_>, sheet: &RecordSheet<'_>, found: &mut Findings) {
    let end = &hop.ends[sheet.end];
    let Some((who, [least, most])) = sheet.on_side_lobe(end) else { return };
    let on = line(&sheet.lines.measured);
    let message = format!("end {}: {on} is what {who} on a side lobe would give", sheet.end);
    let finding = found.report(&RULE, measured_at(sheet), message, format!("{least} to {most} would be read"));
    finding.known_at(read_at(sheet));
    if let Some(level) = sheet.lines.measured.get() {
        finding.measured(level, Worse::Lower);
    }
    let (here, there) = (end.resolved.end, end.far.end);
    finding.because(at!(here.antenna), format!("the first side lobe of this end lies {} off", angles(end)));
    finding.because(at!(there.antenna), format!("that of the far end {}", angles(far_of(hop, sheet))));
    let help = format!("sweep both axes, {}, one end after the other, and keep the strongest peak", sweeps(hop, sheet));
    finding.help(format!("{help}; if there is none, compare polarisation"));
}

fn angles(end: &EndSheet<'_>) -> String {
    let lobes = &end.dish.lobes;
    format!("{} to {}", line(&lobes.side_lobe_least), line(&lobes.side_lobe_most))
}
