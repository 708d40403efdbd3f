//! The form of a record: the record page as YAML, everything still to be filled in as a comment.
//!
//! It loads as it is; `check` then lists what is open. Nothing measured is filled in beforehand, so that nobody can hand in
//! the design as a reading.

use std::fmt::Write as _;
use std::path::{Component, Path, PathBuf, absolute};

use super::record_page::{self, free_id};
use crate::network::{Files, SourceFile, mark};
use crate::place::DocumentId;
use crate::sheet::{HopSheet, required_checks};
use crate::spec::{EndName, Kind};
use crate::voice::Voice;

const MARKED: &str = "# yaml-language-server: $schema=";

/// Everything the form of one end says, free of the library it came from.
#[derive(Debug)]
pub struct Form {
    hop: String,
    end: EndName,
    site: String,
    far_site: String,
    revision: Option<String>,
    items: Vec<record_page::Item>,
    service: [String; 2],
    checks: Vec<(&'static str, &'static str)>,
    hop_document: DocumentId,
    network_document: DocumentId,
    /// What the hop is made from.
    sources: Vec<DocumentId>,
    taken: Vec<String>,
}

impl Form {
    /// The form of an end.
    #[must_use]
    pub fn of(sheet: &HopSheet<'_>, name: EndName) -> Self {
        let (hop, network, end) = (sheet.resolved.hop, sheet.resolved.network, &sheet.ends[name]);
        let checks = required_checks(end.resolved, end.far);
        Self {
            hop: hop.id.to_string(),
            end: name,
            site: end.resolved.site.title.to_string(),
            far_site: end.far.site.title.to_string(),
            revision: network.revision.as_ref().map(ToString::to_string),
            // YAML speaks English, whatever the paper does.
            items: record_page::items(sheet, end, Voice::PLAIN),
            service: record_page::service(sheet, Voice::PLAIN),
            checks: checks.iter().map(|check| (check.word(), check.sentence())).collect(),
            hop_document: hop.at,
            network_document: network.at,
            sources: mark::sources(sheet.resolved),
            taken: sheet.records.iter().map(|record| record.document.id.to_string()).collect(),
        }
    }

    /// `HOP/END`, by which it is asked for.
    #[must_use]
    pub fn name(&self) -> String {
        format!("{}/{}", self.hop, self.end)
    }

    /// Where records of its network lie unless told otherwise: `records` in the folder of the network.
    #[must_use]
    pub fn folder(&self, files: &Files) -> PathBuf {
        let network = files.get(self.network_document.file).and_then(|file| file.origin.parent());
        network.unwrap_or(Path::new("")).join("records")
    }

    /// The first id of its kind that is free, and the file it goes into.
    #[must_use]
    pub fn place(&self, folder: &Path) -> (String, PathBuf) {
        let path = |id: &str| folder.join(format!("{id}.yaml"));
        let taken = |id: &str| self.taken.iter().any(|taken| taken == id) || crate::door::exists(&path(id));
        let id = free_id(&self.hop, self.end, taken);
        let path = path(&id);
        (id, path)
    }

    /// The form as text. It names the source mark that stands at the foot of the packs of the same hop.
    #[must_use]
    pub fn text(&self, id: &str, folder: &Path, files: &Files) -> String {
        let mut out = String::new();
        if let Some(schema) = files.get(self.hop_document.file).and_then(|file| schema_of(file, folder)) {
            let _ = writeln!(out, "{MARKED}{schema}");
        }
        let (here, there, end) = (one_line(&self.site), one_line(&self.far_site), self.end);
        let _ = writeln!(out, "# Record of {}, end {end}: {here}, looking at {there}.", self.hop);
        out.push_str(
            "# Take the `# ` off a line and write what was found after the colon, with its unit. Leave out what nobody\n\
             # measured. The keys are those on the record page of the install pack; `hopwright check` says what is open.\n",
        );
        let _ = writeln!(out, "kind: {}\nid: {id}\nhop: {}\nend: {end}\nbuilt_from:", Kind::Record, self.hop);
        if let Some(revision) = &self.revision {
            let _ = writeln!(out, "  revision: {}", quoted(revision));
        }
        let _ = writeln!(out, "  mark: {}\n", quoted(&mark::of_sources(&self.sources, files)));
        out.push_str(HEAD);
        let mut parents: Vec<&str> = Vec::new();
        for item in &self.items {
            add(item, &mut parents, &mut out);
        }
        let [rate, time] = &self.service;
        out.push_str("\n# service:\n");
        comment(&mut out, "  state:", "modulation state reached, as the radio names it");
        comment(&mut out, "  rate:", rate);
        comment(&mut out, "  errors:", "frames or blocks lost or wrong while it ran");
        comment(&mut out, "  duration:", time);
        out.push_str("\n# checks:\n");
        for (word, sentence) in &self.checks {
            comment(&mut out, &format!("  - {word}"), sentence);
        }
        out.push_str(TAIL);
        out
    }
}

/// A line of the form, under its parents.
fn add<'i>(item: &'i record_page::Item, parents: &mut Vec<&'i str>, out: &mut String) {
    let steps: Vec<&str> = item.key.split('.').collect();
    let hint = match (&item.band, item.unit) {
        (Some(band), _) => format!("designed {}, accept {band}", item.designed),
        (None, unit) if item.designed.is_empty() => unit.to_owned(),
        (None, _) => format!("designed {}", item.designed),
    };
    match steps.as_slice() {
        ["runs", port, key] => {
            let first = parents.as_slice() != ["runs", *port];
            if first && parents.first() != Some(&"runs") {
                out.push_str("\n# runs:\n");
            }
            if first {
                let _ = writeln!(out, "#   - port: {port}");
            }
            comment(out, &format!("    {key}:"), &hint);
            *parents = vec!["runs", port];
        }
        [parent, key] => {
            if parents.as_slice() != [*parent] {
                let _ = writeln!(out, "\n# {parent}:");
            }
            if (*parent, *key) == ("settings", "transmit_power") {
                comment(out, "  state:", "modulation state while reading, as the radio names it");
                comment(out, "  automatic_power_control:", "true or false");
            }
            comment(out, &format!("  {key}:"), &hint);
            if *key == "resistance" {
                comment(out, "  method:", "fall of potential, clamp");
            }
            *parents = vec![parent];
        }
        _ => {
            if !parents.is_empty() {
                out.push('\n');
            }
            comment(out, &format!("{}:", item.key), &hint);
            parents.clear();
        }
    }
}

/// What comes before the items.
const HEAD: &str = "\
# date:                             # YYYY-MM-DD
# crew: []                          # [Name, Name]
# weather:
#   sky:                            # dry, fog, rain or snow
#   temperature:                    # °C
#   humidity:                       # %
#   pressure:                       # hPa, as the barometer there shows it, not reduced to sea level
#   rain_rate:                      # mm/h, if somebody measured it
#   fog:                            # g/m3: 0.05 where one sees 300 m, 0.5 where 50 m
# instrument:
#   title:                          # maker and model of the meter
#   serial:                         # in quotes
#   calibration_due:                # YYYY-MM-DD
";

/// What comes after them.
const TAIL: &str = "
# photos:
#   - file:
#     shows:
# deviations:
#   - what:
#     concession:                   # where it was agreed, if it was
# decision:
#   verdict:                        # accepted, accepted-with-concession or rejected
#   by:
";

/// A commented key with what is said of it in a column.
fn comment(out: &mut String, key: &str, said: &str) {
    let _ = writeln!(out, "# {key:<33} # {}", one_line(said));
}

/// Text that cannot end the comment it stands in, with minus signs and spaces as they are typed.
fn one_line(text: &str) -> String {
    let plain = |c: char| match c {
        '\u{2212}' => '-',
        '\u{a0}' | '\u{85}' | '\u{2028}' | '\u{2029}' => ' ',
        c if c.is_control() => ' ',
        c => c,
    };
    text.chars().map(plain).collect()
}

/// Text in double quotes, as YAML and JSON both read it.
fn quoted(text: &str) -> String {
    serde_json::Value::from(text).to_string()
}

/// The schema of a record, found where the hop's own file says that its schema is.
fn schema_of(hop: &SourceFile, folder: &Path) -> Option<String> {
    let named = hop.text.lines().find_map(|line| line.strip_prefix(MARKED))?.trim();
    let (schemas, _) = named.rsplit_once('/')?;
    let file = format!("{}.json", Kind::Record);
    if schemas.contains("://") || schemas.starts_with('/') {
        return Some(format!("{schemas}/{file}"));
    }
    let target = in_full(&hop.origin.parent()?.join(schemas));
    Some(format!("{}/{file}", mark::portable(&way(&in_full(folder), &target))))
}

fn in_full(path: &Path) -> PathBuf {
    let whole = absolute(path).unwrap_or_else(|_| path.to_path_buf());
    whole.components().fold(PathBuf::new(), |mut full, part| {
        match part {
            Component::ParentDir => {
                full.pop();
            }
            part => full.push(part),
        }
        full
    })
}

/// The way from one folder to another, with forward slashes.
fn way(from: &Path, to: &Path) -> String {
    let shared = from.components().zip(to.components()).take_while(|(one, other)| one == other).count();
    let up = from.components().skip(shared).map(|_| "..".to_owned());
    let down = to.components().skip(shared).map(|part| part.as_os_str().to_string_lossy().into_owned());
    up.chain(down).collect::<Vec<_>>().join("/")
}

#[cfg(test)]
mod tests {
    use super::{one_line, quoted, way};
    use std::path::Path;

    #[test]
    fn the_way_goes_up_and_down() {
        assert_eq!(way(Path::new("/a/b/records"), Path::new("/a/schema")), "../../schema");
        assert_eq!(way(Path::new("/a/b"), Path::new("/a/b/schema")), "schema");
    }

    #[test]
    fn nothing_an_author_wrote_leaves_its_comment() {
        assert_eq!(one_line("a\nkind: hop\u{2028}b \u{2212}1\u{a0}dB"), "a kind: hop b -1 dB");
        assert_eq!(quoted("1"), "\"1\"");
        assert_eq!(quoted("a\"b\n"), r#""a\"b\n""#);
    }
}
