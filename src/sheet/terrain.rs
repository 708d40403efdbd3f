//! Ground along the hops that go by tiles: each tile is read once, asked for every hop that crosses it, and let go.

use std::collections::BTreeSet;
use std::io::BufReader;

use rayon::prelude::*;

use crate::at;
use crate::network::{Inputs, ResolvedHop, TileFile};
use crate::physics::geodesy::{self, Position};
use crate::physics::geotiff;
use crate::physics::terrain::{Gathered, Grid, SPENT, Tile, tile_name};
use crate::place::{DocumentId, Place};
use crate::spec::Both;
use crate::units::Metres;

/// Distance between the points asked for: finer than the finest tiles most people have.
const STEP: Metres = Metres(10.0);
/// At most as many steps a hop.
const MOST_STEPS: f64 = 5000.0;

/// Ground along a hop, as far as tiles give it.
#[derive(Debug, Clone, Default, PartialEq)]
pub(super) struct TerrainPath {
    /// Height at equal steps from end a to end b; none where no tile gives one.
    pub(super) heights: Vec<Option<Metres>>,
    /// Coarsest spacing of the tiles that were used.
    pub(super) spacing: Metres,
    /// Files that were used.
    pub(super) used: BTreeSet<String>,
    /// One-degree cells that no tile reaches.
    pub(super) missing: BTreeSet<String>,
    /// Whether a tile has a void on the path.
    pub(super) void: bool,
}

/// The ground along every hop that goes by tiles, and what of the tiles could not be read.
#[derive(Debug, Default)]
pub struct Terrains {
    paths: Vec<(DocumentId, TerrainPath)>,
    unread: Vec<(Place, String)>,
}

struct Wanted {
    hop: DocumentId,
    positions: Vec<Position>,
    gathered: Vec<Gathered>,
    found: TerrainPath,
}

impl Wanted {
    /// The positions within reach of a grid whose height is not whole.
    fn open(&self, grid: &Grid) -> impl Iterator<Item = Position> {
        let open = self.positions.iter().zip(&self.gathered).filter(|(_, gathered)| !gathered.whole());
        open.map(|(position, _)| *position).filter(|position| grid.reaches(*position))
    }
}

/// Whether a hop goes by the tiles of its network.
pub(super) fn goes_by_tiles(hop: &ResolvedHop<'_>) -> bool {
    hop.hop.path.profile.is_empty() && hop.hop.path.csv.is_none() && hop.network.terrain.is_some()
}

impl Terrains {
    /// Reads what the hops of one network need.
    ///
    /// Takes the samples it reads out of `samples`: a file of a few bytes may hold millions of them.
    #[must_use]
    pub fn of(hops: &[ResolvedHop<'_>], inputs: &Inputs<'_>, samples: &mut usize) -> Self {
        let mut terrains = Self::default();
        let Some(first) = hops.iter().find(|hop| goes_by_tiles(hop)) else { return terrains };
        let network = first.network;
        let Some(terrain) = &network.spec.terrain else { return terrains };
        let place = at!(network.terrain);
        let mut wanted: Vec<Wanted> = hops.par_iter().filter(|hop| goes_by_tiles(hop)).map(positions).collect();
        match inputs.tiles(&terrain.folder) {
            Ok(list) => terrains.read(&list, &mut wanted, place, samples),
            Err(why) => terrains.unread.push((place, why)),
        }
        for wanted in &mut wanted {
            wanted.found.heights = wanted.gathered.iter().map(Gathered::height).collect();
            wanted.found.void = wanted.gathered.iter().any(Gathered::void);
            let cells = wanted.positions.iter().zip(&wanted.found.heights).filter(|(_, height)| height.is_none());
            let names: BTreeSet<String> = cells.map(|(position, _)| tile_name(*position)).collect();
            // Another tile may have filled a void.
            wanted.found.void &= !names.is_empty();
            if !wanted.found.void {
                wanted.found.missing = names;
            }
        }
        terrains.paths = wanted.into_iter().map(|wanted| (wanted.hop, wanted.found)).collect();
        terrains
    }

    fn read(&mut self, list: &[TileFile], wanted: &mut [Wanted], place: Place, samples: &mut usize) {
        for file in list {
            let grid = match grid_of(file) {
                Ok(grid) => grid,
                Err(why) => {
                    self.unread.push((place, format!("`{}`: {why}", file.shown())));
                    continue;
                }
            };
            let open: Vec<Position> = wanted.par_iter().flat_map_iter(|wanted| wanted.open(&grid)).collect();
            if open.is_empty() {
                continue;
            }
            match tile_of(file, &grid, open, samples) {
                Ok(tile) => wanted.par_iter_mut().for_each(|wanted| ask(wanted, &tile, file)),
                Err(why) => {
                    let spent = why == SPENT;
                    self.unread.push((place, format!("`{}`: {why}", file.shown())));
                    if spent {
                        break;
                    }
                }
            }
        }
    }

    /// The tiles that could not be read: where their folder is named, and why.
    pub fn unread(&self) -> impl Iterator<Item = (Place, &str)> {
        self.unread.iter().map(|(place, why)| (*place, why.as_str()))
    }

    /// Whether a hop finds the same ground here as a hop of another state does there.
    #[must_use]
    pub fn same_for(&self, hops: [&ResolvedHop<'_>; 2], other: &Self) -> bool {
        self.along(hops[0].hop.at) == other.along(hops[1].hop.at)
    }

    pub(super) fn along(&self, hop: DocumentId) -> Option<&TerrainPath> {
        self.paths.iter().find(|(of, _)| *of == hop).map(|(_, path)| path)
    }
}

fn positions(hop: &ResolvedHop<'_>) -> Wanted {
    let Both { a: here, b: there } = hop.ends.each_ref().map(|end| {
        let position = &end.site.position;
        Position { latitude: position.latitude.value, longitude: position.longitude.value }
    });
    let distance = geodesy::inverse(here, there).map_or(0.0, |found| found.distance.0);
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "between 1 and a few thousand")]
    let steps = (distance / STEP.0).ceil().clamp(1.0, MOST_STEPS) as u32;
    let positions = geodesy::along(here, there, steps);
    let gathered = vec![Gathered::default(); positions.len()];
    Wanted { hop: hop.hop.at, positions, gathered, found: TerrainPath::default() }
}

fn ask(wanted: &mut Wanted, tile: &Tile, file: &TileFile) {
    let found = &mut wanted.found;
    let open = wanted.positions.iter().zip(&mut wanted.gathered).filter(|(_, gathered)| !gathered.whole());
    for (position, gathered) in open {
        if tile.share(*position).is_some_and(|share| gathered.take(share)) {
            if found.spacing < tile.grid.spacing() {
                found.spacing = tile.grid.spacing();
            }
            found.used.insert(file.shown());
        }
    }
}

fn grid_of(file: &TileFile) -> Result<Grid, String> {
    if file.tiff {
        geotiff::grid(BufReader::new(file.open()?)).map_err(|error| error.to_string())
    } else {
        Grid::of_hgt(&file.name, file.bytes()?).map_err(|error| error.to_string())
    }
}

fn tile_of(file: &TileFile, grid: &Grid, open: Vec<Position>, samples: &mut usize) -> Result<Tile, String> {
    if file.tiff {
        geotiff::tile(BufReader::new(file.open()?), open, samples).map_err(|error| error.to_string())
    } else {
        *samples = samples.checked_sub(grid.rows * grid.columns).ok_or(SPENT)?;
        Tile::hgt(&file.name, &file.read()?).map_err(|error| error.to_string())
    }
}
