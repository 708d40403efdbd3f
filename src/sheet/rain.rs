//! The rain rate of a path: as written, else from the normals of twelve months, else off the map the network brings.

use super::line::{AS_WRITTEN, Line};
use super::method::{Method, cited};
use super::missing::Missing;
use super::reason::Reason;
use super::saying::Saying;
use super::target::Target;
use super::traced::{Traced, all, see};
use crate::at;
use crate::finding::Spot;
use crate::network::{Inputs, ResolvedHop};
use crate::physics::geodesy::{self, Position};
use crate::physics::rain_map::RainMap;
use crate::physics::rain_map_text;
use crate::physics::rain_rate::{Month, RainClimate};
use crate::place::Place;
use crate::spec::{Both, RainMonths, Text};
use crate::units::{Given, Millimetres, MillimetresPerHour, Percent};

const MONTHS: Method = cited("monthly rain and temperature, ITU-R P.837-7 Annex 1");
const MAP: Method = cited("published map at the middle of the path, ITU-R P.837-7, bilinear (ITU-R P.1144-12)");

/// The maps that hops of a network need, each read once.
#[derive(Debug, Default)]
pub struct RainMaps(Vec<Entry>);

/// A map by the folder that is named and the places that name it, or why there is none.
#[derive(Debug)]
struct Entry {
    folder: String,
    places: Vec<Place>,
    map: Result<RainMap, String>,
}

impl RainMaps {
    /// Reads the map of every hop that goes by one. The texts are dropped as soon as a map is made of them.
    #[must_use]
    pub fn of(hops: &[ResolvedHop<'_>], inputs: &Inputs<'_>) -> Self {
        let mut maps = Self::default();
        for hop in hops {
            let Some((folder, place)) = map_of(hop) else { continue };
            match maps.0.iter_mut().find(|entry| entry.folder == **folder) {
                Some(entry) if entry.places.contains(&place) => {}
                Some(entry) => entry.places.push(place),
                None => {
                    let map = inputs.rain_map(folder).and_then(|[rates, latitudes, longitudes]| {
                        rain_map_text::parse(&rates, &latitudes, &longitudes).map_err(|error| error.to_string())
                    });
                    maps.0.push(Entry { folder: folder.to_string(), places: vec![place], map });
                }
            }
        }
        maps
    }

    /// Whether the maps say the same of a hop here as of a hop of another state there. Of a map, a hop takes only this.
    #[must_use]
    pub fn same_for(&self, hops: [&ResolvedHop<'_>; 2], other: &Self) -> bool {
        self.said_of(hops[0]) == other.said_of(hops[1])
    }

    /// What is read off the map of a hop; nothing if it needs none.
    fn said_of(&self, hop: &ResolvedHop<'_>) -> Option<Result<Option<MillimetresPerHour>, &str>> {
        let (_, place) = map_of(hop)?;
        let entry = self.0.iter().find(|entry| entry.places.contains(&place))?;
        let [here, there] = [&hop.ends.a, &hop.ends.b].map(|end| {
            let position = &end.site.position;
            Position { latitude: position.latitude.value, longitude: position.longitude.value }
        });
        Some(entry.map.as_ref().map(|map| map.rate(middle(here, there))).map_err(String::as_str))
    }

    /// The maps that could not be read: where each is named, and why.
    pub fn unread(&self) -> impl Iterator<Item = (Place, &str)> {
        self.0.iter().flat_map(|entry| {
            let why = entry.map.as_ref().err();
            why.into_iter().flat_map(|why| entry.places.iter().map(|place| (*place, why.as_str())))
        })
    }

    /// The rate at the middle of a path, off the map of a name.
    fn rate(&self, name: &Traced<&Text>, ends: &Both<Traced<Position>>) -> Traced<MillimetresPerHour> {
        let place = name.first_source();
        let entry = self.0.iter().find(|entry| place.is_some_and(|place| entry.places.contains(&place)));
        let inputs = all((name, &ends.a, &ends.b));
        match (entry.and_then(|entry| entry.map.as_ref().ok()), place) {
            (Some(map), _) => {
                inputs.check(|(_, here, there)| map.rate(middle(here, there)).ok_or(Reason::OutsideRainMap))
            }
            (None, Some(place)) => inputs.try_map(|_| Err(Missing::broken(Reason::BrokenRainMap, place.into()))),
            (None, None) => Traced::missing(Missing::broken(Reason::BrokenRainMap, Spot::Path(String::new()))),
        }
    }
}

/// Where on a path its map is read.
fn middle(here: Position, there: Position) -> Position {
    geodesy::between(here, there, 0.5)
}

/// The folder of the map a hop needs, and where it is named.
fn map_of<'n>(hop: &ResolvedHop<'n>) -> Option<(&'n Text, Place)> {
    let name = named(hop)?;
    let needed = Target::of(hop).rain_rate.is_none() && months(hop).is_none();
    Some((*name.value().ok()?, name.first_source()?)).filter(|_| needed)
}

/// The map a hop goes by, its own or its network's.
fn named<'n>(hop: &ResolvedHop<'n>) -> Option<Traced<&'n Text>> {
    let (own, network) = (hop.hop, hop.network);
    Traced::first_written([see!(own.climate.rain_map), see!(network.climate.rain_map)])
}

/// The normals a hop goes by, its own or its network's.
fn months<'n>(hop: &ResolvedHop<'n>) -> Option<Traced<&'n RainMonths>> {
    let (own, network) = (hop.hop, hop.network);
    Traced::first_written([see!(own.climate.rain_months), see!(network.climate.rain_months)])
}

/// The rain rate and, in words, where it is from.
pub(super) fn lines(
    resolved: &ResolvedHop<'_>,
    target: &Target,
    maps: &RainMaps,
    ends: &Both<Traced<Position>>,
) -> (Line<Given<MillimetresPerHour>>, Line<Saying>) {
    if let Some(wanted) = &target.rain_rate {
        let rate = wanted.written();
        let said = rate.map(|_| Saying::AsWritten);
        return (rate.by(AS_WRITTEN), said.line());
    }
    if let Some(months) = months(resolved) {
        let said = months.map(|_| Saying::RainOfMonths);
        return (months.check(by_months).map(Given::assumed).by(MONTHS), said.line());
    }
    if let Some(name) = named(resolved) {
        let rate = maps.rate(&name, ends);
        let said = all((&name, &ends.a, &ends.b)).map(|_| match rate.get() {
            Some(rate) if rate.0 <= 0.0 => Saying::NoRainOfMap,
            _ => Saying::RainOfMap,
        });
        return (rate.map(Given::assumed).by(MAP), said.line());
    }
    let network = resolved.network;
    let place = at!(network.climate.rain_rate);
    let (none, unsaid) = (Missing::new(Reason::NoRainRate, place), Missing::judged(Reason::NoRainRate, place));
    (Traced::missing(none).line(), Traced::missing(unsaid).line())
}

fn by_months(months: &RainMonths) -> Result<MillimetresPerHour, Reason> {
    let (totals, temperatures) = (months.totals.len(), months.temperatures.len());
    let normals: Vec<Month> = months
        .totals
        .iter()
        .zip(&months.temperatures)
        .map(|(total, temperature)| Month { rain: Millimetres(total.value.0), temperature: temperature.value })
        .collect();
    let twelve = <[Month; 12]>::try_from(normals).ok().filter(|_| totals == temperatures);
    let climate = RainClimate::new(&twelve.ok_or(Reason::NotTwelveMonths { totals, temperatures })?)?;
    climate.rate(Percent(0.01)).ok_or(Reason::NoRateFromMonths)
}
