//! The sheet: every number the program ever prints, computed once for each hop.
//!
//! [`HopSheet::compute`] takes a resolved hop and calls the functions of [`crate::physics`]. Rules compare its lines, pages
//! set them in type, the `sheet` command lists them; none of them computes a physical quantity. A line that cannot be
//! computed says why, and what depends on it says the same.

mod budget;
mod end;
mod line;
mod margin;
mod path;
mod run;
mod target;

use crate::at;
use crate::network::ResolvedHop;
use crate::place::Place;
use crate::units::Gigahertz;

pub use budget::{Direction, DirectionLines, State, StateLines};
pub use end::{Code, EndLines, EndSheet, Reach, TiltMend};
pub use line::{AS_WRITTEN, Line, Missing, Row, Section, Shown, Words};
pub use margin::MarginLines;
pub use path::{PathLines, ServiceLines};
pub use run::{Feed, RunLines, RunSheet};
pub use target::{LONGEST_RUN, Target, Wanted};

/// Everything computed for one hop.
#[derive(Debug)]
pub struct HopSheet<'n> {
    /// What was read.
    pub resolved: &'n ResolvedHop<'n>,
    /// What it must reach.
    pub target: Target,
    /// Geometry and air.
    pub path: PathLines,
    /// From end `a` to end `b`.
    pub a_to_b: Direction<'n>,
    /// From end `b` to end `a`.
    pub b_to_a: Direction<'n>,
    /// Both directions together.
    pub service: ServiceLines,
    /// End `a`.
    pub a: EndSheet<'n>,
    /// End `b`.
    pub b: EndSheet<'n>,
}

impl<'n> HopSheet<'n> {
    /// Computes the sheet of a hop.
    #[must_use]
    pub fn compute(resolved: &'n ResolvedHop<'n>) -> Self {
        let target = Target::of(resolved);
        let path = path::compute(resolved, &target);
        let a_to_b = budget::compute(resolved, &path, &target, true);
        let b_to_a = budget::compute(resolved, &path, &target, false);
        let service = path::service(&a_to_b, &b_to_a, &target);
        let a = end::compute(&resolved.a, &resolved.b, &path, &b_to_a, &target, resolved);
        let b = end::compute(&resolved.b, &resolved.a, &path, &a_to_b, &target, resolved);
        Self { resolved, target, path, a_to_b, b_to_a, service, a, b }
    }

    /// The hop's id.
    #[must_use]
    pub fn id(&self) -> &str {
        &self.resolved.hop.id
    }

    /// Both directions.
    #[must_use]
    pub fn directions(&self) -> [&Direction<'n>; 2] {
        [&self.a_to_b, &self.b_to_a]
    }

    /// Both ends.
    #[must_use]
    pub fn ends(&self) -> [&EndSheet<'n>; 2] {
        [&self.a, &self.b]
    }

    /// All lines, in the order they are printed.
    #[must_use]
    pub fn sections(&self) -> Vec<Section> {
        let mut sections = vec![Section::of("path", "Path", |rows| self.path.rows("path", rows))];
        for direction in self.directions() {
            direction.sections(&mut sections);
        }
        sections.push(Section::of("service", "Both directions", |rows| self.service.rows("service", rows)));
        for end in self.ends() {
            end.sections(&mut sections);
        }
        sections
    }

    /// Lines without a value that no rule of its own speaks of.
    pub fn missing(&self) -> impl Iterator<Item = MissingLine> {
        let rows = self.sections().into_iter().flat_map(|section| section.rows);
        rows.filter_map(|row| match row.text {
            Err(cause) if !cause.judged => Some(MissingLine { words: row.words, cause }),
            _ => None,
        })
    }

    /// Whether both ends are the same half of a duplex pair: neither hears where the other sends.
    #[must_use]
    pub fn same_half(&self) -> bool {
        let (a, b) = (self.resolved.a.half, self.resolved.b.half);
        let apart = |one: &crate::spec::Window<Gigahertz>, other: &crate::spec::Window<Gigahertz>| {
            one.max.value < other.min.value || other.max.value < one.min.value
        };
        apart(&a.transmit, &b.receive) && apart(&b.transmit, &a.receive) && !apart(&a.transmit, &b.transmit)
    }

    /// Where the frequency of a direction is written.
    #[must_use]
    pub fn frequency_place(&self, direction: &Direction<'_>) -> Place {
        let hop = self.resolved.hop;
        if direction.name == "a_to_b" { at!(hop.channel.a_to_b) } else { at!(hop.channel.b_to_a) }
    }

    /// Half the width of the channel.
    #[must_use]
    pub fn half_bandwidth(&self) -> Gigahertz {
        Gigahertz(self.resolved.hop.channel.bandwidth.value.0 / 2000.0)
    }

    /// The lower and upper edge of the channel of a direction.
    #[must_use]
    pub fn channel_edges(&self, direction: &Direction<'_>) -> (Gigahertz, Gigahertz) {
        let channel = &self.resolved.hop.channel;
        let centre = if direction.name == "a_to_b" { channel.a_to_b.value } else { channel.b_to_a.value };
        (centre - self.half_bandwidth(), centre + self.half_bandwidth())
    }
}

/// A line that could not be computed.
#[derive(Debug)]
pub struct MissingLine {
    /// What it is, in words.
    pub words: &'static str,
    /// Why it is not there.
    pub cause: Missing,
}
