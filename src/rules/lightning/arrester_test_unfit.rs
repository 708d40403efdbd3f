//! A surge arrester was not tested for what lightning may put on it where it stands.

use crate::network::Part;
use crate::rules::prelude::*;
use crate::spec::{Arrester, Entry, ImpulseCategory, Run};
use crate::units::Kiloamperes;

rule! {
    /// A surge arrester was not tested for what lightning may put on it where it stands.
    ///
    /// Where the antenna may be struck, or its support is bonded to a lightning protection system, part of a lightning current may
    /// come along the cable: its arresters need a test of category D1 (10/350 µs). In the protected volume and apart from the
    /// system only what a strike nearby induces comes along: C2 (8/20 µs), for which a test of D1 does as well. Where the
    /// designer of the protection states a current for a line (`line_current`), the current of the test is held against it.
    /// Nothing is judged where nobody says whether the structure has a system, nor of a cord between two things on one support.
    ///
    /// Source: IEC 61643-21 table 3 and IEC 61643-22 (from memory, not seen).
    severity: Warning,
    waivable: EQUIPMENT,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let spec = run.resolved.run;
    let (Some(wanted), true) = (sheet.lightning.test, asks_for_a_test(spec)) else { return };
    let end = sheet.resolved.end;
    let most = sheet.lightning.lines.line_current.value().ok();
    let why = why(wanted);
    for (i, &arrester) in run.resolved.arresters.iter().enumerate().filter(|(_, one)| !one.impulse_tests.is_empty()) {
        let tested = tested(arrester, wanted);
        let wrong = match (tested, most) {
            (None, _) => format!("has no impulse test of category {}, {why}", wanted.word()),
            (Some(tested), Some(most)) if tested < most.value => {
                let (has, wants, short) = apart(tested, most.value);
                format!("was tested with {has}, {short} less than the {wants} counted on a line")
            }
            (Some(_), _) => continue,
        };
        let message =
            format!("end {}: arrester `{}` in the run to port `{}` {wrong}", sheet.name, arrester.id, spec.port);
        let finding = found.report(&RULE, at!(spec.arresters[i].model), message, "not for what may come here");
        if let Some(tested) = tested {
            finding.measured(tested, Worse::Lower);
            finding.because(at!(end.lightning.line_current), "counted on a line");
        }
        finding.because(at!(arrester.impulse_tests), "its tests");
        finding.because(sheet.lightning.system_at, "the structure");
        finding.help(match most {
            Some(most) => format!("take an arrester tested by category {} with {most} or more", wanted.word()),
            None => format!("take an arrester tested by category {}", wanted.word()),
        });
    }
}

/// Whether a run may bring anything of a strike into a building or a cabinet.
pub(super) fn asks_for_a_test(run: Part<'_, Run>) -> bool {
    run.outdoor.value.0 > 0.0 && run.enters() != Entry::None
}

/// The greatest current of a test that answers the one that is asked for.
fn tested(arrester: &Arrester, wanted: ImpulseCategory) -> Option<Kiloamperes> {
    let tests = arrester.impulse_tests.iter().filter(|test| test.category.answers(wanted));
    tests.map(|test| test.current.value).reduce(|one, other| if other > one { other } else { one })
}

fn why(wanted: ImpulseCategory) -> &'static str {
    match wanted {
        ImpulseCategory::D1 => "and part of a lightning current may come along the cable",
        _ => "and a strike nearby induces surges in the cable",
    }
}
