//! A run between two things outdoors is long and has no arresters.

use crate::rules::prelude::*;
use crate::spec::{Entry, RunPlace};

/// How long it may be without: common practice, no source.
const SHORT: Metres = Metres(3.0);

rule! {
    /// A run between two things outdoors is long and has no arrester at one of its ends.
    ///
    /// A cord of a metre or two between two radios on one bonded support sees hardly any difference of voltage when
    /// lightning strikes nearby. A longer one does, and each of its ends then needs an arrester that is bonded there. Up to
    /// 3 m nothing is asked for.
    ///
    /// Source: common practice, no source.
    severity: Warning,
    waivable: EQUIPMENT,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let spec = run.resolved.run;
    if spec.enters() != Entry::None || spec.outdoor.value <= SHORT {
        return;
    }
    let lacks = |places: &[RunPlace]| !spec.arresters.iter().any(|arrester| places.contains(&arrester.at));
    let (near, far) = (lacks(&[RunPlace::Radio]), lacks(&[RunPlace::FarEnd, RunPlace::Entry]));
    let (where_to, lines) = match (near, far) {
        (true, true) => ("at either end", "`at: radio` and one `at: far-end`"),
        (true, false) => ("at this radio", "`at: radio`"),
        (false, true) => ("at its far end", "`at: far-end`"),
        (false, false) => return,
    };
    let (has, short, over) = apart(spec.outdoor.value, SHORT);
    let message = format!(
        "end {}: the run to port `{}` is {has} outdoors, {over} over {short}, and has no arrester {where_to}",
        sheet.name, spec.port
    );
    let finding = found.report(&RULE, at!(spec.arresters), message, format!("no arrester {where_to}"));
    finding.measured(spec.outdoor.value, Worse::Higher);
    finding.because(at!(spec.outdoor), "this much of it is outdoors");
    finding.help(format!("add an arrester {lines} under `arresters`, or take a cord of no more than {short}"));
}
