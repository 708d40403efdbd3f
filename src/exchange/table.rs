//! A table of sites or hops: every cell read and judged, every fault told.

use std::collections::HashMap;

use super::columns::{Column, Holds, What, column_of, columns_of};
use super::fault::Fault;
use super::figures::in_words;
use super::item::{Item, Value};
use crate::spec::{Dialect, LONGEST_ID};
use crate::text::csv::{self, Cell, Marks, Reader, Row, called, undone};
use crate::text::nearest::{did_you_mean, nearest};
use crate::text::plain::spelled;
use crate::units;

/// How a table is to be read.
#[derive(Debug, Clone, Default)]
pub struct Form {
    /// How it separates cells and writes decimals, where that is told.
    pub dialect: Option<Dialect>,
    /// Columns to pass over, as the header has them.
    pub ignore: Vec<String>,
}

/// More rows than any network has.
const MOST_ROWS: usize = 100_000;
/// More columns than any table has.
const MOST_COLUMNS: usize = 1_000;
/// The longest cell, in bytes.
const LONGEST_CELL: usize = 10_000;

/// What a column of a file is.
struct Under {
    /// As the file calls it.
    header: String,
    /// What it is; nothing where it is passed over.
    column: Option<&'static Column>,
    unit: Option<String>,
}

/// Reads a table. Items come only of rows without a fault.
#[must_use]
pub fn read_table(file: &str, text: &str, what: What, form: &Form) -> (Vec<Item>, Vec<Fault>) {
    let mut faults = Vec::new();
    let items = Table { file, what, faults: &mut faults }.read(text, form);
    (items, faults)
}

struct Table<'a> {
    file: &'a str,
    what: What,
    faults: &'a mut Vec<Fault>,
}

impl Table<'_> {
    fn read(mut self, text: &str, form: &Form) -> Vec<Item> {
        let Some(marks) = self.marks(text, form.dialect) else { return Vec::new() };
        let mut rows = Reader::new(text, marks);
        rows.take_remarks(true);
        let header = match rows.next() {
            Some(Ok(header)) => header,
            Some(Err(fault)) => {
                self.broken(text, &fault);
                return Vec::new();
            }
            None => {
                self.faults.push(Fault::of_file(self.file, "there is nothing in it: the first line names the columns"));
                return Vec::new();
            }
        };
        let Some(columns) = self.header(&header, &form.ignore) else { return Vec::new() };
        rows.take_remarks(false);
        let (mut items, mut seen) = (Vec::new(), HashMap::new());
        for (number, row) in rows.enumerate() {
            match row {
                Err(fault) => self.broken(text, &fault),
                Ok(row) if number >= MOST_ROWS => {
                    let why = format!("no more than {MOST_ROWS} rows are read from a table");
                    self.faults.push(Fault::at(self.file, row.line, why));
                    break;
                }
                Ok(row) => items.extend(self.row(&row, &columns, marks, &mut seen)),
            }
        }
        items
    }

    fn marks(&mut self, text: &str, dialect: Option<Dialect>) -> Option<Marks> {
        if let Some(dialect) = dialect {
            return Some(Marks { separator: dialect.separator(), decimal: Some(dialect.decimal()) });
        }
        match Marks::of_header(Reader::first_line(text)) {
            Ok(marks) => Some(marks),
            Err(found) => {
                let found: Vec<&str> = found.into_iter().map(called).collect();
                let why = format!(
                    "the header holds a {}, and any of them may separate its cells: say which by `--dialect`",
                    found.join(" and a ")
                );
                self.faults.push(Fault::of_file(self.file, why));
                None
            }
        }
    }

    fn broken(&mut self, text: &str, fault: &csv::Fault) {
        let line = 1 + text[..fault.span.start].matches('\n').count();
        self.faults.push(Fault::at(self.file, line, format!("{}; nothing behind it is read", fault.message)));
    }

    /// What stands under what; nothing if the header itself is at fault.
    fn header(&mut self, header: &Row<'_>, ignore: &[String]) -> Option<Vec<Under>> {
        let before = self.faults.len();
        if header.cells.len() > MOST_COLUMNS {
            let why = format!("the header has {} cells: no more than {MOST_COLUMNS} are read", header.cells.len());
            self.faults.push(Fault::at(self.file, header.line, why));
            return None;
        }
        let mut columns: Vec<Under> = Vec::new();
        for cell in &header.cells {
            match self.column(cell, ignore) {
                Ok(under) => {
                    let same = |other: &Under| {
                        under.column.is_some_and(|own| other.column.is_some_and(|it| it.name == own.name))
                    };
                    if let Some(first) = columns.iter().find(|other| same(other)) {
                        let why = format!("is a column that `{}` is already", spelled(&first.header));
                        self.faults
                            .push(Fault { column: None, ..Fault::of(self.file, header.line, "", &cell.text, why) });
                    }
                    columns.push(under);
                }
                Err(why) => {
                    self.faults.push(Fault { column: None, ..Fault::of(self.file, header.line, "", &cell.text, why) });
                }
            }
        }
        if let Some(lost) = ignore.iter().find(|name| !header.cells.iter().any(|cell| cell.text == name.as_str())) {
            self.faults.push(Fault::at(
                self.file,
                header.line,
                format!("there is no column `{}` to pass over", spelled(lost)),
            ));
        }
        let named = |name: &str| columns.iter().any(|under| under.column.is_some_and(|column| column.name == name));
        if self.faults.len() == before && !named("id") {
            self.faults.push(Fault::at(self.file, header.line, "there is no column `id`: by it a row is known"));
        }
        if self.faults.len() == before && !named("support") {
            let of_support =
                columns.iter().find(|under| under.column.is_some_and(|column| column.route.contains("[i]")));
            if let Some(under) = of_support {
                let why = format!("`{}` is about a support: say which in a column `support`", spelled(&under.header));
                self.faults.push(Fault::at(self.file, header.line, why));
            }
        }
        (self.faults.len() == before).then_some(columns)
    }

    fn column(&self, cell: &Cell<'_>, ignore: &[String]) -> Result<Under, String> {
        let header = cell.text.to_string();
        if ignore.contains(&header) {
            return Ok(Under { header, column: None, unit: None });
        }
        let (name, unit) = match header.split_once(['[', '(']) {
            Some((name, unit)) => {
                let unit = unit.trim().strip_suffix([']', ')']).ok_or("opens a bracket and does not close it")?;
                (name, Some(unit.trim().to_owned()))
            }
            None => (header.as_str(), None),
        };
        let Some(column) = column_of(self.what, name) else {
            let known = columns_of(self.what).iter().map(|column| column.name);
            let guess = nearest(&super::columns::plain(name), known.clone());
            let hint = guess.map_or_else(|| format!("it has {}", known.collect::<Vec<_>>().join(", ")), did_you_mean);
            let what = self.what.folder();
            return Err(format!("is not a column of a table of {what}: {hint} `--ignore` passes a column over"));
        };
        match (column.holds, &unit) {
            (Holds::Quantity(kind), Some(unit)) if !kind.words().any(|word| word == unit) => {
                let units: Vec<&str> = kind.words().collect();
                Err(format!("has no unit of {}: one of {}", kind.name, units.join(", ")))
            }
            (Holds::Quantity(_), _) | (_, None) => Ok(Under { unit, column: Some(column), header }),
            (Holds::Text | Holds::Word, Some(_)) => Err("has a unit, and holds no number".into()),
        }
    }

    fn row(
        &mut self,
        row: &Row<'_>,
        columns: &[Under],
        marks: Marks,
        seen: &mut HashMap<String, usize>,
    ) -> Option<Item> {
        if row.cells.iter().all(|cell| cell.text.is_empty()) {
            return None;
        }
        let (count, wanted) = (row.cells.len(), columns.len());
        if count != wanted {
            let where_ = match (columns.get(count), row.cells.get(wanted)) {
                (Some(under), _) => format!("nothing stands under `{}`", spelled(&under.header)),
                (None, Some(cell)) => format!("`{}` stands under no column", super::fault::told(&cell.text)),
                (None, None) => String::new(),
            };
            let why = format!(
                "this row has {count} cells and the header {wanted}: {where_}; cells are separated by a {}",
                called(marks.separator)
            );
            self.faults.push(Fault::at(self.file, row.line, why));
            return None;
        }
        let before = self.faults.len();
        let mut values = Vec::new();
        for (cell, under) in row.cells.iter().zip(columns) {
            let Some(column) = under.column else { continue };
            match words(cell, column, under.unit.as_deref(), marks) {
                Ok(Some(words)) => {
                    let (header, cell) = (under.header.clone(), cell.text.to_string());
                    values.push(Value { column, header, cell, words });
                }
                Ok(None) => {}
                Err(why) => self.faults.push(Fault::of(self.file, row.line, &under.header, &cell.text, why)),
            }
        }
        let id = values.iter().find(|value| value.column.name == "id");
        let Some(id) = id.map(|value| value.words.clone()) else {
            if self.faults.len() == before {
                self.faults.push(Fault::at(self.file, row.line, "the cell under `id` is empty: by it a row is known"));
            }
            return None;
        };
        if let Some(first) = seen.insert(id.clone(), row.line) {
            let why = format!("is the id of line {first} already");
            self.faults.push(Fault::of(self.file, row.line, "id", &id, why));
        }
        let order = |value: &Value| columns_of(self.what).iter().position(|column| column.name == value.column.name);
        values.sort_by_key(order);
        (self.faults.len() == before).then(|| Item {
            id,
            file: self.file.to_owned(),
            line: row.line,
            values,
            remarks: Vec::new(),
        })
    }
}

/// A cell in the words of the language; nothing where it is empty.
fn words(cell: &Cell<'_>, column: &Column, unit: Option<&str>, marks: Marks) -> Result<Option<String>, String> {
    let text = undone(&cell.text);
    if let Some(odd) = text.chars().find(|c| c.is_control() && !matches!(c, '\n' | '\t' | '\r')) {
        return Err(format!("holds the control character U+{:04X}", u32::from(odd)));
    }
    if text.len() > LONGEST_CELL {
        return Err(format!("has more than {LONGEST_CELL} bytes"));
    }
    let bare = text.trim();
    if bare.is_empty() {
        return Ok(None);
    }
    match column.holds {
        Holds::Text => Ok(Some(text.to_owned())),
        Holds::Word if column.name == "id" => is_id(bare).map(|()| Some(bare.to_owned())),
        Holds::Word => Ok(Some(bare.to_owned())),
        Holds::Quantity(kind) => {
            // A number of a table is never made inert, so no apostrophe is taken off it.
            let bare = cell.text.trim();
            let words = match unit {
                Some(unit) => {
                    let number = csv::number(bare, marks.decimal);
                    let number = number
                        .map_err(|why| if why.contains("say which") { format!("{why} by `--dialect`") } else { why })?;
                    in_words(kind, &number, unit)
                }
                None => bare.to_owned(),
            };
            match units::read(kind, &words) {
                Ok(_) => Ok(Some(words)),
                Err(_) if unit.is_none() && csv::number(bare, Some('.')).is_ok() => Err(format!(
                    "has no unit: write it in the header, `{} [{}]`",
                    column.name,
                    column.unit().unwrap_or("m")
                )),
                Err(fault) => Err(format!("cannot be: {}; {}", fault.reason, fault.help)),
            }
        }
    }
}

/// Whether a word is an id.
pub(super) fn is_id(word: &str) -> Result<(), String> {
    let part = |part: &str| !part.is_empty() && part.bytes().all(|b| b.is_ascii_lowercase() || b.is_ascii_digit());
    if word.len() > LONGEST_ID {
        return Err(format!("is longer than the {LONGEST_ID} characters of an id"));
    }
    if word.split('-').all(part) {
        return Ok(());
    }
    let guess = slug(word).filter(|slug| slug.len() <= LONGEST_ID);
    let hint = guess.map_or_else(String::new, |slug| format!(", such as `{slug}`"));
    Err(format!("is not an id: lower-case letters, digits and single hyphens{hint}"))
}

/// A name as an id, where only letters, digits, blanks and marks have to be spelled: `Dam, north` is `dam-north`.
pub(super) fn slug(name: &str) -> Option<String> {
    let mut out = String::new();
    for c in name.trim().chars() {
        match c {
            c if c.is_ascii_alphanumeric() => out.push(c.to_ascii_lowercase()),
            'ä' | 'Ä' => out.push_str("ae"),
            'ö' | 'Ö' => out.push_str("oe"),
            'ü' | 'Ü' => out.push_str("ue"),
            'ß' => out.push_str("ss"),
            c if c.is_ascii() => {
                if !out.is_empty() && !out.ends_with('-') {
                    out.push('-');
                }
            }
            _ => return None,
        }
    }
    let out = out.trim_end_matches('-').to_owned();
    (!out.is_empty()).then_some(out)
}
