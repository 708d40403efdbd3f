//! Data and power share a run, but the supply does not pass the data at the rate of the port.

use crate::network::Document;
use crate::rules::prelude::*;
use crate::spec::{STANDARD, Supply};

rule! {
    /// Data and power share a run, but the supply does not pass the data at the rate of the port.
    ///
    /// A supply in the run of a data cable sits between switch and radio and must pass the line rate. Of a standard part without a
    /// rate `supply-rate-unstated` speaks.
    ///
    /// Source: the rate on the supply's data sheet.
    severity: Error,
    waivable: SERVICE,
    check: Run(check),
}

/// Whether it is a part that the program ships.
pub(super) fn is_standard(supply: &Document<Supply>) -> bool {
    supply.id.starts_with(STANDARD)
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let Some(supply) = run.resolved.supply.filter(|_| run.carries(Carried::Data)) else { return };
    let (spec, port) = (run.resolved.run, run.resolved.port);
    let Some(rate) = &port.rate else { return };
    let passes = supply.rate.as_ref();
    if passes.is_some_and(|passes| passes.value >= rate.value) || (passes.is_none() && is_standard(supply)) {
        return;
    }
    let has = passes.map_or("no data".to_owned(), ToString::to_string);
    let message = format!("end {}: supply `{}` passes {has}, port `{}` runs at {rate}", sheet.name, supply.id, port.id);
    let finding = found.report(&RULE, at!(spec.supply), message, format!("passes {has}"));
    if let Some(passes) = passes {
        finding.measured(passes.value, Worse::Lower);
    }
    finding.because(at!(supply.rate), if supply.rate.is_some() { "its rate" } else { "it states no rate" });
    finding.because(at!(port.rate), "the rate of the port");
    finding.help(format!("a supply that passes {rate}, or separate runs for data and power"));
}
