//! Hops judged and printed one at a time say what they say among all.

use std::fs;
use std::path::Path;

use hopwright::finding::{Finding, Fingerprint};
use hopwright::network::{Scope, Trees};
use hopwright::pack::{HopPacks, Outline, Pack, Press};
use hopwright::spec::{Date, EndName};
use hopwright::verdict::{Evaluation, Read, evaluate};

use crate::fixture::Bench;
use crate::picture::example;

/// A waiver that holds, of a hop that only it asks for, and one that finds nothing.
fn waivers(hop: &str) -> String {
    let one = |id: &str, rule: &str| {
        format!(
            "kind: waiver\nid: {id}\nrule: {rule}\ntarget: {{ hop: {hop} }}\ndeparture: deviation\nreason: Invented.\n\
             approver: R. Invented\napproved_on: 2026-05-18\nexpires: 2027-05-18\nreference: INVENTED-17\n"
        )
    };
    [one("holds", "fade-margin-below-objective"), one("idle", "tilt-out-of-reach")].join("---\n")
}

fn scope(folder: &Path) -> Scope {
    Scope::of(&[folder.to_path_buf()]).on(Some(Date { year: 2026, month: 6, day: 1 }))
}

/// Like itself but for what only the whole run knows: what a finding is known by.
fn bare(findings: &[Finding]) -> Vec<Finding> {
    findings.iter().map(|finding| Finding { fingerprint: Fingerprint::default(), ..finding.clone() }).collect()
}

#[test]
fn a_hop_is_judged_alone_as_among_all() {
    let waived = Bench::new();
    let second =
        fs::read_to_string(waived.path("hops/ridge.yaml")).expect("a hop").replace("id: ridge\n", "id: other\n");
    fs::write(waived.path("hops/other.yaml"), second).expect("writable");
    fs::write(waived.path("waivers.yaml"), waivers("other")).expect("writable");
    let folders = [example("varneck"), example("saltmere"), example("faulty"), waived.path("")];
    let mut without_hop = 0;
    for folder in &folders {
        let scope = scope(folder);
        let whole: Evaluation<(String, Vec<Finding>)> =
            evaluate(&scope, |sheet, findings| (sheet.id().to_owned(), findings.to_vec()));
        let of_no_hop: Vec<Finding> = whole.findings.iter().filter(|finding| finding.hop.is_none()).cloned().collect();
        without_hop += of_no_hop.len();
        let read = Read::of(&scope);
        let open = read.open();
        assert_eq!(open.hop_count(), whole.hop_count);
        assert_eq!(open.hops().count(), whole.hops.len());
        for (number, (id, findings)) in whole.hops.iter().enumerate() {
            let mut alone = Vec::new();
            let beside = open.judge_only(
                &[number],
                |sheet, findings| (sheet.id().to_owned(), findings.to_vec()),
                |judged| alone.push(judged),
            );
            assert_eq!(alone, [(id.clone(), findings.clone())]);
            assert_eq!(bare(&beside), bare(&of_no_hop), "{id}");
            let again = open.hop(number, |sheet, findings| (sheet.id().to_owned(), findings.to_vec()));
            assert_eq!(again.as_ref(), alone.first());
        }
        assert!(open.hop(whole.hops.len(), |_, _| ()).is_none());
    }
    assert!(without_hop > 2, "there is something to find about no hop: {without_hop}");
}

#[test]
fn sheets_come_in_the_order_asked_for_until_there_are_enough() {
    let folder = example("varneck");
    let scope = scope(&folder);
    let read = Read::of(&scope);
    let open = read.open();
    let ids: Vec<String> = open.hops().map(|hop| hop.hop.id.to_string()).collect();
    let mut seen = Vec::new();
    let ended = open.sheets(
        &[3, 0, 2],
        |sheet| sheet.id().to_owned(),
        |id| {
            seen.push(id);
            if seen.len() == 2 { Err("enough") } else { Ok(()) }
        },
    );
    assert_eq!((ended, seen), (Err("enough"), vec![ids[3].clone(), ids[0].clone()]));
}

#[test]
fn a_pack_prints_the_same_alone_and_its_outline_knows_its_errors() {
    for network in ["varneck", "faulty"] {
        let scope = scope(&example(network));
        let read = Read::of(&scope);
        let open = read.open();
        let trees = Trees::of(read.files());
        let press = Press::new().expect("a press");
        let number = open.hops().position(|hop| !hop.records.is_empty()).expect("a hop with a record");
        let both = |packs: &[Pack]| {
            let mut of_hop = None;
            let of_files = open.judge_only(
                &[number],
                |sheet, findings| (HopPacks::only(packs, sheet, findings, None), Outline::of(sheet, findings)),
                |made| of_hop = Some(made),
            );
            let (mut packs, mut outline) = of_hop.expect("a hop");
            packs.add_findings_of_files(&of_files);
            outline.add_findings_of_files(&of_files);
            (packs, outline)
        };
        let (all, outline) = both(&Pack::ALL);
        for pack in Pack::ALL.into_iter().filter(|pack| outline.names().has(*pack)) {
            let (one, _) = both(&[pack]);
            let set = |packs: &HopPacks| packs.set(&press, pack, false, &trees).expect("a pack");
            let bytes = set(&one);
            assert!(bytes == set(&all), "{pack:?} of {network}");
            let text = crate::packs::pages(&bytes).join(" ");
            let is_draft = text.contains("DRAFT") && text.contains("error");
            assert_eq!(outline.errors(pack) > 0, is_draft, "{pack:?} of {network} has {} errors", outline.errors(pack));
            let other = Pack::ALL.into_iter().find(|other| *other != pack).expect("another");
            assert!(one.set(&press, other, false, &trees).is_err(), "what was not asked for is not there");
        }
        assert_eq!(outline.errors(Pack::Design), outline.errors(Pack::Install(EndName::B)));
    }
}
