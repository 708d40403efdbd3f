//! Profiles in files of their own: comma-separated points beside a hop, every fault at its line.
//!
//! Where the file may lie is the door's affair: what stands in it is shown in messages.

use std::collections::HashMap;
use std::ops::{Range, RangeInclusive};
use std::path::{Path, PathBuf};
use std::sync::Arc;

use rayon::prelude::*;

use super::files::{Files, SourceFile};
use super::library::Library;
use super::profile::{ProfileFile, ProfileRow};
use super::scope::Scope;
use crate::at;
use crate::finding::faults::BAD_VALUE;
use crate::finding::{Finding, Spot};
use crate::place::{DocumentId, FileId, Place};
use crate::spec::ObstacleKind;
use crate::units::{self, Metres, Quantity as _};

/// A file beyond this is no profile: 100 km at a metre have some 2 MiB.
const MAX_BYTES: u64 = 32 << 20;
/// All profiles together: a thousand paths of 100 km at a metre.
const MOST_BYTES_TOGETHER: u64 = 2 << 30;
/// Files read side by side before their bytes are counted.
const AT_ONCE: usize = 64;
/// More faults of one file than this are cut short: they tend to have one cause.
const MOST_FAULTS: usize = 3;

/// Heights above the sea that ground may have, in metres: as in a hop.
const GROUND: RangeInclusive<f64> = -500.0..=9000.0;
/// Heights above the ground that anything standing on it may have, in metres: as in a hop.
const STANDING: RangeInclusive<f64> = 0.0..=1000.0;

/// A fault of a profile's text.
#[derive(Debug, PartialEq)]
struct Fault {
    span: Range<usize>,
    message: String,
    label: &'static str,
    help: String,
}

/// Reads the profiles that hops name, each file once. Their texts join `files`, their faults `findings`.
pub(super) fn read_profiles(
    scope: &Scope,
    libraries: &mut [Library],
    files: &mut Files,
    shown: &dyn Fn(&Path) -> String,
    findings: &mut Vec<Finding>,
) {
    let mut left = MOST_BYTES_TOGETHER;
    for library in libraries {
        let hops = library.hops.documents.iter().filter(|hop| hop.path.profile.is_empty());
        let named = hops.filter_map(|hop| Some((hop, &**hop.path.csv.as_ref()?)));
        let jobs: Vec<(DocumentId, Place, Result<PathBuf, String>)> = named
            .filter_map(|(hop, name)| {
                let folder = files.get(hop.at.file)?.origin.parent().unwrap_or(Path::new(""));
                Some((hop.at, at!(hop.path.csv), named_in(folder, name)))
            })
            .collect();
        let mut paths: Vec<&PathBuf> = jobs.iter().filter_map(|(_, _, path)| path.as_ref().ok()).collect();
        paths.sort();
        paths.dedup();
        let inputs = scope.inputs(&library.folder);
        let mut read: HashMap<&Path, Read> = HashMap::new();
        for some in paths.chunks(AT_ONCE) {
            let parsed = |path: &&PathBuf| {
                let text = inputs.text(path, MAX_BYTES.min(left));
                text.map(|text| (parse(&text), text))
            };
            let texts: Vec<_> = some.par_iter().map(parsed).collect();
            for (path, text) in some.iter().zip(texts) {
                left = left.saturating_sub(text.as_ref().map_or(0, |(_, text)| text.len() as u64));
                read.insert(path, Read::of(path, text, files, shown));
            }
        }
        for (hop, place, path) in &jobs {
            let found = path.as_ref().map(|path| read.get_mut(path.as_path()));
            let profile = match found {
                Ok(Some(found)) => found.take(*place, findings),
                Ok(None) => continue,
                Err(why) => {
                    findings.push(unread(*place, why.clone()));
                    Err((*place).into())
                }
            };
            library.profiles.insert(*hop, profile);
        }
    }
}

/// The points of a text, or its faults, and the text.
type Parsed = (Result<Vec<ProfileRow>, Vec<Fault>>, String);

/// What came of a file: its points, or its faults, which are told once, or why there is no text.
enum Read {
    Points(FileId, Arc<[ProfileRow]>),
    Faulty(FileId, Vec<Fault>, Spot),
    Unread(String),
}

impl Read {
    fn of(path: &Path, text: Result<Parsed, String>, files: &mut Files, shown: &dyn Fn(&Path) -> String) -> Self {
        let (parsed, text) = match text {
            Ok(text) => text,
            Err(why) => return Self::Unread(why),
        };
        let file = FileId(u32::try_from(files.list.len()).unwrap_or(u32::MAX));
        let read = match parsed {
            Ok(rows) => Self::Points(file, rows.into()),
            Err(faults) => {
                let first = faults.first().map_or(0..0, |fault| fault.span.clone());
                Self::Faulty(file, faults, Spot::Bytes(file, first))
            }
        };
        files.list.push(SourceFile::new(shown(path), path.to_path_buf(), text));
        read
    }

    /// The profile of a hop that names the file at a place.
    fn take(&mut self, place: Place, findings: &mut Vec<Finding>) -> Result<ProfileFile, Spot> {
        match self {
            Self::Points(file, rows) => Ok(ProfileFile { file: *file, rows: Arc::clone(rows) }),
            Self::Faulty(file, faults, first) => {
                findings.extend(faults.drain(..).map(|fault| finding(&fault, *file, place)));
                Err(first.clone())
            }
            Self::Unread(why) => {
                findings.push(unread(place, why.clone()));
                Err(place.into())
            }
        }
    }
}

fn unread(place: Place, why: String) -> Finding {
    let mut finding = Finding::new(&BAD_VALUE, place, why, "no profile there");
    finding.help("name a file of comma-separated points, from the folder of this file");
    finding
}

/// The path of a file that a document names.
fn named_in(folder: &Path, name: &str) -> Result<PathBuf, String> {
    crate::door::path::named(folder, name)
}

fn finding(fault: &Fault, file: FileId, place: Place) -> Finding {
    let spot = Spot::Bytes(file, fault.span.clone());
    let mut finding = Finding::new(&BAD_VALUE, spot, fault.message.clone(), fault.label);
    finding.because(place, "read for this hop");
    finding.help(fault.help.clone());
    finding
}

/// A column of the file: where it stands, and how its unit makes metres.
struct Columns {
    distance: (usize, f64),
    ground: (usize, f64),
    obstacle: Option<(usize, f64)>,
    kind: Option<usize>,
    count: usize,
}

/// Reads the text of a profile. Lines that start with `#` and empty ones are passed over.
fn parse(text: &str) -> Result<Vec<ProfileRow>, Vec<Fault>> {
    let start = text.len() - text.trim_start_matches('\u{feff}').len();
    let mut lines = lines(text, start).filter(|line| {
        let line = text[line.clone()].trim();
        !line.is_empty() && !line.starts_with('#')
    });
    let Some(header) = lines.next() else {
        let help = "start it with `distance [m],ground [m]`, then a line a point".into();
        return Err(vec![Fault { span: 0..0, message: "the profile is empty".into(), label: "nothing here", help }]);
    };
    let columns = header_of(text, header).map_err(|fault| vec![fault])?;
    let (mut rows, mut faults) = (Vec::<ProfileRow>::new(), Vec::new());
    for line in lines {
        let row = row(text, &line, &columns).and_then(|row| match rows.last() {
            Some(last) if row.distance <= last.distance => Err(Fault {
                message: format!(
                    "a distance of {} does not lie beyond the one before, {}",
                    fine(row.distance),
                    fine(last.distance)
                ),
                label: "not in order",
                help: "give the points from end a to end b, each distance once".into(),
                span: line.clone(),
            }),
            _ => Ok(row),
        });
        match row {
            Ok(row) => rows.push(row),
            Err(fault) => faults.push(fault),
        }
        if faults.len() >= MOST_FAULTS {
            break;
        }
    }
    if faults.is_empty() && rows.len() < 2 {
        let help = "give the ground at both ends at least, and the points between them".into();
        let message = "a profile has two points at least".into();
        faults.push(Fault { span: 0..text.len().min(1), message, label: "too few points", help });
    }
    if faults.is_empty() { Ok(rows) } else { Err(faults) }
}

fn fine(length: Metres) -> String {
    length.with_decimals(2)
}

/// The lines of a text from an offset on, without their ends.
fn lines(text: &str, start: usize) -> impl Iterator<Item = Range<usize>> + '_ {
    let mut at = start;
    text[start..].split_inclusive('\n').map(move |line| {
        let from = at;
        at += line.len();
        from..from + line.trim_end_matches(['\n', '\r']).len()
    })
}

/// The cells of a line, spaces and quotes around them taken off.
fn cells<'t>(text: &'t str, line: &Range<usize>) -> impl Iterator<Item = Range<usize>> + 't {
    let mut at = line.start;
    text[line.clone()].split(',').map(move |cell| {
        let from = at;
        at += cell.len() + 1;
        let inner = cell.trim().trim_matches('"').trim();
        let shift = cell.find(inner).unwrap_or_default();
        from + shift..from + shift + inner.len()
    })
}

fn header_of(text: &str, line: Range<usize>) -> Result<Columns, Fault> {
    const HELP: &str = "name the columns with their units: `distance [m],ground [m],obstacle [m],kind`";
    let wrong = |span, message: String, label| Fault { span, message, label, help: HELP.into() };
    let (mut distance, mut ground, mut obstacle, mut kind, mut count) = (None, None, None, None, 0);
    for (number, cell) in cells(text, &line).enumerate() {
        count = number + 1;
        let words = &text[cell.clone()];
        let (name, unit) = match words.split_once('[') {
            Some((name, unit)) => (name.trim(), unit.strip_suffix(']').map(str::trim)),
            None => (words, None),
        };
        let column = match name {
            "distance" => &mut distance,
            "ground" => &mut ground,
            "obstacle" => &mut obstacle,
            "kind" if unit.is_none() => {
                if kind.replace(number).is_some() {
                    return Err(wrong(cell, "the column `kind` stands twice".into(), "again here"));
                }
                continue;
            }
            _ => return Err(wrong(cell, format!("`{words}` is no column of a profile"), "not known here")),
        };
        // Only a unit and nothing of a number: `1/2 in` behind a one would be an inch and a half.
        let unit = unit.filter(|unit| Metres::KIND.words().any(|word| word == *unit));
        let factor = unit.and_then(|unit| units::read(Metres::KIND, &format!("1 {unit}")).ok());
        let Some(factor) = factor else {
            return Err(wrong(cell, format!("`{words}` has no unit of length"), "in what unit?"));
        };
        if column.replace((number, factor)).is_some() {
            return Err(wrong(cell, format!("the column `{name}` stands twice"), "again here"));
        }
    }
    match (distance, ground) {
        (Some(distance), Some(ground)) => Ok(Columns { distance, ground, obstacle, kind, count }),
        _ => Err(wrong(line, "a profile has columns `distance` and `ground`".into(), "not both are here")),
    }
}

/// A cell as metres, `factor` of them a unit.
fn length(text: &str, cell: Range<usize>, factor: f64, range: &RangeInclusive<f64>) -> Result<Metres, Fault> {
    let words = &text[cell.clone()];
    let value = words.parse::<f64>().ok().map(|value| value * factor).filter(|value| value.is_finite());
    match value.filter(|value| range.contains(value)) {
        Some(value) => Ok(Metres(value)),
        None => Err(Fault {
            message: match value {
                Some(_) => format!("`{words}` cannot be, in the unit of its column"),
                None => format!("`{words}` is no length in the unit of its column"),
            },
            label: "not a number in range",
            help: format!(
                "write a plain number such as `412.5`, from {} m to {} m; its unit stands in the header",
                range.start(),
                range.end()
            ),
            span: cell,
        }),
    }
}

fn row(text: &str, line: &Range<usize>, columns: &Columns) -> Result<ProfileRow, Fault> {
    let mut found = [const { 0..0 }; 4];
    let mut count = 0;
    for (number, cell) in cells(text, line).enumerate() {
        if let Some(slot) = found.get_mut(number) {
            *slot = cell;
        }
        count = number + 1;
    }
    if count != columns.count {
        let message = format!("this line has {count} cells, the header {}", columns.count);
        let help = "separate the cells by commas and write decimals with a point".into();
        return Err(Fault { span: line.clone(), message, label: "not as many as columns", help });
    }
    let number = |(column, factor): (usize, f64), range: RangeInclusive<f64>| {
        length(text, found[column].clone(), factor, &range)
    };
    let distance = number(columns.distance, 0.0..=Metres::KIND.range.1)?;
    let ground = number(columns.ground, GROUND)?;
    let empty = |column: usize| found[column].is_empty();
    let height = match columns.obstacle {
        Some(column) if !empty(column.0) => Some(number(column, STANDING)?),
        _ => None,
    };
    let kind = match columns.kind {
        Some(column) if !empty(column) => {
            let cell = found[column].clone();
            let word = &text[cell.clone()];
            let known = ObstacleKind::ALL.into_iter().find(|kind| kind.word() == word);
            Some(known.ok_or_else(|| Fault {
                message: format!("`{word}` is no kind of obstacle"),
                label: "not one of the choices",
                help: format!("one of: {}", ObstacleKind::ALL.map(ObstacleKind::word).join(", ")),
                span: cell,
            })?)
        }
        _ => None,
    };
    let obstacle = match (kind, height) {
        (Some(kind), Some(height)) => Some((kind, height)),
        (None, None) => None,
        (None, Some(height)) if height.0 <= 0.0 => None,
        _ => {
            let message = "an obstacle has a height and a kind".into();
            let help = "fill in both `obstacle` and `kind`, or neither".into();
            return Err(Fault { span: line.clone(), message, label: "only one of them is here", help });
        }
    };
    let offset = |at: usize| u32::try_from(at).unwrap_or(u32::MAX);
    Ok(ProfileRow { distance, ground, obstacle, line: (offset(line.start), offset(line.end)) })
}

#[cfg(test)]
mod tests {
    use super::parse;
    use crate::spec::ObstacleKind;
    use crate::units::Metres;

    #[test]
    fn columns_carry_units_and_lines_their_place() {
        let text =
            "\u{feff}# surveyed\r\ndistance [km], ground [ft],obstacle [m],kind\r\n0,100,,\r\n\r\n1.5,200,12,trees\r\n";
        let rows = parse(text).expect("a profile");
        assert_eq!(rows.len(), 2);
        assert_eq!((rows[1].distance, rows[1].ground), (Metres(1500.0), Metres(60.96)));
        assert_eq!(rows[1].obstacle, Some((ObstacleKind::Trees, Metres(12.0))));
        let (from, to) = rows[1].line;
        assert_eq!(&text[from as usize..to as usize], "1.5,200,12,trees");
    }

    #[test]
    fn faults_point_at_their_cell() {
        for (text, at, words) in [
            ("distance [m],ground [m]\n0,1\n10,1x\n", "1x", "no length"),
            ("distance [m],ground [m]\n0,1\n0,2\n", "0,2", "does not lie beyond"),
            ("distance [m],ground [m]\n0;1\n", "0;1", "1 cells"),
            ("distance,ground [m]\n0,1\n", "distance", "no unit"),
            ("distance [m],ground [1/2 in]\n0,1\n9,2\n", "ground [1/2 in]", "no unit"),
            ("distance [ft 6 in],ground [m]\n0,1\n9,2\n", "distance [ft 6 in]", "no unit"),
            ("distance [m],ground [m],kind\n0,1,tower\n", "tower", "no kind"),
            ("distance [m],ground [m],kind\n0,1,trees\n", "0,1,trees", "height and a kind"),
            ("distance [m],hight [m]\n", "hight [m]", "no column"),
            ("distance [m],ground [m]\n0,NaN\n", "NaN", "no length"),
            ("distance [m],ground [m]\n-1,2\n", "-1", "cannot be"),
            ("distance [m],ground [m]\n0,9001\n", "9001", "cannot be"),
            ("distance [m],ground [ft]\n0,-1641\n", "-1641", "cannot be"),
            ("distance [m],ground [m],obstacle [m],kind\n0,1,1001,trees\n", "1001", "cannot be"),
            ("distance [m]\n1\n", "distance [m]", "columns"),
            ("distance [m],ground [m]\n0,1\n", "d", "two points"),
        ] {
            let faults = parse(text).expect_err(text);
            assert_eq!(&text[faults[0].span.clone()], at, "{text}");
            assert!(faults[0].message.contains(words), "{}", faults[0].message);
        }
        assert_eq!(parse("").expect_err("empty").len(), 1);
        let many = "distance [m],ground [m]\n".to_owned() + &"x,y\n".repeat(1000);
        assert_eq!(parse(&many).expect_err("faults").len(), 3);
    }
}
