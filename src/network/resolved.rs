//! A hop whose references all lead somewhere, and what they lead to.

use super::elsewhere::Elsewheres;
use super::profile::ProfileFile;
use super::shelf::{Document, Part};
use crate::at;
use crate::finding::Spot;
use crate::place::Place;
use crate::spec::{
    Antenna, Arrester, Both, Bracket, Cable, EarthPoint, End, EndName, Feeder, Fibre, FibreRun, Half, Hop, Network,
    Port, PowerPoint, Radio, Readout, Record, Run, Site, Supply, Support, Way,
};

/// A hop whose references all lead somewhere.
#[derive(Debug)]
pub struct ResolvedHop<'n> {
    /// The hop's own document.
    pub hop: &'n Document<Hop>,
    /// The network it belongs to.
    pub network: &'n Document<Network>,
    /// Its ends.
    pub ends: Both<ResolvedEnd<'n>>,
    /// The profile it has in a file; where the trouble is shown if that cannot be used.
    pub profile_file: Option<&'n Result<ProfileFile, Spot>>,
    /// What came back from its ends, by end and day, the newest last.
    pub records: Vec<&'n Document<Record>>,
    /// The source mark its records are held against, where it has any: see [`super::mark`].
    pub mark: Option<String>,
    /// The documents of the network that are not its own.
    pub elsewhere: &'n Elsewheres,
}

impl ResolvedHop<'_> {
    /// Where the frequency of a way is written.
    #[must_use]
    pub fn frequency_at(&self, way: Way) -> Place {
        let hop = self.hop;
        match way {
            Way::AToB => at!(hop.channel.a_to_b),
            Way::BToA => at!(hop.channel.b_to_a),
        }
    }
}

/// One end and everything mounted there.
#[derive(Debug)]
pub struct ResolvedEnd<'n> {
    /// Which end it is.
    pub name: EndName,
    /// What the hop says of this end.
    pub end: Part<'n, End>,
    /// Its site.
    pub site: &'n Document<Site>,
    /// What it is mounted on.
    pub support: Part<'n, Support>,
    /// Its radio.
    pub radio: &'n Document<Radio>,
    /// The half of the radio that is used.
    pub half: Part<'n, Half>,
    /// Its antenna.
    pub antenna: &'n Document<Antenna>,
    /// Its bracket.
    pub bracket: &'n Document<Bracket>,
    /// What leads from the radio to the antenna, if anything does.
    pub feeder: Option<&'n Document<Feeder>>,
    /// Its cable runs.
    pub runs: Vec<ResolvedRun<'n>>,
    /// Its runs of fibre.
    pub fibre_runs: Vec<ResolvedFibreRun<'n>>,
    /// The earth point its grounding bonds to, if one is named.
    pub earth: Option<Part<'n, EarthPoint>>,
}

impl<'n> ResolvedEnd<'n> {
    /// The voltage its crew aligns by, if its radio has one.
    #[must_use]
    pub fn readout(&self) -> Option<Part<'n, Readout>> {
        let readout = self.radio.readout.as_ref()?;
        Some(self.radio.part(&"readout", &[], readout))
    }
}

/// One cable run and everything in it.
#[derive(Debug)]
pub struct ResolvedRun<'n> {
    /// What the hop says of this run.
    pub run: Part<'n, Run>,
    /// The port it ends at.
    pub port: Part<'n, Port>,
    /// Its cable.
    pub cable: &'n Document<Cable>,
    /// What feeds it.
    pub supply: Option<&'n Document<Supply>>,
    /// Its arresters, in the order of the spec.
    pub arresters: Vec<&'n Document<Arrester>>,
    /// Where its supply stands, if that is named.
    pub power_point: Option<Part<'n, PowerPoint>>,
    /// The earth point where the outdoor cable ends, if it is named.
    pub entry_earth: Option<Part<'n, EarthPoint>>,
    /// The radio it feeds, if it feeds one.
    pub feeds: Option<&'n Document<Radio>>,
    /// The port of another radio that it leads to, if it does.
    pub ends_at: Option<FarPort<'n>>,
}

/// One run of fibre.
#[derive(Debug)]
pub struct ResolvedFibreRun<'n> {
    /// What the hop says of it.
    pub run: Part<'n, FibreRun>,
    /// The port it ends at.
    pub port: Part<'n, Port>,
    /// Its fibre.
    pub fibre: &'n Document<Fibre>,
}

/// A port of a radio at another end.
#[derive(Debug, Clone, Copy)]
pub struct FarPort<'n> {
    /// Its hop.
    pub hop: &'n Document<Hop>,
    /// The end of that hop.
    pub end: EndName,
    /// The radio there.
    pub radio: &'n Document<Radio>,
    /// The port.
    pub port: Part<'n, Port>,
}
