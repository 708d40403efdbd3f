//! A two-core run has no fuse, or nobody says which core is which.

use crate::rules::prelude::*;
use crate::spec::Construction;

rule! {
    /// A two-core run has no fuse, or nobody says which core is which.
    ///
    /// A battery drives a short circuit with hundreds of amperes: the cable burns unless a fuse at the supply stops it. And a crew
    /// that is not told which core is the positive one finds the reversal when the radio does not start, or never again.
    ///
    /// A fuse is held against the current that the cable bears (`rated_current`); where nobody states it, the fuse is not judged.
    ///
    /// Source: IEC 60364-4-43 (from memory); common practice, no source.
    severity: Warning,
    never_waived: NOT_JUDGED,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let (spec, cable) = (run.resolved.run, run.resolved.cable);
    if cable.construction != Construction::TwoCore || !run.carries(Carried::Power) {
        return;
    }
    if spec.spec.fuse.is_some() && cable.rated_current.is_none() {
        let message = format!(
            "end {}: what the cable to port `{}` bears is not said, so its fuse is not judged",
            sheet.name, spec.port
        );
        let finding = found.report(&RULE, at!(cable.rated_current), message, "none is stated");
        finding.about("current").known_at(at!(spec.port)).because(at!(spec.fuse), "the fuse before it");
        finding.help("add `rated_current: 16 A` from the sheet of the cable or the code of the place");
    }
    if spec.spec.fuse.is_none() {
        let message = format!("end {}: no fuse is stated for the two-core run to port `{}`", sheet.name, spec.port);
        let finding = found.report(&RULE, at!(spec.fuse), message, "none is stated");
        finding.about("fuse").because(at!(cable.construction), "two cores");
        finding.help("add `fuse: { rated: 3 A, pole: negative, voltage: 60 V }`, in the pole that is not earthed");
    }
    if spec.spec.cores.is_none() {
        let message = format!("end {}: nobody says which core to port `{}` is positive", sheet.name, spec.port);
        let finding = found.report(&RULE, at!(spec.cores), message, "not stated");
        finding.about("cores").because(at!(cable.construction), "two cores");
        finding.help("add `cores: { positive: red, negative: blue }` as they are on the cable");
    }
}
