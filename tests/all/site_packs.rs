//! The pack of one visit, read back from its PDF bytes.

use std::fs;
use std::path::Path;
use std::process::{Command, Output};

use crate::fixture::copy;
use crate::packs::{example, hops, pages, set};
use hopwright::pack::Pack;
use hopwright::spec::EndName;
use pdf_extract::Document;

fn hopwright(folder: &Path, out: &Path, more: &[&str]) -> Output {
    let mut command = Command::new(env!("CARGO_BIN_EXE_hopwright"));
    command.args(["pack", "site"]).args(more).arg("--network").arg(folder).arg("--out").arg(out);
    command.output().expect("the program runs")
}

fn printed(folder: &Path, more: &[&str]) -> Vec<u8> {
    let out = tempfile::tempdir().expect("a folder");
    let done = hopwright(folder, out.path(), more);
    assert_eq!(done.status.code(), Some(0), "{}", String::from_utf8_lossy(&done.stderr));
    fs::read(String::from_utf8_lossy(&done.stdout).trim()).expect("the pack")
}

/// Three hops end at this site, two of them on one leg of the mast.
#[test]
fn a_visit_has_the_site_once_and_the_tasks_of_every_end() {
    let bytes = printed(&example("varneck"), &["murrgrat"]);
    let pages = pages(&bytes);
    let whole = pages.join(" ");
    assert_eq!(whole.matches("What can hurt you here").count(), 1, "the card of the site stands once");
    assert_eq!(whole.matches("Do not start until the person in charge").count(), 1, "one hold for one visit");
    for end in ["exchange-murrgrat, end b", "murrgrat-kerbjoch, end a", "solleralm-murrgrat, end b"] {
        assert!(whole.contains(end), "no {end}");
    }
    // The supports with what hangs on them, the materials of all three, what they share.
    assert!(whole.contains("Support mast-leg-east (mast)") && whole.contains("Support mast-leg-south (mast)"));
    assert!(whole.contains("3 Radio Halvane Quorrel, high"), "{whole}");
    assert_eq!(whole.matches("Bonded to Stainless bar on the mast").count(), 1);
    // What is passed on the way up, and whom to call.
    let climb = pages.iter().find(|page| page.contains("Live on the way up")).expect("a climb");
    assert!(climb.contains("exchange-murrgrat, end b 9.5 m"), "{climb}");
    assert!(climb.contains("Lift control room") && climb.contains("+000 555 0160"), "{climb}");
    // A page found alone says of which end it is.
    let of_end = pages.iter().filter(|page| page.contains("Murrgrat to Kerbjoch")).count();
    assert!(of_end >= 4, "{of_end} pages name the hop");
}

/// Word for word as in the pack of the end alone.
#[test]
fn the_tasks_of_an_end_are_those_of_its_install_pack() {
    let evaluation = hops(&example("varneck"));
    let number = evaluation.hops.iter().position(|hop| hop.packs.names().hop() == "solleralm-murrgrat").expect("a hop");
    let alone = pages(&set(&evaluation, number, Pack::Install(EndName::B))).join(" ");
    let visit = pages(&printed(&example("varneck"), &["murrgrat"])).join(" ");
    // From the title of a task to the next, without the furniture of pages in between.
    for (from, to) in [
        ("Turn the antenna to", "Tighten every screw"),
        ("Meter on port", "A stronger signal"),
        ("Set bandwidth", "and modulation"),
    ] {
        let part = |text: &str| -> Vec<String> {
            text.match_indices(from)
                .filter_map(|(at, _)| Some(text[at..at + text[at..].find(to)?].to_owned()))
                .collect()
        };
        let (one, all) = (part(&alone), part(&visit));
        assert_eq!(one.len(), 1, "{from}: {one:?}");
        assert_eq!(all.len(), 3, "{from}: {all:?}");
        assert!(all.contains(&one[0]), "{from}: {one:?} / {all:?}");
    }
}

#[test]
fn a_site_pack_meets_the_standards_in_both_languages_on_both_papers_and_is_the_same_each_time() {
    for paper in ["a4", "letter"] {
        let folder = tempfile::tempdir().expect("a folder");
        copy(&example("varneck"), folder.path());
        let file = folder.path().join("network.yaml");
        let text = fs::read_to_string(&file).expect("the network");
        let text = text.replace("paper: a4", "paper: X").replace("paper: letter", "paper: X");
        fs::write(&file, text.replace("paper: X", &format!("paper: {paper}"))).expect("written");
        let german = printed(folder.path(), &["kerbjoch", "--language", "de"]);
        assert!(pages(&german)[0].contains("Standortmappe"));
        let english = printed(folder.path(), &["kerbjoch"]);
        for bytes in [&german, &english] {
            let text = String::from_utf8_lossy(bytes);
            assert!(text.contains("<pdfaid:part>3</pdfaid:part>") && text.contains("<pdfuaid:part>1</pdfuaid:part>"));
            let count = Document::load_mem(bytes).expect("a PDF").get_pages().len();
            assert!((6..=9).contains(&count), "{count} pages on {paper}");
        }
        assert_eq!(english, printed(folder.path(), &["kerbjoch"]), "equal bytes");
    }
}

#[test]
fn a_site_with_errors_or_without_a_name_is_not_printed() {
    let out = tempfile::tempdir().expect("a folder");
    let unknown = hopwright(&example("varneck"), out.path(), &["murrgrad"]);
    assert_eq!(unknown.status.code(), Some(2));
    assert!(String::from_utf8_lossy(&unknown.stderr).contains("did you mean `murrgrat`?"));
    let folder = tempfile::tempdir().expect("a folder");
    copy(&example("varneck"), folder.path());
    let hop = folder.path().join("hops/solleralm-murrgrat.yaml");
    let text = fs::read_to_string(&hop).expect("there");
    // In the place of the other antenna on the same leg.
    fs::write(&hop, text.replace("height: 14 m", "height: 9.5 m")).expect("written");
    let refused = hopwright(folder.path(), out.path(), &["murrgrat"]);
    assert_eq!(refused.status.code(), Some(1));
    let words = String::from_utf8_lossy(&refused.stderr);
    assert!(words.contains("site `murrgrat` is not printed"), "{words}");
    let draft = hopwright(folder.path(), out.path(), &["murrgrat", "--draft"]);
    assert_eq!(draft.status.code(), Some(0), "{}", String::from_utf8_lossy(&draft.stderr));
    let path = String::from_utf8_lossy(&draft.stdout).trim().to_owned();
    for page in pages(&fs::read(path).expect("the pack")) {
        assert!(page.contains("DRAFT"), "{page}");
    }
}
