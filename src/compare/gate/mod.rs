//! What a change does to the gate it is to pass: severities, limits, objectives, codes, climate, licences, files that are
//! not read, waivers and their terms, the baseline, hops that are gone or no longer judged.
//!
//! It is a list of its own, because none of it need move a number: a rule that is switched off changes nothing that is
//! computed. What may let more through counts as weaker unless it is known not to.

mod baseline;
mod effect;
mod leaves;
mod part;

use std::collections::{BTreeMap, BTreeSet};

pub use effect::Effect;
pub use part::{GateChange, Part};

use super::alike::Alike;
use super::change::{HopChange, Outcome};
use super::side::Side;
use leaves::{Leaf, Leaves};

/// All that is written differently in the gate, before anything is known of hops.
pub(super) fn written(old: &Side, new: &Side, alike: &Alike) -> Vec<GateChange> {
    let leaves = |side: &Side, number: usize| leaves::of_side(side.files(), |file| alike.outlines[number].has(file));
    let (mut before, mut after) = (leaves(old, 0), leaves(new, 1));
    pair_networks(&mut before, &mut after);
    let names: BTreeSet<(String, String)> = before.keys().chain(after.keys()).cloned().collect();
    let mut list = Vec::new();
    for name in names {
        match (before.get(&name), after.get(&name)) {
            (Some(old), Some(new)) => fields(&name, [old, new], &mut list),
            (one, other) if name.0 != "hop" => whole(&name, [one, other], &mut list),
            _ => {}
        }
    }
    list.extend(baseline::grown(old.baseline.as_ref(), new.baseline.as_ref()));
    list
}

/// A network under another id is the same network if there is no other.
fn pair_networks(before: &mut BTreeMap<(String, String), Leaves>, after: &mut BTreeMap<(String, String), Leaves>) {
    let only = |these: &BTreeMap<(String, String), Leaves>, those: &BTreeMap<(String, String), Leaves>| {
        let mut alone = these.keys().filter(|name| name.0 == "network" && !those.contains_key(*name));
        alone.next().cloned().filter(|_| alone.next().is_none())
    };
    if let (Some(was), Some(is)) = (only(before, after), only(after, before))
        && let Some(leaves) = before.remove(&was)
    {
        before.insert(is, leaves);
    }
}

/// What is written differently in a document that both sides have.
fn fields(name: &(String, String), sides: [&Leaves; 2], list: &mut Vec<GateChange>) {
    let (kind, id) = name;
    let routes: BTreeSet<&String> = sides[0].keys().chain(sides[1].keys()).collect();
    for route in routes {
        let both = sides.map(|side| side.get(route));
        let [before, after] = both.map(|leaf| leaf.map(|leaf| leaf.text.clone()));
        let aside = route.ends_with("].paths") || (kind == "hop" && route == "licence.number");
        let record = kind == "waiver" && ["kind", "id", "reason", "reference"].contains(&route.as_str());
        if before == after || aside || record || route.is_empty() {
            continue;
        }
        let effect = match kind.as_str() {
            "waiver" => of_waiver(route, before.as_deref(), after.as_deref()),
            _ => effect::of(kind, route, before.as_deref(), after.as_deref()),
        };
        let hops = match kind.as_str() {
            "hop" => vec![id.clone()],
            "waiver" => {
                target(sides[1]).into_iter().chain(target(sides[0])).collect::<BTreeSet<_>>().into_iter().collect()
            }
            _ => Vec::new(),
        };
        let (place, gone) = place(both);
        let (part, document, field) = (Part::of(kind, route), format!("{kind} {id}"), route.clone());
        list.push(GateChange { part, effect, document, field, before, after, place, gone, hops });
    }
}

/// A waiver that only one side has, or a network or a service that is gone.
fn whole(name: &(String, String), sides: [Option<&Leaves>; 2], list: &mut Vec<GateChange>) {
    let (kind, id) = name;
    let Some(leaves) = sides[1].or(sides[0]) else { return };
    let added = sides[1].is_some();
    if added && kind != "waiver" {
        // A network or a service that is new changes no gate that was there.
        return;
    }
    let effect = match kind.as_str() {
        "waiver" if added => Effect::Weaker,
        "waiver" => Effect::Stricter,
        // Nobody asks for it any more.
        "service" => Effect::Weaker,
        _ => Effect::Other,
    };
    let told = |side: Option<&Leaves>| side.map(|leaves| if kind == "waiver" { accepted(leaves) } else { id.clone() });
    let (place, gone) = place(sides.map(|side| side.and_then(|leaves| leaves.get(""))));
    list.push(GateChange {
        part: match kind.as_str() {
            "waiver" => Part::Waiver,
            "service" => Part::Objective,
            _ => Part::Network,
        },
        effect,
        document: format!("{kind} {id}"),
        field: if added { "added" } else { "removed" }.into(),
        before: told(sides[0]),
        after: told(sides[1]),
        place,
        gone,
        hops: target(leaves).into_iter().collect(),
    });
}

/// `tilt-out-of-reach until 2027-03-01, no worse than 4 deg`.
fn accepted(leaves: &Leaves) -> String {
    let text = |route: &str| leaves.get(route).map_or("?", |leaf| leaf.text.as_str());
    let worst =
        leaves.get("accepts").map_or_else(|| "any value".to_owned(), |leaf| format!("no worse than {}", leaf.text));
    format!("{} until {}, {worst}", text("rule"), text("expires"))
}

fn target(leaves: &Leaves) -> Option<String> {
    leaves.get("target.hop").map(|leaf| leaf.text.clone())
}

fn place(both: [Option<&Leaf>; 2]) -> (Option<(String, usize)>, bool) {
    let shown = both[1].or(both[0]);
    (shown.map(|leaf| (leaf.path.clone(), leaf.line)), both[1].is_none())
}

/// A later day and a wider target let more through; a day of ISO 8601 is later if its text is.
fn of_waiver(route: &str, before: Option<&str>, after: Option<&str>) -> Effect {
    match (route, before, after) {
        ("expires", Some(before), Some(after)) if after < before => Effect::Stricter,
        ("expires", Some(_), Some(_)) | ("target.end" | "target.field" | "accepts" | "compensation", Some(_), None) => {
            Effect::Weaker
        }
        ("target.end" | "target.field" | "accepts" | "compensation", None, Some(_)) => Effect::Stricter,
        _ => Effect::Other,
    }
}

/// The rules that are switched off or lowered, or may be.
pub(super) fn quieted(list: &[GateChange]) -> BTreeSet<String> {
    let rules = list.iter().filter(|change| change.part == Part::Rule && change.weakens());
    rules.filter_map(|change| effect::rule_of(&change.field)).map(str::to_owned).collect()
}

/// Adds the hops that are gone or no longer judged, and to each change the hops it touches; worst first.
pub(super) fn finish(
    list: &mut Vec<GateChange>,
    hops: &[HopChange],
    where_of: impl Fn(&HopChange) -> Option<(String, usize)>,
) {
    for change in list.iter_mut().filter(|change| change.hops.is_empty()) {
        let rule = effect::rule_of(&change.field);
        let touched = hops.iter().filter(|hop| match rule {
            Some(rule) => hop.findings.iter().any(|finding| finding.rule == rule && finding.is_told()),
            None => hop.causes.iter().any(|cause| {
                let met = cause.route.starts_with(&change.field) || change.field.starts_with(&cause.route);
                met && cause.document == change.document
            }),
        });
        change.hops = touched.map(|hop| hop.hop.clone()).collect::<BTreeSet<_>>().into_iter().collect();
    }
    for hop in hops {
        let (field, after) = match (hop.outcome, &hop.not_computed) {
            (Outcome::Removed, _) => ("removed", None),
            (Outcome::NotJudged, [_, Some(why)]) => ("no longer judged", Some(why.clone())),
            (Outcome::NotJudged, _) => ("no longer judged", None),
            _ => continue,
        };
        list.push(GateChange {
            part: Part::Hop,
            effect: Effect::Weaker,
            document: format!("hop {}", hop.hop),
            field: field.into(),
            before: Some("judged".into()),
            after,
            place: where_of(hop),
            gone: hop.outcome == Outcome::Removed,
            hops: vec![hop.hop.clone()],
        });
    }
    list.sort_by(|one, other| {
        let order = |change: &GateChange| (change.effect, change.part, change.place.clone(), change.field.clone());
        order(one).cmp(&order(other)).then_with(|| one.document.cmp(&other.document))
    });
}
