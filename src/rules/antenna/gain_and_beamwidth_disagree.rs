//! Gain and beamwidth of an antenna do not belong together.

use crate::rules::prelude::*;
use crate::units::Decibels;

rule! {
    /// Gain and beamwidth of an antenna do not belong together.
    ///
    /// A narrow beam and a high gain are one thing: from either the other follows to a decibel or two. Further apart, one of
    /// the two was copied from another row of the data sheet, or the beamwidth is that from the axis to one edge, half of
    /// what is required here. Gain, level and the care an alignment needs all hang on it. From 6 dB on the two are not of one
    /// antenna, and no level can be trusted: an error.
    ///
    /// Source: 44.5 − 20 lg φ for a round beam, ITU-R F.699-8 (clause from memory). That 3 dB are taken is common practice,
    /// no source.
    severity: Error,
    waivable: DATA,
    check: End(check),
}

/// Further apart they disagree.
const AGREE: Decibels = Decibels(3.0);

/// From here on they are of two antennas. Common practice, no source.
const OF_TWO: Decibels = Decibels(6.0);

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let (Ok(gain), dish) = (sheet.dish.gain.value(), sheet.resolved.antenna) else { return };
    let Some(of_beam) = sheet.dish.antenna.gain_of_beam.get() else { return };
    let off = gain.value - of_beam;
    if off.0.abs() <= AGREE.0 {
        return;
    }
    let (has, fits, by) = apart(gain.value, of_beam);
    let way = if off.0 < 0.0 { "less" } else { "more" };
    let message = format!("antenna `{}`: the gain of {has} is {by} {way} than the {fits} of such a beam", dish.id);
    let finding = found.report(&RULE, at!(dish.gain), message, "does not match this beam");
    finding.measured(Decibels(off.0.abs()), Worse::Higher);
    if off.0.abs() < OF_TWO.0 {
        finding.at_most(Severity::Warning);
    }
    finding.because(at!(dish.beamwidth), "does not match this gain");
    let beam = line(&sheet.dish.antenna.beam_of_gain);
    finding.help(format!(
        "check both on the data sheet: a gain of {gain} corresponds to a beam of about {beam}, edge to edge"
    ));
}
