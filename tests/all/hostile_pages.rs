//! Pages made of what nobody should write: template code, endless names, scripts without a face.
//!
//! Whatever an author writes is printed as it stands, inside the margins, and no letter is lost: one that no face covers is
//! spelled by its number.

use std::fs;
use std::path::Path;

use crate::fixture::copy;
use crate::picture::{all_of, example, ink, packs, set};
use hopwright::pack::{Pack, Press};
use hopwright::spec::EndName;

const HOP: &str = "solleralm-murrgrat";

/// Everything that means something to the templates' language, to PDF or to XML, and must not here.
const CODE: [&str; 6] = [
    "#panic(\"no\") #{ 1 + 1 } #let x = 2; #x #eval(\"3\") #import \"page.typ\": *",
    "*bold* _low_ `raw` ```typ #panic()``` $x^2$ @ref <mark> = Heading",
    "- list + item / term: \\ back // slash /* comment */ -- --- ... ~ \\u{41}",
    "[content] #[more] {code} (group) #context counter(page).get() #pagebreak() #sys.inputs",
    "(text) Tj ET << /JS >> endstream %PDF %%EOF \\(",
    "<svg onload=\"x\"> &amp; &lt;b&gt; ]]> <!-- -->",
];

/// Text of scripts that the faces do not cover, and one that they do.
const ARABIC: &str = "محطة الجبل";
const HEBREW: &str = "תחנת ההר";
const HAN: &str = "山頂駅";
const CYRILLIC: &str = "Верхняя станция";

/// A YAML string in double quotes.
fn quoted(text: &str) -> String {
    serde_json::to_string(text).expect("text")
}

/// The example with words of the network, the hop, a site and a record in place of those of its author.
fn written(network: &str, title: &str, hazards: &[&str]) -> tempfile::TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    copy(&example("varneck"), folder.path());
    let title = quoted(title);
    let edit = |file: &str, edits: &[(&str, String)]| {
        let path = folder.path().join(file);
        let mut text = fs::read_to_string(&path).expect("readable");
        for (start, new) in edits {
            let old = text.lines().find(|line| line.starts_with(start)).unwrap_or_else(|| panic!("{file}: no {start}"));
            text = text.replacen(&format!("{old}\n"), &format!("{new}\n"), 1);
        }
        fs::write(path, text).expect("written");
    };
    let list: String = hazards.iter().flat_map(|hazard| ["\n  - ".to_owned(), quoted(hazard)]).collect();
    edit("network.yaml", &[("title: ", format!("title: {}", quoted(network)))]);
    edit(
        "hops/solleralm-murrgrat.yaml",
        &[("title: ", format!("title: {title}")), ("notes:", format!("notes:\n  - {title}"))],
    );
    edit(
        "sites/murrgrat.yaml",
        &[
            ("title: ", format!("title: {title}")),
            ("hazards:", format!("hazards:{list}")),
            ("  - name: ", format!("  - name: {title}")),
            ("    role: ", format!("    role: {title}")),
            ("    title: Drive", format!("    title: {title}")),
            ("    title: Stainless", format!("    title: {title}")),
        ],
    );
    folder
}

/// Every page of every pack of the hop: all ink inside the page's margins, and a shape for every letter. The text of each
/// pack, white space left out.
fn looked_through(folder: &Path) -> Vec<(Pack, String)> {
    let (evaluation, press) = (packs(folder), Press::new().expect("a press"));
    let hop = evaluation.hops.iter().find(|one| one.names().hop() == HOP).expect("the hop");
    let mut texts = Vec::new();
    for pack in all_of(hop) {
        let sheets = ink::sheets(set(&evaluation, &press, HOP, pack));
        assert!(sheets.len() < 25, "{pack:?}: {} pages", sheets.len());
        let mut text = String::new();
        for (number, sheet) in sheets.iter().enumerate() {
            let (width, height) = sheet.size;
            for ink in &sheet.ink {
                let words = ink.letters.as_deref().unwrap_or("a line");
                assert!(!ink.missing, "{pack:?}, page {}: `{words}` has no shape", number + 1);
                // A space has no ink, wherever it stands.
                if ink.area.area() <= 0.0 && ink.letters.is_some() {
                    continue;
                }
                // The margins are 20 mm for the binding and 12 mm on the right; a line may be half its width over them.
                let (left, right) = (20.0 / 25.4 * 72.0 - 2.5, width - 12.0 / 25.4 * 72.0 + 2.5);
                let (top, bottom) = (5.0 / 25.4 * 72.0, height - 5.0 / 25.4 * 72.0);
                let inside = left <= ink.area.x0 && ink.area.x1 <= right && top <= ink.area.y0 && ink.area.y1 <= bottom;
                assert!(inside, "{pack:?}, page {}: `{words}` runs out of the page at {:?}", number + 1, ink.area);
            }
            text.push_str(&sheet.text());
        }
        texts.push((pack, close(&text)));
    }
    texts
}

fn close(text: &str) -> String {
    text.chars().filter(|letter| !letter.is_whitespace() && *letter != '\u{200b}').collect()
}

/// Asserts that the crew of end b and the reviewer read these words.
fn read(texts: &[(Pack, String)], words: &str) {
    for wanted in [Pack::Design, Pack::Install(EndName::B)] {
        let (_, text) = texts.iter().find(|(pack, _)| *pack == wanted).expect("the pack");
        assert!(text.contains(&close(words)), "{wanted:?} lacks `{words}`");
    }
}

#[test]
fn template_code_is_printed_as_it_stands() {
    for pair in CODE.chunks(2) {
        let title = pair.join(" ");
        let folder = written(pair[0], &title, &CODE);
        let texts = looked_through(folder.path());
        read(&texts, &title);
        let (_, install) = texts.iter().find(|(pack, _)| *pack == Pack::Install(EndName::B)).expect("the pack");
        for hazard in CODE {
            assert!(install.contains(&close(hazard)), "no `{hazard}`");
        }
    }
}

#[test]
fn names_without_end_stay_on_the_page() {
    let word = "Donaudampfschifffahrtsgesellschaft".repeat(6);
    let words = "a tower with a rather long name ".repeat(7);
    for name in [&word[..200], words.trim_end()] {
        assert!(name.len() >= 200);
        let folder = written(name, name, &[name]);
        looked_through(folder.path());
    }
}

#[test]
fn scripts_without_a_face_are_spelled_and_lose_no_letter() {
    for (name, spelled) in [(ARABIC, true), (HEBREW, true), (HAN, true), (CYRILLIC, false)] {
        let folder =
            written(name, name, &[name, "\u{202e}turned\u{202c}", "e\u{301} \u{200b}\u{feff}\u{e000}\u{1f4a3}"]);
        let texts = looked_through(folder.path());
        let number = |letter: char| format!("[U+{:04X}]", u32::from(letter));
        let letter = |letter| if spelled && letter != ' ' { number(letter) } else { letter.to_string() };
        let words: String = name.chars().map(letter).collect();
        read(&texts, &words);
    }
}
