//! What one end puts on its support, what others put there, and the pole that carries all of it.

use super::missing::Missing;
use super::reason::Reason;
use super::traced::{Traced, all, read, see};
use crate::at;
use crate::finding::Spot;
use crate::network::{Fellow, ResolvedEnd};
use crate::physics::cantilever::{Load, Pole, usual_strength};
use crate::physics::metals::Metal;
use crate::physics::{ice, pipe};
use crate::spec::{Bracket, Material, SupportKind};
use crate::units::{
    Gigapascals, Kilograms, KilogramsPerCubicMetre, Megapascals, Metres, Millimetres, Newtons, Pascals, SquareMetres,
};

/// Drag of a dish with a flat or bulged cover, and of a box; from memory.
const DRAG_ANTENNA: f64 = 1.3;
const DRAG_RADIO: f64 = 1.2;
/// Drag of a tube in any wind, on the safe side; from memory.
const DRAG_POLE: f64 = 1.2;

/// How many other ends on one support are judged together: more than any support of dishes carries.
pub(super) const MOST_OTHERS: usize = 100;

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

/// What an end puts in the wind.
#[derive(Debug, Clone, Copy)]
pub(super) struct Facing {
    /// Above the ground of the site.
    pub height: Metres,
    /// What of the antenna the wind presses on.
    antenna: SquareMetres,
    /// What of the radio it presses on.
    radio: SquareMetres,
    /// Beside the axis of the support.
    pub offset: Millimetres,
}

impl Facing {
    /// That of an end; `unstated` where its antenna has no wind area.
    pub(super) fn of(own: &ResolvedEnd<'_>, unstated: Reason) -> Traced<Self> {
        let (end, radio, dish, bracket) = (own.end, own.radio, own.antenna, own.bracket);
        let areas = all((&read!(dish.wind_area).stated(unstated), &read!(radio.wind_area)));
        let offset = read!(bracket.offset).map(|offset| offset.unwrap_or(Millimetres(0.0)));
        let facing = all((&areas, &read!(end.height), &offset));
        facing.map(|((antenna, radio), height, offset)| Self {
            height,
            antenna,
            radio: radio.unwrap_or(SquareMetres(0.0)),
            offset,
        })
    }

    /// Both areas, each with its drag.
    pub(super) fn area(&self) -> f64 {
        DRAG_ANTENNA * self.antenna.0 + DRAG_RADIO * self.radio.0
    }

    /// The same with a layer of ice. What has no area grows none.
    pub(super) fn iced(self, thickness: Millimetres) -> Self {
        let grown = |area: SquareMetres| if area.0 > 0.0 { ice::grown(area, thickness) } else { area };
        Self { antenna: grown(self.antenna), radio: grown(self.radio), ..self }
    }

    /// What a layer of ice on both weighs.
    pub(super) fn ice(&self, thickness: Millimetres, density: KilogramsPerCubicMetre) -> Kilograms {
        let both = SquareMetres(self.antenna.0 + self.radio.0);
        ice::on_faces(both, thickness, density)
    }
}

/// What other ends put on the same support, in their order.
pub(super) fn others(fellows: &[Fellow<'_>]) -> Traced<Vec<Facing>> {
    if fellows.len() > MOST_OTHERS {
        return crowded(fellows);
    }
    let each: Vec<Traced<Facing>> = fellows
        .iter()
        .map(|fellow| {
            let end = fellow.end.end;
            let unstated = Reason::NoWindAreaBeside { hop: (*fellow.hop.hop.id.0).into(), end: fellow.end.name };
            // An end stands here by what is written in it.
            Facing::of(fellow.end, unstated).decided_by(&see!(end.support))
        })
        .collect();
    Traced::each(&each)
}

/// Why nothing is said of more of them than are judged together.
pub(super) fn crowded<T>(fellows: &[Fellow<'_>]) -> Traced<T> {
    let places = fellows.iter().map(|fellow| {
        let end = fellow.end.end;
        at!(end.support)
    });
    let first = places.min_by_key(|place| place.document).map_or(Spot::Path(String::new()), Spot::Field);
    Traced::missing(Missing::judged(Reason::Crowded { most: MOST_OTHERS }, first))
}

/// The tube of a support: what of it stands free, and how thick it is to the wind.
#[derive(Debug, Clone, Copy)]
pub(super) struct Tube {
    /// What stands free.
    pub length: Metres,
    base: Metres,
    outside: Millimetres,
}

impl Tube {
    pub(super) fn of(own: &ResolvedEnd<'_>) -> Traced<Self> {
        let support = own.support;
        let length = read!(support.free_length).unless(|length| (length.0 <= 0.0).then_some(Reason::NothingStandsFree));
        all((&length, &read!(support.base_height), &read!(support.outside_diameter)))
            .map(|(length, base, outside)| Self { length, base, outside })
    }

    /// A height above the ground of the site, above the foot.
    pub(super) fn above_foot(&self, height: Metres) -> Metres {
        Metres((height - self.base).0.clamp(0.0, self.length.0))
    }

    /// Force on the tube itself, at the pressure of the highest antenna on it.
    pub(super) fn force(
        &self,
        antennas: impl Iterator<Item = Metres>,
        pressure: impl Fn(Metres) -> Pascals,
    ) -> Newtons {
        let highest = antennas.fold(self.base, |one, other| if other > one { other } else { one });
        Newtons(DRAG_POLE * pressure(highest).0 * self.outside.0 / 1000.0 * self.length.0)
    }

    /// The same with a layer of ice.
    pub(super) fn iced(self, thickness: Millimetres) -> Self {
        Self { outside: Millimetres(self.outside.0 + 2.0 * thickness.0), ..self }
    }

    /// What a layer of ice on it weighs.
    pub(super) fn ice(&self, thickness: Millimetres, density: KilogramsPerCubicMetre) -> Kilograms {
        ice::on_bar(self.outside, self.length, thickness, density)
    }
}

/// A pole with all that decides it, but for the wind and what it carries.
#[derive(Debug, Clone, Copy)]
pub(super) struct Standing {
    tube: Tube,
    section: pipe::Section,
    elastic: Gigapascals,
    /// Where it yields.
    pub strength: Megapascals,
}

impl Standing {
    pub(super) fn of(own: &ResolvedEnd<'_>) -> Traced<Self> {
        let support = own.support;
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
        all((&engineers, &section, &strength, &Tube::of(own))).map(|((), section, (elastic, strength), tube)| Self {
            tube,
            section,
            elastic,
            strength,
        })
    }

    /// Its tube.
    pub(super) const fn tube(&self) -> Tube {
        self.tube
    }

    /// A height above the ground of the site, above the foot.
    pub(super) fn above_foot(&self, height: Metres) -> Metres {
        self.tube.above_foot(height)
    }

    /// The same with a layer of ice, which makes it thicker to the wind and no stronger.
    pub(super) fn iced(self, thickness: Millimetres) -> Self {
        Self { tube: self.tube.iced(thickness), ..self }
    }

    /// The pole with what it carries, each at the pressure of its height; that on the pole is the pressure at the highest.
    pub(super) fn in_wind<'f>(
        &self,
        carries: impl Iterator<Item = &'f Facing>,
        pressure: impl Fn(Metres) -> Pascals,
    ) -> Pole {
        let mut heights = Vec::new();
        let loads = carries.map(|facing| {
            heights.push(facing.height);
            let force = Newtons(pressure(facing.height).0 * facing.area());
            Load { height: self.above_foot(facing.height), offset: facing.offset, force }
        });
        let loads: Vec<Load> = loads.collect();
        let own_force = self.tube.force(heights.into_iter(), pressure);
        Pole { length: self.tube.length, section: self.section, elastic: self.elastic, loads, own_force }
    }

    /// The same pole of another pipe.
    fn of_pipe(self, pipe: &pipe::Pipe) -> Option<Self> {
        let section = pipe::section(pipe.outside, pipe.wall)?;
        Some(Self { section, tube: Tube { outside: pipe.outside, ..self.tube }, ..self })
    }
}

/// A pipe that would hold still enough: the thinnest of those sold that the clamps take.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StifferPipe {
    /// Name of its size.
    pub name: &'static str,
    /// Outside diameter.
    pub outside: Millimetres,
    /// Thickness of the wall.
    pub wall: Millimetres,
}

/// The thinnest pipe that all brackets take and that passes a trial; none where no pipe does.
pub(super) fn thinnest<'b>(
    standing: Standing,
    brackets: &(impl Iterator<Item = &'b Bracket> + Clone),
    passes: impl Fn(Standing) -> bool,
) -> Option<StifferPipe> {
    let does = |pipe: &&pipe::Pipe| {
        brackets.clone().all(|bracket| bracket.pole.holds(pipe.outside)) && standing.of_pipe(pipe).is_some_and(&passes)
    };
    let thinnest = pipe::PIPES.iter().filter(does).min_by(|one, other| one.outside.0.total_cmp(&other.outside.0))?;
    Some(StifferPipe { name: thinnest.name, outside: thinnest.outside, wall: thinnest.wall })
}
