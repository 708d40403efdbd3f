//! Power that a radio hands on: what it feeds, and what reaches it.

use super::line::lines;
use super::reason::Reason;
use super::resistance::Resistance;
use super::saying::Saying;
use super::target::Target;
use super::traced::{Traced, all, read, see};
use crate::at;
use crate::network::ResolvedRun;
use crate::physics::power_chain::{Chain, Onward};
use crate::physics::power_feed::{OperatingPoint, operating_point};
use crate::spec::Carried;
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
#[derive(Debug, Clone)]
pub(super) struct Passed {
    /// Its name.
    name: Saying,
    /// Loop and draw.
    pub(super) device: Onward,
    /// Least voltage it takes, with the reserve.
    pub(super) wanted: Volts,
    /// Least and greatest voltage it takes.
    window: [Volts; 2],
    /// A converter in the radio: its voltage and efficiency.
    pub(super) made: Option<(Volts, Percent)>,
}

impl Passed {
    /// What a converter in the radio takes of the radio's own input; none where it hands on its input as it is.
    pub(super) fn taken(&self) -> Option<Watts> {
        let (made, efficiency) = self.made?;
        // A device that starves behind its own cable is said elsewhere; the radio then carries its draw all the same.
        let handed = self.on_its_own(made).map_or(self.device.draw, |point| point.source_power);
        Some(Watts(handed.0 * 100.0 / efficiency.0.max(1.0)))
    }

    /// What reaches it from a port of a voltage.
    fn on_its_own(&self, made: Volts) -> Option<OperatingPoint> {
        operating_point(made, self.device.draw, self.device.loop_resistance).ok()
    }
}

/// The device a run feeds, if it hands power on and all is said that is needed to know it.
pub(super) fn passed(resolved: &ResolvedRun<'_>, target: &Target) -> Option<Traced<Passed>> {
    let (run, port) = (resolved.run, resolved.port);
    if !run.carries.contains(&Carried::PowerOut) || port.passes_on.is_none() {
        return None;
    }
    let device = device(resolved)?;
    let hands = see!(port.passes_on).map(|hands| {
        let hands = hands.as_ref();
        let made = hands.and_then(|hands| {
            let efficiency = hands.efficiency.as_ref().map_or(EFFICIENCY, |given| given.value);
            hands.voltage.as_ref().map(|volts| (volts.value, efficiency))
        });
        (hands.map_or(2, |hands| hands.pairs), made)
    });
    let inputs = all((&Resistance::of(resolved, target), &hands, &device, &target.voltage_reserve));
    Some(inputs.map(|(resistance, (pairs, made), (name, draw, window), reserve)| {
        let loop_resistance = resistance.feeder(pairs).loop_resistance(resistance.length);
        let device = Onward { loop_resistance, draw };
        Passed { name, device, wanted: window[0] + reserve, window, made }
    }))
}

/// What a run feeds: its name, its draw, its least and greatest voltage; none where that is not said.
fn device(resolved: &ResolvedRun<'_>) -> Option<Traced<(Saying, Watts, [Volts; 2])>> {
    let run = resolved.run;
    if let Some(radio) = resolved.feeds {
        let named = see!(run.feeds.radio).map(|_| Saying::name(&radio.title));
        let device = all((&named, &read!(radio.power.draw), &read!(radio.power.voltage)));
        return Some(device);
    }
    let (draw, voltage) = (run.spec.feeds.draw.as_ref()?, run.spec.feeds.voltage.as_ref()?);
    let name = see!(run.feeds.title).map(|title| title.as_ref().map_or(Saying::Device, Saying::name));
    let draw = Traced::field(&run, at!(run.feeds.draw), draw.value);
    let voltage = Traced::field(&run, at!(run.feeds.voltage), [voltage.min.value, voltage.max.value]);
    Some(all((&name, &draw, &voltage)))
}

/// The lines of what a run hands on: the voltage of the radio that feeds it and the most of its supply, or why that is not
/// known; what hangs on the radio, settled; and which of those without a converter this one is.
pub(super) fn lines_of(
    passed: &Traced<Passed>,
    radio: &Traced<Volts>,
    supply_most: &Traced<Volts>,
    settled: Option<&Traced<Chain>>,
    place: usize,
) -> OnwardLines {
    let port = passed.and_then(|device| device.made.map_or_else(|| radio.clone(), |(made, _)| Traced::constant(made)));
    let most =
        passed.and_then(|device| device.made.map_or_else(|| supply_most.clone(), |(made, _)| Traced::constant(made)));
    let hanging = |chain: &Chain| chain.onward.get(place).copied();
    let point = all((passed, &port)).and_then(|(device, _)| match (device.made, settled) {
        (Some((made, _)), _) => Traced::constant(device.on_its_own(made)),
        (None, Some(settled)) => settled.map(|chain| hanging(&chain)),
        (None, None) => Traced::constant(None),
    });
    let point = point.stated(Reason::DeviceStarved);
    OnwardLines {
        feeds: passed.map(|device| device.name).line(),
        draw: passed.map(|device| device.device.draw).line(),
        loop_resistance: passed.map(|device| device.device.loop_resistance).line(),
        port_voltage: port.line(),
        port_voltage_most: most.line(),
        voltage: point.map(|point| point.load).line(),
        least: passed.map(|device| device.window[0]).line(),
        most: passed.map(|device| device.window[1]).line(),
        current: point.map(|point| point.current).line(),
        port_power: point.map(|point| point.source_power).line(),
    }
}
