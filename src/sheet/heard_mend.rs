//! What would fix a receiver that hears too much, each change tried on all receivers it touches.

use super::hearing::Hearing;
use crate::air::{Heard, Owner};
use crate::network::ResolvedHop;
use crate::place::DocumentId;
use crate::spec::{Both, EndName, Polarisation};
use crate::units::{Decibels, Degrees, Gigahertz, Quantity as _};

/// Single changes each of which would bring every receiver that it touches below the limit.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct HeardMend {
    /// Whether any was tried: not where too many hear more.
    pub tried: bool,
    /// The changes in words, the one that costs least first.
    pub words: Vec<String>,
    /// What the strongest sender would have to come in weaker by, by whatever means: an antenna, a screen, a place.
    pub weaker: Option<Decibels>,
    /// How far off the axis of this antenna that sender stands.
    pub off_axis: Option<Degrees>,
    /// Whether crossed polarisations would do if the antennas stated how well they keep them apart.
    pub lacks_cross_polar: bool,
}

/// More decibels less are no fix.
const MOST: f64 = 40.0;
/// Nor is so much less power.
const LESS: u8 = 20;
/// Channels that are looked at for what they do to others.
const CHANNELS: usize = 3;

/// A receiver to try changes for.
pub(super) struct Bench<'b, 'n> {
    pub(super) hearing: &'b Hearing<'n>,
    pub(super) resolved: &'b ResolvedHop<'n>,
    pub(super) heard: &'b Heard,
    pub(super) limit: Decibels,
}

impl Bench<'_, '_> {
    pub(super) fn mend(&self) -> HeardMend {
        let Some(strongest) = self.heard.from.first() else { return HeardMend::default() };
        let owner = self.hearing.station(strongest.number).owner;
        let own = self.resolved.hop.at;
        let other = match owner {
            Owner::Hop(other) => Some((other.hop.at, other.hop.id.to_string())),
            Owner::Neighbour(_) => None,
        };
        let mut words = Vec::new();
        let hops = [Some((own, "this hop".to_owned())), other.map(|(hop, id)| (hop, format!("`{id}`")))];
        for (hop, called) in hops.iter().flatten() {
            words.extend(self.polarisation(*hop).map(|word| format!("{called} {word}")));
            words
                .extend(self.channels(*hop).map(|pair| format!("{called} on {} from a and {} from b", pair.a, pair.b)));
        }
        if self.passes(self.hearing.air().with_halves_exchanged(own)) {
            words.push("the two halves of this hop exchanged".to_owned());
        }
        if matches!(owner, Owner::Hop(_)) {
            words.extend(
                self.power(strongest.number)
                    .map(|less| format!("{less} less power at {owner}, if what it leaves that hop is enough")),
            );
        }
        let crossed = strongest.coupling;
        HeardMend {
            tried: true,
            words,
            weaker: self.weaker(),
            off_axis: Some(strongest.coupling.off_receiver),
            lacks_cross_polar: crossed.sent == crossed.sent_crossed || crossed.heard == crossed.heard_crossed,
        }
    }

    fn passes(&self, change: Option<crate::air::Change<'_, '_>>) -> bool {
        change.is_some_and(|change| change.keeps_within(self.limit))
    }

    fn polarisation(&self, hop: DocumentId) -> Option<&'static str> {
        let air = self.hearing.air();
        let other = match air.station(hop, EndName::A)?.polarisation {
            Polarisation::Horizontal => Polarisation::Vertical,
            Polarisation::Vertical => Polarisation::Horizontal,
            Polarisation::Dual => return None,
        };
        self.passes(Some(air.with_polarisation(hop, other))).then(|| other.word())
    }

    /// The pair of channels on which the hop itself hears least, of those that disturb nobody else.
    fn channels(&self, hop: DocumentId) -> Option<Both<Gigahertz>> {
        let air = self.hearing.air();
        let Owner::Hop(own) = air.station(hop, EndName::A)?.owner else { return None };
        let now = Both { a: own.hop.channel.a_to_b.value, b: own.hop.channel.b_to_a.value };
        let tried = air.channels(hop).into_iter().filter(|pair| *pair != now);
        let own = tried.filter_map(|pair| Some((air.with_channels(hop, pair).of_its_own()?, pair)));
        let mut own: Vec<_> = own.filter(|(worst, _)| *worst <= self.limit).collect();
        own.sort_by(|one, other| one.0.0.total_cmp(&other.0.0));
        let best = own.into_iter().take(CHANNELS).map(|(_, pair)| pair);
        best.into_iter().find(|pair| air.with_channels(hop, *pair).keeps_within(self.limit))
    }

    /// The least that the strongest sender has to be lowered by.
    fn power(&self, number: usize) -> Option<Decibels> {
        let air = self.hearing.air();
        let does = |less: f64| self.passes(Some(air.with_less_power(number, Decibels(less))));
        // The less is sent, the less is heard: halved until one decibel does and one fewer does not.
        let (mut low, mut high) = (0_u8, LESS);
        if !does(f64::from(high)) {
            return None;
        }
        while high - low > 1 {
            let middle = low.midpoint(high);
            if does(f64::from(middle)) { high = middle } else { low = middle }
        }
        Some(Decibels(f64::from(high)))
    }

    /// How much weaker the strongest would have to come in, all others as they are.
    fn weaker(&self) -> Option<Decibels> {
        let by = |less: f64| self.heard.with_strongest_weaker(Decibels(less)).degradation() <= self.limit;
        if !by(MOST) {
            return None;
        }
        let (mut low, mut high) = (0.0, MOST);
        for _ in 0..30 {
            let middle = f64::midpoint(low, high);
            if by(middle) { high = middle } else { low = middle }
        }
        Some(Decibels(high).rounded_up())
    }
}
