//! `baseline`: what is known to be wrong, kept in a file.

use std::path::Path;

use super::args::{Baseline as Command, BaselineArgs};
use super::scope::scope;
use super::{Exit, Stop, present, say};
use crate::door::{exists, read_given};
use crate::text::plain::{Form, spelled};
use crate::verdict::baseline::{Baseline, Known};
use crate::verdict::{Evaluation, evaluate};

/// The largest baseline: some hundred thousand findings.
pub(super) const MOST_BYTES: u64 = 64 << 20;

pub(super) fn run(command: &Command) -> Result<Exit, Stop> {
    let (Command::Create(args) | Command::Update(args) | Command::Prune(args)) = command;
    if args.add && !matches!(command, Command::Update(_)) {
        return Err(Stop::Unknown("`--add` goes with `baseline update`".into()));
    }
    args.paths.iter().try_for_each(|path| present(path))?;
    let evaluation = evaluate(&scope(&args.paths, &args.brought)?.on(args.today), |_, _| ());
    if evaluation.files.list.is_empty() {
        say::aside("no YAML files found");
        return Ok(Exit::Nothing);
    }
    match command {
        Command::Create(_) => create(args, &evaluation),
        Command::Update(_) => update(args, &evaluation),
        Command::Prune(_) => prune(args, &evaluation),
    }
}

fn create(args: &BaselineArgs, evaluation: &Evaluation<()>) -> Result<Exit, Stop> {
    if exists(&args.file) {
        let message = format!("{} is there already: `baseline update` keeps it current", args.file.display());
        return Err(Stop::Unknown(message));
    }
    let baseline = Baseline::of(evaluation);
    write(&args.file, &baseline)?;
    say::out(&format!("{} recorded in {}\n", entries(baseline.findings.len()), say::shown(&args.file)))?;
    let refused = Baseline::refused(evaluation);
    if refused > 0 {
        say::aside(&format!("{refused} that no waiver may accept are not recorded: fix them, `check` shows them"));
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
    say::out(&format!("{} in {}\n", entries(baseline.findings.len()), say::shown(&args.file)))?;
    Ok(Exit::Clean)
}

fn prune(args: &BaselineArgs, evaluation: &Evaluation<()>) -> Result<Exit, Stop> {
    let mut baseline = read(&args.file)?;
    let gone = baseline.prune(evaluation);
    write(&args.file, &baseline)?;
    list("taken out", &gone)?;
    say::out(&format!("{} in {}\n", entries(baseline.findings.len()), say::shown(&args.file)))?;
    Ok(Exit::Clean)
}

/// Reads the baseline of a file.
pub(super) fn read(path: &Path) -> Result<Baseline, Stop> {
    let failed = |why: String| Stop::Unknown(format!("{}: {why}", path.display()));
    let bytes = read_given(path, MOST_BYTES).map_err(|refused| failed(refused.detail))?;
    let text = String::from_utf8(bytes).map_err(|_| failed("it is not UTF-8".into()))?;
    Baseline::read(&text).map_err(failed)
}

fn write(path: &Path, baseline: &Baseline) -> Result<(), Stop> {
    say::save(path, &baseline.text(), Form::Json)
}

fn list(said: &str, known: &[Known]) -> Result<(), Stop> {
    known.iter().try_for_each(|known| say::out(&format!("{said}: {}\n", spelled(&known.to_string()))))
}

fn entries(count: usize) -> String {
    if count == 1 { "1 entry".into() } else { format!("{count} entries") }
}
