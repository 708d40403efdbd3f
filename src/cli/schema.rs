//! `schema`: write the JSON Schemas of the documents and of the report, or tell which are stale.

use std::path::Path;

use super::args::Schema;
use super::{Exit, Stop, present, say};
use crate::compare::comparison_schema;
use crate::door::read_given;
use crate::output::report_schema;
use crate::spec::{Kind, schema_id, schema_text, schema_version};
use crate::text::plain::Form;

/// The largest schema that is read.
const MOST_BYTES: u64 = 4 << 20;

pub(super) fn run(args: &Schema) -> Result<Exit, Stop> {
    if let Some(folder) = &args.check {
        return check(folder);
    }
    for (name, text) in all() {
        let path = args.out.join(format!("{name}.json"));
        say::save(&path, &text, Form::Json)?;
        say::path(&path)?;
    }
    Ok(Exit::Clean)
}

/// Every schema by its name.
fn all() -> impl Iterator<Item = (&'static str, String)> {
    let kinds = Kind::ALL.into_iter().map(|kind| (kind.word(), schema_text(kind)));
    kinds.chain([("report", report_schema()), ("comparison", comparison_schema())])
}

/// Says which schemas of a folder are not what this program writes.
fn check(folder: &Path) -> Result<Exit, Stop> {
    present(folder)?;
    let mut stale = 0;
    for (name, text) in all() {
        let path = folder.join(format!("{name}.json"));
        let Some(what) = amiss(&path, name, &text) else { continue };
        stale += 1;
        say::out(&format!("{}: {what}\n", say::shown(&path)))?;
    }
    if stale == 0 {
        return Ok(Exit::Clean);
    }
    say::aside(&format!("{stale} not current: `schema --out {}` writes them", say::shown(folder)));
    Ok(Exit::Findings)
}

/// What is wrong with the copy of a schema.
fn amiss(path: &Path, name: &str, text: &str) -> Option<String> {
    let found = match read_given(path, MOST_BYTES) {
        Ok(bytes) => String::from_utf8_lossy(&bytes).into_owned(),
        Err(refused) => return Some(refused.to_string()),
    };
    // A checkout may end its lines otherwise.
    if found.replace("\r\n", "\n") == text {
        return None;
    }
    let (own, theirs) = (schema_version(text), schema_version(&found));
    Some(match theirs {
        Some(theirs) if Some(&theirs) != own.as_ref() => {
            format!("it is that of version {theirs}, this is {}", own.unwrap_or_default())
        }
        Some(_) => format!("it differs from the {} of this program", schema_id(name)),
        None => "it does not say of which version it is".to_owned(),
    })
}
