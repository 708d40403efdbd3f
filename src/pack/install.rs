//! The install pack of one end as data: what a crew needs on the way, on the roof, and to sign.

use serde::Serialize;

use super::End;
use super::cautions::{self, Caution};
use super::figures::{self, Figure};
use super::lobes::Lobes;
use super::parts::{self, PartRow};
use super::record_page::RecordPage;
use super::steps::{self, Item};
use super::words::{Fact, Table, band, fact, given_or, say, say_in_both, shown};
use crate::network::ResolvedEnd;
use crate::sheet::{EndSheet, HopSheet};
use crate::spec::{Screening, Service};
use crate::units::{given_in_both, latitude_in_seconds, longitude_in_seconds};

const NOT_ASSESSED: &str = "Not assessed. Ask the owner of the site before you go.";

/// All pages.
#[derive(Debug, Serialize)]
pub(super) struct Install {
    site: String,
    site_id: String,
    job: String,
    position: Vec<Fact>,
    place: Option<Figure>,
    hazards: Vec<String>,
    near: Vec<String>,
    keep_clear: Vec<Fact>,
    tools: String,
    access: String,
    contacts: Table,
    supplies: Vec<Fact>,
    parts: Vec<PartRow>,
    cautions: [Caution; 7],
    keys: Vec<Fact>,
    declination: String,
    fasteners: Table,
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
    volts: String,
    volts_band: String,
    level: String,
    level_band: String,
    sense: String,
    port: String,
}

impl Install {
    pub(super) fn of(sheet: &HopSheet<'_>, which: End) -> Self {
        let end = match which {
            End::A => &sheet.a,
            End::B => &sheet.b,
        };
        let own = end.resolved;
        let site = own.site;
        let job = format!(
            "Mount radio {} with antenna {} on {} ({}), looking at {}.",
            own.radio.title,
            own.antenna.title,
            own.support.id,
            own.support.kind.word(),
            end.far.site.title
        );
        Self {
            site: site.title.to_string(),
            site_id: site.id.to_string(),
            job,
            position: position(own),
            place: figures::place(end),
            near: near(own),
            keep_clear: keep_clear(end),
            tools: parts::tools(end),
            hazards: site.hazards.iter().map(ToString::to_string).collect(),
            access: given_or(site.access.as_ref(), NOT_ASSESSED),
            contacts: contacts(own),
            supplies: supplies(own),
            parts: parts::list(end),
            cautions: cautions::GENERAL,
            keys: keys(sheet, end),
            declination: format!(
                "Declination here {} on {}, east positive. Magnetic bearings drift; steel nearby bends them.",
                say(&end.lines.declination),
                sheet.resolved.network.date
            ),
            fasteners: fasteners(own),
            mounting_figure: figures::mounting(end),
            mounting: steps::mounting(sheet, end),
            chain: figures::chain(end),
            runs: runs(end),
            grounding: grounding(end),
            cabling: steps::cabling(end),
            target: target(end),
            scale: figures::scale(end),
            lobes: Lobes::of(end),
            indicators: indicators(own),
            preparation: steps::preparation(sheet, end),
            alignment: steps::alignment(end),
            outside: outside(end),
            record: RecordPage::of(sheet, end),
            notes: sheet.resolved.hop.notes.iter().map(ToString::to_string).collect(),
        }
    }
}

/// People and power lines the site lists, in the words of the owner.
fn near(own: &ResolvedEnd<'_>) -> Vec<String> {
    let site = own.site;
    let lines = site
        .power_lines
        .iter()
        .map(|line| format!("Power line: {}, {} away.", line.title, given_in_both(&line.distance)));
    let people = site.people.iter().map(|spot| {
        format!("People: {}, {} away, bearing {}.", spot.title, given_in_both(&spot.distance), spot.bearing)
    });
    lines.chain(people).map(|text| shown(&text)).collect()
}

/// How far to stay away in front of the antenna.
fn keep_clear(end: &EndSheet<'_>) -> Vec<Fact> {
    let lines = &end.people;
    vec![
        fact("Whoever passes, in front", say_in_both(&lines.public_distance)),
        fact("Trained workers, in front", say_in_both(&lines.workers_distance)),
    ]
}

fn position(own: &ResolvedEnd<'_>) -> Vec<Fact> {
    let at = &own.site.position;
    vec![
        fact("Latitude", format!("{}, or {}", at.latitude.value, latitude_in_seconds(at.latitude.value))),
        fact("Longitude", format!("{}, or {}", at.longitude.value, longitude_in_seconds(at.longitude.value))),
        fact("Ground above sea level", given_in_both(&own.site.ground_height)),
    ]
}

fn contacts(own: &ResolvedEnd<'_>) -> Table {
    let mut table = Table::new(["Contact", "For", "Telephone"]);
    for contact in &own.site.contacts {
        table.row([contact.name.to_string(), given_or(contact.role.as_ref(), "—"), contact.phone.to_string()]);
    }
    table
}

/// Where power and earth are on the site.
fn supplies(own: &ResolvedEnd<'_>) -> Vec<Fact> {
    let power = own.site.power.iter().map(|point| ("Power", &point.title));
    let earth = own.site.earth.iter().map(|point| ("Earth", &point.title));
    power.chain(earth).map(|(label, title)| Fact { label: label.into(), value: title.to_string() }).collect()
}

fn keys(sheet: &HopSheet<'_>, end: &EndSheet<'_>) -> Vec<Fact> {
    let (own, lines) = (end.resolved, &end.lines);
    let mut keys = vec![
        fact("True bearing", say(&lines.true_bearing)),
        fact("Magnetic bearing", say(&lines.magnetic_bearing)),
        fact("Tilt", steps::tilt(end)),
        fact("Antenna centre above ground", given_in_both(&own.end.height)),
        fact("Polarisation", sheet.resolved.hop.channel.polarisation.word()),
        fact("Bracket", parts::way_up(own.end.bracket.orientation)),
    ];
    if own.bracket.plate.is_some() {
        keys.push(fact("Extension plate", if own.end.bracket.plate { "fitted" } else { "not fitted" }));
    }
    keys
}

fn fasteners(own: &ResolvedEnd<'_>) -> Table {
    let mut table = Table::new(["Screws", "Thread", "Number", "Final torque"]);
    for fastener in &own.bracket.fasteners {
        table.row([
            fastener.title.to_string(),
            fastener.thread.to_string(),
            fastener.count.to_string(),
            shown(&given_in_both(&fastener.torque)),
        ]);
    }
    table
}

fn runs(end: &EndSheet<'_>) -> Table {
    let mut table = Table { head: vec!["Run".into()], ..Table::default() };
    table.head.extend(end.runs.iter().map(|run| format!("Port {}", run.resolved.port.id)));
    let mut add = |label: &str, cells: Vec<String>| {
        table.rows.push([label.to_owned()].into_iter().chain(cells).collect());
    };
    let each = |words: &dyn Fn(&crate::sheet::RunSheet<'_>) -> String| end.runs.iter().map(words).collect::<Vec<_>>();
    add("Cable", each(&|run| run.resolved.cable.title.to_string()));
    add("Outdoors", each(&|run| shown(&given_in_both(&run.resolved.run.outdoor))));
    add("Indoors", each(&|run| given_or(run.resolved.run.indoor.as_ref().map(given_in_both).as_ref(), "not stated")));
    add("Outside diameter", each(&|run| shown(&given_in_both(&run.resolved.cable.outside_diameter))));
    add("Gland insert", each(&|run| say(&run.lines.gland)));
    add("Bend radius, least", each(&|run| say_in_both(&run.handling.bend_radius)));
    add("While pulling", each(&|run| say_in_both(&run.handling.pulling_radius)));
    let drip = |run: &crate::sheet::RunSheet<'_>| {
        run.handling.drip_loop.value.as_ref().map_or_else(|_| "—".into(), |depth| shown(&given_in_both(depth)))
    };
    add("Drip loop below the port", each(&drip));
    let screen = |run: &crate::sheet::RunSheet<'_>| match run.resolved.cable.screening {
        Screening::UUtp => "none".to_owned(),
        screening => format!("{}, bonded {}", screening.word(), run.resolved.run.screen.words()),
    };
    add("Screen", each(&screen));
    add("Arresters", each(&|run| parts::arresters_in_words(run.resolved)));
    let supply = |run: &crate::sheet::RunSheet<'_>| {
        given_or(run.resolved.supply.map(|supply| supply.title.to_string()).as_ref(), "—")
    };
    add("Fed by", each(&supply));
    let point = |run: &crate::sheet::RunSheet<'_>| match (run.resolved.supply, run.resolved.power_point) {
        (None, _) => "—".to_owned(),
        (Some(_), None) => "NOT SET".to_owned(),
        (Some(_), Some(point)) => point.title.to_string(),
    };
    add("Power taken at", each(&point));
    add(
        "Voltage at the radio, least",
        each(&|run| if run.carries(Service::Power) { say(&run.lines.radio_voltage) } else { "—".into() }),
    );
    if end.runs.iter().any(|run| run.onward.is_some()) {
        let fed = |words: &dyn Fn(&crate::sheet::OnwardLines) -> String| {
            each(&|run| run.onward.as_ref().map_or_else(|| "—".into(), words))
        };
        add("Feeds", fed(&|onward| format!("{}, {}", say(&onward.feeds), say(&onward.draw))));
        add("Voltage at what it feeds, least", fed(&|onward| say(&onward.voltage)));
    }
    table
}

fn grounding(end: &EndSheet<'_>) -> Vec<Fact> {
    let (own, grounding) = (end.resolved, &end.resolved.end.grounding);
    let ground = &own.radio.ground;
    let bond = own.earth.map_or_else(|| "NOT SET".to_owned(), |point| point.title.to_string());
    let bonded = match own.earth.and_then(|point| point.bonded) {
        Some(true) => "yes, says the design",
        Some(false) => "NO: do not connect, ask",
        None => "not stated: check",
    };
    vec![
        fact("Conductor", given_or(grounding.conductor.as_ref(), "NOT SET")),
        fact("Of", grounding.material.words()),
        fact("Least allowed", format!("{} ({})", end.ground_written(), say(&end.ground.needed))),
        fact("Length", given_or(grounding.length.as_ref().map(given_in_both).as_ref(), "NOT SET")),
        fact("Bend radius, least", given_in_both(&end.practice.ground_bend.given)),
        Fact { label: "Bonds to".into(), value: bond },
        fact("Bonded to the building", bonded),
        Fact { label: "Radio terminal".into(), value: ground.terminal.to_string() },
        fact("Terminal torque", given_or(ground.torque.as_ref().map(given_in_both).as_ref(), "see the maker's sheet")),
    ]
}

fn target(end: &EndSheet<'_>) -> Target {
    let lines = &end.lines;
    Target {
        volts: say(&lines.target_voltage),
        volts_band: band(&lines.voltage_at_least, &lines.voltage_at_most),
        level: say(&lines.target_level),
        level_band: band(&lines.level_least, &lines.level_most),
        sense: say(&lines.meter_sense),
        port: end.resolved.radio.readout.port.to_string(),
    }
}

fn indicators(own: &ResolvedEnd<'_>) -> Table {
    let mut table = Table::new(["Lamp", "Shows", "Means"]);
    for indicator in &own.radio.indicators {
        table.row([indicator.lamp.to_string(), indicator.shows.to_string(), indicator.means.to_string()]);
    }
    table
}

/// What to do about a reading outside the band; in words, for the cause is not known from a number.
fn outside(end: &EndSheet<'_>) -> Table {
    let mut table = Table::new(["If the reading is", "Look for", "Do"]);
    let sense = end.lines.meter_sense.value.as_ref().map_or("—", |words| words.0.as_str());
    let weaker = if sense == "higher" { "lower" } else { "higher" };
    let rows = [
        (
            format!("weaker ({weaker}) at both ends alike"),
            "A side lobe: it peaks cleanly and still is not the beam. Or something in the path.",
            "Sweep wider in both axes, at both ends. The beam is the strongest of several peaks.",
        ),
        (
            "weaker at one end only".into(),
            "Power or channel of the other end, a wet or damaged radome, a loose antenna.",
            "Compare the settings. Dry, check, swap. New aim does not mend one direction.",
        ),
        (
            format!("stronger ({sense}) than the band"),
            "Wrong power, wrong model, or the wrong far end. The receiver may be overloaded.",
            "Transmitters off. Check power and models at both ends, then call the designer.",
        ),
        (
            "never at rest".into(),
            "Power control still on, a loose mount, rain, or hot air over the path.",
            "Check both, then wait for calm and dry weather.",
        ),
        (
            "not there".into(),
            "Meter lead or port, far transmitter off, wrong half, channel or polarisation.",
            "Check here, then have the far end check.",
        ),
    ];
    for (reading, cause, remedy) in rows {
        table.row([reading, cause.into(), remedy.into()]);
    }
    table
}
