//! Heights within the support that stands there, and other ways to hold the radio to it.

use crate::alternatives::added::Added;
use crate::alternatives::change::{Change, Piece};
use crate::alternatives::ground::{Ground, MOST_MODELS, Need, ceiled, floored};
use crate::alternatives::reach::{Lever, Turn};
use crate::alternatives::scale::Scale;
use crate::at;
use crate::network::Document;
use crate::spec::{Bracket, EndName, Orientation};
use crate::units::{Metres, Quantity as _};

/// Heights are set out to decimetres, in feet to halves: common practice, no source.
const STEP: f64 = 0.1;
const STEP_IN_FEET: f64 = 0.5;

/// One foot, exactly.
const FOOT: f64 = 0.3048;

pub(super) fn heights(ground: &Ground<'_>, need: Need) -> Vec<Change> {
    let mut made = Vec::new();
    let each = Turn::both(need.turn).map(|up| EndName::BOTH.map(|end| of_end(ground, end, up)));
    for each in each {
        let both = each[0].iter().zip(&each[1]).map(|(a, b)| vec![a.clone(), b.clone()]);
        let alone = each.iter().flatten().map(|piece| vec![piece.clone()]);
        made.extend(both.chain(alone).map(|pieces| Change::of(Lever::Height, pieces)));
    }
    made
}

impl Turn {
    /// Up, down or both: whether it is up.
    fn both(self) -> impl Iterator<Item = bool> {
        [(true, Self::Down), (false, Self::Up)].into_iter().filter(move |(_, not)| *not != self).map(|(up, _)| up)
    }
}

/// Heights of one end on its support: as far as it goes, half of that, a metre.
fn of_end(ground: &Ground<'_>, name: EndName, up: bool) -> Vec<Piece> {
    let resolved = &ground.hop.ends[name];
    let (end, support) = (resolved.end, resolved.support);
    let today = end.height.value;
    let base = support.base_height.value;
    let top = (base + support.free_length.value).tidy();
    let middle = |limit: Metres| Metres(f64::midpoint(today.0, limit.0));
    let values =
        if up { [top, middle(top), today + Metres(1.0), base] } else { [base, middle(base), today - Metres(1.0), top] };
    let written = end.height.to_string();
    let in_feet = written.contains("ft") || written.contains('\'');
    let (unit, step, metres) = if in_feet { ("ft", STEP_IN_FEET, FOOT) } else { ("m", STEP, 1.0) };
    let (lowest, highest) = (ceiled(Metres(base.0 / metres), step), floored(Metres(top.0 / metres), step));
    let now = today.0 / metres;
    let mut kept: Vec<f64> = Vec::new();
    for value in values {
        let then = if up { floored(Metres(value.0 / metres), step) } else { ceiled(Metres(value.0 / metres), step) };
        let moves = if up { then > now + 1e-6 } else { then < now - 1e-6 };
        if moves && (lowest..=highest).contains(&then) && !kept.iter().any(|known| known.total_cmp(&then).is_eq()) {
            kept.push(then);
        }
    }
    let piece = |then| Piece::scaled("height", name, &written, Scale { today: now, then, step, unit }, at!(end.height));
    kept.into_iter().map(piece).collect()
}

pub(super) fn brackets(ground: &Ground<'_>, need: Need) -> Vec<Change> {
    need.ends().flat_map(|end| of_bracket(ground, end)).map(|piece| Change::of(Lever::Bracket, vec![piece])).collect()
}

/// The same bracket mounted otherwise, then others that close on the tube, each in every way it can be mounted.
fn of_bracket(ground: &Ground<'_>, name: EndName) -> Vec<Piece> {
    let resolved = &ground.hop.ends[name];
    let (end, today, tube) = (resolved.end, resolved.bracket, resolved.support.outside_diameter.value);
    let others = ground.library.brackets.documents.iter();
    let others = others.filter(|other| other.at != today.at && other.pole.holds(tube)).take(MOST_MODELS);
    let mut made = Vec::new();
    for model in std::iter::once(today).chain(others) {
        for (orientation, plate) in ways(model) {
            let same = model.at == today.at && orientation == end.bracket.orientation && plate == end.bracket.plate;
            if !same {
                made.push(mounted(ground, name, model, orientation, plate));
            }
        }
    }
    made
}

fn ways(model: &Bracket) -> impl Iterator<Item = (Orientation, bool)> {
    let plates: &[bool] = if model.plate.is_some() { &[false, true] } else { &[false] };
    [Orientation::Upright, Orientation::Inverted]
        .into_iter()
        .flat_map(|orientation| plates.iter().map(move |plate| (orientation, *plate)))
}

fn mounted(
    ground: &Ground<'_>,
    name: EndName,
    model: &Document<Bracket>,
    orientation: Orientation,
    plate: bool,
) -> Piece {
    let (end, today) = (ground.hop.ends[name].end, ground.hop.ends[name].bracket);
    let told = |id: &str, orientation: Orientation, plate: bool| {
        format!("`{id}` {}{}", orientation.word(), if plate { " with its plate" } else { "" })
    };
    let mut edits = Vec::new();
    if model.at != today.at {
        edits.push((at!(end.bracket.model).into(), model.id.to_string()));
    }
    if orientation != end.bracket.orientation {
        edits.push((at!(end.bracket.orientation).into(), orientation.word().to_owned()));
    }
    if plate != end.bracket.plate {
        edits.push((at!(end.bracket.plate).into(), plate.to_string()));
    }
    let same = model.at == today.at;
    let added = if same { Added::default() } else { Added::instead(model.cost.as_ref(), today.cost.as_ref(), 1.0) };
    Piece {
        what: "bracket".into(),
        end: Some(name),
        from: told(&today.id, end.bracket.orientation, end.bracket.plate),
        to: told(&model.id, orientation, plate),
        edits,
        scale: None,
        away: 0.0,
        added,
    }
}
