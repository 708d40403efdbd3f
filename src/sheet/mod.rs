//! The sheet: every number the program ever prints, computed once for each hop.
//!
//! [`HopSheet::compute`] takes a resolved hop and calls the functions of [`crate::physics`]. Rules compare its lines, pages
//! set them in type, the `sheet` command lists them; none of them computes a physical quantity. A line that cannot be
//! computed says why, and what depends on it says the same.

mod air;
mod along;
mod aperture;
mod application;
mod arrival;
mod asked;
mod assumption;
mod beside;
mod blown;
mod budget;
mod crossed;
mod direction;
mod dish;
mod disturbed;
mod elsewhere;
mod end;
mod fading;
mod feed;
mod fibre;
mod fixing;
mod gain;
mod gale;
mod gap;
mod gas_bounds;
mod geometry;
mod ground;
mod growth;
mod handling;
mod heard;
mod heard_mend;
mod hearing;
mod ice;
mod key;
mod levels;
mod licence;
mod lightning;
mod line;
mod losses;
mod margin;

mod mend;
mod meter;
mod method;
mod missing;
mod mount;
mod near;
mod near_field;
mod obstacles;
mod onward;
mod open_items;
mod outage;
mod path;
mod people;
mod pole;
mod power_line;
mod practice;
mod profile;
mod rain;
mod reason;
mod record;
mod relief;
mod resistance;
mod run;
mod saying;
mod scene;
mod sentence;
mod service;
mod services;
mod shared;
mod shown;
pub mod slips;
mod sources;
mod states;
mod target;
mod terminal;
mod terrain;
mod threshold;
mod title;
mod traced;
mod visit;
mod wanted;
mod what;
mod wind;

use crate::network::{Companions, ResolvedHop};
use crate::physics::antenna;
use crate::spec::{Both, EndName, Way};
use crate::units::{Decibels, Gigahertz, Quantity as _};

pub use crate::physics::Confidence;
pub use crate::physics::ethernet_power::Class as PowerClass;
pub use crate::physics::multipath::{HIGHEST as HIGHEST_MULTIPATH, SHORTEST as SHORTEST_MULTIPATH};
pub use along::PathPoint;
pub use application::Application;
pub use arrival::{Arrival, ArrivalLines};
pub use asked::CRITERIA;
pub use assumption::Assumption;
pub use beside::{Beside, BesideLines};
pub use budget::DirectionLines;
pub use crossed::CrossedLines;
pub use direction::Direction;
pub use dish::{AntennaLines, DishSheet, LobeLines, LobeReadingLines, USUAL_EFFICIENCY};
pub use disturbed::{DisturbedLines, DisturbedSheet, Reached};
pub use elsewhere::{ElsewhereLines, ElsewhereSheet};
pub use end::{EndLines, EndSheet};
pub use feed::{Classes, Feed};
pub use fibre::{FibreLines, FibreSheet};
pub use fixing::FixingLines;
pub use gap::{Gap, UNSEEN_HEIGHT};
pub use gas_bounds::GasBoundLines;
pub use ground::{Code, GroundLines};
pub use growth::Outgrown;
pub use handling::HandlingLines;
pub use heard::{Aggressor, HeardLines, HeardSheet};
pub use heard_mend::HeardMend;
pub use hearing::Hearing;
pub use ice::IceLines;
pub use key::{Key, Name, OnLobe, SectionKey};
pub use levels::LevelLines;
pub use licence::{CodeLines, CodeSheet, Licence, LicenceLines, RasterSheet};
pub use lightning::{LightningLines, LightningSheet};
pub use line::{AS_WRITTEN, Line, Row, Section};
pub use margin::MarginLines;
pub use mend::{Mend, Mends};
pub use method::Method;
pub use missing::{Cause, Missing};
pub use mount::{Metals, Reach, TiltMend, greatest_torque, pipe_named, wrench};
pub use near::{NearLines, NearSheet};
pub use onward::OnwardLines;
pub use open_items::required_checks;
pub use path::PathLines;
pub use people::{PeopleLines, TooNear};
pub use pole::StifferPipe;
pub use power_line::LineNear;
pub use practice::{LONGEST_RUN, Practice};
pub use profile::{ProfileLines, ProfileSheet};
pub use rain::RainMaps;
pub use reason::Reason;
pub use record::{RecordLimits, RecordLines, RecordRunLines, RecordRunSheet, RecordSheet};
pub use relief::{GroundPoint, NoProfile, Profile, Source, Standing};
pub use run::{RunLines, RunSheet};
pub use saying::{Falls, Saying, Told};
pub use scene::Worst;
pub use sentence::{Argument, Day, Figure, Sentence, Spoken, Term, Whole};
pub use service::ServiceLines;
pub use services::{HopPart, MOST_ROUTES, Parts, RouteLines, ServicePathLines, ServiceSheet, ServiceTarget};
pub use shared::{SharedLines, SharedSupply};
pub use shown::{Across, BothWays, Fine, KeepClear, Part, Radii, Rare, Ratio, Shown};
pub use sources::{Listed, Sources};
pub use states::{State, StateLines};
pub use target::{Target, WantedAir};
pub use terrain::Terrains;
pub use threshold::{ThresholdLines, ThresholdSheet};
pub use title::Title;
pub use traced::Traced;
pub use wanted::Wanted;
pub use what::What;
pub use wind::WindLines;

use direction::Means;
use geometry::Geometry;
use heard::Listener;
use path::GroundOf;
use terminal::Terminals;

/// Everything computed for one hop.
#[derive(Debug)]
pub struct HopSheet<'n> {
    /// What was read.
    pub resolved: &'n ResolvedHop<'n>,
    /// What it must reach.
    pub target: Target,
    /// Geometry and air.
    pub path: PathLines,
    /// Line of sight.
    pub profile: ProfileSheet,
    /// What is close to each end.
    pub near: Both<NearSheet>,
    /// The budget of each way.
    pub directions: Both<Direction<'n>>,
    /// From whom the receiver of each way hears too much.
    pub heard: Both<HeardSheet>,
    /// What the sender of each way puts into the receivers of other owners.
    pub disturbed: Both<DisturbedSheet>,
    /// Gas loss of each way in other air, for information.
    pub gas_bounds: Both<GasBoundLines>,
    /// What codes and licence allow, each way.
    pub licence: Both<Licence>,
    /// Both directions together.
    pub service: ServiceLines,
    /// What would fix it, where it misses its objectives.
    pub mends: Mends,
    /// Each end.
    pub ends: Both<EndSheet<'n>>,
    /// What it is made of that its network does not describe itself.
    pub elsewhere: Vec<ElsewhereSheet>,
    /// What came back from the ends, by end and day, the newest last.
    pub records: Vec<RecordSheet<'n>>,
}

impl<'n> HopSheet<'n> {
    /// Computes the sheet of a hop, with the rain maps and the ground tiles of its network, what is heard there and what stands
    /// beside its ends.
    #[must_use]
    pub fn compute(
        resolved: &'n ResolvedHop<'n>,
        maps: &RainMaps,
        terrains: &Terrains,
        hearing: &'n Hearing<'n>,
        company: Companions<'n>,
    ) -> Self {
        let target = Target::of(resolved);
        let geometry = Geometry::of(resolved);
        let profile = profile::compute(resolved, &geometry, terrains);
        let ground = GroundOf { diffraction: &profile.diffraction, mean: &profile.mean_terrain };
        let path = path::compute(resolved, &geometry, &target, maps, ground);
        let terminals = Terminals::of(resolved);
        let around = heard::of(resolved, hearing);
        let means = Means { path: &path, target: &target, terminals: &terminals, hearing, heard: &around };
        let near = Both::ends(|end| near::compute(resolved, &path, end, profile.fraction(), &profile.frequency));
        let directions = direction::both(resolved, &means);
        let heard = Both::ways(|way| {
            let (receiver, lines, heard) = (directions[way].receiver, &directions[way].heard, &around[way]);
            Listener { resolved, receiver, lines, heard, hearing, target: &target }.sheet()
        });
        let disturbed = Both::ways(|way| disturbed::compute(resolved, way, hearing, &target));
        let gas_bounds = gas_bounds::compute(resolved, &path, &target);
        let licence = directions.each_ref().map(|direction| licence::compute(resolved, direction));
        let service = service::compute(&directions, &means);
        let ends = Both::ends(|name| end::compute(resolved, name, &path, &directions, &target, company));
        let mends = mend::of(resolved, maps, &geometry, means, &directions, &licence);
        let records = visit::records(resolved, maps, &geometry, &means, &ends);
        Self {
            resolved,
            target,
            path,
            profile,
            near,
            directions,
            heard,
            disturbed,
            gas_bounds,
            licence,
            service,
            mends,
            ends,
            elsewhere: elsewhere::of(resolved),
            records,
        }
    }

    /// The defaults that stand in for what nobody stated, a sentence each, for the design pack.
    #[must_use]
    pub fn assumptions(&self) -> Vec<Assumption> {
        let mut list = self.target.assumptions();
        list.extend(self.profile.assumptions());
        list
    }

    /// The hop's id.
    #[must_use]
    pub fn id(&self) -> &str {
        &self.resolved.hop.id
    }

    /// The newest record of an end: the last that has a date, else one still being filled in.
    #[must_use]
    pub fn newest_record(&self, name: EndName) -> Option<&RecordSheet<'n>> {
        self.records.iter().rev().find(|record| record.end == name)
    }

    /// How far the newest records of the two ends disagree, the predictions taken off and what both antennas gain more at the
    /// higher of the two frequencies, where the predictions do not count it.
    #[must_use]
    pub fn disagreement(&self) -> Option<Decibels> {
        let left = Both::ends(|name| self.newest_record(name)?.lines.difference.get()).all(|left| left)?;
        Some(Decibels((left.a - left.b - self.gain_in_favour_of_a()?).0.abs()))
    }

    /// How much more both antennas together gain on the way to end a than on the way to end b, beyond what the levels count:
    /// nothing where their gain is stated by frequency.
    #[must_use]
    pub fn gain_in_favour_of_a(&self) -> Option<Decibels> {
        let received = |name: EndName| {
            let frequency = &self.directions[name.incoming()].lines.frequency;
            frequency.map(|given| given.value).line().get()
        };
        let more = antenna::gain_over(received(EndName::A)?, received(EndName::B)?);
        let uncounted = self.resolved.ends.iter().filter(|end| !gain::goes_by_frequency(end.antenna));
        Some(uncounted.fold(Decibels(0.0), |sum, _| sum + more))
    }

    /// All lines, in the order they are printed: those of the design, then those of the records.
    #[must_use]
    pub fn sections(&self) -> Vec<Section> {
        let mut sections = self.design_sections();
        self.records.iter().for_each(|record| record.sections(&mut sections));
        sections
    }

    /// The lines of the design, in the order they are printed.
    #[must_use]
    pub fn design_sections(&self) -> Vec<Section> {
        let mut sections = vec![self.path.section(SectionKey::Path, Title::Path)];
        sections.push(self.profile.section());
        for (direction, licence) in self.directions.iter().zip(self.licence.iter()) {
            direction.sections(&mut sections);
            // Most networks know of no neighbours.
            let disturbed = self.disturbed[direction.way].section(direction.way);
            sections.extend(Some(disturbed).filter(|section| !section.rows.is_empty()));
            let (gas, way) = (&self.gas_bounds[direction.way], direction.way);
            sections.push(gas.section(SectionKey::GasBounds(way), Title::GasBounds { way }));
            licence.sections(direction.way, &mut sections);
        }
        sections.push(self.service.section(SectionKey::Service, Title::BothDirections).planned());
        for end in self.ends.iter() {
            end.sections(&mut sections);
        }
        for near in self.near.iter() {
            sections.push(near.lines.section(SectionKey::Near(near.name), Title::CloseTo { end: near.name }));
        }
        sections.extend(self.elsewhere.iter().map(ElsewhereSheet::section));
        sections
    }

    /// Lines without a value that no rule of its own speaks of: their words and why.
    #[must_use]
    pub fn missing(&self) -> Vec<(&'static str, Missing)> {
        let mut list = Vec::new();
        let mut each = |words: &'static str, missing: &Missing| {
            if missing.cause != Cause::Judged {
                list.push((words, missing.clone()));
            }
        };
        self.path.missing(&mut each);
        self.profile.missing(&mut each);
        self.near.iter().for_each(|near| near.lines.missing(&mut each));
        self.directions.iter().for_each(|direction| direction.missing(&mut each));
        self.disturbed.iter().for_each(|disturbed| disturbed.lines.missing(&mut each));
        self.gas_bounds.iter().for_each(|gas| gas.missing(&mut each));
        self.licence.iter().for_each(|licence| licence.missing(&mut each));
        self.service.missing(&mut each);
        self.ends.iter().for_each(|end| end.missing(&mut each));
        self.records.iter().filter(|record| record.judged).for_each(|record| record.missing(&mut each));
        list
    }

    /// Whether both ends are the same half of a duplex pair: neither hears where the other sends.
    #[must_use]
    pub fn same_half(&self) -> bool {
        let Both { a, b } = self.resolved.ends.each_ref().map(|end| end.half);
        let apart = |one: &crate::spec::Window<Gigahertz>, other: &crate::spec::Window<Gigahertz>| {
            one.max.value < other.min.value || other.max.value < one.min.value
        };
        apart(&a.transmit, &b.receive) && apart(&b.transmit, &a.receive) && !apart(&a.transmit, &b.transmit)
    }

    /// Half the width of the channel.
    #[must_use]
    pub fn half_bandwidth(&self) -> Gigahertz {
        Gigahertz(self.resolved.hop.channel.bandwidth.value.0 / 2000.0)
    }

    /// The lower and upper edge of the channel of a way.
    #[must_use]
    pub fn channel_edges(&self, way: Way) -> (Gigahertz, Gigahertz) {
        let centre = self.resolved.hop.channel.frequency(way).value;
        ((centre - self.half_bandwidth()).tidy(), (centre + self.half_bandwidth()).tidy())
    }
}
