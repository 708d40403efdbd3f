//! What changed in the numbers: there and back, across folders and revisions, in each form.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::fs;
use std::path::Path;
use std::process::Command;

use crate::fixture::program::{self, Ran, finish};
use crate::fixture::repository::git;
use crate::fixture::{Bench, Edit, copy, edits, folders, tests_folder};
use hopwright::compare::{
    Change, Comment, Comparison, HopChange, Noise, Outcome, Part, Side, Status, Threshold, compare, json, markdown,
    text,
};
use hopwright::network::Scope;
use hopwright::rules::ALL;
use proptest::prelude::*;

fn side(bench: &Bench) -> Side {
    Side::of(&Scope::of(&[bench.path("")]), "bench".into())
}

fn between(old: &Bench, new: &Bench) -> Comparison {
    compare(&side(old), &side(new), &Noise::default())
}

/// The text of a file of a bench, changed.
fn rewrite(bench: &Bench, file: &str, change: impl Fn(&str) -> String) {
    let path = bench.path(file);
    let before = fs::read_to_string(&path).expect("there");
    let after = change(&before);
    assert_ne!(before, after, "{file}: nothing to change");
    fs::write(path, after).expect("writable");
}

fn with(file: &str, old: &str, new: &str) -> Bench {
    let bench = Bench::new();
    rewrite(&bench, file, |text| text.replacen(old, new, 1));
    bench
}

fn snapshot(name: &str, text: &str) {
    let mut settings = insta::Settings::new();
    settings.set_snapshot_path(tests_folder().join("compare"));
    settings.set_prepend_module_to_snapshot(false);
    settings.set_omit_expression(true);
    settings.bind(|| insta::assert_snapshot!(name, text));
}

/// Every edit of the base network that a rule is tested by.
fn corpus() -> Vec<(String, Edit)> {
    let root = tests_folder().join("rules");
    let rules = folders(&root).into_iter().filter(|name| name != "base");
    let each = rules.flat_map(|rule| {
        let folder = root.join(&rule);
        let read = |name: String| (format!("{rule}/{name}"), Edit::read(&folder.join(&name).with_extension("edit")));
        edits(&folder).into_iter().map(read).collect::<Vec<_>>()
    });
    each.collect()
}

// There and back

/// What of a change must be the same the other way round, with both sides exchanged.
fn essence(change: &Change, swap: bool) -> String {
    let mut told = [0, 1].map(|side| {
        let margin = change.margins.as_ref().map(|margins| &margins[side]);
        format!("{:?} {:?} {:?} {:?}", change.values[side], change.limits[side], margin, change.met[side])
    });
    if swap {
        told.reverse();
    }
    told.join(" / ")
}

fn changes(hop: &HopChange, swap: bool) -> BTreeMap<String, String> {
    hop.quantities.iter().chain(&hop.others).map(|change| (change.key.clone(), essence(change, swap))).collect()
}

fn causes(comparison: &Comparison, swap: bool) -> Vec<[String; 4]> {
    let text = |text: &Option<String>| text.clone().unwrap_or_default();
    let mut list: Vec<[String; 4]> = comparison
        .edits
        .iter()
        .map(|cause| {
            let (before, after) = if swap { (&cause.after, &cause.before) } else { (&cause.before, &cause.after) };
            [cause.document.clone(), cause.route.clone(), text(before), text(after)]
        })
        .collect();
    list.sort();
    list
}

fn told(hop: &HopChange, swap: bool) -> Vec<(Status, &'static str, String)> {
    let other = |status| match (swap, status) {
        (true, Status::New) => Status::Fixed,
        (true, Status::Fixed) => Status::New,
        (_, Status::Worse | Status::Better) => Status::Existing,
        (true, Status::Raised) => Status::Lowered,
        (true, Status::Lowered) => Status::Raised,
        (_, status) => status,
    };
    // A finding that both sides have is worded with the numbers of the new one.
    let both = [Status::Existing, Status::Worse, Status::Better];
    let words = |status, message: &String| if both.contains(&status) { String::new() } else { message.clone() };
    let mut list: Vec<_> = hop
        .findings
        .iter()
        .filter(|finding| !matches!(finding.status, Status::Raised | Status::Lowered))
        .map(|finding| (other(finding.status), finding.rule, words(finding.status, &finding.message)))
        .collect();
    list.sort();
    list
}

/// What became of a hop, how bad it got left aside.
fn plain(outcome: Outcome) -> Outcome {
    match outcome {
        Outcome::FailsWorse => Outcome::StillFails,
        Outcome::NewWarning => Outcome::NoError,
        outcome => outcome,
    }
}

fn assert_mirrored(there: &Comparison, back: &Comparison, what: &str) {
    let by_id = |comparison: &Comparison| -> BTreeMap<String, usize> {
        comparison.hops.iter().enumerate().map(|(at, hop)| (hop.hop.clone(), at)).collect()
    };
    // Judged by the gate that it finds, a change to the gate is not the same the other way round.
    let one_gate = |comparison: &Comparison| comparison.gate.iter().all(|change| change.part == Part::Hop);
    let renamed = |hop: &HopChange| hop.renamed_from.clone().unwrap_or_else(|| hop.hop.clone());
    if !one_gate(there) {
        return;
    }
    assert_eq!(there.hops.len(), back.hops.len(), "{what}");
    assert_eq!((there.summary.unchanged, there.summary.small), (back.summary.unchanged, back.summary.small), "{what}");
    assert_eq!(causes(there, false), causes(back, true), "{what}");
    let at = by_id(back);
    for hop in &there.hops {
        let other = &back.hops[at[&renamed(hop)]];
        let failed = hop.outcome == Outcome::Removed && other.outcome == Outcome::NewAndFails;
        assert_eq!(hop.outcome.mirrored(failed), plain(other.outcome), "{what}");
        assert_eq!(changes(hop, false), changes(other, true), "{what}");
        assert_eq!(told(hop, false), told(other, true), "{what}");
        for (change, reverse) in hop.quantities.iter().flat_map(|change| {
            other.quantities.iter().filter(|reverse| reverse.key == change.key).map(move |reverse| (change, reverse))
        }) {
            let sum = change.difference().zip(reverse.difference()).map(|(there, back)| there + back);
            assert!(sum.is_none_or(|sum| sum == 0.0), "{what}: {}", change.key);
        }
    }
}

#[test]
fn a_network_differs_from_itself_in_nothing() {
    for network in ["varneck", "saltmere", "faulty"] {
        let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("examples").join(network);
        let side = || Side::of(&Scope::of(std::slice::from_ref(&folder)), network.into());
        let same = compare(&side(), &side(), &Noise::default());
        assert!(same.is_empty() && !same.regresses(), "{network}");
        assert_eq!(text(&same, 80, true).lines().count(), 1);
        assert_eq!(same.summary.unchanged, same.summary.hops);
    }
}

#[test]
fn every_edit_mirrors_and_every_number_it_moves_goes_back_to_it() {
    let base = Bench::new();
    let old = side(&base);
    let (mut moved, mut untold) = (0, Vec::new());
    for (name, edit) in corpus() {
        let bench = Bench::edited(&edit);
        let new = side(&bench);
        let there = compare(&old, &new, &Noise::default());
        assert_mirrored(&there, &compare(&new, &old, &Noise::default()), &name);
        assert!(compare(&new, &side(&bench), &Noise::default()).is_empty(), "{name}");
        for hop in there.hops.iter().filter(|hop| !matches!(hop.outcome, Outcome::New | Outcome::NewAndFails)) {
            for change in hop.quantities.iter().chain(&hop.others) {
                // A tile that is there or not is no field; the text says that nothing written explains it.
                let tile = name.starts_with("terrain-tile-missing");
                if !tile && change.causes.is_empty() {
                    untold.push(format!("{name}: nothing behind {}", change.key));
                }
                moved += 1;
            }
            let said = hop.findings.iter().any(|finding| finding.status != Status::Existing);
            if said && hop.causes.is_empty() && !name.starts_with("terrain-tile-missing") {
                untold.push(format!("{name}: nothing behind its findings"));
            }
        }
        // What a crew found is no part of the design, and not compared.
        let of_record = ALL.iter().any(|entry| entry.rule.family == "record" && name.starts_with(entry.rule.name));
        if name.contains("/bad") && !of_record {
            assert!(!there.is_empty(), "{name} breaks a rule and changes nothing");
        }
    }
    assert!(untold.is_empty(), "{}", untold.join("\n"));
    assert!(moved > 1000, "the corpus moves {moved} lines");
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_two_states_mirror(
        powers in prop::array::uniform2(-5..30_i32),
        heights in prop::array::uniform2(4..30_u8),
        gains in prop::array::uniform2(38..52_u8),
        lengths in prop::array::uniform2(5..120_u8),
        renamed in prop::bool::ANY,
    ) {
        let [old, new] = [0, 1].map(|state| {
            let bench = with("hops/ridge.yaml", "transmit_power: 10 dBm", &format!("transmit_power: {}.0 dBm", powers[state]));
            let height = format!("# moved\n    height: {} m", heights[state]);
            rewrite(&bench, "hops/ridge.yaml", |text| text.replace("height: 21 m", &height));
            let length = format!("outdoor: {} m # so long", lengths[state]);
            rewrite(&bench, "hops/ridge.yaml", |text| text.replace("outdoor: 25 m", &length));
            let gain = format!("gain: {}.00 dBi", gains[state]);
            rewrite(&bench, "equipment/mounting.yaml", |text| text.replace("gain: 44.5 dBi", &gain));
            if renamed && state == 1 {
                fs::rename(bench.path("hops/ridge.yaml"), bench.path("ridge.yaml")).expect("moved");
            }
            side(&bench)
        });
        let there = compare(&old, &new, &Noise::default());
        assert_mirrored(&there, &compare(&new, &old, &Noise::default()), "two states");
        let [before, after] = [&old, &new].map(|side| side.hops()[0].fails());
        for hop in &there.hops {
            let expected = match (before, after) {
                (false, true) => Outcome::NowFails,
                (true, false) => Outcome::NowPasses,
                (true, true) => Outcome::StillFails,
                (false, false) => Outcome::NoError,
            };
            prop_assert_eq!(plain(hop.outcome), expected);
        }
        prop_assert_eq!(there.regresses(), after && there.hops.iter().any(HopChange::regresses));
    }
}

// Matching

#[test]
fn moved_files_and_rewritten_text_are_no_change() {
    let base = Bench::new();
    let bench = Bench::new();
    let hop = fs::read_to_string(bench.path("hops/ridge.yaml")).expect("there");
    fs::remove_file(bench.path("hops/ridge.yaml")).expect("removed");
    let written = hop.replace("height: 8 m", "height: 8.0 m # as surveyed").replace("10 dBm", "10 mW");
    fs::write(bench.path("sites/all.yaml"), format!("# moved\n\n{written}")).expect("written");
    let same = between(&base, &bench);
    assert!(same.is_empty(), "{}", text(&same, 80, true));
    assert_eq!((same.summary.unchanged, same.edits.len()), (1, 2), "what is written otherwise is an edit all the same");
}

#[test]
fn a_renamed_hop_is_renamed_and_neither_new_nor_gone() {
    let renamed = with("hops/ridge.yaml", "id: ridge", "id: crest");
    let comparison = between(&Bench::new(), &renamed);
    let [hop] = comparison.hops.as_slice() else { panic!("one hop: {comparison:#?}") };
    assert_eq!(
        (hop.outcome, hop.renamed_from.as_deref(), hop.hop.as_str()),
        (Outcome::Renamed, Some("ridge"), "crest")
    );
    assert!(!comparison.regresses() && comparison.summary.hops == 1);
    // Moved as well: then it is another hop.
    rewrite(&renamed, "hops/ridge.yaml", |text| text.replace("height: 8 m", "height: 14 m"));
    let outcomes: Vec<Outcome> = between(&Bench::new(), &renamed).hops.iter().map(|hop| hop.outcome).collect();
    assert_eq!(outcomes.len(), 2);
    assert!(outcomes.contains(&Outcome::Removed));
}

#[test]
fn what_cannot_be_computed_is_neither_new_nor_gone() {
    let base = Bench::new();
    let broken = [
        with("hops/ridge.yaml", "kind: hop", "kind: hop\n  oops: ["),
        with("hops/ridge.yaml", "id: ridge", "id: [ridge"),
        with("hops/ridge.yaml", "radio: q-80", "radio: q-81"),
        with("sites/scar.yaml", "id: scar", "id: scar-of-old"),
    ];
    for bench in &broken {
        let there = between(&base, bench);
        let [hop] = there.hops.as_slice() else { panic!("one hop: {there:#?}") };
        assert_eq!(hop.outcome, Outcome::NotJudged);
        assert!(hop.not_computed[1].as_ref().is_some_and(|why| !why.is_empty()) && there.regresses());
        let back = between(bench, &base);
        assert_eq!(back.hops[0].outcome, Outcome::JudgedAgain);
        assert!(!back.regresses());
        let neither = between(bench, bench);
        assert!(neither.is_empty(), "{neither:#?}");
    }
    fs::write(broken[0].path("hops/ridge.yaml"), b"kind: hop\nid: \xff\n").expect("written");
    let there = between(&base, &broken[0]);
    assert_eq!(there.hops[0].outcome, Outcome::NotJudged, "a file that is not UTF-8");
}

#[test]
fn a_run_put_in_first_is_no_change_to_the_others() {
    let run = "runs:\n      - { port: spare, carries: [data], cable: out-6a, outdoor: 10 m }\n      - port: fast";
    let comparison = between(&Bench::new(), &with("hops/ridge.yaml", "runs:\n      - port: fast", run));
    let keys =
        comparison.hops.iter().flat_map(|hop| hop.quantities.iter().chain(&hop.others)).map(|change| &change.key);
    for key in keys {
        assert!(!key.contains("runs[fast]") && !key.contains("runs[dc]"), "{key}");
    }
}

// Causes

#[test]
fn a_reference_led_elsewhere_is_the_cause_of_what_it_brings() {
    let other = with("hops/ridge.yaml", "antenna: dish-60", "antenna: dish-30");
    let comparison = between(&Bench::new(), &other);
    let hop = &comparison.hops[0];
    let gain = hop.others.iter().find(|change| change.key == "a_to_b.transmit_gain").expect("it changes");
    let cause = &hop.causes[gain.causes[0]];
    assert_eq!((cause.route.as_str(), cause.line), ("ends.a.antenna", 17));
    assert_eq!((cause.before.as_deref(), cause.after.as_deref()), (Some("dish-60"), Some("dish-30")));
}

#[test]
fn a_cause_is_the_field_itself_and_says_what_sort_of_document_it_is_in() {
    let bench = with("network.yaml", "rain_rate: 22 mm/h", "rain_rate: 42 mm/h");
    rewrite(&bench, "sites/scar.yaml", |text| text.replacen("54.3", "54.301", 1));
    rewrite(&bench, "equipment/mounting.yaml", |text| text.replace("gain: 50.5 dBi", "gain: 50.0 dBi"));
    let comparison = between(&Bench::new(), &bench);
    let edits: Vec<(&str, &str)> =
        comparison.edits.iter().map(|edit| (edit.class.word(), edit.route.as_str())).collect();
    assert_eq!(edits, [("catalogue", "gain"), ("network", "climate.rain_rate"), ("design", "position.latitude")]);
    let hop = &comparison.hops[0];
    let behind = |key: &str| -> Vec<&str> {
        let change = hop.others.iter().chain(&hop.quantities).find(|change| change.key == key).expect(key);
        change.causes.iter().map(|cause| hop.causes[*cause].route.as_str()).collect()
    };
    assert_eq!(behind("path.rain_rate"), ["climate.rain_rate"]);
    assert_eq!(behind("a_to_b.transmit_gain"), ["gain"]);
    assert_eq!(behind("path.distance"), ["position.latitude"]);
    assert_eq!(behind("a_to_b.level"), ["gain", "position.latitude"]);
}

// Thresholds and order

#[test]
fn small_changes_are_counted_and_a_turned_verdict_is_always_shown() {
    let base = Bench::new();
    let near = with("hops/ridge.yaml", "height: 8 m", "height: 8.01 m");
    let small = between(&base, &near);
    assert_eq!((small.summary.small, small.hops.len()), (1, 0));
    assert!(small.summary.verdict().contains("1 by less than is shown"), "{}", small.summary.verdict());
    let fine: Threshold = "m=0.001".parse().expect("a threshold");
    let shown = compare(&side(&base), &side(&near), &Noise::new(vec![fine]));
    assert_eq!((shown.summary.small, shown.hops.len()), (0, 1));

    // 19.99 dB is 0.01 dB short of 20 dB and 0.02 dB from where it was: the level stays where it is, the limit moves.
    let at = |limit: &str| with("network.yaml", "fade_margin: 20 dB", &format!("fade_margin: {limit}"));
    let turned = between(&at("29.80 dB"), &at("29.81 dB"));
    let hop = &turned.hops[0];
    assert_eq!(hop.outcome, Outcome::NowFails);
    assert!(hop.quantities.iter().any(|change| change.key == "a_to_b.margins.fade_margin" && change.turns()));
}

#[test]
fn the_worst_comes_first() {
    let many = |edits: [(&str, &str); 5]| {
        let bench = Bench::new();
        // So many antennas in one place are wrong whatever they send.
        bench.change("network.yaml", "clearance-not-shown: off", "clearance-not-shown: off, antennas-collide: off");
        let hop = fs::read_to_string(bench.path("hops/ridge.yaml")).expect("there");
        for ((name, power), channel) in edits.into_iter().zip(1_u8..) {
            // Each on a channel of its own: between the same supports they would drown each other.
            let centre = |lower: f64| lower + 0.5 * f64::from(channel);
            let text = hop
                .replace("id: ridge", &format!("id: {name}"))
                .replace("10 dBm", power)
                .replace("73.375", &format!("{:.3}", if channel < 4 { centre(70.875) } else { centre(72.375) }))
                .replace("83.375", &format!("{:.3}", if channel < 4 { centre(80.875) } else { centre(82.375) }));
            fs::write(bench.path(&format!("hops/{name}.yaml")), text).expect("written");
        }
        bench
    };
    let old = many([
        ("a-gains", "8 dBm"),
        ("b-loses", "9 dBm"),
        ("c-mends", "-9 dBm"),
        ("d-loses-more", "9 dBm"),
        ("e-fails", "9 dBm"),
    ]);
    let new = many([
        ("a-gains", "9 dBm"),
        ("b-loses", "8 dBm"),
        ("c-mends", "9 dBm"),
        ("d-loses-more", "7 dBm"),
        ("e-fails", "-9 dBm"),
    ]);
    let comparison = between(&old, &new);
    let order: Vec<&str> = comparison.hops.iter().map(|hop| hop.hop.as_str()).collect();
    // Fewer decibels are more distance to overload: what gains margin also loses some.
    assert_eq!((order[0], order.last()), ("e-fails", Some(&"c-mends")), "{order:?}");
    let at = |name: &str| order.iter().position(|hop| *hop == name).expect("it changes");
    assert!(at("d-loses-more") < at("b-loses"), "{order:?}");
    assert_eq!(comparison.summary.of(Outcome::NoError), 3);
    assert!(comparison.summary.verdict().starts_with("5 of 6 hops change: 1 now fails, 3 without error, 1 now passes"));
}

// Forms

/// A change with a bit of everything.
fn mixed() -> [Bench; 2] {
    let old = Bench::new();
    let new = with("hops/ridge.yaml", "transmit_power: 10 dBm", "transmit_power: -5 dBm");
    rewrite(&new, "hops/ridge.yaml", |text| text.replace("conductor: 16 mm2", "conductor: 10 mm2"));
    rewrite(&new, "equipment/power.yaml", |text| text.replacen("46 V", "44 V", 1));
    for (bench, name) in [(&old, "old-spur"), (&new, "new-spur")] {
        let hop = fs::read_to_string(Bench::new().path("hops/ridge.yaml")).expect("there");
        let hop = hop
            .replace("id: ridge", &format!("id: {name}"))
            .replace("73.375", "74.375")
            .replace("83.375", "84.375")
            .replace("height: 8 m", "height: 6.8 m")
            .replace("height: 21 m", if name == "old-spur" { "height: 22 m" } else { "height: 23 m" });
        fs::write(bench.path(&format!("hops/{name}.yaml")), hop).expect("written");
    }
    [old, new]
}

fn comment() -> Comment {
    Comment { budget: 60_000, key: "base".into(), whole: "compare.json".into(), link_base: None }
}

/// JSON with the first two of every list, and how many more there are: the others are of the same shape.
fn with_short_lists(text: &str) -> String {
    fn cut(value: &mut serde_json::Value) {
        match value {
            serde_json::Value::Array(list) => {
                let more = list.len().saturating_sub(2);
                list.truncate(2);
                list.iter_mut().for_each(cut);
                list.extend((more > 0).then(|| format!("and {more} more").into()));
            }
            serde_json::Value::Object(map) => map.values_mut().for_each(cut),
            _ => {}
        }
    }
    let mut value = serde_json::from_str(text).expect("JSON");
    cut(&mut value);
    serde_json::to_string_pretty(&value).expect("JSON")
}

#[test]
fn each_form_is_as_it_was_accepted() {
    let [old, new] = mixed();
    let folder = tempfile::tempdir().expect("a temporary folder");
    copy(&old.path(""), &folder.path().join("old"));
    copy(&new.path(""), &folder.path().join("new"));
    for form in ["text", "markdown", "json"] {
        let shown = run(folder.path(), &["old", "new", "--format", form]);
        assert_eq!((shown.code, shown.err.as_str()), (0, ""));
        let readable = if form == "json" { with_short_lists(&shown.out) } else { shown.out };
        snapshot(form, &readable);
    }
    let all = run(folder.path(), &["old", "new", "--all"]).out;
    assert_eq!(all.lines().find(|line| line.chars().count() > 80), None);
    assert!(all.lines().count() > run(folder.path(), &["old", "new"]).out.lines().count() + 30);
    let value: serde_json::Value = serde_json::from_str(&json(&between(&old, &new))).expect("JSON");
    assert_eq!((value["format_version"].as_u64(), value["regression"].as_bool()), (Some(2), Some(true)));
}

#[test]
fn a_comment_without_changes_says_so_and_keeps_its_mark() {
    let base = Bench::new();
    let told = markdown(&between(&base, &base), &comment());
    assert_eq!(told, "**no computed change: 1 hop unchanged**\n\n<!-- hopwright:compare:base -->\n");
}

#[test]
fn text_of_a_spec_breaks_no_comment() {
    let hostile = "\"| @crew `x` <img src=x onerror=y> #12 [a](http://b) <!-- hopwright:compare:base -->\"";
    let old = with("hops/ridge.yaml", "id: ridge", &format!("id: ridge\ntitle: {hostile}"));
    let new = with("hops/ridge.yaml", "transmit_power: 10 dBm", "transmit_power: -5 dBm");
    rewrite(&new, "hops/ridge.yaml", |text| {
        text.replace("id: ridge", &format!("id: ridge\ntitle: {}", hostile.replace("crew", "team")))
    });
    rewrite(&new, "hops/ridge.yaml", |text| text.replace("bonds_to: ring", "bonds_to: ring # |"));
    let sheet = with("equipment/radio.yaml", "title: ", "title: QQ ");
    for told in [markdown(&between(&old, &new), &comment()), markdown(&between(&old, &sheet), &comment())] {
        let mark = "<!-- hopwright:compare:base -->";
        assert_eq!((told.matches(mark).count(), told.lines().last()), (1, Some(mark)));
        for word in ["@crew", "@team", "<img", "`x`", " #12"] {
            assert!(!told.contains(word), "{word} in {told}");
        }
        let columns = |line: &str| line.replace("\\|", "").matches('|').count();
        let mut rows = told.lines().filter(|line| line.starts_with('|'));
        assert!(rows.all(|row| [4, 7].contains(&columns(row))), "{told}");
    }
}

/// The base network with a thousand hops more, all with this grounding conductor and too far apart to hear each other.
fn thousand(conductor: &str) -> Bench {
    let bench = Bench::new();
    let read = |file: &str| fs::read_to_string(bench.path(file)).expect("there");
    let (hop, scar, mill) = (read("hops/ridge.yaml"), read("sites/scar.yaml"), read("sites/mill.yaml"));
    for file in 0..10_u32 {
        let mut text = String::new();
        for number in 0..100_usize {
            let one = hop
                .replace("id: ridge", &format!("id: spur-{file}{number:02}"))
                .replace("conductor: 16 mm2", conductor)
                .replace("site: scar", &format!("site: scar-{file}{number:02}"))
                .replace("site: mill", &format!("site: mill-{file}{number:02}"));
            let _ = write!(text, "---\n{one}\n");
            // Two degrees of latitude or three and a half of longitude lie between them, all around the world.
            let south = [-2.0, 2.0, 4.0, 6.0, 8.0, 10.0, 12.0, 14.0, 16.0, 18.0][number % 10];
            let east = f64::from(10 * file + u32::try_from(number / 10).expect("below ten")) * 3.5;
            let around = |longitude: f64| (longitude + east + 180.0).rem_euclid(360.0) - 180.0;
            for (site, name, latitude, longitude) in [(&scar, "scar", 54.30, -32.20), (&mill, "mill", 54.32, -32.17)] {
                let there = site
                    .replace(&format!("id: {name}"), &format!("id: {name}-{file}{number:02}"))
                    .replace(&format!("latitude: {latitude:.6}"), &format!("latitude: {:.6}", latitude - south))
                    .replace(&format!("longitude: {longitude:.6}"), &format!("longitude: {:.6}", around(longitude)));
                assert_ne!(&there, site);
                let _ = write!(text, "---\n{there}\n");
            }
        }
        fs::write(bench.path(&format!("hops/spurs-{file}.yaml")), text).expect("written");
    }
    bench
}

#[test]
fn a_comment_on_a_thousand_hops_keeps_to_its_room() {
    let comparison = between(&thousand("conductor: 25 mm2"), &thousand("conductor: 6 mm2"));
    assert_eq!(comparison.summary.of(Outcome::NowFails), 1000);
    for budget in [2_000, 10_000, 60_000] {
        let told = markdown(&comparison, &Comment { budget, ..comment() });
        let length = told.chars().count();
        assert!(length <= budget, "{length} of {budget}");
        assert!(length * 2 > budget, "{length} of {budget}: there is room for more");
        assert!(told.starts_with("**1000 of 1001 hops change: 1000 now fail; 1 unchanged**\n"), "{told}");
        assert_eq!(told.lines().last(), Some("<!-- hopwright:compare:base -->"));
        assert_eq!(told.matches("<details>").count(), told.matches("</details>").count());
        let shown = told.matches("\n### ").count();
        assert!(told.contains(&format!("{} more changes are left out", 1000 - shown)), "{told}");
        assert!(told.contains("Failing or not judged now: "), "{told}");
        assert!(told.contains("compare.json has everything"), "{told}");
    }
    let value: serde_json::Value = serde_json::from_str(&json(&comparison)).expect("JSON");
    assert_eq!(value["hops"].as_array().map(Vec::len), Some(1000), "nothing is cut for machines");
}

#[test]
fn one_edit_that_changes_a_thousand_hops_is_told_once() {
    let (old, new) = (thousand("conductor: 16 mm2"), thousand("conductor: 16 mm2"));
    rewrite(&new, "equipment/mounting.yaml", |text| text.replace("gain: 50.5 dBi", "gain: 49.5 dBi"));
    let comparison = between(&old, &new);
    let [group] = comparison.groups.as_slice() else { panic!("{} groups", comparison.groups.len()) };
    assert_eq!((group.hops.len(), comparison.hops.len(), group.causes.len()), (1001, 1001, 1));
    let margin = group.ranges.iter().find(|range| range.name.contains("fade margin")).expect("a margin");
    assert!(margin.change.iter().all(|by| (by + 1.0).abs() < 1e-6) && margin.least.is_some(), "{margin:?}");
    let told = text(&comparison, 80, false);
    assert!(told.lines().count() <= 120, "{}", told.lines().count());
    assert!(told.contains("gain: 50.5 dBi → 49.5 dBi") && told.contains("1001 hops: "), "{told}");
    assert!(told.contains("-1.0 dB each"), "{told}");
    assert!(text(&comparison, 80, true).lines().count() > 5000, "everything is to be had");
    let note = markdown(&comparison, &comment());
    assert!(note.chars().count() < 9000 && !note.contains("left out"), "{note}");
    let written = json(&comparison);
    assert!(written.len() < 10_000 * 1001, "{} bytes a hop", written.len() / 1001);
    let value: serde_json::Value = serde_json::from_str(&written).expect("JSON");
    assert_eq!(value["groups"][0]["hops"].as_array().map(Vec::len), Some(1001));
    let schema: serde_json::Value = serde_json::from_str(&hopwright::compare::comparison_schema()).expect("JSON");
    let validator = jsonschema::validator_for(&schema).expect("a schema");
    let faults: Vec<String> = validator.iter_errors(&value).map(|error| error.to_string()).take(3).collect();
    assert!(faults.is_empty(), "{faults:?}");
}

#[test]
fn many_changes_of_many_reasons_fit_a_screen_or_two() {
    let told = text(&between(&thousand("conductor: 25 mm2"), &thousand("conductor: 6 mm2")), 80, false);
    assert!(told.lines().count() <= 140, "{}", told.lines().count());
    assert!(
        told.contains("failing or not judged now: ") && told.contains("more hops change (`--all` tells each)"),
        "{told}"
    );
}

#[test]
fn the_readme_shows_what_the_program_prints() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let folder = tempfile::tempdir().expect("a temporary folder");
    for name in ["as-agreed", "varneck"] {
        copy(&root.join("examples/varneck"), &folder.path().join(name));
    }
    let hop = folder.path().join("varneck/hops/exchange-murrgrat.yaml");
    let text = fs::read_to_string(&hop).expect("there").replacen("orientation: inverted", "orientation: upright", 1);
    fs::write(&hop, text).expect("written");
    let shown = run(folder.path(), &["as-agreed", "varneck"]).out;
    let readme = fs::read_to_string(root.join("README.md")).expect("there");
    assert!(readme.contains(&format!("```text\n{shown}```\n")), "{shown}");
}

/// The three texts of a rain map with one rate everywhere.
fn map(bench: &Bench, rate: &str) {
    let rows: Vec<(f64, f64)> =
        [56.0, 54.0, 52.0].iter().flat_map(|lat| [-34.0, -32.0, -30.0].map(|lon| (*lat, lon))).collect();
    let text = |of: &dyn Fn(&(f64, f64)) -> String| -> String {
        rows.chunks(3).map(|row| row.iter().map(of).collect::<Vec<_>>().join(" ") + "\n").collect()
    };
    let folder = bench.path("map");
    fs::create_dir(&folder).expect("made");
    for (name, text) in [
        ("R001.TXT", text(&|_| rate.to_owned())),
        ("Lat_R001.TXT", text(&|(lat, _)| lat.to_string())),
        ("Lon_R001.TXT", text(&|(_, lon)| lon.to_string())),
    ] {
        fs::write(folder.join(name), text).expect("written");
    }
    rewrite(bench, "network.yaml", |text| text.replace("rain_rate: 22 mm/h", "rain_map: map"));
}

#[test]
fn a_change_that_no_field_explains_is_not_blamed_on_one() {
    let [old, new] = [Bench::new(), Bench::new()];
    map(&old, "22");
    map(&new, "42");
    let comparison = between(&old, &new);
    let rate = comparison.hops[0].others.iter().find(|change| change.key == "path.rain_rate").expect("it changes");
    assert!(rate.causes.is_empty() && comparison.edits.is_empty());
    assert!(text(&comparison, 80, false).contains("[?] unknown: no edited field is among its inputs"));
    assert!(markdown(&comparison, &comment()).contains("?: unknown"));
}

// The program

fn program(folder: &Path, args: &[&str]) -> Command {
    program::program(folder, &[&["compare"], args].concat())
}

fn run(folder: &Path, args: &[&str]) -> Ran {
    finish(program(folder, args))
}

/// A repository with the base network in a folder of it: `main` moves on after `work` has left it.
fn repository() -> tempfile::TempDir {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let root = folder.path();
    git(root, &["init", "-q", "-b", "main"]);
    copy(&tests_folder().join("rules/base"), &root.join("net"));
    fs::write(root.join("README"), "not ours\n").expect("written");
    git(root, &["add", "."]);
    git(root, &["commit", "-qm", "base"]);
    git(root, &["switch", "-qc", "work"]);
    edit(root, "height: 8 m", "height: 9.5 m");
    git(root, &["commit", "-qam", "higher"]);
    git(root, &["switch", "-q", "main"]);
    edit(root, "transmit_power: 12 dBm", "transmit_power: 13 dBm");
    git(root, &["commit", "-qam", "more power"]);
    git(root, &["switch", "-q", "work"]);
    folder
}

fn edit(root: &Path, old: &str, new: &str) {
    let path = root.join("net/hops/ridge.yaml");
    let text = fs::read_to_string(&path).expect("there");
    assert!(text.contains(old));
    fs::write(path, text.replace(old, new)).expect("written");
}

fn edited_fields(out: &str) -> Vec<String> {
    let value: serde_json::Value = serde_json::from_str(out).expect("JSON");
    let list = value["edits"].as_array().expect("a list");
    list.iter().map(|edit| edit["field"].as_str().expect("text").to_owned()).collect()
}

#[test]
fn a_base_is_where_the_branch_was_started() {
    let folder = repository();
    let net = folder.path().join("net");
    let before = git(folder.path(), &["status", "--porcelain"]);
    // The working tree counts, committed or not.
    edit(folder.path(), "transmit_power: 10 dBm", "transmit_power: 11 dBm");
    let here = run(&net, &["--base", "main", "--format", "json"]);
    assert_eq!((here.code, here.err.as_str()), (0, ""));
    assert_eq!(edited_fields(&here.out), ["ends.a.height", "ends.a.transmit_power"], "main's own change is not ours");
    let deep = run(&net.join("hops"), &["--base", "main", "--format", "json"]);
    assert_eq!(edited_fields(&deep.out), ["ends.a.height", "ends.a.transmit_power"]);
    let root = run(folder.path(), &["--base", "main", "--network", "net"]);
    assert!(root.out.contains("net/hops/ridge.yaml:14 ends.a.height: 8 m → 9.5 m"), "{}", root.out);

    let tip = run(&net, &["main", "--format", "json"]);
    assert_eq!(edited_fields(&tip.out), ["ends.a.height", "ends.a.transmit_power", "ends.b.transmit_power"]);
    let two = run(&net, &["main", "work", "--format", "json"]);
    assert_eq!(edited_fields(&two.out), ["ends.a.height", "ends.b.transmit_power"]);
    assert_eq!(run(&net, &["HEAD", "work"]).out.lines().count(), 1);
    // A folder against a revision.
    let mixed = run(&net, &["main", ".", "--format", "json"]);
    assert_eq!(edited_fields(&mixed.out).len(), 3);
    git(folder.path(), &["checkout", "-q", "--", "net"]);
    assert_eq!(git(folder.path(), &["status", "--porcelain"]), before, "no checkout was touched");
    assert_eq!(git(folder.path(), &["branch", "--show-current"]), "work");
}

#[test]
fn a_revision_without_the_network_and_files_of_every_sort_are_read() {
    let folder = repository();
    let root = folder.path();
    fs::create_dir(root.join("more")).expect("made");
    copy(&tests_folder().join("rules/base"), &root.join("more"));
    let new = run(&root.join("more"), &["HEAD"]);
    assert_eq!(new.code, 0);
    assert!(new.err.contains("has no YAML files in revision HEAD"), "{}", new.err);
    assert!(new.out.starts_with("1 of 1 hop changes: 1 new; 0 unchanged\n"), "{}", new.out);

    // Links are followed among the files of the revision, hidden files and what is no text are not specifications.
    let net = root.join("net");
    fs::create_dir(net.join(".hidden")).expect("made");
    fs::write(net.join(".hidden/x.yaml"), "kind: nonsense\n").expect("written");
    fs::write(net.join("notes.bin"), [0, 255, 7]).expect("written");
    fs::rename(net.join("hops/ridge.yaml"), net.join("ridge.txt")).expect("moved");
    #[cfg(unix)]
    std::os::unix::fs::symlink("../ridge.txt", net.join("hops/ridge.yaml")).expect("linked");
    git(root, &["add", "-A", "net"]);
    git(root, &["commit", "-qm", "a link"]);
    let same = run(&net, &["HEAD"]);
    assert_eq!((same.code, same.out.as_str()), (0, "no computed change: 1 hop unchanged\n"), "{}", same.err);
}

#[test]
fn what_git_cannot_give_is_said() {
    let folder = repository();
    let net = folder.path().join("net");
    let refused = |ran: Ran, words: &str| {
        assert_eq!((ran.code, ran.out.as_str()), (2, ""), "{}", ran.err);
        assert!(ran.err.contains(words), "{}", ran.err);
    };
    refused(run(&net, &["no-such-branch"]), "there is no revision `no-such-branch` here");
    refused(run(&net, &["--base", "no-such-branch"]), "there is no revision `no-such-branch` here");
    refused(run(&net, &["--base=--output=x"]), "there is no revision `--output=x` here");
    refused(run(&net, &["hops/ridge.yaml"]), "is a file");
    refused(run(&net, &[]), "required");

    let mut without = program(&net, &["--base", "main"]);
    without.env("PATH", folder.path());
    refused(finish(without), "takes the `git` command");

    let outside = tempfile::tempdir().expect("a temporary folder");
    copy(&tests_folder().join("rules/base"), outside.path());
    let mut alone = program(outside.path(), &["HEAD"]);
    alone.env("GIT_CEILING_DIRECTORIES", outside.path().parent().expect("a parent"));
    refused(finish(alone), "is in no git repository");

    git(folder.path(), &["branch", "hops", "main"]);
    refused(run(&net, &["hops"]), "is a folder and a revision");
}

#[test]
fn a_shallow_clone_says_what_it_lacks_and_works_with_what_it_has() {
    let folder = repository();
    let clone = tempfile::tempdir().expect("a temporary folder");
    let from = format!("file://{}", folder.path().display());
    git(clone.path(), &["clone", "-q", "--depth", "1", "--branch", "work", &from, "shallow"]);
    let net = clone.path().join("shallow/net");
    let whole = git(folder.path(), &["rev-parse", "main"]);
    let lacks = run(&net, &[&whole]);
    assert_eq!(lacks.code, 2);
    assert!(lacks.err.contains("this clone is shallow, run `git fetch --unshallow` first"), "{}", lacks.err);
    git(&clone.path().join("shallow"), &["fetch", "-q", "--depth", "1", "origin", "main"]);
    let base = run(&net, &["--base", "FETCH_HEAD"]);
    assert_eq!(base.code, 2);
    assert!(base.err.contains("no common ancestor here: this clone is shallow"), "{}", base.err);
    let tip = run(&net, &["FETCH_HEAD", "--format", "json"]);
    assert_eq!(edited_fields(&tip.out), ["ends.a.height", "ends.b.transmit_power"]);
    assert_eq!(run(&net, &["HEAD"]).out, "no computed change: 1 hop unchanged\n");
}

#[test]
fn the_exit_code_is_what_was_asked_for() {
    let [old, new] = mixed();
    let paths = [old.path(""), new.path("")].map(|path| path.display().to_string());
    let [old_path, new_path] = paths.each_ref().map(String::as_str);
    let code = |args: &[&str]| run(&tests_folder(), args).code;
    assert_eq!(code(&[old_path, new_path]), 0);
    assert_eq!(code(&[old_path, new_path, "--fail-on", "regression"]), 1);
    assert_eq!(code(&[old_path, new_path, "--fail-on", "any"]), 1);
    assert_eq!(code(&[old_path, old_path, "--fail-on", "any"]), 0);
    let better = with("hops/ridge.yaml", "transmit_power: 10 dBm", "transmit_power: 9 dBm");
    let better = better.path("").display().to_string();
    let base = Bench::new();
    let base_path = base.path("").display().to_string();
    assert_eq!(code(&[&base_path, &better, "--fail-on", "regression"]), 0);
    assert_eq!(code(&[&base_path, &better, "--fail-on", "any"]), 1);
    assert_eq!(code(&[old_path, "no/such/folder"]), 2);
    assert_eq!(code(&[old_path, new_path, "--threshold", "dB"]), 2);
    assert_eq!(code(&[old_path, new_path, "--key", "a--b"]), 2);
    let empty = tempfile::tempdir().expect("a temporary folder");
    fs::create_dir(empty.path().join(".git")).expect("made");
    let empty_path = empty.path().display().to_string();
    assert_eq!(code(&[&empty_path, &empty_path]), 3);

    let files = ["markdown", "json", "text"].map(|form| (form, empty.path().join(form)));
    let outputs: Vec<String> = files.iter().map(|(form, file)| format!("{form}={}", file.display())).collect();
    let mut args = vec![old_path, new_path];
    for output in &outputs {
        args.extend(["--output", output]);
    }
    let shown = run(&tests_folder(), &args);
    assert_eq!(fs::read_to_string(&files[2].1).expect("written"), shown.out);
    assert!(fs::read_to_string(&files[0].1).expect("written").ends_with("<!-- hopwright:compare:fellmoor -->\n"));
    let written = fs::read_to_string(&files[1].1).expect("written");
    assert!(serde_json::from_str::<serde_json::Value>(&written).is_ok());
}
