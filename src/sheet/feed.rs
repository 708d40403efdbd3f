//! What a supply brings to the radio over a run, and what would bring more.

use super::line::{Line, Missing};
use super::onward::Passed;
use super::reason::Reason;
use super::run::{Resistance, pairs};
use super::target::Target;
use crate::at;
use crate::network::{ResolvedEnd, ResolvedRun};
use crate::physics::conductor;
use crate::physics::ethernet_power::{Class, MOST_POWER, MOST_VOLTAGE, by_number, for_draw};
use crate::physics::power_chain::{Chain, Onward, Wants, settle};
use crate::physics::power_feed::{Feeder, NoOperatingPoint, OperatingPoint, longest_run};
use crate::spec::Service;
use crate::units::{Amperes, Celsius, Given, Metres, Ohms, OhmsPerKilometre, SquareMillimetres, Volts, Watts};

/// What reaches the radio.
#[derive(Debug, Clone, PartialEq)]
pub enum Feed {
    /// The run carries no power, or names nothing that feeds it.
    None,
    /// It runs, and all that it feeds.
    Runs(Chain),
    /// It cannot run at all.
    Starves(NoOperatingPoint),
}

/// What the standard says of a run that is fed by one of its ports.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Classes {
    /// The class the supply grants, if it is of the standard and states one.
    pub granted: Option<Class>,
    /// The class the radio asks for, or that of all it draws; none if no class has that much.
    pub asked: Option<Class>,
    /// The greatest voltage at any port of the standard.
    pub port_voltage: Volts,
    /// The most power at any port of the standard.
    pub port_power: Watts,
}

pub(super) fn classes(own: &ResolvedEnd<'_>, resolved: &ResolvedRun<'_>, onward: Option<Watts>) -> Classes {
    let draw = own.radio.power.draw.value + onward.unwrap_or_default();
    Classes {
        granted: resolved.supply.and_then(|supply| supply.class).and_then(by_number),
        asked: own.radio.power.class.and_then(by_number).or_else(|| for_draw(draw)),
        port_voltage: MOST_VOLTAGE,
        port_power: MOST_POWER,
    }
}

/// The lines that are there only for a run that feeds the radio.
pub(super) struct Fed {
    pub loop_resistance: Line<Ohms>,
    pub supply_voltage: Line<Volts>,
    pub radio_draw: Line<Given<Watts>>,
    pub onward_draw: Line<Watts>,
    pub radio_voltage: Line<Volts>,
    pub current: Line<Amperes>,
    pub supply_power: Line<Watts>,
    pub wanted: Line<Volts>,
    pub voltage_in_hand: Line<Volts>,
    pub longest_outdoor: Line<Metres>,
    pub thinnest: Line<SquareMillimetres>,
    pub least_supply: Line<Volts>,
    pub feed: Feed,
}

/// The thickest conductor of a four-pair cable that plugs take: common practice, no source.
const THICKEST: SquareMillimetres = SquareMillimetres(0.33);

pub(super) fn fed(
    own: &ResolvedEnd<'_>,
    resolved: &ResolvedRun<'_>,
    resistance: &Resistance,
    hot: Celsius,
    target: &Target,
    passed: &[Passed],
) -> Fed {
    let (run, radio, cable) = (resolved.run, own.radio, resolved.cable);
    let supply = match resolved.supply {
        Some(supply) if run.carries.contains(&Service::Power) => supply,
        Some(_) => return Fed::without(&Missing::judged(Reason::RunWithoutPower, at!(run.carries))),
        None => return Fed::without(&Missing::judged(Reason::NothingFeedsRun, at!(run.carries))),
    };
    let (source, draw) = (supply.voltage.min.value, radio.power.draw.value);
    let feeder = Feeder { pairs: pairs(supply.pairs), conductor: resistance.outdoors, inline: resistance.inline };
    let loop_resistance = feeder.loop_resistance(run.outdoor.value);
    let converted = passed.iter().filter_map(Passed::taken).fold(0.0, |sum, watts| sum + watts.0);
    let straight: Vec<&Passed> = passed.iter().filter(|device| device.made.is_none()).collect();
    let devices: Vec<Onward> = straight.iter().map(|passed| passed.device).collect();
    let load = Watts(draw.0 + converted);
    let settled = settle(source, loop_resistance, load, &devices);
    let (supply_at, draw_at) = (at!(supply.voltage.min), at!(radio.power.draw));
    let mut loop_from = resistance.from.clone();
    loop_from.push(at!(supply.pairs));
    let mut from = vec![supply_at, draw_at];
    from.extend(&loop_from);
    for passed in passed {
        from.extend(&passed.from);
    }
    let value = |part: fn(&OperatingPoint) -> f64| {
        settled.as_ref().map(|chain| part(&chain.first)).map_err(|error| Missing::judged(*error, at!(run.supply)))
    };
    let reserved = radio.power.voltage.min.value + target.voltage_reserve.value();
    let (start, start_at) = match &radio.power.start {
        Some(start) => (start.value, at!(radio.power.start)),
        None => (target.practice.start_voltage.value(), target.practice.start_voltage.place),
    };
    let wanted = if start > reserved { start } else { reserved };
    let wanted_from = [at!(radio.power.voltage), target.voltage_reserve.place, start_at];
    let wants = Wants {
        own: load,
        least: wanted,
        onward: straight.iter().map(|passed| (passed.device, passed.wanted)).collect(),
    };
    let mend_from = [&from[..], &wanted_from].concat();
    // Without anything fed onward there is a closed form.
    let most = wants.most_loop(source).filter(|most| most.0.is_finite());
    let length = |most: Ohms| {
        let one_way = most.0 / feeder.pairs.loop_factor() - feeder.inline.0;
        (one_way >= 0.0).then(|| Metres(1000.0 * one_way / feeder.conductor.0))
    };
    let longest = if devices.is_empty() { longest_run(source, load, wanted, &feeder) } else { most.and_then(length) };
    let longest = longest.ok_or_else(|| Missing::judged(Reason::NoLengthDoes, at!(run.cable)));
    let thinnest = most
        .and_then(|most| thinnest(most.0 / feeder.pairs.loop_factor() - resistance.fixed.0, resolved, hot, target))
        .ok_or_else(|| Missing::judged(Reason::NoConductorDoes, at!(cable.conductor)));
    let least_supply =
        wants.least_source(loop_resistance).ok_or_else(|| Missing::judged(Reason::NoSupplyDoes, at!(run.supply)));
    let all = devices.iter().fold(load.0 - draw.0, |sum, device| sum + device.draw.0);
    let onward_from: Vec<_> = passed.iter().flat_map(|passed| passed.from.clone()).collect();
    Fed {
        loop_resistance: Line::known(loop_resistance, &loop_from),
        supply_voltage: Line::known(source, &[supply_at]),
        radio_draw: Line::known(radio.power.draw.clone(), &[draw_at]),
        onward_draw: Line::known(Watts(all), &onward_from),
        radio_voltage: Line::new(value(|point| point.load.0).map(Volts), &from),
        current: Line::new(value(|point| point.current.0).map(Amperes), &from),
        supply_power: Line::new(value(|point| point.source_power.0).map(Watts), &from),
        wanted: Line::known(wanted, &wanted_from),
        voltage_in_hand: Line::new(
            value(|point| point.load.0).map(|volts| Volts(volts - reserved.0)),
            &[&from[..], &wanted_from[..2]].concat(),
        ),
        longest_outdoor: Line::new(longest, &mend_from),
        thinnest: Line::new(thinnest, &mend_from),
        least_supply: Line::new(least_supply, &mend_from),
        feed: match settled {
            Ok(chain) => Feed::Runs(chain),
            Err(error) => Feed::Starves(error),
        },
    }
}

/// The copper conductor that keeps one conductor end to end within `ohms`, none beyond what a plug takes.
fn thinnest(ohms: f64, resolved: &ResolvedRun<'_>, hot: Celsius, target: &Target) -> Option<SquareMillimetres> {
    let indoor = resolved.run.indoor.as_ref().map_or(0.0, |given| given.value.0);
    let metres = conductor::temperature_factor(hot) * resolved.run.outdoor.value.0
        + conductor::temperature_factor(target.hottest_air.value()) * indoor;
    let area = conductor::area_of(OhmsPerKilometre(1000.0 * ohms / metres));
    (ohms > 0.0 && area.0 > 0.0 && area <= THICKEST).then_some(area)
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
            onward_draw: none(missing),
            radio_voltage: none(missing),
            current: none(missing),
            supply_power: none(missing),
            wanted: none(missing),
            voltage_in_hand: none(missing),
            longest_outdoor: none(missing),
            thinnest: none(missing),
            least_supply: none(missing),
            feed: Feed::None,
        }
    }
}
