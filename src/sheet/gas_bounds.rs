//! Gas loss at the coldest and at the hottest air, for information beside that of the reference: at 60 GHz the air of the day
//! moves the level by decibels over a long path.

use super::budget;
use super::line::lines;
use super::method::{Method, cited};
use super::missing::Missing;
use super::path::PathLines;
use super::reason::Reason;
use super::target::Target;
use super::traced::{AsTraced as _, Traced, all};
use crate::at;
use crate::network::ResolvedHop;
use crate::physics::atmosphere::{Air, saturation_pressure};
use crate::physics::gas::Spectrum;
use crate::spec::{Both, Way};
use crate::units::{Celsius, Decibels, Hectopascals};

const BOUND: Method = cited(
    "ITU-R P.676-13 Annex 1 at that temperature, with the pressure and the relative humidity of the path (saturation ITU-R P.453-14)",
);

lines! {
    /// Gas loss of a way at the ends of the weather.
    GasBoundLines {
        coldest: Decibels, "", "gas loss in the coldest air", BOUND;
        hottest: Decibels, "", "gas loss in the hottest air", BOUND;
    }
}

/// The bounds of both ways, through the same air.
pub(super) fn compute(resolved: &ResolvedHop<'_>, path: &PathLines, target: &Target) -> Both<GasBoundLines> {
    let network = resolved.network;
    let coldest = match &target.practice.coldest_air {
        Some(coldest) => coldest.traced().clone(),
        None => Traced::missing(Missing::judged(Reason::NoColdestAir, at!(network.climate.coldest_air))),
    };
    let [cold, hot] = [&coldest, target.hottest_air.traced()].map(|temperature| spectrum(path, temperature));
    Both::ways(|way| GasBoundLines {
        coldest: loss(resolved, way, path, &cold).line(),
        hottest: loss(resolved, way, path, &hot).line(),
    })
}

fn loss(resolved: &ResolvedHop<'_>, way: Way, path: &PathLines, gas: &budget::Gas) -> Traced<Decibels> {
    let frequency = super::geometry::frequency(resolved, way).map(|given| given.value);
    all((&frequency, gas, &path.slant)).map(|(frequency, gas, slant)| gas.specific_attenuation(frequency) * slant)
}

/// The lines of the air of the path at another temperature, as damp for its warmth as it is.
fn spectrum(path: &PathLines, temperature: &Traced<Celsius>) -> budget::Gas {
    let air = all((&path.dry_pressure, &path.vapour_pressure, &path.temperature, temperature));
    air.map(|(dry, vapour, usual, temperature)| {
        let whole = Hectopascals(dry.0 + vapour.0);
        let damp = vapour.0 / saturation_pressure(usual, whole).0;
        let vapour_pressure = Hectopascals(damp * saturation_pressure(temperature, whole).0);
        let dry_pressure = Hectopascals(whole.0 - vapour_pressure.0);
        std::sync::Arc::new(Spectrum::of(&Air { dry_pressure, vapour_pressure, temperature }))
    })
}
