//! What a line of the sheet says that is no number by itself.

use std::sync::Arc;

use super::reason::Reason;
use super::sentence::{Argument, Figure, Open, Term, sentences};
use crate::physics::codes::Known;
use crate::physics::rain_outage::{COMMONEST, Outage, RAREST};
use crate::physics::raster::{Half, Numbered};
use crate::physics::share::Share;
use crate::physics::snow::Precipitation;
use crate::physics::worst_month::MonthOutage;
use crate::spec::{EndName, Jacket, Sure};
use crate::units::{Decibels, Given, Megahertz, Metres, NewtonMetres, Quantity as _};

sentences! {
    /// What a line holds that is no number by itself.
    Saying in "said" {
        Name { name: Box<str> } => "{name}";
        Word { word: Term } => "{word}";

        // Numbers that are a bound or a range.
        Never => "none";
        NotMoreThan { number: Figure } => "not more than {number}";
        AtLeast { number: Figure } => "at least {number}";
        Range { least: Figure, most: Figure } => "{least} to {most}";
        EachWay { there: Decibels, back: Decibels } => "{there} from a to b, {back} from b to a";

        // Where the rain rate is from, and what falls.
        AsWritten => "as written";
        RainOfMonths => "normals of twelve months";
        RainOfMap => "map at the middle of the path";
        NoRainOfMap => "map value 0: no rain outage in the model";
        MeltingLayer => "melting snow: the path lies in the mean melting layer";
        Rain => "rain";
        RainOrSnow => "rain or snow, at times melting snow";
        DrySnow => "dry snow";

        // What an availability leaves out.
        WetSnow => "wet snow";
        Crossing => "crossed polarisations";
        Multipath => "multipath fading";
        Equipment => "failures of equipment";
        Supply => "failures of its supply";
        LatencyOf { radio: Box<str> } => "latency of {radio}";
        And { first: Box<Saying>, next: Box<Saying> } => "{first}, {next}";

        // The profile.
        NoSource { why: Reason } => "none: {why}";
        PointsInHop => "points in the hop";
        Tiles { names: Box<str> } => "tiles {names}";
        TilesOf { source: Box<str>, names: Box<str> } => "{source} (tiles {names})";
        Count { number: usize } => "{number}";
        Standing { kind: Term, name: Box<str> } => "{kind} {name}";

        // Interference.
        Sender { owner: Box<str>, level: Figure } => "{owner} {level}";

        // The meter and the cables.
        VoltageAt { port: Box<str> } => "voltage at port {port}";
        LevelAt { place: Box<str> } => "level at: {place}";
        Higher => "higher";
        Lower => "lower";
        Device => "device";
        Grade { grade: Box<str>, jacket: Term } => "{grade}, {jacket}";

        Over { what: Box<str>, way: Box<str> } => "{what} over {way}";

        // What is not the network's own.
        StandardPart => "standard part, shipped in the program";
        SharedLibrary { name: Box<str> } => "shared library {name}";
        Basis { text: Box<str>, sure: Term } => "{text} [{sure}]";
        BasisOf { keys: Box<str>, text: Box<str>, sure: Term } => "{keys}: {text} [{sure}]";

        // What stands together.
        EndAt { hop: Box<str>, end: EndName, height: Box<Given<Metres>> } => "{hop} end {end} at {height}";
        EndOf { hop: Box<str>, end: EndName } => "{hop} end {end}";
        RunOf { hop: Box<str>, end: EndName, port: Box<str> } => "{hop} end {end} port {port}";
        AndMore => "and more";
        MomentOf { hop: Box<str>, end: EndName, moment: NewtonMetres } => "{hop} end {end} {moment}";

        // The codes.
        Confidences { eirp: Term, power: Term, antenna: Term } => "EIRP {eirp}, power {power}, antenna {antenna}";
        Channel { raster: &'static str, number: u16, step: Megahertz } => "{raster}: {number} of {step}";
        Channels { raster: &'static str, first: u16, last: u16, step: Megahertz } =>
            "{raster}: {first} to {last} of {step}";
        LowerChannel { raster: &'static str, number: u16, step: Megahertz } =>
            "{raster}: {number} of {step}, lower half";
        LowerChannels { raster: &'static str, first: u16, last: u16, step: Megahertz } =>
            "{raster}: {first} to {last} of {step}, lower half";
        UpperChannel { raster: &'static str, number: u16, step: Megahertz } =>
            "{raster}: {number} of {step}, upper half";
        UpperChannels { raster: &'static str, first: u16, last: u16, step: Megahertz } =>
            "{raster}: {first} to {last} of {step}, upper half";
    }
}

impl Open for Box<Saying> {
    fn argument(&self) -> Argument {
        Argument::Clause(Arc::new((**self).clone()))
    }
}

impl Saying {
    /// What somebody called something.
    #[must_use]
    #[expect(clippy::needless_pass_by_value, reason = "names come owned and borrowed")]
    pub fn name(name: impl ToString) -> Self {
        Self::Name { name: name.to_string().into() }
    }

    /// Several, one after another; `none` of none.
    pub(super) fn list(several: impl DoubleEndedIterator<Item = Self>) -> Self {
        let last_first = several.rev().reduce(|next, first| Self::And { first: first.into(), next: next.into() });
        last_first.unwrap_or(Self::Never)
    }

    /// A word of ours.
    pub(super) const fn word(word: &'static str) -> Self {
        Self::Word { word: Term(word) }
    }

    /// What a figure rests on.
    pub(super) fn basis(text: &str, sure: Sure) -> Self {
        Self::Basis { text: text.into(), sure: Term(sure.words()) }
    }

    /// What figures of some keys rest on.
    pub(super) fn basis_of(keys: &str, text: &str, sure: Sure) -> Self {
        Self::BasisOf { keys: keys.into(), text: text.into(), sure: Term(sure.words()) }
    }

    /// A quantity of which only a range is known.
    pub(super) fn range(least: impl std::fmt::Display, most: impl std::fmt::Display) -> Self {
        Self::Range { least: Figure::of(least), most: Figure::of(most) }
    }

    /// The grade of a cable.
    pub(super) fn grade(grade: String, jacket: Jacket) -> Self {
        Self::Grade { grade: grade.into(), jacket: Term(jacket.word()) }
    }

    /// How surely the figures of a code are known: in one word where that is the same for all.
    pub(super) fn known(known: Known) -> Self {
        if known.eirp == known.power && known.power == known.antenna {
            return Self::word(known.eirp.word());
        }
        let [eirp, power, antenna] = [known.eirp, known.power, known.antenna].map(|known| Term(known.word()));
        Self::Confidences { eirp, power, antenna }
    }

    /// A channel of a raster.
    #[must_use]
    pub fn channel(raster: &'static str, of: Numbered) -> Self {
        let Numbered { first, last, step, half } = of;
        let number = first;
        match (half, first == last) {
            (None, true) => Self::Channel { raster, number, step },
            (None, false) => Self::Channels { raster, first, last, step },
            (Some(Half::Lower), true) => Self::LowerChannel { raster, number, step },
            (Some(Half::Lower), false) => Self::LowerChannels { raster, first, last, step },
            (Some(Half::Upper), true) => Self::UpperChannel { raster, number, step },
            (Some(Half::Upper), false) => Self::UpperChannels { raster, first, last, step },
        }
    }
}

/// What falls through a hop.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Falls {
    /// Over the years.
    pub ever: Precipitation,
    /// Part of the path lies where snow melts when the rain height is at its mean.
    pub in_melting_layer: bool,
}

impl From<Falls> for Saying {
    fn from(falls: Falls) -> Self {
        match (falls.ever, falls.in_melting_layer) {
            (_, true) => Self::MeltingLayer,
            (Precipitation::Rain, _) => Self::Rain,
            (Precipitation::MeltingSnow, _) => Self::RainOrSnow,
            (Precipitation::DrySnow, _) => Self::DrySnow,
        }
    }
}

/// A line's value as whoever spells it must know it.
#[derive(Debug, Clone, PartialEq)]
pub enum Told {
    /// A number with its unit.
    Number(String),
    /// Anything else.
    Said(Saying),
}

/// In English.
impl std::fmt::Display for Told {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Number(number) => f.write_str(number),
            Self::Said(saying) => saying.fmt(f),
        }
    }
}

impl From<Outage> for Told {
    fn from(outage: Outage) -> Self {
        match outage {
            Outage::Never => Self::Said(Saying::Never),
            Outage::Below => Self::Said(Saying::NotMoreThan { number: Figure::of(RAREST.with_decimals(3)) }),
            Outage::Within(share) => Self::Number(share.to_string()),
            Outage::Above => Self::Said(Saying::AtLeast { number: Figure::of(COMMONEST.with_decimals(0)) }),
        }
    }
}

impl From<MonthOutage> for Told {
    fn from(outage: MonthOutage) -> Self {
        match outage {
            MonthOutage::Never => Self::Said(Saying::Never),
            MonthOutage::AtMost(share) => {
                Self::Said(Saying::NotMoreThan { number: Figure::of(share.with_decimals(3)) })
            }
            MonthOutage::Within(share) => Self::Number(share.to_string()),
            MonthOutage::AtLeast(share) => Self::Said(Saying::AtLeast { number: Figure::of(share.with_decimals(1)) }),
        }
    }
}

impl From<Share> for Told {
    fn from(Share { least, most }: Share) -> Self {
        if least == most {
            return Self::Number(most.to_string());
        }
        let [at_least, at_most] = [least, most].map(Figure::of);
        Self::Said(if least.0 <= 0.0 {
            Saying::NotMoreThan { number: at_most }
        } else if most.0 >= 100.0 {
            Saying::AtLeast { number: at_least }
        } else {
            Saying::Range { least: at_least, most: at_most }
        })
    }
}
