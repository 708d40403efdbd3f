//! A fixing of a support must hold more than it bears.

use crate::place::{Place, Placed as _};
use crate::rules::prelude::*;
use crate::sheet::Line;
use crate::units::{Given, Newtons};

rule! {
    /// A fixing of a support must hold more than it bears in the survival wind.
    ///
    /// What it must hold follows from the wind on the support and all that the hops of the network put on it, bare or with ice, by
    /// plain statics: all fixings share alike. What it bears is stated by a structural engineer. A pass proves nothing: wall,
    /// edge distance, prying and corrosion are for that engineer to confirm.
    ///
    /// Source: equilibrium; the pressure of the wind as its line says.
    severity: Error,
    never_waived: FALLS,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let (lines, support) = (&sheet.fixings, sheet.resolved.support);
    let place = |key: &'static &'static str| support.place().below(key, &[]);
    one(sheet, ("pull", &lines.tension, &lines.bears_tension, place(&"fixings.bears.tension")), found);
    one(sheet, ("shear", &lines.shear, &lines.bears_shear, place(&"fixings.bears.shear")), found);
}

fn one(
    sheet: &EndSheet<'_>,
    (what, needs, bears, place): (&str, &Line<Newtons>, &Line<Given<Newtons>>, Place),
    found: &mut Findings,
) {
    let (Some(needs), Ok(bears)) = (needs.get(), bears.value()) else { return };
    if needs <= bears.value {
        return;
    }
    let support = sheet.resolved.support;
    let (has, limit, by) = apart(needs, bears.value);
    let message = format!(
        "end {}: each fixing of `{}` must hold {has} of {what} in the survival wind, {by} more than the {limit} it bears{}",
        sheet.name,
        support.id,
        with_others(sheet)
    );
    let finding = found.report(&RULE, place, message, "stated");
    finding.measured(needs, Worse::Higher);
    finding.because(at!(support.fixings), "these fixings");
    finding.because(at!(support.free_length), "the lever the wind has");
    push_others(sheet, finding);
    finding.help("set the rows further apart, take more or stronger fixings or a shorter tube, and have a structural engineer confirm it");
}
