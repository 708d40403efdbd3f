//! `sheet`: the computed numbers.

use super::args::{Sheet, SheetFormat};
use super::{Exit, Stop, present, print};
use crate::evaluate::evaluate;
use crate::listing::{self, HopListing};
use crate::nearest::nearest;
use crate::network::Scope;

pub(super) fn run(args: &Sheet) -> Result<Exit, Stop> {
    present(&args.network)?;
    let scope = Scope::of(std::slice::from_ref(&args.network));
    let evaluation = evaluate(&scope, |sheet, _| HopListing::of(sheet));
    if let Some(unknown) = args.hops.iter().find(|id| !evaluation.hops.iter().any(|hop| hop.hop == **id)) {
        let guess = nearest(unknown, evaluation.hops.iter().map(|hop| hop.hop.as_str()));
        let hint = guess.map(|guess| format!("; did you mean `{guess}`?")).unwrap_or_default();
        let known = format!("there is no hop `{unknown}` that can be evaluated in {}", args.network.display());
        return Err(Stop::Unknown(format!("{known}{hint} (`check` says why)")));
    }
    let wanted: Vec<&HopListing> =
        evaluation.hops.iter().filter(|hop| args.hops.is_empty() || args.hops.contains(&hop.hop)).collect();
    if wanted.is_empty() {
        eprintln!("hopwright: no hop to compute in {} (`check` says why)", args.network.display());
        return Ok(Exit::Nothing);
    }
    print(&match args.format {
        SheetFormat::Table => listing::table(&wanted, args.sources, &evaluation.files),
        SheetFormat::Json => listing::json(&wanted, &evaluation.files),
    })?;
    Ok(Exit::Clean)
}
