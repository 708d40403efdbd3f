//! `export`: what other programs read, in numbers of the sheet; and what comes back by `import`.

use std::fs;
use std::path::Path;

use serde_json::Value;

use crate::fixture::program::{Ran, run, run_in};
use crate::fixture::{Bench, copy};

fn export(args: &[&str]) -> String {
    let Ran { code, out, err } = run(&[&["export"], args].concat());
    assert_eq!((code, err.as_str()), (0, ""), "{args:?}");
    out
}

/// A table as somebody else reads it: its header, and its rows by the names in it.
fn read(text: &str, separator: u8) -> (Vec<String>, Vec<Vec<String>>) {
    let mut reader = csv::ReaderBuilder::new().delimiter(separator).from_reader(text.as_bytes());
    let headers = reader.headers().expect("a header").iter().map(str::to_owned).collect();
    let rows = reader.records().map(|row| row.expect("a whole row").iter().map(str::to_owned).collect());
    (headers, rows.collect())
}

fn cell<'t>((headers, rows): &'t (Vec<String>, Vec<Vec<String>>), row: usize, header: &str) -> &'t str {
    let column = headers.iter().position(|own| own == header).unwrap_or_else(|| panic!("no {header} in {headers:?}"));
    &rows[row][column]
}

/// The lines of a hop as `sheet` prints them for machines.
fn lines(network: &str, hop: &str) -> Value {
    let ran = run(&["sheet", "--network", network, "--format", "json", hop]);
    serde_json::from_str::<Value>(&ran.out).expect("JSON")["hops"][0]["lines"].take()
}

fn value(lines: &Value, key: &str) -> f64 {
    let line = lines.as_array().expect("lines").iter().find(|line| line["key"] == key);
    line.unwrap_or_else(|| panic!("no {key}"))["value"].as_f64().expect("a number")
}

#[test]
fn geojson_has_longitude_first_and_the_numbers_of_the_sheet() {
    let map: Value =
        serde_json::from_str(&export(&["geojson", "--network", "examples/varneck", "--today", "2026-07-01"]))
            .expect("JSON");
    assert_eq!(map["type"], "FeatureCollection");
    let features = map["features"].as_array().expect("features");
    assert_eq!(features.len(), 6 + 5);
    let of = |id: &str| features.iter().find(|feature| feature["id"] == id).expect(id);
    let site = of("site/exchange");
    assert_eq!(site["geometry"]["coordinates"], serde_json::json!([162.134_22, 47.115_31]));
    assert_eq!(site["properties"]["ground_above_sea_m"], 1014.0);
    let hop = of("hop/exchange-murrgrat");
    assert_eq!(hop["geometry"]["coordinates"], serde_json::json!([[162.134_22, 47.115_31], [162.1043, 47.110_84]]));
    let properties = &hop["properties"];
    assert_eq!((&properties["verdict"], &properties["errors"]), (&"sound".into(), &0.into()));
    let lines = lines("examples/varneck", "exchange-murrgrat");
    for (name, key) in [
        ("a_to_b_level_dbm", "a_to_b.level"),
        ("b_to_a_fade_margin_db", "b_to_a.margins.fade_margin"),
        ("a_to_b_fade_margin_in_hand_db", "a_to_b.margins.fade_in_hand"),
        ("distance_m", "path.slant"),
    ] {
        let wanted = value(&lines, key);
        let got = properties[name].as_f64().unwrap_or_else(|| panic!("{name}"));
        assert!((got - wanted).abs() < 0.005_001, "{name}: {got} is not {wanted}");
    }
    let faulty: Value =
        serde_json::from_str(&run(&["export", "geojson", "--network", "examples/faulty", "--today", "2026-07-01"]).out)
            .expect("JSON");
    let verdicts: Vec<&Value> =
        faulty["features"].as_array().expect("list").iter().map(|it| &it["properties"]["verdict"]).collect();
    assert!(verdicts.contains(&&"failing".into()), "{verdicts:?}");
}

#[test]
fn kml_states_what_its_heights_count_from_and_comes_back_as_the_same_sites() {
    let text = export(&["kml", "--network", "examples/varneck", "--today", "2026-07-01"]);
    let map = roxmltree::Document::parse(&text).expect("XML");
    let points: Vec<_> =
        map.descendants().filter(|node| node.has_tag_name(("http://www.opengis.net/kml/2.2", "coordinates"))).collect();
    assert_eq!(points.len(), 6 + 5);
    for point in &points {
        let parent = point.parent().expect("a parent");
        let mode = parent.children().find(|node| node.tag_name().name() == "altitudeMode").and_then(|node| node.text());
        assert_eq!(mode, Some("absolute"));
    }
    assert_eq!(points[0].text(), Some("162.134220,47.115310,1014"));
    let folder = tempfile::tempdir().expect("a folder");
    fs::write(folder.path().join("map.kml"), &text).expect("written");
    let bench = Varneck::copied();
    let ran = run_in(bench.path(), &["import", "sites", &folder.path().join("map.kml").display().to_string()]);
    assert_eq!(ran.code, 0, "{}", ran.err);
    assert_eq!(ran.out, "unchanged      sites exchange, kerbjoch, murrgrat, ostrenkar, solleralm, untervarn\n");
}

/// A copy of the example.
struct Varneck(tempfile::TempDir);

impl Varneck {
    fn copied() -> Self {
        let folder = tempfile::tempdir().expect("a folder");
        fs::create_dir(folder.path().join(".git")).expect("writable");
        copy(Path::new("examples/varneck"), folder.path());
        Self(folder)
    }

    fn path(&self) -> &Path {
        self.0.path()
    }
}

#[test]
fn what_is_exported_imported_and_exported_again_is_the_same_to_the_byte() {
    let full = Varneck::copied();
    for dialect in ["comma", "semicolon", "semicolon-point", "tab", "tab-comma"] {
        let empty = tempfile::tempdir().expect("a folder");
        fs::create_dir(empty.path().join(".git")).expect("writable");
        fs::copy(full.path().join("network.yaml"), empty.path().join("network.yaml")).expect("copied");
        for what in ["sites", "hops"] {
            let first = run_in(full.path(), &["export", what, "--dialect", dialect]).out;
            fs::write(empty.path().join("table.csv"), &first).expect("written");
            let file = empty.path().join("table.csv").display().to_string();
            // In the network it is from, nothing changes.
            let same = run_in(full.path(), &["import", what, &file, "--dialect", dialect, "--write"]);
            assert_eq!(same.code, 0, "{}", same.err);
            assert!(same.out.starts_with("unchanged") && same.out.lines().count() == 1, "{}", same.out);
            let ran = run_in(empty.path(), &["import", what, &file, "--dialect", dialect, "--write"]);
            assert_eq!(ran.code, 0, "{}", ran.err);
            let second = run_in(empty.path(), &["export", what, "--dialect", dialect]).out;
            assert_eq!(first, second, "{what} as {dialect}");
        }
    }
}

#[test]
fn cells_that_a_spreadsheet_would_run_come_back_as_they_were() {
    let bench = Bench::new();
    bench.change("sites/mill.yaml", "title: Nevvel Mill", "title: \"=HYPERLINK(1)\"\naccess: \"@sum; -1\"");
    let table = run_in(&bench.path(""), &["export", "sites"]).out;
    assert!(table.contains("\r\nmill,'=HYPERLINK(1),54.320000,-32.170000,350,"), "{table}");
    assert!(table.contains(",'@sum; -1,"), "{table}");
    fs::write(bench.path("t.csv"), table).expect("written");
    let ran = run_in(&bench.path(""), &["import", "sites", "t.csv"]);
    assert_eq!(ran.out, "unchanged      sites mill, scar\n");
}

#[test]
fn the_sheet_is_a_row_a_hop_with_units_in_its_header() {
    let table = read(&export(&["sheet", "--network", "examples/varneck"]), b',');
    assert_eq!(table.1.len(), 5);
    let at = table.1.iter().position(|row| row[1] == "exchange-murrgrat").expect("the hop");
    let lines = lines("examples/varneck", "exchange-murrgrat");
    let listed = lines.as_array().expect("lines");
    let mut compared = 0;
    for line in listed.iter().filter(|line| line["value"].is_number()) {
        let (key, value) = (line["key"].as_str().expect("a key"), line["value"].as_f64().expect("a number"));
        let unit = match line["unit"].as_str().expect("a unit") {
            "°" => "deg",
            unit => unit,
        };
        let got: f64 = cell(&table, at, &format!("{key} [{unit}]")).parse().unwrap_or_else(|_| panic!("{key}"));
        let dust = match unit {
            "m" => 0.005_001,
            "deg" => 5.1e-8,
            _ => 1e-5 * value.abs() + 1e-14,
        };
        assert!((got - value).abs() <= dust, "{key}: {got} is not {value}");
        compared += 1;
    }
    assert!(compared > 200, "{compared}");
    let german = export(&["sheet", "--network", "examples/varneck", "--dialect", "semicolon"]);
    let german = read(&german, b';');
    assert_eq!(german.0, table.0);
    assert_eq!(cell(&german, at, "path.slant [m]").replace(',', "."), cell(&table, at, "path.slant [m]"));
}

#[test]
fn the_bill_is_that_of_the_pack_of_the_network() {
    let table = read(&export(&["bill", "--network", "examples/varneck"]), b',');
    assert_eq!(table.0, ["part", "detail", "pieces", "length [m]", "pieces of unknown length"]);
    let radios: u32 =
        table.1.iter().filter(|row| row[0] == "Radio").map(|row| row[2].parse::<u32>().expect("a count")).sum();
    assert_eq!(radios, 10, "two for each hop");
    let cable = table.1.iter().find(|row| row[0] == "Cable").expect("cable");
    assert!(cable[3].parse::<f64>().expect("a length") > 100.0, "{cable:?}");
}

#[test]
fn an_application_for_a_licence_has_a_row_for_each_end_that_sends() {
    let table = read(&export(&["licence", "--network", "examples/saltmere"]), b',');
    assert_eq!(table.1.len(), 10);
    let at = table.1.iter().position(|row| row[0] == "crane4-pier" && row[1] == "a").expect("the end");
    let lines = lines("examples/saltmere", "crane4-pier");
    for (header, key) in
        [("azimuth [deg]", "path.azimuth_a"), ("elevation [deg]", "path.elevation_a"), ("distance [m]", "path.slant")]
    {
        let got: f64 = cell(&table, at, header).parse().expect("a number");
        assert!((got - value(&lines, key)).abs() < 0.005_001, "{header}: {got}");
    }
    // 60 GHz radios say no class of emission, 80 GHz ones do.
    let emissions: Vec<&str> = (0..10).map(|row| cell(&table, row, "emission")).collect();
    assert!(emissions.contains(&"") && emissions.iter().any(|it| it.ends_with("D7W")), "{emissions:?}");
    for row in (0..10).filter(|row| !cell(&table, *row, "emission").is_empty()) {
        let width: f64 = cell(&table, row, "bandwidth [MHz]").parse().expect("a number");
        let wanted =
            hopwright::physics::emission::necessary_bandwidth(hopwright::units::Megahertz(width)).expect("a width");
        assert_eq!(cell(&table, row, "emission"), format!("{wanted}D7W"));
    }
}

#[test]
fn the_page_of_an_application_is_one_page_in_both_languages_with_the_numbers_of_the_table() {
    let table = read(&export(&["licence", "--network", "examples/saltmere"]), b',');
    for (language, word) in [("en", "Azimuth, true"), ("de", "Azimut, rechtweisend")] {
        let out = tempfile::tempdir().expect("a folder");
        let folder = out.path().display().to_string();
        let ran = run(&[
            "pack",
            "licence",
            "--network",
            "examples/saltmere",
            "--language",
            language,
            "--out",
            &folder,
            "crane4-pier",
            "gate-shed9",
        ]);
        assert_eq!(ran.code, 0, "{}", ran.err);
        for hop in ["crane4-pier", "gate-shed9"] {
            let pages =
                pdf_extract::extract_text_by_pages(out.path().join(format!("{hop}-licence.pdf"))).expect("a PDF");
            assert_eq!(pages.len(), 1, "{hop} in {language}");
            let text = pages[0].replace(['\n', '\u{a0}'], " ").replace('\u{2212}', "-");
            assert!(text.contains(word), "{text}");
            for row in (0..10).filter(|row| cell(&table, *row, "hop") == hop) {
                let azimuth: f64 = cell(&table, row, "azimuth [deg]").parse().expect("a number");
                assert!(text.contains(&format!("{azimuth:.2}")), "{azimuth}: {text}");
                let emission = cell(&table, row, "emission");
                assert!(text.contains(emission), "{emission}: {text}");
            }
        }
    }
}

#[test]
fn files_are_written_whole_and_slips_are_told() {
    let out = tempfile::tempdir().expect("a folder");
    let file = out.path().join("map.geojson").display().to_string();
    let ran = run(&["export", "geojson", "--network", "examples/varneck", "--out", &file]);
    assert_eq!((ran.code, ran.out.trim()), (0, file.as_str()));
    assert!(fs::read_to_string(&file).expect("there").starts_with("{\"type\":\"FeatureCollection\""));
    assert_eq!(run(&["export", "sites", "--network", "examples"]).code, 3);
    assert_eq!(run(&["export", "sites", "--network", "not/there"]).code, 2);
    assert_eq!(run(&["export", "wonders"]).code, 2);
    let ran = run(&["export", "sheet", "--network", "examples/faulty"]);
    assert!(ran.err.contains("cannot be evaluated and are left out"), "{}", ran.err);
}
