//! Geometry, air and rain of the path, and what both directions give together.

use super::air;
use super::budget::Direction;
use super::line::{Line, Missing, lines};
use super::profile::BothWays;
use super::rain::{self, RainMaps};
use super::reason::Reason;
use super::saying::{Falls, Saying};
use super::target::Target;
use crate::at;
use crate::network::{ResolvedEnd, ResolvedHop};
use crate::physics::geodesy::{self, MEDIAN_K, Position};
use crate::physics::rain_outage::Outage;
use crate::physics::worst_month::MonthOutage;
use crate::physics::{link, snow};
use crate::place::Place;
use crate::spec::{Both, EndName};
use crate::units::{Celsius, Degrees, Given, Hectopascals, Metres, MillimetresPerHour, Minutes, Percent};

pub(super) const WORST_MONTH: &str = "ITU-R P.841-6, global planning values, from the outage of the average year";

lines! {
    /// Geometry and air of the path.
    PathLines {
        distance: Metres, "d", "distance over the ground",
            "WGS 84 geodesic (Karney 2013)";
        slant: Metres, "s", "distance antenna to antenna",
            "WGS 84 chord between antenna centres";
        azimuth_a: Degrees, "α_a", "true bearing from a to b",
            "WGS 84 geodesic (Karney 2013)";
        azimuth_b: Degrees, "α_b", "true bearing from b to a",
            "WGS 84 geodesic (Karney 2013)";
        elevation_a: Degrees, "ε_a", "elevation angle at a",
            "sphere of 4/3 × 6371 km, exact (ITU-R P.530-18 §2.2.2)";
        elevation_b: Degrees, "ε_b", "elevation angle at b",
            "sphere of 4/3 × 6371 km, exact (ITU-R P.530-18 §2.2.2)";
        mean_altitude: Metres, "h", "mean altitude of the antennas",
            "mean of the two antenna heights above sea level";
        temperature: Celsius, "T", "air temperature for gas loss",
            "reference atmosphere, ITU-R P.835-7 Annex 1";
        dry_pressure: Hectopascals, "p", "dry air pressure",
            "reference atmosphere, ITU-R P.835-7 Annex 1";
        vapour_pressure: Hectopascals, "e", "water vapour pressure",
            "reference atmosphere, ITU-R P.835-7 Annex 1";
        rain_rate: Given<MillimetresPerHour>, "R0.01", "rain rate exceeded 0.01 % of the year",
            super::line::AS_WRITTEN;
        rain_height: Given<Metres>, "h_R", "mean rain height above sea level", super::line::AS_WRITTEN;
        diffraction: BothWays, "A_d", "diffraction loss", super::profile::DIFFRACTION;
        falls: Falls, "", "what falls through the path", "ITU-R P.530-18 §2.4.2, by the heights of the antennas";
        rain_source: Saying, "", "source of the rain rate", "rain rate as written, else normals of months, else map";
    }
}

lines! {
    /// What both directions give together, at the capacity asked for.
    ServiceLines {
        outage: Outage, "p", "rain outage, the worse direction",
            "ITU-R P.530-18 §2.4.1 and P.838-3; same rain in both directions";
        availability: Percent, "100 − p", "availability, both directions",
            "100 % less the rain outage; equipment failure not counted";
        in_hand: Percent, "", "availability in hand", "availability less the one asked for";
        minutes: Minutes, "", "outage in an average year",
            "365 days";
        worst_month: MonthOutage, "p_w", "rain outage in the worst month, the worse direction", WORST_MONTH;
        worst_month_availability: Percent, "100 − p_w", "availability in the worst month, both directions", WORST_MONTH;
    }
}

/// Where an antenna stands above sea level, and what decides it.
pub(super) fn altitude(end: &ResolvedEnd<'_>) -> (Metres, [Place; 2]) {
    let (spec, site) = (end.end, end.site);
    (site.ground_height.value + spec.height.value, [at!(site.ground_height), at!(spec.height)])
}

fn position(end: &ResolvedEnd<'_>) -> (Position, Place) {
    let site = end.site;
    let position = &site.position;
    (Position { latitude: position.latitude.value, longitude: position.longitude.value }, at!(site.position))
}

impl PathLines {
    /// The true bearing from an end to the other.
    #[must_use]
    pub fn azimuth(&self, end: EndName) -> &Line<Degrees> {
        match end {
            EndName::A => &self.azimuth_a,
            EndName::B => &self.azimuth_b,
        }
    }

    /// The elevation angle at an end.
    #[must_use]
    pub fn elevation(&self, end: EndName) -> &Line<Degrees> {
        match end {
            EndName::A => &self.elevation_a,
            EndName::B => &self.elevation_b,
        }
    }
}

pub(super) fn compute(resolved: &ResolvedHop<'_>, target: &Target, maps: &RainMaps) -> PathLines {
    with_share(resolved, target, maps, 1.0)
}

/// The path with end b moved along the geodesic to a share of the distance, all heights as they are.
pub(super) fn with_share(resolved: &ResolvedHop<'_>, target: &Target, maps: &RainMaps, share: f64) -> PathLines {
    let Both { a, b } = &resolved.ends;
    let ((here, here_at), (there, there_at)) = (position(a), position(b));
    let there = if share < 1.0 { geodesy::between(here, there, share) } else { there };
    let ((height_a, [ground_a, end_a]), (height_b, [ground_b, end_b])) = (altitude(a), altitude(b));
    let ends = [here_at, there_at];
    let all = [here_at, there_at, ground_a, end_a, ground_b, end_b];

    let geodesic = geodesy::inverse(here, there).map_err(|error| Missing::new(error, there_at));
    let distance = geodesic.as_ref().map(|found| found.distance).map_err(Clone::clone);
    let elevation = |own, far| distance.clone().map(|d| geodesy::elevation(d, own, far, MEDIAN_K));
    let mean = Metres(f64::midpoint(height_a.0, height_b.0));
    let heights = [ground_a, end_a, ground_b, end_b];
    let air = air::lines(&target.air, mean, &heights);
    let (rain_rate, rain_source) = rain::lines(resolved, target, maps, [(here, here_at), (there, there_at)]);
    let (rain_height, falls) = falls(resolved, target);
    PathLines {
        slant: Line::new(distance.clone().map(|_| geodesy::slant(here, height_a, there, height_b)), &all),
        azimuth_a: Line::new(geodesic.as_ref().map(|found| found.azimuth).map_err(Clone::clone), &ends),
        azimuth_b: Line::new(geodesic.as_ref().map(|found| found.back_azimuth).map_err(Clone::clone), &ends),
        elevation_a: Line::new(elevation(height_a, height_b), &all),
        elevation_b: Line::new(elevation(height_b, height_a), &all),
        distance: Line::new(distance, &ends),
        mean_altitude: Line::known(mean, &heights),
        temperature: air.temperature,
        dry_pressure: air.dry_pressure,
        vapour_pressure: air.vapour_pressure,
        rain_rate,
        rain_source,
        rain_height,
        falls,
        // Filled in from the profile.
        diffraction: Line::new(Err(Missing::judged(Reason::NoProfile, here_at)), &[]),
    }
}

fn falls(resolved: &ResolvedHop<'_>, target: &Target) -> (Line<Given<Metres>>, Line<Falls>) {
    let Some(wanted) = &target.rain_height else {
        let hop = resolved.hop;
        let none = || Missing::judged(Reason::NoRainHeight, at!(hop.climate.rain_height));
        return (Line::new(Err(none()), &[]), Line::new(Err(none()), &[]));
    };
    let ((height_a, from_a), (height_b, from_b)) = (altitude(&resolved.ends.a), altitude(&resolved.ends.b));
    let (antennas, rain_height) = ([height_a, height_b], wanted.value());
    let falls = Falls {
        ever: snow::precipitation(antennas, rain_height),
        in_melting_layer: snow::in_melting_layer(antennas, rain_height),
    };
    let from = [&[wanted.place], &from_a[..], &from_b].concat();
    (Line::known(wanted.given.clone(), &[wanted.place]), Line::known(falls, &from))
}

pub(super) fn service(directions: &Both<Direction<'_>>, target: &Target) -> ServiceLines {
    let Both { a, b } = directions.each_ref().map(Direction::objective_outage);
    let outage = a.and_then(|one| Ok(link::two_way(one, b?)));
    let states = directions.iter().filter_map(Direction::objective_state);
    let mut from = vec![target.capacity.place];
    from.extend(states.flat_map(|state| state.lines.outage.from.iter().chain(&state.lines.capacity.from)));
    let availability = outage.clone().map(|outage| link::availability(outage.at_most()));
    let minutes = outage.clone().map(|outage| link::minutes_per_year(outage.at_most()));
    let in_hand = availability.clone().map(|availability| availability - target.availability.value());
    let mut in_hand_from = from.clone();
    in_hand_from.push(target.availability.place);
    let worst = outage.clone().map(MonthOutage::of);
    ServiceLines {
        worst_month_availability: Line::new(worst.clone().map(|worst| link::availability(worst.at_most())), &from),
        worst_month: Line::new(worst, &from),
        in_hand: Line::new(in_hand, &in_hand_from),
        outage: Line::new(outage, &from),
        availability: Line::new(availability, &from),
        minutes: Line::new(minutes, &from),
    }
}
