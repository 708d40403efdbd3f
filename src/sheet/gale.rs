//! The wind at an end: its speed, what that speed is, and what raises it there.

use super::method::{Method, cited};
use super::missing::Missing;
use super::reason::Reason;
use super::traced::{Traced, all, see};
use crate::at;
use crate::network::{ResolvedEnd, ResolvedHop};
use crate::physics::{orography, wind};
use crate::spec::{Number, Orography, SlopeShape, Wind, WindSpeeds};
use crate::units::{Metres, MetresPerSecond, Pascals, Percent};

/// How a gust at the antenna presses.
pub(super) const GUST: &str = "0.625 v², the speed a gust at the antenna";
const EN: Method = cited("EN 1991-1-4:2005 peak velocity pressure at the height of the antenna (from memory)");
const EN_RAISED: Method = cited(
    "EN 1991-1-4:2005 peak velocity pressure at the height of the antenna, its mean wind times c_o (from memory)",
);
const ASCE: Method = cited("ASCE 7-16 velocity pressure at the height of the antenna (from memory)");
const ASCE_RAISED: Method = cited("ASCE 7-16 velocity pressure at the height of the antenna, times K_zt (from memory)");
/// How the factor of a slope is found.
pub(super) const BY_SLOPE: Method = cited("EN 1991-1-4:2005 annex A.3 (second-hand)");

/// The factors that somebody may state: `c_o` comes to 1.6 by annex A.3, `K_zt` to some 3.
const FACTORS: (f64, f64) = (1.0, 2.0);
const TOPOGRAPHIC: (f64, f64) = (1.0, 3.0);

/// What raises the wind.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Raise {
    /// Nothing.
    Flat,
    /// Its mean, by a factor.
    Mean(f64),
    /// Its mean, by a slope, otherwise at each height.
    Slope(orography::Slope),
    /// Its pressure, by a factor.
    Pressure(f64),
}

impl Raise {
    /// What the mean wind is multiplied by at a height.
    fn mean(self, height: Metres) -> f64 {
        match self {
            Self::Flat | Self::Pressure(_) => 1.0,
            Self::Mean(factor) => factor,
            Self::Slope(slope) => orography::factor(&slope, height),
        }
    }

    /// The factor at a height, of mean or pressure.
    pub(super) fn factor(self, height: Metres) -> f64 {
        match self {
            Self::Pressure(factor) => factor,
            raise => raise.mean(height),
        }
    }

    /// What the pressure is multiplied by beside that.
    const fn pressure(self) -> f64 {
        match self {
            Self::Pressure(factor) => factor,
            Self::Flat | Self::Mean(_) | Self::Slope(_) => 1.0,
        }
    }
}

/// A pressure of wind and how it follows from its speed.
pub(super) type Pressure = (Pascals, Method);

/// A wind with what its speed is and what raises it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Gale {
    speeds: WindSpeeds,
    speed: MetresPerSecond,
    raise: Raise,
    /// How much of its pressure counts.
    share: f64,
}

impl Gale {
    /// Its pressure at a height above the ground of the site.
    pub(super) fn at(self, height: Metres) -> Pressure {
        use wind::{Exposure, Terrain};
        let flat = self.raise == Raise::Flat;
        let en = |terrain| {
            let pressure = wind::peak_pressure_en(self.speed, height, terrain, self.raise.mean(height));
            (pressure, if flat { EN } else { EN_RAISED })
        };
        let asce = |exposure| {
            let pressure = wind::pressure_asce_at(self.speed, height, exposure);
            (Pascals(pressure.0 * self.raise.pressure()), if flat { ASCE } else { ASCE_RAISED })
        };
        let (pressure, method) = match self.speeds {
            WindSpeeds::Gust => (wind::pressure_en(self.speed), GUST.into()),
            WindSpeeds::EnSea => en(Terrain::Sea),
            WindSpeeds::EnFlat => en(Terrain::Flat),
            WindSpeeds::EnOpen => en(Terrain::Open),
            WindSpeeds::EnSuburb => en(Terrain::Suburb),
            WindSpeeds::EnTown => en(Terrain::Town),
            WindSpeeds::AsceB => asce(Exposure::B),
            WindSpeeds::AsceC => asce(Exposure::C),
            WindSpeeds::AsceD => asce(Exposure::D),
        };
        (Pascals(pressure.0 * self.share), method)
    }

    /// The same with a share of its pressure.
    pub(super) fn with_share(self, share: Percent) -> Self {
        Self { share: self.share * share.0 / 100.0, ..self }
    }
}

/// The wind of the site, or of the hop, or of the network.
pub(super) fn stated<'n>(own: &ResolvedEnd<'n>, resolved: &ResolvedHop<'n>) -> Traced<&'n Wind> {
    let (site, hop, network) = (own.site, resolved.hop, resolved.network);
    let first = Traced::first_written([see!(site.wind), see!(hop.climate.wind), see!(network.climate.wind)]);
    first.unwrap_or_else(|| Traced::missing(Missing::judged(Reason::NoWind, at!(network.climate.wind))))
}

/// One of its two speeds as a wind.
pub(super) fn gale(
    wind: &Traced<&Wind>,
    raise: &Traced<Option<Raise>>,
    speed: fn(&Wind) -> Option<MetresPerSecond>,
) -> Traced<Gale> {
    let gale = wind.judge(|wind| speed(wind).map(|speed| (wind.speeds, speed)).ok_or(Reason::NoSurvivalWind));
    all((&gale, raise)).map(|((speeds, speed), raise)| Gale {
        speeds,
        speed,
        raise: raise.unwrap_or(Raise::Flat),
        share: 1.0,
    })
}

/// What raises the wind at the site; none where nobody states anything of it, and where what is stated is not of the kind that the
/// speeds take: [`left_out`] says so.
pub(super) fn raise(own: &ResolvedEnd<'_>, wind: &Traced<&Wind>) -> Traced<Option<Raise>> {
    let site = own.site;
    let stated = all((&see!(site.orography), wind));
    stated.check(|(stated, wind)| {
        let Some(stated) = stated.as_ref().filter(|_| left_out(stated.as_ref(), wind.speeds).is_none()) else {
            return Ok(None);
        };
        let within = |factor: Number, (least, most): (f64, f64)| {
            let value = factor.0;
            if (least..=most).contains(&value) {
                Ok(value)
            } else {
                Err(Reason::OrographyOutOfRange { least, most, value })
            }
        };
        if of_asce(wind.speeds) {
            return stated.topographic_factor.map(|it| within(it, TOPOGRAPHIC).map(Raise::Pressure)).transpose();
        }
        match stated.factor {
            Some(factor) => within(factor, FACTORS).map(|factor| Some(Raise::Mean(factor))),
            None => Ok(stated.slope.as_ref().map(slope)),
        }
    })
}

/// Why what is stated of a hill or a cliff does not count with speeds of a kind; none where it does, or nothing is stated.
pub(super) fn left_out(stated: Option<&Orography>, speeds: WindSpeeds) -> Option<Reason> {
    let stated = stated?;
    let of_en = stated.factor.is_some() || stated.slope.is_some();
    match speeds {
        WindSpeeds::Gust => Some(Reason::OrographyInGust),
        speeds if of_asce(speeds) => stated.topographic_factor.is_none().then_some(Reason::NoTopographicFactor),
        _ => (!of_en).then_some(Reason::NoOrographyFactor),
    }
}

const fn of_asce(speeds: WindSpeeds) -> bool {
    matches!(speeds, WindSpeeds::AsceB | WindSpeeds::AsceC | WindSpeeds::AsceD)
}

fn slope(stated: &crate::spec::Slope) -> Raise {
    let downwind = stated.downwind_length.as_ref().unwrap_or(&stated.upwind_length);
    Raise::Slope(orography::Slope {
        shape: match stated.shape {
            SlopeShape::Hill => orography::Shape::Hill,
            SlopeShape::Cliff => orography::Shape::Cliff,
        },
        height: stated.height.value,
        upwind: stated.upwind_length.value,
        downwind: downwind.value,
        from_crest: stated.from_crest.value,
    })
}
