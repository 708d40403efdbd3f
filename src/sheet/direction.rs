//! One direction of a hop: its level budget, its modulation states and what they leave in hand.

use super::budget::{self, DirectionLines, Gas, Sending};
use super::key::SectionKey;
use super::levels::{LevelLines, Levels};
use super::line::Section;
use super::margin::{self, MarginLines};
use super::missing::Missing;
use super::path::PathLines;
use super::states::{self, State, Tuned};
use super::target::Target;
use super::title::Title;
use super::traced::{AsTraced as _, Traced};
use crate::network::{ResolvedEnd, ResolvedHop};
use crate::physics::rain_outage::Outage;
use crate::spec::{Both, Way};
use crate::units::{Decibels, Megahertz};

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
    /// What arrives while aligning, in service and in an up-fade.
    pub levels: LevelLines,
    /// The receiver's states at the hop's bandwidth, from the most robust to the fastest.
    pub states: Vec<State>,
    /// The most robust state that reaches the capacity asked for, by its number in `states`.
    objective: Traced<usize>,
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

    /// Outage of the state that must hold.
    pub(super) fn objective_outage(&self) -> Traced<Outage> {
        self.objective.and_then(|number| self.states[number].lines.outage.traced().clone())
    }

    pub(super) fn missing(&self, each: &mut dyn FnMut(&'static str, &Missing)) {
        self.lines.missing(each);
        self.margins.missing(each);
        self.levels.missing(each);
        self.states.iter().for_each(|state| state.lines.missing(each));
    }

    pub(super) fn sections(&self, sections: &mut Vec<Section>) {
        let way = self.way;
        sections.push(self.lines.section(SectionKey::Budget(way), Title::LevelBudget { way }));
        sections.push(self.margins.section(SectionKey::Margins(way), Title::Margins { way }));
        sections.push(self.levels.listed(way));
        for (number, state) in self.states.iter().enumerate() {
            let title = Title::State { state: state.title.as_str().into(), way };
            sections.push(state.lines.section(SectionKey::State(way, number), title));
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

/// The budgets of both ways, through the same air.
pub(super) fn both<'n>(resolved: &'n ResolvedHop<'n>, path: &PathLines, target: &Target) -> Both<Direction<'n>> {
    let gas = budget::gas(path);
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
    compute(resolved, path, &budget::gas(path), target, way, trial)
}

fn compute<'n>(
    resolved: &'n ResolvedHop<'n>,
    path: &PathLines,
    gas: &Gas,
    target: &Target,
    way: Way,
    trial: Trial,
) -> Direction<'n> {
    let sending = Sending::of(resolved, way, trial.more);
    let (sender, receiver) = (sending.sender, sending.receiver);
    let rain = budget::rain_fade(&sending, path);
    let lines = budget::compute(&sending, path, gas, &rain, target);
    let tuned = Tuned { hop: resolved.hop, sender: sender.radio, radio: receiver.radio, bandwidth: trial.bandwidth };
    let states = states::compute(&tuned, &lines, &rain);
    let objective = states::most_robust(&tuned, &states, target);
    let margins = margin::direction(resolved, receiver, &lines, &states, &objective, path, target);
    let levels = Levels { sending: &sending, lines: &lines, states: &states, objective: &objective, path, target };
    let levels = levels.compute();
    Direction { way, sender, receiver, lines, margins, levels, states, objective }
}
