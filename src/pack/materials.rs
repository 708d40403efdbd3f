//! What a visit takes along in all: the parts of several ends, summed.

use super::parts::arresters;
use super::words::Table;
use crate::sheet::EndSheet;
use crate::spec::{Id, Plugs, Screening};
use crate::units::Metres;
use crate::voice::Voice;

/// How much of something there is.
#[derive(Debug, Clone, Copy)]
enum Amount {
    Pieces(usize),
    Length(Metres),
}

/// Materials of some ends, in the order in which they were met.
#[derive(Debug, Default)]
pub(super) struct Materials {
    list: Vec<(String, String, Amount)>,
    /// Supplies that feed several runs, by site, model and name: each is taken once.
    units: Vec<(String, String)>,
}

impl Materials {
    fn add(&mut self, what: String, detail: String, amount: Amount) {
        let known = self.list.iter_mut().find(|(one, other, _)| *one == what && *other == detail);
        match (known.map(|(_, _, amount)| amount), amount) {
            (Some(Amount::Pieces(sum)), Amount::Pieces(more)) => *sum += more,
            (Some(Amount::Length(sum)), Amount::Length(more)) => *sum = *sum + more,
            _ => self.list.push((what, detail, amount)),
        }
    }

    /// Adds those of an end.
    pub(super) fn add_end(&mut self, end: &EndSheet<'_>, voice: Voice) {
        let own = end.resolved;
        let piece = Amount::Pieces(1);
        self.add(voice.say("part-radio"), format!("{}, {}", own.radio.title, own.half.id), piece);
        self.add(voice.say("part-antenna"), own.antenna.title.to_string(), piece);
        self.add(voice.say("part-bracket"), own.bracket.title.to_string(), piece);
        if let Some(plate) = own.bracket.plate.as_ref().filter(|_| own.end.bracket.plate) {
            self.add(voice.say("part-plate"), plate.title.to_string(), piece);
        }
        for run in &end.runs {
            let (resolved, cable) = (run.resolved, run.resolved.cable);
            if let Some(total) = run.handling.to_take.get() {
                self.add(voice.say("material-cable"), cable.title.to_string(), Amount::Length(total));
            }
            let shell = match (resolved.run.plugs, cable.screening) {
                (Plugs::Plastic, _) | (_, Screening::UUtp) => "part-plug-plain",
                (Plugs::Metal, _) => "part-plug-metal",
            };
            let shell = voice.with(shell, &[("diameter", &voice.number(&cable.outside_diameter))]);
            self.add(voice.say("part-plug"), shell, Amount::Pieces(2 * (1 + resolved.arresters.len())));
            for arrester in arresters(resolved, voice) {
                self.add(voice.say("part-arrester"), arrester.title, Amount::Pieces(arrester.number));
            }
            if let Some(supply) =
                resolved.supply.filter(|supply| self.is_new(&supply.id, resolved.run.supply_unit.as_ref()))
            {
                self.add(voice.say("part-supply"), supply.title.to_string(), piece);
            }
        }
        self.add_ground(end, voice);
    }

    /// Whether a supply is not among those taken already.
    fn is_new(&mut self, supply: &Id, unit: Option<&Id>) -> bool {
        let Some(unit) = unit else { return true };
        let name = (supply.to_string(), unit.to_string());
        let known = self.units.contains(&name);
        self.units.push(name);
        !known
    }

    fn add_ground(&mut self, end: &EndSheet<'_>, voice: Voice) {
        let grounding = &end.resolved.end.grounding;
        let size = grounding.conductor.as_ref().map_or_else(|| voice.say("size-not-set"), |size| voice.number(size));
        let metal = voice.term(grounding.material.words());
        let detail = voice.with("part-conductor-detail", &[("metal", &metal), ("size", &size)]);
        let amount = end.ground.to_take.get().map_or(Amount::Pieces(1), Amount::Length);
        self.add(voice.say("part-conductor"), detail, amount);
    }

    /// All of it: how much, what, which.
    pub(super) fn table(&self, voice: Voice) -> Table {
        let mut table = Table::new(voice, ["quantity", "part", "material-which"]);
        for (what, detail, amount) in &self.list {
            let amount = match amount {
                Amount::Pieces(number) => number.to_string(),
                Amount::Length(length) => voice.in_both(*length),
            };
            table.row([amount, what.clone(), detail.clone()]);
        }
        table
    }
}
