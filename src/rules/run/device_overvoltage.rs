//! A device that is fed through the radio gets more volts than it takes.

use crate::rules::prelude::*;

rule! {
    /// A device that is fed through the radio gets more volts than it takes.
    ///
    /// With little current flowing all of the supply's voltage arrives at the far end of the chain.
    ///
    /// Source: the voltage window on the device's data sheet.
    severity: Error,
    never_waived: SHOCKS,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let Some(onward) = &run.onward else { return };
    let (Some(gives), Some(most)) = (onward.port_voltage_most.get(), onward.most.get()) else { return };
    if gives <= most {
        return;
    }
    let (spec, port) = (run.resolved.run, run.resolved.port);
    let (has, limit, above) = apart(gives, most);
    let message = format!(
        "end {}: port `{}` hands on up to {has}, {above} above the {limit} its device takes",
        sheet.name, port.id
    );
    let finding = found.report(&RULE, fed_at(spec), message, format!("takes no more than {limit}"));
    finding.measured(gives, Worse::Higher);
    finding.because(at!(port.passes_on), format!("hands on up to {has}"));
    for feeding in sheet.runs.iter().filter_map(|run| run.resolved.supply) {
        finding.because(at!(feeding.voltage.max), "the greatest voltage of the supply");
    }
    finding.help(format!("a device that takes {has}, or a supply of no more than {limit}"));
}
