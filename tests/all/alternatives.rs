//! The command `alternatives`: every proposal, written, makes the hop pass and nothing else the worse.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use crate::fixture::program::{Ran, finish, program, run, run_in, run_on_git};
use crate::fixture::{Bench, copy, files_below, tests_folder};
use crate::synthetic;
use hopwright::alternatives::{Asked, Outcome, REACH, json, levers, seek, text};
use hopwright::finding::rule::Severity;
use hopwright::network::Scope;
use hopwright::rules::ALL;
use hopwright::verdict::{Read, evaluate};
use serde_json::Value;
use tempfile::TempDir;

/// A hop of five kilometres at 80 GHz that was planned as if it were one.
fn skerrow() -> TempDir {
    copied(&tests_folder().join("alternatives/skerrow"))
}

/// The same hop with less asked of it: one change is enough, and there is more than one that does.
fn modest() -> TempDir {
    let folder = skerrow();
    let path = folder.path().join("network.yaml");
    let text = fs::read_to_string(&path).expect("there");
    let text = text.replace("99.99 %", "99.9 %").replace("fade_margin: 20 dB", "fade_margin: 10 dB");
    fs::write(&path, text).expect("writable");
    folder
}

fn copied(from: &Path) -> TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    fs::create_dir(folder.path().join(".git")).expect("writable");
    copy(from, folder.path());
    folder
}

fn asked(folder: &Path, args: &[&str]) -> Ran {
    let whole: Vec<&str> = ["alternatives", "--network", "."].iter().chain(args).copied().collect();
    run_in(folder, &whole)
}

fn outcome(folder: &Path, args: &[&str]) -> Value {
    let whole: Vec<&str> = ["--format", "json"].iter().chain(args).copied().collect();
    let ran = asked(folder, &whole);
    assert!(ran.code < 2, "{}", ran.err);
    serde_json::from_str(&ran.out).expect("JSON")
}

fn proposals(outcome: &Value) -> &[Value] {
    outcome["proposals"].as_array().expect("a list")
}

/// Rules with hops that are found at a severity or above.
fn failing(folder: &Path, least: Severity) -> BTreeSet<(String, String)> {
    let found = evaluate(&Scope::of(&[folder.to_path_buf()]), |_, _| ()).findings;
    let failing = found.iter().filter(|finding| finding.severity >= least);
    failing.map(|finding| (finding.rule.name.to_owned(), finding.hop.clone().unwrap_or_default())).collect()
}

fn texts(folder: &Path) -> Vec<(PathBuf, String)> {
    let files = files_below(folder).into_iter();
    files.map(|path| (path.clone(), fs::read_to_string(path).expect("text"))).collect()
}

/// A copy of a network with the patch of a proposal.
fn with_patch(folder: &Path, proposal: &Value) -> TempDir {
    let copy = copied(folder);
    run_on_git(copy.path(), &["apply", "-"], proposal["patch"].as_str().expect("a patch"));
    copy
}

/// Writes every proposal into a copy of its own: what fails for the hop is gone there, and nothing is found that was not.
fn each_holds(folder: &Path, hop: &str, least: Severity) -> Value {
    let level = ["--fail-on", least.word()];
    let args: Vec<&str> = [hop, "--trials", "200"].iter().chain(&level).copied().collect();
    let outcome = outcome(folder, &args);
    let before = failing(folder, Severity::Warning);
    assert!(failing(folder, least).iter().any(|(_, of)| of == hop), "{hop} does not fail");
    assert!(!proposals(&outcome).is_empty(), "no proposal: {outcome:#}");
    for proposal in proposals(&outcome) {
        let copy = with_patch(folder, proposal);
        let after = failing(copy.path(), Severity::Warning);
        assert!(failing(copy.path(), least).iter().all(|(_, of)| of != hop), "{after:?}\n{proposal:#}");
        assert!(after.is_subset(&before), "it brings {after:?}\n{proposal:#}");
    }
    outcome
}

/// What a patch takes out and puts in.
fn lines(patch: &str, mark: char) -> Vec<&str> {
    let heads = ["---", "+++"];
    let lines = patch.lines().filter(|line| line.starts_with(mark) && !heads.iter().any(|head| line.starts_with(head)));
    lines.map(|line| line[1..].trim()).collect()
}

/// The keys that say how a hop is built and set.
const TOUCHED: [&str; 15] = [
    "a_to_b",
    "b_to_a",
    "bandwidth",
    "polarisation",
    "transmit_power",
    "height",
    "antenna",
    "radio",
    "half",
    "cable",
    "supply",
    "model",
    "orientation",
    "plate",
    "arresters",
];

/// Nothing but settings, equipment and heights of the hop is changed: no objective, no limit, no severity, no waiver.
fn only_how_it_is_built(outcome: &Value) {
    for proposal in proposals(outcome) {
        let patch = proposal["patch"].as_str().expect("a patch");
        let files: Vec<&str> = patch.lines().filter(|line| line.starts_with("+++ ")).collect();
        assert!(files.iter().all(|file| file.contains("hops/")), "{files:?}");
        for line in lines(patch, '+') {
            let key = line.trim_start_matches("- ").trim_start_matches("{ ").split(':').next().expect("a key");
            assert!(TOUCHED.contains(&key), "{line}");
        }
    }
}

#[test]
fn five_kilometres_at_80_ghz_get_their_answer() {
    let folder = skerrow();
    let found = sought(folder.path(), "reach", 3, 1000);
    let mut settings = insta::Settings::new();
    settings.set_snapshot_path(tests_folder().join("cli"));
    settings.set_prepend_module_to_snapshot(false);
    settings.set_omit_expression(true);
    settings.bind(|| insta::assert_snapshot!("alternatives", text(&found)));

    // The README shows the first of them.
    let readme = fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("README.md")).expect("there");
    let first: Vec<String> =
        text(&found).lines().skip_while(|line| !line.starts_with("1. ")).take(6).map(Into::into).collect();
    assert!(readme.contains(&first.join("\n")), "{first:?}");

    let outcome: Value = serde_json::from_str(&json(&found)).expect("JSON");
    for proposal in &found.proposals {
        let copy = copied(folder.path());
        for file in &proposal.files {
            let inside = file.origin.strip_prefix(folder.path()).expect("of the network");
            fs::write(copy.path().join(inside), &file.after).expect("writable");
        }
        assert_eq!(failing(copy.path(), Severity::Warning), BTreeSet::new(), "{:?}", proposal.changes);
    }
    only_how_it_is_built(&outcome);
    let first = &proposals(&outcome)[0];
    let kinds: BTreeSet<&str> =
        first["changes"].as_array().expect("a list").iter().filter_map(|change| change["kind"].as_str()).collect();
    assert!(kinds.contains("antenna") && kinds.len() > 1, "no single change does: {kinds:?}");
    assert_eq!(first["added_cost"][0]["currency"], "EUR");
}

#[test]
fn what_is_written_leaves_everything_else_as_it_was() {
    for ending in ["\n", "\r\n"] {
        let folder = modest();
        let hop = folder.path().join("hops/reach.yaml");
        let text = fs::read_to_string(&hop).expect("there").replace('\n', ending);
        fs::write(&hop, &text).expect("writable");
        let before = texts(folder.path());
        let ran = asked(folder.path(), &["reach", "--write", "2", "--format", "json"]);
        assert_eq!((ran.code, ran.err.as_str()), (0, "hopwright: proposal 2 written to hops/reach.yaml\n"));
        let outcome: Value = serde_json::from_str(&ran.out).expect("JSON");
        let patch = proposals(&outcome)[1]["patch"].as_str().expect("a patch").to_owned();
        let after = texts(folder.path());
        assert_eq!(before.len(), after.len());
        for ((path, before), (same, after)) in before.iter().zip(&after) {
            assert_eq!(path, same);
            if *path != hop {
                assert_eq!(before, after, "{}", path.display());
                continue;
            }
            let (old, new): (Vec<&str>, Vec<&str>) = (before.split('\n').collect(), after.split('\n').collect());
            assert_eq!(old.len(), new.len(), "no line comes or goes");
            let changed: Vec<(&str, &str)> = old.into_iter().zip(new).filter(|(one, other)| one != other).collect();
            assert_eq!(changed.len(), lines(&patch, '+').len());
            for (old, new) in changed {
                let comment = |line: &str| line.split_once('#').map(|(_, comment)| comment.to_owned());
                assert_eq!(comment(old), comment(new));
                assert_eq!(old.ends_with('\r'), new.ends_with('\r'));
            }
        }
    }
}

#[test]
fn each_kind_of_fault_is_put_right_by_what_is_at_hand() {
    let power = ("hops/ridge.yaml", "transmit_power: 12 dBm", "transmit_power: -9 dBm");
    let cable = ("hops/ridge.yaml", "cable: out-5e", "cable: in-5e");
    let supply = ("hops/ridge.yaml", "supply: bt-60", "supply: std:802-3af-class3");
    let bracket = ("hops/ridge.yaml", "orientation: upright", "orientation: inverted");
    let height = ("hops/ridge.yaml", "height: 8 m", "height: 5 m");
    let arrester = ("hops/ridge.yaml", "- { model: surge-10g, at: entry }", "- { model: surge-1g, at: entry }");
    let halves = ("hops/ridge.yaml", "half: high", "half: low");
    let cases = [
        (power, "power"),
        (cable, "cable"),
        (supply, "supply"),
        (bracket, "bracket"),
        (height, "height"),
        (arrester, "arrester"),
        (halves, "channel"),
    ];
    for (edit, kind) in cases {
        let bench = Bench::with(&[edit]);
        let outcome = each_holds(&bench.path(""), "ridge", Severity::Error);
        only_how_it_is_built(&outcome);
        let first = &proposals(&outcome)[0]["changes"];
        assert_eq!(first.as_array().map(Vec::len), Some(1), "{kind}: {first}");
        assert_eq!(first[0]["kind"], kind, "{first}");
    }
}

#[test]
fn another_radio_with_the_same_ports_is_one_change() {
    let bench = Bench::with(&[("network.yaml", "hottest_air: 35 °C", "hottest_air: 44 °C")]);
    let radio = fs::read_to_string(bench.path("equipment/radio.yaml")).expect("there");
    let window = |most: u8| format!("\ntemperature: {{ min: -30 °C, max: {most} °C }}\n");
    let other =
        radio.replace("id: q-80", "id: q-82").replace("max: 16 dBm", "max: 11 dBm").replace("id: low", "id: lower");
    fs::write(bench.path("equipment/radio.yaml"), format!("{}{}", radio.trim_end(), window(40))).expect("writable");
    fs::write(bench.path("equipment/other.yaml"), format!("{}{}", other.trim_end(), window(60))).expect("writable");
    let outcome = each_holds(&bench.path(""), "ridge", Severity::Warning);
    only_how_it_is_built(&outcome);
    let change = &proposals(&outcome)[0]["changes"];
    assert_eq!(change.as_array().map(Vec::len), Some(1), "{change}");
    assert_eq!(change[0]["kind"], "radio");
    // Its half is called otherwise, and it cannot be set to as much.
    let patch = proposals(&outcome)[0]["patch"].as_str().expect("a patch");
    for line in ["radio: q-82", "half: lower", "transmit_power: 11 dBm"] {
        assert!(lines(patch, '+').contains(&line), "{patch}");
    }
}

#[test]
fn what_stands_under_an_anchor_is_left_alone_and_counted() {
    let edits = [
        ("hops/ridge.yaml", "transmit_power: 10 dBm", "transmit_power: &power -9 dBm"),
        ("hops/ridge.yaml", "transmit_power: 12 dBm", "transmit_power: *power"),
    ];
    let bench = Bench::with(&edits);
    let ran = asked(&bench.path(""), &["ridge", "--trials", "80"]);
    assert!(ran.out.contains("could not be tried: values that YAML shares through an anchor"), "{}", ran.out);
    assert!(!ran.out.contains("transmit power"), "{}", ran.out);
}

#[test]
fn an_arrester_is_put_in_where_a_list_lacks_it() {
    let lists = [
        (
            "          - { model: surge-1g, at: radio }\n          - { model: surge-1g, at: entry }\n",
            "          - { model: surge-1g, at: radio } # by the mast\n",
        ),
        (
            "        arresters:\n          - { model: surge-1g, at: radio }\n          - { model: surge-1g, at: entry }\n",
            "        arresters: [{ model: surge-1g, at: radio }]\n",
        ),
        (
            "        arresters:\n          - { model: surge-1g, at: radio }\n          - { model: surge-1g, at: entry }\n",
            "        arresters: []\n",
        ),
        (
            "        arresters:\n          - { model: surge-1g, at: radio }\n          - { model: surge-1g, at: entry }\n",
            "",
        ),
    ];
    for (old, new) in lists {
        let bench = Bench::with(&[("hops/ridge.yaml", old, new)]);
        let outcome = each_holds(&bench.path(""), "ridge", Severity::Warning);
        only_how_it_is_built(&outcome);
        assert_eq!(proposals(&outcome)[0]["changes"][0]["kind"], "arrester", "{new}");
    }
}

#[test]
fn what_moves_on_a_line_goes_no_farther_than_it_has_to() {
    let bench = Bench::with(&[("hops/ridge.yaml", "transmit_power: 12 dBm", "transmit_power: -9 dBm")]);
    let outcome = outcome(&bench.path(""), &["ridge"]);
    let part = &proposals(&outcome)[0]["changes"][0]["parts"];
    assert_eq!(part.as_array().map(Vec::len), Some(1), "one end is enough: {part}");
    let set: f64 = part[0]["to"].as_str().and_then(|to| to.strip_suffix(" dBm")?.parse().ok()).expect("a power");
    assert!((set * 2.0).fract().abs() < 1e-9, "{set} is no half decibel");
    let with = |power: f64| {
        let line = format!("transmit_power: {power} dBm");
        let bench = Bench::with(&[("hops/ridge.yaml", "transmit_power: 12 dBm", line.as_str())]);
        failing(&bench.path(""), Severity::Error).is_empty()
    };
    assert!(with(set) && !with(set - 0.5), "{set}");
}

#[test]
fn proposals_stand_in_order_and_each_is_of_another_sort() {
    let folder = modest();
    let outcome = each_holds(folder.path(), "reach", Severity::Error);
    let all = proposals(&outcome);
    assert!(all.len() > 1, "{outcome:#}");
    let rank = |proposal: &Value| {
        let changes = proposal["changes"].as_array().map_or(0, Vec::len);
        (changes, proposal["added_cost"][0]["amount"].as_f64().unwrap_or(0.0))
    };
    let ranks: Vec<(usize, f64)> = all.iter().map(rank).collect();
    assert!(ranks.windows(2).all(|pair| pair[0] <= pair[1]), "{ranks:?}");
    // More of what is enough is no other proposal.
    let touched = |proposal: &Value| {
        let changes = proposal["changes"].as_array().expect("a list").iter();
        let parts = changes.flat_map(|change| change["parts"].as_array().expect("a list"));
        parts.map(|part| format!("{} {}", part["what"], part["end"])).collect::<BTreeSet<String>>()
    };
    let sorts: BTreeSet<BTreeSet<String>> = all.iter().map(touched).collect();
    assert_eq!(sorts.len(), all.len());
    // The most there may be.
    let one = asked(folder.path(), &["reach", "--most", "1", "--format", "json"]);
    let one: Value = serde_json::from_str(&one.out).expect("JSON");
    assert_eq!(proposals(&one).len(), 1);
    assert_eq!(proposals(&one)[0]["changes"], all[0]["changes"]);
}

#[test]
fn trials_are_counted_and_it_is_said_when_they_run_out() {
    let folder = skerrow();
    let ran = asked(folder.path(), &["reach", "--trials", "10"]);
    assert_eq!(ran.code, 1, "{}", ran.out);
    assert!(ran.out.contains("none of 10 tried passes"), "{}", ran.out);
    assert!(ran.out.contains("the search stopped at its limit of 10 trials: `--trials 20`"), "{}", ran.out);
    assert!(ran.out.contains("nearest:") && ran.out.contains("still error["), "{}", ran.out);
    let none = asked(folder.path(), &["reach", "--trials", "10", "--write", "1"]);
    assert_eq!(none.code, 2);
    assert!(none.err.contains("no proposal 1 to write: there is none"), "{}", none.err);
}

#[test]
fn where_nothing_does_it_says_what_stays_wrong() {
    let folder = skerrow();
    let path = folder.path().join("network.yaml");
    let text = fs::read_to_string(&path).expect("there");
    fs::write(&path, text.replace("99.99 %", "99.9999 %")).expect("writable");
    let before = texts(folder.path());
    let outcome = outcome(folder.path(), &["reach", "--trials", "150"]);
    assert!(proposals(&outcome).is_empty());
    let left = outcome["nearest"]["left"].as_array().expect("a list");
    assert!(left.iter().any(|found| found["rule"] == "availability-below-objective"), "{left:?}");
    assert!(before == texts(folder.path()), "nothing is written");
}

#[test]
fn a_hop_that_passes_has_nothing_to_change() {
    let ran = run(&["alternatives", "murrgrat-kerbjoch", "--network", "examples/varneck"]);
    let said = "hop `murrgrat-kerbjoch` passes: nothing needs to change\n";
    assert_eq!((ran.code, ran.out.as_str(), ran.err.as_str()), (0, said, ""));
}

#[test]
fn what_no_change_can_touch_is_named_and_the_rest_is_looked_for() {
    let edits = [
        ("hops/ridge.yaml", "cable: out-5e", "cable: in-5e"),
        ("hops/ridge.yaml", "    grounding:\n      conductor: 16 mm2\n      bonds_to: ring\n", ""),
    ];
    let bench = Bench::with(&edits);
    let ran = asked(&bench.path(""), &["ridge"]);
    assert_eq!(ran.code, 1, "{}", ran.out);
    assert!(ran.out.contains("fix it by hand:\n  error[ground-conductor-missing]"), "{}", ran.out);
    assert!(ran.out.contains("1. 1 change\n   cable to port `main` at end a: `in-5e` → "), "{}", ran.out);
    // Nothing but what has to be fixed by hand.
    let bench = Bench::with(&edits[1..]);
    let ran = asked(&bench.path(""), &["ridge"]);
    assert_eq!(ran.code, 1);
    assert!(!ran.out.contains("tried"), "{}", ran.out);
}

#[test]
fn an_unknown_hop_is_refused_with_the_nearest_name() {
    let ran = run(&["alternatives", "murrgrat-kerbjohc", "--network", "examples/varneck"]);
    assert_eq!((ran.code, ran.out.as_str()), (2, ""));
    assert!(ran.err.contains("no hop `murrgrat-kerbjohc`") && ran.err.contains("`murrgrat-kerbjoch`"), "{}", ran.err);
    let ran = run(&["alternatives", "spec-reference", "--network", "examples/faulty"]);
    assert_eq!(ran.code, 2);
    assert!(ran.err.contains("cannot be evaluated") && ran.err.contains("`check` says why"), "{}", ran.err);
}

#[test]
fn whatever_is_wrong_with_a_hop_there_is_an_answer() {
    let folder = copied(&Path::new(env!("CARGO_MANIFEST_DIR")).join("examples/faulty"));
    for path in files_below(&folder.path().join("hops")) {
        let hop = path.file_stem().expect("a name").to_string_lossy().into_owned();
        let ran = asked(folder.path(), &[&hop, "--trials", "12", "--fail-on", "advice"]);
        assert!(ran.code <= 2 && !ran.err.contains("panicked"), "{hop}: {}", ran.err);
        assert_eq!(ran.out.is_empty(), ran.code == 2, "{hop}: {}{}", ran.out, ran.err);
    }
}

#[test]
fn parts_of_a_shared_library_are_at_hand_and_stay_as_they_are() {
    let (folder, modest) = (tempfile::tempdir().expect("a folder"), modest());
    fs::create_dir(folder.path().join(".git")).expect("writable");
    copy(modest.path(), &folder.path().join("net"));
    fs::remove_dir(folder.path().join("net/.git")).expect("there");
    fs::rename(folder.path().join("net/equipment"), folder.path().join("kit")).expect("writable");
    let network = folder.path().join("net/network.yaml");
    let text = fs::read_to_string(&network).expect("there");
    fs::write(&network, text + "libraries: [../kit]\n").expect("writable");
    let before = texts(&folder.path().join("kit"));
    let ran = asked(&folder.path().join("net"), &["reach", "--write", "3"]);
    assert!(ran.out.contains("antenna at end a: `pan-30` → `pan-60`"), "{}{}", ran.out, ran.err);
    assert_eq!(before, texts(&folder.path().join("kit")));
    assert_eq!(failing(&folder.path().join("net"), Severity::Warning), BTreeSet::new());
}

#[test]
fn a_hop_that_two_networks_have_is_not_guessed_at() {
    let folder = tempfile::tempdir().expect("a folder");
    fs::create_dir(folder.path().join(".git")).expect("writable");
    copy(&tests_folder().join("alternatives/skerrow"), folder.path());
    copy(&tests_folder().join("alternatives/skerrow"), &folder.path().join("other"));
    let ran = asked(folder.path(), &["reach"]);
    assert_eq!((ran.code, ran.out.as_str()), (2, ""));
    assert!(ran.err.contains("2 networks have a hop `reach`: name one with `--network`"), "{}", ran.err);
}

#[test]
fn a_licensed_hop_keeps_its_channel() {
    let folder = skerrow();
    let path = folder.path().join("hops/reach.yaml");
    let text = fs::read_to_string(&path).expect("there");
    fs::write(&path, text + "licence: { number: INVENTED-17 }\n").expect("writable");
    let ran = asked(folder.path(), &["reach", "--trials", "60"]);
    assert!(ran.out.contains("channel and bandwidth are kept: they are licensed (INVENTED-17)"), "{}", ran.out);
    assert!(!ran.out.contains("bandwidth: 500 MHz →"), "{}", ran.out);
}

#[test]
fn the_same_comes_out_on_any_number_of_threads() {
    let folder = skerrow();
    let on = |threads: &str| {
        let mut command = program(folder.path(), &["alternatives", "reach", "--trials", "200", "--format", "json"]);
        command.env("RAYON_NUM_THREADS", threads);
        finish(command)
    };
    let one = on("1");
    assert_eq!(one, on("5"));
}

/// Another hop that listens behind the far end, nearly in the beam.
const RELAY: &str = "\
kind: hop
id: relay
channel: { a_to_b: 73.375 GHz, b_to_a: 83.375 GHz, bandwidth: 500 MHz, polarisation: vertical }
objectives: { fade_margin: 0 dB, availability: 99 % }
ends:
";

/// Puts that hop and its two sites beside the one that fails.
fn add_relay(folder: &Path) {
    let text = fs::read_to_string(folder.join("hops/reach.yaml")).expect("there");
    let ends = text.split_once("ends:\n").expect("ends").1;
    let ends = ends.replace("pan-30", "pan-60").replace("5 dBm", "14 dBm").replace("24 m", "28 m");
    let ends = ends.replace("site: near", "site: mid").replace("site: far", "site: beyond");
    fs::write(folder.join("hops/relay.yaml"), format!("{RELAY}{ends}")).expect("writable");
    let sites = [("near", "mid", "47.090000", "-32.995700"), ("far", "beyond", "47.135000", "-33.000000")];
    for (from, to, latitude, longitude) in sites {
        let site = fs::read_to_string(folder.join(format!("sites/{from}.yaml"))).expect("there");
        let moved = site.lines().map(|line| match line.trim().split(':').next() {
            Some("id") if !line.starts_with(' ') => format!("id: {to}"),
            Some("latitude") => format!("  latitude: {latitude} deg"),
            Some("longitude") => format!("  longitude: {longitude} deg"),
            _ => line.to_owned(),
        });
        let moved: Vec<String> = moved.collect();
        fs::write(folder.join(format!("sites/{to}.yaml")), moved.join("\n") + "\n").expect("writable");
    }
}

#[test]
fn what_disturbs_another_hop_is_not_offered() {
    let folder = modest();
    let alone = outcome(folder.path(), &["reach", "--most", "1"]);
    add_relay(folder.path());
    let disturbed = |folder: &Path| failing(folder, Severity::Warning).into_iter().any(|(_, hop)| hop == "relay");
    assert!(!disturbed(folder.path()));
    // Made all the same, what was proposed without it disturbs it.
    let first = &proposals(&alone)[0];
    assert!(disturbed(with_patch(folder.path(), first).path()), "the relay does not mind: {first:#}");
    let together = outcome(folder.path(), &["reach", "--most", "1"]);
    let other = &proposals(&together)[0];
    assert!(!disturbed(with_patch(folder.path(), other).path()), "{other:#}");
}

#[test]
fn what_a_waiver_accepts_is_not_changed_and_no_waiver_is_offered() {
    let bench = Bench::with(&[("hops/ridge.yaml", "transmit_power: 12 dBm", "transmit_power: -9 dBm")]);
    let rules: BTreeSet<String> = failing(&bench.path(""), Severity::Error).into_iter().map(|(rule, _)| rule).collect();
    let waiver = |rule: &String| {
        format!(
            "kind: waiver\nid: w-{rule}\nrule: {rule}\ntarget: {{ hop: ridge }}\nreason: Trial service for a month.\n\
             departure: deviation\napprover: L. Thwaite\napproved_on: 2026-05-01\nexpires: 2026-08-01\n\
             reference: Minutes 7\n"
        )
    };
    let waivers: Vec<String> = rules.iter().map(waiver).collect();
    fs::write(bench.path("waivers.yaml"), waivers.join("---\n")).expect("writable");
    let ran = asked(&bench.path(""), &["ridge", "--today", "2026-06-01"]);
    assert_eq!(ran.out, "hop `ridge` passes: nothing needs to change\n", "{}", ran.err);
    let later = asked(&bench.path(""), &["ridge", "--today", "2026-09-01"]);
    assert!(later.out.contains("1. 1 change\n   transmit power"), "{}", later.out);
    assert!(!later.out.contains("waiver w-"), "{}", later.out);
}

/// By the library, so that nothing is printed.
fn sought(folder: &Path, hop: &str, most: usize, budget: usize) -> Outcome {
    let read = Read::of(&Scope::of(&[folder.to_path_buf()]));
    let asked = Asked { hop: hop.to_owned(), most, budget, fail_on: Severity::Error };
    seek(&read, &asked).expect("a hop")
}

#[test]
fn in_a_large_network_only_what_is_near_is_read_and_all_of_it_is_asked_in_the_end() {
    let folder = tempfile::tempdir().expect("a folder");
    fs::create_dir(folder.path().join(".git")).expect("writable");
    synthetic::write(folder.path(), synthetic::Plan { hops: 90, seed: 5, faults: false, points: 0 }).expect("writable");
    let path = folder.path().join("hops/h40.yaml");
    let text = fs::read_to_string(&path).expect("there");
    let spoilt: Vec<String> = text
        .lines()
        .map(|line| match line.split_once("transmit_power:") {
            Some((before, _)) => format!("{before}transmit_power: -10 dBm"),
            None => line.to_owned(),
        })
        .collect();
    fs::write(&path, spoilt.join("\n") + "\nobjectives: { fade_margin: 25 dB }\n").expect("writable");
    let before = failing(folder.path(), Severity::Warning);
    assert!(before.iter().any(|(_, hop)| hop == "h40"), "{before:?}");
    let outcome = sought(folder.path(), "h40", 1, 400);
    let proposal = outcome.proposals.first().unwrap_or_else(|| panic!("none: {outcome:#?}"));
    for file in &proposal.files {
        fs::write(&file.origin, &file.after).expect("writable");
    }
    let after = failing(folder.path(), Severity::Warning);
    assert!(after.iter().all(|(_, hop)| hop != "h40") && after.is_subset(&before), "{after:?}");
}

#[test]
fn every_rule_that_a_change_is_tried_for_is_a_rule() {
    let listed: Vec<&str> = REACH.iter().flat_map(|(rules, _)| rules.iter().copied()).collect();
    let named: BTreeSet<&str> = listed.iter().copied().collect();
    assert_eq!(named.len(), listed.len(), "each once");
    let known: BTreeSet<&str> = ALL.iter().map(|entry| entry.rule.name).collect();
    assert_eq!(named.difference(&known).collect::<Vec<_>>(), [&""; 0]);
    assert!(named.iter().all(|rule| !levers(rule).is_empty()));
    // What protects people is put right by building it otherwise or by hand, never by what a record or a page says.
    let aside = ALL.iter().filter(|entry| ["record", "paper", "grounding"].contains(&entry.rule.family));
    assert!(aside.map(|entry| entry.rule.name).all(|rule| levers(rule).is_empty()));
}
