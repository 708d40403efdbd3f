//! Nobody says which impulse tests a surge arrester has passed.

use super::arrester_test_unfit::asks_for_a_test;
use crate::rules::prelude::*;

rule! {
    /// Nobody says which impulse tests a surge arrester has passed, where it is known what may come along its cable.
    ///
    /// Whether the structure has a lightning protection system is stated, so it is known which test its arresters need. The
    /// tests are on the arrester's data sheet: category and current, such as `D1 2.5 kA`.
    ///
    /// Source: IEC 61643-21 (from memory, not seen).
    severity: Warning,
    never_waived: NOT_JUDGED,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let spec = run.resolved.run;
    let (Some(wanted), true) = (sheet.lightning.test, asks_for_a_test(spec)) else { return };
    let mut told = Vec::new();
    for &arrester in &run.resolved.arresters {
        if !arrester.impulse_tests.is_empty() || told.contains(&arrester.at) {
            continue;
        }
        told.push(arrester.at);
        // Said of the arrester: its sheet has to be looked at once.
        let message = format!(
            "arrester `{}`: its impulse tests are not stated, and category {} is required where it stands",
            arrester.id,
            wanted.word()
        );
        let finding = found.report(&RULE, at!(arrester.impulse_tests), message, "no `impulse_tests` here");
        finding.because(sheet.lightning.system_at, "the structure where it stands");
        finding.help("add `impulse_tests:` from its data sheet, such as `[{ category: D1, current: 2.5 kA }]`");
    }
}
