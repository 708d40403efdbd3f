//! A sheet as a list of lines, for people and for machines: what `sheet` prints and what a pack carries along.

mod json;
mod places;
mod summary;
mod table;

use crate::network::Inherited;
use crate::sheet::{HopSheet, Section, ServiceSheet};

pub use json::{AFTER, BEFORE, BETWEEN, SERVICES, json, json_of_hop, json_of_service};
pub use places::Places;
pub use summary::{summary, summary_of_service};
pub use table::{table, table_of_service};

/// The lines of one hop, free of the library they came from.
#[derive(Debug, Clone)]
pub struct HopListing {
    /// Network the hop belongs to.
    pub network: String,
    /// The hop's id.
    pub hop: String,
    /// The hop's title, or its id.
    pub title: String,
    /// All lines.
    pub sections: Vec<Section>,
    /// Defaults that stood in.
    pub assumptions: Vec<String>,
    /// What the hop does not write itself.
    pub taken: Vec<Inherited>,
}

/// The lines of one service, free of the library it came from.
#[derive(Debug, Clone)]
pub struct ServiceListing {
    /// Network the service belongs to.
    pub network: String,
    /// The service's id.
    pub service: String,
    /// Its title, or its id.
    pub title: String,
    /// All lines.
    pub sections: Vec<Section>,
}

impl ServiceListing {
    /// Takes the lines out of a sheet.
    #[must_use]
    pub fn of(sheet: &ServiceSheet<'_>) -> Self {
        let service = sheet.resolved.service;
        Self {
            network: sheet.resolved.network.id.to_string(),
            service: service.id.to_string(),
            title: service.title.as_ref().map_or_else(|| service.id.to_string(), ToString::to_string),
            sections: sheet.sections(),
        }
    }
}

impl HopListing {
    /// Takes the lines out of a sheet.
    #[must_use]
    pub fn of(sheet: &HopSheet<'_>) -> Self {
        let hop = sheet.resolved.hop;
        Self {
            network: sheet.resolved.network.id.to_string(),
            hop: hop.id.to_string(),
            title: hop.title.as_ref().map_or_else(|| hop.id.to_string(), ToString::to_string),
            sections: sheet.sections(),
            assumptions: sheet.assumptions().iter().map(ToString::to_string).collect(),
            taken: hop.taken().to_vec(),
        }
    }
}

impl HopListing {
    /// The same without the lines of records.
    #[must_use]
    pub fn of_design(&self) -> Self {
        let mut design = self.clone();
        design.sections.retain(|section| !section.key.is_of_a_record());
        design
    }
}
