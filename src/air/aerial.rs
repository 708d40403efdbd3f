//! An antenna in every direction: what it gains there, and the most it may gain anywhere further off.

use std::sync::{Arc, OnceLock};

use crate::physics::pattern;
use crate::physics::{antenna, antenna_gain};
use crate::spec::{self, PatternPoint};
use crate::units::{Dbi, Decibels, Degrees, Gigahertz, Millimetres};

/// The reference patterns hold from here.
const LOWEST: Gigahertz = Gigahertz(1.0);
/// And to here: beyond it they are taken as there.
const HIGHEST: Gigahertz = Gigahertz(86.0);

/// An antenna at one frequency.
#[derive(Debug, Clone, PartialEq)]
pub struct Aerial {
    /// Frequency.
    pub frequency: Gigahertz,
    /// Gain on the axis.
    pub gain: Dbi,
    /// Diameter, or that of an antenna of the same gain.
    pub diameter: Millimetres,
    /// Cross-polar discrimination on the axis; nothing where nobody states it.
    pub cross_polar: Decibels,
    /// Measured pattern, outwards; empty where nobody measured it.
    pub measured: Vec<(Degrees, Decibels)>,
}

impl Aerial {
    /// An antenna model at a frequency.
    #[must_use]
    pub fn of(model: &spec::Antenna, frequency: Gigahertz) -> Self {
        let by_frequency: Vec<(Gigahertz, Dbi)> =
            model.gain_by_frequency.iter().map(|point| (point.frequency.value, point.gain.value)).collect();
        let gain = antenna_gain::by_frequency(&by_frequency, frequency).unwrap_or_else(|| match &model.gain_at {
            Some(at) => antenna_gain::scaled(model.gain.value, at.value, frequency),
            None => model.gain.value,
        });
        let diameter = model.diameter.as_ref().map(|given| given.value);
        Self::new(frequency, gain, diameter, model.cross_polar.as_ref().map(|given| given.value), &model.pattern)
    }

    pub(super) fn new(
        frequency: Gigahertz,
        gain: Dbi,
        diameter: Option<Millimetres>,
        cross_polar: Option<Decibels>,
        pattern: &[PatternPoint],
    ) -> Self {
        let mut measured: Vec<_> = pattern.iter().map(|point| (point.angle.value, point.below.value)).collect();
        measured.sort_by(|one, other| one.0.0.total_cmp(&other.0.0));
        let diameter = diameter.filter(|diameter| diameter.0 > 0.0);
        Self {
            frequency,
            gain,
            diameter: diameter.unwrap_or_else(|| antenna::estimated_diameter(frequency, gain)),
            cross_polar: cross_polar.unwrap_or_default(),
            measured,
        }
    }

    /// Gain at an angle off the axis: as measured, and the envelope of the side lobes where nobody measured.
    #[must_use]
    pub fn towards(&self, off_axis: Degrees) -> Dbi {
        pattern::measured(&self.measured, off_axis).map_or_else(|| self.envelope(off_axis), |below| self.gain - below)
    }

    fn envelope(&self, off_axis: Degrees) -> Dbi {
        let frequency = Gigahertz(self.frequency.0.clamp(LOWEST.0, HIGHEST.0));
        // Nothing can be out of range any more but a figure that is none, and that gains all there is.
        pattern::peak_envelope(frequency, self.diameter, self.gain, off_axis)
            .map_or(self.gain, |gain| if gain.0 > self.gain.0 { self.gain } else { gain })
    }

    /// The same in the other polarisation.
    #[must_use]
    pub fn crossed(&self, towards: Dbi) -> Dbi {
        crate::physics::interference::cross_polar_gain(towards, self.gain, self.cross_polar)
    }
}

/// Steps of the bound for each doubling of `1 − cos φ`.
const STEPS: i32 = 4;
/// `1 − cos φ` below `2^LEAST` is the axis: 0.0001°.
const LEAST: i32 = -40;
/// Its greatest value is 2.
const MOST: i32 = 1;

/// The most that an antenna gains at an angle or anywhere further off, to be looked up without computing an angle.
#[derive(Debug)]
pub(super) struct Bound {
    aerial: Arc<Aerial>,
    /// Found out when somebody asks: in a small network nobody does.
    steps: OnceLock<Vec<f64>>,
}

impl Bound {
    pub(super) fn of(aerial: &Arc<Aerial>) -> Arc<Self> {
        Arc::new(Self { aerial: Arc::clone(aerial), steps: OnceLock::new() })
    }

    /// The most, by the cosine of the angle.
    pub(super) fn beyond(&self, cosine: f64) -> f64 {
        let steps = self.steps.get_or_init(|| steps(&self.aerial));
        steps[step(1.0 - cosine).min(steps.len() - 1)]
    }
}

/// The most from the nearer edge of each step on.
fn steps(aerial: &Aerial) -> Vec<f64> {
    let count = usize::try_from((MOST - LEAST) * STEPS + 1).unwrap_or_default();
    let mut steps = vec![0.0; count];
    let mut most = f64::NEG_INFINITY;
    // From behind forwards.
    for (number, step) in steps.iter_mut().enumerate().rev() {
        let (near, far) = (angle(number), angle(number + 1));
        for at in [near, far] {
            most = most.max(aerial.towards(at).0);
        }
        // Between points of a measured pattern nothing is higher than at them; where it ends, the envelope takes over.
        let inside = aerial.measured.iter().map(|(at, _)| *at).filter(|at| near <= *at && *at <= far);
        for at in inside {
            most = most.max(aerial.towards(at).0).max(aerial.envelope(at).0);
        }
        *step = most;
    }
    // On the axis, and where the angle is lost in rounding.
    steps[0] = most.max(aerial.gain.0);
    steps
}

/// The step that a value of `1 − cos φ` falls into, or the one before.
fn step(versine: f64) -> usize {
    if versine.is_nan() || versine <= 0.0 {
        return 0;
    }
    // Taken a little nearer to the axis than it is, for all that is rounded.
    let doublings = libm::log2(versine) - f64::from(LEAST) - 1e-3;
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "floored, and not below zero")]
    let number = (doublings * f64::from(STEPS)).floor().max(0.0) as usize;
    number
}

/// The angle at the nearer edge of a step.
fn angle(number: usize) -> Degrees {
    if number == 0 {
        return Degrees(0.0);
    }
    #[expect(clippy::cast_precision_loss, reason = "a few hundred")]
    let doublings = number as f64 / f64::from(STEPS) + f64::from(LEAST);
    let versine = libm::exp2(doublings).min(2.0);
    // 1 − cos φ = 2 sin²(φ/2)
    Degrees((2.0 * libm::asin((versine / 2.0).sqrt().min(1.0))).to_degrees())
}
