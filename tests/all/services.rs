//! Services: what hops come to together, where their routes break, what both routes share, and what could not be judged.

use std::collections::HashMap;
use std::fs;

use crate::fixture::program::{run, run_in};
use crate::fixture::{Bench, copy};
use hopwright::finding::Finding;
use serde_json::Value;
use tempfile::TempDir;

/// The base network with a service, and a second hop beside the first.
struct Two {
    bench: Bench,
}

const SERVICE: &str = "kind: service\nid: water\ntitle: Water board\nfrom: scar\nto: mill\n";

impl Two {
    fn with(rest: &str) -> Self {
        let bench = Bench::new();
        let hop = fs::read_to_string(bench.path("hops/ridge.yaml")).expect("there");
        fs::write(
            bench.path("hops/second.yaml"),
            hop.replace("id: ridge", "id: second").replace("73.375", "74.375").replace("83.375", "84.375"),
        )
        .expect("writable");
        fs::write(bench.path("services.yaml"), format!("{SERVICE}{rest}")).expect("writable");
        Self { bench }
    }

    /// What is found about services.
    fn found(&self) -> Vec<Finding> {
        let mut found = self.bench.judge().findings;
        found.retain(|finding| finding.rule.family == "service" || finding.rule.name == "reference-dangling");
        found
    }

    fn rules(&self) -> Vec<&'static str> {
        self.found().iter().map(|finding| finding.rule.name).collect()
    }

    fn sheet(&self) -> Sheets {
        Sheets::of(self.bench.path("").to_str().expect("a path"))
    }

    fn availability(&self) -> f64 {
        self.sheet().services["water"]["end_to_end.availability"]
    }
}

/// The numbers of hops and services by the keys of their lines.
struct Sheets {
    hops: HashMap<String, HashMap<String, f64>>,
    services: HashMap<String, HashMap<String, f64>>,
}

impl Sheets {
    fn of(network: &str) -> Self {
        let ran = run(&["sheet", "--network", network, "--format", "json"]);
        let json: Value = serde_json::from_str(&ran.out).expect("JSON");
        let numbers = |list: &Value, name: &str| {
            let of = |thing: &Value| {
                let lines = thing["lines"].as_array().expect("lines").iter();
                let number = |line: &Value| Some((line["key"].as_str()?.to_owned(), line["value"].as_f64()?));
                (thing[name].as_str().expect("an id").to_owned(), lines.filter_map(number).collect())
            };
            list.as_array().map(|list| list.iter().map(of).collect()).unwrap_or_default()
        };
        Self { hops: numbers(&json["hops"], "hop"), services: numbers(&json["services"], "service") }
    }
}

fn near(one: f64, other: f64) {
    assert!((one - other).abs() <= 1e-9 * other.abs().max(1.0), "{one} {other}");
}

fn varneck(service: &str) -> TempDir {
    let folder = tempfile::tempdir().expect("a temporary folder");
    fs::create_dir(folder.path().join(".git")).expect("writable");
    copy(&std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("examples/varneck"), folder.path());
    fs::write(folder.path().join("services.yaml"), service).expect("writable");
    folder
}

#[test]
fn a_row_of_hops_is_their_sum_and_each_power_point_counts_once() {
    let folder = varneck(
        "kind: service\nid: cameras\nfrom: exchange\nto: kerbjoch\nroutes: [[exchange-murrgrat, murrgrat-kerbjoch]]\n\
         rain_common_within: 60 km\n",
    );
    let sheets = Sheets::of(folder.path().to_str().expect("a path"));
    let hops = ["exchange-murrgrat", "murrgrat-kerbjoch"].map(|hop| &sheets.hops[hop]);
    let service = &sheets.services["cameras"];
    let each = |key: &str| hops.map(|hop| hop[key]);
    let [one, other] = each("service.rain_outage");
    near(service["routes[0].rain"], one + other);
    near(service["routes[0].rain_once"], one.max(other));
    let lengths = each("path.slant").iter().sum::<f64>();
    near(service["routes[0].length"], lengths);
    near(service["end_to_end.delay"], 1000.0 * 1.000_315 * lengths / 299_792_458.0);
    assert!(service["end_to_end.capacity"] >= 1000.0);
    near(service["end_to_end.availability"], 100.0 - service["end_to_end.outage"]);
    assert!(service["end_to_end.availability_once"] > service["end_to_end.availability"]);
    // Both hops take power at Murrgrat, from one point or from two: never more than both hops count, nor less than one.
    let outages = each("service.outage");
    assert!(service["end_to_end.outage"] <= outages.iter().sum::<f64>() + 1e-9);
    assert!(service["end_to_end.outage"] >= outages[0].max(outages[1]));
}

#[test]
fn references_of_a_service_that_lead_nowhere_are_told_at_their_place() {
    let found = Two::with("routes: [[rigde]]\n").found();
    assert_eq!(found.len(), 1, "{found:?}");
    assert_eq!(found[0].message, "the network has no hop `rigde`");
    assert!(found[0].hop.is_none());
    assert!(found[0].help.as_ref().is_some_and(|help| help.contains("`ridge`")), "{:?}", found[0].help);
    let two = Two::with("routes: [[ridge]]\n");
    two.bench.change("services.yaml", "to: mill", "to: mil");
    let found = two.found();
    assert_eq!(found.len(), 1, "{found:?}");
    assert_eq!(found[0].message, "the network has no site `mil`");
}

#[test]
fn a_second_route_helps_as_far_as_the_two_are_apart() {
    let alone = Two::with("routes: [[ridge]]\n").availability();
    let common = Two::with("routes: [[ridge], [second]]\n");
    assert_eq!(common.rules(), [""; 0]);
    // All of it is rain, and all rain is common where nobody says how far.
    near(common.availability(), alone);
    let apart = Two::with("routes: [[ridge], [second]]\nrain_common_within: 10 m\n").availability();
    near(apart, alone);
    let itself = Two::with("routes: [[ridge], [ridge]]\n");
    near(itself.availability(), alone);
    assert_eq!(itself.rules(), ["routes-share"]);
}

#[test]
fn what_both_routes_share_is_protected_by_neither() {
    let failures = ", failures: { mean_time_between: 2000 h, mean_duration: 4 h } }";
    let two = Two::with("routes: [[ridge], [second]]\n");
    let file = "sites/mill.yaml";
    two.bench.change(
        file,
        "  - id: loft\n    title: Mill loft, breaker 7\n",
        &format!("  - {{ id: loft, title: Mill loft{failures}\n  - {{ id: attic, title: Attic{failures}\n"),
    );
    let shared = two.sheet().services["water"].clone();
    near(shared["end_to_end.shared"], 0.2);
    assert!(shared["end_to_end.outage"] >= 0.2);
    two.bench.change("hops/second.yaml", "power_point: loft", "power_point: attic");
    let own = two.sheet().services["water"].clone();
    near(own["end_to_end.shared"], 0.0);
    // Two points that fail apart are down together for the product.
    assert!(own["end_to_end.outage"] < 0.2);
    assert!(own["end_to_end.outage"] > 0.2 * 0.2 / 100.0);
}

#[test]
fn a_site_between_the_ends_is_shared_and_one_at_an_end_is_not() {
    let folder = varneck(
        "kind: service\nid: cameras\nfrom: exchange\nto: kerbjoch\nroutes:\n  - [exchange-murrgrat, murrgrat-kerbjoch]\n  \
         - [exchange-murrgrat-b, murrgrat-kerbjoch-b]\n",
    );
    for hop in ["exchange-murrgrat", "murrgrat-kerbjoch"] {
        let text = fs::read_to_string(folder.path().join(format!("hops/{hop}.yaml"))).expect("there");
        let copy = text.replacen(&format!("id: {hop}\n"), &format!("id: {hop}-b\n"), 1);
        fs::write(folder.path().join(format!("hops/{hop}-b.yaml")), copy).expect("writable");
    }
    let ran = run_in(folder.path(), &["check", ".", "--format", "json"]);
    let json: Value = serde_json::from_str(&ran.out).expect("JSON");
    let found = json["findings"].as_array().expect("findings");
    let shared: Vec<&str> = found
        .iter()
        .filter(|finding| finding["rule"] == "routes-share")
        .filter_map(|finding| finding["message"].as_str())
        .collect();
    assert_eq!(shared, ["both routes of service `cameras` run through site `murrgrat`: what takes it takes both"]);
}

#[test]
fn a_service_over_a_hop_that_was_not_judged_never_looks_like_one_that_passed() {
    let two = Two::with("routes: [[ridge]]\nobjectives: { availability: 90 %, capacity: 1 Mbit/s }\n");
    assert_eq!(two.rules(), [""; 0]);
    two.bench.change("hops/ridge.yaml", "antenna: dish-60", "antenna: dish-61");
    let found = two.found();
    let rules: Vec<&str> = found.iter().map(|finding| finding.rule.name).collect();
    assert_eq!(rules, ["reference-dangling", "service-not-judged"]);
    assert_eq!(
        found[1].message,
        "service `water` is not judged: hop ridge is not evaluated; so it has no availability and no capacity"
    );
    // Nothing silences it.
    two.bench.change("network.yaml", "rules: {", "rules: { service-not-judged: off,");
    let found = two.bench.judge().findings;
    for rule in ["service-not-judged", "rule-not-to-silence"] {
        assert!(found.iter().any(|finding| finding.rule.name == rule), "{rule}");
    }
}

#[test]
fn a_route_over_a_hop_whose_document_is_broken_waits_for_it_and_does_not_break() {
    let two = Two::with("routes: [[ridge]]\nobjectives: { availability: 90 % }\n");
    two.bench.change("hops/ridge.yaml", "site: scar", "site: scra");
    assert_eq!(two.rules(), ["reference-dangling", "service-not-judged"]);
}

#[test]
fn every_form_of_check_tells_of_a_service_and_none_takes_it_for_a_hop() {
    let two = Two::with("routes: [[ridge]]\nobjectives: { availability: 99.999 % }\n");
    let folder = two.bench.path("");
    for form in ["full", "concise", "narrated", "json", "sarif", "github", "gitlab", "junit", "markdown"] {
        let ran = run_in(&folder, &["check", ".", "--format", form]);
        assert!(ran.out.contains("service-availability-below-objective"), "{form}: {}", ran.out);
        assert!(ran.out.contains("water"), "{form}");
        assert_eq!(ran.code, 1, "{form}");
    }
    let json = run_in(&folder, &["check", ".", "--format", "json"]).out;
    let json: Value = serde_json::from_str(&json).expect("JSON");
    let found = json["findings"].as_array().expect("findings").iter();
    let of_service: Vec<&Value> = found.filter(|finding| finding["rule"].to_string().contains("service-")).collect();
    assert_eq!(of_service.len(), 1);
    assert!(of_service[0]["hop"].is_null(), "{}", of_service[0]);
}

#[test]
fn compare_shows_what_a_change_of_a_hop_does_to_a_service() {
    let text = "routes: [[ridge]]\nobjectives: { availability: 99.993 % }\n";
    let (old, new) = (Two::with(text), Two::with(text));
    new.bench.change("hops/ridge.yaml", "transmit_power: 12 dBm", "transmit_power: 9 dBm");
    let paths = [&old, &new].map(|two| two.bench.path("").display().to_string());
    let ran = run(&["compare", &paths[0], &paths[1]]);
    let new = "new error[service-availability-below-objective]";
    assert!(ran.out.contains(new) && ran.out.contains("`water`"), "{}", ran.out);
    let same = run(&["compare", &paths[0], &paths[0]]);
    assert!(!same.out.contains("water"), "{}", same.out);
}

#[test]
fn a_hop_that_is_asked_for_by_name_prints_no_service() {
    let two = Two::with("routes: [[ridge]]\n");
    let folder = two.bench.path("");
    let whole = run_in(&folder, &["sheet", "--full"]).out;
    assert!(whole.contains("fellmoor, service water: Water board"), "{whole}");
    assert!(whole.contains("Route 1: ridge"), "{whole}");
    let one = run_in(&folder, &["sheet", "--full", "ridge"]).out;
    assert!(!one.contains("service water"), "{one}");
    let sources = run_in(&folder, &["sheet", "--sources"]).out;
    let of_service = sources.split("service water").nth(1).expect("the service");
    assert!(of_service.contains("transmit_power") && of_service.contains("Boole"), "{of_service}");
}

#[test]
fn a_radio_that_states_no_latency_leaves_only_propagation_and_says_so() {
    let two = Two::with("routes: [[ridge]]\n");
    let sheet = |two: &Two| run_in(&two.bench.path(""), &["sheet", "--full"]).out;
    let text = sheet(&two);
    assert!(text.contains("propagation delay, one way") && text.contains("latency of q-80"), "{text}");
    let bare = two.sheet().services["water"]["end_to_end.delay"];
    two.bench.change("equipment/radio.yaml", "overload: -30 dBm", "overload: -30 dBm\nlatency: 50 us");
    let text = sheet(&two);
    assert!(!text.contains("propagation delay") && text.contains("delay, one way"), "{text}");
    near(two.sheet().services["water"]["end_to_end.delay"], bare + 0.1);
}

#[test]
fn asking_less_of_a_service_weakens_the_gate_and_compare_says_so() {
    let text = "routes: [[ridge]]\nobjectives: { availability: 99.993 %, delay: 1 ms }\n";
    let told = |change: &dyn Fn(&Two)| {
        let (old, new) = (Two::with(text), Two::with(text));
        change(&new);
        let paths = [&old, &new].map(|two| two.bench.path("").display().to_string());
        run(&["compare", &paths[0], &paths[1]]).out
    };
    let lower = told(&|two| two.bench.change("services.yaml", "99.993 %", "99.9 %"));
    assert!(lower.contains("objectives.availability: 99.993 % → 99.9 %") && lower.contains("weaker"), "{lower}");
    let gone = told(&|two| fs::remove_file(two.bench.path("services.yaml")).expect("removed"));
    assert!(gone.contains("service water") && gone.contains("weaker"), "{gone}");
}
