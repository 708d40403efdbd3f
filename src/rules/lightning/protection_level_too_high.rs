//! A surge arrester lets more through than the port behind it withstands.

use crate::rules::prelude::*;
use crate::spec::RunPlace;
use crate::units::ImpulseVolts;

/// What every port for data withstands from its lines to earth: IEEE 802.3, ten impulses (from memory, not seen).
const ETHERNET: ImpulseVolts = ImpulseVolts(2.4);

rule! {
    /// A surge arrester lets more through than the port behind it withstands.
    ///
    /// Its protection level is the most that is left between a line and earth when it conducts. It must lie below the impulse
    /// voltage that the port withstands: as the radio states it, else 2.4 kV for a port that carries data. Nothing is judged of
    /// an arrester without a protection level. Held against the port of the radio are the arresters at the radio.
    ///
    /// Source: the level on the arrester's data sheet in the terms of IEC 61643-21; 2.4 kV by IEEE 802.3 (from memory, not
    /// seen).
    severity: Warning,
    waivable: EQUIPMENT,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let (spec, port) = (run.resolved.run, run.resolved.port);
    let common = run.carries(Carried::Data).then_some(ETHERNET);
    let Some(withstands) = port.withstand.as_ref().map(|given| given.value).or(common) else { return };
    for (i, &arrester) in run.resolved.arresters.iter().enumerate() {
        let level = arrester.protection_level.as_ref().filter(|level| level.value > withstands);
        let Some(level) = level.filter(|_| spec.arresters[i].at == RunPlace::Radio) else { continue };
        let (has, limit, over) = apart(level.value, withstands);
        let message = format!(
            "end {}: arrester `{}` lets {has} through, {over} more than the {limit} that port `{}` withstands",
            sheet.name, arrester.id, port.id
        );
        let finding = found.report(&RULE, at!(spec.arresters[i].model), message, "lets too much through");
        finding.measured(level.value, Worse::Higher);
        finding.because(at!(arrester.protection_level), "its protection level");
        finding.because(
            at!(port.withstand),
            if port.withstand.is_some() { "what the port withstands" } else { "IEEE 802.3 for want of a figure here" },
        );
        finding.help(format!("take an arrester with a protection level below {limit}"));
    }
}
