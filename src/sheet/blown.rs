//! A support with all it carries, in one wind.

use super::gale::{GUST, Gale, Pressure};
use super::line::Line;
use super::pole::{self, Facing, Standing, Tube};
use super::reason::Reason;
use super::saying::Saying;
use super::traced::{Traced, all, read, see, written};
use crate::network::{Fellow, ResolvedEnd};
use crate::physics::cantilever::Pole;
use crate::units::{Given, Metres, Millimetres, NewtonMetres, Newtons, Pascals};

/// All that stands on a support, and the support.
pub(super) struct Carried<'c, 'n> {
    pub height: Traced<Metres>,
    pub own: Traced<Facing>,
    pub fellows: &'c [Fellow<'n>],
    /// Where the others stand.
    pub heights: Traced<Vec<Given<Metres>>>,
    pub others: Traced<Vec<Facing>>,
    pub standing: Traced<Standing>,
    pub tube: Traced<Tube>,
}

impl<'c, 'n> Carried<'c, 'n> {
    pub(super) fn of(own: &ResolvedEnd<'_>, fellows: &'c [Fellow<'n>]) -> Self {
        let end = own.end;
        Self {
            height: read!(end.height),
            own: Facing::of(own, Reason::NoWindArea),
            fellows,
            heights: heights(fellows),
            others: pole::others(fellows),
            standing: Standing::of(own),
            tube: Tube::of(own),
        }
    }

    /// The same with a layer of ice on all of it.
    pub(super) fn iced(&self, thickness: &Traced<Millimetres>) -> Self {
        Self {
            height: self.height.clone(),
            own: all((&self.own, thickness)).map(|(own, thickness)| own.iced(thickness)),
            fellows: self.fellows,
            heights: self.heights.clone(),
            others: all((&self.others, thickness))
                .map(|(others, thickness)| others.iter().map(|other| other.iced(thickness)).collect()),
            standing: all((&self.standing, thickness)).map(|(standing, thickness)| standing.iced(thickness)),
            tube: all((&self.tube, thickness)).map(|(tube, thickness)| tube.iced(thickness)),
        }
    }

    /// What else stands on the support, in words.
    pub(super) fn company(&self) -> Traced<Saying> {
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

    /// Force and moment at the foot of the free length of all of it together, whatever the support is; forces are added by
    /// their size.
    pub(super) fn pushed(&self, gale: &Traced<Gale>) -> Traced<Pushed> {
        all((gale, &self.own, &self.others, &self.tube)).map(|(gale, own, others, tube)| {
            let pressure = |height| gale.at(height).0;
            let all = || std::iter::once(&own).chain(&others);
            let on_tube = tube.force(all().map(|facing| facing.height), pressure);
            let mut force = on_tube.0;
            let mut moment = on_tube.0 * tube.length.0 / 2.0;
            for facing in all() {
                let push = pressure(facing.height).0 * facing.area();
                force += push;
                moment += push * tube.above_foot(facing.height).0;
            }
            Pushed { force: Newtons(force), moment: NewtonMetres(moment) }
        })
    }
}

/// Force and moment at the foot of a support.
#[derive(Debug, Clone, Copy)]
pub(super) struct Pushed {
    pub force: Newtons,
    pub moment: NewtonMetres,
}

impl Pushed {
    /// The greater of each.
    pub(super) fn worse(self, other: Self) -> Self {
        Self {
            force: if other.force > self.force { other.force } else { self.force },
            moment: if other.moment > self.moment { other.moment } else { self.moment },
        }
    }
}

/// One end in one wind.
pub(super) struct Blown {
    pub gale: Traced<Gale>,
    pressure: Traced<Pressure>,
    /// The own load first, then the others.
    pub pole: Traced<Pole>,
}

impl Blown {
    pub(super) fn of(gale: Traced<Gale>, carried: &Carried<'_, '_>) -> Self {
        let pressure = all((&gale, &carried.height)).map(|(gale, height)| gale.at(height));
        let pole =
            all((&gale, &carried.own, &carried.others, &carried.standing)).map(|(gale, own, others, standing)| {
                standing.in_wind(std::iter::once(&own).chain(&others), |height| gale.at(height).0)
            });
        Self { gale, pressure, pole }
    }

    pub(super) fn pressure(&self) -> Line<Pascals> {
        let method = self.pressure.get().map_or(GUST.into(), |(_, method)| method);
        self.pressure.map(|(pressure, _)| pressure).by(method)
    }

    pub(super) fn force(&self, own: &Traced<Facing>) -> Traced<Newtons> {
        all((&self.pressure, own)).map(|((pressure, _), own)| Newtons(pressure.0 * own.area()))
    }

    /// What others feel of it.
    pub(super) fn on_others(&self, others: &Traced<Vec<Facing>>) -> Traced<Newtons> {
        let others = others.unless(|others| others.is_empty().then_some(Reason::StandsAlone));
        all((&self.gale, &others))
            .map(|(gale, others)| Newtons(others.iter().map(|facing| gale.at(facing.height).0.0 * facing.area()).sum()))
    }

    /// How much of the moment is whose, of the others.
    pub(super) fn moments(&self, fellows: &[Fellow<'_>]) -> Traced<Saying> {
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
