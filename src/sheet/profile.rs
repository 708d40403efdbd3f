//! Line of sight: the clearance of the path at its worst point, what it costs if there is too little, and how much higher
//! the antennas must go.

use std::fmt::Write as _;

use super::line::{Cause, Line, Missing, Section, Shown, lines};
use super::path::{PathLines, altitude};
use super::reason::Reason;
use super::relief::{GroundPoint, NoProfile, Profile, Source, Standing, years};
use super::saying::{Saying, Told};
use super::terrain::Terrains;
use super::title::Title;
use super::what::What;
use crate::at;
use crate::finding::Spot;
use crate::network::ResolvedHop;
use crate::physics::bullington;
use crate::physics::clearance::{Point, Raise, Sightline};
use crate::physics::geodesy::MEDIAN_K;
use crate::place::Place;
use crate::spec::{Both, Date, Number, ObstacleKind};
use crate::units::{Decibels, Gigahertz, Metres, Quantity as _};

/// Fraction of the first Fresnel zone below which an obstacle costs level: Recommendation ITU-R P.526-15, section 2.
pub const CLEARANCE: f64 = 0.6;
/// The same at the low `k`: Recommendation ITU-R P.530-18, section 2.2.2, temperate climate, extended obstacle (from
/// memory).
pub const LOW_K_CLEARANCE: f64 = 0.3;
/// What a profile may miss between two points: a tree or a house. Common practice, no source.
pub const UNSEEN_HEIGHT: Metres = Metres(10.0);

/// A length to the centimetre.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Fine(pub Metres);

impl std::fmt::Display for Fine {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.0.with_decimals(2))
    }
}

impl Shown for Fine {
    fn number(&self) -> Option<(f64, &'static str)> {
        self.0.number()
    }
    fn told(&self) -> Told {
        Told::Number(self.to_string())
    }
}

/// A clearance in radii of the first Fresnel zone.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Radii(pub f64);

impl std::fmt::Display for Radii {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        // No minus sign before a nought.
        let hundredths = (self.0 * 100.0).round() / 100.0 + 0.0;
        write!(f, "{hundredths:.2} F1")
    }
}

impl Shown for Radii {
    fn number(&self) -> Option<(f64, &'static str)> {
        Some((self.0, "F1"))
    }
    fn told(&self) -> Told {
        Told::Number(self.to_string())
    }
}

/// Loss over the obstacles, from a to b and from b to a: the two frequencies differ.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BothWays(pub Both<Decibels>);

impl Shown for BothWays {
    fn number(&self) -> Option<(f64, &'static str)> {
        let Both { a: there, b: back } = self.0;
        (there == back).then_some((there.0, "dB"))
    }
    fn told(&self) -> Told {
        let Both { a: there, b: back } = self.0;
        if there.to_string() == back.to_string() {
            Told::Number(there.to_string())
        } else {
            Told::Said(Saying::EachWay { there, back })
        }
    }
}

pub(super) const DIFFRACTION: &str =
    "ITU-R P.526-15 §4.5.1 over the profile at k = 4/3, §4.1 for a single edge; 0 with 0.55 F1 of clearance";

lines! {
    /// The profile and what the line of sight keeps from it. Clearances are those of the worst point.
    ProfileLines {
        source: Saying, "", "source of the profile", super::line::AS_WRITTEN;
        date: Saying, "", "day of its heights", super::line::AS_WRITTEN;
        points: Saying, "", "points of the source", "counted";
        spacing: Metres, "", "widest gap between its points", "differences of distance, or the cell of the source if that is wider";
        uncertainty: Fine, "u", "uncertainty of its heights", "as written, none where nothing is written";
        clearance: Fine, "c", "clearance at the worst point, k = 4/3",
            "height of the line over the bulging Earth less the top less u (ITU-R P.530-18 §2.2.2, step 3)";
        radius: Fine, "F1", "radius of the first Fresnel zone there", "ITU-R P.526-15 §2, at the lower frequency";
        fraction: Radii, "c/F1", "clearance there in Fresnel radii", "c / F1";
        needed: Fine, "", "clearance asked for there", "limits.clearance of the network, default 0.6 F1 (ITU-R P.526-15 §2)";
        in_hand: Fine, "", "clearance in hand", "clearance less the one asked for";
        worst_distance: Metres, "d_1", "distance of the worst point from a", "the point with the least c / F1";
        worst: Saying, "", "what stands there", super::line::AS_WRITTEN;
        lowest: Fine, "", "least height of the line over any top, k = 4/3", "height of the line less the top";
        low_clearance: Fine, "", "clearance at the worst point, low k", "as at k = 4/3";
        low_fraction: Radii, "", "clearance there in Fresnel radii, low k", "c / F1";
        low_in_hand: Fine, "", "clearance in hand, low k",
            "clearance less the one asked for by limits.low_k_clearance, default 0.3 F1 (ITU-R P.530-18 §2.2.2)";
        raise_a: Fine, "", "end a must go up by, alone", "similar triangles at every point, exact";
        raise_b: Fine, "", "end b must go up by, alone", "similar triangles at every point, exact";
        raise_both: Fine, "", "or both ends must go up by", "most of what any point lacks, exact";
        grown_in_hand: Fine, "", "clearance in hand when the trees are grown", "as in hand, with growth until its last day";
    }
}

/// The point that leaves least of the Fresnel zone.
#[derive(Debug, Clone)]
pub struct Worst {
    /// Distance from end a.
    pub distance: Metres,
    /// Top of what stands there.
    pub top: Metres,
    /// Ground there.
    pub ground: Metres,
    /// What it is.
    pub what: What,
    /// Where it is written.
    pub spot: Spot,
}

/// Trees that leave enough today and too little later.
#[derive(Debug, Clone)]
pub struct Outgrown {
    /// What grows.
    pub what: What,
    /// Where it is written.
    pub spot: Spot,
    /// Year in which the clearance falls below what is asked for.
    pub year: u16,
    /// Distance from end a of the point at fault.
    pub distance: Metres,
    /// Clearance in hand on the last day of growth.
    pub left: Fine,
    /// What both ends must go up by to keep it.
    pub raise: Fine,
}

/// A gap of the profile in which something could stand unseen.
#[derive(Debug, Clone)]
pub struct Gap {
    /// Where it starts and ends, from end a.
    pub between: [Metres; 2],
    /// Clearance in hand over the ground beside it.
    pub left: Fine,
    /// Width of the Fresnel zone in the middle of the hop.
    pub zone: Fine,
    /// Where the second of its points is written.
    pub spot: Spot,
}

/// A point of the path under the straight line, all heights raised by the bulge of the Earth.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PathPoint {
    /// Distance from end a.
    pub distance: Metres,
    /// The ground.
    pub ground: Metres,
    /// The top of what stands on it, or the ground.
    pub top: Metres,
    /// What stands there: its number and its kind.
    pub standing: Option<(usize, ObstacleKind)>,
    /// The straight line between the antennas.
    pub line: Metres,
    /// Radius of the first Fresnel zone.
    pub radius: Metres,
}

/// Line of sight of a hop.
#[derive(Debug)]
pub struct ProfileSheet {
    /// The numbers.
    pub lines: ProfileLines,
    /// What the obstacles cost; a line of the path.
    pub(super) diffraction: Line<BothWays>,
    /// The ground, if there is a profile.
    pub ground: Result<Profile, NoProfile>,
    /// The straight line at `k` of 4/3.
    pub sight: Option<Sightline>,
    /// The lower frequency, whose Fresnel zone is the wider.
    pub frequency: Gigahertz,
    /// Fraction of `F1` asked for, and where.
    pub asked: (f64, Place),
    /// The low `k`, the fraction asked for at it, and where it stands.
    pub low: Option<(f64, f64, Place)>,
    /// The worst point at `k` of 4/3.
    pub worst: Option<Worst>,
    /// The worst point at the low `k`.
    pub low_worst: Option<Worst>,
    /// Point that stands highest over the line, where one does.
    pub obstruction: Option<Worst>,
    /// Trees that outgrow the clearance.
    pub outgrown: Option<Outgrown>,
    /// The gap with the least clearance beside it, if one is too wide.
    pub gap: Option<Gap>,
}

impl ProfileSheet {
    pub(super) fn mask(&mut self, broken: &dyn Fn(&Place) -> Option<Missing>) {
        self.lines.mask(broken);
    }

    pub(super) fn missing(&self, each: &mut dyn FnMut(&'static str, &Missing)) {
        self.lines.missing(each);
    }

    pub(super) fn section(&self) -> Section {
        Section::of("profile", Title::LineOfSight, |rows| self.lines.rows("profile", rows))
    }

    /// Every point between and at the ends as it stands under the straight line: heights are raised by the bulge of the
    /// Earth at k = 4/3, so that the line is straight over them. Empty without a profile.
    #[must_use]
    pub fn along(&self) -> Vec<PathPoint> {
        let (Ok(profile), Some(sight)) = (&self.ground, &self.sight) else { return Vec::new() };
        let inside = |point: &&GroundPoint| point.distance <= sight.length;
        let at = |point: &GroundPoint| {
            let here = Point { distance: point.distance, top: profile.top(point, 0.0) };
            let share = point.distance.0 / sight.length.0;
            let line = sight.near + Metres((sight.far - sight.near).0 * share);
            let bulge = line - sight.height(here);
            PathPoint {
                distance: point.distance,
                ground: point.ground + bulge,
                top: here.top + bulge,
                standing: point.standing.and_then(|number| Some((number, profile.standing[number].what.kind?))),
                line,
                radius: sight.radius(self.frequency, here),
            }
        };
        profile.points.iter().filter(inside).map(at).collect()
    }

    /// The clearance at every point as comma-separated lines, for whoever cannot see the drawing.
    #[must_use]
    pub fn table(&self) -> String {
        let mut text = "distance [m],ground [m],obstacle [m],kind,bulge [m],clearance [m],F1 [m],c/F1\n".to_owned();
        let raised = self.along();
        let (Ok(profile), Some(sight)) = (&self.ground, &self.sight) else { return text };
        let uncertainty = self.lines.uncertainty.get().map_or(0.0, |u| u.0.0);
        for (point, raised) in profile.points.iter().zip(&raised) {
            let here = Point { distance: point.distance, top: profile.top(point, 0.0) };
            let (clearance, radius) = (sight.clearance(here).0 - uncertainty, raised.radius.0);
            let share = if sight.spans(here) { format!("{:.2}", clearance / radius) } else { String::new() };
            let (height, kind) = match raised.standing {
                Some((number, kind)) => (format!("{:.2}", profile.standing[number].height.0), kind.word()),
                None => (String::new(), ""),
            };
            let bulge = (raised.ground - point.ground).0;
            let _ = writeln!(
                text,
                "{:.2},{:.2},{height},{kind},{bulge:.2},{clearance:.2},{radius:.2},{share}",
                point.distance.0, point.ground.0
            );
        }
        text
    }

    /// The ground, if there is a profile.
    #[must_use]
    pub fn profile(&self) -> Option<&Profile> {
        self.ground.as_ref().ok()
    }
}

/// A number that a person wrote without unit, in its range.
fn plain(
    number: Option<Number>,
    range: (f64, f64),
    place: Place,
    outside: impl FnOnce((f64, f64), f64) -> Reason,
) -> Result<Option<f64>, Missing> {
    match number.map(|number| number.0) {
        Some(value) if !(range.0..=range.1).contains(&value) => Err(Missing::new(outside(range, value), place)),
        value => Ok(value),
    }
}

struct Asked {
    fraction: f64,
    place: Place,
    low: Option<(f64, f64, Place)>,
}

fn asked(resolved: &ResolvedHop<'_>) -> Result<Asked, Missing> {
    const FRACTIONS: (f64, f64) = (0.0, 10.0);
    // Rays that fall steeper do not reach a hop, and those that follow the Earth for ever are no straight line.
    const FACTORS: (f64, f64) = (0.1, 100.0);
    let (hop, network) = (resolved.hop, resolved.network);
    let place = at!(network.limits.clearance);
    let no_fraction = |(least, most), value| Reason::ClearanceOutOfRange { least, most, value };
    let no_factor = |(least, most), value| Reason::FactorOutOfRange { least, most, value };
    let fraction = plain(network.limits.clearance, FRACTIONS, place, no_fraction)?;
    let low_place = at!(network.limits.low_k_clearance);
    let low_fraction = plain(network.limits.low_k_clearance, FRACTIONS, low_place, no_fraction)?;
    let (k, k_place) = match hop.climate.low_k {
        Some(own) => (Some(own), at!(hop.climate.low_k)),
        None => (network.climate.low_k, at!(network.climate.low_k)),
    };
    let k = plain(k, FACTORS, k_place, no_factor)?;
    let low = k.map(|k| (k, low_fraction.unwrap_or(LOW_K_CLEARANCE), k_place));
    Ok(Asked { fraction: fraction.unwrap_or(CLEARANCE), place, low })
}

/// Everything the numbers are computed from.
struct Inputs<'p> {
    profile: &'p Profile,
    sight: Sightline,
    frequency: Gigahertz,
    uncertainty: Metres,
}

impl Inputs<'_> {
    /// What a point has over the clearance asked for.
    fn in_hand(&self, sight: &Sightline, fraction: f64, point: Point) -> Metres {
        sight.clearance(point) - self.uncertainty - Metres(fraction * sight.radius(self.frequency, point).0)
    }

    /// The point between the ends with the least of something.
    fn least(&self, share: f64, value: impl Fn(Point) -> f64) -> Option<(usize, Point)> {
        let points =
            self.profile.points.iter().enumerate().map(|(number, point)| {
                (number, Point { distance: point.distance, top: self.profile.top(point, share) })
            });
        let between = points.filter(|(_, point)| self.sight.spans(*point));
        let valued = between.map(|(number, point)| (number, point, value(point)));
        let least = valued.min_by(|(_, _, one), (_, _, other)| one.total_cmp(other))?;
        Some((least.0, least.1))
    }

    /// What a point leaves in radii of the Fresnel zone. By this the worst is found: next to the ends little is asked for.
    fn radii(&self, sight: &Sightline, point: Point) -> f64 {
        (sight.clearance(point) - self.uncertainty).0 / sight.radius(self.frequency, point).0
    }

    fn worst(&self, number: usize, point: Point) -> Worst {
        let ground = &self.profile.points[number];
        let standing = ground.standing.map(|standing| &self.profile.standing[standing]);
        Worst {
            distance: point.distance,
            top: point.top,
            ground: ground.ground,
            what: standing.map_or(What::BARE_GROUND, |standing| standing.what.clone()),
            spot: standing.map_or_else(|| self.spot(number), |standing| standing.spot.clone()),
        }
    }

    /// Where a point is written, or the one before it.
    fn spot(&self, number: usize) -> Spot {
        let written = self.profile.points[..=number].iter().rev().find_map(|point| point.spot.clone());
        written.unwrap_or_else(|| self.profile.spot.clone())
    }

    /// What must be raised so that the clearance asked for is kept at one `k`.
    fn raise(&self, sight: &Sightline, fraction: f64, share: f64, which: Raise) -> Metres {
        let tops = self.profile.tops(share, self.uncertainty);
        sight.least_raise(self.frequency, fraction, &tops, which)
    }
}

pub(super) fn compute(resolved: &ResolvedHop<'_>, path: &PathLines, terrains: &Terrains) -> ProfileSheet {
    let (hop, network) = (resolved.hop, resolved.network);
    let channel = &hop.spec.channel;
    let frequencies = Both::ways(|way| channel.frequency(way).value);
    let frequency = if frequencies.a < frequencies.b { frequencies.a } else { frequencies.b };
    let ((near, [ground_a, height_a]), (far, [ground_b, height_b])) =
        (altitude(&resolved.ends.a), altitude(&resolved.ends.b));
    let mut from = vec![at!(hop.path), ground_a, height_a, ground_b, height_b, at!(hop.channel.a_to_b)];
    from.push(at!(hop.channel.b_to_a));
    from.extend(&path.distance.from);
    let (asked, asked_error) = match asked(resolved) {
        Ok(asked) => (asked, None),
        Err(missing) => {
            let place = at!(network.limits.clearance);
            (Asked { fraction: CLEARANCE, place, low: None }, Some(missing))
        }
    };
    let ground = match (path.distance.need(), asked_error) {
        (Err(missing), _) | (_, Some(missing)) => Err(NoProfile::Broken(missing)),
        (Ok(length), None) => Profile::of(resolved, terrains, length),
    };
    let (profile, none) = match ground {
        Ok(profile) => (Some(profile), NoProfile::None),
        Err(none) => (None, none),
    };
    let missing = no_profile(&none, at!(hop.path));
    let mut sheet = ProfileSheet {
        diffraction: Line::new(Err(missing.clone()), &from),
        lines: without(&missing, &from),
        ground: Err(none),
        sight: None,
        frequency,
        asked: (asked.fraction, asked.place),
        low: asked.low,
        worst: None,
        low_worst: None,
        obstruction: None,
        outgrown: None,
        gap: None,
    };
    let (Some(profile), Some(length)) = (profile, path.distance.get()) else { return sheet };
    if profile.source == Source::Tiles {
        from.push(at!(network.terrain));
    }
    let uncertainty = profile.uncertainty.as_ref().map_or(Metres(0.0), |given| given.value);
    let inputs =
        Inputs { profile: &profile, sight: Sightline { near, far, length, k: MEDIAN_K }, frequency, uncertainty };
    sheet.sight = Some(inputs.sight);
    fill(&mut sheet, &inputs, &asked, &from, frequencies);
    sheet.outgrown = outgrown(&inputs, &asked, resolved.network.date);
    let unseen = network.limits.unseen_height.as_ref().map_or(UNSEEN_HEIGHT, |given| given.value);
    sheet.gap = gap(&inputs, asked.fraction, unseen);
    sheet.ground = Ok(profile);
    sheet
}

/// Why a hop has no profile.
fn no_profile(none: &NoProfile, place: Place) -> Missing {
    match none {
        NoProfile::Broken(missing) => missing.clone(),
        NoProfile::Tiles(why) => Missing::judged(why.clone(), place),
        NoProfile::None => Missing::judged(Reason::NoProfile, place),
    }
}

fn none<T>(missing: &Missing, from: &[Place]) -> Line<T> {
    Line::new(Err(missing.clone()), from)
}

/// The lines of a hop without a profile.
fn without(m: &Missing, from: &[Place]) -> ProfileLines {
    // That there is none is told where the source would be; one that is broken is told of elsewhere.
    let said = match m.cause {
        Cause::Judged => Ok(Saying::NoSource { why: m.reason.clone() }),
        _ => Err(m.clone()),
    };
    ProfileLines {
        source: Line::new(said, from),
        date: none(m, from),
        points: none(m, from),
        spacing: none(m, from),
        uncertainty: none(m, from),
        clearance: none(m, from),
        radius: none(m, from),
        fraction: none(m, from),
        needed: none(m, from),
        in_hand: none(m, from),
        worst_distance: none(m, from),
        worst: none(m, from),
        lowest: none(m, from),
        low_clearance: none(m, from),
        low_fraction: none(m, from),
        low_in_hand: none(m, from),
        raise_a: none(m, from),
        raise_b: none(m, from),
        raise_both: none(m, from),
        grown_in_hand: none(m, from),
    }
}

fn fill(sheet: &mut ProfileSheet, inputs: &Inputs<'_>, asked: &Asked, from: &[Place], frequencies: Both<Gigahertz>) {
    let (profile, sight) = (inputs.profile, &inputs.sight);
    let known = |value: Metres| Line::known(Fine(value), from);
    let lines = &mut sheet.lines;
    lines.source = Line::known(profile.source_words.clone(), from);
    let date = profile.date.map(Saying::name);
    lines.date = Line::new(date.ok_or_else(|| Missing::judged(Reason::NoDay, profile.uncertainty_place)), from);
    lines.points = Line::known(Saying::Count { number: profile.given }, from);
    lines.spacing = Line::known(profile.spacing, from);
    lines.uncertainty = known(inputs.uncertainty);
    let limited = [from, &[asked.place]].concat();
    if let Some((number, point)) = inputs.least(0.0, |point| inputs.radii(sight, point)) {
        let left = inputs.in_hand(sight, asked.fraction, point);
        let worst = inputs.worst(number, point);
        let (clearance, radius) = (sight.clearance(point) - inputs.uncertainty, sight.radius(inputs.frequency, point));
        lines.clearance = Line::known(Fine(clearance), &limited);
        lines.radius = Line::known(Fine(radius), &limited);
        lines.fraction = Line::known(Radii(clearance.0 / radius.0), &limited);
        lines.needed = Line::known(Fine(Metres(asked.fraction * radius.0)), &limited);
        lines.in_hand = Line::known(Fine(left), &limited);
        lines.worst_distance = Line::known(point.distance, &limited);
        lines.worst = Line::known(worst.what.said(), &limited);
        sheet.worst = Some(worst);
    }
    if let Some((number, point)) = inputs.least(0.0, |point| sight.clearance(point).0) {
        let lowest = sight.clearance(point);
        lines.lowest = known(lowest);
        if lowest.0 < 0.0 {
            sheet.obstruction = Some(inputs.worst(number, point));
        }
    }
    let none = || Missing::judged(Reason::NoLowK, asked.place);
    let low_sight = asked.low.map(|(k, fraction, place)| (Sightline { k, ..*sight }, fraction, place));
    if let Some((low, fraction, place)) = low_sight {
        let from = [from, &[place]].concat();
        if let Some((number, point)) = inputs.least(0.0, |point| inputs.radii(&low, point)) {
            let left = inputs.in_hand(&low, fraction, point);
            let (clearance, radius) = (low.clearance(point) - inputs.uncertainty, low.radius(inputs.frequency, point));
            lines.low_clearance = Line::known(Fine(clearance), &from);
            lines.low_fraction = Line::known(Radii(clearance.0 / radius.0), &from);
            lines.low_in_hand = Line::known(Fine(left), &from);
            sheet.low_worst = Some(inputs.worst(number, point));
        }
    } else {
        lines.low_clearance = Line::new(Err(none()), &[]);
        lines.low_fraction = Line::new(Err(none()), &[]);
        lines.low_in_hand = Line::new(Err(none()), &[]);
    }
    let raise = |which: Raise| {
        let median = inputs.raise(sight, asked.fraction, 0.0, which);
        let low = low_sight.map(|(low, fraction, _)| inputs.raise(&low, fraction, 0.0, which));
        Line::known(Fine(low.filter(|low| *low > median).unwrap_or(median)), &limited)
    };
    lines.raise_a = raise(Raise::Near);
    lines.raise_b = raise(Raise::Far);
    lines.raise_both = raise(Raise::Both);
    let grows = profile.standing.iter().any(|standing| standing.growth.0 > 0.0);
    let later = grows.then(|| inputs.least(1.0, |point| inputs.radii(sight, point))).flatten();
    let none = || Missing::judged(Reason::NothingGrows, asked.place);
    lines.grown_in_hand = Line::new(
        later.map(|(_, point)| Fine(inputs.in_hand(sight, asked.fraction, point))).ok_or_else(none),
        &limited,
    );
    sheet.diffraction = Line::known(BothWays(frequencies.map(|f| loss(inputs, f))), from);
}

/// Diffraction loss at a frequency: that of a single edge where one firm thing alone comes near the line.
fn loss(inputs: &Inputs<'_>, frequency: Gigahertz) -> Decibels {
    /// Clearance in radii below which an edge costs something: `ν = -0.78`.
    const FREE: f64 = 0.78 / std::f64::consts::SQRT_2;
    let (profile, sight) = (inputs.profile, &inputs.sight);
    let tops = profile.tops(0.0, Metres(0.0));
    let mut near =
        profile.points.iter().zip(&tops).filter(|(_, top)| {
            sight.spans(**top) && sight.clearance(**top).0 < FREE * sight.radius(frequency, **top).0
        });
    let Some((first, _)) = near.next() else { return Decibels(0.0) };
    let firm = |point: &GroundPoint| {
        let standing = point.standing?;
        (profile.standing[standing].what.kind != Some(ObstacleKind::Trees)).then_some(standing)
    };
    let single = firm(first).is_some() && near.all(|(point, _)| firm(point) == firm(first));
    let found = bullington::diffraction(sight, frequency, &tops);
    if single { found.edge } else { found.terrain }
}

/// The first trees that leave less than is asked for, where all is well today.
fn outgrown(inputs: &Inputs<'_>, asked: &Asked, today: Date) -> Option<Outgrown> {
    let left = |point: Point| inputs.in_hand(&inputs.sight, asked.fraction, point);
    let radii = |point: Point| inputs.radii(&inputs.sight, point);
    let (now, later) = (left(inputs.least(0.0, radii)?.1), left(inputs.least(1.0, radii)?.1));
    if now.0 < 0.0 || later.0 >= 0.0 {
        return None;
    }
    let from = years(inputs.profile.date.unwrap_or(today));
    let fails = |point: &GroundPoint| -> Option<(f64, Metres, &Standing)> {
        let standing = &inputs.profile.standing[point.standing?];
        let here = Point { distance: point.distance, top: inputs.profile.top(point, 0.0) };
        let spare = left(here);
        let in_time = standing.growth > spare && inputs.sight.spans(here);
        in_time.then(|| (standing.years * spare.0 / standing.growth.0, point.distance, standing))
    };
    let all = inputs.profile.points.iter().filter_map(fails);
    let (years, distance, standing) = all.min_by(|one, other| one.0.total_cmp(&other.0))?;
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a year of the common era")]
    let year = (from + years).floor() as u16;
    Some(Outgrown {
        what: standing.what.clone(),
        spot: standing.spot.clone(),
        year,
        distance,
        left: Fine(later),
        raise: Fine(inputs.raise(&inputs.sight, asked.fraction, 1.0, Raise::Both)),
    })
}

/// The gap between two points of the source, wider than the Fresnel zone, with the least clearance beside it, if that is
/// less than what could stand there unseen.
fn gap(inputs: &Inputs<'_>, fraction: f64, unseen: Metres) -> Option<Gap> {
    let (profile, sight) = (inputs.profile, &inputs.sight);
    let middle = Point { distance: Metres(sight.length.0 / 2.0), top: Metres(0.0) };
    let zone = Metres(2.0 * sight.radius(inputs.frequency, middle).0);
    if profile.spacing <= zone {
        return None;
    }
    let tiles = profile.source == Source::Tiles;
    // What lies next to the ends one sees from the site.
    let (first, last) = match (tiles, profile.points.first(), profile.points.last()) {
        (false, Some(first), Some(last)) => (first.distance, last.distance),
        _ => (profile.spacing, sight.length - profile.spacing),
    };
    let inside = |point: &GroundPoint| first < point.distance && point.distance < last;
    let given = profile.points.iter().enumerate().filter(|(_, point)| tiles || point.spot.is_some());
    let given: Vec<(usize, &GroundPoint)> = given.filter(|(_, point)| inside(point)).collect();
    // What is known to stand there is counted elsewhere; what is not stands on the ground.
    let left =
        |point: &GroundPoint| inputs.in_hand(sight, fraction, Point { distance: point.distance, top: point.ground });
    let wide = |pair: &[(usize, &GroundPoint)]| pair[1].1.distance - pair[0].1.distance > zone;
    // Points may lie closer together than the cells of the model they are from.
    let everywhere = profile.cell > zone;
    let inner = given.windows(2).filter(|pair| everywhere || wide(pair));
    let lower = |pair: &[(usize, &GroundPoint)]| {
        let (one, other) = (left(pair[0].1), left(pair[1].1));
        if one < other { one } else { other }
    };
    let worst = inner.min_by(|one, other| lower(one).0.total_cmp(&lower(other).0))?;
    let spare = lower(worst);
    (spare < unseen).then(|| Gap {
        between: [worst[0].1.distance, worst[1].1.distance],
        left: Fine(spare),
        zone: Fine(zone),
        spot: inputs.spot(worst[1].0),
    })
}
