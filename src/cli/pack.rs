//! `pack`: PDFs for the desk and for the crew.
//!
//! A hop with errors is refused unless a draft is asked for: paper has no linter. The packs of sound hops are written all
//! the same.

use std::collections::{HashMap, HashSet};
use std::path::PathBuf;

use super::args::{Pack as Command, PackArgs};
use super::progress::Progress;
use super::scope::scope;
use super::{Exit, Stop, present, say};
use crate::door::write::write_whole;
use crate::finding::rule::Severity;
use crate::pack::{Finish, HopPacks, Pack, on_presses_for};
use crate::spec::EndName;
use crate::text::nearest::{did_you_mean, nearest};
use crate::verdict::{Evaluation, evaluate};

/// One file to write.
struct Job<'a> {
    hop: &'a HopPacks,
    pack: Pack,
    path: PathBuf,
}

pub(super) fn run(command: &Command) -> Result<Exit, Stop> {
    let (args, packs): (_, &[Pack]) = match command {
        Command::Design(args) => (args, &[Pack::Design]),
        Command::Install(args) => (args, &[Pack::Install(EndName::A), Pack::Install(EndName::B)]),
        Command::Acceptance(args) => (args, &[Pack::Acceptance(EndName::A), Pack::Acceptance(EndName::B)]),
    };
    present(&args.network)?;
    let mut evaluation =
        evaluate(&scope(std::slice::from_ref(&args.network), &args.brought)?.on(args.today), |sheet, findings| {
            HopPacks::in_language(sheet, findings, args.language)
        });
    for hop in &mut evaluation.hops {
        hop.add_findings_of_files(&evaluation.findings);
    }
    let wanted = wanted(args, packs, &evaluation.hops)?;
    let broken = report_broken(args, &evaluation);
    if wanted.is_empty() {
        let what = if matches!(command, Command::Acceptance(_)) { "record" } else { "hop" };
        say::aside(&format!("no {what} to print in {} (`check` says why)", say::shown(&args.network)));
        return Ok(if broken { Exit::Findings } else { Exit::Nothing });
    }
    let refused = refuse(args, &wanted);
    let jobs: Vec<Job<'_>> = wanted
        .into_iter()
        .filter(|(hop, pack)| args.draft || hop.errors(*pack) == 0)
        .map(|(hop, pack)| Job { hop, pack, path: args.out.join(hop.file_name(pack)) })
        .collect();
    distinct(&jobs, packs, &evaluation.hops)?;
    let progress = Progress::of(jobs.len(), !args.no_progress);
    let finish = if args.plain { Finish::Plain } else { Finish::Archival };
    let written = on_presses_for(finish, &jobs, |press, job| {
        let bytes = job.hop.set(press, job.pack, args.draft, &evaluation.files)?;
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

/// What the ids on the command line stand for, in order of hop and pack.
fn wanted<'a>(args: &PackArgs, packs: &[Pack], hops: &'a [HopPacks]) -> Result<Vec<(&'a HopPacks, Pack)>, Stop> {
    let of = |hop: &'a HopPacks| packs.iter().map(move |pack| (hop, *pack)).filter(|(hop, pack)| hop.has(*pack));
    let all: Vec<(&HopPacks, Pack)> = hops.iter().flat_map(of).collect();
    if let Some(unknown) = args.ids.iter().find(|id| !all.iter().any(|(hop, pack)| names(hop, *pack).contains(id))) {
        let known: Vec<String> = all.iter().flat_map(|(hop, pack)| names(hop, *pack)).collect();
        let guess = nearest(unknown, known.iter().map(String::as_str));
        let hint = guess.map(|guess| format!("; {}", did_you_mean(guess))).unwrap_or_default();
        let what = match packs {
            [Pack::Design] => "hop",
            [Pack::Acceptance(_), ..] => "record of a hop, end or site",
            _ => "hop, end or site",
        };
        let place = args.network.display();
        let message = format!("there is no {what} `{unknown}` that can be printed in {place}{hint} (`check` says why)");
        return Err(Stop::Unknown(message));
    }
    let asked =
        |hop: &HopPacks, pack| args.ids.is_empty() || names(hop, pack).iter().any(|name| args.ids.contains(name));
    Ok(all.into_iter().filter(|(hop, pack)| asked(hop, *pack)).collect())
}

/// What a person may call a pack by.
fn names(hop: &HopPacks, pack: Pack) -> Vec<String> {
    let id = hop.hop().to_owned();
    match pack {
        Pack::Design => vec![id],
        Pack::Install(end) | Pack::Acceptance(end) => {
            vec![format!("{id}/{}", end), id, hop.site(end).to_owned()]
        }
    }
}

/// Says of each hop with errors that it is not printed.
fn refuse(args: &PackArgs, wanted: &[(&HopPacks, Pack)]) -> bool {
    let mut said = HashSet::new();
    let mut refused = false;
    for (hop, pack) in wanted {
        let (errors, name) = (hop.errors(*pack), names(hop, *pack));
        let who = match pack {
            Pack::Design | Pack::Install(_) => format!("hop `{}`", hop.hop()),
            Pack::Acceptance(_) => format!("the record of `{}`", name[0]),
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
fn report_broken(args: &PackArgs, evaluation: &Evaluation<HopPacks>) -> bool {
    let left_out = evaluation.hop_count.saturating_sub(evaluation.hops.len());
    let files =
        evaluation.findings.iter().filter(|finding| finding.severity == Severity::Error && finding.hop.is_none());
    let errors = files.count();
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
fn distinct(jobs: &[Job<'_>], packs: &[Pack], hops: &[HopPacks]) -> Result<(), Stop> {
    let mut seen: HashMap<String, usize> = HashMap::new();
    for hop in hops {
        for pack in packs.iter().filter(|pack| hop.has(**pack)) {
            *seen.entry(hop.file_name(*pack)).or_default() += 1;
        }
    }
    match jobs.iter().find(|job| seen.get(&job.hop.file_name(job.pack)).is_some_and(|times| *times > 1)) {
        None => Ok(()),
        Some(twice) => Err(Stop::Unknown(format!(
            "two packs would be called {}; give the folder of one network with `--network`, or a hop or site another id",
            twice.path.display()
        ))),
    }
}
