//! One cable run: its length, its resistance, the voltage that is left at the radio, the gland it closes in.

use super::arrival;
use super::feed::{self, Classes, Feed, Feeding};
use super::handling::{self, HandlingLines};
use super::key::SectionKey;
use super::line::{AS_WRITTEN, Section, lines};
use super::method::{Method, cited};
use super::missing::Missing;
use super::onward::{self, OnwardLines, Passed, passed_on, place_among_straight, supplied};
use super::practice::LONGEST_RUN;
use super::reason::Reason;
use super::resistance::hottest_cable;
use super::saying::Saying;
use super::shown::Across;
use super::target::Target;
use super::title::Title;
use super::traced::{Traced, all, read, see, written};
use crate::network::{Companions, Fellow, ResolvedEnd, ResolvedRun};
use crate::physics::conductor;
use crate::physics::ethernet_power::MOST_VOLTAGE;
use crate::spec::{Carried, EndName};
use crate::units::{Amperes, Celsius, Given, Metres, Ohms, Quantity as _, SquareMillimetres, Volts, Watts};

const FEED: &str = "V² − V_s V + R P = 0, the upper root (constant-power load)";
const COPPER: Method = cited("IEC 60028 copper, 0.00393/K from 20 °C");

lines! {
    /// One cable run.
    RunLines {
        grade: Saying, "", "grade, screening and jacket of the cable", AS_WRITTEN;
        length: Metres, "L", "length of cable", "outdoor + indoor length";
        outside_diameter: Across, "", "outside diameter of the cable", AS_WRITTEN;
        gland: Saying, "", "gland insert that seals it", "the insert of the port that leaves the diameter the most room";
        cable_temperature: Celsius, "T", "hottest cable outdoors", cited("hottest air + sun on a black jacket (common practice)");
        conductor_resistance: Ohms, "R_c", "one conductor end to end, hot, with contacts", COPPER;
        loop_resistance: Ohms, "R", "loop resistance", "R_c for two pairs, R_c/2 for four, 2 R_c for one";
        supply_voltage: Volts, "V_s", "least supply voltage", AS_WRITTEN;
        radio_draw: Given<Watts>, "P", "most the radio draws", AS_WRITTEN;
        onward_draw: Watts, "", "most it takes for what it feeds", "draws fed onward, converter losses included";
        radio_voltage: Volts, "V", "voltage at the radio", FEED;
        current: Amperes, "I", "current", "P / V";
        conductor_current: Amperes, "", "current of one conductor", "I over the pairs that carry it";
        supply_power: Watts, "V_s I", "power the supply gives", FEED;
        wanted: Volts, "", "voltage wanted at the radio", "its least and the reserve, or where it has switched on";
        voltage_in_hand: Volts, "", "voltage above the radio's least and the reserve", "V less both";
        length_in_hand: Metres, "", "length left to 100 m", cited("IEEE 802.3, ISO/IEC 11801-1: 100 m");
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
    pub fn carries(&self, service: Carried) -> bool {
        self.resolved.run.carries.contains(&service)
    }

    /// Its rows, with those of what is done with its cable and of what it hands on.
    pub(super) fn section(&self, end: EndName, number: usize) -> Section {
        let key = SectionKey::Run(end, number);
        let mut rows = self.lines.rows(&key);
        rows.extend(self.handling.rows(&key));
        rows.extend(self.onward.iter().flat_map(|onward| onward.rows(&SectionKey::Onward(end, number))));
        let title = Title::Run { end, port: self.resolved.port.id.to_string().into() };
        Section { key, title, rows }
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

/// The runs of an end: those that feed the radio with all that hangs on it, then what they hand on.
pub(super) fn of_end<'n>(at: Fellow<'n>, target: &Target, company: Companions<'n>) -> Vec<RunSheet<'n>> {
    let own = at.end;
    let passed = passed_on(&at, company);
    let feeding = supplied(own);
    let devices: Vec<Traced<Passed>> = passed.iter().flatten().cloned().collect();
    let fed: Vec<Feeding<'_>> = (0..own.runs.len())
        .map(|i| Feeding::of(own, &own.runs[i], target, if feeding == Some(i) { &devices } else { &[] }))
        .collect();
    let power = feeding.map_or_else(|| arrival::power(&at, company), |i| fed[i].power());
    let onward = passed.iter().enumerate().map(|(i, device)| {
        let device = device.as_ref()?;
        Some(onward::lines_of(device, &power, place_among_straight(&passed, i)))
    });
    let onward: Vec<Option<OnwardLines>> = onward.collect();
    own.runs.iter().zip(fed).zip(onward).map(|((run, fed), onward)| sheet(own, run, target, &fed, onward)).collect()
}

fn sheet<'n>(
    own: &ResolvedEnd<'_>,
    resolved: &'n ResolvedRun<'n>,
    target: &Target,
    fed: &Feeding<'_>,
    onward: Option<OnwardLines>,
) -> RunSheet<'n> {
    let (run, cable, port) = (resolved.run, resolved.cable, resolved.port);
    let made = all((&see!(cable.category), &see!(cable.screening), &see!(cable.construction), &see!(cable.conductor)));
    let grade = all((&made, &see!(cable.jacket)));
    let hot = hottest_cable(target);
    let length =
        all((&read!(run.outdoor), &read!(run.indoor))).map(|(outdoor, indoor)| outdoor + indoor.unwrap_or(Metres(0.0)));
    let none = if port.glands.is_empty() { Reason::NoGland } else { Reason::NoGlandHolds };
    let gland = handling::sealed(resolved).map(|best| best.map(|(gland, _)| Saying::name(&gland.title)));
    let onward_draw = fed.onward_draw();
    let across = all((&written!(cable.least_diameter), &written!(cable.outside_diameter)));
    let across = across.map(|(least, most)| Across { least, most });
    let lines = RunLines {
        grade: grade.map(|(_, jacket)| Saying::grade(cable.grade(), *jacket)).line(),
        length: length.map(Metres::tidy).line(),
        outside_diameter: across.line(),
        gland: gland.stated(none).line(),
        cable_temperature: hot.clone().line(),
        conductor_resistance: fed.resistance.map(|resistance| resistance.conductor()).line(),
        loop_resistance: fed.loop_resistance.clone().line(),
        supply_voltage: fed.source.clone().line(),
        radio_draw: fed.supply.and_then(|_| fed.draw()).line(),
        onward_draw: onward_draw.clone().line(),
        radio_voltage: fed.radio_voltage().line(),
        current: fed.point(|point| point.current).line(),
        conductor_current: fed.conductor_current().line(),
        supply_power: fed.point(|point| point.source_power).line(),
        wanted: fed.wanted(target).line(),
        voltage_in_hand: fed.voltage_in_hand(target).line(),
        length_in_hand: length.map(|length| LONGEST_RUN - length).line(),
        longest_outdoor: fed.longest(target).line(),
        thinnest: fed.thinnest(target).line(),
        least_supply: fed.least_supply(target).line(),
    };
    RunSheet {
        resolved,
        lines,
        handling: handling::compute(resolved, target, &hot),
        onward,
        classes: feed::classes(own, resolved, onward_draw.get()),
        feed: fed.feed(),
    }
}
