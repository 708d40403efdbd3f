//! Of a cable's diameter only a range is known, and no gland insert of the port seals all of it.

use crate::rules::prelude::*;

rule! {
    /// Of a cable's diameter only a range is known, and no gland insert of the port seals all of it.
    ///
    /// No standard sets the outside diameter of a cable, so a standard part gives the range that is on sale. What is bought
    /// may lie at either end of it: an insert that holds one end only may leak or not close. Once the cable is chosen, give
    /// it a document of its own with the diameter of its sheet, and the rule judges that.
    ///
    /// Source: the insert sizes on the radio's data sheet; diameters are common practice, no source.
    severity: Warning,
    waivable: EQUIPMENT,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let (spec, port, cable) = (run.resolved.run, run.resolved.port, run.resolved.cable);
    let sealed = port.glands.is_empty() || port.glands.iter().any(|gland| cable.fits(&gland.cable));
    let Some(least) = cable.least_diameter.as_ref().filter(|_| !sealed) else { return };
    let message = format!(
        "end {}: a cable of {} is not known to seal in port `{}`: no insert holds both ends of the range",
        sheet.name,
        cable.across(),
        port.id
    );
    let finding = found.report(&RULE, at!(spec.cable), message, "which of them is bought?");
    finding.because(at!(cable.least_diameter), format!("{least} at least"));
    finding.because(at!(cable.outside_diameter), format!("{} at most", cable.outside_diameter));
    finding.because(at!(port.glands), "the inserts of the port");
    let windows: Vec<String> = port.glands.iter().map(|gland| format!("{} ({})", gland.cable, gland.title)).collect();
    finding.help(format!(
        "describe the cable that is bought in a document of its own; these seal: {}",
        windows.join(" or ")
    ));
}
