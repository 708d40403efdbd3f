//! What became of a hop, by the findings that count.

use super::change::{Aside, FindingChange, Outcome, Status};
use super::held::Held;
use super::matching::{Here, Pair};
use crate::finding::Finding;
use crate::finding::faults::NOT_EVALUATED;
use crate::finding::rule::Severity;

/// What became of it; `None` if neither side can say.
pub(super) fn outcome<'f>(
    pair: &Pair<'_>,
    before: &[Finding],
    after: &[Held],
    found: impl Iterator<Item = &'f FindingChange> + Clone,
) -> Option<Outcome> {
    let failed = before.iter().any(|finding| finding.severity == Severity::Error);
    let fails = after.iter().any(is_error);
    Some(match pair.here {
        [Here::Computed(_), Here::Computed(_)] => both(before, after, found, [failed, fails]),
        [Here::Computed(_), Here::Waiting(_)] => Outcome::NotJudged,
        [Here::Waiting(_), Here::Computed(_)] => Outcome::JudgedAgain,
        // Whoever adds a hop that cannot be computed adds one that fails.
        [Here::Absent, Here::Waiting(_)] => Outcome::NewAndFails,
        [Here::Absent, Here::Computed(_)] if fails => Outcome::NewAndFails,
        [Here::Absent, Here::Computed(_)] => Outcome::New,
        [Here::Computed(_) | Here::Waiting(_), Here::Absent] => Outcome::Removed,
        [Here::Waiting(_), Here::Waiting(_)] | [Here::Absent, Here::Absent] => return None,
    })
}

fn is_error(held: &Held) -> bool {
    held.finding.severity == Severity::Error
}

fn both<'f>(
    before: &[Finding],
    after: &[Held],
    mut found: impl Iterator<Item = &'f FindingChange> + Clone,
    fails: [bool; 2],
) -> Outcome {
    let errors = || after.iter().filter(|held| is_error(held));
    if fails[1] && errors().all(|held| held.aside.is_some()) {
        let any = |aside: Aside| errors().any(|held| held.aside == Some(aside));
        return match () {
            () if any(Aside::Off) || any(Aside::Lowered) => Outcome::NotJudged,
            () if any(Aside::Limit) => Outcome::PassesByLoweredLimit,
            () => Outcome::NewlyWaived,
        };
    }
    let mut news = found.clone();
    let mut news = |least: Severity| news.any(|finding| finding.severity >= least && finding.is_news());
    match fails {
        [false, true] if errors().all(|held| *held.finding.rule == NOT_EVALUATED) => Outcome::NotJudged,
        [false, true] => Outcome::NowFails,
        [true, false] => {
            let mut errors = before.iter().filter(|finding| finding.severity == Severity::Error);
            if errors.all(|finding| *finding.rule == NOT_EVALUATED) { Outcome::JudgedAgain } else { Outcome::NowPasses }
        }
        [true, true] if found.any(FindingChange::regresses) => Outcome::FailsWorse,
        [true, true] => Outcome::StillFails,
        [false, false] if news(Severity::Warning) => Outcome::NewWarning,
        [false, false] => Outcome::NoError,
    }
}

/// Why it is no longer judged, where that is for what the change switches off or lowers, or what it does not reach.
pub(super) fn why_not(outcome: Outcome, after: &[Held]) -> Option<String> {
    if outcome != Outcome::NotJudged {
        return None;
    }
    let held = after.iter().find(|held| is_error(held))?;
    Some(match held.aside {
        Some(Aside::Off) => format!("`{}` is switched off", held.finding.rule.name),
        Some(Aside::Lowered) => format!("`{}` is lowered", held.finding.rule.name),
        _ => held.finding.message.clone(),
    })
}

/// How a finding of both sides stands to what it was.
pub(super) fn status(old: &Finding, new: &Finding) -> Status {
    match old.severity.cmp(&new.severity) {
        std::cmp::Ordering::Less => Status::Raised,
        std::cmp::Ordering::Greater => Status::Lowered,
        std::cmp::Ordering::Equal if new.severity != Severity::Error => Status::Existing,
        std::cmp::Ordering::Equal => match (&old.measured, &new.measured) {
            (Some(old), Some(new)) if old.unit == new.unit && new.is_worse_than(old.value) => Status::Worse,
            (Some(old), Some(new)) if old.unit == new.unit && old.is_worse_than(new.value) => Status::Better,
            _ => Status::Existing,
        },
    }
}
