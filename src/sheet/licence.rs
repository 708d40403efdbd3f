//! What codes of practice and the licence of the hop let one direction radiate.
//!
//! Every code that is named and whose band holds the channel is shown and judged by itself; the least of all ceilings is
//! the power that must not be passed.

use super::budget::Direction;
use super::line::{AS_WRITTEN, Line, Missing, Section, lines};
use super::reason::Reason;
use super::saying::Saying;
use super::title::Title;
use crate::at;
use crate::network::ResolvedHop;
use crate::physics::Confidence;
use crate::physics::codes::{self, CODES, Code};
use crate::place::Place;
use crate::spec::{LicenceCode, Way};
use crate::units::{Dbi, Dbm, Degrees, Gigahertz, Given, Megahertz, Quantity as _};

lines! {
    /// What a direction radiates, and what its licence says.
    LicenceLines {
        eirp: Dbm, "EIRP", "radiated power, average", "P_t + G_t, the transmit power taken for the mean";
        highest_power: Dbm, "P_max", "highest transmit power to set",
            "least of what the codes and the licence allow with this antenna and bandwidth, rounded down";
        number: Saying, "", "licence or registration number", AS_WRITTEN;
        licensed_eirp: Given<Dbm>, "", "EIRP limit of the licence", AS_WRITTEN;
        licensed_power: Given<Dbm>, "", "transmit power limit of the licence", AS_WRITTEN;
    }
}

lines! {
    /// What one code allows.
    CodeLines {
        code: Saying, "", "code of practice", AS_WRITTEN;
        confidence: Saying, "", "how surely its figures are known", "as seen while this program was written";
        eirp_limit: Dbm, "", "EIRP limit, average", "by the code named";
        peak_eirp_limit: Dbm, "", "EIRP limit, peak", "by the code named";
        port_power_limit: Dbm, "", "transmit power limit", "by the code named";
        power_limit: Dbm, "", "transmit power all limits allow", "by the code named";
        least_gain: Dbi, "", "least antenna gain", "by the code named";
        greatest_beamwidth: Degrees, "", "greatest beamwidth in place of that gain", "by the code named";
        channel: Saying, "", "channel of the raster", "by the code named";
    }
}

/// Codes and licence of one direction.
#[derive(Debug)]
pub struct Licence {
    /// What is radiated and what the licence says.
    pub lines: LicenceLines,
    /// The codes that are named and hold the channel.
    pub codes: Vec<CodeSheet>,
    /// Where codes are named: by the hop, or by its network.
    pub named_at: Place,
    /// Codes that would hold the channel, where none of those named does.
    pub candidates: Vec<&'static str>,
}

/// What one code allows.
#[derive(Debug)]
pub struct CodeSheet {
    /// Its name in specs.
    pub name: &'static str,
    /// Where it is named.
    pub place: Place,
    /// How surely the ceilings on EIRP are known.
    pub eirp_known: Confidence,
    /// How surely the ceilings on power are known.
    pub power_known: Confidence,
    /// How surely the demands on the antenna are known.
    pub antenna_known: Confidence,
    /// Each link is registered before it transmits.
    pub registered: bool,
    /// Its lines.
    pub lines: CodeLines,
    /// The raster, where one goes with the code.
    pub raster: Option<RasterSheet>,
    /// The least larger gain with which the power would be allowed; `None` while it is, and where no gain helps.
    pub gain_mend: Option<Dbi>,
}

/// How a channel lies to the raster of a code.
#[derive(Debug)]
pub struct RasterSheet {
    /// Its name as published.
    pub name: &'static str,
    /// How surely it is known.
    pub known: Confidence,
    /// The nearest centre for this bandwidth; `None` where no channels so wide are known.
    pub nearest: Option<Gigahertz>,
}

impl Licence {
    /// Whether anything says how much may be radiated.
    #[must_use]
    pub fn is_stated(&self) -> bool {
        !self.codes.is_empty() || self.lines.licensed_eirp.value.is_ok() || self.lines.licensed_power.value.is_ok()
    }

    pub(super) fn mask(&mut self, broken: &dyn Fn(&Place) -> Option<Missing>) {
        self.lines.mask(broken);
        self.codes.iter_mut().for_each(|code| code.lines.mask(broken));
    }

    pub(super) fn missing(&self, each: &mut dyn FnMut(&'static str, &Missing)) {
        self.lines.missing(each);
        self.codes.iter().for_each(|code| code.lines.missing(each));
    }

    pub(super) fn sections(&self, way: Way, sections: &mut Vec<Section>) {
        let key = format!("{}.licence", way.key());
        let title = Title::Licence { way };
        sections.push(Section::of(key.clone(), title, |rows| self.lines.rows(&key, rows)));
        for (number, code) in self.codes.iter().enumerate() {
            let key = format!("{key}.codes[{number}]");
            let title = Title::Code { code: code.name, way };
            sections.push(Section::of(key.clone(), title, |rows| code.lines.rows(&key, rows)));
        }
    }
}

/// What the limits of a direction hang on.
struct Emission {
    frequency: Gigahertz,
    bandwidth: Megahertz,
    power: Dbm,
    gain: Dbi,
    frequency_at: Place,
    bandwidth_at: Place,
    power_at: Place,
    gain_at: Place,
}

pub(super) fn compute(resolved: &ResolvedHop<'_>, direction: &Direction<'_>) -> Licence {
    let (hop, network) = (resolved.hop, resolved.network);
    let (end, antenna) = (direction.sender.end, direction.sender.antenna);
    let channel = &hop.channel;
    let frequency = channel.frequency(direction.way).value;
    let emission = Emission {
        frequency,
        bandwidth: channel.bandwidth.value,
        power: end.transmit_power.value,
        gain: antenna.gain.value,
        frequency_at: resolved.frequency_at(direction.way),
        bandwidth_at: at!(hop.channel.bandwidth),
        power_at: at!(end.transmit_power),
        gain_at: at!(antenna.gain),
    };
    let (named, named_at): (Vec<(LicenceCode, Place)>, Place) = if hop.licence.codes.is_empty() {
        let codes = network.codes.licence.iter().enumerate();
        (codes.map(|(i, code)| (*code, at!(network.codes.licence[i]))).collect(), at!(network.codes.licence))
    } else {
        let codes = hop.licence.codes.iter().enumerate();
        (codes.map(|(i, code)| (*code, at!(hop.licence.codes[i]))).collect(), at!(hop.licence.codes))
    };
    let half = Gigahertz(emission.bandwidth.0 / 2000.0);
    let (low, high) = ((frequency - half).tidy(), (frequency + half).tidy());
    let codes: Vec<CodeSheet> = named
        .into_iter()
        .filter_map(|(name, place)| Some((codes::named(name.word())?, place)))
        .filter(|(code, _)| code.holds(low, high))
        .map(|(code, place)| code_sheet(code, place, &emission))
        .collect();
    let candidates = if codes.is_empty() {
        CODES.iter().filter(|code| code.holds(low, high)).map(|code| code.id).collect()
    } else {
        Vec::new()
    };
    Licence { lines: licence_lines(resolved, &emission, &codes, named_at), codes, named_at, candidates }
}

fn licence_lines(
    resolved: &ResolvedHop<'_>,
    emission: &Emission,
    codes: &[CodeSheet],
    named_at: Place,
) -> LicenceLines {
    let hop = resolved.hop;
    let own = &hop.licence;
    let (eirp_at, power_at) = (at!(hop.licence.max_eirp), at!(hop.licence.max_power));
    let written = |given: Option<&Given<Dbm>>, place: Place| {
        let none = || Missing::judged(Reason::NoneInLicence, place);
        Line::new(given.cloned().ok_or_else(none), &[place])
    };
    let ceilings = [
        own.max_eirp.as_ref().map(|given| (given.value - emission.gain).tidy()),
        own.max_power.as_ref().map(|given| given.value),
    ];
    let by_code = codes.iter().filter_map(|code| code.lines.power_limit.get());
    let highest =
        ceilings.into_iter().flatten().chain(by_code).reduce(|one, other| if other < one { other } else { one });
    let mut from = vec![emission.gain_at, named_at, eirp_at, power_at];
    from.extend(codes.iter().flat_map(|code| code.lines.power_limit.from.iter().copied()));
    let number_at = at!(hop.licence.number);
    let number = own.number.as_ref().map(Saying::name);
    LicenceLines {
        eirp: Line::known((emission.power + emission.gain).tidy(), &[emission.power_at, emission.gain_at]),
        highest_power: Line::new(
            highest.map(Dbm::rounded_down).ok_or_else(|| Missing::judged(Reason::NothingLimits, named_at)),
            &from,
        ),
        number: Line::new(number.ok_or_else(|| Missing::judged(Reason::NoneStated, number_at)), &[number_at]),
        licensed_eirp: written(own.max_eirp.as_ref(), eirp_at),
        licensed_power: written(own.max_power.as_ref(), power_at),
    }
}

fn code_sheet(code: &'static Code, place: Place, emission: &Emission) -> CodeSheet {
    let limits = code.limits(emission.gain, emission.bandwidth);
    let from = [place, emission.gain_at, emission.bandwidth_at];
    let level = |value: Option<Dbm>, none: Reason| {
        Line::new(value.map(Dbm::tidy).ok_or_else(|| Missing::judged(none, place)), &from).by(code.citation)
    };
    let power_limit = limits.power.tidy();
    let raster = code.raster.map(|raster| RasterSheet {
        name: raster.name,
        known: raster.confidence,
        nearest: raster.nearest(emission.frequency, emission.bandwidth),
    });
    let channel = match code.raster {
        None => Err(Missing::judged(Reason::NoRaster, place)),
        Some(raster) => raster
            .numbered(emission.frequency, emission.bandwidth)
            .map(|numbered| Saying::channel(raster.name, numbered))
            .ok_or_else(|| Missing::judged(Reason::OffRaster { raster: raster.name }, emission.frequency_at)),
    };
    let gain_mend = (emission.power > power_limit)
        .then(|| code.gain_for(emission.power, emission.gain, emission.bandwidth))
        .flatten();
    let lines = CodeLines {
        code: Line::known(Saying::word(code.title), &[place]),
        confidence: Line::known(Saying::known(code.known), &[place]).by(code.citation),
        eirp_limit: level(Some(limits.average_eirp), Reason::NoneInCode),
        peak_eirp_limit: level(limits.peak_eirp, Reason::NoPeakInCode),
        port_power_limit: level(limits.port_power, Reason::NoPowerInCode),
        power_limit: level(Some(power_limit), Reason::NoneInCode),
        least_gain: Line::new(limits.least_gain.ok_or_else(|| Missing::judged(Reason::NoneInCode, place)), &[place])
            .by(code.citation),
        greatest_beamwidth: Line::new(
            limits.greatest_beamwidth.ok_or_else(|| Missing::judged(Reason::NoneInCode, place)),
            &[place],
        )
        .by(code.citation),
        channel: Line::new(channel, &[place, emission.frequency_at, emission.bandwidth_at])
            .by(code.raster.map_or("by the code named", |raster| raster.citation)),
    };
    CodeSheet {
        name: code.id,
        place,
        eirp_known: code.known.eirp,
        power_known: code.known.power,
        antenna_known: code.known.antenna,
        registered: code.registered,
        lines,
        raster,
        gain_mend,
    }
}
