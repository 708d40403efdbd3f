//! One cable run: its length, its resistance, the voltage that is left at the radio, the gland it closes in.

use super::line::{AS_WRITTEN, Line, Missing, Words, lines};
use super::target::{LONGEST_RUN, SUN_ON_JACKET, Target};
use crate::at;
use crate::network::{Document, ResolvedEnd, ResolvedRun};
use crate::physics::conductor;
use crate::physics::power_feed::{self, Feeder, NoOperatingPoint, OperatingPoint, Pairs};
use crate::place::Place;
use crate::spec::{Cable, Conductor, Service, Supply};
use crate::units::{
    Amperes, Celsius, Given, Metres, Millimetres, Ohms, OhmsPerKilometre, Percent, Quantity as _, Volts, Watts,
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
        grade: Words, "", "grade, screening and jacket of the cable", AS_WRITTEN;
        length: Metres, "L", "length of cable", "outdoor + indoor length";
        outside_diameter: Given<Millimetres>, "", "outside diameter of the cable", AS_WRITTEN;
        gland: Words, "", "gland insert that seals it", "first insert of the port that holds the diameter";
        cable_temperature: Celsius, "T", "hottest cable outdoors", "hottest air + 20 K (sun on a black jacket, common practice)";
        conductor_resistance: Ohms, "R_c", "one conductor end to end, hot, with arresters", COPPER;
        loop_resistance: Ohms, "R", "loop resistance", "R_c for two pairs, R_c/2 for four";
        supply_voltage: Volts, "V_s", "least supply voltage", AS_WRITTEN;
        radio_draw: Given<Watts>, "P", "most the radio draws", AS_WRITTEN;
        radio_voltage: Volts, "V", "voltage at the radio", FEED;
        current: Amperes, "I", "current", "P / V";
        supply_power: Watts, "V_s I", "power the supply gives", FEED;
        voltage_in_hand: Volts, "", "voltage above the radio's least and the reserve", "V less both";
        length_in_hand: Metres, "", "length left to 100 m", "IEEE 802.3, ISO/IEC 11801-1: 100 m";
        longest_outdoor: Metres, "", "longest outdoor length for this voltage", "the same equation solved for the length";
    }
}

/// What reaches the radio.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Feed {
    /// The run carries no power, or names nothing that feeds it.
    None,
    /// It runs.
    Runs(OperatingPoint),
    /// It cannot run at all.
    Starves(NoOperatingPoint),
}

/// One run.
#[derive(Debug)]
pub struct RunSheet<'n> {
    /// What was read.
    pub resolved: &'n ResolvedRun<'n>,
    /// Its lines.
    pub lines: RunLines,
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
        if self.lines.loop_resistance.value.is_err() || self.lines.radio_voltage.value.is_err() {
            // A run that starves has no voltage either way; only a sound loop may say so.
            self.feed = match self.feed {
                Feed::Starves(limit) if self.lines.loop_resistance.value.is_ok() => Feed::Starves(limit),
                _ => Feed::None,
            };
        }
    }

    /// How a shorter run would mend too low a voltage, in words.
    #[must_use]
    pub fn shorter(&self) -> String {
        match self.lines.longest_outdoor.get() {
            Some(longest) => format!("{} outdoors at most with this cable and supply", longest.rounded_down()),
            None => "no length of this cable will do".into(),
        }
    }
}

/// The parts of a run that resist the current.
struct Resistance {
    /// One conductor outdoors, for each kilometre, hot.
    outdoors: OhmsPerKilometre,
    /// What is in series with it: indoor cable and arresters.
    inline: Ohms,
    from: Vec<Place>,
}

pub(super) fn compute<'n>(own: &ResolvedEnd<'_>, resolved: &'n ResolvedRun<'n>, target: &Target) -> RunSheet<'n> {
    let (run, cable, port) = (resolved.run, resolved.cable, resolved.port);
    let outdoor = run.outdoor.value;
    let indoor = run.indoor.as_ref().map_or(Metres(0.0), |given| given.value);
    let lengths = [at!(run.outdoor), at!(run.indoor)];
    let diameter = cable.outside_diameter.value;
    let gland = port
        .glands
        .iter()
        .find(|gland| gland.cable.holds(diameter))
        .map(|gland| Words(gland.title.to_string()))
        .ok_or_else(|| {
            let none = if port.glands.is_empty() {
                "the port lists no gland insert"
            } else {
                "no gland insert of the port holds this diameter"
            };
            Missing::judged(none, at!(cable.outside_diameter))
        });
    let hot = Celsius(target.hottest_air.value().0 + SUN_ON_JACKET.0);
    let resistance = resistance(resolved, target, hot, indoor);
    let conductor = resistance.outdoors * outdoor + resistance.inline;
    let fed = fed(own, resolved, &resistance, outdoor, target);
    let lines = RunLines {
        grade: Line::known(grade(cable), &[at!(cable.category), at!(cable.screening), at!(cable.jacket)]),
        length: Line::known((outdoor + indoor).tidy(), &lengths),
        outside_diameter: Line::known(cable.outside_diameter.clone(), &[at!(cable.outside_diameter)]),
        gland: Line::new(gland, &[at!(cable.outside_diameter), at!(port.glands)]),
        cable_temperature: Line::known(hot, &[target.hottest_air.place]),
        conductor_resistance: Line::known(conductor, &resistance.from),
        loop_resistance: fed.loop_resistance,
        supply_voltage: fed.supply_voltage,
        radio_draw: fed.radio_draw,
        radio_voltage: fed.radio_voltage,
        current: fed.current,
        supply_power: fed.supply_power,
        voltage_in_hand: fed.voltage_in_hand,
        length_in_hand: Line::known(LONGEST_RUN - (outdoor + indoor), &lengths),
        longest_outdoor: fed.longest_outdoor,
    };
    RunSheet { resolved, lines, feed: fed.feed }
}

fn grade(cable: &Cable) -> Words {
    Words(format!("{} {}, {}", cable.category.word(), cable.screening.word(), cable.jacket.word()))
}

fn resistance(resolved: &ResolvedRun<'_>, target: &Target, hot: Celsius, indoor: Metres) -> Resistance {
    let (run, cable) = (resolved.run, resolved.cable);
    let arresters: Ohms =
        resolved.arresters.iter().fold(Ohms(0.0), |sum, arrester| sum + arrester.series_resistance.value);
    let mut from = vec![at!(run.outdoor), at!(run.indoor), at!(cable.conductor), at!(cable.resistance)];
    from.extend([at!(cable.material), target.hottest_air.place]);
    from.extend(resolved.arresters.iter().map(|&arrester| at!(arrester.series_resistance)));
    Resistance {
        outdoors: conductor_at(cable, hot),
        inline: conductor_at(cable, target.hottest_air.value()) * indoor + arresters,
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

/// The lines that are there only for a run that feeds the radio.
struct Fed {
    loop_resistance: Line<Ohms>,
    supply_voltage: Line<Volts>,
    radio_draw: Line<Given<Watts>>,
    radio_voltage: Line<Volts>,
    current: Line<Amperes>,
    supply_power: Line<Watts>,
    voltage_in_hand: Line<Volts>,
    longest_outdoor: Line<Metres>,
    feed: Feed,
}

fn fed(
    own: &ResolvedEnd<'_>,
    resolved: &ResolvedRun<'_>,
    resistance: &Resistance,
    outdoor: Metres,
    target: &Target,
) -> Fed {
    let (run, radio) = (resolved.run, own.radio);
    let supply = match resolved.supply {
        Some(supply) if run.carries.contains(&Service::Power) => supply,
        Some(_) => return Fed::without(&Missing::judged("the run carries no power", at!(run.carries))),
        None => return Fed::without(&Missing::judged("nothing feeds this run", at!(run.carries))),
    };
    let (source, draw) = (supply.voltage.min.value, radio.power.draw.value);
    let feeder = Feeder { pairs: pairs(supply), conductor: resistance.outdoors, inline: resistance.inline };
    let loop_resistance = feeder.loop_resistance(outdoor);
    let settled = power_feed::operating_point(source, draw, loop_resistance);
    let (supply_at, draw_at) = (at!(supply.voltage.min), at!(radio.power.draw));
    let mut loop_from = resistance.from.clone();
    loop_from.push(at!(supply.pairs));
    let mut from = vec![supply_at, draw_at];
    from.extend(&loop_from);
    let value = |part: fn(&OperatingPoint) -> f64| {
        settled.as_ref().map(part).map_err(|error| Missing::judged(error, at!(run.supply)))
    };
    let wanted = radio.power.voltage.min.value + target.voltage_reserve.value();
    let longest = power_feed::longest_run(source, draw, wanted, &feeder)
        .ok_or_else(|| Missing::judged("no length of this cable would do", at!(run.cable)));
    Fed {
        loop_resistance: Line::known(loop_resistance, &loop_from),
        supply_voltage: Line::known(source, &[supply_at]),
        radio_draw: Line::known(radio.power.draw.clone(), &[draw_at]),
        radio_voltage: Line::new(value(|point| point.load.0).map(Volts), &from),
        current: Line::new(value(|point| point.current.0).map(Amperes), &from),
        supply_power: Line::new(value(|point| point.source_power.0).map(Watts), &from),
        voltage_in_hand: Line::new(value(|point| point.load.0).map(|volts| Volts(volts - wanted.0)), &from),
        longest_outdoor: Line::new(longest, &from),
        feed: match settled {
            Ok(point) => Feed::Runs(point),
            Err(error) => Feed::Starves(error),
        },
    }
}

impl Fed {
    fn without(missing: &Missing) -> Self {
        fn none<T>(missing: &Missing) -> Line<T> {
            Line::new(Err(missing.clone()), &[])
        }
        Self {
            loop_resistance: none(missing),
            supply_voltage: none(missing),
            radio_draw: none(missing),
            radio_voltage: none(missing),
            current: none(missing),
            supply_power: none(missing),
            voltage_in_hand: none(missing),
            longest_outdoor: none(missing),
            feed: Feed::None,
        }
    }
}

fn pairs(supply: &Document<Supply>) -> Pairs {
    if supply.pairs == 4 { Pairs::Four } else { Pairs::Two }
}
