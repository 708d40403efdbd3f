//! People may be closer to the front of an antenna than the exposure limit allows.

use crate::rules::prelude::*;
use crate::sheet::KeepClear;

rule! {
    /// People may be closer to the front of an antenna than the exposure limit allows.
    ///
    /// The distance is that along the beam at which the power density falls to the limit for whoever passes, with the greatest
    /// power the radio can be set to, sent all the time; where the licence of the hop fixes a ceiling, with the power as set.
    /// The tolerances of power and gain are added, where they are stated; what is lost between radio and antenna is not taken off,
    /// for a coupler may come out again. It is zero where the density at the cover is within the limit already. All of the half of
    /// the world the antenna faces is taken, not the beam alone. Only spots are judged that the site lists under `people`:
    /// what is not listed is not assessed.
    ///
    /// Move the antenna, lower the power, or fence the spot off. Check with whoever is responsible for exposure on site.
    ///
    /// Source: 10 W/m² for the public, 47 CFR 1.1310 and ICNIRP 2020 alike (both second-hand); distance by FCC OET Bulletin
    /// 65 (from memory).
    severity: Error,
    never_waived: PROTECTS_PEOPLE,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let Some(KeepClear(reach)) = sheet.people.public_distance.get() else { return };
    let own = sheet.resolved;
    let (site, end, dish, radio) = (own.site, own.end, own.antenna, own.radio);
    for near in &sheet.too_near {
        let i = near.number;
        let spot = &site.people[i];
        let (has, keep, by) = apart(near.distance, reach);
        let message =
            format!("end {}: {} is {has} from the antenna, {by} inside the {keep} to keep", sheet.name, spot.title);
        let finding = found.report(&RULE, at!(site.people[i].distance), message, "within reach of the beam");
        finding.measured(near.distance, Worse::Lower);
        let raised = sheet.people.set_power.get().is_some_and(|most| most > end.transmit_power.value);
        if raised {
            finding.because(at!(radio.transmit_power), "with the greatest power it can be set to");
        } else {
            finding.because(at!(end.transmit_power), "with this power");
        }
        finding.because(at!(dish.gain), "and this gain");
        finding.because(at!(end.height), "the antenna is this high");
        finding.because(at!(site.people[i].height), "and a head there so");
        finding.help(
            "keep people out of it, move the antenna, or write a ceiling into the licence and set less; check with whoever is \
             responsible for exposure here",
        );
    }
}
