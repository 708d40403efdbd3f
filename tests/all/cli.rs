//! The program as people and scripts run it: arguments in; exit code, stdout and stderr out.

use std::fs;
use std::path::Path;
use std::process::Stdio;

use crate::fixture::program::{Ran, finish, program, run, run_in};
use crate::fixture::{Bench, copy};
use serde_json::Value;

fn snapshot(name: &str, text: &str) {
    let mut settings = insta::Settings::new();
    settings.set_snapshot_path(crate::fixture::tests_folder().join("cli"));
    settings.set_prepend_module_to_snapshot(false);
    settings.set_omit_expression(true);
    settings.bind(|| insta::assert_snapshot!(name, text));
}

fn json(text: &str) -> Value {
    serde_json::from_str(text).expect("JSON")
}

/// Rule, hop and message of each finding.
fn findings(report: &Value) -> Vec<[String; 3]> {
    let text = |value: &Value| value.as_str().unwrap_or_default().to_owned();
    let list = report["findings"].as_array().expect("a list");
    list.iter().map(|finding| [&finding["rule"], &finding["hop"], &finding["message"]].map(text)).collect()
}

// check

#[test]
fn a_clean_network_is_0() {
    let ran = run(&["check", "examples/varneck"]);
    assert_eq!(ran, Ran { code: 0, out: "5 hops in 18 files: no findings\n".into(), err: String::new() });
    assert_eq!(run(&["check", "examples/saltmere"]).code, 0);
}

/// Part of the corpus, for the forms that are too long to be read as a whole.
const FEW: [&str; 2] = ["examples/faulty/hops/run.yaml", "examples/faulty/hops/spec-reference.yaml"];

#[test]
fn findings_are_1_and_shown_with_their_yaml() {
    let ran = run(&["check", FEW[0], FEW[1]]);
    assert_eq!((ran.code, ran.err.as_str()), (1, ""));
    snapshot("few", &ran.out);
    let ran = run(&["check", "--all", "examples/faulty"]);
    assert_eq!((ran.code, ran.err.as_str()), (1, ""));
    let counted = findings(&json(&run(&["check", "--format", "json", "examples/faulty"]).out));
    for [rule, _, message] in &counted {
        assert!(ran.out.contains(rule.as_str()) && ran.out.contains('╭'), "{rule}: {message}");
    }
    let heads = |word: &str| ran.out.lines().filter(|line| line.starts_with(word)).count();
    assert_eq!(heads("error[") + heads("warning[") + heads("advice["), counted.len());
}

#[test]
fn concise_is_a_line_a_finding() {
    let ran = run(&["check", "--format", "concise", "examples/faulty"]);
    assert_eq!(ran.code, 1);
    assert_eq!(ran.err.lines().count(), 1, "the summary is not in the way of a pipe");
    snapshot("faulty-concise", &ran.out);
}

#[test]
fn json_parses_and_counts() {
    let ran = run(&["check", "--format", "json", "examples/faulty"]);
    assert_eq!((ran.code, ran.err.as_str()), (1, ""));
    let report = json(&ran.out);
    let errors = findings(&report).len() as u64 - report["summary"]["warnings"].as_u64().expect("a count");
    assert_eq!(report["summary"]["errors"].as_u64(), Some(errors));
    snapshot("few-json", &run(&["check", "--format", "json", FEW[0], FEW[1]]).out);
}

#[test]
fn without_unicode_only_specs_and_units_leave_ascii() {
    let ran = run(&["check", "--unicode", "never", "examples/faulty"]);
    let mut odd: Vec<char> = ran.out.chars().filter(|c| !c.is_ascii()).collect();
    odd.sort_unstable();
    odd.dedup();
    let specs = fs::read_to_string("examples/faulty/equipment/mounting.yaml").expect("readable");
    odd.retain(|c| !specs.contains(*c) && !"°²Ω".contains(*c));
    assert!(odd.is_empty(), "{odd:?} in {}", ran.out);
    assert!(run(&["check", "--unicode", "always", "examples/faulty"]).out.contains('╭'));
}

#[test]
fn every_width_is_kept_to() {
    for width in ["40", "60", "120"] {
        let ran = run(&["check", "--width", width, "examples/faulty"]);
        let most: usize = width.parse().expect("a number");
        // YAML and the labels under it are as long as they are.
        let prose = |line: &&str| ["  × ", "  │ ", "  help: ", "        "].iter().any(|start| line.starts_with(start));
        let long = ran.out.lines().filter(prose).find(|line| !line.contains('╰') && line.chars().count() > most);
        assert_eq!(long, None);
    }
    assert_eq!(run(&["check", "--width", "80", "examples/faulty"]).out, run(&["check", "examples/faulty"]).out);
    assert_eq!(run(&["check", "--width", "39", "examples/faulty"]).code, 2);
}

#[test]
fn nothing_to_check_is_3() {
    let folder = tempfile::tempdir().expect("a folder");
    fs::create_dir(folder.path().join(".git")).expect("writable");
    let ran = run_in(folder.path(), &["check"]);
    assert_eq!((ran.code, ran.out.as_str()), (3, ""));
    assert_eq!(ran.err, "hopwright: no YAML files found in .\n");
    fs::write(folder.path().join("core"), [0, 159, 146, 150]).expect("writable");
    fs::write(folder.path().join("notes.txt"), "kind: hop\n").expect("writable");
    assert_eq!(run_in(folder.path(), &["check", "."]).code, 3);
    let ran = run_in(folder.path(), &["check", "--format", "json"]);
    assert_eq!((ran.code, &json(&ran.out)["summary"]["files"]), (3, &0.into()));
}

#[test]
fn yaml_of_somebody_else_is_1() {
    let folder = tempfile::tempdir().expect("a folder");
    fs::create_dir(folder.path().join(".git")).expect("writable");
    fs::write(folder.path().join("compose.yaml"), "services:\n  web: { image: nginx }\n").expect("writable");
    let ran = run_in(folder.path(), &["check", "--format", "concise"]);
    assert_eq!(ran.code, 1);
    assert_eq!(ran.out, ".: error[network-missing] .: no network document is found in this folder or above it\n");
}

#[test]
fn a_truncated_file_is_named_and_the_rest_is_checked() {
    let bench = Bench::new();
    let whole = fs::read_to_string(bench.path("hops/ridge.yaml")).expect("readable");
    fs::write(bench.path("hops/other.yaml"), whole.replace("id: ridge", "id: other").replace("40 m", "101 m"))
        .expect("writable");
    fs::write(bench.path("hops/ridge.yaml"), &whole[..whole.find("at: entry").expect("there")]).expect("writable");
    let ran = run_in(&bench.path(""), &["check", "--format", "concise"]);
    assert_eq!(ran.code, 1);
    snapshot("truncated", &ran.out);
}

#[test]
fn a_hop_that_names_a_missing_site_is_1() {
    let bench = Bench::new();
    let path = bench.path("hops/ridge.yaml");
    let text = fs::read_to_string(&path).expect("readable").replace("site: mill", "site: mull");
    fs::write(&path, text).expect("writable");
    let ran = run_in(&bench.path(""), &["check", "--format", "concise"]);
    assert_eq!(ran.code, 1);
    assert_eq!(ran.out, "hops/ridge.yaml:38:11: error[reference-dangling] ridge: the network has no site `mull`\n");
}

#[test]
fn a_path_that_is_not_there_is_2() {
    let ran = run(&["check", "examples/varnek"]);
    assert_eq!((ran.code, ran.out.as_str()), (2, ""));
    assert_eq!(ran.err, "hopwright: examples/varnek: there is no such file or folder\n");
}

#[test]
fn arguments_that_mean_nothing_are_2() {
    for args in [&["chekc"][..], &["check", "--format", "xml"], &["check", "--fail-on", "never"], &[]] {
        let ran = run(args);
        assert_eq!((ran.code, ran.out.as_str()), (2, ""), "{args:?}");
        assert!(ran.err.contains("--help") || ran.err.contains("Usage:"), "{args:?}: {}", ran.err);
    }
    for args in [&["--help"][..], &["--version"], &["check", "--help"]] {
        let ran = run(args);
        assert_eq!((ran.code, ran.err.as_str()), (0, ""), "{args:?}");
    }
}

#[test]
fn the_fail_level_decides_the_exit_code_and_the_least_severity_what_is_shown() {
    let bench = Bench::new();
    let path = bench.path("hops/ridge.yaml");
    let text = fs::read_to_string(&path).expect("readable").replace("      bonds_to: ring\n", "");
    fs::write(&path, text).expect("writable");
    let run = |args: &[&str]| run_in(&bench.path(""), &[&["check", "--format", "concise"], args].concat());
    let warning = "hops/ridge.yaml:33:5: warning[ground-bond-unstated] ridge: end a: the grounding conductor bonds to no \
                   stated earth point\n";
    assert_eq!((run(&[]).code, run(&[]).out.as_str()), (0, warning));
    assert_eq!(run(&["--fail-on", "warning"]).code, 1);
    assert_eq!(run(&["--fail-on", "advice"]).code, 1);
    let hidden = run(&["--fail-on", "warning", "--min-severity", "error"]);
    assert_eq!((hidden.code, hidden.out.as_str()), (1, ""), "what is not shown still counts");
}

#[test]
fn a_network_sets_severities() {
    let bench = Bench::new();
    let path = bench.path("network.yaml");
    let text = fs::read_to_string(&path).expect("readable");
    let set = text.replace("rules: { ", "rules: { ground-bond-unstated: error, ");
    assert_ne!(set, text);
    fs::write(&path, set).expect("writable");
    let hop = bench.path("hops/ridge.yaml");
    let text = fs::read_to_string(&hop).expect("readable").replace("      bonds_to: ring\n", "");
    fs::write(&hop, text).expect("writable");
    let ran = run_in(&bench.path(""), &["check", "--format", "json"]);
    assert_eq!(ran.code, 1);
    let finding = &json(&ran.out)["findings"][0];
    assert_eq!((&finding["severity"], &finding["default_severity"]), (&"error".into(), &"warning".into()));
}

#[test]
fn colour_is_asked_for_in_order() {
    let coloured = |args: &[&str], variables: &[(&str, &str)]| {
        let folder = Path::new(env!("CARGO_MANIFEST_DIR"));
        let mut command = program(folder, &[&["check", "examples/faulty"], args].concat());
        command.envs(variables.iter().copied());
        finish(command).out.contains('\u{1b}')
    };
    assert!(!coloured(&[], &[]), "no terminal");
    assert!(coloured(&["--color", "always"], &[("NO_COLOR", "1")]));
    assert!(!coloured(&["--color", "never"], &[("FORCE_COLOR", "1")]));
    assert!(!coloured(&[], &[("NO_COLOR", "1"), ("FORCE_COLOR", "1")]));
    assert!(coloured(&[], &[("NO_COLOR", ""), ("FORCE_COLOR", "1")]), "an empty variable is not set");
    assert!(coloured(&[], &[("CLICOLOR_FORCE", "1")]));
    assert!(!coloured(&[], &[("FORCE_COLOR", "0")]));
}

#[test]
fn one_file_is_reported_and_its_whole_network_loaded() {
    let root = tempfile::tempdir().expect("a folder");
    fs::create_dir(root.path().join(".git")).expect("writable");
    copy(Path::new("examples/faulty"), &root.path().join("pit"));
    let from = |folder: &str, path: &str| {
        let ran = run_in(&root.path().join(folder), &["check", "--format", "json", path]);
        assert_eq!(ran.code, 1, "{}", ran.err);
        json(&ran.out)
    };
    let files = ["", "equipment", "hops", "records", "sites"].map(|folder| {
        let entries = fs::read_dir(root.path().join("pit").join(folder)).expect("a folder");
        entries.filter(|entry| entry.as_ref().expect("readable").path().is_file()).count()
    });
    let files: usize = files.iter().sum();
    let expected = findings(&from("", "pit/hops/mount.yaml"));
    assert_eq!(expected.len(), 2);
    assert!(expected.iter().all(|[_, hop, _]| hop == "mount"));
    for (folder, path) in [("pit", "hops/mount.yaml"), ("pit/hops", "mount.yaml"), ("pit/sites", "../hops/mount.yaml")]
    {
        let report = from(folder, path);
        assert_eq!(findings(&report), expected, "{path} from {folder}");
        assert_eq!(report["summary"]["files"], files, "{path} from {folder}");
        let shown = report["findings"][0]["labels"][0]["path"].as_str().expect("a path");
        assert!(root.path().join(folder).join(shown).is_file(), "{shown} from {folder}");
    }
    let full = root.path().join("pit/hops/mount.yaml");
    assert_eq!(findings(&from("", full.to_str().expect("UTF-8"))), expected);
    // A site that findings of a hop point at is touched by them.
    let at_site: Vec<String> =
        findings(&from("pit", "sites/crusher.yaml")).into_iter().map(|[rule, ..]| rule).collect();
    assert_eq!(at_site, ["pole-outside-clamp"]);
}

#[test]
fn threads_and_order_change_nothing() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let all = run(&["check", "examples/faulty"]).out;
    for threads in ["1", "4"] {
        let mut command = program(root, &["check", "examples/faulty"]);
        command.env("RAYON_NUM_THREADS", threads);
        assert_eq!(finish(command).out, all, "{threads} threads");
    }
    let [one, other] = ["examples/faulty/hops/run.yaml", "examples/faulty/hops/budget.yaml"];
    assert_eq!(run(&["check", one, other]).out, run(&["check", other, one]).out);
    assert_eq!(run(&["check", one, one]).out, run(&["check", one]).out);
}

// sheet

#[test]
fn a_sheet_is_a_table() {
    let ran = run(&["sheet", "--full", "--network", "tests/rules/base", "ridge"]);
    assert_eq!((ran.code, ran.err.as_str()), (0, ""));
    snapshot("sheet", &ran.out);
    let ran = run_in(Path::new("tests/rules/base"), &["sheet", "--sources"]);
    assert_eq!(ran.code, 0);
    let source = "        as written\n        from hops/ridge.yaml:5 channel.a_to_b\n";
    assert!(ran.out.contains(source) && ran.out.contains("\n  Assumptions\n"), "{}", ran.out);
}

#[test]
fn a_sheet_is_json() {
    let ran = run_in(Path::new("tests/rules/base"), &["sheet", "--format", "json", "ridge"]);
    assert_eq!(ran.code, 0);
    let sheet = json(&ran.out);
    let lines = sheet["hops"][0]["lines"].as_array().expect("a list");
    let mut keys: Vec<&str> = lines.iter().map(|line| line["key"].as_str().expect("a key")).collect();
    let count = keys.len();
    keys.sort_unstable();
    keys.dedup();
    assert_eq!(keys.len(), count, "every line has a key of its own");
    let table = run(&["sheet", "--full", "--network", "tests/rules/base", "ridge"]).out;
    for line in lines {
        let said = line["text"].as_str().unwrap_or_default();
        assert!(table.contains(said), "{} is {said} in JSON and not in the table", line["key"]);
    }
    // Unrounded values may differ in their last bits from one machine to the next. The texts of all are in the table.
    let few = lines.iter().filter(|line| line["key"].as_str().is_some_and(|key| key.starts_with("path.")));
    let short = few.map(|line| match line["value"].as_f64() {
        Some(value) => format!("{} {value:.5e} {}: {}\n", line["key"], line["unit"], line["text"]),
        None => format!("{}: {} {}\n", line["key"], line["text"], line["missing"]),
    });
    snapshot("sheet-json", &short.collect::<String>());
}

#[test]
fn a_hop_that_is_not_there_is_2_and_the_nearest_is_named() {
    let ran = run(&["sheet", "--network", "examples/varneck", "exchange-murgrat"]);
    assert_eq!((ran.code, ran.out.as_str()), (2, ""));
    assert!(ran.err.contains("there is no hop `exchange-murgrat`"), "{}", ran.err);
    assert!(ran.err.contains("did you mean `exchange-murrgrat`?"), "{}", ran.err);
}

#[test]
fn a_network_without_hops_has_no_sheet() {
    let bench = Bench::new();
    fs::remove_file(bench.path("hops/ridge.yaml")).expect("writable");
    let ran = run_in(&bench.path(""), &["sheet", "--full"]);
    assert_eq!((ran.code, ran.out.as_str()), (3, ""));
}

#[test]
fn a_sheet_opens_with_the_verdict_and_a_dozen_lines() {
    let ran = run(&["sheet", "--network", "examples/varneck", "exchange-murrgrat"]);
    assert_eq!(ran.code, 0, "{}", ran.err);
    snapshot("sheet-summary", &ran.out);
    assert!(ran.out.lines().count() <= 16 && ran.out.contains("no findings"), "{}", ran.out);
    let ran = run(&["sheet", "--network", "examples/faulty", "run"]);
    assert!(ran.out.contains(" errors") && ran.out.contains("`check` shows them"), "{}", ran.out);
}

#[test]
fn hops_are_named_by_id_pattern_site_or_file() {
    let hops = |words: &[&str]| {
        let ran = run(&[&["sheet", "--network", "examples/varneck", "--format", "json"][..], words].concat());
        let hops = json(&ran.out);
        let ids = hops["hops"].as_array().into_iter().flatten();
        ids.filter_map(|hop| hop["hop"].as_str()).map(str::to_owned).collect::<Vec<_>>()
    };
    assert_eq!(hops(&["exchange-*"]), ["exchange-murrgrat", "exchange-untervarn"]);
    assert_eq!(hops(&["site:kerbjoch"]), ["murrgrat-kerbjoch"]);
    assert_eq!(hops(&["examples/varneck/hops/solleralm-murrgrat.yaml"]), ["solleralm-murrgrat"]);
    assert_eq!(hops(&["site:kerbjoch", "solleralm-murrgrat"]).len(), 2);
    let ran = run(&["sheet", "--network", "examples/varneck", "site:kerbjok"]);
    assert_eq!(ran.code, 2);
    assert!(ran.err.contains("no hop that can be evaluated ends at a site `kerbjok`"), "{}", ran.err);
    let ran = run(&["sheet", "--network", "examples/faulty", "spec"]);
    assert!(ran.err.contains("hop `spec` cannot be evaluated: `check` says why"), "{}", ran.err);
}

#[test]
fn of_a_hop_that_is_named_by_its_file_everything_is_told() {
    let bench = Bench::of_example("varneck");
    bench.change("sites/murrgrat.yaml", "ground_height: 2226 m", "ground_height: 2206 m");
    let ran = run_in(&bench.path(""), &["check", "hops/exchange-murrgrat.yaml", "--format", "concise"]);
    assert!(ran.out.contains("profile-ends-disagree"), "{}", ran.out);
    for word in ["exchange-murrgrat", "*-murrgrat", "site:murrgrat"] {
        let ran = run_in(&bench.path(""), &["check", word, "--format", "concise"]);
        assert!(ran.out.contains("profile-ends-disagree"), "{word}: {}{}", ran.out, ran.err);
    }
    let ran = run_in(&bench.path(""), &["check", "exchange-untervarn"]);
    assert_eq!(ran.code, 0, "{}", ran.out);
    let ran = run_in(&bench.path(""), &["check", "exchange-untervran"]);
    assert!(ran.code == 2 && ran.err.contains("did you mean `exchange-untervarn`?"), "{}", ran.err);
}

#[test]
fn a_watch_judges_again_when_a_file_is_saved_by_renaming_or_appears() {
    use std::io::{BufRead as _, BufReader};
    let bench = Bench::new();
    let hop = bench.path("hops/ridge.yaml");
    let text = fs::read_to_string(&hop).expect("readable");
    let mut command = program(&bench.path(""), &["check", "--watch", "--format", "concise", "."]);
    let mut child = command.stdout(Stdio::null()).stderr(Stdio::piped()).spawn().expect("the program");
    let mut lines = BufReader::new(child.stderr.take().expect("piped")).lines();
    let mut summary = || loop {
        let line = lines.next().expect("a line").expect("text");
        if line.contains(" in ") && line.contains("file") {
            return line;
        }
    };
    assert!(summary().contains("no findings"));
    let beside = bench.path("hops/.ridge.tmp");
    fs::write(&beside, text.replace("transmit_power: 10 dBm", "transmit_power: 40 dBm")).expect("writable");
    fs::rename(&beside, &hop).expect("renamed");
    assert!(summary().contains("1 error"));
    fs::write(&hop, text.replace("site: scar", "site: crag")).expect("writable");
    assert!(summary().contains("1 error"), "a site that is not there");
    let site = fs::read_to_string(bench.path("sites/scar.yaml")).expect("readable");
    fs::write(bench.path("sites/crag.yaml"), site.replace("id: scar", "id: crag")).expect("writable");
    assert!(summary().contains("no findings"), "a file that appears mends what led nowhere");
    child.kill().expect("killed");
    child.wait().expect("ended");
}

#[test]
fn completions_and_manuals_come_from_the_arguments() {
    for shell in ["bash", "elvish", "fish", "powershell", "zsh"] {
        let ran = run(&["completions", shell]);
        assert!(ran.code == 0 && ran.out.contains("hopwright") && ran.out.contains("stdin-filename"), "{shell}");
    }
    let ran = run(&["man"]);
    assert!(ran.code == 0 && ran.out.contains(".TH hopwright 1"), "{}", ran.out);
    let folder = tempfile::tempdir().expect("a folder");
    let out = folder.path().display().to_string();
    let ran = run(&["man", "--out", &out]);
    assert_eq!(ran.code, 0, "{}", ran.err);
    let page = fs::read_to_string(folder.path().join("hopwright-check.1")).expect("a page");
    assert!(page.contains("hopwright check"), "{page}");
}

// explain

#[test]
fn explain_takes_what_check_prints_and_families() {
    assert_eq!(run(&["explain", "error[path-obstructed]"]).out, run(&["explain", "path-obstructed"]).out);
    let ran = run(&["explain", "mount"]);
    assert!(
        ran.code == 0 && ran.out.contains("tilt-out-of-reach") && !ran.out.contains("path-obstructed"),
        "{}",
        ran.out
    );
}

#[test]
fn explain_lists_every_rule() {
    let ran = run(&["explain"]);
    assert_eq!(ran.code, 0);
    let listed = |name: &str| ran.out.lines().any(|line| line.split_whitespace().next() == Some(name));
    assert!(hopwright::rules::every().all(|rule| listed(rule.name)));
    snapshot("explain", &ran.out);
}

#[test]
fn explain_prints_a_manual() {
    let ran = run(&["explain", "tilt-out-of-reach"]);
    assert_eq!((ran.code, ran.err.as_str()), (0, ""));
    snapshot("explain-tilt", &ran.out);
}

#[test]
fn a_rule_that_is_not_there_is_2_and_the_nearest_is_named() {
    let ran = run(&["explain", "tilt-out-of-rich"]);
    assert_eq!((ran.code, ran.out.as_str()), (2, ""));
    assert_eq!(ran.err, "hopwright: there is no rule `tilt-out-of-rich`; did you mean `tilt-out-of-reach`?\n");
    let ran = run(&["explain", "weather"]);
    assert_eq!(ran.err, "hopwright: there is no rule `weather`; `explain` without a name lists them\n");
}

// schema

#[test]
fn schema_writes_what_is_in_the_repository() {
    let folder = tempfile::tempdir().expect("a folder");
    let ran = run_in(folder.path(), &["schema", "--out", "made"]);
    assert_eq!((ran.code, ran.err.as_str()), (0, ""));
    let made: Vec<&str> = ran.out.lines().collect();
    // One a kind, one for the report, one for the comparison.
    assert_eq!(made.len(), hopwright::spec::Kind::ALL.len() + 2);
    for path in made {
        let name = Path::new(path).file_name().expect("a name");
        let text = fs::read_to_string(folder.path().join(path)).expect("written");
        assert_eq!(text, fs::read_to_string(Path::new("schema").join(name)).expect("readable"), "{path}");
    }
    let ran = run_in(folder.path(), &["schema", "--out", "made/hop.json"]);
    assert_eq!(ran.code, 2);
    assert!(ran.err.starts_with("hopwright: cannot write made/hop.json"), "{}", ran.err);
}

// new

#[test]
fn a_new_network_is_clean_and_never_written_over() {
    let folder = tempfile::tempdir().expect("a folder");
    fs::create_dir(folder.path().join(".git")).expect("writable");
    assert_eq!(run_in(folder.path(), &["new", "first"]).code, 0);
    let ran = run_in(folder.path(), &["check", "first"]);
    // Nobody has approved it yet: that is all there is to say.
    assert_eq!(ran.code, 0, "{}", ran.out);
    assert!(ran.out.starts_with("advice[title-block-open]"), "{}", ran.out);
    assert!(ran.out.ends_with("1 hop in 4 files: 1 piece of advice\n"), "{}", ran.out);
    let ran = run_in(folder.path(), &["new", "first"]);
    assert_eq!(ran.code, 2);
    assert!(ran.err.contains("not empty"), "{}", ran.err);
}

/// The form of a record with its source mark, which follows every letter of the sources, put out of sight.
fn without_mark(text: &str) -> String {
    let (before, after) = text.split_once("  mark: \"").expect("a mark");
    let (mark, rest) = after.split_once('"').expect("its end");
    assert!(mark.len() == 16 && mark.bytes().all(|byte| byte.is_ascii_hexdigit()), "{mark}");
    format!("{before}  mark: \"{}\"{rest}", "-".repeat(16))
}

#[test]
fn a_new_record_is_a_form_that_loads_and_is_never_written_over() {
    let bench = Bench::new();
    let ran = run_in(&bench.path(""), &["new", "record", "ridge/b"]);
    assert_eq!((ran.code, ran.out.as_str()), (0, "./records/ridge-b-1.yaml\n"));
    let form = fs::read_to_string(bench.path("records/ridge-b-1.yaml")).expect("written");
    snapshot("new-record", &without_mark(&form));
    let checked = run_in(&bench.path(""), &["check"]);
    assert_eq!(checked.code, 0, "nothing is wrong with a form");
    snapshot("new-record-check", &checked.out);

    let ran = run_in(&bench.path(""), &["new", "record", "ridge/b"]);
    assert_eq!(ran.out, "./records/ridge-b-2.yaml\n");
    let ran = run_in(&bench.path(""), &["new", "record", "ridge/b", "--out", "elsewhere"]);
    assert_eq!(ran.out, "elsewhere/ridge-b-3.yaml\n");
    assert_eq!(form, fs::read_to_string(bench.path("records/ridge-b-1.yaml")).expect("still there"));

    let ran = run_in(&bench.path(""), &["new", "record", "rigde/b"]);
    assert_eq!((ran.code, ran.out.as_str()), (2, ""));
    assert!(ran.err.contains("did you mean `ridge/b`?"), "{}", ran.err);
    let ran = run_in(&bench.path(""), &["new", "record", "ridge"]);
    assert_eq!(ran.code, 2);
}

#[test]
fn a_figure_is_of_one_hop_that_has_a_profile() {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("path.svg");
    let name = file.display().to_string();
    let ran = run(&["sheet", "--network", "examples/varneck", "exchange-murrgrat", "--figure", &name]);
    assert_eq!(ran.code, 0, "{}", ran.err);
    let svg = fs::read_to_string(&file).expect("a drawing");
    assert!(svg.starts_with("<svg ") && svg.trim_end().ends_with("</svg>") && svg.contains("<title>Path profile from"));
    let ran = run(&["sheet", "--network", "examples/varneck", "exchange-murrgrat", "--figure", "path.png"]);
    assert!(ran.code == 2 && ran.err.contains("name it `….svg`"), "{}", ran.err);
    for wrong in [&["--network", "examples/varneck"][..], &["--network", "tests/rules/base", "ridge"]] {
        let ran = run(&[&["sheet", "--figure", &name][..], wrong].concat());
        assert_eq!(ran.code, 2, "{wrong:?}");
        assert!(ran.err.contains("one hop") || ran.err.contains("no profile"), "{}", ran.err);
    }
}

// README

/// Transcripts in the README are what the program prints today.
#[test]
fn the_readme_shows_what_is_printed() {
    let readme = fs::read_to_string("README.md").expect("a README");
    let ran = run(&["check", "examples/faulty/hops/spec.yaml"]);
    assert!(readme.contains(ran.out.trim_end()), "{}", ran.out);

    let folder = tempfile::tempdir().expect("a folder");
    copy(Path::new("examples/varneck"), &folder.path().join("varneck"));
    let hop = folder.path().join("varneck/hops/exchange-murrgrat.yaml");
    let text = fs::read_to_string(&hop).expect("the hop");
    fs::write(&hop, text.replacen("orientation: inverted", "orientation: upright", 1)).expect("written");
    let ran = run_in(folder.path(), &["check", "varneck"]);
    assert!(readme.contains(ran.out.trim_end()), "{}", ran.out);
}
