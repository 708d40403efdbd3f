//! A surge arrester does not pass what the run carries.

use super::cable_category_too_low::needed_category;
use crate::finding::Measured;
use crate::network::Document;
use crate::place::Place;
use crate::rules::prelude::*;
use crate::spec::Arrester;

rule! {
    /// A surge arrester does not pass what the run carries.
    ///
    /// It must pass the line rate of the port, the supply's voltage, and power on as many pairs as the supply uses. One that
    /// passes less brings the link up slow, or not at all. Where its sheet states a rated current, the current of each conductor
    /// is held against it; where it states a category of cabling, that which the rate asks of a cable.
    ///
    /// Source: the ratings on the arrester's data sheet, in the terms of IEC 61643-21; categories by rate as at
    /// `cable-category-too-low`.
    severity: Error,
    waivable: SERVICE,
    check: Run(check),
}

/// Something that every arrester of a run must do, and those that do not.
struct Demand<'n> {
    about: &'static str,
    /// What is asked for, in words.
    words: fn(&RunSheet<'_>) -> Option<String>,
    /// The place of what must be passed.
    asked: Place,
    unfit: Vec<Unfit<'n>>,
}

/// An arrester that does not: its number in the run, what it does, where that is written, and its rating.
type Unfit<'n> = (usize, &'n Document<Arrester>, String, Place, Option<Measured>);

impl Demand<'_> {
    /// The worst rating of those that do not. Pairs are counted, not measured.
    fn worst(&self) -> Option<Measured> {
        let ratings = self.unfit.iter().filter_map(|(.., rating)| rating.clone());
        ratings.reduce(|worst, other| if other.is_worse_than(worst.value) { other } else { worst })
    }
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let spec = run.resolved.run;
    let demands: Vec<Demand<'_>> =
        [rate(run), category(run), pairs(run), voltage(run), current(run)].into_iter().flatten().collect();
    for demand in &demands {
        let Some((i, arrester, what, place, _)) = demand.unfit.first() else { continue };
        let wanted: Vec<String> = demands.iter().filter_map(|demand| (demand.words)(run)).collect();
        let message = format!("end {}: arrester `{}` {what}", sheet.name, arrester.id);
        let finding = found.report(&RULE, at!(spec.arresters[*i].model), message, "not fit for this run");
        finding.known_at(at!(spec.arresters)).about(demand.about);
        finding.measured = demand.worst();
        for (j, ..) in &demand.unfit[1..] {
            finding.because(at!(spec.arresters[*j].model), "nor here");
        }
        finding.because(*place, "its rating");
        finding.because(demand.asked, "what it must pass");
        finding.help(format!("take an arrester for {}", wanted.join(", ")));
    }
}

/// The arresters of a run that fail a test, with what it says of them.
fn unfit<'n>(run: &RunSheet<'n>, test: impl Fn(&Document<Arrester>) -> Option<Fails>) -> Vec<Unfit<'n>> {
    let arresters = run.resolved.arresters.iter().enumerate();
    let fails = arresters.filter_map(|(i, &arrester)| Some((i, arrester, test(arrester)?)));
    fails.map(|(i, arrester, (what, place, rating))| (i, arrester, what, place, rating)).collect()
}

/// What an arrester does, where that is written, and its rating.
type Fails = (String, Place, Option<Measured>);

fn rate<'n>(run: &RunSheet<'n>) -> Option<Demand<'n>> {
    let port = run.resolved.port;
    let rate = port.rate.as_ref().filter(|_| run.carries(Carried::Data))?;
    let unfit = unfit(run, |arrester| {
        (arrester.rate.value < rate.value).then(|| {
            let what = format!("passes {}, the port runs at {rate}", arrester.rate);
            (what, at!(arrester.rate), Some(Measured::of(arrester.rate.value, Worse::Lower)))
        })
    });
    let words = |run: &RunSheet<'_>| run.resolved.port.rate.as_ref().map(ToString::to_string);
    Some(Demand { about: "rate", words, asked: at!(port.rate), unfit })
}

fn category<'n>(run: &RunSheet<'n>) -> Option<Demand<'n>> {
    let port = run.resolved.port;
    let rate = port.rate.as_ref().filter(|_| run.carries(Carried::Data))?;
    let needed = needed_category(rate.value);
    let unfit = unfit(run, |arrester| {
        let category = arrester.category.filter(|category| *category < needed)?;
        let what = format!("keeps to {}, {rate} needs {}", category.word(), needed.word());
        Some((what, at!(arrester.category), None))
    });
    let words =
        |run: &RunSheet<'_>| run.resolved.port.rate.as_ref().map(|rate| needed_category(rate.value).word().to_owned());
    Some(Demand { about: "category", words, asked: at!(port.rate), unfit })
}

fn pairs<'n>(run: &RunSheet<'n>) -> Option<Demand<'n>> {
    let supply = run.resolved.supply.filter(|_| run.carries(Carried::Power))?;
    let unfit = unfit(run, |arrester| {
        (arrester.pairs < supply.pairs).then(|| {
            (format!("passes power on {} pairs of {}", arrester.pairs, supply.pairs), at!(arrester.pairs), None)
        })
    });
    let words = |run: &RunSheet<'_>| run.resolved.supply.map(|supply| format!("power on {} pairs", supply.pairs));
    Some(Demand { about: "pairs", words, asked: at!(supply.pairs), unfit })
}

fn voltage<'n>(run: &RunSheet<'n>) -> Option<Demand<'n>> {
    let supply = run.resolved.supply.filter(|_| run.carries(Carried::Power))?;
    let most = &supply.voltage.max;
    let unfit = unfit(run, |arrester| {
        (arrester.voltage.value < most.value).then(|| {
            let what = format!("conducts above {}, the supply gives up to {most}", arrester.voltage);
            (what, at!(arrester.voltage), Some(Measured::of(arrester.voltage.value, Worse::Lower)))
        })
    });
    let words = |run: &RunSheet<'_>| run.resolved.supply.map(|supply| format!("{} or more", supply.voltage.max));
    Some(Demand { about: "voltage", words, asked: at!(supply.voltage.max), unfit })
}

fn current<'n>(run: &RunSheet<'n>) -> Option<Demand<'n>> {
    let supply = run.resolved.supply.filter(|_| run.carries(Carried::Power))?;
    let flows = run.lines.conductor_current.get()?;
    let unfit = unfit(run, |arrester| {
        let rated = arrester.rated_current.as_ref().filter(|rated| rated.value < flows)?;
        let what = format!("is rated for {rated} in each conductor, where {flows} flow");
        Some((what, at!(arrester.rated_current), Some(Measured::of(rated.value, Worse::Lower))))
    });
    let words =
        |run: &RunSheet<'_>| run.lines.conductor_current.get().map(|flows| format!("{flows} in each conductor"));
    Some(Demand { about: "current", words, asked: at!(supply.pairs), unfit })
}
