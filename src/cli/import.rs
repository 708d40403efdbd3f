//! `import`: sites and hops from tables and waypoints. All files are read and judged before anything is said of a plan, and
//! the plan is written only with `--write`, all of it or nothing.

use std::path::Path;

use super::args::{Import, ImportArgs};
use super::{Exit, Stop, present, say};
use crate::door::read_given;
use crate::door::write::together;
use crate::exchange::{Fault, Form as TableForm, Item, MOST_BYTES, What, in_words, plan, read_table, read_waypoints};
use crate::network::Scope;
use crate::verdict::Read;

/// More faults than this are counted: they tend to have one cause.
const MOST_TOLD: usize = 100;

pub(super) fn run(import: &Import) -> Result<Exit, Stop> {
    let (what, args) = match import {
        Import::Sites(args) => (What::Sites, args),
        Import::Hops(args) => (What::Hops, args),
    };
    present(&args.network)?;
    let scope = Scope::of(std::slice::from_ref(&args.network));
    let read = Read::of(&scope);
    let folder = match read.libraries() {
        [only] if !only.networks.documents.is_empty() => only.folder.clone(),
        [_, _, ..] => {
            let place = args.network.display();
            return Err(Stop::Unknown(format!(
                "{place} holds several networks; give the folder of one with `--network`"
            )));
        }
        _ => {
            let place = args.network.display();
            return Err(Stop::Unknown(format!("no network to import into in {place} (`check` says why)")));
        }
    };
    let (mut items, mut faults) = (Vec::new(), Vec::new());
    for path in &args.files {
        let (mut some, mut wrong) = taken(path, what, args)?;
        items.append(&mut some);
        faults.append(&mut wrong);
    }
    faults.append(&mut twice(&items));
    let planned = if faults.is_empty() { plan(&scope, &read, what, &items) } else { Err(faults) };
    let plan = match planned {
        Ok(plan) => plan,
        Err(faults) => return Ok(refused(&faults)),
    };
    say::out(&in_words(&plan, what))?;
    if plan.changes.is_empty() {
        return Ok(Exit::Clean);
    }
    let (files, noun) = (plan.changes.len(), if plan.changes.len() == 1 { "file" } else { "files" });
    if !args.write {
        say::aside(&format!("{files} {noun} would be written: nothing is until you add `--write`"));
        return Ok(Exit::Clean);
    }
    together(&folder, &plan.changes)
        .map_err(|(path, error)| Stop::Write { path: path.display().to_string(), error })?;
    say::aside(&format!("{files} {noun} written; now run: hopwright check {}", say::shown(&args.network)));
    Ok(Exit::Clean)
}

/// What is in one file.
fn taken(path: &Path, what: What, args: &ImportArgs) -> Result<(Vec<Item>, Vec<Fault>), Stop> {
    let name = path.display().to_string();
    let bytes = read_given(path, MOST_BYTES).map_err(|refused| Stop::Unknown(format!("{name}: {refused}")))?;
    let text = match String::from_utf8(bytes) {
        Ok(text) => text,
        Err(error) => {
            let (at, bytes) = (error.utf8_error().valid_up_to(), error.as_bytes());
            let line = bytes[..at].split(|byte| *byte == b'\n').count();
            return Ok((Vec::new(), vec![Fault::at(&name, line, "is no UTF-8 from here on: save it as UTF-8")]));
        }
    };
    let ending = path.extension().map(|ending| ending.to_string_lossy().to_lowercase()).unwrap_or_default();
    match ending.as_str() {
        "csv" | "tsv" | "txt" => {
            let form = TableForm { dialect: args.dialect, ignore: args.ignore.clone() };
            Ok(read_table(&name, &text, what, &form))
        }
        "gpx" | "kml" if what == What::Sites => {
            let (items, remarks, faults) = read_waypoints(&name, &text);
            for remark in &remarks {
                say::aside(remark);
            }
            Ok((items, faults))
        }
        "gpx" | "kml" => Err(Stop::Unknown(format!("{name}: waypoints are sites: `import sites`"))),
        "xlsx" | "xls" | "ods" | "kmz" => {
            Err(Stop::Unknown(format!("{name}: packed files are not read: save it as CSV, or as plain KML")))
        }
        _ => Err(Stop::Unknown(format!("{name}: its name says not what it is: .csv, .tsv, .txt, .gpx or .kml"))),
    }
}

/// Ids that stand in two files.
fn twice(items: &[Item]) -> Vec<Fault> {
    let mut seen = std::collections::HashMap::new();
    let mut faults = Vec::new();
    for item in items {
        if let Some(first) = seen.insert(item.id.as_str(), item) {
            let why = format!("stands in {}, line {}, too", first.file, first.line);
            faults.push(Fault::of(&item.file, item.line, "id", &item.id, why));
        }
    }
    faults
}

/// Says what is wrong.
fn refused(faults: &[Fault]) -> Exit {
    for fault in faults.iter().take(MOST_TOLD) {
        say::hint(&format!("{fault}\n"));
    }
    let more = faults.len().saturating_sub(MOST_TOLD);
    if more > 0 {
        say::aside(&format!("and {more} more"));
    }
    let noun = if faults.len() == 1 { "fault" } else { "faults" };
    say::aside(&format!("{} {noun}: nothing is imported until all of them are fixed", faults.len()));
    Exit::Failed
}
