//! One end in the wind: what presses on it, how far its pole turns the beam, how hard the foot of the pole is worked.
//!
//! Only a pole that stands free is a cantilever; masts and wall tubes are a structural engineer's.

use super::line::{Line, lines};
use super::method::{Method, cited};
use super::missing::Missing;
use super::reason::Reason;
use super::traced::{Traced, all, read, see};
use crate::at;
use crate::network::{ResolvedEnd, ResolvedHop};
use crate::physics::cantilever::{Pole, usual_strength};
use crate::physics::metals::Metal;
use crate::physics::{antenna, pipe, wind};
use crate::spec::{Material, SupportKind, Wind, WindSpeeds};
use crate::units::{Decibels, Degrees, Megapascals, Metres, MetresPerSecond, Millimetres, Newtons, Pascals};

const GUST: &str = "0.625 v², the speed a gust at the antenna";
const EN: Method = cited("EN 1991-1-4:2005 peak velocity pressure at the height of the antenna (from memory)");
const ASCE: Method = cited("ASCE 7-16 velocity pressure at the height of the antenna (from memory)");

lines! {
    /// What wind does to one end.
    WindLines {
        pressure: Pascals, "q", "pressure of the operating wind", GUST;
        force: Newtons, "F", "force of it on antenna and radio", cited("q (1.3 A of the antenna + 1.2 A of the radio); drag from memory");
        pole_force: Newtons, "", "force of it on the pole", cited("1.2 q times diameter and free length; drag from memory");
        nod: Degrees, "φ", "nod of the antenna in that wind", "cantilever fixed at its foot; what holds the foot gives way too";
        twist: Degrees, "", "swing of the antenna in that wind", "F e a / (G J), G = E / 2.6";
        turn: Degrees, "", "least movement of the beam in that wind", "root sum of squares of nod and swing";
        aim_loss: Decibels, "", "loss of aim in that wind, this end", cited("12 (θ/θ_3)², to 0.9 θ_3 (ITU-R F.699-8, main beam)");
        survival_pressure: Pascals, "", "pressure of the survival wind", GUST;
        survival_stress: Megapascals, "σ", "stress at the foot of the pole in it", "M / Z; no load factor, no ice: engineer to confirm";
        strength: Megapascals, "", "yield strength of the pole", cited("commonest grade of the material (from memory)");
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
        // Under a whole coat of paint no current flows.
        Material::Timber | Material::PaintedSteel => None,
    }
}

/// The wind of the site, or of the hop, or of the network; none if nobody states one.
fn stated<'n>(own: &ResolvedEnd<'n>, resolved: &ResolvedHop<'n>) -> Option<Traced<&'n Wind>> {
    let (site, hop, network) = (own.site, resolved.hop, resolved.network);
    Traced::first_written([see!(site.wind), see!(hop.climate.wind), see!(network.climate.wind)])
}

fn pressure(speeds: WindSpeeds, speed: MetresPerSecond, height: Metres) -> (Pascals, Method) {
    use wind::{Exposure, Terrain};
    let en = |terrain| (wind::peak_pressure_en(speed, height, terrain), EN);
    let asce = |exposure| (wind::pressure_asce_at(speed, height, exposure), ASCE);
    match speeds {
        WindSpeeds::Gust => (wind::pressure_en(speed), GUST.into()),
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
    fn of(own: &ResolvedEnd<'_>) -> Traced<Self> {
        let (support, end, bracket) = (own.support, own.end, own.bracket);
        let engineers = see!(support.kind).judge(|kind| match kind {
            SupportKind::Pole => Ok(()),
            SupportKind::Mast => Err(Reason::MastIsEngineers),
            SupportKind::Wall => Err(Reason::WallIsEngineers),
        });
        let outside = read!(support.outside_diameter);
        let wall = all((&read!(support.wall_thickness), &outside))
            .judge(|(stated, outside)| stated.or_else(|| pipe::usual_wall(outside)).ok_or(Reason::NoWall));
        let no_tube = at!(support.wall_thickness);
        let section = all((&outside, &wall)).try_map(|(outside, wall)| {
            pipe::section(outside, wall).ok_or_else(|| Missing::new(Reason::WallTooThick, no_tube))
        });
        let strength = see!(support.material).judge(|material| {
            let material = material.unwrap_or(Material::Steel);
            metal(material).and_then(usual_strength).ok_or(Reason::MaterialSpreads { material })
        });
        let length = read!(support.free_length).unless(|length| (length.0 <= 0.0).then_some(Reason::NothingStandsFree));
        let antenna = all((&read!(end.height), &read!(support.base_height), &length))
            .map(|(height, base, length)| Metres((height - base).0.clamp(0.0, length.0)));
        let offset = read!(bracket.offset).map(|offset| offset.unwrap_or(Millimetres(0.0)));
        all((&engineers, &outside, &section, &strength, &length, &antenna, &offset)).map(
            |((), outside, section, strength, length, antenna, offset)| Self {
                length,
                antenna,
                offset,
                section,
                outside,
                strength,
            },
        )
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
    let standing = Standing::of(own).get()?;
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

/// A pressure of wind and how it follows from its speed.
type Pressure = (Pascals, Method);

/// One end in one wind.
struct Blown {
    pressure: Traced<Pressure>,
    force: Traced<Newtons>,
    pole: Traced<Pole>,
}

impl Blown {
    fn of(pressure: Traced<Pressure>, area: &Traced<f64>, standing: &Traced<Standing>) -> Self {
        let force = all((&pressure, area)).map(|((pressure, _), area)| Newtons(pressure.0 * area));
        let pole = all((&force, &pressure, standing))
            .map(|(force, (pressure, _), standing)| standing.in_wind(force, pressure));
        Self { pressure, force, pole }
    }

    fn pressure(&self) -> Line<Pascals> {
        let method = self.pressure.get().map_or(GUST.into(), |(_, method)| method);
        self.pressure.map(|(pressure, _)| pressure).by(method)
    }
}

/// What of an antenna and its radio the wind presses on, each with its drag.
fn area(own: &ResolvedEnd<'_>) -> Traced<f64> {
    let (radio, dish) = (own.radio, own.antenna);
    all((&read!(dish.wind_area).stated(Reason::NoWindArea), &read!(radio.wind_area)))
        .map(|(dish, radio)| DRAG_ANTENNA * dish.0 + DRAG_RADIO * radio.map_or(0.0, |radio| radio.0))
}

pub(super) fn compute(own: &ResolvedEnd<'_>, hop: &ResolvedHop<'_>) -> WindLines {
    let (end, dish, network) = (own.end, own.antenna, hop.network);
    let unstated = || Traced::missing(Missing::judged(Reason::NoWind, at!(network.climate.wind)));
    let wind = stated(own, hop).unwrap_or_else(unstated);
    let (height, area, standing) = (read!(end.height), area(own), Standing::of(own));
    let blown = |speed: fn(&Wind) -> Option<MetresPerSecond>| {
        let pressure = all((&wind, &height)).judge(|(wind, height)| {
            speed(wind).map(|speed| pressure(wind.speeds, speed, height)).ok_or(Reason::NoSurvivalWind)
        });
        Blown::of(pressure, &area, &standing)
    };
    let now = blown(|wind| Some(wind.operating.value));
    let then = blown(|wind| wind.survival.as_ref().map(|given| given.value));
    let turn = now.pole.map(|pole| pole.turn());
    let off = at!(dish.beamwidth);
    let aim_loss = all((&turn, &read!(dish.beamwidth))).try_map(|(turn, beam)| {
        antenna::pointing_loss(turn, beam).ok_or_else(|| Missing::judged(Reason::WindBeyondBeam, off))
    });
    let pole_force = all((&now.pressure, &standing)).map(|((pressure, _), standing)| standing.own_force(pressure));
    WindLines {
        pressure: now.pressure(),
        force: now.force.clone().line(),
        pole_force: pole_force.line(),
        nod: now.pole.map(|pole| pole.nod()).line(),
        twist: now.pole.map(|pole| pole.twist()).line(),
        turn: turn.line(),
        aim_loss: aim_loss.line(),
        survival_pressure: then.pressure(),
        survival_stress: then.pole.map(|pole| pole.stress()).line(),
        strength: standing.map(|standing| standing.strength.1).line(),
    }
}
