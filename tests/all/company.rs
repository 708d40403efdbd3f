//! Hops that share a support or a site, judged together.

use std::collections::BTreeMap;
use std::fs;

use crate::fixture::Bench;
use hopwright::listing::HopListing;
use hopwright::network::Scope;
use hopwright::verdict::evaluate;

/// The base network in a wind, its antennas with areas; hop `ridge` stands at 8 m on `stub`, a pole of `scar`.
fn windy() -> Bench {
    Bench::with(&[
        ("equipment/mounting.yaml", "gain: 50.5 dBi", "gain: 50.5 dBi\nwind_area: 0.32 m2"),
        ("equipment/mounting.yaml", "gain: 44.5 dBi", "gain: 44.5 dBi\nwind_area: 0.1 m2"),
        ("network.yaml", "hottest_air: 35 °C", "hottest_air: 35 °C\n  wind: { operating: 20 m/s, survival: 40 m/s }"),
    ])
}

/// Adds a hop from `scar` to a site of its own, at a height on `stub`, otherwise like `ridge`.
fn another(bench: &Bench, id: &str, height: &str, longitude: &str) {
    let site = fs::read_to_string(bench.path("sites/mill.yaml")).expect("there");
    let site = site.replace("id: mill", &format!("id: {id}-far")).replace("-32.170000", longitude);
    fs::write(bench.path(&format!("sites/{id}.yaml")), site).expect("writable");
    let hop = fs::read_to_string(bench.path("hops/ridge.yaml")).expect("there");
    let hop = hop
        .replace("id: ridge", &format!("id: {id}"))
        .replace("site: mill", &format!("site: {id}-far"))
        .replace("height: 8 m", &format!("height: {height}"));
    fs::write(bench.path(&format!("hops/{id}.yaml")), hop).expect("writable");
}

/// The lines of each hop by their keys: the number, or what is said.
type Lines = BTreeMap<String, (Option<f64>, String)>;

fn sheets(bench: &Bench) -> BTreeMap<String, Lines> {
    let evaluation = evaluate(&Scope::of(&[bench.path("")]), |sheet, _| (sheet.id().to_owned(), HopListing::of(sheet)));
    let of = |listing: HopListing| -> Lines {
        let rows = listing.sections.into_iter().flat_map(|section| section.rows);
        let told = |row: hopwright::sheet::Row| {
            let text = row.text.map_or_else(|why| why.reason.to_string(), |told| told.to_string());
            (row.key.to_string(), (row.number.map(|(number, _)| number), text))
        };
        rows.map(told).collect()
    };
    evaluation.hops.into_iter().map(|(id, listing)| (id, of(listing))).collect()
}

/// Rules and messages of what is found, with the hop.
fn found(bench: &Bench, rule: &str) -> Vec<(String, String)> {
    let findings = bench.judge().findings.into_iter().filter(|finding| finding.rule.name == rule);
    findings.map(|finding| (finding.hop.unwrap_or_default(), finding.message)).collect()
}

#[test]
fn all_that_stands_on_a_pole_bends_it() {
    let alone = windy();
    let before = &sheets(&alone)["ridge"];
    assert_eq!(before.get("ends.a.wind.company"), None, "nothing is said of no company");
    let number = |lines: &Lines, line: &str| lines[&format!("ends.a.wind.{line}")].0.expect("a number");
    let bench = windy();
    another(&bench, "second", "9 m", "-32.150000");
    another(&bench, "third", "7 m", "-32.230000");
    let after = sheets(&bench);
    let ridge = &after["ridge"];
    // 1.3 A q each, q = 0.625 · 40² = 1000 Pa: 416 N at 2, 3 and 1 m.
    let own = number(before, "own_moment");
    assert!((own - 832.0).abs() < 1e-9, "{own}");
    let pole = number(before, "survival_moment") - own;
    assert!((number(ridge, "survival_moment") - pole - 416.0 * (2.0 + 3.0 + 1.0)).abs() < 1e-9);
    assert_eq!(ridge["ends.a.wind.company"].1, "second end a at 9 m, third end a at 7 m");
    assert_eq!(ridge["ends.a.wind.others_moments"].1, "second end a 1248.0 N·m, third end a 416.0 N·m");
    // 1.3 A q at 20 m/s: 104 N each.
    assert!((number(ridge, "others_force") - 2.0 * 104.0).abs() < 1e-9);
    let stress = ["ridge", "second", "third"].map(|hop| number(&after[hop], "survival_stress"));
    assert_eq!(stress[0].to_bits(), stress[1].to_bits(), "one foot, one stress");
    assert_eq!(stress[0].to_bits(), stress[2].to_bits(), "one foot, one stress");
    // Each beam turns at its own height.
    let turn = ["third", "ridge", "second"].map(|hop| number(&after[hop], "turn"));
    assert!(turn[0] < turn[1] && turn[1] < turn[2], "{turn:?}");
    assert!(turn[1] > number(before, "turn"));
}

#[test]
fn three_antennas_work_a_pole_too_hard_that_carries_one_well() {
    let heavy = || {
        let bench = windy();
        bench.change("network.yaml", "survival: 40 m/s", "survival: 50 m/s");
        bench
    };
    assert_eq!(found(&heavy(), "pole-overstressed"), []);
    let bench = heavy();
    another(&bench, "second", "9 m", "-32.150000");
    another(&bench, "third", "7 m", "-32.230000");
    let found = found(&bench, "pole-overstressed");
    let hops: Vec<&str> = found.iter().map(|(hop, _)| hop.as_str()).collect();
    assert_eq!(hops, ["ridge", "second", "third"], "{found:?}");
    assert!(found[0].1.ends_with("with the antennas of 2 other ends on it"), "{found:?}");
}

#[test]
fn a_stiffer_pipe_is_tried_with_all_that_stands_there() {
    let swaying = || {
        let bench = windy();
        bench.change("network.yaml", "operating: 20 m/s", "operating: 36 m/s");
        bench.change("equipment/mounting.yaml", "max: 114.3 mm }", "max: 170 mm }");
        bench.change("sites/scar.yaml", "88.9 mm", "60.3 mm");
        bench
    };
    let pipe = |bench: &Bench| {
        let found = bench.judge().findings.into_iter().find(|finding| finding.rule.name == "sway-too-great");
        found.and_then(|finding| finding.help).expect("a help")
    };
    let alone = pipe(&swaying());
    let bench = swaying();
    another(&bench, "second", "9 m", "-32.150000");
    another(&bench, "third", "9 m", "-32.230000");
    let together = pipe(&bench);
    let outside = |help: &str| -> f64 {
        let (_, rest) = help.split_once('(').expect("a pipe");
        rest.split(' ').next().and_then(|number| number.parse().ok()).expect("a number")
    };
    assert!(outside(&together) > outside(&alone), "{alone} / {together}");
    // What is proposed does for all of them.
    let wanted = outside(&together);
    bench.change("sites/scar.yaml", "60.3 mm", &format!("{wanted} mm"));
    assert!(found(&bench, "sway-too-great").iter().all(|(hop, _)| hop != "ridge"));
}

#[test]
fn an_antenna_beside_it_without_an_area_leaves_the_wind_unjudged() {
    let bench = windy();
    another(&bench, "second", "9 m", "-32.150000");
    let text = fs::read_to_string(bench.path("equipment/mounting.yaml")).expect("there");
    let dish = text.split("---\n").find(|document| document.contains("id: dish-60")).expect("an antenna");
    let bare = dish.replace("id: dish-60", "id: bare").replace("wind_area: 0.32 m2\n", "");
    fs::write(bench.path("equipment/bare.yaml"), bare).expect("writable");
    bench.change("hops/second.yaml", "antenna: dish-60", "antenna: bare");
    let found = found(&bench, "wind-not-judged");
    assert_eq!(found.len(), 1, "told once: {found:?}");
    assert!(found[0].1.contains("`bare`"), "{found:?}");
    let sheets = sheets(&bench);
    let (number, why) = &sheets["ridge"]["ends.a.wind.survival_stress"];
    assert_eq!(*number, None);
    assert_eq!(why, "the antenna of hop second, end a, on the same support states no wind area");
}

#[test]
fn more_on_one_support_than_anybody_mounts_is_said_and_not_computed() {
    let bench = windy();
    for number in 0..101 {
        another(&bench, &format!("more-{number}"), "8 m", &format!("-32.{}", 100_000 + number));
    }
    let found = found(&bench, "wind-not-judged");
    assert!(found.iter().any(|(_, message)| message.contains("more than 100 other antennas")), "{found:?}");
}

/// Two boxes in front of a tube of 100 mm, seen from above 50 to 450 mm out and 600 mm wide.
#[test]
fn bodies_on_one_tube_take_their_room() {
    use hopwright::physics::bodies::Body;
    use hopwright::units::{Degrees, Metres, Millimetres};
    let body = |height: f64, bearing: f64| Body {
        height: Metres(height),
        diameter: Millimetres(600.0),
        bearing: Degrees(bearing),
        tilt: Degrees(0.0),
    };
    let room = |one: Body, other: Body| one.room(&other, Millimetres(100.0)).0;
    let near = |one: f64, other: f64| assert!((one - other).abs() < 1e-9, "{one}, {other}");
    near(room(body(10.0, 0.0), body(10.0, 0.0)), -400.0);
    // Back to back: the tube is between them.
    near(room(body(10.0, 0.0), body(10.0, 180.0)), 100.0);
    // A quarter turn apart each reaches 250 mm into the other; above each other 100 mm are left.
    near(room(body(10.0, 0.0), body(10.0, 90.0)), -250.0);
    near(room(body(10.0, 0.0), body(10.7, 90.0)), 100.0);
    near(room(body(10.0, 0.0), body(10.8, 180.0)), 100.0_f64.hypot(200.0));
    for turn in [0.0, 17.0, 90.0, 233.0] {
        let turned = |height, bearing: f64| body(height, (bearing + turn) % 360.0);
        near(room(turned(10.0, 0.0), turned(10.2, 70.0)), room(body(10.0, 0.0), body(10.2, 70.0)));
        near(room(turned(10.0, 70.0), turned(10.2, 0.0)), room(turned(10.2, 0.0), turned(10.0, 70.0)));
    }
    // What looks the same way and stands further out is in the beam of what is level with it, and not the other way round.
    let bigger = Body { diameter: Millimetres(1200.0), ..body(10.0, 0.0) };
    let tube = Millimetres(100.0);
    assert!(body(10.0, 0.0).shines_on(&bigger, tube) && !bigger.shines_on(&body(10.0, 0.0), tube));
    assert!(!body(11.0, 0.0).shines_on(&bigger, tube));
}

#[test]
fn two_antennas_in_one_place_are_told_once_at_the_later_hop() {
    let bench = Bench::new();
    another(&bench, "second", "8 m", "-32.150000");
    let found = found(&bench, "antennas-collide");
    assert_eq!(found.len(), 1, "{found:?}");
    assert_eq!(found[0].0, "second");
    assert!(found[0].1.contains("`ridge`, end a"), "{found:?}");
}

#[test]
fn an_earth_point_of_two_names_both() {
    let bench = Bench::new();
    let before = sheets(&bench);
    assert_eq!(before["ridge"].get("ends.a.ground.shared_earth"), None);
    another(&bench, "second", "6.5 m", "-32.150000");
    let after = sheets(&bench);
    assert_eq!(after["ridge"]["ends.a.ground.shared_earth"].1, "second end a");
    assert_eq!(after["second"]["ends.a.ground.shared_earth"].1, "ridge end a");
    assert_eq!(after["ridge"].get("ends.b.ground.shared_earth"), None);
}
