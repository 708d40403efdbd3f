//! Power that a radio hands on: what it feeds, and what reaches it.

use super::line::lines;
use super::missing::Missing;
use super::reason::Reason;
use super::resistance::Resistance;
use super::saying::Saying;
use super::target::Target;
use super::traced::{Traced, all, read, see};
use crate::at;
use crate::network::{Companions, Fellow, ResolvedEnd, ResolvedRun};
use crate::physics::power_chain::{Chain, Onward, Wants, settle};
use crate::place::DocumentId;
use crate::spec::{Carried, EndName};
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
    /// What it draws itself.
    draws: Watts,
    /// Loop and draw, with all that hangs on it in turn.
    pub(super) device: Onward,
    /// The same with the voltages wanted: the least each takes, and the reserve.
    pub(super) wants: (Ohms, Wants),
    /// Least and greatest voltage it takes.
    window: [Volts; 2],
    /// A converter in the radio: its voltage and efficiency.
    pub(super) made: Option<(Volts, Percent)>,
}

/// What a radio takes of its own input for converters in it.
pub(super) fn taken_by(devices: &[Passed]) -> Watts {
    Watts(devices.iter().filter_map(Passed::taken).fold(0.0, |sum, watts| sum + watts.0))
}

/// What draws behind a loop, all together.
pub(super) fn drawn_by(device: &Onward) -> Watts {
    device.onward.iter().fold(device.draw, |sum, next| Watts(sum.0 + drawn_by(next).0))
}

/// The devices that hang on the input of a radio as it is.
pub(super) fn straight(devices: &[Passed]) -> Vec<Onward> {
    devices.iter().filter(|device| device.made.is_none()).map(|device| device.device.clone()).collect()
}

impl Passed {
    /// What a converter in the radio takes of the radio's own input; none where it hands on its input as it is.
    pub(super) fn taken(&self) -> Option<Watts> {
        let (made, efficiency) = self.made?;
        // A device that starves behind its own cable is said elsewhere; the radio then carries its draw all the same.
        let handed = self.on_its_own(made).map_or_else(|| drawn_by(&self.device), |chain| chain.first.source_power);
        Some(Watts(handed.0 * 100.0 / efficiency.0.max(1.0)))
    }

    /// What reaches it from a port of a voltage.
    pub(super) fn on_its_own(&self, made: Volts) -> Option<Chain> {
        settle(made, self.device.loop_resistance, self.device.draw, &self.device.onward).ok()
    }
}

/// The device a run of an end feeds, if it hands power on and all is said that is needed to know it; with all that this
/// device hands on, unless the way comes back to an end that it started from.
pub(super) fn passed(at: &Fellow<'_>, number: usize, company: Companions<'_>) -> Option<Traced<Passed>> {
    passed_after(&mut Vec::new(), at, number, company)
}

fn passed_after(
    before: &mut Vec<Seat>,
    at: &Fellow<'_>,
    number: usize,
    company: Companions<'_>,
) -> Option<Traced<Passed>> {
    let resolved = &at.end.runs[number];
    let (run, port) = (resolved.run, resolved.port);
    if !run.carries.contains(&Carried::PowerOut) || port.passes_on.is_none() {
        return None;
    }
    let target = &Target::of(at.hop);
    let device = device(resolved)?;
    before.push(seat(at));
    let beyond = beyond(before, resolved, company);
    before.pop();
    let hands = see!(port.passes_on).map(|hands| {
        let hands = hands.as_ref();
        let made = hands.and_then(|hands| {
            let efficiency = hands.efficiency.as_ref().map_or(EFFICIENCY, |given| given.value);
            hands.voltage.as_ref().map(|volts| (volts.value, efficiency))
        });
        (hands.map_or(2, |hands| hands.pairs), made)
    });
    let inputs = all((&Resistance::of(resolved, target), &hands, &device, &target.voltage_reserve, &beyond));
    Some(inputs.map(|(resistance, (pairs, made), (name, draws, window), reserve, beyond)| {
        let loop_resistance = resistance.feeder(pairs).loop_resistance(resistance.length);
        let draw = draws + taken_by(&beyond);
        let hanging = beyond.iter().filter(|next| next.made.is_none()).map(|next| next.wants.clone());
        let wants = Wants { own: draw, least: window[0] + reserve, onward: hanging.collect() };
        let device = Onward { loop_resistance, draw, onward: straight(&beyond) };
        Passed { name, draws, device, wants: (loop_resistance, wants), window, made }
    }))
}

/// An end, to know it again.
pub(super) type Seat = (DocumentId, EndName);

pub(super) fn seat(at: &Fellow<'_>) -> Seat {
    (at.hop.hop.at, at.end.name)
}

/// What the radio at the far end of a run hands on; nothing where the run leads to none.
fn beyond(before: &mut Vec<Seat>, resolved: &ResolvedRun<'_>, company: Companions<'_>) -> Traced<Vec<Passed>> {
    let run = resolved.run;
    let Some(far) = resolved.ends_at else { return see!(run.ends_at).map(|_| Vec::new()) };
    let missing = |reason| see!(run.ends_at).try_map(|_| Err(Missing::judged(reason, at!(run.ends_at))));
    let Some(next) = company.end(far.hop.at, far.end) else {
        return missing(Reason::HopNotEvaluated { hop: (*far.hop.id.0).into() });
    };
    if before.contains(&seat(&next)) {
        return missing(Reason::PowerInACircle);
    }
    let runs = (0..next.end.runs.len()).filter_map(|number| passed_after(before, &next, number, company));
    let runs: Vec<Traced<Passed>> = runs.collect();
    Traced::each(&runs).decided_by(&see!(run.ends_at))
}

/// What a run feeds: its name, its draw, its least and greatest voltage; none where that is not said.
fn device(resolved: &ResolvedRun<'_>) -> Option<Traced<(Saying, Watts, [Volts; 2])>> {
    let run = resolved.run;
    if let Some(far) = resolved.ends_at {
        let radio = far.radio;
        let name = Saying::EndOf { hop: (*far.hop.id.0).into(), end: far.end };
        let named = see!(run.ends_at).map(|_| name);
        return Some(all((&named, &read!(radio.power.draw), &read!(radio.power.voltage))));
    }
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

/// What a radio runs on, and what it passes on with it.
#[derive(Debug, Clone)]
pub(super) struct PowerAt {
    /// Least voltage at the radio.
    pub(super) voltage: Traced<Volts>,
    /// Greatest voltage of what feeds it.
    pub(super) most: Traced<Volts>,
    /// The radio and all that hangs on it, settled.
    pub(super) settled: Traced<Chain>,
}

impl PowerAt {
    /// What reaches a device on the radio: a converter's own, or that one of those without which `place` says.
    pub(super) fn of_device(&self, passed: &Traced<Passed>, place: usize) -> Self {
        let made = |device: &Passed| device.made.map(|(made, _)| made);
        let most = passed.and_then(|device| made(&device).map_or_else(|| self.most.clone(), Traced::constant));
        let settled = all((passed, &self.port(passed))).and_then(|(device, _)| match made(&device) {
            Some(made) => Traced::constant(device.on_its_own(made)),
            None => self.settled.map(|chain| chain.onward.get(place).cloned()),
        });
        let settled = settled.stated(Reason::DeviceStarved);
        Self { voltage: settled.map(|chain| chain.first.load), most, settled }
    }

    /// The voltage at the port of the radio that a device hangs on.
    fn port(&self, passed: &Traced<Passed>) -> Traced<Volts> {
        passed.and_then(|device| device.made.map_or_else(|| self.voltage.clone(), |(made, _)| Traced::constant(made)))
    }
}

/// The lines of what a run hands on: what the radio runs on, and which of the devices without a converter this one is.
pub(super) fn lines_of(passed: &Traced<Passed>, radio: &PowerAt, place: usize) -> OnwardLines {
    let port = radio.port(passed);
    let there = radio.of_device(passed, place);
    let (most, point) = (there.most, there.settled.map(|chain| chain.first));
    OnwardLines {
        feeds: passed.map(|device| device.name).line(),
        draw: passed.map(|device| device.draws).line(),
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

/// The run that feeds the radio of an end from a supply of its own.
pub(super) fn supplied(own: &ResolvedEnd<'_>) -> Option<usize> {
    own.runs.iter().position(|run| run.supply.is_some() && run.run.carries.contains(&Carried::Power))
}

/// What each run of an end hands on.
pub(super) fn passed_on(at: &Fellow<'_>, company: Companions<'_>) -> Vec<Option<Traced<Passed>>> {
    (0..at.end.runs.len()).map(|number| passed(at, number, company)).collect()
}

/// Which of the devices without a converter the run feeds: they hang on the chain in their order.
pub(super) fn place_among_straight(passed: &[Option<Traced<Passed>>], run: usize) -> usize {
    let hangs = |device: &&Traced<Passed>| device.value().is_ok_and(|device| device.made.is_none());
    passed[..run].iter().flatten().filter(hangs).count()
}
