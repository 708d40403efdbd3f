//! The rain rate of a path: as written, else from the normals of twelve months, else off the map the network brings.

use std::path::{Path, PathBuf};

use super::line::{AS_WRITTEN, Line, Missing};
use super::reason::Reason;
use super::saying::Saying;
use super::target::Target;
use crate::at;
use crate::network::{Files, ResolvedHop, read_rain_map};
use crate::physics::geodesy::{self, Position};
use crate::physics::rain_map::RainMap;
use crate::physics::rain_map_text;
use crate::physics::rain_rate::{Month, RainClimate};
use crate::place::Place;
use crate::spec::{RainMonths, Text};
use crate::units::{Given, Millimetres, MillimetresPerHour, Percent};

const MONTHS: &str = "monthly rain and temperature, ITU-R P.837-7 Annex 1";
const MAP: &str = "published map at the middle of the path, ITU-R P.837-7, bilinear (ITU-R P.1144-12)";

/// The maps that hops of a network need, each read once.
#[derive(Debug, Default)]
pub struct RainMaps(Vec<Entry>);

/// A map by the folder it was read from and the places that name it, or why there is none.
#[derive(Debug)]
struct Entry {
    folder: PathBuf,
    places: Vec<Place>,
    map: Result<RainMap, String>,
}

impl RainMaps {
    /// Reads the map of every hop that goes by one. The texts are dropped as soon as a map is made of them.
    #[must_use]
    pub fn of(hops: &[ResolvedHop<'_>], files: &Files) -> Self {
        let mut maps = Self::default();
        for hop in hops {
            let Some((name, place)) = named(hop) else { continue };
            if Target::of(hop).rain_rate.is_some() || months(hop).is_some() {
                continue;
            }
            let base = files.get(hop.network.at.file).and_then(|file| file.origin.parent());
            let folder = base.unwrap_or(Path::new("")).join(&**name);
            match maps.0.iter_mut().find(|entry| entry.folder == folder) {
                Some(entry) if entry.places.contains(&place) => {}
                Some(entry) => entry.places.push(place),
                None => {
                    let map = read_rain_map(&folder).and_then(|[rates, latitudes, longitudes]| {
                        rain_map_text::parse(&rates, &latitudes, &longitudes).map_err(|error| error.to_string())
                    });
                    maps.0.push(Entry { folder, places: vec![place], map });
                }
            }
        }
        maps
    }

    /// The maps that could not be read: where each is named, and why.
    pub fn unread(&self) -> impl Iterator<Item = (Place, &str)> {
        self.0.iter().flat_map(|entry| {
            let why = entry.map.as_ref().err();
            why.into_iter().flat_map(|why| entry.places.iter().map(|place| (*place, why.as_str())))
        })
    }

    fn at(&self, place: Place) -> Option<&RainMap> {
        self.0.iter().find(|entry| entry.places.contains(&place))?.map.as_ref().ok()
    }
}

/// The map a hop goes by, its own or its network's.
fn named<'n>(hop: &ResolvedHop<'n>) -> Option<(&'n Text, Place)> {
    let (own, network) = (hop.hop, hop.network);
    let own_map = own.spec.climate.rain_map.as_ref().map(|name| (name, at!(own.climate.rain_map)));
    own_map.or_else(|| network.spec.climate.rain_map.as_ref().map(|name| (name, at!(network.climate.rain_map))))
}

/// The normals a hop goes by, its own or its network's.
fn months<'n>(hop: &ResolvedHop<'n>) -> Option<(&'n RainMonths, Place)> {
    let (own, network) = (hop.hop, hop.network);
    let own_months = own.spec.climate.rain_months.as_ref().map(|months| (months, at!(own.climate.rain_months)));
    own_months
        .or_else(|| network.spec.climate.rain_months.as_ref().map(|months| (months, at!(network.climate.rain_months))))
}

/// The rain rate and, in words, where it is from.
pub(super) fn lines(
    resolved: &ResolvedHop<'_>,
    target: &Target,
    maps: &RainMaps,
    ends: [(Position, Place); 2],
) -> (Line<Given<MillimetresPerHour>>, Line<Saying>) {
    let said = |saying: Saying, from: &[Place]| Line::known(saying, from);
    if let Some(wanted) = &target.rain_rate {
        let from = [wanted.place];
        return (Line::known(wanted.given.clone(), &from).by(AS_WRITTEN), said(Saying::AsWritten, &from));
    }
    if let Some((months, place)) = months(resolved) {
        let rate = by_months(months, place).map(Given::assumed);
        return (Line::new(rate, &[place]).by(MONTHS), said(Saying::RainOfMonths, &[place]));
    }
    if let Some((_, place)) = named(resolved) {
        let [(here, here_at), (there, there_at)] = ends;
        let from = [place, here_at, there_at];
        let rate = maps.at(place).ok_or_else(|| Missing::broken(Reason::BrokenRainMap, place.into())).and_then(|map| {
            let rate = map.rate(geodesy::between(here, there, 0.5));
            rate.ok_or_else(|| Missing::new(Reason::OutsideRainMap, place))
        });
        let words = match &rate {
            Ok(rate) if rate.0 <= 0.0 => Saying::NoRainOfMap,
            _ => Saying::RainOfMap,
        };
        return (Line::new(rate.map(Given::assumed), &from).by(MAP), said(words, &from));
    }
    let network = resolved.network;
    let place = at!(network.climate.rain_rate);
    (
        Line::new(Err(Missing::new(Reason::NoRainRate, place)), &[]),
        Line::new(Err(Missing::judged(Reason::NoRainRate, place)), &[]),
    )
}

fn by_months(months: &RainMonths, place: Place) -> Result<MillimetresPerHour, Missing> {
    let (totals, temperatures) = (months.totals.len(), months.temperatures.len());
    let normals: Vec<Month> = months
        .totals
        .iter()
        .zip(&months.temperatures)
        .map(|(total, temperature)| Month { rain: Millimetres(total.value.0), temperature: temperature.value })
        .collect();
    let twelve = <[Month; 12]>::try_from(normals)
        .ok()
        .filter(|_| totals == temperatures)
        .ok_or_else(|| Missing::new(Reason::NotTwelveMonths { totals, temperatures }, place))?;
    let climate = RainClimate::new(&twelve).map_err(|error| Missing::new(error, place))?;
    climate.rate(Percent(0.01)).ok_or_else(|| Missing::new(Reason::NoRateFromMonths, place))
}
