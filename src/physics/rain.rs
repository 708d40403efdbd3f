//! What rain takes out of a ray where it falls.
//!
//! Frequency, polarisation and rain rate go in, loss for each kilometre comes out. How often it rains so hard, and over
//! how much of a path, is for [`super::rain_outage`].

use crate::units::{DecibelsPerKilometre, Degrees, Gigahertz, MillimetresPerHour};

/// How the electric field lies. Falling drops are flat, so horizontal fields lose the most.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Polarisation {
    /// Tilt `τ = 0°`.
    Horizontal,
    /// Tilt `τ = 90°`.
    Vertical,
    /// Turning, or slanted by 45°: `τ = 45°`.
    Circular,
}

impl Polarisation {
    /// `cos 2τ`.
    fn cos_2_tau(self) -> f64 {
        match self {
            Self::Horizontal => 1.0,
            Self::Vertical => -1.0,
            Self::Circular => 0.0,
        }
    }
}

/// The pair in `γ_R = k R^α`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Coefficients {
    /// Loss in dB/km at one millimetre an hour.
    pub k: f64,
    /// Growth with the rain rate.
    pub alpha: f64,
}

impl Coefficients {
    /// Loss in rain for each kilometre, `γ_R`.
    ///
    /// ```text
    /// γ_R = k R^α
    /// ```
    ///
    /// Holds from 1 to 1000 GHz; zero when there is no rain.
    ///
    /// Source: Recommendation ITU-R P.838-3, equation (1).
    #[must_use]
    pub fn specific_attenuation(self, rate: MillimetresPerHour) -> DecibelsPerKilometre {
        DecibelsPerKilometre(self.k * libm::pow(rate.0, self.alpha))
    }
}

/// `k` and `α` for a polarisation and for the elevation `θ` of the path, whose sign does not matter.
///
/// ```text
/// k = [ k_H + k_V + (k_H - k_V) cos² θ cos 2τ ] / 2
/// α = [ k_H α_H + k_V α_V + (k_H α_H - k_V α_V) cos² θ cos 2τ ] / 2k
/// ```
///
/// Holds from 1 to 1000 GHz.
///
/// Source: Recommendation ITU-R P.838-3, equations (2) to (5).
#[must_use]
pub fn coefficients(frequency: Gigahertz, polarisation: Polarisation, elevation: Degrees) -> Coefficients {
    let log_f = libm::log10(frequency.0);
    let (k_h, k_v) = (libm::exp10(K_H.at(log_f)), libm::exp10(K_V.at(log_f)));
    let (alpha_h, alpha_v) = (ALPHA_H.at(log_f), ALPHA_V.at(log_f));
    let cos_theta = libm::cos(elevation.0.to_radians());
    let tilt = cos_theta * cos_theta * polarisation.cos_2_tau();
    let k = (k_h + k_v + (k_h - k_v) * tilt) / 2.0;
    let alpha = (k_h * alpha_h + k_v * alpha_v + (k_h * alpha_h - k_v * alpha_v) * tilt) / (2.0 * k);
    Coefficients { k, alpha }
}

/// A curve over frequency: `Σ a_j exp( -((lg f - b_j) / c_j)² ) + m lg f + c`. For `k` it gives `lg k`, for `α` itself.
struct Curve {
    /// `a_j`, `b_j`, `c_j`.
    terms: &'static [[f64; 3]],
    m: f64,
    c: f64,
}

impl Curve {
    fn at(&self, log_f: f64) -> f64 {
        let bell = |&[a, b, c]: &[f64; 3]| {
            let x = (log_f - b) / c;
            a * libm::exp(-x * x)
        };
        self.terms.iter().map(bell).sum::<f64>() + self.m * log_f + self.c
    }
}

/// Recommendation ITU-R P.838-3, Table 1.
const K_H: Curve = Curve {
    terms: &[
        [-5.339_80, -0.100_08, 1.130_98],
        [-0.353_51, 1.269_70, 0.454_00],
        [-0.237_89, 0.860_36, 0.153_54],
        [-0.941_58, 0.645_52, 0.168_17],
    ],
    m: -0.189_61,
    c: 0.711_47,
};

/// Recommendation ITU-R P.838-3, Table 2.
const K_V: Curve = Curve {
    terms: &[
        [-3.805_95, 0.569_34, 0.810_61],
        [-3.449_65, -0.229_11, 0.510_59],
        [-0.399_02, 0.730_42, 0.118_99],
        [0.501_67, 1.073_19, 0.271_95],
    ],
    m: -0.163_98,
    c: 0.632_97,
};

/// Recommendation ITU-R P.838-3, Table 3.
const ALPHA_H: Curve = Curve {
    terms: &[
        [-0.143_18, 1.824_42, -0.551_87],
        [0.295_91, 0.775_64, 0.198_22],
        [0.321_77, 0.637_73, 0.131_64],
        [-5.376_10, -0.962_30, 1.478_28],
        [16.1721, -3.299_80, 3.439_90],
    ],
    m: 0.678_49,
    c: -1.955_37,
};

/// Recommendation ITU-R P.838-3, Table 4. The last two terms nearly cancel.
const ALPHA_V: Curve = Curve {
    terms: &[
        [-0.077_71, 2.338_40, -0.762_84],
        [0.567_27, 0.955_45, 0.540_39],
        [-0.202_38, 1.145_20, 0.268_09],
        [-48.2991, 0.791_669, 0.116_226],
        [48.5833, 0.791_459, 0.116_479],
    ],
    m: -0.053_739,
    c: 0.834_33,
};
