//! An outdoor run lacks a surge arrester at one of its ends.

use crate::rules::prelude::*;
use crate::spec::{Entry, RunPlace};

rule! {
    /// An outdoor run lacks a surge arrester at one of its ends.
    ///
    /// One arrester sits within a metre or so of the radio, the other where the cable enters the building, each bonded to
    /// the earth there. An arrester at one end protects that end only. A run that enters nothing has a rule of its own,
    /// `jumper-unprotected`.
    ///
    /// Source: common practice, no source; IEC 61643-22 guides the choice.
    severity: Warning,
    waivable: EQUIPMENT,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let spec = run.resolved.run;
    if spec.outdoor.value.0 <= 0.0 || spec.enters() == Entry::None {
        return;
    }
    let lacks = |place| !spec.arresters.iter().any(|arrester| arrester.at == place);
    let (near, far) = (lacks(RunPlace::Radio), lacks(RunPlace::Entry));
    let (where_to, lines) = match (near, far) {
        (true, true) => ("at the radio and at the entry", "`at: radio` and one `at: entry`"),
        (true, false) => ("at the radio", "`at: radio`"),
        (false, true) => ("where it enters the building", "`at: entry`"),
        (false, false) => return,
    };
    let message = format!("end {}: the run to port `{}` has no surge arrester {where_to}", sheet.name, spec.port);
    let finding = found.report(&RULE, at!(spec.arresters), message, format!("no arrester {where_to}"));
    finding.measured(spec.outdoor.value, Worse::Higher);
    finding.because(at!(spec.outdoor), "this much of it is outdoors");
    finding.help(format!("add an arrester {lines} under `arresters`"));
}
