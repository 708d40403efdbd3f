//! Line of sight: the clearance of the path at its worst point, what it costs if there is too little, and how much higher
//! the antennas must go.

use std::sync::Arc;

use super::asked::Asked;
use super::assumption::Assumption;
use super::gap::{self, Gap, UNSEEN_HEIGHT};
use super::geometry::{Geometry, frequency};
use super::growth::{self, Outgrown};
use super::key::SectionKey;
use super::line::{AS_WRITTEN, Section, lines};
use super::method::{Method, cited};
use super::missing::Missing;
use super::obstacles;
use super::reason::Reason;
use super::relief::{NoProfile, Profile};
use super::saying::Saying;
use super::scene::{Pick, Scene, Worst};
use super::shown::{BothWays, Fine, Radii, Ratio};
use super::terrain::{Terrains, goes_by_tiles};
use super::title::Title;
use super::traced::{Traced, all, see};
use crate::at;
use crate::network::ResolvedHop;
use crate::physics::clearance::{Raise, Sightline};
use crate::physics::geodesy::MEDIAN_K;
use crate::place::Place;
use crate::spec::{Both, Way};
use crate::units::{Gigahertz, Metres};

/// What is asked for, by whom.
const CRITERIA: Method = cited(
    "criteria of the network, 1.0 F1 if it names none (ITU-R P.530-18 §2.2.2, from memory), or its limits.clearance",
);
/// How the low `k` is found.
const LOW_K: Method = cited(
    "climate.low_k, else 157/(144 + 2670/d), d at least 20 km: closed form of older literature for the figure of ITU-R P.530 §2.2.2, from memory",
);
/// What is left at the low `k`.
const LOW_IN_HAND: Method = cited(
    "c / F1 less the one asked for by the criteria of the network, 0.3 F1 if it names none (ITU-R P.530-18 §2.2.2, from memory), or by its limits.low_k_clearance",
);

lines! {
    /// The profile and what the line of sight keeps from it. Clearances are those of the worst point.
    ProfileLines {
        source: Saying, "", "source of the profile", AS_WRITTEN;
        date: Saying, "", "day of its heights", AS_WRITTEN;
        points: Saying, "", "points of the source", "counted";
        spacing: Metres, "", "widest gap between its points", "differences of distance, or the cell of the source if that is wider";
        uncertainty: Fine, "u", "uncertainty of its heights", "as written, none where nothing is written";
        clearance: Fine, "c", "clearance at the worst point, k = 4/3",
            cited("height of the line over the bulging Earth less the top less u (ITU-R P.530-18 §2.2.2, step 3)");
        radius: Fine, "F1", "radius of the first Fresnel zone there", cited("ITU-R P.526-15 §2, at the lower frequency");
        fraction: Radii, "c/F1", "clearance there in Fresnel radii", "c / F1";
        needed: Fine, "", "clearance asked for there", CRITERIA;
        in_hand: Radii, "", "clearance in hand", "c / F1 less the one asked for";
        worst_distance: Metres, "d_1", "distance of the worst point from a", "the point with the least c / F1";
        worst: Saying, "", "what stands there", AS_WRITTEN;
        lowest: Fine, "", "least height of the line over any top, k = 4/3", "height of the line less the top";
        low_k: Ratio, "k_e", "effective Earth radius factor, low k", LOW_K;
        low_clearance: Fine, "", "clearance at the worst point, low k", "as at k = 4/3";
        low_fraction: Radii, "", "clearance there in Fresnel radii, low k", "c / F1";
        low_in_hand: Radii, "", "clearance in hand, low k",
            LOW_IN_HAND;
        raise_a: Fine, "", "end a must go up by, alone", "similar triangles at every point, exact";
        raise_b: Fine, "", "end b must go up by, alone", "similar triangles at every point, exact";
        raise_both: Fine, "", "or both ends must go up by", "most of what any point lacks, exact";
        grown_in_hand: Radii, "", "clearance in hand when the trees are grown", "as in hand, with growth until its last day, at the k that leaves less";
    }
}

/// Line of sight of a hop.
#[derive(Debug)]
pub struct ProfileSheet {
    /// The numbers.
    pub lines: ProfileLines,
    /// What the obstacles cost; a line of the path.
    pub(super) diffraction: Traced<BothWays>,
    /// Mean height of its ground; a line of the path.
    pub(super) mean_terrain: Traced<Metres>,
    /// The ground, if there is a profile.
    pub ground: Result<Arc<Profile>, NoProfile>,
    /// The straight line at `k` of 4/3.
    pub sight: Option<Sightline>,
    /// The lower frequency, whose Fresnel zone is the wider.
    pub(super) frequency: Traced<Gigahertz>,
    asked: Asked,
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
    /// The fraction of the Fresnel zone asked for at the median `k`, and where it is, or would be, written.
    #[must_use]
    pub fn asked(&self) -> Option<(Radii, Place)> {
        Some((Radii(self.asked.median.fraction.get()?), self.asked.median.place))
    }

    /// The same at the low `k`.
    #[must_use]
    pub fn asked_low(&self) -> Option<(Radii, Place)> {
        Some((Radii(self.asked.low.fraction.get()?), self.asked.low.place))
    }

    /// Where the low `k` is written; none where it is that of the length.
    #[must_use]
    pub const fn low_k_at(&self) -> Option<Place> {
        self.asked.low_k_at
    }

    /// Whether the path has the clearance asked for at the median `k`, and lacks it at the low one.
    #[must_use]
    pub fn passes_at_median_only(&self) -> bool {
        let (median, low) = (self.lines.in_hand.get(), self.lines.low_in_hand.get());
        median.is_some_and(|left| left.0 >= 0.0) && low.is_some_and(|left| left.0 < 0.0)
    }

    /// What stands in for what nobody chose.
    #[must_use]
    pub fn assumptions(&self) -> Vec<Assumption> {
        if self.ground.is_ok() { self.asked.assumptions() } else { Vec::new() }
    }

    pub(super) const fn fraction(&self) -> &Traced<f64> {
        &self.asked.median.fraction
    }

    /// The frequency its Fresnel zone is that of.
    #[must_use]
    pub fn lower_frequency(&self) -> Option<Gigahertz> {
        self.frequency.get()
    }

    pub(super) fn missing(&self, each: &mut dyn FnMut(&'static str, &Missing)) {
        self.lines.missing(each);
    }

    pub(super) fn section(&self) -> Section {
        self.lines.section(SectionKey::Profile, Title::LineOfSight)
    }

    /// The ground, if there is a profile.
    #[must_use]
    pub fn profile(&self) -> Option<&Profile> {
        self.ground.as_deref().ok()
    }
}

/// What the lines are computed from, each by itself.
struct Inputs {
    profile: Traced<Arc<Profile>>,
    sight: Traced<Sightline>,
    frequency: Traced<Gigahertz>,
}

impl Inputs {
    /// Something seen in the whole.
    fn look<T>(&self, see: impl FnOnce(&Scene<'_>) -> T) -> Traced<T> {
        all((&self.profile, &self.sight, &self.frequency))
            .map(|(profile, sight, frequency)| see(&Scene { profile: &profile, sight, frequency }))
    }

    /// The same with something asked of it.
    fn look_for<A: Clone, T>(&self, asked: &Traced<A>, see: impl FnOnce(&Scene<'_>, A) -> T) -> Traced<T> {
        let inputs = all((&self.profile, &self.sight, &self.frequency, asked));
        inputs.map(|(profile, sight, frequency, asked)| see(&Scene { profile: &profile, sight, frequency }, asked))
    }
}

pub(super) fn compute(resolved: &ResolvedHop<'_>, geometry: &Geometry, terrains: &Terrains) -> ProfileSheet {
    let network = resolved.network;
    let frequencies = Both::ways(|way: Way| frequency(resolved, way).map(|given| given.value));
    let lower = all((&frequencies.a, &frequencies.b)).map(|(one, other)| if one < other { one } else { other });
    let ends = &geometry.altitudes;
    let sight = all((&ends.a, &ends.b, &geometry.distance)).map(|(near, far, length)| Sightline {
        near,
        far,
        length,
        k: MEDIAN_K,
    });
    let ground = match geometry.distance.value() {
        Ok(length) => Profile::of(resolved, terrains, *length).map(Arc::new),
        Err(missing) => Err(NoProfile::Broken(missing.clone())),
    };
    let profile = traced(resolved, geometry, &ground);
    let inputs = Inputs { profile, sight: sight.clone(), frequency: lower.clone() };
    let asked = Asked::of(resolved, &geometry.distance);
    let diffraction = all((&frequencies.a, &frequencies.b));
    let diffraction = inputs.look_for(&diffraction, |scene, (there, back)| {
        BothWays(Both { a: obstacles::loss(scene, there), b: obstacles::loss(scene, back) })
    });
    let unseen = network.limits.unseen_height.as_ref().map_or(UNSEEN_HEIGHT, |given| given.value);
    let worst = inputs.look(|scene| scene.worst(0.0));
    let low = inputs.look_for(&asked.low_k, |scene, k| scene.at(k).worst(0.0));
    let obstruction = inputs.look(|scene| scene.lowest().filter(|(_, height)| height.0 < 0.0).map(|(pick, _)| pick));
    let describe = |pick: &Traced<Option<Pick>>| {
        let pick = pick.get().flatten()?;
        inputs.look(|scene| scene.describe(pick)).value().ok().cloned()
    };
    let today = network.date;
    let outgrown = inputs.look_for(&asked.both(), |scene, (fraction, (k, low))| {
        growth::outgrown([(scene, fraction), (&scene.at(k), low)], today)
    });
    let gap = inputs.look_for(&asked.median.fraction, |scene, fraction| gap::gap(scene, fraction, unseen));
    ProfileSheet {
        lines: lines(&inputs, &asked, &worst, &low),
        worst: describe(&worst),
        low_worst: describe(&low),
        obstruction: describe(&obstruction),
        outgrown: outgrown.value().ok().cloned().flatten(),
        gap: gap.value().ok().cloned().flatten(),
        mean_terrain: inputs.profile.map(|profile| profile.mean_ground()).stated(Reason::NoProfile),
        diffraction,
        sight: inputs.profile.value().ok().and(sight.get()),
        ground: match (ground, inputs.profile.value()) {
            (Ok(_), Err(broken)) => Err(NoProfile::Broken(broken.clone())),
            (ground, _) => ground,
        },
        frequency: lower,
        asked,
    }
}

/// The ground with what it was put together from.
fn traced(
    resolved: &ResolvedHop<'_>,
    geometry: &Geometry,
    ground: &Result<Arc<Profile>, NoProfile>,
) -> Traced<Arc<Profile>> {
    let (hop, network) = (resolved.hop, resolved.network);
    let place = at!(hop.path);
    let written = all((&see!(hop.path), &geometry.distance));
    let profile = written.try_map(|_| match ground {
        Ok(profile) => Ok(Arc::clone(profile)),
        Err(NoProfile::Broken(missing)) => Err(missing.clone()),
        Err(NoProfile::Tiles(why)) => Err(Missing::judged(why.clone(), place)),
        Err(NoProfile::None) => Err(Missing::judged(Reason::NoProfile, place)),
    });
    // Heights grow from the day of the network where the profile has none.
    let profile = if hop.path.obstacles.iter().any(|obstacle| obstacle.growth.is_some()) {
        profile.decided_by(&see!(network.date))
    } else {
        profile
    };
    if goes_by_tiles(resolved) { profile.decided_by(&see!(network.terrain)) } else { profile }
}

fn lines(inputs: &Inputs, asked: &Asked, worst: &Traced<Option<Pick>>, low: &Traced<Option<Pick>>) -> ProfileLines {
    let profile = &inputs.profile;
    let worst = worst.stated(Reason::NoProfile);
    let low = low.stated(Reason::NoProfile);
    let asked_for = |pick: &Traced<Pick>, fraction: &Traced<f64>| {
        all((pick, fraction)).map(|(pick, fraction)| Radii(pick.radii() - fraction)).line()
    };
    let raise = |which: Raise| {
        let raise = inputs.look_for(&asked.both(), |scene, (fraction, low)| {
            let median = scene.raise(fraction, 0.0, which);
            let low = scene.at(low.0).raise(low.1, 0.0, which);
            Fine(if low > median { low } else { median })
        });
        raise.line()
    };
    let grown = inputs.look_for(&asked.both(), |scene, (fraction, (k, low))| {
        growth::in_hand([(scene, fraction), (&scene.at(k), low)])
    });
    let described = inputs.look(|scene| scene.worst(0.0).map(|pick| scene.describe(pick).what.said()));
    let lowest = inputs.look(|scene| scene.lowest().map(|(_, height)| Fine(height)));
    ProfileLines {
        // That there is none is told where the source would be; one that is broken is told of elsewhere.
        source: profile
            .map(|profile| profile.source_words.clone())
            .or_told(|reason| Saying::NoSource { why: reason.clone() })
            .line(),
        date: profile.map(|profile| profile.date.map(Saying::name)).stated(Reason::NoDay).line(),
        points: profile.map(|profile| Saying::Count { number: profile.given }).line(),
        spacing: profile.map(|profile| profile.spacing).line(),
        uncertainty: profile
            .map(|profile| Fine(profile.uncertainty.as_ref().map_or(Metres(0.0), |given| given.value)))
            .line(),
        clearance: worst.map(|pick| Fine(pick.clearance)).line(),
        radius: worst.map(|pick| Fine(pick.radius)).line(),
        fraction: worst.map(|pick| Radii(pick.radii())).line(),
        needed: all((&worst, &asked.median.fraction))
            .map(|(pick, fraction)| Fine(Metres(fraction * pick.radius.0)))
            .line(),
        in_hand: asked_for(&worst, &asked.median.fraction),
        worst_distance: worst.map(|pick| pick.point.distance).line(),
        worst: described.stated(Reason::NoProfile).line(),
        lowest: lowest.stated(Reason::NoProfile).line(),
        low_k: all((profile, &asked.low_k)).map(|(_, k)| Ratio(k)).line(),
        low_clearance: low.map(|pick| Fine(pick.clearance)).line(),
        low_fraction: low.map(|pick| Radii(pick.radii())).line(),
        low_in_hand: asked_for(&low, &asked.low.fraction),
        raise_a: raise(Raise::Near),
        raise_b: raise(Raise::Far),
        raise_both: raise(Raise::Both),
        grown_in_hand: grown.stated(Reason::NothingGrows).line(),
    }
}
