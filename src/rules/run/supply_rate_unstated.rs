//! Data and power share a run, and nobody says which rate the standard source of power passes.

use super::supply_passes_no_data::is_standard;
use crate::rules::prelude::*;

rule! {
    /// Data and power share a run, and nobody says which rate the standard source of power passes.
    ///
    /// A standard part describes the power of a class, and no class says which rate of data a source lets through: one of a
    /// switch for 100 Mbit/s and one for 10 Gbit/s may be of the same class. A document of your own with the `rate` of its sheet
    /// takes the place of the standard part.
    ///
    /// Source: IEEE 802.3 clauses 33 and 145 set power and say nothing of the rate of one source (from memory, not seen).
    severity: Warning,
    never_off: NOT_JUDGED,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let Some(supply) = run.resolved.supply.filter(|_| run.carries(Carried::Data)) else { return };
    let (spec, port) = (run.resolved.run, run.resolved.port);
    let Some(rate) = port.rate.as_ref().filter(|_| supply.rate.is_none() && is_standard(supply)) else { return };
    let message = format!(
        "end {}: whether supply `{}` passes the {rate} of port `{}` is not stated",
        sheet.name, supply.id, port.id
    );
    let finding = found.report(&RULE, at!(spec.supply), message, "no class says it");
    finding.because(at!(port.rate), "the rate of the port");
    finding.help(format!("write a supply of your own with the figures of its sheet and a `rate` of {rate} or more"));
}
