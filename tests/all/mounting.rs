//! Hills, ice, fixings and screws: in the numbers, of all that stands on a support, and on the pages of a crew in both languages.

use std::collections::HashMap;
use std::fs;

use crate::fixture::{Bench, copy_example};
use crate::lightning::printed;
use crate::packs::example;

const AREAS: [(&str, &str, &str); 2] = [
    ("equipment/mounting.yaml", "gain: 50.5 dBi", "gain: 50.5 dBi\nwind_area: 0.32 m2\nmass: 6 kg"),
    ("equipment/mounting.yaml", "gain: 44.5 dBi", "gain: 44.5 dBi\nwind_area: 0.1 m2\nmass: 3 kg"),
];

/// The base network in a wind, with what its climate and the site `scar` say beside.
fn bench(wind: &str, climate: &str, site: &str, support: &str) -> Bench {
    let bench = Bench::with(&AREAS);
    bench.change("network.yaml", "hottest_air: 35 °C", &format!("hottest_air: 35 °C\n  wind: {wind}\n{climate}"));
    bench.change("sites/scar.yaml", "ground_height: 850 m", &format!("ground_height: 850 m\n{site}"));
    bench.change("sites/scar.yaml", "free_length: 3 m", &format!("free_length: 3 m\n{support}"));
    bench
}

fn numbers(wind: &str, climate: &str, site: &str, support: &str) -> HashMap<String, f64> {
    bench(wind, climate, site, support).numbers()
}

const EN: &str = "{ operating: 10 m/s, survival: 25 m/s, speeds: EN 1991-1-4 II }";

/// 8 m above the ground, at the crest of a hill of 50 m in 250 m, by annex A.3: the peak pressure goes by the square of the
/// factor, less what the gusts do not grow with it.
#[test]
fn a_hill_raises_the_wind_by_its_factor() {
    let flat = numbers(EN, "", "", "");
    assert_eq!(flat.get("ends.a.wind.orography"), None, "nothing is said of no hill");
    let slope = "orography: { slope: { shape: hill, height: 50 m, upwind_length: 250 m, from_crest: 0 m } }";
    let hill = numbers(EN, "", slope, "");
    let factor = hill["ends.a.wind.orography"];
    let z: f64 = 8.0 / 250.0;
    let s = 0.1552 * z.powi(4) - 0.8575 * z.powi(3) + 1.8133 * z * z - 1.9115 * z + 1.0124;
    assert!((factor - (1.0 + 2.0 * s * 0.2)).abs() < 1e-9, "{factor}");
    let log = (8.0_f64 / 0.05).ln();
    let raised = (1.0 + 7.0 / (factor * log)) * factor * factor / (1.0 + 7.0 / log);
    let ratio = hill["ends.a.wind.pressure"] / flat["ends.a.wind.pressure"];
    assert!((ratio - raised).abs() < 1e-9, "{ratio}, {raised}");
    // The other end stands on flat ground.
    assert!((hill["ends.b.wind.pressure"] - flat["ends.b.wind.pressure"]).abs() < 1e-9);
    // What somebody states counts in place of a slope.
    let stated = numbers(EN, "", &slope.replace("slope:", "factor: 1.1, slope:"), "");
    assert!((stated["ends.a.wind.orography"] - 1.1).abs() < 1e-12);
}

#[test]
fn the_factor_of_asce_is_one_on_the_pressure() {
    let wind = "{ operating: 10 m/s, speeds: ASCE 7 C }";
    let (flat, hill) = (numbers(wind, "", "", ""), numbers(wind, "", "orography: { topographic_factor: 1.4 }", ""));
    let ratio = hill["ends.a.wind.pressure"] / flat["ends.a.wind.pressure"];
    assert!((ratio - 1.4).abs() < 1e-9, "{ratio}");
}

/// More ice is never lighter, and never easier on the pole, at one share of the wind.
#[test]
fn more_ice_weighs_and_pushes_more() {
    let with = |thickness: u32| {
        let ice = format!("  ice: {{ thickness: {thickness} mm, density: 900 kg/m3 }}");
        numbers("{ operating: 10 m/s, survival: 30 m/s }", &ice, "", "")
    };
    let bare = numbers("{ operating: 10 m/s, survival: 30 m/s }", "", "", "");
    assert_eq!(bare.get("ends.a.ice.mass"), None);
    let mut before = bare["ends.a.wind.survival_moment"];
    let mut mass = 0.0;
    for thickness in [5, 10, 20, 40] {
        let iced = with(thickness);
        assert!(iced["ends.a.ice.moment"] > before && iced["ends.a.ice.mass"] > mass, "{thickness}");
        (before, mass) = (iced["ends.a.ice.moment"], iced["ends.a.ice.mass"]);
        // The bare wind stays what it is.
        assert!((iced["ends.a.wind.survival_moment"] - bare["ends.a.wind.survival_moment"]).abs() < 1e-9);
    }
    // A class says how much of the wind comes with it.
    let classed = numbers(
        "{ operating: 10 m/s, survival: 30 m/s }",
        "  ice: { class: G4, thickness: 40 mm, density: 900 kg/m3 }",
        "",
        "",
    );
    assert!((classed["ends.a.ice.moment"] / before - 0.55).abs() < 1e-9);
}

/// A second dish on the same pole is held by the same anchors, at both hops alike.
#[test]
fn anchors_hold_all_that_stands_on_the_support() {
    let fixings = "    fixings: { title: M12 anchors, count: 4, spacing: 200 mm, bears: { tension: 9 kN, shear: 9 kN, stated_by: C } }";
    let bench = bench("{ operating: 5 m/s, survival: 40 m/s }", "", "", fixings);
    let alone = bench.numbers()["ends.a.fixings.tension"];
    let hop = fs::read_to_string(bench.path("hops/ridge.yaml")).expect("there");
    let other = hop.replace("id: ridge", "id: ridge-2").replace("height: 8 m", "height: 6.8 m");
    fs::write(bench.path("hops/twin.yaml"), other.replace("height: 21 m", "height: 19.8 m")).expect("writable");
    let together = bench.numbers()["ends.a.fixings.tension"];
    // 0.416 m² at 1000 Pa, 0.8 m above the foot, over 0.2 m and two anchors.
    assert!((together - alone - 416.0 * 0.8 / 0.4).abs() < 0.01, "{alone} {together}");
}

#[test]
fn a_crew_is_told_what_it_lifts_and_every_screw() {
    let network = example("osierlea");
    let english = printed(&network, "install", "forge-mill/b", "en");
    for wanted in [
        "Antenna, radio and bracket weigh 2.6 kg (5.7 lb) together, without ice",
        "Nuts of the holding-down bolts of the support: 4 × M24, wrench 36 mm, check or tighten to 180 N·m",
        "Plate to the radio: tighten 4 × M5, A2-70, wrench 8 mm",
        "Ball lock: tighten 1 × M8, A2-70, wrench 13 mm",
    ] {
        assert!(english.contains(wanted), "{wanted} is not in {english}");
    }
    let lift = english.find("weigh 2.6 kg").expect("the mass");
    let warned = english.find("Heavy parts and the structure that bears them.").expect("the caution");
    let lifted = english.find("Lift the bracket and clamp it").expect("the step");
    assert!(warned < lift && lift < lifted, "the mass stands before the lift");
    let german = printed(&network, "install", "forge-mill/b", "de");
    for wanted in ["wiegen zusammen 2.6 kg (5.7 lb), ohne Eis", "4 × M24, Schlüsselweite 36 mm", "4 × M5, A2-70"] {
        assert!(german.contains(wanted), "{wanted} is not in {german}");
    }
    // Nobody states the masses of the base network.
    let unstated = printed(&Bench::new().path(""), "install", "ridge/a", "en");
    assert!(unstated.contains("is not stated: find out before lifting"), "{unstated}");
}

#[test]
fn a_reviewer_sees_ice_and_fixings() {
    let folder = tempfile::tempdir().expect("a folder");
    let network = copy_example("osierlea", folder.path());
    fs::create_dir(folder.path().join(".git")).expect("writable");
    for (language, wanted) in [
        ("en", ["Orography factor at the antenna", "Thickness of ice", "Pull that each fixing must hold"]),
        ("de", ["Topografiebeiwert an der Antenne", "Eisdicke", "Zug, den jede Befestigung halten muss"]),
    ] {
        let text = printed(&network, "design", "forge-mill", language);
        for words in wanted {
            assert!(text.contains(words), "{words} is not in {text}");
        }
    }
}
