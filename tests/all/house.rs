//! Rules for ourselves: what is generated is current, examples are what they say, modules know only what they may.

mod circles;

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use crate::fixture::{files_below, files_with};
use hopwright::finding::rule::Bound;
use hopwright::output::report_schema;
use hopwright::rules::{ALL, every};
use hopwright::source::{parse, to_value};
use hopwright::spec::{Kind, schema_text};
use serde_json::Value;

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// The files below a folder of the repository, by path.
fn files(folder: &str) -> Vec<PathBuf> {
    files_below(&root().join(folder))
}

fn with_extension(folder: &str, extension: &str) -> Vec<PathBuf> {
    files_with(&root().join(folder), extension)
}

fn read(path: &Path) -> String {
    fs::read_to_string(path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

/// A path as it is talked about.
fn short(path: &Path) -> String {
    path.strip_prefix(root()).unwrap_or(path).display().to_string()
}

#[test]
fn the_schemas_are_what_the_program_writes() {
    for kind in Kind::ALL {
        let path = root().join("schema").join(format!("{kind}.json"));
        assert_eq!(read(&path), schema_text(kind), "{}: run `cargo run -- schema`", short(&path));
    }
    let path = root().join("schema/report.json");
    assert_eq!(read(&path), report_schema(), "{}: run `cargo run -- schema`", short(&path));
    let path = root().join("schema/comparison.json");
    assert_eq!(read(&path), hopwright::compare::comparison_schema(), "{}: run `cargo run -- schema`", short(&path));
    assert_eq!(files("schema").len(), Kind::ALL.len() + 2);
}

/// Every YAML file that people or tests start from.
fn networks() -> Vec<PathBuf> {
    ["examples", "tests/rules/base", "tests/alternatives"].map(|folder| with_extension(folder, "yaml")).concat()
}

#[test]
fn every_document_names_its_schema() {
    for path in networks() {
        let text = read(&path);
        let documents: Vec<&str> = text.split("\n---\n").collect();
        for document in documents {
            let kind = document.lines().find_map(|line| line.strip_prefix("kind: ")).expect("a kind");
            let line = document.lines().find_map(|line| line.strip_prefix("# yaml-language-server: $schema="));
            let line = line.unwrap_or_else(|| panic!("{}: a {kind} without its schema", short(&path)));
            let schema = path.parent().expect("in a folder").join(line);
            let ours = root().join("schema").join(format!("{kind}.json"));
            let same = fs::canonicalize(&schema).ok() == fs::canonicalize(&ours).ok();
            assert!(ours.is_file() && same, "{}: {line} is not the schema of a {kind}", short(&path));
        }
    }
}

/// What the schema of its kind says of each document of a file.
fn complaints(path: &Path) -> Vec<String> {
    let parsed = parse(&read(path));
    let mut said: Vec<String> = parsed.faults.iter().map(|fault| fault.message.clone()).collect();
    for document in &parsed.documents {
        let value = serde_json::to_value(to_value(document, document.root())).expect("plain values");
        let schema: Value = serde_json::from_str(&read(
            &root().join(format!("schema/{}.json", value["kind"].as_str().expect("a kind"))),
        ))
        .expect("JSON");
        let validator = jsonschema::validator_for(&schema).expect("a schema");
        said.extend(validator.iter_errors(&value).map(|error| format!("{}: {error}", error.instance_path())));
    }
    said
}

#[test]
fn every_example_fits_its_schema() {
    let faulty = root().join("examples/faulty/hops/spec.yaml");
    for path in networks().into_iter().filter(|path| *path != faulty) {
        assert_eq!(complaints(&path), [""; 0], "{}", short(&path));
    }
    let said = complaints(&faulty).join("\n");
    // What may come from a template is missing only when all is known.
    for word in ["lenght", "duplicate key", "9 GHz"] {
        assert!(said.contains(word), "{word} is not in: {said}");
    }
}

#[test]
fn rules_are_named_in_kebab_case_and_once() {
    let mut names = BTreeSet::new();
    for rule in every() {
        let word = |part: &str| {
            !part.is_empty() && part.bytes().all(|byte| byte.is_ascii_lowercase() || byte.is_ascii_digit())
        };
        assert!(rule.name.split('-').all(word), "{}", rule.name);
        assert!(names.insert(rule.name), "{} twice", rule.name);
    }
}

#[test]
fn every_rule_file_is_listed() {
    let rules = root().join("src/rules");
    let written: BTreeSet<String> = with_extension("src/rules", "rs")
        .iter()
        .filter(|path| path.parent() != Some(&rules))
        .map(|path| path.file_stem().expect("a name").to_string_lossy().replace('_', "-"))
        .collect();
    let listed: BTreeSet<String> = ALL.iter().map(|entry| entry.rule.name.to_owned()).collect();
    assert_eq!(written, listed);
}

#[test]
fn manuals_open_with_a_sentence_and_say_where_a_rule_comes_from() {
    for rule in every() {
        let mut lines = rule.manual.lines().map(str::trim);
        let first = lines.next().expect("a first line");
        let inside = first.strip_suffix('.').unwrap_or_else(|| panic!("{}: no full stop: {first}", rule.name));
        assert!(!inside.contains(". "), "{}: more than one sentence: {first}", rule.name);
        assert!(first.starts_with(|c: char| c.is_uppercase()), "{}: {first}", rule.name);
        assert!(lines.next().is_none_or(str::is_empty), "{}: the first sentence stands alone", rule.name);
    }
    for entry in ALL {
        let manual = entry.rule.manual;
        let said = manual.lines().any(|line| line.trim().starts_with("Source"));
        assert!(said || manual.contains("common practice"), "{}: no source", entry.rule.name);
    }
}

/// What each module may use of the others, from the bottom up. `cli` may use them all.
const MAY_USE: &[(&str, &[&str])] = &[
    ("units", &[]),
    ("text", &[]),
    ("place", &[]),
    ("door", &[]),
    ("drawing", &["text"]),
    ("physics", &["units"]),
    ("spec", &["units"]),
    ("standard", &["spec"]),
    ("source", &["door", "place", "text"]),
    ("finding", &["place", "spec", "units"]),
    ("shape", &["finding", "place", "source", "spec", "text", "units"]),
    ("network", &["door", "finding", "place", "shape", "source", "spec", "standard", "text", "units"]),
    ("air", &["network", "physics", "place", "spec", "units"]),
    ("sheet", &["air", "finding", "network", "physics", "place", "spec", "units"]),
    ("rules", &["finding", "network", "place", "sheet", "source", "spec", "text", "units"]),
    ("plan", &["air", "drawing", "finding", "network", "physics", "place", "spec", "text", "units"]),
    ("verdict", &["air", "finding", "network", "place", "rules", "sheet", "spec", "text", "units"]),
    ("voice", &["sheet", "spec", "units"]),
    ("figure", &["drawing", "sheet", "spec", "units", "voice"]),
    ("output", &["door", "finding", "network", "place", "rules", "source", "spec", "text", "verdict"]),
    ("compare", &["finding", "network", "place", "rules", "sheet", "source", "spec", "text", "units", "verdict"]),
    (
        "alternatives",
        &[
            "air", "compare", "finding", "fix", "network", "place", "plan", "sheet", "spec", "standard", "text",
            "units", "verdict",
        ],
    ),
    ("fix", &["finding", "network", "place", "source", "verdict"]),
    ("listing", &["finding", "network", "place", "sheet", "source", "spec", "text"]),
    (
        "exchange",
        &[
            "door", "finding", "fix", "listing", "network", "pack", "physics", "place", "sheet", "source", "spec",
            "text", "units", "verdict", "voice",
        ],
    ),
    (
        "pack",
        &[
            "door", "drawing", "figure", "finding", "listing", "network", "place", "rules", "sheet", "source", "spec",
            "units", "verdict", "voice",
        ],
    ),
];

/// The modules that code names after `crate::`, comments and macros aside.
fn used(text: &str) -> BTreeSet<String> {
    let code = text.lines().filter(|line| !line.trim_start().starts_with("//"));
    let names = code.flat_map(|line| {
        line.match_indices("crate::").filter(|(at, _)| !line[..*at].ends_with('$')).map(|(at, word)| {
            let rest = &line[at + word.len()..];
            rest[..rest.find(|c: char| !c.is_alphanumeric() && c != '_').unwrap_or(rest.len())].to_owned()
        })
    });
    // The macros live at the root of the crate.
    names.filter(|name| !["at", "rule"].contains(&name.as_str())).collect()
}

#[test]
fn modules_know_only_what_they_may() {
    for path in with_extension("src", "rs") {
        let inside = path.strip_prefix(root().join("src")).expect("below src");
        let module = inside.iter().next().expect("a name").to_string_lossy().replace(".rs", "");
        if ["cli", "lib", "main"].contains(&module.as_str()) {
            continue;
        }
        let row = MAY_USE.iter().find(|(name, _)| *name == module);
        let (_, may) = row.unwrap_or_else(|| panic!("{module} has no row in MAY_USE"));
        for name in used(&read(&path)) {
            assert!(name == module || may.contains(&name.as_str()), "{}: {module} must not use {name}", short(&path));
        }
    }
}

/// What opens, lists or asks after a file, or runs a program.
const OPENS: [&str; 14] = [
    "std::fs",
    "fs::",
    "File::",
    "OpenOptions",
    "read_dir",
    "Command::new",
    "std::process::Command",
    "include_dir",
    "WalkDir",
    ".canonicalize(",
    ".exists(",
    ".is_file(",
    ".is_dir(",
    ".metadata(",
];

#[test]
fn only_the_door_opens_files() {
    let door = root().join("src/door");
    for path in with_extension("src", "rs").iter().filter(|path| !path.starts_with(&door)) {
        let text = read(path);
        let code = text.lines().filter(|line| !line.trim_start().starts_with("//"));
        for (line, word) in code.flat_map(|line| OPENS.iter().map(move |word| (line, *word))) {
            let ours = line.contains("SourceFile::") || line.contains("ProfileFile::") || line.contains("TileFile::");
            // A directory of a TIFF is none of a disk.
            let ours = ours || line.contains("decoder.read_directory");
            assert!(ours || !line.contains(word), "{}: {word} in {line}", short(path));
        }
    }
}

#[test]
fn the_program_speaks_in_one_place() {
    let ways = ["println!", "print!(", "eprint!(", "dbg!", "stdout()", "stderr()", "io::stdout", "io::stderr"];
    // A file that `--output` names may be the stdout of the program: `write.rs` takes it for what it is.
    let may = |path: &PathBuf| path.ends_with("cli/say.rs") || path.ends_with("door/write.rs");
    for path in with_extension("src", "rs").into_iter().filter(|path| !may(path)) {
        let text = read(&path);
        for (number, line) in text.lines().enumerate().filter(|(_, line)| !line.trim_start().starts_with("//")) {
            let way = ways.iter().find(|way| line.contains(*way) && !line.contains("error.use_stderr()"));
            assert!(way.is_none(), "{}:{}: {way:?} passes by `cli/say.rs`", short(&path), number + 1);
        }
    }
}

#[test]
fn no_file_knows_this_machine() {
    let here = root().display().to_string();
    let texts = ["rs", "snap", "edit", "yaml", "json", "csv", "typ"];
    for path in ["src", "tests", "examples", "schema"].iter().flat_map(|folder| files(folder)) {
        if path.extension().is_some_and(|extension| texts.iter().any(|text| extension == *text)) {
            let text = read(&path);
            for word in [here.as_str(), concat!("/", "tmp/"), concat!("/", "home/"), concat!("/", "root/")] {
                assert!(!text.contains(word), "{}: {word}", short(&path));
            }
        }
    }
}

#[test]
fn every_method_says_where_it_comes_from_and_how_far_it_was_off() {
    let text = read(&root().join("DEVELOPERS.md"));
    let table = text.split("## Where the numbers come from").nth(1).expect("the table of methods");
    let rows = table.lines().filter(|line| line.starts_with("| ")).map(|line| line.split(" | ").collect::<Vec<_>>());
    let named: String = rows.filter(|cells| cells.len() == 6).map(|cells| cells[1].to_owned()).collect();
    for file in with_extension("src/physics", "rs") {
        let name = format!("`{}`", file.file_stem().expect("a name").to_string_lossy());
        assert!(name == "`mod`" || named.contains(&name), "{} is in no row of the table of methods", short(&file));
    }
}

#[test]
fn how_far_each_rule_may_be_silenced_stands_in_one_table() {
    let text = read(&root().join("DEVELOPERS.md"));
    let table = text.split("## What may be silenced").nth(1).expect("the table");
    for rule in every() {
        let (how, why) = match rule.bound {
            Bound::Waivable(why) => ("waivable", why),
            Bound::NeverOff(why) => ("never off", why),
            Bound::NeverWaived(why) => ("never waived", why),
        };
        let start = format!("| {how} | {why} |");
        let row = table.lines().find(|line| line.starts_with(&start)).unwrap_or_else(|| panic!("no row {start}"));
        assert!(row.contains(&format!("`{}`", rule.name)), "{} is not in the row: {start}", rule.name);
        assert_eq!(table.matches(&format!("`{}`", rule.name)).count(), 1, "{} stands once", rule.name);
    }
}
