//! Runs of other ends that lead to a radio, and what power they bring it.

use super::feed::Feeding;
use super::key::SectionKey;
use super::line::{AS_WRITTEN, Section, lines};
use super::missing::Missing;
use super::onward::{PowerAt, Seat, passed_on, place_among_straight, seat, supplied};
use super::reason::Reason;
use super::saying::Saying;
use super::target::Target;
use super::title::Title;
use super::traced::{Traced, all, read, see};
use crate::at;
use crate::network::{Companions, Fellow, FellowRun, Part, ResolvedEnd};
use crate::spec::{Carried, EndName, Port};
use crate::units::Volts;

const CHAIN: &str = "constant-power loads one behind the other, solved together (Ohm, Kirchhoff)";

lines! {
    /// A run of another end that leads to this radio.
    ArrivalLines {
        from: Saying, "", "the run it comes by", AS_WRITTEN;
        voltage: Volts, "V", "voltage at the radio", CHAIN;
        voltage_most: Volts, "", "greatest voltage at the radio", "that of the supply, or of a converter";
        voltage_in_hand: Volts, "", "voltage above the radio's least and the reserve", "V less both";
    }
}

/// A run of another end that leads to this radio.
#[derive(Debug)]
pub struct Arrival<'n> {
    /// The run, at the end where it is written.
    pub from: FellowRun<'n>,
    /// The port of this radio.
    pub port: Part<'n, Port>,
    /// Its lines.
    pub lines: ArrivalLines,
}

impl Arrival<'_> {
    /// Whether the run brings something to this radio.
    #[must_use]
    pub fn brings(&self, service: Carried) -> bool {
        let carries = &self.from.fellow.end.runs[self.from.run].run.spec.carries;
        carries.contains(&match service {
            Carried::Power => Carried::PowerOut,
            Carried::PowerOut => Carried::Power,
            Carried::Data => Carried::Data,
        })
    }

    pub(super) fn section(&self, end: EndName, number: usize) -> Section {
        let title = Title::Arrival { end, port: self.port.id.to_string().into() };
        self.lines.section(SectionKey::Arrival(end, number), title)
    }
}

/// All runs of other ends that lead to an end.
pub(super) fn compute<'n>(at: Fellow<'n>, target: &Target, company: Companions<'n>) -> Vec<Arrival<'n>> {
    let radio = at.end.radio;
    let reserved = all((&read!(radio.power.voltage), &target.voltage_reserve));
    let arriving = company.arriving(at.hop, at.end).filter_map(|from| {
        let run = &from.fellow.end.runs[from.run];
        let port = run.ends_at?.port;
        let name = Saying::RunOf {
            hop: (*from.fellow.hop.hop.id.0).into(),
            end: from.fellow.end.name,
            port: (*run.port.id.0).into(),
        };
        let (spec, hop) = (run.run, from.fellow.hop.hop);
        let named = all((&see!(hop.id), &see!(spec.port), &see!(spec.ends_at))).map(|_| name);
        let powers = see!(spec.carries)
            .judge(|carries| if carries.contains(&Carried::PowerOut) { Ok(()) } else { Err(Reason::RunWithoutPower) });
        let power = powers.value().is_ok().then(|| power(&at, company));
        let brought = |part: &dyn Fn(&PowerAt) -> Traced<Volts>| {
            powers.and_then(|()| power.as_ref().map_or_else(|| Traced::missing(unfed(at.end)), part))
        };
        let voltage = brought(&|power| power.voltage.clone());
        let in_hand = all((&voltage, &reserved)).map(|(has, ([least, _], reserve))| has - (least + reserve));
        let lines = ArrivalLines {
            from: named.line(),
            voltage: voltage.line(),
            voltage_most: brought(&|power| power.most.clone()).line(),
            voltage_in_hand: in_hand.line(),
        };
        Some(Arrival { from, port, lines })
    });
    arriving.collect()
}

/// What a radio without a supply of its own runs on.
pub(super) fn power(at: &Fellow<'_>, company: Companions<'_>) -> PowerAt {
    power_after(&mut Vec::new(), at, company)
}

fn power_after(before: &mut Vec<Seat>, at: &Fellow<'_>, company: Companions<'_>) -> PowerAt {
    if let Some(number) = supplied(at.end) {
        let devices: Vec<_> = passed_on(at, company).into_iter().flatten().collect();
        return Feeding::of(at.end, &at.end.runs[number], &Target::of(at.hop), &devices).power();
    }
    let powers = |from: &FellowRun<'_>| from.fellow.end.runs[from.run].run.spec.powers_a_radio();
    let Some(from) = company.arriving(at.hop, at.end).find(powers) else { return nothing(at.end) };
    let run = from.fellow.end.runs[from.run].run;
    if before.contains(&seat(at)) {
        return without(&Missing::judged(Reason::PowerInACircle, at!(run.ends_at)));
    }
    before.push(seat(at));
    let radio = power_after(before, &from.fellow, company);
    before.pop();
    let passed = passed_on(&from.fellow, company);
    match &passed[from.run] {
        Some(device) => radio.of_device(device, place_among_straight(&passed, from.run)),
        None => nothing(at.end),
    }
}

/// Nothing feeds it.
fn nothing(own: &ResolvedEnd<'_>) -> PowerAt {
    without(&unfed(own))
}

fn unfed(own: &ResolvedEnd<'_>) -> Missing {
    let end = own.end;
    Missing::judged(Reason::NothingFeedsRadio, at!(end.runs))
}

fn without(why: &Missing) -> PowerAt {
    let volts = || Traced::missing(why.clone());
    PowerAt { voltage: volts(), most: volts(), settled: Traced::missing(why.clone()) }
}
