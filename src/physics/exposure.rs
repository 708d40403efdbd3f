//! How close to an antenna people may come while it sends.
//!
//! Power, gain and diameter go in, the distance along the beam comes out at which the power density falls to a limit.

use std::f64::consts::PI;

use super::free_space::wavelength;
use crate::units::{Dbi, Dbm, Gigahertz, Metres, Millimetres, WattsPerSquareMetre};

/// Power density that whoever passes may be exposed to, from 2 to 300 GHz (ICNIRP) and 1.5 to 100 GHz (47 CFR 1.1310).
///
/// Source: ICNIRP 2020, reference levels for the whole body, general public; 47 CFR 1.1310, 1 mW/cm² (both second-hand).
pub const PUBLIC: WattsPerSquareMetre = WattsPerSquareMetre(10.0);

/// The same for people who work with it and know.
///
/// Source: as [`PUBLIC`]; 5 mW/cm² in 47 CFR 1.1310.
pub const WORKERS: WattsPerSquareMetre = WattsPerSquareMetre(50.0);

/// An antenna that sends.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sender {
    /// Carrier.
    pub frequency: Gigahertz,
    /// Power at the antenna port.
    pub power: Dbm,
    /// Gain.
    pub gain: Dbi,
    /// Diameter of the aperture.
    pub diameter: Millimetres,
}

impl Sender {
    /// Power radiated along the beam.
    fn eirp_watts(&self) -> f64 {
        watts(self.power + self.gain)
    }

    /// Greatest power density anywhere in the beam, as it leaves the aperture.
    ///
    /// ```text
    /// S = 4 P / A,   A = π D² / 4
    /// ```
    ///
    /// Source: FCC OET Bulletin 65 (1997), section 2 (from memory, not seen).
    #[must_use]
    pub fn at_aperture(&self) -> WattsPerSquareMetre {
        let area = PI / 4.0 * (self.diameter.0 / 1000.0) * (self.diameter.0 / 1000.0);
        WattsPerSquareMetre(4.0 * watts(Dbm(self.power.0)) / area)
    }

    /// Distance along the beam beyond which the power density is within a limit. Zero where it is so everywhere, even at
    /// the aperture: the far-field formula alone would ask for metres in front of a radio that can exceed the limit nowhere.
    ///
    /// ```text
    /// 0 where 4 P / A ≤ S,  else  √( EIRP / (4 π S) )
    /// ```
    ///
    /// Nothing that reflects stands near; a flat metal wall may quadruple the density.
    ///
    /// Source: FCC OET Bulletin 65 (1997), section 2 (from memory, not seen).
    #[must_use]
    pub fn distance(&self, limit: WattsPerSquareMetre) -> Metres {
        if self.at_aperture() <= limit {
            return Metres(0.0);
        }
        Metres(libm::sqrt(self.eirp_watts() / (4.0 * PI * limit.0)))
    }

    /// Where the beam begins to spread: `D² / (4 λ)`.
    ///
    /// Source: FCC OET Bulletin 65 (1997), section 2 (from memory, not seen).
    #[must_use]
    pub fn near_field(&self) -> Metres {
        let diameter = self.diameter.0 / 1000.0;
        Metres(diameter * diameter / (4.0 * wavelength(self.frequency).0))
    }
}

fn watts(power: Dbm) -> f64 {
    libm::exp10((power.0 - 30.0) / 10.0)
}
