//! What takes a hop down, cause by cause, and what the causes come to together.

use super::crossed::{self, Crossing};
use super::fading::Fading;
use super::reason::Reason;
use super::saying::Saying;
use super::terminal::Terminals;
use super::traced::{Traced, all};
use crate::physics::link;
use crate::physics::rain_outage::{Outage, RainFade};
use crate::physics::share::Share;
use crate::physics::worst_month::MonthOutage;
use crate::spec::Both;
use crate::units::{Decibels, Percent};

/// Outages by what fades a direction, or a hop, in one modulation state.
#[derive(Debug, Clone)]
pub(super) struct Causes {
    /// By rain, and wet snow where it is counted; in the average year.
    pub(super) rain: Traced<Outage>,
    /// By multipath fading in the average year.
    pub(super) multipath: Traced<Percent>,
    /// By multipath fading in the worst month.
    pub(super) multipath_worst_month: Traced<Percent>,
    /// By the other of two carriers.
    pub(super) crossing: Option<Crossing>,
}

impl Causes {
    /// Those of a margin in clear air, and one that wet covers have been taken off.
    pub(super) fn of(
        fading: &Fading,
        rain: &Traced<RainFade>,
        margin: &Traced<Decibels>,
        rain_margin: &Traced<Decibels>,
        crossing: Option<Crossing>,
    ) -> Self {
        Self {
            rain: all((rain_margin, rain)).map(|(margin, rain)| rain.outage(margin)),
            multipath: fading.multipath(margin),
            multipath_worst_month: fading.multipath_worst_month(margin),
            crossing,
        }
    }

    /// Those of both directions: the same rain fades them in the same minutes, multipath fades them apart.
    pub(super) fn together(both: &Both<Self>) -> Self {
        let Both { a, b } = both;
        Self {
            rain: all((&a.rain, &b.rain)).map(|(one, other)| link::two_way(one, other)),
            multipath: sum(&a.multipath, &b.multipath),
            multipath_worst_month: sum(&a.multipath_worst_month, &b.multipath_worst_month),
            crossing: a.crossing.as_ref().zip(b.crossing.as_ref()).map(|(a, b)| Crossing::together(a, b)),
        }
    }

    /// Outage of the average year by all that is counted.
    pub(super) fn year(&self, terminals: &Terminals) -> Traced<Share> {
        let crossing = self.crossing.as_ref();
        let clear_air = crossed::with_clear_air(&counted(&self.multipath), crossing, |crossing| &crossing.clear_air);
        total(&self.all_rain().map(Share::from), &clear_air, terminals)
    }

    /// Outage of the worst month by all that is counted. The worst month of rain need not be that of multipath, so this is
    /// an upper bound.
    pub(super) fn worst_month(&self, terminals: &Terminals) -> Traced<Share> {
        let (crossing, fades) = (self.crossing.as_ref(), counted(&self.multipath_worst_month));
        let clear_air = crossed::with_clear_air(&fades, crossing, |crossing| &crossing.clear_air_worst_month);
        total(&self.all_rain().map(MonthOutage::of).map(Share::from), &clear_air, terminals)
    }

    /// By rain that fades and rain that crosses.
    pub(super) fn all_rain(&self) -> Traced<Outage> {
        crossed::with_rain(&self.rain, self.crossing.as_ref())
    }

    pub(super) fn rain_worst_month(&self) -> Traced<MonthOutage> {
        self.rain.map(MonthOutage::of)
    }
}

fn sum(one: &Traced<Percent>, other: &Traced<Percent>) -> Traced<Percent> {
    all((one, other)).map(|(one, other)| if one + other < Percent(100.0) { one + other } else { Percent(100.0) })
}

fn total(rain: &Traced<Share>, multipath: &Traced<Percent>, terminals: &Terminals) -> Traced<Share> {
    let rest = [multipath, &terminals.equipment, &terminals.supply].map(counted);
    let [multipath, equipment, supply] = &rest;
    all((rain, multipath, equipment, supply))
        .map(|(rain, multipath, equipment, supply)| rain.plus(multipath).plus(equipment).plus(supply))
}

/// An outage as far as it is known: what nobody gave the numbers for counts nothing, and is said to be left out.
pub(super) fn counted(outage: &Traced<Percent>) -> Traced<Percent> {
    outage.or(|| Traced::constant(Percent(0.0)))
}

/// Which causes an availability counts, beside rain.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[expect(clippy::struct_excessive_bools, reason = "one for each cause, none of which excludes another")]
pub(super) struct Coverage {
    wet_snow: bool,
    multipath: bool,
    crossing: bool,
    equipment: bool,
    supply: bool,
}

impl Coverage {
    pub(super) fn of<S: Clone>(wet_snow: &Traced<S>, causes: &Causes, terminals: &Terminals) -> Self {
        Self {
            wet_snow: wet_snow.value().is_ok(),
            // What does not matter on so short a path is not left out.
            multipath: match causes.multipath.value() {
                Ok(_) => true,
                Err(missing) => matches!(missing.reason, Reason::MultipathShort { .. }),
            },
            crossing: causes.crossing.as_ref().is_none_or(Crossing::is_known),
            equipment: terminals.equipment.value().is_ok(),
            supply: terminals.supply.value().is_ok(),
        }
    }

    /// What the availability may be called: by its whole name only if nothing of weight is left out.
    const fn name(self) -> Name {
        match (self.wet_snow && self.multipath && self.crossing, self.equipment) {
            (true, true) => Name::Whole,
            (true, false) => Name::Propagation,
            (false, _) => Name::Rain,
        }
    }

    /// The same where hops in a row have to be up, one of which counts this and another that.
    pub(super) const fn and(self, other: Self) -> Self {
        Self {
            wet_snow: self.wet_snow && other.wet_snow,
            multipath: self.multipath && other.multipath,
            crossing: self.crossing && other.crossing,
            equipment: self.equipment && other.equipment,
            supply: self.supply && other.supply,
        }
    }

    /// In words, of a hop.
    pub(super) const fn of_hop(self) -> &'static str {
        match self.name() {
            Name::Whole => "availability, both directions",
            Name::Propagation => "propagation availability, both directions",
            Name::Rain => "rain availability, both directions",
        }
    }

    /// The same for the worst month.
    pub(super) const fn of_hop_worst_month(self) -> &'static str {
        match self.name() {
            Name::Whole => "availability in the worst month, both directions",
            Name::Propagation => "propagation availability in the worst month, both directions",
            Name::Rain => "rain availability in the worst month, both directions",
        }
    }

    /// In words, of one direction.
    pub(super) const fn of_direction(self) -> &'static str {
        match self.name() {
            Name::Whole => "availability",
            Name::Propagation => "propagation availability",
            Name::Rain => "rain availability",
        }
    }

    /// What is left out.
    pub(super) fn left_out(self) -> Saying {
        let causes = [
            (self.wet_snow, Saying::WetSnow),
            (self.multipath, Saying::Multipath),
            (self.crossing, Saying::Crossing),
            (self.equipment, Saying::Equipment),
            (self.supply, Saying::Supply),
        ];
        let left = causes.into_iter().filter(|(counted, _)| !counted).map(|(_, cause)| cause);
        let list = left.reduce(|first, next| Saying::And { first: Box::new(first), next: Box::new(next) });
        list.unwrap_or(Saying::Never)
    }
}

enum Name {
    Whole,
    Propagation,
    Rain,
}
