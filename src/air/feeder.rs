//! What a feeder takes at a frequency, by what its sheet states.

use crate::physics::feeder::{by_frequency, coaxial, guide};
use crate::spec::{Feeder, FeederConstruction};
use crate::units::{DecibelsPerKilometre, Gigahertz};

/// Loss for the length of a feeder at a frequency; none where its sheet does not tell.
///
/// Between what is stated it is straight on logarithmic axes. Outside of that it goes on from the nearest frequency: that of coaxial
/// cable by the root of the frequency, that of a waveguide by its walls if its inside is known.
#[must_use]
pub fn feeder_loss(feeder: &Feeder, frequency: Gigahertz) -> Option<DecibelsPerKilometre> {
    let stated: Vec<(Gigahertz, DecibelsPerKilometre)> =
        feeder.loss_by_frequency.iter().map(|point| (point.frequency.value, point.loss.value)).collect();
    if let Some(loss) = by_frequency(&stated, frequency) {
        return Some(loss);
    }
    let off = |at: &Gigahertz| (at.0 - frequency.0).abs();
    let (at, loss) = *stated.iter().min_by(|(one, _), (other, _)| off(one).total_cmp(&off(other)))?;
    match (feeder.construction, &feeder.inside) {
        (FeederConstruction::Coaxial, _) => Some(coaxial(loss, at, frequency)),
        (FeederConstruction::Waveguide, Some(inside)) => {
            guide([inside.width.value, inside.height.value], loss, at, frequency)
        }
        (FeederConstruction::Waveguide, None) => None,
    }
}
