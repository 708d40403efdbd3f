//! `pack`: PDFs for the desk and for the crew.
//!
//! A hop with errors is refused unless a draft is asked for: paper has no linter. The packs of sound hops are written all
//! the same.

use std::collections::{BTreeSet, HashMap, HashSet};
use std::path::PathBuf;
use std::sync::{Arc, Mutex, PoisonError};

use super::args::{Pack as Command, PackArgs};
use super::pack_site;
use super::progress::Progress;
use super::scope::scope;
use super::{Exit, Stop, present, say};
use crate::door::write::write_whole;
use crate::finding::Finding;
use crate::finding::rule::Severity;
use crate::network::Trees;
use crate::pack::{Finish, HopPacks, Outline, Pack, PackNames, on_presses_for};
use crate::spec::EndName;
use crate::text::nearest::{did_you_mean, nearest};
use crate::verdict::{Open, Read};

/// One file to write.
struct Job<'a> {
    hop: &'a Waiting,
    pack: Pack,
    path: PathBuf,
}

/// A hop whose packs are asked for.
struct Waiting {
    /// Its number among the hops there are sheets of.
    number: usize,
    outline: Outline,
    packs: Vec<Pack>,
    /// What its packs print, from the first of them on the press to the last, and how many are still to come.
    made: Mutex<(Option<Arc<HopPacks>>, usize)>,
}

impl Waiting {
    /// What its packs print: computed for the first that asks and let go with the last.
    fn packs(&self, make: impl FnOnce(&Self) -> Option<HopPacks>) -> Option<Arc<HopPacks>> {
        let mut shared = self.made.lock().unwrap_or_else(PoisonError::into_inner);
        let (packs, left) = std::mem::take(&mut *shared);
        let (packs, left) = (packs.or_else(|| make(self).map(Arc::new)), left.saturating_sub(1));
        *shared = (packs.clone().filter(|_| left > 0), left);
        packs
    }
}

pub(super) fn run(command: &Command) -> Result<Exit, Stop> {
    let (args, packs): (_, &[Pack]) = match command {
        Command::Design(args) => (args, &[Pack::Design]),
        Command::Licence(args) => (args, &[Pack::Licence]),
        Command::Install(args) => (args, &[Pack::Install(EndName::A), Pack::Install(EndName::B)]),
        Command::Site(args) => return pack_site::run(args),
        Command::Acceptance(args) => (args, &[Pack::Acceptance(EndName::A), Pack::Acceptance(EndName::B)]),
        Command::Network(args) => return super::network_pack::run(args),
    };
    present(&args.network)?;
    let scope = scope(std::slice::from_ref(&args.network), &args.brought)?.on(args.today);
    let read = Read::of(&scope);
    let open = read.open();
    let names: Vec<PackNames> = open.hops().map(PackNames::of).collect();
    all_known(args, packs, &names)?;
    let (wanted, of_files) = wanted(args, packs, &names, &open);
    let broken = report_broken(args, &open, &of_files, names.len());
    if wanted.is_empty() {
        let what = if matches!(command, Command::Acceptance(_)) { "record" } else { "hop" };
        say::aside(&format!("no {what} to print in {} (`check` says why)", say::shown(&args.network)));
        return Ok(if broken { Exit::Findings } else { Exit::Nothing });
    }
    let refused = refuse(args, &wanted);
    let jobs: Vec<Job<'_>> = wanted.iter().flat_map(|hop| jobs(args, hop)).collect();
    distinct(&jobs, packs, &names)?;
    let progress = Progress::of(jobs.len(), !args.no_progress);
    let finish = if args.plain { Finish::Plain } else { Finish::Archival };
    let trees = Trees::of(read.files());
    let make = |hop: &Waiting| {
        let made = open.hop(hop.number, |sheet, findings| HopPacks::only(&hop.packs, sheet, findings, args.language));
        made.map(|mut made| {
            made.add_findings_of_files(&of_files);
            made
        })
    };
    let written = on_presses_for(finish, &jobs, |press, job| {
        let hop = job.hop.packs(make).expect("a hop that was judged is there");
        let bytes = hop.set(press, job.pack, args.draft, &trees)?;
        let written = write_whole(&job.path, &bytes);
        progress.step();
        written.map_err(|error| Stop::Write { path: job.path.display().to_string(), error })
    });
    progress.clear();
    let written = written?;
    for (job, written) in jobs.iter().zip(written) {
        written?;
        say::path(&job.path)?;
    }
    Ok(if refused || broken { Exit::Findings } else { Exit::Clean })
}

/// Whether a pack is among what was asked for.
fn is_asked(args: &PackArgs, names: &PackNames, pack: Pack) -> bool {
    let called = |id| names.called(pack).contains(id);
    names.has(pack) && (args.ids.is_empty() || args.ids.iter().any(called))
}

/// Stops at an id on the command line that stands for nothing.
fn all_known(args: &PackArgs, packs: &[Pack], hops: &[PackNames]) -> Result<(), Stop> {
    let of = |names: &PackNames| -> Vec<String> {
        packs.iter().filter(|pack| names.has(**pack)).flat_map(|pack| names.called(*pack)).collect()
    };
    let known: BTreeSet<String> =
        if args.ids.is_empty() { BTreeSet::new() } else { hops.iter().flat_map(of).collect() };
    let Some(unknown) = args.ids.iter().find(|id| !known.contains(*id)) else { return Ok(()) };
    let guess = nearest(unknown, known.iter().map(String::as_str));
    let hint = guess.map(|guess| format!("; {}", did_you_mean(guess))).unwrap_or_default();
    let what = match packs {
        [Pack::Design | Pack::Licence] => "hop",
        [Pack::Acceptance(_), ..] => "record of a hop, end or site",
        _ => "hop, end or site",
    };
    let place = args.network.display();
    let message = format!("there is no {what} `{unknown}` that can be printed in {place}{hint} (`check` says why)");
    Err(Stop::Unknown(message))
}

/// The hops of which something was asked for, judged, and what is found about no hop.
fn wanted(args: &PackArgs, packs: &[Pack], names: &[PackNames], open: &Open<'_>) -> (Vec<Waiting>, Vec<Finding>) {
    let asked = |names: &PackNames| packs.iter().copied().filter(|pack| is_asked(args, names, *pack)).collect();
    let asked: Vec<Vec<Pack>> = names.iter().map(asked).collect();
    let numbers: Vec<usize> = (0..asked.len()).filter(|number| !asked[*number].is_empty()).collect();
    let mut outlines = Vec::with_capacity(numbers.len());
    let of_files = open.judge_only(&numbers, Outline::of, |outline| outlines.push(outline));
    let mut waiting = Vec::with_capacity(numbers.len());
    for (number, mut outline) in numbers.into_iter().zip(outlines) {
        outline.add_findings_of_files(&of_files);
        let packs = asked[number].clone();
        waiting.push(Waiting { number, outline, packs, made: Mutex::default() });
    }
    (waiting, of_files)
}

/// The files to write for a hop.
fn jobs<'a>(args: &PackArgs, hop: &'a Waiting) -> Vec<Job<'a>> {
    let allowed = |pack: &Pack| args.draft || hop.outline.errors(*pack) == 0;
    let packs: Vec<Pack> = hop.packs.iter().copied().filter(allowed).collect();
    hop.made.lock().unwrap_or_else(PoisonError::into_inner).1 = packs.len();
    let path = |pack| args.out.join(hop.outline.names().file_name(pack));
    packs.into_iter().map(|pack| Job { hop, pack, path: path(pack) }).collect()
}

/// Says of each hop with errors that it is not printed.
fn refuse(args: &PackArgs, wanted: &[Waiting]) -> bool {
    let mut said = HashSet::new();
    let mut refused = false;
    for (hop, pack) in wanted.iter().flat_map(|hop| hop.packs.iter().map(move |pack| (&hop.outline, pack))) {
        let (errors, names) = (hop.errors(*pack), hop.names());
        let who = match pack {
            Pack::Design | Pack::Licence | Pack::Install(_) => format!("hop `{}`", names.hop()),
            Pack::Acceptance(_) => format!("the record of `{}`", names.called(*pack)[0]),
        };
        if args.draft || errors == 0 || !said.insert(who.clone()) {
            continue;
        }
        let noun = if errors == 1 { "error" } else { "errors" };
        say::aside(&format!("{who} is not printed: {errors} {noun}; `check` shows them, `--draft` prints it marked"));
        refused = true;
    }
    refused
}

/// Says that hops are left out because they could not be evaluated; matters only when all hops are asked for.
fn report_broken(args: &PackArgs, open: &Open<'_>, of_files: &[Finding], evaluated: usize) -> bool {
    let left_out = open.hop_count().saturating_sub(evaluated);
    let errors = of_files.iter().filter(|finding| finding.severity == Severity::Error).count();
    if !args.ids.is_empty() || (left_out == 0 && errors == 0) {
        return false;
    }
    if left_out > 0 {
        let (noun, verb) = if left_out == 1 { ("hop", "is") } else { ("hops", "are") };
        say::aside(&format!("{left_out} {noun} cannot be evaluated and {verb} not printed; `check` says why"));
    } else {
        let noun = if errors == 1 { "error" } else { "errors" };
        say::aside(&format!("{errors} {noun} outside any hop; `check` shows them"));
    }
    true
}

/// Two packs of one name would overwrite each other, in this run or by the next one: hops of one name in two networks, or
/// end `a` of `x` at site `b-quay` and end `b` of `x-a` at site `quay`.
fn distinct(jobs: &[Job<'_>], packs: &[Pack], hops: &[PackNames]) -> Result<(), Stop> {
    let mut seen: HashMap<String, usize> = HashMap::new();
    for hop in hops {
        for pack in packs.iter().filter(|pack| hop.has(**pack)) {
            *seen.entry(hop.file_name(*pack)).or_default() += 1;
        }
    }
    match jobs.iter().find(|job| seen.get(&job.hop.outline.names().file_name(job.pack)).is_some_and(|times| *times > 1))
    {
        None => Ok(()),
        Some(twice) => Err(Stop::Unknown(format!(
            "two packs would be called {}; give the folder of one network with `--network`, or a hop or site another id",
            twice.path.display()
        ))),
    }
}
