//! `sheet`: the computed numbers. A hop is printed when its sheet is there, and then let go.

use std::path::Path;

use super::args::{Sheet, SheetFormat};
use super::scope::scope;
use super::select::Hops;
use super::{Exit, Stop, present, say};
use crate::door::revision_of;
use crate::figure;
use crate::listing::{self, HopListing, Places, ServiceListing};
use crate::network::{SharedLibrary, Trees};
use crate::sheet::Parts;
use crate::text::plain::Form;
use crate::verdict::{Open, Read};
use crate::voice::Voice;

/// What stands around and between hops.
struct Frame {
    before: &'static str,
    between: &'static str,
    /// What stands between the last hop and the first service.
    services: &'static str,
    after: &'static str,
    form: Form,
}

impl Frame {
    const fn of(format: SheetFormat) -> Self {
        match format {
            SheetFormat::Table => Self { before: "", between: "\n", services: "\n", after: "", form: Form::People },
            SheetFormat::Json => {
                let (before, between, after) = (listing::BEFORE, listing::BETWEEN, listing::AFTER);
                Self { before, between, services: listing::SERVICES, after, form: Form::Json }
            }
        }
    }
}

pub(super) fn run(args: &Sheet) -> Result<Exit, Stop> {
    present(&args.network)?;
    let scope = scope(std::slice::from_ref(&args.network), &args.brought)?;
    let read = Read::of(&scope);
    let open = read.open();
    let wanted = Hops { read: &read, open: &open }.meant(&args.hops)?;
    let Some(first) = wanted.first() else {
        say::aside(&format!("no hop to compute in {} (`check` says why)", say::shown(&args.network)));
        return Ok(Exit::Nothing);
    };
    if let Some(path) = &args.figure {
        write_figure(path, args, &open, &wanted, *first)?;
    }
    if !args.full && !args.sources && matches!(args.format, SheetFormat::Table) {
        summaries(args, &open, &wanted)?;
        say::out(&libraries(&read))?;
        return Ok(Exit::Clean);
    }
    let trees = Trees::of(read.files());
    let places = Places::of(&trees);
    let places = args.sources.then_some(&places);
    let listed = |listing: &HopListing| match args.format {
        SheetFormat::Table => listing::table(listing, places),
        SheetFormat::Json => listing::json_of_hop(listing, places),
    };
    let frame = Frame::of(args.format);
    let (mut before, mut parts) = (frame.before, Parts::new());
    open.sheets(
        &wanted,
        |sheet| (say::ready(&listed(&HopListing::of(sheet)), frame.form), open.part(sheet)),
        |(text, part)| {
            parts.extend(part.map(|part| (part.document, part)));
            say::out_as(std::mem::replace(&mut before, frame.between), frame.form)?;
            say::out_ready(&text)
        },
    )?;
    // A service needs all its hops.
    if args.hops.is_empty() {
        let mut before = frame.services;
        open.services(&parts, |service| {
            let listing = ServiceListing::of(service);
            let text = match args.format {
                SheetFormat::Table => listing::table_of_service(&listing, places),
                SheetFormat::Json => listing::json_of_service(&listing, places),
            };
            say::out_as(std::mem::replace(&mut before, frame.between), frame.form)?;
            say::out_as(&text, frame.form)
        })?;
    }
    if matches!(args.format, SheetFormat::Table) {
        say::out(&libraries(&read))?;
    }
    say::out_as(frame.after, frame.form)?;
    Ok(Exit::Clean)
}

/// The libraries that the networks share with others: revision, whether anything is edited there, source mark.
fn libraries(read: &Read) -> String {
    let shared = read.libraries().iter().flat_map(|library| &library.shared);
    let line = |library: &SharedLibrary| {
        let state = revision_of(&library.folder).map_or_else(String::new, |(revision, clean)| {
            format!("revision {}{}, ", &revision[..12.min(revision.len())], if clean { "" } else { ", edited since" })
        });
        let files = if library.files == 1 { "1 file" } else { &format!("{} files", library.files) };
        format!("\nShared library {}: {state}source mark {}, {files}\n", library.name, library.mark)
    };
    shared.map(line).collect()
}

/// Prints what came of each hop and its main numbers.
fn summaries(args: &Sheet, open: &Open<'_>, wanted: &[usize]) -> Result<(), Stop> {
    let (mut parts, mut printed, mut before) = (Parts::new(), Ok(()), "");
    open.judge_only(
        wanted,
        |sheet, findings| (listing::summary(sheet, findings), open.part(sheet)),
        |(text, part)| {
            parts.extend(part.map(|part| (part.document, part)));
            if printed.is_ok() {
                printed = say::out(&format!("{before}{text}"));
                before = "\n";
            }
        },
    );
    printed?;
    if args.hops.is_empty() {
        open.services(&parts, |service| say::out(&format!("\n{}", listing::summary_of_service(service))))?;
    }
    say::hint("hopwright: `--full` prints every line, `--sources` its method and inputs too\n");
    Ok(())
}

/// Writes the drawing of the one hop that was named, by its number.
fn write_figure(path: &Path, args: &Sheet, open: &Open<'_>, wanted: &[usize], number: usize) -> Result<(), Stop> {
    if path.extension().is_none_or(|extension| !extension.eq_ignore_ascii_case("svg")) {
        let path = path.display();
        return Err(Stop::Unknown(format!("a figure is a drawing in SVG: name it `….svg`, not `{path}`")));
    }
    let (1, [wanted]) = (wanted.len(), args.hops.as_slice()) else {
        return Err(Stop::Unknown(
            "a figure shows one hop: name it, such as `sheet some-hop --figure path.svg`".into(),
        ));
    };
    let Some(drawing) = open.hop(number, |sheet, _| figure::of(sheet, Voice::PLAIN)).flatten() else {
        return Err(Stop::Unknown(format!("hop `{wanted}` has no profile to draw (`check` says why)")));
    };
    say::save(path, &drawing.svg, Form::Xml)
}
