//! What physics says of the thresholds a radio states: the noise below them and the bounds around them.

use super::key::SectionKey;
use super::line::{Section, lines};
use super::method::cited;
use super::missing::Missing;
use super::reason::Reason;
use super::title::Title;
use super::traced::{Traced, all, read};
use crate::at;
use crate::network::{Document, ResolvedEnd, ResolvedHop};
use crate::physics::receiver;
use crate::spec::{EndName, Radio};
use crate::units::Dbm;

lines! {
    /// Where the threshold of one state can lie.
    ThresholdLines {
        noise: Dbm, "N", "noise of the receiver", "10 lg kTB + NF at 290 K";
        least: Dbm, "", "least threshold that is possible", cited("N + 10 lg(2^(0.9 b) − 1), Shannon 1948, nine tenths payload");
        greatest: Dbm, "", "greatest threshold that is usual",
            cited("N + what an error ratio of 1e-6 needs uncoded + 5 dB (common practice)");
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
        let title = Title::Threshold { end, state: self.title.as_str().into() };
        self.lines.section(SectionKey::Threshold(end, number), title)
    }
}

/// The states of an end's radio at the bandwidth of the hop that can be held against physics.
pub(super) fn compute(own: &ResolvedEnd<'_>, resolved: &ResolvedHop<'_>) -> Vec<ThresholdSheet> {
    (0..own.radio.states.len()).filter_map(|i| sheet(own.radio, i, resolved)).collect()
}

/// One state; none if it is of another bandwidth, or nobody said how noisy the receiver is or how many bits it carries.
fn sheet(radio: &Document<Radio>, i: usize, resolved: &ResolvedHop<'_>) -> Option<ThresholdSheet> {
    let hop = resolved.hop;
    let (figure, bits) = (radio.noise_figure.as_ref()?, radio.states[i].bits?);
    let bits_at = at!(radio.states[i].bits);
    let figure = Traced::field(&radio, at!(radio.noise_figure), figure.value);
    let bits = Traced::field(&radio, bits_at, bits);
    let bandwidth = all((&read!(hop.channel.bandwidth), &read!(radio.states[i].bandwidth)));
    bandwidth.get().filter(|(wanted, own)| wanted == own)?;
    let noise = all((&figure, &bandwidth)).map(|(figure, (bandwidth, _))| receiver::noise(bandwidth, figure));
    let greatest = all((&noise, &bits)).try_map(|(noise, bits)| {
        let usual = receiver::greatest_usual_threshold(noise, bits);
        usual.ok_or_else(|| Missing::judged(Reason::NoUncodedFigure, bits_at))
    });
    let lines = ThresholdLines {
        least: all((&noise, &bits)).map(|(noise, bits)| receiver::least_threshold(noise, bits)).line(),
        noise: noise.line(),
        greatest: greatest.line(),
    };
    Some(ThresholdSheet { title: radio.states[i].title.to_string(), number: i, lines })
}
