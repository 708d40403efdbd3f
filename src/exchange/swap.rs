//! Latitude and longitude exchanged: told by trial, where the rest of the network tells.

use std::collections::BTreeMap;

use super::columns::Holds;
use super::fault::Fault;
use super::item::Item;
use crate::physics::geodesy::{Position, inverse};
use crate::units::{Latitude, Longitude, read};

/// As written nothing of the network lies nearer, in metres.
const FAR: f64 = 1_000_000.0;
/// Exchanged something of it does.
const NEAR: f64 = 200_000.0;

/// A network that lies in more whole degrees than this tells nothing.
const MOST_CELLS: usize = 2_000;

/// The faults of positions that lie far from all others as written, and among them when exchanged. Those that are there
/// already tell; among themselves positions tell only where the table is all there is.
pub(super) fn swapped(items: &[Item], known: &[Position]) -> Vec<Fault> {
    let own: Vec<(&Item, Position)> = items.iter().filter_map(|item| Some((item, position(item)?))).collect();
    let alone = known.is_empty();
    let others = cells(if alone { own.iter().map(|(_, place)| *place).collect() } else { known.to_vec() });
    if others.len() > MOST_CELLS {
        return Vec::new();
    }
    let mut faults = Vec::new();
    for (item, here) in own {
        let Some(there) = exchanged(here) else { continue };
        let beside: Vec<&Position> = others
            .iter()
            .filter(|(cell, (_, count))| !(alone && **cell == cell_of(here) && *count == 1))
            .map(|(_, (place, _))| place)
            .collect();
        let (as_written, turned) = (nearest(here, &beside), nearest(there, &beside));
        if as_written > FAR && as_written.is_finite() && turned < NEAR {
            let header = item.value("latitude").map_or("latitude", |value| &value.header);
            let cell = item.value("latitude").map_or("", |value| &value.cell);
            let why = format!(
                "seems to be the longitude: as written the site lies {:.0} km from the nearest other one, with latitude and \
                 longitude exchanged {:.0} km",
                as_written / 1000.0,
                turned / 1000.0
            );
            faults.push(Fault::of(&item.file, item.line, header, cell, why));
        }
    }
    faults
}

/// A whole degree each way.
type Cell = (i64, i64);

#[expect(clippy::cast_possible_truncation, reason = "degrees are small")]
fn cell_of(place: Position) -> Cell {
    (place.latitude.0.floor() as i64, place.longitude.0.floor() as i64)
}

/// One position of every whole degree that has any, and how many it has: nearer than that nothing is asked.
fn cells(places: Vec<Position>) -> BTreeMap<Cell, (Position, usize)> {
    let mut cells = BTreeMap::new();
    for place in places {
        cells.entry(cell_of(place)).or_insert((place, 0)).1 += 1;
    }
    cells
}

/// The position an item has.
fn position(item: &Item) -> Option<Position> {
    let number = |name| {
        let value = item.value(name)?;
        let Holds::Quantity(kind) = value.column.holds else { return None };
        read(kind, &value.words).ok()
    };
    Some(Position { latitude: Latitude(number("latitude")?), longitude: Longitude(number("longitude")?) })
}

fn exchanged(place: Position) -> Option<Position> {
    let latitude = place.longitude.0;
    (latitude.abs() <= 90.0)
        .then_some(Position { latitude: Latitude(latitude), longitude: Longitude(place.latitude.0) })
}

/// How far the nearest of others is. Most are many; a rough sieve by degrees spares the exact sum.
fn nearest(from: Position, others: &[&Position]) -> f64 {
    let rough = |to: &Position| {
        let turn = (from.longitude.0 - to.longitude.0).abs();
        let turn = turn.min(360.0 - turn) * libm::cos(from.latitude.0.to_radians());
        libm::hypot(from.latitude.0 - to.latitude.0, turn)
    };
    let near = others.iter().min_by(|one, other| rough(one).total_cmp(&rough(other)));
    near.map_or(f64::INFINITY, |to| inverse(from, **to).map_or(0.0, |way| way.distance.0))
}
