//! What a person writes: one struct a kind of document, field names equal to the YAML keys.
//!
//! These types are the language. Their doc comments become the descriptions in `schema/`, and through it the help an
//! editor shows. They hold no places and no spans: a document's place is kept beside it, see [`crate::network`].

mod alignment;
mod antenna;
mod arrester;
mod bracket;
mod cable;
mod calendar;
mod carried;
mod checks;
mod climate;
mod cost;
mod dialect;
mod emission;
mod end;
mod feeder;
mod fibre;
mod fixing;
mod hop;
mod licence;
mod lightning;
mod material;
mod neighbour;
mod network;
mod objectives;
mod orography;
mod partly;
mod path;
mod print;
mod radio;
mod record;
mod run;
mod schema;
mod service;
mod source;

mod site;
mod supply;
mod template;
mod version;
mod waiver;
mod wind;
mod words;

pub use alignment::{AlignedBy, AlignmentMode, EraseButton, Indication, Readout, ReadoutPoint, ShownLevel};
pub use antenna::{Antenna, GainPoint, PatternPoint};
pub use arrester::Arrester;
pub use bracket::{Bracket, BracketSwing, Fastener, Finish, Plate, ScrewClass, Tilt};
pub use cable::{Cable, Category, Conductor, Construction, Jacket, Screening};
pub use carried::Carried;
pub use checks::Check;
pub use climate::{Climate, RainMonths};
pub use cost::Cost;
pub use dialect::Dialect;
pub use emission::EmissionClass;
pub use end::{Both, EndName, Way};
pub use feeder::{Feeder, FeederConstruction, FeederLoss, FeederUse, Inside};
pub use fibre::{Fibre, FibreCategory, FibreRun, Interface, Pluggable};
pub use fixing::{FixingStrength, Fixings};
pub use hop::{
    BracketUse, Channel, End, Ends, GroundMetal, Grounding, Hop, Orientation, Polarisation, PortLoss, RadioPort, Run,
};
pub use licence::{HopLicence, LicenceCode};
pub use lightning::{
    EndLightning, ImpulseCategory, ImpulseTest, LightningProtection, MastBond, ProtectedVolume, ProtectionClass,
    ProtectionSystem, Separation,
};
pub use material::Material;
pub use neighbour::{Neighbour, NeighbourListens, NeighbourSends};
pub use network::{
    ClearanceCriteria, Codes, GroundingCode, Limits, Network, PowerLineCode, Revision, RulesByPath, Setting,
};
pub use objectives::{Directions, Errored, HopObjectives, Objectives, Period};
pub use orography::{Ice, IceClass, Orography, Slope, SlopeShape};
pub use partly::Partly;
pub use path::{HopPath, Obstacle, ObstacleKind, ProfilePoint, Standing, Terrain};
pub use print::{DecimalSign, Language, Paper, Print, System};
pub use radio::{
    BandwidthFigures, Duty, Gland, Half, Indicator, MaskPoint, PassOn, Port, Radio, RadioGround, RadioPower, State,
};
pub use record::{
    BuiltFrom, Decision, Deviation, GroundingRecord, Instrument, Photo, Reading, Record, RunRecord, Serials,
    ServiceTest, Settings, Sky, TestResult, Verdict, Weather,
};
pub use run::{ArresterUse, Cores, Entry, Fuse, Load, Plugs, Pole, RunPlace, ScreenBond, SwitchPort};
pub use schema::{schema_id, schema_of, schema_text, schema_version};
pub use service::{Service, ServiceObjectives};
pub use source::{Source, Sure};

pub use site::{
    Consent, Contact, EarthPoint, NearEdge, Occupied, Position, PowerLine, PowerPoint, Shelter, Site, Support,
    SupportKind,
};
pub use supply::{Location, Standard, Supply, Wiring};
pub use template::{Defaults, Template};
pub use version::LeastVersion;
pub use waiver::{Departure, Waiver, WaiverTarget, WaiverTerms};
pub use wind::{Wind, WindSpeeds};
pub use words::{Date, Id, LONGEST_ID, LONGEST_TITLE, Number, Ref, STANDARD, Text, Window};

/// The kind of thing a document describes: its `kind` key.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, serde::Deserialize, schemars::JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum Kind {
    /// Title, owner, objectives, climate, codes.
    Network,
    /// A place with supports, power and earth.
    Site,
    /// Two ends and the channel between them.
    Hop,
    /// A radio model.
    Radio,
    /// An antenna model.
    Antenna,
    /// A bracket model.
    Bracket,
    /// A cable type.
    Cable,
    /// A cable of optical fibres.
    Fibre,
    /// A power supply model.
    Supply,
    /// A surge arrester model.
    Arrester,
    /// What was found and left at one end on one visit.
    Record,
    /// A departure that somebody with authority has accepted.
    Waiver,
    /// What is carried from site to site over several hops.
    Service,
    /// An antenna of another owner.
    Neighbour,
    /// Keys of ends, runs and groundings, to be taken in by `like`.
    Template,
    /// Coaxial cable or waveguide.
    Feeder,
}

impl Kind {
    /// Every kind, in the order they are listed to people.
    pub const ALL: [Self; 16] = [
        Self::Network,
        Self::Site,
        Self::Hop,
        Self::Radio,
        Self::Antenna,
        Self::Bracket,
        Self::Cable,
        Self::Fibre,
        Self::Supply,
        Self::Arrester,
        Self::Record,
        Self::Waiver,
        Self::Service,
        Self::Neighbour,
        Self::Template,
        Self::Feeder,
    ];

    /// The word written after `kind:`.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Network => "network",
            Self::Site => "site",
            Self::Hop => "hop",
            Self::Radio => "radio",
            Self::Antenna => "antenna",
            Self::Bracket => "bracket",
            Self::Cable => "cable",
            Self::Fibre => "fibre",
            Self::Supply => "supply",
            Self::Arrester => "arrester",
            Self::Record => "record",
            Self::Waiver => "waiver",
            Self::Service => "service",
            Self::Neighbour => "neighbour",
            Self::Template => "template",
            Self::Feeder => "feeder",
        }
    }

    /// The kind written as `word`.
    #[must_use]
    pub fn from_word(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.word() == word)
    }
}

impl std::fmt::Display for Kind {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(self.word())
    }
}

/// A document type: the Rust side of a [`Kind`].
pub trait Spec: serde::de::DeserializeOwned + schemars::JsonSchema {
    /// The kind this type describes.
    const KIND: Kind;

    /// The document's own name.
    fn id(&self) -> &Id;

    /// Calls it something else.
    fn rename(&mut self, id: Id);
}

macro_rules! specs {
    ($($type:ident)+) => {
        $(impl Spec for $type {
            const KIND: Kind = Kind::$type;

            fn id(&self) -> &Id {
                &self.id
            }

            fn rename(&mut self, id: Id) {
                self.id = id;
            }
        })+
    };
}

specs! { Network Site Hop Radio Antenna Bracket Cable Fibre Supply Arrester Record Waiver Service Neighbour Template Feeder }
