//! Profiles in files of their own: a table of points beside a hop, every fault at its cell.
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
use crate::spec::{Dialect, ObstacleKind};
use crate::text::csv::{self, Cell, Marks, Reader, Row, called};
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
        let jobs: Vec<(DocumentId, Place, Result<Told, String>)> = named
            .filter_map(|(hop, name)| {
                let folder = files.get(hop.at.file)?.origin.parent().unwrap_or(Path::new(""));
                let told = named_in(folder, name).map(|path| (path, hop.path.dialect));
                Some((hop.at, at!(hop.path.csv), told))
            })
            .collect();
        let mut paths: Vec<&Told> = jobs.iter().filter_map(|(_, _, told)| told.as_ref().ok()).collect();
        paths.sort();
        paths.dedup();
        let inputs = scope.inputs(&library.folder);
        let mut read: HashMap<&Told, Read> = HashMap::new();
        for some in paths.chunks(AT_ONCE) {
            let parsed = |(path, dialect): &&Told| {
                let text = inputs.text(path, MAX_BYTES.min(left));
                text.map(|text| (parse(&text, *dialect), text))
            };
            let texts: Vec<_> = some.par_iter().map(parsed).collect();
            for (told, text) in some.iter().zip(texts) {
                left = left.saturating_sub(text.as_ref().map_or(0, |(_, text)| text.len() as u64));
                read.insert(told, Read::of(&told.0, text, files, shown));
            }
        }
        for (hop, place, told) in &jobs {
            let found = told.as_ref().map(|told| read.get_mut(told));
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

/// A file, and how it is said to be written.
type Told = (PathBuf, Option<Dialect>);

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
    marks: Marks,
}

/// Reads the text of a profile. Lines that start with `#` and empty ones are passed over.
fn parse(text: &str, dialect: Option<Dialect>) -> Result<Vec<ProfileRow>, Vec<Fault>> {
    let marks = marks_of(text, dialect).map_err(|fault| vec![fault])?;
    let mut lines = Reader::new(text, marks);
    lines.take_remarks(true);
    let Some(header) = lines.next() else {
        let help = "start it with `distance [m],ground [m]`, then a line a point".into();
        return Err(vec![Fault { span: 0..0, message: "the profile is empty".into(), label: "nothing here", help }]);
    };
    let header = header.map_err(|fault| vec![of_table(fault)])?;
    let columns = header_of(text, &header, marks).map_err(|fault| vec![fault])?;
    let (mut rows, mut faults) = (Vec::<ProfileRow>::new(), Vec::new());
    for line in lines {
        let row = line.map_err(of_table).and_then(|line| {
            let row = row(&line, &columns)?;
            match rows.last() {
                Some(last) if row.distance <= last.distance => Err(Fault {
                    message: format!(
                        "a distance of {} does not lie beyond the one before, {}",
                        fine(row.distance),
                        fine(last.distance)
                    ),
                    label: "not in order",
                    help: "give the points from end a to end b, each distance once".into(),
                    span: line.span,
                }),
                _ => Ok(row),
            }
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

/// What separates cells and stands before decimals: as the hop says, else as the header shows.
fn marks_of(text: &str, dialect: Option<Dialect>) -> Result<Marks, Fault> {
    if let Some(dialect) = dialect {
        return Ok(Marks { separator: dialect.separator(), decimal: Some(dialect.decimal()) });
    }
    let header = Reader::first_line(text);
    Marks::of_header(header).map_err(|found| {
        let found: Vec<&str> = found.into_iter().map(called).collect();
        let start = text.find(header).unwrap_or_default();
        Fault {
            span: start..start + header.len(),
            message: format!("the header holds a {}: any of them may separate its cells", found.join(" and a ")),
            label: "separated by which?",
            help: DIALECT.into(),
        }
    })
}

/// How the form of the file is told.
const DIALECT: &str = "say it beside `csv`: `dialect: semicolon` for semicolons and decimal commas; also `comma`, \
                       `semicolon-point`, `tab`, `tab-comma`";

/// A fault of the table itself.
fn of_table(fault: csv::Fault) -> Fault {
    let help = "text between quotes has its own quotes doubled; or none of them are needed".into();
    Fault { span: fault.span, message: fault.message, label: "not a cell", help }
}

fn fine(length: Metres) -> String {
    length.with_decimals(2)
}

fn header_of(text: &str, header: &Row<'_>, marks: Marks) -> Result<Columns, Fault> {
    const HELP: &str = "name the columns with their units: `distance [m],ground [m],obstacle [m],kind`";
    let wrong = |span, message: String, label| Fault { span, message, label, help: HELP.into() };
    let (mut distance, mut ground, mut obstacle, mut kind) = (None, None, None, None);
    for (number, cell) in header.cells.iter().enumerate() {
        let (words, span) = (&*cell.text, cell.span.clone());
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
                    return Err(wrong(span, "duplicate column `kind`".into(), "again here"));
                }
                continue;
            }
            _ => return Err(wrong(span, format!("`{words}` is not a column of a profile"), "not known here")),
        };
        // Only a unit and nothing of a number: `1/2 in` behind a one would be an inch and a half.
        let unit = unit.filter(|unit| Metres::KIND.words().any(|word| word == *unit));
        let factor = unit.and_then(|unit| units::read(Metres::KIND, &format!("1 {unit}")).ok());
        let Some(factor) = factor else {
            return Err(wrong(span, format!("the column `{words}` has no unit"), "write the unit in brackets: `[m]`"));
        };
        if column.replace((number, factor)).is_some() {
            return Err(wrong(span, format!("duplicate column `{name}`"), "again here"));
        }
    }
    let count = header.cells.len();
    match (distance, ground) {
        (Some(distance), Some(ground)) => Ok(Columns { distance, ground, obstacle, kind, count, marks }),
        _ => Err(wrong(
            line_of(text, &header.span),
            "a profile has columns `distance` and `ground`".into(),
            "not both are here",
        )),
    }
}

/// The bytes of a row without blanks around it.
fn line_of(text: &str, span: &Range<usize>) -> Range<usize> {
    let line = &text[span.clone()];
    let start = span.start + (line.len() - line.trim_start().len());
    start..start + line.trim().len()
}

/// A cell as metres, `factor` of them a unit.
fn length(cell: &Cell<'_>, marks: Marks, factor: f64, range: &RangeInclusive<f64>) -> Result<Metres, Fault> {
    let (words, span) = (&*cell.text, cell.span.clone());
    let plain = csv::number(words, marks.decimal).map_err(|why| Fault {
        span: span.clone(),
        message: format!("`{words}` {why}"),
        label: "not a plain number",
        help: if marks.decimal.is_none() {
            DIALECT.into()
        } else {
            "write a plain number such as `412.5`; its unit stands in the header".into()
        },
    })?;
    let value = plain.parse::<f64>().ok().map(|value| value * factor);
    value.filter(|value| range.contains(value)).map(Metres).ok_or_else(|| Fault {
        message: format!("`{words}` cannot be, in the unit of its column"),
        label: "not a number in range",
        help: format!("from {} m to {} m; the unit stands in the header", range.start(), range.end()),
        span,
    })
}

fn row(line: &Row<'_>, columns: &Columns) -> Result<ProfileRow, Fault> {
    let (count, marks) = (line.cells.len(), columns.marks);
    if count != columns.count {
        let message = format!("this line has {count} cells, the header {}", columns.count);
        let help =
            format!("cells are separated by a {}; text with one in it stands between quotes", called(marks.separator));
        return Err(Fault { span: line.span.clone(), message, label: "not as many as columns", help });
    }
    let number =
        |(column, factor): (usize, f64), range: RangeInclusive<f64>| length(&line.cells[column], marks, factor, &range);
    let distance = number(columns.distance, 0.0..=Metres::KIND.range.1)?;
    let ground = number(columns.ground, GROUND)?;
    let empty = |column: usize| line.cells[column].text.is_empty();
    let height = match columns.obstacle {
        Some(column) if !empty(column.0) => Some(number(column, STANDING)?),
        _ => None,
    };
    let kind = match columns.kind {
        Some(column) if !empty(column) => {
            let cell = &line.cells[column];
            let word = &*cell.text;
            let known = ObstacleKind::ALL.into_iter().find(|kind| kind.word() == word);
            Some(known.ok_or_else(|| Fault {
                message: format!("`{word}` is not a kind of obstacle"),
                label: "not one of the choices",
                help: format!("one of: {}", ObstacleKind::ALL.map(ObstacleKind::word).join(", ")),
                span: cell.span.clone(),
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
            return Err(Fault { span: line.span.clone(), message, label: "only one of them is here", help });
        }
    };
    let offset = |at: usize| u32::try_from(at).unwrap_or(u32::MAX);
    Ok(ProfileRow { distance, ground, obstacle, line: (offset(line.span.start), offset(line.span.end)) })
}

#[cfg(test)]
mod tests {
    use super::parse;
    use crate::spec::{Dialect, ObstacleKind};
    use crate::units::Metres;

    #[test]
    fn columns_carry_units_and_lines_their_place() {
        let text =
            "\u{feff}# surveyed\r\ndistance [km], ground [ft],obstacle [m],kind\r\n0,100,,\r\n\r\n1.5,200,12,trees\r\n";
        let rows = parse(text, None).expect("a profile");
        assert_eq!(rows.len(), 2);
        assert_eq!((rows[1].distance, rows[1].ground), (Metres(1500.0), Metres(60.96)));
        assert_eq!(rows[1].obstacle, Some((ObstacleKind::Trees, Metres(12.0))));
        let (from, to) = rows[1].line;
        assert_eq!(&text[from as usize..to as usize], "1.5,200,12,trees");
    }

    #[test]
    fn spreadsheets_of_other_countries_are_read() {
        let text = "distance [m];ground [m];obstacle [m];kind\r\n0;100,5;;\r\n1500;200;12,5;trees\r\n";
        let rows = parse(text, Some(Dialect::Semicolon)).expect("a profile");
        assert_eq!(rows[0].ground, Metres(100.5));
        assert_eq!(rows[1].obstacle, Some((ObstacleKind::Trees, Metres(12.5))));
        let tabs = text.replace(';', "\t").replace(',', ".");
        assert_eq!(parse(&tabs, Some(Dialect::Tab)).expect("a profile"), {
            let moved = |row: &super::ProfileRow| *row;
            rows.iter().map(moved).collect::<Vec<_>>()
        });
        // Whole numbers leave nothing open, whatever separates them.
        let whole = "distance [m];ground [m]\n0;100\n1500;200\n";
        assert_eq!(parse(whole, None).expect("a profile")[1].ground, Metres(200.0));
        let said = &parse(text, None).expect_err("which mark?")[0];
        assert!(said.help.contains("dialect: semicolon"), "{}", said.help);
    }

    #[test]
    fn faults_point_at_their_cell() {
        for (text, at, words) in [
            ("distance [m],ground [m]\n0,1\n10,1x\n", "1x", "not a number"),
            ("distance [m],ground [m]\n0,1\n0,2\n", "0,2", "does not lie beyond"),
            ("distance [m],ground [m]\n0;1\n", "0;1", "1 cells"),
            ("distance,ground [m]\n0,1\n", "distance", "no unit"),
            ("distance [m],ground [1/2 in]\n0,1\n9,2\n", "ground [1/2 in]", "no unit"),
            ("distance [ft 6 in],ground [m]\n0,1\n9,2\n", "distance [ft 6 in]", "no unit"),
            ("distance [m],ground [m],kind\n0,1,tower\n", "tower", "not a kind"),
            ("distance [m],ground [m],kind\n0,1,trees\n", "0,1,trees", "height and a kind"),
            ("distance [m],hight [m]\n", "hight [m]", "not a column"),
            ("distance [m],ground [m]\n0,NaN\n", "NaN", "not a number"),
            ("distance [m],ground [m]\n0,\"1,234\"\n9,2\n", "1,234", "1.234 or 1234"),
            ("distance [m];ground [m]\n0;1,5\n9;2\n", "1,5", "which mark"),
            ("distance [m];ground [m],kind\n0;1,5\n", "distance [m];ground [m],kind", "comma and a semicolon"),
            ("distance [m],ground [m]\n0,\"1\n9,2\n", "\"1\n9,2\n", "never closed"),
            ("distance [m],ground [m]\n-1,2\n", "-1", "cannot be"),
            ("distance [m],ground [m]\n0,9001\n", "9001", "cannot be"),
            ("distance [m],ground [ft]\n0,-1641\n", "-1641", "cannot be"),
            ("distance [m],ground [m],obstacle [m],kind\n0,1,1001,trees\n", "1001", "cannot be"),
            ("distance [m]\n1\n", "distance [m]", "columns"),
            ("distance [m],ground [m]\n0,1\n", "d", "two points"),
        ] {
            let faults = parse(text, None).expect_err(text);
            assert_eq!(&text[faults[0].span.clone()], at, "{text}");
            assert!(faults[0].message.contains(words), "{}", faults[0].message);
        }
        assert_eq!(parse("", None).expect_err("empty").len(), 1);
        let many = "distance [m],ground [m]\n".to_owned() + &"x,y\n".repeat(1000);
        assert_eq!(parse(&many, None).expect_err("faults").len(), 3);
    }
}
