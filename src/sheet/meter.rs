//! What a crew aligns by: the level to come to, the window around it, and the voltages they are where it has a meter.

use super::direction::Direction;
use super::line::Line;
use super::reason::Reason;
use super::saying::Saying;
use super::target::Target;
use super::traced::{AsTraced as _, Traced, all, read, see};
use crate::network::ResolvedEnd;
use crate::physics::readout::Scale;
use crate::physics::uncertainty;
use crate::spec::{AlignedBy, ReadoutPoint};
use crate::units::{Dbm, Decibels, MeterVolts, Quantity as _};

/// Levels and readings at one end.
pub(super) struct Meter {
    pub(super) by: Line<Saying>,
    pub(super) least: Line<Dbm>,
    pub(super) most: Line<Dbm>,
    pub(super) target_voltage: Line<MeterVolts>,
    pub(super) voltage_at_least: Line<MeterVolts>,
    pub(super) voltage_at_most: Line<MeterVolts>,
    pub(super) sense: Line<Saying>,
}

/// The strong edge of a window: never past the level that overloads the receiver.
pub(super) fn below_overload(edge: Dbm, overload: Dbm) -> Dbm {
    if edge > overload { overload } else { edge }
}

pub(super) fn meter(own: &ResolvedEnd<'_>, incoming: &Direction<'_>, target: &Target) -> Meter {
    let scale = scale(own);
    let level = incoming.levels.align_level.traced();
    let window = &target.acceptance_window;
    let least = all((level, window)).map(|(level, window)| level - window);
    let radio = own.radio;
    // A receiver that is overloaded is nothing to accept.
    let most = all((level, window, &read!(radio.overload)))
        .map(|(level, window, overload)| below_overload(level + window, overload));
    let volts =
        |level: &Traced<Dbm>| all((level, &scale)).map(|(level, scale)| MeterVolts(scale.volts(level).0)).line();
    let sense = scale.map(|scale| if scale.rises() { Saying::Higher } else { Saying::Lower });
    Meter {
        by: aligned_by(own).line(),
        target_voltage: volts(level),
        voltage_at_least: volts(&least),
        voltage_at_most: volts(&most),
        sense: sense.line(),
        least: least.line(),
        most: most.line(),
    }
}

/// The read-out scale of an end's radio.
pub(super) fn scale(own: &ResolvedEnd<'_>) -> Traced<Scale> {
    let radio = own.radio;
    let point = |point: &ReadoutPoint| (point.voltage.value, point.level.value);
    let readout = see!(radio.readout).map(Option::as_ref).stated(Reason::NoReadout);
    readout.check(|readout| Scale::through(point(&readout.low), point(&readout.high)))
}

/// What a crew aligns by, in words.
fn aligned_by(own: &ResolvedEnd<'_>) -> Traced<Saying> {
    let radio = own.radio;
    let has = all((&see!(radio.readout), &see!(radio.shown_level), &see!(radio.indication)));
    let words = has.map(|_| {
        radio.aligned_by().map(|by| match by {
            AlignedBy::Voltage(readout) => Saying::VoltageAt { port: readout.port.to_string().into() },
            AlignedBy::Level(shown) => Saying::LevelAt { place: shown.at.to_string().into() },
            AlignedBy::Indication(indication) => Saying::name(&indication.title),
        })
    });
    words.stated(Reason::NothingToAlignBy)
}

/// How far what is read may be off: that of the voltage, else that of the level shown.
fn reading_tolerance(own: &ResolvedEnd<'_>) -> Traced<Option<Decibels>> {
    let radio = own.radio;
    all((&see!(radio.readout), &see!(radio.shown_level))).map(|(readout, shown)| {
        let given = match (readout, shown) {
            (Some(readout), _) => readout.tolerance.as_ref(),
            (None, Some(shown)) => shown.tolerance.as_ref(),
            (None, None) => None,
        };
        given.map(|given| given.value)
    })
}

/// Coverage factor of the uncertainty that is shown: some 95 % of cases.
const COVERAGE: f64 = 2.0;

/// How far the level that is read may honestly lie from the predicted one, by the tolerances somebody stated.
pub(super) fn uncertainty(own: &ResolvedEnd<'_>, far: &ResolvedEnd<'_>) -> Traced<Decibels> {
    let (sender, antenna, far_antenna) = (far.radio, own.antenna, far.antenna);
    let tolerances = [
        read!(sender.transmit_tolerance),
        read!(far_antenna.gain_tolerance),
        read!(antenna.gain_tolerance),
        reading_tolerance(own),
    ];
    Traced::each(&tolerances).judge(|tolerances| {
        let standard: Vec<Decibels> = tolerances.into_iter().flatten().map(uncertainty::from_limits).collect();
        let stated = (!standard.is_empty()).then(|| uncertainty::combined(&standard)).ok_or(Reason::NoTolerance)?;
        Ok::<_, Reason>(uncertainty::expanded(stated, COVERAGE))
    })
}

/// The power of the far end, nearest to the one that is set, with which all of the window reads inside the range of the
/// meter. None where it reads so already, or no power of the far radio does it.
pub(super) fn power_that_reads(
    own: &ResolvedEnd<'_>,
    far: &ResolvedEnd<'_>,
    incoming: &Direction<'_>,
    target: &Target,
) -> Option<Dbm> {
    let (scale, range) = (scale(own).get()?, &own.radio.readout.as_ref()?.range);
    let (level, window) = (incoming.levels.align_level.get()?, target.acceptance_window.value());
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
