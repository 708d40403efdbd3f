//! A supply contradicts the standard or the class it claims.

use crate::finding::Measured;
use crate::network::Document;
use crate::place::Place;
use crate::rules::prelude::*;
use crate::sheet::PowerClass;
use crate::spec::{Standard, Supply};

rule! {
    /// A supply contradicts the standard or the class it claims.
    ///
    /// | standard | classes | least voltage |
    /// | --- | --- | --- |
    /// | 802.3af | 0 to 3 | 44 V |
    /// | 802.3at | to 4 | 50 V |
    /// | 802.3bt | to 8 | 50 V, 52 V from class 7 |
    ///
    /// The power of a class is what its source must at least be able to give: 15.4 W for class 3, 30 W for class 4. One that
    /// gives more is sound; only 802.3bt has a ceiling, 99.9 W. Classes 5 and up take four pairs, and no port goes above
    /// 57 V. A supply of other figures is misread or is none of that kind.
    ///
    /// Source: IEEE 802.3-2022, clauses 33 and 145 (second-hand).
    severity: Error,
    waivable: DATA,
    check: Run(check),
}

/// What is wrong, where, and what would be right.
struct Against {
    /// Tells it apart from what else is wrong with the supply.
    about: &'static str,
    what: String,
    place: Place,
    help: String,
    value: Option<Measured>,
}

/// Holds a supply of the run against one thing that its standard says.
type Test = fn(&RunSheet<'_>, &Document<Supply>) -> Option<Against>;

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let Some(supply) = run.resolved.supply.filter(|_| run.carries(Carried::Power)) else { return };
    let tests: &[Test] = match supply.standard {
        Standard::Passive => &[class],
        _ => &[class, voltage_above, power_below_class, power_above, pairs, voltage_below],
    };
    // All of them: one that waited behind another would look new once that is fixed.
    for against in tests.iter().filter_map(|test| test(run, supply)) {
        let message = format!("end {}: supply `{}` {}", sheet.name, supply.id, against.what);
        let finding = found.report(&RULE, against.place, message, "outside its own standard");
        let spec = run.resolved.run;
        finding.known_at(at!(supply.standard)).about(against.about);
        finding.measured = against.value;
        for place in [at!(supply.class), at!(supply.power), at!(supply.voltage), at!(supply.pairs)] {
            finding.decided_by(place);
        }
        finding.because(at!(supply.standard), "what it claims to be");
        finding.because(at!(spec.supply), "used here");
        finding.help(against.help);
    }
}

/// The greatest class of a standard; a passive supply has none.
const fn greatest(standard: Standard) -> u8 {
    match standard {
        Standard::Af => 3,
        Standard::At => 4,
        Standard::Bt => 8,
        Standard::Passive => 0,
    }
}

/// The class it claims, if its standard has it: against one that it has not, nothing else is held.
fn claimed(run: &RunSheet<'_>, supply: &Document<Supply>) -> Option<PowerClass> {
    run.classes.granted.filter(|class| class.number <= greatest(supply.standard))
}

fn class(run: &RunSheet<'_>, supply: &Document<Supply>) -> Option<Against> {
    let (most, passive) = (greatest(supply.standard), supply.standard == Standard::Passive);
    let class = run.classes.granted.filter(|class| passive || class.number > most)?;
    let help = if passive {
        "leave `class` out: a passive supply grants none".into()
    } else {
        format!("no class above {most}, or another standard")
    };
    let what = format!("claims class {}, which {} does not have", class.number, supply.standard.word());
    Some(Against { about: "class", what, place: at!(supply.class), help, value: None })
}

fn voltage_above(run: &RunSheet<'_>, supply: &Document<Supply>) -> Option<Against> {
    let (voltage, most) = (supply.voltage.max.value, run.classes.port_voltage);
    let (has, limit, _) = (voltage > most).then(|| apart(voltage, most))?;
    Some(Against {
        about: "most voltage",
        value: Some(Measured::of(voltage, Worse::Higher)),
        what: format!("gives up to {has}, {} no more than {limit}", supply.standard.word()),
        place: at!(supply.voltage.max),
        help: format!("no more than {limit}, or call it `passive`"),
    })
}

fn power_below_class(run: &RunSheet<'_>, supply: &Document<Supply>) -> Option<Against> {
    let class = claimed(run, supply).filter(|class| supply.power.value < class.source_power)?;
    let (has, wants, _) = apart(supply.power.value, class.source_power);
    Some(Against {
        about: "power of its class",
        value: Some(Measured::of(supply.power.value, Worse::Lower)),
        what: format!("gives {has}, class {} asks for {wants}", class.number),
        place: at!(supply.power),
        help: format!("{wants} or more, or a lower class"),
    })
}

fn power_above(run: &RunSheet<'_>, supply: &Document<Supply>) -> Option<Against> {
    let (power, most) = (supply.power.value, run.classes.port_power);
    (supply.standard == Standard::Bt && power > most).then(|| Against {
        about: "most power",
        value: Some(Measured::of(power, Worse::Higher)),
        what: format!("gives {power}, {} no more than {most}", supply.standard.word()),
        place: at!(supply.power),
        help: format!("no more than {most} at a port, or another standard"),
    })
}

fn pairs(run: &RunSheet<'_>, supply: &Document<Supply>) -> Option<Against> {
    let class = claimed(run, supply).filter(|class| class.pairs > supply.pairs)?;
    Some(Against {
        about: "pairs",
        value: None,
        what: format!("powers {} pairs, class {} takes {}", supply.pairs, class.number, class.pairs),
        place: at!(supply.pairs),
        help: format!("{} pairs, or a lower class", class.pairs),
    })
}

fn voltage_below(run: &RunSheet<'_>, supply: &Document<Supply>) -> Option<Against> {
    let of_standard = if supply.standard == Standard::Af { 44.0 } else { 50.0 };
    let wants = Volts(claimed(run, supply).map_or(of_standard, |class| class.source_voltage.0));
    let least = supply.voltage.min.value;
    // A class below 4 may come from a port of a later standard, which keeps to its own least voltage.
    let (has, wants, _) = (least < wants).then(|| apart(least, wants))?;
    Some(Against {
        about: "least voltage",
        value: Some(Measured::of(least, Worse::Lower)),
        what: format!("gives as little as {has}, {} no less than {wants}", supply.standard.word()),
        place: at!(supply.voltage.min),
        help: format!("{wants} or more, or call it `passive`"),
    })
}
