//! Every power, gain and channel that a licence rule names is taken, and the rule is silent then.

use std::fs;

use crate::fixture::{Bench, Edit, edits, tests_folder};

/// Every edit that breaks one of some rules.
fn breaking(rules: &'static [&'static str]) -> impl Iterator<Item = (&'static str, Edit)> {
    rules.iter().copied().flat_map(|rule| {
        let folder = tests_folder().join("rules").join(rule);
        let bad = edits(&folder).into_iter().filter(|name| name.starts_with("bad"));
        bad.map(move |name| (rule, Edit::read(&folder.join(name).with_extension("edit"))))
    })
}

/// The number before a unit that follows some words of a help.
fn named(help: &str, before: &str, unit: &str) -> Option<f64> {
    let rest = &help[help.find(before)? + before.len()..];
    rest[..rest.find(unit)?].trim().parse().ok()
}

/// Writes another value at the first place of a finding: the key that stands on its line keeps its name.
fn rewrite(bench: &Bench, rule: &str, value: &str) {
    let evaluation = bench.judge();
    let finding = evaluation.findings.iter().find(|finding| finding.rule.name == rule).expect("broken");
    let found = evaluation.files.locate(&finding.labels[0].spot).expect("in a file");
    let file = evaluation.files.get(found.file).expect("loaded");
    let text = format!("{}{value}{}", &file.text[..found.span.start], &file.text[found.span.end..]);
    fs::write(&file.origin, text).expect("writable");
}

const POWER_RULES: &[&str] =
    &["eirp-above-code", "eirp-above-licence", "level-above-overload", "power-above-code", "power-above-licence"];

#[test]
fn the_power_that_is_named_is_low_enough() {
    let mut mended = 0;
    for (rule, edit) in breaking(POWER_RULES) {
        let bench = Bench::edited(&edit);
        let power = |help: &str| named(help, "set ", " dBm or less").expect("a power");
        // Both ends may be too loud; each is told its own power.
        for _ in 0..2 {
            let Some(help) = bench.help(rule) else { break };
            rewrite(&bench, rule, &format!("{} dBm", power(&help)));
            mended += 1;
        }
        assert_eq!(bench.help(rule), None, "{rule}: {}", edit.why);
        assert_eq!(bench.help("transmit-power-out-of-range"), None, "{rule}: {}", edit.why);
    }
    assert!(mended >= POWER_RULES.len());
}

#[test]
fn the_gain_that_a_code_asks_for_is_enough() {
    let mut mended = 0;
    for (rule, edit) in breaking(&["eirp-above-code", "gain-below-code", "power-above-code"]) {
        let bench = Bench::edited(&edit);
        let help = bench.help(rule).expect("broken");
        let Some(gain) = named(&help, "take an antenna of ", " dBi or more") else { continue };
        let evaluation = bench.judge();
        let finding = evaluation.findings.iter().find(|finding| finding.rule.name == rule).expect("broken");
        let is_gain = |text: &str| text.parse::<f64>().is_ok();
        let written = finding.labels.iter().find_map(|label| {
            let found = evaluation.files.locate(&label.spot)?;
            let text = &evaluation.files.get(found.file)?.text[found.span];
            text.strip_suffix(" dBi").is_some_and(is_gain).then(|| text.to_owned())
        });
        let written = written.expect("a label on the gain");
        bench.change("equipment/mounting.yaml", &format!("gain: {written}"), &format!("gain: {gain} dBi"));
        assert_eq!(bench.help(rule), None, "{rule}: {}", edit.why);
        mended += 1;
    }
    assert!(mended >= 3);
}

#[test]
fn the_centre_that_is_named_is_on_the_raster() {
    let mut mended = 0;
    for (rule, edit) in breaking(&["channel-off-raster"]) {
        let bench = Bench::edited(&edit);
        let help = bench.help(rule).expect("broken");
        let Some(centre) = named(&help, "its centre at ", " GHz") else { continue };
        rewrite(&bench, rule, &format!("{centre} GHz"));
        assert_eq!(bench.help(rule), None, "{}", edit.why);
        mended += 1;
    }
    assert!(mended > 0);
}
