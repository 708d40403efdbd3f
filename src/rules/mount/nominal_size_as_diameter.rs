//! The name of a pipe size was written for its diameter.

use crate::rules::prelude::*;
use crate::sheet::pipe_named;

rule! {
    /// The name of a pipe size was written for its diameter.
    ///
    /// A pipe of nominal 2 in measures 60.3 mm outside, one of DN 50 as well. A clamp bought for 50 mm does not close on
    /// it. Measure the tube with a caliper or a tape round it. If it does measure what is written, state its
    /// `wall_thickness` too, and the rule is silent.
    ///
    /// Source: ASME B36.10M and EN 10255, as open section tables quote them; that the name was meant is common practice.
    severity: Warning,
    waivable: DATA,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let (site, support) = (sheet.resolved.site, sheet.resolved.support);
    let Some((name, outside)) = pipe_named(support.outside_diameter.value) else { return };
    if support.wall_thickness.is_some() {
        return;
    }
    let message = format!(
        "site `{}`: `{}` of {} is the name of a pipe that measures {outside}",
        site.id, support.id, support.outside_diameter
    );
    let finding = found.report(&RULE, at!(support.outside_diameter), message, format!("{name} is {outside} across"));
    finding.help(format!("measure it: write {outside}, or state its `wall_thickness` if this is its true diameter"));
}
