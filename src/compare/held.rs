//! The findings of a hop by the gate that was there before, with why the gate of the change lets some of them pass.

use std::collections::{BTreeMap, BTreeSet, HashMap};

use super::change::Aside;
use super::side::HopSide;
use super::state::name_of;
use crate::finding::{Finding, Identity, Spot};
use crate::verdict::{Open, OpenHop};

/// A finding that counts.
#[derive(Debug, Clone)]
pub(super) struct Held {
    /// The finding.
    pub finding: Finding,
    /// Why the gate of the change lets it pass, if it does.
    pub aside: Option<Aside>,
}

/// The hops of a state as they are judged by the gate of another one.
#[derive(Default)]
pub(super) struct ByGate<'o> {
    hops: HashMap<[String; 2], OpenHop<'o>>,
    /// Rules that the change switches off or lowers.
    quieted: BTreeSet<String>,
}

impl<'o> ByGate<'o> {
    /// A state that was read to be judged by the gate of another one.
    pub(super) fn of(open: &'o Open<'o>, quieted: BTreeSet<String>) -> Self {
        Self { hops: open.open_hops().map(|hop| (name_of(hop), hop)).collect(), quieted }
    }

    /// What counts of a hop: what either gate finds, the graver of both.
    pub(super) fn held(&self, hop: &HopSide) -> Vec<Held> {
        let Some(judged) = self.hops.get(&[hop.network.clone(), hop.hop.clone()]) else {
            return own(&hop.findings);
        };
        let strict = judged.judge(|_, findings| HopSide::weighed(findings));
        let (own, strict) = (keyed(&hop.findings), keyed(&strict));
        let mut list: Vec<Held> = Vec::new();
        for (key, &finding) in &strict {
            let aside = match own.get(key) {
                Some(same) if same.severity >= finding.severity => {
                    list.push(Held { finding: (*same).clone(), aside: None });
                    continue;
                }
                Some(same) if same.waived.is_some() && finding.waived.is_none() => {
                    // As grave as the old gate has it, in the words of the new side: they say who accepts it.
                    let finding = Finding { severity: finding.severity, ..(*same).clone() };
                    list.push(Held { finding, aside: Some(Aside::Waived) });
                    continue;
                }
                Some(_) => Aside::Lowered,
                None if self.quieted.contains(finding.rule.name) => Aside::Off,
                None => Aside::Limit,
            };
            list.push(Held { finding: finding.clone(), aside: Some(aside) });
        }
        let more = own.iter().filter(|(key, _)| !strict.contains_key(*key));
        list.extend(more.map(|(_, finding)| Held { finding: (*finding).clone(), aside: None }));
        list
    }
}

/// Findings that count as they are.
pub(super) fn own(findings: &[Finding]) -> Vec<Held> {
    findings.iter().map(|finding| Held { finding: finding.clone(), aside: None }).collect()
}

/// What a finding is known by here: rule and place; of several at one place, by their order.
pub(super) type Key = (&'static str, String, usize);

pub(super) fn keyed<'f>(list: impl IntoIterator<Item = &'f Finding>) -> BTreeMap<Key, &'f Finding> {
    keyed_by(list, |finding| finding)
}

/// Things that hold a finding, by what it is known by.
pub(super) fn keyed_by<'f, T>(
    list: impl IntoIterator<Item = &'f T>,
    finding: impl Fn(&T) -> &Finding,
) -> BTreeMap<Key, &'f T> {
    let mut counts: BTreeMap<(&'static str, String), usize> = BTreeMap::new();
    let each = list.into_iter().map(|thing| {
        let finding = finding(thing);
        let key = (finding.rule.name, place_of(finding));
        let ordinal = counts.entry(key.clone()).or_default();
        *ordinal += 1;
        ((key.0, key.1, *ordinal), thing)
    });
    each.collect()
}

/// Where a finding is, whatever else in the file moves.
fn place_of(finding: &Finding) -> String {
    let about = finding.about.as_deref().unwrap_or_default();
    let known_at = match &finding.identity {
        Identity::Hop => return format!("the hop {about}"),
        Identity::Spot(spot) => Some(spot),
        Identity::Label => finding.labels.first().map(|label| &label.spot),
    };
    match known_at {
        Some(Spot::Field(place)) => format!("{} {about}", place.route()),
        Some(Spot::Entry(place, key)) => format!("{} {key} {about}", place.route()),
        Some(Spot::Path(_) | Spot::Bytes(..)) | None => finding.message.clone(),
    }
}
