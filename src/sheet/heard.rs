//! What a receiver hears from other senders than its partner, and what that takes from it.
//!
//! Interference raises the noise, and with it every threshold alike. In a fade of the wanted path what comes along the same path
//! fades with it; what comes from elsewhere is taken as unfaded, which may be more than there is.

use std::sync::Arc;

use super::budget::DirectionLines;
use super::heard_mend::{Bench, HeardMend};
use super::hearing::Hearing;
use super::key::SectionKey;
use super::line::{Section, lines};
use super::method::cited;
use super::missing::Missing;
use super::reason::Reason;
use super::saying::Saying;
use super::sentence::Figure;
use super::states::Tuned;
use super::target::Target;
use super::title::Title;
use super::traced::{Traced, all, read, written};
use super::wanted::Wanted;
use crate::air::{Heard, HeardFrom, Owner, QUIETEST};
use crate::at;
use crate::network::{Document, ResolvedEnd, ResolvedHop};
use crate::physics::interference;
use crate::place::{DocumentId, Place};
use crate::spec::{Both, Id, Radio, Way};
use crate::units::{Dbm, Decibels, Given};

/// How many senders are named: the rest is in the sum.
const NAMED: usize = 3;

lines! {
    /// What one receiver hears.
    HeardLines {
        noise_figure: Given<Decibels>, "NF", "noise figure of the receiver",
            "as written; where nothing is, no receiver at these frequencies is quieter (common practice)";
        noise: Dbm, "N", "noise of the receiver", "10 lg kTB + NF at 290 K";
        interference: Dbm, "I", "interference of all other senders together", cited(
            "sum of powers in clear air up to the radio horizon, nothing in the way; antennas as measured, else the envelope of ITU-R F.699-8"
        );
        strongest: Saying, "", "the strongest of them", "level at the input of the receiver";
        over_noise: Decibels, "I/N", "interference over noise", "I − N";
        unfaded: Decibels, "", "threshold degradation, nothing of it faded", "10 lg(1 + 10^((I − N)/10))";
        elsewhere: Given<Decibels>, "", "threshold degradation by senders unknown here", "as written";
        degradation: Decibels, "D", "threshold degradation by interference",
            "powers of both added; what stands at the far site fades with the carrier, by its whole margin";
        degradation_in_hand: Decibels, "", "threshold degradation in hand", "the limit of the network less D";
        carrier: Decibels, "C/I", "carrier over interference, clear sky", "level at the capacity asked for less I";
        needed: Decibels, "", "carrier over interference that is needed there",
            "as the radio states it, else threshold less noise: interference held to be like noise";
        carrier_in_hand: Decibels, "", "carrier over interference in hand", "C/I less what is needed";
    }
}

/// From whom one receiver hears too much, and what would fix it.
#[derive(Debug)]
pub struct HeardSheet {
    /// The strongest senders, the strongest first.
    pub aggressors: Vec<Aggressor>,
    /// Senders at its own site that send into what it listens to.
    pub beside: Vec<Beside>,
    /// Whether nothing would stand beside another half any more if the halves of this hop were exchanged.
    pub halves_exchange: bool,
    /// How much interference may raise a threshold.
    pub limit: Wanted<Decibels>,
    /// What would fix it, where too much is heard.
    pub mend: HeardMend,
}

/// A sender that is heard.
#[derive(Debug, Clone)]
pub struct Aggressor {
    /// Its number among the stations of the network.
    pub number: usize,
    /// As a message calls it.
    pub called: String,
    /// Where it is described.
    pub place: Place,
    /// Whether its hop runs between the same supports as this one.
    pub between_same_supports: bool,
    /// Whether it stands within the half-power beam of this antenna, in its polarisation.
    pub in_beam: bool,
    /// What comes from it.
    pub heard: HeardFrom,
    /// Its level over the noise.
    pub over_noise: Decibels,
    /// What it takes of the thresholds alone, nothing faded.
    pub degradation: Decibels,
}

/// A sender at the same site.
#[derive(Debug, Clone)]
pub struct Beside {
    /// As a message calls it.
    pub called: String,
    /// Where it is described.
    pub place: Place,
}

impl HeardLines {
    pub(super) fn listed(&self, way: Way) -> Section {
        self.section(SectionKey::Heard(way), Title::Heard { way }).planned()
    }
}

/// What both ends of a hop hear.
pub(super) fn of<'n>(resolved: &ResolvedHop<'n>, hearing: &Hearing<'n>) -> Both<Traced<Arc<Heard>>> {
    Both::ways(|way| hearing.heard(resolved, way.receiver()))
}

/// What a direction is spoilt by.
pub(super) struct Spoilt<'s> {
    pub(super) tuned: &'s Tuned<'s>,
    pub(super) lines: &'s DirectionLines,
    /// The state that must hold, by its number in the radio.
    pub(super) objective: &'s Traced<usize>,
    pub(super) heard: &'s Traced<Arc<Heard>>,
    pub(super) hearing: &'s Hearing<'s>,
    pub(super) target: &'s Target,
}

impl Spoilt<'_> {
    pub(super) fn lines(&self, receiver: &ResolvedEnd<'_>) -> HeardLines {
        let (end, radio, heard) = (receiver.end, receiver.radio, self.heard);
        let nothing = || Missing::judged(Reason::NothingHeard, at!(end.radio));
        let level = heard.map(|heard| heard.level());
        let interference = level.value_or(nothing);
        let noise = heard.map(|heard| heard.noise).decided_by(&read!(radio.noise_figure));
        let written = read!(end.threshold_degradation).map(Option::unwrap_or_default);
        let [faded, unfaded] = [self.fade(), Traced::constant(Decibels(0.0))].map(|fade| {
            all((heard, &fade, &written))
                .map(|(heard, fade, written)| interference::together(written, heard.degradation_in(fade)))
        });
        let carrier = all((&self.level(), &interference)).map(|(level, interference)| level - interference);
        let needed = self.needed(radio, &noise);
        let in_hand = all((&carrier, &needed)).map(|(carrier, needed)| carrier - needed);
        let limit = &self.target.threshold_degradation;
        HeardLines {
            noise_figure: noise_figure(radio).line(),
            over_noise: all((&interference, &noise)).map(|(interference, noise)| interference - noise).line(),
            strongest: self.strongest().line(),
            unfaded: unfaded.line(),
            elsewhere: elsewhere(receiver).line(),
            degradation_in_hand: all((limit, &faded)).map(|(limit, degradation)| limit - degradation).line(),
            degradation: faded.line(),
            carrier: carrier.line(),
            needed: all((&interference, &needed)).map(|(_, needed)| needed).line(),
            carrier_in_hand: in_hand.line(),
            interference: interference.line(),
            noise: noise.line(),
        }
    }

    /// Level in the state that must hold, clear sky.
    fn level(&self) -> Traced<Dbm> {
        let back_off = self.objective.and_then(|number| self.tuned.back_off(number));
        all((&self.lines.level, &back_off)).map(|(level, back_off)| level - back_off)
    }

    /// The fade that takes the state down that must hold, in still air: where no state is asked for, none.
    fn fade(&self) -> Traced<Decibels> {
        let radio = self.tuned.radio;
        let threshold = self.objective.and_then(|i| read!(radio.states[i].threshold));
        let fade = all((&self.level(), &threshold, &self.lines.aim_loss))
            .map(|(level, threshold, aim)| Decibels((level - threshold - aim).0.max(0.0)));
        fade.or(|| Traced::constant(Decibels(0.0)))
    }

    /// Carrier over interference that the state needs that must hold.
    fn needed(&self, radio: &Document<Radio>, noise: &Traced<Dbm>) -> Traced<Decibels> {
        self.objective.and_then(|i| {
            let stated = read!(radio.states[i].carrier_to_interference);
            let like_noise =
                all((&read!(radio.states[i].threshold), noise)).map(|(threshold, noise)| threshold - noise);
            stated.and_then(|stated| stated.map_or_else(|| like_noise.clone(), Traced::constant))
        })
    }

    /// The strongest by name.
    fn strongest(&self) -> Traced<Saying> {
        let receiver = self.tuned.sending.receiver.end;
        self.heard.try_map(|heard| {
            let said = heard.from.iter().take(NAMED).map(|from| {
                let owner = self.hearing.station(from.number).owner.to_string();
                Saying::Sender { owner: owner.into(), level: Figure::of(from.level) }
            });
            said.rev()
                .reduce(|next, first| Saying::And { first: Box::new(first), next: Box::new(next) })
                .ok_or_else(|| Missing::judged(Reason::NothingHeard, at!(receiver.radio)))
        })
    }
}

/// A receiver that may hear too much.
pub(super) struct Listener<'l> {
    pub(super) resolved: &'l ResolvedHop<'l>,
    pub(super) receiver: &'l ResolvedEnd<'l>,
    pub(super) lines: &'l HeardLines,
    pub(super) heard: &'l Traced<Arc<Heard>>,
    pub(super) hearing: &'l Hearing<'l>,
    pub(super) target: &'l Target,
}

impl Listener<'_> {
    pub(super) fn sheet(&self) -> HeardSheet {
        let beside = self.beside();
        HeardSheet {
            aggressors: self.aggressors(),
            halves_exchange: !beside.is_empty() && self.halves_exchange(),
            beside,
            mend: self.mend(),
            limit: self.target.threshold_degradation.clone(),
        }
    }

    fn aggressors(&self) -> Vec<Aggressor> {
        let Ok(heard) = self.heard.value() else { return Vec::new() };
        let beam = self.receiver.antenna.beamwidth.value.0;
        let named = heard.from.iter().take(NAMED).map(|from| {
            let owner = self.hearing.station(from.number).owner;
            let over_noise = from.level - heard.noise;
            Aggressor {
                number: from.number,
                called: owner.to_string(),
                place: place(&owner),
                between_same_supports: self.is_parallel(&owner),
                in_beam: from.coupling.off_receiver.0 <= beam / 2.0 && from.polarisation.0 <= 0.0,
                heard: *from,
                over_noise,
                degradation: interference::degradation(over_noise),
            }
        });
        named.collect()
    }

    /// Whether a sender's hop runs between the same two supports.
    fn is_parallel(&self, owner: &Owner<'_>) -> bool {
        let Owner::Hop(other) = owner else { return false };
        let foot = |site: DocumentId, support: &Id| (site, support.0.clone());
        let Both { a, b } = self.resolved.ends.each_ref().map(|end| foot(end.site.at, &end.end.support));
        let near = foot(other.site.at, &other.end.support);
        let far = foot(other.far_site.at, &other.far_end.support);
        (near == a && far == b) || (near == b && far == a)
    }

    /// What would fix it, where it needs fixing.
    fn mend(&self) -> HeardMend {
        let lines = self.lines;
        let above = lines.degradation_in_hand.get().is_some_and(|left| left.0 < 0.0);
        let lost = lines.carrier_in_hand.get().is_some_and(|left| left.0 < 0.0);
        match self.heard.value() {
            Ok(heard) if (above || lost) && self.hearing.is_worth_mending(self.resolved.hop.at, self.receiver.name) => {
                let limit = self.target.threshold_degradation.value();
                Bench { hearing: self.hearing, resolved: self.resolved, heard, limit }.mend()
            }
            _ => HeardMend::default(),
        }
    }

    fn halves_exchange(&self) -> bool {
        let air = self.hearing.air();
        let exchanged = air.with_halves_exchanged(self.resolved.hop.at);
        exchanged.is_some_and(|change| !change.mixes_halves())
    }

    fn beside(&self) -> Vec<Beside> {
        let Ok(heard) = self.heard.value() else { return Vec::new() };
        let owners = heard.beside.iter().map(|number| self.hearing.station(*number).owner);
        owners.map(|owner| Beside { called: owner.to_string(), place: place(&owner) }).collect()
    }
}

/// Where a sender is described.
fn place(owner: &Owner<'_>) -> Place {
    match *owner {
        Owner::Hop(own) => {
            let end = own.end;
            at!(end.radio)
        }
        Owner::Neighbour(neighbour) => at!(neighbour.id),
    }
}

/// As written, or the quietest there is.
fn noise_figure(radio: &Document<Radio>) -> Traced<Given<Decibels>> {
    let written = written!(radio.noise_figure);
    written.map(|written| written.unwrap_or_else(|| Given::assumed(QUIETEST)))
}

fn elsewhere(receiver: &ResolvedEnd<'_>) -> Traced<Given<Decibels>> {
    let end = receiver.end;
    written!(end.threshold_degradation).stated(Reason::NothingElsewhere)
}
