//! The day of a visit: the prediction made again in the air and the rain of that day, and what was read brought to levels.

use super::budget;
use super::direction::{self, Direction, Means, Trial};
use super::end::EndSheet;
use super::geometry::Geometry;
use super::line::Line;
use super::meter;
use super::missing::Missing;
use super::open_items::{blank, undone};
use super::path::{self, GroundOf, PathLines};
use super::rain::RainMaps;
use super::reason::Reason;
use super::record::{RecordLimits, RecordLines, RecordRunLines, RecordRunSheet, RecordSheet};
use super::target::Target;
use super::traced::{AsTraced as _, Traced, all, read, see, written};
use super::wanted::asked;
use crate::at;
use crate::network::{Document, ResolvedEnd, ResolvedHop};
use crate::physics::rain;
use crate::spec::{Both, Record, Sky, State};
use crate::units::{Dbm, Decibels, Degrees, MeterVolts, Volts};

/// Least and greatest loss of crossed polarisation.
const CROSSED: [Decibels; 2] = [Decibels(25.0), Decibels(35.0)];

/// The records of a hop, in their order.
pub(super) fn records<'n>(
    resolved: &'n ResolvedHop<'n>,
    maps: &RainMaps,
    geometry: &Geometry,
    design: &Means<'_>,
    ends: &Both<EndSheet<'_>>,
) -> Vec<RecordSheet<'n>> {
    let target = design.target;
    let newest = |record: &Document<Record>| {
        let dates = resolved.records.iter().filter(|other| other.end == record.end).map(|other| other.date);
        record.date.is_none() || Some(record.date) == dates.max()
    };
    let of = |&document: &&'n Document<Record>| {
        let end = &ends[document.end];
        let visit = Visit { resolved, record: document, end };
        let (path, incoming) = visit.prediction(maps, geometry, design);
        RecordSheet {
            document,
            end: document.end,
            judged: newest(document),
            lines: visit.lines(&path, &incoming, target),
            runs: visit.runs(),
            limits: RecordLimits {
                window: target.acceptance_window.clone(),
                locking: target.locking_loss.clone(),
                reciprocity: target.reciprocity.clone(),
                bearing: target.found_bearing.clone(),
                tilt: target.found_tilt.clone(),
                height: target.found_height.clone(),
                capacity: target.capacity.clone(),
                service_test: target.service_test.clone(),
                voltage_drop: target.voltage_drop.clone(),
            },
            undone: undone(document, end.resolved, end.far),
            blank: blank(document, end.resolved),
        }
    };
    resolved.records.iter().map(of).collect()
}

/// One visit to one end.
struct Visit<'v, 'n> {
    resolved: &'n ResolvedHop<'n>,
    record: &'n Document<Record>,
    end: &'v EndSheet<'v>,
}

impl Visit<'_, '_> {
    /// Path and incoming direction in the air of that day, by the functions that made the design.
    fn prediction(&self, maps: &RainMaps, geometry: &Geometry, design: &Means<'_>) -> (PathLines, Direction<'_>) {
        let record = self.record;
        let mut day = design.target.clone();
        let air = &mut day.air;
        air.temperature = asked!(record.weather.temperature).wanted().or(air.temperature.take());
        air.pressure = asked!(record.weather.pressure).wanted().or(air.pressure.take());
        air.humidity = asked!(record.weather.humidity).wanted().or(air.humidity.take());
        day.fog = asked!(record.weather.fog).wanted();
        // What stands in the way stands there on any day.
        let path = path::compute(self.resolved, geometry, &day, maps, GroundOf::under(design.path));
        let means = Means { path: &path, target: &day, ..*design };
        let incoming = direction::with(self.resolved, &means, record.end.incoming(), Trial::default());
        (path, incoming)
    }

    fn lines(&self, path: &PathLines, incoming: &Direction<'_>, target: &Target) -> RecordLines {
        let record = self.record;
        let (own, sheet) = (self.end.resolved, &self.end.lines);
        let (radio, designed) = (own.radio, own.end);
        let losses =
            [self.rain_loss(path, incoming), self.wet_loss(incoming), self.fog_loss(incoming), self.back_off(incoming)];
        let expected = all((&Traced::each(&losses), &incoming.lines.level))
            .map(|(losses, level)| losses.into_iter().fold(level, |level, loss| level - loss));
        let [rain_loss, wet_loss, fog_loss, back_off] = losses;
        let window = &target.acceptance_window;
        let crossed = |by: Decibels| expected.map(|level| level - by).line();
        let volts = all((&expected, &meter::scale(own))).map(|(level, scale)| MeterVolts(scale.volts(level).0));
        let before = read_level(own, &read!(record.before_locking.meter), &read!(record.before_locking.level));
        let measured = read_level(own, &read!(record.after_locking.meter), &read!(record.after_locking.level));
        let difference = all((&measured, &expected)).map(|(measured, expected)| measured - expected);
        RecordLines {
            temperature: path.temperature.clone(),
            dry_pressure: path.dry_pressure.clone(),
            vapour_pressure: path.vapour_pressure.clone(),
            gas_loss: incoming.lines.gas_loss.clone(),
            rain_loss: rain_loss.line(),
            wet_loss: wet_loss.line(),
            fog_loss: fog_loss.line(),
            back_off: back_off.line(),
            expected_least: all((&expected, window)).map(|(level, window)| level - window).line(),
            expected_most: all((&expected, window, &read!(radio.overload)))
                .map(|(level, window, overload)| meter::below_overload(level + window, overload))
                .line(),
            expected_voltage: volts.line(),
            crossed_least: crossed(CROSSED[1]),
            crossed_most: crossed(CROSSED[0]),
            moved: all((&measured, &before)).map(|(after, before)| after - before).line(),
            on_design_day: all((&difference, &sheet.target_level)).map(|(gap, level)| level + gap).line(),
            scale_gap: self.scale_gap().line(),
            bearing_off: off(&read!(record.bearing), &sheet.true_bearing).line(),
            tilt_off: off(&read!(record.tilt), &sheet.tilt).line(),
            height_off: all((&read!(record.height).stated(Reason::NotWritten), &read!(designed.height)))
                .map(|(found, designed)| found - designed)
                .line(),
            ground_needed: self.end.ground.needed.clone(),
            expected: expected.line(),
            before: before.line(),
            measured: measured.line(),
            difference: difference.line(),
        }
    }

    fn rain_loss(&self, path: &PathLines, incoming: &Direction<'_>) -> Traced<Decibels> {
        let record = self.record;
        let (sky_at, rate_at) = (at!(record.weather.sky), at!(record.weather.rain_rate));
        let f = incoming.lines.frequency.map(|given| given.value);
        let fallen = all((&see!(record.weather.sky), &read!(record.weather.rain_rate)));
        let way = all((&f, &budget::polarisation(self.resolved), &path.elevation_a, &path.slant));
        fallen.and_then(|(sky, rate)| match (rate, sky) {
            (Some(rate), _) => way.map(|(f, polarised, elevation, slant)| {
                rain::coefficients(f, polarised, elevation).specific_attenuation(rate) * slant
            }),
            (None, Some(Sky::Rain)) => Traced::missing(Missing::judged(Reason::RainNotMeasured, rate_at)),
            (None, Some(Sky::Snow)) => Traced::missing(Missing::judged(Reason::SnowNotComputed, sky_at)),
            (None, _) => Traced::constant(Decibels(0.0)),
        })
    }

    fn wet_loss(&self, incoming: &Direction<'_>) -> Traced<Decibels> {
        let record = self.record;
        let weather = all((&see!(record.weather.sky), &read!(record.weather.rain_rate)));
        let wet = weather.map(|(sky, rate)| *sky == Some(Sky::Rain) || rate.is_some_and(|rate| rate.0 > 0.0));
        wet.and_then(|wet| if wet { incoming.lines.wet_loss.traced().clone() } else { Traced::constant(Decibels(0.0)) })
    }

    fn fog_loss(&self, incoming: &Direction<'_>) -> Traced<Decibels> {
        let record = self.record;
        let fog_at = at!(record.weather.fog);
        let seen = all((&see!(record.weather.sky), &read!(record.weather.fog)));
        seen.and_then(|(sky, fog)| match (fog, sky) {
            (Some(_), _) => incoming.lines.fog_loss.traced().clone(),
            (None, Some(Sky::Fog)) => Traced::missing(Missing::judged(Reason::FogNotMeasured, fog_at)),
            (None, _) => Traced::constant(Decibels(0.0)),
        })
    }

    /// What the far radio takes off its power in the state that was set.
    fn back_off(&self, incoming: &Direction<'_>) -> Traced<Decibels> {
        let (record, hop, radio) = (self.record, self.resolved.hop, incoming.sender.radio);
        let set = all((&see!(record.settings.state), &see!(radio.states), &read!(hop.channel.bandwidth)));
        set.and_then(|(title, states, bandwidth)| {
            let Some(title) = title else {
                // Nobody wrote another one down: the state it is aligned in.
                let (full, aligned) = (&incoming.lines.level, &incoming.levels.align_level);
                return all((full, aligned)).map(|(full, aligned)| full - aligned);
            };
            let is_set = |state: &&State| state.title == *title && state.bandwidth.value == bandwidth;
            let back_off = states.iter().find(is_set).and_then(|state| state.back_off.as_ref());
            Traced::constant(back_off.map_or(Decibels(0.0), |given| given.value))
        })
    }

    fn scale_gap(&self) -> Traced<Decibels> {
        let record = self.record;
        let meter = read!(record.after_locking.meter).stated(Reason::NotBothWritten);
        let level = read!(record.after_locking.level).stated(Reason::NotBothWritten);
        all((&meter, &level, &meter::scale(self.end.resolved))).map(|(volts, level, scale)| scale.level(volts) - level)
    }

    fn runs(&self) -> Vec<RecordRunSheet> {
        let record = self.record;
        let of = |(i, found): (usize, &crate::spec::RunRecord)| {
            let run = self.end.runs.iter().position(|run| run.resolved.port.id == found.port)?;
            let voltage = written!(record.runs[i].voltage).stated(Reason::NoVoltage);
            let predicted = &self.end.runs[run].lines.radio_voltage;
            let difference = all((&voltage, predicted)).map(|(voltage, predicted)| voltage.value - predicted);
            let lines =
                RecordRunLines { voltage: voltage.line(), predicted: predicted.clone(), difference: difference.line() };
            Some(RecordRunSheet { number: i, run, lines })
        };
        record.runs.iter().enumerate().filter_map(of).collect()
    }
}

/// An angle as found less the one of the sheet, the short way round.
fn off(found: &Traced<Option<Degrees>>, wanted: &Line<Degrees>) -> Traced<Degrees> {
    all((&found.stated(Reason::NotWritten), wanted)).map(|(found, wanted)| {
        let turn = (found - wanted).0.rem_euclid(360.0);
        Degrees(if turn > 180.0 { turn - 360.0 } else { turn })
    })
}

/// A reading as a level: by the meter where it was read, else as the radio said it.
fn read_level(own: &ResolvedEnd<'_>, meter: &Traced<Option<Volts>>, level: &Traced<Option<Dbm>>) -> Traced<Dbm> {
    let scale = meter::scale(own);
    all((meter, level)).and_then(|(volts, said)| match volts {
        Some(volts) => scale.map(|scale| scale.level(volts)),
        None => Traced::constant(said).stated(Reason::NoReading),
    })
}
