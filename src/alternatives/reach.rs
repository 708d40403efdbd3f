//! Which changes can touch what a rule finds. A change that cannot is not tried for it.

/// Something about a hop that may be changed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Lever {
    /// The transmit power of an end or of both.
    Power,
    /// The bandwidth, and with it the modulation state that reaches the capacity asked for.
    Bandwidth,
    /// The channel, the polarisation, the halves.
    Channel,
    /// The height of an antenna within its support.
    Height,
    /// The bracket, which way up, with or without its plate.
    Bracket,
    /// Surge arresters of a run.
    Arrester,
    /// The supply of a run.
    Supply,
    /// The cable of a run.
    Cable,
    /// The antenna of an end or of both.
    Antenna,
    /// The radio, at both ends.
    Radio,
}

/// Which way a change has to go to help.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Turn {
    /// More power, more gain, higher.
    Up,
    /// Less power, less gain, lower.
    Down,
    /// Either, or there is no such way.
    Any,
}

impl Lever {
    /// How much a change of it upsets: a setting little, a cable that is pulled or an antenna that is hoisted much. Common
    /// practice, no source; it orders proposals that have as many changes and cost the same.
    #[must_use]
    pub const fn weight(self) -> u32 {
        match self {
            Self::Power => 1,
            Self::Bandwidth | Self::Channel => 2,
            Self::Height => 3,
            Self::Bracket | Self::Arrester => 4,
            Self::Supply => 5,
            Self::Cable => 6,
            Self::Antenna => 7,
            Self::Radio => 9,
        }
    }

    /// Whether a finding about one end can only be touched there.
    #[must_use]
    pub const fn is_of_its_end(self) -> bool {
        matches!(self, Self::Bracket | Self::Arrester | Self::Supply | Self::Cable)
    }

    /// Whether one change decides it for the whole hop, so that two of them are none that go together.
    #[must_use]
    pub const fn is_decided_once(self) -> bool {
        !matches!(self, Self::Bracket | Self::Arrester | Self::Supply | Self::Cable | Self::Antenna)
    }

    /// The word for it in JSON.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Power => "power",
            Self::Bandwidth => "bandwidth",
            Self::Channel => "channel",
            Self::Height => "height",
            Self::Bracket => "bracket",
            Self::Arrester => "arrester",
            Self::Supply => "supply",
            Self::Cable => "cable",
            Self::Antenna => "antenna",
            Self::Radio => "radio",
        }
    }
}

use Lever::{Antenna, Arrester, Bandwidth, Bracket, Cable, Channel, Height, Power, Radio, Supply};
use Turn::{Any, Down, Up};

type Levers = &'static [(Lever, Turn)];

/// What can touch what rules find. A rule that is not here finds facts of the place, of paper or of a visit, or doubts a figure
/// of a data sheet: another part would only leave the doubtful figure where it is.
pub static REACH: &[(&[&str], Levers)] = &[
    // More decibels, or fewer asked for.
    (
        &[
            "availability-below-objective",
            "availability-within-tolerance",
            "errored-above-objective",
            "fade-margin-below-objective",
            "held-level-too-low",
        ],
        &[(Power, Up), (Antenna, Up), (Bandwidth, Any), (Channel, Any), (Radio, Any)],
    ),
    (&["capacity-out-of-reach", "no-common-state"], &[(Bandwidth, Any), (Radio, Any)]),
    (&["cross-polar-too-low"], &[(Antenna, Any), (Radio, Any)]),
    (&["level-above-overload", "up-fade-above-overload"], &[(Power, Down), (Antenna, Down), (Radio, Any)]),
    (&["level-off-readout", "level-not-shown", "side-lobe-off-readout"], &[(Power, Any), (Antenna, Any), (Radio, Any)]),
    (&["near-field-loss"], &[(Antenna, Down)]),
    (&["sweep-beyond-fine-azimuth"], &[(Bracket, Any), (Antenna, Any)]),
    (&["frequency-outside-antenna"], &[(Antenna, Any), (Channel, Any), (Bandwidth, Any)]),
    (&["frequency-outside-radio"], &[(Channel, Any), (Radio, Any), (Bandwidth, Any)]),
    (&["same-duplex-half", "halves-mixed"], &[(Channel, Any)]),
    (&["transmit-power-out-of-range"], &[(Power, Any), (Radio, Any)]),
    // Others are heard, or hear.
    (
        &[
            "channel-used-in-beam",
            "channel-used-twice",
            "interference-too-strong",
            "neighbour-disturbed",
            "threshold-degraded",
        ],
        &[(Channel, Any), (Power, Any), (Antenna, Any), (Bandwidth, Any)],
    ),
    // Code and licence as they are.
    (&["channel-off-raster"], &[(Channel, Any), (Bandwidth, Any)]),
    (&["eirp-above-code", "eirp-above-licence"], &[(Power, Down), (Antenna, Down)]),
    (&["power-above-code", "power-above-licence"], &[(Power, Down)]),
    (&["gain-below-code"], &[(Antenna, Up)]),
    (&["antenna-off-support", "live-antenna-on-climb"], &[(Height, Any)]),
    (
        &["plate-not-made", "pole-near-clamp-limit", "pole-outside-clamp", "metals-unlike", "torque-above-thread"],
        &[(Bracket, Any)],
    ),
    (&["pole-overstressed", "sway-too-great"], &[(Height, Down), (Antenna, Any), (Bracket, Any), (Radio, Any)]),
    (&["tilt-out-of-reach"], &[(Bracket, Any), (Height, Any)]),
    (&["people-too-near"], &[(Power, Down), (Height, Up), (Antenna, Any)]),
    // Ground, trees and houses below the beam, and edges near it.
    (&["clearance-below-practice", "near-edge-in-beam", "path-obstructed", "trees-outgrow-clearance"], &[(Height, Up)]),
    (&["arrester-missing", "arrester-unfit", "jumper-unprotected"], &[(Arrester, Any)]),
    (
        &[
            "cable-cannot-carry",
            "cable-category-too-low",
            "cable-diameter-open",
            "cable-not-for-outdoors",
            "cable-not-sealed",
            "cable-outside-temperature",
            "cable-unscreened",
            "conductor-not-copper",
            "gland-nearly-misses",
        ],
        &[(Cable, Any)],
    ),
    (&["data-not-carried"], &[(Cable, Any), (Supply, Any), (Arrester, Any), (Radio, Any)]),
    // Too few volts.
    (
        &[
            "device-undervoltage",
            "no-operating-point",
            "radio-undervoltage",
            "run-too-long-when-hot",
            "start-up-near-limit",
            "voltage-reserve-small",
        ],
        &[(Cable, Any), (Supply, Any), (Arrester, Any)],
    ),
    (&["passed-on-too-much", "port-cannot-carry", "radio-outside-temperature"], &[(Radio, Any)]),
    (&["fuse-unfit"], &[(Cable, Any), (Supply, Any)]),
    (
        &["device-overvoltage", "radio-overvoltage", "supply-class-too-low", "supply-not-accepted", "wiring-unfit"],
        &[(Supply, Any), (Radio, Any)],
    ),
    (
        &[
            "supply-in-the-weather",
            "supply-not-of-its-class",
            "supply-outside-temperature",
            "supply-overloaded",
            "supply-passes-no-data",
            "supply-shared-overloaded",
        ],
        &[(Supply, Any)],
    ),
    (&["antenna-in-beam", "antennas-collide", "antennas-too-near"], &[(Height, Any), (Antenna, Any)]),
];

/// What can touch what a rule finds; nothing for a rule that is not in [`REACH`].
#[must_use]
pub fn levers(rule: &str) -> Levers {
    let row = REACH.iter().find(|(rules, _)| rules.contains(&rule));
    row.map_or(&[], |(_, levers)| *levers)
}
