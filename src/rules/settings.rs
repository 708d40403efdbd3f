//! Severities as a network sets them, for all its files or for some.

use std::collections::{BTreeMap, HashMap, HashSet};
use std::path::{Path, PathBuf};
use std::sync::{Mutex, PoisonError};

use globset::{GlobBuilder, GlobMatcher};

use crate::at;
use crate::finding::faults::{BAD_VALUE, NOT_TO_SILENCE, UNKNOWN_RULE};
use crate::finding::rule::{Rule, Severity};
use crate::finding::{Finding, Findings, Spot};
use crate::network::{Document, Files};
use crate::place::{FileId, Place};
use crate::sheet::{RainMaps, Terrains};
use crate::source::patterns;
use crate::spec::{Network, Setting};
use crate::text::nearest::{did_you_mean, nearest};

/// The most entries of `rules_by_path` that are gone by: each is held against each file that something is found in.
const MOST_PATTERNS: usize = 200;

/// The most unknown names of rules that are reported one by one.
const MOST_NAMES: usize = 50;

/// A pattern of paths: `*` stays within a folder, `**` goes through them. Matching is linear in the path, whatever the
/// pattern.
fn pattern(text: &str) -> Result<GlobMatcher, globset::Error> {
    Ok(GlobBuilder::new(text).literal_separator(true).build()?.compile_matcher())
}

/// The severities of one network.
pub struct Settings<'n> {
    everywhere: Option<&'n BTreeMap<String, Setting>>,
    by_path: Vec<(GlobMatcher, &'n BTreeMap<String, Setting>)>,
    /// Of each file, which patterns it fits.
    fits: Mutex<HashMap<FileId, Vec<bool>>>,
    files: &'n Files,
    folder: PathBuf,
}

impl<'n> Settings<'n> {
    /// Those of a network; a rule's own where there is none.
    #[must_use]
    pub fn of(network: Option<&'n Document<Network>>, files: &'n Files) -> Self {
        let folder = network.and_then(|network| files.get(network.at.file)?.origin.parent());
        let by_path = network.into_iter().flat_map(|network| &network.rules_by_path).take(MOST_PATTERNS);
        Self {
            everywhere: network.map(|network| &network.rules),
            by_path: by_path.filter_map(|some| Some((pattern(&some.paths).ok()?, &some.rules))).collect(),
            fits: Mutex::default(),
            files,
            folder: folder.map(Into::into).unwrap_or_default(),
        }
    }

    /// Gives every finding its severity and drops those of rules that are off.
    pub fn apply(&self, findings: &mut Vec<Finding>) {
        findings.retain_mut(|finding| {
            let severity = self.severity(finding);
            finding.severity = severity.unwrap_or(finding.severity);
            severity.is_some()
        });
    }

    /// The rules that are off everywhere.
    #[must_use]
    pub fn off(&self) -> Vec<&'static str> {
        let setting = |rule: &Rule| self.everywhere.and_then(|rules| rules.get(rule.name)).copied();
        let is_off = |rule: &&Rule| rule.never_off().is_none() && setting(rule) == Some(Setting::Off);
        super::every().filter(is_off).map(|rule| rule.name).collect()
    }

    /// Whether a rule is off everywhere or for some of the files.
    #[must_use]
    pub fn is_off_somewhere(&self, rule: &str) -> bool {
        let everywhere = self.everywhere.into_iter();
        let all = everywhere.chain(self.by_path.iter().map(|(_, rules)| *rules));
        all.filter_map(|rules| rules.get(rule)).any(|setting| *setting == Setting::Off)
    }

    /// The severity of a finding, `None` if its rule is off where it stands.
    fn severity(&self, finding: &Finding) -> Option<Severity> {
        let name = finding.rule.name;
        let here = self.by_path.iter().enumerate().rev().find_map(|(number, (_, rules))| {
            let setting = rules.get(name)?;
            self.stands_in(finding, number).then_some(setting)
        });
        let Some(setting) = here.or_else(|| self.everywhere?.get(name)) else { return Some(finding.severity) };
        let set = severity(*setting);
        match finding.rule.never_off() {
            None => set,
            // It may be raised and never falls.
            Some(_) => Some(set.map_or(finding.severity, |set| set.max(finding.severity))),
        }
    }

    /// Whether the file of a finding fits a pattern, by its number.
    fn stands_in(&self, finding: &Finding, pattern: usize) -> bool {
        let Some(file) = finding.labels.first().and_then(|label| label.spot.file()) else { return false };
        let mut fits = self.fits.lock().unwrap_or_else(PoisonError::into_inner);
        let fits = fits.entry(file).or_insert_with(|| {
            let path = self.files.get(file).and_then(|file| file.origin.strip_prefix(&self.folder).ok());
            let fits = |pattern: &GlobMatcher| path.is_some_and(|path| pattern.is_match(path));
            self.by_path.iter().map(|(pattern, _)| fits(pattern)).collect()
        });
        fits[pattern]
    }
}

/// What a setting stands for; `None` for off.
const fn severity(setting: Setting) -> Option<Severity> {
    match setting {
        Setting::Off => None,
        Setting::Advice => Some(Severity::Advice),
        Setting::Warning => Some(Severity::Warning),
        Setting::Error => Some(Severity::Error),
    }
}

/// A rule that a network has switched off or lowered.
#[derive(Debug, Clone, PartialEq)]
pub struct Quieted {
    /// The rule.
    pub rule: &'static Rule,
    /// The severity it was given; `None` if it is off.
    pub to: Option<Severity>,
    /// The files it holds for, as the network names them; all if none are named.
    pub paths: Option<String>,
}

/// The rules a network has switched off or lowered, in the order they are written. Those it may not are not among them: they
/// keep their severity.
#[must_use]
pub fn quieted(network: &Network) -> Vec<Quieted> {
    let everywhere = network.rules.iter().map(|(name, setting)| (name, *setting, None));
    let by_path = network
        .rules_by_path
        .iter()
        .flat_map(|some| some.rules.iter().map(|(name, setting)| (name, *setting, Some(some.paths.to_string()))));
    let lowered = everywhere.chain(by_path).filter_map(|(name, setting, paths)| {
        let rule = super::every().find(|rule| rule.name == name.as_str() && rule.never_off().is_none())?;
        Some(Quieted { rule, to: severity(setting), paths }).filter(|_| is_lower(rule, setting))
    });
    lowered.collect()
}

/// Whether a setting is less than a rule has of its own.
fn is_lower(rule: &Rule, setting: Setting) -> bool {
    severity(setting).is_none_or(|set| set < rule.severity)
}

/// Reports rain maps that cannot be read. The hops that need one say that they wait for it.
pub fn unread_maps(maps: &RainMaps, found: &mut Findings) {
    for (place, why) in maps.unread() {
        let finding = found.report(&BAD_VALUE, place, format!("no rain map can be read there: {why}"), "no map there");
        finding
            .help("give the folder, from that of the network file, with `R001.TXT`, `Lat_R001.TXT` and `Lon_R001.TXT`");
    }
}

/// Reports tiles of ground heights that cannot be read. A hop that needs one has no profile and says so.
pub fn unread_tiles(terrains: &Terrains, found: &mut Findings) {
    for (place, why) in terrains.unread() {
        let finding =
            found.report(&BAD_VALUE, place, format!("no ground heights can be read there: {why}"), "not read");
        finding.help("give a folder, from that of the network file, with `N46E171.hgt` or GeoTIFF tiles in degrees");
    }
}

/// Reports names under `rules` that no rule has, settings that a rule does not take, and path patterns that are none.
pub fn unsound(network: &Document<Network>, found: &mut Findings) {
    unsound_settings(&network.rules, at!(network.rules), found);
    for i in patterns(Path::new(""), network.exclude.iter().map(|line| &**line)).1 {
        let message = format!("`{}` is not a pattern of paths", network.exclude[i]);
        let finding = found.report(&BAD_VALUE, at!(network.exclude[i]), message, "cannot be matched");
        finding.help("`*` stands for any part of a name, `**` for any folders: `drafts/`, `*.old.yaml`");
    }
    for (i, some) in network.rules_by_path.iter().enumerate() {
        unsound_settings(&some.rules, at!(network.rules_by_path[i].rules), found);
        if i == MOST_PATTERNS {
            let left = network.rules_by_path.len() - MOST_PATTERNS;
            let message = format!("more than {MOST_PATTERNS} patterns of paths: the last {left} are not gone by");
            let finding = found.report(&BAD_VALUE, at!(network.rules_by_path[i].paths), message, "from here on");
            finding.help("gather paths under fewer patterns: `**` stands for any folders");
            break;
        }
        if let Err(error) = pattern(&some.paths) {
            let message = format!("`{}` is not a pattern of paths: {}", some.paths, error.kind());
            let finding = found.report(&BAD_VALUE, at!(network.rules_by_path[i].paths), message, "cannot be matched");
            finding.help("`*` stands for any part of a name, `**` for any folders: `hops/temporary/*.yaml`");
        }
    }
}

fn unsound_settings(rules: &BTreeMap<String, Setting>, place: Place, found: &mut Findings) {
    let known = || super::every().map(|rule: &'static Rule| rule.name);
    let known_names: HashSet<&str> = known().collect();
    let unknown = || rules.keys().filter(|name| !known_names.contains(name.as_str()));
    let left = unknown().count().saturating_sub(MOST_NAMES);
    if left > 0 {
        let message = format!("{left} more names under `{}` are no rules", place.route());
        let finding = found.report(&UNKNOWN_RULE, place, message, "besides those that are named");
        finding.help("`explain` lists every rule");
    }
    for name in unknown().take(MOST_NAMES) {
        let spot = Spot::Entry(place, name.clone());
        let finding = found.report(&UNKNOWN_RULE, spot, format!("there is no rule `{name}`"), "not a rule");
        finding.help(match nearest(name, known()) {
            Some(guess) => did_you_mean(guess),
            None => "`explain` lists every rule".into(),
        });
    }
    for rule in super::every() {
        let Some(setting) = rules.get(rule.name).filter(|setting| is_lower(rule, **setting)) else { continue };
        let Some(why) = rule.never_off() else { continue };
        let done = if *setting == Setting::Off { "switched off" } else { "lowered" };
        let message = format!("`{}` cannot be {done}: {why}", rule.name);
        let spot = Spot::Entry(place, rule.name.to_owned());
        let finding = found.report(&NOT_TO_SILENCE, spot, message, "has no effect");
        finding.help(match rule.never_waived() {
            Some(_) => "remove the line, and fix what the rule finds",
            None => "take the line out; a waiver may accept what the rule finds, by name and for a time",
        });
    }
}
