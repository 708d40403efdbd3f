//! A screw is to be tightened harder than it bears.

use crate::place::Place;
use crate::rules::prelude::*;
use crate::spec::Fastener;

rule! {
    /// A screw is to be tightened harder than it bears.
    ///
    /// A screw comes to two thirds of its proof load at a torque that depends on its `class` and on the `finish` of its
    /// thread; beyond it the screw, or the casting below, gives. More likely the figure is of another thread or in another
    /// unit. Where class or finish is not stated the weakest screw that it may be is taken (stainless steel of class 70,
    /// dry), and that is no more than advice unless the strongest (10.9, galvanised) would not bear it either.
    ///
    /// Source: T = K d F at 65 % of the proof load, with K = 0.20 dry, 0.25 galvanised, 0.15 oiled, 0.12 with anti-seize
    /// (common practice, second-hand); proof stress by ISO 898-1:2013 (8.8: 580 MPa to M16, 600 above), ISO 3506-1:2020 and
    /// SAE J429 (second-hand). The maker's own torque rules.
    severity: Warning,
    never_waived: FALLS,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let own = sheet.resolved;
    let (bracket, antenna, support) = (own.bracket, own.antenna, own.support);
    for (i, screw) in bracket.fasteners.iter().enumerate() {
        let at = [at!(bracket.fasteners[i].torque), at!(bracket.fasteners[i].thread)];
        one(&format!("bracket `{}`", bracket.id), screw, at, found);
    }
    for (i, screw) in antenna.fasteners.iter().enumerate() {
        let at = [at!(antenna.fasteners[i].torque), at!(antenna.fasteners[i].thread)];
        one(&format!("antenna `{}`", antenna.id), screw, at, found);
    }
    for (i, screw) in support.fasteners.iter().enumerate() {
        let at = [at!(support.fasteners[i].torque), at!(support.fasteners[i].thread)];
        one(&format!("site `{}`, support `{}`", own.site.id, support.id), screw, at, found);
    }
}

fn one(owner: &str, screw: &Fastener, [torque_at, thread_at]: [Place; 2], found: &mut Findings) {
    let Some([least, most]) = crate::sheet::greatest_torque(screw) else { return };
    if screw.torque.value <= least {
        return;
    }
    let sure = screw.torque.value > most;
    let (has, limit, by) = apart(screw.torque.value, if sure { most } else { least });
    let such = if least == most || sure { "such a screw bears" } else { "the weakest that it may be bears" };
    let message = format!("{owner}: {has} for {} of {}, {by} more than the {limit} {such}", screw.title, screw.thread);
    let finding = found.report(&RULE, torque_at, message, "more than it bears");
    finding.measured(screw.torque.value, Worse::Higher);
    finding.because(thread_at, "this thread");
    if sure {
        finding.help("check thread, figure and unit on the maker's sheet");
    } else {
        finding.help("state `class` and `finish` of the screw, or check thread, figure and unit on the maker's sheet");
        finding.at_most(Severity::Advice);
    }
}
