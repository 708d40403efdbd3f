//! The cable's category is too low for the line rate of the port.

use crate::rules::prelude::*;
use crate::spec::Category;
use crate::units::{MegabitsPerSecond, Metres};

/// Category 6 carries 10 Gbit/s over so much.
const SURE: Metres = Metres(37.0);
/// And without a screen in no case over more than so much.
const AT_MOST: Metres = Metres(55.0);

rule! {
    /// The cable's category is too low for the line rate of the port.
    ///
    /// 1000BASE-T, 2.5GBASE-T and 5GBASE-T run on category 5e over 100 m, 10GBASE-T on category 6A. On category 6 it should
    /// run over 37 m; up to 55 m it depends on the cables it is tied to, which couple into it, and is a warning: have the
    /// link tested to 500 MHz. An overall foil or braid keeps the others out, so that a screened cable of category 6 is a
    /// warning at any length beyond 37 m.
    ///
    /// Source: IEEE 802.3-2022 clauses 40, 55 and 126; ISO/IEC 11801-1; TIA TSB-155 for category 6 (second-hand).
    severity: Error,
    waivable: SERVICE,
    check: Run(check),
}

/// The category that a line rate asks of cable and of what stands in it.
pub(super) fn needed_category(rate: MegabitsPerSecond) -> Category {
    match rate.0 {
        ..=100.0 => Category::Cat5,
        ..=5000.0 => Category::Cat5e,
        _ => Category::Cat6A,
    }
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let (spec, port, cable) = (run.resolved.run, run.resolved.port, run.resolved.cable);
    let Some(rate) = port.rate.as_ref().filter(|_| run.carries(Carried::Data)) else { return };
    let needed = needed_category(rate.value);
    // One without a category is said to carry no data at all.
    let Some(category) = cable.category.filter(|category| *category < needed) else { return };
    let length = run.lines.length.get().filter(|_| category == Category::Cat6);
    if length.is_some_and(|length| length <= SURE) {
        return;
    }
    let perhaps = length.filter(|length| *length <= AT_MOST || cable.has_screen());
    let (has, needs) = (category.word(), needed.word());
    let message = match perhaps {
        Some(length) => format!(
            "end {}: {rate} at port `{}` over {length} of {has} depends on the cables beside it, beyond {SURE}",
            sheet.name, port.id
        ),
        None => format!("end {}: {rate} at port `{}` needs {needs}, the cable is {has}", sheet.name, port.id),
    };
    let finding = found.report(&RULE, at!(spec.cable), message, format!("a {has} cable"));
    finding.measured(rate.value, Worse::Higher);
    finding.because(at!(cable.category), "its category");
    finding.because(at!(port.rate), "the rate of the port");
    if perhaps.is_some() {
        finding.because(at!(spec.outdoor), format!("more than {SURE} with what is indoors"));
        finding.help(format!("take {needs} or better, or have the link tested to 500 MHz"));
        finding.at_most(Severity::Warning);
    } else {
        finding.help(format!("take {needs} or better"));
    }
}
