//! `compare`: what changed in the numbers.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use super::args::{Compare, CompareFormat, CompareGate, CompareOutput};
use super::gate::baseline_in;
use super::{Exit, Stop, present, say};
use crate::compare::{self, Comment, Comparison, KnownSide, Noise, Side, compare};
use crate::door::{Folder, Git, GitError, Revision, Store as _, Why, exists, is_folder};
use crate::network::Scope;
use crate::text::plain::{Form, spelled};

/// Where one side of a comparison is.
enum Source {
    Folder(PathBuf),
    Revision { revision: String, shown: String },
    Here,
}

pub(super) fn run(args: &Compare) -> Result<Exit, Stop> {
    let [old, new] = sources(args)?.map(|source| Named::of(args, source));
    let (old, new) = (old?, new?);
    // Git hands out the one while the other is read.
    let (old, new) = rayon::join(|| old.read(), || new.read());
    let (old, new) = (old?, new?);
    if old.is_empty() && new.is_empty() {
        say::aside(&format!("no YAML files found in {} nor in {}", spelled(&old.name), spelled(&new.name)));
        return Ok(Exit::Nothing);
    }
    let comparison = compare(&old, &new, &Noise::new(args.threshold.clone()));
    // Tiles and maps are read only now.
    whole(&old)?;
    whole(&new)?;
    let comment = comment(args, &comparison)?;
    say::out_as(&formed(&comparison, args.format, args, &comment), form(args.format))?;
    for CompareOutput { format, file } in &args.output {
        say::save(file, &formed(&comparison, *format, args, &comment), form(*format))?;
    }
    let failed = args.fail_on.iter().any(|gate| match gate {
        CompareGate::Never => false,
        CompareGate::Regression => comparison.regresses(),
        CompareGate::Weakening => comparison.weakens(),
        CompareGate::Any => !comparison.is_empty(),
    });
    Ok(if failed { Exit::Findings } else { Exit::Clean })
}

fn formed(comparison: &Comparison, format: CompareFormat, args: &Compare, comment: &Comment) -> String {
    match format {
        CompareFormat::Text => compare::text(comparison, args.width.unwrap_or(80).into(), args.all),
        CompareFormat::Markdown => compare::markdown(comparison, comment),
        CompareFormat::Json => compare::json(comparison),
    }
}

/// What reads a form.
fn form(format: CompareFormat) -> Form {
    match format {
        CompareFormat::Text | CompareFormat::Markdown => Form::People,
        CompareFormat::Json => Form::Json,
    }
}

/// The two sides: as named, or the network here as the new one.
fn sources(args: &Compare) -> Result<[Source; 2], Stop> {
    if let Some(base) = &args.base {
        let folder = home(args)?;
        let revision = Git::around(&folder, base)?.merge_base(base)?;
        let shown = format!("{} (where it parts from {base})", short(&revision));
        return Ok([Source::Revision { revision, shown }, Source::Here]);
    }
    let old = args.old.as_deref().unwrap_or_default();
    let new = args.new.as_deref().map_or(Ok(Source::Here), |new| named(args, new))?;
    Ok([named(args, old)?, new])
}

/// A folder if there is one of that name, else a revision; what could be both is asked about.
fn named(args: &Compare, name: &str) -> Result<Source, Stop> {
    let path = Path::new(name);
    if is_folder(path) {
        let plain = !name.contains(['/', '\\', '.']);
        if plain && Git::around(&args.network, name).is_ok_and(|git| git.is_revision(name)) {
            let message = format!("`{name}` is a folder and a revision: write `./{name}` or `refs/heads/{name}`");
            return Err(Stop::Unknown(message));
        }
        return Ok(Source::Folder(path.to_path_buf()));
    }
    if exists(path) {
        return Err(Stop::Unknown(format!("{name} is a file: compare takes folders and revisions")));
    }
    Ok(Source::Revision { revision: name.to_owned(), shown: name.to_owned() })
}

/// The folder of the network here.
fn home(args: &Compare) -> Result<PathBuf, Stop> {
    present(&args.network)?;
    let scope = Scope::of(std::slice::from_ref(&args.network));
    Ok(scope.folders().first().cloned().unwrap_or_else(|| args.network.clone()))
}

/// A side that is to be read.
struct Named {
    scope: Scope,
    name: String,
    baseline: Option<KnownSide>,
}

impl Named {
    fn of(args: &Compare, source: Source) -> Result<Self, Stop> {
        let baseline = args.baseline.as_deref().map_or(Ok(None), |file| known(args, &source, file))?;
        let (scope, name) = match source {
            Source::Folder(folder) => {
                let scope = Scope::of(std::slice::from_ref(&folder));
                let whole = scope.folders();
                (if whole.is_empty() { scope } else { Scope::of(&whole) }, folder.display().to_string())
            }
            Source::Here => {
                let folder = home(args)?;
                let name =
                    if folder == Path::new(".") { "the working tree".into() } else { folder.display().to_string() };
                (Scope::of(&[folder]), name)
            }
            Source::Revision { revision, shown } => (at_revision(&home(args)?, &revision, &shown)?, shown),
        };
        let scope = super::scope::current(scope)?;
        let scope = scope.on(args.today).with_brought(super::scope::brought(&args.brought)?);
        Ok(Self { scope, name, baseline })
    }

    fn read(self) -> Result<Side, Stop> {
        let side = Side::of(&self.scope, self.name).with_baseline(self.baseline);
        whole(&side)?;
        Ok(side)
    }
}

/// A state of which a part is not to be had has no numbers to compare.
fn whole(side: &Side) -> Result<(), Stop> {
    match side.failure() {
        Some(said) => Err(GitError::Failed { revision: side.name.clone(), said }.into()),
        None => Ok(()),
    }
}

/// The baseline of a side.
fn known(args: &Compare, source: &Source, file: &Path) -> Result<Option<KnownSide>, Stop> {
    let path = match source {
        Source::Folder(folder) => folder.join(file),
        Source::Here | Source::Revision { .. } => file.to_path_buf(),
    };
    let read = match source {
        Source::Revision { revision, shown } => {
            let folder = home(args)?;
            let store = Revision::of(&folder, &Git::around(&folder, shown)?, revision, shown)?;
            baseline_in(&store, &path, shown)?
        }
        Source::Folder(_) | Source::Here => baseline_in(&Folder::around(&path), &path, "the files here")?,
    };
    Ok(read.map(|(text, baseline)| KnownSide { path: path.display().to_string(), text, baseline }))
}

/// The network of a folder as it was; none if the revision has no such folder.
fn at_revision(folder: &Path, revision: &str, shown: &str) -> Result<Scope, Stop> {
    let store = Revision::of(folder, &Git::around(folder, shown)?, revision, shown)?;
    match store.look(folder) {
        Err(refused) if refused.why == Why::Missing && store.failure().is_none() => {
            say::aside(&format!("{} has no YAML files in revision {}", say::shown(folder), spelled(shown)));
            Ok(Scope::of(&[]))
        }
        _ => Ok(Scope::in_store(folder, Arc::new(store))),
    }
}

fn short(revision: &str) -> &str {
    revision.get(..10).unwrap_or(revision)
}

/// The mark must be one that no spec can forge and no forge cuts: letters, digits and single hyphens.
fn comment(args: &Compare, comparison: &Comparison) -> Result<Comment, Stop> {
    let given = args.key.clone().unwrap_or_else(|| comparison.networks.join("-"));
    let key = if given.is_empty() { "network".to_owned() } else { given };
    let sound = key.split('-').all(|part| !part.is_empty() && part.bytes().all(|byte| byte.is_ascii_alphanumeric()));
    if !sound {
        let message = format!("`{key}` is not a key: letters, digits and single hyphens, such as `ridge-network`");
        return Err(Stop::Unknown(message));
    }
    let file = args.output.iter().find(|output| output.format == CompareFormat::Json).map(|output| &output.file);
    let whole = file.map_or_else(|| "`hopwright compare --format json`".into(), |file| file.display().to_string());
    let link_base = args.link_base.clone();
    let is_plain = |c: char| c.is_ascii_alphanumeric() || matches!(c, ':' | '/' | '.' | '-' | '_' | '~' | '%');
    if let Some(base) = link_base.as_ref().filter(|base| !base.starts_with("https://") || !base.chars().all(is_plain)) {
        return Err(Stop::Unknown(format!(
            "`{base}` is not an address to link to, such as https://forge.example/net/blob/COMMIT"
        )));
    }
    Ok(Comment { budget: usize::try_from(args.budget).unwrap_or(usize::MAX), key, whole, link_base })
}
