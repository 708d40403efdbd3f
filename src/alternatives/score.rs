//! How far a trial brings a hop that fails.

use super::verdict::{Found, Verdict};
use crate::finding::{Measured, Worse};

/// What each finding gained: none where it is gone, else by how much its value is better.
pub(super) fn gains(failing: &[Found], verdict: &Verdict) -> Vec<Option<f64>> {
    let gain = |found: &Found| {
        let now = verdict.failing.iter().find(|now| now.key == found.key)?;
        let (Some(before), Some(after)) = (&found.measured, &now.measured) else { return Some(0.0) };
        Some(goodness(after) - goodness(before))
    };
    failing.iter().map(gain).collect()
}

/// A value on a scale on which more is better, and steps that are alike look alike: an availability by its nines.
fn goodness(measured: &Measured) -> f64 {
    let value = if measured.unit == "%" && measured.worse == Worse::Lower {
        -10.0 * libm::log10((100.0 - measured.value).max(1e-9))
    } else {
        measured.value
    };
    match measured.worse {
        Worse::Lower => value,
        Worse::Higher => -value,
    }
}
