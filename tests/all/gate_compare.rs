//! Ways around the gate, each closed: what a change does to what it is judged by is said, and the change is judged by what
//! it finds.

use std::fs;

use crate::fixture::Bench;
use crate::fixture::program::{Ran, run_in};
use crate::fixture::repository::Repository;
use hopwright::compare::{
    Comment, Comparison, Effect, GateChange, Noise, Outcome, Part, Side, Status, compare, json, markdown, text,
};
use hopwright::network::Scope;
use hopwright::spec::Date;

const RULE: &str = "fade-margin-below-objective";

/// The margin from a to b falls from 29.8 dB to 28.8 dB. 29 dB are asked for, so that nothing else goes wrong with it.
const POWER: [&str; 2] = ["transmit_power: 10 dBm", "transmit_power: 9 dBm"];
const MARGIN: [&str; 2] = ["fade_margin: 20 dB", "fade_margin: 29 dB"];

const WAIVER: &str = "\
kind: waiver
id: margin-at-scar
rule: fade-margin-below-objective
target: { hop: ridge, end: a }
departure: deviation
reason: The radios are changed in spring.
approver: R. Invented
approved_on: 2026-05-18
expires: 2027-01-31
reference: INVENTED-17
accepts: 19 dB
";

fn day() -> Date {
    Date::read("2026-06-01").expect("a day")
}

fn side(bench: &Bench) -> Side {
    Side::of(&Scope::of(&[bench.path("")]).on(Some(day())), "bench".into())
}

fn between(old: &Bench, new: &Bench) -> Comparison {
    compare(&side(old), &side(new), &Noise::default())
}

fn base() -> Bench {
    let bench = Bench::new();
    bench.change("network.yaml", MARGIN[0], MARGIN[1]);
    bench
}

fn repository() -> Repository {
    let repository = Repository::new();
    repository.change("network.yaml", MARGIN[0], MARGIN[1]);
    repository.commit("a margin that is nearly used up");
    repository
}

fn edited(edits: &[(&str, &str, &str)]) -> Bench {
    let bench = base();
    for (file, old, new) in edits {
        bench.change(file, old, new);
    }
    bench
}

fn weaker_power(more: &[(&str, &str, &str)]) -> Bench {
    let mut edits = vec![("hops/ridge.yaml", POWER[0], POWER[1])];
    edits.extend(more);
    edited(&edits)
}

fn waived(text: &str, bench: Bench) -> Bench {
    fs::write(bench.path("waiver.yaml"), text).expect("writable");
    bench
}

fn one(comparison: &Comparison, part: Part) -> &GateChange {
    let mut of = comparison.gate.iter().filter(|change| change.part == part);
    let found = of.next().unwrap_or_else(|| panic!("nothing said of {part:?}: {:#?}", comparison.gate));
    assert!(of.next().is_none(), "{:#?}", comparison.gate);
    found
}

fn said(change: &GateChange) -> [&str; 3] {
    [&change.field, change.before.as_deref().unwrap_or(""), change.after.as_deref().unwrap_or("")]
}

/// The only hop, and that the comparison says first what is done to the gate.
fn outcome(comparison: &Comparison) -> Outcome {
    let [hop] = comparison.hops.as_slice() else { panic!("one hop: {comparison:#?}") };
    hop.outcome
}

fn is_told_first(comparison: &Comparison) {
    let comment = Comment { budget: 60_000, key: "base".into(), whole: "compare.json".into(), link_base: None };
    let (text, markdown) = (text(comparison, 80, false), markdown(comparison, &comment));
    assert!(text.starts_with("this change "), "{text}");
    assert!(markdown.starts_with("**this change "), "{markdown}");
    let json: serde_json::Value = serde_json::from_str(&json(comparison)).expect("JSON");
    assert_eq!(json["gate"].as_array().map(Vec::len), Some(comparison.gate.len()));
    assert_eq!(json["weakening"], comparison.weakens());
    for form in [text, markdown, json["verdict"].to_string()] {
        assert!(!form.contains("no computed change") && !form.contains("within limits"), "{form}");
    }
}

// Rules

#[test]
fn a_rule_switched_off_hides_no_failure() {
    let off =
        ("network.yaml", "clearance-not-shown: off", "clearance-not-shown: off, fade-margin-below-objective: off");
    let there = between(&base(), &weaker_power(&[off]));
    assert_eq!(outcome(&there), Outcome::NotJudged);
    assert!(there.regresses() && there.weakens());
    let rule = one(&there, Part::Rule);
    assert_eq!(said(rule), [&format!("rules.{RULE}"), "", "off"]);
    assert_eq!((rule.effect, rule.hops.as_slice()), (Effect::Weaker, &["ridge".to_owned()][..]));
    let (path, line) = rule.place.clone().expect("a place");
    assert!(path.ends_with("network.yaml") && line == 22, "{path}:{line}");
    is_told_first(&there);
}

#[test]
fn a_rule_switched_off_that_finds_nothing_is_not_no_change() {
    let there = between(
        &base(),
        &edited(&[("network.yaml", "clearance-not-shown: off", "clearance-not-shown: off, sway-too-great: off")]),
    );
    assert!(there.hops.is_empty() && there.weakens() && !there.regresses() && !there.is_empty());
    is_told_first(&there);
}

#[test]
fn a_rule_lowered_hides_no_failure() {
    let lowered =
        ("network.yaml", "clearance-not-shown: off", "clearance-not-shown: off, fade-margin-below-objective: advice");
    let there = between(&base(), &weaker_power(&[lowered]));
    assert_eq!(outcome(&there), Outcome::NotJudged);
    assert!(there.regresses());
    let shown = text(&there, 80, true).split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(shown.contains("NOW NOT MET") && shown.contains("the change lowers this"), "{shown}");
    is_told_first(&there);
}

#[test]
fn a_severity_by_path_hides_no_failure() {
    let by_path = (
        "network.yaml",
        "revision: A",
        "revision: A\nrules_by_path:\n  - { paths: hops/*.yaml, rules: { fade-margin-below-objective: off } }",
    );
    let there = between(&base(), &weaker_power(&[by_path]));
    assert_eq!(outcome(&there), Outcome::NotJudged);
    assert!(there.regresses());
    assert_eq!(said(one(&there, Part::Rule)), [&format!("rules_by_path[hops/*.yaml].rules.{RULE}"), "", "off"]);
}

#[test]
fn a_network_under_another_name_keeps_its_gate() {
    let renamed = ("network.yaml", "id: fellmoor", "id: otherwise");
    let there =
        between(&base(), &weaker_power(&[renamed, ("network.yaml", "fade_margin: 29 dB", "fade_margin: 1 dB")]));
    assert!(there.regresses(), "{there:#?}");
    assert_eq!(said(one(&there, Part::Objective)), ["objectives.fade_margin", "29 dB", "1 dB"]);
}

// What is asked for

#[test]
fn an_objective_lowered_hides_no_failure() {
    let there = between(&base(), &weaker_power(&[("network.yaml", "fade_margin: 29 dB", "fade_margin: 15 dB")]));
    assert_eq!(outcome(&there), Outcome::PassesByLoweredLimit);
    assert!(there.regresses() && there.weakens());
    assert_eq!(said(one(&there, Part::Objective)), ["objectives.fade_margin", "29 dB", "15 dB"]);
    is_told_first(&there);
}

#[test]
fn an_objective_of_the_hop_itself_hides_no_failure() {
    let own = ("hops/ridge.yaml", "id: ridge", "id: ridge\nobjectives: { fade_margin: 15 dB }");
    let there = between(&base(), &weaker_power(&[own]));
    assert_eq!(outcome(&there), Outcome::PassesByLoweredLimit);
    assert!(there.regresses() && there.weakens());
}

#[test]
fn limits_codes_climate_and_licences_that_move_are_named() {
    let old = edited(&[("hops/ridge.yaml", "id: ridge", "id: ridge\nlicence: { max_eirp: 70 dBm }")]);
    let new = edited(&[
        ("hops/ridge.yaml", "id: ridge", "id: ridge\nlicence: { max_eirp: 75 dBm }"),
        ("network.yaml", "  grounding: IEC 60728-11\n", ""),
        ("network.yaml", "rain_rate: 22 mm/h", "rain_rate: 12 mm/h"),
        ("network.yaml", "codes:", "limits: { voltage_reserve: 100 mV }\ncodes:"),
    ]);
    let there = between(&old, &new);
    assert_eq!(said(one(&there, Part::Licence)), ["licence.max_eirp", "70 dBm", "75 dBm"]);
    assert_eq!(said(one(&there, Part::Code)), ["codes.grounding", "IEC 60728-11", ""]);
    assert_eq!(said(one(&there, Part::Climate)), ["climate.rain_rate", "22 mm/h", "12 mm/h"]);
    assert_eq!(said(one(&there, Part::Limit)), ["limits.voltage_reserve", "", "100 mV"]);
    assert!(there.gate.iter().all(GateChange::weakens), "{:#?}", there.gate);
    let back = between(&new, &old);
    assert_eq!(back.gate.iter().filter(|change| change.effect == Effect::Weaker).count(), 0, "{:#?}", back.gate);
    is_told_first(&there);
}

// Waivers and the baseline

#[test]
fn a_waiver_brought_along_excuses_nothing() {
    let there = between(&base(), &waived(WAIVER, weaker_power(&[])));
    assert_eq!(outcome(&there), Outcome::NewlyWaived);
    assert!(there.regresses() && there.weakens());
    let waiver = one(&there, Part::Waiver);
    assert_eq!(said(waiver), ["added", "", &format!("{RULE} until 2027-01-31, no worse than 19 dB")]);
    assert_eq!(waiver.hops, ["ridge"]);
    is_told_first(&there);
}

#[test]
fn a_waiver_extended_widened_or_removed_is_named() {
    let old = waived(WAIVER, weaker_power(&[]));
    let wider = WAIVER.replace("2027-01-31", "2027-04-30").replace(", end: a", "").replace("accepts: 19 dB\n", "");
    let there = between(&old, &waived(&wider, weaker_power(&[])));
    let told: Vec<[&str; 3]> = there.gate.iter().map(said).collect();
    for expected in [["expires", "2027-01-31", "2027-04-30"], ["target.end", "a", ""], ["accepts", "19 dB", ""]] {
        assert!(told.contains(&expected), "{told:?}");
    }
    assert!(there.gate.iter().all(|change| change.effect == Effect::Weaker && change.hops == ["ridge"]));
    let removed = between(&old, &weaker_power(&[]));
    assert_eq!(
        (one(&removed, Part::Waiver).effect, one(&removed, Part::Waiver).field.as_str()),
        (Effect::Stricter, "removed")
    );
    assert!(!removed.weakens() && removed.regresses());
}

#[test]
fn longer_terms_for_waivers_are_named() {
    let there = between(&base(), &edited(&[("network.yaml", "codes:", "waivers: { longest_months: 120 }\ncodes:")]));
    assert_eq!(said(one(&there, Part::WaiverTerms)), ["waivers.longest_months", "", "120"]);
    assert!(there.weakens());
}

fn run(repository: &Repository, args: &[&str]) -> Ran {
    run_in(&repository.net(), args)
}

#[test]
fn a_baseline_that_grows_is_named() {
    let repository = repository();
    assert_eq!(run(&repository, &["baseline", "create", "known.json"]).code, 0);
    repository.commit("a baseline that knows nothing");
    repository.change("hops/ridge.yaml", POWER[0], POWER[1]);
    assert_eq!(run(&repository, &["baseline", "update", "known.json", "--add"]).code, 0);
    let args = ["compare", "HEAD", "--baseline", "known.json", "--fail-on"];
    let weakening = run(&repository, &[&args[..], &["weakening"]].concat());
    assert_eq!(weakening.code, 1, "{}", weakening.out);
    assert!(weakening.out.contains(&format!("known.json, {RULE}: nothing → 1 known")), "{}", weakening.out);
    assert_eq!(run(&repository, &[&args[..], &["regression"]].concat()).code, 1, "it is no excuse");
    assert_eq!(run(&repository, &["check", "--baseline", "known.json"]).code, 0);
    let by_main = run(&repository, &["check", "--baseline", "known.json", "--policy-from", "HEAD"]);
    assert_eq!(by_main.code, 1, "{}{}", by_main.out, by_main.err);
}

// Hops

#[test]
fn a_hop_taken_away_or_not_read_is_named() {
    let gone = base();
    fs::remove_file(gone.path("hops/ridge.yaml")).expect("there");
    let excluded = edited(&[("network.yaml", "revision: A", "revision: A\nexclude: [hops/]")]);
    for new in [&gone, &excluded] {
        let there = between(&base(), new);
        assert_eq!(outcome(&there), Outcome::Removed);
        let hop = one(&there, Part::Hop);
        assert_eq!((hop.field.as_str(), hop.hops.as_slice()), ("removed", &["ridge".to_owned()][..]));
        assert!(there.weakens() && hop.place.as_ref().is_some_and(|(path, _)| path.ends_with("hops/ridge.yaml")));
        is_told_first(&there);
    }
    let there = between(&base(), &excluded);
    assert_eq!(one(&there, Part::Excluded).effect, Effect::Weaker);
}

#[test]
fn a_hop_no_longer_judged_is_named() {
    let there = between(&base(), &edited(&[("hops/ridge.yaml", "radio: q-80", "radio: q-81")]));
    assert_eq!(outcome(&there), Outcome::NotJudged);
    assert_eq!(one(&there, Part::Hop).field, "no longer judged");
    assert!(there.weakens() && there.regresses());
    is_told_first(&there);
}

// Outcomes

#[test]
fn a_failing_value_that_gets_worse_is_a_regression() {
    let old = weaker_power(&[]);
    let new = edited(&[("hops/ridge.yaml", POWER[0], "transmit_power: 8 dBm")]);
    let there = between(&old, &new);
    assert_eq!(outcome(&there), Outcome::FailsWorse);
    assert!(there.regresses() && there.gate.is_empty());
    let statuses: Vec<Status> = there.hops[0].findings.iter().map(|finding| finding.status).collect();
    assert!(statuses.contains(&Status::Worse), "{statuses:?}");
    let back = between(&new, &old);
    assert_eq!(outcome(&back), Outcome::StillFails);
    assert!(!back.regresses());
}

#[test]
fn a_new_warning_is_its_own_outcome() {
    let there =
        between(&base(), &edited(&[("hops/ridge.yaml", "bonds_to: ring", "bonds_to: ring\n      length: 9 m")]));
    assert_eq!(outcome(&there), Outcome::NewWarning, "{}", text(&there, 80, false));
}

// The gate of the target branch

#[test]
fn check_takes_rules_limits_and_waivers_from_the_target_branch() {
    let ways: [&dyn Fn(&Repository); 3] = [
        &|repository| repository.change("network.yaml", "clearance-not-shown: off", "fade-margin-below-objective: off"),
        &|repository| repository.change("network.yaml", "fade_margin: 29 dB", "fade_margin: 15 dB"),
        &|repository| repository.write("waiver.yaml", WAIVER),
    ];
    for (number, way) in ways.iter().enumerate() {
        let repository = repository();
        repository.change("hops/ridge.yaml", POWER[0], POWER[1]);
        way(&repository);
        let day = ["--today", "2026-06-01"];
        let own = run(&repository, &[&["check"], &day[..]].concat());
        assert_eq!(own.code, 0, "{number}: {}", own.out);
        let by_main = run(&repository, &[&["check", "--policy-from", "main"], &day[..]].concat());
        assert_eq!(by_main.code, 1, "{number}: {}{}", by_main.out, by_main.err);
        assert!(by_main.out.contains(RULE) && by_main.err.contains("judged by the gate of `main`"), "{number}");
    }
}

#[test]
fn a_network_that_the_target_branch_has_not_is_not_judged_by_its_own() {
    let repository = repository();
    fs::rename(repository.net(), repository.root().join("elsewhere")).expect("moved");
    let ran = run_in(&repository.root().join("elsewhere"), &["check", "--policy-from", "main"]);
    assert_eq!(ran.code, 2, "{}", ran.out);
    assert!(ran.err.contains("there is no gate to judge it by"), "{}", ran.err);
}

#[test]
fn what_fails_a_comparison_combines() {
    let repository = repository();
    let code = |gates: &str| run(&repository, &["compare", "main", "--fail-on", gates]).code;
    assert_eq!(code("regression,weakening,any"), 0);
    repository.change("network.yaml", "clearance-not-shown: off", "clearance-not-shown: off, sway-too-great: off");
    assert_eq!((code("regression"), code("weakening"), code("regression,weakening")), (0, 1, 1));
    repository.change("network.yaml", "clearance-not-shown: off, sway-too-great: off", "clearance-not-shown: off");
    repository.change("hops/ridge.yaml", POWER[0], POWER[1]);
    assert_eq!((code("regression"), code("weakening"), code("weakening,regression"), code("never")), (1, 0, 1, 0));
}
