//! Power that a radio hands on: what it feeds, and what reaches it.

use super::line::{Line, Missing, lines};
use super::reason::Reason;
use super::run::{Resistance, pairs, resistance};
use super::saying::Saying;
use super::target::Target;
use crate::at;
use crate::network::{ResolvedEnd, ResolvedRun};
use crate::physics::power_chain::Onward;
use crate::physics::power_feed::{Feeder, OperatingPoint, operating_point};
use crate::place::Place;
use crate::spec::Service;
use crate::units::{Amperes, Ohms, Percent, Volts, Watts};

/// Efficiency of a converter whose sheet says nothing: common practice, no source.
const EFFICIENCY: Percent = Percent(85.0);

const CHAIN: &str = "constant-power loads one behind the other, solved together (Ohm, Kirchhoff)";

lines! {
    /// What a run hands on.
    OnwardLines {
        feeds: Saying, "", "what it feeds", "as written";
        draw: Watts, "P", "most that draws", "as written";
        loop_resistance: Ohms, "R", "loop resistance", "as for the run that feeds the radio";
        port_voltage: Volts, "", "least voltage at the port of the radio", CHAIN;
        port_voltage_most: Volts, "", "greatest voltage at the port of the radio", "that of the supply, or of a converter";
        voltage: Volts, "V", "voltage at the device", CHAIN;
        least: Volts, "", "least voltage of the device", "as written";
        most: Volts, "", "greatest voltage of the device", "as written";
        current: Amperes, "I", "current", "P / V";
        port_power: Watts, "", "power the port hands on", CHAIN;
    }
}

/// A device fed through the radio, before it is known what reaches it.
pub(super) struct Passed {
    /// Which run of the end.
    pub run: usize,
    /// Its name.
    pub name: Saying,
    /// Loop and draw.
    pub device: Onward,
    /// Least voltage it takes, with the reserve.
    pub wanted: Volts,
    /// Least and greatest voltage it takes.
    pub window: [Volts; 2],
    /// A converter in the radio: its voltage and efficiency.
    pub made: Option<(Volts, Percent)>,
    /// Its inputs.
    pub from: Vec<Place>,
    loop_from: Vec<Place>,
}

impl Passed {
    /// What a converter in the radio takes of the radio's own input; none where it hands on its input as it is.
    pub fn taken(&self) -> Option<Watts> {
        let (made, efficiency) = self.made?;
        // A device that starves behind its own cable is said elsewhere; the radio then carries its draw all the same.
        let handed = operating_point(made, self.device.draw, self.device.loop_resistance)
            .map_or(self.device.draw, |point| point.source_power);
        Some(Watts(handed.0 * 100.0 / efficiency.0.max(1.0)))
    }
}

/// The device a run feeds, if it hands power on and all is said that is needed to know it.
pub(super) fn passed(own: &ResolvedEnd<'_>, number: usize, target: &Target) -> Option<Passed> {
    let resolved = &own.runs[number];
    let (run, port) = (resolved.run, resolved.port);
    if !run.carries.contains(&Service::PowerOut) {
        return None;
    }
    let hands = port.passes_on.as_ref()?;
    let (name, draw, window, fed_from) = device(resolved)?;
    let Resistance { outdoors, inline, from, .. } = resistance(resolved, target);
    let feeder = Feeder { pairs: pairs(hands.pairs), conductor: outdoors, inline };
    let device = Onward { loop_resistance: feeder.loop_resistance(run.outdoor.value), draw };
    let mut loop_from = from;
    loop_from.push(at!(port.passes_on));
    let mut from = loop_from.clone();
    from.extend(fed_from);
    from.push(target.voltage_reserve.place);
    let made = hands
        .voltage
        .as_ref()
        .map(|volts| (volts.value, hands.efficiency.as_ref().map_or(EFFICIENCY, |given| given.value)));
    let wanted = window[0] + target.voltage_reserve.value();
    Some(Passed { run: number, name, device, wanted, window, made, from, loop_from })
}

/// What a run feeds: its name, its draw, its least and greatest voltage, and where they are written.
fn device(resolved: &ResolvedRun<'_>) -> Option<(Saying, Watts, [Volts; 2], Vec<Place>)> {
    let run = resolved.run;
    if let Some(radio) = resolved.feeds {
        let from = vec![at!(run.feeds.radio), at!(radio.power.draw), at!(radio.power.voltage)];
        let window = [radio.power.voltage.min.value, radio.power.voltage.max.value];
        return Some((Saying::name(&radio.title), radio.power.draw.value, window, from));
    }
    let (draw, voltage) = (run.feeds.draw.as_ref()?, run.feeds.voltage.as_ref()?);
    let name = run.feeds.title.as_ref().map_or(Saying::Device, Saying::name);
    let from = vec![at!(run.feeds.draw), at!(run.feeds.voltage)];
    Some((name, draw.value, [voltage.min.value, voltage.max.value], from))
}

/// The lines of what a run hands on: the voltage of the radio that feeds it and the most of its supply, or why that is not
/// known.
pub(super) fn lines_of(
    passed: &Passed,
    radio: &Line<Volts>,
    supply_most: &Line<Volts>,
    settled: Option<OperatingPoint>,
) -> OnwardLines {
    let from = [&passed.from[..], &radio.from].concat();
    let port = match passed.made {
        Some((made, _)) => Ok(made),
        None => radio.need(),
    };
    let port_most = match passed.made {
        Some((made, _)) => Line::known(made, &passed.from),
        None => supply_most.clone(),
    };
    let at_device = match passed.made {
        Some((made, _)) => operating_point(made, passed.device.draw, passed.device.loop_resistance).ok(),
        None => settled,
    };
    let point =
        port.clone().and_then(|_| at_device.ok_or_else(|| Missing::judged(Reason::DeviceStarved, passed.from[0])));
    let of = |part: fn(&OperatingPoint) -> f64| point.as_ref().map(part).map_err(Clone::clone);
    OnwardLines {
        feeds: Line::known(passed.name.clone(), &passed.from),
        draw: Line::known(passed.device.draw, &passed.from),
        loop_resistance: Line::known(passed.device.loop_resistance, &passed.loop_from),
        port_voltage: Line::new(port, &from),
        port_voltage_most: port_most,
        voltage: Line::new(of(|point| point.load.0).map(Volts), &from),
        least: Line::known(passed.window[0], &passed.from),
        most: Line::known(passed.window[1], &passed.from),
        current: Line::new(of(|point| point.current.0).map(Amperes), &from),
        port_power: Line::new(of(|point| point.source_power.0).map(Watts), &from),
    }
}
