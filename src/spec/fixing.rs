//! What holds a support to a wall or to its foundation.

use schemars::JsonSchema;
use serde::Deserialize;

use super::Text;
use crate::units::{Given, Kilograms, Millimetres, Newtons};

/// The fixings of a support: anchors or bolts in two rows of as many each, one above the other on a wall, one on each side of a base
/// plate. What each must hold in the survival wind is computed by plain statics; what it bears is an engineer's to state.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Fixings {
    /// What they are: `M12 bonded anchors, stainless`.
    pub title: Text,
    /// How many in all, both rows together.
    pub count: u8,
    /// Between the two rows.
    #[schemars(extend("x-least" = 1))]
    pub spacing: Given<Millimetres>,
    /// From the wall to the axis of the tube. Default nothing, as for a base plate.
    #[schemars(extend("x-least" = 0))]
    pub stand_off: Option<Given<Millimetres>>,
    /// Mass of the support itself.
    pub mass: Option<Given<Kilograms>>,
    /// What each of them bears.
    pub bears: Option<FixingStrength>,
}

/// What one fixing bears where it sits, all factors of safety taken off, as a structural engineer states it.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct FixingStrength {
    /// Along its axis, off the wall.
    pub tension: Given<Newtons>,
    /// Across its axis.
    pub shear: Given<Newtons>,
    /// Who says so: engineer, calculation and its date.
    pub stated_by: Text,
}
