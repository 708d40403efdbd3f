//! What is close to one end: edges that its beam must pass, and how well its own position is known.

use super::line::{Line, Missing, lines};
use super::path::PathLines;
use super::profile::Fine;
use super::reason::Reason;
use super::saying::Saying;
use crate::at;
use crate::network::{ResolvedEnd, ResolvedHop};
use crate::physics::clearance::first_fresnel_radius;
use crate::physics::free_space::wavelength;
use crate::physics::geodesy::bearing;
use crate::place::Place;
use crate::spec::EndName;
use crate::units::{Degrees, Gigahertz, Metres};

/// Aperture efficiency of an antenna whose diameter nobody gives: common practice, no source.
const EFFICIENCY: f64 = 0.55;
/// Metres to a degree of latitude on the sphere of 6371 km.
const DEGREE: f64 = 111_194.93;

lines! {
    /// Close to one end.
    NearLines {
        edge: Saying, "", "the near edge that leaves least", super::line::AS_WRITTEN;
        edge_distance: Metres, "", "its distance", super::line::AS_WRITTEN;
        edge_clearance: Fine, "", "beam axis above it", "height of the line at the tilt needed less that of the edge";
        edge_needed: Fine, "", "clearance asked for there",
            "half the aperture and the share of F1 asked for of the path (common practice)";
        edge_in_hand: Fine, "", "clearance in hand there", "beam axis above it less the clearance asked for";
        position_error: Metres, "", "rounding of the position as written", "half of the last digit, latitude and longitude together";
        bearing_error: Degrees, "", "bearing error from it", "seen from the far end";
    }
}

/// The edge that leaves least at one end.
#[derive(Debug)]
pub struct NearSheet {
    /// Which end it is.
    pub name: EndName,
    /// The numbers.
    pub lines: NearLines,
    /// Number of the edge among those of the support.
    pub edge: Option<usize>,
}

struct Edge {
    number: usize,
    distance: Metres,
    clearance: Metres,
    needed: Metres,
}

pub(super) fn compute(
    resolved: &ResolvedHop<'_>,
    path: &PathLines,
    name: EndName,
    fraction: f64,
    frequency: Gigahertz,
) -> NearSheet {
    let (own, tilt, azimuth) = (&resolved.ends[name], path.elevation(name), path.azimuth(name));
    let (end, site, support, antenna) = (own.end, own.site, own.support, own.antenna);
    let network = resolved.network;
    let radius = aperture(own, frequency);
    let edges = (0..support.near_edges.len()).filter_map(|number| {
        let edge = &support.near_edges[number];
        let distance = edge.distance.value;
        let off = edge.bearing.as_ref().map_or(Some(Degrees(0.0)), |given| Some(given.value - azimuth.get()?))?;
        let (sin, cos) = libm::sincos(off.0.to_radians());
        let along = Metres(distance.0 * cos);
        // What is behind the antenna is in nobody's way.
        if along.0 < 0.0 {
            return None;
        }
        let beyond = path.distance.get()? - along;
        let needed = radius.0 + fraction * first_fresnel_radius(frequency, along, beyond).0.max(0.0);
        let half = edge.width.as_ref().map_or(0.0, |width| width.value.0 / 2.0);
        let aside = ((distance.0 * sin).abs() - half).max(0.0);
        if aside >= needed || beyond.0 <= 0.0 {
            return None;
        }
        // The tube of the beam is round: at its side it asks for less height.
        let needed = Metres((needed * needed - aside * aside).sqrt());
        let axis = end.height.value.0 + along.0 * libm::tan(tilt.get()?.0.to_radians());
        Some(Edge { number, distance, clearance: Metres(axis) - edge.height.value, needed })
    });
    let worst = edges.min_by(|one, other| {
        let left = |edge: &Edge| (edge.clearance - edge.needed).0;
        left(one).total_cmp(&left(other))
    });
    let places = [at!(support.near_edges), at!(end.height), at!(antenna.diameter), at!(antenna.gain)];
    let mut from = [&places[..], &tilt.from, &azimuth.from, &[at!(network.limits.clearance)]].concat();
    from.dedup();
    let none = || Missing::judged(Reason::NoNearEdge, at!(support.near_edges));
    let line = |value: Option<Metres>| Line::new(value.map(Fine).ok_or_else(none), &from);
    let title = worst.as_ref().map(|edge| Saying::name(&support.near_edges[edge.number].title));
    let rounding = rounding(own);
    let position_at = at!(site.position);
    let far = [position_at, site_of(&resolved.ends[name.far()])];
    let turned = path.distance.need().map(|d| Degrees(libm::atan2(rounding.0, d.0).to_degrees()));
    NearSheet {
        name,
        edge: worst.as_ref().map(|edge| edge.number),
        lines: NearLines {
            edge: Line::new(title.ok_or_else(none), &from),
            edge_distance: Line::new(worst.as_ref().map(|edge| edge.distance).ok_or_else(none), &from),
            edge_clearance: line(worst.as_ref().map(|edge| edge.clearance)),
            edge_needed: line(worst.as_ref().map(|edge| edge.needed)),
            edge_in_hand: line(worst.as_ref().map(|edge| edge.clearance - edge.needed)),
            position_error: Line::known(rounding, &[position_at]),
            bearing_error: Line::new(turned.map(|angle| if angle.0 > 180.0 { bearing(angle) } else { angle }), &far),
        },
    }
}

fn site_of(end: &ResolvedEnd<'_>) -> Place {
    let site = end.site;
    at!(site.position)
}

/// Half the diameter of the antenna, as written or as its gain makes likely.
///
/// ```text
/// D = (λ/π) √( G / η ),   η = 0.55
/// ```
fn aperture(end: &ResolvedEnd<'_>, frequency: Gigahertz) -> Metres {
    let antenna = end.antenna;
    let by_gain = || {
        let gain = libm::exp10(antenna.gain.value.0 / 10.0);
        wavelength(frequency).0 / std::f64::consts::PI * (gain / EFFICIENCY).sqrt()
    };
    let diameter = antenna.diameter.as_ref().map_or_else(by_gain, |given| given.value.0 / 1000.0);
    Metres(diameter / 2.0)
}

/// How far a position may lie from where it was before its digits were rounded.
fn rounding(end: &ResolvedEnd<'_>) -> Metres {
    let position = &end.site.position;
    let north = position.latitude.step().unwrap_or(0.0) / 2.0 * DEGREE;
    let shrink = libm::cos(position.latitude.value.0.to_radians());
    let east = position.longitude.step().unwrap_or(0.0) / 2.0 * DEGREE * shrink;
    Metres(libm::hypot(north, east))
}
