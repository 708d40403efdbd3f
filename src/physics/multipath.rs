//! How often layers of clear air fade a long hop.
//!
//! The path and two numbers of its climate go in; out comes [`Multipath`], which answers for any depth of fade in the
//! worst month, and for deep fades in the average year. The method was made from hops below 45 GHz; for 57 to 86 GHz
//! there is none, and none is invented here.

use crate::units::{Decibels, Gigahertz, Latitude, Metres, Percent};

/// Up to this length layers of air do not matter.
pub const SHORTEST: Metres = Metres(5000.0);

/// Longest path of the data behind the method (from memory, not seen).
const LONGEST: Metres = Metres(185_000.0);

/// Highest frequency of the method.
pub const HIGHEST: Gigahertz = Gigahertz(45.0);

/// Up to this occurrence the fade depths of [`Multipath::worst_month`] keep their order (from memory, not seen).
const MOST: Percent = Percent(2000.0);

/// A month is a twelfth of a year, `10 lg 12`: no share of the worst month shrinks by more.
const TWELFTH: Decibels = Decibels(10.8);

/// A path and its clear-air climate. Heights are above mean sea level.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ClearAirPath {
    /// Length `d`.
    pub distance: Metres,
    /// Frequency `f`.
    pub frequency: Gigahertz,
    /// Both antennas, `h_e` and `h_r`, in either order.
    pub antennas: [Metres; 2],
    /// Mean of the terrain between them, `h_t`.
    pub terrain: Metres,
    /// Geoclimatic factor of the worst month, as its logarithm `lg K`: a map value of P.530.
    pub log_k: f64,
    /// Refractivity gradient near the ground, `dN_75`: a map value of P.530.
    pub dn_75: f64,
}

/// Why the method does not apply.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum OutOfRange {
    /// Not longer than [`SHORTEST`]: no multipath fading to speak of.
    Short(Metres),
    /// Longer than 185 km, or no distance.
    Distance(Metres),
    /// Above 45 GHz, or below 15 GHz over the length in kilometres.
    Frequency(Gigahertz),
    /// The climate numbers give an occurrence the formulas do not bear.
    Occurrence(Percent),
}

/// Multipath fading of one path in clear air.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Multipath {
    /// Multipath occurrence factor of the worst month, `p_0`: where the law of deep fades meets 0 dB. May exceed 100 %.
    pub occurrence: Percent,
    /// Slope of the path in milliradians, `ε`.
    slope: f64,
    /// Length in kilometres.
    d: f64,
}

impl Multipath {
    /// Multipath fading of a path.
    ///
    /// ```text
    /// ε   = |h_r - h_e| / d                                                             mrad
    /// h_c = (h_r + h_e) / 2 - d² / 102 - h_t                                            m
    /// v   = min( (dN_75 / 50)^1.8 exp( -h_c / (2.5 √d) ),  dN_75 d^1.5 f^0.5 / 24730 )
    /// X   = -0.376 tanh( (h_c - 147) / 125 ) - 0.334 ε^0.39 - 0.00027 h_L + 17.85 v
    /// p_0 = K d^3.51 (f² + 13)^0.447 10^X                                               %
    /// ```
    ///
    /// `d` in kilometres, `f` in gigahertz, `h_L` the lower antenna. Holds above 5 km (the data begin at 7.5 km, from
    /// memory) and up to 185 km, from `15 / d` to 45 GHz.
    ///
    /// Source: Recommendation ITU-R P.530-18, section 2.3.1, equation (7), at `A = 0`.
    ///
    /// # Errors
    /// The length, the frequency or the climate is outside what the method covers.
    pub fn new(path: &ClearAirPath) -> Result<Self, OutOfRange> {
        if path.distance.0.is_nan() || path.distance > LONGEST || path.distance <= Metres(0.0) {
            return Err(OutOfRange::Distance(path.distance));
        }
        if path.distance <= SHORTEST {
            return Err(OutOfRange::Short(path.distance));
        }
        let (d, f) = (path.distance.0 / 1000.0, path.frequency.0);
        if !(15.0 / d..=HIGHEST.0).contains(&f) {
            return Err(OutOfRange::Frequency(path.frequency));
        }
        let [h_e, h_r] = path.antennas.map(|height| height.0);
        let slope = (h_r - h_e).abs() / d;
        let h_c = f64::midpoint(h_r, h_e) - d * d / 102.0 - path.terrain.0;
        let v_climate = libm::pow(path.dn_75 / 50.0, 1.8) * libm::exp(-h_c / (2.5 * d.sqrt()));
        let v = v_climate.min(path.dn_75 * libm::pow(d, 1.5) * f.sqrt() / 24_730.0);
        let x = -0.376 * libm::tanh((h_c - 147.0) / 125.0) - 0.334 * libm::pow(slope, 0.39) - 0.000_27 * h_e.min(h_r)
            + 17.85 * v;
        let p_0 = libm::pow(d, 3.51) * libm::pow(f * f + 13.0, 0.447) * libm::exp10(path.log_k + x);
        let occurrence = Percent(p_0);
        if !(0.0..=MOST.0).contains(&p_0) {
            return Err(OutOfRange::Occurrence(occurrence));
        }
        Ok(Self { occurrence, slope, d })
    }

    /// Share of the worst month in which a deep fade `A` is exceeded.
    ///
    /// ```text
    /// p_w = p_0 10^(-A/10)
    /// ```
    ///
    /// Ten decibels deeper is ten times rarer. Too much for shallow fades, below some 25 dB.
    ///
    /// Source: Recommendation ITU-R P.530-18, section 2.3.1, equation (7).
    #[must_use]
    pub fn worst_month_deep(&self, fade: Decibels) -> Percent {
        Percent(self.occurrence.0 * libm::exp10(-fade.0 / 10.0))
    }

    /// Depth from which fades are deep, `A_t`.
    ///
    /// ```text
    /// A_t = 25 + 1.2 lg p_0
    /// ```
    ///
    /// Source: Recommendation ITU-R P.530-18, section 2.3.2.
    #[must_use]
    pub fn transition(&self) -> Decibels {
        Decibels(25.0 + 1.2 * libm::log10(self.occurrence.0))
    }

    /// Share of the worst month in which a fade `A` of any depth is exceeded, `p_w`. None for less than 0 dB.
    ///
    /// ```text
    /// A ≥ A_t:  p_w = p_0 10^(-A/10)
    /// A < A_t:  p_w = 100 ( 1 - exp( -10^(-q_a A / 20) ) )
    ///           p_t = p_0 10^(-A_t/10)
    ///           q_a' = -(20 / A_t) lg( -ln( (100 - p_t) / 100 ) )
    ///           q_t  = (q_a' - 2) / [ (1 + 0.3 · 10^(-A_t/20)) 10^(-0.016 A_t) ] - 4.3 (10^(-A_t/20) + A_t / 800)
    ///           q_a  = 2 + (1 + 0.3 · 10^(-A/20)) 10^(-0.016 A) [ q_t + 4.3 (10^(-A/20) + A / 800) ]
    /// ```
    ///
    /// Both meet at `A_t`.
    ///
    /// Source: Recommendation ITU-R P.530-18, section 2.3.2, steps 1 to 4 (step numbers from memory, not seen).
    #[must_use]
    pub fn worst_month(&self, fade: Decibels) -> Option<Percent> {
        let a = fade.0;
        let a_t = self.transition().0;
        if a.is_nan() || a < 0.0 {
            return None;
        }
        if a >= a_t {
            return Some(self.worst_month_deep(fade));
        }
        Some(shallow(a, a_t, self.worst_month_deep(Decibels(a_t))))
    }

    /// How much rarer deep fades are in the average year than in the worst month, `ΔG`.
    ///
    /// ```text
    /// ΔG = 10.5 - 5.6 lg( 1.1 ± |cos 2ξ|^0.7 ) - 2.7 lg d + 1.7 lg(1 + ε),   at most 10.8 dB
    /// ```
    ///
    /// Plus up to latitude `ξ` = 45°, north or south, minus beyond. The limit is `10 lg 12`, for the year has eleven
    /// other months and they cannot have less than nothing; that it is to be read as an upper limit is from memory, not
    /// seen. Others read it as a lower one.
    ///
    /// Source: Recommendation ITU-R P.530-18, section 2.3.4.
    #[must_use]
    pub fn year_over_worst_month(&self, latitude: Latitude) -> Decibels {
        let limit = self.unlimited_year_over_worst_month(latitude);
        if limit < TWELFTH { limit } else { TWELFTH }
    }

    fn unlimited_year_over_worst_month(&self, latitude: Latitude) -> Decibels {
        let xi = latitude.0.abs();
        let side = if xi <= 45.0 { 1.0 } else { -1.0 };
        let climate = 1.1 + side * libm::pow(libm::fabs(libm::cos(2.0 * xi.to_radians())), 0.7);
        Decibels(10.5 - 5.6 * libm::log10(climate) - 2.7 * libm::log10(self.d) + 1.7 * libm::log10(1.0 + self.slope))
    }

    /// Share of the average year, for a share of the worst month that deep fades of this path take.
    ///
    /// ```text
    /// p = 10^(-ΔG/10) p_w
    /// ```
    ///
    /// Source: Recommendation ITU-R P.530-18, section 2.3.4.
    #[must_use]
    pub fn year_of(&self, worst_month: Percent, latitude: Latitude) -> Percent {
        Percent(worst_month.0 * libm::exp10(-self.year_over_worst_month(latitude).0 / 10.0))
    }

    /// Share of the average year in which a fade `A` of any depth is exceeded, `p`. None for less than 0 dB.
    ///
    /// ```text
    /// A ≥ A_t:  p = 10^(-ΔG/10) p_w
    /// A < A_t:  as for the worst month, with p_t = 10^(-ΔG/10) p_0 10^(-A_t/10)
    /// ```
    ///
    /// `A_t` stays that of the worst month, and both meet there.
    ///
    /// Source: Recommendation ITU-R P.530-18, section 2.3.4 (order of its steps from memory, not seen).
    #[must_use]
    pub fn year(&self, fade: Decibels, latitude: Latitude) -> Option<Percent> {
        let (a, a_t) = (fade.0, self.transition().0);
        if a.is_nan() || a < 0.0 {
            return None;
        }
        let deep = |fade: Decibels| self.year_of(self.worst_month_deep(fade), latitude);
        Some(if a >= a_t { deep(fade) } else { shallow(a, a_t, deep(Decibels(a_t))) })
    }
}

/// Share of time in which a fade `A` is exceeded that is shallower than `A_t`, where `A_t` itself is for a share `p_t`.
fn shallow(a: f64, a_t: f64, p_t: Percent) -> Percent {
    let narrowing = |a: f64| (1.0 + 0.3 * libm::exp10(-a / 20.0)) * libm::exp10(-0.016 * a);
    let offset = |a: f64| 4.3 * (libm::exp10(-a / 20.0) + a / 800.0);
    let q_a_t = -20.0 / a_t * libm::log10(-libm::log1p(-p_t.0 / 100.0));
    let q_t = (q_a_t - 2.0) / narrowing(a_t) - offset(a_t);
    let q_a = 2.0 + narrowing(a) * (q_t + offset(a));
    Percent(-100.0 * libm::expm1(-libm::exp10(-q_a * a / 20.0)))
}

/// Mean height of the terrain along a path, `h_t`: straight between its points, each a distance and a height above the
/// sea, in order. None without any length.
///
/// ```text
/// h_t = (1/d) ∫ h(x) dx
/// ```
///
/// Trees and buildings are not terrain.
///
/// Source: Recommendation ITU-R P.530-18, section 2.3.1.
#[must_use]
pub fn mean_terrain(profile: &[(Metres, Metres)]) -> Option<Metres> {
    let length = profile.last()?.0.0 - profile.first()?.0.0;
    let under = |pair: &[(Metres, Metres)]| (pair[1].0.0 - pair[0].0.0) * f64::midpoint(pair[0].1.0, pair[1].1.0);
    (length > 0.0).then(|| Metres(profile.windows(2).map(under).sum::<f64>() / length))
}
