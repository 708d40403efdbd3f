//! A run of fibre: how far its pluggables reach, and what it takes of the light.

use super::key::SectionKey;
use super::line::{Section, lines};
use super::method::cited;
use super::reason::Reason;
use super::saying::Saying;
use super::title::Title;
use super::traced::{Traced, all, read, see};
use crate::network::ResolvedFibreRun;
use crate::physics::fibre_reach;
use crate::spec::EndName;
use crate::units::{Decibels, Metres, Quantity as _};

lines! {
    /// One run of fibre.
    FibreLines {
        interface: Saying, "", "what its pluggables speak, over which fibre", "as written";
        length: Metres, "L", "length of fibre", "outdoor + indoor length";
        reach: Metres, "", "longest fibre for that", cited("IEEE 802.3-2022, reach of the interface (second-hand)");
        length_in_hand: Metres, "", "length left to that", "definition";
        loss: Decibels, "A", "loss of the fibre with its connectors and splices",
            cited("α L + 0.75 dB a mated pair + 0.3 dB a splice, ANSI/TIA-568.3-D (from memory)");
        most_loss: Decibels, "", "most loss for that interface", cited("IEEE 802.3-2022, channel loss (from memory)");
        loss_in_hand: Decibels, "", "loss left to that", "definition";
    }
}

/// One run of fibre.
#[derive(Debug)]
pub struct FibreSheet<'n> {
    /// What was read.
    pub resolved: &'n ResolvedFibreRun<'n>,
    /// Its lines.
    pub lines: FibreLines,
}

impl FibreSheet<'_> {
    pub(super) fn section(&self, end: EndName, number: usize) -> Section {
        let title = Title::FibreRun { end, port: self.resolved.port.id.to_string().into() };
        self.lines.section(SectionKey::FibreRun(end, number), title)
    }
}

pub(super) fn compute<'n>(resolved: &'n ResolvedFibreRun<'n>) -> FibreSheet<'n> {
    let (run, fibre) = (resolved.run, resolved.fibre);
    let kind = all((&see!(run.here.interface), &see!(fibre.category)));
    let words = kind.map(|(here, category)| Saying::Over { what: here.word().into(), way: category.word().into() });
    let reach = kind.judge(|(here, category)| {
        fibre_reach::reach(here.word(), category.word())
            .ok_or(Reason::NoReach { interface: here.word(), fibre: category.word() })
    });
    let length =
        all((&read!(run.outdoor), &read!(run.indoor))).map(|(outdoor, indoor)| outdoor + indoor.unwrap_or(Metres(0.0)));
    let attenuation =
        all((&read!(fibre.attenuation), &reach, &see!(fibre.category))).map(|(stated, reach, category)| {
            stated.unwrap_or_else(|| fibre_reach::most_attenuation(category.word(), reach.wavelength))
        });
    let joints = all((&see!(run.mated_pairs), &see!(run.splices)));
    let loss = all((&attenuation, &length, &joints)).map(|(attenuation, length, (pairs, splices))| {
        fibre_reach::channel_loss(attenuation, length, *pairs, *splices)
    });
    let left = |most: &Traced<Metres>| all((most, &length)).map(|(most, length)| most - length);
    let (longest, most_loss) = (reach.map(|reach| reach.length), reach.map(|reach| reach.loss));
    let lines = FibreLines {
        interface: words.line(),
        length: length.map(Metres::tidy).line(),
        length_in_hand: left(&longest).line(),
        reach: longest.line(),
        loss_in_hand: all((&most_loss, &loss)).map(|(most, loss)| most - loss).line(),
        loss: loss.line(),
        most_loss: most_loss.line(),
    };
    FibreSheet { resolved, lines }
}
