//! Interference through the whole program: networks whose every level is known from elsewhere, and what must hold of any.

#![allow(
    clippy::redundant_closure,
    clippy::redundant_closure_for_method_calls,
    reason = "a method by name has one lifetime"
)]

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::fs;
use std::path::Path;

use crate::fixture::Bench;
use crate::physics::table::{Row, rows};
use crate::synthetic::{self, Plan};
use hopwright::air::{Air, Heard, Owner, Station};
use hopwright::compare::{Noise, Side, compare};
use hopwright::finding::Findings;
use hopwright::network::{self, Scope};
use hopwright::spec::EndName;
use hopwright::verdict::evaluate;
use tempfile::TempDir;

/// What everybody hears: by receiver, the level from each sender.
type Levels = BTreeMap<String, BTreeMap<String, f64>>;

fn name(station: &Station<'_>) -> String {
    match station.owner {
        Owner::Hop(own) => format!("{}.{}", own.hop.id, if own.name == EndName::A { 1 } else { 2 }),
        Owner::Neighbour(neighbour) => neighbour.id.to_string(),
    }
}

/// Opens a network and hands its air to `work`.
fn with_air<R>(folder: &Path, work: impl FnOnce(&Air<'_>) -> R) -> R {
    let loaded = network::load(&Scope::of(&[folder.to_path_buf()]));
    assert!(loaded.findings.is_empty(), "{:#?}", loaded.findings.iter().map(|f| &f.message).collect::<Vec<_>>());
    let library = loaded.libraries.first().expect("a network");
    let hops = network::resolve(library, &mut Findings::default());
    work(&Air::of(&hops, &library.neighbours.documents))
}

fn levels(air: &Air<'_>, heard: impl Fn(&Air<'_>, &Station<'_>) -> Heard) -> Levels {
    let listening = air.stations().iter().filter(|station| station.listens.is_some());
    let each = listening.map(|station| {
        let from = heard(air, station).from;
        (name(station), from.iter().map(|from| (name(&air.stations()[from.number]), from.level.0)).collect())
    });
    each.collect()
}

/// A network folder with the equipment that tables need.
struct Made {
    folder: TempDir,
    documents: String,
}

impl Made {
    fn new() -> Self {
        let folder = tempfile::tempdir().expect("a temporary folder");
        fs::create_dir(folder.path().join(".git")).expect("writable");
        let bench = Bench::new();
        for file in ["network.yaml", "equipment/cables.yaml", "equipment/mounting.yaml", "equipment/power.yaml"] {
            let to = folder.path().join(file);
            fs::create_dir_all(to.parent().expect("inside")).expect("writable");
            fs::copy(bench.path(file), to).expect("there");
        }
        Self { folder, documents: String::new() }
    }

    fn add(&mut self, document: &str) {
        let _ = write!(self.documents, "---\n{document}\n");
    }

    fn site(&mut self, id: &str, [latitude, longitude, ground]: [f64; 3]) {
        self.add(&format!(
            "kind: site\nid: {id}\ntitle: Site {id}\nposition: {{ latitude: {latitude} deg, longitude: {longitude} deg }}\n\
             ground_height: {ground} m\nsupports: [{{ id: mast, kind: mast, outside_diameter: 101.6 mm, base_height: 0 m, \
             free_length: 90 m }}]"
        ));
    }

    /// The radio and the antenna of one end, called after it.
    fn models(&mut self, id: &str, row: &Row, prefix: &str) {
        let of = |name: &str| row.text(&format!("{prefix}{name}"));
        let masks = |kind: &str, column: &str| match row.text(column) {
            "rect" => String::new(),
            mask => format!("{kind}: {}\n", mask_points(mask)),
        };
        let bandwidth = row.text(if prefix.is_empty() {
            "bw_mhz"
        } else if prefix == "t_" {
            "bw_tx_mhz"
        } else {
            "bw_rx_mhz"
        });
        let sent = if prefix == "r_" { String::new() } else { masks("transmit_mask", "tx_mask") };
        let heard = if prefix == "t_" { String::new() } else { masks("receive_mask", "rx_mask") };
        self.add(&format!(
            "kind: radio\nid: radio-{id}\ntitle: Radio {id}\nhalves: [{{ id: any, transmit: {{ min: 6 GHz, max: 90 GHz }}, receive: \
             {{ min: 6 GHz, max: 90 GHz }} }}]\ntransmit_power: {{ min: -40 dBm, max: 40 dBm }}\nstates: [{{ title: QPSK, \
             bandwidth: {bandwidth} MHz, capacity: 650 Mbit/s, threshold: -65 dBm }}]\noverload: 0 dBm\nnoise_figure: {} dB\n\
             {sent}{heard}ports: [{{ id: main, carries: [data, power-in] }}, {{ id: meter, carries: [readout] }}]\n\
             power: {{ draw: 32 W, voltage: {{ min: 40 V, max: 57 V }}, accepts: [802.3bt] }}\nreadout: {{ port: meter, range: \
             {{ min: 0 V, max: 1 V }}, low: {{ voltage: 0.3 V, level: -30 dBm }}, high: {{ voltage: 0.7 V, level: -70 dBm }} }}\n\
             ground: {{ terminal: M6, least_conductor: 6 mm2 }}",
            row.text("nf_db"),
        ));
        let pattern =
            if of("pattern") == "measured" { format!("pattern: {}\n", measured_points()) } else { String::new() };
        let metres: f64 = of("diameter_m").parse().expect("a diameter");
        self.add(&format!(
            "kind: antenna\nid: dish-{id}\ntitle: Dish {id}\nband: {{ min: 6 GHz, max: 90 GHz }}\ngain: {} dBi\nbeamwidth: 1 deg\n\
             diameter: {} mm\ncross_polar: {} dB\n{pattern}",
            of("gain_dbi"),
            metres * 1000.0,
            of("xpd_db"),
        ));
    }

    /// A hop between two sites: of each end its site, height, models, power, and loss.
    fn hop(&mut self, id: &str, channel: [f64; 3], polarisation: &str, ends: [(&str, f64, &str, f64, f64); 2]) {
        let [there, back, bandwidth] = channel;
        let mut text = format!(
            "kind: hop\nid: {id}\nchannel: {{ a_to_b: {there} GHz, b_to_a: {back} GHz, bandwidth: {bandwidth} MHz, \
             polarisation: {} }}\nends:\n",
            if polarisation == "V" { "vertical" } else { "horizontal" }
        );
        for (letter, (site, height, model, power, loss)) in ["a", "b"].iter().zip(ends) {
            let _ = writeln!(
                text,
                "  {letter}: {{ site: {site}, support: mast, height: {height} m, radio: radio-{model}, antenna: dish-{model}, \
                 transmit_power: {power} dBm, losses: [{{ title: Feeder, loss: {loss} dB }}], bracket: {{ model: tilter }}, \
                 runs: [] }}"
            );
        }
        self.add(&text);
    }

    fn levels(self) -> Levels {
        fs::write(self.folder.path().join("all.yaml"), &self.documents[4..]).expect("writable");
        with_air(self.folder.path(), |air| levels(air, |air, station| air.heard_by(station)))
    }
}

fn mask_points(name: &str) -> String {
    let of_name = rows(include_str!("../tables/interference/masks.csv")).filter(|row| row.text("mask") == name);
    let points =
        of_name.map(|row| format!("{{ offset: {}, below: {} dB }}", row.number("offset"), -row.number("level_db")));
    format!("[{}]", points.collect::<Vec<_>>().join(", "))
}

fn measured_points() -> String {
    let points = rows(include_str!("../tables/interference/measured_pattern.csv"));
    let points =
        points.map(|row| format!("{{ angle: {} deg, below: {} dB }}", row.number("angle_deg"), -row.number("co_db")));
    format!("[{}]", points.collect::<Vec<_>>().join(", "))
}

#[test]
fn every_level_of_a_network_is_that_of_an_independent_program() {
    let ends: Vec<Row> = rows(include_str!("../tables/interference/net_a_ends.csv")).collect();
    let mut made = Made::new();
    for row in &ends {
        let id = format!("{}-{}", row.text("hop"), row.text("end"));
        made.models(&id, row, "");
        if !made.documents.contains(&format!("id: {}\n", row.text("site"))) {
            made.site(row.text("site"), [row.number("lat"), row.number("lon"), row.number("ground_m")]);
        }
    }
    for pair in ends.chunks(2) {
        let [one, other] = pair else { panic!("two ends a hop") };
        let model = |row: &Row| format!("{}-{}", row.text("hop"), row.text("end"));
        let (first, second) = (model(one), model(other));
        let end = |row: &Row| (row.number("ant_m"), row.number("tx_dbm"), row.number("feeder_db"));
        let [(h_1, p_1, l_1), (h_2, p_2, l_2)] = [end(one), end(other)];
        made.hop(
            one.text("hop"),
            [one.number("tx_ghz"), one.number("rx_ghz"), one.number("bw_mhz")],
            one.text("pol"),
            [(one.text("site"), h_1, &first, p_1, l_1), (other.text("site"), h_2, &second, p_2, l_2)],
        );
    }
    let found = made.levels();
    let (mut compared, mut silent) = (0, 0);
    for row in rows(include_str!("../tables/interference/net_a_matrix.csv")) {
        let level = found[row.text("rx")].get(row.text("tx"));
        if row.text("status") == "ok" && row.number("i_over_n_db") > -70.0 {
            let (level, should) = (level.unwrap_or_else(|| panic!("{} unheard", row.text("tx"))), row.number("i_dbm"));
            assert!((level - should).abs() < 1e-6, "{} at {}: {level} for {should}", row.text("tx"), row.text("rx"));
            compared += 1;
        } else {
            assert_eq!(level, None, "{} at {}", row.text("tx"), row.text("rx"));
            silent += 1;
        }
    }
    assert!(compared >= 12 && silent >= 12, "{compared} compared, {silent} silent");
}

#[test]
fn single_pairs_are_those_of_an_independent_program() {
    let (mut compared, mut silent) = (0, 0);
    for row in rows(include_str!("../tables/interference/interference_pair.csv")) {
        let known = |column: &str| row.text(column) != "f1245";
        // What the program asks of a pattern: measured or the envelope; and of the other polarisation only its least.
        if !known("t_pattern") || !known("r_pattern") || row.text("t_pol") != row.text("r_pol") {
            continue;
        }
        // The table counts heights from ground of its own.
        let lowest = ["t", "tp", "r", "rp"]
            .map(|end| row.number(&format!("{end}_ground_m")))
            .into_iter()
            .fold(f64::MAX, f64::min);
        if row.text("status") == "beyond_horizon" && lowest < row.number("h_ref_m") {
            continue;
        }
        let mut made = Made::new();
        made.models("t", &row, "t_");
        made.models("r", &row, "r_");
        for end in ["t", "tp", "r", "rp"] {
            let of = |name: &str| row.number(&format!("{end}_{name}"));
            made.site(end, [of("lat"), of("lon"), of("ground_m")]);
        }
        let height = |end: &str| row.number(&format!("{end}_ant_m"));
        // The partners are on other channels: nobody is to hear them.
        let (sent, heard) = (row.number("f_tx_ghz"), row.number("f_rx_ghz"));
        let (sent_width, heard_width) = (row.number("bw_tx_mhz"), row.number("bw_rx_mhz"));
        let (out, back) = (row.number("feeder_t_db"), row.number("feeder_r_db"));
        let power = row.number("tx_dbm");
        made.hop(
            "t",
            [sent, 7.0, sent_width],
            row.text("t_pol"),
            [("t", height("t"), "t", power, out), ("tp", height("tp"), "t", power, out)],
        );
        made.hop(
            "r",
            [9.0, heard, heard_width],
            row.text("r_pol"),
            [("r", height("r"), "r", power, back), ("rp", height("rp"), "r", power, back)],
        );
        let found = made.levels();
        let level = found["r.1"].get("t.1");
        if row.text("status") == "ok" && row.number("i_over_n_db") > -70.0 {
            let (level, should) = (level.unwrap_or_else(|| panic!("{} unheard", row.text("id"))), row.number("i_dbm"));
            assert!((level - should).abs() < 1e-6, "{}: {level} for {should}", row.text("id"));
            compared += 1;
        } else {
            assert_eq!(level, None, "{}", row.text("id"));
            silent += 1;
        }
    }
    assert!(compared >= 3 && silent >= 2, "{compared} compared, {silent} silent");
}

/// A generated network of so many hops.
fn generated(hops: usize) -> TempDir {
    let folder = tempfile::tempdir().expect("a temporary folder");
    fs::create_dir(folder.path().join(".git")).expect("writable");
    synthetic::write(folder.path(), Plan { hops, seed: 18, faults: false, points: 0 }).expect("writable");
    folder
}

#[test]
fn what_is_passed_over_is_heard_by_nobody() {
    let folder = generated(500);
    with_air(folder.path(), |air| {
        let (culled, all) = (
            levels(air, |air, station| air.heard_by(station)),
            levels(air, |air, station| air.heard_unculled(station)),
        );
        assert_eq!(culled, all);
        let heard: usize = all.values().map(BTreeMap::len).sum();
        assert!(heard > 2000, "{heard}");
    });
}

#[test]
fn one_more_sender_is_never_a_relief() {
    let folder = generated(60);
    let over_noise = || {
        with_air(folder.path(), |air| {
            let each = air.stations().iter().map(|station| (name(station), air.heard_by(station).degradation().0));
            each.collect::<BTreeMap<String, f64>>()
        })
    };
    let mut before = over_noise();
    for number in 0..12 {
        let document = format!(
            "kind: neighbour\nid: n{number}\nposition: {{ latitude: {} deg, longitude: {} deg }}\nground_height: {} m\n\
             height: 20 m\nbearing: {} deg\npolarisation: vertical\ngain: 43 dBi\nsends: {{ frequency: {} GHz, bandwidth: 500 MHz, \
             eirp: 50 dBm }}\n",
            45.0 + 0.003 * f64::from(number),
            -31.05 + 0.07 * f64::from(number),
            150 + 10 * number,
            30 * number,
            71.375 + 0.5 * f64::from(number % 9),
        );
        fs::write(folder.path().join(format!("n{number}.yaml")), document).expect("writable");
        let after = over_noise();
        for (receiver, degradation) in &before {
            assert!(after[receiver] >= *degradation, "{receiver}: {} after {degradation}", after[receiver]);
        }
        before = after;
    }
}

/// Every longitude of a folder of sites made another.
fn with_longitudes(folder: &Path, make: impl Fn(f64) -> f64) {
    for file in fs::read_dir(folder.join("sites")).expect("sites") {
        let path = file.expect("a file").path();
        let text = fs::read_to_string(&path).expect("UTF-8");
        let (head, tail) = text.split_once("longitude: ").expect("a longitude");
        let (number, tail) = tail.split_once(' ').expect("a unit");
        let moved = make(number.parse().expect("a number"));
        fs::write(&path, format!("{head}longitude: {moved:.6} {tail}")).expect("writable");
    }
}

#[test]
fn a_network_that_is_moved_or_mirrored_hears_the_same() {
    let folder = generated(130);
    let here = with_air(folder.path(), |air| levels(air, |air, station| air.heard_by(station)));
    for make in [(|longitude| longitude - 100.0) as fn(f64) -> f64, |longitude| -longitude] {
        let folder = generated(130);
        with_longitudes(folder.path(), make);
        let there = with_air(folder.path(), |air| levels(air, |air, station| air.heard_by(station)));
        for (receiver, from) in &here {
            let heard = &there[receiver];
            assert!(from.keys().eq(heard.keys()), "{receiver}");
            for (sender, level) in from {
                assert!((level - heard[sender]).abs() < 1e-6, "{sender} at {receiver}: {level} and {}", heard[sender]);
            }
        }
    }
}

/// Rules that find something, with their hops.
fn found(folder: &Path) -> Vec<(String, &'static str)> {
    let evaluation = evaluate(&Scope::of(&[folder.to_path_buf()]), |_, _| ());
    let each = evaluation.findings.iter().map(|f| (f.hop.clone().unwrap_or_default(), f.rule.name));
    let mut each: Vec<_> = each.filter(|(_, rule)| OURS.contains(rule)).collect();
    each.sort();
    each.dedup();
    each
}

const OURS: [&str; 6] = [
    "channel-used-in-beam",
    "channel-used-twice",
    "halves-mixed",
    "interference-too-strong",
    "neighbour-disturbed",
    "threshold-degraded",
];

/// The base network with a second hop from the same mast, its far end turned by some degrees.
fn hub(change: impl Fn(String) -> String) -> Bench {
    let bench = Bench::new();
    let site = fs::read_to_string(bench.path("sites/mill.yaml")).expect("there");
    let second =
        site.replace("id: mill", "id: weir").replace("54.320000", "54.319000").replace("-32.170000", "-32.168000");
    assert_ne!(site, second);
    fs::write(bench.path("sites/weir.yaml"), second).expect("writable");
    let hop = fs::read_to_string(bench.path("hops/ridge.yaml")).expect("there");
    let second =
        hop.replace("id: ridge", "id: brook").replace("site: mill", "site: weir").replace("height: 8 m", "height: 7 m");
    fs::write(bench.path("hops/brook.yaml"), change(second)).expect("writable");
    bench
}

#[test]
fn two_hops_a_few_degrees_apart_on_one_channel_are_found() {
    let bench = hub(|hop| hop);
    let found = found(&bench.path(""));
    for hop in ["brook", "ridge"] {
        let told = found.iter().any(|(of, rule)| of == hop && *rule != "halves-mixed");
        assert!(told, "{hop}: {found:?}");
    }
}

#[test]
fn the_channel_beside_is_enough_where_no_mask_says_more() {
    let bench = hub(|hop| hop.replace("73.375", "74.375").replace("83.375", "84.375"));
    assert_eq!(found(&bench.path("")), []);
}

#[test]
fn a_high_half_beside_a_low_one_is_found() {
    let turn = |hop: String| {
        let hop = hop.replace("a_to_b: 73.375", "a_to_b: x").replace("b_to_a: 83.375", "b_to_a: 74.375");
        let hop = hop.replace("a_to_b: x", "a_to_b: 84.375").replace("half: low", "half: y");
        hop.replace("half: high", "half: low").replace("half: y", "half: high")
    };
    let found = found(&hub(turn).path(""));
    let of_hop = |hop: &str| (hop.to_owned(), "halves-mixed");
    assert_eq!(found, [of_hop("brook"), of_hop("ridge")]);
}

#[test]
fn a_change_to_one_hop_shows_what_it_does_to_another() {
    let [before, after] = [hub(|hop| hop.replace("b_to_a: 83.375", "b_to_a: 84.375")), hub(|hop| hop)];
    let side = |bench: &Bench| Side::of(&Scope::of(&[bench.path("")]), "a state".into());
    let compared = compare(&side(&before), &side(&after), &Noise::default());
    let ridge = compared.hops.iter().find(|hop| hop.hop == "ridge").expect("ridge changes too");
    let margin = ridge.quantities.iter().find(|change| change.key.ends_with("margins.fade_margin")).expect("a margin");
    let [was, is] = [margin.values[0].number, margin.values[1].number].map(|number| number.expect("a number"));
    assert!(is < was - 1.0, "{was} dB to {is} dB");
    let causes: Vec<&str> = ridge.causes.iter().map(|cause| cause.path.as_str()).collect();
    assert!(causes.iter().all(|file| file.ends_with("brook.yaml")) && !causes.is_empty(), "{causes:?}");
}
