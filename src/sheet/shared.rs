//! What several runs and ends share: one supply, one earth point.

use super::key::SectionKey;
use super::line::{AS_WRITTEN, Section, lines};
use super::missing::Missing;
use super::reason::Reason;
use super::run;
use super::saying::Saying;
use super::target::Target;
use super::title::Title;
use super::traced::{AsTraced as _, Traced, all, see, written};
use crate::at;
use crate::network::{Companions, Fellow, FellowRun, ResolvedEnd, ResolvedHop};
use crate::physics::ethernet_power::by_number;
use crate::spec::{EndName, Standard};
use crate::units::{Given, Watts};

/// How many runs on one supply, or ends on one earth point, are looked at: more than there are ports.
const MOST: usize = 100;

lines! {
    /// A supply that feeds several runs.
    SharedLines {
        feeds: Saying, "", "runs that the supply feeds", "runs that name the same unit";
        drawn: Watts, "", "what they draw of it together", "sum of what each takes at its port";
        reserved: Watts, "", "what it reserves for them by class", "sum of the power of each class at the port, else of what is drawn";
        total: Given<Watts>, "", "most power of all its ports together", AS_WRITTEN;
    }
}

/// A supply that feeds several runs, as one of them has it.
#[derive(Debug)]
pub struct SharedSupply<'n> {
    /// The number of the run.
    pub run: usize,
    /// All runs it feeds, this one too, in order of the id of their hop.
    pub feeds: Vec<FellowRun<'n>>,
    /// Whether what is to be said of it is said here: at the last of them.
    pub told_here: bool,
    /// Its lines.
    pub lines: SharedLines,
}

impl SharedSupply<'_> {
    /// Its rows.
    pub(super) fn section(&self, own: &ResolvedEnd<'_>) -> Section {
        let port = own.runs[self.run].port.id.to_string().into();
        self.lines.section(SectionKey::Shared(own.name, self.run), Title::Shared { end: own.name, port })
    }
}

/// The supplies of an end that feed other runs too.
pub(super) fn supplies<'n>(
    hop: &ResolvedHop<'_>,
    own: &ResolvedEnd<'_>,
    company: Companions<'n>,
) -> Vec<SharedSupply<'n>> {
    let shared = (0..own.runs.len()).filter_map(|number| {
        let feeds: Vec<FellowRun<'n>> = company.on_supply(own, number).take(MOST + 1).collect();
        (feeds.len() > 1).then(|| one(hop, own, number, feeds, company))
    });
    shared.collect()
}

fn one<'n>(
    hop: &ResolvedHop<'_>,
    own: &ResolvedEnd<'_>,
    number: usize,
    feeds: Vec<FellowRun<'n>>,
    company: Companions<'_>,
) -> SharedSupply<'n> {
    let here =
        |one: &FellowRun<'_>| (one.fellow.hop.hop.at, one.fellow.end.name, one.run) == (hop.hop.at, own.name, number);
    let told_here = feeds.last().is_some_and(here);
    let run = own.runs[number].run;
    let names = Saying::list(feeds.iter().map(|feeds| Saying::RunOf {
        hop: (*feeds.fellow.hop.hop.id.0).into(),
        end: feeds.fellow.end.name,
        port: (*feeds.fellow.end.runs[feeds.run].port.id.0).into(),
    }));
    let known = Traced::each(&feeds.iter().map(named).collect::<Vec<_>>());
    let crowded = (feeds.len() > MOST).then_some(Reason::CrowdedSupply { most: MOST });
    let drawn: Vec<[Traced<Watts>; 2]> =
        if crowded.is_some() { Vec::new() } else { feeds.iter().map(|feeds| draws(feeds, company)).collect() };
    let sum = |which: usize| {
        let each: Vec<Traced<Watts>> = drawn.iter().map(|both| both[which].clone()).collect();
        let sum = Traced::each(&each).map(|each| Watts(each.iter().map(|watts| watts.0).sum()));
        sum.decided_by(&known).unless(|_| crowded.clone())
    };
    let total = own.runs[number].supply.map_or_else(
        || Traced::missing(Missing::judged(Reason::NoTotalPower, at!(run.supply))),
        |supply| written!(supply.total_power).stated(Reason::NoTotalPower),
    );
    let lines = SharedLines {
        feeds: known.map(|_| names).line(),
        drawn: sum(0).line(),
        reserved: sum(1).line(),
        total: total.line(),
    };
    SharedSupply { run: number, feeds, told_here, lines }
}

/// By what is written a run hangs on a supply.
fn named(feeds: &FellowRun<'_>) -> Traced<()> {
    let (hop, run) = (feeds.fellow.hop.hop, feeds.fellow.end.runs[feeds.run].run);
    all((&see!(hop.id), &see!(run.supply_unit), &see!(run.supply), &see!(run.port))).map(|_| ())
}

/// What a run draws at its port, and what is kept for it there.
fn draws(feeds: &FellowRun<'_>, company: Companions<'_>) -> [Traced<Watts>; 2] {
    let (hop, end) = (feeds.fellow.hop, feeds.fellow.end);
    let radio = end.radio;
    let sheets = run::of_end(feeds.fellow, &Target::of(hop), company);
    let drawn = sheets[feeds.run].lines.supply_power.traced().clone();
    let passive = match end.runs[feeds.run].supply {
        Some(supply) => see!(supply.standard).map(|standard| *standard == Standard::Passive),
        None => Traced::constant(true),
    };
    let kept = all((&drawn, &passive, &see!(radio.power.class))).map(|(drawn, passive, class)| {
        let class = class.and_then(by_number).filter(|_| !passive);
        class.map_or(drawn, |class| class.source_power)
    });
    [drawn, kept]
}

/// The other ends that bond to the earth point of an end.
pub(super) fn earth(hop: &ResolvedHop<'_>, own: &ResolvedEnd<'_>, company: Companions<'_>) -> Traced<Saying> {
    let end = own.end;
    let mut fellows: Vec<Fellow<'_>> = company.on_earth(hop, own).take(MOST + 1).collect();
    let more = fellows.len() > MOST;
    fellows.truncate(MOST);
    let named = fellows.iter().map(|fellow| {
        let (hop, end) = (fellow.hop.hop, fellow.end.end);
        all((&see!(hop.id), &see!(end.grounding.bonds_to))).map(|_| ())
    });
    let named = Traced::each(&named.collect::<Vec<_>>()).decided_by(&see!(end.grounding.bonds_to));
    let ends = fellows.iter().map(|fellow| end_of(fellow.hop, fellow.end.name));
    let list = Saying::list(ends.chain(more.then_some(Saying::AndMore)).collect::<Vec<_>>().into_iter());
    named.judge(|named| if named.is_empty() { Err(Reason::BondsAlone) } else { Ok(list) })
}

fn end_of(hop: &ResolvedHop<'_>, end: EndName) -> Saying {
    Saying::EndOf { hop: (*hop.hop.id.0).into(), end }
}
