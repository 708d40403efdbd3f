//! The availability of a hop: what counts in it, what it is called, and what of it an objective asks for.

use std::collections::HashMap;

use crate::fixture::{Bench, Edit, tests_folder};
use hopwright::network::Scope;
use hopwright::verdict::evaluate;

/// Number, words and text of every line of the only hop.
struct Lines(HashMap<String, (Option<f64>, &'static str, String)>);

impl Lines {
    fn of(bench: &Bench) -> Self {
        let of = evaluate(&Scope::of(&[bench.path("")]), |sheet, _| {
            let rows = sheet.sections().into_iter().flat_map(|section| section.rows);
            let line = |row: hopwright::sheet::Row| {
                let text = row.text.map_or_else(|missing| missing.reason.to_string(), |told| told.to_string());
                (row.key.to_string(), (row.number.map(|(number, _)| number), row.words, text))
            };
            rows.map(line).collect()
        });
        Self(of.hops.into_iter().next().expect("a hop"))
    }

    fn number(&self, key: &str) -> f64 {
        self.0[key].0.unwrap_or_else(|| panic!("{key}: {}", self.0[key].2))
    }

    fn words(&self, key: &str) -> &'static str {
        self.0[key].1
    }

    fn text(&self, key: &str) -> &str {
        &self.0[key].2
    }
}

/// 5.3 km at 38 and 39 GHz where rain, multipath and equipment all take their share.
fn long() -> Bench {
    Bench::edited(&Edit::read(&tests_folder().join("rules/availability-below-objective/bad-all-causes.edit")))
}

#[test]
fn the_parts_add_up_each_direction_and_the_hop() {
    let lines = Lines::of(&long());
    let (equipment, rain) = (lines.number("service.equipment"), lines.number("service.rain_outage"));
    for way in ["a_to_b", "b_to_a"] {
        let of = |line: &str| lines.number(&format!("{way}.states[0].{line}"));
        assert!((of("outage") - of("rain_outage") - of("multipath") - equipment).abs() < 1e-12);
        assert!((of("availability") + of("outage") - 100.0).abs() < 1e-12);
    }
    let multipath = |way: &str| lines.number(&format!("{way}.states[0].multipath"));
    let both = multipath("a_to_b") + multipath("b_to_a");
    assert!((lines.number("service.multipath") - both).abs() < 1e-12);
    assert!((lines.number("service.outage") - rain - both - equipment).abs() < 1e-12);
    // Multipath alone would keep the objective, and so would rain or equipment.
    assert!([rain, both, equipment].iter().all(|part| *part < 0.02) && lines.number("service.outage") > 0.02);
    assert!(lines.number("service.worst_month") > lines.number("service.outage"));
}

#[test]
fn an_availability_is_called_by_what_it_counts() {
    let bench = long();
    let called = |bench: &Bench| {
        let lines = Lines::of(bench);
        (lines.words("service.availability"), lines.text("service.left_out").to_owned())
    };
    assert_eq!(called(&bench), ("availability, both directions", "failures of its supply".into()));
    bench.change("network.yaml", "mean_time_to_restore: 12 h\n", "");
    let left = "failures of equipment, failures of its supply";
    assert_eq!(called(&bench), ("propagation availability, both directions", left.into()));
    bench.change("network.yaml", "  rain_height: 4200 m\n", "");
    let left = "wet snow, failures of equipment, failures of its supply";
    assert_eq!(called(&bench), ("rain availability, both directions", left.into()));
    assert_eq!(Lines::of(&bench).words("a_to_b.states[0].availability"), "rain availability");
    bench.change("network.yaml", "  refractivity: { log_k: -1.0, dn_75: 55 }\n", "");
    assert!(called(&bench).1.starts_with("wet snow, multipath fading, "));
}

#[test]
fn a_supply_counts_when_every_point_in_use_says_how_it_fails() {
    let bench = Bench::new();
    let failures = "    failures: { mean_time_between: 60 d, mean_duration: 1 h, autonomy: 2 h }\n";
    let reason = "no failures of the power point are given";
    assert_eq!(Lines::of(&bench).text("service.supply"), reason);
    for (site, point) in [("scar", "hut"), ("mill", "loft")] {
        assert_eq!(Lines::of(&bench).text("service.supply"), reason, "{site}");
        let id = format!("  - id: {point}\n");
        bench.change(&format!("sites/{site}.yaml"), &id, &format!("{id}{failures}"));
    }
    // Of each end exp(-2) of an hour in 1440, worked by hand.
    let one = 100.0 * (-2.0_f64).exp() / 1440.0;
    let both = 100.0 * (1.0 - (1.0 - one / 100.0).powi(2));
    let got = Lines::of(&bench).number("service.supply");
    assert!((got - both).abs() < 1e-9, "{got} {both}");
}

#[test]
fn an_objective_says_which_time_and_which_directions_it_means() {
    let counted = |objectives: &str| {
        let bench = long();
        bench.change("network.yaml", "  fade_margin: 20 dB\n", &format!("  fade_margin: 20 dB\n{objectives}"));
        Lines::of(&bench)
    };
    let same = |one: f64, other: f64| assert!((one - other).abs() < 1e-12, "{one} {other}");
    let usual = counted("");
    same(usual.number("service.counted"), usual.number("service.availability"));
    let month = counted("  period: worst-month\n");
    same(month.number("service.counted"), month.number("service.worst_month_availability"));
    let each = counted("  directions: each\n");
    let worse = each.number("a_to_b.states[0].availability").min(each.number("b_to_a.states[0].availability"));
    same(each.number("service.counted"), worse);
    assert!(worse > usual.number("service.counted"));
}

#[test]
fn interference_that_is_stated_comes_off_the_margin_of_the_end_that_hears_it() {
    let (before, bench) = (Lines::of(&Bench::new()), Bench::new());
    bench.change("hops/ridge.yaml", "    half: high\n", "    half: high\n    threshold_degradation: 2 dB\n");
    let after = Lines::of(&bench);
    let fell = |key: &str| before.number(key) - after.number(key);
    assert!((fell("a_to_b.states[0].margin") - 2.0).abs() < 1e-9);
    assert!(fell("b_to_a.states[0].margin").abs() < 1e-9);
    assert!(fell("a_to_b.states[0].availability") > 0.0);
    assert!(fell("a_to_b.level").abs() < 1e-9);
}

#[test]
fn tolerances_make_a_range_around_the_availability() {
    let plain = Lines::of(&Bench::new());
    assert_eq!(plain.text("service.counted_least"), "no tolerance of power, gain, threshold or rain rate is stated");
    let bench = Bench::edited(&Edit::read(&tests_folder().join("rules/availability-within-tolerance/bad.edit")));
    let lines = Lines::of(&bench);
    let [least, value, most] =
        ["counted_least", "counted", "counted_most"].map(|line| lines.number(&format!("service.{line}")));
    assert!(least < value && value < most);
    // The same hop with everything written as bad as it may be: 1.5 dB of power, 0.5 dB of each gain, 1 dB of threshold.
    let worst = Bench::new();
    for (file, from, to) in [
        ("equipment/mounting.yaml", "gain: 50.5 dBi", "gain: 48.5 dBi"),
        ("equipment/radio.yaml", "threshold: -65 dBm", "threshold: -63.5 dBm"),
        ("network.yaml", "rain_rate: 22 mm/h", "rain_rate: 26.4 mm/h"),
    ] {
        worst.change(file, from, to);
    }
    let got = Lines::of(&worst).number("service.counted");
    assert!((got - least).abs() < 1e-9, "{got} {least}");
}
