//! The antennas stand in each other's near field.

use crate::network::Document;
use crate::place::Place;
use crate::rules::prelude::*;
use crate::spec::Antenna;
use crate::units::Decibels;

rule! {
    /// The antennas stand in each other's near field.
    ///
    /// The gain on a data sheet is that of plane waves. Two large dishes a few dozen metres apart get less of each other: the
    /// budget counts what is lost, and this speaks where it is more than half a decibel. The beam and the side lobes of the data
    /// sheet do not hold so near either: the peak is broad and may be dented, the level moves with the distance, and an antenna
    /// that is aimed by its lobes is aimed by others than those printed. The loss is that of round apertures face to face, lit
    /// 10 dB less at the rim than in the middle.
    ///
    /// Take smaller antennas: they lose less of less gain, and short hops rarely need more. Or lower the power by less than the
    /// gains suggest.
    ///
    /// Source: scalar Fresnel diffraction between two round apertures; tapered apertures on the axis are treated by Rabello and
    /// Nobili, Radio Science 8(7), 1973 (abstract seen); the taper and the half decibel are common practice, no source.
    severity: Warning,
    waivable: SERVICE,
    check: Hop(check),
}

/// What is not worth speaking of. Common practice, no source.
const SMALL: Decibels = Decibels(0.5);

fn check(hop: &HopSheet<'_>, found: &mut Findings) {
    let losses =
        hop.directions.iter().filter_map(|direction| Some((direction, direction.lines.near_field_loss.get()?)));
    let Some((direction, loss)) = losses.max_by(|one, other| one.1.0.total_cmp(&other.1.0)) else { return };
    if loss <= SMALL {
        return;
    }
    let Some(distance) = hop.path.slant.get() else { return };
    let (has, allowed, _) = apart(loss, SMALL);
    let message = format!(
        "{}: the antennas are only {distance} apart and lose {has} of their gains, over {allowed}; pointing and pattern \
         behave otherwise there",
        direction.way
    );
    let spec = hop.resolved.hop;
    let Both { a, b } = hop.resolved.ends.each_ref().map(|end| end.antenna);
    let finding = found.report(&RULE, at!(spec.id), message, "in each other's near field");
    finding.measured(loss, Worse::Higher).of_whole_hop();
    finding.because(size_at(a), "the antenna of end a");
    finding.because(size_at(b), "that of end b");
    finding.help("take smaller antennas, or waive it and aim for the level of the sheet, not by side lobes");
}

/// Where the size of an antenna is written.
fn size_at(antenna: &Document<Antenna>) -> Place {
    if antenna.diameter.is_some() { at!(antenna.diameter) } else { at!(antenna.gain) }
}
