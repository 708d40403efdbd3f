//! What did not count for a pack, in a sentence each: it stands on its first page.

use super::kind::Pack;
use crate::finding::Finding;
use crate::rules::Quieted;
use crate::verdict::SetAside;
use crate::voice::{Voice, shown};

/// What stands on the first page.
pub(super) struct Aside {
    pub sentences: Vec<String>,
    /// What was not judged for want of an input.
    pub unassessed: Vec<String>,
}

impl Aside {
    /// Of a pack: a finding of the other end is not said in the pack of an end.
    pub(super) fn of(aside: &SetAside, findings: &[Finding], pack: Pack, voice: Voice) -> Self {
        let here = match pack {
            Pack::Design | Pack::Licence => None,
            Pack::Install(end) | Pack::Acceptance(end) => Some(end),
        };
        let concerns = |finding: &&Finding| here.is_none() || finding.end.is_none() || finding.end == here;
        let open = findings.iter().filter(|finding| finding.rule.says_what_was_not_judged()).filter(concerns);
        Self { sentences: sentences(aside, voice), unassessed: open.map(|finding| shown(&finding.message)).collect() }
    }
}

impl Aside {
    /// Of a whole network. What was not judged is listed there among what is open.
    pub(super) fn of_network(aside: &SetAside, voice: Voice) -> Self {
        let mut sentences = sentences(&SetAside { not_judged: 0, ..aside.clone() }, voice);
        if aside.not_judged > 0 {
            sentences.push(voice.count("aside-hops-not-judged", aside.not_judged));
        }
        if aside.baselined > 0 {
            sentences.push(voice.count("findings-known", aside.baselined));
        }
        Self { sentences, unassessed: Vec::new() }
    }
}

/// Only what there is.
fn sentences(aside: &SetAside, voice: Voice) -> Vec<String> {
    let names = |list: Vec<String>| list.join(", ");
    let off: Vec<String> = aside.quieted.iter().filter(|one| one.to.is_none()).map(named).collect();
    let lowered: Vec<String> = aside.quieted.iter().filter(|one| one.to.is_some()).map(named).collect();
    let mut sentences = Vec::new();
    if !off.is_empty() {
        let count = voice.count("aside-off", aside.off().len());
        sentences.push(voice.with("aside-named", &[("count", &count), ("names", &names(off))]));
    }
    if !lowered.is_empty() {
        let count = voice.count("aside-lowered", lowered.len());
        sentences.push(voice.with("aside-named", &[("count", &count), ("names", &names(lowered))]));
    }
    if aside.not_judged > 0 {
        sentences.push(voice.say("aside-not-judged"));
    }
    if aside.waived > 0 {
        sentences.push(voice.count("verdict-waived", aside.waived));
    }
    sentences
}

/// A rule with the files it is quiet for.
fn named(one: &Quieted) -> String {
    match &one.paths {
        Some(paths) => format!("{} ({paths})", one.rule.name),
        None => one.rule.name.to_owned(),
    }
}
