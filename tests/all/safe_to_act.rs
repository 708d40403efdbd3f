//! What is printed leads nobody into danger: exposure, ceilings, power lines, and values no more hopeful than they may be.

use crate::fixture::Bench;
use crate::packs::{hops, pages, set};
use hopwright::pack::Pack;
use hopwright::spec::EndName;

/// The install pack of end `a`, as text.
fn install(bench: &Bench) -> String {
    pages(&set(&hops(&bench.path("")), 0, Pack::Install(EndName::A))).join(" ")
}

const LICENSED: (&str, &str, &str) = ("hops/ridge.yaml", "ends:", "licence: { max_power: 12 dBm }\nends:");

#[test]
fn the_crew_is_told_the_least_of_all_ceilings() {
    let ceiling = |power: &str| format!("Never raise the transmit power above {power} here");
    // The radio goes to 16 dBm, the code higher.
    let text = install(&Bench::with(&[]));
    assert!(text.contains(&ceiling("16.0 dBm")), "{text}");
    // Under a licence for 12 dBm the keep-clear distance is that of the 10 dBm set.
    let text = install(&Bench::with(&[LICENSED]));
    assert!(text.contains(&ceiling("10.0 dBm")), "{text}");
}

#[test]
fn exposure_is_that_of_the_greatest_power_or_of_the_licensed_one_with_its_tolerance() {
    let tolerance = ("equipment/radio.yaml", "overload: -30 dBm", "overload: -30 dBm\ntransmit_tolerance: 2 dB");
    let at_cover = |changes: &[_]| Bench::with(changes).numbers()["ends.a.people.at_cover"];
    let decibels = |more: f64, less: f64| 10.0 * f64::log10(more / less);
    let (greatest, licensed) = (at_cover(&[]), at_cover(&[LICENSED]));
    assert!((decibels(greatest, licensed) - 6.0).abs() < 1e-9, "16 dBm against the 10 dBm set");
    assert!((decibels(at_cover(&[tolerance]), greatest) - 2.0).abs() < 1e-9);
    assert!((decibels(at_cover(&[LICENSED, tolerance]), licensed) - 2.0).abs() < 1e-9);
}

#[test]
fn no_distance_at_all_is_said_in_words_and_what_it_leaves_out_is_named() {
    let text = install(&Bench::with(&[]));
    assert!(text.contains("limit kept everywhere"), "{text}");
    assert!(!text.contains("in front 0.0 m"), "{text}");
    for words in ["Flat metal", "second-hand"] {
        assert!(text.contains(words), "{words}");
    }
}

#[test]
fn the_crew_reads_the_voltage_of_a_line_and_who_agreed() {
    let line = |more: &str| {
        let lines = format!("ground_height: 850 m\npower_lines: [{{ title: River line, distance: 60 m{more} }}]");
        install(&Bench::with(&[("sites/scar.yaml", "ground_height: 850 m", &lines)]))
    };
    assert!(line("").contains("River line, 60 m (196.9 ft) away, voltage unknown."), "{}", line(""));
    let consent = "consent: { reference: Letter 12, date: 2026-02-03, name: Ottoline Brack }";
    let text = line(&format!(", voltage: 20 kV, {consent}"));
    assert!(text.contains("away, 20 kV. Consent of Ottoline Brack, Letter 12, 2026-02-03."), "{text}");
}

#[test]
fn a_stated_24_awg_is_no_more_hopeful_than_no_gauge_at_all() {
    let volts = |conductor: &str| {
        let (old, new) = ("outside_diameter: 6.8 mm\nresistance: 84.10429 ohm/km\n", "outside_diameter: 6.8 mm\n");
        let bench = Bench::with(&[("equipment/cables.yaml", old, &format!("{new}{conductor}"))]);
        bench.numbers()["ends.a.runs[0].radio_voltage"]
    };
    let (unstated, stated) = (volts(""), volts("conductor: 24 AWG\n"));
    assert!((stated - unstated).abs() < 1e-3, "{stated} V with, {unstated} V without");
    assert!(volts("conductor: 26 AWG\n") < unstated);
    assert!(volts("conductor: 22 AWG\n") > unstated);
}
