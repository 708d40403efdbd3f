//! A pole held at its foot, with antennas on it, in the wind.
//!
//! Forces and a section go in; how far an antenna turns, and how hard the foot is worked, come out. What holds the foot
//! gives way too, so a real pole moves more than this, never less.

use super::metals::Metal;
use super::pipe::Section;
use crate::units::{Degrees, Gigapascals, Megapascals, Metres, Millimetres, NewtonMetres, Newtons};

/// Poisson's ratio of steel and aluminium alike, near enough, behind the shear modulus `G = E / (2 (1 + ν))`.
const POISSON: f64 = 0.3;

/// What the wind presses on at one height of a pole.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Load {
    /// Height above the foot, `h`.
    pub height: Metres,
    /// Sideways distance from the axis of the pole, `e`.
    pub offset: Millimetres,
    /// Force on antenna and radio, `F`.
    pub force: Newtons,
}

/// A pole and what pushes it.
#[derive(Debug, Clone, PartialEq)]
pub struct Pole {
    /// Length above the foot, `L`.
    pub length: Metres,
    /// Its section.
    pub section: Section,
    /// Elastic modulus of what it is made of, `E`.
    pub elastic: Gigapascals,
    /// All that stands on it. Forces are added by their size, as if one wind met all of them square: an upper bound.
    pub loads: Vec<Load>,
    /// Force on the pole itself, on all of its length together.
    pub own_force: Newtons,
}

impl Pole {
    /// How far an antenna at height `a` nods, from all forces. What stands above the top nods and pushes as the top does.
    ///
    /// ```text
    /// φ = Σ F m (2 h - m) / (2 E I) + w a (3 L² - 3 L a + a²) / (6 E I),   m = min(a, h), w = own force / L
    /// ```
    ///
    /// Source: Euler–Bernoulli cantilever, fixed at its foot.
    #[must_use]
    pub fn nod(&self, at: Metres) -> Degrees {
        let (stiffness, length) = (self.stiffness(), self.length.0);
        let a = at.0.min(length);
        let line = self.own_force.0 / length;
        let points = self.loads.iter().map(|load| {
            let h = load.height.0.min(length);
            let m = a.min(h);
            load.force.0 * m * (2.0 * h - m) / (2.0 * stiffness)
        });
        let spread = line * a * (3.0 * length * length - 3.0 * length * a + a * a) / (6.0 * stiffness);
        Degrees((points.sum::<f64>() + spread).to_degrees())
    }

    /// How far an antenna at height `a` swings round, because antennas sit beside the pole: as if all sat on one side.
    ///
    /// ```text
    /// θ = Σ F e min(a, h) / (G J)
    /// ```
    ///
    /// Source: torsion of a round tube; `G = E / 2.6`.
    #[must_use]
    pub fn twist(&self, at: Metres) -> Degrees {
        let shear = self.elastic.0 * 1e9 / (2.0 * (1.0 + POISSON));
        let torsion = self.section.torsion * 1e-12;
        let turning = self.loads.iter().map(|load| {
            let arm = load.offset.0 / 1000.0;
            load.force.0 * arm * at.0.min(load.height.0).min(self.length.0) / (shear * torsion)
        });
        Degrees(turning.sum::<f64>().to_degrees())
    }

    /// Nod and swing together: the angle the beam of an antenna at that height moves, `√(φ² + θ²)`.
    ///
    /// Source: the two are at right angles.
    #[must_use]
    pub fn turn(&self, at: Metres) -> Degrees {
        Degrees(libm::hypot(self.nod(at).0, self.twist(at).0))
    }

    /// Moment at the foot.
    ///
    /// ```text
    /// M = Σ F h + own force · L / 2
    /// ```
    ///
    /// Source: equilibrium.
    #[must_use]
    pub fn moment(&self) -> NewtonMetres {
        let loads: f64 = self.loads.iter().map(|load| load.moment().0).sum();
        NewtonMetres(loads + self.own_force.0 * self.length.0 / 2.0)
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

impl Load {
    /// What it adds to the moment at the foot, `F h`.
    #[must_use]
    pub fn moment(&self) -> NewtonMetres {
        NewtonMetres(self.force.0 * self.height.0)
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
