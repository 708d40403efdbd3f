//! One end in the wind: what presses on it, how far its pole turns the beam, how hard the foot of the pole is worked.
//!
//! Only a pole that stands free is a cantilever; masts and wall tubes are a structural engineer's. All that other ends put
//! on the same support counts.

use super::blown::{Blown, Carried};
use super::gale::{self, BY_SLOPE, GUST, Raise};
use super::line::{AS_WRITTEN, Line, lines};
use super::method::cited;
use super::missing::Missing;
use super::pole::{self, StifferPipe};
use super::reason::Reason;
use super::saying::Saying;
use super::shown::Ratio;
use super::traced::{Traced, all, read, see};
use crate::at;
use crate::network::{Fellow, ResolvedEnd, ResolvedHop};
use crate::physics::antenna;
use crate::physics::cantilever::Pole;
use crate::spec::Wind;
use crate::units::{Decibels, Degrees, Megapascals, Metres, MetresPerSecond, NewtonMetres, Newtons, Pascals};

const NOD: &str = "cantilever fixed at its foot, all forces on it added by their size: an upper bound of the wind, but what holds the foot gives way too";
const TWIST: &str = "Σ F e min(a, h) / (G J), G = E / 2.6; as if all antennas sat on one side";
const MOMENT: &str = "Σ F h + F_p L / 2, forces added by their size: an upper bound for all directions of the wind";

lines! {
    /// What wind does to one end.
    WindLines {
        orography: Ratio, "c_o", "orography factor at the antenna", AS_WRITTEN;
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

/// The lines, and a pipe that would hold still enough where the pole does not.
pub(super) fn compute(
    own: &ResolvedEnd<'_>,
    hop: &ResolvedHop<'_>,
    fellows: &[Fellow<'_>],
    allowed: Decibels,
) -> (WindLines, Option<StifferPipe>) {
    let wind = gale::stated(own, hop);
    let raise = gale::raise(own, &wind);
    let carried = Carried::of(own, fellows);
    let blown = |speed: fn(&Wind) -> Option<MetresPerSecond>| Blown::of(gale::gale(&wind, &raise, speed), &carried);
    let now = blown(|wind| Some(wind.operating.value));
    let then = blown(|wind| wind.survival.as_ref().map(|given| given.value));
    let lines = lines(own, &carried, &now, &then, orography(own, &wind, &raise, &carried.height));
    let stiffer = stiffer(own, &lines, &carried, &now, allowed);
    (lines, stiffer)
}

/// How much the ground raises the wind at the antenna, where anybody states that it does.
fn orography(
    own: &ResolvedEnd<'_>,
    wind: &Traced<&Wind>,
    raise: &Traced<Option<Raise>>,
    height: &Traced<Metres>,
) -> Line<Ratio> {
    let site = own.site;
    let place = at!(site.orography);
    let raise = all((raise, &see!(site.orography), wind)).try_map(|(raise, stated, wind)| {
        let why = || gale::left_out(stated.as_ref(), wind.speeds).unwrap_or(Reason::NoOrography);
        raise.ok_or_else(|| Missing::judged(why(), place))
    });
    let method = match raise.get() {
        Some(Raise::Slope(_)) => BY_SLOPE,
        _ => AS_WRITTEN.into(),
    };
    let line = all((&raise, height)).map(|(raise, height)| Ratio(raise.factor(height))).by(method);
    match raise.get() {
        Some(Raise::Pressure(_)) => line.called("topographic factor of the site"),
        _ => line,
    }
}

fn lines(
    own: &ResolvedEnd<'_>,
    carried: &Carried<'_, '_>,
    now: &Blown,
    then: &Blown,
    orography: Line<Ratio>,
) -> WindLines {
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
        standing.tube().force(antennas, |height| gale.at(height).0)
    });
    WindLines {
        orography,
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
