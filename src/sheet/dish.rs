//! The antenna of one end: whether its figures agree, and where it has side lobes a crew may lock on.

use super::aperture::{above_zero, aperture};
use super::direction::Direction;
use super::gain;
use super::key::{OnLobe, SectionKey};
use super::line::{Line, Section, lines};
use super::meter;
use super::method::cited;
use super::missing::Missing;
use super::reason::Reason;
use super::sentence::Term;
use super::shown::Ratio;
use super::title::Title;
use super::traced::{Traced, all, read, see};
use crate::at;
use crate::network::{Document, ResolvedEnd};
use crate::physics::antenna::{self, SideLobes};
use crate::physics::pattern;
use crate::spec::{Antenna, EndName};
use crate::units::{Dbi, Dbm, Degrees, Gigahertz, Given, MeterVolts, Millimetres};

/// Aperture efficiencies one meets.
pub const USUAL_EFFICIENCY: std::ops::RangeInclusive<f64> = antenna::USUAL_EFFICIENCY;

const LIGHT: &str = "round aperture, evenly lit to a taper of 1 − r² (Fraunhofer; Airy 1835)";
const MEASURED: &str = "the measured pattern of the antenna";
const LOBE: &str = "level to align to less the side lobe of each antenna, evenly lit to tapered or as measured";
const READS: &str = "the read-out scale at that level, no further than its range";

/// How much wider than the first side lobe a crew must sweep to see the main beam between two of them.
const SWEEP: f64 = 2.0;

lines! {
    /// Whether gain, beamwidth and diameter of an antenna agree.
    AntennaLines {
        gain_of_beam: Dbi, "", "gain that goes with the beamwidth", cited("44.5 − 20 lg φ, ITU-R F.699-8 (clause from memory)");
        beam_of_gain: Degrees, "", "beamwidth that goes with the gain", "10^((44.5 − G) / 20), from the same clause";
        most_gain: Dbi, "", "gain of an aperture that wastes nothing", "10 lg (π D / λ)² at mid-band";
        efficiency: Ratio, "η", "aperture efficiency", "10^(G/10) / (π D / λ)² at mid-band";
    }
}

lines! {
    /// Where the first side lobe is.
    LobeLines {
        first_null_least: Degrees, "", "nearest angle of the first null", LIGHT;
        first_null_most: Degrees, "", "farthest angle of the first null", LIGHT;
        side_lobe_least: Degrees, "", "nearest angle of the first side lobe", LIGHT;
        side_lobe_most: Degrees, "", "farthest angle of the first side lobe", LIGHT;
        sweep: Degrees, "", "least sweep to each side while aligning", "twice the farthest angle of the first side lobe";
        envelope: Dbi, "", "gain at the first side lobe, envelope of its peaks", cited("ITU-R F.699-8, no pattern measured");
        average: Dbi, "", "gain at the first side lobe, mean over the lobes", cited("ITU-R F.1245-3, no pattern measured");
    }
}

lines! {
    /// What is seen with one or both ends locked on a side lobe.
    LobeReadingLines {
        level_least: Dbm, "", "lowest level", LOBE;
        level_most: Dbm, "", "highest level", LOBE;
        voltage_at_least: MeterVolts, "", "meter reading at the lowest level", READS;
        voltage_at_most: MeterVolts, "", "meter reading at the highest level", READS;
    }
}

/// An antenna as one end uses it.
#[derive(Debug)]
pub struct DishSheet {
    /// Its gain at mid-band, by which its figures are held against each other.
    pub gain: Line<Given<Dbi>>,
    /// Whether its figures agree.
    pub antenna: AntennaLines,
    /// Its side lobes.
    pub lobes: LobeLines,
    /// What is seen with this end on a side lobe.
    pub here: LobeReadingLines,
    /// What is seen with the far end on one.
    pub there: LobeReadingLines,
    /// What is seen with both.
    pub both: LobeReadingLines,
}

impl DishSheet {
    /// The readings, with the end or ends that are on a side lobe.
    #[must_use]
    pub fn readings(&self) -> [(OnLobe, &'static str, &LobeReadingLines); 3] {
        [
            (OnLobe::Here, "this end", &self.here),
            (OnLobe::There, "the far end", &self.there),
            (OnLobe::Both, "both ends", &self.both),
        ]
    }

    pub(super) fn missing(&self, each: &mut dyn FnMut(&'static str, &Missing)) {
        self.antenna.missing(each);
        self.lobes.missing(each);
        self.readings().into_iter().for_each(|(_, _, lines)| lines.missing(each));
    }

    pub(super) fn sections(&self, end: EndName, sections: &mut Vec<Section>) {
        sections.push(self.antenna.section(SectionKey::Antenna(end), Title::Antenna { end }));
        sections.push(self.lobes.section(SectionKey::SideLobes(end), Title::SideLobes { end }));
        for (which, words, lines) in self.readings() {
            let title = Title::OnSideLobe { end, who: Term(words) };
            sections.push(lines.section(SectionKey::LobeReading(end, which), title));
        }
    }
}

pub(super) fn compute(own: &ResolvedEnd<'_>, far: &ResolvedEnd<'_>, incoming: &Direction<'_>) -> DishSheet {
    let frequency = incoming.lines.frequency.map(|given| given.value);
    let (here, there) = (Lobes::of(own.antenna, &frequency), Lobes::of(far.antenna, &frequency));
    let reading = |lobes: &[&Lobes]| reading(own, incoming, lobes);
    DishSheet {
        gain: gain::line(own.antenna, &middle(own.antenna)),
        antenna: figures(own.antenna),
        here: reading(&[&here]),
        there: reading(&[&there]),
        both: reading(&[&here, &there]),
        lobes: here.lines(own.antenna),
    }
}

/// The middle of the band of an antenna.
fn middle(dish: &Document<Antenna>) -> Traced<Gigahertz> {
    see!(dish.band).map(|band| Gigahertz(f64::midpoint(band.min.value.0, band.max.value.0)))
}

/// Whether the figures of a data sheet agree.
fn figures(dish: &Document<Antenna>) -> AntennaLines {
    let middle = middle(dish);
    let (gain, beam) = (gain::at(dish, &middle), read!(dish.beamwidth));
    let diameter = read!(dish.diameter).stated(Reason::NoDiameter).check(above_zero);
    AntennaLines {
        gain_of_beam: beam
            .check(|beam| if beam.0 > 0.0 { Ok(antenna::gain_of_beam(beam)) } else { Err(Reason::BeamNotAboveZero) })
            .line(),
        beam_of_gain: gain.map(antenna::beam_of_gain).line(),
        most_gain: all((&diameter, &middle)).map(|(diameter, middle)| antenna::gain(middle, diameter, 1.0)).line(),
        efficiency: all((&gain, &diameter, &middle))
            .map(|(gain, diameter, middle)| Ratio(antenna::efficiency(middle, diameter, gain)))
            .line(),
    }
}

/// The side lobes of an antenna at a frequency.
struct Lobes {
    found: Traced<SideLobes>,
    diameter: Traced<Millimetres>,
    frequency: Traced<Gigahertz>,
    measured: bool,
}

impl Lobes {
    fn of(dish: &Document<Antenna>, frequency: &Traced<Gigahertz>) -> Self {
        let diameter = aperture(dish, frequency);
        let measured = !dish.pattern.is_empty();
        let pattern = see!(dish.pattern);
        let found = if measured {
            pattern.check(|pattern| {
                let mut points: Vec<_> = pattern.iter().map(|point| (point.angle.value, point.below.value)).collect();
                points.sort_by(|one, other| one.0.0.total_cmp(&other.0.0));
                antenna::measured_lobes(&points).ok_or(Reason::NoMeasuredLobe)
            })
        } else {
            let lit = all((&diameter, frequency)).decided_by(&pattern);
            // Too small by its diameter, or by its gain where none is written.
            let at = if dish.diameter.is_some() { at!(dish.diameter) } else { at!(dish.gain) };
            lit.try_map(|(diameter, frequency)| {
                antenna::side_lobes(frequency, diameter).ok_or_else(|| Missing::new(Reason::NoSideLobe, at))
            })
        };
        Self { found, diameter, frequency: frequency.clone(), measured }
    }

    fn lines(&self, dish: &Document<Antenna>) -> LobeLines {
        let angle = |pick: fn(SideLobes) -> Degrees| {
            let angle = self.found.map(pick);
            if self.measured { angle.by(MEASURED) } else { angle.line() }
        };
        LobeLines {
            first_null_least: angle(|found| found.first_null[0]),
            first_null_most: angle(|found| found.first_null[1]),
            side_lobe_least: angle(|found| found.first_side_lobe[0]),
            side_lobe_most: angle(|found| found.first_side_lobe[1]),
            sweep: self.found.map(|found| Degrees(SWEEP * found.first_side_lobe[1].0)).line(),
            envelope: self.off_axis(dish, pattern::peak_envelope).line(),
            average: self.off_axis(dish, pattern::average).line(),
        }
    }

    /// The gain at the first side lobe by a reference pattern.
    fn off_axis(&self, dish: &Document<Antenna>, pattern: Pattern) -> Traced<Dbi> {
        let measured = self.measured;
        let unmeasured = see!(dish.pattern).unless(|_| measured.then_some(Reason::PatternMeasured));
        let known = all((&self.found, &unmeasured, &self.frequency, &self.diameter, &gain::at(dish, &self.frequency)));
        known
            .judge(|(found, _, frequency, diameter, gain)| pattern(frequency, diameter, gain, found.first_side_lobe[1]))
    }
}

/// A reference pattern: the gain of an antenna at an angle off its axis.
type Pattern = fn(Gigahertz, Millimetres, Dbi, Degrees) -> Result<Dbi, pattern::OutOfRange>;

/// What an end sees with some antennas on their first side lobe.
fn reading(own: &ResolvedEnd<'_>, incoming: &Direction<'_>, lobes: &[&Lobes]) -> LobeReadingLines {
    let (radio, scale) = (own.radio, meter::scale(own));
    let range = see!(radio.readout).map(|readout| readout.as_ref().map(|readout| &readout.range));
    let range = range.stated(Reason::NoReadout);
    let found = Traced::each(lobes.iter().map(|lobes| &lobes.found));
    let at = |light: usize| {
        all((&incoming.levels.align_level, &found))
            .map(|(level, found)| found.iter().fold(level, |level, lobe| level + lobe.level[light]))
    };
    let volts = |level: &Traced<Dbm>| {
        all((level, &scale, &range))
            .map(|(level, scale, range)| MeterVolts(scale.volts(level).0.max(range.min.value.0).min(range.max.value.0)))
    };
    let (least, most) = (at(1), at(0));
    LobeReadingLines {
        voltage_at_least: volts(&least).line(),
        voltage_at_most: volts(&most).line(),
        level_least: least.line(),
        level_most: most.line(),
    }
}
