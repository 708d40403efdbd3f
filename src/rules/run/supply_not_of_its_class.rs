//! A supply contradicts the standard or the class it claims.

use crate::rules::prelude::*;
use crate::spec::Standard;

rule! {
    /// A supply contradicts the standard or the class it claims.
    ///
    /// | standard | classes | least voltage | most power |
    /// | --- | --- | --- | --- |
    /// | 802.3af | 0 to 3 | 44 V | 15.4 W |
    /// | 802.3at | to 4 | 50 V | 30 W |
    /// | 802.3bt | to 8 | 50 V, 52 V from class 7 | 99.9 W |
    ///
    /// Classes 5 and up take four pairs, and no port goes above 57 V. A supply of other figures is misread or is none of
    /// that kind.
    ///
    /// Source: IEEE 802.3-2022, clauses 33 and 145 (second-hand).
    severity: Error,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let Some(supply) = run.resolved.supply.filter(|_| run.carries(Service::Power)) else { return };
    let spec = run.resolved.run;
    let kind = supply.standard.word();
    let most_class = match supply.standard {
        Standard::Af => 3,
        Standard::At => 4,
        Standard::Bt => 8,
        Standard::Passive => 0,
    };
    let passive = supply.standard == Standard::Passive;
    let (class, most_voltage) = (run.classes.granted, run.classes.port_voltage);
    let most_power = match supply.standard {
        Standard::Af => 15.4,
        Standard::At => 30.0,
        Standard::Bt | Standard::Passive => run.classes.port_power.0,
    };
    let (power, least) = (supply.power.value, supply.voltage.min.value);
    let (what, place, help) = if let Some(class) = class.filter(|class| passive || class.number > most_class) {
        let help = if passive {
            "leave `class` out: a passive supply grants none".into()
        } else {
            format!("no class above {most_class}, or another standard")
        };
        (format!("claims class {}, which {kind} does not have", class.number), at!(supply.class), help)
    } else if passive {
        return;
    } else if supply.voltage.max.value > most_voltage {
        let (has, limit, _) = apart(supply.voltage.max.value, most_voltage);
        (
            format!("gives up to {has}, {kind} no more than {limit}"),
            at!(supply.voltage.max),
            format!("no more than {limit}, or call it `passive`"),
        )
    } else if let Some(class) = class.filter(|class| power < class.source_power) {
        let (has, wants, _) = apart(power, class.source_power);
        (
            format!("gives {has}, class {} asks for {wants}", class.number),
            at!(supply.power),
            format!("{wants} or more, or a lower class"),
        )
    } else if power.0 > most_power {
        let help = format!("no more than {most_power} W at a port, or another standard");
        (format!("gives {power}, {kind} no more than {most_power} W"), at!(supply.power), help)
    } else if let Some(class) = class.filter(|class| class.pairs > supply.pairs) {
        (
            format!("powers {} pairs, class {} takes {}", supply.pairs, class.number, class.pairs),
            at!(supply.pairs),
            format!("{} pairs, or a lower class", class.pairs),
        )
    } else {
        let wants =
            class.map_or(if supply.standard == Standard::Af { 44.0 } else { 50.0 }, |class| class.source_voltage.0);
        // A class below 4 may come from a port of a later standard, which keeps to its own least voltage.
        if least.0 >= wants {
            return;
        }
        let (has, wants, _) = apart(least, Volts(wants));
        (
            format!("gives as little as {has}, {kind} no less than {wants}"),
            at!(supply.voltage.min),
            format!("{wants} or more, or call it `passive`"),
        )
    };
    let message = format!("end {}: supply `{}` {what}", sheet.name, supply.id);
    let finding = found.report(&RULE, place, message, "against its own standard");
    finding.because(at!(supply.standard), "what it claims to be");
    finding.because(at!(spec.supply), "used here");
    finding.help(help);
}
