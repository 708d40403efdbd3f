//! What a supply brings to the radio over a run, and what would bring more.

use super::missing::Missing;
use super::onward::{Passed, PowerAt, drawn_by, straight, taken_by};
use super::reason::Reason;
use super::resistance::{Resistance, gauge_of, hottest_cable};
use super::target::Target;
use super::traced::{AsTraced as _, Traced, all, read, see, written};
use crate::at;
use crate::network::{Document, ResolvedEnd, ResolvedRun};
use crate::physics::conductor;
use crate::physics::ethernet_power::{Class, MOST_POWER, MOST_VOLTAGE, by_number, for_draw};
use crate::physics::power_chain::{Chain, Wants, settle};
use crate::physics::power_feed::{Feeder, NoOperatingPoint, OperatingPoint, longest_run};
use crate::spec::{Carried, Construction, Supply};
use crate::units::{Amperes, Given, Metres, Ohms, OhmsPerKilometre, SquareMillimetres, Volts, Watts};

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

/// The thickest conductor of a four-pair cable that plugs take: common practice, no source.
const THICKEST: SquareMillimetres = SquareMillimetres(0.33);

/// The thickest core that is led to a radio: common practice, no source.
const THICKEST_CORE: SquareMillimetres = SquareMillimetres(10.0);

/// A run and what feeds it. Where nothing does, everything that follows from the supply is missing for that reason.
pub(super) struct Feeding<'n> {
    own: &'n ResolvedEnd<'n>,
    resolved: &'n ResolvedRun<'n>,
    pub(super) resistance: Traced<Resistance>,
    pub(super) supply: Traced<&'n Document<Supply>>,
    pub(super) source: Traced<Volts>,
    feeder: Traced<Feeder>,
    pub(super) loop_resistance: Traced<Ohms>,
    /// What hangs on the radio.
    devices: Traced<Vec<Passed>>,
    /// What radio and converters draw.
    load: Traced<Watts>,
    chain: Traced<Result<Chain, NoOperatingPoint>>,
}

impl<'n> Feeding<'n> {
    pub(super) fn of(
        own: &'n ResolvedEnd<'n>,
        resolved: &'n ResolvedRun<'n>,
        target: &Target,
        devices: &[Traced<Passed>],
    ) -> Self {
        let (run, radio) = (resolved.run, own.radio);
        let fed = resolved.supply;
        let supply = all((&see!(run.carries), &see!(run.supply))).judge(|(carries, _)| match fed {
            Some(supply) if carries.contains(&Carried::Power) => Ok(supply),
            Some(_) => Err(Reason::RunWithoutPower),
            None => Err(Reason::NothingFeedsRun),
        });
        let source = supply.and_then(|supply| read!(supply.voltage.min));
        let pairs = supply.and_then(|supply| see!(supply.pairs).map(|pairs| *pairs));
        let resistance = Resistance::of(resolved, target);
        let feeder = all((&resistance, &pairs)).map(|(resistance, pairs)| resistance.feeder(pairs));
        let loop_resistance =
            all((&resistance, &feeder)).map(|(resistance, feeder)| feeder.loop_resistance(resistance.length));
        let devices = Traced::each(devices);
        let load = all((&read!(radio.power.draw), &devices)).map(|(draw, devices)| draw + taken_by(&devices));
        let chain = all((&source, &loop_resistance, &load, &devices))
            .map(|(source, loops, load, devices)| settle(source, loops, load, &straight(&devices)));
        Self { own, resolved, resistance, supply, source, feeder, loop_resistance, devices, load, chain }
    }

    /// What the radio itself draws.
    pub(super) fn draw(&self) -> Traced<Given<Watts>> {
        let radio = self.own.radio;
        written!(radio.power.draw)
    }

    /// What it takes for what it feeds.
    pub(super) fn onward_draw(&self) -> Traced<Watts> {
        let radio = self.own.radio;
        let drawn = all((&self.load, &read!(radio.power.draw), &self.devices));
        let drawn = drawn.map(|(load, draw, devices)| {
            straight(&devices).iter().fold(load - draw, |sum, device| sum + drawn_by(device))
        });
        self.supply.and_then(|_| drawn)
    }

    /// All that hangs on it, settled; what it starves at is shown at the supply.
    pub(super) fn settled(&self) -> Traced<Chain> {
        let run = self.resolved.run;
        let place = at!(run.supply);
        self.chain.try_map(|chain| chain.map_err(|starves| Missing::judged(starves, place)))
    }

    /// A part of what reaches the radio.
    pub(super) fn point<T>(&self, part: impl FnOnce(OperatingPoint) -> T) -> Traced<T> {
        self.settled().map(|chain| part(chain.first))
    }

    /// What flows in one conductor: as many carry it there as there are pairs, and as many back.
    pub(super) fn conductor_current(&self) -> Traced<Amperes> {
        let pairs = self.supply.and_then(|supply| see!(supply.pairs).map(|pairs| *pairs));
        all((&self.point(|point| point.current), &pairs))
            .map(|(current, pairs)| Amperes(current.0 / f64::from(pairs.max(1))))
    }

    pub(super) fn radio_voltage(&self) -> Traced<Volts> {
        self.point(|point| point.load)
    }

    /// What the radio runs on.
    pub(super) fn power(&self) -> PowerAt {
        PowerAt { voltage: self.radio_voltage(), most: self.most_voltage(), settled: self.settled() }
    }

    /// The greatest voltage of the supply.
    fn most_voltage(&self) -> Traced<Volts> {
        self.supply.and_then(|supply| read!(supply.voltage.max))
    }

    /// The least voltage of the radio with the reserve.
    fn reserved(&self, target: &Target) -> Traced<Volts> {
        let radio = self.own.radio;
        all((&read!(radio.power.voltage), &target.voltage_reserve)).map(|([least, _], reserve)| least + reserve)
    }

    /// The voltage wanted at the radio.
    pub(super) fn wanted(&self, target: &Target) -> Traced<Volts> {
        let radio = self.own.radio;
        let common = target.practice.start_voltage.traced();
        let start = read!(radio.power.start).and_then(|start| start.map_or_else(|| common.clone(), Traced::constant));
        let wanted = all((&self.reserved(target), &start));
        let wanted = wanted.map(|(reserved, start)| if start > reserved { start } else { reserved });
        self.supply.and_then(|_| wanted)
    }

    pub(super) fn voltage_in_hand(&self, target: &Target) -> Traced<Volts> {
        all((&self.radio_voltage(), &self.reserved(target))).map(|(has, reserved)| has - reserved)
    }

    /// All that must be met at once.
    fn wants(&self, target: &Target) -> Traced<Wants> {
        all((&self.load, &self.wanted(target), &self.devices)).map(|(own, least, devices)| {
            let hanging = devices.iter().filter(|device| device.made.is_none());
            Wants { own, least, onward: hanging.map(|device| device.wants.clone()).collect() }
        })
    }

    /// The longest outdoor cable that does.
    pub(super) fn longest(&self, target: &Target) -> Traced<Metres> {
        let run = self.resolved.run;
        let place = at!(run.cable);
        all((&self.wants(target), &self.source, &self.feeder)).try_map(|(wants, source, feeder)| {
            let length = |most: Ohms| {
                let one_way = most.0 / feeder.pairs.loop_factor() - feeder.inline.0;
                (one_way >= 0.0).then(|| Metres(1000.0 * one_way / feeder.conductor.0))
            };
            // Without anything fed onward there is a closed form.
            let longest = if wants.onward.is_empty() {
                longest_run(source, wants.own, wants.least, &feeder)
            } else {
                most_loop(&wants, source).and_then(length)
            };
            longest.ok_or_else(|| Missing::judged(Reason::NoLengthDoes, place))
        })
    }

    /// The thinnest copper conductor that does, none beyond what a plug takes.
    pub(super) fn thinnest(&self, target: &Target) -> Traced<SquareMillimetres> {
        let (run, cable) = (self.resolved.run, self.resolved.cable);
        let place = at!(cable.conductor);
        let lengths = all((&read!(run.outdoor), &read!(run.indoor), &hottest_cable(target), &target.hottest_air));
        // As if all of it were at 20 °C.
        let metres = lengths.map(|(outdoor, indoor, hot, air)| {
            conductor::temperature_factor(hot) * outdoor.0
                + conductor::temperature_factor(air) * indoor.map_or(0.0, |length| length.0)
        });
        let cores = see!(cable.construction);
        let inputs = all((&self.wants(target), &self.source, &self.feeder, &self.resistance, &metres, &cores));
        inputs.try_map(|(wants, source, feeder, resistance, metres, cores)| {
            let area = most_loop(&wants, source).and_then(|most| {
                let ohms = most.0 / feeder.pairs.loop_factor() - resistance.fixed.0;
                let area = gauge_of(OhmsPerKilometre(1000.0 * ohms / metres), *cores);
                let most = if *cores == Construction::TwoCore { THICKEST_CORE } else { THICKEST };
                (ohms > 0.0 && area.0 > 0.0 && area <= most).then_some(area)
            });
            area.ok_or_else(|| Missing::judged(Reason::NoConductorDoes, place))
        })
    }

    /// The least supply that does.
    pub(super) fn least_supply(&self, target: &Target) -> Traced<Volts> {
        let run = self.resolved.run;
        let place = at!(run.supply);
        all((&self.wants(target), &self.loop_resistance)).try_map(|(wants, loops)| {
            wants.least_source(loops).ok_or_else(|| Missing::judged(Reason::NoSupplyDoes, place))
        })
    }

    /// What reaches the radio, for the rules. A run of which something is broken says nothing.
    pub(super) fn feed(&self) -> Feed {
        match self.chain.value() {
            Ok(Ok(chain)) => Feed::Runs(chain.clone()),
            Ok(Err(starves)) => Feed::Starves(*starves),
            Err(_) => Feed::None,
        }
    }
}

/// The most resistance with which all is met, where there is a most.
fn most_loop(wants: &Wants, source: Volts) -> Option<Ohms> {
    wants.most_loop(source).filter(|most| most.0.is_finite())
}
