//! What the pack of a network keeps of a hop: rows to print, and nothing of its sheet.

use super::map::{MapSite, Standing};
use super::tightest;
use crate::finding::Finding;
use crate::finding::faults::NOT_EVALUATED;
use crate::finding::rule::Severity;
use crate::pack::bill::Bill;
use crate::sheet::{Aggressor, EndSheet, HopSheet};
use crate::spec::{Both, EndName};
use crate::units::Decibels;
use crate::voice::{Open, Voice, shown};

/// What is kept of a hop.
#[derive(Debug)]
pub struct HopExtract {
    pub(super) id: String,
    pub(super) sites: Both<MapSite>,
    pub(super) standing: Standing,
    /// Row of the table of hops.
    pub(super) row: [String; 7],
    /// Rows of the frequency plan.
    pub(super) plan: Both<[String; 10]>,
    /// Who disturbs its receivers.
    pub(super) heard: Vec<[String; 5]>,
    /// Work at each end: what is mounted where, and how it is aimed.
    pub(super) visits: Both<[String; 5]>,
    pub(super) bill: Bill,
}

impl HopExtract {
    /// Takes it out of a sheet and what is found about the hop.
    #[must_use]
    pub fn of(sheet: &HopSheet<'_>, findings: &[Finding], voice: Voice) -> Self {
        let (resolved, hop) = (sheet.resolved, sheet.resolved.hop);
        let mut bill = Bill::default();
        sheet.ends.iter().for_each(|end| bill.end(end, voice));
        let standing = standing(findings);
        Self {
            id: hop.id.to_string(),
            sites: resolved.ends.each_ref().map(|end| MapSite {
                id: end.site.id.to_string(),
                title: end.site.title.to_string(),
                latitude: end.site.position.latitude.value.0,
                longitude: end.site.position.longitude.value.0,
            }),
            standing,
            row: row(sheet, findings, standing, voice),
            plan: Both::ends(|end| plan(sheet, end, voice)),
            heard: EndName::BOTH.into_iter().flat_map(|end| heard(sheet, end, voice)).collect(),
            visits: Both::ends(|end| visit(sheet, &sheet.ends[end], voice)),
            bill,
        }
    }
}

/// How a hop stands by what is open about it.
fn standing(findings: &[Finding]) -> Standing {
    let open = || findings.iter().filter(|finding| finding.waived.is_none());
    if open().any(|finding| *finding.rule == NOT_EVALUATED) {
        return Standing::NotJudged;
    }
    match open().map(|finding| finding.severity).max() {
        Some(Severity::Error) => Standing::Failing,
        Some(Severity::Warning) => Standing::Warned,
        Some(Severity::Advice) | None => Standing::Sound,
    }
}

fn row(sheet: &HopSheet<'_>, findings: &[Finding], standing: Standing, voice: Voice) -> [String; 7] {
    let resolved = sheet.resolved;
    let Both { a, b } = resolved.ends.each_ref().map(|end| shown(&end.site.title));
    let tight = tightest::of(sheet, voice);
    let tight = tight.map_or_else(
        || voice.say("nothing"),
        |tight| {
            let open: [Open<'_>; 2] = [("what", &tight.what), ("left", &tight.left)];
            voice.with("tightest", &open)
        },
    );
    let open = findings.iter().filter(|finding| finding.waived.is_none()).count();
    [
        resolved.hop.id.to_string(),
        format!("{a} – {b}"),
        voice.line(&sheet.path.slant),
        voice.line(&sheet.service.counted),
        tight,
        open.to_string(),
        voice.say(standing.key()),
    ]
}

/// An end of the plan: what it sends and hears, and what disturbs it there.
fn plan(sheet: &HopSheet<'_>, end: EndName, voice: Voice) -> [String; 10] {
    let heard = &sheet.directions[end.incoming()].heard;
    let (resolved, channel) = (&sheet.resolved.ends[end], &sheet.resolved.hop.channel);
    [
        shown(&resolved.site.title),
        format!("{}/{end}", sheet.resolved.hop.id),
        resolved.half.id.to_string(),
        voice.number(channel.frequency(end.outgoing())),
        voice.number(channel.frequency(end.incoming())),
        voice.number(&channel.bandwidth),
        voice.term(channel.polarisation.word()),
        voice.number(&resolved.end.transmit_power),
        heard.over_noise.get().map_or_else(|| voice.say("nothing"), |over| voice.number(over)),
        voice.line(&heard.degradation),
    ]
}

/// Below this a sender is not told of: it takes 0.04 dB of a threshold.
const QUIET: Decibels = Decibels(-20.0);

/// The strongest senders that the receiver of an end hears, as many as its sheet names.
fn heard(sheet: &HopSheet<'_>, end: EndName, voice: Voice) -> Vec<[String; 5]> {
    let strong = sheet.heard[end.incoming()].aggressors.iter().filter(|aggressor| aggressor.over_noise >= QUIET);
    let row = |aggressor: &Aggressor| {
        [
            format!("{}/{end}", sheet.resolved.hop.id),
            shown(&aggressor.called.replace('`', "")),
            voice.number(aggressor.heard.level),
            voice.number(aggressor.over_noise),
            voice.number(aggressor.degradation),
        ]
    };
    strong.map(row).collect()
}

/// The work at an end.
fn visit(sheet: &HopSheet<'_>, end: &EndSheet<'_>, voice: Voice) -> [String; 5] {
    let own = end.resolved;
    let far = &sheet.resolved.ends[end.name.far()];
    let aim = [voice.line(&end.lines.true_bearing), voice.line(&end.lines.tilt)];
    let level = &sheet.directions[end.name.incoming()].levels.align_level;
    let support = &own.support.id;
    let open: [Open<'_>; 2] = [("height", &voice.given_in_both(&own.end.height)), ("support", support)];
    [
        format!("{}/{}", sheet.resolved.hop.id, end.name),
        voice.with("trip-to", &[("site", &shown(&far.site.title))]),
        voice.with("trip-mount", &open),
        voice.with("trip-aim", &[("bearing", &aim[0]), ("tilt", &aim[1]), ("level", &voice.line(level))]),
        voice.count("trip-runs", end.runs.len()),
    ]
}
