//! One cable run: its length, its resistance, the voltage that is left at the radio, the gland it closes in.

use super::feed::{self, Classes, Feed};
use super::handling::{self, HandlingLines};
use super::line::{AS_WRITTEN, Line, Missing, Row, lines};
use super::onward::{self, OnwardLines, Passed};
use super::practice::LONGEST_RUN;
use super::reason::Reason;
use super::saying::Saying;
use super::target::Target;
use crate::at;
use crate::network::{Document, ResolvedEnd, ResolvedRun};
use crate::physics::conductor;
use crate::physics::ethernet_power::MOST_VOLTAGE;
use crate::physics::power_feed::Pairs;
use crate::place::Place;
use crate::spec::{Cable, Conductor, Service};
use crate::units::{
    Amperes, Celsius, Given, Metres, Millimetres, Ohms, OhmsPerKilometre, Percent, Quantity as _, SquareMillimetres,
    Volts, Watts,
};

const FEED: &str = "V² − V_s V + R P = 0, the upper root (constant-power load)";
const COPPER: &str = "IEC 60028 copper, 0.00393/K from 20 °C";

/// Resistance of a conductor whose gauge nobody stated: the limit of ANSI/TIA-568 for cable of category 5e to 6A.
const CATEGORY_LIMIT: OhmsPerKilometre = OhmsPerKilometre(93.8);
/// Copper of copper-clad aluminium wire by volume: common practice, no source.
const CLADDING: Percent = Percent(10.0);

lines! {
    /// One cable run.
    RunLines {
        grade: Saying, "", "grade, screening and jacket of the cable", AS_WRITTEN;
        length: Metres, "L", "length of cable", "outdoor + indoor length";
        outside_diameter: Given<Millimetres>, "", "outside diameter of the cable", AS_WRITTEN;
        gland: Saying, "", "gland insert that seals it", "the insert of the port that leaves the diameter the most room";
        cable_temperature: Celsius, "T", "hottest cable outdoors", "hottest air + sun on a black jacket (common practice)";
        conductor_resistance: Ohms, "R_c", "one conductor end to end, hot, with contacts", COPPER;
        loop_resistance: Ohms, "R", "loop resistance", "R_c for two pairs, R_c/2 for four, 2 R_c for one";
        supply_voltage: Volts, "V_s", "least supply voltage", AS_WRITTEN;
        radio_draw: Given<Watts>, "P", "most the radio draws", AS_WRITTEN;
        onward_draw: Watts, "", "most it takes for what it feeds", "draws fed onward, converter losses included";
        radio_voltage: Volts, "V", "voltage at the radio", FEED;
        current: Amperes, "I", "current", "P / V";
        supply_power: Watts, "V_s I", "power the supply gives", FEED;
        wanted: Volts, "", "voltage wanted at the radio", "its least and the reserve, or where it has switched on";
        voltage_in_hand: Volts, "", "voltage above the radio's least and the reserve", "V less both";
        length_in_hand: Metres, "", "length left to 100 m", "IEEE 802.3, ISO/IEC 11801-1: 100 m";
        longest_outdoor: Metres, "", "longest outdoor length for this voltage", "the same equation solved for the length";
        thinnest: SquareMillimetres, "", "thinnest conductor for this voltage", "the same, solved for the conductor";
        least_supply: Volts, "", "least supply for this voltage", "the same, solved for the source";
    }
}

/// One run.
#[derive(Debug)]
pub struct RunSheet<'n> {
    /// What was read.
    pub resolved: &'n ResolvedRun<'n>,
    /// Its lines.
    pub lines: RunLines,
    /// How its cable is handled.
    pub handling: HandlingLines,
    /// What it hands on, if it does.
    pub onward: Option<OnwardLines>,
    /// What the standard of its supply says.
    pub classes: Classes,
    /// What reaches the radio.
    pub feed: Feed,
}

impl RunSheet<'_> {
    /// Whether the run is there for a service.
    #[must_use]
    pub fn carries(&self, service: Service) -> bool {
        self.resolved.run.carries.contains(&service)
    }

    pub(super) fn mask(&mut self, broken: &dyn Fn(&Place) -> Option<Missing>) {
        self.lines.mask(broken);
        self.handling.mask(broken);
        if let Some(onward) = &mut self.onward {
            onward.mask(broken);
        }
        if self.lines.loop_resistance.value.is_err() || self.lines.radio_voltage.value.is_err() {
            // A run that starves has no voltage either way; only a sound loop may say so.
            self.feed = match &self.feed {
                Feed::Starves(limit) if self.lines.loop_resistance.value.is_ok() => Feed::Starves(*limit),
                _ => Feed::None,
            };
        }
    }

    /// Adds its rows.
    pub(super) fn rows(&self, key: &str, rows: &mut Vec<Row>) {
        self.lines.rows(key, rows);
        self.handling.rows(key, rows);
        if let Some(onward) = &self.onward {
            onward.rows(&format!("{key}.onward"), rows);
        }
    }

    pub(super) fn missing(&self, each: &mut dyn FnMut(&'static str, &Missing)) {
        self.lines.missing(each);
        self.handling.missing(each);
        if let Some(onward) = &self.onward {
            onward.missing(each);
        }
    }

    /// What would bring enough voltage, each in numbers: a shorter run, a thicker conductor, more at the supply.
    #[must_use]
    pub fn more_volts(&self) -> String {
        let shorter = match self.lines.longest_outdoor.get() {
            Some(longest) => format!("{} outdoors at most with this cable and supply", longest.rounded_down()),
            None => "no length of this cable will do".into(),
        };
        let thicker = self.lines.thinnest.get().and_then(conductor::gauge_at_least);
        let thicker = thicker.map(|gauge| format!("copper of {gauge} or thicker"));
        let supply = self.lines.least_supply.get().filter(|volts| *volts <= MOST_VOLTAGE);
        let supply = supply.map(|volts| format!("a supply of no less than {}", volts.rounded_up()));
        let mut ways = vec![shorter];
        ways.extend(thicker);
        ways.extend(supply);
        ways.join("; or ")
    }
}

/// The parts of a run that resist the current.
pub(super) struct Resistance {
    /// One conductor outdoors, for each kilometre, hot.
    pub outdoors: OhmsPerKilometre,
    /// What is in series with it: indoor cable, arresters and contacts.
    pub inline: Ohms,
    /// What of that is no cable.
    pub fixed: Ohms,
    /// Its inputs.
    pub from: Vec<Place>,
}

/// The runs of an end: those that feed the radio with all that hangs on it, then what they hand on.
pub(super) fn of_end<'n>(own: &'n ResolvedEnd<'n>, target: &Target) -> Vec<RunSheet<'n>> {
    let passed: Vec<Passed> = (0..own.runs.len()).filter_map(|i| onward::passed(own, i, target)).collect();
    let feeding = own.runs.iter().position(|run| run.supply.is_some() && run.run.carries.contains(&Service::Power));
    let mut runs: Vec<RunSheet<'n>> = own
        .runs
        .iter()
        .enumerate()
        .map(|(i, run)| compute(own, run, target, if feeding == Some(i) { &passed } else { &[] }))
        .collect();
    let end = own.end;
    let unfed = Line::new(Err(Missing::judged(Reason::NothingFeedsRadio, at!(end.runs))), &[]);
    let radio = feeding.map_or(unfed, |i| runs[i].lines.radio_voltage.clone());
    let most = feeding
        .and_then(|i| own.runs[i].supply)
        .map(|supply| Line::known(supply.voltage.max.value, &[at!(supply.voltage.max)]));
    let most = most.unwrap_or_else(|| radio.clone());
    let mut settled = match feeding.map(|i| runs[i].feed.clone()) {
        Some(Feed::Runs(chain)) => chain.onward.into_iter(),
        _ => Vec::new().into_iter(),
    };
    for device in &passed {
        let point = if device.made.is_none() { settled.next() } else { None };
        runs[device.run].onward = Some(onward::lines_of(device, &radio, &most, point));
    }
    runs
}

fn compute<'n>(
    own: &ResolvedEnd<'_>,
    resolved: &'n ResolvedRun<'n>,
    target: &Target,
    passed: &[Passed],
) -> RunSheet<'n> {
    let (run, cable, port) = (resolved.run, resolved.cable, resolved.port);
    let outdoor = run.outdoor.value;
    let indoor = run.indoor.as_ref().map_or(Metres(0.0), |given| given.value);
    let lengths = [at!(run.outdoor), at!(run.indoor)];
    let diameter = cable.outside_diameter.value;
    let gland =
        handling::best_gland(&port.glands, diameter).map(|(gland, _)| Saying::name(&gland.title)).ok_or_else(|| {
            let none = if port.glands.is_empty() { Reason::NoGland } else { Reason::NoGlandHolds };
            Missing::judged(none, at!(cable.outside_diameter))
        });
    let hot = hottest_cable(target);
    let resistance = resistance(resolved, target);
    let conductor = resistance.outdoors * outdoor + resistance.inline;
    let fed = feed::fed(own, resolved, &resistance, hot, target, passed);
    let classes = feed::classes(own, resolved, fed.onward_draw.get());
    let lines = RunLines {
        grade: Line::known(Saying::grade(cable), &[at!(cable.category), at!(cable.screening), at!(cable.jacket)]),
        length: Line::known((outdoor + indoor).tidy(), &lengths),
        outside_diameter: Line::known(cable.outside_diameter.clone(), &[at!(cable.outside_diameter)]),
        gland: Line::new(gland, &[at!(cable.outside_diameter), at!(port.glands)]),
        cable_temperature: Line::known(hot, &[target.hottest_air.place, target.practice.sun_on_jacket.place]),
        conductor_resistance: Line::known(conductor, &resistance.from),
        loop_resistance: fed.loop_resistance,
        supply_voltage: fed.supply_voltage,
        radio_draw: fed.radio_draw,
        onward_draw: fed.onward_draw,
        radio_voltage: fed.radio_voltage,
        current: fed.current,
        supply_power: fed.supply_power,
        wanted: fed.wanted,
        voltage_in_hand: fed.voltage_in_hand,
        length_in_hand: Line::known(LONGEST_RUN - (outdoor + indoor), &lengths),
        longest_outdoor: fed.longest_outdoor,
        thinnest: fed.thinnest,
        least_supply: fed.least_supply,
    };
    RunSheet {
        resolved,
        lines,
        handling: handling::compute(resolved, target, hot),
        onward: None,
        classes,
        feed: fed.feed,
    }
}

/// The hottest an outdoor cable gets.
pub(super) fn hottest_cable(target: &Target) -> Celsius {
    Celsius(target.hottest_air.value().0 + target.practice.sun_on_jacket.value().0)
}

pub(super) fn resistance(resolved: &ResolvedRun<'_>, target: &Target) -> Resistance {
    let (run, cable) = (resolved.run, resolved.cable);
    let indoor = run.indoor.as_ref().map_or(Metres(0.0), |given| given.value);
    let contact = &target.practice.contact_resistance;
    // A plug in a jack at each end of the run, and two more at every arrester.
    let contacts = 2.0 + resolved.arresters.iter().fold(0.0, |sum, _| sum + 2.0);
    let arresters: Ohms =
        resolved.arresters.iter().fold(Ohms(0.0), |sum, arrester| sum + arrester.series_resistance.value);
    let mut from = vec![at!(run.outdoor), at!(run.indoor), at!(cable.conductor), at!(cable.resistance)];
    from.extend([at!(cable.material), target.hottest_air.place, target.practice.sun_on_jacket.place, contact.place]);
    from.push(at!(run.arresters));
    from.extend(resolved.arresters.iter().map(|&arrester| at!(arrester.series_resistance)));
    let fixed = arresters + Ohms(contacts * contact.value().0);
    Resistance {
        outdoors: conductor_at(cable, hottest_cable(target)),
        inline: conductor_at(cable, target.hottest_air.value()) * indoor + fixed,
        fixed,
        from,
    }
}

/// One conductor of a cable at a temperature: by its sheet, by its gauge, or by the limit of its category.
fn conductor_at(cable: &Document<Cable>, temperature: Celsius) -> OhmsPerKilometre {
    let factor = conductor::temperature_factor(temperature);
    let at_20 = match (&cable.resistance, &cable.conductor) {
        (Some(given), _) => return OhmsPerKilometre(given.value.0 * factor),
        (None, Some(area)) => conductor::resistance_per_km(area.value, Celsius(20.0)),
        (None, None) => CATEGORY_LIMIT,
    };
    let metal = match cable.material {
        Conductor::Copper => 1.0,
        Conductor::CopperCladAluminium => conductor::copper_clad_aluminium_factor(CLADDING),
    };
    OhmsPerKilometre(at_20.0 * metal * factor)
}

/// Pairs by their number.
pub(super) fn pairs(number: u8) -> Pairs {
    match number {
        4 => Pairs::Four,
        1 => Pairs::One,
        _ => Pairs::Two,
    }
}
