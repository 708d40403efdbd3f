//! The `radio` document: what a radio model can do.

use schemars::JsonSchema;
use serde::Deserialize;

use super::partly::completed;
use super::{
    AlignedBy, AlignmentMode, Carried, Cost, EmissionClass, EraseButton, Id, Indication, Kind, Number, Readout,
    ShownLevel, Standard, Text, Window, Wiring,
};
use crate::units::{
    Celsius, Dbm, Decibels, Gigahertz, Given, Hours, ImpulseVolts, Kilograms, MegabitsPerSecond, Megahertz,
    Millimetres, Milliseconds, Minutes, NewtonMetres, Percent, SquareMetres, SquareMillimetres, Volts, Watts,
};

/// A radio model.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Radio {
    /// Always `radio`.
    #[schemars(extend("const" = "radio"))]
    pub kind: Kind,
    /// Short name; hops refer to it.
    pub id: Id,
    /// Whether it counts in place of a document of the same id in a shared library. Default `false`: the same id twice is an
    /// error.
    #[serde(default)]
    pub replaces: bool,
    /// Maker and model as printed on the label.
    pub title: Text,
    /// What one costs. `alternatives` puts the cheaper of two proposals first; nothing else goes by it.
    pub cost: Option<Cost>,
    /// Bands it can be: two halves of a duplex pair, or a single one where both ends take turns on one frequency.
    pub halves: Vec<Half>,
    /// Power at its antenna port that can be set.
    pub transmit_power: Window<Dbm>,
    /// How far the power may be off, either way.
    #[schemars(extend("x-least" = 0))]
    pub transmit_tolerance: Option<Given<Decibels>>,
    /// Modulation states, from the most robust to the fastest.
    pub states: Vec<State>,
    /// Noise figure of the receiver. With it and the bits of a state, the threshold of that state is held against physics.
    #[schemars(extend("x-least" = 0))]
    pub noise_figure: Option<Given<Decibels>>,
    /// Strongest level the receiver takes without errors.
    #[schemars(extend("x-least" = -100, "x-most" = 5))]
    pub overload: Given<Dbm>,
    /// What its canceller of cross-polar interference improves carrier over interference by, for dual-polarised hops. None if
    /// not given.
    #[schemars(extend("x-least" = 0))]
    pub cross_polar_cancelling: Option<Given<Decibels>>,
    /// Spectrum it sends, as the sheet of the radio or the class of the equipment has it: outwards from the middle of the channel,
    /// both sides alike, straight between the points, nothing beyond the last. Without it a hop sends inside of its channel only,
    /// and what leaks into the channels beside it is not judged.
    #[serde(default)]
    pub transmit_mask: Vec<MaskPoint>,
    /// What its receiver lets through, in the same way. Without it all of the channel and nothing else.
    #[serde(default)]
    pub receive_mask: Vec<MaskPoint>,
    /// Ports for cables.
    pub ports: Vec<Port>,
    /// What it needs to run.
    pub power: RadioPower,
    /// The voltage a crew aligns by. Without it the crew aligns by `shown_level`, and without that by `indication`.
    pub readout: Option<Readout>,
    /// The level it shows of itself, if it does: what a crew aligns by without a voltage, and writes down beside one.
    pub shown_level: Option<ShownLevel>,
    /// What else grows with the level. A crew can find the peak by it and cannot tell whether it is the right one.
    pub indication: Option<Indication>,
    /// Whether it sends as soon as it has power. Taken to be so if not given, which is what a crew has to reckon with.
    pub sends_at_power_on: Option<bool>,
    /// Time from power until it serves.
    #[schemars(extend("x-least" = 0))]
    pub start_up_time: Option<Given<Minutes>>,
    /// A state of its own for aligning, if it has one.
    pub alignment_mode: Option<AlignmentMode>,
    /// Its button that erases something when it is held, if it has one.
    pub erase_button: Option<EraseButton>,
    /// Ground terminal.
    pub ground: RadioGround,
    /// Air temperatures it works in.
    pub temperature: Option<Window<Celsius>>,
    /// Whether it holds its level by lowering its power, which must be off while aligning. Taken to be so if not given.
    pub automatic_power_control: Option<bool>,
    /// How far that control can lower the power below the one that is set; never below the least of `transmit_power`.
    #[schemars(extend("x-least" = 0))]
    pub power_control_range: Option<Given<Decibels>>,
    /// Modulation state it stands in while it is aligned: the title of one of its states. The back-off of that state comes
    /// off the level to align to. Default the most robust at the bandwidth of the channel.
    pub aligns_in: Option<Text>,
    /// Mean time between failures of one terminal, as its maker states it. With `mean_time_to_restore` of the network or the
    /// site, equipment counts in the outage.
    #[schemars(extend("x-least" = 0.0001))]
    pub mean_time_between_failures: Option<Given<Hours>>,
    /// Delay it adds to what passes through one terminal, in one direction. Without it the delay of a service is that of
    /// propagation alone, and is called so.
    #[schemars(extend("x-least" = 0))]
    pub latency: Option<Given<Milliseconds>>,
    /// How far the thresholds may be off, either way.
    #[schemars(extend("x-least" = 0))]
    pub threshold_tolerance: Option<Given<Decibels>>,
    /// Area it shows to the wind, without antenna.
    #[schemars(extend("x-least" = 0))]
    pub wind_area: Option<Given<SquareMetres>>,
    /// Mass without antenna.
    pub mass: Option<Given<Kilograms>>,
    /// Class of what it sends, as its sheet has it: with the bandwidth of a channel it is what an application for a licence
    /// calls the emission.
    pub emission_class: Option<EmissionClass>,
    /// Lamps and what they mean.
    #[serde(default)]
    pub indicators: Vec<Indicator>,
}

impl Radio {
    /// What a crew aligns by, if the radio has anything of the kind.
    #[must_use]
    pub fn aligned_by(&self) -> Option<AlignedBy<'_>> {
        let voltage = self.readout.as_ref().map(AlignedBy::Voltage);
        let level = || self.shown_level.as_ref().map(AlignedBy::Level);
        voltage.or_else(level).or_else(|| self.indication.as_ref().map(AlignedBy::Indication))
    }

    /// Whether it may send as soon as it has power: only a sheet that says no is believed.
    #[must_use]
    pub fn may_send_at_power_on(&self) -> bool {
        self.sends_at_power_on.unwrap_or(true)
    }

    /// Whether its alignment voltage comes out of a port.
    #[must_use]
    pub fn reads_out_at(&self, port: &str) -> bool {
        self.readout.as_ref().is_some_and(|readout| *readout.port == *port)
    }
}

/// One half of a duplex pair, or the only band of a radio that takes turns.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Half {
    /// Name within the radio: `low`, `high`, `turns`.
    pub id: Id,
    /// Frequencies it can send on.
    pub transmit: Window<Gigahertz>,
    /// Frequencies it can listen on.
    pub receive: Window<Gigahertz>,
}

/// A point of a mask.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct MaskPoint {
    /// Off the middle of the channel, in bandwidths of the channel: a plain number, its edge lies at 0.5.
    pub offset: Number,
    /// How far below the level in the middle.
    #[schemars(extend("x-least" = 0))]
    pub below: Given<Decibels>,
}

/// One modulation state at one bandwidth, or at several of them by `by_bandwidth`.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline, transform = completed)]
pub struct State {
    /// Modulation and code as the data sheet names them.
    #[schemars(extend("x-own" = true))]
    pub title: Text,
    /// The figures of this state at several bandwidths, an item for each. What an item does not say is that of the state. None
    /// are left when it has been read: there is a state for each of them.
    #[serde(default)]
    pub by_bandwidth: Vec<BandwidthFigures>,
    /// Bandwidth the figures hold for.
    pub bandwidth: Given<Megahertz>,
    /// Payload rate, each way.
    #[schemars(extend("x-least" = 2))]
    pub capacity: Given<MegabitsPerSecond>,
    /// Least level it holds at, at the bit error ratio of the data sheet.
    #[schemars(extend("x-least" = -140, "x-most" = 0))]
    pub threshold: Given<Dbm>,
    /// Bits that one symbol carries, coding aside: 2 for QPSK, 6 for 64QAM.
    #[schemars(extend("enum" = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]))]
    pub bits: Option<u8>,
    /// How much the radio lowers its power in this state. Default none.
    #[schemars(extend("x-least" = 0))]
    pub back_off: Option<Given<Decibels>>,
    /// How far the level must be above the threshold before the radio takes this state again. What the state has in hand
    /// is counted to there, as if it were lost until then: no more time than that is lost. Default none.
    #[schemars(extend("x-least" = 0))]
    pub hysteresis: Option<Given<Decibels>>,
    /// Carrier over co-channel interference at which it still holds, at the bit error ratio of the threshold. Without it
    /// interference is held to be like noise, except between the two carriers of a dual-polarised hop, where it is asked for.
    #[schemars(extend("x-least" = 0))]
    pub carrier_to_interference: Option<Given<Decibels>>,
}

/// What a modulation state does at one bandwidth.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline, transform = completed)]
pub struct BandwidthFigures {
    /// Bandwidth the figures hold for.
    #[schemars(extend("x-own" = true))]
    pub bandwidth: Given<Megahertz>,
    /// Payload rate, each way.
    pub capacity: Option<Given<MegabitsPerSecond>>,
    /// Least level it holds at, at the bit error ratio of the data sheet.
    pub threshold: Option<Given<Dbm>>,
    /// How much the radio lowers its power in this state. Default none.
    #[schemars(extend("x-least" = 0))]
    pub back_off: Option<Given<Decibels>>,
    /// How far the level must be above the threshold before the radio takes this state again. Default none.
    #[schemars(extend("x-least" = 0))]
    pub hysteresis: Option<Given<Decibels>>,
    /// Carrier over co-channel interference at which it still holds, at the bit error ratio of the threshold.
    #[schemars(extend("x-least" = 0))]
    pub carrier_to_interference: Option<Given<Decibels>>,
}

/// A port for a cable.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Port {
    /// Name within the radio.
    pub id: Id,
    /// What it may carry.
    pub carries: Vec<Duty>,
    /// Line rate, where it carries data.
    pub rate: Option<Given<MegabitsPerSecond>>,
    /// Gland inserts that fit it and the cables they seal.
    #[serde(default)]
    pub glands: Vec<Gland>,
    /// What it hands on, where it carries `power-out`.
    pub passes_on: Option<PassOn>,
    /// Impulse voltage that it withstands from its lines to earth. Default for data: 2.4 kV, which IEEE 802.3 asks of every port.
    pub withstand: Option<Given<ImpulseVolts>>,
}

impl Port {
    /// Whether a run may use the port for a service.
    #[must_use]
    pub fn takes(&self, service: Carried) -> bool {
        self.carries.contains(&match service {
            Carried::Data => Duty::Data,
            Carried::Power => Duty::PowerIn,
            Carried::PowerOut => Duty::PowerOut,
        })
    }
}

/// What a port may carry.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum Duty {
    /// Traffic.
    Data,
    /// Power into the radio.
    PowerIn,
    /// Power out to something else.
    PowerOut,
    /// The alignment voltage.
    Readout,
}

/// Power a port hands on to something else.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct PassOn {
    /// Most power it gives at the port.
    pub power: Given<Watts>,
    /// Pairs it powers: 2 or 4.
    #[schemars(extend("enum" = [2, 4]))]
    pub pairs: u8,
    /// Voltage it makes of its own. Without it the voltage at the input is passed on as it is.
    pub voltage: Option<Given<Volts>>,
    /// How much of what it takes for that it hands on. Default 85 % (common practice).
    pub efficiency: Option<Given<Percent>>,
}

/// A gland insert.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Gland {
    /// Which insert, as the crew finds it in the box.
    pub title: Text,
    /// Outside diameters of the cables it seals.
    pub cable: Window<Millimetres>,
    /// Whether its maker wants it tightened by hand only. Default `false`.
    #[serde(default)]
    pub hand_tight: bool,
}

/// What a radio needs to run.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct RadioPower {
    /// Most it ever draws itself, transmitting and heated; what it passes on is counted by what it feeds.
    #[schemars(extend("x-most" = 2000))]
    pub draw: Given<Watts>,
    /// Voltage at its port.
    pub voltage: Window<Volts>,
    /// Kinds of supply it takes.
    pub accepts: Vec<Standard>,
    /// Class it asks of a source of IEEE 802.3, 1 to 8.
    #[schemars(extend("enum" = [1, 2, 3, 4, 5, 6, 7, 8]))]
    pub class: Option<u8>,
    /// Contacts and poling it takes of a passive supply, every one that will do.
    #[serde(default)]
    pub wiring: Vec<Wiring>,
    /// Voltage at which it has switched on for certain. Default that of `limits.start_voltage` in the network.
    pub start: Option<Given<Volts>>,
}

/// The ground terminal of a radio.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct RadioGround {
    /// Thread or lug.
    pub terminal: Text,
    /// Least copper conductor its maker asks for.
    pub least_conductor: Given<SquareMillimetres>,
    /// Tightening torque of the terminal.
    pub torque: Option<Given<NewtonMetres>>,
}

/// A lamp.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Indicator {
    /// Which lamp.
    pub lamp: Text,
    /// What it shows.
    pub shows: Text,
    /// What that means.
    pub means: Text,
}
