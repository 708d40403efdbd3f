//! What is shown of values from templates and defaults: both places, the sheet, packs, `compare`; and what a fix may write.

use std::fs;

use hopwright::network::Scope;
use hopwright::pack::Pack;
use hopwright::verdict::{Evaluation, evaluate};
use tempfile::TempDir;

use crate::fixture::Bench;
use crate::fixture::program::{run, run_in};
use crate::fixture::repository::git;
use crate::packs::example;
use crate::packs::{hops, pages, set};

/// The base network twice in hops, each with a conductor from the defaults that is too thin.
fn thin() -> Bench {
    let bench = Bench::new();
    bench.change("network.yaml", "codes:\n", "defaults:\n  grounding: { conductor: 4 mm2 }\ncodes:\n");
    bench.change("hops/ridge.yaml", "      conductor: 16 mm2\n", "");
    bench.change("hops/ridge.yaml", "      conductor: 25 mm2\n", "");
    bench
}

fn second(bench: &Bench) {
    let text = fs::read_to_string(bench.path("hops/ridge.yaml")).expect("a hop");
    let other = text.replace("id: ridge\n", "id: spare\n").replace("73.375", "73.875").replace("83.375", "83.875");
    fs::write(bench.path("hops/spare.yaml"), other).expect("writable");
}

fn thin_ones(evaluation: &Evaluation<()>) -> Vec<&hopwright::finding::Finding> {
    evaluation.findings.iter().filter(|finding| finding.rule.name == "ground-conductor-too-thin").collect()
}

#[test]
fn both_places_are_shown_and_two_hops_are_two_findings() {
    let bench = thin();
    second(&bench);
    let evaluation = bench.judge();
    let found = thin_ones(&evaluation);
    assert_eq!(found.len(), 4, "two hops of two ends");
    let mut known: Vec<String> = found.iter().map(|finding| finding.fingerprint.to_string()).collect();
    known.sort();
    known.dedup();
    assert_eq!(known.len(), 4);
    let text = bench.shown(&evaluation);
    assert!(text.contains("network.yaml:18:"), "{text}");
    assert!(text.contains("taken from the defaults of network `fellmoor` here"), "{text}");
    // It is the hop that is known, wherever the value stands.
    let before: Vec<String> = found.iter().map(|finding| finding.fingerprint.to_string()).collect();
    bench.change("hops/ridge.yaml", "    grounding:\n", "    grounding:\n      conductor: 4 mm2\n");
    bench.change("hops/spare.yaml", "    grounding:\n", "    grounding:\n      conductor: 4 mm2\n");
    let written = bench.judge();
    let mut after: Vec<String> = thin_ones(&written).iter().map(|finding| finding.fingerprint.to_string()).collect();
    let mut before = before;
    before.sort();
    after.sort();
    assert_eq!(before, after);
}

#[test]
fn a_mend_is_written_into_the_hop_and_never_into_a_default() {
    let bench = thin();
    let network = fs::read_to_string(bench.path("network.yaml")).expect("there");
    let ran = run_in(&bench.path(""), &["check", "--fix-unsafe", "."]);
    assert_eq!(fs::read_to_string(bench.path("network.yaml")).expect("there"), network, "{}{}", ran.out, ran.err);
    let hop = fs::read_to_string(bench.path("hops/ridge.yaml")).expect("there");
    assert_eq!(hop.matches("      conductor: 16 mm2\n").count(), 2, "{hop}{}{}", ran.out, ran.err);
    // Where the hop writes nothing that the key could stand beside, nothing is fixed.
    let bench = thin();
    bench.change("hops/ridge.yaml", "    grounding:\n      bonds_to: ring\n", "");
    bench.change("sites/scar.yaml", "supports:\n", "defaults: { grounding: { bonds_to: ring } }\nsupports:\n");
    run_in(&bench.path(""), &["check", "--fix-unsafe", "."]);
    let hop = fs::read_to_string(bench.path("hops/ridge.yaml")).expect("there");
    assert_eq!(hop.matches("      conductor: 16 mm2\n").count(), 1, "{hop}");
    assert!(!fs::read_to_string(bench.path("sites/scar.yaml")).expect("there").contains("conductor"));
}

/// A repository of the base network in which the hop takes its radio and power from the defaults.
fn repository() -> TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    let bench = Bench::new();
    bench.change(
        "network.yaml",
        "codes:\n",
        "defaults:\n  end: { transmit_power: 10 dBm }\n  run: { like: short }\ncodes:\n",
    );
    bench.change("hops/ridge.yaml", "    transmit_power: 10 dBm\n", "");
    bench.change("hops/ridge.yaml", "        indoor: 15 m\n", "");
    let templates =
        "kind: template\nid: short\nrun: { indoor: 15 m }\n---\nkind: template\nid: long\nrun: { indoor: 18 m }\n";
    fs::write(bench.path("templates.yaml"), templates).expect("writable");
    crate::fixture::copy(&bench.path(""), folder.path());
    git(folder.path(), &["init", "--quiet"]);
    git(folder.path(), &["add", "--all"]);
    git(folder.path(), &["-c", "user.name=n", "-c", "user.email=n@example.org", "commit", "--quiet", "-m", "so"]);
    folder
}

#[test]
fn compare_names_the_default_as_the_cause() {
    let folder = repository();
    let change = |file: &str, old: &str, new: &str| {
        let text = fs::read_to_string(folder.path().join(file)).expect("there");
        assert!(text.contains(old), "{old}");
        fs::write(folder.path().join(file), text.replace(old, new)).expect("writable");
    };
    assert!(run_in(folder.path(), &["compare", "HEAD"]).out.starts_with("no computed change"));
    change("network.yaml", "transmit_power: 10 dBm", "transmit_power: 7 dBm");
    let ran = run_in(folder.path(), &["compare", "HEAD"]).out;
    assert!(ran.contains("defaults.end.transmit_power") && ran.contains("network.yaml:18"), "{ran}");
    change("network.yaml", "transmit_power: 7 dBm", "transmit_power: 10 dBm");
    change("templates.yaml", "indoor: 15 m", "indoor: 17 m");
    let ran = run_in(folder.path(), &["compare", "HEAD"]).out;
    assert!(ran.contains("run.indoor") && ran.contains("templates.yaml:3"), "{ran}");
    change("templates.yaml", "indoor: 17 m", "indoor: 15 m");
    change("network.yaml", "like: short", "like: long");
    let ran = run_in(folder.path(), &["compare", "HEAD"]).out;
    assert!(ran.contains("defaults.run.like"), "{ran}");
    // Written out where it was taken in: nothing moves.
    change("network.yaml", "like: long", "like: short");
    change("hops/ridge.yaml", "        outdoor: 35 m\n", "        outdoor: 35 m\n        indoor: 15 m\n");
    assert!(run_in(folder.path(), &["compare", "HEAD"]).out.starts_with("no computed change"));
}

#[test]
fn the_sheet_says_what_is_taken_in_and_from_where() {
    let folder = repository();
    let table = run_in(folder.path(), &["sheet", "ridge", "--sources"]).out;
    assert!(table.contains("network.yaml:18 ends.a.transmit_power by the defaults of network `fellmoor`"), "{table}");
    let last = "Taken from templates and defaults\n    the defaults of network `fellmoor`: ";
    assert!(table.contains(last) && table.contains("template `short`: ends."), "{table}");
    let json = run_in(folder.path(), &["sheet", "ridge", "--format", "json"]).out;
    let json: serde_json::Value = serde_json::from_str(&json).expect("JSON");
    let taken = json["hops"][0]["taken"].as_array().expect("a list");
    let wanted = serde_json::json!({
        "field": "ends.a.transmit_power", "from": "the defaults of network `fellmoor`", "route": "defaults.end.transmit_power"
    });
    assert!(taken.contains(&wanted), "{taken:?}");
}

#[test]
fn the_source_mark_goes_by_the_templates() {
    let folder = repository();
    let mark = || {
        let evaluation = evaluate(&Scope::of(&[folder.path().to_path_buf()]), |sheet, _| {
            hopwright::network::mark::sources(sheet.resolved).len()
        });
        evaluation.hops[0]
    };
    let with = mark();
    let network = fs::read_to_string(folder.path().join("network.yaml")).expect("there");
    fs::write(folder.path().join("network.yaml"), network.replace("  run: { like: short }\n", "")).expect("writable");
    assert_eq!(with, mark() + 1, "the file of the template is a source");
}

#[test]
fn the_design_pack_says_what_comes_from_defaults() {
    let evaluation = hops(&example("osierlea"));
    let text = pages(&set(&evaluation, 0, Pack::Design)).join(" ");
    assert!(text.contains("from the defaults of the network"), "{text}");
}

#[test]
fn a_template_of_a_shared_library_serves_every_network() {
    let folder = tempfile::tempdir().expect("a folder");
    git(folder.path(), &["init", "--quiet"]);
    let net = folder.path().join("nets/one");
    fs::create_dir_all(&net).expect("writable");
    crate::fixture::copy(&Bench::new().path(""), &net);
    let _ = fs::remove_dir_all(net.join(".git"));
    let shared = folder.path().join("shared");
    fs::create_dir_all(&shared).expect("writable");
    fs::write(shared.join("ends.yaml"), "kind: template\nid: set\nend: { radio: q-80 }\n").expect("writable");
    let edit = |file: &str, old: &str, new: &str| {
        let text = fs::read_to_string(net.join(file)).expect("there");
        fs::write(net.join(file), text.replace(old, new)).expect("writable");
    };
    edit("network.yaml", "codes:\n", "libraries: [../../shared]\ncodes:\n");
    edit("hops/ridge.yaml", "    radio: q-80\n", "    like: set\n");
    let evaluation = evaluate(&Scope::of(std::slice::from_ref(&net)), |_, _| ());
    let said: Vec<&str> = evaluation.findings.iter().map(|finding| finding.message.as_str()).collect();
    assert_eq!((said, evaluation.hops.len()), (Vec::new(), 1));
    let sheet = run_in(&net, &["sheet", "--full"]).out;
    assert!(sheet.contains("From elsewhere: template set"), "{sheet}");
    fs::write(shared.join("ends.yaml"), "kind: template\nid: set\nend: { radio: q-81 }\n").expect("writable");
    let evaluation = evaluate(&Scope::of(&[net]), |_, _| ());
    let said: Vec<&str> = evaluation.findings.iter().map(|finding| finding.rule.name).collect();
    assert_eq!(said, ["hop-not-evaluated", "reference-dangling"], "told once, where it is written");
}

#[test]
fn a_support_has_its_own_access_and_hazards() {
    let out = tempfile::tempdir().expect("a folder");
    let bench = Bench::new();
    bench.change(
        "sites/scar.yaml",
        "    kind: pole\n",
        "    kind: pole\n    access: Ladder at the north wall, key with the warden.\n    hazards: [Wasps under the cap]\n",
    );
    for kind in ["install", "site"] {
        let (network, into) = (bench.path("").display().to_string(), out.path().display().to_string());
        run(&["pack", kind, "--network", &network, "--out", &into]);
    }
    let mut seen = 0;
    for file in fs::read_dir(out.path()).expect("packs") {
        let path = file.expect("an entry").path();
        if path.extension().is_none_or(|end| end != "pdf") {
            continue;
        }
        let text = pages(&fs::read(&path).expect("a pack")).join(" ");
        if text.contains("Hovvel Scar") && text.contains("Wasps under the cap") {
            assert!(text.contains("Ladder at the north wall"), "{}", path.display());
            assert!(text.contains("Loose scree below the hut"), "{}", path.display());
            seen += 1;
        }
    }
    assert!(seen >= 2, "an install pack and a site pack: {seen}");
}
