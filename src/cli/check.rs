//! `check`: judge hops.

use std::io::Read as _;
use std::path::{Path, PathBuf};

use super::args::{Check, Format, LookArgs, When};
use super::{Exit, Stop, say, select};
use crate::door::{GitError, exists};
use crate::finding::rule::Severity;
use crate::network::Scope;
use crate::output::{self, Base, Look};
use crate::source::MAX_BYTES;
use crate::text::plain::{Form, spelled};
use crate::verdict::baseline::Baseline;
use crate::verdict::{Evaluation, Read, evaluate};

pub(super) fn run(args: &Check) -> Result<Exit, Stop> {
    if (args.diff || args.fix || args.fix_unsafe) && args.paths.iter().any(|path| path.as_os_str() == "-") {
        return Err(Stop::Unknown("fixes are applied to files: name them instead of `-`".into()));
    }
    if args.diff {
        return super::fix::show(args);
    }
    if args.fix || args.fix_unsafe {
        super::fix::make(args)?;
    }
    Judged::of(args)?.told(args)
}

/// What came of a run, before it is told.
pub(super) struct Judged {
    pub(super) evaluation: Evaluation<()>,
    fail_on: Severity,
    failed: bool,
    empty: bool,
}

impl Judged {
    /// Judges what the arguments name.
    pub(super) fn of(args: &Check) -> Result<Self, Stop> {
        let scope = judged_by(scope(args)?.on(args.today), args)?;
        let mut evaluation = evaluate(&scope, |_, _| ());
        if let (Some(said), Some(revision)) = (scope.failure(), args.policy_from.clone()) {
            return Err(GitError::Failed { revision, said }.into());
        }
        if let Some((path, baseline)) = known(args)? {
            for known in baseline.apply(&mut evaluation) {
                if args.quiet == 0 {
                    let path = say::shown(path);
                    say::aside(&format!("{path}: no longer found: {known}; `baseline prune` takes it out"));
                }
            }
        }
        let fail_on = Severity::from(args.fail_on);
        let failed = evaluation.findings.iter().any(|finding| finding.severity >= fail_on);
        let least = Severity::from(args.min_severity);
        evaluation.findings.retain(|finding| finding.severity >= least);
        if !args.all {
            evaluation.gather();
        }
        let empty = evaluation.files.list.is_empty() && !failed;
        Ok(Self { evaluation, fail_on, failed, empty })
    }

    /// Prints it in every form that is asked for.
    pub(super) fn told(&self, args: &Check) -> Result<Exit, Stop> {
        let report = Report { args, evaluation: &self.evaluation, base: Base::here(), fail_on: self.fail_on };
        for output in &args.output {
            let text = report.file(output.format);
            say::save(&output.path, &text, form(output.format, look(&args.look, false)))?;
        }
        report.show(self.empty)?;
        Ok(match (self.failed, self.empty) {
            (true, _) if !args.exit_zero => Exit::Findings,
            (false, true) => Exit::Nothing,
            _ => Exit::Clean,
        })
    }
}

/// The same by the gate of a revision, if one is named.
fn judged_by(scope: Scope, args: &Check) -> Result<Scope, Stop> {
    let Some(revision) = &args.policy_from else { return Ok(scope) };
    let gate = super::gate::of_revision(&scope, revision)?;
    if args.quiet == 0 {
        say::aside(&format!("judged by the gate of `{revision}`"));
    }
    Ok(scope.judged_by(gate))
}

/// The baseline that is named, with its path; that of a revision if the gate is.
fn known(args: &Check) -> Result<Option<(&Path, Baseline)>, Stop> {
    let Some(path) = args.baseline.as_deref() else { return Ok(None) };
    let Some(revision) = &args.policy_from else { return Ok(Some((path, super::baseline::read(path)?))) };
    let found = super::gate::baseline_of(revision, path)?;
    if found.is_none() && args.quiet == 0 {
        say::aside(&format!("{} is not in `{revision}`: nothing is known there", say::shown(path)));
    }
    Ok(found.map(|(_, baseline)| (path, baseline)))
}

/// The paths that are named; hops that are named by id, pattern or site are looked for in the network here.
fn located(paths: &[PathBuf]) -> Result<Vec<PathBuf>, Stop> {
    if paths.iter().all(|path| exists(path)) {
        return Ok(paths.to_vec());
    }
    let read = Read::of(&Scope::of(&[PathBuf::from(".")]));
    let each = paths.iter().map(|path| match path.to_str().filter(|_| !exists(path)) {
        Some(word) => select::files(&read, word),
        None => Ok(vec![path.clone()]),
    });
    Ok(each.collect::<Result<Vec<_>, _>>()?.concat())
}

/// What to load: the paths, or the text on stdin in the place of a file.
pub(super) fn scope(args: &Check) -> Result<Scope, Stop> {
    let stdin = |path: &PathBuf| path.as_os_str() == "-";
    match (args.paths.iter().any(stdin), args.paths.as_slice(), &args.stdin_filename) {
        (false, paths, None) => super::scope::scope(&located(paths)?, &args.brought),
        (false, _, Some(_)) => Err(Stop::Unknown("`--stdin-filename` goes with `-` in place of the paths".into())),
        (true, [_], Some(name)) => {
            let scope = super::scope::scope(std::slice::from_ref(name), &args.brought)?;
            super::scope::current(scope.with_texts(&[(name.clone(), stdin_text()?.into())]))
        }
        (true, [_], None) => {
            Err(Stop::Unknown("`-` needs `--stdin-filename`: where in its network would the file lie?".into()))
        }
        (true, ..) => Err(Stop::Unknown("`-` stands alone: nothing else can be checked beside it".into())),
    }
}

fn stdin_text() -> Result<String, Stop> {
    let mut bytes = Vec::new();
    let unread = |error: std::io::Error| Stop::Unknown(format!("cannot read stdin: {error}"));
    std::io::stdin().lock().take(MAX_BYTES + 1).read_to_end(&mut bytes).map_err(unread)?;
    if bytes.len() as u64 > MAX_BYTES {
        return Err(Stop::Unknown(format!("stdin has more than {} KiB", MAX_BYTES / 1024)));
    }
    String::from_utf8(bytes).map_err(|error| Stop::Unknown(format!("stdin is not UTF-8: {}", error.utf8_error())))
}

/// An evaluation on its way out.
struct Report<'a> {
    args: &'a Check,
    evaluation: &'a Evaluation<()>,
    base: Base,
    fail_on: Severity,
}

impl Report<'_> {
    /// A form, without the summary.
    fn text(&self, format: Format, look: Look) -> String {
        let (evaluation, base) = (self.evaluation, &self.base);
        let for_people = |text: String| {
            let waived = if self.args.show_waived { output::waived(evaluation) } else { String::new() };
            text + &waived
        };
        match format {
            _ if self.args.statistics && format.is_text() => output::statistics(evaluation),
            Format::Full => for_people(output::full(evaluation, look)),
            Format::Concise => for_people(output::concise(evaluation)),
            Format::Narrated => for_people(output::narrated(evaluation, base)),
            Format::Json => output::json(evaluation),
            Format::Sarif => output::sarif(evaluation, base, self.args.include_waived),
            Format::Github => output::github(evaluation, base),
            Format::Gitlab => output::gitlab(evaluation, base),
            Format::Junit => output::junit(evaluation, base, self.fail_on, self.args.all),
            Format::Markdown => output::markdown(evaluation, base),
        }
    }

    /// A form as it stands in a file: complete with its summary, coloured only if that is asked for.
    fn file(&self, format: Format) -> String {
        let look = look(&self.args.look, false);
        let text = self.text(format, look);
        if format.is_text() { format!("{text}{}\n", output::summary(self.evaluation)) } else { text }
    }

    /// The form that goes to stdout, and what goes with it on stderr.
    fn show(&self, empty: bool) -> Result<(), Stop> {
        let (args, quiet) = (self.args, self.args.quiet);
        if args.verbose {
            for line in used(self.evaluation) {
                say::aside(&line);
            }
        }
        if quiet >= 2 {
            return Ok(());
        }
        if empty && args.format.is_text() {
            say::aside(&format!("no YAML files found in {}", listed(&args.paths)));
            return Ok(());
        }
        let look = look(&args.look, say::is_seen());
        let (mut text, form) = (self.text(args.format, look), form(args.format, look));
        let summary = output::summary(self.evaluation) + "\n";
        if quiet == 0 && matches!(args.format, Format::Full | Format::Narrated) {
            text.push_str(&summary);
        }
        say::out_as(&text, form)?;
        if quiet == 0 && args.format == Format::Concise {
            say::beside(&summary, Form::People);
        }
        Ok(())
    }
}

/// What reads a form.
fn form(format: Format, look: Look) -> Form {
    match format {
        Format::Full if look.colour => Form::Coloured,
        Format::Full | Format::Concise | Format::Narrated | Format::Markdown => Form::People,
        Format::Json | Format::Sarif | Format::Gitlab => Form::Json,
        Format::Github => Form::Commands,
        Format::Junit => Form::Xml,
    }
}

/// The files that were used, for somebody who asks which one counted.
fn used<R>(evaluation: &Evaluation<R>) -> Vec<String> {
    let mut lines: Vec<String> = evaluation.files.list.iter().map(|file| format!("read {}", file.path)).collect();
    lines.extend(evaluation.used.iter().cloned());
    lines.extend(evaluation.passed_over.iter().map(|path| format!("passed over by `.gitignore` or `exclude`: {path}")));
    lines.push("passed over: names that start with a dot, files that end neither in .yaml nor in .yml".into());
    lines.iter().map(|line| spelled(line)).collect()
}

fn listed(paths: &[PathBuf]) -> String {
    paths.iter().map(|path| say::shown(path)).collect::<Vec<_>>().join(", ")
}

/// Colour, characters and width, decided here so that the same arguments give the same bytes.
fn look(args: &LookArgs, terminal: bool) -> Look {
    let set = |name| std::env::var_os(name).is_some_and(|value| !value.is_empty());
    let forced = |name| std::env::var_os(name).is_some_and(|value| !value.is_empty() && value != "0");
    let dumb = std::env::var_os("TERM").is_some_and(|term| term == "dumb");
    let colour = match args.color {
        When::Always => true,
        When::Never => false,
        When::Auto if set("NO_COLOR") => false,
        When::Auto if forced("FORCE_COLOR") || forced("CLICOLOR_FORCE") => true,
        When::Auto => !dumb && terminal,
    };
    let seen = || terminal.then(terminal_size::terminal_size).flatten().map(|(columns, _)| columns.0.clamp(40, 400));
    let told = || std::env::var("COLUMNS").ok()?.parse::<u16>().ok().map(|columns| columns.clamp(40, 400));
    Look {
        width: args.width.or_else(seen).or_else(told).unwrap_or(80).into(),
        colour,
        unicode: args.unicode != When::Never,
    }
}
