//! A hill or a cliff is stated, and it does not count in the wind.

use crate::rules::prelude::*;
use crate::sheet::{Missing, Reason};

rule! {
    /// A hill or a cliff is stated, and it does not count in the wind.
    ///
    /// EN 1991-1-4 raises the mean wind by `factor`, or by the factor of a `slope`; ASCE 7 raises the pressure by
    /// `topographic_factor`. One does not stand in for the other. A gust at the antenna has the hill in it already: raising it
    /// once more would count it twice.
    ///
    /// Source: EN 1991-1-4:2005, 4.3.3; ASCE 7-16, 26.8 (from memory, not seen).
    severity: Warning,
    never_waived: NOT_JUDGED,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let Err(Missing { reason, .. }) = sheet.wind.orography.value() else { return };
    let help = match reason {
        Reason::OrographyInGust => "leave `orography` out, or give the wind of the region with `speeds` of a code",
        Reason::NoOrographyFactor => "add `factor` or `slope` under `orography`",
        Reason::NoTopographicFactor => "add `topographic_factor` under `orography`",
        _ => return,
    };
    // Said of the site: whatever ends there, it is written once.
    let site = sheet.resolved.site;
    let message = format!("site `{}`: what is stated of a hill or a cliff is not counted: {reason}", site.id);
    let finding = found.report(&RULE, at!(site.orography), message, "not counted");
    finding.help(help);
}
