//! The sheet for machines: small, in order, with its sources once, and given out as it comes.

use std::collections::BTreeSet;
use std::fs::File;
use std::path::Path;
use std::process::Stdio;

use serde_json::Value;

use crate::fixture::Bench;
use crate::fixture::program::{finish, program};

fn examples() -> [(&'static Path, &'static str); 2] {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    [(root, "examples/varneck"), (root, "examples/saltmere")]
}

fn sheet(folder: &Path, network: &str, more: &[&str]) -> String {
    let ran = finish(program(folder, &[&["sheet", "--network", network], more].concat()));
    assert_eq!((ran.code, ran.err.as_str()), (0, ""), "{more:?}");
    ran.out
}

fn hops(text: &str) -> Vec<Value> {
    let document: Value = serde_json::from_str(text).expect("JSON");
    assert_eq!(document["format_version"], 2);
    document["hops"].as_array().expect("hops").clone()
}

fn list<'v>(value: &'v Value, key: &str) -> &'v [Value] {
    value[key].as_array().unwrap_or_else(|| panic!("{key} is a list"))
}

#[test]
fn values_take_fifty_kilobytes_a_hop_and_a_line_of_text_each() {
    for (folder, network) in examples() {
        let text = sheet(folder, network, &["--format", "json"]);
        let hops = hops(&text);
        assert!(text.len() <= 50_000 * hops.len(), "{network}: {} bytes of {} hops", text.len(), hops.len());
        let lines: Vec<&Value> = hops.iter().flat_map(|hop| list(hop, "lines")).collect();
        let document: Value = serde_json::from_str(&text).expect("JSON");
        let services = document["services"].as_array().into_iter().flatten();
        let lines: Vec<&Value> = lines.into_iter().chain(services.flat_map(|service| list(service, "lines"))).collect();
        let alone = text.lines().filter(|line| line.starts_with("{\"key\":"));
        let alone: Vec<Value> =
            alone.map(|line| serde_json::from_str(line.trim_end_matches(',')).expect("a whole line")).collect();
        assert!(alone.iter().eq(lines.iter().copied()), "every line of the sheet is one of the text");
        for line in lines {
            let keys: BTreeSet<&str> = line.as_object().expect("an object").keys().map(String::as_str).collect();
            assert!(keys.contains("text") != keys.contains("missing"), "{line} has a text or says why not");
            assert_eq!(keys.contains("value"), keys.contains("unit"), "{line}");
            assert!(!keys.contains("from") && !keys.contains("method"), "{line} has no sources");
        }
    }
}

#[test]
fn sources_stand_once_a_hop_and_are_those_of_the_table() {
    for (folder, network) in examples() {
        let text = sheet(folder, network, &["--format", "json", "--sources"]);
        let table = sheet(folder, network, &["--sources"]);
        let mut written = table.lines().map(str::trim_start).filter(|line| !line.is_empty());
        for hop in hops(&text) {
            for of in ["methods", "places"] {
                let each: BTreeSet<&str> = list(&hop, of).iter().filter_map(Value::as_str).collect();
                assert_eq!(each.len(), list(&hop, of).len(), "{of} of {} stand once", hop["hop"]);
            }
            for line in list(&hop, "lines").iter().filter(|line| line.get("text").is_some()) {
                let named = |of: &str, number: &Value| {
                    let number = number.as_u64().and_then(|number| usize::try_from(number).ok()).expect("a number");
                    list(&hop, of)[number].as_str().expect("words").to_owned()
                };
                let words = line["words"].as_str().expect("words");
                assert!(written.any(|row| row.starts_with(words)), "{words} stands in the table, in this order");
                assert_eq!(written.next(), Some(named("methods", &line["method"]).as_str()), "{words}");
                for place in list(line, "from") {
                    assert_eq!(written.next(), Some(format!("from {}", named("places", place)).as_str()), "{words}");
                }
            }
        }
    }
}

#[test]
fn named_hops_are_printed_as_among_all_of_them_on_any_number_of_threads() {
    let (folder, network) = examples()[0];
    let all = hops(&sheet(folder, network, &["--format", "json"]));
    let ids: Vec<&str> = all.iter().map(|hop| hop["hop"].as_str().expect("an id")).collect();
    let two = sheet(folder, network, &["--format", "json", ids[3], ids[1]]);
    assert_eq!(hops(&two), [all[1].clone(), all[3].clone()], "in order of file, whatever the order asked for");
    let more = ["sheet", "--network", network, "--format", "json", "--sources"];
    let on = |threads: &str| {
        let mut command = program(folder, &more);
        command.env("RAYON_NUM_THREADS", threads);
        finish(command).out
    };
    assert_eq!(on("1"), on("4"));
}

#[test]
fn an_unknown_hop_is_told_before_anything_is_printed() {
    let (folder, network) = examples()[0];
    for form in ["table", "json"] {
        let arguments = [
            "sheet",
            "--network",
            network,
            "--format",
            form,
            "exchange-murrgrat",
            "exchange-murgrat",
            "--figure",
            "no",
        ];
        let ran = finish(program(folder, &arguments));
        assert_eq!((ran.code, ran.out.as_str()), (2, ""));
        assert!(ran.err.contains("there is no hop `exchange-murgrat`"), "{}", ran.err);
    }
    assert!(!folder.join("no").exists(), "nor is anything drawn");
}

#[test]
fn a_reader_that_has_enough_ends_the_run_and_says_nothing() {
    let (folder, network) = examples()[0];
    for form in ["table", "json"] {
        let mut command = program(folder, &["sheet", "--network", network, "--format", form, "--sources"]);
        let mut child = command.stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().expect("the program");
        drop(child.stdout.take());
        let output = child.wait_with_output().expect("an end");
        assert_eq!((output.status.code(), output.stderr.len()), (Some(141), 0), "{form}");
    }
}

#[cfg(target_os = "linux")]
#[test]
fn output_that_cannot_be_written_is_said() {
    let bench = Bench::new();
    let mut command = program(&bench.path(""), &["sheet", "--format", "json"]);
    let full = File::options().write(true).open("/dev/full").expect("a device");
    let output = command.stdout(full).stderr(Stdio::piped()).output().expect("the program");
    let said = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.code() == Some(2) && said.contains("cannot write the output"), "{said}");
}
