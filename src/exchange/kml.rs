//! Sites and hops as KML 2.2, longitude first.
//!
//! Heights of a network are above the sea, and so is what KML calls `absolute`: each point states it.

use std::fmt::Write as _;

use super::figures::{as_written, fixed, trimmed};
use super::mark::HopMark;
use crate::network::Library;
use crate::text::xml;
use crate::units::{Latitude, Longitude, Metres, Quantity as _};

/// A network as one document with a folder of sites and one of hops.
#[must_use]
pub fn kml(library: &Library, hops: &[HopMark]) -> String {
    let title = library.networks.documents.first().map(|network| network.title.to_string()).unwrap_or_default();
    let mut out = String::from("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
    // Writing to a string cannot fail.
    let _ = writeln!(out, "<kml xmlns=\"http://www.opengis.net/kml/2.2\">\n<Document>\n<name>{}</name>", text(&title));
    out.push_str("<Folder>\n<name>Sites</name>\n");
    for site in &library.sites.documents {
        let at = &site.position;
        let number = |kind, words: String| as_written(kind, &words).unwrap_or_default();
        let longitude = number(Longitude::KIND, at.longitude.to_string());
        let latitude = number(Latitude::KIND, at.latitude.to_string());
        let ground = number(Metres::KIND, site.ground_height.to_string());
        let _ = writeln!(out, "<Placemark>\n<name>{}</name>", text(&site.title));
        data(&mut out, &[("id".into(), site.id.to_string())]);
        let _ = writeln!(
            out,
            "<Point><altitudeMode>absolute</altitudeMode><coordinates>{longitude},{latitude},{ground}</coordinates></Point>\n\
             </Placemark>"
        );
    }
    out.push_str("</Folder>\n<Folder>\n<name>Hops</name>\n");
    for mark in hops {
        hop(&mut out, mark);
    }
    out.push_str("</Folder>\n</Document>\n</kml>\n");
    out
}

fn hop(out: &mut String, hop: &HopMark) {
    let _ = writeln!(out, "<Placemark>\n<name>{}</name>", text(&hop.title));
    let said = [("id", hop.id.clone()), ("verdict", hop.verdict.to_owned()), ("errors", hop.errors.to_string())];
    let said = said.into_iter().chain([("warnings", hop.warnings.to_string()), ("waived", hop.waived.to_string())]);
    let figures = hop.figures().into_iter().filter_map(|(key, value)| {
        let value = value?;
        Some((key.clone(), if key.ends_with("_percent") { trimmed(value) } else { fixed(value, 2) }))
    });
    let all: Vec<(String, String)> = said.map(|(key, value)| (key.to_owned(), value)).chain(figures).collect();
    data(out, &all);
    // Without both altitudes the line lies on the ground, or one end of it would hang in the sea.
    let mode = if hop.ends.iter().all(|end| end.altitude.is_some()) { "absolute" } else { "clampToGround" };
    let points: Vec<String> = hop
        .ends
        .iter()
        .map(|end| {
            let place = format!("{},{}", fixed(end.longitude, 7), fixed(end.latitude, 7));
            match end.altitude.filter(|_| mode == "absolute") {
                Some(altitude) => format!("{place},{}", fixed(altitude, 2)),
                None => place,
            }
        })
        .collect();
    let _ = writeln!(
        out,
        "<LineString><altitudeMode>{mode}</altitudeMode><coordinates>{}</coordinates></LineString>\n</Placemark>",
        points.join(" ")
    );
}

fn data(out: &mut String, pairs: &[(String, String)]) {
    out.push_str("<ExtendedData>");
    for (name, value) in pairs {
        let _ = write!(out, "<Data name=\"{name}\"><value>{}</value></Data>", text(value));
    }
    out.push_str("</ExtendedData>\n");
}

fn text(text: &str) -> String {
    xml::escaped(text, |c| if c == '\n' { "\n" } else { "\u{fffd}" })
}
