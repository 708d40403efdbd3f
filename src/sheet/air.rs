//! The air along the path: as written where the hop or its network says, by the reference atmosphere for the rest.

use super::line::{AS_WRITTEN, Line};
use super::method::{Method, cited};
use super::reason::Reason;
use super::target::WantedAir;
use super::traced::{AsTraced as _, Traced, all};
use crate::physics::atmosphere;
use crate::units::{Celsius, Hectopascals, Metres};

const REFERENCE: Method = cited("reference atmosphere, ITU-R P.835-7 Annex 1");
const REFERENCE_LESS: Method = cited("pressure of the reference atmosphere, ITU-R P.835-7, less the vapour pressure");
const WRITTEN_LESS: &str = "pressure as written less the vapour pressure";
const HUMID: Method = cited("relative humidity as written, saturation over water by ITU-R P.453-14");

/// The three lines on the air.
pub(super) struct AirLines {
    pub(super) temperature: Line<Celsius>,
    pub(super) dry_pressure: Line<Hectopascals>,
    pub(super) vapour_pressure: Line<Hectopascals>,
}

/// The air at a height.
pub(super) fn lines(wanted: &WantedAir, height: &Traced<Metres>) -> AirLines {
    // Air that is written in full needs no atmosphere, whatever the height.
    let reference = height.check(atmosphere::reference);
    let temperature = match &wanted.temperature {
        Some(written) => written.traced().clone().by(AS_WRITTEN),
        None => reference.map(|air| air.temperature).by(REFERENCE),
    };
    let total = match &wanted.pressure {
        Some(written) => written.traced().clone(),
        None => reference.map(|air| Hectopascals(air.dry_pressure.0 + air.vapour_pressure.0)),
    };
    let vapour_pressure = match &wanted.humidity {
        Some(humidity) => {
            let vapour = all((humidity, &temperature, &total));
            vapour.map(|(humidity, t, p)| atmosphere::vapour_pressure(humidity, t, p)).by(HUMID)
        }
        None => reference.map(|air| air.vapour_pressure).by(REFERENCE),
    };
    let dry_pressure = match (&wanted.pressure, &wanted.humidity) {
        // The reference as it is, to the last bit.
        (None, None) => reference.map(|air| air.dry_pressure).by(REFERENCE),
        (Some(_), _) => dry(&total, &vapour_pressure).by(WRITTEN_LESS),
        (None, Some(_)) => dry(&total, &vapour_pressure).by(REFERENCE_LESS),
    };
    AirLines { temperature, dry_pressure, vapour_pressure }
}

/// What of a pressure is not vapour.
fn dry(total: &Traced<Hectopascals>, vapour: &Line<Hectopascals>) -> Traced<Hectopascals> {
    let dry = all((total, vapour));
    dry.check(|(p, e)| if p.0 > e.0 { Ok(Hectopascals(p.0 - e.0)) } else { Err(Reason::AllVapour) })
}
