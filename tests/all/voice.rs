//! What the pages say: every sentence has a key, every key a use, every language the same keys and the same numbers.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

use crate::fixture::{copy, files_below};
use hopwright::listing::HopListing;
use hopwright::network::{Scope, Trees};
use hopwright::pack::{HopPacks, Pack, Press};
use hopwright::physics::rain_outage::Outage;
use hopwright::physics::share::Share;
use hopwright::sheet::{Assumption, Reason, Saying, Sentence, Title, Told};
use hopwright::spec::{Check, DecimalSign, EndName, Language, Material, Print};
use hopwright::units::{Given, Metres, Percent};
use hopwright::verdict::{Evaluation, evaluate};
use hopwright::voice::Voice;
use pdf_extract::{Document, extract_text_from_mem};

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

fn read(path: &Path) -> String {
    fs::read_to_string(path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

/// The sentences of a catalogue by key, in its order.
fn catalogue(language: &str) -> Vec<(String, String)> {
    let mut sentences: Vec<(String, String)> = Vec::new();
    for line in read(&root().join(format!("src/voice/{language}.ftl"))).lines() {
        match line.split_once(" =") {
            Some((key, rest)) if line.starts_with(|c: char| c.is_ascii_lowercase()) => {
                sentences.push((key.to_owned(), rest.trim().to_owned()));
            }
            _ if line.starts_with(' ') => {
                let (_, sentence) = sentences.last_mut().expect("a key before its lines");
                *sentence = [sentence.as_str(), line.trim()].join(" ").trim().into();
            }
            _ => {}
        }
    }
    sentences
}

/// Everything but the words and the reasons of the sheet, which only other languages have.
fn sentences(language: &str) -> BTreeMap<String, String> {
    catalogue(language).into_iter().filter(|(key, _)| !of_sheet(key)).collect()
}

/// The families of sentences that are declared in the sheet, with their English.
fn declared() -> [&'static [Sentence]; 4] {
    [Reason::ALL, Saying::ALL, Title::ALL, Assumption::ALL]
}

fn of_sheet(key: &str) -> bool {
    key.starts_with("sheet-")
        || declared().iter().any(|family| key.strip_prefix(family[0].family).is_some_and(|rest| rest.starts_with('-')))
}

fn terms(language: &str) -> BTreeMap<String, String> {
    catalogue(language).into_iter().filter(|(key, _)| key.starts_with("sheet-")).collect()
}

/// The key of words of the sheet; written anew here, so that the two agree.
fn slug(words: &str) -> String {
    let plain: String =
        words.to_ascii_lowercase().chars().map(|c| if c.is_ascii_alphanumeric() { c } else { ' ' }).collect();
    plain.split_whitespace().collect::<Vec<_>>().join("-")
}

/// The sources below folders or files of `src` that end in one of `extensions`.
fn sources(places: &[&str], extensions: &[&str]) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for place in places {
        let path = root().join("src").join(place);
        found.extend(files_below(&path));
    }
    found.retain(|path| path.extension().is_some_and(|found| extensions.iter().any(|wanted| found == *wanted)));
    found.sort();
    found
}

/// The text in quotes, each with what stands before it.
fn literals(text: &str) -> Vec<(&str, String)> {
    let mut found = Vec::new();
    let mut rest = text.char_indices().peekable();
    while let Some((at, c)) = rest.next() {
        match c {
            // A comment holds no text; the mark of a character may be a quote.
            '/' if text[at..].starts_with("//") => while rest.next_if(|(_, c)| *c != '\n').is_some() {},
            '\'' if text[at..].starts_with("'\"'") => drop(rest.nth(1)),
            '\'' if text[at..].starts_with("'\\") => drop(rest.nth(1)),
            '"' => {
                let mut literal = String::new();
                while let Some((_, c)) = rest.next() {
                    match c {
                        '"' => break,
                        '\\' => literal.extend(rest.next().map(|(_, c)| c).filter(|c| matches!(c, '"' | '\\'))),
                        c => literal.push(c),
                    }
                }
                found.push((&text[..at], literal));
            }
            _ => {}
        }
    }
    found
}

/// What the views add to a key.
const SUFFIXES: [&str; 4] = ["consequence", "avoid", "look", "do"];

#[test]
fn every_key_has_a_sentence_and_every_sentence_a_use() {
    /// Words of several parts that are no keys.
    const OTHERS: [&str; 7] = [
        "kebab-case",
        "us-letter",
        // Attributes of SVG.
        "font-family",
        "font-size",
        "stroke-dasharray",
        "stroke-width",
        "text-anchor",
    ];
    const CALLS: [&str; 9] =
        [" say(", "#say(", ".say(", ".with(", ".count(", ".step(", ".step_with(", " add(", "sides.line("];
    let english = sentences("en");
    let mut used = BTreeSet::new();
    for path in sources(&["pack", "figure", "voice/mod.rs"], &["rs", "typ"]) {
        let text = read(&path);
        for (before, literal) in literals(&text) {
            let called = CALLS.iter().any(|call| before.trim_end().ends_with(call.trim_start()));
            let looks_like_one = literal.contains('-')
                && !OTHERS.contains(&literal.as_str())
                && literal
                    .split('-')
                    .all(|part| !part.is_empty() && part.chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit()));
            let called = called && !before.ends_with("_with(") || before.ends_with("step_with(");
            assert!(
                !(called || looks_like_one) || english.contains_key(&literal),
                "{}: `{literal}` has no sentence",
                path.display()
            );
            for suffix in SUFFIXES {
                used.insert(format!("{literal}-{suffix}"));
            }
            used.insert(literal);
        }
    }
    let unused: Vec<&String> = english.keys().filter(|key| !used.contains(*key)).collect();
    assert!(unused.is_empty(), "sentences that no page says: {unused:?}");
    assert!(terms("en").is_empty(), "the sheet speaks English by itself");
}

/// The names of what a sentence leaves open.
fn open(sentence: &str) -> BTreeSet<&str> {
    let names = sentence.split('$').skip(1);
    names.map(|rest| rest.split(|c: char| !c.is_ascii_alphanumeric() && c != '-').next().unwrap_or_default()).collect()
}

#[test]
fn german_has_the_keys_of_english_in_their_order_with_the_same_left_open() {
    let order = |language| -> Vec<String> {
        let keys = catalogue(language).into_iter().map(|(key, _)| key);
        keys.filter(|key| !of_sheet(key)).collect()
    };
    assert_eq!(order("de"), order("en"));
    let once: BTreeSet<String> = catalogue("de").into_iter().map(|(key, _)| key).collect();
    assert_eq!(once.len(), catalogue("de").len(), "a key that is there twice");
    let english = sentences("en");
    for (key, german) in sentences("de") {
        assert_eq!(open(&german), open(&english[&key]), "{key}");
        assert!(!german.contains(['"', '\'']), "{key}: German quotation marks are „these“");
    }
    for (key, german) in terms("de") {
        assert!(!german.is_empty() && open(&german).is_empty(), "{key}: words of the sheet leave nothing open");
    }
}

/// Safety messages are as long as the English ones, say the same signal words, and end their sentences.
#[test]
fn german_safety_messages_are_whole() {
    let (english, german) = (sentences("en"), sentences("de"));
    let ends = |text: &str| text.matches(['.', ':', ';']).count();
    for (key, message) in english.iter().filter(|(key, _)| key.starts_with("caution-")) {
        let own = &german[key];
        // German takes more letters than English for the same; the name of a hazard is one word there.
        let name = !key.ends_with("-consequence") && !key.ends_with("-avoid");
        assert!(name || own.len() * 10 >= message.len() * 9, "{key} is much shorter than in English");
        assert!(ends(own) >= ends(message) && own.ends_with('.'), "{key} has fewer sentences than in English");
    }
    // ISO 3864-2 and its German edition.
    for (key, word) in [("signal-danger", "GEFAHR"), ("signal-warning", "WARNUNG"), ("signal-notice", "HINWEIS")] {
        assert_eq!(german[key], word);
    }
}

#[test]
fn every_sentence_of_the_sheet_is_translated_and_every_translation_declared() {
    let of_sheet = |(key, _): &(String, String)| of_sheet(key) && !key.starts_with("sheet-");
    let mut german: BTreeMap<String, String> = catalogue("de").into_iter().filter(of_sheet).collect();
    for sentence in declared().into_iter().flatten() {
        let key = sentence.key();
        let translated = german.remove(&key).unwrap_or_else(|| panic!("no German for {key}: {}", sentence.english));
        let wanted: BTreeSet<&str> = sentence.open.iter().copied().collect();
        assert_eq!(open(&translated), wanted, "{key} leaves other places open than {}", sentence.english);
        assert_eq!(sentence.english.matches('{').count(), wanted.len(), "{key}");
    }
    assert!(german.is_empty(), "nothing says {:?}", german.keys());
    assert!(!catalogue("en").iter().any(of_sheet), "the sheet speaks English by itself");
}

#[test]
fn bounds_and_ranges_are_told_in_the_language_and_with_the_sign_of_the_page() {
    let print = Print { decimal_sign: Some(DecimalSign::Comma), ..Print::default() };
    let [english, german] = [Language::En, Language::De].map(|language| Voice::of(&print, Some(language)));
    let outages: [Told; 4] =
        [Outage::Never, Outage::Below, Outage::Within(Percent(0.0123)), Outage::Above].map(Told::from);
    assert_eq!(
        outages.clone().map(|told| told.to_string()),
        ["none", "not more than 0.001 %", "0.0123 %", "at least 1 %"]
    );
    assert_eq!(
        outages.clone().map(|told| english.told(&told)),
        ["none", "not more than 0,001\u{a0}%", "0,0123\u{a0}%", "at least 1\u{a0}%"]
    );
    assert_eq!(
        outages.map(|told| german.told(&told)),
        ["keiner", "nicht mehr als 0,001\u{a0}%", "0,0123\u{a0}%", "mindestens 1\u{a0}%"]
    );
    let range = Told::from(Share { least: Percent(0.5), most: Percent(1.5) });
    assert_eq!(german.told(&range), "0,5000\u{a0}% bis 1,5000\u{a0}%");
    // A name is the author's, whatever it looks like.
    let name = Told::Said(Saying::name("none to 2.5"));
    assert_eq!(german.told(&name), "none to 2.5");
}

#[test]
fn a_reason_says_its_numbers_as_the_page_does_and_names_as_they_are() {
    let print = Print { decimal_sign: Some(DecimalSign::Comma), ..Print::default() };
    let german = Voice::of(&print, Some(Language::De));
    let far = Reason::ObstacleBeyondEnd { distance: Box::new(Given::assumed(Metres(1200.5))), length: Metres(-0.5) };
    assert_eq!(far.to_string(), "an obstacle at 1200.5 m from a lies beyond end b, which is at -0.5 m");
    let said = "ein Hindernis 1200,5\u{a0}m von a liegt hinter Ende b, das bei \u{2212}0,5\u{a0}m liegt";
    assert_eq!(german.reason(&far), said);
    let tile = Reason::NoTile { cells: "v1.2".into() };
    assert_eq!(german.reason(&tile), "keine Kachel reicht an die Strecke in v1.2");
    let timber = Reason::MaterialSpreads { material: Material::Timber };
    assert_eq!(german.reason(&timber), "Holz streut zu weit");
    let range = "das Regenmodell gilt von 0,001\u{a0}% bis 1\u{a0}% des Jahres, also für Verfügbarkeiten von 99\u{a0}% bis 99,999\u{a0}%";
    assert_eq!(german.reason(&Reason::RainModelRange), range);
    assert_eq!(Voice::PLAIN.reason(&timber), timber.to_string());
}

#[test]
fn every_german_word_of_the_sheet_is_one_the_program_prints() {
    let mut texts = BTreeSet::new();
    for path in sources(&["sheet", "spec", "physics", "units"], &["rs"]) {
        let text = read(&path);
        texts.extend(literals(&text).into_iter().map(|(_, literal)| literal));
    }
    texts.extend(Check::ALL.iter().map(|check| check.sentence().to_owned()));
    let slugs: BTreeSet<String> = texts.iter().map(|text| slug(text)).collect();
    for (key, german) in terms("de") {
        assert!(slugs.contains(key.trim_start_matches("sheet-")), "nothing prints `{key}`: {german}");
    }
}

fn example(name: &str) -> PathBuf {
    root().join("examples").join(name)
}

#[test]
fn what_the_examples_call_their_lines_has_german_words() {
    let german = terms("de");
    let mut missing = BTreeSet::new();
    for network in ["varneck", "saltmere", "osierlea", "faulty"] {
        let evaluation = evaluate(&Scope::of(&[example(network)]), |sheet, _| {
            let sections = sheet.sections().into_iter();
            sections.flat_map(|section| section.rows).map(|row| row.words).collect::<BTreeSet<_>>()
        });
        assert!(evaluation.hops.len() >= 3, "{network}");
        let has = |words: &&str| german.contains_key(&format!("sheet-{}", slug(words)));
        missing.extend(evaluation.hops.into_iter().flatten().filter(|words| !has(words)));
    }
    assert!(missing.is_empty(), "no German words for {missing:#?}");
}

/// The small words of the YAML that pages print: those that the views hand to the catalogue.
#[test]
fn small_words_of_the_yaml_have_german_ones() {
    let german = terms("de");
    let files = [
        ("cable.rs", "Jacket"),
        ("hop.rs", "Polarisation"),
        ("hop.rs", "Orientation"),
        ("run.rs", "ScreenBond"),
        ("hop.rs", "GroundMetal"),
        ("lightning.rs", "ProtectionSystem"),
        ("lightning.rs", "MastBond"),
        ("lightning.rs", "ProtectedVolume"),
        ("material.rs", "Material"),
        ("record.rs", "Sky"),
        ("record.rs", "TestResult"),
        ("record.rs", "Verdict"),
        ("run.rs", "Pole"),
        ("site.rs", "SupportKind"),
        ("supply.rs", "Wiring"),
        ("waiver.rs", "Departure"),
    ];
    for (file, name) in files {
        let text = read(&root().join("src/spec").join(file));
        let block = text.split(&format!("\nimpl {name} {{")).nth(1).unwrap_or_else(|| panic!("{file}: no {name}"));
        let block = block.split("\n}\n").next().unwrap_or_default();
        let words: Vec<String> =
            literals(block).into_iter().filter(|(before, _)| before.ends_with("=> ")).map(|(_, word)| word).collect();
        assert!(words.len() >= 2, "{name}: {words:?}");
        for word in words {
            assert!(german.contains_key(&format!("sheet-{}", slug(&word))), "{name}: no German for `{word}`");
        }
    }
    for check in Check::ALL {
        assert!(german.contains_key(&format!("sheet-{}", slug(check.sentence()))), "{}", check.sentence());
    }
}

/// A hop in a language: its packs, and the values of its sheet.
struct Spoken {
    packs: HopPacks,
    values: Vec<String>,
}

fn spoken(folder: &Path, language: Option<Language>) -> Evaluation<Spoken> {
    evaluate(&Scope::of(&[folder.to_path_buf()]), |sheet, findings| Spoken {
        packs: HopPacks::only(&Pack::ALL, sheet, findings, language),
        values: HopListing::of(sheet)
            .sections
            .into_iter()
            .flat_map(|section| section.rows)
            .filter_map(|row| row.text.ok().map(|told| told.to_string()))
            .collect(),
    })
}

fn set(evaluation: &Evaluation<Spoken>, number: usize, pack: Pack) -> Vec<u8> {
    let press = Press::new().expect("a press");
    evaluation.hops[number].packs.set(&press, pack, false, &Trees::of(&evaluation.files)).expect("a pack")
}

fn text(bytes: &[u8]) -> String {
    let text = extract_text_from_mem(bytes).expect("a readable PDF");
    text.split_whitespace().collect::<Vec<_>>().join(" ").replace('\u{2212}', "-")
}

/// Every number with its unit, sorted; commas are read as points.
fn numbers(text: &str) -> Vec<String> {
    const UNITS: [&str; 27] = [
        "m", "mm", "mm2", "mm²", "km", "ft", "in", "dBm", "dB", "dBi", "dB/km", "GHz", "MHz", "Mbit/s", "Gbit/s", "V",
        "A", "W", "Ω", "N·m", "lbf·ft", "%", "min", "°C", "hPa", "Pa", "MPa",
    ];
    let words: Vec<&str> = text.split([' ', '(', ')', ';', ':']).filter(|word| !word.is_empty()).collect();
    let mut found = Vec::new();
    for (number, pair) in words.windows(2).enumerate() {
        // The end of a line and the start of the next may come without a space between them.
        let value = pair[0].rsplit(char::is_lowercase).next().unwrap_or_default();
        let value = value.trim_end_matches(',').replace(',', ".");
        // The full stop of a sentence may stand close to the next.
        let unit = pair[1].split([',', '.']).next().unwrap_or_default();
        // The scale of the foot is on every page, however many there are.
        let foot = value == "50" && unit == "mm" && number > 0;
        let is_number = value.ends_with(|c: char| c.is_ascii_digit()) && value.parse::<f64>().is_ok();
        if is_number && !foot && UNITS.contains(&unit) {
            found.push(format!("{value} {unit}"));
        }
        if let Some(angle) = value.strip_suffix('°').filter(|angle| angle.parse::<f64>().is_ok()) {
            found.push(format!("{angle}°"));
        }
    }
    found.sort();
    found
}

/// What is in one list and not in the other, each as often as it is there.
fn difference(one: &[String], other: &[String]) -> Vec<String> {
    let mut rest = other.to_vec();
    let mut left = Vec::new();
    for number in one {
        match rest.iter().position(|found| found == number) {
            Some(at) => drop(rest.swap_remove(at)),
            None => left.push(number.clone()),
        }
    }
    left
}

/// Sentences by key that both languages must say each in its own way on these pages.
const DESIGN: [&str; 14] = [
    "pack-design",
    "requirement",
    "in-hand",
    "open-findings",
    "not-assessed-here",
    "assumptions",
    "geometry",
    "line-of-sight",
    "level-budget",
    "radio-law",
    "mounting",
    "wind-and-people",
    "methods-and-sources",
    "check-revision",
];
const INSTALL: [&str; 13] = [
    "pack-install",
    "signal-danger",
    "caution-height-consequence",
    "caution-electricity-avoid",
    "part-insert",
    "antenna-centre",
    "run-bend",
    "step-look",
    "step-nip",
    "outside-restless-do",
    "outside-one-end-look",
    "record-ground",
    "check-revision",
];

#[test]
fn a_german_pack_has_the_numbers_of_the_english_one_and_its_own_words() {
    let (english, german) = (sentences("en"), sentences("de"));
    let networks = [None, Some(Language::De)].map(|language| spoken(&example("varneck"), language));
    let [there, here] = &networks;
    let hop = there.hops.iter().position(|hop| hop.packs.names().hop() == "solleralm-murrgrat").expect("the hop");
    for (pack, keys) in [(Pack::Design, &DESIGN[..]), (Pack::Install(EndName::A), &INSTALL[..])] {
        let [other, own] = [set(there, hop, pack), set(here, hop, pack)];
        let language = |bytes: &[u8]| {
            let document = Document::load_mem(bytes).expect("a PDF");
            let language = document.catalog().expect("a catalogue").get(b"Lang").expect("a language");
            String::from_utf8_lossy(language.as_str().expect("text")).into_owned()
        };
        assert_eq!((language(&other).as_str(), language(&own).as_str()), ("en", "de"), "{pack:?}");
        let (other, own) = (text(&other), text(&own));
        let (wanted, found) = (numbers(&other), numbers(&own));
        assert!(wanted.len() > 100, "{pack:?}: {} numbers", wanted.len());
        let (lost, added) = (difference(&wanted, &found), difference(&found, &wanted));
        assert!(lost.is_empty() && added.is_empty(), "{pack:?}: lost {lost:?}, added {added:?}");
        for key in keys {
            let (theirs, ours) = (&english[*key], &german[*key]);
            assert!(other.contains(theirs.as_str()) && !own.contains(theirs.as_str()), "{pack:?}: {theirs}");
            assert!(own.contains(ours.as_str()), "{pack:?}: no `{ours}` in\n{own}");
        }
        // A key that nobody gave a sentence would be printed itself.
        for key in german.keys().filter(|key| key.matches('-').count() > 1) {
            assert!(!own.contains(key.as_str()), "{pack:?} prints the key {key}");
        }
    }
}

/// A copy of the example that says how it is printed.
fn printed_as(asked: &str) -> tempfile::TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    copy(&example("varneck"), folder.path());
    let network = folder.path().join("network.yaml");
    fs::write(&network, read(&network).replace("print:\n", &format!("print:\n{asked}"))).expect("writable");
    folder
}

#[test]
fn a_network_can_ask_for_feet_first() {
    let folder = printed_as("  units: imperial\n");
    let (metric, imperial) = (spoken(&example("varneck"), None), spoken(folder.path(), None));
    let hop = metric.hops.iter().position(|hop| hop.packs.names().hop() == "exchange-murrgrat").expect("the hop");
    let [metric, imperial] = [&metric, &imperial].map(|network| text(&set(network, hop, Pack::Install(EndName::B))));
    // A computed radius turns round; the height that an author wrote does not. 2.55 in are 64.8 mm: 25.4 mm an inch, exact.
    assert!(metric.contains("64.8 mm (2.55 in)") && !metric.contains("2.55 in (64.8 mm)"));
    assert!(imperial.contains("2.55 in (64.8 mm)") && !imperial.contains("64.8 mm (2.55 in)"));
    assert!([metric, imperial].iter().all(|pack| pack.contains("9.5 m (31.2 ft)")));
}

#[test]
fn a_network_can_ask_for_german_with_commas() {
    let folder = printed_as("  language: de\n  decimal_sign: comma\n");
    let (points, commas) = (spoken(&example("varneck"), Some(Language::De)), spoken(folder.path(), None));
    let hop = points.hops.iter().position(|hop| hop.packs.names().hop() == "solleralm-murrgrat").expect("the hop");
    for pack in [Pack::Design, Pack::Install(EndName::A)] {
        let [point, comma] = [text(&set(&points, hop, pack)), text(&set(&commas, hop, pack))];
        assert_eq!(numbers(&comma), numbers(&point), "{pack:?}");
        let whole = |text: &str, value: &str| text.split([' ', '(', ')']).any(|word| word == value);
        let mut turned = 0;
        for value in &points.hops[hop].values {
            let value = value.split(' ').next().unwrap_or_default();
            let own = value.replace('.', ",");
            if value.parse::<f64>().is_ok() && own != value && value.len() > 4 && whole(&point, value) {
                assert!(whole(&comma, &own) && !whole(&comma, value), "{pack:?}: {value}");
                turned += 1;
            }
        }
        assert!(turned > 10, "{pack:?}: {turned} values");
        // What stands in sentences of the catalogue turns too; clauses of codes are names.
        if pack == Pack::Design {
            assert!(comma.contains("0,01 % des Jahres") && !comma.contains("0.01 % des Jahres"), "{comma}");
            assert!(comma.contains("Ausfall, alles Gezählte") && comma.contains("ITU-R P.530-18 §2.4.1"));
        }
    }
}
