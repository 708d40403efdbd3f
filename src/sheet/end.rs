//! One end: where it points, what its bracket gives, what its meter will read.

use super::arrival::{self, Arrival};
use super::beside::{self, Beside};
use super::direction::Direction;
use super::dish::{self, DishSheet};
use super::fibre::{self, FibreSheet};
use super::fixing::{self, FixingLines};
use super::geometry::altitude;
use super::ground::{self, Code, GroundLines};
use super::ice::{self, IceLines};
use super::key::SectionKey;
use super::lightning::{self, LightningSheet};
use super::line::{AS_WRITTEN, Line, Section, lines};
use super::meter;
use super::method::{Method, cited};
use super::missing::Missing;
use super::mount::{self, Metals, Reach, TiltMend};
use super::path::PathLines;
use super::people::{self, PeopleLines, TooNear};
use super::pole::{self, StifferPipe};
use super::power_line::{self, LineNear};
use super::practice::Practice;
use super::run::{self, RunSheet};
use super::saying::Saying;
use super::shared::{self, SharedSupply};
use super::target::Target;
use super::threshold::{self, ThresholdSheet};
use super::title::Title;
use super::traced::{Traced, all, read, see, written};
use super::wanted::Wanted;
use super::wind::{self, WindLines};
use crate::at;
use crate::network::{Companions, Fellow, ResolvedEnd, ResolvedHop};
use crate::physics::geodesy::Position;
use crate::physics::magnetic;
use crate::spec::{Both, EndName};
use crate::units::{
    Celsius, Dbm, Decibels, Degrees, Given, Kilograms, MeterVolts, Metres, Millimetres, Quantity as _, Volts,
};

const MAGNETIC: Method = cited("World Magnetic Model 2025 on the date of the network");
const MAGNETIC_ERROR: Method = cited("√(0.26² + (5417/H)²), World Magnetic Model 2025 technical report");
const SCALE: &str = "straight line through the radio's two read-out points";

lines! {
    /// What is set, aimed and measured at one end.
    EndLines {
        height: Given<Metres>, "h", "antenna centre above ground", AS_WRITTEN;
        altitude: Metres, "", "antenna centre above sea level", "ground height + antenna height";
        true_bearing: Degrees, "α", "true bearing to the far end", cited("WGS 84 geodesic (Karney 2013)");
        declination: Degrees, "D", "magnetic declination, east positive", MAGNETIC;
        declination_uncertainty: Degrees, "", "uncertainty of the declination, 68 %", MAGNETIC_ERROR;
        magnetic_bearing: Degrees, "α − D", "magnetic bearing to the far end", MAGNETIC;
        tilt: Degrees, "ε", "tilt to set, up positive", cited("sphere of 4/3 × 6371 km, exact (ITU-R P.530-18 §2.2.2)");
        tilt_least: Degrees, "", "lowest tilt the bracket gives as mounted", "bracket range, orientation, plate and stop";
        tilt_most: Degrees, "", "highest tilt the bracket gives as mounted", "bracket range, orientation and plate";
        tilt_in_hand: Degrees, "", "tilt left to the nearer end of that range", "tilt range less the tilt to set";
        lift_mass: Kilograms, "", "mass to lift: antenna, radio and bracket", "sum of the three, without ice";
        pole: Given<Millimetres>, "D_p", "outside diameter of the support", AS_WRITTEN;
        align_state: Saying, "", "modulation state of the far end while aligning",
            "as its radio says, else its most robust at the bandwidth";
        aligned_by: Saying, "", "what the crew aligns by", "voltage, else level shown, else indication of its radio";
        target_level: Dbm, "", "level to align to", "predicted level in that state, clear sky, power control off";
        level_least: Dbm, "", "lowest level to accept", "predicted level less the acceptance window";
        level_most: Dbm, "", "highest level to accept", "predicted level plus the acceptance window";
        level_uncertainty: Decibels, "U", "uncertainty of the predicted level, either way",
            cited("stated limits of power, gains and read-out / √3, root sum of squares, k = 2 (JCGM 100:2008)");
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
    /// The other ends on its support, in order of the id of their hop; no more than are judged together and one.
    pub beside: Vec<Fellow<'n>>,
    /// The diameter of its antenna, as written or that of an aperture of its gain.
    pub diameter: Option<Millimetres>,
    /// What is to be known of each of them; nothing where there are more.
    pub others: Vec<Beside<'n>>,
    /// Its supplies that feed other runs too.
    pub shared: Vec<SharedSupply<'n>>,
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
    /// Lightning protection, as others state it.
    pub lightning: LightningSheet,
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
    /// The ice on it.
    pub ice: IceLines,
    /// The fixings of its support.
    pub fixings: FixingLines,
    /// A pipe that would hold still enough, where the pole does not.
    pub stiffer: Option<StifferPipe>,
    /// What sway may cost.
    pub wind_loss: Wanted<Decibels>,
    /// People in front of it.
    pub people: PeopleLines,
    /// Who of them stands too near.
    pub too_near: Vec<TooNear>,
    /// Power lines nearer than they may be.
    pub lines_near: Vec<LineNear>,
    /// Its runs of fibre.
    pub fibre_runs: Vec<FibreSheet<'n>>,
    /// Runs of other ends that lead here.
    pub arrivals: Vec<Arrival<'n>>,
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

    pub(super) fn missing(&self, each: &mut dyn FnMut(&'static str, &Missing)) {
        self.lines.missing(each);
        self.dish.missing(each);
        self.wind.missing(each);
        self.ice.missing(each);
        self.fixings.missing(each);
        self.people.missing(each);
        self.thresholds.iter().for_each(|threshold| threshold.lines.missing(each));
        self.ground.missing(each);
        self.lightning.lines.missing(each);
        self.fibre_runs.iter().for_each(|run| run.lines.missing(each));
        self.arrivals.iter().for_each(|arrival| arrival.lines.missing(each));
        self.runs.iter().for_each(|run| run.missing(each));
    }

    pub(super) fn sections(&self, sections: &mut Vec<Section>) {
        let end = self.name;
        sections.push(self.lines.section(SectionKey::End(end), Title::End { end }));
        self.dish.sections(end, sections);
        sections.extend(self.thresholds.iter().enumerate().map(|(i, threshold)| threshold.section(end, i)));
        sections.push(self.wind.section(SectionKey::Wind(end), Title::Wind { end }).planned());
        let ice = self.ice.section(SectionKey::Ice(end), Title::Ice { end }).planned();
        let fixings = self.fixings.section(SectionKey::Fixings(end), Title::Fixings { end }).planned();
        sections.extend([ice, fixings].into_iter().filter(|section| !section.rows.is_empty()));
        sections.push(self.people.section(SectionKey::People(end), Title::People { end }));
        sections.push(self.ground.section(SectionKey::Ground(end), Title::Grounding { end }).planned());
        let lightning = self.lightning.lines.section(SectionKey::Lightning(end), Title::Lightning { end }).planned();
        sections.extend(Some(lightning).filter(|section| !section.rows.is_empty()));
        sections.extend(self.others.iter().map(|beside| beside.section(self.resolved)));
        sections.extend(self.arrivals.iter().enumerate().map(|(i, arrival)| arrival.section(end, i)));
        sections.extend(self.runs.iter().enumerate().map(|(i, run)| run.section(end, i)));
        sections.extend(self.fibre_runs.iter().enumerate().map(|(i, run)| run.section(end, i)));
        sections.extend(self.shared.iter().map(|shared| shared.section(self.resolved)));
    }
}

pub(super) fn compute<'n>(
    hop: &'n ResolvedHop<'n>,
    name: EndName,
    path: &PathLines,
    directions: &Both<Direction<'_>>,
    target: &Target,
    company: Companions<'n>,
) -> EndSheet<'n> {
    let (own, far) = (&hop.ends[name], &hop.ends[name.far()]);
    let (incoming, outgoing) = (&directions[name.incoming()], &directions[name.outgoing()]);
    let (bearing, tilt) = (path.azimuth(name), path.elevation(name));
    let reach = mount::reach(own);
    let (mends, height_mend) = match (tilt.get(), reach.get()) {
        (Some(needed), Some(reach)) if !reach.holds(needed) => {
            (mount::tilt_mends(own, needed), mount::height_mend(own, far, path, reach, needed))
        }
        _ => (Vec::new(), None),
    };
    let code = ground::code(hop, own);
    let beside: Vec<Fellow<'_>> = company.beside(hop, own).take(pole::MOST_OTHERS + 1).collect();
    let (wind, stiffer) = wind::compute(own, hop, &beside, target.wind_loss.value());
    let (people, too_near) = people::compute(hop, own, &outgoing.lines.frequency, bearing);
    EndSheet {
        name,
        resolved: own,
        far,
        lines: lines(hop, name, path, incoming, &reach, target),
        mends,
        height_mend,
        align_power: meter::power_that_reads(own, far, incoming, target),
        ground: ground::compute(own, &code, target, shared::earth(hop, own, company)),
        lightning: lightning::compute(own),
        shared: shared::supplies(hop, own, company),
        diameter: beside::diameter(hop, own),
        others: beside::compute(hop, own, &beside),
        code: code.get().flatten(),
        practice: target.practice.clone(),
        hottest_air: target.hottest_air.clone(),
        voltage_reserve: target.voltage_reserve.clone(),
        dish: dish::compute(own, far, incoming),
        thresholds: threshold::compute(own, hop),
        metals: mount::metals(own),
        ice: ice::compute(own, hop, &beside),
        fixings: fixing::compute(own, hop, &beside),
        stiffer,
        wind,
        wind_loss: target.wind_loss.clone(),
        people,
        too_near,
        lines_near: power_line::near(hop, own),
        arrivals: arrival::compute(Fellow { hop, end: own }, target, company),
        fibre_runs: own.fibre_runs.iter().map(fibre::compute).collect(),
        runs: run::of_end(Fellow { hop, end: own }, target, company),
        beside,
    }
}

fn lines(
    hop: &ResolvedHop<'_>,
    name: EndName,
    path: &PathLines,
    incoming: &Direction<'_>,
    reach: &Traced<Reach>,
    target: &Target,
) -> EndLines {
    let (own, far) = (&hop.ends[name], &hop.ends[name.far()]);
    let (bearing, tilt) = (path.azimuth(name), path.elevation(name));
    let (end, support) = (own.end, own.support);
    let aim = aim(own, bearing, hop);
    let meter = meter::meter(own, incoming, target);
    EndLines {
        height: written!(end.height).line(),
        altitude: altitude(own).line(),
        true_bearing: bearing.clone(),
        declination: aim.declination,
        declination_uncertainty: aim.uncertainty,
        magnetic_bearing: aim.magnetic,
        tilt: tilt.clone(),
        tilt_least: reach.map(|reach| reach.least).line(),
        tilt_most: reach.map(|reach| reach.most).line(),
        tilt_in_hand: all((reach, tilt)).map(|(reach, tilt)| reach.left(tilt)).line(),
        lift_mass: mount::lifted(own).line(),
        pole: written!(support.outside_diameter).line(),
        align_state: incoming.levels.aligns_in.clone(),
        aligned_by: meter.by,
        target_level: incoming.levels.align_level.clone(),
        level_least: meter.least,
        level_most: meter.most,
        level_uncertainty: meter::uncertainty(own, far).line(),
        target_voltage: meter.target_voltage,
        voltage_at_least: meter.voltage_at_least,
        voltage_at_most: meter.voltage_at_most,
        meter_sense: meter.sense,
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
    let found = all((&see!(site.position), &read!(site.ground_height), &see!(network.date)));
    let found = found.try_map(|(position, height, date)| {
        let position = Position { latitude: position.latitude.value, longitude: position.longitude.value };
        let date = (i32::from(date.year), date.month, date.day);
        magnetic::declination(position, height, date).map_err(|error| Missing::new(error, date_at))
    });
    let declination = found.map(|found| found.angle);
    let magnetic = all((&declination, bearing));
    Aim {
        uncertainty: found.map(|found| found.uncertainty).line(),
        magnetic: magnetic.map(|(declination, bearing)| magnetic::magnetic_bearing(bearing, declination)).line(),
        declination: declination.line(),
    }
}
