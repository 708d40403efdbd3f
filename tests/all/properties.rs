//! What holds for any input at all.

use std::fs;
use std::thread;
use std::time::{Duration, Instant};

use crate::one_hop::{End, Lines, OneHop, State, sheets};
use hopwright::network::Scope;
use hopwright::output::{self, Look};
use hopwright::source::parse;
use hopwright::spec::Date;
use hopwright::units::{self, Quantity as _};
use hopwright::verdict::{Evaluation, evaluate};
use proptest::prelude::{Just, ProptestConfig, Strategy, any, prop_assert, prop_assert_eq, prop_oneof, proptest};

fn cases(count: u32) -> ProptestConfig {
    ProptestConfig { cases: count, failure_persistence: None, ..ProptestConfig::default() }
}

/// Judges a folder that holds these bytes as its only file.
fn judged(bytes: &[u8]) -> Evaluation<()> {
    let folder = tempfile::tempdir().expect("a folder");
    fs::write(folder.path().join("any.yaml"), bytes).expect("written");
    evaluate(&Scope::of(&[folder.path().to_path_buf()]), |_, _| ())
}

/// Runs on a small stack, so that a recursion that follows the input is found out.
fn on_a_small_stack(run: impl FnOnce() + Send + 'static) {
    let started = Instant::now();
    let thread = thread::Builder::new().stack_size(768 * 1024).spawn(run).expect("a thread");
    thread.join().expect("no panic");
    assert!(started.elapsed() < Duration::from_secs(20), "took {:?}", started.elapsed());
}

fn spans_are_sound(evaluation: &Evaluation<()>) {
    for label in evaluation.findings.iter().flat_map(|finding| &finding.labels) {
        let Some(found) = evaluation.files.locate(&label.spot) else { continue };
        let text = &evaluation.files.get(found.file).expect("a file").text;
        assert!(text.get(found.span.clone()).is_some(), "{:?} is not in the text", found.span);
    }
}

/// Words of the language and of YAML, so that the dice hit more than the first token.
const PIECES: [&str; 32] = [
    "kind: ",
    "hop",
    "site",
    "network",
    "id: ",
    "a",
    "\n",
    "  ",
    "- ",
    ": ",
    "{",
    "}",
    "[",
    "]",
    ",",
    "&x ",
    "*x",
    "<<: ",
    "\"",
    "'",
    "|",
    ">",
    "#",
    "---\n",
    "height: ",
    "24.5 m",
    "ends:\n",
    "\t",
    "\u{feff}",
    "🗻",
    "!!str ",
    "channel: ",
];

proptest! {
    #![proptest_config(cases(300))]

    #[test]
    fn any_bytes_are_judged(bytes in proptest::collection::vec(any::<u8>(), 0..400)) {
        on_a_small_stack(move || {
            let evaluation = judged(&bytes);
            spans_are_sound(&evaluation);
            let look = Look { width: 80, colour: false, unicode: true };
            assert!(!output::full(&evaluation, look).contains('\u{1b}'));
        });
    }

    #[test]
    fn any_yaml_like_text_is_judged(picks in proptest::collection::vec(0..PIECES.len(), 0..80)) {
        on_a_small_stack(move || {
            let text: String = picks.iter().map(|pick| PIECES[*pick]).collect();
            for document in parse(&text).documents {
                let span = document.node(document.root()).span.clone();
                assert!(text.get(span).is_some());
            }
            spans_are_sound(&judged(text.as_bytes()));
        });
    }

    #[test]
    fn any_text_is_a_quantity_or_a_fault_inside_it(text in "\\PC{0,24}") {
        for kind in [units::Metres::KIND, units::Latitude::KIND, units::SquareMillimetres::KIND, units::Dbm::KIND] {
            match units::read(kind, &text) {
                Ok(value) => assert!((kind.range.0..=kind.range.1).contains(&value)),
                Err(fault) => assert!(text.get(fault.span).is_some()),
            }
        }
        if let Some(date) = Date::read(&text) {
            assert_eq!(date.to_string(), text);
        }
    }

    #[test]
    fn any_length_reads_back(number in -1000.0..1e6_f64) {
        let text = format!("{number} m");
        let value = units::read(units::Metres::KIND, &text).expect("in range");
        assert!((value - number).abs() <= 1e-9 * number.abs().max(1.0));
    }
}

/// Frequency pairs from 6 to 86 GHz.
fn frequencies() -> impl Strategy<Value = [f64; 2]> {
    let paired = |low: f64, high: f64, apart: f64| (low..high).prop_map(move |f| [f, f + apart]);
    prop_oneof![
        paired(6.0, 8.0, 0.25),
        paired(10.7, 40.0, 1.0),
        paired(57.0, 70.0, 0.0),
        paired(71.0, 76.0, 10.0),
        paired(71.0, 76.0, 10.0).prop_map(|[low, high]| [high, low]),
    ]
}

/// Hops of 300 m to some 20 km, no steeper than one in six, with their second position on a ray from the first.
fn hops() -> impl Strategy<Value = OneHop> {
    let end = || (0.0..2900.0_f64, 3.0..40.0_f64, -10.0..25.0_f64, 28.0..52.0_f64, 0.0..2.5_f64);
    let place = (-60.0..65.0_f64, -179.0..179.0_f64, 0.0..std::f64::consts::TAU, 300.0..20_000.0_f64);
    let weather = (1.0..150.0_f64, proptest::option::of(0.0..95.0_f64), -15.0..38.0_f64);
    let states = (-95.0..-30.0_f64, 1.0..15.0_f64, 0.0..4.0_f64);
    let polarisation = prop_oneof![Just("horizontal"), Just("vertical")];
    (end(), end(), -40.0..40.0_f64, place, frequencies(), polarisation, weather, states).prop_map(
        |(one, other, step, (latitude, longitude, course, length), frequencies, polarisation, weather, states)| {
            let (rain_rate, humidity, temperature) = weather;
            let (ground, height, power, gain, wet_loss) = one;
            let a = End { latitude, longitude, ground, height, power, gain, wet_loss, diameter: None };
            let (_, height, power, gain, wet_loss) = other;
            let ground = (ground + step).max(0.0);
            let b = End { latitude, longitude, ground, height, power, gain, wet_loss, diameter: None };
            let (threshold, more, back_off) = states;
            let states = vec![State { threshold, back_off: 0.0 }, State { threshold: threshold + more, back_off }];
            let hop = OneHop {
                name: "hop".into(),
                a,
                b,
                frequencies,
                polarisation,
                temperature: humidity.map(|_| temperature),
                pressure: None,
                humidity,
                rain_rate,
                states,
            };
            away(&hop, course, length)
        },
    )
}

/// The hop with its end `b` at a distance from `a` on a course.
fn away(hop: &OneHop, course: f64, length: f64) -> OneHop {
    let degrees = (length / 6_371_000.0).to_degrees();
    let latitude = hop.a.latitude + degrees * course.cos();
    let longitude = hop.a.longitude + degrees * course.sin() / hop.a.latitude.to_radians().cos();
    OneHop { b: End { latitude, longitude, ..hop.b.clone() }, ..hop.clone() }
}

/// The hop with its end `b` farther off on the same line.
fn stretched(hop: &OneHop, by: f64) -> OneHop {
    let along = |from: f64, to: f64| from + (to - from) * by;
    let latitude = along(hop.a.latitude, hop.b.latitude);
    let longitude = along(hop.a.longitude, hop.b.longitude);
    OneHop { name: "changed".into(), b: End { latitude, longitude, ..hop.b.clone() }, ..hop.clone() }
}

fn number(lines: &Lines, key: &str) -> f64 {
    lines.get(key).and_then(|(number, _)| *number).unwrap_or_else(|| panic!("no number `{key}` on the sheet"))
}

/// Levels and availabilities of both directions and of the whole.
const MERITS: [&str; 12] = [
    "a_to_b.level",
    "b_to_a.level",
    "a_to_b.states[0].rain_margin",
    "b_to_a.states[0].rain_margin",
    "a_to_b.states[0].availability",
    "a_to_b.states[1].availability",
    "b_to_a.states[0].availability",
    "b_to_a.states[1].availability",
    "service.availability",
    "service.in_hand",
    "a_to_b.margins.fade_margin",
    "b_to_a.margins.fade_margin",
];

/// Parts of the keys of lines that rain has a part in.
const RAINY: [&str; 10] =
    ["_fade", "outage", "availability", "worst_month", "share", "minutes", "in_hand", "unused", "counted", "at_worst"];

/// The merits that rose, from one hop to a worse one.
fn risen(hop: &OneHop, worse: OneHop) -> Vec<String> {
    let worse = OneHop { name: "worse".into(), ..worse };
    let sheets = sheets(&[hop.clone(), worse]);
    let rose = |key: &&&str| number(&sheets[1], key) > number(&sheets[0], key) + 1e-9;
    let shown = |key: &&str| format!("{key}: {} to {}", number(&sheets[0], key), number(&sheets[1], key));
    MERITS.iter().filter(rose).map(shown).collect()
}

proptest! {
    #![proptest_config(cases(60))]

    // Up to 30 km: over longer paths at low frequencies the effective length of ITU-R P.530-18 falls with distance.
    #[test]
    fn more_distance_never_helps(hop in hops(), by in 1.001..1.5_f64) {
        let risen = risen(&hop, stretched(&hop, by));
        prop_assert!(risen.is_empty(), "{risen:?}");
    }

    #[test]
    fn more_rain_never_helps(hop in hops(), more in 0.01..60.0_f64) {
        let risen = risen(&hop, OneHop { rain_rate: hop.rain_rate + more, ..hop.clone() });
        prop_assert!(risen.is_empty(), "{risen:?}");
    }

    #[test]
    fn less_power_gain_or_sensitivity_never_helps(hop in hops(), less in 0.1..15.0_f64, which in 0..3_usize) {
        let mut worse = hop.clone();
        for end in [&mut worse.a, &mut worse.b] {
            match which {
                0 => end.power -= less,
                1 => end.gain -= less,
                _ => {}
            }
        }
        if which == 2 {
            worse.states.iter_mut().for_each(|state| state.threshold += less);
        }
        let risen = risen(&hop, worse);
        prop_assert!(risen.is_empty(), "{risen:?}");
    }

    // Not from 50 to 66 GHz: at one barometer reading moist air has less oxygen, and there that counts for more.
    #[test]
    fn more_humidity_never_helps(hop in hops(), humidity in 0.0..90.0_f64, more in 0.1..10.0_f64) {
        let [least, most] = [f64::min, f64::max].map(|of| hop.frequencies.into_iter().reduce(of).expect("two"));
        if most < 50.0 || least > 66.0 {
            let dry = OneHop { humidity: Some(humidity), ..hop };
            let risen = risen(&dry, OneHop { humidity: Some(humidity + more), ..dry.clone() });
            prop_assert!(risen.is_empty(), "{risen:?}");
        }
    }

    #[test]
    fn swapped_ends_mirror_the_sheet(hop in hops()) {
        let swapped = OneHop { name: "swapped".into(), ..hop.swapped() };
        let sheets = sheets(&[hop, swapped]);
        prop_assert_eq!(sheets[0].len(), sheets[1].len());
        for (key, (number, text)) in &sheets[0] {
            let (other, words) = &sheets[1][&mirrored(key)];
            let (Some(one), Some(other)) = (number, other) else {
                // Of a share from least to most only the text is there, and rain moves its last digit.
                prop_assert!(text == words || key.contains(".share"), "{key}: {text} and {words}");
                continue;
            };
            // Rain is computed at the elevation of end `a`, which differs by more than its sign from that of `b`.
            let rain = RAINY.iter().any(|part| key.contains(part));
            // What is left unused is a small difference of an outage and an objective, and moves as far as the outage does.
            let least = if key.ends_with(".unused") { 1.0 } else { 0.1 };
            let tolerance = if rain { 2e-4 * one.abs().max(least) } else { 1e-9 * one.abs() + 1e-7 };
            prop_assert!((one - other).abs() <= tolerance, "{key}: {one} and {other}");
        }
    }

    #[test]
    fn no_more_is_promised_than_the_model_gives(hop in hops()) {
        let lines = &sheets(&[hop])[0];
        for (key, (number, text)) in lines {
            let Some(value) = *number else { continue };
            if key.ends_with(".availability") {
                prop_assert!((0.0..=99.999).contains(&value), "{key}: {value}");
            } else if key.ends_with(".rain_outage") {
                prop_assert!((0.001..=100.0).contains(&value), "{key}: {value}");
                // At the edges of the method the line says on which side it lies.
                prop_assert!(value > 0.001 || text.starts_with("not more than"), "{key}: {text}");
                prop_assert!(value <= 1.0 || text.starts_with("at least"), "{key}: {text}");
            }
        }
    }
}

/// The key of the same line with the ends swapped.
fn mirrored(key: &str) -> String {
    const PAIRS: [(&str, &str); 6] = [
        ("a_to_b.", "b_to_a."),
        ("ends.a.", "ends.b."),
        ("near.a.", "near.b."),
        ("profile.raise_a", "profile.raise_b"),
        ("path.azimuth_a", "path.azimuth_b"),
        ("path.elevation_a", "path.elevation_b"),
    ];
    for (one, other) in PAIRS {
        for (from, to) in [(one, other), (other, one)] {
            if let Some(rest) = key.strip_prefix(from) {
                return format!("{to}{rest}");
            }
        }
    }
    key.into()
}
