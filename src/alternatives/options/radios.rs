//! Other radios: the same model at both ends, with the halves, the ports and a state at the bandwidth that the hop uses. Where
//! the power of today cannot be set on it, the nearest that can be is.

use crate::alternatives::added::Added;
use crate::alternatives::change::{Change, Piece};
use crate::alternatives::ground::{Ground, MOST_MODELS, ceiled, floored};
use crate::alternatives::reach::Lever;
use crate::at;
use crate::network::Document;
use crate::spec::{EndName, Half, Radio, Way, Window};
use crate::units::Gigahertz;

pub(super) fn options(ground: &Ground<'_>) -> Vec<Change> {
    let models = ground.library.radios.documents.iter();
    let both = models.filter_map(|radio| {
        let pieces: Option<Vec<Piece>> = EndName::BOTH.into_iter().map(|end| piece(ground, end, radio)).collect();
        let known = ground.hop.ends.iter().all(|end| end.radio.at == radio.at);
        pieces.filter(|_| !known && has_a_state(ground, radio)).map(|pieces| Change::of(Lever::Radio, pieces))
    });
    both.take(MOST_MODELS).collect()
}

fn has_a_state(ground: &Ground<'_>, radio: &Radio) -> bool {
    radio.states.iter().any(|state| state.bandwidth.value == ground.hop.hop.channel.bandwidth.value)
}

/// What has to be written at an end; none if a port is missing there, or no half holds the channels.
fn piece(ground: &Ground<'_>, name: EndName, radio: &Document<Radio>) -> Option<Piece> {
    let resolved = &ground.hop.ends[name];
    let (end, today) = (resolved.end, resolved.radio);
    let runs = resolved.runs.iter().map(|run| &run.run.spec.port);
    let mut ports = runs.chain(resolved.fibre_runs.iter().map(|run| &run.run.spec.port));
    if !ports.all(|port| radio.ports.iter().any(|own| own.id == *port)) {
        return None;
    }
    let half = half(ground, name, radio)?;
    let mut piece = Piece::name("radio", name, &today.id, &radio.id, at!(end.radio));
    if end.half.as_ref().is_some_and(|now| *now != half.id) || (end.half.is_none() && radio.halves.len() > 1) {
        piece.edits.push((at!(end.half).into(), half.id.to_string()));
    }
    let (power, window) = (end.transmit_power.value, &radio.transmit_power);
    if !window.holds(power) {
        let nearest =
            if power > window.max.value { floored(window.max.value, 0.5) } else { ceiled(window.min.value, 0.5) };
        piece.edits.push((at!(end.transmit_power).into(), format!("{nearest} dBm")));
        piece.to = format!("{} at {nearest} dBm", piece.to);
    }
    Some(piece.adding(Added::instead(radio.cost.as_ref(), today.cost.as_ref(), 1.0)))
}

/// A half that sends and listens where this end does, of today's name if it can be.
fn half<'r>(ground: &Ground<'_>, name: EndName, radio: &'r Radio) -> Option<&'r Half> {
    let inside = |window: &Window<Gigahertz>, way: Way| {
        let (low, high) = ground.sheet.channel_edges(way);
        window.min.value <= low && high <= window.max.value
    };
    let fits = |half: &&Half| inside(&half.transmit, name.outgoing()) && inside(&half.receive, name.incoming());
    let own = &ground.hop.ends[name].half.id;
    let same = radio.halves.iter().filter(|half| half.id == *own);
    same.chain(&radio.halves).find(fits)
}
