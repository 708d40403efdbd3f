//! Sites and hops as `GeoJSON` (RFC 7946), longitude first.
//!
//! The third coordinate of `GeoJSON` counts from the ellipsoid and heights of a network from the sea: what cannot be converted
//! stands as a property that says so by its name.

use serde_json::{Map, Value, json};

use super::mark::HopMark;
use crate::network::Library;

/// A network as a collection of features: its sites, then its hops.
#[must_use]
pub fn geojson(library: &Library, hops: &[HopMark]) -> String {
    let sites = library.sites.documents.iter().map(|site| {
        let at = [site.position.longitude.value.0, site.position.latitude.value.0];
        json!({
            "type": "Feature",
            "id": format!("site/{}", &*site.id),
            "geometry": { "type": "Point", "coordinates": at.map(degrees) },
            "properties": {
                "kind": "site",
                "id": &*site.id.0,
                "title": &*site.title.0,
                "ground_above_sea_m": rounded(site.ground_height.value.0, 100.0),
            },
        })
    });
    let features: Vec<Value> = sites.chain(hops.iter().map(hop)).collect();
    // A feature a line, so that a difference shows what changed.
    let lines: Vec<String> = features.iter().map(Value::to_string).collect();
    format!("{{\"type\":\"FeatureCollection\",\"features\":[\n{}\n]}}\n", lines.join(",\n"))
}

fn hop(hop: &HopMark) -> Value {
    let line: Vec<[Value; 2]> = hop.ends.iter().map(|end| [degrees(end.longitude), degrees(end.latitude)]).collect();
    let mut properties = Map::new();
    for (key, text) in [("kind", "hop"), ("id", &hop.id), ("title", &hop.title), ("verdict", hop.verdict)] {
        properties.insert(key.into(), text.into());
    }
    for (key, end) in [("a", &hop.ends.a), ("b", &hop.ends.b)] {
        properties.insert(format!("site_{key}"), end.site.clone().into());
        properties
            .insert(format!("antenna_{key}_above_sea_m"), end.altitude.map_or(Value::Null, |it| rounded(it, 100.0)));
    }
    for (key, count) in [("errors", hop.errors), ("warnings", hop.warnings), ("waived", hop.waived)] {
        properties.insert(key.into(), count.into());
    }
    for (key, value) in hop.figures() {
        let step = if key.ends_with("_percent") { 1e6 } else { 100.0 };
        properties.insert(key, value.map_or(Value::Null, |value| rounded(value, step)));
    }
    json!({
        "type": "Feature",
        "id": format!("hop/{}", hop.id),
        "geometry": { "type": "LineString", "coordinates": line },
        "properties": properties,
    })
}

fn degrees(value: f64) -> Value {
    rounded(value, 1e7)
}

/// To so many steps of one; no minus before a nought.
fn rounded(value: f64, steps: f64) -> Value {
    json!((value * steps).round() / steps + 0.0)
}
