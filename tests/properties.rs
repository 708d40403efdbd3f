//! What holds for any input at all.

use std::fs;
use std::thread;
use std::time::{Duration, Instant};

use hopwright::evaluate::{Evaluation, evaluate};
use hopwright::network::Scope;
use hopwright::output::{self, Look};
use hopwright::source::parse;
use hopwright::spec::Date;
use hopwright::units::{self, Quantity as _};
use proptest::prelude::{ProptestConfig, any, proptest};

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
