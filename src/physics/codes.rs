//! What the law lets a hop radiate, as data.
//!
//! A code of rules, an antenna gain and a bandwidth go in, ceilings come out. Radio law is national and changes: these
//! are the frameworks national rules follow, each with how surely its figures are known. The licence of the hop rules.

use super::Confidence;
use super::raster::{self, Raster};
use crate::units::{Dbi, Dbm, Decibels, Degrees, Gigahertz, Megahertz, Quantity as _};

/// How surely each kind of figure of a code is known. One that a code does not have counts as published.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Known {
    /// Ceilings on the radiated power.
    pub eirp: Confidence,
    /// Ceilings on the power at the antenna port.
    pub power: Confidence,
    /// Least gain and greatest beamwidth.
    pub antenna: Confidence,
}

impl Known {
    /// All of them alike.
    const fn all(confidence: Confidence) -> Self {
        Self { eirp: confidence, power: confidence, antenna: confidence }
    }

    /// That of the least certain figure.
    #[must_use]
    pub fn least(self) -> Confidence {
        self.eirp.min(self.power).min(self.antenna)
    }
}

/// One set of rules for one kind of station.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Code {
    /// Name in specs: the document, and which part of it where it has several.
    pub id: &'static str,
    /// Name as published.
    pub title: &'static str,
    /// Frequencies it speaks of, both ends included.
    pub bands: &'static [(Gigahertz, Gigahertz)],
    /// The document, and which of its figures are less sure than others.
    pub citation: &'static str,
    /// How surely its figures are known.
    pub known: Known,
    /// Channel arrangement that goes with it, if one is published.
    pub raster: Option<&'static Raster>,
    /// Each link is registered before it transmits.
    pub registered: bool,
    /// Antennas of less gain are not allowed, or only with a beam as narrow as `greatest_beamwidth` where there is one.
    pub least_gain: Option<Dbi>,
    /// Half-power beamwidth that stands in for `least_gain`: a dish need keep only one of the two.
    pub greatest_beamwidth: Option<Degrees>,
    eirp: Dbm,
    small_antenna: Option<SmallAntenna>,
    peak_over_average: Option<Decibels>,
    eirp_density: Option<Dbm>,
    power: Option<Dbm>,
    power_density: Option<Dbm>,
    gain_over_power: Option<Decibels>,
}

/// The EIRP ceiling falls by 2 dB for each decibel of gain below `full_gain`, but never below `floor`.
#[derive(Debug, Clone, Copy, PartialEq)]
struct SmallAntenna {
    full_gain: Dbi,
    floor: Option<Dbm>,
}

/// The ceilings of a code for one antenna and bandwidth. All powers are means unless they say peak.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limits {
    /// Most radiated power, average.
    pub average_eirp: Dbm,
    /// Most radiated power at any moment, where the code tells.
    pub peak_eirp: Option<Dbm>,
    /// Most power at the antenna port by the ceilings on power alone, where there are any.
    pub port_power: Option<Dbm>,
    /// Most power at the antenna port: of all ceilings, on power and on EIRP, the one that binds.
    pub power: Dbm,
    /// As [`Code::least_gain`]; `power` means nothing for an antenna that is not allowed.
    pub least_gain: Option<Dbi>,
    /// As [`Code::greatest_beamwidth`].
    pub greatest_beamwidth: Option<Degrees>,
}

impl Limits {
    /// The same for a radio that loses something on its way to the antenna: the ceilings on EIRP leave it so much more power,
    /// those on power itself do not.
    ///
    /// Source: definition of EIRP.
    #[must_use]
    pub fn behind(self, loss: Decibels) -> Self {
        let more = self.power + loss;
        Self { power: self.port_power.map_or(more, |port| lesser(port, more)), ..self }
    }
}

impl Code {
    /// Whether the code speaks of a frequency.
    #[must_use]
    pub fn covers(&self, frequency: Gigahertz) -> bool {
        self.bands.iter().any(|(low, high)| (*low..=*high).contains(&frequency))
    }

    /// Whether a channel lies wholly where the code speaks.
    #[must_use]
    pub fn holds(&self, low: Gigahertz, high: Gigahertz) -> bool {
        self.bands.iter().any(|(first, last)| *first <= low && high <= *last)
    }

    /// The ceilings for an antenna of gain `G` and an emission of bandwidth `B`, in MHz.
    ///
    /// ```text
    /// EIRP = min( max( floor, top - 2 max(0, G_full - G) ),  EIRP density + 10 lg B )
    /// P    = min( top, density + 10 lg B, G - 15, EIRP - G )
    /// ```
    ///
    /// each code with those of the parts that it has.
    ///
    /// Source: [`Code::citation`].
    #[must_use]
    pub fn limits(&self, gain: Dbi, bandwidth: Megahertz) -> Limits {
        let spread = Decibels(10.0 * libm::log10(bandwidth.0));
        let by_gain = match self.small_antenna {
            Some(SmallAntenna { full_gain, floor }) => {
                let less = Decibels(2.0 * (full_gain - gain).0.max(0.0));
                let ceiling = self.eirp - less;
                floor.map_or(ceiling, |floor| greater(floor, ceiling))
            }
            None => self.eirp,
        };
        let average_eirp = self.eirp_density.map_or(by_gain, |density| lesser(by_gain, density + spread));
        let ceilings = [
            self.power,
            self.power_density.map(|density| density + spread),
            self.gain_over_power.map(|over| Dbm((gain - over).0)),
        ];
        let port_power = ceilings.into_iter().flatten().reduce(lesser);
        Limits {
            average_eirp,
            port_power,
            peak_eirp: self.peak_over_average.map(|over| average_eirp + over),
            power: port_power.map_or(average_eirp - gain, |port| lesser(port, average_eirp - gain)),
            least_gain: self.least_gain,
            greatest_beamwidth: self.greatest_beamwidth,
        }
    }

    /// The least gain above `gain`, in whole tenths of a decibel up to 70 dBi, with which a power is allowed that loses `loss` on its way to
    /// the antenna.
    ///
    /// Several codes allow a larger antenna more power. `None` where no gain helps. Derived from [`Code::limits`].
    #[must_use]
    pub fn gain_for(&self, power: Dbm, gain: Dbi, bandwidth: Megahertz, loss: Decibels) -> Option<Dbi> {
        const HIGHEST: i32 = 700;
        #[expect(clippy::cast_possible_truncation, reason = "gains are tens of decibels")]
        let next = (gain.0.clamp(-70.0, 70.0) * 10.0).floor() as i32 + 1;
        let mut gains = (next..=HIGHEST).map(|tenths| Dbi(f64::from(tenths) / 10.0));
        gains.find(|gain| self.limits(*gain, bandwidth).behind(loss).power.tidy() >= power)
    }
}

/// The code of a name as specs write it.
#[must_use]
pub fn named(id: &str) -> Option<&'static Code> {
    CODES.iter().find(|code| code.id == id)
}

fn lesser(a: Dbm, b: Dbm) -> Dbm {
    if b < a { b } else { a }
}

fn greater(a: Dbm, b: Dbm) -> Dbm {
    if b > a { b } else { a }
}

const GHZ_57_TO_71: &[(Gigahertz, Gigahertz)] = &[(Gigahertz(57.0), Gigahertz(71.0))];
const GHZ_57_TO_64: &[(Gigahertz, Gigahertz)] = &[(Gigahertz(57.0), Gigahertz(64.0))];
const E_BAND: &[(Gigahertz, Gigahertz)] = &[(Gigahertz(71.0), Gigahertz(76.0)), (Gigahertz(81.0), Gigahertz(86.0))];

/// 500 mW, and 5 mW for each megahertz.
const MW_500: Dbm = Dbm(26.989_700_043_360_19);
const MW_5: Dbm = Dbm(6.989_700_043_360_188);

/// 3 W, and 1.5 mW for each megahertz: 150 mW for a hundred.
const W_3: Dbm = Dbm(34.771_212_547_196_62);
const MW_1_5: Dbm = Dbm(1.760_912_590_556_812_3);

/// A code of the 57 to 71 GHz kind that sets nothing but an EIRP of 40 dBm; the others differ from it in what they
/// name.
const PLAIN: Code = Code {
    id: "",
    title: "",
    bands: GHZ_57_TO_71,
    citation: "",
    known: Known::all(Confidence::Memory),
    raster: None,
    registered: false,
    least_gain: None,
    greatest_beamwidth: None,
    eirp: Dbm(40.0),
    small_antenna: None,
    peak_over_average: None,
    eirp_density: None,
    power: None,
    power_density: None,
    gain_over_power: None,
};

/// Only the power at the port is from memory.
const PART_15: Known = Known { power: Confidence::Memory, ..Known::all(Confidence::Published) };

/// Part 101 as it stood before 2024; the order of 2024 changed the antenna alone.
const PART_101: Code = Code {
    bands: E_BAND,
    known: Known { antenna: Confidence::SecondHand, ..Known::all(Confidence::Published) },
    registered: true,
    eirp: Dbm(85.0),
    small_antenna: Some(SmallAntenna { full_gain: Dbi(50.0), floor: None }),
    power: Some(W_3),
    power_density: Some(MW_1_5),
    ..PLAIN
};

/// Every code there is a table row for.
pub static CODES: [Code; 8] = [
    Code {
        id: "47 CFR 15.255 point-to-point",
        title: "47 CFR 15.255, fixed point-to-point transmitters outdoors",
        citation: "47 CFR 15.255 as of August 2023: average 82 dBm and peak 85 dBm EIRP, less 2 dB for each dB of gain \
                   below 51 dBi, never below 40 and 43 dBm. The peak conducted power of 500 mW, less in proportion \
                   below 100 MHz, is from memory, not seen; it is taken for the mean here.",
        known: PART_15,
        eirp: Dbm(82.0),
        small_antenna: Some(SmallAntenna { full_gain: Dbi(51.0), floor: Some(Dbm(40.0)) }),
        peak_over_average: Some(Decibels(3.0)),
        power: Some(MW_500),
        power_density: Some(MW_5),
        ..PLAIN
    },
    Code {
        id: "47 CFR 15.255 other",
        title: "47 CFR 15.255, all other transmitters",
        citation: "47 CFR 15.255 as of August 2023: average 40 dBm and peak 43 dBm EIRP. The peak conducted power of \
                   500 mW, less in proportion below 100 MHz, is from memory, not seen; it is taken for the mean here.",
        known: PART_15,
        peak_over_average: Some(Decibels(3.0)),
        power: Some(MW_500),
        power_density: Some(MW_5),
        ..PLAIN
    },
    Code {
        id: "47 CFR 101",
        title: "47 CFR 101.113 and 101.115, 71 to 76 and 81 to 86 GHz, as amended in 2024",
        citation: "47 CFR 101.113: 55 dBW EIRP for each polarisation, less 2 dB for each dB of gain below 50 dBi; 3 W, \
                   and 150 mW in 100 MHz. 47 CFR 101.115 as amended in 2024, second-hand: 38 dBi or a beam of 2.2°. \
                   47 CFR 101.1501 and following: each link is registered before it transmits.",
        least_gain: Some(Dbi(38.0)),
        greatest_beamwidth: Some(Degrees(2.2)),
        ..PART_101
    },
    Code {
        id: "47 CFR 101 before 2024",
        title: "47 CFR 101.113 and 101.115, 71 to 76 and 81 to 86 GHz, 2005 to 2023",
        citation: "47 CFR 101.113: 55 dBW EIRP for each polarisation, less 2 dB for each dB of gain below 50 dBi; 3 W, \
                   and 150 mW in 100 MHz. 47 CFR 101.115 before 2024, second-hand: 43 dBi or a beam of 1.2°. \
                   47 CFR 101.1501 and following: each link is registered before it transmits.",
        least_gain: Some(Dbi(43.0)),
        greatest_beamwidth: Some(Degrees(1.2)),
        ..PART_101
    },
    Code {
        id: "ECC/REC/(09)01",
        title: "ECC/REC/(09)01, point-to-point links in 57 to 64 GHz",
        bands: GHZ_57_TO_64,
        citation: "ECC/REC/(09)01: 55 dBm EIRP, at least 30 dBi, at most 10 dBm. Countries may ask for no more than \
                   -10 dBm/MHz in 59 to 64 GHz, which is not applied here.",
        known: Known::all(Confidence::Published),
        raster: Some(&raster::SIXTY_GHZ),
        least_gain: Some(Dbi(30.0)),
        eirp: Dbm(55.0),
        power: Some(Dbm(10.0)),
        ..PLAIN
    },
    Code {
        id: "ERC/REC 70-03 c2",
        title: "ERC/REC 70-03 annex 3, c2, and decision (EU) 2019/1345",
        citation: "ERC/REC 70-03 annex 3, band c2, from memory, not seen: 40 dBm and 23 dBm/MHz EIRP, at most 27 dBm.",
        eirp_density: Some(Dbm(23.0)),
        power: Some(Dbm(27.0)),
        ..PLAIN
    },
    Code {
        id: "ERC/REC 70-03 c3",
        title: "ERC/REC 70-03 annex 3, c3, fixed outdoors, and decision (EU) 2019/1345",
        citation: "ERC/REC 70-03 annex 3, band c3, from memory, not seen: 55 dBm and 38 dBm/MHz EIRP, at least 30 dBi.",
        least_gain: Some(Dbi(30.0)),
        eirp: Dbm(55.0),
        eirp_density: Some(Dbm(38.0)),
        ..PLAIN
    },
    Code {
        id: "EN 302 217",
        title: "ETSI EN 302 217, 71 to 76 and 81 to 86 GHz",
        bands: E_BAND,
        citation: "ETSI EN 302 217, by table 2 of ETSI White Paper 9 (2015): 85 dBm EIRP, at most 30 dBm, at least 38 \
                   dBi and 15 more than the power in dBm. National licences may allow less.",
        known: Known::all(Confidence::Published),
        raster: Some(&raster::E_BAND),
        least_gain: Some(Dbi(38.0)),
        eirp: Dbm(85.0),
        power: Some(Dbm(30.0)),
        gain_over_power: Some(Decibels(15.0)),
        ..PLAIN
    },
];
