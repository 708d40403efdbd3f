//! One end: where it points, what its bracket gives, what its meter will read.

use super::budget::Direction;
use super::dish::{self, DishSheet};
use super::ground::{self, Code, GroundLines};
use super::line::{AS_WRITTEN, Line, Missing, Section, lines};
use super::margin;
use super::meter;
use super::mount::{Metals, TiltMend, height_mend, metals, reach, tilt_mends};
use super::path::{PathLines, altitude};
use super::people::{self, PeopleLines, TooNear};
use super::practice::Practice;
use super::run::{self, RunSheet};
use super::saying::Saying;
use super::target::{Target, Wanted};
use super::threshold::{self, ThresholdSheet};
use super::title::Title;
use super::wind::{self, StifferPipe, WindLines};
use crate::at;
use crate::network::{ResolvedEnd, ResolvedHop};
use crate::physics::geodesy::Position;
use crate::physics::magnetic;
use crate::place::Place;
use crate::spec::{Both, EndName};
use crate::units::{Celsius, Dbm, Decibels, Degrees, Given, MeterVolts, Metres, Millimetres, Quantity as _, Volts};

const MAGNETIC: &str = "World Magnetic Model 2025 on the date of the network";
const MAGNETIC_ERROR: &str = "√(0.26² + (5417/H)²), World Magnetic Model 2025 technical report";
const SCALE: &str = "straight line through the radio's two read-out points";

lines! {
    /// What is set, aimed and measured at one end.
    EndLines {
        height: Given<Metres>, "h", "antenna centre above ground", AS_WRITTEN;
        altitude: Metres, "", "antenna centre above sea level", "ground height + antenna height";
        true_bearing: Degrees, "α", "true bearing to the far end", "WGS 84 geodesic (Karney 2013)";
        declination: Degrees, "D", "magnetic declination, east positive", MAGNETIC;
        declination_uncertainty: Degrees, "", "uncertainty of the declination, 68 %", MAGNETIC_ERROR;
        magnetic_bearing: Degrees, "α − D", "magnetic bearing to the far end", MAGNETIC;
        tilt: Degrees, "ε", "tilt to set, up positive", "sphere of 4/3 × 6371 km, exact (ITU-R P.530-18 §2.2.2)";
        tilt_least: Degrees, "", "lowest tilt the bracket gives as mounted", "bracket range, orientation, plate and stop";
        tilt_most: Degrees, "", "highest tilt the bracket gives as mounted", "bracket range, orientation and plate";
        tilt_in_hand: Degrees, "", "tilt left to the nearer end of that range", "tilt range less the tilt to set";
        pole: Given<Millimetres>, "D_p", "outside diameter of the support", AS_WRITTEN;
        target_level: Dbm, "P_r", "level to align to", "predicted level, clear sky, full power";
        level_least: Dbm, "", "lowest level to accept", "predicted level less the acceptance window";
        level_most: Dbm, "", "highest level to accept", "predicted level plus the acceptance window";
        level_uncertainty: Decibels, "U", "uncertainty of the predicted level, either way",
            "stated limits of power, gains and read-out / √3, root sum of squares, k = 2 (JCGM 100:2008)";
        target_voltage: MeterVolts, "V", "meter reading to align to", SCALE;
        voltage_at_least: MeterVolts, "", "meter reading at the lowest level", SCALE;
        voltage_at_most: MeterVolts, "", "meter reading at the highest level", SCALE;
        meter_sense: Saying, "", "way of the meter for a stronger signal", SCALE;
    }
}

/// One end with its runs.
#[derive(Debug)]
pub struct EndSheet<'n> {
    /// Which end it is.
    pub name: EndName,
    /// What was read.
    pub resolved: &'n ResolvedEnd<'n>,
    /// The far end.
    pub far: &'n ResolvedEnd<'n>,
    /// Its lines.
    pub lines: EndLines,
    /// Other ways to mount the same bracket that do reach the tilt; empty while the present one does.
    pub mends: Vec<TiltMend>,
    /// How much the antenna would have to go up (or down, negative) for the present mounting to reach; `None` while it does.
    pub height_mend: Option<Metres>,
    /// What the code in force asks of the grounding conductor, with its name.
    pub code: Option<Code>,
    /// Power of the far end with which the meter could show the whole acceptance window, where it does not.
    pub align_power: Option<Dbm>,
    /// Its grounding.
    pub ground: GroundLines,
    /// Thresholds of common practice.
    pub practice: Practice,
    /// Hottest air.
    pub hottest_air: Wanted<Celsius>,
    /// Volts to keep in hand at the radio.
    pub voltage_reserve: Wanted<Volts>,
    /// Its antenna.
    pub dish: DishSheet,
    /// The thresholds of its receiver that can be held against physics.
    pub thresholds: Vec<ThresholdSheet>,
    /// Metals of bracket and support, where they harm each other.
    pub metals: Option<Metals>,
    /// The wind on it.
    pub wind: WindLines,
    /// A pipe that would hold still enough, where the pole does not.
    pub stiffer: Option<StifferPipe>,
    /// What sway may cost.
    pub wind_loss: Wanted<Decibels>,
    /// People in front of it.
    pub people: PeopleLines,
    /// Who of them stands too near.
    pub too_near: Vec<TooNear>,
    /// Its cable runs.
    pub runs: Vec<RunSheet<'n>>,
}

impl EndSheet<'_> {
    /// The least grounding conductor as a person would order it: the code's size, or the radio's as its sheet writes it.
    #[must_use]
    pub fn ground_written(&self) -> String {
        let floor = &self.resolved.radio.ground.least_conductor;
        let needed = self.ground.needed.get();
        match self.code.and_then(|code| code.least) {
            Some((written, least)) if needed.is_none_or(|needed| least >= needed) && least > floor.value => {
                written.into()
            }
            _ if needed == Some(floor.value) => floor.to_string(),
            _ => needed.map_or_else(|| floor.to_string(), |needed| needed.rounded_up().to_string()),
        }
    }

    pub(super) fn mask(&mut self, broken: &dyn Fn(&Place) -> Option<Missing>) {
        self.lines.mask(broken);
        self.dish.mask(broken);
        self.wind.mask(broken);
        self.people.mask(broken);
        self.thresholds.iter_mut().for_each(|threshold| threshold.lines.mask(broken));
        self.ground.mask(broken);
        for run in &mut self.runs {
            run.mask(broken);
        }
    }

    pub(super) fn missing(&self, each: &mut dyn FnMut(&'static str, &Missing)) {
        self.lines.missing(each);
        self.dish.missing(each);
        self.wind.missing(each);
        self.people.missing(each);
        self.thresholds.iter().for_each(|threshold| threshold.lines.missing(each));
        self.ground.missing(each);
        self.runs.iter().for_each(|run| run.missing(each));
    }

    pub(super) fn sections(&self, sections: &mut Vec<Section>) {
        let end = self.name;
        let key = format!("ends.{end}");
        sections.push(Section::of(key.clone(), Title::End { end }, |rows| self.lines.rows(&key, rows)));
        self.dish.sections(self.name, sections);
        sections.extend(self.thresholds.iter().enumerate().map(|(i, threshold)| threshold.section(self.name, i)));
        let wind = format!("{key}.wind");
        sections.push(Section::of(wind.clone(), Title::Wind { end }, |rows| self.wind.rows(&wind, rows)));
        let people = format!("{key}.people");
        sections.push(Section::of(people.clone(), Title::People { end }, |rows| self.people.rows(&people, rows)));
        let ground = format!("{key}.ground");
        sections.push(Section::of(ground.clone(), Title::Grounding { end }, |rows| self.ground.rows(&ground, rows)));
        for (i, run) in self.runs.iter().enumerate() {
            let key = format!("{key}.runs[{i}]");
            let title = Title::Run { end, port: run.resolved.port.id.to_string().into() };
            sections.push(Section::of(key.clone(), title, |rows| run.rows(&key, rows)));
        }
    }
}

pub(super) fn compute<'n>(
    hop: &'n ResolvedHop<'n>,
    name: EndName,
    path: &PathLines,
    directions: &Both<Direction<'_>>,
    target: &Target,
) -> EndSheet<'n> {
    let (own, far) = (&hop.ends[name], &hop.ends[name.far()]);
    let (incoming, outgoing) = (&directions[name.incoming()], &directions[name.outgoing()]);
    let (bearing, tilt) = (path.azimuth(name), path.elevation(name));
    let (end, bracket) = (own.end, own.bracket);
    let (own_altitude, altitude_from) = altitude(own);
    let reach = reach(bracket, end.bracket.orientation, end.bracket.plate);
    let (mends, height_mend) = match tilt.get() {
        Some(needed) if !reach.holds(needed) => (tilt_mends(own, needed), height_mend(own, far, path, reach, needed)),
        _ => (Vec::new(), None),
    };
    let code = ground::code(hop, end.grounding.material);
    let aim = aim(own, bearing, hop);
    let bracket_from = [at!(end.bracket), at!(bracket.tilt), at!(bracket.stop), at!(bracket.plate)];
    let support = own.support;
    let meter = meter::meter(own, incoming, target);
    let lines = EndLines {
        height: Line::known(end.height.clone(), &[at!(end.height)]),
        altitude: Line::known(own_altitude, &altitude_from),
        true_bearing: bearing.clone(),
        declination: aim.declination,
        declination_uncertainty: aim.uncertainty,
        magnetic_bearing: aim.magnetic,
        tilt: tilt.clone(),
        tilt_least: Line::known(reach.least, &bracket_from),
        tilt_most: Line::known(reach.most, &bracket_from),
        tilt_in_hand: Line::new(margin::tilt(tilt, reach), &[&bracket_from[..], &tilt.from].concat()),
        pole: Line::known(support.outside_diameter.clone(), &[at!(support.outside_diameter)]),
        target_level: incoming.lines.level.clone(),
        level_least: meter.least,
        level_most: meter.most,
        level_uncertainty: meter::uncertainty(own, far),
        target_voltage: meter.target_voltage,
        voltage_at_least: meter.voltage_at_least,
        voltage_at_most: meter.voltage_at_most,
        meter_sense: meter.sense,
    };
    let wind = wind::compute(own, hop);
    let (people, too_near) = people::compute(own, &outgoing.lines.frequency, bearing);
    let runs = run::of_end(own, target);
    let ground = ground::compute(own, code, target);
    let (practice, hottest_air) = (target.practice.clone(), target.hottest_air.clone());
    let voltage_reserve = target.voltage_reserve.clone();
    EndSheet {
        name,
        resolved: own,
        far,
        lines,
        mends,
        height_mend,
        code,
        align_power: meter::power_that_reads(own, far, incoming, target),
        ground,
        practice,
        hottest_air,
        voltage_reserve,
        dish: dish::compute(own, far, incoming),
        thresholds: threshold::compute(own, hop),
        metals: metals(own),
        stiffer: wind::stiffer(own, &wind, target.wind_loss.value()),
        wind,
        wind_loss: target.wind_loss.clone(),
        people,
        too_near,
        runs,
    }
}

struct Aim {
    declination: Line<Degrees>,
    uncertainty: Line<Degrees>,
    magnetic: Line<Degrees>,
}

fn aim(own: &ResolvedEnd<'_>, bearing: &Line<Degrees>, hop: &ResolvedHop<'_>) -> Aim {
    let (site, network) = (own.site, hop.network);
    let date_at = at!(network.date);
    let date = (i32::from(network.date.year), network.date.month, network.date.day);
    let position = Position { latitude: site.position.latitude.value, longitude: site.position.longitude.value };
    let found = magnetic::declination(position, site.ground_height.value, date);
    let found = found.map_err(|error| Missing::new(error, date_at));
    let uncertainty = found.as_ref().map(|found| found.uncertainty).map_err(Clone::clone);
    let declination = found.map(|found| found.angle);
    let magnetic = bearing.need().and_then(|bearing| Ok(magnetic::magnetic_bearing(bearing, declination.clone()?)));
    let from = [at!(site.position), at!(site.ground_height), date_at];
    let and_bearing: Vec<Place> = from.iter().chain(&bearing.from).copied().collect();
    Aim {
        uncertainty: Line::new(uncertainty, &from),
        declination: Line::new(declination, &from),
        magnetic: Line::new(magnetic, &and_bearing),
    }
}
