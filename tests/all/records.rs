//! Records: the prediction made again for the day of a visit, the form that `new record` writes, and what is judged of both.

use std::collections::HashMap;
use std::fmt::Write as _;
use std::fs;
use std::path::Path;

use crate::fixture::{Bench, copy};
use hopwright::network::Scope;
use hopwright::pack::Form;
use hopwright::sheet::HopSheet;
use hopwright::spec::{EndName, Way};
use hopwright::verdict::evaluate;

/// A record of end `a` with this weather and these lines.
fn record(id: &str, more: &str) -> String {
    format!("kind: record\nid: {id}\nhop: ridge\nend: a\n{more}\n")
}

fn with_record(more: &str) -> Bench {
    let bench = Bench::new();
    put(&bench, "records/a.yaml", &record("ridge-a-1", more));
    bench
}

fn put(bench: &Bench, file: &str, text: &str) {
    let path = bench.path(file);
    fs::create_dir_all(path.parent().expect("inside")).expect("writable");
    fs::write(path, text).expect("writable");
}

fn replace(bench: &Bench, file: &str, old: &str, new: &str) {
    let path = bench.path(file);
    let text = fs::read_to_string(&path).expect("readable");
    assert!(text.contains(old), "{file}: {old}");
    fs::write(path, text.replace(old, new)).expect("writable");
}

/// Something of the only hop.
fn look<R: Send>(bench: &Bench, of: impl Fn(&HopSheet<'_>) -> R + Sync) -> R {
    let mut evaluation = evaluate(&Scope::of(&[bench.path("")]), |sheet, _| of(sheet));
    assert_eq!(evaluation.hops.len(), 1);
    evaluation.hops.remove(0)
}

fn expected(bench: &Bench) -> Option<f64> {
    look(bench, |sheet| sheet.records[0].lines.expected.get().map(|level| level.0))
}

fn rules(bench: &Bench) -> Vec<&'static str> {
    bench.judge().findings.iter().map(|finding| finding.rule.name).collect()
}

#[test]
fn the_air_of_the_day_gives_what_that_air_would_give_the_design() {
    let air = "temperature: 27 °C, pressure: 941 hPa, humidity: 88 %";
    let day = expected(&with_record(&format!("weather: {{ sky: dry, {air} }}"))).expect("a level");
    let design = Bench::new();
    replace(&design, "network.yaml", "  hottest_air: 35 °C", &format!("  hottest_air: 35 °C\n  air: {{ {air} }}"));
    let there = look(&design, |sheet| sheet.directions[Way::BToA].lines.level.get().expect("a level").0);
    assert_eq!(day.to_bits(), there.to_bits(), "the same functions on the same air");
    let dry = expected(&with_record("weather: { sky: dry }")).expect("a level");
    assert!(dry - day > 0.1, "warm wet air takes more than the reference: {dry} and {day}");
}

/// Independent computation of ITU-R P.838-3, equations (1) to (5) with Tables 1 to 4, in double precision: 83.375 GHz,
/// vertical, elevation 9.3486°, 5 mm/h: 3.707614 dB/km, over 3.0012744 km 11.127566 dB.
#[test]
fn rain_is_taken_along_the_whole_path_and_wets_both_covers() {
    let dry = expected(&with_record("weather: { sky: dry }")).expect("a level");
    let wet = with_record("weather: { sky: rain, rain_rate: 5 mm/h }");
    let rain = expected(&wet).expect("a level");
    assert!((dry - rain - 11.127_566).abs() < 5e-6, "{}", dry - rain);
    replace(&wet, "equipment/mounting.yaml", "gain: 50.5 dBi", "gain: 50.5 dBi\nwet_loss: 1.5 dB");
    replace(&wet, "equipment/mounting.yaml", "gain: 44.5 dBi", "gain: 44.5 dBi\nwet_loss: 2.25 dB");
    let covers = rain - expected(&wet).expect("a level");
    assert!((covers - 3.75).abs() < 1e-9, "{covers}");
}

#[test]
fn a_level_in_weather_nobody_measured_is_not_judged() {
    for sky in ["rain", "snow", "fog"] {
        let bench = with_record(&format!("weather: {{ sky: {sky} }}\nafter_locking: {{ meter: 0.8 V }}"));
        assert_eq!(expected(&bench), None, "{sky}");
        assert!(!rules(&bench).contains(&"level-found-outside-window"), "{sky}");
        assert!(rules(&bench).contains(&"read-in-wet-air"), "{sky}");
    }
}

#[test]
fn only_the_newest_record_of_an_end_and_open_forms_are_judged() {
    let bench = Bench::new();
    let wrong = "after_locking: { meter: 0.8 V }";
    put(&bench, "records/1.yaml", &record("ridge-a-1", &format!("date: 2026-06-01\n{wrong}")));
    assert!(rules(&bench).contains(&"level-found-outside-window"));
    put(&bench, "records/2.yaml", &record("ridge-a-2", "date: 2026-06-20\nafter_locking: { meter: 0.342 V }"));
    assert!(!rules(&bench).contains(&"level-found-outside-window"), "what was mended on a later visit is history");
    let newest = look(&bench, |sheet| sheet.newest_record(EndName::A).map(|record| record.document.id.to_string()));
    assert_eq!(newest.as_deref(), Some("ridge-a-2"));
    put(&bench, "records/3.yaml", &record("ridge-a-3", wrong));
    assert!(rules(&bench).contains(&"level-found-outside-window"), "a form without a date is looked at");
    let newest = look(&bench, |sheet| sheet.newest_record(EndName::A).map(|record| record.document.id.to_string()));
    assert_eq!(newest.as_deref(), Some("ridge-a-2"), "and is no acceptance yet");
}

#[test]
fn a_broken_value_in_a_record_leaves_the_rest_judged() {
    let runs = "runs:\n  - { port: main, voltage: 38 V }";
    let bench = with_record(&format!("before_locking: {{ meter: 0.36 V }}\nafter_locking: {{ meter: 3 GHz }}\n{runs}"));
    let found = rules(&bench);
    assert!(found.contains(&"value-not-valid") && found.contains(&"voltage-found-out-of-window"), "{found:?}");
    let wrong = ["moved-on-locking", "level-found-outside-window", "reading-impossible"];
    assert!(!found.iter().any(|rule| wrong.contains(rule)), "{found:?}");
}

/// The forms of every end of an example, with where they would go.
fn forms(folder: &Path) -> Vec<(String, String, String)> {
    let evaluation = evaluate(&Scope::of(&[folder.to_path_buf()]), |sheet, _| {
        [EndName::A, EndName::B].map(|end| Form::of(sheet, end))
    });
    let records = folder.join("records");
    let of = |form: &Form| {
        let (id, _) = form.place(&records);
        let text = form.text(&id, &records, &evaluation.files);
        (form.name(), id, text)
    };
    evaluation.hops.iter().flatten().map(of).collect()
}

#[test]
fn every_form_loads_and_says_once_what_is_open() {
    for example in ["varneck", "saltmere"] {
        let folder = tempfile::tempdir().expect("a folder");
        fs::create_dir(folder.path().join(".git")).expect("writable");
        copy(&Path::new(env!("CARGO_MANIFEST_DIR")).join("examples").join(example), folder.path());
        let _ = fs::remove_dir_all(folder.path().join("records"));
        let forms = forms(folder.path());
        assert_eq!(forms.len(), 10);
        fs::create_dir_all(folder.path().join("records")).expect("writable");
        for (_, id, text) in &forms {
            fs::write(folder.path().join(format!("records/{id}.yaml")), text).expect("writable");
        }
        let evaluation = evaluate(&Scope::of(&[folder.path().to_path_buf()]), |_, _| ());
        let mut counts: HashMap<&str, usize> = HashMap::new();
        for finding in &evaluation.findings {
            *counts.entry(finding.rule.name).or_default() += 1;
        }
        // One of the networks is not approved yet, on purpose.
        counts.remove("title-block-open");
        assert_eq!(counts, HashMap::from([("record-incomplete", 10), ("steps-undone", 10)]));
    }
}

/// What a crew writes at each key.
const FOUND: &[(&str, &str)] = &[
    ("date", "2026-06-20"),
    ("crew", "[Ada Quill]"),
    ("sky", "dry"),
    ("temperature", "8 °C"),
    ("humidity", "70 %"),
    ("pressure", "941 hPa"),
    ("rain_rate", "0 mm/h"),
    ("fog", "0 g/m3"),
    ("title", "Voltmeter 4"),
    ("serial", "\"77-102\""),
    ("calibration_due", "2026-09-30"),
    ("transmit_power", "10 dBm"),
    ("bandwidth", "500 MHz"),
    ("polarisation", "vertical"),
    ("state", "QPSK"),
    ("automatic_power_control", "false"),
    ("meter", "0.345 V"),
    ("level", "-34.5 dBm"),
    ("bearing", "41 deg"),
    ("tilt", "-9.3 deg"),
    ("height", "8 m"),
    ("licence", "FP-112"),
    ("voltage", "48.6 V"),
    ("cable_test", "passed"),
    ("conductor", "16 mm2"),
    ("resistance", "4 ohm"),
    ("method", "clamp"),
    ("rate", "610 Mbit/s"),
    ("errors", "0"),
    ("duration", "15 min"),
    ("radio", "Q8-0012"),
    ("antenna", "H60-31"),
    ("file", "beam.jpg"),
    ("shows", "the mill over the antenna"),
    ("what", "nothing"),
    ("concession", "none needed"),
    ("verdict", "accepted"),
    ("by", "Mara Oss"),
];

/// A form with the comment signs taken off and every key given what it asks for.
fn filled(form: &str) -> String {
    let values: HashMap<&str, &str> = FOUND.iter().copied().collect();
    let mut asked = 0;
    let start = form.find("# date:").expect("what is to be filled in");
    let mut out = form[..start].to_owned();
    for line in form[start..].lines() {
        let line = line.strip_prefix("# ").unwrap_or(line);
        let key = line.trim_start_matches([' ', '-']).split(':').next().unwrap_or_default();
        let open = line.split_once(':').is_some_and(|(_, rest)| {
            let rest = rest.trim_start();
            rest.is_empty() || rest.starts_with('#') || rest.starts_with("[]")
        });
        match values.get(key).filter(|_| open) {
            Some(value) => {
                asked += 1;
                out.push_str(line.split(':').next().unwrap_or_default());
                writeln!(out, ": {value}").expect("a string");
            }
            None => writeln!(out, "{line}").expect("a string"),
        }
    }
    assert_eq!(asked, values.len() + 3, "every key once, meter, level and state twice");
    out
}

#[test]
fn a_form_filled_in_is_a_sound_record_of_the_design_in_hand() {
    let bench = Bench::new();
    let form = &forms(&bench.path(""))[0];
    assert_eq!((form.0.as_str(), form.1.as_str()), ("ridge/a", "ridge-a-1"));
    put(&bench, "records/ridge-a-1.yaml", &filled(&form.2));
    let evaluation = bench.judge();
    assert!(evaluation.findings.is_empty(), "{}", bench.shown(&evaluation));
    // One letter in a comment of a source, and the crew had other sources in hand.
    replace(&bench, "hops/ridge.yaml", "kind: hop", "# x\nkind: hop");
    assert_eq!(rules(&bench), ["record-of-another-design"]);
}
