//! Inputs made to take for ever: each is under the limits, each is judged, and a limit that stops work is a finding.
//!
//! Work is counted where it can be. Where only the clock tells, the bound is a hundred times what is needed, and what it
//! guards against took longer still.

use std::fmt::Write as _;
use std::fs;
use std::path::Path;
use std::time::{Duration, Instant};

use crate::fixture::Bench;
use crate::fixture::program::{Ran, finish, program, run_in};

/// More than any machine that is busy with other tests needs, less than any of the attacks took.
const PATIENCE: Duration = Duration::from_mins(1);

fn in_time(folder: &Path, args: &[&str]) -> Ran {
    let start = Instant::now();
    let ran = run_in(folder, args);
    assert!(start.elapsed() < PATIENCE, "{args:?}: {:?}", start.elapsed());
    ran
}

fn count(ran: &Ran, word: &str) -> usize {
    ran.out.matches(word).count()
}

#[test]
fn a_pattern_of_many_stars() {
    let bench = Bench::new();
    let pattern = format!("{}b/*.yaml", "*a".repeat(100));
    let rules =
        format!("revision: A\nrules_by_path: [{{ paths: \"{pattern}\", rules: {{ tilt-out-of-reach: off }} }}]");
    bench.change("network.yaml", "revision: A", &rules);
    bench.change("hops/ridge.yaml", "orientation: inverted", "orientation: upright");
    let folder = "a".repeat(200);
    fs::create_dir(bench.path(&folder)).expect("writable");
    fs::rename(bench.path("hops/ridge.yaml"), bench.path(&folder).join("ridge.yaml")).expect("writable");
    let ran = in_time(&bench.path(""), &["check", "--format", "concise"]);
    assert!(ran.out.contains("error[tilt-out-of-reach]"), "{}", ran.out);
}

#[test]
fn more_patterns_and_unknown_rules_than_anybody_writes() {
    let bench = Bench::new();
    let names: String = (0..5000).fold(String::new(), |names, i| names + &format!("tilt-out-of-reech-{i}: off, "));
    bench.change("network.yaml", "rules: {", &format!("rules: {{ {names}"));
    let mut rules = String::from("revision: A\nrules_by_path:\n");
    (0..1000).for_each(|i| writeln!(rules, "  - {{ paths: \"hops/{i}*.yaml\", rules: {{}} }}").expect("written"));
    bench.change("network.yaml", "revision: A", &rules);
    let ran = in_time(&bench.path(""), &["check", "--format", "concise"]);
    assert_eq!(count(&ran, "the last 800 are not gone by"), 1, "{}", ran.out);
    assert_eq!((count(&ran, "there is no rule"), count(&ran, "4950 more names under `rules` are no rules")), (50, 1));
}

#[test]
fn a_flood_of_documents_that_are_none() {
    let bench = Bench::new();
    fs::write(bench.path("flood.yaml"), "---\na\n".repeat(100_000)).expect("writable");
    for form in crate::formats::FORMS {
        let ran = in_time(&bench.path(""), &["check", "--format", form]);
        assert_eq!(ran.code, 1, "{form}");
        assert!(ran.out.len() < 3_000_000, "{form}: {} bytes", ran.out.len());
    }
    let ran = run_in(&bench.path(""), &["check", "--format", "concise"]);
    assert_eq!(count(&ran, "flood.yaml:"), 1001, "a thousand, and that there are more");
    assert_eq!(count(&ran, "error[input-too-large]"), 1, "{}", &ran.out[ran.out.len() - 300..]);
}

#[test]
fn of_a_flood_the_first_are_drawn_and_the_rest_counted() {
    let bench = Bench::new();
    fs::write(bench.path("flood.yaml"), "---\nkind: x\n".repeat(500)).expect("writable");
    let ran = in_time(&bench.path(""), &["check"]);
    assert_eq!(count(&ran, "flood.yaml:"), 100, "one snippet each");
    assert!(ran.out.contains("\n400 more are not drawn; `--format concise` lists all, `--statistics` counts them\n"));
    assert_eq!(run_in(&bench.path(""), &["check", "--format", "concise"]).out.lines().count(), 500);
}

#[test]
fn a_long_line_of_faults() {
    let bench = Bench::new();
    let items: String = (0..20_000).fold(String::new(), |items, i| items + &format!("k{i}: 1 xx, "));
    fs::write(bench.path("line.yaml"), format!("{{kind: site, id: line, {items}}}\n")).expect("writable");
    for form in ["full", "concise", "narrated", "json", "sarif"] {
        let ran = in_time(&bench.path(""), &["check", "--format", form]);
        assert_eq!(ran.code, 1, "{form}");
        assert!(ran.out.len() < 3_000_000, "{form}: {} bytes", ran.out.len());
    }
}

#[test]
fn many_references_that_lead_nowhere_among_many_ids() {
    let bench = Bench::new();
    let site = fs::read_to_string(bench.path("sites/mill.yaml")).expect("readable");
    let record = "kind: record\nid: r§\nhop: ridgee-§\nend: a\ndate: 2026-05-01\nworkers: [A. Tester]\n";
    for block in 0..10 {
        let (mut sites, mut records) = (String::new(), String::new());
        for i in 0..300 {
            let number = block * 300 + i;
            let _ = write!(sites, "---\n{}", site.replace("id: mill", &format!("id: mill-{number:05}-of-a-long-name")));
            let _ = write!(records, "---\n{}", record.replace('§', &format!("{number:05}-of-a-long-name")));
        }
        fs::write(bench.path(&format!("sites/{block}.yaml")), sites).expect("writable");
        fs::write(bench.path(&format!("records-{block}.yaml")), records).expect("writable");
    }
    bench.change("hops/ridge.yaml", "site: mill", "site: mill-01234-of-a-lung-name");
    let ran = in_time(&bench.path(""), &["check", "--format", "json"]);
    assert!(ran.out.contains("did you mean `mill-01234-of-a-long-name`?"));
    assert!(ran.out.len() < 30_000_000, "{} bytes", ran.out.len());
}

#[test]
fn many_stubs_of_networks_and_records() {
    let root = tempfile::tempdir().expect("a folder");
    fs::create_dir(root.path().join(".git")).expect("writable");
    fs::write(root.path().join("network.yaml"), "kind: network\nid: all\n").expect("writable");
    for i in 0..2999 {
        let folder = root.path().join(format!("n{i}"));
        fs::create_dir(&folder).expect("writable");
        fs::write(folder.join("n.yaml"), format!("kind: network\nid: n{i}\n")).expect("writable");
    }
    let ran = in_time(root.path(), &["check", "--format", "concise"]);
    assert_eq!(count(&ran, "error[key-missing]"), 3000);
    let bench = Bench::new();
    let stubs: String = (0..15_000).fold(String::new(), |stubs, i| stubs + &format!("---\nkind: record\nid: r{i}\n"));
    fs::write(bench.path("stubs.yaml"), stubs).expect("writable");
    let ran = in_time(&bench.path(""), &["check", "--format", "concise"]);
    assert_eq!(count(&ran, "error[input-too-large]"), 1);
    assert!(ran.out.lines().count() < 2100, "{}", ran.out.lines().count());
}

// What the system may not give.

#[test]
fn a_hundred_thousand_threads_are_not_made() {
    let bench = Bench::new();
    let start = Instant::now();
    let mut command = program(&bench.path(""), &["check"]);
    command.env("RAYON_NUM_THREADS", "100000");
    assert_eq!(finish(command).code, 0);
    assert!(start.elapsed() < PATIENCE);
}

#[cfg(unix)]
#[test]
fn without_a_single_thread_it_still_works() {
    let bench = Bench::new();
    let plain = run_in(&bench.path(""), &["sheet"]);
    for args in [&["check"][..], &["sheet"], &["compare", ".", "."], &["pack", "install", "--out", "packs"]] {
        let mut command = program(&bench.path(""), args);
        // No system gives a stack of that size, so no thread starts but those of the presses, which ask for their own.
        command.env("RUST_MIN_STACK", (1_u64 << 46).to_string());
        let ran = finish(command);
        assert_eq!(ran.code, 0, "{args:?}: {}", ran.err);
        if args[0] == "sheet" {
            assert_eq!(ran.out, plain.out);
        }
    }
}

#[cfg(target_os = "linux")]
#[test]
fn a_full_or_closed_stderr_ends_nothing() {
    let shell = |script: &str| {
        let mut command = std::process::Command::new("sh");
        command.args(["-c", script]).env("HOPWRIGHT", env!("CARGO_BIN_EXE_hopwright"));
        finish(command)
    };
    for end in ["2>/dev/full", "2>&-"] {
        for (args, code) in [
            ("check examples/faulty --format concise", 1),
            ("check examples/varneck -v", 0),
            ("check no-such-folder", 2),
            ("check --no-such-option", 2),
            ("sheet --network examples/varneck", 0),
            ("explain no-such-rule", 2),
        ] {
            let ran = shell(&format!("cd '{}' && \"$HOPWRIGHT\" {args} {end}", env!("CARGO_MANIFEST_DIR")));
            assert_eq!(ran.code, code, "{args} {end}: {}", ran.err);
        }
    }
    let ran = shell("\"$HOPWRIGHT\" explain >/dev/full");
    assert_eq!(ran.code, 2);
    assert!(ran.err.contains("cannot write the output") && !ran.err.contains("panicked"), "{}", ran.err);
}
