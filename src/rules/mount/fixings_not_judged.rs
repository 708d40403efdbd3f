//! The fixings of a support are not judged.

use crate::rules::prelude::*;
use crate::sheet::{Cause, Missing, Reason};

rule! {
    /// The fixings of a support are stated, and they are not judged.
    ///
    /// Nobody states what each of them bears, or what it must hold cannot be computed: the climate states no survival wind, not
    /// every mass is known of what hangs on a wall, there is only one, or they hold a mast, which is the engineer's altogether. Where it can, the finding says what each must hold, for the engineer who is
    /// to state what it bears.
    ///
    /// Source: common practice, no source.
    severity: Warning,
    never_waived: NOT_JUDGED,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let (lines, support, site) = (&sheet.fixings, sheet.resolved.support, sheet.resolved.site);
    if lines.fixings.value().is_err() {
        return;
    }
    let (message, help) = match (lines.tension.value(), lines.shear.value()) {
        (Ok(tension), Ok(shear)) => {
            if lines.bears_tension.value().is_ok() {
                return;
            }
            let message = format!(
                "site `{}`: each fixing of `{}` must hold {tension} of pull and {shear} of shear, and what it bears is \
                 not stated",
                site.id, support.id
            );
            (message, "have a structural engineer state what each bears where it sits, and write it under `bears`")
        }
        (Err(missing), _) | (_, Err(missing)) => {
            if told_elsewhere(missing) {
                return;
            }
            let message = format!(
                "site `{}`: what the fixings of `{}` must hold is not computed: {}",
                site.id, support.id, missing.reason
            );
            (
                message,
                "state what is missing, or have a structural engineer confirm the fixings and leave them out here",
            )
        }
    };
    let finding = found.report(&RULE, at!(support.fixings), message, "not judged");
    finding.help(help);
}

/// Whether another rule speaks of it: of an antenna without an area, of what is broken or out of range.
fn told_elsewhere(missing: &Missing) -> bool {
    let of_area =
        matches!(missing.reason, Reason::NoWindArea | Reason::NoWindAreaBeside { .. } | Reason::Crowded { .. });
    of_area || missing.cause != Cause::Judged
}
