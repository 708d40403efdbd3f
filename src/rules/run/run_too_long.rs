//! A run that carries data is longer than 100 m.

use crate::rules::prelude::*;
use crate::sheet::LONGEST_RUN;

rule! {
    /// A run that carries data is longer than 100 m.
    ///
    /// Beyond 100 m of balanced cable, cords included, Ethernet drops frames or falls back to a lower rate, worse in heat.
    /// Use fibre and a separate pair for the power, or put a repeater in between.
    ///
    /// Source: IEEE 802.3-2022 and ISO/IEC 11801-1, channel length.
    severity: Error,
    waivable: SERVICE,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let spec = run.resolved.run;
    let Some(length) = run.lines.length.get().filter(|length| *length > LONGEST_RUN) else { return };
    if !run.carries(Carried::Data) {
        return;
    }
    let (has, limit, over) = apart(length, LONGEST_RUN);
    let message = format!("end {}: the run to port `{}` is {has}, {over} over {limit}", sheet.name, spec.port);
    let finding = found.report(&RULE, at!(spec.outdoor), message, "too long for data");
    finding.measured(length, Worse::Higher);
    if spec.indoor.is_some() {
        finding.because(at!(spec.indoor), "and this much indoors");
    }
    finding.help(format!("shorten it by {over}, or use fibre for the data"));
}
