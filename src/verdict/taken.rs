//! Both places of a value that is taken in: where it is written, and who takes it.

use crate::finding::{Finding, Spot};
use crate::network::Files;

/// Adds to every finding about a value from a template or a default a label where the hop takes it in.
pub(super) fn show_takers(findings: &mut [Finding], files: &Files) {
    for finding in findings {
        let mut takers: Vec<(Spot, String)> = Vec::new();
        for label in &finding.labels {
            let Spot::Field(place) = &label.spot else { continue };
            let Some((taken, at)) = files.taken_at(place) else { continue };
            let here = Spot::Bytes(at.file, at.span);
            if !takers.iter().any(|(known, _)| *known == here) {
                takers.push((here, format!("taken from {} here", taken.giver())));
            }
        }
        for (spot, text) in takers {
            finding.because(spot, text);
        }
    }
}
