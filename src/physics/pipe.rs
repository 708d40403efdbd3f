//! Tubes: their sizes as sold and as they measure, and what a section resists.
//!
//! A nominal size is a name, not a measure: a 2-inch pipe is 60.3 mm outside. Clamps close on what measures.

use std::f64::consts::PI;

use crate::units::{Millimetres, SquareMillimetres};

/// A pipe as it is sold.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pipe {
    /// Name of its size: `NPS 2`, `DN 50`.
    pub name: &'static str,
    /// The number in that name as somebody may take it for a diameter.
    pub nominal: Millimetres,
    /// Outside diameter.
    pub outside: Millimetres,
    /// Thickness of the wall.
    pub wall: Millimetres,
}

const fn inch(name: &'static str, nominal: f64, outside: f64, wall: f64) -> Pipe {
    Pipe { name, nominal: Millimetres(nominal * 25.4), outside: Millimetres(outside), wall: Millimetres(wall) }
}

const fn metric(name: &'static str, nominal: f64, outside: f64, wall: f64) -> Pipe {
    Pipe { name, nominal: Millimetres(nominal), outside: Millimetres(outside), wall: Millimetres(wall) }
}

/// Pipes poles are made of.
///
/// Source: ASME B36.10M schedule 40 for `NPS`, EN 10255 medium series for `DN`, as other open tables quote them.
pub const PIPES: [Pipe; 19] = [
    inch("NPS 1", 1.0, 33.4, 3.38),
    inch("NPS 1-1/4", 1.25, 42.16, 3.56),
    inch("NPS 1-1/2", 1.5, 48.26, 3.68),
    inch("NPS 2", 2.0, 60.33, 3.91),
    inch("NPS 2-1/2", 2.5, 73.03, 5.16),
    inch("NPS 3", 3.0, 88.9, 5.49),
    inch("NPS 3-1/2", 3.5, 101.6, 5.74),
    inch("NPS 4", 4.0, 114.3, 6.02),
    inch("NPS 5", 5.0, 141.3, 6.55),
    inch("NPS 6", 6.0, 168.28, 7.11),
    metric("DN 25", 25.0, 33.7, 3.2),
    metric("DN 32", 32.0, 42.4, 3.2),
    metric("DN 40", 40.0, 48.3, 3.2),
    metric("DN 50", 50.0, 60.3, 3.6),
    metric("DN 65", 65.0, 76.1, 3.6),
    metric("DN 80", 80.0, 88.9, 4.0),
    metric("DN 100", 100.0, 114.3, 4.5),
    metric("DN 125", 125.0, 139.7, 5.0),
    metric("DN 150", 150.0, 165.1, 5.0),
];

/// Two diameters nearer than this are the same size.
const SAME: f64 = 0.05;

/// The pipe whose nominal size somebody wrote for its diameter. None where a pipe measures just that, too: 3 1/2 in is
/// the name of one pipe and the measure of another.
#[must_use]
pub fn named_for(diameter: Millimetres) -> Option<&'static Pipe> {
    let same = |other: Millimetres| (other.0 - diameter.0).abs() < SAME;
    let measures = PIPES.iter().any(|pipe| same(pipe.outside));
    PIPES.iter().find(|pipe| !measures && same(pipe.nominal))
}

/// The thinnest wall a pipe of this outside diameter is sold with. None for one that is no such pipe.
#[must_use]
pub fn usual_wall(outside: Millimetres) -> Option<Millimetres> {
    let same = PIPES.iter().filter(|pipe| (pipe.outside.0 - outside.0).abs() < 2.0 * SAME);
    same.map(|pipe| pipe.wall).min_by(|one, other| one.0.total_cmp(&other.0))
}

/// What a round hollow section resists.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Section {
    /// Metal, `A`.
    pub area: SquareMillimetres,
    /// Second moment of area, `I`, in mm⁴.
    pub second_moment: f64,
    /// Elastic section modulus, `Z`, in mm³.
    pub modulus: f64,
    /// Torsion constant, `J`, in mm⁴.
    pub torsion: f64,
}

/// The section of a tube of outside diameter `D` and wall `t`. None for a wall thicker than half the tube or of nothing.
///
/// ```text
/// d = D - 2 t,   A = π/4 (D² - d²),   I = π/64 (D⁴ - d⁴),   Z = I / (D/2),   J = 2 I
/// ```
///
/// Source: geometry of a ring.
#[must_use]
pub fn section(outside: Millimetres, wall: Millimetres) -> Option<Section> {
    let (big, small) = (outside.0, outside.0 - 2.0 * wall.0);
    if wall.0.is_nan() || wall.0 <= 0.0 || small < 0.0 {
        return None;
    }
    let (big_squared, small_squared) = (big * big, small * small);
    let second_moment = PI / 64.0 * (big_squared * big_squared - small_squared * small_squared);
    Some(Section {
        area: SquareMillimetres(PI / 4.0 * (big_squared - small_squared)),
        second_moment,
        modulus: second_moment / (big / 2.0),
        torsion: 2.0 * second_moment,
    })
}
