//! The level budget of one direction: from the sender's power to the margin of every modulation state.

use super::line::{AS_WRITTEN, Line, Missing, Section, lines};
use super::margin::{self, MarginLines};
use super::path::PathLines;
use super::target::Target;
use crate::at;
use crate::network::{ResolvedEnd, ResolvedHop};
use crate::physics::atmosphere::Air;
use crate::physics::rain_outage::{Outage, RainFade};
use crate::physics::{free_space, gas, link, rain};
use crate::place::Place;
use crate::spec::Polarisation;
use crate::units::{Dbi, Dbm, Decibels, DecibelsPerKilometre, Gigahertz, Given, MegabitsPerSecond, Percent};

const RAIN: &str = "ITU-R P.530-18 §2.4.1 with P.838-3";

lines! {
    /// The sum from power to level.
    DirectionLines {
        frequency: Given<Gigahertz>, "f", "frequency", AS_WRITTEN;
        transmit_power: Given<Dbm>, "P_t", "transmit power", AS_WRITTEN;
        transmit_gain: Given<Dbi>, "G_t", "gain of the sending antenna", AS_WRITTEN;
        receive_gain: Given<Dbi>, "G_r", "gain of the receiving antenna", AS_WRITTEN;
        free_space_loss: Decibels, "L_bf", "free-space loss", "20 lg(4πs/λ), ITU-R P.525-4";
        gas_attenuation: DecibelsPerKilometre, "γ", "gas attenuation", "ITU-R P.676-13 Annex 1, all lines";
        gas_loss: Decibels, "A_g", "gas loss", "ITU-R P.676-13 Annex 1 over the slant distance";
        level: Dbm, "P_r", "received level, clear sky", "P_t + G_t + G_r − L_bf − A_g";
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
        margin: Decibels, "M", "fade margin", "P_r − P_th";
        outage: Outage, "p", "rain outage", "ITU-R P.530-18 §2.4.1 solved for p, P.838-3";
        availability: Percent, "100 − p", "availability", "100 % less the rain outage";
    }
}

/// One direction.
#[derive(Debug)]
pub struct Direction<'n> {
    /// `a_to_b` or `b_to_a`.
    pub name: &'static str,
    /// `a to b` or `b to a`.
    pub title: &'static str,
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
        let none = || Missing::judged("no modulation state reaches the capacity asked for", at!(radio.states));
        self.objective_state().ok_or_else(none)?.lines.outage.need()
    }

    pub(super) fn sections(&self, sections: &mut Vec<Section>) {
        sections.push(Section::of(self.name, format!("Level budget {}", self.title), |rows| {
            self.lines.rows(self.name, rows);
        }));
        let key = format!("{}.margins", self.name);
        sections
            .push(Section::of(key.clone(), format!("Margins {}", self.title), |rows| self.margins.rows(&key, rows)));
        for (number, state) in self.states.iter().enumerate() {
            let key = format!("{}.states[{number}]", self.name);
            let title = format!("{} {}", state.title, self.title);
            sections.push(Section::of(key.clone(), title, |rows| state.lines.rows(&key, rows)));
        }
    }
}

pub(super) fn compute<'n>(
    resolved: &'n ResolvedHop<'n>,
    path: &PathLines,
    target: &Target,
    a_sends: bool,
) -> Direction<'n> {
    let hop = resolved.hop;
    let (name, title, sender, receiver, frequency, frequency_at) = if a_sends {
        ("a_to_b", "a to b", &resolved.a, &resolved.b, &hop.channel.a_to_b, at!(hop.channel.a_to_b))
    } else {
        ("b_to_a", "b to a", &resolved.b, &resolved.a, &hop.channel.b_to_a, at!(hop.channel.b_to_a))
    };
    let f = frequency.value;
    let rain = rain_fade(resolved, path, f, frequency_at);
    let objective_share = Percent(100.0) - target.availability.value();
    let lines =
        lines_of(path, sender, receiver, (frequency, frequency_at), &rain, objective_share, target.availability.place);
    let states = states(resolved, sender, receiver, &lines, &rain);
    let objective = states.iter().position(|state| {
        state.lines.capacity.value.as_ref().is_ok_and(|given| given.value >= target.capacity.value())
    });
    let objective_state = objective.map(|number| &states[number]);
    let margins = margin::direction(&lines.level, objective_state, receiver, target);
    Direction { name, title, sender, receiver, lines, margins, states, objective }
}

fn lines_of(
    path: &PathLines,
    sender: &ResolvedEnd<'_>,
    receiver: &ResolvedEnd<'_>,
    (frequency, frequency_at): (&Given<Gigahertz>, Place),
    rain: &Result<RainFade, Missing>,
    share: Percent,
    share_at: Place,
) -> DirectionLines {
    let (end, sending, receiving) = (sender.end, sender.antenna, receiver.antenna);
    let (power_at, sending_at, receiving_at) = (at!(end.transmit_power), at!(sending.gain), at!(receiving.gain));
    let f = frequency.value;
    let slant = path.slant.need();
    let free_space_loss = slant.clone().map(|s| free_space::loss(f, s));
    let gas_attenuation = air(path).map(|air| gas::specific_attenuation(f, &air));
    let gas_loss = air(path).and_then(|air| Ok(gas::loss(f, &air, slant?)));
    let level = free_space_loss.clone().and_then(|free_space| {
        let gains = [sending.gain.value, receiving.gain.value];
        Ok(link::received_level(end.transmit_power.value, gains, &[free_space, gas_loss.clone()?]))
    });
    let level_from: Vec<Place> =
        [power_at, sending_at, receiving_at, frequency_at].into_iter().chain(path.slant.from.iter().copied()).collect();
    let path_from: Vec<Place> = [frequency_at].into_iter().chain(path.slant.from.iter().copied()).collect();
    let rain_from: Vec<Place> = path_from.iter().chain(&path.rain_rate.from).copied().collect();
    let objective_fade = rain.clone().and_then(|rain| {
        let outside =
            "the rain model holds from 0.001 % to 1 % of the year, so for availabilities from 99 % to 99.999 %";
        rain.attenuation(share).ok_or_else(|| Missing::new(outside, share_at))
    });
    DirectionLines {
        frequency: Line::known(frequency.clone(), &[frequency_at]),
        transmit_power: Line::known(end.transmit_power.clone(), &[power_at]),
        transmit_gain: Line::known(sending.gain.clone(), &[sending_at]),
        receive_gain: Line::known(receiving.gain.clone(), &[receiving_at]),
        free_space_loss: Line::new(free_space_loss, &path_from),
        gas_attenuation: Line::new(gas_attenuation, &path.mean_altitude.from),
        gas_loss: Line::new(gas_loss, &path_from),
        level: Line::new(level, &level_from),
        rain_fade: Line::new(rain.clone().map(|rain| rain.attenuation_0_01), &rain_from),
        objective_fade: Line::new(objective_fade, &rain_from),
    }
}

fn air(path: &PathLines) -> Result<Air, Missing> {
    Ok(Air {
        dry_pressure: path.dry_pressure.need()?,
        vapour_pressure: path.vapour_pressure.need()?,
        temperature: path.temperature.need()?,
    })
}

fn rain_fade(resolved: &ResolvedHop<'_>, path: &PathLines, f: Gigahertz, f_at: Place) -> Result<RainFade, Missing> {
    let polarisation = match resolved.hop.channel.polarisation {
        Polarisation::Horizontal => rain::Polarisation::Horizontal,
        Polarisation::Vertical => rain::Polarisation::Vertical,
    };
    let rate = path.rain_rate.value.as_ref().map_err(Clone::clone)?.value;
    let (elevation, slant) = (path.elevation_a.need()?, path.slant.need()?);
    RainFade::new(f, polarisation, elevation, slant, rate).map_err(|error| Missing::new(error, f_at))
}

fn states(
    resolved: &ResolvedHop<'_>,
    sender: &ResolvedEnd<'_>,
    receiver: &ResolvedEnd<'_>,
    lines: &DirectionLines,
    rain: &Result<RainFade, Missing>,
) -> Vec<State> {
    let (radio, sending) = (receiver.radio, sender.radio);
    let bandwidth = resolved.hop.channel.bandwidth.value;
    let usable = (0..radio.states.len()).filter(|i| radio.states[*i].bandwidth.value == bandwidth);
    usable
        .map(|i| {
            let state = &radio.states[i];
            let (capacity_at, threshold_at) = (at!(radio.states[i].capacity), at!(radio.states[i].threshold));
            let (back_off, back_off_at) = back_off(sending, state);
            let level = lines.level.need().map(|level| level - back_off);
            let margin = level.clone().map(|level| link::fade_margin(level, state.threshold.value));
            let outage = margin.clone().and_then(|margin| Ok(rain.clone()?.outage(margin)));
            let availability = outage.clone().map(|outage| link::availability(outage.at_most()));
            let mut from = lines.level.from.clone();
            from.extend(back_off_at);
            let level_from = from.clone();
            from.insert(0, threshold_at);
            State {
                title: state.title.to_string(),
                number: i,
                lines: StateLines {
                    capacity: Line::known(state.capacity.clone(), &[capacity_at]),
                    threshold: Line::known(state.threshold.clone(), &[threshold_at]),
                    level: Line::new(level, &level_from),
                    margin: Line::new(margin, &from),
                    outage: Line::new(outage, &from),
                    availability: Line::new(availability, &from),
                },
            }
        })
        .collect()
}

/// How much the sender lowers its power in the state of this name and bandwidth.
fn back_off(
    sending: &crate::network::Document<crate::spec::Radio>,
    state: &crate::spec::State,
) -> (Decibels, Option<Place>) {
    let same = |other: &crate::spec::State| other.title == state.title && other.bandwidth == state.bandwidth;
    match sending.states.iter().position(same) {
        Some(i) => match &sending.states[i].back_off {
            Some(given) => (given.value, Some(at!(sending.states[i].back_off))),
            None => (Decibels(0.0), None),
        },
        None => (Decibels(0.0), None),
    }
}
