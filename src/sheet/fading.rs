//! What fades one direction: rain with wet snow, and layers of clear air.

use super::budget::{Sending, rain_fade};
use super::geometry::altitude;
use super::missing::Missing;
use super::path::PathLines;
use super::reason::Reason;
use super::target::Target;
use super::traced::{AsTraced as _, Traced, all};
use crate::at;
use crate::physics::multipath::{self, ClearAirPath, Multipath, OutOfRange};
use crate::physics::rain_outage::RainFade;
use crate::units::{Decibels, Gigahertz, Latitude, Metres, MillimetresPerHour, Percent};

/// The fades of one direction.
#[derive(Debug, Clone)]
pub(super) struct Fading {
    /// Rain, with wet snow where a rain height is given.
    pub(super) rain: Traced<RainFade>,
    /// The same with the rain rate as much lower, and as much higher, as its tolerance says.
    pub(super) rain_within: Option<[Traced<RainFade>; 2]>,
    /// Clear air.
    clear: Traced<(Multipath, Latitude)>,
}

impl Fading {
    pub(super) fn of(sending: &Sending<'_>, path: &PathLines, target: &Target) -> Self {
        let by = |share: Traced<f64>| {
            let rate = all((&path.rain_rate, &share)).map(|(rate, share)| MillimetresPerHour(rate.value.0 * share));
            rain_fade(sending, path, &rate)
        };
        let rain_within = target.rain_rate_tolerance.as_ref().map(|tolerance| {
            let tolerance = tolerance.traced();
            [tolerance.map(by_less), tolerance.map(|off| 1.0 + off.0 / 100.0)].map(by)
        });
        Self {
            rain: rain_fade(sending, path, &path.rain_rate.map(|rate| rate.value)),
            rain_within,
            clear: clear_air(sending, path, target),
        }
    }

    /// Multipath fading, with the latitude it is brought from the worst month to the year by.
    pub(super) const fn clear(&self) -> &Traced<(Multipath, Latitude)> {
        &self.clear
    }

    /// Outage by multipath fading at a margin, in the average year.
    pub(super) fn multipath(&self, margin: &Traced<Decibels>) -> Traced<Percent> {
        // Without a margin it is down anyway, and no fade is needed.
        all((&self.clear, margin)).map(|((fading, latitude), margin)| fading.year(margin, latitude).unwrap_or(WHOLE))
    }

    /// The same in the worst month.
    pub(super) fn multipath_worst_month(&self, margin: &Traced<Decibels>) -> Traced<Percent> {
        all((&self.clear, margin)).map(|((fading, _), margin)| fading.worst_month(margin).unwrap_or(WHOLE))
    }
}

const WHOLE: Percent = Percent(100.0);

/// What is left of a rain rate that is off by as much as it may be.
fn by_less(off: Percent) -> f64 {
    (1.0 - off.0 / 100.0).max(0.0)
}

/// Multipath fading, where the method reaches and what it needs is given. That a path is too short for it, or too high in
/// frequency, needs nothing else.
fn clear_air(sending: &Sending<'_>, path: &PathLines, target: &Target) -> Traced<(Multipath, Latitude)> {
    let frequency = sending.frequency();
    let reached = all((frequency, &path.distance)).judge(|(frequency, distance)| reach(frequency, distance));
    reached.and_then(|()| {
        let Some(refractivity) = &target.refractivity else {
            let hop = sending.resolved.hop;
            return Traced::missing(Missing::judged(Reason::NoRefractivity, at!(hop.climate.refractivity)));
        };
        let antennas = sending.resolved.ends.each_ref().map(altitude);
        let heights = all((&antennas.a, &antennas.b, &path.mean_terrain));
        let inputs = all((refractivity, frequency, &path.distance, &heights, &path.middle_latitude));
        inputs.judge(|([log_k, dn_75], frequency, distance, (a, b, terrain), latitude)| {
            let path = ClearAirPath { distance, frequency, antennas: [a, b], terrain, log_k, dn_75 };
            Multipath::new(&path).map(|fading| (fading, latitude))
        })
    })
}

/// Whether multipath fading is modelled at all.
fn reach(frequency: Gigahertz, distance: Metres) -> Result<(), OutOfRange> {
    if distance <= multipath::SHORTEST {
        Err(OutOfRange::Short(distance))
    } else if frequency > multipath::HIGHEST {
        Err(OutOfRange::Frequency(frequency))
    } else {
        Ok(())
    }
}
