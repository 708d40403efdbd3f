//! Two carriers of crossed polarisations on one channel: what they carry together, and how often each spoils the other.

use super::budget::Sending;
use super::fading::Fading;
use super::key::SectionKey;
use super::line::{AS_WRITTEN, Section, lines};
use super::method::{Method, cited};
use super::missing::Missing;
use super::reason::Reason;
use super::shown::Rare;
use super::title::Title;
use super::traced::{Traced, all, read, see};
use crate::network::Document;
use crate::physics::cross_polar::{self, CoChannel, CrossClearAir, CrossRain, Senders};
use crate::physics::rain_outage::Outage;
use crate::place::Place;
use crate::spec::{Hop, Polarisation, Way};
use crate::units::{Decibels, Given, MegabitsPerSecond, Percent};

/// How the outage in clear air is found.
pub(super) const CLEAR_AIR: Method = cited("ITU-R P.530-18 §4.1, both carriers from one antenna (text not seen)");
/// The same in the year.
pub(super) const CLEAR_AIR_YEAR: Method =
    cited("that of the worst month by ITU-R P.530-18 §2.3.4, as deep fades (own reading)");
/// How the outage in rain is found.
pub(super) const RAIN: Method = cited("ITU-R P.530-18 §4.2, 8 to 35 GHz (text not seen)");

lines! {
    /// What crossing takes from the state that must hold.
    CrossedLines {
        discrimination: Decibels, "XPD_g", "cross-polar discrimination of the antennas", "the lesser of both, as written";
        needed: Decibels, "C_0/I", "carrier over interference the state needs", AS_WRITTEN;
        cancelling: Decibels, "XPIF", "improvement by the canceller",
            "as the radio that receives says, none where nothing is written";
        in_hand: Decibels, "", "carrier over interference in hand, still air", "XPD_g + XPIF − C_0/I";
        rain: Outage, "P_XPR", "crossing outage in rain", RAIN;
        clear_air: Rare, "", "crossing outage in clear air, average year", CLEAR_AIR_YEAR;
        clear_air_worst_month: Rare, "P_XP", "crossing outage in clear air, worst month", CLEAR_AIR;
    }
}

impl CrossedLines {
    pub(super) fn listed(&self, way: Way) -> Section {
        self.section(SectionKey::Crossed(way), Title::Crossed { way })
    }
}

/// Outages of one direction in one state because the other carrier comes over.
#[derive(Debug, Clone)]
pub(super) struct Crossing {
    discrimination: Traced<Decibels>,
    needed: Traced<Decibels>,
    cancelling: Traced<Decibels>,
    /// In rain, in the average year.
    pub(super) rain: Traced<Outage>,
    /// In clear air, in the average year.
    pub(super) clear_air: Traced<Percent>,
    /// In clear air, in the worst month.
    pub(super) clear_air_worst_month: Traced<Percent>,
}

impl Crossing {
    /// That of a state of the receiver, by its number there. None where there is one carrier.
    pub(super) fn of(sending: &Sending<'_>, fading: &Fading, number: usize) -> Option<Self> {
        if !is_dual(sending.resolved.hop) {
            return None;
        }
        let (radio, here, there) = (sending.receiver.radio, sending.sender.antenna, sending.receiver.antenna);
        let hop = sending.resolved.hop;
        // With one carrier there would be none of it.
        let dual = see!(hop.channel.polarisation);
        let [one, other] =
            [read!(here.cross_polar), read!(there.cross_polar)].map(|field| field.stated(Reason::NoCrossPolar));
        let discrimination = all((&one, &other)).map(|(one, other)| if other < one { other } else { one });
        let discrimination = discrimination.decided_by(&dual);
        let needed = read!(radio.states[number].carrier_to_interference);
        let needed = needed.stated(Reason::NoCarrierToInterference).decided_by(&dual);
        let cancelling = read!(radio.cross_polar_cancelling).map(Option::unwrap_or_default).decided_by(&dual);
        let carriers = all((&needed, &cancelling)).map(|(needed, improvement)| CoChannel { needed, improvement });
        let rain = all((sending.frequency(), &fading.rain, &carriers)).judge(|(frequency, rain, carriers)| {
            CrossRain::new(frequency, rain.attenuation_0_01).map(|crosses| crosses.year(&carriers))
        });
        let month = all((fading.clear(), &discrimination, &carriers));
        let month = month.judge(|((fades, _), discrimination, carriers)| {
            CrossClearAir::new(discrimination, Senders::One, fades.occurrence)
                .map(|crosses| crosses.worst_month(&carriers))
        });
        let year = all((&month, fading.clear())).map(|(month, (fades, latitude))| fades.year_of(month, latitude));
        Some(Self { discrimination, needed, cancelling, rain, clear_air: year, clear_air_worst_month: month })
    }

    pub(super) fn lines(&self) -> CrossedLines {
        let inputs = all((&self.discrimination, &self.cancelling, &self.needed));
        let in_hand = inputs.map(|(apart, cancelling, needed)| apart + cancelling - needed);
        CrossedLines {
            discrimination: self.discrimination.clone().line(),
            needed: self.needed.clone().line(),
            cancelling: self.cancelling.clone().line(),
            in_hand: in_hand.line(),
            rain: self.rain.clone().line(),
            clear_air: self.clear_air.map(Rare).line(),
            clear_air_worst_month: self.clear_air_worst_month.map(Rare).line(),
        }
    }

    /// Whether nothing of it is left out: what does not matter on so short a path is not.
    pub(super) fn is_known(&self) -> bool {
        let clear = match self.clear_air.value() {
            Ok(_) => true,
            Err(missing) => matches!(missing.reason, Reason::MultipathShort { .. }),
        };
        clear && self.rain.value().is_ok()
    }

    /// Those of both directions: the same rain crosses them in the same minutes, clear air apart.
    pub(super) fn together(one: &Self, other: &Self) -> Self {
        let sum = |one: &Traced<Percent>, other: &Traced<Percent>| all((one, other)).map(|(one, other)| one + other);
        Self {
            rain: all((&one.rain, &other.rain)).map(|(one, other)| cross_polar::larger(one, other)),
            clear_air: sum(&one.clear_air, &other.clear_air),
            clear_air_worst_month: sum(&one.clear_air_worst_month, &other.clear_air_worst_month),
            ..one.clone()
        }
    }
}

/// That of a hop; where there is one carrier, that there is none.
pub(super) fn of_hop(crossing: Option<&Crossing>, asked: Place) -> Crossing {
    fn none<T>(asked: Place) -> Traced<T> {
        Traced::missing(Missing::judged(Reason::OneCarrier, asked))
    }
    crossing.cloned().unwrap_or_else(|| Crossing {
        discrimination: none(asked),
        needed: none(asked),
        cancelling: none(asked),
        rain: none(asked),
        clear_air: none(asked),
        clear_air_worst_month: none(asked),
    })
}

/// Rain that fades and rain that crosses are one rain: the larger outage of both, as far as each is known.
pub(super) fn with_rain(fades: &Traced<Outage>, crossing: Option<&Crossing>) -> Traced<Outage> {
    let Some(crossing) = crossing else { return fades.clone() };
    let crosses = crossing.rain.or(|| Traced::constant(Outage::Never));
    all((fades, &crosses)).map(|(fades, crosses)| cross_polar::larger(fades, crosses))
}

/// Clear air that fades and clear air that crosses, one after the other, as far as each is known.
pub(super) fn with_clear_air(
    fades: &Traced<Percent>,
    crossing: Option<&Crossing>,
    crosses: fn(&Crossing) -> &Traced<Percent>,
) -> Traced<Percent> {
    let Some(crossing) = crossing else { return fades.clone() };
    let crosses = crosses(crossing).or(|| Traced::constant(Percent(0.0)));
    all((fades, &crosses)).map(|(fades, crosses)| fades + crosses)
}

/// Whether two carriers share the channel of a hop.
pub(super) fn is_dual(hop: &Document<Hop>) -> bool {
    hop.channel.polarisation == Polarisation::Dual
}

/// What all carriers carry in a state: as written for the one of it, else computed.
pub(super) fn capacity(
    hop: &Document<Hop>,
    one: &Traced<Given<MegabitsPerSecond>>,
) -> Traced<Given<MegabitsPerSecond>> {
    all((one, &see!(hop.channel.polarisation))).map(|(one, polarisation)| match polarisation.carriers() {
        1 => one,
        _ => Given::assumed(polarisation.carries(one.value)),
    })
}

/// How that was found.
pub(super) fn capacity_method(hop: &Document<Hop>) -> Method {
    Method::from(if is_dual(hop) { "that of the state as written, once in each polarisation" } else { AS_WRITTEN })
}
