//! What is known to be wrong and does not count: waivers, for a time and a value; the baseline, until it gets worse.

use std::collections::BTreeSet;
use std::fs;

use crate::fixture::Bench;
use crate::fixture::program::{Ran, run_in};
use hopwright::finding::faults::waivers;
use hopwright::rules::every;
use hopwright::spec::Date;
use serde_json::Value;

/// A waiver for the one thing that is wrong with [`short_of_margin`].
const WAIVER: &str = "\
kind: waiver
id: margin-at-scar
rule: fade-margin-below-objective
target: { hop: ridge }
departure: deviation
reason: The radios are changed in spring.
approver: R. Invented
approved_on: 2026-05-18
expires: 2027-05-18
reference: INVENTED-17
accepts: 29.7 dB
";

/// The margin from a to b is 29.8 dB and 29.9 dB are asked for: one error, at the power of end a.
fn short_of_margin() -> Bench {
    let bench = Bench::new();
    bench.change("network.yaml", "fade_margin: 20 dB", "fade_margin: 29.9 dB");
    bench
}

fn with_waiver(old: &str, new: &str) -> Bench {
    let bench = short_of_margin();
    assert!(WAIVER.contains(old), "{old}");
    fs::write(bench.path("waiver.yaml"), WAIVER.replace(old, new)).expect("writable");
    bench
}

fn check(bench: &Bench, args: &[&str]) -> Ran {
    run_in(&bench.path(""), &[&["check"], args].concat())
}

fn json(text: &str) -> Value {
    serde_json::from_str(text).expect("JSON")
}

/// The names of the rules of the findings that are open, sorted, and how many are waived.
fn open(bench: &Bench, today: &str) -> (Vec<String>, usize) {
    let ran = check(bench, &["--format", "json", "--today", today]);
    let report = json(&ran.out);
    let list = |key: &str| report[key].as_array().expect("a list").clone();
    let mut names: Vec<String> =
        list("findings").iter().map(|finding| finding["rule"].as_str().expect("a name").to_owned()).collect();
    names.sort();
    let errors = list("findings").iter().any(|finding| finding["severity"] == "error");
    assert_eq!(ran.code, i32::from(errors), "only what is open fails: {}", ran.out);
    (names, list("waived").len())
}

const FINDING: &str = "fade-margin-below-objective";

#[test]
fn a_waiver_holds_from_its_first_day_to_its_last() {
    let bench = with_waiver("", "");
    let days: [(&str, &[&str], usize); 6] = [
        ("2026-05-17", &[FINDING, "waiver-not-valid"], 0),
        ("2026-05-18", &[], 1),
        ("2027-04-17", &[], 1),
        // 30 days before the last.
        ("2027-04-18", &["waiver-expiring"], 1),
        ("2027-05-18", &["waiver-expiring"], 1),
        ("2027-05-19", &[FINDING, "waiver-expired"], 0),
    ];
    for (today, names, waived) in days {
        assert_eq!(open(&bench, today), (names.iter().map(ToString::to_string).collect(), waived), "{today}");
    }
    bench.change("network.yaml", "objectives:", "waivers: { notice_days: 31 }\nobjectives:");
    assert_eq!(open(&bench, "2027-04-17").0, ["waiver-expiring"], "31 days before the last");
}

#[test]
fn every_way_to_fail_shows_the_finding_and_says_so() {
    let cases: &[(&str, &str, &[&str])] = &[
        ("expires: 2027-05-18", "expires: 2026-05-30", &[FINDING, "waiver-expired"]),
        ("expires: 2027-05-18", "expires: 2026-07-01", &["waiver-expiring"]),
        ("expires: 2027-05-18", "expires: 2027-05-19", &[FINDING, "waiver-not-valid"]),
        ("expires: 2027-05-18", "expires: 2026-05-17", &[FINDING, "waiver-not-valid"]),
        ("approved_on: 2026-05-18", "approved_on: 2026-07-01", &[FINDING, "waiver-not-valid"]),
        ("approver: R. Invented\n", "", &[FINDING, "key-missing"]),
        ("approver: R. Invented", "approver: \"\"", &[FINDING, "value-not-valid"]),
        ("approver: R. Invented", "approver: 17", &[FINDING, "value-not-valid"]),
        ("expires: 2027-05-18", "expires: 2026-05-20\nexpires: 2027-05-18", &[FINDING, "key-duplicate"]),
        ("expires: 2027-05-18", "expire: 2027-05-18", &[FINDING, "key-unknown"]),
        ("expires: 2027-05-18", "expires: 2027-02-30", &[FINDING, "value-not-valid"]),
        ("reference: INVENTED-17\n", "", &[FINDING, "key-missing"]),
        // The margin is 29.8 dB and a little.
        ("accepts: 29.7 dB\n", "", &["waiver-unlimited"]),
        ("accepts: 29.7 dB", "accepts: 29.9 dB", &[FINDING, "waiver-exceeded"]),
        ("accepts: 29.7 dB", "accepts: 29 V", &[FINDING, "waiver-not-valid"]),
        ("{ hop: ridge }", "{ hop: ridge, end: a }", &[]),
        ("{ hop: ridge }", "{ hop: ridge, end: b }", &[FINDING, "waiver-unused"]),
        ("{ hop: ridge }", "{ hop: ridge, end: a, field: transmit_power }", &[]),
        ("{ hop: ridge }", "{ hop: ridge, field: ends.a }", &[]),
        ("{ hop: ridge }", "{ hop: ridge, field: ends.a.transmit }", &[FINDING, "waiver-unused"]),
        ("{ hop: ridge }", "{ hop: bridge }", &[FINDING, "reference-dangling"]),
        ("rule: fade-margin-below-objective", "rule: fade-margin-below", &[FINDING, "rule-unknown"]),
        ("rule: fade-margin-below-objective", "rule: tilt-out-of-reach", &[FINDING, "waiver-unused"]),
        ("rule: fade-margin-below-objective", "rule: people-too-near", &[FINDING, "waiver-not-allowed"]),
        ("rule: fade-margin-below-objective", "rule: eirp-above-code", &[FINDING, "waiver-not-allowed"]),
        ("rule: fade-margin-below-objective", "rule: ground-conductor-missing", &[FINDING, "waiver-not-allowed"]),
        ("rule: fade-margin-below-objective", "rule: key-unknown", &[FINDING, "waiver-not-allowed"]),
    ];
    let mut seen = BTreeSet::from(["waiver-not-evaluated".to_owned()]);
    for (old, new, names) in cases {
        let bench = with_waiver(old, new);
        let (open, waived) = open(&bench, "2026-06-10");
        assert_eq!(open, *names, "{new}");
        assert_eq!(waived, usize::from(!names.contains(&FINDING)), "{new}");
        seen.extend(open);
    }
    assert!(waivers::ALL.iter().all(|rule| seen.contains(rule.name)), "one has no case: {seen:?}");
}

#[test]
fn whether_a_waiver_is_unused_is_said_only_where_its_rule_has_run() {
    let bench = with_waiver("fade-margin-below-objective", "tilt-out-of-reach");
    assert_eq!(open(&bench, "2026-06-10").0, [FINDING, "waiver-unused"]);
    bench.change("network.yaml", "rules: {", "rules: { tilt-out-of-reach: off,");
    assert_eq!(open(&bench, "2026-06-10").0, [FINDING, "waiver-not-evaluated"], "switched off");
    bench.change("network.yaml", " tilt-out-of-reach: off,", "");
    bench.change("hops/ridge.yaml", "height: 8 m", "height: 8 GHz");
    let names = open(&bench, "2026-06-10").0;
    assert!(names.contains(&"waiver-not-evaluated".into()) && !names.contains(&"waiver-unused".into()), "{names:?}");
}

#[test]
fn a_network_sets_how_long_waivers_may_hold() {
    let bench = with_waiver("expires: 2027-05-18", "expires: 2028-05-18");
    assert_eq!(open(&bench, "2026-06-10").0, [FINDING, "waiver-not-valid"]);
    bench.change("network.yaml", "objectives:", "waivers: { longest_months: 24 }\nobjectives:");
    assert_eq!(open(&bench, "2026-06-10"), (Vec::new(), 1));
}

#[test]
fn what_protects_people_and_what_the_law_limits_is_never_waived() {
    // Whole families, and rule by rule what else there is.
    for rule in every().filter(|rule| ["people", "grounding", "licence", "spec", "waiver"].contains(&rule.family)) {
        assert!(rule.never_waived().is_some(), "{}", rule.name);
    }
    let bench = Bench::new();
    bench.change("hops/ridge.yaml", "      conductor: 16 mm2\n", "      conductor: 1 mm2\n");
    fs::write(bench.path("waiver.yaml"), WAIVER.replace(FINDING, "ground-conductor-too-thin")).expect("writable");
    let (names, waived) = open(&bench, "2026-06-10");
    assert_eq!((names, waived), (vec!["ground-conductor-too-thin".into(), "waiver-not-allowed".into()], 0));
    let explained = run_in(&bench.path(""), &["explain", "ground-conductor-too-thin"]).out;
    let never = "Cannot be waived, lowered or switched off, and no baseline takes it in: it protects people.\n";
    assert!(explained.contains(never), "{explained}");
}

#[test]
fn what_is_waived_is_counted_and_shown_on_request() {
    let bench = with_waiver("", "");
    let day = ["--today", "2026-06-10"];
    let ran = check(&bench, &day);
    assert_eq!(
        (ran.code, ran.out.as_str()),
        (0, "1 hop in 9 files: no findings; 1 waived; 1 rule off; waivers as of 2026-06-10\n")
    );
    let shown = check(&bench, &[&day[..], &["--show-waived"]].concat()).out;
    let words = "  deviation `margin-at-scar`, approved by R. Invented on 2026-05-18, until 2027-05-18, reference INVENTED-17\n";
    assert!(
        shown.contains(words) && shown.contains("waived error[fade-margin-below-objective] ridge: a to b"),
        "{shown}"
    );
    let report = json(&check(&bench, &[&day[..], &["--format", "json"]].concat()).out);
    assert_eq!(report["waived"][0]["waiver"]["approver"], "R. Invented");
    assert_eq!((&report["summary"]["waived"], &report["summary"]["errors"]), (&1.into(), &0.into()));
    assert_eq!(report["summary"]["waivers_as_of"], "2026-06-10");
    let schema = json(&fs::read_to_string("schema/report.json").expect("readable"));
    let validator = jsonschema::draft202012::new(&schema).expect("a schema");
    assert_eq!(validator.iter_errors(&report).map(|error| error.to_string()).collect::<Vec<_>>(), [""; 0]);
}

#[test]
fn without_a_day_the_clock_is_asked_in_utc_and_only_for_waivers() {
    let bench = with_waiver("", "");
    let before = Date::today();
    let out = check(&bench, &[]).out;
    let named = |day: Date| out.contains(&format!("waivers as of {day}"));
    assert!(named(before) || named(Date::today()), "{out}");
    assert!(!check(&short_of_margin(), &[]).out.contains("as of"));
    assert_eq!(check(&bench, &["--today", "2026-13-01"]).code, 2);
    assert_eq!(check(&bench, &["--today", "tomorrow"]).code, 2);
}

#[test]
fn sarif_leaves_out_what_is_waived_or_marks_every_result() {
    let bench = with_waiver("", "");
    bench.change("hops/ridge.yaml", "      bonds_to: ring\n", "");
    let run = |args: &[&str]| {
        let all = [&["--today", "2026-06-10", "--format", "sarif"], args].concat();
        json(&check(&bench, &all).out)["runs"][0]["results"].as_array().expect("a list").clone()
    };
    let left = run(&[]);
    assert!(left.len() == 1 && left[0].get("suppressions").is_none(), "{left:?}");
    let all = run(&["--include-waived"]);
    assert_eq!(all.len(), 2);
    assert_eq!(all[0]["suppressions"], serde_json::json!([]));
    let suppression = &all[1]["suppressions"][0];
    assert_eq!((&suppression["kind"], &suppression["status"]), (&"external".into(), &"accepted".into()));
    assert!(
        suppression["justification"]
            .as_str()
            .is_some_and(|text| text.contains("spring") && text.contains("R. Invented"))
    );
    let place = &suppression["location"]["physicalLocation"];
    assert_eq!(place["artifactLocation"]["uri"], "waiver.yaml");
    let schema = json(&fs::read_to_string("tests/forms/sarif-schema-2.1.0.json").expect("readable"));
    let report = json(&check(&bench, &["--today", "2026-06-10", "--format", "sarif", "--include-waived"]).out);
    let validator = jsonschema::draft4::new(&schema).expect("a schema");
    assert_eq!(validator.iter_errors(&report).map(|error| error.to_string()).collect::<Vec<_>>(), [""; 0]);
}

#[test]
fn a_pack_prints_what_is_waived_and_refuses_what_is_not() {
    let bench = with_waiver("", "");
    let pack = |today: &str| run_in(&bench.path(""), &["pack", "design", "--out", "made", "--today", today]);
    assert_eq!(pack("2027-05-19").code, 1, "expired");
    assert!(!bench.path("made/ridge-design.pdf").exists());
    let ran = pack("2026-06-10");
    assert_eq!((ran.code, ran.err.as_str()), (0, ""));
    let text = pdf_extract::extract_text(bench.path("made/ridge-design.pdf")).expect("text");
    let text: String = text.split_whitespace().collect::<Vec<_>>().join(" ");
    for words in ["Waivers", "1 finding is waived", "R. Invented", "INVENTED-17", "2027-05-18", "changed in spring"] {
        assert!(text.contains(words), "{words} is not in: {text}");
    }
    let ran = run_in(&bench.path(""), &["pack", "install", "ridge/a", "--out", "made", "--today", "2026-06-10"]);
    assert_eq!(ran.code, 0, "{}", ran.err);
    let text =
        pdf_extract::extract_text(ran.out.trim()).or_else(|_| pdf_extract::extract_text(bench.path(ran.out.trim())));
    let text: String = text.expect("text").split_whitespace().collect::<Vec<_>>().join(" ");
    for words in ["Departures that were accepted", "R. Invented", "2027-05-18"] {
        assert!(text.contains(words), "{words} is not in: {text}");
    }
}

#[test]
fn a_comparison_says_that_a_fault_was_accepted_and_not_that_it_is_gone() {
    let (faulty, accepted) = (short_of_margin(), with_waiver("", ""));
    let (old, new) = (faulty.path("").display().to_string(), accepted.path("").display().to_string());
    let ran = run_in(&faulty.path(""), &["compare", &old, &new, "--today", "2026-06-10"]);
    let said: String = ran.out.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(said.contains("accepted by R. Invented"), "{said}");
    assert!(!said.contains("fixed error"), "{said}");
}

// Baseline

fn baseline(bench: &Bench, args: &[&str]) -> Ran {
    run_in(&bench.path(""), &[&["baseline"], args].concat())
}

const CHECK: [&str; 4] = ["--baseline", "known.json", "--format", "concise"];

#[test]
fn only_what_is_new_or_worse_counts() {
    let bench = short_of_margin();
    let made = baseline(&bench, &["create", "known.json"]);
    assert_eq!((made.code, made.out.as_str()), (0, "1 entry recorded in known.json\n"), "{}", made.err);
    assert_eq!(baseline(&bench, &["create", "known.json"]).code, 2, "never written over");

    let ran = check(&bench, &CHECK);
    assert_eq!((ran.code, ran.out.as_str()), (0, ""));
    assert_eq!(ran.err, "1 hop in 8 files: no findings; 1 in the baseline; 1 rule off\n");

    // Moved and edited above, it is the same.
    fs::rename(bench.path("hops"), bench.path("links")).expect("writable");
    bench.change("links/ridge.yaml", "kind: hop", "# One more line.\nkind: hop");
    assert_eq!(check(&bench, &CHECK).code, 0);

    bench.change("links/ridge.yaml", "transmit_power: 10 dBm", "transmit_power: 9.9 dBm");
    let worse = check(&bench, &[&CHECK[..2], &["--format", "json"]].concat());
    assert_eq!(worse.code, 1);
    let report = json(&worse.out);
    assert_eq!(report["findings"].as_array().map(Vec::len), Some(1));
    let help = report["findings"][0]["help"].as_str().expect("help");
    assert!(help.contains("worse than the 29.8") && help.ends_with("dB of the baseline"), "{help}");

    bench.change("links/ridge.yaml", "transmit_power: 9.9 dBm", "transmit_power: 10 dBm");
    bench.change("links/ridge.yaml", "      conductor: 16 mm2\n", "      conductor: 1 mm2\n");
    let new = check(&bench, &CHECK);
    assert_eq!(new.code, 1);
    assert!(new.out.contains("ground-conductor-too-thin") && !new.out.contains(FINDING), "{}", new.out);
}

#[test]
fn the_baseline_is_a_ratchet() {
    let bench = short_of_margin();
    bench.change("hops/ridge.yaml", "transmit_power: 10 dBm", "transmit_power: 9 dBm");
    assert_eq!(baseline(&bench, &["create", "known.json"]).code, 0);
    // A little better: taken over by an update, and then the old value is worse.
    bench.change("hops/ridge.yaml", "transmit_power: 9 dBm", "transmit_power: 9.5 dBm");
    assert_eq!(check(&bench, &CHECK).code, 0);
    assert_eq!(baseline(&bench, &["update", "known.json"]).out, "1 entry in known.json\n");
    assert_eq!(check(&bench, &CHECK).code, 0);
    bench.change("hops/ridge.yaml", "transmit_power: 9.5 dBm", "transmit_power: 9 dBm");
    assert_eq!(check(&bench, &CHECK).code, 1);
    // An update does not take it back, nor what is new, unless told to.
    bench.change("hops/ridge.yaml", "          - { model: surge-1g, at: radio }\n", "");
    let before = fs::read_to_string(bench.path("known.json")).expect("readable");
    let updated = baseline(&bench, &["update", "known.json"]);
    assert_eq!(updated.code, 0);
    assert_eq!(
        updated.out.lines().filter(|line| line.starts_with("new or worse, not added")).count(),
        2,
        "{}",
        updated.out
    );
    assert_eq!(fs::read_to_string(bench.path("known.json")).expect("readable"), before);
    assert_eq!(check(&bench, &CHECK).code, 1);
    let added = baseline(&bench, &["update", "known.json", "--add"]);
    assert!(added.out.contains("added: ridge: arrester-missing (end a, hop ridge: ends.a.runs"), "{}", added.out);
    assert_eq!(check(&bench, &[&CHECK[..], &["--fail-on", "advice"]].concat()).code, 0);
    // Mended: named until it is pruned, and then new if it comes back.
    bench.change("network.yaml", "fade_margin: 29.9 dB", "fade_margin: 20 dB");
    let stale = check(&bench, &CHECK);
    assert_eq!(stale.code, 0);
    assert!(stale.err.contains("no longer found: ridge: fade-margin-below-objective"), "{}", stale.err);
    assert!(baseline(&bench, &["update", "known.json"]).out.contains("no longer found"));
    assert!(
        baseline(&bench, &["prune", "known.json"]).out.starts_with("taken out: ridge: fade-margin-below-objective")
    );
    assert!(!check(&bench, &CHECK).err.contains("no longer found"));
    bench.change("network.yaml", "fade_margin: 20 dB", "fade_margin: 29.9 dB");
    assert_eq!(check(&bench, &CHECK).code, 1);
}

#[test]
fn what_was_not_looked_at_is_not_stale() {
    let bench = short_of_margin();
    assert_eq!(baseline(&bench, &["create", "known.json"]).code, 0);
    let stale = |args: &[&str]| check(&bench, &[&CHECK[..], args].concat()).err.contains("no longer found");
    assert!(!stale(&["equipment"]), "another part is asked about");
    bench.change("hops/ridge.yaml", "transmit_power: 10 dBm", "transmit_power: 10 m");
    assert!(!stale(&[]), "the hop cannot be evaluated");
    bench.change("hops/ridge.yaml", "transmit_power: 10 m", "transmit_power: 10 dBm");
    bench.change("network.yaml", "rules: {", "rules: { fade-margin-below-objective: off,");
    assert!(!stale(&[]), "the rule is off");
}

#[test]
fn faults_of_files_are_never_known_and_packs_take_no_notice() {
    let bench = short_of_margin();
    bench.change("sites/mill.yaml", "title: Nevvel Mill", "titel: Nevvel Mill");
    let made = baseline(&bench, &["create", "known.json"]);
    assert!(made.err.contains("that no waiver may accept are not recorded"), "{}", made.err);
    assert_eq!(check(&bench, &CHECK).code, 1);
    bench.change("sites/mill.yaml", "titel: Nevvel Mill", "title: Nevvel Mill");
    assert_eq!(check(&bench, &CHECK).code, 0);
    assert_eq!(run_in(&bench.path(""), &["pack", "design", "--out", "made"]).code, 1, "paper has no baseline");
}

#[test]
fn a_baseline_that_cannot_be_read_is_2() {
    let bench = short_of_margin();
    assert_eq!(check(&bench, &CHECK).code, 2, "not there");
    for text in
        ["", "[]", "{\"format_version\": 2, \"findings\": []}", "{\"format_version\": 1, \"findings\": [], \"x\": 1}"]
    {
        fs::write(bench.path("known.json"), text).expect("writable");
        let ran = check(&bench, &CHECK);
        assert_eq!(ran.code, 2, "{text}");
        assert!(ran.err.starts_with("hopwright: known.json: "), "{}", ran.err);
    }
    assert_eq!(baseline(&bench, &["prune", "known.json", "--add"]).code, 2);
}

#[test]
fn a_folder_without_git_will_do() {
    let bench = short_of_margin();
    fs::remove_dir(bench.path(".git")).expect("writable");
    assert_eq!(baseline(&bench, &["create", "known.json"]).code, 0);
    assert_eq!(check(&bench, &CHECK).code, 0);
}
