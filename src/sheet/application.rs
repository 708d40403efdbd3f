//! What an application for a licence asks of one end that sends: lines of the sheet, gathered, and the designation of what
//! it sends. Nothing of it is computed a second time.

use super::HopSheet;
use super::line::Line;
use super::reason::Reason;
use super::saying::Saying;
use super::traced::{Traced, all, read, see};
use crate::network::ResolvedEnd;
use crate::physics::emission;
use crate::spec::{EndName, Polarisation};
use crate::units::{Dbi, Dbm, Degrees, Gigahertz, Given, Megahertz, Metres};

/// What is asked of an end.
#[derive(Debug)]
pub struct Application<'s> {
    /// Which end.
    pub name: EndName,
    /// The end that sends.
    pub end: &'s ResolvedEnd<'s>,
    /// The one it sends to.
    pub far: &'s ResolvedEnd<'s>,
    /// Antenna centre above the sea.
    pub altitude: &'s Line<Metres>,
    /// True bearing.
    pub azimuth: &'s Line<Degrees>,
    /// Above the horizon.
    pub elevation: &'s Line<Degrees>,
    /// Antenna to antenna.
    pub distance: &'s Line<Metres>,
    /// What it sends on.
    pub frequency: &'s Line<Given<Gigahertz>>,
    /// What it listens on.
    pub receives: &'s Line<Given<Gigahertz>>,
    /// How wide.
    pub bandwidth: &'s Given<Megahertz>,
    /// Bandwidth and class of the emission.
    pub emission: Line<Saying>,
    /// Power at the port.
    pub power: &'s Line<Given<Dbm>>,
    /// What is radiated.
    pub eirp: &'s Line<Dbm>,
    /// Gain where it sends.
    pub gain: &'s Line<Given<Dbi>>,
    /// Whether the pattern of the antenna was measured; else reference patterns stand in.
    pub measured: bool,
    /// Of the field.
    pub polarisation: Polarisation,
    /// Number of the licence there is.
    pub number: &'s Line<Saying>,
}

impl HopSheet<'_> {
    /// What an application for a licence asks of an end.
    #[must_use]
    pub fn application(&self, name: EndName) -> Application<'_> {
        let (way, resolved) = (name.outgoing(), self.resolved);
        let (end, far) = (&resolved.ends[name], &resolved.ends[name.far()]);
        let (there, back) = (&self.directions[way].lines, &self.directions[way.reversed()].lines);
        Application {
            name,
            end,
            far,
            altitude: &self.ends[name].lines.altitude,
            azimuth: self.path.azimuth(name),
            elevation: self.path.elevation(name),
            distance: &self.path.slant,
            frequency: &there.frequency,
            receives: &back.frequency,
            bandwidth: &resolved.hop.channel.bandwidth,
            emission: self.emission(name).line(),
            power: &there.transmit_power,
            eirp: &self.licence[way].lines.eirp,
            gain: &there.transmit_gain,
            measured: !end.antenna.pattern.is_empty(),
            polarisation: resolved.hop.channel.polarisation,
            number: &self.licence[way].lines.number,
        }
    }

    /// The designation of what an end sends: `500MD7W`.
    fn emission(&self, name: EndName) -> Traced<Saying> {
        let (hop, radio) = (self.resolved.hop, self.resolved.ends[name].radio);
        let class = see!(radio.emission_class).check(|class| class.ok_or(Reason::NoEmissionClass));
        all((&read!(hop.channel.bandwidth), &class)).check(|(width, class)| -> Result<Saying, Reason> {
            let width = emission::necessary_bandwidth(width).ok_or(Reason::Endless)?;
            Ok(Saying::name(format!("{width}{}", class.word())))
        })
    }
}
