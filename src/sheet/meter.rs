//! What the meter reads while a crew aligns: the level to come to, the window around it, and the voltages they are.

use super::budget::Direction;
use super::line::{Line, Missing, Words};
use super::target::Target;
use crate::at;
use crate::network::ResolvedEnd;
use crate::physics::readout::Scale;
use crate::spec::ReadoutPoint;
use crate::units::{Dbm, MeterVolts};

/// Levels and readings at one end.
pub(super) struct Meter {
    pub(super) least: Line<Dbm>,
    pub(super) most: Line<Dbm>,
    pub(super) target_voltage: Line<MeterVolts>,
    pub(super) voltage_at_least: Line<MeterVolts>,
    pub(super) voltage_at_most: Line<MeterVolts>,
    pub(super) sense: Line<Words>,
}

pub(super) fn meter(own: &ResolvedEnd<'_>, incoming: &Direction<'_>, target: &Target) -> Meter {
    let radio = own.radio;
    let readout = &radio.readout;
    let point = |point: &ReadoutPoint| (point.voltage.value, point.level.value);
    let scale_at = at!(radio.readout);
    let scale =
        Scale::through(point(&readout.low), point(&readout.high)).map_err(|error| Missing::new(error, scale_at));
    let level = &incoming.lines.level;
    let window = target.acceptance_window.value();
    let least = level.need().map(|level| level - window);
    let most = level.need().map(|level| level + window);
    let mut from = level.from.clone();
    from.push(target.acceptance_window.place);
    let mut volts_from = from.clone();
    volts_from.push(scale_at);
    let volts = |level: &Result<Dbm, Missing>| {
        let value = level.clone().and_then(|level| Ok(MeterVolts(scale.clone()?.volts(level).0)));
        Line::new(value, &volts_from)
    };
    let sense = scale.clone().map(|scale| Words(if scale.rises() { "higher" } else { "lower" }.into()));
    Meter {
        target_voltage: volts(&level.value),
        voltage_at_least: volts(&least),
        voltage_at_most: volts(&most),
        sense: Line::new(sense, &[scale_at]),
        least: Line::new(least, &from),
        most: Line::new(most, &from),
    }
}
