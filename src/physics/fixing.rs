//! What anchors and bolts that hold a support have to hold, by plain statics: all of them share alike, nothing gives way.
//!
//! No factor of safety, no prying, no edge distance and no strength of the wall is in it. What a fixing bears is a structural
//! engineer's to state.

use crate::units::{Kilograms, Millimetres, NewtonMetres, Newtons};

/// Standard gravity.
const GRAVITY: f64 = 9.80665;

/// What acts on the fixings of a support: wind from the worst side, and weight.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Acting {
    /// Force of the wind, `F`.
    pub force: Newtons,
    /// Its moment at the foot of the free length, `M`.
    pub moment: NewtonMetres,
    /// Mass of all that hangs there, `m`.
    pub mass: Kilograms,
}

/// How fixings are arranged: two rows of as many each.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rows {
    /// Fixings in all, `n`.
    pub count: f64,
    /// Between the two rows, `s`.
    pub spacing: Millimetres,
    /// From the wall to the axis of the support, `e`; nothing for a base plate.
    pub stand_off: Millimetres,
}

/// Pull and shear on one fixing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Held {
    /// Along its axis.
    pub tension: Newtons,
    /// Across its axis.
    pub shear: Newtons,
}

/// What each fixing holds of a tube that is held off a wall in two rows, one above the other, and stands free above the upper.
///
/// ```text
/// T = (F + M / s + m g e / s) / (n / 2)      wind off the wall, at the upper row
/// V = √[((F + M / s) / (n / 2))² + (m g / n)²]   wind along the wall
/// ```
///
/// Source: equilibrium of a beam on two supports.
#[must_use]
pub fn on_wall(acting: Acting, rows: Rows) -> Held {
    let spacing = rows.spacing.0 / 1000.0;
    let weight = acting.mass.0 * GRAVITY;
    let at_upper_row = acting.force.0 + acting.moment.0 / spacing;
    let tension = (at_upper_row + weight * rows.stand_off.0 / 1000.0 / spacing) / (rows.count / 2.0);
    let shear = libm::hypot(at_upper_row / (rows.count / 2.0), weight / rows.count);
    Held { tension: Newtons(tension), shear: Newtons(shear) }
}

/// What each fixing holds of a tube on a base plate, which tips over the row on the far side. The weight that holds it down is
/// left out.
///
/// ```text
/// T = M / (s n / 2),   V = F / n
/// ```
///
/// Source: equilibrium.
#[must_use]
pub fn on_base(acting: Acting, rows: Rows) -> Held {
    let spacing = rows.spacing.0 / 1000.0;
    Held {
        tension: Newtons(acting.moment.0 / (spacing * rows.count / 2.0)),
        shear: Newtons(acting.force.0 / rows.count),
    }
}
