//! What several ends take together: parts counted, cable and conductor by length.

use std::collections::BTreeMap;

use super::parts::open_ports;
use super::words::Table;
use crate::sheet::{EndSheet, RunSheet};
use crate::spec::{Plugs, Screening};
use crate::units::Metres;
use crate::voice::{Voice, shown};

/// How much of something.
#[derive(Debug, Clone, Copy, Default)]
struct Amount {
    pieces: usize,
    length: f64,
    /// Pieces whose length is not known.
    unknown: usize,
}

/// What is bought, in the order in which it is mounted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Part {
    Radio,
    Antenna,
    Bracket,
    Feeder,
    Band,
    Plate,
    Cable,
    Plug,
    Insert,
    Arrester,
    Supply,
    Fibre,
    Pluggable,
    Conductor,
    Lug,
    LugOrClamp,
    BondingLead,
    Blank,
}

impl Part {
    const fn key(self) -> &'static str {
        match self {
            Self::Radio => "part-radio",
            Self::Antenna => "part-antenna",
            Self::Bracket => "part-bracket",
            Self::Feeder => "part-feeder",
            Self::Band => "part-band",
            Self::Plate => "part-plate",
            Self::Cable => "bill-cable",
            Self::Plug => "part-plug",
            Self::Insert => "part-insert",
            Self::Arrester => "part-arrester",
            Self::Supply => "part-supply",
            Self::Fibre => "bill-fibre",
            Self::Pluggable => "bill-pluggable",
            Self::Conductor => "part-conductor",
            Self::Lug => "part-lug",
            Self::LugOrClamp => "part-lug-or-clamp",
            Self::BondingLead => "part-bonding-lead",
            Self::Blank => "part-blank",
        }
    }

    const fn is_by_length(self) -> bool {
        matches!(self, Self::Feeder | Self::Cable | Self::Fibre | Self::Conductor)
    }
}

/// One row of a bill.
#[derive(Debug, Clone)]
pub struct BillRow {
    /// What it is.
    pub part: String,
    /// Which.
    pub detail: String,
    /// How many; of what is cut from a reel, how many lengths.
    pub pieces: usize,
    /// All lengths together, of what is cut from a reel.
    pub length: Option<Metres>,
    /// Lengths of it that are not known.
    pub unknown: usize,
}

/// Everything that is bought, each kind of it once.
#[derive(Debug, Clone, Default)]
pub struct Bill(BTreeMap<(Part, String), Amount>);

impl Bill {
    /// Adds what an end takes.
    pub fn end(&mut self, end: &EndSheet<'_>, voice: Voice) {
        let own = end.resolved;
        self.pieces(Part::Radio, 1, format!("{}, {}", own.radio.title, own.half.id));
        self.pieces(Part::Antenna, 1, own.antenna.title.to_string());
        self.pieces(Part::Bracket, 1, own.bracket.title.to_string());
        if let Some((feeder, used)) = own.feeder.zip(own.end.spec.feeder.as_ref()) {
            self.length(Part::Feeder, Some(used.length.value), feeder.title.to_string());
        }
        if let Some(bands) = own.bracket.bands {
            let tube = voice.given_in_both(&own.support.outside_diameter);
            self.pieces(Part::Band, bands.into(), voice.with("part-band-detail", &[("tube", &tube)]));
        }
        if let Some(plate) = own.bracket.plate.as_ref().filter(|_| own.end.bracket.plate) {
            self.pieces(Part::Plate, 1, plate.title.to_string());
        }
        for (number, run) in end.runs.iter().enumerate() {
            // A supply of several runs is taken once, at the last of them.
            let elsewhere = end.shared.iter().any(|shared| shared.run == number && !shared.told_here);
            self.run(run, !elsewhere, voice);
        }
        for fibre in &end.fibre_runs {
            let (run, cable) = (fibre.resolved.run.spec, fibre.resolved.fibre);
            let detail = [("title", &cable.title as &dyn std::fmt::Display), ("category", &cable.category.word())];
            self.length(Part::Fibre, fibre.lines.length.get(), voice.with("part-fibre-detail", &detail));
            for pluggable in [&run.here, &run.there] {
                self.pieces(Part::Pluggable, 1, format!("{}, {}", pluggable.title, pluggable.interface.word()));
            }
        }
        let grounding = &own.end.grounding;
        let size = grounding.conductor.as_ref().map_or_else(|| voice.say("size-not-set"), |size| voice.number(size));
        let metal = voice.term(grounding.material.words());
        let detail = voice.with("part-conductor-detail", &[("metal", &metal), ("size", &size)]);
        self.length(Part::Conductor, end.ground.to_take.get(), detail);
        let terminal = &own.radio.ground.terminal;
        self.pieces(Part::Lug, 1, voice.with("part-lug-detail", &[("size", &size), ("terminal", terminal)]));
        self.pieces(Part::LugOrClamp, 1, size);
        let arresters = end.runs.iter().map(|run| run.resolved.arresters.len()).sum();
        self.pieces(Part::BondingLead, arresters, voice.say("part-bonding-lead-detail"));
        self.pieces(Part::Blank, open_ports(end).len(), own.radio.title.to_string());
    }

    fn run(&mut self, run: &RunSheet<'_>, with_supply: bool, voice: Voice) {
        let (resolved, cable) = (run.resolved, run.resolved.cable);
        let screen = cable.grade();
        let jacket = voice.term(cable.jacket.word());
        let detail = format!("{}, {screen}, {jacket}", cable.title);
        self.length(Part::Cable, run.handling.to_take.get(), detail);
        let shell = match (resolved.run.plugs, cable.screened()) {
            (Plugs::Plastic, _) | (_, Screening::UUtp) => "part-plug-plain",
            (Plugs::Metal, _) => "part-plug-metal",
        };
        let shell = voice.with(shell, &[("diameter", &voice.line(&run.lines.outside_diameter))]);
        self.pieces(Part::Plug, 2 * (1 + resolved.arresters.len()), shell);
        if let Ok(insert) = run.lines.gland.value() {
            self.pieces(Part::Insert, 1, insert.to_string());
        }
        for arrester in &resolved.arresters {
            self.pieces(Part::Arrester, 1, arrester.title.to_string());
        }
        if let Some(supply) = resolved.supply.filter(|_| with_supply) {
            self.pieces(Part::Supply, 1, format!("{}, {}", supply.title, supply.standard.word()));
        }
    }

    fn pieces(&mut self, part: Part, pieces: usize, detail: String) {
        if pieces > 0 {
            self.0.entry((part, detail)).or_default().pieces += pieces;
        }
    }

    fn length(&mut self, part: Part, length: Option<Metres>, detail: String) {
        let amount = self.0.entry((part, detail)).or_default();
        amount.pieces += 1;
        match length {
            Some(length) => amount.length += length.0,
            None => amount.unknown += 1,
        }
    }

    /// Adds all of another one.
    pub fn add(&mut self, other: &Self) {
        for (what, more) in &other.0 {
            let amount = self.0.entry(what.clone()).or_default();
            amount.pieces += more.pieces;
            amount.length += more.length;
            amount.unknown += more.unknown;
        }
    }

    /// As rows, to be written by others.
    #[must_use]
    pub fn rows(&self, voice: Voice) -> Vec<BillRow> {
        let row = |((part, detail), amount): (&(Part, String), &Amount)| BillRow {
            part: voice.say(part.key()),
            detail: detail.clone(),
            pieces: amount.pieces,
            length: part.is_by_length().then_some(Metres(amount.length)),
            unknown: amount.unknown,
        };
        self.0.iter().map(row).collect()
    }

    /// As a table.
    pub(super) fn table(&self, voice: Voice) -> Table {
        let mut table = Table::new(voice, ["quantity", "part", "bill-detail"]);
        for ((part, detail), amount) in &self.0 {
            let quantity = if part.is_by_length() {
                let length = voice.in_both(Metres(amount.length));
                let runs = voice.count("bill-runs", amount.pieces);
                match amount.unknown {
                    0 => voice.with("bill-length", &[("length", &length), ("runs", &runs)]),
                    unknown => voice
                        .with("bill-length-at-least", &[("length", &length), ("runs", &runs), ("unknown", &unknown)]),
                }
            } else {
                amount.pieces.to_string()
            };
            table.row([quantity, voice.say(part.key()), shown(detail)]);
        }
        table
    }
}
