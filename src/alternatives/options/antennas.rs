//! Other antennas whose band holds the channels: the same model at both ends, or another one at one of them.

use crate::alternatives::added::Added;
use crate::alternatives::change::{Change, Piece};
use crate::alternatives::ground::{Ground, MOST_MODELS, Need, holds_channels, spread};
use crate::alternatives::reach::{Lever, Turn};
use crate::at;
use crate::network::Document;
use crate::spec::{Antenna, EndName};

pub(super) fn options(ground: &Ground<'_>, need: Need) -> Vec<Change> {
    let mut models: Vec<&Document<Antenna>> =
        ground.library.antennas.documents.iter().filter(|model| holds_channels(ground, &model.band)).collect();
    models.sort_by(|one, other| one.gain.value.0.total_cmp(&other.gain.value.0).then_with(|| one.id.cmp(&other.id)));
    let sets: [&[EndName]; 3] = [&EndName::BOTH, &[EndName::A], &[EndName::B]];
    let mut made = Vec::new();
    for ends in sets {
        let fits = |model: &&&Document<Antenna>| ends.iter().all(|end| turns(ground, *end, model, need.turn));
        let fitting: Vec<&Document<Antenna>> = models.iter().filter(fits).copied().collect();
        for model in spread(&fitting, MOST_MODELS) {
            made.push(Change::of(Lever::Antenna, ends.iter().map(|end| piece(ground, *end, model)).collect()));
        }
    }
    made
}

/// Whether a model is another one, and goes the way that could help.
fn turns(ground: &Ground<'_>, end: EndName, model: &Document<Antenna>, turn: Turn) -> bool {
    let today = ground.hop.ends[end].antenna;
    let (gain, was) = (model.gain.value, today.gain.value);
    let way = match turn {
        Turn::Up => gain > was,
        Turn::Down => gain < was,
        Turn::Any => true,
    };
    model.at != today.at && way
}

fn piece(ground: &Ground<'_>, name: EndName, model: &Document<Antenna>) -> Piece {
    let (today, end) = (ground.hop.ends[name].antenna, ground.hop.ends[name].end);
    let added = Added::instead(model.cost.as_ref(), today.cost.as_ref(), 1.0);
    let away = (model.gain.value - today.gain.value).0.abs();
    Piece { away, ..Piece::name("antenna", name, &today.id, &model.id, at!(end.antenna)).adding(added) }
}
