//! The level budget of one direction: from the sender's power to the margin of every modulation state.

use super::line::{AS_WRITTEN, Cause, Line, Missing, Section, lines};
use super::margin::{self, MarginLines};
use super::path::{PathLines, WORST_MONTH};
use super::reason::Reason;
use super::target::Target;
use super::title::Title;
use crate::at;
use crate::network::{Document, ResolvedEnd, ResolvedHop};
use crate::physics::atmosphere::Air;
use crate::physics::gas::Spectrum;
use crate::physics::rain_outage::{Outage, RainFade};
use crate::physics::worst_month::{MonthOutage, Share};
use crate::physics::{antenna, fog, free_space, link, rain};
use crate::place::Place;
use crate::spec::{self, Antenna, Both, Hop, Polarisation, Radio, Way};
use crate::units::{
    Dbi, Dbm, Decibels, DecibelsPerKilometre, Gigahertz, Given, MegabitsPerSecond, Megahertz, Minutes, Percent,
};

const RAIN: &str = "ITU-R P.530-18 §2.4.1 with P.838-3";
const GAS: &str = "ITU-R P.676-13 Annex 1, all lines, in the reference atmosphere";
const GAS_LOSS: &str = "ITU-R P.676-13 Annex 1 over the slant distance, in the reference atmosphere";
const OWN_GAS: &str = "ITU-R P.676-13 Annex 1, all lines, in the air as written";
const OWN_GAS_LOSS: &str = "ITU-R P.676-13 Annex 1 over the slant distance, in the air as written";

lines! {
    /// The sum from power to level.
    DirectionLines {
        frequency: Given<Gigahertz>, "f", "frequency", AS_WRITTEN;
        transmit_power: Given<Dbm>, "P_t", "transmit power", AS_WRITTEN;
        transmit_gain: Given<Dbi>, "G_t", "gain of the sending antenna", AS_WRITTEN;
        receive_gain: Given<Dbi>, "G_r", "gain of the receiving antenna", AS_WRITTEN;
        free_space_loss: Decibels, "L_bf", "free-space loss", "20 lg(4πs/λ), ITU-R P.525-4";
        gas_attenuation: DecibelsPerKilometre, "γ", "gas attenuation", GAS;
        gas_loss: Decibels, "A_g", "gas loss", GAS_LOSS;
        diffraction_loss: Decibels, "A_d", "diffraction loss", super::profile::DIFFRACTION;
        level: Dbm, "P_r", "received level, clear sky", "P_t + G_t + G_r − L_bf − A_g − A_d";
        wet_loss: Decibels, "A_w", "loss of wet antenna covers, both ends",
            "sum of both antennas as written, none where nothing is written; no ITU method";
        aim_loss: Decibels, "L_p", "loss of aim when locked, both ends",
            "sum of 12 (θ/θ_3)² for each aim error as written, none where nothing is written (ITU-R F.699-8, main beam)";
        fog_loss: Decibels, "A_f", "loss in fog", "ITU-R P.840-9 at the path temperature, over the slant distance";
        rain_fade: Decibels, "A_0.01", "rain fade exceeded 0.01 % of the year", RAIN;
        objective_fade: Decibels, "A_p", "rain fade at the availability asked for", RAIN;
    }
}

lines! {
    /// One modulation state in one direction.
    StateLines {
        capacity: Given<MegabitsPerSecond>, "C", "capacity", AS_WRITTEN;
        threshold: Given<Dbm>, "P_th", "receiver threshold", AS_WRITTEN;
        level: Dbm, "P_r", "received level in this state", "received level less the state's power back-off";
        margin: Decibels, "M", "fade margin", "P_r − L_p − P_th";
        rain_margin: Decibels, "M_R", "fade margin in rain", "M − A_w";
        outage: Outage, "p", "rain outage", "ITU-R P.530-18 §2.4.1 solved for p, P.838-3";
        availability: Percent, "100 − p", "availability", "100 % less the rain outage";
        worst_month: MonthOutage, "p_w", "rain outage in the worst month", WORST_MONTH;
        share: Share, "", "share of the year in this state",
            "outage of the faster states less that of this one, rain alone";
        minutes: Minutes, "", "outage in an average year", "365 days";
    }
}

/// One direction.
#[derive(Debug)]
pub struct Direction<'n> {
    /// Which way it goes.
    pub way: Way,
    /// The end that sends.
    pub sender: &'n ResolvedEnd<'n>,
    /// The end that listens.
    pub receiver: &'n ResolvedEnd<'n>,
    /// The sum.
    pub lines: DirectionLines,
    /// What is left to its limits.
    pub margins: MarginLines,
    /// The receiver's states at the hop's bandwidth, from the most robust to the fastest.
    pub states: Vec<State>,
    /// The most robust state that reaches the capacity asked for, by its number in `states`.
    pub objective: Option<usize>,
}

/// One modulation state.
#[derive(Debug)]
pub struct State {
    /// As the radio names it.
    pub title: String,
    /// Its place among the receiver's states.
    pub number: usize,
    /// Its lines.
    pub lines: StateLines,
}

impl Direction<'_> {
    /// The state that must hold.
    #[must_use]
    pub fn objective_state(&self) -> Option<&State> {
        self.objective.map(|number| &self.states[number])
    }

    /// Outage of the state that must hold.
    pub(super) fn objective_outage(&self) -> Result<Outage, Missing> {
        let radio = self.receiver.radio;
        let none = || Missing::judged(Reason::NoStateForCapacity, at!(radio.states));
        self.objective_state().ok_or_else(none)?.lines.outage.need()
    }

    pub(super) fn mask(&mut self, broken: &dyn Fn(&Place) -> Option<Missing>) {
        self.lines.mask(broken);
        self.margins.mask(broken);
        for state in &mut self.states {
            state.lines.mask(broken);
        }
    }

    pub(super) fn missing(&self, each: &mut dyn FnMut(&'static str, &Missing)) {
        self.lines.missing(each);
        self.margins.missing(each);
        self.states.iter().for_each(|state| state.lines.missing(each));
    }

    pub(super) fn sections(&self, sections: &mut Vec<Section>) {
        let (way, key) = (self.way, self.way.key());
        sections.push(Section::of(key, Title::LevelBudget { way }, |rows| self.lines.rows(key, rows)));
        let margins = format!("{key}.margins");
        let title = Title::Margins { way };
        sections.push(Section::of(margins.clone(), title, |rows| self.margins.rows(&margins, rows)));
        for (number, state) in self.states.iter().enumerate() {
            let key = format!("{key}.states[{number}]");
            let title = Title::State { state: state.title.as_str().into(), way };
            sections.push(Section::of(key.clone(), title, |rows| state.lines.rows(&key, rows)));
        }
    }
}

/// What is changed to see whether a hop would pass; by default nothing.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Trial {
    /// More gain or power than is written.
    pub(super) more: Decibels,
    /// Another bandwidth than is written.
    pub(super) bandwidth: Option<Megahertz>,
}

/// One direction before anything is computed.
struct Sending<'n> {
    way: Way,
    trial: Trial,
    hop: &'n Document<Hop>,
    sender: &'n ResolvedEnd<'n>,
    receiver: &'n ResolvedEnd<'n>,
    frequency: &'n Given<Gigahertz>,
    frequency_at: Place,
}

/// The budgets of both ways, through the same air.
pub(super) fn both<'n>(resolved: &'n ResolvedHop<'n>, path: &PathLines, target: &Target) -> Both<Direction<'n>> {
    let gas = gas(path);
    Both::ways(|way| compute(resolved, path, &gas, target, way, Trial::default()))
}

/// One of them with something changed.
pub(super) fn with<'n>(
    resolved: &'n ResolvedHop<'n>,
    path: &PathLines,
    target: &Target,
    way: Way,
    trial: Trial,
) -> Direction<'n> {
    compute(resolved, path, &gas(path), target, way, trial)
}

fn compute<'n>(
    resolved: &'n ResolvedHop<'n>,
    path: &PathLines,
    gas: &Result<Spectrum, Missing>,
    target: &Target,
    way: Way,
    trial: Trial,
) -> Direction<'n> {
    let hop = resolved.hop;
    let (sender, receiver) = (&resolved.ends[way.sender()], &resolved.ends[way.receiver()]);
    let (frequency, frequency_at) = (hop.spec.channel.frequency(way), resolved.frequency_at(way));
    let sending = Sending { way, trial, hop, sender, receiver, frequency, frequency_at };
    let rain = rain_fade(&sending, path);
    let lines = budget(&sending, path, gas, &rain, target);
    let mut states = states(&sending, &lines, &rain);
    share_out(&mut states);
    let objective = most_robust(&states, receiver.radio, target);
    let margins = margin::direction(&lines, objective.map(|number| &states[number]), sender, receiver, path, target);
    Direction { way, sender, receiver, lines, margins, states, objective }
}

/// The state with the lowest threshold among those that reach the capacity asked for.
fn most_robust(states: &[State], radio: &Radio, target: &Target) -> Option<usize> {
    let threshold = |number: &usize| radio.states[states[*number].number].threshold.value.0;
    (0..states.len())
        .filter(|number| radio.states[states[*number].number].capacity.value >= target.capacity.value())
        .min_by(|one, other| threshold(one).total_cmp(&threshold(other)))
}

fn budget(
    way: &Sending<'_>,
    path: &PathLines,
    gas: &Result<Spectrum, Missing>,
    rain: &Result<RainFade, Missing>,
    target: &Target,
) -> DirectionLines {
    let wanted = &target.availability;
    let (hop, end, sending, receiving) = (way.hop, way.sender.end, way.sender.antenna, way.receiver.antenna);
    let f = way.frequency.value;
    let slant = path.slant.need();
    let free_space_loss = slant.clone().map(|s| free_space::loss(f, s));
    let gas_attenuation = gas.as_ref().map(|gas| gas.specific_attenuation(f)).map_err(Clone::clone);
    let gas_loss = gas_attenuation.clone().and_then(|attenuation| Ok(attenuation * slant?));
    let diffraction_loss = path.diffraction.value.clone().map(|both| both.0[way.way]);
    let level = free_space_loss.clone().and_then(|free_space| {
        let gains = [sending.gain.value, receiving.gain.value];
        let power = end.transmit_power.value + way.trial.more;
        Ok(link::received_level(power, gains, &[free_space, gas_loss.clone()?, counted(&diffraction_loss)?]))
    });
    let objective_fade = rain.clone().and_then(|rain| {
        let outside = || Missing::new(Reason::RainModelRange, wanted.place);
        rain.attenuation(Percent(100.0) - wanted.value()).ok_or_else(outside)
    });

    let power_at = at!(end.transmit_power);
    let gains_at = [at!(sending.gain), at!(receiving.gain)];
    let path_from = joined(&[way.frequency_at], &path.slant.from);
    let air_from = [&path.temperature.from[..], &path.dry_pressure.from, &path.vapour_pressure.from].concat();
    let gas_from = joined(&path_from, &air_from);
    let level_from = [&[power_at, gains_at[0], gains_at[1]], &gas_from[..], &path.diffraction.from].concat();
    let (gas_by, gas_loss_by) = if target.air.is_reference() { (GAS, GAS_LOSS) } else { (OWN_GAS, OWN_GAS_LOSS) };
    let rain_from = joined(&path.rain_rate.from, &joined(&[at!(hop.channel.polarisation)], &path_from));
    DirectionLines {
        frequency: Line::known(way.frequency.clone(), &[way.frequency_at]),
        transmit_power: Line::known(end.transmit_power.clone(), &[power_at]),
        transmit_gain: Line::known(sending.gain.clone(), &gains_at[..1]),
        receive_gain: Line::known(receiving.gain.clone(), &gains_at[1..]),
        free_space_loss: Line::new(free_space_loss, &path_from),
        gas_attenuation: Line::new(gas_attenuation, &gas_from).by(gas_by),
        gas_loss: Line::new(gas_loss, &gas_from).by(gas_loss_by),
        diffraction_loss: Line::new(diffraction_loss, &path.diffraction.from),
        level: Line::new(level, &level_from),
        wet_loss: wet_loss(sending, receiving),
        aim_loss: aim_loss(way.sender, way.receiver),
        fog_loss: fog_loss(way, path, target),
        rain_fade: Line::new(rain.clone().map(|rain| rain.attenuation_0_01), &rain_from),
        objective_fade: Line::new(objective_fade, &joined(&[wanted.place], &rain_from)),
    }
}

/// A path that nobody described is taken as clear, and a rule says so; one that is broken is not.
fn counted(diffraction: &Result<Decibels, Missing>) -> Result<Decibels, Missing> {
    match diffraction {
        Err(missing) if missing.cause == Cause::Judged => Ok(Decibels(0.0)),
        loss => loss.clone(),
    }
}

fn wet_loss(sending: &Document<Antenna>, receiving: &Document<Antenna>) -> Line<Decibels> {
    let of = |antenna: &Document<Antenna>| antenna.wet_loss.as_ref().map_or(Decibels(0.0), |given| given.value);
    Line::known(of(sending) + of(receiving), &[at!(sending.wet_loss), at!(receiving.wet_loss)])
}

/// What the aim of both ends may cost once they are locked.
fn aim_loss(sender: &ResolvedEnd<'_>, receiver: &ResolvedEnd<'_>) -> Line<Decibels> {
    let of = |own: &ResolvedEnd<'_>| {
        let (end, antenna) = (own.end, own.antenna);
        let Some(error) = &end.aim_error else { return Ok(Decibels(0.0)) };
        let off = || Missing::new(Reason::AimBeyondBeam, at!(end.aim_error));
        antenna::pointing_loss(error.value, antenna.beamwidth.value).ok_or_else(off)
    };
    let from = [sender, receiver].into_iter().flat_map(|own| {
        let (end, antenna) = (own.end, own.antenna);
        [at!(end.aim_error), at!(antenna.beamwidth)]
    });
    Line::new(of(sender).and_then(|there| Ok(there + of(receiver)?)), &from.collect::<Vec<_>>())
}

fn fog_loss(way: &Sending<'_>, path: &PathLines, target: &Target) -> Line<Decibels> {
    const HIGHEST: Gigahertz = Gigahertz(200.0);
    let hop = way.hop;
    let Some(wanted) = &target.fog else {
        return Line::new(Err(Missing::judged(Reason::NoFog, at!(hop.climate.fog))), &[]);
    };
    let f = way.frequency.value;
    let loss = if f > HIGHEST {
        Err(Missing::judged(Reason::FogFrequency, way.frequency_at))
    } else {
        path.temperature.need().and_then(|t| Ok(fog::loss(f, t, wanted.value(), path.slant.need()?)))
    };
    let from = [&[wanted.place, way.frequency_at], &path.temperature.from[..], &path.slant.from].concat();
    Line::new(loss, &from)
}

/// Two lists of inputs in one.
fn joined(first: &[Place], then: &[Place]) -> Vec<Place> {
    first.iter().chain(then).copied().collect()
}

/// The spectral lines of the air along the path.
fn gas(path: &PathLines) -> Result<Spectrum, Missing> {
    Ok(Spectrum::of(&Air {
        dry_pressure: path.dry_pressure.need()?,
        vapour_pressure: path.vapour_pressure.need()?,
        temperature: path.temperature.need()?,
    }))
}

/// The polarisation of a hop, as rain meets it.
pub(super) fn polarisation(hop: &Hop) -> rain::Polarisation {
    match hop.channel.polarisation {
        Polarisation::Horizontal => rain::Polarisation::Horizontal,
        Polarisation::Vertical => rain::Polarisation::Vertical,
    }
}

fn rain_fade(way: &Sending<'_>, path: &PathLines) -> Result<RainFade, Missing> {
    let rate = path.rain_rate.value.as_ref().map_err(Clone::clone)?.value;
    let (elevation, slant) = (path.elevation_a.need()?, path.slant.need()?);
    RainFade::new(way.frequency.value, polarisation(way.hop), elevation, slant, rate)
        .map_err(|error| Missing::new(error, way.frequency_at))
}

fn states(way: &Sending<'_>, lines: &DirectionLines, rain: &Result<RainFade, Missing>) -> Vec<State> {
    let (hop, radio) = (way.hop, way.receiver.radio);
    let bandwidth = way.trial.bandwidth.unwrap_or(hop.channel.bandwidth.value);
    let usable = (0..radio.states.len()).filter(|i| radio.states[*i].bandwidth.value == bandwidth);
    usable
        .map(|i| {
            let state = &radio.states[i];
            let chosen_by = [at!(hop.channel.bandwidth), at!(radio.states[i].bandwidth)];
            let (capacity_at, threshold_at) = (at!(radio.states[i].capacity), at!(radio.states[i].threshold));
            let (back_off, back_off_at) = back_off(way.sender.radio, state);
            let level = lines.level.need().map(|level| level - back_off);
            let margin = level
                .clone()
                .and_then(|level| Ok(link::fade_margin(level, state.threshold.value) - lines.aim_loss.need()?));
            let rain_margin = margin.clone().and_then(|margin| Ok(margin - lines.wet_loss.need()?));
            let outage = rain_margin.clone().and_then(|margin| Ok(rain.clone()?.outage(margin)));
            let availability = outage.clone().map(|outage| link::availability(outage.at_most()));
            let mut level_from = joined(&lines.level.from, &chosen_by);
            level_from.extend(back_off_at);
            let margin_from = joined(&joined(&[threshold_at], &level_from), &lines.aim_loss.from);
            let rain_margin_from = joined(&margin_from, &lines.wet_loss.from);
            let outage_from = joined(&rain_margin_from, &lines.rain_fade.from);
            let worst = outage.clone().map(MonthOutage::of);
            let minutes = outage.clone().map(|outage| link::minutes_per_year(outage.at_most()));
            State {
                title: state.title.to_string(),
                number: i,
                lines: StateLines {
                    capacity: Line::known(state.capacity.clone(), &joined(&[capacity_at], &chosen_by)),
                    threshold: Line::known(state.threshold.clone(), &joined(&[threshold_at], &chosen_by)),
                    level: Line::new(level, &level_from),
                    margin: Line::new(margin, &margin_from),
                    rain_margin: Line::new(rain_margin, &rain_margin_from),
                    outage: Line::new(outage, &outage_from),
                    availability: Line::new(availability, &outage_from),
                    worst_month: Line::new(worst, &outage_from),
                    minutes: Line::new(minutes, &outage_from),
                    // Filled in when all states are known.
                    share: Line::new(Err(Missing::judged(Reason::NoOtherState, threshold_at)), &outage_from),
                },
            }
        })
        .collect()
}

/// Gives each state the time between the fade at which the faster ones fail and the fade at which it fails itself.
///
/// The radio goes by the fastest state that holds, so a state with no more margin than a faster one is never used.
fn share_out(states: &mut [State]) {
    let shares: Vec<Line<Share>> = (0..states.len())
        .map(|own| {
            let lines = &states[own].lines;
            let rank = |number: usize| {
                let state = &states[number].lines;
                (
                    state.capacity.value.as_ref().map_or(0.0, |rate| rate.value.0),
                    state.margin.get().unwrap_or_default().0,
                )
            };
            let faster = (0..states.len()).filter(|other| rank(*other) > rank(own));
            let mut from = lines.outage.from.clone();
            let outages: Result<Vec<Outage>, Missing> = faster
                .map(|other| {
                    from.extend(&states[other].lines.outage.from);
                    states[other].lines.outage.need()
                })
                .collect();
            let least = outages.map(|list| list.into_iter().reduce(|one, other| if other < one { other } else { one }));
            let share = least.and_then(|shallow| Ok(Share::between(shallow, lines.outage.need()?)));
            Line::new(share, &from)
        })
        .collect();
    for (state, share) in states.iter_mut().zip(shares) {
        state.lines.share = share;
    }
}

/// How much the sender lowers its power in the state of this name and bandwidth.
fn back_off(sending: &Document<Radio>, state: &spec::State) -> (Decibels, Option<Place>) {
    let same = |other: &spec::State| other.title == state.title && other.bandwidth == state.bandwidth;
    match sending.states.iter().position(same) {
        Some(i) => {
            let given = sending.states[i].back_off.as_ref();
            (given.map_or(Decibels(0.0), |given| given.value), Some(at!(sending.states[i].back_off)))
        }
        None => (Decibels(0.0), None),
    }
}
