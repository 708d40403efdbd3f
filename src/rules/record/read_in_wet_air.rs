//! The level was read in rain, snow or fog.

use crate::rules::prelude::*;

rule! {
    /// The level was read in rain, snow or fog.
    ///
    /// Water on the covers and in the air makes a good aim look bad, and nobody knows how much of it there was along the
    /// path. Where the rain rate or the water in the fog is written, it is counted in the prediction of that day; where it
    /// is not, the level is not judged at all.
    ///
    /// Source: common practice, no source.
    severity: Warning,
    waivable: EVIDENCE,
    check: Record(check),
}

fn check(_: &HopSheet<'_>, sheet: &RecordSheet<'_>, found: &mut Findings) {
    let record = sheet.document;
    let weather = &record.weather;
    let raining = weather.rain_rate.as_ref().filter(|rate| rate.value.0 > 0.0);
    let (place, what) = match (weather.sky, raining) {
        (None | Some(Sky::Dry), None) => return,
        (None | Some(Sky::Dry), Some(rate)) => (at!(record.weather.rain_rate), format!("rain of {rate}")),
        (Some(sky), _) => (at!(record.weather.sky), sky.word().to_owned()),
    };
    let message = format!("end {}: the level was read in {what}", sheet.end);
    let label = match sheet.lines.expected.get() {
        Some(expected) => format!("{expected} expected, weather counted"),
        None => "the level is not judged".into(),
    };
    let finding = found.report(&RULE, place, message, label);
    finding.known_at(at!(record.weather));
    if let Some(rate) = raining {
        finding.measured(rate.value, Worse::Higher);
    }
    finding.help("read again in dry, calm air before accepting");
}
