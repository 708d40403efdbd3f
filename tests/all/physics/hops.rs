//! Whole hops, written as files and computed by the house, against an independent computation of all their numbers.

use super::table::{Row, rows};
use crate::one_hop::{End, Lines, OneHop, State, sheets};

fn end(row: &Row, name: &str) -> End {
    let number = |column: &str| row.number(&format!("{column}_{name}"));
    End {
        latitude: number("latitude"),
        longitude: number("longitude"),
        ground: number("ground"),
        height: number("height"),
        power: number("power"),
        gain: number("gain"),
        wet_loss: number("wet"),
        // The table takes all antennas for far apart; so narrow that they are.
        diameter: Some(20.0),
    }
}

fn hop(row: &Row) -> OneHop {
    let state = |threshold, back_off| State { threshold: row.number(threshold), back_off };
    OneHop {
        name: row.text("name").into(),
        a: end(row, "a"),
        b: end(row, "b"),
        frequencies: ["frequency_ab", "frequency_ba"].map(|column| row.number(column)),
        polarisation: row.text("polarisation"),
        temperature: row.maybe("temperature"),
        pressure: row.maybe("pressure"),
        humidity: row.maybe("humidity"),
        rain_rate: row.number("rain_rate"),
        states: vec![state("threshold_1", 0.0), state("threshold_2", row.number("back_off"))],
    }
}

/// Column of the table, line of the sheet, tolerance in the unit of both.
const PATH: [(&str, &str, f64); 9] = [
    ("distance", "path.distance", 0.001),
    ("slant", "path.slant", 0.001),
    ("azimuth_a", "path.azimuth_a", 1e-6),
    ("azimuth_b", "path.azimuth_b", 1e-6),
    ("elevation_a", "path.elevation_a", 0.001),
    ("elevation_b", "path.elevation_b", 0.001),
    ("air_temperature", "path.temperature", 1e-6),
    ("dry_pressure", "path.dry_pressure", 1e-6),
    ("vapour_pressure", "path.vapour_pressure", 1e-6),
];

/// The same for one direction. No tolerance stands for one part in a million.
const DIRECTION: [(&str, &str, Option<f64>); 12] = [
    ("free_space", "free_space_loss", Some(0.001)),
    ("gas", "gas_attenuation", None),
    ("gas_loss", "gas_loss", Some(0.001)),
    ("level", "level", Some(0.001)),
    ("fade_001", "rain_fade", Some(0.001)),
    ("margin_1", "states[0].margin", Some(0.001)),
    ("rain_margin_1", "states[0].rain_margin", Some(0.001)),
    ("outage_1", "states[0].rain_outage", None),
    ("availability_1", "states[0].availability", Some(1e-6)),
    ("margin_2", "states[1].margin", Some(0.001)),
    ("outage_2", "states[1].rain_outage", None),
    ("availability_2", "states[1].availability", Some(1e-6)),
];

fn number(lines: &Lines, key: &str) -> f64 {
    lines.get(key).and_then(|(number, _)| *number).unwrap_or_else(|| panic!("the sheet has no number `{key}`"))
}

#[test]
fn whole_hops_match_the_table() {
    let table: Vec<Row> = rows(include_str!("../../tables/hops.csv")).collect();
    assert!(table.len() >= 25);
    let hops: Vec<OneHop> = table.iter().map(hop).collect();
    for (row, lines) in table.iter().zip(sheets(&hops)) {
        for (column, key, tolerance) in PATH {
            // A millimetre turns a short path further.
            let short = column.starts_with("azimuth") && row.number("distance") < 100.0;
            row.check(column, number(&lines, key), if short { 1e-4 } else { tolerance });
        }
        for (short, way) in [("ab", "a_to_b"), ("ba", "b_to_a")] {
            for (column, line, tolerance) in DIRECTION {
                let (column, got) = (format!("{short}_{column}"), number(&lines, &format!("{way}.{line}")));
                match tolerance {
                    Some(tolerance) => row.check(&column, got, tolerance),
                    None => row.check_relative(&column, got),
                }
            }
        }
        for (column, key) in [("ab_volts", "ends.b.target_voltage"), ("ba_volts", "ends.a.target_voltage")] {
            row.check(column, number(&lines, key), 1e-5);
        }
    }
}

#[test]
fn the_table_covers_what_it_should() {
    let table: Vec<Row> = rows(include_str!("../../tables/hops.csv")).collect();
    let span = |column: &str| {
        let numbers = table.iter().map(|row| row.number(column));
        numbers.fold((f64::INFINITY, f64::NEG_INFINITY), |(least, most), n| (least.min(n), most.max(n)))
    };
    let (near, far) = span("distance");
    let (low, high) = span("frequency_ab");
    let (drizzle, downpour) = span("rain_rate");
    assert!(near < 51.0 && far > 58_000.0 && low <= 6.0 && high >= 86.0 && drizzle <= 5.0 && downpour >= 150.0);
    let some = |column: &str, wanted: f64| table.iter().any(|row| row.number(column).total_cmp(&wanted).is_eq());
    // Both ends of the method: no more than 0.001 %, and above 1 %.
    assert!(some("ab_outage_1", 0.001) && some("ab_outage_2", 100.0));
    for pole in ["horizontal", "vertical"] {
        assert!(table.iter().any(|row| row.text("polarisation") == pole));
    }
}
