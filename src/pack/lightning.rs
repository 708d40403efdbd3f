//! Lightning protection as it is stated, for reviewers and for crews. Nothing on these pages designs or certifies any.

use super::phrases::label;
use super::words::{Fact, fact};
use crate::sheet::{Cause, EndSheet, HopSheet, LightningLines, Row, SectionKey};
use crate::spec::{MastBond, ProtectionSystem};
use crate::voice::{Open, Voice};

fn unsaid(row: &Row) -> bool {
    row.text.as_ref().is_err_and(|missing| missing.cause == Cause::Judged)
}

/// Rows of the design pack with a cell for each end. That nobody says whether there is a system is told; of the rest only what
/// is said.
pub(super) fn rows(sheet: &HopSheet<'_>, voice: Voice) -> Vec<[String; 3]> {
    let rows = |end: &EndSheet<'_>| end.lightning.lines.rows(&SectionKey::Lightning(end.name));
    let cell = |row: &Row| if unsaid(row) { voice.say("not-stated") } else { voice.row(row) };
    let pairs = rows(&sheet.ends.a).into_iter().zip(rows(&sheet.ends.b));
    pairs
        .filter(|(a, b)| a.key.name == LightningLines::system || !(unsaid(a) && unsaid(b)))
        .map(|(a, b)| [label(&a, voice), cell(&a), cell(&b)])
        .collect()
}

/// What a crew has to know before it bonds anything.
pub(super) fn facts(end: &EndSheet<'_>, voice: Voice) -> Vec<Fact> {
    let (lightning, lines) = (&end.lightning, &end.lightning.lines);
    let system = match (lightning.system, lines.class.value()) {
        (None, _) => voice.say("lightning-not-stated"),
        (Some(ProtectionSystem::Unknown), _) => voice.say("lightning-unknown"),
        (Some(ProtectionSystem::Absent), _) => voice.say("lightning-absent"),
        (Some(ProtectionSystem::Present), Err(_)) => voice.say("lightning-present"),
        (Some(ProtectionSystem::Present), Ok(class)) => voice.with("lightning-present-class", &[("class", class)]),
    };
    let mut facts = vec![fact(voice.say("lightning-system"), system)];
    if lightning.has_system() {
        let bond = lines.mast_bond.value().map_or_else(|_| voice.say("lightning-ask"), |bond| voice.spoken(bond));
        facts.push(fact(voice.say("lightning-bond"), bond));
        if lightning.is_apart() {
            facts.push(fact(voice.say("lightning-separation"), separation(end, voice)));
        }
    }
    facts
}

/// The distance to keep, as its designer asks for it.
fn separation(end: &EndSheet<'_>, voice: Voice) -> String {
    let asked = end.lightning.lines.separation_asked.value();
    asked.map_or_else(|_| voice.say("lightning-ask"), |asked| voice.given_in_both(asked))
}

/// The step that comes before anything is bonded, where there is a system: its key and what it says.
pub(super) fn step(end: &EndSheet<'_>, voice: Voice) -> Option<String> {
    let lightning = &end.lightning;
    if !lightning.has_system() {
        return None;
    }
    let support = &end.resolved.support.id;
    let asked = lightning.lines.separation_asked.value().is_ok();
    Some(match lightning.bond {
        Some(MastBond::Direct) => voice.with("step-lightning-direct", &[("support", support)]),
        Some(MastBond::SparkGap) => voice.with("step-lightning-spark-gap", &[("support", support)]),
        Some(MastBond::Apart) if asked => {
            let distance = separation(end, voice);
            let open: [Open<'_>; 1] = [("distance", &distance)];
            voice.with("step-lightning-apart", &open)
        }
        Some(MastBond::Apart) | None => voice.say("step-lightning-ask"),
    })
}
