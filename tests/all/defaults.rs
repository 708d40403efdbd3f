//! Templates and defaults: what counts, what is said of them, and that a hop is what it would be if it were written out.

use std::fs;

use hopwright::finding::{Finding, Spot};
use hopwright::verdict::Evaluation;

use crate::fixture::Bench;

/// Keys of the base hop moved to the defaults of its network.
const MOVED: [(&str, &str, &str); 5] = [
    (
        "network.yaml",
        "codes:\n",
        "defaults:\n  end:\n    radio: q-80\n    transmit_power: 10 dBm\n    bracket: { model: tilter }\n  \
         grounding: { conductor: 16 mm2 }\ncodes:\n",
    ),
    ("hops/ridge.yaml", "    radio: q-80\n", ""),
    ("hops/ridge.yaml", "    transmit_power: 10 dBm\n", ""),
    ("hops/ridge.yaml", "      model: tilter\n", ""),
    ("hops/ridge.yaml", "      conductor: 16 mm2\n", ""),
];

fn messages(evaluation: &Evaluation<()>) -> Vec<String> {
    evaluation.findings.iter().map(|finding| finding.message.clone()).collect()
}

/// Path and line of each label of the only finding.
fn places(evaluation: &Evaluation<()>) -> Vec<(String, usize)> {
    let [finding] = evaluation.findings.as_slice() else { panic!("{:#?}", messages(evaluation)) };
    let place = |spot: &Spot| {
        let found = evaluation.files.locate(spot).expect("a place");
        let file = evaluation.files.get(found.file).expect("a file");
        let name = file.origin.file_name().expect("a name").to_string_lossy().into_owned();
        (name, file.position(found.span.start).line)
    };
    finding.labels.iter().map(|label| place(&label.spot)).collect()
}

/// The line of a file on which a text stands first.
fn line(bench: &Bench, file: &str, text: &str) -> usize {
    let whole = fs::read_to_string(bench.path(file)).expect("there");
    whole.lines().position(|line| line.contains(text)).unwrap_or_else(|| panic!("{text}")) + 1
}

#[test]
fn a_hop_is_what_it_would_be_if_it_were_written_out() {
    let bench = Bench::with(&MOVED);
    assert_eq!(messages(&bench.judge()), [""; 0]);
    assert_eq!(bench.numbers(), Bench::new().numbers());
    // End b writes its own power, and both brackets their own way up: key by key.
    bench.change("network.yaml", "transmit_power: 10 dBm", "transmit_power: 9 dBm");
    let numbers = bench.numbers();
    assert_eq!((numbers["a_to_b.transmit_power"], numbers["b_to_a.transmit_power"]), (9.0, 12.0));
}

#[test]
fn own_counts_before_template_support_site_and_network() {
    let bench = Bench::new();
    let power = || bench.numbers()["a_to_b.transmit_power"];
    let defaults = |power: &str| format!("defaults: {{ end: {{ transmit_power: {power} dBm }} }}");
    bench.change("hops/ridge.yaml", "    transmit_power: 10 dBm\n", "");
    bench.change("network.yaml", "codes:\n", &format!("{}\ncodes:\n", defaults("1")));
    assert_eq!(power().to_string(), "1");
    bench.change("sites/scar.yaml", "supports:\n", &format!("{}\nsupports:\n", defaults("2")));
    assert_eq!(power().to_string(), "2");
    bench.change("sites/scar.yaml", "    kind: pole\n", &format!("    kind: pole\n    {}\n", defaults("3")));
    assert_eq!(power().to_string(), "3");
    bench.change("hops/ridge.yaml", "    site: scar\n", "    like: strong\n    site: scar\n");
    let template = "kind: template\nid: strong\nend: { like: stronger }\n---\nkind: template\nid: stronger\n\
                    end: { transmit_power: 4 dBm, half: high }\n";
    fs::write(bench.path("templates.yaml"), template).expect("writable");
    assert_eq!(power().to_string(), "4");
    bench.change("hops/ridge.yaml", "    site: scar\n", "    site: scar\n    transmit_power: 5 dBm\n");
    assert_eq!(power().to_string(), "5");
}

#[test]
fn a_list_counts_as_it_is_written_and_its_runs_are_filled() {
    let bench = Bench::new();
    let run = "      - port: main\n        carries: [data, power]\n        supply: bt-60\n        power_point: hut\n        \
               cable: out-5e\n        outdoor: 35 m\n        indoor: 15 m\n        arresters:\n          - { model: \
               surge-1g, at: radio }\n          - { model: surge-1g, at: entry }\n";
    bench.change("hops/ridge.yaml", run, "      - { like: feed, outdoor: 35 m }\n");
    let template = "kind: template\nid: feed\nrun:\n  port: main\n  carries: [data, power]\n  supply: bt-60\n  power_point: hut\n  \
                    cable: out-5e\n  indoor: 15 m\n";
    fs::write(bench.path("templates.yaml"), template).expect("writable");
    let both = "defaults:\n  run:\n    arresters:\n      - { model: surge-1g, at: radio }\n      - { model: surge-1g, at: \
                entry }\ncodes:\n";
    bench.change("network.yaml", "codes:\n", both);
    assert_eq!(messages(&bench.judge()), [""; 0]);
    assert_eq!(bench.numbers(), Bench::new().numbers());
    // A template with one arrester has that one only.
    bench.change(
        "templates.yaml",
        "  indoor: 15 m\n",
        "  indoor: 15 m\n  arresters: [{ model: surge-1g, at: entry }]\n",
    );
    let evaluation = bench.judge();
    assert_eq!(evaluation.findings.len(), 1, "{:?}", messages(&evaluation));
    assert_eq!(evaluation.findings[0].rule.name, "arrester-missing");
    // All runs of an end from elsewhere: shown where they are written, known by the hop.
    let own = fs::read_to_string(bench.path("hops/ridge.yaml")).expect("a hop");
    bench.change("hops/ridge.yaml", "    runs:\n      - { like: feed, outdoor: 35 m }\n", "");
    bench.change("network.yaml", "defaults:\n", "defaults:\n  end: { runs: [{ like: feed, outdoor: 35 m }] }\n");
    let after = bench.judge();
    assert_eq!(after.findings[0].fingerprint, evaluation.findings[0].fingerprint, "{own}");
}

#[test]
fn what_is_wrong_between_templates_is_told_once_at_its_place() {
    let bench = Bench::with(&MOVED);
    let write = |text: &str| fs::write(bench.path("templates.yaml"), text).expect("writable");
    write("kind: template\nid: one\nrun: { like: two }\n---\nkind: template\nid: two\nrun: { like: one }\n");
    let circle = bench.judge();
    assert_eq!(messages(&circle), ["template `one`, like `two`, like `one`: it is like itself"]);
    assert_eq!(places(&circle), [("templates.yaml".into(), 3), ("templates.yaml".into(), 7)]);
    write(
        "kind: template\nid: one\nrun: { like: tow, cable: out-9 }\n---\nkind: template\nid: two\nend: { half: low }\n",
    );
    let said = bench.judge();
    assert_eq!(messages(&said), ["the network has no template `tow`", "the network has no cable `out-9`"]);
    assert!(said.findings[0].help.as_ref().is_some_and(|help| help.contains("`two`")), "{:?}", said.findings[0].help);
    write("kind: template\nid: one\nrun: { outdoor: 3 m }\n");
    bench.change("hops/ridge.yaml", "    site: mill\n", "    like: one\n    site: mill\n");
    let lacking = bench.judge();
    assert_eq!(messages(&lacking), ["template `one` has no `end`"]);
    assert_eq!(places(&lacking), [("ridge.yaml".into(), line(&bench, "hops/ridge.yaml", "like: one"))]);
    bench.change("hops/ridge.yaml", "like: one", "like: ones");
    let evaluation = bench.judge();
    assert_eq!(messages(&evaluation), ["the network has no template `ones`"]);
}

#[test]
fn a_bad_value_is_told_where_it_is_written_and_hops_wait_for_it() {
    let bench = Bench::with(&MOVED);
    bench.change("network.yaml", "transmit_power: 10 dBm", "transmit_power: 10 dB");
    bench.change("network.yaml", "conductor: 16 mm2", "conductr: 16 mm2");
    let evaluation = bench.judge();
    let told: Vec<(&str, Option<&str>)> =
        evaluation.findings.iter().map(|finding| (finding.rule.name, finding.hop.as_deref())).collect();
    let expected = [("key-unknown", None), ("value-not-valid", None)];
    assert!(expected.iter().all(|one| told.contains(one)), "{told:?}");
    assert_eq!(told.iter().filter(|(rule, _)| *rule == "value-not-valid").count(), 1, "{told:?}");
    assert!(!told.iter().any(|(rule, _)| *rule == "key-missing"), "{told:?}");
}

#[test]
fn what_nobody_writes_is_missing_in_the_hop() {
    let bench = Bench::with(&MOVED);
    bench.change("network.yaml", "    radio: q-80\n", "");
    bench.change("network.yaml", "bracket: { model: tilter }", "bracket: { plate: true }");
    assert_eq!(
        messages(&bench.judge())[1..],
        [
            "`ends.a` has no radio",
            "`ends.a.bracket` has no model",
            "`ends.b` has no radio",
            "`ends.b.bracket` has no model"
        ]
    );
    // A bracket that is nobody's own: the end that takes it, and what it takes.
    bench.change("hops/ridge.yaml", "    bracket:\n      orientation: upright\n", "");
    let evaluation = bench.judge();
    let bracket = |finding: &&Finding| finding.message == "`ends.a.bracket` has no model";
    let finding = evaluation.findings.iter().find(bracket).expect("told");
    assert_eq!(finding.labels[1].text, "the rest is taken from here");
}

#[test]
fn a_network_that_cannot_be_read_is_no_flood_of_missing_keys() {
    let bench = Bench::with(&MOVED);
    bench.change("network.yaml", "title: Fellmoor test range", "title: [");
    let evaluation = bench.judge();
    let rules: Vec<&str> = evaluation.findings.iter().map(|finding| finding.rule.name).collect();
    assert!(rules.contains(&"yaml-malformed") && !rules.contains(&"key-missing"), "{rules:?}");
}

#[test]
fn a_hop_takes_in_no_more_than_fits_it() {
    let bench = Bench::new();
    let many = "*x, ".repeat(300);
    let anchor = format!("defaults:\n  run: {{ arresters: &x [{}] }}\n", "{ model: surge-1g, at: radio }, ".repeat(30));
    bench.change("network.yaml", "codes:\n", &format!("{anchor}  end: {{ losses: [{many}] }}\ncodes:\n"));
    let said = messages(&bench.judge());
    assert!(said.iter().any(|message| message.starts_with("this hop takes in more than 20000 values")), "{said:?}");
    assert!(!said.iter().any(|message| message.contains(" has no ")), "{said:?}");
}

#[test]
fn a_state_with_figures_by_bandwidth_is_a_state_for_each() {
    let one = "  - { title: QPSK, bandwidth: 500 MHz, capacity: 650 Mbit/s, threshold: -65 dBm }\n";
    let table = "  - title: QPSK\n    back_off: 0 dB\n    by_bandwidth:\n      - { bandwidth: 250 MHz, capacity: 325 Mbit/s, threshold: -68 dBm }\n      \
                 - { bandwidth: 500 MHz, capacity: 650 Mbit/s, threshold: -65 dBm }\n";
    let bench = Bench::with(&[("equipment/radio.yaml", one, table)]);
    assert_eq!(messages(&bench.judge()), [""; 0]);
    assert_eq!(bench.numbers(), Bench::new().numbers());
    // What is written in the state counts where the row has nothing; found where it is written.
    let file = "equipment/radio.yaml";
    bench.change(file, "threshold: -65 dBm", "threshold: -99 dBm");
    bench.change(file, "overload: -30 dBm", "overload: -30 dBm\nnoise_figure: 6 dB");
    bench.change(file, "    back_off: 0 dB\n", "    bits: 2\n");
    let evaluation = bench.judge();
    let finding = evaluation.findings.iter().find(|finding| finding.rule.name == "threshold-impossible").expect("told");
    let place = evaluation.files.locate(&finding.labels[0].spot).expect("a place");
    let radio = evaluation.files.get(place.file).expect("the radio");
    assert_eq!(radio.position(place.span.start).line, line(&bench, file, "threshold: -99 dBm"));
    let target = evaluation.files.target(&finding.labels[0].spot);
    assert_eq!(target.route, "states[QPSK].by_bandwidth[1].threshold");
    // What is missing, and what is broken, is told at its row.
    bench.change(file, ", threshold: -99 dBm", "");
    bench.change(file, "capacity: 325 Mbit/s", "capacity: 325");
    let said = messages(&bench.judge());
    assert!(said.contains(&"`states[0].by_bandwidth[1]` has no threshold".into()), "{said:?}");
    let broken = said.iter().filter(|message| message.contains("`states[0].by_bandwidth[0].capacity`"));
    assert_eq!(broken.count(), 2, "the fault, and the hop that waits for it: {said:?}");
}
