//! Ice on one end and its support, as stated, and the survival wind on it.

use super::blown::{Blown, Carried};
use super::gale;
use super::line::{AS_WRITTEN, Line, lines};
use super::method::{Method, cited};
use super::missing::Missing;
use super::reason::Reason;
use super::saying::Saying;
use super::shown::{Part, Shown};
use super::traced::{Traced, all, see};
use crate::at;
use crate::network::{Fellow, ResolvedEnd, ResolvedHop};
use crate::spec::{Ice, IceClass};
use crate::units::{
    Given, Kilograms, KilogramsPerCubicMetre, Megapascals, Millimetres, NewtonMetres, Newtons, Percent,
};

const SHARE: Method = cited("as written, else k of ISO 12494 by its class (from memory), else all of it");
const ON_FACES: Method = cited("2 ρ t A of the wind areas of antenna and radio: ice on both faces (geometry)");
const ON_BAR: Method = cited("ρ π (d t + t²) L (ISO 12494, from memory)");
const FORCE: Method = cited("as in the bare survival wind, areas grown by t all round (ISO 12494, from memory)");

lines! {
    /// Ice on one end.
    IceLines {
        class: Saying, "", "class of ice by ISO 12494", AS_WRITTEN;
        thickness: Given<Millimetres>, "t", "thickness of ice", AS_WRITTEN;
        density: Given<KilogramsPerCubicMetre>, "ρ", "density of ice", AS_WRITTEN;
        mass: Kilograms, "", "ice on antenna and radio", ON_FACES;
        support_mass: Kilograms, "", "ice on the tube of the support", ON_BAR;
        wind_share: Part, "k", "share of the pressure of the survival wind beside it", SHARE;
        force: Newtons, "", "force of that on antenna and radio with ice", FORCE;
        moment: NewtonMetres, "", "moment at the foot of the pole in it, with ice", "as without ice";
        stress: Megapascals, "", "stress at the foot of the pole in it, with ice", "M / Z; no load factor: engineer to confirm";
    }
}

/// The ice of the site, or of the hop, or of the network.
pub(super) fn stated<'n>(own: &ResolvedEnd<'n>, resolved: &ResolvedHop<'n>) -> Traced<&'n Ice> {
    let (site, hop, network) = (own.site, resolved.hop, resolved.network);
    let first = Traced::first_written([see!(site.ice), see!(hop.climate.ice), see!(network.climate.ice)]);
    first.unwrap_or_else(|| Traced::missing(Missing::judged(Reason::NoIce, at!(network.climate.ice))))
}

/// Share of the pressure of the survival wind that acts beside it.
pub(super) fn share(ice: &Ice) -> Percent {
    let by_class = || ice.class.map_or(Percent(100.0), IceClass::wind_share);
    ice.wind_share.as_ref().map_or_else(by_class, |share| share.value)
}

pub(super) fn compute(own: &ResolvedEnd<'_>, hop: &ResolvedHop<'_>, fellows: &[Fellow<'_>]) -> IceLines {
    let ice = stated(own, hop);
    if ice.value().is_err() {
        return none(&ice);
    }
    let thickness = ice.map(|ice| ice.thickness.value);
    let layer = ice.map(|ice| (ice.thickness.value, ice.density.value));
    let carried = Carried::of(own, fellows);
    let wind = gale::stated(own, hop);
    let raise = gale::raise(own, &wind);
    let survival = gale::gale(&wind, &raise, |wind| wind.survival.as_ref().map(|given| given.value));
    let beside = all((&survival, &ice)).map(|(gale, ice)| gale.with_share(share(ice)));
    let iced = carried.iced(&thickness);
    let blown = Blown::of(beside, &iced);
    IceLines {
        class: ice.map(|ice| ice.class.map(|class| Saying::name(class.word()))).stated(Reason::NobodySays).line(),
        thickness: ice.map(|ice| ice.thickness.clone()).line(),
        density: ice.map(|ice| ice.density.clone()).line(),
        mass: all((&carried.own, &layer)).map(|(own, (t, density))| own.ice(t, density)).line(),
        support_mass: all((&carried.tube, &layer)).map(|(tube, (t, density))| tube.ice(t, density)).line(),
        wind_share: ice.map(|ice| Part(share(ice))).line(),
        force: blown.force(&iced.own).line(),
        moment: blown.pole.map(|pole| pole.moment()).line(),
        stress: blown.pole.map(|pole| pole.stress()).line(),
    }
}

/// The lines where no ice is stated, which is nearly everywhere: nothing is computed for them.
fn none(ice: &Traced<&Ice>) -> IceLines {
    fn line<T: Shown>(ice: &Traced<&Ice>) -> Line<T> {
        ice.judge(|_| Err(Reason::NoIce)).line()
    }
    IceLines {
        class: line(ice),
        thickness: line(ice),
        density: line(ice),
        mass: line(ice),
        support_mass: line(ice),
        wind_share: line(ice),
        force: line(ice),
        moment: line(ice),
        stress: line(ice),
    }
}
