//! A fuse does not protect its cable, or does not hold.

use crate::rules::prelude::*;
use crate::spec::{Fuse, Pole, Wiring};

rule! {
    /// A fuse does not protect its cable, does not hold, or sits in the earthed pole.
    ///
    /// It has to carry the current of the run at the least voltage of the supply, must be rated no higher than the cable, has to be
    /// rated for the direct voltage it breaks, and sits in the pole that is not earthed: in a plant whose positive pole is earthed
    /// (-48 V) that is the negative one. A fuse in the earthed pole leaves the other one live when it has blown.
    ///
    /// Source: IEC 60364-4-43, 433.1: current of the load ≤ rating ≤ current of the cable (from memory); a fuse in the
    /// unearthed pole is common practice, no source.
    severity: Error,
    never_waived: SHOCKS,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let (spec, cable) = (run.resolved.run, run.resolved.cable);
    let Some(fuse) = &spec.spec.fuse else { return };
    let end = sheet.name;
    let rated = fuse.rated.value;
    if let Some(current) = run.lines.current.get().filter(|current| *current > rated) {
        let (has, carries, over) = apart(current, rated);
        let message = format!("end {end}: {has} flow through a fuse of {carries}, {over} more than it carries");
        let finding = found.report(&RULE, at!(spec.fuse), message, "blows");
        finding.about("current").measured(current, Worse::Higher);
        finding.help(format!("a fuse of more than {}, if the cable bears it", current.rounded_up()));
    }
    if let Some(bears) = cable.rated_current.as_ref().filter(|bears| bears.value < rated) {
        let (has, bears, over) = apart(rated, bears.value);
        let message = format!("end {end}: a fuse of {has} before a cable that bears {bears}, {over} too much");
        let finding = found.report(&RULE, at!(spec.fuse), message, "does not protect it");
        finding.about("cable").measured(rated, Worse::Higher);
        finding.because(at!(cable.rated_current), "what the cable bears");
        finding.help(format!("a fuse of no more than {bears}, or a thicker cable"));
    }
    let Some(supply) = run.resolved.supply else { return };
    if let Some(pole) = earthed(supply.wiring).filter(|pole| *pole == fuse.pole) {
        let message = format!("end {end}: the fuse is in the {} pole, which is earthed", pole.word());
        let finding = found.report(&RULE, at!(spec.fuse), message, "leaves the other pole live");
        finding.about("pole").because(at!(supply.wiring), "the earthed pole");
        finding.help(format!("put it in the {} pole", other(pole).word()));
    }
    voltage(sheet, run, fuse, found);
}

/// A fuse breaks no more than its direct voltage.
fn voltage(sheet: &EndSheet<'_>, run: &RunSheet<'_>, fuse: &Fuse, found: &mut Findings) {
    let (Some(supply), Some(breaks)) = (run.resolved.supply, &fuse.voltage) else { return };
    let most = supply.voltage.max.value;
    if breaks.value >= most {
        return;
    }
    let (has, breaks, over) = apart(most, breaks.value);
    let spec = run.resolved.run;
    let message = format!("end {}: {has} before a fuse that breaks {breaks}, {over} too much", sheet.name);
    let finding = found.report(&RULE, at!(spec.fuse), message, "does not break it");
    finding.about("voltage").measured(most, Worse::Higher);
    finding.because(at!(supply.voltage.max), "the greatest voltage of the supply");
    finding.help(format!("a fuse for no less than {has} of direct current"));
}

/// The pole of a plant that is earthed, where that is said.
const fn earthed(wiring: Option<Wiring>) -> Option<Pole> {
    match wiring {
        Some(Wiring::NegativeEarthed) => Some(Pole::Negative),
        Some(Wiring::PositiveEarthed) => Some(Pole::Positive),
        _ => None,
    }
}

const fn other(pole: Pole) -> Pole {
    match pole {
        Pole::Positive => Pole::Negative,
        Pole::Negative => Pole::Positive,
    }
}
