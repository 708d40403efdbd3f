//! New documents, as a person would write them: what was imported, and as remarks what is still to be written.

use std::fmt::Write as _;

use super::columns::{Holds, What};
use super::item::{Item, Value};
use super::yaml;
use crate::text::plain::spelled;

/// A part of a document, in the order in which people write.
enum Part {
    /// A key, the column it comes from, and what is said of it where it is missing; nothing where it may be.
    Leaf(&'static str, &'static str, &'static str),
    /// A key with keys below it.
    Group(&'static str, &'static [Part]),
    /// A list of one thing.
    List(&'static str, &'static [Part]),
    /// What no table holds: lines of a remark.
    Remark(&'static [&'static str]),
    /// An empty line.
    Gap,
}

use Part::{Gap, Group, Leaf, List, Remark};

const SITE: &[Part] = &[
    Leaf("title", "title", "name as people say it"),
    Group(
        "position",
        &[
            Leaf("latitude", "latitude", "on the WGS 84 ellipsoid, north positive"),
            Leaf("longitude", "longitude", "east positive"),
        ],
    ),
    Leaf("ground_height", "ground_height", "ground above mean sea level at the support"),
    Leaf("rain_rate", "rain_rate", ""),
    Leaf("access", "access", "how a crew gets there"),
    Remark(&["contacts:", "  - { name: , role: , phone: \"\" }", "hazards:", "  - "]),
    Gap,
    List(
        "supports",
        &[
            Leaf("id", "support", "name within the site"),
            Leaf("kind", "support_kind", "pole, mast or wall"),
            Leaf("outside_diameter", "outside_diameter", "of the tube, measured, not the nominal size"),
            Leaf("wall_thickness", "wall_thickness", "without it the pole is not judged in wind"),
            Leaf("material", "material", "the same"),
            Leaf("base_height", "base_height", "of its base above the ground of the site"),
            Leaf("free_length", "free_length", "that stands free above the base"),
        ],
    ),
    Remark(&["power:", "  - { id: , title: }", "earth:", "  - { id: , title: , bonded: }"]),
];

macro_rules! end {
    ($end:literal) => {
        &[
            Leaf("site", concat!("site_", $end), "where"),
            Leaf("support", concat!("support_", $end), "one of the site's supports"),
            Leaf("height", concat!("height_", $end), "antenna centre above the ground of the site"),
            Leaf("radio", concat!("radio_", $end), "its model"),
            Leaf("half", concat!("half_", $end), ""),
            Leaf("antenna", concat!("antenna_", $end), "its model"),
            Leaf("transmit_power", concat!("transmit_power_", $end), "at the antenna port of the radio, as set"),
            Group("bracket", &[Leaf("model", concat!("bracket_", $end), "of the bracket")]),
            Remark(&["runs:  # one for each cable", "grounding:  # conductor, length, bonds_to"]),
        ]
    };
}

const HOP: &[Part] = &[
    Leaf("title", "title", ""),
    Gap,
    Group(
        "channel",
        &[
            Leaf("a_to_b", "a_to_b", "centre frequency that end a sends on"),
            Leaf("b_to_a", "b_to_a", "that end b sends on; the same where both take turns"),
            Leaf("bandwidth", "bandwidth", "occupied, each way"),
            Leaf("polarisation", "polarisation", "horizontal, vertical or dual"),
        ],
    ),
    Group("licence", &[Leaf("number", "licence", "")]),
    Remark(&["path:  # ground and obstacles between the ends"]),
    Gap,
    Group("ends", &[Group("a", end!("a")), Group("b", end!("b"))]),
];

/// What opens the line that names a schema.
const MARKED: &str = "# yaml-language-server: $schema=";

/// The text of a new document, and the keys that have to be there and are not.
#[must_use]
pub(super) fn text(what: What, item: &Item, schema: Option<&str>) -> (String, Vec<String>) {
    let mut out = String::new();
    // Writing to a string cannot fail.
    if let Some(schema) = schema {
        let _ = writeln!(out, "{MARKED}{schema}");
    }
    let file = item.file.rsplit(['/', '\\']).next().unwrap_or(&item.file);
    let _ = writeln!(out, "# Imported from {}, line {}.", spelled(file), item.line);
    for remark in &item.remarks {
        let _ = writeln!(out, "# {}", spelled(remark));
    }
    let _ = writeln!(out, "# What is still a remark is to be written: `hopwright check` says what is missing.");
    let _ = writeln!(out, "kind: {}\nid: {}", what.kind(), yaml::scalar(&item.id));
    let mut sheet = Sheet { item, out, missing: Vec::new() };
    sheet.parts(if what == What::Sites { SITE } else { HOP }, 0, None, "");
    (sheet.out, sheet.missing)
}

/// The schema of a new document, by the line that names that of the network.
#[must_use]
pub(super) fn schema(what: What, network: &str) -> Option<String> {
    let named = network.lines().find_map(|line| line.strip_prefix(MARKED))?.trim();
    let (folder, _) = named.rsplit_once('/').unwrap_or((".", ""));
    let file = format!("{}.json", what.kind());
    let whole = folder.contains("://") || folder.starts_with('/');
    Some(match folder {
        _ if whole => format!("{folder}/{file}"),
        "." => format!("../{file}"),
        _ => format!("../{folder}/{file}"),
    })
}

struct Sheet<'i> {
    item: &'i Item,
    out: String,
    missing: Vec<String>,
}

impl Sheet<'_> {
    fn is_told(&self, part: &Part) -> bool {
        match part {
            Leaf(_, column, _) => self.item.value(column).is_some(),
            Group(_, parts) | List(_, parts) => parts.iter().any(|part| self.is_told(part)),
            Remark(_) | Gap => false,
        }
    }

    /// A line; as a remark, its `#` stands in that column, and what it would be behind it.
    fn line(&mut self, indent: usize, remark: Option<usize>, text: &str) {
        let (column, mark) = remark.map_or((indent, ""), |column| (column, "# "));
        let behind = indent - column;
        let line = format!("{:column$}{mark}{:behind$}{text}", "", "");
        self.out.push_str(line.trim_end());
        self.out.push('\n');
    }

    /// Parts one below the other.
    fn parts(&mut self, parts: &[Part], indent: usize, remark: Option<usize>, within: &str) {
        for part in parts {
            match part {
                Leaf(..) => self.leaf(part, indent, remark, "", within),
                Group(key, below) => {
                    // A group of what may be missing is left out.
                    if self.is_told(part) || below.iter().any(|part| !matches!(part, Leaf(_, _, ""))) {
                        let remark = self.remark(part, indent, remark);
                        self.line(indent, remark, &format!("{key}:"));
                        self.parts(below, indent + 2, remark, &format!("{within}{key}."));
                    }
                }
                List(key, below) => {
                    let remark = self.remark(part, indent, remark);
                    self.line(indent, remark, &format!("{key}:"));
                    self.item(below, indent + 2, remark, &format!("{within}{key}."));
                }
                Remark(lines) => {
                    lines.iter().for_each(|line| self.line(indent, Some(remark.unwrap_or(indent)), line));
                }
                Gap => self.out.push('\n'),
            }
        }
    }

    /// What is a remark as a whole has its `#` in one column.
    fn remark(&self, part: &Part, indent: usize, around: Option<usize>) -> Option<usize> {
        around.or_else(|| (!self.is_told(part)).then_some(indent))
    }

    /// The one item of a list. The first that is told opens it, or a remark would have to.
    fn item(&mut self, parts: &[Part], indent: usize, remark: Option<usize>, within: &str) {
        let first = parts.iter().position(|part| self.is_told(part)).unwrap_or_default();
        self.leaf(&parts[first], indent, remark, "- ", within);
        for (number, part) in parts.iter().enumerate() {
            if number != first {
                self.leaf(part, indent + 2, remark, "", within);
            }
        }
    }

    fn leaf(&mut self, part: &Part, indent: usize, remark: Option<usize>, dash: &str, within: &str) {
        let Leaf(key, column, hint) = part else { return };
        match self.item.value(column) {
            Some(value) => self.line(indent, None, &format!("{dash}{key}: {}", written(value))),
            None if hint.is_empty() => {}
            None => {
                self.missing.push(format!("{within}{key}"));
                self.line(indent, Some(remark.unwrap_or(indent)), &format!("{dash}{key}:  # {hint}"));
            }
        }
    }
}

/// A value as it stands behind its key.
pub(super) fn written(value: &Value) -> String {
    match value.column.holds {
        Holds::Quantity(_) => yaml::quantity(&value.words),
        Holds::Text | Holds::Word => yaml::scalar(&value.words),
    }
}
