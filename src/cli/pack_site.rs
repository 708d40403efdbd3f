//! `pack site`: one document for one visit.

use std::collections::BTreeMap;

use super::args::PackArgs;
use super::progress::Progress;
use super::scope::scope;
use super::{Exit, Stop, present, say};
use crate::door::write::write_whole;
use crate::network::Trees;
use crate::pack::{Finish, SitePack, on_presses_for, site_file_name};
use crate::spec::EndName;
use crate::text::nearest::{did_you_mean, nearest};
use crate::verdict::{Open, Read};

/// A site by the ids of its network and its own, with the ends there: the number of the hop and which end.
type Sites = BTreeMap<[String; 2], Vec<(usize, EndName)>>;

pub(super) fn run(args: &PackArgs) -> Result<Exit, Stop> {
    present(&args.network)?;
    let scope = scope(std::slice::from_ref(&args.network), &args.brought)?.on(args.today);
    let read = Read::of(&scope);
    let open = read.open();
    let all = sites(&open);
    all_known(args, &all)?;
    let wanted: Vec<Wanted<'_>> =
        all.iter().filter(|([_, site], _)| args.ids.is_empty() || args.ids.contains(site)).collect();
    if wanted.is_empty() {
        say::aside(&format!("no site to print in {} (`check` says why)", say::shown(&args.network)));
        return Ok(Exit::Nothing);
    }
    distinct(&wanted)?;
    let numbers: Vec<usize> = wanted.iter().flat_map(|(_, ends)| ends.iter().map(|(number, _)| *number)).collect();
    let of_files = open.judge_only(&sorted(numbers), |_, _| (), |()| ());
    let progress = Progress::of(wanted.len(), !args.no_progress);
    let finish = if args.plain { Finish::Plain } else { Finish::Archival };
    let trees = Trees::of(read.files());
    let written = on_presses_for(finish, &wanted, |press, (name, ends)| {
        let Some(mut pack) = gather(args, &open, ends) else { return Ok(Err(0)) };
        pack.add_findings_of_files(&of_files);
        let errors = pack.errors();
        if errors > 0 && !args.draft {
            return Ok(Err(errors));
        }
        let bytes = pack.set(press, args.draft, &trees)?;
        let path = args.out.join(site_file_name(&name[1]));
        let written = write_whole(&path, &bytes);
        progress.step();
        written.map_err(|error| Stop::Write { path: path.display().to_string(), error }).map(|()| Ok(path))
    });
    progress.clear();
    let mut refused = false;
    for ((name, _), written) in wanted.iter().zip(written?) {
        match written? {
            Ok(path) => say::path(&path)?,
            Err(errors) => {
                let noun = if errors == 1 { "error" } else { "errors" };
                say::aside(&format!(
                    "site `{}` is not printed: {errors} {noun} at its hops; `check` shows them, `--draft` prints it marked",
                    name[1]
                ));
                refused = true;
            }
        }
    }
    Ok(if refused { Exit::Findings } else { Exit::Clean })
}

/// The sites of all hops there are sheets of.
fn sites(open: &Open<'_>) -> Sites {
    let mut sites = Sites::new();
    for (number, hop) in open.hops().enumerate() {
        for end in hop.ends.iter() {
            let name = [hop.network.id.to_string(), end.site.id.to_string()];
            sites.entry(name).or_default().push((number, end.name));
        }
    }
    let ids: Vec<String> = open.hops().map(|hop| hop.hop.id.to_string()).collect();
    for ends in sites.values_mut() {
        ends.sort_by(|one, other| (&ids[one.0], one.1).cmp(&(&ids[other.0], other.1)));
    }
    sites
}

/// What one site prints, hop by hop: one sheet is held at a time.
fn gather(args: &PackArgs, open: &Open<'_>, ends: &[(usize, EndName)]) -> Option<SitePack> {
    let mut pack: Option<SitePack> = None;
    for (number, end) in ends {
        open.hop(*number, |sheet, findings| {
            let pack = pack.get_or_insert_with(|| SitePack::of(sheet, *end, args.language));
            pack.add(sheet, findings, *end);
        })?;
    }
    pack
}

fn sorted(mut numbers: Vec<usize>) -> Vec<usize> {
    numbers.sort_unstable();
    numbers.dedup();
    numbers
}

/// Stops at an id on the command line that stands for no site with a hop.
fn all_known(args: &PackArgs, all: &Sites) -> Result<(), Stop> {
    let is_known = |id: &&String| all.keys().any(|[_, site]| site == *id);
    let Some(unknown) = args.ids.iter().find(|id| !is_known(id)) else { return Ok(()) };
    let guess = nearest(unknown, all.keys().map(|[_, site]| site.as_str()));
    let hint = guess.map(|guess| format!("; {}", did_you_mean(guess))).unwrap_or_default();
    let place = args.network.display();
    Err(Stop::Unknown(format!(
        "there is no site `{unknown}` with a hop that can be printed in {place}{hint} (`check` says why)"
    )))
}

/// A site by its network and its name, with the ends there, each by the number of its hop.
type Wanted<'w> = (&'w [String; 2], &'w Vec<(usize, EndName)>);

/// Two sites of one name in two networks would overwrite each other.
fn distinct(wanted: &[Wanted<'_>]) -> Result<(), Stop> {
    let twice = wanted.iter().find(|(name, _)| wanted.iter().filter(|(other, _)| other[1] == name[1]).count() > 1);
    match twice {
        None => Ok(()),
        Some((name, _)) => Err(Stop::Unknown(format!(
            "two packs would be called {}; give the folder of one network with `--network`",
            site_file_name(&name[1])
        ))),
    }
}
