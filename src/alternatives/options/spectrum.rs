//! Channels, polarisations and halves as the frequency plan knows them, and other bandwidths, each with a channel that goes
//! with it. The state that reaches the capacity asked for follows from the bandwidth.

use crate::alternatives::added::Added;
use crate::alternatives::change::{Change, Piece};
use crate::alternatives::ground::{Ground, Width};
use crate::alternatives::reach::Lever;
use crate::at;
use crate::plan::{Move, Setting};

/// The most channels that are tried, the nearest first.
const MOST_CHANNELS: usize = 16;

/// Channels that are tried with another bandwidth.
const CHANNELS_A_WIDTH: usize = 2;

pub(super) fn channels(ground: &Ground<'_>) -> Vec<Change> {
    let moves = ground.moves.iter().take(MOST_CHANNELS);
    moves.map(|other| Change::of(Lever::Channel, vec![channel(other)])).collect()
}

pub(super) fn widths(ground: &Ground<'_>) -> Vec<Change> {
    let mut made = Vec::new();
    for width in ground.widths {
        made.push(Change::of(Lever::Bandwidth, vec![bandwidth(ground, width)]));
        let same = |other: &&Move| other.today.polarisation == other.then.polarisation;
        for other in width.moves.iter().filter(same).take(CHANNELS_A_WIDTH) {
            made.push(Change::of(Lever::Bandwidth, vec![bandwidth(ground, width), channel(other)]));
        }
    }
    made
}

fn bandwidth(ground: &Ground<'_>, width: &Width) -> Piece {
    let hop = ground.hop.hop;
    Piece {
        what: "bandwidth".into(),
        end: None,
        from: hop.channel.bandwidth.to_string(),
        to: width.written.clone(),
        edits: vec![(at!(hop.channel.bandwidth).into(), width.written.clone())],
        scale: None,
        away: 0.0,
        added: Added::default(),
    }
}

fn channel(other: &Move) -> Piece {
    let halves = other.today.halves != other.then.halves;
    let turned = if halves { ", halves exchanged" } else { "" };
    Piece {
        what: "channel".into(),
        end: None,
        from: told(&other.today),
        to: format!("{}{turned}", told(&other.then)),
        edits: other.edits.clone(),
        scale: None,
        away: 0.0,
        added: Added::default(),
    }
}

fn told(setting: &Setting) -> String {
    let short = |frequency: f64| format!("{} GHz", (frequency * 1e6).round() / 1e6);
    format!("{}/{} {}", short(setting.sends.a.0), short(setting.sends.b.0), setting.polarisation.word())
}
