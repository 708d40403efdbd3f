//! `sheet`: the computed numbers.

use std::path::Path;

use super::args::{Sheet, SheetFormat};
use super::scope::scope;
use super::{Exit, Stop, present, say};
use crate::figure::{self, Figure};
use crate::listing::{self, HopListing};
use crate::text::nearest::{did_you_mean, nearest};
use crate::text::plain::Form;
use crate::verdict::evaluate;
use crate::voice::Voice;

pub(super) fn run(args: &Sheet) -> Result<Exit, Stop> {
    present(&args.network)?;
    let scope = scope(std::slice::from_ref(&args.network), &args.brought)?;
    let draw = args.figure.is_some();
    let mut drawings = Vec::new();
    let mut evaluation =
        evaluate(&scope, |sheet, _| (HopListing::of(sheet), draw.then(|| figure::of(sheet, Voice::PLAIN)).flatten()));
    let hops: Vec<HopListing> = evaluation
        .hops
        .drain(..)
        .map(|(listing, drawing)| {
            drawings.push((listing.hop.clone(), drawing));
            listing
        })
        .collect();
    if let Some(unknown) = args.hops.iter().find(|id| !hops.iter().any(|hop| hop.hop == **id)) {
        let guess = nearest(unknown, hops.iter().map(|hop| hop.hop.as_str()));
        let hint = guess.map(|guess| format!("; {}", did_you_mean(guess))).unwrap_or_default();
        let known = format!("there is no hop `{unknown}` that can be evaluated in {}", args.network.display());
        return Err(Stop::Unknown(format!("{known}{hint} (`check` says why)")));
    }
    let wanted: Vec<&HopListing> =
        hops.iter().filter(|hop| args.hops.is_empty() || args.hops.contains(&hop.hop)).collect();
    if wanted.is_empty() {
        say::aside(&format!("no hop to compute in {} (`check` says why)", say::shown(&args.network)));
        return Ok(Exit::Nothing);
    }
    if let Some(path) = &args.figure {
        write_figure(path, args, &drawings)?;
    }
    match args.format {
        SheetFormat::Table => say::out(&listing::table(&wanted, args.sources, &evaluation.files))?,
        SheetFormat::Json => say::out_as(&listing::json(&wanted, &evaluation.files), Form::Json)?,
    }
    Ok(Exit::Clean)
}

/// Writes the drawing of the one hop that was named.
fn write_figure(path: &Path, args: &Sheet, drawings: &[(String, Option<Figure>)]) -> Result<(), Stop> {
    let [wanted] = args.hops.as_slice() else {
        return Err(Stop::Unknown(
            "a figure shows one hop: name it, such as `sheet some-hop --figure path.svg`".into(),
        ));
    };
    let drawing = drawings.iter().find(|(hop, _)| hop == wanted).and_then(|(_, drawing)| drawing.as_ref());
    let Some(drawing) = drawing else {
        return Err(Stop::Unknown(format!("hop `{wanted}` has no profile to draw (`check` says why)")));
    };
    say::save(path, &drawing.svg, Form::Xml)
}
