//! The modulation states of one direction: what each has in hand, how long it is out, and which of them must hold.

use super::budget::{DirectionLines, Sending};
use super::crossed::{self, Crossing};
use super::fading::Fading;
use super::line::{AS_WRITTEN, Line, lines};
use super::method::{Method, cited};
use super::missing::Missing;
use super::outage::{Causes, Coverage};
use super::path::PathLines;
use super::reason::Reason;
use super::shown::Rare;
use super::target::Target;
use super::terminal::Terminals;
use super::traced::{Traced, all, read, see, written};
use crate::at;
use crate::network::Document;
use crate::physics::link;
use crate::physics::rain_outage::Outage;
use crate::physics::share::Share;
use crate::spec::{self, Hop, Radio};
use crate::units::{Dbm, Decibels, Given, MegabitsPerSecond, Megahertz, Minutes, Percent};

lines! {
    /// One modulation state in one direction.
    StateLines {
        capacity: Given<MegabitsPerSecond>, "C", "capacity", AS_WRITTEN;
        threshold: Given<Dbm>, "P_th", "receiver threshold", AS_WRITTEN;
        level: Dbm, "P_r", "received level in this state", "received level less the state's power back-off";
        margin: Decibels, "M", "fade margin", "P_r − L_p − D − P_th";
        rain_margin: Decibels, "M_R", "fade margin in rain", "M − A_w";
        rain_outage: Outage, "p_R", "rain outage", RAIN_OUTAGE;
        multipath: Rare, "p_M", "multipath outage", MULTIPATH;
        outage: Share, "p", "outage in the average year", TOGETHER;
        availability: Percent, "100 − p", "availability", "100 % less the outage in the average year";
        worst_month: Share, "p_w", "outage in the worst month", TOGETHER_WORST_MONTH;
        share: Share, "", "share of the year in this state", "outage of the faster states less that of this one";
        minutes: Minutes, "", "outage in an average year", "365 days";
    }
}

/// How the outage by rain is found.
pub(super) const RAIN_OUTAGE: Method =
    cited("ITU-R P.530-18 §2.4.1 solved for p, P.838-3; wet snow by §2.4.2 where a rain height is given");
/// How the outage by multipath fading is found.
pub(super) const MULTIPATH: Method = cited("ITU-R P.530-18 §2.3.2 and §2.3.4 at the fade margin, flat fading");
/// How outages are put together.
pub(super) const TOGETHER: Method =
    cited("rain, multipath, equipment and supply added as far as each is given (ITU-R P.530-18 §2.3.6, from memory)");
/// The same in the worst month.
pub(super) const TOGETHER_WORST_MONTH: Method =
    cited("as in the average year, rain by ITU-R P.841-6; upper bound, for the worst months need not be the same");

/// One modulation state.
#[derive(Debug)]
pub struct State {
    /// As the radio names it.
    pub title: String,
    /// Its place among the receiver's states.
    pub number: usize,
    /// Its lines.
    pub lines: StateLines,
    /// What takes it down, cause by cause.
    pub(super) causes: Causes,
    /// How far above its threshold it is taken again, if anybody says.
    pub(super) hysteresis: Traced<Option<Decibels>>,
}

/// Two radios on the channel of a hop.
pub(super) struct Tuned<'n> {
    pub(super) hop: &'n Document<Hop>,
    /// The radio that sends.
    pub(super) sender: &'n Document<Radio>,
    /// The radio whose states they are.
    pub(super) radio: &'n Document<Radio>,
    /// Another bandwidth than is written, to see what it would give.
    pub(super) bandwidth: Option<Megahertz>,
    /// The direction they work in.
    pub(super) sending: &'n Sending<'n>,
}

impl Tuned<'_> {
    /// Whether a state of the receiver is one of the bandwidth in use.
    fn fits(&self, number: usize) -> Traced<bool> {
        let (hop, radio) = (self.hop, self.radio);
        let tried = self.bandwidth;
        all((&read!(hop.channel.bandwidth), &read!(radio.states[number].bandwidth)))
            .map(|(wanted, own)| own == tried.unwrap_or(wanted))
    }

    /// The states of the receiver at the bandwidth in use, by their numbers.
    fn usable(&self) -> impl Iterator<Item = usize> + '_ {
        (0..self.radio.states.len()).filter(|number| self.fits(*number).get() == Some(true))
    }

    /// How much the sender lowers its power in a state of the receiver: as it says for its own of this name and bandwidth.
    pub(super) fn back_off(&self, number: usize) -> Traced<Decibels> {
        let (sender, radio) = (self.sender, self.radio);
        let state = &radio.states[number];
        let same = |other: &spec::State| other.title == state.title && other.bandwidth == state.bandwidth;
        match sender.states.iter().position(same) {
            Some(i) => read!(sender.states[i].back_off).map(Option::unwrap_or_default),
            None => see!(sender.states).map(|_| Decibels(0.0)),
        }
    }
}

/// A state before it is known how much of the year falls to it.
struct Rung {
    number: usize,
    capacity: Traced<Given<MegabitsPerSecond>>,
    threshold: Traced<Given<Dbm>>,
    level: Traced<Dbm>,
    margin: Traced<Decibels>,
    rain_margin: Traced<Decibels>,
    hysteresis: Traced<Option<Decibels>>,
    causes: Causes,
    outage: Traced<Share>,
}

/// The states at the bandwidth in use.
pub(super) fn compute(
    tuned: &Tuned<'_>,
    lines: &DirectionLines,
    degradation: &Line<Decibels>,
    fading: &Fading,
    path: &PathLines,
    terminals: &Terminals,
) -> Vec<State> {
    let levels = Levels { lines, degradation };
    let rungs: Vec<Rung> = tuned.usable().map(|number| rung(tuned, number, &levels, fading, terminals)).collect();
    let shares: Vec<Traced<Share>> = (0..rungs.len()).map(|own| share(&rungs, own)).collect();
    let rungs = rungs.into_iter().zip(shares);
    rungs.map(|(rung, share)| state(tuned, rung, share, path, terminals)).collect()
}

/// What the margin of a state is made of.
struct Levels<'l> {
    lines: &'l DirectionLines,
    degradation: &'l Line<Decibels>,
}

fn rung(tuned: &Tuned<'_>, number: usize, levels: &Levels<'_>, fading: &Fading, terminals: &Terminals) -> Rung {
    let Levels { lines, degradation } = *levels;
    let (radio, i) = (tuned.radio, number);
    let fits = tuned.fits(number);
    let threshold = read!(radio.states[i].threshold);
    let level = all((&lines.level, &tuned.back_off(number))).map(|(level, back_off)| level - back_off);
    let level = level.decided_by(&fits);
    let margin = all((&level, &threshold, &lines.aim_loss, degradation))
        .map(|(level, threshold, aim, degradation)| link::fade_margin(level, threshold) - aim - degradation);
    let rain_margin = all((&margin, &lines.wet_loss)).map(|(margin, wet)| margin - wet);
    // Lost until the level is back above the hysteresis.
    let hysteresis = read!(radio.states[i].hysteresis);
    let back =
        |margin: &Traced<Decibels>| all((margin, &hysteresis)).map(|(margin, more)| margin - more.unwrap_or_default());
    let crossing = Crossing::of(tuned.sending, fading, number);
    let causes = Causes::of(fading, &fading.rain, &back(&margin), &back(&rain_margin), crossing);
    Rung {
        number,
        capacity: crossed::capacity(tuned.hop, &written!(radio.states[i].capacity)).decided_by(&fits),
        threshold: written!(radio.states[i].threshold).decided_by(&fits),
        outage: causes.year(terminals),
        causes,
        level,
        margin,
        rain_margin,
        hysteresis,
    }
}

/// The time between the fade at which the faster states fail and the fade at which a state fails itself.
///
/// The radio goes by the fastest state that holds, so a state with no more margin than a faster one is never used.
fn share(rungs: &[Rung], own: usize) -> Traced<Share> {
    let rank = |number: usize| {
        let Rung { capacity, margin, .. } = &rungs[number];
        (capacity.value().map_or(0.0, |rate| rate.value.0), margin.get().unwrap_or_default().0)
    };
    let faster = (0..rungs.len()).filter(|other| rank(*other) > rank(own)).map(|other| &rungs[other].outage);
    let ranked = Traced::each(rungs.iter().map(|rung| &rung.capacity));
    let outages = Traced::each(faster);
    let share = all((&rungs[own].outage, &outages)).map(|(outage, faster)| {
        let shallow = faster.into_iter().reduce(|one, other| if other.most < one.most { other } else { one });
        Share::between(shallow, outage)
    });
    share.decided_by(&ranked)
}

fn state(tuned: &Tuned<'_>, rung: Rung, share: Traced<Share>, path: &PathLines, terminals: &Terminals) -> State {
    let Rung { number, capacity, threshold, level, margin, rain_margin, hysteresis, causes, outage } = rung;
    let coverage = Coverage::of(&path.snow_factor, &causes, terminals);
    let lines = StateLines {
        capacity: capacity.by(crossed::capacity_method(tuned.hop)),
        threshold: threshold.line(),
        level: level.line(),
        margin: margin.line(),
        rain_margin: rain_margin.line(),
        rain_outage: causes.rain.clone().line(),
        multipath: causes.multipath.map(Rare).line(),
        availability: outage.map(|outage| link::availability(outage.most)).line().called(coverage.of_direction()),
        worst_month: causes.worst_month(terminals).line(),
        minutes: outage.map(|outage| link::minutes_per_year(outage.most)).line(),
        outage: outage.line(),
        share: share.line(),
    };
    State { title: tuned.radio.states[number].title.to_string(), number, lines, causes, hysteresis }
}

/// The state with the lowest threshold among those that reach the capacity asked for, by its number in the list.
pub(super) fn most_robust(tuned: &Tuned<'_>, target: &Target) -> Traced<usize> {
    let (radio, usable) = (tuned.radio, tuned.usable().collect::<Vec<usize>>());
    let fitting: Vec<Traced<bool>> = (0..radio.states.len()).map(|number| tuned.fits(number)).collect();
    let capacities = usable.iter().map(|i| {
        let i = *i;
        crossed::capacity(tuned.hop, &written!(radio.states[i].capacity)).map(|given| given.value.0)
    });
    let thresholds = usable.iter().map(|i| {
        let i = *i;
        read!(radio.states[i].threshold).map(|threshold| threshold.0)
    });
    let [capacities, thresholds] =
        [capacities.collect::<Vec<_>>(), thresholds.collect::<Vec<_>>()].map(|list| Traced::each(&list));
    let listed = see!(radio.states).decided_by(&Traced::each(&fitting));
    all((&listed, &capacities, &thresholds, &target.capacity)).try_map(|(_, capacities, thresholds, wanted)| {
        let known: Vec<(f64, f64)> = capacities.into_iter().zip(thresholds).collect();
        lowest_threshold(&known, wanted.0).ok_or_else(|| Missing::judged(Reason::NoStateForCapacity, at!(radio.states)))
    })
}

/// The same by its number in the radio.
pub(super) fn in_radio(tuned: &Tuned<'_>, objective: &Traced<usize>) -> Traced<usize> {
    let usable: Vec<usize> = tuned.usable().collect();
    objective.map(|number| usable[number])
}

/// The one with the lowest threshold among those that reach a capacity, by its number; each is a capacity and a threshold.
pub(super) fn lowest_threshold(states: &[(f64, f64)], wanted: f64) -> Option<usize> {
    let enough = (0..states.len()).filter(|number| states[*number].0 >= wanted);
    enough.min_by(|one, other| states[*one].1.total_cmp(&states[*other].1))
}
