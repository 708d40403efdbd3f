//! Libraries that networks share: folders of the same repository, read as one state with the network.

use std::fs;
use std::path::{Path, PathBuf};

use hopwright::network::Scope;
use hopwright::verdict::{Evaluation, evaluate};
use tempfile::TempDir;

use crate::fixture::program::run_in;
use crate::fixture::repository::git;
use crate::fixture::{copy, tests_folder};

/// A repository with the base network in `nets/one` and its equipment in `shared`.
fn repository() -> TempDir {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let net = folder.path().join("nets/one");
    fs::create_dir_all(&net).expect("writable");
    copy(&tests_folder().join("rules/base"), &net);
    fs::rename(net.join("equipment"), folder.path().join("shared")).expect("moved");
    edit(&net.join("network.yaml"), "codes:", "libraries: [../../shared]\ncodes:");
    git(folder.path(), &["init", "--quiet"]);
    commit(folder.path());
    folder
}

fn commit(folder: &Path) {
    git(folder, &["add", "--all"]);
    git(folder, &["-c", "user.name=n", "-c", "user.email=n@example.org", "commit", "--quiet", "-m", "so"]);
}

fn edit(path: &Path, old: &str, new: &str) {
    let text = fs::read_to_string(path).expect("there");
    assert!(text.contains(old), "{old} is not in {}", path.display());
    fs::write(path, text.replacen(old, new, 1)).expect("writable");
}

fn net(folder: &TempDir) -> PathBuf {
    folder.path().join("nets/one")
}

fn judge(folder: &TempDir) -> Evaluation<()> {
    evaluate(&Scope::of(&[net(folder)]), |_, _| ())
}

fn messages(evaluation: &Evaluation<()>) -> Vec<String> {
    evaluation.findings.iter().map(|finding| finding.message.clone()).collect()
}

#[test]
fn a_network_is_judged_with_what_it_shares() {
    let folder = repository();
    let evaluation = judge(&folder);
    assert_eq!(messages(&evaluation), [""; 0]);
    assert_eq!(evaluation.hops.len(), 1);
    let ran = run_in(&net(&folder), &["sheet", "--full"]);
    assert!(ran.out.contains("From elsewhere: radio q-80"), "{}", ran.out);
    assert!(ran.out.contains("shared library ../../shared"), "{}", ran.out);
    let last = ran.out.lines().last().expect("a line");
    assert!(last.starts_with("Shared library ../../shared: revision ") && !last.contains("edited since"), "{last}");
    edit(&folder.path().join("shared/cables.yaml"), "6.8 mm", "6.9 mm");
    let after = run_in(&net(&folder), &["sheet", "--full"]).out;
    let after = after.lines().last().expect("a line");
    assert!(after.contains("edited since"), "{after}");
    assert_ne!(after.split("mark").nth(1), last.split("mark").nth(1));
}

#[test]
fn compare_sees_a_library_that_changed_and_an_unchanged_one_is_known() {
    let folder = repository();
    assert!(run_in(&net(&folder), &["compare", "HEAD"]).out.starts_with("no computed change"));
    edit(&folder.path().join("shared/cables.yaml"), "resistance: 84.10429 ohm/km", "resistance: 93.8 ohm/km");
    let ran = run_in(&net(&folder), &["compare", "HEAD"]);
    assert!(ran.out.contains("shared/cables.yaml") && ran.out.contains("resistance"), "{}{}", ran.out, ran.err);
    commit(folder.path());
    let ran = run_in(&net(&folder), &["compare", "HEAD~1", "HEAD"]);
    assert!(ran.out.contains("shared/cables.yaml") && ran.out.contains("resistance"), "{}{}", ran.out, ran.err);
}

#[test]
fn the_same_id_twice_is_an_error_unless_one_says_that_it_replaces_the_other() {
    let folder = repository();
    let text = fs::read_to_string(folder.path().join("shared/cables.yaml")).expect("there");
    let own = text.split("---").next().expect("a document").replace("6.8 mm", "7.0 mm");
    let path = net(&folder).join("own.yaml");
    fs::write(&path, &own).expect("writable");
    let evaluation = judge(&folder);
    assert_eq!(messages(&evaluation), ["the cable `out-5e` is in this network and in the library `../../shared`"]);
    fs::write(&path, own.replace("id: out-5e", "id: out-5e\nreplaces: true")).expect("writable");
    assert_eq!(messages(&judge(&folder)), [""; 0]);
    assert!(run_in(&net(&folder), &["sheet", "--full"]).out.contains("7.0 mm"));
    fs::write(&path, own.replace("id: out-5e", "id: out-5f\nreplaces: true")).expect("writable");
    let said = messages(&judge(&folder));
    assert!(said.len() == 1 && said[0].contains("has a cable `out-5f` that this one could replace"), "{said:?}");
}

#[test]
fn a_fault_in_a_library_is_told_and_never_mended_from_here() {
    let folder = repository();
    let path = folder.path().join("shared/cables.yaml");
    edit(&path, "outside_diameter: 6.8 mm", "outside_diametre: 6.8 mm");
    let before = fs::read_to_string(&path).expect("there");
    let evaluation = judge(&folder);
    assert!(evaluation.findings.iter().any(|finding| finding.rule.name == "key-unknown" && finding.fix.is_none()));
    run_in(&net(&folder), &["check", "--fix-unsafe"]);
    assert_eq!(fs::read_to_string(&path).expect("there"), before);
}

#[test]
fn what_is_no_library_is_refused() {
    let folder = repository();
    let outside = tempfile::tempdir().expect("a temporary folder");
    fs::write(outside.path().join("cable.yaml"), "kind: cable\nid: stranger\n").expect("writable");
    #[cfg(unix)]
    std::os::unix::fs::symlink(outside.path(), folder.path().join("link")).expect("a link");
    fs::create_dir(folder.path().join("empty")).expect("writable");
    fs::create_dir(folder.path().join("hops")).expect("writable");
    fs::copy(net(&folder).join("hops/ridge.yaml"), folder.path().join("hops/ridge.yaml")).expect("copied");
    let lines = "libraries: [../../shared, ../../link, ../../empty, .., ../../hops, ../../shared/cables.yaml]";
    edit(&net(&folder).join("network.yaml"), "libraries: [../../shared]", lines);
    let said = messages(&judge(&folder)).join("\n");
    for wanted in [
        "`../../link` cannot be used: it leads out of the repository",
        "`../../empty` cannot be used: no YAML file lies in it",
        "`..` cannot be used: this network lies in it",
        "`../../hops` holds the hop `ridge`, which cannot be shared",
        "`../../shared/cables.yaml` cannot be used: it is a file",
    ] {
        assert!(said.contains(wanted), "{wanted} is not in {said}");
    }
    assert!(!said.contains("stranger"), "{said}");
}
