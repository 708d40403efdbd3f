//! The baseline: what an old network is known to have wrong, so that a gate may ask only for nothing new and nothing worse.
//!
//! It is a ratchet and no approval. A value that got worse is new; what was fixed may be taken out and never comes back
//! by itself. Packs take no notice of it. What no waiver may accept is never in it: what protects people, what codes and
//! licences allow, and faults of files, for a file that cannot be read hides what is in it.

use std::collections::{BTreeMap, HashMap, HashSet};

use serde::{Deserialize, Serialize};

use crate::finding::{Finding, Worse};
use crate::network::Files;
use crate::verdict::fingerprint;
use crate::verdict::{Evaluation, HopRun};

/// What is known, as it is kept in a file.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Baseline {
    /// Version of this format.
    format_version: u32,
    /// In order of rule, target and fingerprint.
    pub findings: Vec<Known>,
}

/// One thing known to be wrong.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Known {
    /// Name of the rule.
    pub rule: String,
    /// The hop it is about.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub hop: Option<String>,
    /// Where, for people: the fingerprint is what counts.
    pub target: String,
    /// What it is known by.
    pub fingerprint: String,
    /// How many of it there are.
    pub count: usize,
    /// The worst value, in the base unit, where the rule compares one.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub value: Option<f64>,
    /// The base unit.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub unit: Option<String>,
    /// Which way it gets worse.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub worse: Option<Way>,
}

/// Which way a value gets worse.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Way {
    /// By growing.
    Higher,
    /// By falling.
    Lower,
}

/// The only version of the format so far.
const FORMAT: u32 = 1;

impl Baseline {
    /// Reads one.
    ///
    /// # Errors
    /// No JSON of this format; says what and where.
    pub fn read(text: &str) -> Result<Self, String> {
        let baseline: Self = serde_json::from_str(text).map_err(|error| format!("this is not a baseline: {error}"))?;
        match baseline.format_version {
            FORMAT => Ok(baseline),
            other => Err(format!("the baseline has format {other}; this program reads format {FORMAT}")),
        }
    }

    /// As it is written to a file.
    #[must_use]
    pub fn text(&self) -> String {
        let mut text = serde_json::to_string_pretty(self).expect("strings and numbers always serialise");
        text.push('\n');
        text
    }

    /// How many open findings it would not take in, for no waiver may accept them either.
    #[must_use]
    pub fn refused<R>(evaluation: &Evaluation<R>) -> usize {
        evaluation.findings.iter().filter(|finding| !may_be_known(finding)).count()
    }

    /// What is open now.
    #[must_use]
    pub fn of<R>(evaluation: &Evaluation<R>) -> Self {
        let mut known: BTreeMap<String, Known> = BTreeMap::new();
        for finding in evaluation.findings.iter().filter(|finding| may_be_known(finding)) {
            let entry = known.entry(name(finding)).or_insert_with(|| Known::of(finding, &evaluation.files));
            entry.count += 1;
            if let Some(measured) = &finding.measured
                && entry.value.is_none_or(|value| measured.is_worse_than(value))
            {
                entry.value = Some(measured.value);
            }
        }
        let mut findings: Vec<Known> = known.into_values().collect();
        findings.sort_by(|one, other| one.order().cmp(&other.order()));
        Self { format_version: FORMAT, findings }
    }

    /// Sets aside the findings that are known and not worse; gives what is known and no longer found.
    pub fn apply<R>(&self, evaluation: &mut Evaluation<R>) -> Vec<&Known> {
        let mut left: BTreeMap<&str, (&Known, usize)> =
            self.findings.iter().map(|known| (known.fingerprint.as_str(), (known, known.count))).collect();
        for mut finding in std::mem::take(&mut evaluation.findings) {
            let entry = left.get_mut(name(&finding).as_str()).filter(|_| may_be_known(&finding));
            match entry {
                Some((known, _)) if known.is_beaten_by(&finding) => {
                    let was = format!("worse than the {} of the baseline", known.value_text());
                    let help = finding.help.take();
                    finding.help(help.map_or_else(|| was.clone(), |help| format!("{help}; {was}")));
                    evaluation.findings.push(finding);
                }
                Some((_, count)) if *count > 0 => {
                    *count -= 1;
                    evaluation.baselined.push(finding);
                }
                _ => evaluation.findings.push(finding),
            }
        }
        self.stale(evaluation)
    }

    /// What is known and was looked for in vain, on all of the network, whatever was asked about.
    #[must_use]
    pub fn stale<R>(&self, evaluation: &Evaluation<R>) -> Vec<&Known> {
        let mut runs: HashMap<&str, Vec<&HopRun>> = HashMap::new();
        for run in &evaluation.judged {
            runs.entry(run.id.as_str()).or_default().push(run);
        }
        let waits = |known: &Known| {
            let runs = known.hop.as_deref().and_then(|hop| runs.get(hop));
            runs.into_iter().flatten().any(|hop| !hop.evaluated || hop.off.contains(&known.rule.as_str()))
        };
        let found = |known: &Known| evaluation.present.contains(&known.fingerprint);
        self.findings.iter().filter(|known| !found(known) && !waits(known)).collect()
    }

    /// Takes over what got better; gives what is new or worse, which goes in only if `add` says so.
    pub fn update(&mut self, now: &Self, add: bool) -> Vec<Known> {
        let mut new = Vec::new();
        let by_name = |(at, known): (usize, &Known)| (known.fingerprint.clone(), at);
        // Of two of one name the first counts.
        let places: HashMap<String, usize> = self.findings.iter().enumerate().rev().map(by_name).collect();
        for current in &now.findings {
            let Some(known) = places.get(&current.fingerprint).and_then(|at| self.findings.get_mut(*at)) else {
                new.push(current.clone());
                continue;
            };
            if known.count < current.count || current.is_worse_than(known) {
                new.push(current.clone());
            } else {
                *known = current.clone();
            }
        }
        if add {
            let added: HashSet<&str> = new.iter().map(|new| new.fingerprint.as_str()).collect();
            self.findings.retain(|known| !added.contains(known.fingerprint.as_str()));
            self.findings.extend(new.iter().cloned());
            self.findings.sort_by(|one, other| one.order().cmp(&other.order()));
        }
        new
    }

    /// Takes out what is no longer found.
    pub fn prune<R>(&mut self, evaluation: &Evaluation<R>) -> Vec<Known> {
        let stale: Vec<Known> = self.stale(evaluation).into_iter().cloned().collect();
        let names: HashSet<&str> = stale.iter().map(|known| known.fingerprint.as_str()).collect();
        self.findings.retain(|known| !names.contains(known.fingerprint.as_str()));
        stale
    }
}

impl From<Worse> for Way {
    fn from(worse: Worse) -> Self {
        match worse {
            Worse::Higher => Self::Higher,
            Worse::Lower => Self::Lower,
        }
    }
}

impl From<Way> for Worse {
    fn from(way: Way) -> Self {
        match way {
            Way::Higher => Self::Higher,
            Way::Lower => Self::Lower,
        }
    }
}

impl Known {
    fn of(finding: &Finding, files: &Files) -> Self {
        let target = fingerprint::target(finding, files);
        let end = finding.end.map(|end| format!("end {end}, ")).unwrap_or_default();
        Self {
            rule: finding.rule.name.into(),
            hop: finding.hop.clone(),
            target: format!("{end}{} {}: {}", target.kind, target.id, target.route),
            fingerprint: name(finding),
            count: 0,
            value: None,
            unit: finding.measured.as_ref().map(|measured| measured.unit.into()),
            worse: finding.measured.as_ref().map(|measured| measured.worse.into()),
        }
    }

    fn order(&self) -> (&str, Option<&str>, &str, &str) {
        (&self.rule, self.hop.as_deref(), &self.target, &self.fingerprint)
    }

    /// Whether a finding of this fingerprint is worse than what is known.
    fn is_beaten_by(&self, finding: &Finding) -> bool {
        let Some(value) = self.value else { return false };
        // Where there was a value to compare and now there is none, nobody knows that it is no worse.
        let Some(measured) = &finding.measured else { return true };
        self.unit.as_deref() != Some(measured.unit) || measured.is_worse_than(value)
    }

    /// Whether it is worse now than it was.
    fn is_worse_than(&self, before: &Self) -> bool {
        let (Some(is), Some(was), Some(worse)) = (self.value, before.value, self.worse) else { return false };
        self.unit != before.unit || Worse::from(worse).is_passed(is, was)
    }

    /// Whether all that another entry lets pass, this one does.
    #[must_use]
    pub fn covers(&self, other: &Self) -> bool {
        let value = match (self.value, other.value) {
            (None, _) => true,
            (Some(_), None) => false,
            (Some(_), Some(_)) => !other.is_worse_than(self) && self.worse == other.worse,
        };
        value && self.count >= other.count
    }

    /// How much of it is known: `2 of them, 3.5 V at worst`.
    #[must_use]
    pub fn told(&self) -> String {
        let count = if self.count == 1 { "1 known".to_owned() } else { format!("{} known", self.count) };
        if self.value.is_some() { format!("{count}, {} at worst", self.value_text()) } else { count }
    }

    fn value_text(&self) -> String {
        let value = self.value.map(|value| format!("{value}")).unwrap_or_default();
        format!("{value} {}", self.unit.as_deref().unwrap_or_default())
    }
}

impl std::fmt::Display for Known {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let hop = self.hop.as_ref().map(|hop| format!("{hop}: ")).unwrap_or_default();
        write!(f, "{hop}{} ({})", self.rule, self.target)
    }
}

/// What a finding is known by, whichever of several it is.
fn name(finding: &Finding) -> String {
    finding.fingerprint.first().to_string()
}

/// Whether a finding is debt that can be carried: not where no waiver may accept it either.
fn may_be_known(finding: &Finding) -> bool {
    finding.rule.never_waived().is_none()
}
