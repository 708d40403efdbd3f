//! The day of a visit: the prediction made again in the air and the rain of that day, and what was read brought to levels.

use super::budget::{self, Direction, Trial, polarisation};
use super::end::EndSheet;
use super::line::{Line, Missing};
use super::meter;
use super::open_items::{blank, undone};
use super::path::{self, PathLines};
use super::rain::RainMaps;
use super::reason::Reason;
use super::record::{RecordLimits, RecordLines, RecordRunLines, RecordRunSheet, RecordSheet, less};
use super::target::{Target, first};
use crate::at;
use crate::network::{Document, ResolvedEnd, ResolvedHop};
use crate::physics::rain;
use crate::place::Place;
use crate::spec::{Both, Reading, Record, Sky};
use crate::units::{Dbm, Decibels, Degrees, Given, MeterVolts};

/// Least and greatest loss of crossed polarisation.
const CROSSED: [Decibels; 2] = [Decibels(25.0), Decibels(35.0)];

/// The records of a hop, in their order.
pub(super) fn records<'n>(
    resolved: &'n ResolvedHop<'n>,
    target: &Target,
    maps: &RainMaps,
    design: &PathLines,
    ends: &Both<EndSheet<'_>>,
) -> Vec<RecordSheet<'n>> {
    let newest = |record: &Document<Record>| {
        let dates = resolved.records.iter().filter(|other| other.end == record.end).map(|other| other.date);
        record.date.is_none() || Some(record.date) == dates.max()
    };
    let of = |&document: &&'n Document<Record>| {
        let end = &ends[document.end];
        let visit = Visit { resolved, record: document, end };
        let (path, incoming) = visit.prediction(target, maps, design);
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
    fn prediction(&self, target: &Target, maps: &RainMaps, design: &PathLines) -> (PathLines, Direction<'_>) {
        let record = self.record;
        let weather = &record.weather;
        let mut day = target.clone();
        let air = &mut day.air;
        air.temperature =
            first(weather.temperature.as_ref(), at!(record.weather.temperature)).or(air.temperature.take());
        air.pressure = first(weather.pressure.as_ref(), at!(record.weather.pressure)).or(air.pressure.take());
        air.humidity = first(weather.humidity.as_ref(), at!(record.weather.humidity)).or(air.humidity.take());
        day.fog = first(weather.fog.as_ref(), at!(record.weather.fog));
        let mut path = path::compute(self.resolved, &day, maps);
        // What stands in the way stands there on any day.
        path.diffraction = design.diffraction.clone();
        let incoming = budget::with(self.resolved, &path, &day, record.end.incoming(), Trial::default());
        (path, incoming)
    }

    fn lines(&self, path: &PathLines, incoming: &Direction<'_>, target: &Target) -> RecordLines {
        let record = self.record;
        let (own, sheet) = (self.end.resolved, &self.end.lines);
        let rain_loss = self.rain_loss(path, incoming);
        let wet_loss = self.wet_loss(incoming);
        let fog_loss = self.fog_loss(incoming);
        let back_off = self.back_off(incoming);
        let losses = [&rain_loss, &wet_loss, &fog_loss, &back_off];
        let level = incoming.lines.level.need();
        let expected = losses.into_iter().fold(level, |level, loss| Ok(level? - loss.need()?));
        let from: Vec<Place> =
            losses.iter().flat_map(|loss| &loss.from).chain(&incoming.lines.level.from).copied().collect();
        let expected = Line::new(expected, &from);
        let window = target.acceptance_window.value();
        let window_from = [&from[..], &[target.acceptance_window.place]].concat();
        let edge = |by: Decibels| Line::new(expected.need().map(|level| level + by), &window_from);
        let crossed = |by: Decibels| Line::new(expected.need().map(|level| level - by), &from);
        let volts = expected.need().and_then(|level| Ok(MeterVolts(meter::scale(own)?.volts(level).0)));
        let radio = own.radio;
        let before_at = [at!(record.before_locking.meter), at!(record.before_locking.level)];
        let after_at = [at!(record.after_locking.meter), at!(record.after_locking.level)];
        let before = read(own, &record.before_locking, before_at);
        let measured = read(own, &record.after_locking, after_at);
        let difference: Line<Decibels> = less(&measured, &expected);
        let on_design_day = difference.need().and_then(|gap| Ok(sheet.target_level.need()? + gap));
        RecordLines {
            temperature: path.temperature.clone(),
            dry_pressure: path.dry_pressure.clone(),
            vapour_pressure: path.vapour_pressure.clone(),
            gas_loss: incoming.lines.gas_loss.clone(),
            expected_least: edge(-window),
            expected_most: edge(window),
            expected_voltage: Line::new(volts, &[&from[..], &[at!(radio.readout)]].concat()),
            crossed_least: crossed(CROSSED[1]),
            crossed_most: crossed(CROSSED[0]),
            moved: less(&measured, &before),
            on_design_day: Line::new(on_design_day, &[&difference.from[..], &sheet.target_level.from].concat()),
            scale_gap: self.scale_gap(),
            bearing_off: off(record.bearing.as_ref(), at!(record.bearing), &sheet.true_bearing),
            tilt_off: off(record.tilt.as_ref(), at!(record.tilt), &sheet.tilt),
            ground_needed: self.end.ground.needed.clone(),
            rain_loss,
            wet_loss,
            fog_loss,
            back_off,
            expected,
            before,
            measured,
            difference,
        }
    }

    fn sky_at(&self) -> [Place; 2] {
        let record = self.record;
        [at!(record.weather.sky), at!(record.weather.rain_rate)]
    }

    fn rain_loss(&self, path: &PathLines, incoming: &Direction<'_>) -> Line<Decibels> {
        let (record, hop) = (self.record, self.resolved.hop);
        let sky_at = self.sky_at();
        let loss = match (&record.weather.rain_rate, record.weather.sky) {
            (Some(rate), _) => path.slant.need().and_then(|slant| {
                let f = incoming.lines.frequency.value.as_ref().map_err(Clone::clone)?.value;
                let elevation = path.elevation_a.need()?;
                Ok(rain::coefficients(f, polarisation(hop), elevation).specific_attenuation(rate.value) * slant)
            }),
            (None, Some(Sky::Rain)) => Err(Missing::judged(Reason::RainNotMeasured, sky_at[1])),
            (None, Some(Sky::Snow)) => Err(Missing::judged(Reason::SnowNotComputed, sky_at[0])),
            (None, _) => Ok(Decibels(0.0)),
        };
        let polarised = [at!(hop.channel.polarisation)];
        let from = [&sky_at[..], &polarised, &incoming.lines.frequency.from, &path.slant.from].concat();
        Line::new(loss, &from)
    }

    fn wet_loss(&self, incoming: &Direction<'_>) -> Line<Decibels> {
        let weather = &self.record.weather;
        let wet = weather.sky == Some(Sky::Rain) || weather.rain_rate.as_ref().is_some_and(|rate| rate.value.0 > 0.0);
        let covers = &incoming.lines.wet_loss;
        let loss = if wet { covers.need() } else { Ok(Decibels(0.0)) };
        Line::new(loss, &[&self.sky_at()[..], &covers.from].concat())
    }

    fn fog_loss(&self, incoming: &Direction<'_>) -> Line<Decibels> {
        let record = self.record;
        let (sky_at, fog_at) = (at!(record.weather.sky), at!(record.weather.fog));
        let loss = match (&record.weather.fog, record.weather.sky) {
            (Some(_), _) => incoming.lines.fog_loss.need(),
            (None, Some(Sky::Fog)) => Err(Missing::judged(Reason::FogNotMeasured, fog_at)),
            (None, _) => Ok(Decibels(0.0)),
        };
        Line::new(loss, &[&[sky_at, fog_at], &incoming.lines.fog_loss.from[..]].concat())
    }

    /// What the far radio takes off its power in the state that was set.
    fn back_off(&self, incoming: &Direction<'_>) -> Line<Decibels> {
        let (record, hop, radio) = (self.record, self.resolved.hop, incoming.sender.radio);
        let state_at = at!(record.settings.state);
        let Some(title) = &record.settings.state else { return Line::known(Decibels(0.0), &[state_at]) };
        let set = radio
            .states
            .iter()
            .position(|state| state.title == *title && state.bandwidth.value == hop.channel.bandwidth.value);
        let back_off = set.and_then(|i| radio.states[i].back_off.as_ref()).map_or(Decibels(0.0), |given| given.value);
        Line::known(back_off, &[state_at, at!(radio.states), at!(hop.channel.bandwidth)])
    }

    fn scale_gap(&self) -> Line<Decibels> {
        let (record, own) = (self.record, self.end.resolved);
        let radio = own.radio;
        let (meter_at, level_at) = (at!(record.after_locking.meter), at!(record.after_locking.level));
        let gap = match (&record.after_locking.meter, &record.after_locking.level) {
            (Some(volts), Some(level)) => meter::scale(own).map(|scale| scale.level(volts.value) - level.value),
            _ => Err(Missing::judged(Reason::NotBothWritten, meter_at)),
        };
        Line::new(gap, &[meter_at, level_at, at!(radio.readout)])
    }

    fn runs(&self) -> Vec<RecordRunSheet> {
        let record = self.record;
        let of = |(i, found): (usize, &crate::spec::RunRecord)| {
            let run = self.end.runs.iter().position(|run| run.resolved.port.id == found.port)?;
            let voltage_at = at!(record.runs[i].voltage);
            let none = || Missing::judged(Reason::NoVoltage, voltage_at);
            let predicted = &self.end.runs[run].lines.radio_voltage;
            let voltage = Line::new(found.voltage.clone().ok_or_else(none), &[voltage_at]);
            let difference = found.voltage.as_ref().ok_or_else(none).and_then(|v| Ok(v.value - predicted.need()?));
            let difference = Line::new(difference, &[&[voltage_at], &predicted.from[..]].concat());
            let lines = RecordRunLines { voltage, predicted: predicted.clone(), difference };
            Some(RecordRunSheet { number: i, run, lines })
        };
        record.runs.iter().enumerate().filter_map(of).collect()
    }
}

/// An angle as found less the one of the sheet, the short way round.
fn off(found: Option<&Given<Degrees>>, at: Place, wanted: &Line<Degrees>) -> Line<Degrees> {
    let none = || Missing::judged(Reason::NotWritten, at);
    let off = found.ok_or_else(none).and_then(|found| {
        let turn = (found.value - wanted.need()?).0.rem_euclid(360.0);
        Ok(Degrees(if turn > 180.0 { turn - 360.0 } else { turn }))
    });
    Line::new(off, &[&[at], &wanted.from[..]].concat())
}

/// A reading as a level.
fn read(own: &ResolvedEnd<'_>, reading: &Reading, [meter_at, level_at]: [Place; 2]) -> Line<Dbm> {
    let radio = own.radio;
    match (&reading.meter, &reading.level) {
        (Some(volts), _) => {
            Line::new(meter::scale(own).map(|scale| scale.level(volts.value)), &[meter_at, at!(radio.readout)])
        }
        (None, Some(level)) => Line::known(level.value, &[level_at]),
        (None, None) => Line::new(Err(Missing::judged(Reason::NoReading, meter_at)), &[meter_at]),
    }
}
