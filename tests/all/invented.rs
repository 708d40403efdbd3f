//! Our own data: every position we ship lies in the open ocean, and the common scale of a voltmeter is no one's radio.

use std::fs;
use std::path::{Path, PathBuf};

use crate::fixture::files_with;
use hopwright::units::{Latitude, Longitude, Quantity, read};

/// South, north, west and east of waters without land or island, in degrees.
const OCEAN: [[f64; 4]; 3] = [
    // North Pacific, between the Kurils and the Aleutians and well south of both.
    [45.0, 49.0, 160.0, 178.0],
    // North Atlantic, west of Ireland and south-east of Greenland.
    [45.0, 57.0, -38.0, -25.0],
    // The Atlantic between Bermuda and the Azores.
    [30.0, 36.0, -50.0, -40.0],
];

fn documents(folders: &[&str]) -> Vec<(PathBuf, String)> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let paths = folders.iter().flat_map(|folder| files_with(&root.join(folder), "yaml"));
    paths.map(|path| (path.clone(), fs::read_to_string(path).expect("text"))).collect()
}

/// The values of a key, one a line.
fn values<'a>(text: &'a str, key: &str) -> Vec<&'a str> {
    text.lines().filter_map(|line| line.trim().strip_prefix(key)?.strip_prefix(": ")).collect()
}

#[test]
fn every_position_lies_in_the_open_ocean() {
    let mut seen = 0;
    for (path, text) in documents(&["examples", "src/scaffold", "tests/rules/base", "tests/alternatives"]) {
        let [latitudes, longitudes] = ["latitude", "longitude"].map(|key| values(&text, key));
        assert_eq!(latitudes.len(), longitudes.len(), "{}", path.display());
        for (latitude, longitude) in latitudes.into_iter().zip(longitudes) {
            let (north, east) = (read(Latitude::KIND, latitude), read(Longitude::KIND, longitude));
            let (north, east) = (north.expect("a latitude"), east.expect("a longitude"));
            let at_sea = OCEAN
                .iter()
                .any(|[south, limit, west, rim]| (*south..=*limit).contains(&north) && (*west..=*rim).contains(&east));
            assert!(at_sea, "{}: {latitude}, {longitude} is not known to be sea", path.display());
            seen += 1;
        }
    }
    assert!(seen > 15, "{seen} positions are not all of them");
}

/// The scale on which a hundredth of a volt is a decibel, whichever points of it are named: its table is
/// `tests/tables/voltmeter.csv`.
#[test]
fn no_radio_of_an_example_reads_on_the_common_scale() {
    let mut seen = 0;
    for (path, text) in documents(&["examples", "src/scaffold"]) {
        for line in
            values(&text, "low").into_iter().chain(values(&text, "high")).filter(|line| line.contains("voltage"))
        {
            let number = |key: &str| -> f64 {
                let after = line.split(&format!("{key}: ")).nth(1).expect("the key");
                let mut words = after.split([' ', ',', '}']);
                let value: f64 = words.next().and_then(|word| word.parse().ok()).expect("a number");
                if words.next() == Some("mV") { value / 1000.0 } else { value }
            };
            let apart = number("voltage") + number("level") / 100.0;
            assert!(apart.abs() > 0.005, "{}: {line}", path.display());
            seen += 1;
        }
    }
    assert!(seen >= 8, "{seen} points are not those of all radios");
}
