//! The tables of a design pack: geometry, budget, states, mounting, target, power, grounding.

use serde::Serialize;

use super::lightning;
use super::lobes;
use super::parts;
use super::phrases::{angle, feeds, label, least_conductor};
use super::words::{Table, sentence, text_or};
use crate::sheet::{
    Cause, Direction, DirectionLines, EndSheet, HeardLines, HopSheet, Line, OnwardLines, Row, RunLines, RunSheet,
    Saying, SectionKey, Shown,
};
use crate::spec::{Both, Carried};
use crate::units::{latitude_in_seconds, longitude_in_seconds};
use crate::voice::Voice;

/// The modulation states of one direction.
#[derive(Debug, Clone, Serialize)]
pub(super) struct States {
    title: String,
    table: Table,
}

/// A table with a column for each end.
struct Sides<'s, 'n> {
    sheet: &'s HopSheet<'n>,
    voice: Voice,
    table: Table,
}

impl<'s, 'n> Sides<'s, 'n> {
    fn new(sheet: &'s HopSheet<'n>, voice: Voice) -> Self {
        Self { sheet, voice, table: Table::new(voice, ["item", "end-a", "end-b"]) }
    }

    /// A row of a line of the sheet.
    fn line<T: Shown>(&mut self, key: &str, line: impl for<'e> Fn(&'e EndSheet<'_>) -> &'e Line<T>) {
        let label = self.voice.say(key);
        self.add(label, |end, voice| voice.line(line(end)));
    }

    /// A row of words.
    fn words(&mut self, key: &str, words: impl Fn(&EndSheet<'_>, Voice) -> String) {
        self.add(self.voice.say(key), words);
    }

    fn add(&mut self, label: String, words: impl Fn(&EndSheet<'_>, Voice) -> String) {
        self.table.row([label, words(&self.sheet.ends.a, self.voice), words(&self.sheet.ends.b, self.voice)]);
    }
}

pub(super) fn ends(sheet: &HopSheet<'_>, voice: Voice) -> Table {
    let mut sides = Sides::new(sheet, voice);
    sides.words("site", |end, _| end.resolved.site.title.to_string());
    sides.words("latitude-north", |end, voice| {
        let latitude = end.resolved.site.position.latitude.value;
        angle(latitude, latitude_in_seconds(latitude), voice)
    });
    sides.words("longitude-east", |end, voice| {
        let longitude = end.resolved.site.position.longitude.value;
        angle(longitude, longitude_in_seconds(longitude), voice)
    });
    sides.words("ground-above-sea", |end, voice| voice.given_in_both(&end.resolved.site.ground_height));
    sides.words("antenna-above-ground", |end, voice| voice.given_in_both(&end.resolved.end.height));
    sides.words("antenna-above-sea", |end, voice| voice.line_in_both(&end.lines.altitude));
    sides.line("true-bearing-far", |end| &end.lines.true_bearing);
    let declination = voice.with("declination-on", &[("date", &sheet.resolved.network.date)]);
    sides.add(declination, |end, voice| voice.line(&end.lines.declination));
    sides.line("magnetic-bearing-far", |end| &end.lines.magnetic_bearing);
    sides.line("tilt-up-positive", |end| &end.lines.tilt);
    sides.table
}

pub(super) fn path(sheet: &HopSheet<'_>, voice: Voice) -> Table {
    let mut table = Table::new(voice, ["item", "value"]);
    let path = &sheet.path;
    table.row([voice.say("distance-ground"), voice.line_in_both(&path.distance)]);
    table.row([voice.say("distance-antennas"), voice.line_in_both(&path.slant)]);
    table.row([voice.say("mean-altitude"), voice.line_in_both(&path.mean_altitude)]);
    let air = [voice.line(&path.temperature), voice.line(&path.dry_pressure), voice.line(&path.vapour_pressure)];
    table.row([voice.say("air"), air.join(", ")]);
    table.row([voice.say("rain-rate"), voice.line(&path.rain_rate)]);
    let channel = &sheet.resolved.hop.channel;
    table.row([voice.say("bandwidth-each-way"), voice.number(&channel.bandwidth)]);
    table.row([voice.say("polarisation-both"), voice.term(channel.polarisation.word())]);
    table
}

/// Whether nobody asked about a row: it needs no place then. What could not be computed does.
pub(super) fn unasked(row: &Row) -> bool {
    row.text.as_ref().is_err_and(|missing| missing.cause == Cause::Judged)
}

pub(super) fn sight(sheet: &HopSheet<'_>, voice: Voice) -> Table {
    let mut table = Table::new(voice, ["item", "value"]);
    for row in sheet.profile.lines.rows(&SectionKey::Profile).iter().filter(|row| !unasked(row)) {
        table.row([label(row, voice), voice.row(row)]);
    }
    for near in sheet.near.iter().filter(|near| near.edge.is_some()) {
        for row in near.lines.rows(&SectionKey::Near(near.name)).iter().filter(|row| !unasked(row)) {
            let words = voice.with("end-row", &[("end", &near.name), ("words", &voice.term(row.words))]);
            table.row([words, voice.row(row)]);
        }
    }
    table
}

pub(super) fn budget(sheet: &HopSheet<'_>, voice: Voice) -> Table {
    let mut table = Table::new(voice, ["item", "symbol", "a-to-b", "b-to-a"]);
    let rows = |direction: &Direction<'_>| {
        let mut rows = direction.lines.rows(&SectionKey::Budget(direction.way));
        // Who is heard most is told by name where there is room for it, in the pack of the network.
        let heard = direction.heard.rows(&SectionKey::Heard(direction.way));
        rows.extend(heard.into_iter().filter(|row| row.key.name != HeardLines::strongest));
        rows.extend(direction.margins.rows(&SectionKey::Margins(direction.way)));
        rows
    };
    let Both { a: there, b: back } = sheet.directions.each_ref().map(rows);
    for (there, back) in there.into_iter().zip(back) {
        if unasked(&there) && unasked(&back) {
            continue;
        }
        if there.key.name == DirectionLines::level {
            table.heavy = Some(table.rows.len());
        }
        table.row([label(&there, voice), there.symbol.into(), voice.row(&there), voice.row(&back)]);
    }
    table
}

pub(super) fn service(sheet: &HopSheet<'_>, voice: Voice) -> Table {
    let capacity = voice.number(&sheet.target.capacity.given);
    let mut table = Table::new(voice, ["item", "average-year", "worst-month"]);
    table.head[0] = voice.with("at-capacity", &[("capacity", &capacity)]);
    let service = &sheet.service;
    let wet = sheet.path.snow_factor.get().is_some();
    let rain = voice.say(if wet { "outage-rain-and-snow" } else { "outage-rain" });
    table.row([rain, voice.line(&service.rain_outage), voice.line(&service.rain_worst_month)]);
    let multipath = (voice.line(&service.multipath), voice.line(&service.multipath_worst_month));
    let multipath = if service.multipath.get().is_some() { multipath } else { (multipath.0, String::new()) };
    table.row([voice.say("outage-multipath"), multipath.0, multipath.1]);
    if sheet.resolved.hop.channel.polarisation.carriers() > 1 {
        let rain = (voice.line(&service.crossing_rain), voice.line(&service.crossing_rain_worst_month));
        table.row([voice.say("outage-crossing-rain"), rain.0, rain.1]);
        let air = (voice.line(&service.crossing_clear_air), voice.line(&service.crossing_worst_month));
        table.row([voice.say("outage-crossing-air"), air.0, air.1]);
    }
    for (key, line) in [("outage-equipment", &service.equipment), ("outage-supply", &service.supply)] {
        // It fails in any month alike.
        let month = if line.get().is_some() { voice.line(line) } else { String::new() };
        table.row([voice.say(key), voice.line(line), month]);
    }
    table.row([voice.say("outage-counted"), voice.line(&service.outage), voice.line(&service.worst_month)]);
    table.row([voice.say("outage-minutes"), voice.line(&service.minutes), String::new()]);
    let name = sentence(&voice.term(sheet.directions.a.availability_words()));
    table.heavy = Some(table.rows.len());
    table.row([name, voice.line(&service.availability), voice.line(&service.worst_month_availability)]);
    table
}

/// What no availability of the hop counts, said whole; nothing where all is counted.
pub(super) fn left_out(sheet: &HopSheet<'_>, voice: Voice) -> Option<String> {
    let left = sheet.service.left_out.value().ok().filter(|left| *left != &Saying::Never)?;
    Some(voice.with("not-counted", &[("causes", &voice.spoken(left))]))
}

pub(super) fn states(direction: &Direction<'_>, voice: Voice) -> States {
    let head = ["state", "capacity", "threshold", "level", "fade-margin", "outage", "minutes-a-year", "availability"];
    let mut table = Table::new(voice, head);
    for state in &direction.states {
        let lines = &state.lines;
        table.row([
            state.title.clone(),
            voice.line(&lines.capacity),
            voice.line(&lines.threshold),
            voice.line(&lines.level),
            voice.line(&lines.margin),
            voice.line(&lines.outage),
            voice.line(&lines.minutes),
            voice.line(&lines.availability),
        ]);
    }
    table.heavy = direction.objective();
    States { title: voice.with("states", &[("way", &voice.term(direction.way.words()))]), table }
}

pub(super) fn mounting(sheet: &HopSheet<'_>, voice: Voice) -> Table {
    let mut sides = Sides::new(sheet, voice);
    sides.words("radio", |end, _| end.resolved.radio.title.to_string());
    sides.words("half", |end, _| end.resolved.half.id.to_string());
    sides.words("antenna", |end, _| end.resolved.antenna.title.to_string());
    sides.words("beamwidth", |end, voice| voice.number(&end.resolved.antenna.beamwidth));
    sides.words("support", support);
    sides.words("tube", |end, voice| voice.given_in_both(&end.resolved.support.outside_diameter));
    sides.words("base", |end, voice| voice.given_in_both(&end.resolved.support.base_height));
    sides.words("free-length", |end, voice| voice.given_in_both(&end.resolved.support.free_length));
    sides.words("bracket", |end, _| end.resolved.bracket.title.to_string());
    sides.words("bracket-takes", |end, voice| voice.window(&end.resolved.bracket.pole));
    sides.words("way-up", |end, voice| voice.term(end.resolved.end.bracket.orientation.word()));
    sides.words("plate", |end, voice| voice.say(if end.resolved.end.bracket.plate { "plate-fitted" } else { "none" }));
    sides.words("tilt-reach", |end, voice| {
        voice.range(&voice.line(&end.lines.tilt_least), &voice.line(&end.lines.tilt_most))
    });
    sides.line("tilt-needed", |end| &end.lines.tilt);
    sides.line("tilt-left", |end| &end.lines.tilt_in_hand);
    sides.line("lift-mass", |end| &end.lines.lift_mass);
    sides.table
}

fn support(end: &EndSheet<'_>, voice: Voice) -> String {
    let support = end.resolved.support;
    let material = support.material.map(|material| format!(", {}", voice.term(material.word()))).unwrap_or_default();
    format!("{} ({}{material})", support.id, voice.term(support.kind.word()))
}

pub(super) fn alignment(sheet: &HopSheet<'_>, voice: Voice) -> Table {
    const LOBES: [&str; 3] = ["meter-this-end", "meter-far-end", "meter-both-ends"];
    let mut sides = Sides::new(sheet, voice);
    sides.line("align-state", |end| &end.lines.align_state);
    sides.line("align-level", |end| &end.lines.target_level);
    sides.words("accept-levels", |end, voice| voice.band(&end.lines.level_least, &end.lines.level_most));
    let metered = sheet.ends.iter().any(|end| end.resolved.radio.readout.is_some());
    if metered {
        sides.line("align-reading", |end| &end.lines.target_voltage);
        sides
            .words("accept-readings", |end, voice| voice.band(&end.lines.voltage_at_least, &end.lines.voltage_at_most));
        sides.line("stronger-reads", |end| &end.lines.meter_sense);
    }
    sides.line("level-uncertainty", |end| &end.lines.level_uncertainty);
    sides.words("first-null", lobes::nulls);
    sides.words("first-lobe", lobes::angles);
    for (number, key) in LOBES.into_iter().enumerate().filter(|_| metered) {
        sides.words(key, |end, voice| lobes::reading(end, end.dish.readings()[number].2, voice));
    }
    sides.line("aligned-by", |end| &end.lines.aligned_by);
    sides.table
}

/// One column a run, so that any number of lines fits under each other.
pub(super) fn power(sheet: &HopSheet<'_>, voice: Voice) -> Table {
    let runs: Vec<_> = sheet.ends.iter().flat_map(|end| end.runs.iter().map(move |run| (end, run))).collect();
    let mut table = Table::new(voice, ["item"]);
    let column = |(end, run): &(&EndSheet<'_>, &RunSheet<'_>)| {
        voice.with("end-port", &[("end", &end.name), ("port", &run.resolved.port.id)])
    };
    table.head.extend(runs.iter().map(column));
    let mut add = |key: &str, cell: &dyn Fn(&RunSheet<'_>) -> String| {
        table.rows.push([voice.say(key)].into_iter().chain(runs.iter().map(|(_, run)| cell(run))).collect());
    };
    let nothing = || voice.say("nothing");
    add("run-cable", &|run| run.resolved.cable.title.to_string());
    add("run-outdoors", &|run| voice.given_in_both(&run.resolved.run.outdoor));
    let indoor = |run: &RunSheet<'_>| run.resolved.run.indoor.as_ref().map(|length| voice.given_in_both(length));
    add("run-indoors", &|run| text_or(indoor(run), voice.say("not-stated")));
    add("run-length", &|run| voice.line_in_both(&run.lines.length));
    add("run-insert", &|run| voice.line(&run.lines.gland));
    add("run-arresters", &|run| parts::arresters_in_words(run.resolved, voice));
    add("run-hot-length", &|run| voice.line_in_both(&run.handling.hot_length));
    add("run-fed-by", &|run| text_or(run.resolved.supply.map(|supply| &supply.title), nothing()));
    if runs.iter().any(|(_, run)| run.carries(Carried::Power)) {
        // A run that feeds nothing has no power to speak of: a dash, not a reason seven times over.
        let fed = |run: &RunSheet<'_>, line: &dyn Fn(&RunLines) -> String| {
            if run.carries(Carried::Power) { line(&run.lines) } else { nothing() }
        };
        add("run-conductor", &|run| fed(run, &|lines| voice.line(&lines.conductor_resistance)));
        add("run-loop", &|run| fed(run, &|lines| voice.line(&lines.loop_resistance)));
        add("run-supply-voltage", &|run| fed(run, &|lines| voice.line(&lines.supply_voltage)));
        add("run-draw", &|run| fed(run, &|lines| voice.line(&lines.radio_draw)));
        add("run-radio-voltage", &|run| fed(run, &|lines| voice.line(&lines.radio_voltage)));
        add("run-current", &|run| fed(run, &|lines| voice.line(&lines.current)));
        add("run-supply-power", &|run| fed(run, &|lines| voice.line(&lines.supply_power)));
        add("run-onward-draw", &|run| fed(run, &|lines| voice.line(&lines.onward_draw)));
        add("run-longest", &|run| fed(run, &|lines| voice.line_in_both(&lines.longest_outdoor)));
        add("run-thinnest", &|run| fed(run, &|lines| voice.line(&lines.thinnest)));
        add("run-least-supply", &|run| fed(run, &|lines| voice.line(&lines.least_supply)));
    }
    if runs.iter().any(|(_, run)| run.onward.is_some()) {
        let onward = |run: &RunSheet<'_>, words: &dyn Fn(&OnwardLines) -> String| {
            run.onward.as_ref().map_or_else(nothing, words)
        };
        add("run-feeds", &|run| onward(run, &|lines| feeds(lines, voice)));
        add("run-onward-voltage", &|run| onward(run, &|lines| voice.line(&lines.voltage)));
        add("run-port-power", &|run| onward(run, &|lines| voice.line(&lines.port_power)));
    }
    table
}

pub(super) fn grounding(sheet: &HopSheet<'_>, voice: Voice) -> Table {
    let mut sides = Sides::new(sheet, voice);
    sides.words("ground-code", |end, voice| text_or(end.code.map(|code| code.name), voice.say("none-stated")));
    sides.words("ground-least-copper", least_conductor);
    sides.words("ground-conductor", |end, voice| {
        let size = end.resolved.end.grounding.conductor.as_ref().map(|size| voice.number(size));
        text_or(size, voice.say("not-stated"))
    });
    sides.words("ground-length", |end, voice| {
        let length = end.resolved.end.grounding.length.as_ref().map(|length| voice.given_in_both(length));
        text_or(length, voice.say("not-stated"))
    });
    sides.words("ground-of", |end, voice| voice.term(end.resolved.end.grounding.material.words()));
    sides.words("ground-inductance", |end, voice| {
        text_or(end.ground.inductance.get().map(|inductance| voice.number(inductance)), voice.say("nothing"))
    });
    sides.words("ground-bonds-to", |end, voice| {
        text_or(end.resolved.earth.map(|point| &point.spec.title), voice.say("not-stated"))
    });
    sides.words("ground-terminal", |end, _| end.resolved.radio.ground.terminal.to_string());
    for row in lightning::rows(sheet, voice) {
        sides.table.row(row);
    }
    sides.table
}
