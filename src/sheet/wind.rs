//! One end in the wind: what presses on it, how far its pole turns the beam, how hard the foot of the pole is worked.
//!
//! Only a pole that stands free is a cantilever; masts and wall tubes are a structural engineer's.

use super::line::{Line, Missing, lines};
use super::reason::Reason;
use crate::at;
use crate::network::{ResolvedEnd, ResolvedHop};
use crate::physics::cantilever::{Pole, usual_strength};
use crate::physics::metals::Metal;
use crate::physics::{antenna, pipe, wind};
use crate::place::Place;
use crate::spec::{Material, SupportKind, Wind, WindSpeeds};
use crate::units::{Decibels, Degrees, Megapascals, Metres, MetresPerSecond, Millimetres, Newtons, Pascals};

const GUST: &str = "0.625 v², the speed a gust at the antenna";
const EN: &str = "EN 1991-1-4:2005 peak velocity pressure at the height of the antenna (from memory)";
const ASCE: &str = "ASCE 7-16 velocity pressure at the height of the antenna (from memory)";

lines! {
    /// What wind does to one end.
    WindLines {
        pressure: Pascals, "q", "pressure of the operating wind", GUST;
        force: Newtons, "F", "force of it on antenna and radio", "q (1.3 A of the antenna + 1.2 A of the radio); drag from memory";
        pole_force: Newtons, "", "force of it on the pole", "1.2 q times diameter and free length; drag from memory";
        nod: Degrees, "φ", "nod of the antenna in that wind", "cantilever fixed at its foot; what holds the foot gives way too";
        twist: Degrees, "", "swing of the antenna in that wind", "F e a / (G J), G = E / 2.6";
        turn: Degrees, "", "least movement of the beam in that wind", "root sum of squares of nod and swing";
        aim_loss: Decibels, "", "loss of aim in that wind, this end", "12 (θ/θ_3)², to 0.9 θ_3 (ITU-R F.699-8, main beam)";
        survival_pressure: Pascals, "", "pressure of the survival wind", GUST;
        survival_stress: Megapascals, "σ", "stress at the foot of the pole in it", "M / Z; no load factor, no ice: engineer to confirm";
        strength: Megapascals, "", "yield strength of the pole", "commonest grade of the material (from memory)";
    }
}

/// Drag of a dish with a flat or bulged cover, and of a box; from memory.
const DRAG_ANTENNA: f64 = 1.3;
const DRAG_RADIO: f64 = 1.2;
/// Drag of a tube in any wind, on the safe side; from memory.
const DRAG_POLE: f64 = 1.2;

/// A metal, as the tables of metals know it.
pub(super) const fn metal(material: Material) -> Option<Metal> {
    match material {
        Material::Steel => Some(Metal::Steel),
        Material::GalvanisedSteel => Some(Metal::Galvanised),
        Material::StainlessSteel => Some(Metal::Stainless),
        Material::Aluminium => Some(Metal::Aluminium),
        Material::Timber => None,
    }
}

/// The wind of the site, or of the hop, or of the network.
fn stated<'n>(own: &ResolvedEnd<'n>, resolved: &ResolvedHop<'n>) -> Option<(&'n Wind, Place)> {
    let (site, hop, network) = (own.site, resolved.hop, resolved.network);
    let of_site = site.spec.wind.as_ref().map(|wind| (wind, at!(site.wind)));
    let of_hop = hop.spec.climate.wind.as_ref().map(|wind| (wind, at!(hop.climate.wind)));
    let of_network = network.spec.climate.wind.as_ref().map(|wind| (wind, at!(network.climate.wind)));
    of_site.or(of_hop).or(of_network)
}

fn pressure(speeds: WindSpeeds, speed: MetresPerSecond, height: Metres) -> (Pascals, &'static str) {
    use wind::{Exposure, Terrain};
    let en = |terrain| (wind::peak_pressure_en(speed, height, terrain), EN);
    let asce = |exposure| (wind::pressure_asce_at(speed, height, exposure), ASCE);
    match speeds {
        WindSpeeds::Gust => (wind::pressure_en(speed), GUST),
        WindSpeeds::EnSea => en(Terrain::Sea),
        WindSpeeds::EnFlat => en(Terrain::Flat),
        WindSpeeds::EnOpen => en(Terrain::Open),
        WindSpeeds::EnSuburb => en(Terrain::Suburb),
        WindSpeeds::EnTown => en(Terrain::Town),
        WindSpeeds::AsceB => asce(Exposure::B),
        WindSpeeds::AsceC => asce(Exposure::C),
        WindSpeeds::AsceD => asce(Exposure::D),
    }
}

/// A pole with all that decides it, but for the wind.
#[derive(Clone, Copy)]
struct Standing {
    length: Metres,
    antenna: Metres,
    offset: Millimetres,
    section: pipe::Section,
    outside: Millimetres,
    strength: (crate::units::Gigapascals, Megapascals),
}

impl Standing {
    fn of(own: &ResolvedEnd<'_>) -> Result<Self, Missing> {
        let (support, end, bracket) = (own.support, own.end, own.bracket);
        let not_ours = match support.kind {
            SupportKind::Pole => None,
            SupportKind::Mast => Some(Reason::MastIsEngineers),
            SupportKind::Wall => Some(Reason::WallIsEngineers),
        };
        if let Some(why) = not_ours {
            return Err(Missing::judged(why, at!(support.kind)));
        }
        let outside = support.outside_diameter.value;
        let wall = support.wall_thickness.as_ref().map(|given| given.value).or_else(|| pipe::usual_wall(outside));
        let wall = wall.ok_or_else(|| Missing::judged(Reason::NoWall, at!(support.wall_thickness)))?;
        let no_tube = || Missing::new(Reason::WallTooThick, at!(support.wall_thickness));
        let section = pipe::section(outside, wall).ok_or_else(no_tube)?;
        let material = support.material.unwrap_or(Material::Steel);
        let unknown = || Missing::judged(Reason::MaterialSpreads { material }, at!(support.material));
        let strength = metal(material).and_then(usual_strength).ok_or_else(unknown)?;
        let (length, base) = (support.free_length.value, support.base_height.value);
        if length.0 <= 0.0 {
            return Err(Missing::judged(Reason::NothingStandsFree, at!(support.free_length)));
        }
        let antenna = Metres((end.height.value - base).0.clamp(0.0, length.0));
        let offset = bracket.offset.as_ref().map_or(Millimetres(0.0), |given| given.value);
        Ok(Self { length, antenna, offset, section, outside, strength })
    }

    fn in_wind(&self, force: Newtons, pressure: Pascals) -> Pole {
        Pole {
            length: self.length,
            antenna: self.antenna,
            offset: self.offset,
            section: self.section,
            elastic: self.strength.0,
            force,
            own_force: self.own_force(pressure),
        }
    }

    fn own_force(&self, pressure: Pascals) -> Newtons {
        Newtons(DRAG_POLE * pressure.0 * self.outside.0 / 1000.0 * self.length.0)
    }
}

/// A pipe that would hold still enough: the thinnest of those sold that the clamp takes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StifferPipe {
    /// Name of its size.
    pub name: &'static str,
    /// Outside diameter.
    pub outside: Millimetres,
    /// Thickness of the wall.
    pub wall: Millimetres,
}

/// The pipe to take in place of a pole that sways too much; none while it does not, and where no pipe would do.
pub(super) fn stiffer(own: &ResolvedEnd<'_>, lines: &WindLines, allowed: Decibels) -> Option<StifferPipe> {
    let (pressure, force) = (lines.pressure.get()?, lines.force.get()?);
    lines.turn.get()?;
    if lines.aim_loss.get().is_some_and(|loss| loss <= allowed) {
        return None;
    }
    let standing = Standing::of(own).ok()?;
    let beam = own.antenna.beamwidth.value;
    let still = |pipe: &&pipe::Pipe| {
        let Some(section) = pipe::section(pipe.outside, pipe.wall) else { return false };
        let pole = Standing { section, outside: pipe.outside, ..standing }.in_wind(force, pressure);
        let held = antenna::pointing_loss(pole.turn(), beam).is_some_and(|loss| loss <= allowed);
        held && own.bracket.pole.holds(pipe.outside)
    };
    let thinnest = pipe::PIPES.iter().filter(still).min_by(|one, other| one.outside.0.total_cmp(&other.outside.0))?;
    Some(StifferPipe { name: thinnest.name, outside: thinnest.outside, wall: thinnest.wall })
}

pub(super) fn compute(own: &ResolvedEnd<'_>, hop: &ResolvedHop<'_>) -> WindLines {
    let (support, end, bracket, radio, dish) = (own.support, own.end, own.bracket, own.radio, own.antenna);
    let network = hop.network;
    let wind = stated(own, hop);
    let wind_at = wind.map_or(at!(network.climate.wind), |(_, place)| place);
    let unstated = || Missing::judged(Reason::NoWind, wind_at);
    let height = end.height.value;
    let operating = wind.map(|(wind, _)| pressure(wind.speeds, wind.operating.value, height)).ok_or_else(unstated);
    let survival = wind.ok_or_else(unstated).and_then(|(wind, place)| {
        let given = wind.survival.as_ref().ok_or_else(|| Missing::judged(Reason::NoSurvivalWind, place))?;
        Ok(pressure(wind.speeds, given.value, height))
    });
    let no_area = || Missing::judged(Reason::NoWindArea, at!(dish.wind_area));
    let area = dish
        .wind_area
        .as_ref()
        .map(|given| given.value.0)
        .ok_or_else(no_area)
        .map(|dish| DRAG_ANTENNA * dish + DRAG_RADIO * radio.wind_area.as_ref().map_or(0.0, |given| given.value.0));
    let standing = Standing::of(own);
    let force = |pressure: &Result<(Pascals, &'static str), Missing>| {
        let (pressure, _) = pressure.as_ref().map_err(Clone::clone)?;
        Ok::<_, Missing>((Newtons(pressure.0 * area.clone()?), *pressure))
    };
    let pole = |pressure: &Result<(Pascals, &'static str), Missing>| {
        let (force, pressure) = force(pressure)?;
        Ok::<_, Missing>(standing.as_ref().map_err(Clone::clone)?.in_wind(force, pressure))
    };
    let (pole_now, pole_then) = (pole(&operating), pole(&survival));
    let of_pole = |value: fn(&Pole) -> Degrees| pole_now.as_ref().map(value).map_err(Clone::clone);
    let turn = of_pole(Pole::turn);
    let aim_loss = turn.clone().and_then(|turn| {
        let off = || Missing::judged(Reason::WindBeyondBeam, at!(dish.beamwidth));
        antenna::pointing_loss(turn, dish.beamwidth.value).ok_or_else(off)
    });
    let pressure_from = [wind_at, at!(end.height)];
    let force_from = [&pressure_from[..], &[at!(dish.wind_area), at!(radio.wind_area)]].concat();
    let tube = [at!(support.kind), at!(support.outside_diameter), at!(support.free_length)];
    let pole_from = [&pressure_from[..], &tube].concat();
    let more = [at!(support.wall_thickness), at!(support.material), at!(support.base_height), at!(bracket.offset)];
    let bend_from = [&force_from[..], &tube, &more].concat();
    let line = |value: Result<(Pascals, &'static str), Missing>| {
        let method = value.as_ref().map_or(GUST, |(_, method)| method);
        Line::new(value.map(|(pressure, _)| pressure), &pressure_from).by(method)
    };
    let pole_force =
        operating.clone().and_then(|(pressure, _)| Ok(standing.as_ref().map_err(Clone::clone)?.own_force(pressure)));
    let strength = standing.as_ref().map(|standing| standing.strength.1).map_err(Clone::clone);
    WindLines {
        force: Line::new(force(&operating).map(|(force, _)| force), &force_from),
        pole_force: Line::new(pole_force, &pole_from),
        nod: Line::new(of_pole(Pole::nod), &bend_from),
        twist: Line::new(of_pole(Pole::twist), &bend_from),
        turn: Line::new(turn, &bend_from),
        aim_loss: Line::new(aim_loss, &[&bend_from[..], &[at!(dish.beamwidth)]].concat()),
        survival_stress: Line::new(pole_then.map(|pole| pole.stress()), &bend_from),
        strength: Line::new(strength, &[&tube[..], &more].concat()),
        pressure: line(operating),
        survival_pressure: line(survival),
    }
}
