//! The air along the path: as written where the hop or its network says, by the reference atmosphere for the rest.

use super::line::{AS_WRITTEN, Line, Missing};
use super::reason::Reason;
use super::target::WantedAir;
use crate::physics::atmosphere::{self, Air};
use crate::place::Place;
use crate::units::{Celsius, Hectopascals, Metres};

const REFERENCE: &str = "reference atmosphere, ITU-R P.835-7 Annex 1";
const REFERENCE_LESS: &str = "pressure of the reference atmosphere, ITU-R P.835-7, less the vapour pressure";
const WRITTEN_LESS: &str = "pressure as written less the vapour pressure";
const HUMID: &str = "relative humidity as written, saturation over water by ITU-R P.453-14";

/// The three lines on the air.
pub(super) struct AirLines {
    pub(super) temperature: Line<Celsius>,
    pub(super) dry_pressure: Line<Hectopascals>,
    pub(super) vapour_pressure: Line<Hectopascals>,
}

/// The air at a height, which `heights` decide.
pub(super) fn lines(wanted: &WantedAir, height: Metres, heights: &[Place]) -> AirLines {
    // Air that is written in full needs no atmosphere, whatever the height.
    let reference = atmosphere::reference(height).map_err(|error| Missing::new(error, heights[0]));
    let of = |part: fn(&Air) -> f64| reference.as_ref().map(part).map_err(Clone::clone);
    let temperature = match &wanted.temperature {
        Some(given) => Line::known(given.value(), &[given.place]).by(AS_WRITTEN),
        None => Line::new(of(|air| air.temperature.0).map(Celsius), heights).by(REFERENCE),
    };
    let total = match &wanted.pressure {
        Some(given) => Line::known(given.value(), &[given.place]),
        None => Line::new(of(|air| air.dry_pressure.0 + air.vapour_pressure.0).map(Hectopascals), heights),
    };
    let vapour_pressure = match &wanted.humidity {
        Some(given) => {
            let value =
                temperature.need().and_then(|t| Ok(atmosphere::vapour_pressure(given.value(), t, total.need()?)));
            Line::new(value, &[&[given.place], &temperature.from[..], &total.from].concat()).by(HUMID)
        }
        None => Line::new(of(|air| air.vapour_pressure.0).map(Hectopascals), heights).by(REFERENCE),
    };
    let dry = match (&wanted.pressure, &wanted.humidity) {
        // The reference as it is, to the last bit.
        (None, None) => of(|air| air.dry_pressure.0),
        _ => total.need().and_then(|p| {
            let (e, place) = (vapour_pressure.need()?, total.from[0]);
            let dry = p.0 - e.0;
            (dry > 0.0).then_some(dry).ok_or_else(|| Missing::new(Reason::AllVapour, place))
        }),
    };
    let method = match (&wanted.pressure, &wanted.humidity) {
        (Some(_), _) => WRITTEN_LESS,
        (None, Some(_)) => REFERENCE_LESS,
        (None, None) => REFERENCE,
    };
    let dry_from = [&total.from[..], &vapour_pressure.from].concat();
    AirLines { temperature, dry_pressure: Line::new(dry.map(Hectopascals), &dry_from).by(method), vapour_pressure }
}
