//! Nasty files: each of `tests/nasty/*.yaml` is put beside a small sound network and judged, and what is said about it is
//! the snapshot beside it.
//!
//! Characters that git or an editor would mangle are written between angle brackets: `⟨D⟩` is the character U+000D,
//! `⟨2D 20*100⟩` a hundred times `- `, and `⟨=FC⟩` the byte 0xFC alone. A file whose first line says "In place of
//! network.yaml" stands in for that file of the network.

use std::fs;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

use hopwright::finding::Spot;
use hopwright::finding::rule::Severity;
use hopwright::network::Scope;
use hopwright::output::{self, Base, Look};
use hopwright::verdict::{Evaluation, evaluate};
use serde_json::Value;

use crate::fixture::sarif::Sarif;

/// The sound network: the one that `new` writes, once it is issued.
const BASE: [(&str, &str); 4] = [
    (
        "network.yaml",
        concat!(include_str!("../../src/scaffold/network.yaml"), "\nrevision: A\ncreator: Drawn\napprover: Approved\n"),
    ),
    ("sites.yaml", include_str!("../../src/scaffold/sites.yaml")),
    ("equipment.yaml", include_str!("../../src/scaffold/equipment.yaml")),
    ("workshop-depot.yaml", include_str!("../../src/scaffold/hop.yaml")),
];

const LOOK: Look = Look { width: 80, colour: false, unicode: true };

/// The corpus, by name.
fn corpus() -> Vec<(String, String)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/nasty");
    let paths = fs::read_dir(folder).expect("the corpus").map(|entry| entry.expect("an entry").path());
    let mut files: Vec<PathBuf> = paths.filter(|path| path.extension().is_some_and(|end| end == "yaml")).collect();
    files.sort();
    let name = |path: &Path| path.file_stem().expect("a name").to_string_lossy().into_owned();
    files.iter().map(|path| (name(path), fs::read_to_string(path).expect("UTF-8"))).collect()
}

/// The bytes that the text of a corpus file stands for.
fn bytes(written: &str) -> Vec<u8> {
    let mut out = Vec::new();
    let mut rest = written;
    while let Some((before, code)) = rest.split_once('⟨') {
        out.extend(before.bytes());
        let (code, after) = code.split_once('⟩').expect("a closed bracket");
        rest = after;
        if let Some(byte) = code.strip_prefix('=') {
            out.push(u8::from_str_radix(byte, 16).expect("a byte"));
            continue;
        }
        let (code, count) = code.split_once('*').unwrap_or((code, "1"));
        let number = |hex| char::from_u32(u32::from_str_radix(hex, 16).expect("hexadecimal")).expect("a character");
        let text: String = code.split(' ').map(number).collect();
        out.extend(text.repeat(count.parse().expect("a count")).bytes());
    }
    out.extend(rest.bytes());
    out
}

/// Judges the network with a nasty file in it. Paths are cut to the name of the file.
fn judged(name: &str, written: &str) -> Evaluation<()> {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let instead = written.lines().next().and_then(|line| line.split_once("In place of ")).map(|(_, rest)| rest);
    for (file, text) in BASE {
        if !instead.is_some_and(|instead| instead.starts_with(file)) {
            fs::write(folder.path().join(file), text).expect("writable");
        }
    }
    fs::write(folder.path().join("nasty.yaml"), bytes(written)).expect("writable");
    let started = Instant::now();
    let mut evaluation = evaluate(&Scope::of(&[folder.path().to_path_buf()]), |_, _| ());
    assert!(started.elapsed() < Duration::from_secs(10), "{name} took {:?}", started.elapsed());

    let prefix = format!("{}/", folder.path().display());
    for file in &mut std::sync::Arc::get_mut(&mut evaluation.files).expect("nobody else has them").list {
        file.path = file.path.replace(&prefix, "");
    }
    for finding in &mut evaluation.findings {
        finding.message = finding.message.replace(&prefix, "");
        for label in &mut finding.labels {
            if let Spot::Path(path) = &mut label.spot {
                *path = path.replace(&prefix, "");
            }
        }
    }
    evaluation
}

#[test]
fn what_is_said_about_nasty_files() {
    for (name, written) in corpus() {
        let evaluation = judged(&name, &written);
        let full = output::full(&evaluation, LOOK);
        let control = full.chars().find(|c| c.is_control() && !matches!(c, '\n' | '\r'));
        assert_eq!(control, None, "a control character in what is said about {name}");
        let text = format!("{full}{}\n", output::summary(&evaluation));
        insta::with_settings!({ snapshot_path => "../nasty", prepend_module_to_snapshot => false, omit_expression => true }, {
            insta::assert_snapshot!(name, text);
        });
    }
}

#[test]
fn every_form_keeps_to_its_format_whatever_a_file_holds() {
    let schema = fs::read_to_string("schema/report.json").expect("readable");
    let schema: Value = serde_json::from_str(&schema).expect("JSON");
    let report = jsonschema::draft202012::new(&schema).expect("a schema");
    let (sarif, base) = (Sarif::new(), Base::here());
    for (name, written) in corpus() {
        let evaluation = judged(&name, &written);
        let json =
            |text: &str| -> Value { serde_json::from_str(text).unwrap_or_else(|error| panic!("{name}: {error}")) };
        let errors: Vec<String> =
            report.iter_errors(&json(&output::json(&evaluation))).map(|error| error.to_string()).collect();
        assert_eq!(errors, [""; 0], "{name}");
        sarif.sound(&json(&output::sarif(&evaluation, &base, true)), |uri| {
            let file = evaluation.files.list.iter().find(|file| file.origin.file_name() == Path::new(uri).file_name());
            file.unwrap_or_else(|| panic!("{name}: no file {uri}")).text.clone()
        });
        assert_eq!(json(&output::gitlab(&evaluation, &base)).as_array().map(Vec::len), Some(evaluation.findings.len()));
        let junit = output::junit(&evaluation, &base, Severity::Error, true);
        assert!(roxmltree::Document::parse(&junit).is_ok(), "{name}: {junit}");
        let github = output::github(&evaluation, &base);
        assert!(github.lines().count() <= evaluation.findings.len() + 1, "{name}: a line each at most");
        assert!(github.split('\n').all(|line| line.is_empty() || line.starts_with("::")), "{name}: {github}");
        for text in
            [output::narrated(&evaluation, &base), output::markdown(&evaluation, &base), output::concise(&evaluation)]
        {
            assert!(!text.chars().any(|c| c.is_control() && c != '\n'), "{name}: {text:?}");
        }
    }
}
