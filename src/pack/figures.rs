//! Drawings for the packs: each takes its numbers from the sheet and says in words what it shows.

mod chain;
mod elevation;
mod grades;
mod mounting;
mod outages;
mod place;
mod plan;
mod scale;

use serde::Serialize;

use crate::drawing::Drawing;

pub(super) use chain::chain;
pub(super) use elevation::{Carrier, Stand, elevation};
pub(super) use grades::grades;
pub(super) use mounting::mounting;
pub(super) use outages::outages;
pub(super) use place::{code, place};
pub(super) use plan::plan;
pub(super) use scale::scale;

/// A drawing as a page takes it.
#[derive(Debug, Clone, Serialize)]
pub(super) struct Figure {
    svg: String,
    /// What it shows, for whoever cannot see it.
    alt: String,
}

impl Figure {
    pub(super) fn of(drawing: &Drawing, alt: String) -> Self {
        Self { svg: drawing.svg(&alt), alt }
    }
}
