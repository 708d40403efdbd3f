//! Mistakes as people make them, each in a sound network: what is told of it, and that nothing independent is hidden.
//!
//! `tests/mistakes` holds one edit after the other. After `== what it is` stands `! rule, rule`: the findings that are told, in
//! order of place, no more and no fewer; after `> ` words that they must say. What follows is as in the edits of the rules.

use std::fs;

use hopwright::finding::Finding;
use hopwright::verdict::Evaluation;

use crate::fixture::{Bench, Edit, files_with, tests_folder};

struct Mistake {
    name: String,
    told: Vec<String>,
    says: Vec<String>,
    edit: Edit,
}

fn all() -> Vec<Mistake> {
    let mut mistakes = Vec::new();
    for path in files_with(&tests_folder().join("mistakes"), "edits") {
        let text = fs::read_to_string(&path).expect("readable");
        for part in text.split("== ").skip(1) {
            let (name, rest) = part.split_once('\n').expect("an edit after its name");
            let (head, body): (Vec<&str>, Vec<&str>) =
                rest.lines().partition(|line| line.starts_with("! ") || line.starts_with("> "));
            let after =
                |sign: &str| head.iter().filter_map(|line| line.strip_prefix(sign)).map(str::to_owned).collect();
            let told: Vec<String> = after("! ");
            let told = told.iter().flat_map(|rules| rules.split(", ")).map(str::to_owned).collect();
            let edit = Edit::parse(&format!("# {name}\n{}", body.join("\n")), name);
            mistakes.push(Mistake { name: name.into(), told, says: after("> "), edit });
        }
    }
    mistakes
}

fn judged(edits: &[&Edit]) -> Option<(Bench, Evaluation<()>)> {
    let bench = Bench::of_example("varneck");
    if !edits.iter().all(|edit| bench.takes(edit)) {
        return None;
    }
    let evaluation = bench.judge();
    Some((bench, evaluation))
}

#[test]
fn each_mistake_is_told_by_its_cause_and_no_more() {
    let mistakes = all();
    assert!(mistakes.len() >= 100, "{} mistakes", mistakes.len());
    let mut wrong = Vec::new();
    let mut once = 0;
    for mistake in &mistakes {
        let (bench, mut evaluation) = judged(&[&mistake.edit]).expect("an edit that fits");
        evaluation.gather();
        let told: Vec<&str> = evaluation.findings.iter().map(|finding| finding.rule.name).collect();
        once += usize::from(told.len() == 1);
        if told != mistake.told {
            wrong.push(format!("{}: tells {told:?}, should tell {:?}", mistake.name, mistake.told));
        }
        let shown = bench.shown(&evaluation).split_whitespace().collect::<Vec<_>>().join(" ");
        for words in mistake.says.iter().filter(|words| !shown.contains(words.as_str())) {
            wrong.push(format!("{}: does not say {words:?}:\n{shown}", mistake.name));
        }
    }
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
    assert!(once * 10 >= mistakes.len() * 9, "{once} of {} are told by one finding", mistakes.len());
}

/// Two mistakes at once: whatever one of them tells by itself is there, as itself or counted under a cause, or the hop is said
/// not to be judged in full.
#[test]
fn a_cause_hides_nothing_that_is_independent_of_it() {
    let mistakes = all();
    let heads: Vec<Vec<Finding>> = mistakes
        .iter()
        .map(|mistake| {
            let (_, mut evaluation) = judged(&[&mistake.edit]).expect("an edit that fits");
            evaluation.gather();
            evaluation.findings
        })
        .collect();
    let (mut tried, mut wrong) = (0, Vec::new());
    for first in 0..mistakes.len() {
        // A stride that has no factor in common with their number meets every other one over time.
        let second = (first * 37 + 11) % mistakes.len();
        let edits = [&mistakes[first].edit, &mistakes[second].edit];
        let Some((_, mut evaluation)) = judged(&edits).filter(|_| first != second) else { continue };
        evaluation.gather();
        tried += 1;
        for head in heads[first].iter().chain(&heads[second]) {
            let same = |finding: &Finding| finding.rule == head.rule && shares_a_hop(finding, head);
            let waits = |finding: &Finding| {
                let of_it = head.hop.is_none() || shares_a_hop(finding, head);
                of_it && (finding.rule.says_what_was_not_judged() || finding.rule.family == "spec")
            };
            if !evaluation.everything().any(|finding| same(finding) || waits(finding)) {
                wrong.push(format!(
                    "{} and {}: {} of {:?} is gone",
                    mistakes[first].name, mistakes[second].name, head.rule.name, head.hop
                ));
            }
        }
    }
    assert!(tried > 80, "{tried} pairs");
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

fn shares_a_hop(one: &Finding, other: &Finding) -> bool {
    let all = |finding: &Finding| finding.with_gathered().flat_map(Finding::hops).cloned().collect::<Vec<_>>();
    let (one, other) = (all(one), all(other));
    (one.is_empty() && other.is_empty()) || one.iter().any(|hop| other.contains(hop))
}

#[test]
fn nothing_follows_from_a_cause_that_is_less_grave_or_set_aside() {
    let bench = Bench::with(&[("equipment/mounting.yaml", "beamwidth: 0.48 deg", "beamwidth: 4.8 deg")]);
    let mut evaluation = bench.judge();
    evaluation.gather();
    let follow = |evaluation: &Evaluation<()>| evaluation.findings.iter().map(|f| f.follow().len()).sum::<usize>();
    for finding in &evaluation.findings {
        assert!(finding.follow().iter().all(|under| under.severity <= finding.severity));
    }
    bench.change(
        "network.yaml",
        "rules: { clearance-not-shown: off }",
        "rules: { clearance-not-shown: off, gain-and-beamwidth-disagree: advice }",
    );
    let mut lowered = bench.judge();
    let count = lowered.findings.len();
    lowered.gather();
    assert_eq!(follow(&lowered), 0, "advice is no cause of errors");
    assert_eq!(lowered.findings.len(), count);
}

#[test]
fn every_name_in_the_table_of_causes_is_a_rule_or_a_family() {
    use hopwright::rules::{causes::CAUSES, every};
    for cause in CAUSES {
        for name in cause.spoils {
            let known = every().any(|rule| rule.name == *name || rule.family == *name);
            assert!(known, "{} spoils `{name}`, which is neither a rule nor a family", cause.rule.name);
        }
    }
}
