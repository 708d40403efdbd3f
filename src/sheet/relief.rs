//! The ground under a hop and what stands on it, put together from whatever source the hop has.

use super::missing::Missing;
use super::reason::Reason;
use super::saying::Saying;
use super::terrain::{TerrainPath, Terrains, goes_by_tiles};
use super::what::What;
use crate::at;
use crate::finding::Spot;
use crate::network::ResolvedHop;
use crate::physics::clearance::Point;
use crate::physics::multipath;
use crate::place::Place;
use crate::spec::{Date, ObstacleKind};
use crate::units::{Given, Metres};

/// Between two points of a profile no more than this part of its length is left unlooked at: the ground is taken for
/// straight there, but the line and its Fresnel zone are not.
const FINEST: f64 = 256.0;

/// Where a profile is from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Source {
    /// Points written in the hop.
    Points,
    /// A file beside the hop.
    File,
    /// Tiles of the network.
    Tiles,
}

/// Something that stands on the ground.
#[derive(Debug, Clone, PartialEq)]
pub struct Standing {
    /// What it is.
    pub what: What,
    /// Height above the ground today.
    pub height: Metres,
    /// Metres it grows until its last day; zero for what does not grow.
    pub growth: Metres,
    /// Years until that day.
    pub years: f64,
    /// Where it is written.
    pub spot: Spot,
}

/// A point of the path.
#[derive(Debug, Clone, PartialEq)]
pub struct GroundPoint {
    /// Distance from end a.
    pub distance: Metres,
    /// Ground above sea level.
    pub ground: Metres,
    /// What stands there: its number in [`Profile::standing`].
    pub standing: Option<usize>,
    /// Where it is written; none for a point between two that are.
    pub spot: Option<Spot>,
}

/// The ground along a path.
#[derive(Debug, Clone)]
pub struct Profile {
    /// Where it is from.
    pub source: Source,
    /// In words, with names and files.
    pub source_words: Saying,
    /// Day of the heights, if it is known.
    pub date: Option<Date>,
    /// How far heights may be wrong, as stated.
    pub uncertainty: Option<Given<Metres>>,
    /// Where the uncertainty is or would be written.
    pub uncertainty_place: Place,
    /// Points as written, ends and obstacles among them, and points between.
    pub points: Vec<GroundPoint>,
    /// What stands on it.
    pub standing: Vec<Standing>,
    /// How many points the source gives.
    pub given: usize,
    /// Widest gap between two points of the source, or its cell if that is wider.
    pub spacing: Metres,
    /// Cell of the model the heights are from, if it is known; else nothing.
    pub cell: Metres,
    /// Where the profile is written.
    pub spot: Spot,
    /// The last point of the source.
    pub last: Metres,
}

/// Why there is no profile.
#[derive(Debug, Clone)]
pub enum NoProfile {
    /// Nobody gave one.
    None,
    /// Tiles are missing or have voids: what is said of them.
    Tiles(Reason),
    /// It could not be used; said where it stands.
    Broken(Missing),
}

impl Profile {
    /// The profile of a hop of a length.
    pub(super) fn of(hop: &ResolvedHop<'_>, terrains: &Terrains, length: Metres) -> Result<Self, NoProfile> {
        let mut profile = if !hop.hop.path.profile.is_empty() {
            written(hop)?
        } else if hop.hop.path.csv.is_some() {
            from_file(hop)?
        } else if goes_by_tiles(hop) {
            let found = terrains.along(hop.hop.at).ok_or(NoProfile::None)?;
            from_tiles(hop, found, length)?
        } else {
            return Err(NoProfile::None);
        };
        profile.stand_obstacles(hop, length)?;
        profile.fill_gaps(length);
        Ok(profile)
    }

    /// The top of a point with a share of the growth of what stands there: 0 today, 1 on its last day.
    #[must_use]
    pub fn top(&self, point: &GroundPoint, share: f64) -> Metres {
        match point.standing.map(|number| &self.standing[number]) {
            Some(standing) => point.ground + standing.height + Metres(standing.growth.0 * share),
            None => point.ground,
        }
    }

    /// All tops, raised by `more`.
    #[must_use]
    pub fn tops(&self, share: f64, more: Metres) -> Vec<Point> {
        let top = |point: &GroundPoint| Point { distance: point.distance, top: self.top(point, share) + more };
        self.points.iter().map(top).collect()
    }

    /// Mean height of the ground, without what stands on it. None without any length.
    pub(super) fn mean_ground(&self) -> Option<Metres> {
        let ground: Vec<_> = self.points.iter().map(|point| (point.distance, point.ground)).collect();
        multipath::mean_terrain(&ground)
    }

    /// The ground at a distance, straight between the points around it.
    #[must_use]
    pub fn ground_at(&self, distance: Metres) -> Metres {
        let after = self.points.partition_point(|point| point.distance < distance);
        match (after.checked_sub(1).and_then(|before| self.points.get(before)), self.points.get(after)) {
            (Some(before), Some(after)) => between(before, after, distance),
            (Some(one), None) | (None, Some(one)) => one.ground,
            (None, None) => Metres(0.0),
        }
    }

    /// Puts the obstacles of the hop on the ground.
    fn stand_obstacles(&mut self, resolved: &ResolvedHop<'_>, length: Metres) -> Result<(), NoProfile> {
        let hop = resolved.hop;
        let from = self.date.unwrap_or(resolved.network.date);
        for (i, obstacle) in hop.path.obstacles.iter().enumerate() {
            let start = obstacle.distance.value;
            let end = obstacle.to.as_ref().map_or(start, |to| to.value);
            if end < start {
                let reason = Reason::EdgesSwapped;
                return Err(NoProfile::Broken(Missing::new(reason, at!(hop.path.obstacles[i].to))));
            }
            if start >= length {
                let reason = Reason::ObstacleBeyondEnd { distance: Box::new(obstacle.distance.clone()), length };
                return Err(NoProfile::Broken(Missing::new(reason, at!(hop.path.obstacles[i].distance))));
            }
            if obstacle.growth.is_some() && obstacle.until.is_none() {
                let reason = Reason::GrowthWithoutDay;
                return Err(NoProfile::Broken(Missing::new(reason, at!(hop.path.obstacles[i].growth))));
            }
            let years = obstacle.until.map_or(0.0, |until| (years(until) - years(from)).max(0.0));
            let title = obstacle.title.as_ref().map(|title| title.to_string().into());
            let number = self.standing.len();
            self.standing.push(Standing {
                what: What { kind: Some(obstacle.kind), title },
                height: obstacle.height.value,
                growth: Metres(obstacle.growth.as_ref().map_or(0.0, |growth| growth.value.0) * years),
                years,
                spot: at!(hop.path.obstacles[i]).into(),
            });
            let edges = [start, end].map(|distance| (distance, self.ground_at(distance)));
            for (distance, ground) in edges {
                let at = self.points.partition_point(|point| point.distance < distance);
                if self.points.get(at).is_none_or(|point| point.distance > distance) {
                    self.points.insert(at, GroundPoint { distance, ground, standing: None, spot: None });
                }
            }
            let (height, standing) = (obstacle.height.value, &self.standing);
            for point in &mut self.points {
                let here = (start..=end).contains(&point.distance);
                if here && point.standing.is_none_or(|other| standing[other].height < height) {
                    point.standing = Some(number);
                }
            }
        }
        Ok(())
    }

    /// Adds points where the given ones lie far apart.
    fn fill_gaps(&mut self, length: Metres) {
        let most = length.0 / FINEST;
        if most <= 0.0 {
            return;
        }
        let mut filled = Vec::with_capacity(self.points.len());
        for point in std::mem::take(&mut self.points) {
            if let Some(last) = filled.last() {
                let last: &GroundPoint = last;
                let gap = point.distance - last.distance;
                // What stands at both sides of a gap, the same thing, stands in it too.
                let standing = last.standing.filter(|number| point.standing == Some(*number));
                #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "clamped to a few hundred")]
                let parts = (gap.0 / most).ceil().clamp(1.0, FINEST * 4.0) as u32;
                let made: Vec<GroundPoint> = (1..parts)
                    .map(|part| Metres(last.distance.0 + gap.0 * f64::from(part) / f64::from(parts)))
                    .map(|distance| {
                        let ground = between(last, &point, distance);
                        GroundPoint { distance, ground, standing, spot: None }
                    })
                    .collect();
                filled.extend(made);
            }
            filled.push(point);
        }
        self.points = filled;
    }
}

fn between(before: &GroundPoint, after: &GroundPoint, distance: Metres) -> Metres {
    let gap = (after.distance - before.distance).0;
    let share = if gap > 0.0 { (distance - before.distance).0 / gap } else { 0.0 };
    before.ground + Metres((after.ground - before.ground).0 * share)
}

/// A day as years of the common era.
pub(super) fn years(day: Date) -> f64 {
    const BEFORE: [u16; 12] = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334];
    let days = BEFORE[usize::from(day.month - 1)] + u16::from(day.day) - 1;
    f64::from(day.year) + f64::from(days) / 365.0
}

fn spacing(points: &[GroundPoint]) -> Metres {
    points.windows(2).map(|pair| pair[1].distance - pair[0].distance).fold(Metres(0.0), wider)
}

fn wider(one: Metres, other: Metres) -> Metres {
    if one < other { other } else { one }
}

/// What all sources but tiles share.
fn of_hop(resolved: &ResolvedHop<'_>, source: Source, points: Vec<GroundPoint>, spot: Spot, words: Saying) -> Profile {
    let hop = resolved.hop;
    let cell = hop.path.resolution.as_ref().map_or(Metres(0.0), |given| given.value);
    let stated = hop.path.source.as_ref().map(|source| format!("{source} ({words})"));
    Profile {
        source,
        source_words: stated.map_or(words, Saying::name),
        date: hop.path.date,
        uncertainty: hop.path.uncertainty.clone(),
        uncertainty_place: at!(hop.path.uncertainty),
        given: points.len(),
        cell,
        spacing: wider(spacing(&points), cell),
        last: points.last().map_or(Metres(0.0), |point| point.distance),
        points,
        standing: Vec::new(),
        spot,
    }
}

fn written(resolved: &ResolvedHop<'_>) -> Result<Profile, NoProfile> {
    let hop = resolved.hop;
    let mut standing = Vec::new();
    let mut points: Vec<GroundPoint> = Vec::new();
    for (i, point) in hop.path.profile.iter().enumerate() {
        let spot = at!(hop.path.profile[i]);
        let distance = point.distance.value;
        if points.last().is_some_and(|last| last.distance >= distance) {
            let reason = Reason::ProfileOutOfOrder;
            return Err(NoProfile::Broken(Missing::new(reason, at!(hop.path.profile[i].distance))));
        }
        let there = point.obstacle.as_ref().map(|obstacle| {
            let before = points.last().and_then(|last| last.standing);
            stand(&mut standing, before, (obstacle.kind, obstacle.height.value), spot.into())
        });
        points.push(GroundPoint { distance, ground: point.ground.value, standing: there, spot: Some(spot.into()) });
    }
    if points.len() < 2 {
        let reason = Reason::ProfileTooShort;
        return Err(NoProfile::Broken(Missing::new(reason, at!(hop.path.profile))));
    }
    let words = Saying::PointsInHop;
    let profile = of_hop(resolved, Source::Points, points, at!(hop.path.profile).into(), words);
    Ok(Profile { standing, ..profile })
}

/// The number of what stands at a point: that of the point before if it is the same, which then reaches from one to the
/// other.
fn stand(all: &mut Vec<Standing>, before: Option<usize>, what: (ObstacleKind, Metres), spot: Spot) -> usize {
    let (kind, height) = what;
    if let Some(before) =
        before.filter(|before| (all[*before].what.kind, all[*before].height) == (Some(what.0), what.1))
    {
        return before;
    }
    all.push(Standing { what: What { kind: Some(kind), title: None }, height, growth: Metres(0.0), years: 0.0, spot });
    all.len() - 1
}

fn from_file(resolved: &ResolvedHop<'_>) -> Result<Profile, NoProfile> {
    let hop = resolved.hop;
    let file = match resolved.profile_file {
        Some(Ok(file)) => file,
        Some(Err(spot)) => return Err(NoProfile::Broken(Missing::broken(Reason::BrokenProfileFile, spot.clone()))),
        None => return Err(NoProfile::None),
    };
    let mut standing = Vec::new();
    let mut points: Vec<GroundPoint> = Vec::with_capacity(file.rows.len());
    for row in file.rows.iter() {
        let spot = Spot::Bytes(file.file, row.line.0 as usize..row.line.1 as usize);
        let before = points.last().and_then(|last| last.standing);
        let there = row.obstacle.map(|what| stand(&mut standing, before, what, spot.clone()));
        points.push(GroundPoint { distance: row.distance, ground: row.ground, standing: there, spot: Some(spot) });
    }
    let words = Saying::name(hop.path.csv.as_ref().map(ToString::to_string).unwrap_or_default());
    let profile = of_hop(resolved, Source::File, points, at!(hop.path.csv).into(), words);
    Ok(Profile { standing, ..profile })
}

fn from_tiles(resolved: &ResolvedHop<'_>, found: &TerrainPath, length: Metres) -> Result<Profile, NoProfile> {
    let network = resolved.network;
    if found.void {
        return Err(NoProfile::Tiles(Reason::TileVoid));
    }
    if !found.missing.is_empty() {
        let names: Vec<&str> = found.missing.iter().map(String::as_str).collect();
        return Err(NoProfile::Tiles(Reason::NoTile { cells: names.join(", ").into() }));
    }
    let steps = u32::try_from(found.heights.len().saturating_sub(1)).unwrap_or(u32::MAX).max(1);
    let point = |(step, height): (u32, &Option<Metres>)| {
        let distance = Metres(length.0 * f64::from(step) / f64::from(steps));
        Some(GroundPoint { distance, ground: (*height)?, standing: None, spot: None })
    };
    let points: Option<Vec<GroundPoint>> = (0..).zip(&found.heights).map(point).collect();
    let (Some(points), Some(terrain)) = (points, &network.spec.terrain) else { return Err(NoProfile::None) };
    let used: Vec<&str> = found.used.iter().map(String::as_str).collect();
    let names: Box<str> = used.join(", ").into();
    let source_words = match &terrain.source {
        Some(source) => Saying::TilesOf { source: source.to_string().into(), names },
        None => Saying::Tiles { names },
    };
    let (own, given) = (resolved.hop, terrain.uncertainty.clone());
    let (uncertainty, uncertainty_place) = match &own.spec.path.uncertainty {
        Some(own_given) => (Some(own_given.clone()), at!(own.path.uncertainty)),
        None => (given, at!(network.terrain)),
    };
    Ok(Profile {
        source: Source::Tiles,
        source_words,
        date: terrain.date,
        uncertainty,
        uncertainty_place,
        given: points.len(),
        cell: found.spacing,
        spacing: found.spacing,
        last: length,
        points,
        standing: Vec::new(),
        spot: at!(network.terrain).into(),
    })
}
