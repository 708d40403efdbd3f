//! What strangers write is shown, and obeyed by nobody: one hostile text put into every source of words, told in every form
//! of the output; then each attack by its name.

use std::fs;
use std::path::Path;

use crate::fixture::program::{Ran, run_in};
use crate::fixture::{Bench, copy};

/// What a terminal obeys, a reader does not see or sees the wrong way round, and what ends a line for some programs.
const UPSETTING: &str = "\u{1b}\u{7}\u{8}\u{7f}\r\u{9b}\u{85}\u{90}\u{202e}\u{2066}\u{2069}\u{61c}\u{200e}\u{2028}\u{2029}\u{200b}\u{200d}\u{2060}\u{feff}\u{e0041}";

/// The hostile text: all of those, and what runners of forges take for commands. The word in it tells that it was shown.
fn hostile() -> String {
    format!(
        "pwned{UPSETTING}[31m\n::error::pwned\n  ::set-output name=a::pwned ##[group]pwned ##vso[task.setvariable]pwned"
    )
}

/// The same as the inside of a double-quoted scalar.
fn quoted() -> String {
    hostile().chars().fold(String::new(), |out, c| match c {
        ' '..='~' => out + &c.to_string(),
        c if u32::from(c) < 0x100 => out + &format!("\\x{:02x}", u32::from(c)),
        c if u32::from(c) < 0x1_0000 => out + &format!("\\u{:04x}", u32::from(c)),
        c => out + &format!("\\U{:08x}", u32::from(c)),
    })
}

/// Every sort of source: the file, the text that gives way, and what comes in its place; `§` stands for the hostile text.
const SOURCES: &[(&str, &str, &str)] = &[
    ("network.yaml", "title: Fellmoor test range", "title: \"§\""),
    ("network.yaml", "owner: Fellmoor Parish", "owner: \"§\""),
    ("network.yaml", "rules: {", "rules: { \"§\": off,"),
    ("network.yaml", "revision: A", "revision: A\nrules_by_path: [{ paths: \"**§\", rules: {} }]"),
    ("network.yaml", "  rain_rate: 22 mm/h", "  rain_map: \"§\""),
    ("network.yaml", "revision: A", "terrain: { folder: \"§\" }\nrevision: A"),
    ("network.yaml", "revision: A", "revision: \"§\""),
    ("sites/mill.yaml", "title: Nevvel Mill", "title: \"§\""),
    ("sites/mill.yaml", "hazards: [", "power_lines: [{ title: \"§\", distance: 1 m }]\nhazards: ["),
    ("sites/mill.yaml", "  - id: loft\n    title: Mill loft, breaker 7", "  - id: \"§\"\n    title: \"§\""),
    ("hops/ridge.yaml", "id: ridge", "id: ridge\ntitle: \"§\""),
    ("hops/ridge.yaml", "id: ridge", "id: \"§\""),
    ("hops/ridge.yaml", "kind: hop", "kind: \"§\""),
    ("hops/ridge.yaml", "  a_to_b: 73.375 GHz", "  \"§\": 73.375 GHz"),
    ("hops/ridge.yaml", "    height: 8 m", "    height: \"8 §\""),
    ("hops/ridge.yaml", "    height: 8 m", "    height: 8 metres # \u{202e}\u{9b}pwned\u{2028}::error::x"),
    ("hops/ridge.yaml", "  polarisation: vertical", "  polarisation: \"§\""),
    ("hops/ridge.yaml", "    site: scar", "    site: \"§\""),
    ("hops/ridge.yaml", "      - port: main", "      - port: \"§\""),
    ("hops/ridge.yaml", "id: ridge", "id: ridge\npath: { csv: \"§\" }"),
    ("hops/ridge.yaml", "id: ridge", "id: ridge\n§"),
    ("hops/ridge.yaml", "    radio: q-80\n    half: low", "    radio: *pwned§\n    half: low"),
    ("equipment/radio.yaml", "title: Quernstone Q-80", "title: \"§\""),
    ("equipment/radio.yaml", "title: QPSK", "title: \"§\""),
    ("equipment/radio.yaml", "threshold: -65 dBm", "threshold: -130 dBm, note: \"§\""),
];

/// A waiver whose every text is hostile.
const WAIVER: &str = "kind: waiver
id: fell
rule: tilt-out-of-reach
target: { hop: ridge, end: b, field: bracket }
departure: concession
reason: \"§\"
compensation: \"§\"
approver: \"§\"
approved_on: 2026-05-01
expires: 2026-09-01
reference: \"§\"
";

/// Holds an output to what it may be: `commands` if its own lines are commands.
fn inert(said: &str, commands: bool, what: &str) {
    for line in said.split('\n') {
        let line = line.strip_suffix('\r').unwrap_or(line);
        for c in UPSETTING.chars().chain('\0'..' ').filter(|c| *c != '\t') {
            assert!(!line.contains(c), "{what}: {c:?} passes in {line:?}");
        }
        assert!(commands || !line.trim_start().starts_with("::"), "{what}: a command: {line}");
        for order in ["##[", "##vso["] {
            assert!(!line.contains(order), "{what}: an order to a runner: {line}");
        }
    }
}

/// Everything the program says of a network, with its old state to compare with; whether the hostile text was ever shown.
fn all_forms(root: &Path, what: &str) -> bool {
    let mut shown = false;
    let mut look = |args: &[&str]| {
        let Ran { out, err, .. } = run_in(root, args);
        let what = format!("{what}: {args:?}");
        inert(&out, args.contains(&"github"), &what);
        inert(&err, false, &what);
        shown |= out.contains("pwned") || err.contains("pwned");
        out
    };
    for form in crate::formats::FORMS {
        let said = look(&["check", "new", "--format", form, "--show-waived", "--include-waived"]);
        if ["json", "sarif", "gitlab"].contains(&form) {
            serde_json::from_str::<serde_json::Value>(&said).unwrap_or_else(|error| panic!("{what}: {form}: {error}"));
        } else if form == "junit" {
            roxmltree::Document::parse(&said).unwrap_or_else(|error| panic!("{what}: {form}: {error}"));
        }
    }
    look(&["check", "new", "-v", "--width", "40"]);
    look(&["check", "new", "--fix", "--diff"]);
    look(&["sheet", "--network", "new", "--sources"]);
    look(&["sheet", "--network", "new", "--format", "json"]);
    look(&["compare", "old", "new", "--all", "--width", "40"]);
    look(&["compare", "old", "new", "--format", "markdown"]);
    look(&["compare", "old", "new", "--format", "json"]);
    look(&["pack", "install", "pwned", "--network", "new"]);
    shown
}

/// The base network twice: as it was, and as a stranger leaves it.
fn folders() -> (tempfile::TempDir, std::path::PathBuf) {
    let root = tempfile::tempdir().expect("a temporary folder");
    let base = crate::fixture::tests_folder().join("rules/base");
    copy(&base, &root.path().join("old"));
    copy(&base, &root.path().join("new"));
    fs::create_dir(root.path().join(".git")).expect("writable");
    let new = root.path().join("new");
    (root, new)
}

#[test]
fn one_hostile_text_from_every_source_in_every_form() {
    let mut unseen = Vec::new();
    for (file, old, new) in SOURCES {
        let (root, network) = folders();
        let path = network.join(file);
        let text = fs::read_to_string(&path).expect("there");
        assert!(text.contains(old), "{file} has no {old}");
        fs::write(&path, text.replacen(old, &new.replace('§', &quoted()), 1)).expect("writable");
        if !all_forms(root.path(), &format!("{file}: {new}")) {
            unseen.push(new);
        }
    }
    // What no output shows proves nothing; texts that only pages print are tried on the pages.
    assert!(unseen.len() <= 4, "never shown: {unseen:#?}");
}

#[test]
fn a_hostile_waiver_in_every_form() {
    let (root, network) = folders();
    let hop = network.join("hops/ridge.yaml");
    let text = fs::read_to_string(&hop).expect("there");
    fs::write(hop, text.replace("orientation: inverted", "orientation: upright")).expect("writable");
    fs::write(network.join("waiver.yaml"), WAIVER.replace('§', &quoted())).expect("writable");
    assert!(all_forms(root.path(), "waiver"));
    let out = run_in(root.path(), &["check", "new", "--show-waived", "--today", "2026-06-01"]).out;
    assert!(out.contains("waived error[tilt-out-of-reach]") && out.contains("pwned"), "{out}");
    inert(&out, false, "waived");
}

#[cfg(unix)]
#[test]
fn a_hostile_file_name_in_every_form() {
    for name in ["::error::pwned \u{1b}[31m\u{202e}##[x].yaml", "a\n::error::pwned\n##vso[x]\u{9b}.yaml"] {
        let (root, network) = folders();
        let text = fs::read_to_string(network.join("hops/ridge.yaml")).expect("there");
        fs::remove_file(network.join("hops/ridge.yaml")).expect("writable");
        fs::write(network.join(name), text.replace("height: 8 m", "height: 8 metres")).expect("writable");
        assert!(all_forms(root.path(), name));
        let folder = root.path().join(format!("new/{name}"));
        fs::remove_file(&folder).expect("writable");
        fs::create_dir(&folder).expect("writable");
        fs::write(folder.join("b.yaml"), text.replace("transmit_power: 10", "transmit_power: 40")).expect("writable");
        assert!(all_forms(root.path(), name), "as a folder");
        let missing = run_in(root.path(), &["check", name]);
        assert_eq!(missing.code, 2);
        inert(&missing.err, false, name);
    }
}

#[test]
fn a_hostile_baseline_is_named_without_harm() {
    let (root, network) = folders();
    let baseline = serde_json::json!({ "format_version": 1, "findings": [{
        "rule": hostile(), "hop": hostile(), "target": hostile(), "fingerprint": "0", "count": 1,
    }] });
    for form in [baseline.to_string(), format!("{{\"{}\": 1}}", quoted().replace('\\', "\\\\"))] {
        fs::write(network.join("known.json"), form).expect("writable");
        for args in [
            &["check", "new", "--baseline", "new/known.json"][..],
            &["baseline", "update", "new/known.json", "new"],
            &["baseline", "prune", "new/known.json", "new"],
        ] {
            let ran = run_in(root.path(), args);
            inert(&ran.out, false, "baseline");
            inert(&ran.err, false, "baseline");
            assert!(ran.err.contains("pwned") || ran.out.contains("pwned"), "{args:?}: {}", ran.err);
        }
    }
}

#[test]
fn a_hostile_argument_is_told_without_harm() {
    let (root, _) = folders();
    let hostile = hostile().replace('\0', "");
    for args in [
        &["check", &hostile][..],
        &["sheet", &hostile, "--network", "new"],
        &["pack", "design", &hostile, "--network", "new"],
        &["compare", &hostile, "--network", "new"],
        &["compare", "--base", &hostile, "--network", "new"],
        &["explain", &hostile],
        &["new", "record", &hostile, "--network", "new"],
        &["check", "--format", &hostile],
        &["check", "new", "--stdin-filename", &hostile],
        &[&hostile],
    ] {
        let ran = run_in(root.path(), args);
        assert_eq!(ran.code, 2, "{args:?}");
        assert!(ran.err.contains("pwned") || ran.err.contains("--stdin-filename"), "{}", ran.err);
        inert(&ran.err, false, &format!("{args:?}"));
    }
}

// The attacks, by name.

#[test]
fn a_title_at_the_start_of_a_line_of_the_sheet_sets_no_output() {
    let bench = Bench::new();
    bench.change("hops/ridge.yaml", "id: ridge", "id: ridge\ntitle: \"a\\n::set-output name=x::y\"");
    let out = run_in(&bench.path(""), &["sheet", "--full"]).out;
    assert!(out.starts_with("fellmoor/ridge: a\\n::set-output name=x::y\n"), "{out}");
}

#[test]
fn a_value_wrapped_by_compare_starts_no_command() {
    let (root, network) = folders();
    let path = network.join("sites/mill.yaml");
    let text = fs::read_to_string(&path).expect("there");
    // Whatever the width, some word of these begins a line.
    let words = "::error::x ##[error]y ".repeat(12);
    let line = format!("power_lines: [{{ title: \"{words}\", distance: 1 m }}]\nhazards: [");
    fs::write(&path, text.replace("hazards: [", &line)).expect("writable");
    for width in ["40", "55", "80"] {
        let out = run_in(root.path(), &["compare", "old", "new", "--all", "--width", width]).out;
        assert!(out.contains("::error::x"), "{out}");
        inert(&out, false, "compare");
    }
}

#[test]
fn colours_are_our_own_alone() {
    let bench = Bench::new();
    bench.change("hops/ridge.yaml", "    height: 8 m", "    height: \"8 \\e[2J\\e[31mpwned\"");
    let out = run_in(&bench.path(""), &["check", "--color", "always"]).out;
    assert!(out.contains("pwned") && out.contains("\u{1b}[31"), "{out}");
    assert!(!out.contains("\u{1b}[2J") && !out.contains("\u{1b}[31mpwned"), "{out:?}");
}

#[test]
fn a_patch_with_hostile_text_says_that_it_is_not_for_applying() {
    let bench = Bench::new();
    bench.change("hops/ridge.yaml", "    height: 8 m", "    height: 8 metres # \u{202e}");
    let ran = run_in(&bench.path(""), &["check", "--fix", "--diff"]);
    assert!(ran.out.contains("+    height: 8 m # \\u{202e}"), "{}", ran.out);
    assert!(ran.err.contains("it is to be read, not applied"), "{}", ran.err);
    bench.change("hops/ridge.yaml", " # \u{202e}", "");
    let ran = run_in(&bench.path(""), &["check", "--fix", "--diff"]);
    assert!(ran.out.contains("+    height: 8 m\n") && ran.err.is_empty(), "{}", ran.err);
}

#[test]
fn machines_get_the_words_as_they_were_written() {
    let bench = Bench::new();
    let line = format!("power_lines: [{{ title: \"{}\", distance: 1 m }}]\nhazards: [", quoted());
    bench.change("sites/mill.yaml", "hazards: [", &line);
    let report = run_in(&bench.path(""), &["check", "--format", "json"]).out;
    assert!(report.is_ascii() || !UPSETTING.chars().any(|c| report.contains(c)));
    let report: serde_json::Value = serde_json::from_str(&report).expect("JSON");
    let told = report["findings"]
        .as_array()
        .expect("a list")
        .iter()
        .any(|finding| finding["message"].as_str().is_some_and(|message| message.contains(&hostile())));
    assert!(told, "{report:#}");
}
