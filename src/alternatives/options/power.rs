//! Transmit power: at one end and at both, up to what radio, codes and licence allow, down to what the radio can be set to.

use crate::alternatives::change::{Change, Piece};
use crate::alternatives::ground::{Ground, Need, ceiled, floored};
use crate::alternatives::reach::{Lever, Turn};
use crate::alternatives::scale::Scale;
use crate::at;
use crate::spec::EndName;
use crate::units::{Dbm, Decibels};

/// Powers are set to half decibels: common practice, no source.
const STEP: f64 = 0.5;

/// Changes that are tried below and above today's power, beside the most and the least there is. What passes is brought back
/// as near to today's as it can be.
const UP: f64 = 3.0;
const DOWN: [f64; 3] = [3.0, 6.0, 12.0];

pub(super) fn options(ground: &Ground<'_>, need: Need) -> Vec<Change> {
    let mut made = Vec::new();
    if need.turn != Turn::Down {
        made.extend(changes(ground, |end| higher(ground, end)));
    }
    if need.turn != Turn::Up {
        made.extend(changes(ground, |end| lower(ground, end)));
    }
    made
}

/// One end, the other, both: of both the values of the same rank.
fn changes(ground: &Ground<'_>, values: impl Fn(EndName) -> Vec<f64>) -> Vec<Change> {
    let each =
        EndName::BOTH.map(|end| values(end).into_iter().map(|then| piece(ground, end, then)).collect::<Vec<_>>());
    let alone = each.iter().flatten().map(|piece| Change::of(Lever::Power, vec![piece.clone()]));
    let both = each[0].iter().zip(&each[1]);
    let both = both.map(|(a, b)| Change::of(Lever::Power, vec![a.clone(), b.clone()]));
    both.chain(alone).collect()
}

fn piece(ground: &Ground<'_>, name: EndName, then: f64) -> Piece {
    let end = ground.hop.ends[name].end;
    let scale = Scale { today: end.transmit_power.value.0, then, step: STEP, unit: "dBm" };
    Piece::scaled("transmit power", name, &end.transmit_power.to_string(), scale, at!(end.transmit_power))
}

/// The most that may be set at an end: by its radio, by codes and licence.
fn most(ground: &Ground<'_>, name: EndName) -> f64 {
    let most = ground.hop.ends[name].radio.transmit_power.max.value;
    let lawful = ground.sheet.licence[name.outgoing()].lines.highest_power.get();
    floored(lawful.filter(|lawful| *lawful < most).unwrap_or(most), STEP)
}

fn least(ground: &Ground<'_>, name: EndName) -> f64 {
    ceiled(ground.hop.ends[name].radio.transmit_power.min.value, STEP)
}

fn higher(ground: &Ground<'_>, name: EndName) -> Vec<f64> {
    let (today, most) = (ground.hop.ends[name].end.transmit_power.value, most(ground, name));
    let middle = floored(Dbm(f64::midpoint(today.0, most)), STEP);
    let few = floored(today + Decibels(UP), STEP);
    distinct([most, middle, few, least(ground, name)], |value| value > today.0 && value <= most)
}

fn lower(ground: &Ground<'_>, name: EndName) -> Vec<f64> {
    let (today, least) = (ground.hop.ends[name].end.transmit_power.value, least(ground, name));
    let steps = DOWN.map(|less| floored(today - Decibels(less), STEP));
    let most = most(ground, name);
    distinct([most, steps[0], steps[1], steps[2], least], |value| value < today.0 && value >= least)
}

fn distinct<const N: usize>(values: [f64; N], fits: impl Fn(f64) -> bool) -> Vec<f64> {
    let mut kept: Vec<f64> = Vec::new();
    for value in values.into_iter().filter(|value| fits(*value)) {
        if !kept.iter().any(|known| known.total_cmp(&value).is_eq()) {
            kept.push(value);
        }
    }
    kept
}
