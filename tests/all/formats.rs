//! The forms of findings: each over one mixed corpus, each held to what its readers demand.

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use crate::fixture::program::{program, run, run_in, run_on};
use crate::fixture::sarif::Sarif;
use crate::fixture::{Bench, copy};
use serde_json::Value;

/// Every form, by the word on the command line.
pub const FORMS: [&str; 9] = ["full", "concise", "narrated", "json", "sarif", "github", "gitlab", "junit", "markdown"];

fn snapshot(name: &str, text: &str) {
    let mut settings = insta::Settings::new();
    settings.set_snapshot_path(crate::fixture::tests_folder().join("forms"));
    settings.set_prepend_module_to_snapshot(false);
    settings.set_omit_expression(true);
    settings.bind(|| insta::assert_snapshot!(name, text));
}

fn faulty(form: &str) -> String {
    run(&["check", "examples/faulty", "--format", form]).out
}

fn json(text: &str) -> Value {
    serde_json::from_str(text).expect("JSON")
}

fn list(value: &Value) -> &[Value] {
    value.as_array().expect("a list")
}

fn text(value: &Value) -> &str {
    value.as_str().unwrap_or_else(|| panic!("no text: {value}"))
}

/// A copy of the base network whose texts do their worst, in a file with an awkward name.
fn hostile() -> Bench {
    let bench = Bench::new();
    let site = bench.path("sites/scar.yaml");
    let mut whole = fs::read_to_string(&site).expect("readable");
    whole.push_str(
        "power_lines:\n  - title: \"::error file=a,b::owned 100% ##[error]x\\r\\n::warning::@all <b>|`[t](http://x.y)` 😀\\u0001\"\n    \
         distance: 1 m\n",
    );
    fs::write(site, whole).expect("writable");
    let hop = fs::read_to_string(bench.path("hops/ridge.yaml")).expect("readable");
    fs::remove_file(bench.path("hops/ridge.yaml")).expect("writable");
    // Beyond the first plane of Unicode a character is two UTF-16 units and four bytes.
    let hop = hop.replace(
        "      model: tilter\n      orientation: upright\n",
        "      { model: tilter, \"😀\": 1, orientation: upright }\n",
    );
    fs::write(bench.path("hops/ri dge:100%,#1.yaml"), hop).expect("writable");
    bench
}

/// A hop with errors, a warning and second places: what a person can read of a form that is long. The whole corpus is held
/// to the schemas and properties of the forms further down.
fn few(form: &str) -> String {
    run(&["check", "examples/faulty/hops/run.yaml", "examples/faulty/hops/spec-reference.yaml", "--format", form]).out
}

/// A report of tests with the first two of all cases that differ by the name of their rule alone.
fn with_few_alike(report: &str) -> String {
    let mut seen: Vec<String> = Vec::new();
    let mut cases = report.split_inclusive("\n    <testcase ");
    let head = cases.next().expect("a head").to_owned();
    cases.fold(head, |text, case| {
        let alike: String =
            case.split(" name=\"").map(|part| part.split_once('"').map_or(part, |(_, rest)| rest)).collect();
        seen.push(alike.clone());
        if seen.iter().filter(|other| **other == alike).count() > 2 { text } else { text + case }
    })
}

#[test]
fn every_form_as_it_is_read() {
    // `full`, `concise` and `json` have theirs beside the tests of the command line.
    for form in ["narrated", "github", "gitlab", "markdown"] {
        snapshot(&format!("few-{form}"), &few(form));
    }
    snapshot("few-junit", &with_few_alike(&few("junit")));
    // The manuals of the rules are in the list of `explain`.
    let mut report = json(&few("sarif"));
    let rules = report["runs"][0]["tool"]["driver"]["rules"].as_array_mut().expect("a list");
    assert_eq!(rules.len(), hopwright::rules::every().count());
    rules.retain(|rule| rule["id"] == "run-too-long");
    report["runs"][0]["results"].as_array_mut().expect("a list").truncate(3);
    snapshot("few-sarif", &serde_json::to_string_pretty(&report).expect("JSON"));
}

/// Rule and line of each finding, as the form of a line a finding tells them.
fn told(concise: &str) -> Vec<(String, String)> {
    let mut told: Vec<(String, String)> = concise
        .lines()
        .map(|line| {
            let (place, rest) = line.split_once(": ").expect("a place");
            let rule = rest.split_once('[').and_then(|(_, rest)| rest.split_once(']')).expect("a rule").0;
            let file_and_line = place.rsplit_once(':').expect("a column").0;
            (rule.to_owned(), file_and_line.to_owned())
        })
        .collect();
    told.sort();
    told
}

#[test]
fn every_form_tells_of_all_findings_of_the_corpus() {
    let all = told(&faulty("concise"));
    assert!(all.len() > 30, "{all:?}");
    let as_list = |mut pairs: Vec<(String, String)>| {
        pairs.sort();
        pairs
    };
    let sarif = json(&faulty("sarif"));
    let results = list(&sarif["runs"][0]["results"]).iter().map(|result| {
        let place = &result["locations"][0]["physicalLocation"];
        let line = place["region"]["startLine"].as_u64().expect("a line");
        (text(&result["ruleId"]).to_owned(), format!("{}:{line}", text(&place["artifactLocation"]["uri"])))
    });
    assert_eq!(as_list(results.collect()), all);
    let gitlab = json(&faulty("gitlab"));
    let issues = list(&gitlab).iter().map(|issue| {
        let line = issue["location"]["lines"]["begin"].as_u64().expect("a line");
        (text(&issue["check_name"]).to_owned(), format!("{}:{line}", text(&issue["location"]["path"])))
    });
    assert_eq!(as_list(issues.collect()), all);
    for form in ["narrated", "markdown", "junit"] {
        let out = faulty(form);
        for (rule, place) in &all {
            assert!(out.contains(rule.as_str()) && out.contains(place.as_str()), "{form}: {rule} at {place}");
        }
    }
}

#[test]
fn the_exit_code_does_not_depend_on_the_form() {
    for form in FORMS {
        for (network, code) in [("examples/faulty", 1), ("examples/varneck", 0)] {
            assert_eq!(run(&["check", network, "--format", form]).code, code, "{network} as {form}");
        }
        assert_eq!(run(&["check", "examples/faulty", "--format", form, "--exit-zero"]).code, 0, "{form}");
    }
    assert_eq!(run(&["check", "no-such-folder", "--exit-zero"]).code, 2, "what did not run is not forced");
}

#[test]
fn several_forms_at_once_and_whole_files() {
    let folder = tempfile::tempdir().expect("a folder");
    let file = |name: &str| folder.path().join(name).display().to_string();
    let outputs: Vec<String> = FORMS.iter().map(|form| format!("{form}={}", file(&format!("out/{form}")))).collect();
    let mut args = vec!["check", "examples/faulty", "-q", "--format", "concise"];
    for output in &outputs {
        args.extend(["--output", output]);
    }
    let ran = run(&args);
    assert_eq!((ran.code, ran.err.as_str(), ran.out), (1, "", faulty("concise")));
    let mut written: Vec<String> = fs::read_dir(folder.path().join("out"))
        .expect("made")
        .map(|entry| entry.expect("readable").file_name().to_string_lossy().into_owned())
        .collect();
    written.sort();
    let mut forms = FORMS.map(str::to_owned).to_vec();
    forms.sort();
    assert_eq!(written, forms, "nothing half-written is left");
    for form in FORMS {
        let kept = fs::read_to_string(folder.path().join("out").join(form)).expect("written");
        assert!(kept.starts_with(&faulty(form)), "{form}");
    }
    let ran = run(&["check", "examples/faulty", "--output", "yaml=x"]);
    assert_eq!(ran.code, 2);
    assert!(ran.err.contains("one of: full, concise"), "{}", ran.err);
    assert_eq!(run(&["check", "examples/faulty", "--output", "sarif="]).code, 2);
    let blocked = format!("json={}", file("out/json/below"));
    assert_eq!(run(&["check", "examples/faulty", "--output", &blocked]).code, 2, "what cannot be written did not run");
}

#[test]
fn quiet_and_verbose() {
    let loud = run(&["check", "examples/faulty", "--format", "concise"]);
    let quiet = run(&["check", "examples/faulty", "--format", "concise", "-q"]);
    assert_eq!((quiet.code, quiet.out, quiet.err.as_str()), (1, loud.out, ""));
    let silent = run(&["check", "examples/faulty", "-qq"]);
    assert_eq!((silent.code, silent.out.as_str(), silent.err.as_str()), (1, "", ""));
    let verbose = run(&["check", "examples/varneck", "-v"]);
    assert_eq!(verbose.out, run(&["check", "examples/varneck"]).out);
    for line in
        ["read examples/varneck/hops/exchange-murrgrat.yaml", "network `varneck`: examples/varneck/network.yaml"]
    {
        assert!(verbose.err.contains(line), "{}", verbose.err);
    }
}

#[test]
fn statistics_count_by_rule() {
    let ran = run(&["check", "examples/faulty", "--statistics"]);
    assert_eq!(ran.code, 1);
    snapshot("faulty-statistics", &ran.out);
    let counted: u64 =
        list(&json(&faulty("json"))["statistics"]).iter().map(|row| row["count"].as_u64().expect("a count")).sum();
    assert_eq!(counted, list(&json(&faulty("json"))["findings"]).len() as u64);
}

#[test]
fn stdin_takes_the_place_of_a_file() {
    let bench = Bench::new();
    let name = "hops/ridge.yaml";
    let hop = fs::read_to_string(bench.path(name)).expect("readable");
    let higher = hop.replace("transmit_power: 10 dBm", "transmit_power: 40 dBm");
    let check = ["check", "-", "--stdin-filename", name, "--format", "concise"];
    let clean = run_on(&bench.path(""), &check, &hop);
    assert_eq!((clean.code, clean.out.as_str()), (0, ""), "{}", clean.err);
    assert!(clean.err.starts_with("1 hop in 8 files"), "{}", clean.err);
    let ran = run_on(&bench.path(""), &check, &higher);
    assert_eq!(ran.code, 1);
    assert!(ran.out.contains("hops/ridge.yaml:18:21: error[transmit-power-out-of-range]"), "{}", ran.out);
    fs::write(bench.path(name), &higher).expect("writable");
    assert_eq!(run_in(&bench.path(""), &["check", name, "--format", "concise"]).out, ran.out);
    // It need not be there yet.
    fs::remove_file(bench.path(name)).expect("writable");
    assert_eq!(run_on(&bench.path(""), &check, &higher).out, ran.out);
    for wrong in
        [&["check", "-"][..], &["check", "-", "hops", "--stdin-filename", name], &["check", "--stdin-filename", name]]
    {
        assert_eq!(run_on(&bench.path(""), wrong, &hop).code, 2, "{wrong:?}");
    }
}

#[test]
fn long_lines_are_cut_around_the_label() {
    let bench = Bench::new();
    let path = bench.path("hops/ridge.yaml");
    let hop = fs::read_to_string(&path).expect("readable");
    let long = format!("{{ note: {}, height: 8 GHz, more: {} }}", "x".repeat(300), "y".repeat(300));
    fs::write(&path, format!("{hop}extra: {long}\n")).expect("writable");
    for (width, unicode, dots) in [("60", "auto", "…"), ("80", "never", "...")] {
        let ran = run_in(&bench.path(""), &["check", "--width", width, "--unicode", unicode]);
        let most: usize = width.parse().expect("a number");
        let line = ran.out.lines().find(|line| line.contains("extra:")).expect("the line is shown");
        assert!(line.chars().count() <= most && line.ends_with(dots), "{}", ran.out);
        assert!(ran.out.contains("hops/ridge.yaml:68:1"), "{}", ran.out);
    }
    // In flow style everything stands on the one line, far to the right.
    let flow =
        hop.replace("    height: 8 m\n", &format!("    # {}\n    height: {}8 GHz\n", "x".repeat(200), " ".repeat(150)));
    fs::write(&path, flow).expect("writable");
    let ran = run_in(&bench.path(""), &["check", "--width", "70"]);
    assert!(ran.out.contains("should be a length") && ran.out.contains("…"), "{}", ran.out);
    let at = ran.out.lines().position(|line| line.contains("8 GHz")).expect("the value is shown");
    let column = |line: &str, what: &str| line.find(what).map(|at| line[..at].chars().count());
    let (shown, marked) = (ran.out.lines().nth(at).expect("a line"), ran.out.lines().nth(at + 1).expect("a line"));
    let under = column(shown, "GHz").expect("there");
    assert!(marked.chars().nth(under).is_some_and(|c| "─┬".contains(c)), "{}", ran.out);
    assert!(shown.chars().count() <= 70, "{}", ran.out);
    assert!(ran.out.contains("hops/ridge.yaml:15:165"), "the place is that in the file: {}", ran.out);
}

// JSON

#[test]
fn json_keeps_to_its_schema() {
    let schema = json(&fs::read_to_string("schema/report.json").expect("readable"));
    let validator = jsonschema::draft202012::new(&schema).expect("a schema");
    let bench = hostile();
    let reports = [faulty("json"), run(&["check", "examples/varneck", "--format", "json"]).out];
    for report in reports.into_iter().chain([run_in(&bench.path(""), &["check", "--format", "json"]).out]) {
        let errors: Vec<String> = validator.iter_errors(&json(&report)).map(|error| error.to_string()).collect();
        assert_eq!(errors, [""; 0]);
    }
    assert!(!validator.is_valid(&serde_json::json!({ "format_version": 1 })), "the schema asks for something");
}

// SARIF

/// Holds a report to the standard and its readers; its files lie below `root`.
fn sound(report: &Value, root: &Path) {
    Sarif::new().sound(report, |uri| {
        let path = root.join(uri);
        fs::read_to_string(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
    });
}

#[test]
fn sarif_is_what_the_standard_and_its_readers_ask_for() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    sound(&json(&faulty("sarif")), root);
    sound(&json(&run(&["check", "examples/varneck", "--format", "sarif"]).out), root);
    let bench = hostile();
    let report = json(&run_in(&bench.path(""), &["check", "--format", "sarif"]).out);
    sound(&report, &bench.path(""));
    let results = list(&report["runs"][0]["results"]);
    let key = results.iter().find(|result| result["ruleId"] == "key-unknown").expect("found");
    let physical = &key["locations"][0]["physicalLocation"];
    assert_eq!(physical["artifactLocation"]["uri"], "hops/ri%20dge%3A100%25%2C%231.yaml");
    // `      { model: tilter, "😀": 1` : the quote is the 24th unit, and the emoji two of them.
    assert_eq!((&physical["region"]["startColumn"], &physical["region"]["endColumn"]), (&24.into(), &28.into()));
}

#[test]
fn paths_are_counted_from_the_root_of_the_repository_if_there_is_one() {
    let root = tempfile::tempdir().expect("a folder");
    copy(Path::new("examples/faulty"), &root.path().join("pit"));
    let uris = || -> BTreeSet<String> {
        let report = json(&run_in(&root.path().join("pit/hops"), &["check", ".", "--format", "sarif"]).out);
        let results = list(&report["runs"][0]["results"]).iter();
        results
            .map(|result| text(&result["locations"][0]["physicalLocation"]["artifactLocation"]["uri"]).to_owned())
            .collect()
    };
    assert!(uris().contains("mount.yaml"), "without git, from where one stands: {:?}", uris());
    fs::create_dir(root.path().join(".git")).expect("writable");
    assert!(uris().contains("pit/hops/mount.yaml"), "{:?}", uris());
    // In a shallow clone or a work tree `.git` may be a file.
    fs::remove_dir(root.path().join(".git")).expect("writable");
    fs::write(root.path().join(".git"), "gitdir: elsewhere\n").expect("writable");
    assert!(uris().contains("pit/hops/mount.yaml"), "{:?}", uris());
}

// Fingerprints

/// Rule, hop and fingerprint of each finding, sorted.
fn known_by(folder: &Path) -> Vec<String> {
    let report = json(&run_in(folder, &["check", "--format", "json"]).out);
    let each = list(&report["findings"]).iter();
    let mut known: Vec<String> =
        each.map(|finding| format!("{} {} {}", finding["rule"], finding["hop"], finding["fingerprint"])).collect();
    known.sort();
    known
}

#[test]
fn fingerprints_outlive_moves_edits_above_and_other_numbers() {
    let root = tempfile::tempdir().expect("a folder");
    fs::create_dir(root.path().join(".git")).expect("writable");
    let pit = root.path().join("pit");
    copy(Path::new("examples/faulty"), &pit);
    let before = known_by(&pit);
    let distinct: BTreeSet<&str> = before.iter().map(|line| line.rsplit(' ').next().expect("three words")).collect();
    assert_eq!(distinct.len(), before.len(), "each has one of its own");

    fs::rename(pit.join("hops"), pit.join("links")).expect("writable");
    assert_eq!(known_by(&pit), before, "moved");
    for file in ["links/mount.yaml", "sites/crusher.yaml", "equipment/radio.yaml", "equipment/mounting.yaml"] {
        let text = fs::read_to_string(pit.join(file)).expect("readable");
        fs::write(pit.join(file), format!("# One line more.\n\n{text}")).expect("writable");
    }
    assert_eq!(known_by(&pit), before, "edited above");
    let power = fs::read_to_string(pit.join("links/budget.yaml")).expect("readable");
    fs::write(pit.join("links/budget.yaml"), power.replace("transmit_power: -9 dBm", "transmit_power: -9.5 dBm"))
        .expect("writable");
    assert_eq!(known_by(&pit), before, "other numbers in the message");
}

#[test]
fn a_fingerprint_does_not_depend_on_what_is_asked_about() {
    // What a finding follows from may lie outside of what was asked about.
    let all = json(&run(&["check", "--all", "examples/faulty", "--format", "json"]).out);
    let some = json(&run(&["check", "--all", "examples/faulty/hops/budget.yaml", "--format", "json"]).out);
    assert!(!list(&some["findings"]).is_empty());
    for finding in list(&some["findings"]) {
        assert!(list(&all["findings"]).contains(finding), "{finding}");
    }
}

// Runners

#[test]
fn text_of_a_specification_is_no_command_to_a_runner() {
    let bench = hostile();
    for form in FORMS {
        let ran = run_in(&bench.path(""), &["check", "--format", form]);
        assert_eq!(ran.code, 1, "{form}: {}", ran.err);
        for line in ran.out.lines().chain(ran.err.lines()) {
            let command = line.trim_start().starts_with("::");
            assert!(command == (form == "github"), "{form}: {line}");
            assert!(
                form == "json"
                    || form == "sarif"
                    || form == "gitlab"
                    || form == "junit"
                    || form == "github"
                    || !line.contains("##["),
                "{form}: {line}"
            );
        }
        assert!(!ran.out.contains('\r') && !ran.out.contains('\u{1}'), "{form}");
    }
    let out = run_in(&bench.path(""), &["check", "--format", "github"]).out;
    let line = out.lines().find(|line| line.contains("power-line-near")).expect("found");
    assert!(line.contains("::error file=a,b::owned 100%25 "), "the message goes on in the same line: {line}");
    assert!(line.contains("%0D%0A::warning::@all"), "{line}");
    let key = out.lines().find(|line| line.contains("title=key-unknown")).expect("found");
    assert!(key.starts_with("::error file=hops/ri dge%3A100%25%2C#1.yaml,line="), "{key}");
}

#[test]
fn annotations_come_after_the_total_and_worst_first() {
    let bench = Bench::new();
    let path = bench.path("network.yaml");
    let text = fs::read_to_string(&path).expect("readable");
    fs::write(&path, text.replace("rules: {", "rules: { tilt-out-of-reach: advice, ground-bond-unstated: error,"))
        .expect("writable");
    let hop = bench.path("hops/ridge.yaml");
    let text = fs::read_to_string(&hop).expect("readable").replace("      bonds_to: ring\n", "");
    fs::write(&hop, text.replace("orientation: inverted", "orientation: upright")).expect("writable");
    let out = run_in(&bench.path(""), &["check", "--format", "github"]).out;
    let commands: Vec<&str> = out.lines().filter_map(|line| line.split(' ').next()).collect();
    assert_eq!((commands[0], commands[1]), ("::notice", "::error"), "{out}");
    assert!(out.lines().next().is_some_and(|line| line.contains("title=hopwright::1 hop in 8 files")), "{out}");
}

#[test]
fn of_many_findings_those_of_a_rule_share_an_annotation() {
    let out = run(&["check", "--all", "examples/faulty", "--format", "github"]).out;
    for level in ["::error", "::warning", "::notice"] {
        let titles: Vec<&str> = out
            .lines()
            .filter(|line| line.starts_with(level))
            .filter_map(|line| line.split_once("title=")?.1.split_once("::").map(|(title, _)| title))
            .collect();
        let distinct: BTreeSet<&str> = titles.iter().copied().collect();
        assert!(titles.len() <= 10 || distinct.len() == titles.len(), "{level}: {titles:?}");
    }
    assert!(out.contains(" more of this rule: "), "{out}");
}

#[test]
fn gitlab_has_an_array_in_any_case() {
    assert_eq!(json(&run(&["check", "examples/varneck", "--format", "gitlab"]).out), serde_json::json!([]));
    let issues = json(&faulty("gitlab"));
    let known: BTreeSet<&str> = list(&issues).iter().map(|issue| text(&issue["fingerprint"])).collect();
    assert_eq!(known.len(), list(&issues).len());
}

// JUnit

#[test]
fn junit_is_well_formed_and_counts_cases() {
    let bench = hostile();
    let whole = run(&["check", "--all", "examples/faulty", "--format", "junit"]).out;
    let judged = [(whole, true), (run_in(&bench.path(""), &["check", "--format", "junit"]).out, false)];
    for (report, skips) in judged {
        let document = roxmltree::Document::parse(&report).unwrap_or_else(|error| panic!("{error}: {report}"));
        let named = |name: &'static str| document.descendants().filter(move |node| node.has_tag_name(name));
        let suite = named("testsuites").next().expect("the suites");
        let count = |what: &str| suite.attribute(what).and_then(|text| text.parse::<usize>().ok()).expect("a count");
        assert_eq!(count("tests"), named("testcase").count());
        assert_eq!(count("failures"), named("failure").count());
        assert_eq!(count("skipped"), named("skipped").count());
        assert!(count("failures") > 0 && (count("tests") > count("failures") + count("skipped") || !skips));
        assert!(count("skipped") > 0 || !skips, "what could not be evaluated in full does not pass");
        let distinct: BTreeSet<_> =
            named("testcase").map(|case| (case.attribute("classname"), case.attribute("name"))).collect();
        assert_eq!(distinct.len(), count("tests"), "each is named once");
        assert!(named("failure").all(|failure| failure.text().is_some_and(|text| text.contains(".yaml:"))));
    }
    // A hop about which nothing is found is there all the same.
    let out = run(&["check", "examples/varneck", "--format", "junit"]).out;
    assert_eq!((out.matches("<testsuite ").count(), out.matches("<testcase ").count()), (5, 5), "{out}");
    // Below the fail level nothing fails, and everything is told.
    let bench = Bench::new();
    let hop = bench.path("hops/ridge.yaml");
    let text = fs::read_to_string(&hop).expect("readable").replace("      bonds_to: ring\n", "");
    fs::write(&hop, text).expect("writable");
    let out = run_in(&bench.path(""), &["check", "--format", "junit"]).out;
    assert!(out.contains("failures=\"0\"") && out.contains("<system-out>hops/ridge.yaml:33:5: warning"), "{out}");
    let out = run_in(&bench.path(""), &["check", "--format", "junit", "--fail-on", "warning"]).out;
    assert!(out.contains("failures=\"1\""), "{out}");
}

#[test]
fn a_rule_that_is_off_does_not_pass() {
    let bench = Bench::new();
    let path = bench.path("network.yaml");
    let text = fs::read_to_string(&path).expect("readable");
    fs::write(&path, text.replace("rules: {", "rules: { tilt-out-of-reach: off,")).expect("writable");
    let out = run_in(&bench.path(""), &["check", "--format", "junit"]).out;
    let case = "name=\"tilt-out-of-reach\">\n      <skipped message=\"switched off by the network\"/>";
    assert!(out.contains(case), "{out}");
}

// Markdown, narrated

#[test]
fn markdown_shows_text_as_text() {
    let bench = hostile();
    let out = run_in(&bench.path(""), &["check", "--format", "markdown"]).out;
    let row = out.lines().find(|line| line.contains("power-line-near")).expect("a row");
    let bare = row.replace(r"\|", "").replace(r"\]", "");
    assert_eq!(bare.matches('|').count(), 5, "four cells: {row}");
    for word in ["@all", "<b>", "http://", "](", "##["] {
        assert!(!bare.contains(word), "{word} in {row}");
    }
}

#[test]
fn narrated_is_heard_in_order() {
    let out = faulty("narrated");
    assert!(!out.chars().any(|c| ('\u{2500}'..='\u{257f}').contains(&c)), "no drawing");
    for paragraph in out.split("\n\n").filter(|paragraph| paragraph.lines().count() > 1) {
        let lines: Vec<&str> = paragraph.lines().collect();
        assert!(["error ", "warning ", "advice "].iter().any(|word| lines[0].starts_with(word)), "{paragraph}");
        assert!(lines[2].starts_with("at "), "{paragraph}");
        let help = lines.iter().position(|line| line.starts_with("help: "));
        let told_under = usize::from(
            lines.last().is_some_and(|line| line.contains("follow") || line.starts_with("the same problem at")),
        );
        assert!(help.is_none_or(|at| at == lines.len() - 1 - told_under), "{paragraph}");
    }
}

#[test]
fn surroundings_never_choose_a_form() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut command = program(root, &["check", "examples/faulty"]);
    command.envs([("CI", "true"), ("GITHUB_ACTIONS", "true"), ("GITLAB_CI", "true")]);
    assert_eq!(crate::fixture::program::finish(command).out, faulty("full"));
}
