//! The gain of an antenna at the frequency it is used at.

use super::line::{AS_WRITTEN, Line};
use super::method::{Method, cited};
use super::traced::{Traced, all, read, see, written};
use crate::network::Document;
use crate::physics::antenna_gain;
use crate::spec::Antenna;
use crate::units::{Dbi, Gigahertz, Given, Quantity as _};

const TABLE: Method = cited("gain_by_frequency of the antenna, straight between its points, 20 lg f beyond them");
const SCALED: Method = cited("gain of the antenna at gain_at and 20 lg(f / gain_at), aperture of one efficiency");

/// How the gain of an antenna is stated.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Stated {
    /// One figure, that counts all over the band.
    Once,
    /// One figure with its frequency.
    At,
    /// By frequency.
    Table,
}

fn stated(antenna: &Antenna) -> Stated {
    match (antenna.gain_by_frequency.is_empty(), &antenna.gain_at) {
        (false, _) => Stated::Table,
        (true, Some(_)) => Stated::At,
        (true, None) => Stated::Once,
    }
}

/// Whether the two frequencies of a hop meet the gains they have: else one figure counts at both.
pub(super) fn goes_by_frequency(antenna: &Antenna) -> bool {
    stated(antenna) != Stated::Once
}

/// The gain at a frequency.
pub(super) fn at(antenna: &Document<Antenna>, frequency: &Traced<Gigahertz>) -> Traced<Dbi> {
    let table = see!(antenna.gain_by_frequency);
    let by_table = table.map(|points| {
        points.iter().map(|point| (point.frequency.value, point.gain.value)).collect::<Vec<(Gigahertz, Dbi)>>()
    });
    by_table.and_then(|points| {
        if points.is_empty() {
            return by_figure(antenna, frequency);
        }
        let gain = all((&read!(antenna.gain), frequency));
        gain.map(|(gain, frequency)| antenna_gain::by_frequency(&points, frequency).unwrap_or(gain))
    })
}

fn by_figure(antenna: &Document<Antenna>, frequency: &Traced<Gigahertz>) -> Traced<Dbi> {
    let gain = read!(antenna.gain);
    read!(antenna.gain_at).and_then(|at| match at {
        None => gain,
        Some(at) => all((&gain, frequency)).map(|(gain, frequency)| antenna_gain::scaled(gain, at, frequency)),
    })
}

/// The same as a line: as it is written where it is, else as it follows.
pub(super) fn line(antenna: &Document<Antenna>, frequency: &Traced<Gigahertz>) -> Line<Given<Dbi>> {
    let gain = at(antenna, frequency);
    match stated(antenna) {
        Stated::Once => written!(antenna.gain).decided_by(&gain).by(AS_WRITTEN),
        Stated::At => gain.map(|gain| Given::assumed(gain.tidy())).by(SCALED),
        Stated::Table => gain.map(|gain| Given::assumed(gain.tidy())).by(TABLE),
    }
}
