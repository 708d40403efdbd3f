//! What did not count for a pack, in a sentence each: it stands on its first page.

use crate::rules::Quieted;
use crate::verdict::SetAside;
use crate::voice::Voice;

/// Only what there is.
pub(super) fn sentences(aside: &SetAside, voice: Voice) -> Vec<String> {
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
