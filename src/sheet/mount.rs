//! What a bracket gives in tilt, and how else it could be mounted to give enough.

use super::geometry::altitude;
use super::path::PathLines;
use super::pole;
use super::reason::Reason;
use super::traced::{Traced, all, read, see};
use crate::network::{Document, ResolvedEnd};
use crate::physics::fastener::{self, Strength};
use crate::physics::geodesy::{self, MEDIAN_K};
use crate::physics::metals::{self, Metal};
use crate::physics::pipe;
use crate::physics::swing::{self, Swing};
use crate::spec::{Bracket, BracketSwing, Fastener, Finish, Material, Orientation, ScrewClass, Tilt, Window};
use crate::units::{Degrees, Kilograms, Metres, Millimetres, NewtonMetres, Volts};

/// Least and greatest tilt, up positive.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reach {
    /// Steepest down.
    pub least: Degrees,
    /// Steepest up.
    pub most: Degrees,
}

impl Reach {
    /// Whether a tilt can be set.
    #[must_use]
    pub fn holds(&self, tilt: Degrees) -> bool {
        self.least <= tilt && tilt <= self.most
    }

    /// How far a tilt lies from the nearer end of the range; negative outside.
    pub(super) fn left(&self, tilt: Degrees) -> Degrees {
        let (below, above) = (tilt - self.least, self.most - tilt);
        if below < above { below } else { above }
    }
}

/// A way to mount a bracket.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TiltMend {
    /// Which way up.
    pub orientation: Orientation,
    /// With the extension plate.
    pub plate: bool,
    /// What it gives then.
    pub reach: Reach,
}

/// What of a bracket decides the tilt it gives.
#[derive(Debug, Clone, Copy)]
pub(super) struct Hinge<'b> {
    tilt: &'b Tilt,
    /// The same with the extension plate, for a bracket that has one.
    with_plate: Option<&'b Tilt>,
    stop: Option<Degrees>,
    /// The tilt, of either sign, at which what swings behind the pivot meets the pole.
    free: Option<Degrees>,
}

impl<'b> Hinge<'b> {
    /// That of a bracket.
    pub(super) fn of(bracket: &'b Document<Bracket>) -> Traced<Self> {
        let plate = see!(bracket.plate).map(Option::as_ref);
        let swing = see!(bracket.swing).map(|swing| swing.as_ref().map(free));
        all((&see!(bracket.tilt), &read!(bracket.stop), &plate, &swing)).map(|(tilt, stop, plate, free)| Self {
            tilt,
            with_plate: plate.map(|plate| &plate.tilt),
            stop,
            free,
        })
    }

    /// The tilt it gives, mounted in a certain way. Upside down, the upright range is mirrored unless another is given.
    pub(super) fn reach(&self, orientation: Orientation, plate: bool) -> Reach {
        let of = |window: &Window<Degrees>| Reach { least: window.min.value, most: window.max.value };
        let turned = |tilt: &Tilt| match (orientation, &tilt.inverted) {
            (Orientation::Upright, _) => of(&tilt.upright),
            (Orientation::Inverted, Some(inverted)) => of(inverted),
            (Orientation::Inverted, None) => Reach { least: -tilt.upright.max.value, most: -tilt.upright.min.value },
        };
        if let (Some(fitted), true) = (self.with_plate, plate) {
            return turned(fitted);
        }
        let Reach { mut least, mut most } = turned(self.tilt);
        if let Some(stop) = self.down_to() {
            least = if least < stop { stop } else { least };
        }
        // A radio that swings is as tall below its pivot as above.
        if let (Some(free), None) = (self.free, self.stop) {
            most = if free < most { free } else { most };
        }
        Reach { least, most }
    }

    /// Steepest downward tilt before the radio meets the pole, without the plate: as stated, or from its geometry.
    fn down_to(&self) -> Option<Degrees> {
        self.stop.or_else(|| self.free.map(|free| -free))
    }
}

fn free(swing: &BracketSwing) -> Degrees {
    let (clearance, back, half_height) = (swing.clearance.value, swing.back.value, swing.half_height.value);
    swing::free_tilt(Swing { clearance, back, half_height }).unwrap_or_default()
}

/// What the bracket of an end gives as it is mounted.
pub(super) fn reach(own: &ResolvedEnd<'_>) -> Traced<Reach> {
    let end = own.end;
    let mounted = all((&see!(end.bracket.orientation), &see!(end.bracket.plate)));
    all((&mounted, &Hinge::of(own.bracket))).map(|((orientation, plate), hinge)| hinge.reach(*orientation, *plate))
}

/// The other ways to mount the same bracket that reach the tilt, fewest parts first.
pub(super) fn tilt_mends(own: &ResolvedEnd<'_>, needed: Degrees) -> Vec<TiltMend> {
    let present = &own.end.bracket;
    let Some(hinge) = Hinge::of(own.bracket).get() else { return Vec::new() };
    let plates: &[bool] = if hinge.with_plate.is_some() { &[false, true] } else { &[false] };
    let ways = plates.iter().flat_map(|plate| {
        [Orientation::Upright, Orientation::Inverted].map(|orientation| TiltMend {
            orientation,
            plate: *plate,
            reach: hinge.reach(orientation, *plate),
        })
    });
    ways.filter(|way| way.reach.holds(needed))
        .filter(|way| (way.orientation, way.plate) != (present.orientation, present.plate))
        .collect()
}

/// How much this antenna must rise for its tilt to come to the nearest end of the reach; bisected over the exact formula.
pub(super) fn height_mend(
    own: &ResolvedEnd<'_>,
    far: &ResolvedEnd<'_>,
    path: &PathLines,
    reach: Reach,
    needed: Degrees,
) -> Option<Metres> {
    let distance = path.distance.get()?;
    let (own_altitude, far_altitude) = (altitude(own).get()?, altitude(far).get()?);
    let goal = if needed < reach.least { reach.least } else { reach.most };
    let tilt_at = |rise: f64| geodesy::elevation(distance, own_altitude + Metres(rise), far_altitude, MEDIAN_K);
    // A higher antenna looks further down, so the tilt falls as it rises.
    let most = 2.0 * (far_altitude - own_altitude).0.abs() + distance.0;
    let (mut low, mut high) = (-most, most);
    if tilt_at(low) < goal || tilt_at(high) > goal {
        return None;
    }
    for _ in 0..60 {
        let middle = f64::midpoint(low, high);
        if tilt_at(middle) > goal { low = middle } else { high = middle }
    }
    Some(Metres(high))
}

/// Two metals that touch and should not.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Metals {
    /// How far they are apart.
    pub apart: Volts,
    /// How far they may be.
    pub allowed: Volts,
}

/// Bracket and support, where their metals harm each other.
pub(super) fn metals(own: &ResolvedEnd<'_>) -> Option<Metals> {
    let of = |material: Option<Material>| material.and_then(pole::metal);
    let (bracket, support) = (of(own.bracket.material)?, of(own.support.material)?);
    // Much zinc round a little stainless steel lasts.
    let accepted = (bracket, support) == (Metal::Stainless, Metal::Galvanised);
    let apart = metals::apart(bracket, support);
    (!accepted && apart > metals::OUTDOORS).then_some(Metals { apart, allowed: metals::OUTDOORS })
}

/// Name and outside diameter of the pipe whose nominal size somebody wrote for its diameter.
#[must_use]
pub fn pipe_named(diameter: Millimetres) -> Option<(&'static str, Millimetres)> {
    pipe::named_for(diameter).map(|pipe| (pipe.name, pipe.outside))
}

/// What a crew lifts to an end: antenna, radio and bracket.
pub(super) fn lifted(own: &ResolvedEnd<'_>) -> Traced<Kilograms> {
    let (radio, dish, bracket) = (own.radio, own.antenna, own.bracket);
    let each = [read!(radio.mass), read!(dish.mass), read!(bracket.mass)].map(|mass| mass.stated(Reason::NoMass));
    Traced::each(&each).map(|masses| Kilograms(masses.iter().map(|mass| mass.0).sum()))
}

/// Torque that a screw bears: the least by what is stated of it, and the most. Without a class it may be of stainless steel
/// of class 70 or of steel 10.9, without a finish dry or galvanised. None for a thread that is not in the tables.
#[must_use]
pub fn greatest_torque(screw: &Fastener) -> Option<[NewtonMetres; 2]> {
    let friction = |otherwise: f64| screw.finish.map_or(otherwise, friction);
    let least = (screw.class.map_or(Strength::Stainless70, strength), friction(fastener::DRY));
    let most = (screw.class.map_or(Strength::S109, strength), friction(fastener::GALVANISED));
    let [least, most] = [least, most].map(|(strength, friction)| {
        let proof = fastener::proof(&screw.thread, strength)?;
        fastener::torque(&screw.thread, proof, fastener::SHARE, friction)
    });
    Some([least?, most?])
}

const fn friction(finish: Finish) -> f64 {
    match finish {
        Finish::Dry => fastener::DRY,
        Finish::Galvanised => fastener::GALVANISED,
        Finish::Oiled => fastener::OILED,
        Finish::AntiSeize => fastener::ANTI_SEIZE,
    }
}

const fn strength(class: ScrewClass) -> Strength {
    match class {
        ScrewClass::S46 => Strength::S46,
        ScrewClass::S56 => Strength::S56,
        ScrewClass::S88 => Strength::S88,
        ScrewClass::S109 => Strength::S109,
        ScrewClass::A2X50 | ScrewClass::A4X50 => Strength::Stainless50,
        ScrewClass::A2X70 | ScrewClass::A4X70 => Strength::Stainless70,
        ScrewClass::A2X80 | ScrewClass::A4X80 => Strength::Stainless80,
        ScrewClass::Grade2 => Strength::Grade2,
        ScrewClass::Grade5 => Strength::Grade5,
        ScrewClass::Grade8 => Strength::Grade8,
    }
}

/// Width of the wrench for a screw, and how it is written: as stated, else that of its thread; none for a thread that is not in the tables.
#[must_use]
pub fn wrench(screw: &Fastener) -> Option<(Millimetres, String)> {
    let usual = || fastener::across_flats(&screw.thread).map(|size| (Millimetres(size.into()), format!("{size} mm")));
    screw.wrench.as_ref().map(|given| (given.value, given.to_string())).or_else(usual)
}
