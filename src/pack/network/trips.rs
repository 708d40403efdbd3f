//! Who goes where: a site once, with the ends of hops that are worked on there.

use std::collections::BTreeMap;

use serde::Serialize;

use super::extract::HopExtract;
use crate::network::Library;
use crate::pack::phrases::angle;
use crate::pack::words::Table;
use crate::units::{latitude_in_seconds, longitude_in_seconds};
use crate::voice::{Open, Voice, shown};

/// A visit to a site.
#[derive(Debug, Clone, Serialize)]
pub(super) struct Trip {
    title: String,
    place: String,
    access: Option<String>,
    table: Table,
}

/// One visit a site, in order of title.
pub(super) fn of(library: &Library, hops: &[HopExtract], voice: Voice) -> Vec<Trip> {
    let mut rows: BTreeMap<&str, Vec<[String; 5]>> = BTreeMap::new();
    for hop in hops {
        for (site, row) in hop.sites.iter().zip(hop.visits.iter()) {
            rows.entry(&site.id).or_default().push(row.clone());
        }
    }
    let mut trips = Vec::new();
    for site in &library.sites.documents {
        let Some(rows) = rows.remove(&*site.id.0) else { continue };
        let (latitude, longitude) = (site.position.latitude.value, site.position.longitude.value);
        let [north, east] = [
            angle(latitude, latitude_in_seconds(latitude), voice),
            angle(longitude, longitude_in_seconds(longitude), voice),
        ];
        let ends = voice.count("trip-ends", rows.len());
        let open: [Open<'_>; 4] = [("id", &site.id), ("latitude", &north), ("longitude", &east), ("ends", &ends)];
        let mut table = Table::new(voice, ["end", "looks-to", "mounting", "alignment", "cabling"]);
        for row in rows {
            table.row(row);
        }
        trips.push(Trip {
            title: shown(&site.title),
            place: voice.with("trip-place", &open),
            access: site.access.as_ref().map(|access| shown(access)),
            table,
        });
    }
    trips.sort_by(|one, other| one.title.cmp(&other.title));
    trips
}
