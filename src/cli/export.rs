//! `export`: a network in open formats.

use super::args::{Export, ExportWhat};
use super::scope::scope;
use super::{Exit, Stop, present, say};
use crate::exchange::{
    HopMark, SheetRow, What, application_rows, applications, bill, geojson, kml, network_table, sheet_table,
};
use crate::listing::HopListing;
use crate::network::Library;
use crate::pack::Bill;
use crate::text::csv::Marks;
use crate::text::plain::Form;
use crate::verdict::{Open, Read};
use crate::voice::Voice;

pub(super) fn run(args: &Export) -> Result<Exit, Stop> {
    present(&args.network)?;
    let scope = scope(std::slice::from_ref(&args.network), &args.brought)?.on(args.today);
    let read = Read::of(&scope);
    let library = match read.libraries() {
        [only] if !only.networks.documents.is_empty() => only,
        [_, _, ..] => {
            let place = args.network.display();
            return Err(Stop::Unknown(format!(
                "{place} holds several networks; give the folder of one with `--network`"
            )));
        }
        _ => {
            say::aside(&format!("no network to export in {} (`check` says why)", say::shown(&args.network)));
            return Ok(Exit::Nothing);
        }
    };
    let (text, form) = written(args, &read, library)?;
    match &args.out {
        Some(path) => {
            say::save(path, &text, form)?;
            say::path(path)?;
        }
        None => say::out_as(&text, form)?,
    }
    Ok(Exit::Clean)
}

/// The text, and what reads it.
fn written(args: &Export, read: &Read, library: &Library) -> Result<(String, Form), Stop> {
    let marks = Marks { separator: args.dialect.separator(), decimal: Some(args.dialect.decimal()) };
    let table = |text: String| Ok((text, Form::People));
    match args.what {
        ExportWhat::Sites => return table(network_table(library, read.files(), What::Sites, marks)),
        ExportWhat::Hops => return table(network_table(library, read.files(), What::Hops, marks)),
        _ => {}
    }
    let open = read.open();
    say_left_out(&open);
    let all: Vec<usize> = (0..open.hops().count()).collect();
    match args.what {
        ExportWhat::Geojson => Ok((geojson(library, &marked(&open)), Form::Json)),
        ExportWhat::Kml => Ok((kml(library, &marked(&open)), Form::Xml)),
        ExportWhat::Sheet => {
            let mut rows = Vec::new();
            open.sheets(
                &all,
                |sheet| SheetRow::of(&HopListing::of(sheet).of_design()),
                |row| {
                    rows.push(row);
                    Ok::<(), Stop>(())
                },
            )?;
            table(sheet_table(&rows, marks))
        }
        ExportWhat::Bill => {
            let mut whole = Bill::default();
            let of_hop = |sheet: &crate::sheet::HopSheet<'_>| {
                let mut bill = Bill::default();
                sheet.ends.iter().for_each(|end| bill.end(end, Voice::PLAIN));
                bill
            };
            open.sheets(&all, of_hop, |bill| {
                whole.add(&bill);
                Ok::<(), Stop>(())
            })?;
            table(bill(&whole, Voice::PLAIN, marks))
        }
        ExportWhat::Licence | ExportWhat::Sites | ExportWhat::Hops => {
            let mut rows = Vec::new();
            open.sheets(&all, application_rows, |row| {
                rows.push(row);
                Ok::<(), Stop>(())
            })?;
            table(applications(rows, marks))
        }
    }
}

/// What maps show of every hop.
fn marked(open: &Open<'_>) -> Vec<HopMark> {
    let mut marks = Vec::new();
    let _ = open.judge(HopMark::of, |mark| marks.push(mark));
    marks
}

fn say_left_out(open: &Open<'_>) {
    let lost = open.hop_count().saturating_sub(open.hops().count());
    if lost > 0 {
        let (noun, verb) = if lost == 1 { ("hop", "is") } else { ("hops", "are") };
        say::aside(&format!("{lost} {noun} cannot be evaluated and {verb} left out; `check` says why"));
    }
}
