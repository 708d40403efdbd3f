//! A power line is so near that something could fall onto it.

use crate::rules::prelude::*;
use crate::units::Metres;

rule! {
    /// A power line is so near that something could fall onto it.
    ///
    /// A pole, a ladder or a dish that falls reaches as far as it is high. Beyond that, `limits.power_line` is kept. Stop
    /// and ask the owner of the line before anything is raised: only they can switch it off or shield it. Only lines are
    /// judged that the site lists; what is not listed is not assessed.
    ///
    /// Source: that what falls reaches as far as it is high is common practice; ten feet for lines up to 50 kV is 29 CFR
    /// 1926.1408 (second-hand), more for higher voltages. Local rules may ask for more.
    severity: Warning,
    never_waived: PROTECTS_PEOPLE,
    check: End(check),
}

fn check(hop: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let (site, end, support) = (sheet.resolved.site, sheet.resolved.end, sheet.resolved.support);
    let keep = &hop.target.power_line;
    let top = (support.base_height.value + support.free_length.value).tidy();
    let tall = if end.height.value > top { end.height.value } else { top };
    let reach: Metres = (tall + keep.value()).tidy();
    for (i, line) in site.power_lines.iter().enumerate() {
        if line.distance.value >= reach {
            continue;
        }
        let (has, needs, by) = apart(line.distance.value, reach);
        let message = format!("end {}: {} is {has} away, {by} less than the {needs} to keep", sheet.name, line.title);
        let finding = found.report(&RULE, at!(site.power_lines[i].distance), message, "could be reached by what falls");
        finding.measured(line.distance.value, Worse::Lower);
        finding.because(at!(support.free_length), format!("up to {tall} above ground, and {} more", keep.given));
        finding.help("stop: ask the owner of the line to switch it off or shield it before anything is raised");
    }
}
