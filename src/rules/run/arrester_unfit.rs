//! A surge arrester does not pass what the run carries.

use crate::rules::prelude::*;

rule! {
    /// A surge arrester does not pass what the run carries.
    ///
    /// It must pass the line rate of the port, the supply's voltage, and power on as many pairs as the supply uses. One that
    /// passes less brings the link up slow, or not at all.
    ///
    /// Source: the ratings on the arrester's data sheet.
    severity: Error,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let (spec, port) = (run.resolved.run, run.resolved.port);
    let supply = run.resolved.supply.filter(|_| run.carries(Service::Power));
    let arresters = &run.resolved.arresters;
    let mut demands = Vec::new();
    demands.extend(port.rate.as_ref().filter(|_| run.carries(Service::Data)).map(ToString::to_string));
    demands.extend(supply.map(|supply| format!("power on {} pairs, {} or more", supply.pairs, supply.voltage.max)));
    for (i, &arrester) in arresters.iter().enumerate() {
        // Of one model at several places there is one thing to say.
        if arresters[..i].iter().any(|earlier| earlier.at == arrester.at) {
            continue;
        }
        let rate = port.rate.as_ref().filter(|rate| run.carries(Service::Data) && arrester.rate.value < rate.value);
        let (what, place, limit) = if let Some(rate) = rate {
            (format!("passes {}, the port runs at {rate}", arrester.rate), at!(arrester.rate), at!(port.rate))
        } else if let Some(supply) = supply.filter(|supply| arrester.pairs < supply.pairs) {
            (
                format!("passes power on {} pairs of {}", arrester.pairs, supply.pairs),
                at!(arrester.pairs),
                at!(supply.pairs),
            )
        } else if let Some(supply) = supply.filter(|supply| arrester.voltage.value < supply.voltage.max.value) {
            let what = format!("conducts above {}, the supply gives up to {}", arrester.voltage, supply.voltage.max);
            (what, at!(arrester.voltage), at!(supply.voltage.max))
        } else {
            continue;
        };
        let message = format!("end {}: arrester `{}` {what}", sheet.name, arrester.id);
        let finding = found.report(&RULE, at!(spec.arresters[i].model), message, "not fit for this run");
        for (j, _) in arresters.iter().enumerate().skip(i + 1).filter(|(_, later)| later.at == arrester.at) {
            finding.because(at!(spec.arresters[j].model), "nor here");
        }
        finding.because(place, "its rating");
        finding.because(limit, "what it must pass");
        finding.help(format!("take an arrester for {}", demands.join(", ")));
    }
}
