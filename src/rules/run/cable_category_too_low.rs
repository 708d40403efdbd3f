//! The cable's category is too low for the line rate of the port.

use crate::rules::prelude::*;
use crate::spec::Category;

rule! {
    /// The cable's category is too low for the line rate of the port.
    ///
    /// 1000BASE-T, 2.5GBASE-T and 5GBASE-T run on category 5e over 100 m, 10GBASE-T on category 6A.
    ///
    /// Source: IEEE 802.3-2022 clauses 40, 55 and 126; ISO/IEC 11801-1.
    severity: Error,
    waivable: SERVICE,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let (spec, port, cable) = (run.resolved.run, run.resolved.port, run.resolved.cable);
    let Some(rate) = port.rate.as_ref().filter(|_| run.carries(Service::Data)) else { return };
    let needed = match rate.value.0 {
        ..=100.0 => Category::Cat5,
        ..=5000.0 => Category::Cat5e,
        _ => Category::Cat6A,
    };
    if cable.category >= needed {
        return;
    }
    let (has, needs) = (cable.category.word(), needed.word());
    let message = format!("end {}: {rate} at port `{}` needs {needs}, the cable is {has}", sheet.name, port.id);
    let finding = found.report(&RULE, at!(spec.cable), message, format!("a {has} cable"));
    finding.measured(rate.value, Worse::Higher);
    finding.because(at!(cable.category), "its category");
    finding.because(at!(port.rate), "the rate of the port");
    finding.help(format!("take {needs} or better"));
}
