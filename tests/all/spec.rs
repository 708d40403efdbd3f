//! Every fault of files and references.

use std::fs;

use crate::fixture::{Bench, edits, folders, run_all, tests_folder};
use hopwright::finding::faults::ALL;
use hopwright::source::MAX_BYTES;
use hopwright::verdict::Evaluation;

/// The faults that need the file system and are tested below, each with its test.
const OF_FILES: [&str; 3] = ["file-not-utf8", "file-unreadable", "input-too-large"];

#[test]
fn every_fault_has_an_edit_or_a_test_here() {
    let mut faults: Vec<&str> = ALL.iter().map(|rule| rule.name).collect();
    faults.sort_unstable();
    let mut shown = folders(&tests_folder().join("spec"));
    for fault in &shown {
        assert!(edits(&tests_folder().join("spec").join(fault)).iter().any(|edit| edit == "bad"), "{fault}");
    }
    shown.extend(OF_FILES.map(str::to_owned));
    shown.sort();
    assert_eq!(shown, faults);
}

#[test]
fn every_edit_raises_its_fault_or_keeps_it_quiet() {
    run_all("spec");
}

/// The one fault there is, in words; the rest of the network must have been judged.
fn only(bench: &Bench, fault: &str) -> String {
    let evaluation = bench.judge();
    assert_eq!(names(&evaluation), [fault], "{}", bench.shown(&evaluation));
    assert_eq!(evaluation.hops.len(), 1);
    bench.scrubbed(&evaluation.findings[0].message)
}

fn names(evaluation: &Evaluation<()>) -> Vec<&'static str> {
    evaluation.findings.iter().map(|finding| finding.rule.name).collect()
}

#[test]
fn a_file_that_is_not_utf8() {
    let bench = Bench::new();
    fs::write(bench.path("sites/peaks.yaml"), b"kind: site\ntitle: Z\xfcrvel\n").expect("writable");
    let said = only(&bench, "file-not-utf8");
    assert_eq!(said, "sites/peaks.yaml: byte 0xfc at offset 19 (line 2, column 9) is not UTF-8");
}

#[test]
fn a_file_in_utf16() {
    let bench = Bench::new();
    fs::write(bench.path("sites/peaks.yaml"), b"\xff\xfek\0i\0n\0d\0").expect("writable");
    assert_eq!(only(&bench, "file-not-utf8"), "sites/peaks.yaml: this is UTF-16, save it as UTF-8");
}

#[test]
fn a_file_with_a_byte_order_mark_is_read() {
    let bench = Bench::new();
    let path = bench.path("sites/scar.yaml");
    let text = fs::read_to_string(&path).expect("readable");
    fs::write(path, format!("\u{feff}{text}")).expect("writable");
    assert_eq!(names(&bench.judge()), [""; 0]);
}

#[test]
fn a_file_that_is_too_large() {
    let bench = Bench::new();
    let size = usize::try_from(MAX_BYTES).expect("small");
    fs::write(bench.path("sites/full.yaml"), "#".repeat(size)).expect("writable");
    assert_eq!(names(&bench.judge()), [""; 0], "as large as allowed");
    fs::write(bench.path("sites/full.yaml"), "#".repeat(size + 1)).expect("writable");
    assert_eq!(only(&bench, "input-too-large"), "sites/full.yaml: the file is larger than 1024 KiB");
}

#[test]
fn a_file_that_is_nested_too_deep() {
    let bench = Bench::new();
    fs::write(bench.path("sites/deep.yaml"), format!("kind: site\nid: deep\nx: {}\n", "[".repeat(1000)))
        .expect("writable");
    assert!(names(&bench.judge()).contains(&"input-too-large"));
}

#[test]
fn aliases_that_multiply() {
    let bench = Bench::new();
    let first = "kind: site\nid: bomb\na0: &a0 [x, x, x, x, x, x, x, x, x, x]\n".to_owned();
    let more = (1..9).map(|n| format!("a{n}: &a{n} [{}]\n", vec![format!("*a{}", n - 1); 10].join(", ")));
    fs::write(bench.path("sites/bomb.yaml"), first + &more.collect::<String>()).expect("writable");
    assert!(names(&bench.judge()).contains(&"input-too-large"));
}

#[cfg(unix)]
#[test]
fn links_that_lead_back_or_nowhere() {
    use std::os::unix::fs::symlink;
    let bench = Bench::new();
    symlink("..", bench.path("sites/loop")).expect("writable");
    assert_eq!(only(&bench, "file-unreadable"), "sites/loop: the link leads back to a folder that it lies in");
    fs::remove_file(bench.path("sites/loop")).expect("writable");
    symlink("gone.yaml", bench.path("sites/lost.yaml")).expect("writable");
    assert_eq!(only(&bench, "file-unreadable"), "sites/lost.yaml: the link leads to nothing");
}

#[cfg(unix)]
#[test]
fn something_that_is_no_file() {
    let bench = Bench::new();
    // A socket has a name among files and cannot be read as one.
    let _socket = std::os::unix::net::UnixListener::bind(bench.path("sites/s.yaml")).expect("a short path");
    assert_eq!(only(&bench, "file-unreadable"), "sites/s.yaml: it is not a regular file");
}
