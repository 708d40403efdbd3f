//! The levels of one direction in other states than that of full power: while a crew aligns, in service under automatic
//! power control, and in an up-fade.

use super::budget::{self, DirectionLines, Sending};
use super::key::SectionKey;
use super::line::{AS_WRITTEN, Section, lines};
use super::missing::Missing;
use super::path::PathLines;
use super::reason::Reason;
use super::saying::Saying;
use super::states::State;
use super::target::Target;
use super::title::Title;
use super::traced::{AsTraced as _, Traced, all, read, see, written};
use crate::at;
use crate::physics::multipath::SHORTEST;
use crate::spec::Way;
use crate::units::{Dbm, Decibels, Given};

lines! {
    /// What else than full power arrives.
    LevelLines {
        aligns_in: Saying, "", "modulation state while aligning",
            "as the radio that sends says, else its most robust at the bandwidth";
        align_level: Dbm, "", "received level while aligning", "P_r less the power back-off of that state, power control off";
        clear_state: Saying, "", "modulation state in clear sky", "the fastest state with a fade margin";
        held_level: Given<Dbm>, "", "level that power control holds", AS_WRITTEN;
        lowered: Decibels, "", "power lowered in clear sky",
            "level in that state less the one to hold, within the range of the control and of the power";
        service_level: Dbm, "", "received level in service, clear sky", "level in that state less what the power is lowered";
        held_in_hand: Decibels, "", "level held above what the capacity asked for needs",
            "fade margin at that capacity less what power control takes of it in clear sky";
        hysteresis: Decibels, "", "level above its threshold at which that state is taken again",
            "as written of the state that must hold; outages are counted to there";
        up_fade: Given<Decibels>, "", "up-fade of long hops", AS_WRITTEN;
        up_fade_level: Dbm, "", "highest level in an up-fade",
            "P_r and the stated tolerances, less what power control then lowers in clear sky, and the up-fade";
        up_fade_in_hand: Decibels, "", "level in an up-fade below overload", "overload of the receiver less that level";
    }
}

impl LevelLines {
    pub(super) fn listed(&self, way: Way) -> Section {
        self.section(SectionKey::Levels(way), Title::Levels { way }).planned()
    }
}

/// What goes into them.
pub(super) struct Levels<'l, 'n> {
    pub(super) sending: &'l Sending<'n>,
    pub(super) lines: &'l DirectionLines,
    pub(super) states: &'l [State],
    /// The state that must hold.
    pub(super) objective: &'l Traced<usize>,
    pub(super) path: &'l PathLines,
    pub(super) target: &'l Target,
}

impl Levels<'_, '_> {
    pub(super) fn compute(&self) -> LevelLines {
        let receiver = self.sending.receiver.radio;
        let aligning = aligning(self.sending);
        let clear = self.clear_state();
        let level = clear.and_then(|number| self.states[number].lines.level.traced().clone());
        let lowered = self.lowered(&level);
        let up_fade_level = self.up_fade_level();
        LevelLines {
            align_level: all((&self.lines.level, &aligning)).map(|(level, (_, back_off))| level - back_off).line(),
            aligns_in: aligning.map(|(title, _)| Saying::name(title)).line(),
            clear_state: clear.map(|number| Saying::name(&self.states[number].title)).line(),
            held_level: self.held().line(),
            service_level: all((&level, &or_nothing(&lowered))).map(|(level, lowered)| level - lowered).line(),
            lowered: lowered.line(),
            held_in_hand: self.held_in_hand().line(),
            hysteresis: self.hysteresis().line(),
            up_fade: self.up_fade().line(),
            up_fade_in_hand: all((&read!(receiver.overload), &up_fade_level)).map(|(most, level)| most - level).line(),
            up_fade_level: up_fade_level.line(),
        }
    }

    /// The fastest state with a margin: the one a radio is in while the sky is clear.
    fn clear_state(&self) -> Traced<usize> {
        let radio = self.sending.receiver.radio;
        let each = |line: fn(&State) -> Traced<f64>| Traced::each(&self.states.iter().map(line).collect::<Vec<_>>());
        let rates = each(|state| state.lines.capacity.map(|given| given.value.0));
        let margins = each(|state| state.lines.margin.map(|margin| margin.0));
        all((&see!(radio.states), &rates, &margins)).judge(|(_, rates, margins)| {
            let holding = (0..rates.len()).filter(|number| margins[*number] >= 0.0);
            let rank = |number: &usize| (rates[*number], margins[*number]);
            let fastest = holding.max_by(|one, other| {
                let ((rate, margin), (faster, wider)) = (rank(one), rank(other));
                rate.total_cmp(&faster).then(margin.total_cmp(&wider))
            });
            fastest.ok_or(Reason::NoStateHolds)
        })
    }

    /// The level to hold, as it is written at the end that sends.
    fn held(&self) -> Traced<Given<Dbm>> {
        let end = self.sending.sender.end;
        written!(end.held_level).stated(Reason::NoHeldLevel)
    }

    /// What the control takes off a level of full power. None where it holds no level, or cannot be told.
    fn lowered(&self, level: &Traced<Dbm>) -> Traced<Decibels> {
        let (end, radio) = (self.sending.sender.end, self.sending.sender.radio);
        let has =
            see!(radio.automatic_power_control).unless(|has| (**has == Some(false)).then_some(Reason::NoPowerControl));
        let range = read!(radio.power_control_range).stated(Reason::NoControlRange);
        // Nor does it send less than the radio can be set to.
        let room = all((&range, &read!(end.transmit_power), &read!(radio.transmit_power)));
        let room = room.map(|(range, power, [least, _])| range.0.min((power - least).0).max(0.0));
        all((&self.held(), &has, level, &room))
            .map(|(held, _, level, room)| Decibels((level - held.value).0.clamp(0.0, room)))
    }

    /// What is left to the state that must hold while the power is lowered.
    fn held_in_hand(&self) -> Traced<Decibels> {
        let level = self.objective.and_then(|number| self.states[number].lines.level.traced().clone());
        let margin = self.objective.and_then(|number| self.states[number].lines.margin.traced().clone());
        all((&margin, &self.lowered(&level))).map(|(margin, lowered)| margin - lowered)
    }

    /// How far above its threshold the state that must hold is taken again.
    fn hysteresis(&self) -> Traced<Decibels> {
        self.objective.and_then(|number| self.states[number].hysteresis.clone()).stated(Reason::NoHysteresis)
    }

    /// How far layers of air may lift the level; on short hops they do not.
    fn up_fade(&self) -> Traced<Given<Decibels>> {
        let hop = self.sending.resolved.hop;
        let Some(wanted) = &self.target.up_fade else {
            return Traced::missing(Missing::judged(Reason::NoUpFade, at!(hop.climate.up_fade)));
        };
        let long = self
            .path
            .distance
            .unless(|distance| (*distance <= SHORTEST).then_some(Reason::MultipathShort { distance: *distance }));
        all((&long, &wanted.written())).map(|(_, up_fade)| up_fade)
    }

    /// The level in an up-fade. That control follows the fade is not counted on.
    fn up_fade_level(&self) -> Traced<Dbm> {
        let off = budget::level_tolerance(self.sending.sender, self.sending.receiver);
        let most = all((&self.lines.level, &off)).map(|(level, off)| level + off.unwrap_or_default());
        all((&most, &or_nothing(&self.lowered(&most)), &self.up_fade()))
            .map(|(most, lowered, up_fade)| most - lowered + up_fade.value)
    }
}

/// What the power is lowered by, nothing where no control is known of.
fn or_nothing(lowered: &Traced<Decibels>) -> Traced<Decibels> {
    lowered.or(|| Traced::constant(Decibels(0.0)))
}

/// The state that the sender stands in while it is aligned, and what it takes off the power there.
fn aligning(sending: &Sending<'_>) -> Traced<(String, Decibels)> {
    let (hop, radio) = (sending.resolved.hop, sending.sender.radio);
    let known = all((&see!(radio.states), &see!(radio.aligns_in), &read!(hop.channel.bandwidth)));
    known.judge(|(states, named, bandwidth)| {
        let wide = || states.iter().filter(|state| state.bandwidth.value == bandwidth);
        let state = match named {
            // A radio may align in a state of another bandwidth.
            Some(title) => {
                let of_name = wide().find(|state| state.title == *title);
                of_name.or_else(|| states.iter().find(|state| state.title == *title))
            }
            None => wide().min_by(|one, other| one.threshold.value.0.total_cmp(&other.threshold.value.0)),
        };
        let state = state.ok_or(Reason::NoStateToAlignIn)?;
        let back_off = state.back_off.as_ref().map_or(Decibels(0.0), |given| given.value);
        Ok::<_, Reason>((state.title.to_string(), back_off))
    })
}
