//! Two pluggables do not speak to each other, or not over this fibre, or not with this port.

use crate::rules::prelude::*;
use crate::sheet::{FibreSheet, Reason};
use crate::spec::{Duty, Interface};

rule! {
    /// Two pluggables do not speak to each other, or not over this fibre, or not with this port.
    ///
    /// Both ends need the same interface; on a single fibre one end has the one half and the other the other (`-D` and `-U`). A
    /// multimode interface needs multimode fibre, and a slow cage takes no fast pluggable. Air that is hotter or colder than a
    /// pluggable bears makes it fail in a cabinet in the sun.
    ///
    /// Source: IEEE 802.3-2022; the data sheets of pluggable and radio.
    severity: Error,
    waivable: SERVICE,
    check: End(check),
}

fn check(hop: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    for fibre in &sheet.fibre_runs {
        partners(sheet, fibre, found);
        port(sheet, fibre, found);
        climate(hop, sheet, fibre, found);
    }
}

fn partners(sheet: &EndSheet<'_>, fibre: &FibreSheet<'_>, found: &mut Findings) {
    let (run, cable) = (fibre.resolved.run, fibre.resolved.fibre);
    let (end, name) = (sheet.name, &run.spec.port);
    let [here, there]: [Interface; 2] = [run.spec.here.interface, run.spec.there.interface];
    if here.partner() != there {
        let (one, other) = (here.word(), there.word());
        let message =
            format!("end {end}: on the fibre to port `{name}`, {one} here and {other} there do not go together");
        let finding = found.report(&RULE, at!(run.there.interface), message, "not its partner");
        finding.about("partner").because(at!(run.here.interface), "here");
        finding.help(format!("{} at the other end", here.partner().word()));
    }
    let none = fibre.lines.reach.value().err();
    if none.is_some_and(|missing| matches!(missing.reason, Reason::NoReach { .. })) {
        let category = cable.category.word();
        let message = format!("end {end}: {} does not run on the {category} to port `{name}`", here.word());
        let finding = found.report(&RULE, at!(run.here.interface), message, "not over this fibre");
        finding.about("fibre").because(at!(cable.category), "this fibre");
        finding.because(at!(run.fibre), "used here");
        finding.help("an interface for this kind of fibre, or the fibre for this interface");
    }
}

fn port(sheet: &EndSheet<'_>, fibre: &FibreSheet<'_>, found: &mut Findings) {
    let (run, port) = (fibre.resolved.run, fibre.resolved.port);
    let interface = run.spec.here.interface;
    if !port.carries.contains(&Duty::Data) {
        let message = format!("end {}: fibre to port `{}`, which takes no data", sheet.name, port.id);
        let finding = found.report(&RULE, at!(run.port), message, "takes no data");
        finding.about("data").because(at!(port.carries), "what it takes");
        finding.help("lead it to a port for data");
    }
    let Some(rate) = port.rate.as_ref().filter(|rate| rate.value < interface.rate()) else { return };
    let (word, runs) = (interface.word(), interface.rate());
    let message = format!("end {}: {word} runs at {runs}, port `{}` at {rate}", sheet.name, port.id);
    let finding = found.report(&RULE, at!(run.here.interface), message, "faster than the port");
    finding.about("rate").because(at!(port.rate), "the rate of the port");
    finding.help(format!("pluggables of no more than {rate} on both ends"));
}

/// The one in the radio stands in the air of the network.
fn climate(hop: &HopSheet<'_>, sheet: &EndSheet<'_>, fibre: &FibreSheet<'_>, found: &mut Findings) {
    let (run, network) = (fibre.resolved.run, hop.resolved.network);
    let Some(window) = &run.spec.here.temperature else { return };
    let coldest = network.climate.coldest_air.as_ref().map(|given| given.value);
    let Some(words) = climate_outside(window, coldest, sheet.hottest_air.value()) else { return };
    let message = format!("end {}: for the pluggable in port `{}`, {words}", sheet.name, run.spec.port);
    let finding = found.report(&RULE, at!(run.here.temperature), message, "does not bear the air here");
    finding.about("temperature");
    finding.help("a pluggable for the industrial range of temperatures");
}
