//! What physics says of the thresholds a radio states: the noise below them and the bounds around them.

use super::line::{Line, Missing, Section, lines};
use super::reason::Reason;
use super::title::Title;
use crate::at;
use crate::network::{ResolvedEnd, ResolvedHop};
use crate::physics::receiver;
use crate::spec::EndName;
use crate::units::Dbm;

lines! {
    /// Where the threshold of one state can lie.
    ThresholdLines {
        noise: Dbm, "N", "noise of the receiver", "10 lg kTB + NF at 290 K";
        least: Dbm, "", "least threshold that is possible", "N + 10 lg(2^(0.9 b) − 1), Shannon 1948, nine tenths payload";
        greatest: Dbm, "", "greatest threshold that is usual",
            "N + what an error ratio of 1e-6 needs uncoded + 5 dB (common practice)";
    }
}

/// One state of the receiver of an end whose bits are stated.
#[derive(Debug)]
pub struct ThresholdSheet {
    /// As the radio names it.
    pub title: String,
    /// Its place among the states of the radio.
    pub number: usize,
    /// Its lines.
    pub lines: ThresholdLines,
}

impl ThresholdSheet {
    pub(super) fn section(&self, end: EndName, number: usize) -> Section {
        let key = format!("ends.{end}.thresholds[{number}]");
        let title = Title::Threshold { end, state: self.title.as_str().into() };
        Section::of(key.clone(), title, |rows| self.lines.rows(&key, rows))
    }
}

/// The states of an end's radio at the bandwidth of the hop that can be held against physics.
pub(super) fn compute(own: &ResolvedEnd<'_>, hop: &ResolvedHop<'_>) -> Vec<ThresholdSheet> {
    let (radio, hop) = (own.radio, hop.hop);
    let Some(noise_figure) = &radio.noise_figure else { return Vec::new() };
    let bandwidth = hop.channel.bandwidth.value;
    let usable = (0..radio.states.len()).filter(|i| radio.states[*i].bandwidth.value == bandwidth);
    usable
        .filter_map(|i| {
            let state = &radio.states[i];
            let bits = state.bits?;
            let (bits_at, states_width_at) = (at!(radio.states[i].bits), at!(radio.states[i].bandwidth));
            let noise_from = [at!(radio.noise_figure), at!(hop.channel.bandwidth), states_width_at];
            let from = [&noise_from[..], &[bits_at]].concat();
            let noise = receiver::noise(bandwidth, noise_figure.value);
            let greatest = receiver::greatest_usual_threshold(noise, bits)
                .ok_or_else(|| Missing::judged(Reason::NoUncodedFigure, bits_at));
            let lines = ThresholdLines {
                noise: Line::known(noise, &noise_from),
                least: Line::known(receiver::least_threshold(noise, bits), &from),
                greatest: Line::new(greatest, &from),
            };
            Some(ThresholdSheet { title: state.title.to_string(), number: i, lines })
        })
        .collect()
}
