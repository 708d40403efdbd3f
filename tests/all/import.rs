//! `import`: tables and waypoints in; a plan, then documents a person would have written. Nothing is guessed, nothing half done.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use std::time::{Duration, Instant};

use crate::fixture::Bench;
use crate::fixture::program::{Ran, run_in};

/// Every file of a network with its text, to see that nothing has changed.
fn texts(bench: &Bench) -> BTreeMap<String, String> {
    let files = crate::fixture::files_below(&bench.path(""));
    let text = |path: &Path| fs::read(path).map(|bytes| String::from_utf8_lossy(&bytes).into_owned());
    files.iter().map(|path| (path.display().to_string(), text(path).expect("readable"))).collect()
}

/// Imports a text under a name, given as bytes.
fn import(bench: &Bench, what: &str, name: &str, text: impl AsRef<[u8]>, more: &[&str]) -> Ran {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join(name);
    fs::write(&file, text).expect("written");
    let path = file.display().to_string();
    let mut ran = run_in(&bench.path(""), &[&["import", what, &path], more].concat());
    let outside = format!("{}/", folder.path().display());
    (ran.out, ran.err) = (ran.out.replace(&outside, ""), ran.err.replace(&outside, ""));
    ran
}

/// That an import is refused for these reasons, and leaves everything as it is.
fn refused(what: &str, name: &str, text: impl AsRef<[u8]>, why: &[&str]) {
    let bench = Bench::new();
    let before = texts(&bench);
    let start = Instant::now();
    let ran = import(&bench, what, name, text, &["--write"]);
    assert!(start.elapsed() < Duration::from_secs(20), "{why:?} takes {:?}", start.elapsed());
    assert_eq!((ran.code, ran.out.as_str()), (2, ""), "{why:?}: {}", ran.err);
    for why in why {
        assert!(ran.err.contains(why), "{why} is not in: {}", ran.err);
    }
    assert!(!ran.err.contains("panicked"), "{}", ran.err);
    assert_eq!(texts(&bench), before, "{why:?}");
}

const SITES: &str = "id,title,latitude [deg],longitude [deg],ground_height [m],support,support_kind,outside_diameter [mm],base_height [m],free_length [m]\n\
    beacon,\"Beacon, east hill\",54.310000,-32.1850,612.50,leg,mast,88.9,0,12\n\
    mill,Nevvel Mill,54.320000,-32.170000,351,chimney,mast,101.6,18,4\n\
    scar,Hovvel Scar,54.300000,-32.200000,850,stub,pole,88.9,6,3\n";

#[test]
fn a_plan_is_printed_and_nothing_written_until_it_is_asked_for() {
    let bench = Bench::new();
    bench.change(
        "sites/mill.yaml",
        "ground_height: 350 m",
        "# By the old levelling.\nground_height: 350 m  # at the foot",
    );
    let before = texts(&bench);
    let ran = import(&bench, "sites", "sites.csv", SITES, &[]);
    assert_eq!(ran.code, 0, "{}", ran.err);
    assert_eq!(
        ran.out,
        "new            site beacon  sites/beacon.yaml\n\
         \x20                still to be written: access, supports.wall_thickness, supports.material\n\
         changed        site mill  sites/mill.yaml:2\n\
         \x20                ground_height: 350 m → 351 m\n\
         unchanged      site scar\n"
    );
    assert_eq!(ran.err, "hopwright: 2 files would be written: nothing is until you add `--write`\n");
    assert_eq!(texts(&bench), before);

    let ran = import(&bench, "sites", "sites.csv", SITES, &["--write"]);
    assert_eq!(ran.code, 0, "{}", ran.err);
    let mill = fs::read_to_string(bench.path("sites/mill.yaml")).expect("there");
    assert!(mill.contains("# By the old levelling.\nground_height: 351 m  # at the foot"), "{mill}");
    assert_eq!(fs::read_to_string(bench.path("sites/beacon.yaml")).expect("there"), NEW_SITE);
    assert!(
        bench.judge().findings.iter().all(|finding| finding.rule.name != "key-missing"),
        "all that must be is there"
    );

    let written = texts(&bench);
    let ran = import(&bench, "sites", "sites.csv", SITES, &["--write"]);
    assert_eq!((ran.out.as_str(), ran.err.as_str()), ("unchanged      sites beacon, mill, scar\n", ""));
    assert_eq!(texts(&bench), written, "a second run changes nothing");
}

const NEW_SITE: &str = "\
# yaml-language-server: $schema=../../../../schema/site.json
# Imported from sites.csv, line 2.
# What is still a remark is to be written: `hopwright check` says what is missing.
kind: site
id: beacon
title: \"Beacon, east hill\"
position:
  latitude: 54.310000° N
  longitude: 32.1850° W
ground_height: 612.50 m
# access:  # how a crew gets there
# contacts:
#   - { name: , role: , phone: \"\" }
# hazards:
#   -

supports:
  - id: leg
    kind: mast
    outside_diameter: 88.9 mm
    # wall_thickness:  # without it the pole is not judged in wind
    # material:  # the same
    base_height: 0 m
    free_length: 12 m
# power:
#   - { id: , title: }
# earth:
#   - { id: , title: , bonded: }
";

#[test]
fn what_is_not_told_stands_as_a_remark_and_loads_when_it_is_filled_in() {
    let bench = Bench::new();
    let ran = import(&bench, "sites", "sites.csv", "id,title\nbeacon,Beacon\n", &["--write"]);
    assert!(
        ran.out
            .contains("still to be written: position.latitude, position.longitude, ground_height, access, supports.id"),
        "{}",
        ran.out
    );
    let text = fs::read_to_string(bench.path("sites/beacon.yaml")).expect("there");
    assert!(text.contains("\n# position:\n#   latitude:  # on the WGS 84"), "{text}");
    let rules: Vec<_> = bench.judge().findings.iter().map(|finding| finding.rule.name).collect();
    assert!(rules.contains(&"key-missing"), "{rules:?}");
    // An import that knows more fills in the rest.
    let more = "id,ground_height [m],latitude [deg],longitude [deg]\nbeacon,612,54.31,-32.17\n";
    let ran = import(&bench, "sites", "more.csv", more, &["--write"]);
    assert_eq!(ran.code, 0, "{}", ran.err);
    assert!(ran.out.contains("ground_height: nothing → 612 m"), "{}", ran.out);
    let text = fs::read_to_string(bench.path("sites/beacon.yaml")).expect("there");
    assert!(text.contains("\nposition: { latitude: 54.31° N, longitude: 32.17° W }\n"), "{text}");
    // Ids that YAML takes for something else are ids all the same.
    let ran = import(&bench, "sites", "odd.csv", "id,title\ny,Why\n12,Twelve\nnull,Nought\n", &["--write"]);
    assert_eq!(ran.code, 0, "{}", ran.err);
}

#[test]
fn hops_come_with_what_is_mounted_at_their_ends() {
    let bench = Bench::new();
    let table = "hop;a_to_b [GHz];b_to_a [GHz];bandwidth [MHz];polarization;licence;site_a;height_a [m];radio_a;bracket_a;site_b\n\
        ridge;73,375;83,375;500;vertical;AB-12;scar;8,5;q-80;tilter;mill\n\
        second;73,875;83,875;500;horizontal;;scar;9,25;q-81;tilter;mill\n";
    let ran = import(&bench, "hops", "hops.csv", table, &["--dialect", "semicolon", "--write"]);
    assert_eq!(ran.code, 0, "{}", ran.err);
    assert!(ran.out.contains("licence: nothing → AB-12"), "{}", ran.out);
    assert!(ran.out.contains("ends.a.height: 8 m → 8.5 m"), "{}", ran.out);
    assert!(ran.out.contains("not there yet  hops.csv:3: ") && ran.out.contains("q-81"), "{}", ran.out);
    let ridge = fs::read_to_string(bench.path("hops/ridge.yaml")).expect("there");
    assert!(ridge.contains("height: 8.5 m") && ridge.contains("licence: { number: AB-12 }"), "{ridge}");
    let second = fs::read_to_string(bench.path("hops/second.yaml")).expect("there");
    assert!(
        second.contains("  a:\n    site: scar\n    # support:  # one of the site's supports\n    height: 9.25 m\n"),
        "{second}"
    );
    let again = import(&bench, "hops", "hops.csv", table, &["--dialect", "semicolon", "--write"]);
    assert!(again.out.starts_with("unchanged      hops ridge, second\n"), "{}", again.out);
}

#[test]
fn what_could_be_read_in_two_ways_is_refused_at_its_cell() {
    let row = |cell: &str| format!("id,ground_height [m]\nmill,{cell}\n");
    refused(
        "sites",
        "s.csv",
        row("\"1,234\""),
        &["s.csv:2: column `ground_height [m]`: `1,234` could be 1.234 or 1234"],
    );
    refused("sites", "s.csv", row("\"12,5\""), &["`12,5` has a comma, and the decimal mark here is a point"]);
    refused("sites", "s.csv", "id;ground_height [m]\nmill;12.5\n", &["`12.5` has a point: say which", "--dialect"]);
    refused("sites", "s.csv", "id;title,latitude [deg]\nmill;a,b\n", &["a comma and a semicolon", "--dialect"]);
    refused(
        "sites",
        "s.csv",
        "id,ground_height\nmill,12.5\n",
        &["`12.5` has no unit: write it in the header, `ground_height [m]`"],
    );
    refused(
        "sites",
        "s.csv",
        "id,ground_height [ml]\nmill,1\n",
        &["s.csv:1: `ground_height [ml]` has no unit of length"],
    );
    refused(
        "sites",
        "s.csv",
        "id,lattitude [deg]\nmill,1\n",
        &["`lattitude [deg]` is not a column", "did you mean `latitude`?"],
    );
    refused("sites", "s.csv", "id,lat [deg],latitude [deg]\nmill,1,2\n", &["is a column that `lat [deg]` is already"]);
    refused("sites", "s.csv", "title\nMill\n", &["no column `id`"]);
    refused("sites", "s.csv", "id,base_height [m]\nmill,2\n", &["say which in a column `support`"]);
    refused("sites", "s.csv", "id,support,base_height [m]\nmill,roof,2\n", &["`roof` is not a support of site `mill`"]);
}

#[test]
fn all_that_is_wrong_is_told_in_one_run_with_row_column_and_value() {
    let table = "id,title,latitude [deg],support,support_kind,outside_diameter [mm]\n\
        new one,A,54.1,leg,mast,88.9\n\
        b,B,91,leg,mast,88.9\n\
        c,C,54.1,leg\n\
        d,D,54.1,leg,mast,88.9,7\n\
        ,E,54.1,leg,mast,88.9\n\
        f,F,54.1,leg,mast,1e3\n\
        f,F,54.1,leg,mast,88.9\n";
    refused(
        "sites",
        "s.csv",
        table,
        &[
            "s.csv:2: column `id`: `new one` is not an id: lower-case letters, digits and single hyphens, such as `new-one`",
            "s.csv:3: column `latitude [deg]`: `91` cannot be",
            "s.csv:4: this row has 4 cells and the header 6: nothing stands under `support_kind`",
            "s.csv:5: this row has 7 cells and the header 6: `7` stands under no column",
            "s.csv:6: the cell under `id` is empty",
            "s.csv:7: column `outside_diameter [mm]`: `1e3` is not a number",
            "s.csv:8: column `id`: `f` is the id of line 7 already",
            "7 faults: nothing is imported until all of them are fixed",
        ],
    );
    // What only the language knows is told the same way.
    let table = "id,support,support_kind,ground_height [m]\nx,leg,mst,1\ny,leg,mast,9500\n";
    refused(
        "sites",
        "s.csv",
        table,
        &["s.csv:2: column `support_kind`: `mst` cannot be", "s.csv:3: column `ground_height [m]`: `9500`"],
    );
}

#[test]
fn nothing_is_overwritten_and_what_has_no_place_of_its_own_stays() {
    let bench = Bench::new();
    fs::write(bench.path("sites/beacon.yaml"), "# A sketch.\n").expect("written");
    let ran = import(&bench, "sites", "s.csv", "id,title\nbeacon,Beacon\n", &["--write"]);
    assert_eq!(ran.code, 2);
    assert!(ran.err.contains("sites/beacon.yaml") && ran.err.contains("nothing is overwritten"), "{}", ran.err);
    assert_eq!(fs::read_to_string(bench.path("sites/beacon.yaml")).expect("there"), "# A sketch.\n");
    // An alias stands for what is written elsewhere.
    bench.change("sites/scar.yaml", "latitude: 54.300000 deg", "latitude: &here 54.300000 deg");
    bench.change(
        "sites/scar.yaml",
        "hazards: [Loose scree below the hut]",
        "rain_rate: 20 mm/h\nhazards: [Loose scree below the hut]",
    );
    bench.change("sites/scar.yaml", "title: Hovvel Scar", "title: &t Hovvel Scar\naccess: *t");
    let before = texts(&bench);
    let ran = import(&bench, "sites", "s.csv", "id,access\nscar,On foot\n", &["--write"]);
    assert!(ran.code == 2 && ran.err.contains("alias"), "{}", ran.err);
    assert_eq!(texts(&bench), before);
}

#[test]
fn all_files_are_written_or_none() {
    let bench = Bench::new();
    fs::remove_dir_all(bench.path("sites")).expect("removed");
    fs::write(bench.path("sites"), "in the way").expect("written");
    let before = texts(&bench);
    let table = "id,title\none,One\ntwo,Two\n";
    let ran = import(&bench, "sites", "s.csv", table, &["--write"]);
    assert_eq!(ran.code, 2, "{}", ran.out);
    assert_eq!(texts(&bench), before);
}

#[test]
#[cfg(unix)]
fn a_file_that_cannot_be_mended_keeps_the_new_ones_from_being_made() {
    use std::os::unix::fs::PermissionsExt as _;
    let bench = Bench::new();
    let mill = bench.path("sites/mill.yaml");
    fs::set_permissions(&mill, fs::Permissions::from_mode(0o444)).expect("locked");
    let before = texts(&bench);
    let ran = import(&bench, "hops", "h.csv", "id,title\nnew,New\n", &["--write"]);
    assert_eq!(ran.code, 0, "{}", ran.err);
    fs::remove_file(bench.path("hops/new.yaml")).expect("written before");
    let ran = import(&bench, "sites", "s.csv", SITES, &["--write"]);
    assert!(ran.code == 2 && ran.err.contains("cannot write") && ran.err.contains("mill.yaml"), "{}", ran.err);
    assert_eq!(texts(&bench), before);
}

#[test]
fn latitude_and_longitude_exchanged_are_told_by_the_rest_of_the_network() {
    let swapped = "id,latitude [deg],longitude [deg]\nbeacon,-32.185,54.31\n";
    refused(
        "sites",
        "s.csv",
        swapped,
        &["s.csv:2: column `latitude [deg]`: `-32.185` seems to be the longitude", "exchanged 1 km"],
    );
    // A site far off is no slip.
    let ran = import(&Bench::new(), "sites", "s.csv", "id,latitude [deg],longitude [deg]\nfar,-10.5,20.25\n", &[]);
    assert_eq!(ran.code, 0, "{}", ran.err);
}

#[test]
fn spreadsheets_of_many_countries_are_read_alike() {
    let plain = "id,title,latitude [deg]\nbeacon,=1+1,54.3100\n";
    let of = |text: &str, name: &str, more: &[&str]| {
        let bench = Bench::new();
        let ran = import(&bench, "sites", name, text, &[more, &["--write"]].concat());
        assert_eq!(ran.code, 0, "{text}: {}", ran.err);
        fs::read_to_string(bench.path("sites/beacon.yaml")).expect("there").replace(name, "s.csv")
    };
    let one = of(plain, "s.csv", &[]);
    assert!(one.contains("title: \"=1+1\"") && one.contains("latitude: 54.3100° N"), "{one}");
    let semicolons = "\u{feff}id;title;latitude [deg]\r\nbeacon;'=1+1;54,3100\r\n";
    assert_eq!(of(semicolons, "s.csv", &["--dialect", "semicolon"]), one);
    let tabs = "id\ttitle\tlatitude (deg)\nbeacon\t'=1+1\t54.3100\n";
    assert_eq!(of(tabs, "t.tsv", &["--dialect", "tab"]), one);
    let passed = "id,remark,title,Lat\nbeacon,x,'=1+1,54.3100° N\n";
    assert_eq!(of(passed, "s.csv", &["--ignore", "remark"]), one);
}

#[test]
fn waypoints_become_sites() {
    let gpx = "<?xml version=\"1.0\"?>\n<gpx version=\"1.1\" xmlns=\"http://www.topografix.com/GPX/1/1\">\n\
        <wpt lat=\"54.3123456\" lon=\"-32.1850000\"><ele>612.5</ele><name>Dam, north</name></wpt>\n\
        <rte><rtept lat=\"1\" lon=\"1\"/></rte></gpx>\n";
    let bench = Bench::new();
    let ran = import(&bench, "sites", "walk.gpx", gpx, &["--write"]);
    assert_eq!(ran.code, 0, "{}", ran.err);
    assert!(ran.err.contains("1 route passed over"), "{}", ran.err);
    let text = fs::read_to_string(bench.path("sites/dam-north.yaml")).expect("there");
    for line in
        ["title: \"Dam, north\"", "  latitude: 54.3123456° N", "  longitude: 32.1850000° W", "ground_height: 612.5 m"]
    {
        assert!(text.contains(line), "{line}: {text}");
    }
    // KML: longitude first; an altitude that counts from elsewhere is left out and said.
    let point = |name: &str, mode: &str| {
        format!(
            "<Placemark><name>{name}</name><Point>{mode}<coordinates>\n-32.185,54.31,44.5 </coordinates></Point></Placemark>"
        )
    };
    let kml = format!(
        "<kml xmlns=\"http://www.opengis.net/kml/2.2\"><Document><Folder>{}{}{}</Folder><NetworkLink/></Document></kml>",
        point("One", "<altitudeMode>absolute</altitudeMode>"),
        point("Two", "<altitudeMode>relativeToGround</altitudeMode>"),
        point("Three", ""),
    );
    let bench = Bench::new();
    let ran = import(&bench, "sites", "walk.kml", kml, &["--write"]);
    assert_eq!(ran.code, 0, "{}", ran.err);
    assert!(ran.err.contains("1 link to another file passed over"), "{}", ran.err);
    let read = |id: &str| fs::read_to_string(bench.path(&format!("sites/{id}.yaml"))).expect("there");
    assert!(
        read("one").contains("latitude: 54.31° N") && read("one").contains("\nground_height: 44.5 m"),
        "{}",
        read("one")
    );
    assert!(
        read("two").contains("# its altitude of 44.5 is relativeToGround")
            && read("two").contains("\n# ground_height:"),
        "{}",
        read("two")
    );
    assert!(read("three").contains("\n# ground_height:"), "{}", read("three"));
}

#[test]
fn waypoints_that_say_too_little_are_refused() {
    let kml = |inside: &str| format!("<kml><Placemark>{inside}</Placemark></kml>");
    let at = |coordinates: &str| kml(&format!("<name>A</name><Point><coordinates>{coordinates}</coordinates></Point>"));
    refused("sites", "w.kml", at("54.31"), &["has no latitude"]);
    refused("sites", "w.kml", at("1,2,3,4"), &["`1,2,3,4` is not a point"]);
    refused("sites", "w.kml", at("x,54"), &["column `longitude`: `x` is not a number"]);
    refused("sites", "w.kml", at("10,95"), &["column `latitude`: `95` cannot be"]);
    refused("sites", "w.kml", kml("<Point><coordinates>1,2</coordinates></Point>"), &["has no name"]);
    refused("sites", "w.kml", kml("<name>山</name><Point><coordinates>1,2</coordinates></Point>"), &["makes no id"]);
    refused("sites", "w.gpx", "<gpx/>", &["holds no waypoint"]);
    refused("sites", "w.gpx", "<html/>", &["starts with `html`"]);
    refused("sites", "w.xlsx", "PK", &["packed files are not read"]);
    refused("hops", "w.gpx", "<gpx/>", &["waypoints are sites"]);
    refused("sites", "w.doc", "x", &["its name says not what it is"]);
}

#[test]
fn hostile_files_are_refused_with_place_and_reason() {
    refused("sites", "s.csv", "id,title\nbeacon,a\u{0}b\n", &["s.csv:2: column `title`", "control character U+0000"]);
    refused("sites", "s.csv", "id,title\nbeacon,\u{1b}[31m\n", &["control character U+001B"]);
    refused("sites", "s.csv", b"id,title\nbeacon,\xff\xfe\n", &["s.csv:2: is no UTF-8"]);
    refused("sites", "s.csv", "", &["there is nothing in it"]);
    refused("sites", "s.csv", "\u{feff}\n\n", &["there is nothing in it"]);
    refused("sites", "s.csv", "id,title\nbeacon,\"open\n", &["s.csv:2: a quote is opened here and never closed"]);
    refused("sites", "s.csv", format!("id,title\nbeacon,{}\n", "x".repeat(20_000)), &["more than 10000 bytes"]);
    refused(
        "sites",
        "s.csv",
        format!("id,title\n{}", (0..100_002).map(|n| format!("s{n},b\n")).collect::<Vec<_>>().concat()),
        &["s.csv:100002: no more than 100000 rows"],
    );
    refused("sites", "s.csv", "x".repeat(17 << 20), &["larger than 16 MiB"]);
    refused("sites", "s.csv", format!("id{}\n", ",".repeat(1 << 20)), &["no more than 1000 are read"]);
    refused("sites", "w.kml", "<!DOCTYPE k [<!ENTITY a \"x\">]><kml>&a;</kml>", &["w.kml:1: declares a document type"]);
    refused(
        "sites",
        "w.gpx",
        "<?xml version='1.0'?>\n<!DOCTYPE g SYSTEM 'file:///etc/hostname'><gpx/>",
        &["w.gpx:2: declares a document type"],
    );
    refused("sites", "w.kml", "<a>".repeat(1 << 20), &["64 deep"]);
    refused("sites", "w.kml", format!("<kml {}/>", "a=''".repeat(1 << 20)), &["100 attributes"]);
    refused("sites", "w.kml", "<kml><Placemark>", &["no XML"]);
    refused("sites", "w.gpx", "<gpx><wpt lat='1' lon='2'><name>&x;</name></wpt></gpx>", &["no XML"]);
    refused("sites", "w.gpx", b"<gpx>\xff</gpx>", &["w.gpx:1: is no UTF-8"]);
}

#[test]
fn text_of_a_stranger_stays_text() {
    let bench = Bench::new();
    let title = "x\nkind: network # \u{202e}turned ::error:: {a: *b}";
    let table = format!("id,title\nbeacon,\"{title}\"\n");
    let ran = import(&bench, "sites", "s\nkind: network.csv", &table, &["--write"]);
    assert_eq!(ran.code, 0, "{}", ran.err);
    assert!(!ran.out.contains('\u{202e}'), "{}", ran.out);
    let text = fs::read_to_string(bench.path("sites/beacon.yaml")).expect("there");
    assert!(!text.contains('\u{202e}') && !text.contains("\nkind: network"), "{text}");
    let again = import(&bench, "sites", "s.csv", &table, &["--write"]);
    assert!(again.out.starts_with("unchanged      site beacon\n"), "{}", again.out);
    // A link in a checkout leads nowhere outside.
    #[cfg(unix)]
    {
        let outside = tempfile::tempdir().expect("a folder");
        fs::remove_dir_all(bench.path("sites")).expect("removed");
        std::os::unix::fs::symlink(outside.path(), bench.path("sites")).expect("linked");
        let ran = import(&bench, "sites", "s.csv", "id,title\nbeacon,B\n", &["--write"]);
        assert_eq!(ran.code, 2, "{}", ran.out);
        assert_eq!(fs::read_dir(outside.path()).expect("there").count(), 0);
    }
}

#[test]
fn many_rows_take_no_time() {
    let bench = Bench::new();
    let rows = (0..20_000).map(|n| format!("s{n},Site {n},54.{n:05},-32.1\n")).collect::<Vec<_>>().concat();
    let start = Instant::now();
    let ran = import(&bench, "sites", "s.csv", format!("id,title,latitude [deg],longitude [deg]\n{rows}"), &[]);
    assert_eq!(ran.code, 0, "{}", &ran.err[..ran.err.len().min(400)]);
    assert!(start.elapsed() < Duration::from_mins(1), "{:?}", start.elapsed());
}
