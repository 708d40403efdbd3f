//! Packs, read back from their PDF bytes and held against the sheet.

use std::collections::HashMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

use crate::fixture::copy;
use hopwright::listing::HopListing;
use hopwright::network::{Scope, Trees};
use hopwright::pack::{Finish, HopPacks, Pack, Press, on_presses};
use hopwright::spec::EndName;
use hopwright::verdict::{Evaluation, evaluate};
use pdf_extract::{Document, extract_text_from_mem_by_pages};

/// What one hop prints and what its sheet says.
pub struct Hop {
    pub packs: HopPacks,
    lines: HashMap<String, String>,
}

pub fn example(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("examples").join(name)
}

pub fn hops(folder: &Path) -> Evaluation<Hop> {
    evaluate(&Scope::of(&[folder.to_path_buf()]), |sheet, findings| Hop {
        packs: HopPacks::of(sheet, findings),
        lines: HopListing::of(sheet)
            .sections
            .into_iter()
            .flat_map(|section| section.rows)
            .filter_map(|row| Some((row.key.to_string(), row.text.ok()?.to_string())))
            .collect(),
    })
}

pub fn set(evaluation: &Evaluation<Hop>, number: usize, pack: Pack) -> Vec<u8> {
    let press = Press::new().expect("a press");
    evaluation.hops[number].packs.set(&press, pack, false, &Trees::of(&evaluation.files)).expect("a pack")
}

/// The text of each page, white space made single, minus signs as in the sheet.
pub fn pages(bytes: &[u8]) -> Vec<String> {
    let pages = extract_text_from_mem_by_pages(bytes).expect("a readable PDF");
    pages.iter().map(|page| plain(page)).collect()
}

fn plain(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ").replace('\u{2212}', "-")
}

/// Whether `label`, a symbol of a few letters at most, and `values` follow each other.
fn has_row(text: &str, label: &str, values: &[&str]) -> bool {
    let wanted = format!(" {} ", plain(&values.join(" ")));
    text.match_indices(label).any(|(at, _)| {
        let rest = format!("{} ", &text[at + label.len()..]);
        rest.match_indices(&wanted).next().is_some_and(|(gap, _)| gap <= 8)
    })
}

/// Checks a row whose values are lines of the sheet; a line that is missing fails.
fn check_row(text: &str, hop: &Hop, label: &str, keys: &[&str]) {
    let value = |key: &&str| {
        hop.lines.get(*key).unwrap_or_else(|| panic!("{}: the sheet has no {key}", hop.packs.names().hop())).as_str()
    };
    let values: Vec<&str> = keys.iter().map(value).collect();
    assert!(has_row(text, label, &values), "{}: no row `{label}` {values:?} in\n{text}", hop.packs.names().hop());
}

const DIRECTION: [(&str, &str); 14] = [
    ("Frequency", "frequency"),
    ("Transmit power", "transmit_power"),
    ("Gain of the sending antenna", "transmit_gain"),
    ("Gain of the receiving antenna", "receive_gain"),
    ("Free-space loss", "free_space_loss"),
    ("Gas attenuation", "gas_attenuation"),
    ("Gas loss", "gas_loss"),
    ("Diffraction loss", "diffraction_loss"),
    ("Received level, clear sky", "level"),
    ("Rain fade exceeded 0.01 % of the year", "rain_fade"),
    ("Rain fade at the availability asked for", "objective_fade"),
    ("Fade margin at the capacity asked for", "margins.fade_margin"),
    ("Fade margin in hand", "margins.fade_in_hand"),
    ("Received level below overload", "margins.overload_in_hand"),
];

const SIGHT: [(&str, &str); 6] = [
    ("Source of the profile", "source"),
    ("Clearance at the worst point, k = 4/3", "clearance"),
    ("Clearance there in Fresnel radii", "fraction"),
    ("Clearance in hand", "in_hand"),
    ("Distance of the worst point from a", "worst_distance"),
    ("What stands there", "worst"),
];

const ENDS: [(&str, &str); 8] = [
    ("True bearing to the far end", "true_bearing"),
    ("Magnetic bearing to the far end", "magnetic_bearing"),
    ("Tilt, up positive", "tilt"),
    ("Tilt needed", "tilt"),
    ("Left to the nearer end of the range", "tilt_in_hand"),
    ("Level to align to", "target_level"),
    ("Meter reading to align to", "target_voltage"),
    ("A stronger signal reads", "meter_sense"),
];

const RUNS: [(&str, &str); 7] = [
    ("One conductor, hot, with contacts", "conductor_resistance"),
    ("Loop resistance", "loop_resistance"),
    ("Least supply voltage", "supply_voltage"),
    ("Most the radio draws", "radio_draw"),
    ("Voltage at the radio", "radio_voltage"),
    ("Current", "current"),
    ("Power the supply gives", "supply_power"),
];

#[test]
fn the_numbers_of_a_design_pack_are_those_of_the_sheet() {
    for network in ["varneck", "saltmere"] {
        let evaluation = hops(&example(network));
        assert_eq!(evaluation.hops.len(), 5);
        for (number, hop) in evaluation.hops.iter().enumerate() {
            let text = pages(&set(&evaluation, number, Pack::Design)).join(" ");
            for (label, key) in DIRECTION {
                check_row(&text, hop, label, &[&format!("a_to_b.{key}"), &format!("b_to_a.{key}")]);
            }
            for (label, key) in ENDS {
                check_row(&text, hop, label, &[&format!("ends.a.{key}"), &format!("ends.b.{key}")]);
            }
            for (label, key) in RUNS {
                check_row(&text, hop, label, &[&format!("ends.a.runs[0].{key}"), &format!("ends.b.runs[0].{key}")]);
            }
            for (label, key) in SIGHT {
                check_row(&text, hop, label, &[&format!("profile.{key}")]);
            }
            // The drawing says the numbers of its worst point, each letter placed for itself.
            let value = |key: &str| &hop.lines[&format!("profile.{key}")];
            let drawn = format!("{} ({}), {} asked for", value("clearance"), value("fraction"), value("needed"));
            let close = |text: &str| text.replace([' ', '\u{a0}'], "");
            assert!(close(&text).contains(&close(&drawn)), "{}: no `{drawn}` in\n{text}", hop.packs.names().hop());
            check_row(&text, hop, "Rain and wet snow", &["service.rain_outage", "service.rain_worst_month"]);
            check_row(&text, hop, "Outage, all that is counted", &["service.outage", "service.worst_month"]);
            check_row(&text, hop, "Minutes a year", &["service.minutes"]);
            let name = hop.lines["service.availability"].clone();
            assert!(text.contains(&format!("vailability {name}")), "{}", hop.packs.names().hop());
            check_row(&text, hop, "Rain rate exceeded 0.01 % of the year", &["path.rain_rate"]);
            for (label, key) in [("over the ground", "distance"), ("antenna to antenna", "slant")] {
                let metres = &hop.lines[&format!("path.{key}")];
                assert!(text.contains(&format!("Distance {label} {metres} (")), "{label} {metres}");
            }
            let states = ["capacity", "threshold", "level", "margin", "outage", "minutes", "availability"];
            let count = hop.lines.keys().filter(|key| key.ends_with("].threshold")).count();
            assert!(count >= 6, "states of both directions");
            for key in hop.lines.keys().filter(|key| key.ends_with("].threshold")) {
                let state = key.trim_end_matches("threshold");
                let values: Vec<&str> = states.map(|line| hop.lines[&format!("{state}{line}")].as_str()).to_vec();
                assert!(text.contains(&plain(&values.join(" "))), "{state} {values:?}");
            }
        }
    }
}

#[test]
fn the_numbers_of_an_install_pack_are_those_of_the_sheet() {
    for network in ["varneck", "saltmere"] {
        let evaluation = hops(&example(network));
        let jobs: Vec<(&Hop, EndName)> =
            evaluation.hops.iter().flat_map(|hop| EndName::BOTH.map(|end| (hop, end))).collect();
        let packs = on_presses(&jobs, |press, (hop, end)| {
            hop.packs.set(press, Pack::Install(*end), false, &Trees::of(&evaluation.files)).expect("a pack")
        });
        for ((hop, end), bytes) in jobs.iter().zip(packs.expect("presses")) {
            let pages = pages(&bytes);
            let text = pages.join(" ");
            let key = |line: &str| format!("ends.{}.{line}", end.letter());
            let value = |line: &str| hop.lines[&key(line)].as_str();
            for (label, line) in [
                ("Declination here", "declination"),
                ("Voltage at the radio, least", "runs[0].radio_voltage"),
                ("Gland insert", "runs[0].gland"),
                ("True bearing set", "true_bearing"),
                ("Tilt set", "tilt"),
            ] {
                check_row(&text, hop, label, &[&key(line)]);
            }
            let mounting = pages.iter().find(|page| page.contains("Declination here")).expect("a mounting page");
            for (label, line) in [
                ("True bearing", "true_bearing"),
                ("Magnetic bearing", "magnetic_bearing"),
                ("Tilt", "tilt"),
                ("Antenna centre above ground", "height"),
            ] {
                let wanted = format!("{label}{} ", value(line));
                assert!(mounting.contains(&wanted), "no `{wanted}` on\n{mounting}");
            }
            let (least, most) = (value("voltage_at_least"), value("voltage_at_most"));
            let bands = [format!("Accept {least} to {most}"), format!("Accept {most} to {least}")];
            assert!(bands.iter().any(|band| text.contains(band)), "{bands:?}");
            let lobes = |case: &str, line: &str| hop.lines[&key(&format!("side_lobes.{case}.{line}"))].as_str();
            for (label, case) in [("This end", "here"), ("The far end", "there"), ("Both ends", "both")] {
                let (least, most) = (lobes(case, "level_least"), lobes(case, "level_most"));
                assert!(has_row(&text, label, &[least, "to", most]), "{label}: {least} to {most}");
            }
            let warned = ["voltage_at_least", "voltage_at_most"].map(|line| lobes("here", line));
            assert!(text.contains("you are on a side lobe"), "a warning");
            assert!(warned.iter().any(|volts| text.contains(&format!("If you read {volts}"))), "{warned:?}");
            let sweep = value("side_lobes.sweep");
            assert!(text.contains(&format!("at least {sweep} to both sides")), "{sweep}");
            let levels = format!("Accept {} to {}", value("level_least"), value("level_most"));
            assert!(text.contains(&levels), "{levels}");
            for (label, line) in [("Level", "target_level"), ("A stronger signal reads", "meter_sense")] {
                assert!(text.contains(&format!("{label} {}", value(line))), "{label}");
            }
            assert!(text.contains(value("target_voltage")), "target");
            assert!(!text.contains(" is safe") && text.contains("not assessed"), "a pack certifies nothing");
            for (number, page) in pages.iter().enumerate() {
                let (count, id) = (format!("Page {} of {}", number + 1, pages.len()), hop.packs.names().hop());
                for wanted in ["Install pack", "Check revision before use", "Revision", id, &count] {
                    assert!(page.contains(wanted), "page {number} lacks `{wanted}`:\n{page}");
                }
                assert!(page.contains(&format!("End {}:", end.letter())), "page {number} does not say which end");
            }
        }
    }
}

/// The pages of an acceptance record, and what its hop says.
fn acceptance(evaluation: &Evaluation<Hop>, hop: &str, end: EndName) -> (usize, Vec<String>) {
    let number = evaluation.hops.iter().position(|one| one.packs.names().hop() == hop).expect("the hop");
    (number, pages(&set(evaluation, number, Pack::Acceptance(end))))
}

#[test]
fn the_numbers_of_an_acceptance_record_are_those_of_the_sheet_and_of_the_crew() {
    let evaluation = hops(&example("varneck"));
    let written = fs::read_to_string(example("varneck").join("records/solleralm-murrgrat.yaml")).expect("readable");
    for end in EndName::BOTH {
        let (number, pages) = acceptance(&evaluation, "solleralm-murrgrat", end);
        let (hop, text, letter) = (&evaluation.hops[number], pages.join(" "), end.letter());
        let id = format!("solleralm-murrgrat-{letter}-1");
        let line = |key: &str| hop.lines[&format!("records.{id}.{key}")].as_str();
        let (least, most) = (line("expected_least"), line("expected_most"));
        let level = format!("{} that day ± 4 dB ({least} to {most}) {} yes", line("expected"), line("measured"));
        assert!(text.contains(&level), "no `{level}` in\n{text}");
        assert!(has_row(&text, "Change on locking", &["none ± 1.0 dB", line("moved"), "yes"]), "{text}");
        let left = ["a", "b"].map(|end| {
            let key = format!("records.solleralm-murrgrat-{end}-1.difference");
            hop.lines[&key].trim_end_matches(" dB").parse::<f64>().expect("a number")
        });
        let gap = text.split("Disagreement with the far end none ± 3.0 dB ").nth(1).expect("the row");
        let gap: f64 = gap.split(' ').next().and_then(|word| word.parse().ok()).expect("a number");
        // End a receives at 83.375 GHz, where two dishes gain more than at the 73.375 GHz of the other way.
        let favoured = 40.0 * f64::log10(83.375 / 73.375);
        // Each difference is rounded to a tenth, and so is what lies between them.
        assert!((gap - (left[0] - left[1] - favoured).abs()).abs() <= 0.151, "{gap} {left:?}");
        let voltage = hop.lines[&format!("ends.{letter}.runs[0].radio_voltage")].as_str();
        assert!(text.contains(&format!("{voltage} or more 1.00 V less; 40 V to 57 V")), "{voltage}");
        for wanted in [id.as_str(), "NOT DONE"] {
            assert_eq!(text.contains(wanted), wanted == id, "{wanted}");
        }
        for (page, words) in pages.iter().enumerate() {
            let count = format!("Page {} of {}", page + 1, pages.len());
            for wanted in ["Acceptance record", "Revision B", &count, &format!("End {letter}:")] {
                assert!(words.contains(wanted), "page {page} lacks `{wanted}`:\n{words}");
            }
        }
        assert!(pages.len() <= 2, "{} pages", pages.len());
    }
    // What the crew wrote is printed as it was written.
    let text = acceptance(&evaluation, "solleralm-murrgrat", EndName::A).1.join(" ");
    for words in ["Ilke Tharnow, Pirmin Aschl", "0.552 V, -28 dBm", "52.4 V", "HQ-226041", "6.2 ohm, clamp", "V4-11873"]
    {
        assert!(text.contains(words), "{words}");
        let first = words.split(", ").next().expect("a word");
        assert!(written.contains(first), "{first}");
    }
}

#[test]
fn the_keys_on_paper_are_those_of_the_form_and_the_mark_is_that_of_the_design() {
    let folder = tempfile::tempdir().expect("a folder");
    copy(&example("varneck"), folder.path());
    let mark = |pages: &[String]| {
        let rest = pages[0].split("Source mark ").nth(1).expect("a mark");
        rest[..16].to_owned()
    };
    let evaluation = hops(folder.path());
    let number =
        evaluation.hops.iter().position(|hop| hop.packs.names().hop() == "solleralm-murrgrat").expect("the hop");
    let install = pages(&set(&evaluation, number, Pack::Install(EndName::B)));
    let ran = Command::new(env!("CARGO_BIN_EXE_hopwright"))
        .args(["new", "record", "solleralm-murrgrat/b", "--network"])
        .arg(folder.path())
        .output()
        .expect("the program runs");
    let path = String::from_utf8(ran.stdout).expect("UTF-8");
    let form = fs::read_to_string(path.trim()).expect("the form");
    assert!(form.contains(&format!("mark: \"{}\"", mark(&install))), "{form}");

    let record = install.iter().find(|page| page.contains("Record of this end")).expect("a record page");
    let id = form.lines().find_map(|line| line.strip_prefix("id: ")).expect("an id");
    assert!(record.contains(&format!("id {id} ")), "{id} is not on the page:\n{record}");
    assert!(record.contains("Accepted"), "the record is on one sheet, signatures and all:\n{record}");
    let mut parent = String::new();
    let mut keys = 0;
    let items = form.lines().skip_while(|line| !line.starts_with("# settings:"));
    for line in items.take_while(|line| !line.starts_with("# photos:")) {
        let key = line.trim_start_matches(['#', ' ']).split(':').next().unwrap_or_default();
        match line.strip_prefix("# ").map(|rest| rest.len() - rest.trim_start().len()) {
            Some(0) if line.trim_end().ends_with(':') => parent = format!("{key}."),
            Some(0) if line.contains("designed") => {
                assert!(record.contains(&format!(" {key} ")), "{key} is not on the page:\n{record}");
                keys += 1;
            }
            Some(2) if line.contains("- port: ") => {
                parent = format!("runs.{}.", line.rsplit(' ').next().expect("a port"));
            }
            Some(2 | 4) if line.contains("designed") => {
                assert!(record.contains(&format!("{parent}{key}")), "{parent}{key} is not on the page:\n{record}");
                keys += 1;
            }
            Some(2) if line.contains("  - ") => {
                let check = line.trim_start_matches(['#', ' ', '-']).split(' ').next().expect("an id");
                assert!(install.iter().any(|page| page.contains(check)), "{check} is not in the pack");
                keys += 1;
            }
            _ => {}
        }
    }
    assert_eq!(keys, 16 + 10, "items and checks");

    // A record that comes back changes neither the mark nor a byte of the design.
    let before = set(&evaluation, number, Pack::Design);
    let after = hops(folder.path());
    assert!(before == set(&after, number, Pack::Design), "the design pack follows a record");
    assert_eq!(mark(&acceptance(&after, "solleralm-murrgrat", EndName::B).1), mark(&install));
}

#[test]
fn a_record_with_errors_is_printed_as_a_draft_only() {
    let out = tempfile::tempdir().expect("a folder");
    let refused = hopwright(&example("faulty"), out.path(), &["acceptance", "sound/a"]);
    assert_eq!(refused.status.code(), Some(1));
    let words = String::from_utf8_lossy(&refused.stderr);
    assert!(words.contains("the record of `sound/a` is not printed: 1 error; `check` shows them"), "{words}");
    let draft = hopwright(&example("faulty"), out.path(), &["acceptance", "sound/a", "--draft"]);
    assert_eq!(draft.status.code(), Some(0), "{}", String::from_utf8_lossy(&draft.stderr));
    let path = String::from_utf8_lossy(&draft.stdout).trim().to_owned();
    let pages = pages(&fs::read(path).expect("the record"));
    for page in &pages {
        assert!(page.contains("DRAFT: 1 error is open, not to be accepted"), "{page}");
    }
    let text = pages.join(" ");
    for words in ["1 error: not to be accepted as it is.", "NOT DONE Both axes swept", "side-lobe-found"] {
        assert!(text.contains(words), "{words} in\n{text}");
    }
    let nothing = hopwright(&example("saltmere"), out.path(), &["acceptance"]);
    assert_eq!(nothing.status.code(), Some(3));
    assert!(String::from_utf8_lossy(&nothing.stderr).contains("no record to print"));
    let unknown = hopwright(&example("faulty"), out.path(), &["acceptance", "sound/b"]);
    assert_eq!(unknown.status.code(), Some(2));
}

/// How many pages each pack may have. An end with two runs has twice the steps of cabling, so it may take a page more.
#[test]
fn a_pack_has_as_few_pages_as_its_reader_needs() {
    for network in ["varneck", "saltmere"] {
        for paper in ["a4", "letter"] {
            let folder = tempfile::tempdir().expect("a folder");
            copy(&example(network), folder.path());
            let file = folder.path().join("network.yaml");
            let text = fs::read_to_string(&file).expect("the network");
            let text = text.replace("paper: a4", "paper: X").replace("paper: letter", "paper: X");
            assert_eq!(text.matches("paper: X").count(), 1, "{network} names its paper");
            fs::write(&file, text.replace("paper: X", &format!("paper: {paper}"))).expect("written");
            let evaluation = hops(folder.path());
            let packs = [
                Pack::Design,
                Pack::Licence,
                Pack::Install(EndName::A),
                Pack::Install(EndName::B),
                Pack::Acceptance(EndName::A),
                Pack::Acceptance(EndName::B),
            ];
            let jobs: Vec<(&Hop, Pack)> = evaluation
                .hops
                .iter()
                .flat_map(|hop| packs.map(|pack| (hop, pack)))
                .filter(|(hop, pack)| hop.packs.names().has(*pack))
                .collect();
            let set = on_presses(&jobs, |press, (hop, pack)| {
                hop.packs.set(press, *pack, false, &Trees::of(&evaluation.files)).expect("a pack")
            });
            for ((hop, pack), bytes) in jobs.iter().zip(set.expect("presses")) {
                let pages = Document::load_mem(&bytes).expect("a PDF").get_pages().len();
                let two_runs = |end: &EndName| hop.lines.contains_key(&format!("ends.{}.runs[1].length", end.letter()));
                // What is live on the way up takes room before work.
                let is_in_company = |end: &EndName| {
                    let beside = format!("ends.{}.beside[", end.letter());
                    hop.lines.keys().any(|key| key.starts_with(&beside))
                };
                let may = match pack {
                    // What stands beside an end, and what it hears of others, are tables of their own.
                    Pack::Design if EndName::BOTH.iter().any(is_in_company) => 3..=9,
                    Pack::Design => 3..=7,
                    Pack::Install(end) if two_runs(end) || is_in_company(end) => 4..=8,
                    Pack::Install(_) => 4..=7,
                    Pack::Acceptance(_) => 1..=3,
                    Pack::Licence => 1..=1,
                };
                let name = hop.packs.names().file_name(*pack);
                assert!(may.contains(&pages), "{name} on {paper}: {pages} pages, not {may:?}");
            }
        }
    }
}

#[test]
fn a_pack_is_the_same_bytes_each_time() {
    let evaluation = hops(&example("varneck"));
    let first = set(&evaluation, 0, Pack::Install(EndName::A));
    let other = hops(&example("varneck"));
    assert!(first == set(&other, 0, Pack::Install(EndName::A)), "two runs differ");
}

#[test]
fn paper_standards_and_attachments_are_as_asked() {
    for (network, width, height) in [("varneck", 595.276, 841.89), ("saltmere", 612.0, 792.0)] {
        let evaluation = hops(&example(network));
        let bytes = set(&evaluation, 0, Pack::Design);
        let document = Document::load_mem(&bytes).expect("a PDF");
        for page in document.get_pages().values() {
            let area = document.get_dictionary(*page).and_then(|page| page.get(b"MediaBox")).expect("a size");
            let area: Vec<f32> = area.as_array().expect("four").iter().filter_map(|n| n.as_float().ok()).collect();
            assert!((area[2] - width).abs() < 0.01 && (area[3] - height).abs() < 0.01, "{network}: {area:?}");
        }
        let raw = String::from_utf8_lossy(&bytes);
        assert!(raw.contains("pdfaid:part") && raw.contains("pdfuaid:part"), "no claim of A-3 and UA-1");
        let files = document.objects.values().filter(|object| {
            object.as_dict().and_then(|dict| dict.get(b"Type")).and_then(|kind| kind.as_name()).ok()
                == Some(b"Filespec".as_slice())
        });
        assert!(files.count() >= 8, "sources and sheet are attached");
    }
}

#[test]
fn a_plain_pdf_has_the_same_pages_and_nothing_beside_them() {
    let evaluation = hops(&example("varneck"));
    let archival = set(&evaluation, 0, Pack::Install(EndName::A));
    let press = Press::for_finish(Finish::Plain).expect("a press");
    let hop = &evaluation.hops[0].packs;
    let plain = hop.set(&press, Pack::Install(EndName::A), false, &Trees::of(&evaluation.files)).expect("a pack");
    assert_eq!(pages(&plain), pages(&archival));
    let raw = String::from_utf8_lossy(&plain);
    assert!(!raw.contains("pdfaid:part") && !raw.contains("Filespec") && plain.len() < archival.len());
}

#[test]
fn without_an_approver_every_page_is_a_draft() {
    let evaluation = hops(&example("saltmere"));
    for page in pages(&set(&evaluation, 0, Pack::Install(EndName::B))) {
        assert!(page.contains("DRAFT: nobody has approved this revision."), "{page}");
    }
    let issued = hops(&example("varneck"));
    for page in pages(&set(&issued, 0, Pack::Design)) {
        assert!(page.contains("ISSUED") && !page.contains("DRAFT"), "{page}");
    }
}

fn hopwright(folder: &Path, out: &Path, more: &[&str]) -> Output {
    let mut command = Command::new(env!("CARGO_BIN_EXE_hopwright"));
    command.args(["pack"]).args(more).arg("--network").arg(folder).arg("--out").arg(out);
    command.output().expect("the program runs")
}

#[test]
fn a_hop_with_errors_is_refused_unless_it_is_a_draft() {
    let out = tempfile::tempdir().expect("a folder");
    let faulty = example("faulty");
    let refused = hopwright(&faulty, out.path(), &["design", "mount", "sound"]);
    assert_eq!(refused.status.code(), Some(1));
    let words = String::from_utf8_lossy(&refused.stderr);
    assert!(words.contains("hop `mount` is not printed: 2 errors; `check` shows them"), "{words}");
    assert!(!out.path().join("mount-design.pdf").exists());
    let written = out.path().join("sound-design.pdf");
    assert_eq!(String::from_utf8_lossy(&refused.stdout).trim(), written.display().to_string());
    assert!(written.exists());

    let draft = hopwright(&faulty, out.path(), &["install", "mount/a", "--draft"]);
    assert_eq!(draft.status.code(), Some(0), "{}", String::from_utf8_lossy(&draft.stderr));
    let path = String::from_utf8_lossy(&draft.stdout).trim().to_owned();
    for page in pages(&fs::read(path).expect("the pack")) {
        assert!(page.contains("DRAFT: 2 errors are open, not to be built"), "{page}");
    }
}

#[test]
fn what_is_not_there_is_guessed_at() {
    let out = tempfile::tempdir().expect("a folder");
    let unknown = hopwright(&example("saltmere"), out.path(), &["install", "crane-5"]);
    assert_eq!(unknown.status.code(), Some(2));
    assert!(String::from_utf8_lossy(&unknown.stderr).contains("did you mean `crane-4`?"));
    let nothing = hopwright(out.path(), out.path(), &["design"]);
    assert_eq!(nothing.status.code(), Some(3));
    let site = hopwright(&example("saltmere"), out.path(), &["install", "crane-4"]);
    let listed = String::from_utf8_lossy(&site.stdout).lines().count();
    assert_eq!((site.status.code(), listed), (Some(0), 2), "all ends at that site");
}

#[test]
fn what_an_author_writes_is_printed_and_not_obeyed() {
    let folder = tempfile::tempdir().expect("a folder");
    copy(&example("varneck"), folder.path());
    let site = folder.path().join("sites/murrgrat.yaml");
    let hostile = r#"#panic("no") *bold* $x^2$ @ref <mark> _low_ `raw` \ back // slash -- = [x] #{ 1 }"#;
    let text = fs::read_to_string(&site).expect("the site");
    let title = "title: '= #title *not* bold'";
    let text = text.replace("title: Murrgrat, top station of the cable car", title);
    let text = text.replace("hazards:\n", &format!("hazards:\n  - '{hostile}'\n  - \"two\\nlines 中 and \\a\"\n"));
    fs::write(&site, text).expect("written");

    let evaluation = hops(folder.path());
    let number =
        evaluation.hops.iter().position(|hop| hop.packs.names().hop() == "exchange-murrgrat").expect("the hop");
    let pages = pages(&set(&evaluation, number, Pack::Install(EndName::B)));
    assert!(pages[0].contains("= #title *not* bold"), "{}", pages[0]);
    assert!(pages[0].contains(hostile), "{}", pages[0]);
    // The break between the two is kept; the reader of the test joins the lines.
    assert!(pages[0].contains("twolines [U+4E2D] and [U+0007]"), "{}", pages[0]);
}

/// The position of the site is in the code that telephones read, and drawings say in words what they show (PDF/UA-1).
#[test]
fn drawings_say_what_they_show() {
    let evaluation = hops(&example("varneck"));
    let hop = &evaluation.hops[0];
    let words = |pack: Pack| {
        let bytes = set(&evaluation, 0, pack);
        let document = Document::load_mem(&bytes).expect("a PDF");
        let alts = document.objects.values().filter_map(|object| {
            let alt = object.as_dict().ok()?.get(b"Alt").ok()?;
            let bytes = alt.as_str().ok()?;
            Some(match bytes.strip_prefix(&[0xfe, 0xff]) {
                Some(wide) => {
                    let units: Vec<u16> = wide.chunks(2).map(|pair| u16::from_be_bytes([pair[0], pair[1]])).collect();
                    String::from_utf16_lossy(&units)
                }
                None => String::from_utf8_lossy(bytes).into_owned(),
            })
        });
        alts.collect::<Vec<_>>().join("\n")
    };
    let value = |line: &str| plain(&hop.lines[&format!("ends.a.{line}")]);
    let install = plain(&words(Pack::Install(EndName::A)));
    for wanted in ["geo:", "From the side", "wall of the building", "The scale of the meter"] {
        assert!(install.contains(wanted), "no `{wanted}` in\n{install}");
    }
    for line in ["target_voltage", "tilt", "true_bearing", "magnetic_bearing"] {
        assert!(install.contains(&value(line)), "no {line} {} in\n{install}", value(line));
    }
    assert!(
        install.contains(&format!("Code for a telephone: {}-a-", hop.packs.names().hop())),
        "the id of the record\n{install}"
    );
    let design = plain(&words(Pack::Design));
    assert!(design.contains("north up") && design.contains("Availability of each capacity"), "{design}");
}
