//! Versions: what a network asks for is said first and alone, copies of schemas that are stale, since when there is a key.

use std::fs;

use crate::fixture::Bench;
use crate::fixture::program::{run, run_in, run_on};
use crate::fixture::repository::Repository;
use crate::fixture::tests_folder;

const NEWER: &str = "requires: \">=99.2\"\nkey_of_that_time: 1\ncodes:";

#[test]
fn a_program_that_is_too_old_says_that_once_and_nothing_else() {
    let bench = Bench::with(&[("network.yaml", "codes:", NEWER)]);
    fs::write(bench.path("hops/broken.yaml"), "kind: hop\nid: [\n").expect("writable");
    for args in [&["check"][..], &["check", "--fix"], &["check", "hops"], &["sheet"], &["plan"], &["compare", "."]] {
        let ran = run_in(&bench.path(""), args);
        assert_eq!((ran.code, ran.out.as_str()), (2, ""), "{args:?}");
        let said = "hopwright: network.yaml: this network asks for hopwright >= 99.2.0, this is ";
        assert!(ran.err.contains("this network asks for hopwright >= 99.2.0, this is "), "{args:?}: {}", ran.err);
        assert!(
            ran.err.starts_with(said) || ran.err.starts_with("hopwright: ../") || args[0] == "compare",
            "{}",
            ran.err
        );
        assert!(ran.err.lines().count() == 1 && !ran.err.contains("key_of_that_time"), "{args:?}: {}", ran.err);
    }
    // A text on stdin in its place, too.
    let sound = Bench::new();
    let text = fs::read_to_string(bench.path("network.yaml")).expect("there");
    let ran = run_on(&sound.path(""), &["check", "-", "--stdin-filename", "network.yaml"], &text);
    assert!(ran.code == 2 && ran.err.contains("asks for hopwright >= 99.2.0"), "{}", ran.err);
}

#[test]
fn a_version_that_is_old_enough_is_no_matter() {
    let bench = Bench::with(&[("network.yaml", "codes:", "requires: \">=0.1\"\ncodes:")]);
    let ran = run_in(&bench.path(""), &["check"]);
    assert_eq!(ran.code, 0, "{}{}", ran.out, ran.err);
}

#[test]
fn a_revision_that_asks_for_a_newer_program_is_not_compared() {
    let repository = Repository::with(&tests_folder().join("rules/base"));
    let text = fs::read_to_string(repository.path("network.yaml")).expect("there");
    repository.write("network.yaml", text.replace("codes:", NEWER));
    repository.commit("of another time");
    repository.write("network.yaml", text);
    let ran = run_in(&repository.net(), &["compare", "HEAD"]);
    assert!(ran.code == 2 && ran.err.contains("asks for hopwright >= 99.2.0"), "{}{}", ran.out, ran.err);
}

#[test]
fn copies_of_schemas_that_are_stale_are_named() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let path = |name: &str| folder.path().join(name);
    let check = || run_in(folder.path(), &["schema", "--check", "."]);
    assert_eq!(run_in(folder.path(), &["schema", "--out", "."]).code, 0);
    let ran = check();
    assert_eq!((ran.code, ran.out.as_str()), (0, ""));
    let text = fs::read_to_string(path("cable.json")).expect("there");
    fs::write(path("cable.json"), text.replace('\n', "\r\n")).expect("writable");
    assert_eq!(check().code, 0, "a checkout may end its lines otherwise");
    fs::write(path("cable.json"), text.replace(":schema:0.1:", ":schema:99.2:")).expect("writable");
    fs::write(path("hop.json"), "{}").expect("writable");
    fs::write(path("site.json"), fs::read_to_string(path("site.json")).expect("there") + "\n").expect("writable");
    fs::remove_file(path("radio.json")).expect("writable");
    let ran = check();
    assert_eq!(ran.code, 1);
    for said in [
        "cable.json: it is that of version 99.2, this is 0.1",
        "hop.json: it does not say of which version it is",
        "site.json: it differs from",
        "radio.json: there is no such file",
    ] {
        assert!(ran.out.contains(said), "{said} is not in {}", ran.out);
    }
    assert_eq!(ran.out.lines().count(), 4, "{}", ran.out);
    assert_eq!(run_in(folder.path(), &["schema", "--check", "nowhere"]).code, 2);
}

#[test]
fn a_key_is_explained_with_its_version() {
    let ran = run(&["explain", "cable.least_diameter"]);
    assert!(ran.code == 0 && ran.out.contains("where only a range is known"), "{}", ran.out);
    assert!(ran.out.ends_with("Since version 0.1.\n"), "{}", ran.out);
    let ran = run(&["explain", "hop.ends.a.runs.cable"]);
    assert!(ran.code == 0 && ran.out.contains("Cable type"), "{}{}", ran.out, ran.err);
    let ran = run(&["explain", "hop.ends.c"]);
    assert!(ran.code == 2 && ran.err.contains("`hop.ends` has no key `c`; it has: a, b"), "{}", ran.err);
}
