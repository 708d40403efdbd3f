//! Broken input of every sort: nothing panics, and every finding points into its file.

use std::fs;
use std::path::{Path, PathBuf};

use crate::fixture::copy;
use hopwright::door::Folder;
use hopwright::network::Scope;
use hopwright::output::{self, Look};
use hopwright::source::PassedOver;
use hopwright::verdict::evaluate;
use tempfile::TempDir;

/// A small generator of numbers that are the same on every machine: a 64-bit LCG by Knuth.
struct Numbers(u64);

impl Numbers {
    fn below(&mut self, limit: usize) -> usize {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        usize::try_from(self.0 >> 33).expect("31 bits") % limit
    }
}

/// Bytes that mean something to YAML or to us.
const TELLING: &[u8] = b"\n\t :-[]{},&*#!|>'\"%@`0aA.~\r\0\xc2\xff\xef";

fn cut(text: &[u8], numbers: &mut Numbers) -> Vec<u8> {
    text[..numbers.below(text.len())].to_vec()
}

fn stain(text: &[u8], numbers: &mut Numbers) -> Vec<u8> {
    let mut bytes = text.to_vec();
    for _ in 0..=numbers.below(3) {
        let (at, byte) = (numbers.below(bytes.len()), TELLING[numbers.below(TELLING.len())]);
        if numbers.below(2) == 0 { bytes[at] = byte } else { bytes.insert(at, byte) }
    }
    bytes
}

/// Takes a line out, doubles it, or moves it to another place.
fn shuffle(text: &[u8], numbers: &mut Numbers) -> Vec<u8> {
    let mut lines: Vec<&[u8]> = text.split_inclusive(|byte| *byte == b'\n').collect();
    let from = numbers.below(lines.len());
    let line = if numbers.below(3) == 0 { lines[from] } else { lines.remove(from) };
    if numbers.below(3) > 0 {
        lines.insert(numbers.below(lines.len() + 1), line);
    }
    lines.concat()
}

fn network(from: &str) -> (TempDir, Vec<PathBuf>) {
    let folder = tempfile::tempdir().expect("a folder");
    fs::create_dir(folder.path().join(".git")).expect("writable");
    copy(Path::new(from), folder.path());
    let mut files =
        hopwright::source::discover(&Folder::around(folder.path()), folder.path(), &PassedOver::default(), 1000).files;
    files.sort();
    (folder, files)
}

/// Judges the network and looks at every finding as every output would.
fn judge(folder: &Path, what: &str) {
    let evaluation = evaluate(&Scope::of(&[folder.to_path_buf()]), |_, _| ());
    for finding in &evaluation.findings {
        for label in &finding.labels {
            let Some(found) = evaluation.files.locate(&label.spot) else { continue };
            let text = &evaluation.files.get(found.file).expect("a file that was read").text;
            let inside = found.span.start <= found.span.end && text.get(found.span.clone()).is_some();
            assert!(inside, "{what}: {} points at {:?} of {} bytes", finding.message, found.span, text.len());
        }
        assert!(!finding.message.is_empty() && !finding.labels.is_empty(), "{what}");
    }
    let look = Look { width: 80, colour: false, unicode: true };
    let _ = (output::full(&evaluation, look), output::concise(&evaluation), output::json(&evaluation));
}

#[test]
fn no_damage_to_a_file_makes_us_panic() {
    let mut numbers = Numbers(20_260_518);
    for (from, rounds) in [("tests/rules/base", 240), ("examples/saltmere", 60), ("examples/faulty", 60)] {
        let (folder, files) = network(from);
        damage(folder.path(), &files, rounds, &mut numbers);
    }
}

fn damage(folder: &Path, files: &[PathBuf], rounds: usize, numbers: &mut Numbers) {
    for round in 0..rounds {
        let path = &files[numbers.below(files.len())];
        let sound = fs::read(path).expect("readable");
        let damaged = match round % 3 {
            0 => cut(&sound, numbers),
            1 => stain(&sound, numbers),
            _ => shuffle(&sound, numbers),
        };
        fs::write(path, damaged).expect("writable");
        judge(folder, &format!("round {round}, {}", path.file_name().expect("a name").display()));
        fs::write(path, sound).expect("writable");
    }
}

#[test]
fn no_extreme_value_makes_us_panic() {
    let (folder, files) = network("tests/rules/base");
    let hop = files.iter().find(|path| path.ends_with("ridge.yaml")).expect("there");
    let sound = fs::read_to_string(hop).expect("readable");
    let mend = |from: &str, to: &str| {
        assert_eq!(sound.matches(from).count(), 1, "{from}");
        fs::write(hop, sound.replace(from, to)).expect("writable");
        judge(folder.path(), to);
    };
    for metres in ["0 m", "-1000 m", "1000000 m", "1e-300 m", "1e300 m", "nan m", ".inf m"] {
        mend("outdoor: 25 m", &format!("outdoor: {metres}"));
        mend("height: 8 m", &format!("height: {metres}"));
    }
    for frequency in ["1 GHz", "1000 GHz", "0 GHz", "60.5 GHz"] {
        mend("a_to_b: 73.375 GHz", &format!("a_to_b: {frequency}"));
    }
    for bandwidth in ["0.1 MHz", "20000 MHz"] {
        mend("bandwidth: 500 MHz", &format!("bandwidth: {bandwidth}"));
    }
    mend("runs:\n      - port: fast", "runs: []\n    notes:\n      - port: fast");
    // Both ends in one place.
    mend("site: mill", "site: scar");
    fs::write(hop, &sound).expect("writable");
    let site = files.iter().find(|path| path.ends_with("scar.yaml")).expect("there");
    let there = fs::read_to_string(site).expect("readable");
    for (latitude, longitude) in [("54.320000", "-32.170000"), ("90", "0"), ("-54.32", "147.83"), ("-90", "180")] {
        let moved = there.replace("54.300000 deg", &format!("{latitude} deg"));
        fs::write(site, moved.replace("-32.200000 deg", &format!("{longitude} deg"))).expect("writable");
        judge(folder.path(), latitude);
    }
}
