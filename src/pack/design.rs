//! The design pack as data: what a reviewer needs to say yes or no, and to check it.

use serde::Serialize;

use super::decision;
use super::figures::{self, Figure};
use super::licence;
use super::surroundings;
use super::tables::{self, States};
use super::waivers;
use super::words::{Table, sentence, text_or};
use crate::figure;
use crate::finding::rule::Severity;
use crate::finding::{Finding, Spot};
use crate::listing::Places;
use crate::place::Place;
use crate::rules;
use crate::sheet::{AS_WRITTEN, HopSheet, Method, SectionKey};
use crate::spec::{Kind, Revision, Text};
use crate::voice::{Voice, shown};

/// All pages.
#[derive(Debug, Clone, Serialize)]
pub(super) struct Design {
    verdict: String,
    decision: Table,
    findings: Vec<Open>,
    waivers: Table,
    rules: String,
    ends: Table,
    path: Table,
    licence: Table,
    sight: Option<Sight>,
    budget: Table,
    service: Table,
    /// What of the outage is not counted, if anything.
    left_out: Option<String>,
    outages: Option<Figure>,
    grades: Option<Figure>,
    plan: Option<Figure>,
    states: Vec<States>,
    mounting: Table,
    alignment: Table,
    surroundings: Table,
    loads: Table,
    power: Table,
    grounding: Table,
    assumptions: Vec<String>,
    methods: Table,
    /// What was written, with the place of each; looked up when the files are at hand.
    inputs: Vec<InputFile>,
    #[serde(skip)]
    written: Vec<Written>,
    issues: Vec<Issue>,
    program: String,
    notes: Vec<String>,
    #[serde(skip)]
    voice: Voice,
}

/// Line of sight: the drawing and its numbers.
#[derive(Debug, Clone, Serialize)]
struct Sight {
    svg: String,
    alt: String,
    table: Table,
}

impl Sight {
    fn of(sheet: &HopSheet<'_>, voice: Voice) -> Option<Self> {
        let figure = figure::of(sheet, voice)?;
        Some(Self { svg: figure.svg, alt: figure.alt, table: tables::sight(sheet, voice) })
    }
}

/// A finding in words.
#[derive(Debug, Clone, Serialize)]
pub(super) struct Open {
    severity: String,
    rule: &'static str,
    message: String,
    place: String,
    help: Option<String>,
}

impl Design {
    pub(super) fn of(sheet: &HopSheet<'_>, voice: Voice) -> Self {
        Self {
            verdict: String::new(),
            decision: decision::table(sheet, voice),
            findings: Vec::new(),
            waivers: Table::default(),
            rules: rules_run(sheet, voice),
            ends: tables::ends(sheet, voice),
            path: tables::path(sheet, voice),
            licence: licence::table(sheet, voice),
            sight: Sight::of(sheet, voice),
            budget: tables::budget(sheet, voice),
            service: tables::service(sheet, voice),
            left_out: tables::left_out(sheet, voice),
            outages: figures::outages(sheet, voice),
            grades: figures::grades(sheet, voice),
            plan: figures::plan(sheet, voice),
            states: sheet.directions.each_ref().map(|direction| tables::states(direction, voice)).into_iter().collect(),
            mounting: tables::mounting(sheet, voice),
            alignment: tables::alignment(sheet, voice),
            surroundings: surroundings::surroundings(sheet, voice),
            loads: surroundings::loads(sheet, voice),
            power: tables::power(sheet, voice),
            grounding: tables::grounding(sheet, voice),
            assumptions: sheet.assumptions().iter().map(|assumption| voice.spoken(assumption)).collect(),
            methods: methods(sheet, voice),
            inputs: Vec::new(),
            written: written(sheet, voice),
            issues: issues(sheet, voice),
            program: voice.with("computed-by", &[("program", &concat!("hopwright ", env!("CARGO_PKG_VERSION")))]),
            notes: sheet.resolved.hop.notes.iter().map(ToString::to_string).collect(),
            voice,
        }
    }

    /// The same with its findings looked up in the YAML.
    pub(super) fn with_findings(&self, findings: &[Finding], places: &Places<'_>) -> Self {
        let (waived, findings): (Vec<&Finding>, Vec<&Finding>) =
            findings.iter().partition(|finding| finding.waived.is_some());
        let of = |severity| findings.iter().filter(|finding| finding.severity == severity).count();
        let (errors, warnings, advice) = (of(Severity::Error), of(Severity::Warning), of(Severity::Advice));
        let voice = self.voice;
        let found = [
            ("verdict-errors", errors),
            ("verdict-warnings", warnings),
            ("verdict-advice", advice),
            ("verdict-waived", waived.len()),
        ];
        let counted = found.into_iter().filter(|(key, number)| *number > 0 || *key == "verdict-errors");
        let verdict: Vec<String> = counted.map(|(key, number)| voice.count(key, number)).collect();
        let waivers = waivers::table(&waived, voice);
        let mut sorted = findings;
        sorted.sort_by_key(|finding| std::cmp::Reverse(finding.severity));
        let spoken = voice.of_findings().filter(|_| !(sorted.is_empty() && waived.is_empty()));
        let rules = [Some(self.rules.clone()), spoken].into_iter().flatten().collect::<Vec<_>>().join(" ");
        let findings = sorted.into_iter().map(|finding| open(finding, places, voice)).collect();
        let inputs = inputs(&self.written, places, voice);
        Self { verdict: verdict.join(" "), findings, waivers, rules, inputs, ..self.clone() }
    }
}

pub(super) fn open(finding: &Finding, places: &Places<'_>, voice: Voice) -> Open {
    let spot = finding.labels.first().map(|label| &label.spot);
    let place = spot.and_then(|spot| places.line(spot)).map(|(file, line)| format!("{file}:{line}"));
    Open {
        severity: voice.say(severity(finding.severity)),
        rule: finding.rule.name,
        message: shown(&finding.message),
        place: place.unwrap_or_default(),
        help: finding.help.as_deref().map(|help| voice.with("remedy", &[("help", &shown(help))])),
    }
}

/// An issue of the network.
#[derive(Debug, Clone, Serialize)]
struct Issue {
    revision: String,
    date: String,
    change: String,
    by: String,
}

/// The issues so far.
fn issues(sheet: &HopSheet<'_>, voice: Voice) -> Vec<Issue> {
    let name = |name: &Option<Text>| text_or(name.as_ref(), voice.say("not-set"));
    let issue = |one: &Revision| Issue {
        revision: one.revision.to_string(),
        date: one.date.to_string(),
        change: one.change.to_string(),
        by: voice.with("issued-by", &[("creator", &name(&one.creator)), ("approver", &name(&one.approver))]),
    };
    sheet.resolved.network.revisions.iter().map(issue).collect()
}

/// The key of a severity.
pub(super) const fn severity(severity: Severity) -> &'static str {
    match severity {
        Severity::Error => "severity-error",
        Severity::Warning => "severity-warning",
        Severity::Advice => "severity-advice",
    }
}

fn rules_run(sheet: &HopSheet<'_>, voice: Voice) -> String {
    let quieted = rules::quieted(sheet.resolved.network);
    let off: Vec<&str> =
        quieted.iter().filter(|one| one.to.is_none() && one.paths.is_none()).map(|one| one.rule.name).collect();
    // What came back from the roof is judged in the acceptance record.
    let judges = |entry: &&&rules::Entry| entry.check.is_of_hops() && entry.rule.family != "record";
    let run = rules::ALL.iter().filter(judges).filter(|entry| !off.contains(&entry.rule.name)).count();
    match off.as_slice() {
        [] => voice.with("rules-run", &[("number", &run)]),
        off => voice.with("rules-run-but", &[("number", &run), ("off", &off.join(", "))]),
    }
}

/// A value somebody wrote, and where.
#[derive(Debug, Clone)]
struct Written {
    title: String,
    words: String,
    text: String,
    place: Place,
    taken: Option<String>,
}

/// The inputs that stand in one file, in the order of its lines.
#[derive(Debug, Clone, Serialize)]
struct InputFile {
    file: String,
    inputs: Vec<Input>,
}

/// A line of a file with what was written there; once, however many places of the sheet take it from there.
#[derive(Debug, Clone, Serialize)]
struct Input {
    line: usize,
    words: String,
    /// The parts of the sheet it serves.
    parts: Vec<String>,
    text: String,
    /// What gives it, where the hop does not write it itself.
    taken: Option<String>,
}

/// The lines of the sheet that are inputs. Those of the modulation states have a table of their own, and what a crew wrote
/// is none of the design.
fn written(sheet: &HopSheet<'_>, voice: Voice) -> Vec<Written> {
    let (sections, hop) = (sheet.design_sections(), sheet.resolved.hop);
    let rows = sections
        .iter()
        .filter(|section| !matches!(section.key, SectionKey::State(..)))
        .flat_map(|section| section.rows.iter().map(|row| (&section.title, row)));
    let given = rows.filter(|(_, row)| row.method.words() == AS_WRITTEN).filter_map(|(title, row)| {
        row.text.as_ref().ok()?;
        let (title, words) = (voice.spoken(title), sentence(&voice.term(row.words)));
        let place = row.from.first()?;
        let taken = hop.inherits.as_ref().filter(|_| place.document == hop.at).and_then(|all| all.find(&place));
        let taken = taken.map(|(one, _)| voice.with(given_by(one.kind), &[("id", &one.id)]));
        Some(Written { title, words, text: voice.row(row), place, taken })
    });
    given.collect()
}

fn inputs(written: &[Written], places: &Places<'_>, voice: Voice) -> Vec<InputFile> {
    let mut groups: Vec<InputFile> = Vec::new();
    for one in written {
        let found = places.line(&Spot::Field(one.place)).map(|(file, line)| (file.into_owned(), line));
        let (path, line) = found.unwrap_or_else(|| (voice.say("nothing"), 0));
        let at = groups.iter().position(|group| group.file == path).unwrap_or(groups.len());
        if at == groups.len() {
            groups.push(InputFile { file: path, inputs: Vec::new() });
        }
        let group = &mut groups[at];
        let same = |input: &&mut Input| input.line == line && input.words == one.words && input.text == one.text;
        match group.inputs.iter_mut().find(same) {
            Some(input) => input.parts.push(one.title.clone()),
            None => group.inputs.push(Input {
                line,
                words: one.words.clone(),
                parts: vec![one.title.clone()],
                text: one.text.clone(),
                taken: one.taken.clone(),
            }),
        }
    }
    groups.sort_by(|one, other| one.file.cmp(&other.file));
    for group in &mut groups {
        group.inputs.sort_by_key(|input| input.line);
    }
    groups
}

/// The key of what gives a value.
const fn given_by(kind: Kind) -> &'static str {
    match kind {
        Kind::Template => "given-by-template",
        Kind::Site => "given-by-site",
        _ => "given-by-network",
    }
}

/// Each method once, with the lines it serves.
fn methods(sheet: &HopSheet<'_>, voice: Voice) -> Table {
    let mut found: Vec<(Method, Vec<&str>)> = Vec::new();
    for row in sheet
        .design_sections()
        .iter()
        .flat_map(|section| &section.rows)
        .filter(|row| row.text.is_ok() && row.method.names_a_source())
    {
        match found.iter_mut().find(|(method, _)| *method == row.method) {
            Some((_, words)) if words.contains(&row.words) => {}
            Some((_, words)) => words.push(row.words),
            None => found.push((row.method, vec![row.words])),
        }
    }
    let mut table = Table::new(voice, ["method", "method-lines"]);
    for (method, words) in found {
        let words: Vec<String> = words.into_iter().map(|words| voice.term(words)).collect();
        table.row([sentence(&voice.term(method.words())), words.join(", ")]);
    }
    table
}
