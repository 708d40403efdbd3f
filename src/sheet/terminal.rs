//! How long the equipment at the ends and what feeds it are down.

use super::missing::Missing;
use super::reason::Reason;
use super::traced::{Traced, all, read, see};
use crate::at;
use crate::network::{ResolvedEnd, ResolvedHop, ResolvedRun};
use crate::physics::unavailability::{of_any, of_equipment, of_supply};
use crate::spec::Carried;
use crate::units::{Hours, Percent};

/// Outages of both ends together: a terminal that fails stops both directions.
#[derive(Debug, Clone)]
pub(super) struct Terminals {
    /// By equipment.
    pub(super) equipment: Traced<Percent>,
    /// By its supply.
    pub(super) supply: Traced<Percent>,
}

impl Terminals {
    pub(super) fn of(resolved: &ResolvedHop<'_>) -> Self {
        let of_both = |outage: &dyn Fn(&ResolvedEnd<'_>) -> Traced<Percent>| {
            let ends = resolved.ends.each_ref().map(outage);
            all((&ends.a, &ends.b)).map(|(a, b)| of_any(&[a, b]))
        };
        Self { equipment: of_both(&|end| equipment(resolved, end)), supply: of_both(&supply) }
    }
}

/// How long the equipment of an end is down.
pub(super) fn equipment(resolved: &ResolvedHop<'_>, end: &ResolvedEnd<'_>) -> Traced<Percent> {
    let (radio, site, network) = (end.radio, end.site, resolved.network);
    let between = read!(radio.mean_time_between_failures).stated(Reason::NoTimeBetweenFailures);
    let here = Traced::first_written([see!(site.mean_time_to_restore), see!(network.mean_time_to_restore)]);
    let to_restore = match here {
        Some(given) => given.map(|given| given.value),
        None => Traced::missing(Missing::judged(Reason::NoTimeToRestore, at!(network.mean_time_to_restore))),
    };
    all((&between, &to_restore)).map(|(between, to_restore)| of_equipment(between, to_restore))
}

/// Every point where the radio of an end takes power, one by one.
fn supply(end: &ResolvedEnd<'_>) -> Traced<Percent> {
    let powered: Vec<Traced<Percent>> = fed(end).map(of_point).collect();
    let (own, listed) = (end.end, Traced::each(&powered));
    listed.decided_by(&see!(own.runs)).map(|parts| of_any(&parts))
}

/// The runs over which the radio of an end takes power.
pub(super) fn fed<'e, 'n>(end: &'e ResolvedEnd<'n>) -> impl Iterator<Item = &'e ResolvedRun<'n>> {
    end.runs.iter().filter(|run| run.run.carries.contains(&Carried::Power))
}

/// How long the point is without power that feeds a run.
pub(super) fn of_point(run: &ResolvedRun<'_>) -> Traced<Percent> {
    let own = run.run;
    let named = see!(own.power_point);
    let Some(point) = run.power_point else {
        return named.try_map(|_| Err(Missing::judged(Reason::NoPowerFailures, at!(own.power_point))));
    };
    let failures = see!(point.failures).map(|failures| {
        failures.as_ref().map(|given| {
            let autonomy = given.autonomy.as_ref().map_or(Hours(0.0), |given| given.value);
            of_supply(given.mean_time_between.value, given.mean_duration.value, autonomy)
        })
    });
    failures.stated(Reason::NoPowerFailures).decided_by(&named)
}
