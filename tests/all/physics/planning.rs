//! The clearance a path is planned with.

use hopwright::physics::clearance::{earth_bulge, first_fresnel_radius};
use hopwright::physics::geodesy::MEDIAN_K;
use hopwright::physics::planning_clearance::{Climate, Obstacle, low_k, shares};
use hopwright::units::{Gigahertz, Metres};

use super::table::{Row, rows};

fn ends(row: &Row) -> [Metres; 2] {
    ["d1_km", "d2_km"].map(|column| Metres(1000.0 * row.number(column)))
}

#[test]
fn the_low_k_and_the_shares_match_the_table() {
    for row in rows(include_str!("../../tables/planning_clearance.csv")) {
        let [near, far] = ends(&row);
        let k = row.maybe("k_min_given").unwrap_or_else(|| low_k(near + far));
        row.check_relative("k_min", k);
        let radius = first_fresnel_radius(Gigahertz(row.number("f_ghz")), near, far).0;
        row.check_relative("f1_m", radius);
        let bulges = [MEDIAN_K, k].map(|k| earth_bulge(near, far, k).0);
        row.check_relative("bulge_median_m", bulges[0]);
        row.check_relative("bulge_min_m", bulges[1]);
        if row.text("antenna") != "main" {
            continue;
        }
        let climate = if row.text("climate") == "tropical" { Climate::Tropical } else { Climate::Temperate };
        let obstacle = if row.text("obstacle") == "isolated" { Obstacle::Isolated } else { Obstacle::Extended };
        let asked = shares(climate, obstacle, near + far);
        row.check("c_median", asked.median, 0.0);
        row.check("c_min", asked.low, 0.0);
        let need = f64::max(asked.median * radius + bulges[0], asked.low * radius + bulges[1]);
        row.check_relative("need_m", need);
    }
}

#[test]
fn a_longer_path_sees_a_milder_k_and_no_path_a_worse_one_than_twenty_kilometres() {
    let mut before = low_k(Metres(0.0));
    assert!((before - 0.565_765_765_8).abs() < 1e-9);
    for kilometres in 1..300 {
        let here = low_k(Metres(1000.0 * f64::from(kilometres)));
        assert!(here >= before && here < MEDIAN_K, "{kilometres}: {here}");
        before = here;
    }
}
