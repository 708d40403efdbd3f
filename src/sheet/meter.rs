//! What the meter reads while a crew aligns: the level to come to, the window around it, and the voltages they are.

use super::budget::Direction;
use super::line::{Line, Missing};
use super::reason::Reason;
use super::saying::Saying;
use super::target::Target;
use crate::at;
use crate::network::ResolvedEnd;
use crate::physics::readout::Scale;
use crate::physics::uncertainty;
use crate::spec::ReadoutPoint;
use crate::units::{Dbm, Decibels, MeterVolts, Quantity as _};

/// Levels and readings at one end.
pub(super) struct Meter {
    pub(super) least: Line<Dbm>,
    pub(super) most: Line<Dbm>,
    pub(super) target_voltage: Line<MeterVolts>,
    pub(super) voltage_at_least: Line<MeterVolts>,
    pub(super) voltage_at_most: Line<MeterVolts>,
    pub(super) sense: Line<Saying>,
}

pub(super) fn meter(own: &ResolvedEnd<'_>, incoming: &Direction<'_>, target: &Target) -> Meter {
    let radio = own.radio;
    let (scale, scale_at) = (scale(own), at!(radio.readout));
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
    let sense = scale.clone().map(|scale| if scale.rises() { Saying::Higher } else { Saying::Lower });
    Meter {
        target_voltage: volts(&level.value),
        voltage_at_least: volts(&least),
        voltage_at_most: volts(&most),
        sense: Line::new(sense, &[scale_at]),
        least: Line::new(least, &from),
        most: Line::new(most, &from),
    }
}

/// The read-out scale of an end's radio.
pub(super) fn scale(own: &ResolvedEnd<'_>) -> Result<Scale, Missing> {
    let radio = own.radio;
    let readout = &radio.readout;
    let point = |point: &ReadoutPoint| (point.voltage.value, point.level.value);
    Scale::through(point(&readout.low), point(&readout.high)).map_err(|error| Missing::new(error, at!(radio.readout)))
}

/// Coverage factor of the uncertainty that is shown: some 95 % of cases.
const COVERAGE: f64 = 2.0;

/// How far the level that is read may honestly lie from the predicted one, by the tolerances somebody stated.
pub(super) fn uncertainty(own: &ResolvedEnd<'_>, far: &ResolvedEnd<'_>) -> Line<Decibels> {
    let (radio, sender, antenna, far_antenna) = (own.radio, far.radio, own.antenna, far.antenna);
    let tolerances = [
        (&sender.transmit_tolerance, at!(sender.transmit_tolerance)),
        (&far_antenna.gain_tolerance, at!(far_antenna.gain_tolerance)),
        (&antenna.gain_tolerance, at!(antenna.gain_tolerance)),
        (&radio.readout.tolerance, at!(radio.readout.tolerance)),
    ];
    let stated = tolerances.iter().filter_map(|(given, _)| given.as_ref());
    let standard: Vec<Decibels> = stated.map(|given| uncertainty::from_limits(given.value)).collect();
    let value = if standard.is_empty() {
        Err(Missing::judged(Reason::NoTolerance, tolerances[0].1))
    } else {
        Ok(uncertainty::expanded(uncertainty::combined(&standard), COVERAGE))
    };
    Line::new(value, &tolerances.map(|(_, place)| place))
}

/// The power of the far end, nearest to the one that is set, with which all of the window reads inside the range of the
/// meter. None where it reads so already, or no power of the far radio does it.
pub(super) fn power_that_reads(
    own: &ResolvedEnd<'_>,
    far: &ResolvedEnd<'_>,
    incoming: &Direction<'_>,
    target: &Target,
) -> Option<Dbm> {
    let (scale, range) = (scale(own).ok()?, &own.radio.readout.range);
    let (level, window) = (incoming.lines.level.get()?, target.acceptance_window.value());
    let ends = [range.min.value, range.max.value].map(|volts| scale.level(volts));
    let [low, high] = if ends[0] < ends[1] { ends } else { [ends[1], ends[0]] };
    let (below, above) = (low - (level - window), (level + window) - high);
    if below.0 <= 0.0 && above.0 <= 0.0 {
        return None;
    }
    let now = far.end.transmit_power.value;
    let power = if below.0 > 0.0 { (now + below).rounded_up() } else { (now - above).rounded_down() };
    let moved = level + (power - now);
    let reads = low <= moved - window && moved + window <= high;
    (reads && far.radio.transmit_power.holds(power)).then_some(power)
}
