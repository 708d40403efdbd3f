//! `check --watch`: judge again whenever a file changes.
//!
//! Folders are watched, so that editors that write beside a file and rename are seen, and files that appear. What was read
//! decides, not times: a run over the same texts tells nothing, so nothing that is written here can start another.

use std::hash::{DefaultHasher, Hash as _, Hasher as _};
use std::sync::mpsc::{Receiver, channel};
use std::time::Duration;

use notify::{Config, Event, PollWatcher, RecommendedWatcher, RecursiveMode, Watcher};

use super::args::Check;
use super::check::{Judged, scope};
use super::{Exit, Stop, say};
use crate::network::Scope;

/// Editors write in several steps: changes are gathered until nothing happens for so long.
const QUIET: Duration = Duration::from_millis(30);

type Events = Receiver<notify::Result<Event>>;

pub(super) fn run(args: &Check) -> Result<Exit, Stop> {
    let (_watcher, events) = watched(args, &scope(args)?)?;
    let mut last = None;
    loop {
        match Judged::of(args) {
            Ok(judged) => {
                let mark = mark(&judged);
                if last != Some(mark) {
                    if args.clear && say::is_seen() {
                        say::clear()?;
                    }
                    judged.told(args)?;
                    if args.quiet == 0 {
                        say::aside("watching; interrupt to end");
                    }
                    last = Some(mark);
                }
            }
            Err(stop) => say::aside(&stop.to_string()),
        }
        if !changed(&events) {
            return Ok(Exit::Failed);
        }
    }
}

/// Starts to watch the folders of a scope.
fn watched(args: &Check, scope: &Scope) -> Result<(Box<dyn Watcher>, Events), Stop> {
    let failed = |error: notify::Error| Stop::Unknown(format!("cannot watch: {error}; try `--poll 1`"));
    let (sender, events) = channel();
    let mut watcher: Box<dyn Watcher> = match args.poll {
        Some(seconds) => {
            let config = Config::default().with_poll_interval(Duration::from_secs(seconds)).with_compare_contents(true);
            Box::new(PollWatcher::new(sender, config).map_err(failed)?)
        }
        None => Box::new(RecommendedWatcher::new(sender, Config::default()).map_err(failed)?),
    };
    for folder in scope.folders() {
        watcher.watch(&folder, RecursiveMode::Recursive).map_err(failed)?;
    }
    Ok((watcher, events))
}

/// Waits until something has changed and it is quiet again; no if nothing will tell any more.
fn changed(events: &Events) -> bool {
    loop {
        match events.recv() {
            Err(_) => return false,
            // Reading a file is no change.
            Ok(Ok(event)) if event.kind.is_access() => {}
            Ok(_) => break,
        }
    }
    while events.recv_timeout(QUIET).is_ok() {}
    true
}

/// What all that was read comes to.
fn mark(judged: &Judged) -> u64 {
    let mut hasher = DefaultHasher::new();
    for file in &judged.evaluation.files.list {
        (&file.path, &file.text).hash(&mut hasher);
    }
    for finding in judged.evaluation.everything() {
        (finding.rule.name, &finding.message).hash(&mut hasher);
    }
    hasher.finish()
}
