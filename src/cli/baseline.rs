//! `baseline`: what is known to be wrong, kept in a file.

use std::path::Path;

use super::args::{Baseline as Command, BaselineArgs};
use super::{Exit, Stop, present, print};
use crate::door::write::write_whole;
use crate::network::Scope;
use crate::verdict::baseline::{Baseline, Known};
use crate::verdict::{Evaluation, evaluate};

pub(super) fn run(command: &Command) -> Result<Exit, Stop> {
    let (Command::Create(args) | Command::Update(args) | Command::Prune(args)) = command;
    if args.add && !matches!(command, Command::Update(_)) {
        return Err(Stop::Unknown("`--add` goes with `baseline update`".into()));
    }
    args.paths.iter().try_for_each(|path| present(path))?;
    let evaluation = evaluate(&Scope::of(&args.paths).on(args.today), |_, _| ());
    if evaluation.files.list.is_empty() {
        eprintln!("hopwright: no YAML files found");
        return Ok(Exit::Nothing);
    }
    match command {
        Command::Create(_) => create(args, &evaluation),
        Command::Update(_) => update(args, &evaluation),
        Command::Prune(_) => prune(args, &evaluation),
    }
}

fn create(args: &BaselineArgs, evaluation: &Evaluation<()>) -> Result<Exit, Stop> {
    if args.file.exists() {
        let message = format!("{} is there already: `baseline update` keeps it current", args.file.display());
        return Err(Stop::Unknown(message));
    }
    let baseline = Baseline::of(evaluation);
    write(&args.file, &baseline)?;
    print(&format!("{} recorded in {}\n", entries(baseline.findings.len()), args.file.display()))?;
    let refused = Baseline::refused(evaluation);
    if refused > 0 {
        eprintln!("hopwright: {refused} that no waiver may accept are not recorded: mend them, `check` shows them");
    }
    Ok(Exit::Clean)
}

fn update(args: &BaselineArgs, evaluation: &Evaluation<()>) -> Result<Exit, Stop> {
    let mut baseline = read(&args.file)?;
    let new = baseline.update(&Baseline::of(evaluation), args.add);
    write(&args.file, &baseline)?;
    let said = if args.add { "added" } else { "new or worse, not added (`--add` adds it)" };
    list(said, &new)?;
    let stale: Vec<Known> = baseline.stale(evaluation).into_iter().cloned().collect();
    list("no longer found (`baseline prune` takes it out)", &stale)?;
    print(&format!("{} in {}\n", entries(baseline.findings.len()), args.file.display()))?;
    Ok(Exit::Clean)
}

fn prune(args: &BaselineArgs, evaluation: &Evaluation<()>) -> Result<Exit, Stop> {
    let mut baseline = read(&args.file)?;
    let gone = baseline.prune(evaluation);
    write(&args.file, &baseline)?;
    list("taken out", &gone)?;
    print(&format!("{} in {}\n", entries(baseline.findings.len()), args.file.display()))?;
    Ok(Exit::Clean)
}

/// Reads the baseline of a file.
pub(super) fn read(path: &Path) -> Result<Baseline, Stop> {
    let failed = |why: String| Stop::Unknown(format!("{}: {why}", path.display()));
    let text = std::fs::read_to_string(path).map_err(|error| failed(error.to_string()))?;
    Baseline::read(&text).map_err(failed)
}

fn write(path: &Path, baseline: &Baseline) -> Result<(), Stop> {
    write_whole(path, baseline.text().as_bytes())
        .map_err(|error| Stop::Write { path: path.display().to_string(), error })
}

fn list(said: &str, known: &[Known]) -> Result<(), Stop> {
    known.iter().try_for_each(|known| print(&format!("{said}: {known}\n")))
}

fn entries(count: usize) -> String {
    if count == 1 { "1 entry".into() } else { format!("{count} entries") }
}
