//! What a round dish can do: gain, beam, side lobes.
//!
//! Frequency and diameter go in, what to expect comes out, as a check on a data sheet and as a warning to whoever aims
//! the dish. Measured patterns rule; off the main beam see [`super::pattern`].

use std::f64::consts::PI;

use super::free_space::wavelength;
use crate::units::{Dbi, Decibels, Degrees, Gigahertz, Millimetres};

/// Aperture efficiencies one meets. A gain outside means a wrong gain, diameter or frequency.
///
/// Common practice, no source.
pub const USUAL_EFFICIENCY: std::ops::RangeInclusive<f64> = 0.3..=0.7;

/// Share of the half-power beamwidth up to which [`pointing_loss`] follows a real main beam.
const MAIN_BEAM: f64 = 0.9;

/// Diameter in wavelengths, `D/λ`.
#[must_use]
pub fn electrical_diameter(frequency: Gigahertz, diameter: Millimetres) -> f64 {
    diameter.0 / 1000.0 / wavelength(frequency).0
}

/// Gain of a dish of a given aperture efficiency `η`, on its axis.
///
/// ```text
/// G = 10 lg( η (π D / λ)² )
/// ```
///
/// Holds for diameters of several wavelengths, in the far field. `η` is 0.50 to 0.65 as a rule.
///
/// Source: definition of aperture efficiency.
#[must_use]
pub fn gain(frequency: Gigahertz, diameter: Millimetres, efficiency: f64) -> Dbi {
    let girth = PI * electrical_diameter(frequency, diameter);
    Dbi(10.0 * libm::log10(efficiency * girth * girth))
}

/// Aperture efficiency `η` behind a stated gain: the inverse of [`gain`]. More than one is impossible.
///
/// ```text
/// η = 10^(G/10) / (π D / λ)²
/// ```
///
/// Source: definition of aperture efficiency.
#[must_use]
pub fn efficiency(frequency: Gigahertz, diameter: Millimetres, gain: Dbi) -> f64 {
    let girth = PI * electrical_diameter(frequency, diameter);
    libm::exp10(gain.0 / 10.0) / (girth * girth)
}

/// Gain of a dish of which nothing else is known.
///
/// ```text
/// G = 20 lg(D/λ) + 7.7
/// ```
///
/// This is an efficiency of 0.60.
///
/// Source: Recommendation ITU-R F.699-8, recommends 3 (clause from memory, not seen).
#[must_use]
pub fn estimated_gain(frequency: Gigahertz, diameter: Millimetres) -> Dbi {
    Dbi(20.0 * libm::log10(electrical_diameter(frequency, diameter)) + 7.7)
}

/// Diameter of a dish of which only the gain is known: the inverse of [`estimated_gain`].
///
/// ```text
/// D = λ 10^((G - 7.7) / 20)
/// ```
///
/// Source: Recommendation ITU-R F.699-8, recommends 3 (clause from memory, not seen).
#[must_use]
pub fn estimated_diameter(frequency: Gigahertz, gain: Dbi) -> Millimetres {
    Millimetres(1000.0 * wavelength(frequency).0 * libm::exp10((gain.0 - 7.7) / 20.0))
}

/// Gain of a round beam of half-power width `φ`.
///
/// ```text
/// G = 44.5 - 20 lg φ
/// ```
///
/// With the beam of [`beamwidth`] and an efficiency of 0.55 the constant would be 44.3.
///
/// Source: Recommendation ITU-R F.699-8, recommends 3 (clause from memory, not seen).
#[must_use]
pub fn gain_of_beam(beamwidth: Degrees) -> Dbi {
    Dbi(44.5 - 20.0 * libm::log10(beamwidth.0))
}

/// Half-power width of the round beam of a gain: the inverse of [`gain_of_beam`].
///
/// ```text
/// φ = 10^((44.5 - G) / 20)
/// ```
///
/// Source: Recommendation ITU-R F.699-8, recommends 3 (clause from memory, not seen).
#[must_use]
pub fn beam_of_gain(gain: Dbi) -> Degrees {
    Degrees(libm::exp10((44.5 - gain.0) / 20.0))
}

/// Full width of the main beam between its half-power points.
///
/// ```text
/// φ = 70 λ / D   degrees
/// ```
///
/// For feeds that light the rim weakly, as nearly all do. Evenly lit it would be 59 λ/D.
///
/// Source: common practice, no source; it lies between the lights of [`Illumination`].
#[must_use]
pub fn beamwidth(frequency: Gigahertz, diameter: Millimetres) -> Degrees {
    Degrees(70.0 / electrical_diameter(frequency, diameter))
}

/// Loss of one antenna that is aimed off by `θ`, with a half-power beamwidth `θ_3`.
///
/// ```text
/// L = 12 (θ / θ_3)²
/// ```
///
/// A Gaussian main beam, of either sign of `θ`: at half the beamwidth the loss is 3 dB. None beyond 0.9 of the
/// beamwidth, where the beam of a real dish falls into its first null and the formula does not.
///
/// Source: the main beam of Recommendation ITU-R F.699-8, which comes to 12.25 with `θ_3 = 70 λ/D`; that the round 12
/// is used, and the limit, are common practice, no source.
#[must_use]
pub fn pointing_loss(error: Degrees, beamwidth: Degrees) -> Option<Decibels> {
    let x = error.0 / beamwidth.0;
    (x.abs() <= MAIN_BEAM).then_some(Decibels(12.0 * x * x))
}

/// How the feed lights a round aperture, from its middle, `r = 0`, to its rim, `r = 1`, and what follows.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Illumination {
    /// The field over the radius.
    pub field: &'static str,
    /// Half-power beamwidth, in degrees times `λ/D`.
    pub beamwidth: f64,
    /// Sine of the angle of the first null, times `D/λ`.
    pub first_null: f64,
    /// Sine of the angle of the first side lobe, times `D/λ`.
    pub first_side_lobe: f64,
    /// Peak of the first side lobe over the main beam.
    pub side_lobe_level: Decibels,
    /// Aperture efficiency, from the taper alone.
    pub efficiency: f64,
}

/// Round apertures with the field `(1 - r²)^n` for `n` = 0, 1 and 2.
///
/// ```text
/// E(u) ~ J_(n+1)(u) / u^(n+1),   u = (π D / λ) sin θ,   J Bessel functions
/// ```
///
/// Source: Fraunhofer diffraction of a round aperture; for `n = 0` the pattern of Airy (1835). Independently computed.
pub const ILLUMINATIONS: [Illumination; 3] = [
    Illumination {
        field: "uniform",
        beamwidth: 58.96,
        first_null: 1.220,
        first_side_lobe: 1.635,
        side_lobe_level: Decibels(-17.57),
        efficiency: 1.0,
    },
    Illumination {
        field: "1 - r²",
        beamwidth: 72.75,
        first_null: 1.635,
        first_side_lobe: 2.031,
        side_lobe_level: Decibels(-24.64),
        efficiency: 0.75,
    },
    Illumination {
        field: "(1 - r²)²",
        beamwidth: 84.38,
        first_null: 2.031,
        first_side_lobe: 2.415,
        side_lobe_level: Decibels(-30.61),
        efficiency: 0.556,
    },
];

/// Where whoever aims a dish must expect its first side lobe. Each field is a band: evenly lit first, tapered second.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SideLobes {
    /// Angle of the first null from the axis.
    pub first_null: [Degrees; 2],
    /// Angle of the first side lobe from the axis.
    pub first_side_lobe: [Degrees; 2],
    /// Its peak over the main beam: an end aimed at it is this much too weak. Both ends twice.
    pub level: [Decibels; 2],
}

/// First null and first side lobe of a dish, between even light and the taper `1 - r²`.
///
/// ```text
/// sin θ = 1.220 λ/D … 1.635 λ/D    first null
/// sin θ = 1.635 λ/D … 2.031 λ/D    first side lobe, -17.6 dB … -24.6 dB
/// ```
///
/// Real dishes lie between. None for dishes so small, below two wavelengths, that they have no such lobe.
///
/// Source: [`ILLUMINATIONS`].
#[must_use]
pub fn side_lobes(frequency: Gigahertz, diameter: Millimetres) -> Option<SideLobes> {
    let [uniform, tapered, _] = &ILLUMINATIONS;
    let ratio = electrical_diameter(frequency, diameter);
    let band = |a: f64, b: f64| [a, b].map(|x| Degrees(libm::asin(x / ratio).to_degrees()));
    (ratio >= tapered.first_side_lobe).then(|| SideLobes {
        first_null: band(uniform.first_null, tapered.first_null),
        first_side_lobe: band(uniform.first_side_lobe, tapered.first_side_lobe),
        level: [uniform.side_lobe_level, tapered.side_lobe_level],
    })
}

/// First null and first side lobe of a measured pattern: the first dip of it, and the peak behind. Points are an angle off
/// the axis and the decibels below the gain there, in order of angle.
///
/// None for a pattern that ends before, or that is an envelope and so has no dip.
///
/// Source: definition of the first side lobe.
#[must_use]
pub fn measured_lobes(pattern: &[(Degrees, Decibels)]) -> Option<SideLobes> {
    let null = pattern.windows(2).position(|pair| pair[1].1 < pair[0].1)?;
    let behind = &pattern[null..];
    let lobe = behind.windows(2).position(|pair| pair[1].1 > pair[0].1)?;
    let (null, (angle, below)) = (pattern[null].0, behind[lobe]);
    Some(SideLobes { first_null: [null; 2], first_side_lobe: [angle; 2], level: [Decibels(-below.0); 2] })
}

/// Loss between two linear polarisations turned against each other by `φ`.
///
/// ```text
/// L = -20 lg |cos φ|
/// ```
///
/// Without bounds as the angle nears 90°, where what is left is the cross-polarisation of the antennas, 25 to 40 dB.
/// Circular against linear is 3.01 dB, whatever the angle.
///
/// Source: projection of a field on an axis.
#[must_use]
pub fn polarisation_loss(rotation: Degrees) -> Decibels {
    Decibels(-20.0 * libm::log10(libm::fabs(libm::cos(rotation.0.to_radians()))))
}

/// What a feed turned by `φ` receives of the other polarisation, over what it receives of its own.
///
/// ```text
/// X = 20 lg |tan φ|
/// ```
///
/// Minus infinity for a feed that stands right; a degree off gives -35 dB.
///
/// Source: projection of a field on an axis.
#[must_use]
pub fn cross_polar_level(rotation: Degrees) -> Decibels {
    Decibels(20.0 * libm::log10(libm::fabs(libm::tan(rotation.0.to_radians()))))
}

/// How much more an aperture gains at one frequency than at another, its efficiency alike.
///
/// ```text
/// ΔG = 20 lg(f₁ / f₂)
/// ```
///
/// Source: gain of an aperture, `G = η (π D / λ)²`.
#[must_use]
pub fn gain_over(one: Gigahertz, other: Gigahertz) -> Decibels {
    Decibels(20.0 * libm::log10(one.0 / other.0))
}
