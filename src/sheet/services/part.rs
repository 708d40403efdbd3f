//! What a hop brings to the services that run over it, taken out of its sheet and free of it.

use crate::at;
use crate::network::{ResolvedEnd, ResolvedHop, ResolvedRun};
use crate::physics::geodesy::{self, Position};
use crate::physics::share::Share;
use crate::place::{DocumentId, Place};
use crate::sheet::HopSheet;
use crate::sheet::crossed;
use crate::sheet::direction::Direction;
use crate::sheet::geometry::position;
use crate::sheet::outage::{Causes, Coverage, counted};
use crate::sheet::terminal::{Terminals, equipment, fed, of_point};
use crate::sheet::traced::{AsTraced as _, Traced, all, read};
use crate::spec::Both;
use crate::units::{MegabitsPerSecond, Metres, Milliseconds, Percent};

/// What a hop brings to the services that run over it.
#[derive(Debug, Clone)]
pub struct HopPart {
    /// Its id.
    pub hop: String,
    /// Its document.
    pub document: DocumentId,
    /// Its ends.
    pub(super) positions: Both<Traced<Position>>,
    /// From antenna to antenna.
    pub(super) slant: Traced<Metres>,
    /// The lesser of what its states carry that must hold.
    pub(super) capacity: Traced<MegabitsPerSecond>,
    /// Outage by rain, of the worse direction.
    pub(super) rain: Traced<Percent>,
    /// Outage in clear air, of both directions.
    pub(super) clear_air: Traced<Percent>,
    /// Outage by the equipment of each end.
    pub(super) equipment: Both<Traced<Percent>>,
    /// The points that feed its radios.
    pub(super) points: Vec<PowerPart>,
    /// What each of its radios adds.
    pub(super) radios: Both<RadioPart>,
    /// What its outages count.
    pub(super) coverage: Coverage,
}

/// A point that feeds a radio.
#[derive(Debug, Clone)]
pub(super) struct PowerPart {
    /// The site it is at and its name there; none if it is not named, and then it is not known to be anybody else's too.
    pub(super) name: Option<[String; 2]>,
    /// How long it is down.
    pub(super) outage: Traced<Percent>,
}

/// The radio of an end.
#[derive(Debug, Clone)]
pub(super) struct RadioPart {
    /// Its id.
    pub(super) id: String,
    /// Where its delay stands or would.
    pub(super) at: Place,
    /// Its delay, if it is written.
    pub(super) latency: Traced<Option<Milliseconds>>,
}

impl HopPart {
    /// Takes it out of a sheet.
    #[must_use]
    pub fn of(sheet: &HopSheet<'_>) -> Self {
        let resolved = sheet.resolved;
        let causes = Causes::together(&sheet.directions.each_ref().map(Direction::objective_causes));
        let Both { a, b } = sheet.directions.each_ref().map(Direction::objective_capacity);
        let terminals = Terminals::of(resolved);
        let clear_air = crossed::with_clear_air(&counted(&causes.multipath), causes.crossing.as_ref(), |crossing| {
            &crossing.clear_air
        });
        Self {
            hop: resolved.hop.id.to_string(),
            document: resolved.hop.at,
            positions: resolved.ends.each_ref().map(position),
            slant: sheet.path.slant.traced().clone(),
            capacity: all((&a, &b)).map(|(a, b)| if b < a { b } else { a }),
            rain: causes.all_rain().map(|outage| Share::from(outage).most),
            clear_air,
            equipment: resolved.ends.each_ref().map(|end| counted(&equipment(resolved, end))),
            points: points(resolved),
            radios: resolved.ends.each_ref().map(radio),
            coverage: Coverage::of(&sheet.path.snow_factor, &causes, &terminals),
        }
    }

    /// The middle of its path.
    pub(super) fn middle(&self) -> Traced<Position> {
        all((&self.positions.a, &self.positions.b)).map(|(a, b)| geodesy::between(a, b, 0.5))
    }
}

fn points(resolved: &ResolvedHop<'_>) -> Vec<PowerPart> {
    let of_end = |end: &ResolvedEnd<'_>| {
        let point = |run: &ResolvedRun<'_>| {
            let name = run.power_point.map(|point| [end.site.id.to_string(), point.spec.id.to_string()]);
            PowerPart { name, outage: counted(&of_point(run)) }
        };
        fed(end).map(point).collect::<Vec<_>>()
    };
    resolved.ends.iter().flat_map(of_end).collect()
}

fn radio(end: &ResolvedEnd<'_>) -> RadioPart {
    let radio = end.radio;
    RadioPart { id: radio.id.to_string(), at: at!(radio.latency), latency: read!(radio.latency) }
}
