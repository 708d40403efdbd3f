//! The radio shows nothing that a crew could align by.

use crate::rules::prelude::*;
use crate::sheet::Reason;

rule! {
    /// The radio shows nothing that a crew could align by.
    ///
    /// A crew turns the antenna until something says that the signal is strongest: a voltage at a port (`readout`), the level on
    /// the radio's own page or display (`shown_level`), or at least lamps or a tone (`indication`). With none of them the beam
    /// is found by luck, and nobody can tell whether it is the beam.
    ///
    /// Source: common practice, no source.
    severity: Error,
    waivable: WORK,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let (end, radio) = (sheet.resolved.end, sheet.resolved.radio);
    let said = sheet.lines.aligned_by.value();
    if said.err().is_none_or(|missing| missing.reason != Reason::NothingToAlignBy) {
        return;
    }
    let message = format!("end {}: nothing is stated that a crew could align radio `{}` by", sheet.name, radio.id);
    let finding = found.report(&RULE, at!(end.radio), message, "this radio");
    finding.because(at!(radio.id), "states no `readout`, no `shown_level` and no `indication`");
    finding
        .help("state in the radio's document where its sheet says that the level is shown: under `shown_level`, `at:`");
}
