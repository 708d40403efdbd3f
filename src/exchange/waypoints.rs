//! Waypoints of GPX and KML as sites.
//!
//! GPX has latitude and longitude by name, and `ele` in metres above sea level. KML has longitude first, and says of each
//! point what its altitude counts from: only one above the sea can stand as the height of the ground.

use std::collections::HashMap;

use roxmltree::Node;

use super::columns::{Column, SITES};
use super::fault::Fault;
use super::figures::in_words;
use super::item::{Item, Value};
use super::table::{is_id, slug};
use super::xml::parsed;
use crate::text::csv;
use crate::text::plain::spelled;
use crate::units::{self, Kind, Latitude, Longitude, Metres, Quantity as _};

/// More waypoints than any network has sites.
const MOST: usize = 100_000;

/// Reads the waypoints of a GPX or KML text as sites, with remarks about what of it is not taken. Items come only of
/// waypoints without a fault.
#[must_use]
pub fn read_waypoints(file: &str, text: &str) -> (Vec<Item>, Vec<String>, Vec<Fault>) {
    let document = match parsed(text) {
        Ok(document) => document,
        Err((line, why)) => return (Vec::new(), Vec::new(), vec![Fault::at(file, line, why)]),
    };
    let ends = document.input_text().match_indices('\n').map(|(at, _)| at).collect();
    let mut points = Points { file, ends, faults: Vec::new(), seen: HashMap::new() };
    let root = document.root_element();
    let (items, remarks) = match root.tag_name().name() {
        "gpx" => points.gpx(root),
        "kml" => points.kml(root),
        other => {
            let why = format!("starts with `{}`: GPX starts with `gpx`, KML with `kml`", super::fault::told(other));
            let line = points.line(root);
            points.faults.push(Fault::at(file, line, why));
            (Vec::new(), Vec::new())
        }
    };
    if items.is_empty() && points.faults.is_empty() {
        points.faults.push(Fault::of_file(file, "holds no waypoint"));
    }
    (items, remarks, points.faults)
}

struct Points<'f> {
    file: &'f str,
    /// Where its lines end.
    ends: Vec<usize>,
    faults: Vec<Fault>,
    seen: HashMap<String, usize>,
}

/// What was read of one waypoint, as it stands there.
struct Point<'t> {
    line: usize,
    id: Option<&'t str>,
    name: Option<&'t str>,
    latitude: Option<(&'static str, &'t str)>,
    longitude: Option<(&'static str, &'t str)>,
    /// Metres above the sea.
    height: Option<(&'static str, &'t str)>,
    remarks: Vec<String>,
}

impl Points<'_> {
    /// The line a node starts in.
    fn line(&self, node: Node<'_, '_>) -> usize {
        1 + self.ends.partition_point(|end| *end < node.range().start)
    }

    fn gpx(&mut self, root: Node<'_, '_>) -> (Vec<Item>, Vec<String>) {
        let mut items = Vec::new();
        for node in root.children().filter(|node| node.has_tag_name_of("wpt")).take(MOST) {
            let point = Point {
                line: self.line(node),
                id: None,
                name: child_text(node, "name"),
                latitude: node.attribute("lat").map(|text| ("lat", text)),
                longitude: node.attribute("lon").map(|text| ("lon", text)),
                height: child_text(node, "ele").map(|text| ("ele", text)),
                remarks: Vec::new(),
            };
            items.extend(self.item(point));
        }
        let passed = |name: &str| root.children().filter(|node| node.has_tag_name_of(name)).count();
        (items, passed_over(self.file, &[("route", passed("rte")), ("track", passed("trk"))]))
    }

    fn kml(&mut self, root: Node<'_, '_>) -> (Vec<Item>, Vec<String>) {
        let (mut items, mut without) = (Vec::new(), 0);
        for node in root.descendants().filter(|node| node.has_tag_name_of("Placemark")).take(MOST) {
            let Some(at) = node.children().find(|node| node.has_tag_name_of("Point")) else {
                without += 1;
                continue;
            };
            let coordinates = child_text(at, "coordinates").unwrap_or_default();
            let mut parts = coordinates.split(',').map(str::trim);
            let (longitude, latitude, altitude) = (parts.next(), parts.next(), parts.next());
            if parts.next().is_some() || coordinates.contains(|c: char| c.is_ascii_control()) {
                let why = "is not a point: longitude, latitude and perhaps an altitude, with commas between them";
                self.faults.push(Fault::of(self.file, self.line(node), "coordinates", coordinates, why));
                continue;
            }
            let mode = child_text(at, "altitudeMode").unwrap_or("clampToGround");
            let (height, remark) = match (altitude, mode) {
                (Some(altitude), "absolute") => (Some(("altitude", altitude)), None),
                (None | Some("0" | "0.0" | ""), _) | (Some(_), "clampToGround") => (None, None),
                (Some(altitude), mode) => {
                    let said = format!(
                        "its altitude of {} is {} and cannot stand as a height of the ground above the sea: left out",
                        super::fault::told(altitude),
                        super::fault::told(mode)
                    );
                    (None, Some(said))
                }
            };
            let point = Point {
                line: self.line(node),
                id: data(node, "id"),
                name: child_text(node, "name"),
                latitude: latitude.map(|text| ("latitude", text)),
                longitude: longitude.filter(|text| !text.is_empty()).map(|text| ("longitude", text)),
                height,
                remarks: remark.into_iter().collect(),
            };
            items.extend(self.item(point));
        }
        let links = root.descendants().filter(|node| node.has_tag_name_of("NetworkLink")).count();
        let passed = [("placemark without a point", without), ("link to another file", links)];
        (items, passed_over(self.file, &passed))
    }

    /// A waypoint as a site.
    fn item(&mut self, point: Point<'_>) -> Option<Item> {
        let before = self.faults.len();
        let id = self.id(&point);
        let mut values = Vec::new();
        if let Some(name) = point.name {
            values.push(value("title", "name", name, name.to_owned()));
        }
        for (column, kind, told) in [
            ("latitude", Latitude::KIND, point.latitude),
            ("longitude", Longitude::KIND, point.longitude),
            ("ground_height", Metres::KIND, point.height),
        ] {
            match told {
                Some((header, cell)) => values.extend(self.number(point.line, column, kind, header, cell)),
                None if column == "ground_height" => {}
                None => self.faults.push(Fault::at(self.file, point.line, format!("has no {column}"))),
            }
        }
        let id = id.filter(|_| self.faults.len() == before)?;
        if let Some(first) = self.seen.insert(id.clone(), point.line) {
            let why = format!("becomes the id `{id}`, which that of line {first} has already");
            self.faults.push(Fault::of(self.file, point.line, "name", point.name.unwrap_or(&id), why));
            return None;
        }
        values.insert(0, value("id", "name", point.name.unwrap_or(&id), id.clone()));
        Some(Item { id, file: self.file.to_owned(), line: point.line, values, remarks: point.remarks })
    }

    /// The id that is told, or that of the name.
    fn id(&mut self, point: &Point<'_>) -> Option<String> {
        let name = point.name.unwrap_or_default();
        if let Some(odd) = name.chars().find(|c| c.is_control()) {
            let why = format!("holds the control character U+{:04X}", u32::from(odd));
            self.faults.push(Fault::of(self.file, point.line, "name", name, why));
            return None;
        }
        let (said, text, id) = match point.id {
            Some(id) => ("id", id, is_id(id).map(|()| id.to_owned())),
            None if name.trim().is_empty() => {
                self.faults.push(Fault::at(
                    self.file,
                    point.line,
                    "the waypoint has no name, and by it a site is known",
                ));
                return None;
            }
            None => {
                let id = slug(name).ok_or_else(|| "makes no id: name it with letters of a to z and digits".to_owned());
                ("name", name, id.and_then(|id| is_id(&id).map(|()| id)))
            }
        };
        id.map_err(|why| self.faults.push(Fault::of(self.file, point.line, said, text, why))).ok()
    }

    fn number(
        &mut self,
        line: usize,
        column: &'static str,
        kind: &'static Kind,
        header: &str,
        cell: &str,
    ) -> Option<Value> {
        let unit = if kind.name == "length" { "m" } else { "deg" };
        let words = csv::number(cell, Some('.')).map(|number| in_words(kind, &number, unit));
        let judged = words.and_then(|words| match units::read(kind, &words) {
            Ok(_) => Ok(words),
            Err(fault) => Err(format!("cannot be: {}; {}", fault.reason, fault.help)),
        });
        match judged {
            Ok(words) => Some(value(column, header, cell, words)),
            Err(why) => {
                self.faults.push(Fault::of(self.file, line, header, cell, why));
                None
            }
        }
    }
}

fn value(column: &str, header: &str, cell: &str, words: String) -> Value {
    let column: &'static Column = SITES.iter().find(|own| own.name == column).expect("a column of sites");
    Value { column, header: header.to_owned(), cell: cell.to_owned(), words }
}

/// What there is in a file that is no site.
fn passed_over(file: &str, counts: &[(&str, usize)]) -> Vec<String> {
    let some = counts.iter().filter(|(_, count)| *count > 0);
    some.map(|(what, count)| {
        let plural = match (*count, what.split_once(' ')) {
            (1, _) => (*what).to_owned(),
            (_, Some((first, rest))) => format!("{first}s {rest}"),
            (_, None) => format!("{what}s"),
        };
        format!("{}: {count} {plural} passed over", spelled(file))
    })
    .collect()
}

/// By its name, whatever version of the format its name is of.
trait Named {
    fn has_tag_name_of(&self, name: &str) -> bool;
}

impl Named for Node<'_, '_> {
    fn has_tag_name_of(&self, name: &str) -> bool {
        self.is_element() && self.tag_name().name() == name
    }
}

fn child_text<'t>(node: Node<'t, '_>, name: &str) -> Option<&'t str> {
    let text = node.children().find(|node| node.has_tag_name_of(name))?.text()?.trim();
    (!text.is_empty()).then_some(text)
}

/// What a placemark says of itself beside its place.
fn data<'t>(node: Node<'t, '_>, name: &str) -> Option<&'t str> {
    let all = node.children().find(|node| node.has_tag_name_of("ExtendedData"))?;
    let own = all.children().find(|node| node.has_tag_name_of("Data") && node.attribute("name") == Some(name))?;
    child_text(own, "value")
}
