//! What of a run resists the current: its cable, hot, and all that is in series with it.

use super::target::Target;
use super::traced::{AsTraced as _, Traced, all, read, see};
use crate::network::{Document, ResolvedRun};
use crate::physics::conductor;
use crate::physics::power_feed::{Feeder, Pairs};
use crate::spec::{Cable, Conductor, Construction};
use crate::units::{Celsius, Metres, Ohms, OhmsPerKilometre, Percent, SquareMillimetres};

/// Resistance of a conductor whose gauge nobody stated: the limit of ANSI/TIA-568 for cable of category 5e to 6A.
const CATEGORY_LIMIT: OhmsPerKilometre = OhmsPerKilometre(93.8);
/// The gauge that this limit is for; wire of it just keeps it.
const CATEGORY_WIRE: SquareMillimetres = SquareMillimetres(0.204_7);
/// Most that IEC 60228 allows cores of class 5 (fine wire) over copper of their nominal gauge, from 1.5 to 10 mm²: 13.3, 7.98,
/// 4.95, 3.30 and 1.91 Ω/km at 20 °C (second-hand).
const FINE_WIRE: f64 = 1.16;
/// Copper of copper-clad aluminium wire by volume: common practice, no source.
const CLADDING: Percent = Percent(10.0);

/// The parts of a run that resist the current.
#[derive(Debug, Clone, Copy)]
pub(super) struct Resistance {
    /// One conductor outdoors, for each kilometre, hot.
    pub(super) outdoors: OhmsPerKilometre,
    /// Cable outdoors.
    pub(super) length: Metres,
    /// What is in series with it: indoor cable, arresters and contacts.
    pub(super) inline: Ohms,
    /// What of that is no cable.
    pub(super) fixed: Ohms,
}

impl Resistance {
    /// That of a run.
    pub(super) fn of(resolved: &ResolvedRun<'_>, target: &Target) -> Traced<Self> {
        let (run, cable) = (resolved.run, resolved.cable);
        let indoors = all((&conductor_at(cable, target.hottest_air.traced()), &read!(run.indoor)))
            .map(|(conductor, length)| conductor * length.unwrap_or(Metres(0.0)));
        let fixed =
            all((&fixed(resolved), &contacts(resolved, target))).map(|(arresters, contacts)| arresters + contacts);
        let outdoors = conductor_at(cable, &hottest_cable(target));
        all((&read!(run.outdoor), &outdoors, &indoors, &fixed)).map(|(length, outdoors, indoors, fixed)| Self {
            outdoors,
            length,
            inline: indoors + fixed,
            fixed,
        })
    }

    /// One conductor from end to end.
    pub(super) fn conductor(&self) -> Ohms {
        self.outdoors * self.length + self.inline
    }

    /// The run as a feeder of power over some of its pairs.
    pub(super) fn feeder(&self, pairs: u8) -> Feeder {
        Feeder { pairs: pairs_of(pairs), conductor: self.outdoors, inline: self.inline }
    }
}

/// The hottest an outdoor cable gets.
pub(super) fn hottest_cable(target: &Target) -> Traced<Celsius> {
    all((&target.hottest_air, &target.practice.sun_on_jacket)).map(|(air, sun)| Celsius(air.0 + sun.0))
}

/// The arresters of a run in series.
fn fixed(resolved: &ResolvedRun<'_>) -> Traced<Ohms> {
    let run = resolved.run;
    let arresters: Vec<Traced<Ohms>> =
        resolved.arresters.iter().map(|&arrester| read!(arrester.series_resistance)).collect();
    let all = Traced::each(&arresters).decided_by(&see!(run.arresters));
    all.map(|arresters| arresters.into_iter().fold(Ohms(0.0), |sum, arrester| sum + arrester))
}

/// A plug in a jack at each end of the run, and two more at every arrester.
fn contacts(resolved: &ResolvedRun<'_>, target: &Target) -> Traced<Ohms> {
    let run = resolved.run;
    all((&see!(run.arresters), &target.practice.contact_resistance)).map(|(arresters, contact)| {
        let contacts = arresters.iter().fold(2.0, |sum, _| sum + 2.0);
        Ohms(contacts * contact.0)
    })
}

/// One conductor of a cable at a temperature: by its sheet, by its gauge, or by the limit of its category.
fn conductor_at(cable: &Document<Cable>, temperature: &Traced<Celsius>) -> Traced<OhmsPerKilometre> {
    let (cores, material) = (see!(cable.construction), see!(cable.material));
    let wire = all((&read!(cable.resistance), &read!(cable.conductor), &material, &cores));
    all((&wire, temperature)).map(|((stated, area, material, cores), temperature)| {
        let factor = conductor::temperature_factor(temperature);
        let at_20 = match (stated, area) {
            (Some(stated), _) => return OhmsPerKilometre(stated.0 * factor),
            (None, Some(area)) => by_gauge(area, *cores),
            (None, None) => CATEGORY_LIMIT,
        };
        let metal = match material {
            Conductor::Copper => 1.0,
            Conductor::CopperCladAluminium => conductor::copper_clad_aluminium_factor(CLADDING),
        };
        OhmsPerKilometre(at_20.0 * metal * factor)
    })
}

/// One conductor of a gauge at 20 °C, of which no sheet gives the resistance.
///
/// A gauge is nominal, wire is drawn thinner, and a pair is longer than its cable for being twisted. Of 24 AWG, 84.2 Ω/km by
/// its area, cable may have 93.8 Ω/km; the same share is added to every other gauge (no source). So a gauge that is stated
/// never promises more than none at all. Cores for direct current may have what IEC 60228 allows fine wire.
fn by_gauge(area: SquareMillimetres, cores: Construction) -> OhmsPerKilometre {
    OhmsPerKilometre(conductor::resistance_per_km(area, Celsius(20.0)).0 * above_nominal(cores))
}

/// The gauge of which one conductor has a resistance at 20 °C, reckoned the same way.
pub(super) fn gauge_of(at_20: OhmsPerKilometre, cores: Construction) -> SquareMillimetres {
    SquareMillimetres(conductor::area_of(at_20).0 * above_nominal(cores))
}

/// How much more a conductor may resist than copper of its nominal gauge.
fn above_nominal(cores: Construction) -> f64 {
    match cores {
        Construction::FourPair => CATEGORY_LIMIT.0 / conductor::resistance_per_km(CATEGORY_WIRE, Celsius(20.0)).0,
        Construction::TwoCore => FINE_WIRE,
    }
}

/// Pairs by their number.
fn pairs_of(number: u8) -> Pairs {
    match number {
        4 => Pairs::Four,
        1 => Pairs::One,
        _ => Pairs::Two,
    }
}
