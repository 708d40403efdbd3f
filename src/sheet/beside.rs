//! What else stands on the support of an end: where, how near, and how far to stay away from it on the climb.

use super::aperture::{above_zero, aperture};
use super::geometry::{Geometry, frequency};
use super::key::SectionKey;
use super::line::{AS_WRITTEN, Section, lines};
use super::method::cited;
use super::missing::Missing;
use super::people;
use super::shown::KeepClear;
use super::title::Title;
use super::traced::{AsTraced as _, Traced, all, read, see, written};
use crate::at;
use crate::network::{Fellow, ResolvedEnd, ResolvedHop};
use crate::physics::bodies::Body;
use crate::units::{Degrees, Given, Metres, Millimetres};

const BOXES: &str =
    "two boxes in front of the tube, as wide as the dish and 250 mm and a quarter of it deep (common practice)";

lines! {
    /// An antenna on the same support.
    BesideLines {
        height: Given<Metres>, "", "its centre above ground", AS_WRITTEN;
        bearing: Degrees, "", "true bearing of its beam", cited("WGS 84 geodesic (Karney 2013)");
        diameter: Millimetres, "", "its diameter", "as written, else of an aperture of its gain";
        room: Millimetres, "", "room between the two, less than none where they overlap", BOXES;
        public_distance: KeepClear, "", "distance for whoever passes it, along its beam", people::KEEP_CLEAR;
        workers_distance: KeepClear, "", "distance of trained workers from it, along its beam", people::KEEP_CLEAR;
    }
}

/// An antenna on the same support.
#[derive(Debug)]
pub struct Beside<'n> {
    /// Whose it is.
    pub fellow: Fellow<'n>,
    /// Its lines.
    pub lines: BesideLines,
    /// Whether what is to be said of the two is said here: at the later of their hops.
    pub told_here: bool,
    /// Whether whoever climbs to this end passes it.
    pub is_passed: bool,
    /// Whether it stands in the beam of this end, and this end in its beam.
    pub in_beam: [Traced<bool>; 2],
}

impl Beside<'_> {
    /// Its rows.
    pub(super) fn section(&self, own: &ResolvedEnd<'_>) -> Section {
        let (end, hop, other) = (own.name, &self.fellow.hop.hop.id, self.fellow.end.name);
        let key = SectionKey::Beside(end, hop.to_string(), other);
        self.lines.section(key, Title::Beside { end, hop: (**hop).into(), other })
    }
}

/// How wide the antenna of an end is.
fn across(hop: &ResolvedHop<'_>, end: &ResolvedEnd<'_>) -> Traced<Millimetres> {
    let dish = end.antenna;
    let sends = frequency(hop, end.name.outgoing()).map(|given| given.value);
    let at = at!(dish.diameter);
    aperture(dish, &sends).try_map(|diameter| above_zero(diameter).map_err(|reason| Missing::judged(reason, at)))
}

/// The body of an end.
fn body(hop: &ResolvedHop<'_>, end: &ResolvedEnd<'_>, geometry: &Geometry) -> (Traced<Millimetres>, Traced<Body>) {
    let (spec, diameter) = (end.end, across(hop, end));
    let (bearing, tilt) = (&geometry.bearings[end.name], &geometry.elevations[end.name]);
    let body = all((&read!(spec.height), &diameter, bearing, tilt)).map(|(height, diameter, bearing, tilt)| Body {
        height,
        diameter,
        bearing,
        tilt,
    });
    (diameter, body)
}

/// The diameter of the antenna of an end.
pub(super) fn diameter(hop: &ResolvedHop<'_>, own: &ResolvedEnd<'_>) -> Option<Millimetres> {
    across(hop, own).get()
}

/// What stands beside an end.
pub(super) fn compute<'n>(hop: &ResolvedHop<'_>, own: &ResolvedEnd<'_>, fellows: &[Fellow<'n>]) -> Vec<Beside<'n>> {
    if fellows.is_empty() || fellows.len() > super::pole::MOST_OTHERS {
        return Vec::new();
    }
    let (_, own_body) = body(hop, own, &Geometry::of(hop));
    fellows.iter().map(|fellow| one(hop, own, &own_body, *fellow)).collect()
}

fn one<'n>(hop: &ResolvedHop<'_>, own: &ResolvedEnd<'_>, own_body: &Traced<Body>, fellow: Fellow<'n>) -> Beside<'n> {
    let (support, other, document) = (own.support, fellow.end.end, fellow.hop.hop);
    let geometry = Geometry::of(fellow.hop);
    let (diameter, its_body) = body(fellow.hop, fellow.end, &geometry);
    let stands = all((&see!(other.support), &see!(document.id))).map(|_| ());
    let three = all((own_body, &its_body, &read!(support.outside_diameter)));
    let here = |traced: Traced<bool>| traced.decided_by(&stands);
    let lines = people::lines(fellow.hop, fellow.end, &frequency(fellow.hop, fellow.end.name.outgoing()));
    Beside {
        lines: BesideLines {
            height: written!(other.height).decided_by(&stands).line(),
            bearing: geometry.bearings[fellow.end.name].clone().decided_by(&stands).line(),
            diameter: diameter.decided_by(&stands).line(),
            room: three.map(|(own, other, tube)| own.room(&other, tube)).decided_by(&stands).line(),
            public_distance: lines.public_distance.traced().clone().decided_by(&stands).line(),
            workers_distance: lines.workers_distance.traced().clone().decided_by(&stands).line(),
        },
        told_here: (&*hop.hop.id.0, own.name) > (&*fellow.hop.hop.id.0, fellow.end.name),
        is_passed: other.height.value < own.end.height.value,
        in_beam: [
            here(three.map(|(own, other, tube)| own.shines_on(&other, tube))),
            here(three.map(|(own, other, tube)| other.shines_on(&own, tube))),
        ],
        fellow,
    }
}
