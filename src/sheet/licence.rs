//! What codes of practice and the licence of the hop let one direction radiate.
//!
//! Every code that is named and whose band holds the channel is shown and judged by itself; the least of all ceilings is
//! the power that must not be passed.

use super::direction::Direction;
use super::gain;
use super::key::SectionKey;
use super::line::{AS_WRITTEN, Line, Section, lines};
use super::losses::EndLosses;
use super::method::cited;
use super::missing::Missing;
use super::reason::Reason;
use super::saying::Saying;
use super::title::Title;
use super::traced::{AsTraced as _, Traced, all, read, see, written};
use crate::at;
use crate::network::ResolvedHop;
use crate::physics::Confidence;
use crate::physics::codes::{self, CODES, Code, Limits};
use crate::place::Place;
use crate::spec::{LicenceCode, Way};
use crate::units::{Dbi, Dbm, Decibels, Degrees, Gigahertz, Given, Megahertz, Quantity as _};

lines! {
    /// What a direction radiates, and what its licence says.
    LicenceLines {
        eirp: Dbm, "EIRP", "radiated power, average", "P_t − L_t + G_t, the transmit power taken for the mean";
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
        !self.codes.is_empty() || self.lines.licensed_eirp.value().is_ok() || self.lines.licensed_power.value().is_ok()
    }

    pub(super) fn missing(&self, each: &mut dyn FnMut(&'static str, &Missing)) {
        self.lines.missing(each);
        self.codes.iter().for_each(|code| code.lines.missing(each));
    }

    pub(super) fn sections(&self, way: Way, sections: &mut Vec<Section>) {
        sections.push(self.lines.section(SectionKey::Licence(way), Title::Licence { way }));
        for (number, code) in self.codes.iter().enumerate() {
            sections.push(code.lines.section(SectionKey::Code(way, number), Title::Code { code: code.name, way }));
        }
    }
}

/// What the limits of a direction hang on.
struct Emission {
    frequency: Traced<Gigahertz>,
    bandwidth: Traced<Megahertz>,
    power: Traced<Dbm>,
    gain: Traced<Dbi>,
    /// What is lost between radio and antenna.
    loss: Traced<Decibels>,
    /// The edges of the channel: by them it is decided which code holds it.
    edges: Traced<(Gigahertz, Gigahertz)>,
}

impl Emission {
    fn of(resolved: &ResolvedHop<'_>, direction: &Direction<'_>) -> Self {
        let (hop, end, antenna) = (resolved.hop, direction.sender.end, direction.sender.antenna);
        let frequency = direction.lines.frequency.map(|given| given.value);
        let bandwidth = read!(hop.channel.bandwidth);
        let edges = all((&frequency, &bandwidth)).map(|(centre, width)| {
            let half = Gigahertz(width.0 / 2000.0);
            ((centre - half).tidy(), (centre + half).tidy())
        });
        let (gain, loss) = (gain::at(antenna, &frequency), EndLosses::of(direction.sender, &frequency).counted());
        Self { power: read!(end.transmit_power), frequency, bandwidth, gain, loss, edges }
    }

    /// Whether a code holds the channel.
    fn is_held_by(&self, code: &Code) -> bool {
        self.edges.get().is_some_and(|(low, high)| code.holds(low, high))
    }
}

/// The codes that are named, each where it is, and where they are named or would be: by the hop, or by its network.
fn named(resolved: &ResolvedHop<'_>) -> (Vec<Traced<LicenceCode>>, Traced<()>) {
    let (hop, network) = (resolved.hop, resolved.network);
    let own = see!(hop.licence.codes);
    let own_count = hop.licence.codes.len();
    if own_count > 0 || own.is_broken() {
        let codes = (0..own_count).map(|i| see!(hop.licence.codes[i]).map(|code| *code));
        return (codes.collect(), own.map(|_| ()));
    }
    let codes = (0..network.codes.licence.len()).map(|i| see!(network.codes.licence[i]).map(|code| *code));
    (codes.collect(), see!(network.codes.licence).map(|_| ()))
}

pub(super) fn compute(resolved: &ResolvedHop<'_>, direction: &Direction<'_>) -> Licence {
    let emission = Emission::of(resolved, direction);
    let (names, list) = named(resolved);
    let known = |name: &Traced<LicenceCode>| Some((codes::named(name.get()?.word())?, name.first_source()?));
    let codes: Vec<CodeSheet> = names
        .iter()
        .filter_map(|name| known(name).map(|(code, place)| (name, code, place)))
        .filter(|(_, code, _)| emission.is_held_by(code))
        .map(|(name, code, place)| code_sheet(code, name, place, &emission))
        .collect();
    let candidates = if codes.is_empty() {
        CODES.iter().filter(|code| emission.is_held_by(code)).map(|code| code.id).collect()
    } else {
        Vec::new()
    };
    let hop = resolved.hop;
    let named_at = list.first_source().unwrap_or(at!(hop.licence.codes));
    let decided = list.decided_by(&emission.edges);
    Licence { lines: licence_lines(resolved, &emission, &codes, &decided), codes, named_at, candidates }
}

fn licence_lines(
    resolved: &ResolvedHop<'_>,
    emission: &Emission,
    codes: &[CodeSheet],
    named: &Traced<()>,
) -> LicenceLines {
    let hop = resolved.hop;
    let (eirp, power) = (written!(hop.licence.max_eirp), written!(hop.licence.max_power));
    let by_code = Traced::each(codes.iter().map(|code| code.lines.power_limit.traced()));
    let ceilings = all((named, &emission.gain, &emission.loss, &eirp, &power, &by_code));
    let highest = ceilings.judge(|((), gain, loss, eirp, power, by_code)| {
        let own = [eirp.map(|given| (given.value - gain + loss).tidy()), power.map(|given| given.value)];
        let least = own.into_iter().flatten().chain(by_code).reduce(|one, other| if other < one { other } else { one });
        least.map(Dbm::rounded_down).ok_or(Reason::NothingLimits)
    });
    let number = see!(hop.licence.number).map(|number| number.as_ref().map(Saying::name));
    LicenceLines {
        eirp: all((&emission.power, &emission.loss, &emission.gain))
            .map(|(power, loss, gain)| (power - loss + gain).tidy())
            .line(),
        highest_power: highest.line(),
        number: number.stated(Reason::NoneStated).line(),
        licensed_eirp: eirp.stated(Reason::NoneInLicence).line(),
        licensed_power: power.stated(Reason::NoneInLicence).line(),
    }
}

fn code_sheet(code: &'static Code, name: &Traced<LicenceCode>, place: Place, emission: &Emission) -> CodeSheet {
    // Outside its band there would be no such sheet.
    let name = &name.clone().decided_by(&emission.edges);
    let limits = all((name, &emission.gain, &emission.bandwidth, &emission.loss))
        .map(|(_, gain, width, loss)| code.limits(gain, width).behind(loss));
    let limits = limits.decided_by(&emission.edges);
    let level = |limit: fn(Limits) -> Option<Dbm>, none: Reason| {
        limits.map(|limits| limit(limits).map(Dbm::tidy)).stated(none).by(cited(code.citation))
    };
    let gain_mend = || {
        let (power, gain, width) = (emission.power.get()?, emission.gain.get()?, emission.bandwidth.get()?);
        let loss = emission.loss.get()?;
        if power <= limits.get()?.power.tidy() { None } else { code.gain_for(power, gain, width, loss) }
    };
    let raster = || {
        let (raster, centre, width) = (code.raster?, emission.frequency.get()?, emission.bandwidth.get()?);
        let (name, known) = (raster.name, raster.confidence);
        Some(RasterSheet { name, known, nearest: raster.nearest(centre, width) })
    };
    let lines = CodeLines {
        code: name.map(|_| Saying::word(code.title)).line(),
        confidence: name.map(|_| Saying::known(code.known)).by(cited(code.citation)),
        eirp_limit: level(|limits| Some(limits.average_eirp), Reason::NoneInCode),
        peak_eirp_limit: level(|limits| limits.peak_eirp, Reason::NoPeakInCode),
        port_power_limit: level(|limits| limits.port_power, Reason::NoPowerInCode),
        power_limit: level(|limits| Some(limits.power), Reason::NoneInCode),
        least_gain: limits.map(|limits| limits.least_gain).stated(Reason::NoneInCode).by(cited(code.citation)),
        greatest_beamwidth: limits
            .map(|limits| limits.greatest_beamwidth)
            .stated(Reason::NoneInCode)
            .by(cited(code.citation)),
        channel: channel(code, name, emission),
    };
    CodeSheet {
        name: code.id,
        place,
        eirp_known: code.known.eirp,
        power_known: code.known.power,
        antenna_known: code.known.antenna,
        registered: code.registered,
        raster: raster(),
        gain_mend: gain_mend(),
        lines,
    }
}

/// The channel of the raster that goes with a code, by its name there.
fn channel(code: &'static Code, name: &Traced<LicenceCode>, emission: &Emission) -> Line<Saying> {
    let Some(raster) = code.raster else {
        return name.map(|_| None).stated(Reason::NoRaster).by("by the code named");
    };
    // One that is off the raster is shown at its centre.
    let words = all((&emission.frequency, name, &emission.bandwidth)).judge(|(centre, _, width)| {
        let words = raster.numbered(centre, width).map(|numbered| Saying::channel(raster.name, numbered));
        words.ok_or(Reason::OffRaster { raster: raster.name })
    });
    words.by(cited(raster.citation))
}
