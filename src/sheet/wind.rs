//! One end in the wind: what presses on it, how far its pole turns the beam, how hard the foot of the pole is worked.
//!
//! Only a pole that stands free is a cantilever; masts and wall tubes are a structural engineer's. All that other ends put
//! on the same support counts.

use super::line::{Line, lines};
use super::method::{Method, cited};
use super::missing::Missing;
use super::pole::{self, Facing, Standing, StifferPipe};
use super::reason::Reason;
use super::saying::Saying;
use super::traced::{Traced, all, read, see, written};
use crate::at;
use crate::network::{Fellow, ResolvedEnd, ResolvedHop};
use crate::physics::cantilever::Pole;
use crate::physics::{antenna, wind};
use crate::spec::{Wind, WindSpeeds};
use crate::units::{Decibels, Degrees, Given, Megapascals, Metres, MetresPerSecond, NewtonMetres, Newtons, Pascals};

const GUST: &str = "0.625 v², the speed a gust at the antenna";
const EN: Method = cited("EN 1991-1-4:2005 peak velocity pressure at the height of the antenna (from memory)");
const ASCE: Method = cited("ASCE 7-16 velocity pressure at the height of the antenna (from memory)");
const NOD: &str = "cantilever fixed at its foot, all forces on it added by their size: an upper bound of the wind, but what holds the foot gives way too";
const TWIST: &str = "Σ F e min(a, h) / (G J), G = E / 2.6; as if all antennas sat on one side";
const MOMENT: &str = "Σ F h + F_p L / 2, forces added by their size: an upper bound for all directions of the wind";

lines! {
    /// What wind does to one end.
    WindLines {
        pressure: Pascals, "q", "pressure of the operating wind", GUST;
        force: Newtons, "F", "force of it on antenna and radio", cited("q (1.3 A of the antenna + 1.2 A of the radio); drag from memory");
        company: Saying, "", "what else stands on the support", "ends of other hops of the network, with their heights";
        others_force: Newtons, "", "force of it on what else stands there", cited("as F, each at the pressure of its own height; drag from memory");
        pole_force: Newtons, "", "force of it on the pole", cited("1.2 q times diameter and free length; drag from memory");
        nod: Degrees, "φ", "nod of the antenna in that wind", NOD;
        twist: Degrees, "", "swing of the antenna in that wind", TWIST;
        turn: Degrees, "", "least movement of the beam in that wind", "root sum of squares of nod and swing";
        aim_loss: Decibels, "", "loss of aim in that wind, this end", cited("12 (θ/θ_3)², to 0.9 θ_3 (ITU-R F.699-8, main beam)");
        survival_pressure: Pascals, "", "pressure of the survival wind", GUST;
        survival_moment: NewtonMetres, "M", "moment at the foot of the pole in it", MOMENT;
        own_moment: NewtonMetres, "", "of it by antenna and radio of this end", "F h";
        others_moments: Saying, "", "of it by what else stands there", "F h of each";
        survival_stress: Megapascals, "σ", "stress at the foot of the pole in it", "M / Z; no load factor, no ice: engineer to confirm";
        strength: Megapascals, "", "yield strength of the pole", cited("commonest grade of the material (from memory)");
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

/// A pressure of wind and how it follows from its speed.
type Pressure = (Pascals, Method);

/// A wind with what its speed is.
#[derive(Debug, Clone, Copy)]
struct Gale {
    speeds: WindSpeeds,
    speed: MetresPerSecond,
}

impl Gale {
    fn at(self, height: Metres) -> Pressure {
        pressure(self.speeds, self.speed, height)
    }
}

/// All that stands on a support, and the support.
struct Carried<'c, 'n> {
    height: Traced<Metres>,
    own: Traced<Facing>,
    fellows: &'c [Fellow<'n>],
    /// Where the others stand.
    heights: Traced<Vec<Given<Metres>>>,
    others: Traced<Vec<Facing>>,
    standing: Traced<Standing>,
}

/// One end in one wind.
struct Blown {
    gale: Traced<Gale>,
    pressure: Traced<Pressure>,
    /// The own load first, then the others.
    pole: Traced<Pole>,
}

impl Blown {
    fn of(gale: Traced<Gale>, carried: &Carried<'_, '_>) -> Self {
        let pressure = all((&gale, &carried.height)).map(|(gale, height)| gale.at(height));
        let pole =
            all((&gale, &carried.own, &carried.others, &carried.standing)).map(|(gale, own, others, standing)| {
                standing.in_wind(std::iter::once(&own).chain(&others), |height| gale.at(height).0)
            });
        Self { gale, pressure, pole }
    }

    fn pressure(&self) -> Line<Pascals> {
        let method = self.pressure.get().map_or(GUST.into(), |(_, method)| method);
        self.pressure.map(|(pressure, _)| pressure).by(method)
    }

    fn force(&self, own: &Traced<Facing>) -> Traced<Newtons> {
        all((&self.pressure, own)).map(|((pressure, _), own)| Newtons(pressure.0 * own.area))
    }

    /// What others feel of it.
    fn on_others(&self, others: &Traced<Vec<Facing>>) -> Traced<Newtons> {
        let others = others.unless(|others| others.is_empty().then_some(Reason::StandsAlone));
        all((&self.gale, &others))
            .map(|(gale, others)| Newtons(others.iter().map(|facing| gale.at(facing.height).0.0 * facing.area).sum()))
    }

    /// How much of the moment is whose, of the others.
    fn moments(&self, fellows: &[Fellow<'_>]) -> Traced<Saying> {
        let alone = fellows.is_empty();
        let ids = fellows.iter().fold(self.pole.clone(), |pole, fellow| {
            let hop = fellow.hop.hop;
            pole.decided_by(&see!(hop.id))
        });
        let pole = ids.unless(|_| alone.then_some(Reason::StandsAlone));
        pole.map(|pole| {
            let others = fellows.iter().zip(pole.loads.iter().skip(1));
            Saying::list(others.map(|(fellow, load)| Saying::MomentOf {
                hop: (*fellow.hop.hop.id.0).into(),
                end: fellow.end.name,
                moment: load.moment(),
            }))
        })
    }
}

/// How high the others stand.
fn heights(fellows: &[Fellow<'_>]) -> Traced<Vec<Given<Metres>>> {
    if fellows.len() > pole::MOST_OTHERS {
        return pole::crowded(fellows);
    }
    let each = fellows.iter().map(|fellow| {
        let (hop, end) = (fellow.hop.hop, fellow.end.end);
        written!(end.height).decided_by(&see!(end.support)).decided_by(&see!(hop.id))
    });
    Traced::each(&each.collect::<Vec<_>>())
}

impl Carried<'_, '_> {
    /// What else stands on the support, in words.
    fn company(&self) -> Traced<Saying> {
        let heights = self.heights.unless(|heights| heights.is_empty().then_some(Reason::StandsAlone));
        heights.map(|heights| {
            let ends = self.fellows.iter().zip(heights);
            Saying::list(ends.map(|(fellow, height)| Saying::EndAt {
                hop: (*fellow.hop.hop.id.0).into(),
                end: fellow.end.name,
                height: height.into(),
            }))
        })
    }
}

/// The lines, and a pipe that would hold still enough where the pole does not.
pub(super) fn compute(
    own: &ResolvedEnd<'_>,
    hop: &ResolvedHop<'_>,
    fellows: &[Fellow<'_>],
    allowed: Decibels,
) -> (WindLines, Option<StifferPipe>) {
    let (end, network) = (own.end, hop.network);
    let unstated = || Traced::missing(Missing::judged(Reason::NoWind, at!(network.climate.wind)));
    let wind = stated(own, hop).unwrap_or_else(unstated);
    let carried = Carried {
        height: read!(end.height),
        own: Facing::of(own, Reason::NoWindArea),
        fellows,
        heights: heights(fellows),
        others: pole::others(fellows),
        standing: Standing::of(own),
    };
    let blown = |speed: fn(&Wind) -> Option<MetresPerSecond>| {
        let gale = wind
            .judge(|wind| speed(wind).map(|speed| Gale { speeds: wind.speeds, speed }).ok_or(Reason::NoSurvivalWind));
        Blown::of(gale, &carried)
    };
    let now = blown(|wind| Some(wind.operating.value));
    let then = blown(|wind| wind.survival.as_ref().map(|given| given.value));
    let lines = lines(own, &carried, &now, &then);
    let stiffer = stiffer(own, &lines, &carried, &now, allowed);
    (lines, stiffer)
}

fn lines(own: &ResolvedEnd<'_>, carried: &Carried<'_, '_>, now: &Blown, then: &Blown) -> WindLines {
    let dish = own.antenna;
    let at = all((&carried.standing, &carried.height)).map(|(standing, height)| standing.above_foot(height));
    let moved = |how: fn(&Pole, Metres) -> Degrees| all((&now.pole, &at)).map(|(pole, at)| how(&pole, at));
    let turn = moved(Pole::turn);
    let off = at!(dish.beamwidth);
    let aim_loss = all((&turn, &read!(dish.beamwidth))).try_map(|(turn, beam)| {
        antenna::pointing_loss(turn, beam).ok_or_else(|| Missing::judged(Reason::WindBeyondBeam, off))
    });
    let inputs = all((&now.gale, &carried.height, &carried.heights, &carried.standing));
    let pole_force = inputs.map(|(gale, own, others, standing)| {
        let antennas = std::iter::once(own).chain(others.iter().map(|height| height.value));
        standing.own_force(antennas, |height| gale.at(height).0)
    });
    WindLines {
        pressure: now.pressure(),
        force: now.force(&carried.own).line(),
        company: carried.company().line(),
        others_force: now.on_others(&carried.others).line(),
        pole_force: pole_force.line(),
        nod: moved(Pole::nod).line(),
        twist: moved(Pole::twist).line(),
        turn: turn.line(),
        aim_loss: aim_loss.line(),
        survival_pressure: then.pressure(),
        survival_moment: then.pole.map(|pole| pole.moment()).line(),
        own_moment: then.pole.try_map(|pole| Ok(pole.loads[0].moment())).line(),
        others_moments: then.moments(carried.fellows).line(),
        survival_stress: then.pole.map(|pole| pole.stress()).line(),
        strength: carried.standing.map(|standing| standing.strength).line(),
    }
}

/// The pipe to take in place of a pole that sways too much with all it carries; none while it does not, and where no pipe
/// would do.
fn stiffer(
    own: &ResolvedEnd<'_>,
    lines: &WindLines,
    carried: &Carried<'_, '_>,
    now: &Blown,
    allowed: Decibels,
) -> Option<StifferPipe> {
    lines.turn.get()?;
    if lines.aim_loss.get().is_some_and(|loss| loss <= allowed) {
        return None;
    }
    let (gale, facing, height) = (now.gale.get()?, carried.own.get()?, carried.height.get()?);
    let (standing, others) = (carried.standing.get()?, carried.others.value().ok()?);
    let beam = own.antenna.beamwidth.value;
    let brackets = std::iter::once(own).chain(carried.fellows.iter().map(|fellow| fellow.end));
    pole::thinnest(standing, &brackets.map(|end| &*end.bracket.spec), |standing| {
        let pole = standing.in_wind(std::iter::once(&facing).chain(others), |height| gale.at(height).0);
        let turn = pole.turn(standing.above_foot(height));
        antenna::pointing_loss(turn, beam).is_some_and(|loss| loss <= allowed)
    })
}
