//! Line of sight from files to numbers: known profiles, sources of the ground, fixes, the drawing.

use std::fs;

use crate::fixture::Bench;
use hopwright::figure;
use hopwright::network::Scope;
use hopwright::sheet::{BothWays, Fine, HopSheet, Radii};
use hopwright::spec::Both;
use hopwright::verdict::evaluate;
use hopwright::voice::Voice;
use proptest::prelude::*;

/// Length of the base hop, and its antennas above the sea: 858 m and 371 m.
const LENGTH: f64 = 2_961.214_43;

/// The base network with a `path` in its hop.
fn with(path: &str) -> Bench {
    let bench = Bench::new();
    let text = fs::read_to_string(bench.path("hops/ridge.yaml")).expect("there");
    fs::write(bench.path("hops/ridge.yaml"), text.replace("ends:\n", &format!("{path}\nends:\n"))).expect("writable");
    bench
}

fn change(bench: &Bench, file: &str, old: &str, new: &str) {
    let text = fs::read_to_string(bench.path(file)).expect("there");
    assert!(text.contains(old), "{file}: {old}");
    fs::write(bench.path(file), text.replacen(old, new, 1)).expect("writable");
}

/// Something of the only hop's sheet.
fn sheet<T: Send>(bench: &Bench, take: impl Fn(&HopSheet<'_>) -> T + Sync) -> T {
    evaluate(&Scope::of(&[bench.path("")]), |sheet, _| take(sheet)).hops.pop().expect("a hop")
}

fn value(line: &hopwright::sheet::Line<Fine>) -> f64 {
    line.get().unwrap_or_else(|| panic!("{:?}", line.value())).0.0
}

fn radii(line: &hopwright::sheet::Line<Radii>) -> f64 {
    line.get().unwrap_or_else(|| panic!("{:?}", line.value())).0
}

/// The base hop lowered to level antennas of 500 m over ground at 400 m, with one obstacle in the middle.
fn level(obstacle: &str) -> Bench {
    let bench = with(&format!(
        "path:\n  profile:\n    - {{ distance: 0 m, ground: 400 m }}\n    - {{ distance: {LENGTH} m, ground: 400 m }}\n  \
         obstacles:\n    - {obstacle}"
    ));
    change(&bench, "sites/scar.yaml", "ground_height: 850 m", "ground_height: 400 m");
    change(&bench, "sites/mill.yaml", "ground_height: 350 m", "ground_height: 400 m");
    change(&bench, "hops/ridge.yaml", "height: 8 m", "height: 100 m");
    change(&bench, "hops/ridge.yaml", "height: 21 m", "height: 100 m");
    bench
}

/// The bulge in the middle at k = 4/3, by d²/(8 k R).
fn bulge() -> f64 {
    LENGTH * LENGTH / (8.0 * 4.0 / 3.0 * 6_371_000.0)
}

#[test]
fn an_edge_that_grazes_the_line_costs_six_decibels() {
    let height = 100.0 - bulge();
    let bench = level(&format!("{{ kind: building, distance: {} m, height: {height} m }}", LENGTH / 2.0));
    let (left, Both { a: there, b: back }, clearance) = sheet(&bench, |sheet| {
        let BothWays(loss) = sheet.path.diffraction.get().expect("a profile");
        (
            sheet.profile.lines.lowest.get().expect("a profile").0.0,
            loss.map(|loss| loss.0),
            value(&sheet.profile.lines.clearance),
        )
    });
    // J(0) = 6.9 + 20 lg(√1.01 − 0.1) = 6.03 dB, ITU-R P.526-15 §4.1; the length is rounded to a hundredth of a millimetre.
    assert!((there - 6.033).abs() < 2e-3 && (back - 6.033).abs() < 2e-3, "{there}, {back}");
    assert!(left.abs() < 1e-5 && (clearance - left).abs() < 1e-9, "{left}");
}

#[test]
fn what_lies_low_costs_nothing_and_the_level_follows_what_does_not() {
    let loss_of = |height: f64| {
        let bench = level(&format!("{{ kind: building, distance: {} m, height: {height} m }}", LENGTH / 2.0));
        sheet(&bench, |sheet| {
            let Both { a, b } = sheet.directions.each_ref().map(|way| way.lines.level.get().expect("a level").0);
            (sheet.path.diffraction.get().expect("a profile").0.a.0, a, b)
        })
    };
    let (none, level_a, level_b) = loss_of(90.0);
    assert_eq!(none.to_bits(), 0.0_f64.to_bits());
    let (some, lower_a, lower_b) = loss_of(100.0);
    assert!(some > 6.0);
    assert!((level_a - lower_a - some).abs() < 1e-9, "{level_a}, {lower_a}, {some}");
    assert!(level_b - lower_b > 6.0);
}

#[test]
fn a_plateau_costs_more_than_an_edge_of_its_height() {
    let height = 100.5;
    let cost =
        |obstacle: String| sheet(&level(&obstacle), |sheet| sheet.path.diffraction.get().expect("a profile").0.a.0);
    let edge = cost(format!("{{ kind: building, distance: 1480 m, height: {height} m }}"));
    let plateau = cost(format!("{{ kind: trees, distance: 700 m, to: 2260 m, height: {height} m }}"));
    // Bullington's edge stands where both horizons meet, and rough terrain adds up to 10 dB (P.526-15 §4.5.1).
    assert!(plateau > edge + 5.0, "{plateau}, {edge}");
}

#[test]
fn a_named_raise_gives_the_clearance_asked_for_and_no_more() {
    for (end, old) in [(0, "height: 8 m"), (1, "height: 21 m"), (2, "")] {
        let path = "path:\n  uncertainty: 0.7 m\n  profile:\n    - { distance: 0 m, ground: 850 m }\n    \
                    - { distance: 900 m, ground: 702 m, obstacle: { kind: trees, height: 18 m } }\n    \
                    - { distance: 1900 m, ground: 540 m, obstacle: { kind: building, height: 9 m } }\n    \
                    - { distance: 2961 m, ground: 350 m }";
        let bench = with(path);
        let raise = sheet(&bench, |sheet| {
            let lines = &sheet.profile.lines;
            assert!(radii(&lines.in_hand) < 0.0);
            value([&lines.raise_a, &lines.raise_b, &lines.raise_both][end])
        });
        assert!(raise > 0.5, "{raise}");
        let (a, b) = match end {
            0 => (8.0 + raise, 21.0),
            1 => (8.0, 21.0 + raise),
            _ => (8.0 + raise, 21.0 + raise),
        };
        change(&bench, "hops/ridge.yaml", "height: 8 m", &format!("height: {a} m"));
        change(&bench, "hops/ridge.yaml", "height: 21 m", &format!("height: {b} m"));
        let left = sheet(&bench, |sheet| radii(&sheet.profile.lines.in_hand));
        assert!(left.abs() < 0.01, "{end} {old}: {left}");
    }
}

/// A building that leaves more than a radius at k = 4/3 and less than three tenths of one where the Earth stands 1.4 m higher.
fn median_only() -> Bench {
    let bench = with(
        "path:\n  profile:\n    - { distance: 0 m, ground: 850 m }\n    - { distance: 1000 m, ground: 660 m }\n    \
         - { distance: 2961 m, ground: 350 m }\n  obstacles:\n    - { kind: building, distance: 1000 m, height: 31.7 m }",
    );
    change(&bench, "network.yaml", "climate:\n", "climate:\n  low_k: 0.1\n");
    bench
}

#[test]
fn a_path_that_passes_at_the_median_only_says_so_everywhere() {
    let (left, low, alt) = sheet(&median_only(), |sheet| {
        let lines = &sheet.profile.lines;
        assert!(sheet.profile.passes_at_median_only());
        (radii(&lines.in_hand), radii(&lines.low_in_hand), figure::of(sheet, Voice::PLAIN).expect("a drawing").alt)
    });
    assert!(left > 0.0 && low < 0.0, "{left}, {low}");
    assert!(alt.contains("Clear at the median k only"), "{alt}");
    let shown = median_only().shown(&median_only().judge());
    assert!(shown.contains("median k of 4/3"), "{shown}");
}

#[test]
fn a_raise_named_for_the_low_k_is_enough_there_and_no_more() {
    for end in 0..3 {
        let bench = median_only();
        let raise = sheet(&bench, |sheet| {
            let lines = &sheet.profile.lines;
            value([&lines.raise_a, &lines.raise_b, &lines.raise_both][end])
        });
        assert!(raise > 0.1, "{raise}");
        let (a, b) = ([8.0 + raise, 8.0, 8.0 + raise][end], [21.0, 21.0 + raise, 21.0 + raise][end]);
        change(&bench, "hops/ridge.yaml", "height: 8 m", &format!("height: {a} m"));
        change(&bench, "hops/ridge.yaml", "height: 21 m", &format!("height: {b} m"));
        let (median, low) =
            sheet(&bench, |sheet| (radii(&sheet.profile.lines.in_hand), radii(&sheet.profile.lines.low_in_hand)));
        assert!(median > 0.0 && low.abs() < 0.01, "{end}: {median}, {low}");
    }
}

#[test]
fn without_a_word_the_recommendation_asks_and_the_length_gives_the_low_k() {
    let bench = level("{ kind: building, distance: 1000 m, height: 50 m }");
    let (asked, low, k, assumed) = sheet(&bench, |sheet| {
        let profile = &sheet.profile;
        let said: Vec<String> = sheet.assumptions().iter().map(ToString::to_string).collect();
        let asked = [profile.asked(), profile.asked_low()].map(|asked| asked.expect("a profile").0.0);
        (asked[0], asked[1], profile.lines.low_k.get().expect("a profile").0, said.join(" "))
    });
    assert!((asked - 1.0).abs() < 1e-12 && (low - 0.3).abs() < 1e-12 && (k - 157.0 / 277.5).abs() < 1e-12, "{k}");
    assert!(assumed.contains("k = 0.57") && assumed.contains("1.00 F1 at the median k"), "{assumed}");
}

#[test]
fn trees_may_outgrow_what_is_asked_for_at_the_low_k_alone() {
    let path = |height: f64| {
        let bench = with(&format!(
            "path:\n  date: 2026-05-18\n  profile:\n    - {{ distance: 0 m, ground: 850 m }}\n    - {{ distance: 1000 m, ground: 660 m }}\n    \
             - {{ distance: 2961 m, ground: 350 m }}\n  obstacles:\n    - {{ kind: trees, distance: 1000 m, height: {height} m, growth: \
             0.1 m/year, until: 2036-05-18 }}"
        ));
        change(&bench, "network.yaml", "climate:\n", "climate:\n  low_k: 0.1\n");
        bench
    };
    // 31.8 m may stand there at k = 4/3, 31.5 m at 0.1; in ten years the trees are 31.7 m high.
    let bench = path(30.7);
    let (left, low, grown, raise) = sheet(&bench, |sheet| {
        let lines = &sheet.profile.lines;
        let raise = sheet.profile.outgrown.as_ref().expect("outgrown").raise.0.0;
        (radii(&lines.in_hand), radii(&lines.low_in_hand), radii(&lines.grown_in_hand), raise)
    });
    assert!(left * 1.645 > 1.0 && low > 0.0 && grown < 0.0, "{left}, {low}, {grown}");
    change(&bench, "hops/ridge.yaml", "height: 8 m", &format!("height: {} m", 8.0 + raise));
    change(&bench, "hops/ridge.yaml", "height: 21 m", &format!("height: {} m", 21.0 + raise));
    assert!(sheet(&bench, |sheet| radii(&sheet.profile.lines.grown_in_hand)).abs() < 1e-6);
}

#[test]
fn trees_grow_by_the_year() {
    let path = "path:\n  date: 2026-05-18\n  profile:\n    - { distance: 0 m, ground: 850 m }\n    - { distance: 2961 m, ground: 350 m }\n  \
                obstacles:\n    - { kind: trees, distance: 1000 m, height: 10 m, growth: 0.5 m/year, until: 2046-05-18 }";
    let (today, grown, radius) = sheet(&with(path), |sheet| {
        let lines = &sheet.profile.lines;
        (radii(&lines.in_hand), radii(&lines.grown_in_hand), value(&lines.radius))
    });
    assert!(((today - grown) * radius - 10.0).abs() < 1e-9, "{today}, {grown}");
}

/// A tile around the base network in SRTM layout: a plane that falls evenly from north to south.
fn tile(bench: &Bench, void: bool) {
    const SIDE: i16 = 101;
    let row = |row: i16| {
        (0..SIDE).flat_map(move |column| {
            let hole = void && row == 69 && column == 81;
            (if hole { i16::MIN } else { 1000 - 10 * row }).to_be_bytes()
        })
    };
    let bytes: Vec<u8> = (0..SIDE).flat_map(row).collect();
    fs::create_dir_all(bench.path("tiles")).expect("writable");
    fs::write(bench.path("tiles/N54W033.hgt"), bytes).expect("writable");
    change(bench, "network.yaml", "codes:", "terrain: { folder: tiles, source: A plane, uncertainty: 1.5 m }\ncodes:");
    // The plane is 300 m high at 54.30° N and 320 m at 54.32° N.
    change(bench, "sites/scar.yaml", "ground_height: 850 m", "ground_height: 300 m");
    change(bench, "sites/mill.yaml", "ground_height: 350 m", "ground_height: 320 m");
}

#[test]
fn ground_comes_off_tiles() {
    let bench = Bench::new();
    tile(&bench, false);
    let (source, spacing, uncertainty, middle) = sheet(&bench, |sheet| {
        let profile = sheet.profile.profile().expect("a profile");
        let middle = profile.ground_at(hopwright::units::Metres(LENGTH / 2.0)).0;
        let lines = &sheet.profile.lines;
        (lines.source.value().expect("known").to_string(), profile.spacing.0, value(&lines.uncertainty), middle)
    });
    assert_eq!(source, "A plane (tiles N54W033.hgt)");
    // A hundredth of a degree on the sphere of 6371 km.
    assert!((spacing - 1111.949).abs() < 1e-3, "{spacing}");
    assert!((uncertainty - 1.5).abs() < 1e-12);
    assert!((middle - 310.0).abs() < 0.01, "{middle}");
}

#[test]
fn a_void_on_the_path_is_said_and_never_sea_level() {
    let bench = Bench::new();
    tile(&bench, true);
    let found = bench.judge().findings;
    let said: Vec<&str> = found.iter().map(|finding| finding.rule.name).collect();
    assert_eq!(said, ["terrain-tile-missing"]);
    assert!(found[0].message.contains("void"), "{}", found[0].message);
    assert!(sheet(&bench, |sheet| sheet.profile.lines.clearance.get().is_none()));
}

#[test]
fn a_tile_that_cannot_be_read_is_named() {
    let bench = Bench::new();
    tile(&bench, false);
    fs::write(bench.path("tiles/N54W033.hgt"), [0; 7]).expect("writable");
    let said: Vec<(&str, String)> =
        bench.judge().findings.into_iter().map(|finding| (finding.rule.name, finding.message)).collect();
    assert!(said.iter().any(|(rule, words)| *rule == "value-not-valid" && words.contains("N54W033.hgt")), "{said:?}");
    assert!(said.iter().any(|(rule, _)| *rule == "terrain-tile-missing"), "{said:?}");
}

#[test]
fn a_profile_in_a_file_says_the_same_as_one_in_the_hop() {
    let inline = with(
        "path:\n  profile:\n    - { distance: 0 m, ground: 850 m }\n    \
         - { distance: 1000 m, ground: 660 m, obstacle: { kind: trees, height: 12 m } }\n    - { distance: 2961 m, ground: 350 m }",
    );
    let file = with("path: { csv: ../profile.csv }");
    fs::write(
        file.path("profile.csv"),
        "distance [km],ground [m],obstacle [m],kind\n0,850,,\n1,660,12,trees\n2.961,350,,\n",
    )
    .expect("writable");
    let numbers = |bench: &Bench| sheet(bench, |sheet| (sheet.profile.lines.clearance.get(), sheet.profile.table()));
    assert_eq!(numbers(&inline), numbers(&file));
    assert!(file.judge().findings.is_empty());
}

#[test]
fn a_fault_in_a_file_is_shown_at_its_line() {
    let bench = with("path: { csv: ../profile.csv }");
    fs::write(bench.path("profile.csv"), "distance [m],ground [m]\n0,850\n1000,6,60\n2961,350\n").expect("writable");
    let shown = bench.shown(&bench.judge());
    assert!(shown.contains("profile.csv:3:1") && shown.contains("3 cells"), "{shown}");
    assert!(shown.contains("its profile file"), "{shown}");
}

#[test]
fn a_file_outside_of_the_network_is_not_read() {
    let outside = tempfile::tempdir().expect("a temporary folder");
    fs::write(outside.path().join("secret.csv"), "top secret").expect("writable");
    let bench = with("path: { csv: ../link.csv }");
    #[cfg(unix)]
    std::os::unix::fs::symlink(outside.path().join("secret.csv"), bench.path("link.csv")).expect("writable");
    let absolute = with(&format!("path: {{ csv: \"{}\" }}", outside.path().join("secret.csv").display()));
    for bench in [bench, absolute] {
        let shown = bench.shown(&bench.judge());
        assert!(shown.contains("value-not-valid") && !shown.contains("top secret"), "{shown}");
    }
}

#[test]
fn the_drawing_is_sound_xml_and_says_its_verdict() {
    let bench = with(
        "path:\n  profile:\n    - { distance: 0 m, ground: 850 m }\n    - { distance: 1000 m, ground: 660 m }\n    - { distance: 2961 m, ground: 350 m }\n  \
         obstacles:\n    - { kind: crane, title: \"<b>&\\\"\", distance: 1000 m, height: 40 m }",
    );
    let figure = sheet(&bench, |sheet| figure::of(sheet, Voice::PLAIN)).expect("a drawing");
    let told = figure.alt.replace('\u{a0}', " ");
    assert!(told.contains("Obstructed: crane <b>&\" at 1000.0 m from a into the line by"), "{told}");
    assert!(!figure.svg.contains("<b>") && figure.svg.contains("&lt;b&gt;&amp;&quot;"), "{}", figure.svg);
    for words in ["Vertical scale", "0.6 F1", "m a.s.l.", "one arm: crane"] {
        assert!(figure.svg.contains(words), "{words}");
    }
    let plain = sheet(&Bench::new(), |sheet| figure::of(sheet, Voice::PLAIN).is_none());
    assert!(plain, "nothing is drawn without a profile");
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 12, failure_persistence: None, ..ProptestConfig::default() })]

    /// Raising an antenna takes clearance from no point.
    #[test]
    fn a_higher_antenna_never_clears_less(ground in proptest::collection::vec(300.0_f64..700.0, 6), more in 0.1_f64..30.0) {
        let points = (1..).zip(&ground).fold(String::new(), |points, (step, ground)| {
            points + &format!("    - {{ distance: {} m, ground: {ground} m }}\n", 400 * step)
        });
        let path = format!("path:\n  profile:\n    - {{ distance: 0 m, ground: 850 m }}\n{points}    - {{ distance: 2961 m, ground: 350 m }}");
        let clearances = |height: f64| {
            let bench = with(&path);
            change(&bench, "hops/ridge.yaml", "height: 21 m", &format!("height: {height} m"));
            sheet(&bench, |sheet| {
                sheet.profile.along().iter().map(|point| (point.line - point.top).0).collect::<Vec<f64>>()
            })
        };
        for (low, high) in clearances(21.0).into_iter().zip(clearances(21.0 + more)) {
            prop_assert!(high >= low);
        }
    }
}

/// A path over these heights, at equal distances, with a low `k` and trees that grow at one of them.
fn over(heights: &[f64], trees: usize) -> Bench {
    let step = LENGTH / f64::from(u32::try_from(heights.len() + 1).expect("a few"));
    let at = |number: usize| step * f64::from(u32::try_from(number + 1).expect("a few"));
    let points: String = heights.iter().enumerate().fold(String::new(), |points, (number, height)| {
        format!("{points}    - {{ distance: {} m, ground: {height} m }}\n", at(number))
    });
    let bench = with(&format!(
        "path:\n  date: 2026-05-18\n  profile:\n    - {{ distance: 0 m, ground: 850 m }}\n{points}    - {{ distance: {LENGTH} m, \
         ground: 350 m }}\n  obstacles:\n    - {{ kind: trees, distance: {} m, height: 5 m, growth: 0.3 m/year, until: \
         2046-05-18 }}",
        at(trees)
    ));
    change(&bench, "network.yaml", "climate:\n", "climate:\n  low_k: 0.7\n");
    bench
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn higher_ground_never_leaves_more(
        heights in prop::collection::vec(300.0..860.0_f64, 5), which in 0..5_usize, more in 0.01..80.0_f64,
    ) {
        let mut higher = heights.clone();
        higher[which] += more;
        let [before, after] = [&heights, &higher].map(|heights| {
            sheet(&over(heights, 2), |sheet| {
                let lines = &sheet.profile.lines;
                let left = [&lines.in_hand, &lines.low_in_hand, &lines.grown_in_hand].map(radii);
                let up = [&lines.raise_a, &lines.raise_b, &lines.raise_both].map(value);
                (left, up)
            })
        });
        for (before, after) in before.0.iter().zip(after.0) {
            prop_assert!(after <= before + 1e-9, "{before} F1 became {after} F1");
        }
        for (before, after) in before.1.iter().zip(after.1) {
            prop_assert!(after >= before - 1e-9, "a raise of {before} m became one of {after} m");
        }
    }
}
