//! Where the rain rate comes from, and what is said when it cannot be had.

use std::fs;

use crate::fixture::Bench;
use hopwright::listing::HopListing;
use hopwright::network::Scope;
use hopwright::verdict::evaluate;

const WRITTEN: &str = "rain_rate: 22 mm/h";
const MONTHS: &str = "rain_months: { totals: [80 mm, 60 mm, 60 mm, 50 mm, 50 mm, 60 mm, 60 mm, 75 mm, 70 mm, 90 mm, 90 mm, 90 mm], temperatures: [4 °C, 4 °C, 6 °C, 8 °C, 11 °C, 14 °C, 16 °C, 16 °C, 13 °C, 10 °C, 7 °C, 5 °C] }";

/// The base network with another climate.
fn with(climate: &str) -> Bench {
    let bench = Bench::new();
    let text = fs::read_to_string(bench.path("network.yaml")).expect("there");
    fs::write(bench.path("network.yaml"), text.replace(WRITTEN, climate)).expect("writable");
    bench
}

/// Text and method of a line of its only hop, or why there is none.
fn line(bench: &Bench, key: &str) -> (String, &'static str) {
    let evaluation = evaluate(&Scope::of(&[bench.path("")]), |sheet, _| HopListing::of(sheet));
    let rows = evaluation.hops[0].sections.iter().flat_map(|section| &section.rows);
    let row = rows.into_iter().find(|row| row.key.to_string() == key).expect("a line");
    (row.text.as_ref().map_or_else(|missing| missing.reason.to_string(), ToString::to_string), row.method.words())
}

/// A map of three by three cells around the base network, all of one rate.
fn map(bench: &Bench, rate: &str) {
    fs::create_dir(bench.path("map")).expect("writable");
    let row = |cells: [&str; 3]| cells.join(" ") + "\n";
    let write = |name: &str, text: String| fs::write(bench.path("map").join(name), text).expect("writable");
    write("R001.TXT", row([rate; 3]).repeat(3));
    write("Lat_R001.TXT", ["54", "54.5", "55"].map(|cell| row([cell; 3])).concat());
    write("Lon_R001.TXT", row(["-33", "-32.5", "-32"]).repeat(3));
}

fn rules(bench: &Bench) -> Vec<&'static str> {
    bench.judge().findings.iter().map(|finding| finding.rule.name).collect()
}

#[test]
fn a_rate_that_is_written_counts_before_months_and_months_before_a_map() {
    let bench = with(&format!("{WRITTEN}\n  {MONTHS}\n  rain_map: map"));
    assert_eq!(line(&bench, "path.rain_rate"), ("22 mm/h".into(), "as written"));
    let bench = with(&format!("{MONTHS}\n  rain_map: map"));
    assert_eq!(line(&bench, "path.rain_source").0, "normals of twelve months");
    let (rate, method) = line(&bench, "path.rain_rate");
    assert!(rate.ends_with("mm/h") && method.contains("P.837-7 Annex 1"), "{rate}, {method}");
}

#[test]
fn twelve_months_are_twelve() {
    let bench = with(&MONTHS.replace("80 mm, ", ""));
    assert_eq!(rules(&bench), ["hop-not-evaluated"]);
    let said = bench.judge().findings[0].message.clone();
    assert!(said.contains("11 totals and 12 temperatures"), "{said}");
}

#[test]
fn a_map_is_read_at_the_middle_of_the_path() {
    let bench = with("rain_map: map");
    map(&bench, "25.5");
    assert_eq!(line(&bench, "path.rain_rate").0, "25.5 mm/h");
    assert_eq!(line(&bench, "path.rain_source").0, "map at the middle of the path");
    assert_eq!(rules(&bench), [""; 0]);
}

#[test]
fn a_map_value_of_zero_is_said() {
    let bench = with("rain_map: map");
    map(&bench, "0");
    assert_eq!(line(&bench, "path.rain_source").0, "map value 0: no rain outage in the model");
    assert_eq!(line(&bench, "service.rain_outage").0, "none");
    assert_eq!(line(&bench, "service.rain_worst_month").0, "none");
}

#[test]
fn a_map_that_cannot_be_read_is_a_finding_and_the_hop_waits() {
    let bench = with("rain_map: map");
    assert_eq!(rules(&bench), ["hop-not-evaluated", "value-not-valid"]);
    map(&bench, "wet");
    assert_eq!(rules(&bench), ["hop-not-evaluated", "value-not-valid"]);
    let said = bench.judge().findings[1].message.clone();
    assert!(said.contains("`wet` in row 1, column 1"), "{said}");
}

#[test]
fn air_that_is_written_stands_in_for_the_reference() {
    let bench = with(&format!("{WRITTEN}\n  air: {{ temperature: 20 °C, pressure: 1013.25 hPa, humidity: 50 % }}"));
    let (vapour, method) = line(&bench, "path.vapour_pressure");
    assert_eq!(vapour, "11.7 hPa");
    assert!(method.contains("P.453-14"), "{method}");
    assert_eq!(line(&bench, "path.dry_pressure").0, "1001.5 hPa");
    assert!(line(&bench, "a_to_b.gas_loss").1.contains("air as written"));
}

#[test]
fn multipath_is_given_where_the_method_reaches() {
    let bench = with(WRITTEN);
    assert_eq!(line(&bench, "a_to_b.margins.multipath").0, "over 2961.2 m multipath fading does not matter");
    let bench = with(&format!("{WRITTEN}\n  refractivity: {{ log_k: -6.2, dn_75: 55 }}"));
    assert_eq!(line(&bench, "a_to_b.margins.multipath").0, "over 2961.2 m multipath fading does not matter");
    assert_eq!(rules(&bench), [""; 0]);
    let site = fs::read_to_string(bench.path("sites/mill.yaml")).expect("there");
    fs::write(bench.path("sites/mill.yaml"), site.replace("54.320000", "54.400000")).expect("writable");
    let said = line(&bench, "a_to_b.margins.multipath").0;
    assert!(said.contains("to 45 GHz, not at 73.375 GHz"), "{said}");
    let hop = fs::read_to_string(bench.path("hops/ridge.yaml")).expect("there");
    fs::write(bench.path("hops/ridge.yaml"), hop.replace("73.375 GHz", "23 GHz")).expect("writable");
    // The mean of the two ends would stand in for the ground between them, and be wrong by a power of ten.
    assert_eq!(line(&bench, "a_to_b.margins.multipath").0, "there is no profile of the path");
    let hop = fs::read_to_string(bench.path("hops/ridge.yaml")).expect("there");
    let points = "path: { profile: [{ distance: 0 m, ground: 850 m }, { distance: 11 km, ground: 350 m }] }\nchannel:";
    fs::write(bench.path("hops/ridge.yaml"), hop.replace("channel:", points)).expect("writable");
    let said = line(&bench, "a_to_b.margins.multipath").0;
    assert!(said.ends_with(" %"), "{said}");
}

#[test]
fn refractivity_is_in_plain_numbers() {
    for wrong in ["\"-4.2\"", "-4.2 dB", ".nan", ".inf"] {
        let bench = with(&format!("{WRITTEN}\n  refractivity: {{ log_k: {wrong}, dn_75: 55 }}"));
        assert!(rules(&bench).contains(&"value-not-valid"), "{wrong}");
    }
}

#[test]
fn fog_and_rain_height_have_lines() {
    let bench = with(&format!("{WRITTEN}\n  fog: 0.05 g/m3"));
    assert_eq!(line(&bench, "path.falls").0, "rain or snow, at times melting snow");
    assert!(line(&bench, "a_to_b.fog_loss").0.ends_with(" dB"));
    assert!(line(&bench, "a_to_b.margins.fog_margin").0.starts_with("29."));
}
