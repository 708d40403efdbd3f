//! What the parts and the lines of a sheet are called. A key is spelled for machines and never read back.

use std::fmt;

use crate::spec::{EndName, Way};

/// The name of a line within its group; `lines!` makes one of each field.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Name(&'static str);

impl Name {
    pub(super) const fn new(name: &'static str) -> Self {
        Self(name)
    }

    /// As it is spelled.
    #[must_use]
    pub const fn as_str(self) -> &'static str {
        self.0
    }

    /// Whether the line says what is left to a limit.
    #[must_use]
    pub fn is_margin(self) -> bool {
        self.0.ends_with("in_hand")
    }
}

/// Which end or ends stand on a side lobe.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum OnLobe {
    /// The end the sheet speaks of.
    Here,
    /// The end it looks at.
    There,
    /// Both.
    Both,
}

/// A part of a sheet.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum SectionKey {
    /// Geometry and air.
    Path,
    /// Line of sight.
    Profile,
    /// Level budget of a way.
    Budget(Way),
    /// Gas loss of a way in other air.
    GasBounds(Way),
    /// What the receiver of a way hears from others.
    Heard(Way),
    /// What the sender of a way puts into others.
    Disturbed(Way),
    /// What a way has in hand.
    Margins(Way),
    /// Levels of a way while aligning, in service and in an up-fade.
    Levels(Way),
    /// What crossed polarisations on one channel do to a way.
    Crossed(Way),
    /// A modulation state of a way, by its number.
    State(Way, usize),
    /// What a way may radiate.
    Licence(Way),
    /// A code of a way, by its number.
    Code(Way, usize),
    /// Both ways together.
    Service,
    /// A service from end to end.
    EndToEnd,
    /// A route of a service, by its number.
    Route(usize),
    /// An end.
    End(EndName),
    /// The antenna of an end.
    Antenna(EndName),
    /// Its side lobes.
    SideLobes(EndName),
    /// What is seen with an antenna on one.
    LobeReading(EndName, OnLobe),
    /// A threshold of the receiver, by its number.
    Threshold(EndName, usize),
    /// Wind.
    Wind(EndName),
    /// Ice.
    Ice(EndName),
    /// Fixings of the support.
    Fixings(EndName),
    /// People.
    People(EndName),
    /// Grounding.
    Ground(EndName),
    /// Lightning protection.
    Lightning(EndName),
    /// A cable run, by its number.
    Run(EndName, usize),
    /// A run of fibre, by its number.
    FibreRun(EndName, usize),
    /// What a run hands on.
    Onward(EndName, usize),
    /// A run of another end that leads here, by its number.
    Arrival(EndName, usize),
    /// A supply that a run shares with others, by the number of the run.
    Shared(EndName, usize),
    /// An antenna on the same support, by its hop and end.
    Beside(EndName, String, EndName),
    /// What is close to an end.
    Near(EndName),
    /// A document that is not the network's own, by kind and id.
    Elsewhere(&'static str, String),
    /// A record, by its id.
    Record(String),
    /// A cable run of a record, by its number.
    RecordRun(String, usize),
}

impl SectionKey {
    /// The key of a line in this part.
    #[must_use]
    pub fn line(&self, name: Name) -> Key {
        Key { section: self.clone(), name }
    }

    /// Whether it is what a crew found, and no part of the design.
    #[must_use]
    pub const fn is_of_a_record(&self) -> bool {
        matches!(self, Self::Record(_) | Self::RecordRun(..))
    }

    /// As it is spelled where `name` says what a numbered part is called: `ends.a.runs[0]`, `ends.a.runs[lan]`.
    #[must_use]
    pub fn spelled(&self, name: impl Fn(&Self) -> Option<String>) -> String {
        let numbered = |list: String, number: &usize| match name(self) {
            Some(name) => format!("{list}[{name}]"),
            None => format!("{list}[{number}]"),
        };
        match self {
            Self::Path => "path".into(),
            Self::Profile => "profile".into(),
            Self::Budget(way) => way.key().into(),
            Self::GasBounds(way) => format!("{}.gas", way.key()),
            Self::Heard(way) => format!("{}.interference", way.key()),
            Self::Disturbed(way) => format!("{}.neighbours", way.key()),
            Self::Margins(way) => format!("{}.margins", way.key()),
            Self::Levels(way) => format!("{}.levels", way.key()),
            Self::Crossed(way) => format!("{}.crossed", way.key()),
            Self::State(way, number) => numbered(format!("{}.states", way.key()), number),
            Self::Licence(way) => format!("{}.licence", way.key()),
            Self::Code(way, number) => numbered(format!("{}.licence.codes", way.key()), number),
            Self::Service => "service".into(),
            Self::EndToEnd => "end_to_end".into(),
            Self::Route(number) => numbered("routes".into(), number),
            Self::End(end) => format!("ends.{end}"),
            Self::Antenna(end) => format!("ends.{end}.antenna"),
            Self::SideLobes(end) => format!("ends.{end}.side_lobes"),
            Self::LobeReading(end, OnLobe::Here) => format!("ends.{end}.side_lobes.here"),
            Self::LobeReading(end, OnLobe::There) => format!("ends.{end}.side_lobes.there"),
            Self::LobeReading(end, OnLobe::Both) => format!("ends.{end}.side_lobes.both"),
            Self::Threshold(end, number) => numbered(format!("ends.{end}.thresholds"), number),
            Self::Wind(end) => format!("ends.{end}.wind"),
            Self::Ice(end) => format!("ends.{end}.ice"),
            Self::Fixings(end) => format!("ends.{end}.fixings"),
            Self::People(end) => format!("ends.{end}.people"),
            Self::Ground(end) => format!("ends.{end}.ground"),
            Self::Lightning(end) => format!("ends.{end}.lightning"),
            Self::Run(end, number) => numbered(format!("ends.{end}.runs"), number),
            Self::FibreRun(end, number) => numbered(format!("ends.{end}.fibre_runs"), number),
            Self::Onward(end, number) => numbered(format!("ends.{end}.runs"), number) + ".onward",
            Self::Arrival(end, number) => numbered(format!("ends.{end}.arrivals"), number),
            Self::Shared(end, number) => numbered(format!("ends.{end}.runs"), number) + ".shared",
            Self::Beside(end, hop, other) => format!("ends.{end}.beside[{hop}/{other}]"),
            Self::Near(end) => format!("near.{end}"),
            Self::Elsewhere(kind, id) => format!("elsewhere.{kind}[{id}]"),
            Self::Record(id) => format!("records.{id}"),
            Self::RecordRun(id, number) => numbered(format!("records.{id}.runs"), number),
        }
    }
}

impl fmt::Display for SectionKey {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.spelled(|_| None))
    }
}

/// A line of a sheet.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Key {
    /// The part it stands in.
    pub section: SectionKey,
    /// Its name there.
    pub name: Name,
}

impl fmt::Display for Key {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}.{}", self.section, self.name.as_str())
    }
}
