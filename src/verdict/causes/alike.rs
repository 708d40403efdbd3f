//! One fault of a shared document, found at many ends, told once.

use std::collections::{BTreeMap, HashMap, HashSet};

use crate::finding::{Finding, Gathered, Spot};
use crate::place::{DocumentId, Place};

/// From how many on findings of one rule that name the same place of a shared document are one: two may be chance.
const FEWEST: usize = 3;

/// What a group has in common: a rule and a place of a document that is none of the hops'.
type Key = (&'static str, Place);

/// Puts findings of one rule that name the same place of a shared document under the worst of them, at that place.
pub(super) fn merged(findings: Vec<Finding>) -> Vec<Finding> {
    let hops: HashSet<DocumentId> = findings.iter().filter_map(own_document).collect();
    let mut groups: HashMap<Key, Vec<usize>> = HashMap::new();
    for (number, finding) in findings.iter().enumerate().filter(|(_, finding)| finding.hop.is_some()) {
        let mut seen = HashSet::new();
        for place in shared(finding, &hops).filter(|place| seen.insert(*place)) {
            groups.entry((finding.rule.name, place)).or_default().push(number);
        }
    }
    // The largest first; of equals the one whose first finding comes first.
    let mut groups: Vec<(Key, Vec<usize>)> =
        groups.into_iter().filter(|(_, members)| members.len() >= FEWEST).collect();
    groups.sort_by_key(|((rule, place), members)| {
        (std::cmp::Reverse(members.len()), members[0], *rule, depth(&findings[members[0]], place))
    });
    let mut heads: BTreeMap<usize, (Place, Vec<usize>)> = BTreeMap::new();
    let mut taken: HashSet<usize> = HashSet::new();
    for ((_, place), members) in groups {
        let free: Vec<usize> = members.into_iter().filter(|member| !taken.contains(member)).collect();
        if free.len() < FEWEST {
            continue;
        }
        taken.extend(&free);
        let head = worst(&free, &findings);
        heads.insert(head, (place, free.into_iter().filter(|member| *member != head).collect()));
    }
    let under: HashMap<usize, usize> =
        heads.iter().flat_map(|(head, (_, members))| members.iter().map(|member| (*member, *head))).collect();
    let mut alike: HashMap<usize, Vec<Finding>> = HashMap::new();
    let mut told: Vec<(usize, Finding)> = Vec::new();
    for (number, finding) in findings.into_iter().enumerate() {
        match under.get(&number) {
            Some(head) => alike.entry(*head).or_default().push(finding),
            None => told.push((number, finding)),
        }
    }
    let each = told.into_iter().map(|(number, mut finding)| {
        if let Some((place, _)) = heads.get(&number) {
            lead_with(&mut finding, place);
            let gathered = finding.gathered.get_or_insert_default();
            for mut other in alike.remove(&number).unwrap_or_default() {
                // What follows from any of them follows from what they share.
                let own = other.gathered.take().map_or_else(Gathered::default, |gathered| *gathered);
                gathered.follow.extend(own.follow);
                gathered.alike.push(other);
            }
        }
        finding
    });
    each.collect()
}

/// The document of the hop that a finding points into first, if it does.
fn own_document(finding: &Finding) -> Option<DocumentId> {
    finding.hop.as_ref()?;
    match &finding.labels.first()?.spot {
        Spot::Field(place) | Spot::Entry(place, _) if is_of_hop(place) => Some(place.document),
        _ => None,
    }
}

/// Whether a place lies in a hop: only there are ends, a channel, a path and objectives that are a hop's own.
fn is_of_hop(place: &Place) -> bool {
    use crate::place::Step;
    matches!(place.steps().next(), Some(Step::Key("ends" | "channel" | "path" | "licence")))
}

/// The places of a finding that lie in no hop.
fn shared<'f>(finding: &'f Finding, hops: &'f HashSet<DocumentId>) -> impl Iterator<Item = Place> + 'f {
    finding.labels.iter().filter_map(|label| match &label.spot {
        Spot::Field(place) if !hops.contains(&place.document) && !is_of_hop(place) => Some(*place),
        _ => None,
    })
}

/// Which label of a finding a place is.
fn depth(finding: &Finding, place: &Place) -> usize {
    let is_there = |spot: &Spot| matches!(spot, Spot::Field(other) if other == place);
    finding.labels.iter().position(|label| is_there(&label.spot)).unwrap_or(usize::MAX)
}

/// The gravest and worst of some findings, of equals the first.
fn worst(members: &[usize], findings: &[Finding]) -> usize {
    members.iter().copied().fold(members[0], |worst, member| {
        let (one, other) = (&findings[member], &findings[worst]);
        let by_value = match (&one.measured, &other.measured) {
            (Some(one), Some(other)) if one.quantity == other.quantity => one.is_worse_than(other.value),
            _ => false,
        };
        let graver = one.severity > other.severity;
        if graver || (one.severity == other.severity && by_value) { member } else { worst }
    })
}

/// Makes a place the first that a finding points at.
fn lead_with(finding: &mut Finding, place: &Place) {
    let at = depth(finding, place);
    if at < finding.labels.len() {
        let label = finding.labels.remove(at);
        finding.labels.insert(0, label);
    }
}
