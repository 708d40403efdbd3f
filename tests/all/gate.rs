//! Ways around the gate, and that they are closed: each test is named for one.

use std::fs;
use std::path::Path;

use crate::fixture::Bench;
use crate::fixture::program::{Ran, run_in};
use hopwright::finding::rule::Severity;
use hopwright::network::Scope;
use hopwright::rules::every;
use hopwright::verdict::{Evaluation, evaluate};
use serde_json::Value;

fn check(bench: &Bench, args: &[&str]) -> Ran {
    run_in(&bench.path(""), &[&["check"], args].concat())
}

fn json(text: &str) -> Value {
    serde_json::from_str(text).expect("JSON")
}

/// The names of the rules of the open findings, sorted.
fn open(bench: &Bench) -> Vec<&'static str> {
    let mut names: Vec<&str> = bench.judge().findings.iter().map(|finding| finding.rule.name).collect();
    names.sort_unstable();
    names
}

fn switch(bench: &Bench, setting: &str) {
    bench.change("network.yaml", "rules: {", &format!("rules: {{ {setting},"));
}

fn waive(bench: &Bench, rule: &str, more: &str) {
    let text = format!(
        "kind: waiver\nid: accepted\nrule: {rule}\ntarget: {{ hop: ridge }}\ndeparture: deviation\nreason: It was so before.\n\
         approver: R. Invented\napproved_on: 2026-05-18\nexpires: 2027-05-18\nreference: INVENTED-17\n{more}"
    );
    fs::write(bench.path("waiver.yaml"), text).expect("writable");
}

fn text_of(bench: &Bench, pdf: &str) -> String {
    let text = pdf_extract::extract_text(bench.path(pdf)).expect("text");
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

// What may be switched off

#[test]
fn switching_off_what_says_that_a_hop_was_not_judged() {
    let bench = Bench::new();
    bench.change("hops/ridge.yaml", "height: 8 m", "height: 8 GHz");
    switch(&bench, "hop-not-evaluated: off, value-not-valid: off");
    let ran = check(&bench, &["--format", "concise"]);
    assert_eq!(ran.code, 1);
    assert_eq!(open(&bench), ["hop-not-evaluated", "rule-not-to-silence", "rule-not-to-silence", "value-not-valid"]);
    assert!(ran.err.contains("; 1 hop not judged in full"), "{}", ran.err);
}

#[test]
fn switching_off_a_reference_that_leads_nowhere() {
    let bench = Bench::new();
    bench.change("hops/ridge.yaml", "antenna: dish-60", "antenna: dish-61");
    switch(&bench, "reference-dangling: off, hop-not-evaluated: off");
    assert_eq!(open(&bench)[0], "reference-dangling");
    assert_eq!(check(&bench, &[]).code, 1);
}

#[test]
fn switching_off_a_missing_earth_and_printing_the_pack() {
    let bench = Bench::new();
    bench.change("hops/ridge.yaml", "      conductor: 16 mm2\n", "");
    switch(&bench, "ground-conductor-missing: off");
    let ran = run_in(&bench.path(""), &["pack", "install", "--out", "made"]);
    assert_eq!((ran.code, ran.out.as_str()), (1, ""), "{}", ran.err);
}

#[test]
fn lowering_what_may_not_be_switched_off() {
    let bench = Bench::new();
    bench.change(
        "network.yaml",
        "revision: A",
        "rules_by_path: [{ paths: '**', rules: { supply-overloaded: advice } }]\nrevision: A",
    );
    bench.change("equipment/power.yaml", "power: 60 W", "power: 20 W");
    let evaluation = bench.judge();
    let found = |name: &str| evaluation.findings.iter().find(|finding| finding.rule.name == name);
    assert_eq!(found("supply-overloaded").map(|finding| finding.severity), Some(Severity::Error));
    let said = found("rule-not-to-silence").expect("the setting is refused");
    assert!(said.message.starts_with("`supply-overloaded` cannot be lowered: it protects people"), "{}", said.message);
}

#[test]
fn waiving_what_protects_people_rule_by_rule() {
    let protecting = [
        "supply-in-the-weather",
        "pole-outside-clamp",
        "antenna-off-support",
        "pole-overstressed",
        "torque-above-thread",
        "radio-overvoltage",
        "wiring-unfit",
    ];
    for name in protecting {
        let rule = every().find(|rule| rule.name == name).expect("a rule");
        assert!(rule.never_waived().is_some_and(|why| why.starts_with("it protects people")), "{name}");
    }
    // By 41 mm, and somebody had signed for it.
    let bench = Bench::new();
    bench.change("sites/scar.yaml", "outside_diameter: 88.9 mm", "outside_diameter: 160 mm");
    waive(&bench, "pole-outside-clamp", "");
    let names = open(&bench);
    assert!(names.contains(&"pole-outside-clamp") && names.contains(&"waiver-not-allowed"), "{names:?}");
    assert_eq!(run_in(&bench.path(""), &["pack", "install", "ridge/a", "--out", "made"]).code, 1);
}

#[test]
fn taking_what_protects_people_into_a_baseline() {
    let bench = Bench::new();
    bench.change("hops/ridge.yaml", "      conductor: 16 mm2\n", "      conductor: 1 mm2\n");
    let made = run_in(&bench.path(""), &["baseline", "create", "known.json"]);
    assert_eq!(made.out, "0 entries recorded in known.json\n");
    assert!(made.err.contains("1 that no waiver may accept are not recorded"), "{}", made.err);
    // Nor is one taken that was written by hand.
    let fingerprint = bench.judge().findings[0].fingerprint.to_string();
    let known = format!(
        "{{\"format_version\": 1, \"findings\": [{{\"rule\": \"ground-conductor-too-thin\", \"target\": \"x\", \
         \"fingerprint\": \"{fingerprint}\", \"count\": 1}}]}}"
    );
    fs::write(bench.path("known.json"), known).expect("writable");
    assert_eq!(check(&bench, &["--baseline", "known.json"]).code, 1);
}

#[test]
fn waiving_a_value_however_bad_it_gets() {
    let bench = Bench::new();
    bench.change("network.yaml", "fade_margin: 20 dB", "fade_margin: 29.9 dB");
    waive(&bench, "fade-margin-below-objective", "");
    let named = |args: &[&str]| {
        let report = json(&check(&bench, &[&["--today", "2026-06-10", "--format", "json"], args].concat()).out);
        report["findings"].as_array().expect("a list").iter().map(|one| one["rule"].to_string()).collect::<Vec<_>>()
    };
    assert_eq!(named(&[]), ["\"waiver-unlimited\""]);
    assert_eq!(check(&bench, &["--today", "2026-06-10", "--fail-on", "warning"]).code, 1);
    waive(&bench, "fade-margin-below-objective", "accepts: 29.7 dB\n");
    assert_eq!(named(&[]), [""; 0]);
}

/// Rules that compare no value: what is there or is not, kinds and names, days, and what another rule measures.
const WITHOUT_A_VALUE: &[&str] = &[
    "antenna-in-beam",
    "beyond-horizon",
    "antenna-outside-protected-volume",
    "arrester-test-unstated",
    "cable-cannot-carry",
    "cable-diameter-open",
    "cable-test-failed",
    "canceller-unstated",
    "clearance-not-shown",
    "conductor-not-copper",
    "copper-between-earths",
    "crossing-not-judged",
    "data-not-carried",
    "earth-bond-unstated",
    "earth-not-bonded",
    "exposure-uncertain",
    "far-port-unfit",
    "fixings-not-judged",
    "fuse-missing",
    "ground-bond-unstated",
    "ground-conductor-missing",
    "ground-metal-unlisted",
    "halves-mixed",
    "hazards-not-assessed",
    "level-not-shown",
    "licence-not-stated",
    "lightning-facts-disagree",
    "lightning-not-judged",
    "mast-bond-unstated",
    "melting-snow-on-path",
    "no-common-state",
    "nominal-size-as-diameter",
    "nothing-to-align-by",
    "orography-not-counted",
    "passed-on-unstated",
    "plate-not-made",
    "pluggables-unfit",
    "port-cannot-carry",
    "port-used-twice",
    "power-control-unstated",
    "power-point-unstated",
    "protected-volume-unstated",
    "radio-unpowered",
    "read-in-wet-air",
    "readout-port-occupied",
    "record-incomplete",
    "record-of-another-design",
    "registration-missing",
    "route-broken",
    "routes-share",
    "same-duplex-half",
    "screen-bonded-at-one-end",
    "separation-unstated",
    "service-not-judged",
    "side-lobe-off-readout",
    "steps-undone",
    "supply-in-the-weather",
    "supply-not-accepted",
    "supply-port-used-twice",
    "supply-rate-unstated",
    "supply-shared-unstated",
    "terrain-tile-missing",
    "title-block-open",
    "wet-snow-not-judged",
    "wind-not-judged",
    "wiring-unfit",
    "wiring-unstated",
];

#[test]
fn waiving_a_value_that_the_rule_does_not_give() {
    use crate::fixture::{Edit, tests_folder};
    for entry in hopwright::rules::ALL {
        let name = entry.rule.name;
        let edit = Edit::read(&tests_folder().join("rules").join(name).join("bad.edit"));
        let evaluation = Bench::edited(&edit).judge();
        let measured =
            evaluation.findings.iter().any(|finding| finding.rule.name == name && finding.measured.is_some());
        assert_eq!(measured, !WITHOUT_A_VALUE.contains(&name), "{name}");
    }
}

#[test]
fn a_value_that_no_waiver_could_accept() {
    use crate::fixture::{Edit, edits, tests_folder};
    let mut unwritable = Vec::new();
    for entry in hopwright::rules::ALL {
        let folder = tests_folder().join("rules").join(entry.rule.name);
        for name in edits(&folder).iter().filter(|name| name.starts_with("bad")) {
            let evaluation = Bench::edited(&Edit::read(&folder.join(name).with_extension("edit"))).judge();
            let own = evaluation.findings.iter().filter(|finding| finding.rule.name == entry.rule.name);
            for measured in own.filter_map(|finding| finding.measured.as_ref()) {
                let kind = hopwright::units::Kind::named(measured.quantity).expect("a kind");
                let read = hopwright::units::read(kind, &measured.text);
                if read.is_err() {
                    unwritable.push(format!("{}/{name}: {}", entry.rule.name, measured.text));
                }
            }
        }
    }
    assert!(unwritable.is_empty(), "{unwritable:#?}");
}

// What did not count is said

#[test]
fn a_rule_that_is_off_looks_like_one_that_passed() {
    let bench = Bench::new();
    switch(&bench, "tilt-out-of-reach: off, path-obstructed: warning, fade-margin-below-objective: error");
    let ran = check(&bench, &[]);
    assert_eq!(ran.out, "1 hop in 8 files: no findings; 2 rules off; 1 rule lowered\n");

    let report = json(&check(&bench, &["--format", "json"]).out);
    let summary = &report["summary"];
    assert_eq!((&summary["rules_off"], &summary["rules_lowered"]), (&2.into(), &1.into()));
    assert_eq!(report["quieted"][1]["rule"], "path-obstructed");
    assert_eq!((&report["quieted"][1]["from"], &report["quieted"][1]["to"]), (&"error".into(), &"warning".into()));

    let sarif = json(&check(&bench, &["--format", "sarif"]).out);
    let run = &sarif["runs"][0];
    let overrides = run["invocations"][0]["ruleConfigurationOverrides"].as_array().expect("a list");
    let of = |name: &str| overrides.iter().find(|one| one["descriptor"]["id"] == name).expect("overridden");
    assert_eq!(of("tilt-out-of-reach")["configuration"]["enabled"], false);
    assert_eq!(of("path-obstructed")["configuration"]["level"], "warning");
    let index =
        usize::try_from(of("path-obstructed")["descriptor"]["index"].as_u64().expect("a number")).expect("small");
    assert_eq!(run["tool"]["driver"]["rules"][index]["id"], "path-obstructed");
    assert_eq!(run["properties"]["rulesOff"], 2);
    let schema = json(&fs::read_to_string("tests/forms/sarif-schema-2.1.0.json").expect("readable"));
    let validator = jsonschema::draft4::new(&schema).expect("a schema");
    assert_eq!(validator.iter_errors(&sarif).map(|error| error.to_string()).collect::<Vec<_>>(), [""; 0]);

    let markdown = check(&bench, &["--format", "markdown"]).out;
    assert!(markdown.contains("2 rules off; 1 rule lowered"), "{markdown}");
}

#[test]
fn a_pack_that_looks_as_if_every_rule_had_run() {
    let bench = Bench::new();
    switch(&bench, "tilt-out-of-reach: off, path-obstructed: warning");
    for (kind, pdf) in [("design", "made/ridge-design.pdf"), ("install", "made/ridge-a-scar-install.pdf")] {
        let ran = run_in(&bench.path(""), &["pack", kind, "ridge", "--out", "made"]);
        assert_eq!(ran.code, 0, "{}", ran.err);
        let text = text_of(&bench, pdf);
        for words in [
            "Did not count:",
            "2 rules are switched off: clearance-not-shown, tilt-out-of-reach.",
            "1 rule is lowered: path-obstructed.",
        ] {
            assert!(text.contains(words), "{kind}: {words} is not in {text}");
        }
    }
}

// What is not judged is said

/// The base network at 38 GHz over 5.2 km, with a profile.
fn long_and_low(climate: &str) -> Bench {
    use crate::fixture::{Edit, tests_folder};
    let bench = Bench::edited(&Edit::read(&tests_folder().join("rules/multipath-not-judged/bad-unstated.edit")));
    bench.change("network.yaml", "rain_height: 4200 m", &format!("rain_height: 4200 m\n  {climate}"));
    bench
}

#[test]
fn a_worse_climate_that_silences_what_it_breaks() {
    let loudest = |bench: &Bench, of: &[&str]| {
        let findings = bench.judge().findings;
        findings.iter().filter(|one| of.contains(&one.rule.name)).map(|one| one.severity).max()
    };
    // What is computed is judged with the rest; what is too bad to be computed is never quieter.
    let clear_air = ["multipath-not-judged", "availability-below-objective"];
    let air = [(-3.5, 55), (-1.5, 55), (-0.2, 55), (-0.2, 200)];
    let air = air.map(|(log_k, dn_75)| {
        let refractivity = format!("refractivity: {{ log_k: {log_k}, dn_75: {dn_75} }}");
        loudest(&long_and_low(&refractivity), &clear_air)
    });
    assert_eq!(air, [None, None, Some(Severity::Error), Some(Severity::Error)]);
    assert_eq!(loudest(&long_and_low("coldest_air: 3 °C"), &clear_air), Some(Severity::Warning));

    let frost = ["coldest_air: 3 °C", "coldest_air: -1 °C", "coldest_air: -30 °C"].map(|cold| {
        let bench = Bench::new();
        bench.change("network.yaml", "rain_height: 4200 m", cold);
        loudest(&bench, &["wet-snow-not-judged"])
    });
    assert_eq!(frost, [Some(Severity::Advice), Some(Severity::Warning), Some(Severity::Warning)]);

    let wind = ["", "wind: { operating: 10 m/s }", "wind: { operating: 40 m/s, survival: 60 m/s }"].map(|wind| {
        let bench = Bench::new();
        bench.change("network.yaml", "rain_height: 4200 m", &format!("rain_height: 4200 m\n  {wind}"));
        loudest(&bench, &["wind-not-judged", "pole-overstressed", "sway-too-great"])
    });
    assert_eq!(wind, [None, Some(Severity::Warning), Some(Severity::Warning)]);
}

#[test]
fn a_pack_that_does_not_say_what_was_not_judged() {
    let bench = Bench::new();
    bench.change("network.yaml", "  rain_height: 4200 m\n", "");
    bench.change("sites/scar.yaml", "    bonded: true\n", "");
    let snow = "whether snow melts on the path is not judged: no rain height is given";
    let bond = "site `scar`: whether earth point `ring` is bonded to that of the building is not said";
    let packs = [
        ("design", "made/ridge-design.pdf", true),
        ("install", "made/ridge-a-scar-install.pdf", true),
        ("install", "made/ridge-b-mill-install.pdf", false),
    ];
    for (kind, pdf, bonds) in packs {
        let ran = run_in(&bench.path(""), &["pack", kind, "ridge", "--out", "made"]);
        assert_eq!(ran.code, 0, "{}", ran.err);
        let text = text_of(&bench, pdf);
        let after = text.split("Not assessed in this document").nth(1).expect("the heading");
        assert!(after.contains(snow), "{pdf}: {after}");
        assert_eq!(after.contains(bond), bonds, "{pdf}");
    }
}

// Identity

/// The fingerprint of the one finding of a rule.
fn known_by(evaluation: &Evaluation<()>, rule: &str) -> String {
    let found: Vec<_> = evaluation.findings.iter().filter(|finding| finding.rule.name == rule).collect();
    assert_eq!(found.len(), 1, "{rule}");
    assert!(found[0].end.is_none(), "{rule} is about the whole hop");
    found[0].fingerprint.to_string()
}

#[test]
fn an_old_fault_that_looks_new_because_the_other_direction_got_the_worst() {
    let bench = Bench::new();
    bench.change("network.yaml", "availability: 99.99 %", "availability: 99.999 %");
    let before = bench.judge();
    let worst = |evaluation: &Evaluation<()>| {
        let finding = evaluation.findings.iter().find(|one| one.rule.name == "availability-below-objective");
        finding.expect("found").message.contains("worst a to b")
    };
    let (loud, quiet) = if worst(&before) { ("10 dBm", "13 dBm") } else { ("12 dBm", "15 dBm") };
    assert_eq!(run_in(&bench.path(""), &["baseline", "create", "known.json"]).code, 0);
    waive(&bench, "availability-below-objective", "accepts: 99.9 %\n");
    bench.change("hops/ridge.yaml", &format!("transmit_power: {loud}"), &format!("transmit_power: {quiet}"));
    let after = evaluate(&Scope::of(&[bench.path("")]).on(None), |_, _| ());
    let all: Vec<_> = after.findings.iter().chain(&after.waived).collect();
    assert!(all.iter().all(|finding| before.present.contains(&finding.fingerprint.to_string())), "{all:?}");
    fs::remove_file(bench.path("waiver.yaml")).expect("there");
    let after = bench.judge();
    assert_ne!(worst(&before), worst(&after), "the other direction is the worst now");
    let rule = "availability-below-objective";
    assert_eq!(known_by(&before, rule), known_by(&after, rule));
    assert_eq!(check(&bench, &["--baseline", "known.json"]).code, 0);
    // And a comparison calls nothing new.
    let old = Bench::new();
    old.change("network.yaml", "availability: 99.99 %", "availability: 99.999 %");
    let ran = run_in(
        Path::new("."),
        &[
            "compare",
            &old.path("").display().to_string(),
            &bench.path("").display().to_string(),
            "--fail-on",
            "regression",
        ],
    );
    assert_eq!(ran.code, 0, "{}", ran.out);
}

#[test]
fn an_old_fault_that_looks_new_because_another_obstacle_got_the_worst() {
    let path = |near: f64, far: f64| {
        let bench = Bench::new();
        let text = fs::read_to_string(bench.path("hops/ridge.yaml")).expect("readable");
        fs::write(bench.path("hops/ridge.yaml"), text + &profile(near, far)).expect("writable");
        bench.judge()
    };
    let (before, after) = (path(20.0, 15.0), path(10.0, 15.0));
    let message = |evaluation: &Evaluation<()>| {
        evaluation.findings.iter().find(|one| one.rule.name == "path-obstructed").expect("found").message.clone()
    };
    assert!(message(&before).contains(" 900.0 m") && message(&after).contains(" 1900.0 m"), "{}", message(&after));
    assert_eq!(known_by(&before, "path-obstructed"), known_by(&after, "path-obstructed"));
}

/// One number of a network made a little greater or smaller, wherever it stands; none if there are fewer.
fn nudged(text: &str, number: usize, factor: f64) -> Option<String> {
    let starts = |at: usize| {
        let before = text[..at].chars().next_back();
        before == Some(' ') && text[at..].starts_with(|letter: char| letter.is_ascii_digit())
    };
    let at = (0..text.len()).filter(|at| text.is_char_boundary(*at) && starts(*at)).nth(number)?;
    let end =
        text[at..].find(|letter: char| !letter.is_ascii_digit() && letter != '.').map_or(text.len(), |end| at + end);
    let value: f64 = text[at..end].parse().ok()?;
    Some(format!("{}{:.4}{}", &text[..at], value * factor, &text[end..]))
}

/// What each rule says of each hop and end: how often, and by which fingerprints.
type Spoken = std::collections::BTreeMap<(&'static str, Option<String>, Option<hopwright::spec::EndName>), Vec<String>>;

fn spoken(evaluation: &Evaluation<()>) -> Spoken {
    let mut spoken = Spoken::new();
    let of_rules = |name: &str| hopwright::rules::ALL.iter().any(|entry| entry.rule.name == name);
    for finding in evaluation.findings.iter().filter(|finding| of_rules(finding.rule.name)) {
        let key = (finding.rule.name, finding.hop.clone(), finding.end);
        spoken.entry(key).or_default().push(finding.fingerprint.to_string());
    }
    spoken
}

/// Every network that breaks a rule, with single numbers of it nudged: a rule that speaks no more often than before speaks by
/// the fingerprints it had, whichever of several is the worst now.
#[test]
fn an_old_fault_that_looks_new_because_some_number_moved() {
    use crate::fixture::{Edit, edits, tests_folder};
    let files =
        ["network.yaml", "hops/ridge.yaml", "sites/scar.yaml", "equipment/radio.yaml", "equipment/mounting.yaml"];
    let (mut looked, mut turn) = (0, 0_usize);
    for entry in hopwright::rules::ALL {
        let folder = tests_folder().join("rules").join(entry.rule.name);
        for name in edits(&folder).iter().filter(|name| name.starts_with("bad")) {
            let bench = Bench::edited(&Edit::read(&folder.join(name).with_extension("edit")));
            let before = spoken(&bench.judge());
            for _ in 0..4 {
                turn += 1;
                let path = bench.path(files[turn % files.len()]);
                let Ok(text) = fs::read_to_string(&path) else { continue };
                let factor = if turn.is_multiple_of(2) { 0.97 } else { 1.03 };
                let Some(moved) = nudged(&text, turn * 7 % 23, factor) else { continue };
                fs::write(&path, &moved).expect("writable");
                let after = spoken(&bench.judge());
                fs::write(&path, text).expect("writable");
                for (key, now) in after.iter().filter(|(key, _)| before.contains_key(key)) {
                    let had = &before[key];
                    let new = now.iter().any(|one| !had.contains(one));
                    assert!(now.len() > had.len() || !new, "{}/{name}: {key:?} looks new in {moved}", entry.rule.name);
                    looked += 1;
                }
            }
        }
    }
    assert!(looked > 300, "{looked} findings were there before and after");
}

proptest::proptest! {
    #![proptest_config(proptest::prelude::ProptestConfig { cases: 40, failure_persistence: None, ..Default::default() })]

    /// A rule that speaks of a hop and end before and after an improvement speaks by the same fingerprints.
    #[test]
    fn making_an_input_better_never_makes_an_old_fault_look_new(
        powers in (-5.0..18.0_f64, -5.0..18.0_f64),
        better in (0.0..6.0_f64, 0.0..6.0_f64),
        run in 20.0..120.0_f64,
        shorter in 0.1..1.0_f64,
        heights in (4.0..9.0_f64, 16.0..24.0_f64),
        ridges in (0.0..12.0_f64, 0.0..12.0_f64),
        lower in (0.0..6.0_f64, 0.0..6.0_f64),
        availability in proptest::sample::select(vec!["99.99 %", "99.997 %", "99.999 %"]),
    ) {
        let bench = |powers: (f64, f64), run: f64, down: (f64, f64)| {
            let bench = Bench::new();
            bench.change("network.yaml", "99.99 %", availability);
            bench.change("network.yaml", "fade_margin: 20 dB", "fade_margin: 32 dB");
            let text = fs::read_to_string(bench.path("hops/ridge.yaml")).expect("readable");
            let text = text
                .replace("transmit_power: 10 dBm", &format!("transmit_power: {:.2} dBm", powers.0))
                .replace("transmit_power: 12 dBm", &format!("transmit_power: {:.2} dBm", powers.1))
                .replace("outdoor: 35 m", &format!("outdoor: {run:.1} m"))
                .replace("height: 8 m", &format!("height: {:.1} m", heights.0))
                .replace("height: 21 m", &format!("height: {:.1} m", heights.1));
            fs::write(bench.path("hops/ridge.yaml"), text + &profile(ridges.0 - down.0, ridges.1 - down.1)).expect("writable");
            bench.judge()
        };
        let before = bench(powers, run, (0.0, 0.0));
        let after = bench((powers.0 + better.0, powers.1 + better.1), run * shorter, lower);
        for finding in &after.findings {
            let same = |other: &&hopwright::finding::Finding| {
                (other.rule.name, &other.hop, other.end, &other.about)
                    == (finding.rule.name, &finding.hop, finding.end, &finding.about)
            };
            // Where the rule was silent before, a value has crossed its limit.
            let spoke = before.findings.iter().any(|other| same(&other));
            let known = before.present.contains(&finding.fingerprint.first().to_string());
            proptest::prop_assert!(!spoke || known, "{} is new: {}", finding.rule.name, finding.message);
        }
    }
}

/// The sites of the base network: their distance and the ground they stand on.
const LENGTH: f64 = 2961.0;
const GROUND: [f64; 2] = [850.0, 350.0];

/// Some metres below the line between the antennas.
fn middle(distance: f64) -> f64 {
    852.0 + (365.0 - 852.0) * distance / LENGTH
}

/// A path of two ridges, this far above a line of its own.
fn profile(near: f64, far: f64) -> String {
    let point = |distance: f64, ground: f64| format!("    - {{ distance: {distance} m, ground: {ground:.2} m }}\n");
    let points = [(0.0, GROUND[0]), (900.0, middle(900.0) + near), (1900.0, middle(1900.0) + far), (LENGTH, GROUND[1])];
    points.iter().fold("\npath:\n  profile:\n".to_owned(), |text, (distance, ground)| text + &point(*distance, *ground))
}
