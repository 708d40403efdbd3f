//! Hops that are made of the same on both sides are not computed, and nothing that is printed tells it.

use std::fs;
use std::path::Path;

use crate::fixture::{Bench, copy};
use crate::synthetic::{self, Plan};
use hopwright::compare::{Comment, Comparison, Noise, Side, compare, json, markdown, text};
use hopwright::network::Scope;
use hopwright::spec::Date;
use tempfile::TempDir;

const HOPS: usize = 12;

/// Every third hop has an antenna of its own kind, one more document of the same file.
fn network() -> TempDir {
    let folder = tempfile::Builder::new().prefix("1-").tempdir().expect("a temporary folder");
    // The search for a network ends here.
    fs::create_dir(folder.path().join(".git")).expect("writable");
    synthetic::write(folder.path(), Plan { hops: HOPS, seed: 7, faults: false, points: 0 }).expect("written");
    let equipment = fs::read_to_string(folder.path().join("equipment.yaml")).expect("there");
    let dish = equipment.split("---\n").find(|document| document.contains("id: dish")).expect("an antenna");
    let other = dish.replace("id: dish", "id: other-dish").replace("wet_loss: 1.5 dB", "wet_loss: 1.7 dB");
    write(&folder, "equipment.yaml", &format!("{equipment}---\n{other}"));
    for number in (0..HOPS).step_by(3) {
        change(&folder, &format!("hops/h{number}.yaml"), "antenna: dish", "antenna: other-dish");
    }
    folder
}

/// The same files under other names, in the same order.
fn moved(network: &TempDir) -> TempDir {
    let folder = tempfile::Builder::new().prefix("2-").tempdir().expect("a temporary folder");
    copy(network.path(), folder.path());
    for (was, is) in MOVES {
        fs::rename(folder.path().join(was), folder.path().join(is)).expect("renamed");
    }
    folder
}

const MOVES: [(&str, &str); 4] =
    [("hops", "hopt"), ("sites", "sitet"), ("equipment.yaml", "equipmenu.yaml"), ("network.yaml", "networl.yaml")];

fn copied(network: &TempDir) -> TempDir {
    let folder = tempfile::Builder::new().prefix("2-").tempdir().expect("a temporary folder");
    copy(network.path(), folder.path());
    folder
}

fn write(folder: &TempDir, file: &str, text: &str) {
    let path = folder.path().join(file);
    fs::create_dir_all(path.parent().expect("a folder")).expect("writable");
    fs::write(path, text).expect("writable");
}

fn change(folder: &TempDir, file: &str, old: &str, new: &str) {
    let text = fs::read_to_string(folder.path().join(file)).expect("there");
    assert!(text.contains(old), "{file} has no {old}");
    write(folder, file, &text.replace(old, new));
}

fn between(old: &Path, new: &Path) -> Comparison {
    let day = Date::read("2026-06-10").expect("a day");
    let side = |folder: &Path| Side::of(&Scope::of(&[folder.to_path_buf()]).on(Some(day)), "a side".into());
    compare(&side(old), &side(new), &Noise::default())
}

/// All that is printed, with the names of `folder` and of the files as they were.
fn printed(comparison: &Comparison, folders: [&TempDir; 2]) -> String {
    let comment = Comment { budget: 1_000_000, key: "key".into(), whole: "all of it".into(), link_base: None };
    let mut all = text(comparison, 10_000, true) + &markdown(comparison, &comment) + &json(comparison);
    for folder in folders {
        let name = folder.path().file_name().expect("a name").to_string_lossy().into_owned();
        all = all.replace(&name, "folder");
    }
    MOVES.iter().fold(all, |all, (was, is)| all.replace(&format!("/{is}"), &format!("/{was}")))
}

/// What is printed is the same as of a network whose files all moved, where every hop has to be computed.
fn prints_what_it_would_if_all_were_computed(old: &TempDir, new: &TempDir, what: &str) -> Comparison {
    let elsewhere = moved(new);
    let (short, full) = (between(old.path(), new.path()), between(old.path(), elsewhere.path()));
    assert_eq!(full.known, 0, "{what}: nothing is known of files that moved");
    assert_eq!(printed(&short, [old, new]), printed(&full, [old, &elsewhere]), "{what}");
    short
}

#[test]
fn an_edit_in_one_document_of_a_file_touches_only_the_hops_that_use_it() {
    let old = network();
    let new = copied(&old);
    change(&new, "equipment.yaml", "wet_loss: 1.7 dB", "wet_loss: 2.7 dB");
    let there = prints_what_it_would_if_all_were_computed(&old, &new, "one antenna of two");
    // All but one of the others stand beside one of them.
    assert_eq!((there.hops.len(), there.known), (HOPS / 3, 1));
    let names: Vec<&str> = there.hops.iter().map(|hop| hop.hop.as_str()).collect();
    assert!(["h0", "h3", "h6", "h9"].iter().all(|name| names.contains(name)), "{names:?}");
}

type Change = fn(&TempDir);

/// What is done, what does it, and how many hops stay as they are made and keep their company: hop 4 shares a site with hop 3
/// and another with hop 5.
const CHANGES: [(&str, Change, usize); 15] = [
    ("nothing", |_| (), HOPS),
    ("a hop", |new| change(new, "hops/h4.yaml", "transmit_power: 10 dBm", "transmit_power: 40 dBm"), HOPS - 3),
    ("a remark", |new| change(new, "hops/h4.yaml", "# Where it stands.", "# Where it is."), HOPS - 3),
    ("a site of two hops", |new| change(new, "sites/s5.yaml", "88.9 mm", "48.3 mm"), HOPS - 4),
    ("a site that cannot be read", |new| change(new, "sites/s5.yaml", "position:", "position: ["), HOPS - 4),
    ("a site with a bad unit", |new| change(new, "sites/s5.yaml", "88.9 mm", "88.9 dB"), HOPS - 4),
    ("a hop under another name", |new| change(new, "hops/h4.yaml", "id: h4", "id: four"), HOPS - 3),
    ("a hop that is gone", |new| fs::remove_file(new.path().join("hops/h4.yaml")).expect("removed"), HOPS - 3),
    ("a rule lowered", |new| change(new, "network.yaml", "rules: {", "rules: { ground-conductor-long: advice,"), 0),
    ("an objective", |new| change(new, "network.yaml", "fade_margin: 10 dB", "fade_margin: 60 dB"), 0),
    ("a waiver", |new| write(new, "waivers/w.yaml", WAIVER), HOPS - 3),
    (
        "a waiver and another hop",
        |new| {
            write(new, "waivers/w.yaml", WAIVER);
            change(new, "hops/h4.yaml", "transmit_power: 10 dBm", "transmit_power: -30 dBm");
        },
        HOPS - 4,
    ),
    ("a document of another kind", |new| write(new, "mast.yaml", "kind: mast\nid: h4\n"), HOPS),
    (
        "a hop that is there twice",
        |new| {
            let hop = fs::read_to_string(new.path().join("hops/h4.yaml")).expect("there");
            write(new, "hops/a.yaml", &hop.replace("transmit_power: 10 dBm", "transmit_power: 40 dBm"));
        },
        HOPS - 3,
    ),
    (
        "a file cut in two",
        |new| {
            let text = fs::read_to_string(new.path().join("equipment.yaml")).expect("there");
            let (first, other) = text.split_once("---\n").expect("two documents");
            write(new, "equipment.yaml", other);
            write(new, "radio.yaml", first);
        },
        0,
    ),
];

const WAIVER: &str = "kind: waiver\nid: w\nrule: fade-margin-below-objective\ntarget: { hop: h3 }\ndeparture: deviation\n\
                      reason: None.\napprover: R. Invented\napproved_on: 2026-05-18\nexpires: 2027-03-01\n\
                      reference: INVENTED-17\n";

#[test]
fn what_is_known_changes_nothing_that_is_printed() {
    let old = network();
    for (what, make, known) in CHANGES {
        let new = copied(&old);
        make(&new);
        let there = prints_what_it_would_if_all_were_computed(&old, &new, what);
        assert_eq!(there.known, known, "{what}");
        let back = between(new.path(), old.path());
        assert_eq!(back.known, known, "{what}, the other way round");
    }
}

/// The three texts of a rain map with one rate everywhere.
fn rain_map(bench: &Bench, rate: &str) {
    let text = |of: &dyn Fn(f64, f64) -> String| -> String {
        let row = |lat: f64| [-34.0, -32.0, -30.0].map(|lon| of(lat, lon)).join(" ") + "\n";
        [56.0, 54.0, 52.0].map(row).concat()
    };
    fs::create_dir(bench.path("map")).expect("made");
    fs::write(bench.path("map/R001.TXT"), text(&|_, _| rate.to_owned())).expect("written");
    fs::write(bench.path("map/Lat_R001.TXT"), text(&|lat, _| lat.to_string())).expect("written");
    fs::write(bench.path("map/Lon_R001.TXT"), text(&|_, lon| lon.to_string())).expect("written");
    bench.change("network.yaml", "rain_rate: 22 mm/h", "rain_map: map");
}

/// A tile around the base network: a plane.
fn tile(bench: &Bench, height: i16) {
    fs::create_dir(bench.path("tiles")).expect("made");
    fs::write(bench.path("tiles/N54W033.hgt"), height.to_be_bytes().repeat(101 * 101)).expect("written");
    bench.change("network.yaml", "codes:", "terrain: { folder: tiles, source: A plane }\ncodes:");
}

#[test]
fn what_lies_beside_the_documents_counts() {
    let with = |beside: &dyn Fn(&Bench)| {
        let bench = Bench::new();
        beside(&bench);
        bench
    };
    let known = |old: &dyn Fn(&Bench), new: &dyn Fn(&Bench)| {
        let comparison = between(&with(old).path(""), &with(new).path(""));
        assert!(comparison.edits.is_empty());
        (comparison.known, comparison.hops.len())
    };
    let map = |rate| move |bench: &Bench| rain_map(bench, rate);
    let ground = |height| move |bench: &Bench| tile(bench, height);
    let nothing = |bench: &Bench| bench.change("network.yaml", "rain_rate: 22 mm/h", "rain_map: map");
    assert_eq!(known(&map("22"), &map("22")), (1, 0), "the same map");
    assert_eq!(known(&map("22"), &map("42")), (0, 1), "another map");
    assert_eq!(known(&map("22"), &nothing), (0, 1), "no map");
    assert_eq!(known(&ground(300), &ground(300)), (1, 0), "the same ground");
    assert_eq!(known(&ground(300), &ground(340)), (0, 1), "other ground");
}

#[test]
fn a_profile_beside_a_hop_counts() {
    let [old, new] = [(); 2].map(|()| {
        let folder = tempfile::tempdir().expect("a temporary folder");
        synthetic::write(folder.path(), Plan { hops: 4, seed: 7, faults: false, points: 20 }).expect("written");
        fs::create_dir(folder.path().join(".git")).expect("writable");
        folder
    });
    assert_eq!(between(old.path(), new.path()).known, 4);
    change(&new, "hops/h2.csv", ",19", ",29");
    let there = between(old.path(), new.path());
    assert_eq!((there.known, there.hops.len(), there.edits.len()), (1, 1, 1), "two hops share a site with it");
    assert_eq!(there.edits[0].route, "path.csv");
}

/// What a hop puts on a pole counts for whoever else stands there, and for nobody further away.
#[test]
fn what_another_hop_puts_on_the_pole_counts() {
    let old = network();
    for (file, was, is) in [
        ("equipment.yaml", "id: dish\n", "id: dish\nwind_area: 0.3 m2\n"),
        ("equipment.yaml", "id: other-dish\n", "id: other-dish\nwind_area: 0.3 m2\n"),
    ] {
        change(&old, file, was, is);
    }
    change(&old, "network.yaml", "climate: {", "climate: { wind: { operating: 20 m/s, survival: 40 m/s },");
    let new = copied(&old);
    let hop = fs::read_to_string(new.path().join("hops/h4.yaml")).expect("there");
    let height = hop.lines().find(|line| line.contains("height:")).expect("a height").trim().to_owned();
    change(&new, "hops/h4.yaml", &height, "height: 30.5 m");
    let there = prints_what_it_would_if_all_were_computed(&old, &new, "an antenna that went up");
    assert_eq!(there.known, HOPS - 3);
    let beside = there.hops.iter().find(|hop| hop.hop == "h3" || hop.hop == "h5").expect("a hop beside it");
    let named = beside.causes.iter().any(|cause| cause.document == "hop h4" && cause.route.ends_with("height"));
    assert!(named, "{:?}", beside.causes);
}
