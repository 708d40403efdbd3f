//! A cable is asked to carry what it has no conductors for.

use crate::rules::prelude::*;
use crate::spec::Construction;

rule! {
    /// A cable is asked to carry what it has no conductors for.
    ///
    /// Data takes four balanced pairs of a category. A two-core cable brings direct current over its two cores and nothing
    /// else, from a supply of two poles (`pairs: 1`).
    ///
    /// Source: IEEE 802.3; the construction on the cable's data sheet.
    severity: Error,
    waivable: SERVICE,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let (spec, cable) = (run.resolved.run, run.resolved.cable);
    let two_core = cable.construction == Construction::TwoCore;
    if run.carries(Carried::Data) && (two_core || cable.category.is_none()) {
        let message = format!("end {}: data over cable `{}`, which has no category", sheet.name, cable.id);
        let finding = found.report(&RULE, at!(spec.cable), message, "carries no data");
        let why = if two_core { at!(cable.construction) } else { at!(cable.category) };
        finding.about("data").because(why, if two_core { "two cores" } else { "none is stated" });
        finding.because(at!(spec.carries), "asks it for data");
        finding.help("take a cable of four pairs and state its `category`, or lead the data another way");
    }
    let feeds = run.resolved.supply.filter(|_| run.carries(Carried::Power));
    let Some(supply) = feeds.filter(|supply| supply.pairs > cable.pairs()) else { return };
    let message = format!(
        "end {}: supply `{}` feeds {} pairs, and cable `{}` has two cores",
        sheet.name, supply.id, supply.pairs, cable.id
    );
    let finding = found.report(&RULE, at!(spec.cable), message, "two cores");
    finding.about("power").because(at!(supply.pairs), "the pairs it feeds");
    finding.because(at!(spec.supply), "fed by this");
    finding.help("take a supply of two poles (`pairs: 1`), or a cable of four pairs");
}
