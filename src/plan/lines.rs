//! The plan as it is: a line for each end.

use rayon::prelude::*;

use crate::air::{Air, Station};
use crate::network::ResolvedHop;
use crate::physics::codes;
use crate::physics::raster::Numbered;
use crate::spec::{EndName, Polarisation};
use crate::units::{Dbm, Decibels, Gigahertz, Megahertz};

/// One end of one hop.
#[derive(Debug, Clone)]
pub struct Line {
    /// The network.
    pub network: String,
    /// The site the end stands at.
    pub site: String,
    /// The hop.
    pub hop: String,
    /// Which end of it.
    pub end: EndName,
    /// The half its radio is in, by the name it gives it.
    pub half: String,
    /// What it sends on.
    pub sends: Gigahertz,
    /// How wide.
    pub bandwidth: Megahertz,
    /// That channel by its number, where a code has numbers.
    pub channel: Option<Channel>,
    /// Its polarisation.
    pub polarisation: Polarisation,
    /// What its receiver bears; none where something of the hop is broken.
    pub bears: Option<Bears>,
}

/// A channel by its number.
#[derive(Debug, Clone, Copy)]
pub struct Channel {
    /// The raster, as published.
    pub raster: &'static str,
    /// The number, or the numbers of which it is the sum.
    pub numbered: Numbered,
}

/// What the receiver of an end bears of other senders.
#[derive(Debug, Clone)]
pub struct Bears {
    /// All they bring, over its noise. None where nothing is heard.
    pub over_noise: Option<Decibels>,
    /// What that takes of its threshold, nothing faded.
    pub degradation: Decibels,
    /// The strongest of them and its level.
    pub strongest: Option<(String, Dbm)>,
    /// Senders at its own site on what it listens to.
    pub beside: Vec<String>,
}

/// What a plan comes to.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Standing {
    /// The greatest degradation of a receiver.
    pub greatest: Decibels,
    /// Those of all together.
    pub sum: Decibels,
    /// Receivers that listen where somebody sends at their own site.
    pub beside: usize,
}

/// The lines of a network, by site, then by hop.
#[must_use]
pub fn lines(air: &Air<'_>, hops: &[ResolvedHop<'_>]) -> Vec<Line> {
    let both = |hop| EndName::BOTH.map(|end| line(air, hop, end));
    let mut lines: Vec<Line> = hops.par_iter().flat_map_iter(both).collect();
    lines.sort_by(|one, other| {
        (&one.network, &one.site, &one.hop, one.end).cmp(&(&other.network, &other.site, &other.hop, other.end))
    });
    lines
}

impl Standing {
    /// Of all receivers of a list.
    #[must_use]
    pub fn of(lines: &[Line]) -> Self {
        let borne = || lines.iter().filter_map(|line| line.bears.as_ref());
        let degradations = borne().map(|bears| bears.degradation.0);
        let (greatest, sum) =
            degradations.fold((0.0_f64, 0.0), |(greatest, sum), next| (greatest.max(next), sum + next));
        let beside = borne().filter(|bears| !bears.beside.is_empty()).count();
        Self { greatest: Decibels(greatest), sum: Decibels(sum), beside }
    }

    /// Whether it is better than another by what is worth a change.
    #[must_use]
    pub fn is_better_than(&self, other: &Self) -> bool {
        const LITTLE: f64 = 1e-6;
        let greatest = self.greatest.0 - other.greatest.0;
        let lower = greatest < -LITTLE || (greatest <= LITTLE && self.sum.0 < other.sum.0 - LITTLE);
        self.beside < other.beside || (self.beside == other.beside && lower)
    }
}

fn line(air: &Air<'_>, resolved: &ResolvedHop<'_>, name: EndName) -> Line {
    let (hop, end) = (resolved.hop, &resolved.ends[name]);
    let sends = hop.channel.frequency(name.outgoing()).value;
    let bandwidth = hop.channel.bandwidth.value;
    Line {
        network: resolved.network.id.to_string(),
        site: end.site.id.to_string(),
        hop: hop.id.to_string(),
        end: name,
        half: end.half.id.to_string(),
        sends,
        bandwidth,
        channel: channel(resolved, sends, bandwidth),
        polarisation: hop.channel.polarisation,
        bears: air.station(hop.at, name).map(|station| bears(air, station)),
    }
}

fn bears(air: &Air<'_>, station: &Station<'_>) -> Bears {
    let heard = air.heard_by(station);
    let called = |number: usize| air.stations()[number].owner.to_string();
    Bears {
        over_noise: heard.level().map(|level| level - heard.noise),
        degradation: heard.degradation(),
        strongest: heard.from.first().map(|from| (called(from.number), from.level)),
        beside: heard.beside.iter().map(|number| called(*number)).collect(),
    }
}

/// The channel by the first raster of the codes in force that has it.
fn channel(resolved: &ResolvedHop<'_>, centre: Gigahertz, width: Megahertz) -> Option<Channel> {
    let own = &resolved.hop.licence.codes;
    let named = if own.is_empty() { &resolved.network.codes.licence } else { own };
    let half = Gigahertz(width.0 / 2000.0);
    named.iter().find_map(|code| {
        let code = codes::named(code.word())?;
        let raster = code.holds(centre - half, centre + half).then_some(code.raster?)?;
        Some(Channel { raster: raster.name, numbered: raster.numbered(centre, width)? })
    })
}

impl Line {
    /// As a table calls it: the hop and the letter of the end.
    #[must_use]
    pub fn called(&self) -> String {
        format!("{} {}", self.hop, self.end.letter())
    }
}
