//! The install pack of one end as data: what a crew needs on the way, on the roof, and to sign.

use serde::Serialize;

use super::cautions::{self, Caution};
use super::company;
use super::figures::{self, Figure};
use super::lightning;
use super::lobes::Lobes;
use super::parts::{self, PartRow};
use super::phrases::{across, angle, feeds, least_conductor, reach};
use super::record_page::RecordPage;
use super::steps::{self, Item};
use super::words::{Fact, Table, fact, text_or};
use crate::network::ResolvedEnd;
use crate::sheet::{EndSheet, HopSheet, KeepClear, Line, OnwardLines, RunSheet, Saying};
use crate::spec::{AlignedBy, Carried, EndName, Screening};
use crate::units::{latitude_in_seconds, longitude_in_seconds};
use crate::voice::{Open, Voice};

/// All pages.
#[derive(Debug, Serialize)]
pub(super) struct Install {
    site: String,
    job: String,
    position: Vec<Fact>,
    place: Option<Figure>,
    hazards: Vec<String>,
    near: Vec<String>,
    permits: Vec<String>,
    keep_clear: Vec<Fact>,
    climb: Table,
    climb_call: String,
    tools: String,
    access: String,
    contacts: Table,
    supplies: Vec<Fact>,
    parts: Vec<PartRow>,
    cautions: Vec<Caution>,
    keys: Vec<Fact>,
    declination: String,
    mounting_figure: Option<Figure>,
    mounting: Vec<Item>,
    chain: Option<Figure>,
    runs: Table,
    grounding: Vec<Fact>,
    cabling: Vec<Item>,
    target: Target,
    scale: Option<Figure>,
    lobes: Lobes,
    indicators: Table,
    preparation: Vec<Item>,
    alignment: Vec<Item>,
    outside: Table,
    record: RecordPage,
    notes: Vec<String>,
}

/// What the meter must show.
#[derive(Debug, Serialize)]
struct Target {
    /// What is looked at.
    by: String,
    /// What it must come to, for arm's length.
    reading: String,
    /// What else may do.
    band: String,
    /// What that means, in levels.
    level: Vec<String>,
    /// Which way is stronger.
    sense: String,
}

impl Install {
    pub(super) fn of(sheet: &HopSheet<'_>, which: EndName, voice: Voice) -> Self {
        let end = &sheet.ends[which];
        let own = end.resolved;
        let site = own.site;
        Self {
            site: site.title.to_string(),
            job: job(end, voice),
            position: position(own, voice),
            place: figures::place(end, voice),
            near: near(own, voice),
            permits: site.permits.iter().map(ToString::to_string).collect(),
            keep_clear: keep_clear(end, voice),
            climb: company::climb(end, voice),
            climb_call: company::whom_to_call(own, voice),
            tools: parts::tools(end, voice),
            hazards: hazards(own),
            access: text_or(own.support.spec.access.as_ref().or(site.access.as_ref()), voice.say("not-assessed-ask")),
            contacts: contacts(own, voice),
            supplies: supplies(own, voice),
            parts: parts::list(end, voice),
            cautions: cautions::general(voice),
            keys: keys(sheet, end, voice),
            declination: declination(sheet, end, voice),
            mounting_figure: figures::mounting(end, voice),
            mounting: steps::mounting(sheet, end, voice),
            chain: figures::chain(end, voice),
            runs: runs(end, voice),
            grounding: grounding(end, voice),
            cabling: steps::cabling(end, voice),
            target: target(end, voice),
            scale: figures::scale(end, voice),
            lobes: Lobes::of(end, voice),
            indicators: indicators(own, voice),
            preparation: steps::preparation(sheet, end, voice),
            alignment: steps::alignment(end, voice),
            outside: outside(end, voice),
            record: RecordPage::of(sheet, end, voice),
            notes: sheet.resolved.hop.notes.iter().map(ToString::to_string).collect(),
        }
    }
}

/// What can hurt somebody at the site and on the support.
fn hazards(own: &ResolvedEnd<'_>) -> Vec<String> {
    own.site.hazards.iter().chain(&own.support.spec.hazards).map(ToString::to_string).collect()
}

/// The work in a sentence.
fn job(end: &EndSheet<'_>, voice: Voice) -> String {
    let own = end.resolved;
    let kind = voice.term(own.support.kind.word());
    let open: [Open<'_>; 5] = [
        ("radio", &own.radio.title),
        ("antenna", &own.antenna.title),
        ("support", &own.support.id),
        ("kind", &kind),
        ("far", &end.far.site.title),
    ];
    voice.with("job", &open)
}

fn declination(sheet: &HopSheet<'_>, end: &EndSheet<'_>, voice: Voice) -> String {
    let declination = voice.line(&end.lines.declination);
    voice.with("declination", &[("declination", &declination), ("date", &sheet.resolved.network.date)])
}

/// People and power lines the site lists, in the words of the owner.
pub(super) fn near(own: &ResolvedEnd<'_>, voice: Voice) -> Vec<String> {
    let site = own.site;
    let lines = site.power_lines.iter().map(|line| {
        let distance = voice.given_in_both(&line.distance);
        let voltage = text_or(line.voltage.as_ref().map(|volts| voice.number(volts)), voice.say("voltage-unknown"));
        let open: [Open<'_>; 3] = [("title", &line.title), ("distance", &distance), ("voltage", &voltage)];
        let Some(consent) = &line.consent else { return voice.with("near-line", &open) };
        let agreed: [Open<'_>; 3] =
            [("name", &consent.name), ("reference", &consent.reference), ("date", &consent.date)];
        format!("{} {}", voice.with("near-line", &open), voice.with("near-line-consent", &agreed))
    });
    let people = site.people.iter().map(|spot| {
        let (distance, bearing) = (voice.given_in_both(&spot.distance), voice.number(&spot.bearing));
        voice.with("near-people", &[("title", &spot.title), ("distance", &distance), ("bearing", &bearing)])
    });
    lines.chain(people).collect()
}

/// How far to stay away in front of the antenna.
fn keep_clear(end: &EndSheet<'_>, voice: Voice) -> Vec<Fact> {
    let lines = &end.people;
    let said = |line: &Line<KeepClear>| reach(line, voice);
    vec![
        fact(voice.say("keep-clear-public"), said(&lines.public_distance)),
        fact(voice.say("keep-clear-workers"), said(&lines.workers_distance)),
    ]
}

pub(super) fn position(own: &ResolvedEnd<'_>, voice: Voice) -> Vec<Fact> {
    let at = &own.site.position;
    let (latitude, longitude) = (at.latitude.value, at.longitude.value);
    vec![
        fact(voice.say("latitude"), angle(latitude, latitude_in_seconds(latitude), voice)),
        fact(voice.say("longitude"), angle(longitude, longitude_in_seconds(longitude), voice)),
        fact(voice.say("ground-above-sea"), voice.given_in_both(&own.site.ground_height)),
    ]
}

pub(super) fn contacts(own: &ResolvedEnd<'_>, voice: Voice) -> Table {
    let mut table = Table::new(voice, ["contact", "contact-for", "contact-telephone"]);
    for contact in &own.site.contacts {
        let role = text_or(contact.role.as_ref(), voice.say("nothing"));
        table.row([contact.name.to_string(), role, contact.phone.to_string()]);
    }
    table
}

/// Where power and earth are on the site.
pub(super) fn supplies(own: &ResolvedEnd<'_>, voice: Voice) -> Vec<Fact> {
    let power = own.site.power.iter().map(|point| ("site-power", &point.title));
    let earth = own.site.earth.iter().map(|point| ("site-earth", &point.title));
    power.chain(earth).map(|(key, title)| Fact { label: voice.say(key), value: title.to_string() }).collect()
}

fn keys(sheet: &HopSheet<'_>, end: &EndSheet<'_>, voice: Voice) -> Vec<Fact> {
    let (own, lines) = (end.resolved, &end.lines);
    let polarisation = voice.term(sheet.resolved.hop.channel.polarisation.word());
    let mut keys = vec![
        fact(voice.say("true-bearing"), voice.line(&lines.true_bearing)),
        fact(voice.say("magnetic-bearing"), voice.line(&lines.magnetic_bearing)),
        fact(voice.say("tilt"), steps::tilt(end, voice)),
        fact(voice.say("antenna-centre"), voice.given_in_both(&own.end.height)),
        fact(voice.say("polarisation"), polarisation),
        fact(voice.say("bracket"), parts::way_up(own.end.bracket.orientation, voice)),
    ];
    if own.bracket.plate.is_some() {
        let fitted = if own.end.bracket.plate { "plate-fitted" } else { "plate-not-fitted" };
        keys.push(fact(voice.say("plate"), voice.say(fitted)));
    }
    keys
}

fn runs(end: &EndSheet<'_>, voice: Voice) -> Table {
    let mut table = Table::new(voice, ["run"]);
    table.head.extend(end.runs.iter().map(|run| voice.with("run-port", &[("port", &run.resolved.port.id)])));
    let mut add = |key: &str, cell: &dyn Fn(&RunSheet<'_>) -> String| {
        table.rows.push([voice.say(key)].into_iter().chain(end.runs.iter().map(cell)).collect());
    };
    let nothing = || voice.say("nothing");
    add("run-cable", &|run| run.resolved.cable.title.to_string());
    add("run-outdoors", &|run| voice.given_in_both(&run.resolved.run.outdoor));
    let indoor = |run: &RunSheet<'_>| run.resolved.run.indoor.as_ref().map(|length| voice.given_in_both(length));
    add("run-indoors", &|run| text_or(indoor(run), voice.say("not-stated")));
    add("run-diameter", &|run| across(run.resolved.cable, voice));
    add("run-insert", &|run| voice.line(&run.lines.gland));
    add("run-bend", &|run| voice.line_in_both(&run.handling.bend_radius));
    add("run-pulling", &|run| voice.line_in_both(&run.handling.pulling_radius));
    let drip = |run: &RunSheet<'_>| run.handling.drip_loop.value().ok().map(|depth| voice.given_in_both(depth));
    add("run-drip-loop", &|run| text_or(drip(run), nothing()));
    add("run-screen", &|run| match run.resolved.cable.screened() {
        Screening::UUtp => voice.say("run-unscreened"),
        screening => {
            let bonded = voice.term(run.resolved.run.screen.words());
            voice.with("run-screen-bonded", &[("screen", &screening.word()), ("bonded", &bonded)])
        }
    });
    add("run-arresters", &|run| parts::arresters_in_words(run.resolved, voice));
    add("run-fed-by", &|run| text_or(run.resolved.supply.map(|supply| &supply.title), nothing()));
    add("run-power-point", &|run| match (run.resolved.supply, run.resolved.power_point) {
        (None, _) => nothing(),
        (Some(_), None) => voice.say("not-set"),
        (Some(_), Some(point)) => point.title.to_string(),
    });
    add("run-voltage", &|run| {
        if run.carries(Carried::Power) { voice.line(&run.lines.radio_voltage) } else { nothing() }
    });
    if end.runs.iter().any(|run| run.onward.is_some()) {
        let fed = |run: &RunSheet<'_>, words: &dyn Fn(&OnwardLines) -> String| {
            run.onward.as_ref().map_or_else(nothing, words)
        };
        add("run-feeds", &|run| fed(run, &|onward| feeds(onward, voice)));
        add("run-feeds-voltage", &|run| fed(run, &|onward| voice.line(&onward.voltage)));
    }
    table
}

fn grounding(end: &EndSheet<'_>, voice: Voice) -> Vec<Fact> {
    let (own, grounding) = (end.resolved, &end.resolved.end.grounding);
    let ground = &own.radio.ground;
    let not_set = || voice.say("not-set");
    let bonded = match own.earth.and_then(|point| point.bonded) {
        Some(true) => "ground-bonded-yes",
        Some(false) => "ground-bonded-no",
        None => "ground-bonded-unknown",
    };
    let length = grounding.length.as_ref().map(|length| voice.given_in_both(length));
    let torque = ground.torque.as_ref().map(|torque| voice.given_in_both(torque));
    let conductor = grounding.conductor.as_ref().map(|size| voice.number(size));
    let mut facts = vec![
        fact(voice.say("ground-conductor"), text_or(conductor, not_set())),
        fact(voice.say("ground-metal"), voice.term(grounding.material.words())),
        fact(voice.say("ground-least"), least_conductor(end, voice)),
        fact(voice.say("ground-length"), text_or(length, not_set())),
        fact(voice.say("ground-bend"), voice.given_in_both(&end.practice.ground_bend.given)),
        fact(voice.say("ground-bonds-to"), text_or(own.earth.map(|point| &point.spec.title), not_set())),
        fact(voice.say("ground-bonded"), voice.say(bonded)),
        fact(voice.say("ground-terminal"), &ground.terminal),
        fact(voice.say("ground-torque"), text_or(torque, voice.say("see-maker"))),
    ];
    facts.extend(lightning::facts(end, voice));
    facts
}

fn target(end: &EndSheet<'_>, voice: Voice) -> Target {
    let lines = &end.lines;
    let accept = |band: String| voice.with("target-accept", &[("band", &band)]);
    let (level, state) = (voice.line(&lines.target_level), voice.line(&lines.align_state));
    let means: [Open<'_>; 2] = [("level", &level), ("state", &state)];
    let band = accept(voice.band(&lines.level_least, &lines.level_most));
    match end.resolved.radio.aligned_by() {
        Some(AlignedBy::Voltage(readout)) => Target {
            by: voice.with("target-port", &[("port", &readout.port)]),
            reading: voice.line(&lines.target_voltage),
            band: accept(voice.band(&lines.voltage_at_least, &lines.voltage_at_most)),
            level: vec![voice.with("target-level", &means), band],
            sense: voice.with("target-sense", &[("sense", &voice.line(&lines.meter_sense))]),
        },
        Some(AlignedBy::Level(shown)) => Target {
            by: voice.with("target-shown-level", &[("place", &shown.at)]),
            reading: level,
            band,
            level: vec![voice.with("target-state", &[("state", &state)])],
            sense: voice.say("target-sense-level"),
        },
        Some(AlignedBy::Indication(indication)) => Target {
            by: indication.title.to_string(),
            reading: voice.say("target-peak"),
            band: voice.with("target-stronger", &[("stronger", &indication.stronger)]),
            level: vec![voice.with("target-level", &means)],
            sense: voice.say("target-no-level"),
        },
        None => Target {
            by: voice.line(&lines.aligned_by),
            reading: voice.say("not-set"),
            band: String::new(),
            level: vec![voice.with("target-level", &means), band],
            sense: voice.say("target-ask"),
        },
    }
}

fn indicators(own: &ResolvedEnd<'_>, voice: Voice) -> Table {
    let mut table = Table::new(voice, ["lamp", "lamp-shows", "lamp-means"]);
    for indicator in &own.radio.indicators {
        table.row([indicator.lamp.to_string(), indicator.shows.to_string(), indicator.means.to_string()]);
    }
    table
}

/// What to do about a reading outside the band; in words, for the cause is not known from a number.
fn outside(end: &EndSheet<'_>, voice: Voice) -> Table {
    const CASES: [&str; 5] =
        ["outside-weaker", "outside-one-end", "outside-stronger", "outside-restless", "outside-none"];
    let mut table = Table::new(voice, ["outside-reading", "outside-look", "outside-do"]);
    let by = end.resolved.radio.aligned_by();
    // A level that is shown rises with the signal; a voltage does what its scale says; lamps and tones are told in words.
    let rises = match by {
        Some(AlignedBy::Voltage(_)) => end.lines.meter_sense.value().ok().map(|sense| *sense == Saying::Higher),
        Some(AlignedBy::Level(_)) => Some(true),
        Some(AlignedBy::Indication(_)) | None => None,
    };
    let told = |higher: bool| voice.spoken(&if higher { Saying::Higher } else { Saying::Lower });
    let told = |stronger: bool| rises.map_or_else(|| "—".to_owned(), |rises| told(rises == stronger));
    let (stronger, weaker) = (told(true), told(false));
    for case in CASES {
        let sense = if case == "outside-weaker" { &weaker } else { &stronger };
        let reading = voice.with(case, &[("sense", sense)]);
        let look = match (case, by) {
            ("outside-none", by) if !matches!(by, Some(AlignedBy::Voltage(_))) => "outside-none-look-shown".to_owned(),
            _ => format!("{case}-look"),
        };
        table.row([reading, voice.say(&look), voice.say(&format!("{case}-do"))]);
    }
    table
}
