//! The command `plan`: what it prints, draws and proposes, and that the proposal holds.

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use crate::fixture::program::{run, run_in, run_on_git};
use crate::fixture::tests_folder;
use crate::synthetic;
use hopwright::network::Scope;
use hopwright::verdict::evaluate;
use tempfile::TempDir;

fn assert_snapshot(name: &str, text: &str) {
    let mut settings = insta::Settings::new();
    settings.set_snapshot_path(tests_folder().join("cli"));
    settings.set_prepend_module_to_snapshot(false);
    settings.set_omit_expression(true);
    settings.bind(|| insta::assert_snapshot!(name, text));
}

/// Twenty hops from site to site, all on one pair of channels and in one polarisation.
fn on_one_channel() -> TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    fs::create_dir(folder.path().join(".git")).expect("writable");
    let plan = synthetic::Plan { hops: 20, seed: 3, faults: false, points: 0 };
    synthetic::write(folder.path(), plan).expect("writable");
    rewrite(&folder.path().join("network.yaml"), |line| (!line.starts_with("limits:")).then(|| line.to_owned()));
    for number in 0..20 {
        let mut low_first = number % 2 == 0;
        rewrite(&folder.path().join(format!("hops/h{number}.yaml")), |line| {
            let Some((key, _)) =
                line.split_once(": ").filter(|(key, _)| key.ends_with("a_to_b") || key.ends_with("b_to_a"))
            else {
                return Some(line.to_owned());
            };
            let frequency = if low_first { "73.375" } else { "83.375" };
            low_first = !low_first;
            Some(format!("{key}: {frequency} GHz"))
        });
    }
    folder
}

fn rewrite(path: &Path, mut line: impl FnMut(&str) -> Option<String>) {
    let text = fs::read_to_string(path).expect("there");
    let lines: Vec<String> = text.lines().filter_map(&mut line).collect();
    fs::write(path, lines.join("\n") + "\n").expect("writable");
}

/// The rules that find something about interference.
fn disturbed(folder: &Path) -> BTreeSet<&'static str> {
    let found = evaluate(&Scope::of(&[folder.to_path_buf()]), |_, _| ()).findings;
    let of_interference =
        ["threshold-degraded", "interference-too-strong", "halves-mixed", "channel-used-twice", "channel-used-in-beam"];
    found.iter().map(|finding| finding.rule.name).filter(|rule| of_interference.contains(rule)).collect()
}

#[test]
fn a_proposal_is_a_patch_that_git_takes_and_check_finds_clean() {
    let folder = on_one_channel();
    assert!(disturbed(folder.path()).contains("threshold-degraded"));
    let proposed = run_in(folder.path(), &["plan", "--assign"]);
    assert_eq!(proposed.code, 0, "{}", proposed.err);
    assert!(proposed.err.contains("before: ") && proposed.err.contains("after: "), "{}", proposed.err);

    run_on_git(folder.path(), &["apply", "-"], &proposed.out);
    assert_eq!(disturbed(folder.path()), BTreeSet::new());
    let findings = evaluate(&Scope::of(&[folder.path().to_path_buf()]), |_, _| ()).findings;
    assert_eq!(findings.iter().map(|finding| finding.rule.name).collect::<Vec<_>>(), [""; 0], "nor anything else");
}

#[test]
fn only_the_hops_that_are_named_change() {
    let folder = on_one_channel();
    let proposed = run_in(folder.path(), &["plan", "--assign", "h7"]);
    assert_eq!(proposed, run_in(folder.path(), &["plan", "--assign", "h7"]), "the same again");
    let names: Vec<&str> = proposed.out.lines().filter_map(|line| line.strip_prefix("+++ b/")).collect();
    assert_eq!(names, ["hops/h7.yaml"], "{}", proposed.err);
    // Its neighbours hold the halves of both its sites.
    assert!(!proposed.out.contains("half:"), "{}", proposed.out);

    let unknown = run_in(folder.path(), &["plan", "--assign", "h77"]);
    assert_eq!(unknown.code, 2);
    assert!(unknown.err.contains("no hop `h77`"), "{}", unknown.err);
}

#[test]
fn a_registered_hop_is_left_alone_unless_it_is_named() {
    let folder = on_one_channel();
    for number in 0..20 {
        let path = folder.path().join(format!("hops/h{number}.yaml"));
        let text = fs::read_to_string(&path).expect("there");
        fs::write(&path, text + "licence: { number: L-17 }\n").expect("writable");
    }
    let proposed = run_in(folder.path(), &["plan", "--assign"]);
    assert_eq!((proposed.code, proposed.out.as_str()), (0, ""), "{}", proposed.err);
    assert!(proposed.err.contains("`h0` and 19 more keep what they have"), "{}", proposed.err);
    let named = run_in(folder.path(), &["plan", "--assign", "h7"]);
    assert!(named.out.contains("+++ b/hops/h7.yaml"), "{}", named.err);
}

#[test]
fn what_is_best_already_is_left_and_said_so() {
    let proposed = run(&["plan", "--assign", "--network", "examples/varneck"]);
    assert_eq!((proposed.code, proposed.out.as_str()), (0, ""), "{}", proposed.err);
    assert!(proposed.err.contains("nothing better"), "{}", proposed.err);
}

#[test]
fn a_ring_of_three_is_refused_by_name() {
    let folder = on_one_channel();
    // From s2 back to s0: s0, s1 and s2 close a ring.
    rewrite(&folder.path().join("hops/h2.yaml"), |line| Some(line.replace("site: s3", "site: s0")));
    let proposed = run_in(folder.path(), &["plan", "--assign"]);
    assert_eq!((proposed.code, proposed.out.as_str()), (2, ""));
    let named = ["`s0`", "`s1`", "`s2`"].iter().all(|site| proposed.err.contains(site));
    assert!(named && proposed.err.contains("odd number"), "{}", proposed.err);
}

#[test]
fn plans_print() {
    let table = run(&["plan", "--network", "examples/varneck"]);
    assert_eq!(table.code, 0, "{}", table.err);
    assert!(table.out.lines().all(|line| line.chars().count() <= 80), "{}", table.out);
    assert_snapshot("plan", &table.out);
    let json = run(&["plan", "--network", "examples/varneck", "--format", "json"]);
    let read: serde_json::Value = serde_json::from_str(&json.out).expect("JSON");
    assert_eq!(read["format_version"], 1);
    assert_snapshot("plan-json", &json.out);

    let busy = on_one_channel();
    let table = run_in(busy.path(), &["plan"]);
    assert!(table.out.lines().all(|line| line.chars().count() <= 80), "{}", table.out);
    assert!(table.out.contains("most at "), "{}", table.out);
    let empty = tempfile::tempdir().expect("a folder");
    assert_eq!(run_in(empty.path(), &["plan"]).code, 3);
}

#[test]
fn plans_are_drawn_in_black_and_white() {
    let folder = on_one_channel();
    let drawn = run_in(folder.path(), &["plan", "--figure", "plan.svg"]);
    assert_eq!(drawn.code, 0, "{}", drawn.err);
    let svg = fs::read_to_string(folder.path().join("plan.svg")).expect("written");
    let document = roxmltree::Document::parse(&svg).expect("XML");
    let words: Vec<&str> =
        document.descendants().filter(|node| node.has_tag_name("text")).filter_map(|node| node.text()).collect();
    for hop in 0..20 {
        assert!(words.contains(&format!("h{hop}").as_str()), "{words:?}");
    }
    assert!(words.contains(&"upper half") && words.contains(&"GHz"));
    let colours = document.descendants().flat_map(|node| ["fill", "stroke"].map(|name| node.attribute(name))).flatten();
    let plain = ["black", "white", "none", "#d4d4d4"];
    assert!(colours.into_iter().all(|colour| plain.contains(&colour)));
}
