//! The antenna would hang below or above its support.

use crate::rules::prelude::*;
use crate::sheet::slips;

rule! {
    /// The antenna would hang below or above its support.
    ///
    /// Its height above ground must lie on the free length of the pole, mast or tube it is mounted on.
    ///
    /// Source: geometry.
    severity: Error,
    never_waived: FALLS,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let (end, support) = (sheet.resolved.end, sheet.resolved.support);
    let height = end.height.value;
    let (base, top) = (support.base_height.value, (support.base_height.value + support.free_length.value).tidy());
    if base <= height && height <= top {
        return;
    }
    let (limit, word) = if height < base { (base, "below the base") } else { (top, "above the top") };
    let (has, ends, off) = apart(height, limit);
    let message = format!("end {}: the antenna at {has} is {off} {word} of `{}` at {ends}", sheet.name, support.id);
    let finding = found.report(&RULE, at!(end.height), message, "not on the support");
    finding.measured(height, if height < base { Worse::Lower } else { Worse::Higher });
    finding.because(at!(support.base_height), "its base");
    finding.because(at!(support.free_length), "for this length");
    match slips::of_height(height, sheet.resolved.site.ground_height.value, &support) {
        Some((above, meant)) => {
            finding.help(format!(
                "is this the height {above}? `height` is above the ground of the site: that would be {meant}, which is on `{}`",
                support.id
            ));
            finding.fix_unsafely(vec![(at!(end.height).into(), meant.to_string())], "it moves an antenna");
        }
        None => {
            finding.help(format!("a height from {base} to {top}, or another support"));
        }
    }
}
