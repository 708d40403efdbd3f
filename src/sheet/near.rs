//! What is close to one end: edges that its beam must pass, and how well its own position is known.

use super::gain;
use super::line::lines;
use super::method::cited;
use super::path::PathLines;
use super::reason::Reason;
use super::saying::Saying;
use super::shown::Fine;
use super::traced::{Traced, all, read, see};
use crate::network::{ResolvedEnd, ResolvedHop};
use crate::physics::clearance::first_fresnel_radius;
use crate::physics::free_space::wavelength;
use crate::physics::geodesy::bearing;
use crate::spec::{EndName, NearEdge};
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
            cited("half the aperture and the share of F1 asked for of the path (common practice)");
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

/// An edge that reaches for the beam.
#[derive(Clone, Copy)]
struct Edge {
    number: usize,
    distance: Metres,
    clearance: Metres,
    needed: Metres,
}

impl Edge {
    fn left(&self) -> Metres {
        self.clearance - self.needed
    }
}

/// The beam of one end, close to it.
#[derive(Clone, Copy)]
struct Beam {
    /// Half the aperture.
    radius: Metres,
    frequency: Gigahertz,
    /// Share of the Fresnel radius asked for.
    fraction: f64,
    height: Metres,
    tilt: Degrees,
    azimuth: Degrees,
    length: Metres,
}

impl Beam {
    /// What an edge leaves of it; none where it is in nobody's way.
    fn over(&self, number: usize, edge: &NearEdge) -> Option<Edge> {
        let distance = edge.distance.value;
        let off = edge.bearing.as_ref().map_or(Degrees(0.0), |given| given.value - self.azimuth);
        let (sin, cos) = libm::sincos(off.0.to_radians());
        let along = Metres(distance.0 * cos);
        // What is behind the antenna is in nobody's way.
        if along.0 < 0.0 {
            return None;
        }
        let beyond = self.length - along;
        let zone = first_fresnel_radius(self.frequency, along, beyond).0.max(0.0);
        let needed = self.radius.0 + self.fraction * zone;
        let half = edge.width.as_ref().map_or(0.0, |width| width.value.0 / 2.0);
        let aside = ((distance.0 * sin).abs() - half).max(0.0);
        if aside >= needed || beyond.0 <= 0.0 {
            return None;
        }
        // The tube of the beam is round: at its side it asks for less height.
        let needed = Metres((needed * needed - aside * aside).sqrt());
        let axis = self.height.0 + along.0 * libm::tan(self.tilt.0.to_radians());
        Some(Edge { number, distance, clearance: Metres(axis) - edge.height.value, needed })
    }
}

/// What is close to an end; `fraction` and `frequency` are those of the line of sight.
pub(super) fn compute(
    resolved: &ResolvedHop<'_>,
    path: &PathLines,
    name: EndName,
    fraction: &Traced<f64>,
    frequency: &Traced<Gigahertz>,
) -> NearSheet {
    let own = &resolved.ends[name];
    let (end, support) = (own.end, own.support);
    let none = support.spec.near_edges.is_empty();
    let edges = see!(support.near_edges).unless(|_| none.then_some(Reason::NoNearEdge));
    let axis = all((&read!(end.height), path.elevation(name), path.azimuth(name), &path.distance));
    let tube = all((&radius(own, frequency), frequency, fraction));
    let worst = all((&edges, &axis, &tube)).judge(|(edges, axis, (radius, frequency, fraction))| {
        let (height, tilt, azimuth, length) = axis;
        let beam = Beam { radius, frequency, fraction, height, tilt, azimuth, length };
        let reaching = edges.iter().enumerate().filter_map(|(number, edge)| beam.over(number, edge));
        let worst = reaching.min_by(|one, other| one.left().0.total_cmp(&other.left().0));
        worst.ok_or(Reason::NoNearEdge)
    });
    let title = |edge: Edge| Saying::name(&support.near_edges[edge.number].title);
    let rounding = rounding(own);
    let far = resolved.ends[name.far()].site;
    let turned = all((&rounding, &path.distance)).decided_by(&see!(far.position)).map(|(off, d)| {
        let angle = Degrees(libm::atan2(off.0, d.0).to_degrees());
        if angle.0 > 180.0 { bearing(angle) } else { angle }
    });
    NearSheet {
        name,
        edge: worst.get().map(|edge| edge.number),
        lines: NearLines {
            edge: worst.map(title).line(),
            edge_distance: worst.map(|edge| edge.distance).line(),
            edge_clearance: worst.map(|edge| Fine(edge.clearance)).line(),
            edge_needed: worst.map(|edge| Fine(edge.needed)).line(),
            edge_in_hand: worst.map(|edge| Fine(edge.left())).line(),
            position_error: rounding.line(),
            bearing_error: turned.line(),
        },
    }
}

/// Half the diameter of the antenna, as written or as its gain makes likely.
///
/// ```text
/// D = (λ/π) √( G / η ),   η = 0.55
/// ```
fn radius(end: &ResolvedEnd<'_>, frequency: &Traced<Gigahertz>) -> Traced<Metres> {
    let antenna = end.antenna;
    all((&read!(antenna.diameter), &gain::at(antenna, frequency), frequency)).map(|(diameter, gain, frequency)| {
        let by_gain = || {
            let gain = libm::exp10(gain.0 / 10.0);
            wavelength(frequency).0 / std::f64::consts::PI * (gain / EFFICIENCY).sqrt()
        };
        Metres(diameter.map_or_else(by_gain, |diameter| diameter.0 / 1000.0) / 2.0)
    })
}

/// How far a position may lie from where it was before its digits were rounded.
fn rounding(end: &ResolvedEnd<'_>) -> Traced<Metres> {
    let site = end.site;
    see!(site.position).map(|position| {
        let north = position.latitude.step().unwrap_or(0.0) / 2.0 * DEGREE;
        let shrink = libm::cos(position.latitude.value.0.to_radians());
        let east = position.longitude.step().unwrap_or(0.0) / 2.0 * DEGREE * shrink;
        Metres(libm::hypot(north, east))
    })
}
