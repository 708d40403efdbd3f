//! One direction of a hop: its level budget, its modulation states and what they leave in hand.

use std::sync::Arc;

use super::budget::{self, DirectionLines, Gas, Sending};
use super::crossed::{CrossedLines, Crossing};
use super::fading::Fading;
use super::heard::{HeardLines, Spoilt};
use super::hearing::Hearing;
use super::key::SectionKey;
use super::levels::{LevelLines, Levels};
use super::line::{Line, Section};
use super::margin::{self, MarginLines};
use super::missing::Missing;
use super::outage::Causes;
use super::path::PathLines;
use super::states::{self, State, Tuned};
use super::target::Target;
use super::terminal::Terminals;
use super::title::Title;
use super::traced::{AsTraced as _, Traced, all, read};
use crate::air::Heard;
use crate::network::{ResolvedEnd, ResolvedHop};
use crate::spec::{Both, Way};
use crate::units::{Decibels, MegabitsPerSecond, Megahertz};

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
    /// What is heard from others.
    pub heard: HeardLines,
    /// What is left to its limits.
    pub margins: MarginLines,
    /// What arrives while aligning, in service and in an up-fade.
    pub levels: LevelLines,
    /// What the other of two carriers does to the state that must hold, where there are two.
    pub crossed: Option<CrossedLines>,
    /// The receiver's states at the hop's bandwidth, from the most robust to the fastest.
    pub states: Vec<State>,
    /// The most robust state that reaches the capacity asked for, by its number in `states`.
    objective: Traced<usize>,
    /// What fades it.
    fading: Fading,
    /// How far its level and its thresholds may be off together, as far as anybody states it.
    tolerance: Traced<Option<Decibels>>,
}

impl Direction<'_> {
    /// The state that must hold, by its number in `states`.
    #[must_use]
    pub fn objective(&self) -> Option<usize> {
        self.objective.get()
    }

    /// The state that must hold.
    #[must_use]
    pub fn objective_state(&self) -> Option<&State> {
        self.objective().map(|number| &self.states[number])
    }

    /// What its availability may be called, by what is counted in it.
    #[must_use]
    pub fn availability_words(&self) -> &'static str {
        self.objective_state().and_then(|state| state.lines.availability.own_words()).unwrap_or("availability")
    }

    /// What the state carries that must hold.
    pub(super) fn objective_capacity(&self) -> Traced<MegabitsPerSecond> {
        self.objective.and_then(|number| self.states[number].lines.capacity.map(|given| given.value))
    }

    /// What takes the state down that must hold.
    pub(super) fn objective_causes(&self) -> Causes {
        let causes = |number: usize| &self.states[number].causes;
        Causes {
            rain: self.objective.and_then(|number| causes(number).rain.clone()),
            multipath: self.objective.and_then(|number| causes(number).multipath.clone()),
            multipath_worst_month: self.objective.and_then(|number| causes(number).multipath_worst_month.clone()),
            crossing: self.objective().and_then(|number| causes(number).crossing.clone()),
        }
    }

    /// The same where all that has a tolerance is as bad as it may be, or as good. None where nothing has one.
    pub(super) fn causes_within(&self, luck: Luck) -> Option<Causes> {
        let stated = self.tolerance.get().flatten();
        if stated.is_none() && self.fading.rain_within.is_none() {
            return None;
        }
        let off = self.tolerance.map(|tolerance| {
            let off = tolerance.unwrap_or_default();
            if luck == Luck::Best { off } else { Decibels(0.0) - off }
        });
        let moved = |line: fn(&State) -> &Line<Decibels>| {
            let margin = self.objective.and_then(|number| line(&self.states[number]).traced().clone());
            let more = self.objective.and_then(|number| self.states[number].hysteresis.clone());
            all((&margin, &off, &more)).map(|(margin, off, more)| margin + off - more.unwrap_or_default())
        };
        let (margin, rain_margin) = (moved(|state| &state.lines.margin), moved(|state| &state.lines.rain_margin));
        let rain = match (&self.fading.rain_within, luck) {
            (Some([lower, _]), Luck::Best) => lower,
            (Some([_, higher]), Luck::Worst) => higher,
            (None, _) => &self.fading.rain,
        };
        let crossing = self.objective_state().and_then(|state| state.causes.crossing.clone());
        Some(Causes::of(&self.fading, rain, &margin, &rain_margin, crossing))
    }

    pub(super) fn missing(&self, each: &mut dyn FnMut(&'static str, &Missing)) {
        self.lines.missing(each);
        self.heard.missing(each);
        self.margins.missing(each);
        self.levels.missing(each);
        self.crossed.iter().for_each(|crossed| crossed.missing(each));
        self.states.iter().for_each(|state| state.lines.missing(each));
    }

    pub(super) fn sections(&self, sections: &mut Vec<Section>) {
        let way = self.way;
        sections.push(self.lines.section(SectionKey::Budget(way), Title::LevelBudget { way }));
        sections.push(self.heard.listed(way));
        sections.push(self.margins.section(SectionKey::Margins(way), Title::Margins { way }));
        sections.push(self.levels.listed(way));
        sections.extend(self.crossed.iter().map(|crossed| crossed.listed(way)));
        for (number, state) in self.states.iter().enumerate() {
            let title = Title::State { state: state.title.as_str().into(), way };
            sections.push(state.lines.section(SectionKey::State(way, number), title));
        }
    }
}

/// To which side everything with a tolerance lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Luck {
    /// All to the good.
    Best,
    /// All to the bad.
    Worst,
}

/// What is changed to see whether a hop would pass; by default nothing.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Trial {
    /// More gain or power than is written.
    pub(super) more: Decibels,
    /// Another bandwidth than is written.
    pub(super) bandwidth: Option<Megahertz>,
}

/// The budgets of both ways, through the same air.
pub(super) fn both<'n>(resolved: &'n ResolvedHop<'n>, means: &Means<'_>) -> Both<Direction<'n>> {
    let gas = budget::gas(means.path);
    Both::ways(|way| compute(resolved, means, &gas, way, Trial::default()))
}

/// What both directions are computed by, beside the hop itself.
#[derive(Clone, Copy)]
pub(super) struct Means<'p> {
    /// The path.
    pub(super) path: &'p PathLines,
    /// What the hop must reach.
    pub(super) target: &'p Target,
    /// How long its terminals are down.
    pub(super) terminals: &'p Terminals,
    /// Who hears whom.
    pub(super) hearing: &'p Hearing<'p>,
    /// What each receiver hears.
    pub(super) heard: &'p Both<Traced<Arc<Heard>>>,
}

/// One of them with something changed.
pub(super) fn with<'n>(resolved: &'n ResolvedHop<'n>, means: &Means<'_>, way: Way, trial: Trial) -> Direction<'n> {
    compute(resolved, means, &budget::gas(means.path), way, trial)
}

fn compute<'n>(resolved: &'n ResolvedHop<'n>, means: &Means<'_>, gas: &Gas, way: Way, trial: Trial) -> Direction<'n> {
    let Means { path, target, terminals, hearing, heard } = *means;
    let sending = Sending::of(resolved, way, trial.more);
    let (sender, receiver) = (sending.sender, sending.receiver);
    let fading = Fading::of(&sending, path, target);
    let lines = budget::compute(&sending, path, gas, &fading.rain, target);
    let tuned = Tuned {
        hop: resolved.hop,
        sender: sender.radio,
        radio: receiver.radio,
        bandwidth: trial.bandwidth,
        sending: &sending,
    };
    let objective = states::most_robust(&tuned, target);
    let in_radio = states::in_radio(&tuned, &objective);
    let spoilt = Spoilt { tuned: &tuned, lines: &lines, objective: &in_radio, heard: &heard[way], target, hearing };
    let heard = spoilt.lines(receiver);
    let states = states::compute(&tuned, &lines, &heard.degradation, &fading, path, terminals);
    let margins = margin::direction(receiver, &lines, &states, &objective, target);
    let levels = Levels { sending: &sending, lines: &lines, states: &states, objective: &objective, path, target };
    let levels = levels.compute();
    let tolerance = tolerance(sender, receiver);
    let must_hold = objective.get().and_then(|number: usize| states.get(number));
    let crossed = must_hold.and_then(|state| state.causes.crossing.as_ref()).map(Crossing::lines);
    Direction { way, sender, receiver, lines, heard, margins, levels, crossed, states, objective, fading, tolerance }
}

/// All that is stated of how far power, gains and thresholds may be off, at its worst together.
fn tolerance(sender: &ResolvedEnd<'_>, receiver: &ResolvedEnd<'_>) -> Traced<Option<Decibels>> {
    let radio = receiver.radio;
    budget::stated_sum(&[budget::level_tolerance(sender, receiver), read!(radio.threshold_tolerance)])
}
