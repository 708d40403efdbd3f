//! A pole held at its foot, with an antenna on it, in the wind.
//!
//! Forces and a section go in; how far the antenna turns, and how hard the foot is worked, come out. What holds the foot
//! gives way too, so a real pole moves more than this, never less.

use super::metals::Metal;
use super::pipe::Section;
use crate::units::{Degrees, Gigapascals, Megapascals, Metres, Millimetres, NewtonMetres, Newtons};

/// Poisson's ratio of steel and aluminium alike, near enough, behind the shear modulus `G = E / (2 (1 + ν))`.
const POISSON: f64 = 0.3;

/// A pole and what pushes it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pole {
    /// Length above the foot, `L`.
    pub length: Metres,
    /// Height of the antenna above the foot, `a`.
    pub antenna: Metres,
    /// Sideways distance of the antenna from the axis of the pole, `e`.
    pub offset: Millimetres,
    /// Its section.
    pub section: Section,
    /// Elastic modulus of what it is made of, `E`.
    pub elastic: Gigapascals,
    /// Force on antenna and radio, `F`.
    pub force: Newtons,
    /// Force on the pole itself, on all of its length together.
    pub own_force: Newtons,
}

impl Pole {
    /// How far the antenna nods, from both forces. An antenna above the top of the pole nods as its top does.
    ///
    /// ```text
    /// φ = F a² / (2 E I) + w a (3 L² - 3 L a + a²) / (6 E I),   w = own force / L
    /// ```
    ///
    /// Source: Euler–Bernoulli cantilever, fixed at its foot.
    #[must_use]
    pub fn nod(&self) -> Degrees {
        let (stiffness, length) = (self.stiffness(), self.length.0);
        let a = self.antenna.0.min(length);
        let line = self.own_force.0 / length;
        let point = self.force.0 * a * a / (2.0 * stiffness);
        let spread = line * a * (3.0 * length * length - 3.0 * length * a + a * a) / (6.0 * stiffness);
        Degrees((point + spread).to_degrees())
    }

    /// How far the antenna swings round, because it sits beside the pole.
    ///
    /// ```text
    /// θ = F e a / (G J)
    /// ```
    ///
    /// Source: torsion of a round tube; `G = E / 2.6`.
    #[must_use]
    pub fn twist(&self) -> Degrees {
        let shear = self.elastic.0 * 1e9 / (2.0 * (1.0 + POISSON));
        let torsion = self.section.torsion * 1e-12;
        let arm = self.offset.0 / 1000.0;
        Degrees((self.force.0 * arm * self.antenna.0.min(self.length.0) / (shear * torsion)).to_degrees())
    }

    /// Nod and swing together: the angle the beam moves, `√(φ² + θ²)`.
    ///
    /// Source: the two are at right angles.
    #[must_use]
    pub fn turn(&self) -> Degrees {
        Degrees(libm::hypot(self.nod().0, self.twist().0))
    }

    /// Moment at the foot.
    ///
    /// ```text
    /// M = F a + own force · L / 2
    /// ```
    ///
    /// Source: equilibrium.
    #[must_use]
    pub fn moment(&self) -> NewtonMetres {
        NewtonMetres(self.force.0 * self.antenna.0 + self.own_force.0 * self.length.0 / 2.0)
    }

    /// Greatest bending stress, at the foot: `σ = M / Z`.
    ///
    /// Source: elastic bending. No load factor, gust factor or ice is in it.
    #[must_use]
    pub fn stress(&self) -> Megapascals {
        Megapascals(self.moment().0 * 1000.0 / self.section.modulus)
    }

    /// `E I` in N·m².
    fn stiffness(&self) -> f64 {
        self.elastic.0 * 1e9 * self.section.second_moment * 1e-12
    }
}

/// What a metal pole is made of, and what it is reckoned with where nobody states better: elastic modulus and the stress
/// at which the commonest grade of it yields.
///
/// Source: EN 1993 for steel, grade S235; makers' tables for stainless 304 and 316 and for aluminium 6082-T6, whose strength
/// is halved, as welds halve it; all from memory, not seen.
#[must_use]
pub const fn usual_strength(metal: Metal) -> Option<(Gigapascals, Megapascals)> {
    match metal {
        Metal::Steel | Metal::Galvanised => Some((Gigapascals(210.0), Megapascals(235.0))),
        Metal::Stainless => Some((Gigapascals(193.0), Megapascals(205.0))),
        Metal::Aluminium => Some((Gigapascals(69.0), Megapascals(120.0))),
        Metal::Copper | Metal::TinnedCopper | Metal::Brass => None,
    }
}
