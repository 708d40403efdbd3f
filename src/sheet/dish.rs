//! The antenna of one end: whether its figures agree, and where it has side lobes a crew may lock on.

use super::budget::Direction;
use super::line::{Line, Missing, Ratio, Section, lines};
use super::meter;
use super::reason::Reason;
use super::sentence::Term;
use super::title::Title;
use crate::at;
use crate::network::{Document, ResolvedEnd};
use crate::physics::antenna::{self, SideLobes};
use crate::physics::pattern;
use crate::place::Place;
use crate::spec::{Antenna, EndName};
use crate::units::{Dbi, Dbm, Decibels, Degrees, Gigahertz, MeterVolts, Millimetres};

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
        gain_of_beam: Dbi, "", "gain that goes with the beamwidth", "44.5 − 20 lg φ, ITU-R F.699-8 (clause from memory)";
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
        envelope: Dbi, "", "gain at the first side lobe, envelope of its peaks", "ITU-R F.699-8, no pattern measured";
        average: Dbi, "", "gain at the first side lobe, mean over the lobes", "ITU-R F.1245-3, no pattern measured";
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
    pub fn readings(&self) -> [(&'static str, &'static str, &LobeReadingLines); 3] {
        [("here", "this end", &self.here), ("there", "the far end", &self.there), ("both", "both ends", &self.both)]
    }

    pub(super) fn mask(&mut self, broken: &dyn Fn(&Place) -> Option<Missing>) {
        self.antenna.mask(broken);
        self.lobes.mask(broken);
        for lines in [&mut self.here, &mut self.there, &mut self.both] {
            lines.mask(broken);
        }
    }

    pub(super) fn missing(&self, each: &mut dyn FnMut(&'static str, &Missing)) {
        self.antenna.missing(each);
        self.lobes.missing(each);
        self.readings().into_iter().for_each(|(_, _, lines)| lines.missing(each));
    }

    pub(super) fn sections(&self, end: EndName, sections: &mut Vec<Section>) {
        let key = format!("ends.{end}.antenna");
        sections.push(Section::of(key.clone(), Title::Antenna { end }, |rows| self.antenna.rows(&key, rows)));
        let key = format!("ends.{end}.side_lobes");
        sections.push(Section::of(key.clone(), Title::SideLobes { end }, |rows| self.lobes.rows(&key, rows)));
        for (name, words, lines) in self.readings() {
            let key = format!("{key}.{name}");
            let title = Title::OnSideLobe { end, who: Term(words) };
            sections.push(Section::of(key.clone(), title, |rows| lines.rows(&key, rows)));
        }
    }
}

pub(super) fn compute(own: &ResolvedEnd<'_>, far: &ResolvedEnd<'_>, incoming: &Direction<'_>) -> DishSheet {
    let frequency = &incoming.lines.frequency;
    let (here, there) = (Lobes::of(own.antenna, frequency), Lobes::of(far.antenna, frequency));
    let reading = |lobes: &[&Lobes]| reading(own, incoming, lobes);
    DishSheet {
        antenna: figures(own.antenna),
        here: reading(&[&here]),
        there: reading(&[&there]),
        both: reading(&[&here, &there]),
        lobes: here.lines(own.antenna),
    }
}

/// Whether the figures of a data sheet agree.
fn figures(dish: &Document<Antenna>) -> AntennaLines {
    let middle = Gigahertz(f64::midpoint(dish.band.min.value.0, dish.band.max.value.0));
    let (gain, beam_at, diameter_at) = (dish.gain.value, at!(dish.beamwidth), at!(dish.diameter));
    let diameter = match &dish.diameter {
        Some(diameter) if diameter.value.0 > 0.0 => Ok(diameter.value),
        Some(_) => Err(Missing::new(Reason::DiameterNotAboveZero, diameter_at)),
        None => Err(Missing::judged(Reason::NoDiameter, diameter_at)),
    };
    let efficiency = diameter.clone().map(|diameter| Ratio(antenna::efficiency(middle, diameter, gain)));
    let most_gain = diameter.map(|diameter| antenna::gain(middle, diameter, 1.0));
    let gain_of_beam = if dish.beamwidth.value > Degrees(0.0) {
        Ok(antenna::gain_of_beam(dish.beamwidth.value))
    } else {
        Err(Missing::new(Reason::BeamNotAboveZero, beam_at))
    };
    AntennaLines {
        gain_of_beam: Line::new(gain_of_beam, &[beam_at]),
        beam_of_gain: Line::known(antenna::beam_of_gain(gain), &[at!(dish.gain)]),
        most_gain: Line::new(most_gain, &[diameter_at, at!(dish.band)]),
        efficiency: Line::new(efficiency, &[at!(dish.gain), diameter_at, at!(dish.band)]),
    }
}

/// The diameter that is stated, or that of an antenna of the same gain.
pub(super) fn aperture(dish: &Antenna, frequency: Gigahertz) -> Millimetres {
    let stated = dish.diameter.as_ref().map(|given| given.value);
    stated.unwrap_or_else(|| antenna::estimated_diameter(frequency, dish.gain.value))
}

/// The side lobes of an antenna at a frequency.
struct Lobes {
    found: Result<SideLobes, Missing>,
    diameter: Millimetres,
    frequency: Gigahertz,
    measured: bool,
    from: Vec<Place>,
}

impl Lobes {
    fn of(dish: &Document<Antenna>, heard: &Line<crate::units::Given<Gigahertz>>) -> Self {
        let frequency = heard.value.as_ref().map_or(Gigahertz(0.0), |given| given.value);
        let (gain_at, diameter_at, pattern_at) = (at!(dish.gain), at!(dish.diameter), at!(dish.pattern));
        let diameter = aperture(dish, frequency);
        let measured = !dish.pattern.is_empty();
        let found = if measured {
            let mut points: Vec<_> = dish.pattern.iter().map(|point| (point.angle.value, point.below.value)).collect();
            points.sort_by(|one, other| one.0.0.total_cmp(&other.0.0));
            let none = || Missing::new(Reason::NoMeasuredLobe, pattern_at);
            antenna::measured_lobes(&points).ok_or_else(none)
        } else {
            let at = if dish.diameter.is_some() { diameter_at } else { gain_at };
            let none = || Missing::new(Reason::NoSideLobe, at);
            antenna::side_lobes(frequency, diameter).ok_or_else(none)
        };
        let from = [&[gain_at, diameter_at, pattern_at], &heard.from[..]].concat();
        Self { found, diameter, frequency, measured, from }
    }

    fn line<T>(&self, value: impl Fn(&SideLobes) -> Result<T, Missing>) -> Line<T> {
        let line = Line::new(self.found.as_ref().map_err(Clone::clone).and_then(value), &self.from);
        if self.measured { line.by(MEASURED) } else { line }
    }

    fn lines(&self, dish: &Document<Antenna>) -> LobeLines {
        let angle = |pick: fn(&SideLobes) -> Degrees| self.line(|found| Ok(pick(found)));
        let off = |pattern: fn(Gigahertz, Millimetres, Dbi, Degrees) -> Result<Dbi, pattern::OutOfRange>| {
            let at = at!(dish.pattern);
            let value = self.found.as_ref().map_err(Clone::clone).and_then(|found| {
                if self.measured {
                    return Err(Missing::judged(Reason::PatternMeasured, at));
                }
                let gain = pattern(self.frequency, self.diameter, dish.gain.value, found.first_side_lobe[1]);
                gain.map_err(|error| Missing::judged(error, at))
            });
            Line::new(value, &self.from)
        };
        LobeLines {
            first_null_least: angle(|found| found.first_null[0]),
            first_null_most: angle(|found| found.first_null[1]),
            side_lobe_least: angle(|found| found.first_side_lobe[0]),
            side_lobe_most: angle(|found| found.first_side_lobe[1]),
            sweep: Line { method: None, ..angle(|found| Degrees(SWEEP * found.first_side_lobe[1].0)) },
            envelope: off(pattern::peak_envelope),
            average: off(pattern::average),
        }
    }
}

/// What an end sees with some antennas on their first side lobe.
fn reading(own: &ResolvedEnd<'_>, incoming: &Direction<'_>, lobes: &[&Lobes]) -> LobeReadingLines {
    let (radio, level) = (own.radio, &incoming.lines.level);
    let range = &radio.readout.range;
    let scale = meter::scale(own);
    let mut from = level.from.clone();
    for lobes in lobes {
        from.extend(&lobes.from);
    }
    let scale_from = [&from[..], &[at!(radio.readout)]].concat();
    let at = |light: usize| -> Result<Dbm, Missing> {
        let down = lobes.iter().map(|lobes| Ok(lobes.found.as_ref().map_err(Clone::clone)?.level[light]));
        let down: Vec<Decibels> = down.collect::<Result<_, Missing>>()?;
        Ok(down.into_iter().fold(level.need()?, |level, lobe| level + lobe))
    };
    let volts = |level: &Result<Dbm, Missing>| {
        let volts = level.clone().and_then(|level| Ok(scale.clone()?.volts(level).0));
        Line::new(volts.map(|volts| MeterVolts(volts.max(range.min.value.0).min(range.max.value.0))), &scale_from)
    };
    let (least, most) = (at(1), at(0));
    LobeReadingLines {
        voltage_at_least: volts(&least),
        voltage_at_most: volts(&most),
        level_least: Line::new(least, &from),
        level_most: Line::new(most, &from),
    }
}
