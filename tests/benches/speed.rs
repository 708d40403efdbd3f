//! How fast: `cargo bench`. Figures are for comparing two states of the program on one machine, and gate nothing.

mod synthetic;

use std::path::PathBuf;

use divan::Bencher;
use hopwright::finding::Findings;
use hopwright::network::{self, Scope, Trees};
use hopwright::pack::{HopPacks, Pack, on_presses};
use hopwright::physics::gas::Spectrum;
use hopwright::physics::geodesy::{self, Position};
use hopwright::physics::rain::Polarisation;
use hopwright::physics::rain_outage::RainFade;
use hopwright::physics::{atmosphere, free_space, off_axis};
use hopwright::sheet::{Hearing, HopSheet, RainMaps, Terrains};
use hopwright::spec::EndName;
use hopwright::units::{Decibels, Degrees, Gigahertz, Latitude, Longitude, Metres, MillimetresPerHour};
use hopwright::verdict::evaluate;
use hopwright::voice::Voice;
use synthetic::Plan;
use tempfile::TempDir;

fn main() {
    divan::main();
}

fn folder(hops: usize, faults: bool) -> TempDir {
    let folder = tempfile::tempdir().expect("a temporary folder");
    synthetic::write(folder.path(), Plan { hops, seed: 7, faults, points: 0 }).expect("a written network");
    folder
}

fn scope(folder: &TempDir) -> Scope {
    Scope::of(&[PathBuf::from(folder.path())])
}

/// Geometry, gas at both frequencies, rain both ways and its inverse: the physics of one hop.
#[divan::bench]
fn physics_of_a_hop(bencher: Bencher) {
    let here = Position { latitude: Latitude(47.11), longitude: Longitude(173.10) };
    let there = Position { latitude: Latitude(47.12), longitude: Longitude(173.13) };
    bencher.bench(|| {
        let geodesic = geodesy::inverse(here, there).expect("two places");
        let slant = off_axis::slant(here, Metres(1031.4), there, Metres(2235.5));
        let tilt = geodesy::elevation(geodesic.distance, Metres(1031.4), Metres(2235.5), geodesy::MEDIAN_K);
        let air = atmosphere::reference(Metres(1633.0)).expect("in the troposphere");
        let gas = Spectrum::of(&air);
        [Gigahertz(71.875), Gigahertz(81.875)].map(|f| {
            let loss = free_space::loss(f, slant) + gas.specific_attenuation(f) * slant;
            let rain = RainFade::new(f, Polarisation::Vertical, Degrees(tilt.0), slant, MillimetresPerHour(34.0));
            (loss, rain.expect("in range").outage(Decibels(36.0)))
        })
    });
}

/// The whole sheet of a hop, judged by every rule.
#[divan::bench]
fn sheet_and_rules_of_a_hop(bencher: Bencher) {
    let folder = folder(1, false);
    let loaded = network::load(&scope(&folder));
    let library = loaded.libraries.first().expect("a network");
    let resolved = network::resolve(library, &mut Findings::default());
    let company = network::Company::of(&resolved);
    let hearing = Hearing::of(&resolved, &library.neighbours.documents);
    bencher.bench(|| {
        let with = company.among(&resolved);
        let sheet = HopSheet::compute(&resolved[0], &RainMaps::default(), &Terrains::default(), &hearing, with);
        let mut found = Findings::default();
        hopwright::rules::judge(&sheet, &library.holes, &mut found);
        (sheet.service.availability.get(), found.list.len())
    });
}

/// Files to findings for ten thousand hops of about a hundred lines.
#[divan::bench(sample_count = 5, sample_size = 1)]
fn ten_thousand_hops(bencher: Bencher) {
    let folder = folder(10_000, false);
    bencher.bench(|| evaluate(&scope(&folder), |_, _| ()).findings.len());
}

/// The same with one hop in fifty broken.
#[divan::bench(sample_count = 5, sample_size = 1)]
fn ten_thousand_hops_some_broken(bencher: Bencher) {
    let folder = folder(10_000, true);
    bencher.bench(|| evaluate(&scope(&folder), |_, _| ()).findings.len());
}

/// Five thousand hops with a profile of two hundred points each.
#[divan::bench(sample_count = 5, sample_size = 1)]
fn five_thousand_profiles(bencher: Bencher) {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let plan = Plan { hops: 5000, seed: 7, faults: false, points: 200 };
    synthetic::write(folder.path(), plan).expect("a written network");
    bencher.bench(|| evaluate(&scope(&folder), |_, _| ()).findings.len());
}

/// One hop of 100 km with a profile point a metre, drawing included.
#[divan::bench(sample_count = 5, sample_size = 1)]
fn hundred_kilometres_by_the_metre(bencher: Bencher) {
    let folder = tempfile::tempdir().expect("a temporary folder");
    synthetic::write_long(folder.path()).expect("a written network");
    bencher.bench(|| {
        evaluate(&scope(&folder), |sheet, _| hopwright::figure::of(sheet, Voice::PLAIN).map(|it| it.svg.len())).hops
    });
}

/// A hundred install packs of the shipped example, on the presses the command uses.
#[divan::bench(sample_count = 3, sample_size = 1)]
fn hundred_install_packs(bencher: Bencher) {
    let network = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("examples/varneck");
    let evaluation = evaluate(&Scope::of(&[network]), HopPacks::of);
    let trees = Trees::of(&evaluation.files);
    let ends = || evaluation.hops.iter().flat_map(|hop| EndName::BOTH.map(|end| (hop, end)));
    let jobs: Vec<_> = ends().cycle().take(100).collect();
    bencher.bench(|| {
        let packs = on_presses(&jobs, |press, (hop, end)| {
            hop.set(press, Pack::Install(*end), false, &trees).expect("a pack").len()
        });
        packs.expect("presses").len()
    });
}
