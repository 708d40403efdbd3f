//! What each fixing of a support has to hold in the survival wind, and how much more it bears.

use super::blown::{Carried, Pushed};
use super::gale;
use super::ice;
use super::line::{AS_WRITTEN, Line, lines};
use super::method::{Method, cited};
use super::missing::Missing;
use super::reason::Reason;
use super::saying::Saying;
use super::shown::Shown;
use super::traced::{Traced, all, see};
use crate::at;
use crate::network::{Fellow, ResolvedEnd, ResolvedHop};
use crate::physics::fixing::{self, Acting, Held, Rows};
use crate::spec::{Fixings, SupportKind};
use crate::units::{Given, Kilograms, Millimetres, NewtonMetres, Newtons};

const FORCE: &str =
    "survival wind on the support and all it carries, the worse of bare and with ice; forces added by their size";
const STATICS: Method =
    cited("equilibrium: all fixings share alike, no factor of safety and no prying: engineer to confirm");
const MASS: &str = "antennas, radios and brackets on it, the support as stated, and ice";

lines! {
    /// The fixings of the support of one end.
    FixingLines {
        fixings: Saying, "", "fixings of the support", AS_WRITTEN;
        force: Newtons, "F", "force of the survival wind on the support", FORCE;
        moment: NewtonMetres, "M", "its moment at the foot of the free length", FORCE;
        mass: Kilograms, "m", "mass that hangs on the fixings", MASS;
        tension: Newtons, "T", "pull that each fixing must hold", STATICS;
        shear: Newtons, "V", "shear that each fixing must hold", STATICS;
        bears_tension: Given<Newtons>, "", "pull that each fixing bears", AS_WRITTEN;
        bears_shear: Given<Newtons>, "", "shear that each fixing bears", AS_WRITTEN;
        stated_by: Saying, "", "who states what it bears", AS_WRITTEN;
        tension_in_hand: Newtons, "", "pull left", "what it bears less what it must hold";
        shear_in_hand: Newtons, "", "shear left", "what it bears less what it must hold";
    }
}

/// What an end and its fellows hang on a support, without ice.
fn hanging(own: &ResolvedEnd<'_>, fellows: &[Fellow<'_>]) -> Traced<Kilograms> {
    let one = |end: &ResolvedEnd<'_>| {
        let placed = end.end;
        super::mount::lifted(end).decided_by(&see!(placed.support))
    };
    let mut each = vec![one(own)];
    each.extend(fellows.iter().map(|fellow| one(fellow.end)));
    Traced::each(&each).map(|masses| Kilograms(masses.iter().map(|mass| mass.0).sum()))
}

pub(super) fn compute(own: &ResolvedEnd<'_>, hop: &ResolvedHop<'_>, fellows: &[Fellow<'_>]) -> FixingLines {
    let support = own.support;
    let stated = see!(support.fixings).map(Option::as_ref).stated(Reason::NoFixings);
    if stated.value().is_err() {
        return none(&stated);
    }
    let carried = Carried::of(own, fellows);
    let wind = gale::stated(own, hop);
    let raise = gale::raise(own, &wind);
    let survival = gale::gale(&wind, &raise, |wind| wind.survival.as_ref().map(|given| given.value));
    // With ice only where any is stated.
    let ice = ice::stated(own, hop);
    let layer = ice.map(Some).or(|| Traced::constant(None)).decided_by(&ice);
    let bare = carried.pushed(&survival);
    let pushed = layer.and_then(|layer| match layer {
        None => bare.clone(),
        Some(stated) => {
            let beside = survival.map(|gale| gale.with_share(ice::share(stated)));
            let iced = carried.iced(&ice.map(|ice| ice.thickness.value)).pushed(&beside);
            all((&bare, &iced)).map(|(bare, iced)| bare.worse(iced))
        }
    });
    let on_it = all((&layer, &carried.own, &carried.others, &carried.tube)).map(|(layer, own, others, tube)| {
        layer.map_or(0.0, |ice| {
            let (t, density) = (ice.thickness.value, ice.density.value);
            let faces: f64 = std::iter::once(&own).chain(&others).map(|facing| facing.ice(t, density).0).sum();
            faces + tube.ice(t, density).0
        })
    });
    let of_support = stated.map(|fixings| fixings.mass.as_ref().map_or(0.0, |mass| mass.value.0));
    let mass = all((&hanging(own, fellows), &of_support, &on_it));
    let mass = mass.map(|(hung, support, ice)| Kilograms(hung.0 + support + ice));
    let held = held(own, &stated, &pushed, &mass);
    let bears = |of: fn(&crate::spec::FixingStrength) -> Given<Newtons>| {
        stated.map(|fixings| fixings.bears.as_ref().map(of)).stated(Reason::NobodySays)
    };
    let (bears_tension, bears_shear) = (bears(|bears| bears.tension.clone()), bears(|bears| bears.shear.clone()));
    let left = |bears: &Traced<Given<Newtons>>, needs: fn(Held) -> Newtons| {
        all((bears, &held)).map(|(bears, held)| bears.value - needs(held))
    };
    let stated_by = stated.map(|fixings| fixings.bears.as_ref().map(|bears| Saying::name(&bears.stated_by)));
    FixingLines {
        fixings: stated.map(|fixings| Saying::name(format!("{} × {}", fixings.count, fixings.title))).line(),
        force: pushed.map(|pushed| pushed.force).line(),
        moment: pushed.map(|pushed| pushed.moment).line(),
        mass: mass.line(),
        tension: held.map(|held| held.tension).line(),
        shear: held.map(|held| held.shear).line(),
        tension_in_hand: left(&bears_tension, |held| held.tension).line(),
        shear_in_hand: left(&bears_shear, |held| held.shear).line(),
        bears_tension: bears_tension.line(),
        bears_shear: bears_shear.line(),
        stated_by: stated_by.stated(Reason::NobodySays).line(),
    }
}

/// Pull and shear on each fixing: of a wall with the weight, of a base plate without it.
fn held(
    own: &ResolvedEnd<'_>,
    stated: &Traced<&Fixings>,
    pushed: &Traced<Pushed>,
    mass: &Traced<Kilograms>,
) -> Traced<Held> {
    let support = own.support;
    let place = at!(support.fixings);
    let rows = stated.try_map(|fixings| {
        // A row that holds has one of them at least.
        let few = fixings.count < 2;
        let rows = Rows {
            count: f64::from(fixings.count),
            spacing: fixings.spacing.value,
            stand_off: fixings.stand_off.as_ref().map_or(Millimetres(0.0), |given| given.value),
        };
        if few { Err(Missing::judged(Reason::FewFixings, place)) } else { Ok(rows) }
    });
    let kind = see!(support.kind).map(|kind| *kind);
    all((&rows, &kind)).and_then(|(rows, kind)| match kind {
        SupportKind::Wall => all((pushed, mass))
            .map(|(pushed, mass)| fixing::on_wall(Acting { force: pushed.force, moment: pushed.moment, mass }, rows)),
        SupportKind::Pole => pushed.map(|pushed| {
            fixing::on_base(Acting { force: pushed.force, moment: pushed.moment, mass: Kilograms(0.0) }, rows)
        }),
        SupportKind::Mast => Traced::missing(Missing::judged(Reason::MastIsEngineers, at!(support.kind))),
    })
}

/// The lines where no fixings are stated, which is nearly everywhere: nothing is computed for them.
fn none(stated: &Traced<&Fixings>) -> FixingLines {
    fn line<T: Shown>(stated: &Traced<&Fixings>) -> Line<T> {
        stated.judge(|_| Err(Reason::NoFixings)).line()
    }
    FixingLines {
        fixings: line(stated),
        force: line(stated),
        moment: line(stated),
        mass: line(stated),
        tension: line(stated),
        shear: line(stated),
        bears_tension: line(stated),
        bears_shear: line(stated),
        stated_by: line(stated),
        tension_in_hand: line(stated),
        shear_in_hand: line(stated),
    }
}
