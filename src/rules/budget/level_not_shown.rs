//! A crew can find the peak and not tell whether it is the right one.

use crate::rules::prelude::*;
use crate::spec::AlignedBy;

rule! {
    /// A crew can find the peak and not tell whether it is the right one.
    ///
    /// Lamps and tones tell more from less. A side lobe has a peak too, and so has a hop with a wet radome or a wrong power;
    /// only a level that can be held against the prediction tells them apart. Without one, no record of this end can show that
    /// the hop is what was designed.
    ///
    /// Source: common practice, no source.
    severity: Warning,
    waivable: EVIDENCE,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let (end, radio) = (sheet.resolved.end, sheet.resolved.radio);
    let Some(AlignedBy::Indication(indication)) = radio.aligned_by() else { return };
    if sheet.lines.aligned_by.value().is_err() {
        return;
    }
    let title = &indication.title;
    let message = format!("end {}: the crew aligns by {title}, which is no level", sheet.name);
    let finding = found.report(&RULE, at!(end.radio), message, "this radio");
    finding.because(at!(radio.indication), "all that it shows");
    finding.help(
        "state `readout` or `shown_level` if the radio has one; else say how the level is had later, in a waiver",
    );
}
