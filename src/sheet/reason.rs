//! Why a line of the sheet has no value: every reason there is, with what it says.
//!
//! A reason stays what it is until something spells it: [`std::fmt::Display`] in English, a catalogue in another language
//! under the key of its name.

use std::sync::Arc;

use super::sentence::{Argument, Day, Open, Whole, sentences};
use crate::network::{HoleName, Owner};
use crate::physics::{
    atmosphere, cross_polar, geodesy, magnetic, multipath, pattern, power_feed, rain_outage, rain_rate, readout,
};
use crate::spec::{EndName, Material};
use crate::units::{
    Celsius, Degrees, Gigahertz, Given, Latitude, Longitude, Metres, Millimetres, MillimetresPerHour, Watts,
};

sentences! {
    /// Why a line has no value: one lower-case clause; for something broken, its name.
    Reason in "reason" {
        // What is broken.
        BrokenField { field: Box<str> } => "`{field}`";
        BrokenFieldOf { field: Box<str>, owner: Box<Owner> } => "`{field}` of {owner}";
        BrokenRainMap => "the rain map";
        BrokenProfileFile => "its profile file";

        Endless => "the values it comes from give no number together";

        // The path and what is on it.
        EndsCoincide => "both ends are at the same position";
        NoProfile => "there is no profile of the path";
        TileVoid => "a tile has a void on the path";
        NoTile { cells: Box<str> } => "no tile reaches the path in {cells}";
        EdgesSwapped => "the farther edge of an obstacle lies nearer than its nearer one";
        ObstacleBeyondEnd { distance: Box<Given<Metres>>, length: Metres } =>
            "an obstacle at {distance} from a lies beyond end b, which is at {length}";
        GrowthWithoutDay => "growth is given without the day it is counted to: add `until`";
        ProfileOutOfOrder => "the points of the profile are not in order of distance";
        ProfileTooShort => "a profile has two points at least, the ground at both ends";
        ClearanceOutOfRange { least: f64, most: f64, value: f64 } =>
            "a fraction of the Fresnel zone is from {least} to {most}, not {value}";
        FactorOutOfRange { least: f64, most: f64, value: f64 } =>
            "an effective Earth radius factor is from {least} to {most}, not {value}";
        NoDay => "no day is given";
        NothingGrows => "nothing on the path grows";
        NoNearEdge => "no near edge is in the beam";

        // Air, rain and fog.
        OutsideTroposphere { height: Metres } => "the reference atmosphere holds from -1 km to 11 km, not at {height}";
        AllVapour => "the air would be all water vapour";
        NoRainRate => "no rain rate, normals of months or rain map is given by the network, a site or the hop";
        OutsideRainMap => "the path lies outside the rain map";
        NotTwelveMonths { totals: usize, temperatures: usize } =>
            "the normals are {totals} totals and {temperatures} temperatures, not twelve of each";
        NoWeather { rain: Millimetres, temperature: Celsius, month: usize } =>
            "{rain} of rain at {temperature} cannot be the weather of month {month}";
        NoRateFromMonths => "no rain rate follows from the normals";
        NoRainHeight => "no rain height is given";
        TooNearToTell => "the antennas are too close together to tell what they lose in each other's near field";
        FarField => "the antennas stand outside of each other's near field";
        NoColdestAir => "no coldest air is given";
        NoLosses => "nothing stated";
        NoFeederLoss => "the feeder states no loss at this frequency";
        RainFrequency { frequency: Gigahertz } => "rain outage is modelled from 1 to 100 GHz, not at {frequency}";
        RainDistance { distance: Metres } => "rain outage is modelled up to 60 km, not over {distance}";
        NoSuchRainRate { rate: MillimetresPerHour } => "{rate} is not a rain rate";
        RainModelRange =>
            "the rain model holds from 0.001 % to 1 % of the year, so for availabilities from 99 % to 99.999 %";
        NoFog => "no fog is given";
        NoEmissionClass => "the class of emission of the radio is not stated";
        FogFrequency => "loss in fog is modelled up to 200 GHz";

        // The budget.
        NoStateForCapacity => "no modulation state reaches the capacity asked for";
        NoOtherState => "no other state";
        NoHysteresis => "the state has no hysteresis";
        NoStateHolds => "no modulation state has a fade margin";
        NoStateToAlignIn => "the radio has no modulation state at the bandwidth to align in";
        NoHeldLevel => "power control holds no level";
        NoPowerControl => "the radio has no power control";
        NoControlRange => "the range of the power control is not given";
        NoUpFade => "no up-fade is given";
        NoFadeMargin => "no fade margin is asked for";
        NoRefractivity => "no refractivity is given";
        NoTimeBetweenFailures => "no mean time between failures of the radio is given";
        NoTimeToRestore => "no mean time to restore is given";
        NoPowerFailures => "no failures of the power point are given";
        NothingOff => "no tolerance of power, gain, threshold or rain rate is stated";
        NoErrored => "no objective for errors is given";
        MultipathShort { distance: Metres } => "over {distance} multipath fading does not matter";
        MultipathDistance { distance: Metres } => "multipath fading is modelled up to 185 km, not over {distance}";
        MultipathFrequency { frequency: Gigahertz } =>
            "multipath fading is modelled from 15 GHz over the path in km to 45 GHz, not at {frequency}";
        MultipathOccurrence { share: Whole } => "a multipath occurrence of {share} % is beyond the method";
        OneCarrier => "there is one carrier on the channel";
        NoCrossPolar => "an antenna states no cross-polar discrimination";
        NoCarrierToInterference => "the state has no carrier over interference";
        CrossingFrequency { frequency: Gigahertz } =>
            "crossing in rain is modelled from 8 to 35 GHz, not at {frequency}";
        AimBeyondBeam => "an aim error beyond 0.9 of the beamwidth is off the main beam";
        NothingHeard => "no other sender is heard";
        NoNeighbourReached => "no receiver of a neighbour is reached";
        NothingElsewhere => "none is stated";
        NoUncodedFigure => "no figure without coding for so many bits";

        // Services.
        HopNotEvaluated { hop: Box<str> } => "hop {hop} is not evaluated";
        RouteBroken => "a route does not join";
        OneRoute => "there is one route";
        TwoRoutes => "there are two routes";
        NoCommonRain => "no distance is stated within which rain is common";

        // Antennas.
        DiameterNotAboveZero => "an antenna has a diameter above zero";
        NoDiameter => "the antenna states no diameter";
        BeamNotAboveZero => "a beam has a width above zero";
        NoMeasuredLobe => "the measured pattern shows no first null and side lobe";
        NoSideLobe => "an antenna of less than two wavelengths has no side lobe";
        PatternMeasured => "the pattern is measured";
        PatternFrequency { frequency: Gigahertz } => "reference patterns hold from 1 to 86 GHz, not at {frequency}";
        PatternDiameter { diameter: Millimetres } => "{diameter} is not a diameter of an antenna";
        PatternAngle { angle: Degrees } => "an angle off the axis is from 0° to 180°, not {angle}";

        // Aim and meter.
        NoSuchDate { day: Day } => "{day} is not a date";
        OutsideMagneticModel { day: Day, first: i32, last: i32 } =>
            "{day} is outside {first} to {last}, the years of the magnetic model";
        MagneticHeight { height: Metres } => "the magnetic model holds from -1 km to 850 km, not at {height}";
        NoSuchPosition { latitude: Latitude, longitude: Longitude } => "{latitude}, {longitude} is not a position";
        CompassBlackout { field: Whole, least: Whole } =>
            "the horizontal field of {field} nT is below {least} nT, too weak for a compass";
        DegenerateScale => "the two points of the voltmeter scale need different voltages and different levels";
        NoReadout => "its radio has no voltage to align by";
        NothingToAlignBy => "its radio shows nothing to align by";
        NoTolerance => "no tolerance of power, gain or read-out is stated";

        // Cables, power and grounding.
        NoGland => "the port lists no gland insert";
        NoGlandHolds => "no gland insert of the port holds this diameter";
        NoBasis => "it does not say";
        NothingSeals => "no insert seals it";
        NothingFeedsRadio => "nothing feeds the radio";
        NothingFeedsRun => "nothing feeds this run";
        NoReach { interface: &'static str, fibre: &'static str } => "{interface} has no reach over {fibre}";
        PowerInACircle => "radios feed each other in a circle";
        RunWithoutPower => "the run carries no power";
        Starved { most: Watts } => "no more than {most} can reach the far end of the cable";
        DeviceStarved => "no more than too little can reach it";
        NoLengthDoes => "no length of this cable would do";
        NoConductorDoes => "no cable that fits a plug is thick enough";
        NoSupplyDoes => "no supply voltage would do";
        NoGroundingConductor => "no grounding conductor is given";
        NoGroundingLength => "its length is not given";
        NobodySays => "nobody says";

        // Licence and codes.
        NoneInLicence => "the licence states none";
        NothingLimits => "nothing limits it";
        NoneStated => "none is stated";
        NoRaster => "the code sets no raster";
        OffRaster { raster: &'static str } => "not on the raster of {raster}";
        NoneInCode => "the code sets none";
        NoPeakInCode => "the code sets no peak";
        NoPowerInCode => "the code sets no power by itself";

        // Wind and the pole.
        MastIsEngineers => "a mast is the structural engineer's";
        WallIsEngineers => "a wall is the structural engineer's";
        NoWall => "no wall thickness is stated";
        WallTooThick => "the wall is thicker than the tube";
        MaterialSpreads { material: Material } => "{material} spreads too widely";
        NothingStandsFree => "nothing of the pole stands free";
        NoWind => "no wind is stated";
        NoSurvivalWind => "no survival wind is stated";
        NoOrography => "no hill or cliff is stated";
        OrographyInGust => "the speed is a gust at the antenna, which has the hill in it";
        NoOrographyFactor => "EN 1991-1-4 takes a factor or a slope, and neither is stated";
        NoTopographicFactor => "ASCE 7 takes a topographic factor, and none is stated";
        OrographyOutOfRange { least: f64, most: f64, value: f64 } =>
            "a factor for hills and cliffs is from {least} to {most}, not {value}";
        NoIce => "no ice is stated";
        NoFixings => "no fixings are stated";
        FewFixings => "fixings in two rows are two at least";
        NoMass => "not every mass is stated";
        NoWindArea => "the antenna states no wind area";
        NoWindAreaBeside { hop: Box<str>, end: EndName } =>
            "the antenna of hop {hop}, end {end}, on the same support states no wind area";
        StandsAlone => "nothing else of the network stands there";
        BondsAlone => "nothing else of the network bonds there";
        NoTotalPower => "the supply states no power of all its ports together";
        CrowdedSupply { most: usize } => "more than {most} runs on one supply are not summed";
        Crowded { most: usize } => "more than {most} other antennas on one support are not judged together";
        WindBeyondBeam => "the wind turns it off the main beam";

        // Records.
        RainNotMeasured => "it rained, and how hard is not written";
        SnowNotComputed => "loss in snow is not computed";
        FogNotMeasured => "there was fog, and how thick is not written";
        NotBothWritten => "meter and level are not both written";
        NoVoltage => "no voltage is written";
        NotWritten => "it is not written";
        NoReading => "no reading is written";
    }
}

impl Open for Reason {
    fn argument(&self) -> Argument {
        Argument::Clause(Arc::new(self.clone()))
    }
}

impl From<HoleName> for Reason {
    fn from(name: HoleName) -> Self {
        let HoleName { field, owner } = name;
        let field = field.into_boxed_str();
        match owner {
            Some(owner) => Self::BrokenFieldOf { field, owner: Box::new(owner) },
            None => Self::BrokenField { field },
        }
    }
}

impl From<geodesy::Coincident> for Reason {
    fn from(_: geodesy::Coincident) -> Self {
        Self::EndsCoincide
    }
}

impl From<atmosphere::OutsideTroposphere> for Reason {
    fn from(outside: atmosphere::OutsideTroposphere) -> Self {
        Self::OutsideTroposphere { height: outside.0 }
    }
}

impl From<rain_rate::NoClimate> for Reason {
    fn from(rain_rate::NoClimate(month, normals): rain_rate::NoClimate) -> Self {
        Self::NoWeather { rain: normals.rain, temperature: normals.temperature, month }
    }
}

impl From<rain_outage::OutOfRange> for Reason {
    fn from(outside: rain_outage::OutOfRange) -> Self {
        use rain_outage::OutOfRange;
        match outside {
            OutOfRange::Frequency(frequency) => Self::RainFrequency { frequency },
            OutOfRange::Distance(distance) => Self::RainDistance { distance },
            OutOfRange::RainRate(rate) => Self::NoSuchRainRate { rate },
        }
    }
}

impl From<multipath::OutOfRange> for Reason {
    fn from(outside: multipath::OutOfRange) -> Self {
        use multipath::OutOfRange;
        match outside {
            OutOfRange::Short(distance) => Self::MultipathShort { distance },
            OutOfRange::Distance(distance) => Self::MultipathDistance { distance },
            OutOfRange::Frequency(frequency) => Self::MultipathFrequency { frequency },
            OutOfRange::Occurrence(share) => Self::MultipathOccurrence { share: Whole(share.0) },
        }
    }
}

impl Reason {
    /// Whether it only says that something is not planned here that most hops do without.
    pub(super) const fn is_unplanned(&self) -> bool {
        matches!(
            self,
            Self::NoHeldLevel
                | Self::NoUpFade
                | Self::NoHysteresis
                | Self::OneCarrier
                | Self::StandsAlone
                | Self::BondsAlone
                | Self::NothingHeard
                | Self::NothingElsewhere
                | Self::NoNeighbourReached
                | Self::NoBasis
                | Self::NobodySays
                | Self::NoOrography
                | Self::NoIce
                | Self::NoFixings
        )
    }
}

impl From<cross_polar::OutOfRange> for Reason {
    fn from(outside: cross_polar::OutOfRange) -> Self {
        use cross_polar::OutOfRange;
        match outside {
            OutOfRange::Frequency(frequency) => Self::CrossingFrequency { frequency },
            OutOfRange::Occurrence(share) => Self::MultipathOccurrence { share: Whole(share.0) },
            OutOfRange::Fade(_) => Self::Endless,
        }
    }
}

impl From<pattern::OutOfRange> for Reason {
    fn from(outside: pattern::OutOfRange) -> Self {
        use pattern::OutOfRange;
        match outside {
            OutOfRange::Frequency(frequency) => Self::PatternFrequency { frequency },
            OutOfRange::Diameter(diameter) => Self::PatternDiameter { diameter },
            OutOfRange::Angle(angle) => Self::PatternAngle { angle },
        }
    }
}

impl From<magnetic::MagneticError> for Reason {
    fn from(error: magnetic::MagneticError) -> Self {
        use magnetic::{BLACKOUT, MagneticError, YEARS};
        match error {
            MagneticError::NoSuchDate(year, month, day) => Self::NoSuchDate { day: Day(year, month, day) },
            MagneticError::OutsideModel(year, month, day) => {
                Self::OutsideMagneticModel { day: Day(year, month, day), first: YEARS.start, last: YEARS.end - 1 }
            }
            MagneticError::Height(height) => Self::MagneticHeight { height },
            MagneticError::Position(geodesy::Position { latitude, longitude }) => {
                Self::NoSuchPosition { latitude, longitude }
            }
            MagneticError::Blackout(field) => Self::CompassBlackout { field: Whole(field), least: Whole(BLACKOUT) },
        }
    }
}

impl From<readout::DegenerateScale> for Reason {
    fn from(_: readout::DegenerateScale) -> Self {
        Self::DegenerateScale
    }
}

impl From<power_feed::NoOperatingPoint> for Reason {
    fn from(limit: power_feed::NoOperatingPoint) -> Self {
        Self::Starved { most: limit.most_power }
    }
}
