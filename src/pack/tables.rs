//! The tables of a design pack: geometry, budget, states, mounting, target, power, grounding.

use serde::Serialize;

use super::lobes;
use super::parts;
use super::words::{Table, band, given_or, say, say_in_both, shown};
use crate::sheet::{Cause, Direction, EndSheet, HopSheet, Line, OnwardLines, Row, RunLines, RunSheet, Shown};
use crate::spec::Service;
use crate::units::{given_in_both, latitude_in_seconds, longitude_in_seconds};

/// The modulation states of one direction.
#[derive(Debug, Clone, Serialize)]
pub(super) struct States {
    title: String,
    table: Table,
}

fn both<T: Shown>(
    label: &str,
    sheet: &HopSheet<'_>,
    line: impl for<'s> Fn(&'s EndSheet<'_>) -> &'s Line<T>,
    table: &mut Table,
) {
    table.row([label.into(), say(line(&sheet.a)), say(line(&sheet.b))]);
}

fn each(label: &str, sheet: &HopSheet<'_>, words: impl Fn(&EndSheet<'_>) -> String, table: &mut Table) {
    table.row([label.into(), words(&sheet.a), words(&sheet.b)]);
}

pub(super) fn ends(sheet: &HopSheet<'_>) -> Table {
    let mut table = Table::new(["Item", "End a", "End b"]);
    each("Site", sheet, |end| end.resolved.site.title.to_string(), &mut table);
    let latitude = |end: &EndSheet<'_>| {
        let latitude = end.resolved.site.position.latitude.value;
        format!("{}, or {}", shown(&latitude.to_string()), latitude_in_seconds(latitude))
    };
    let longitude = |end: &EndSheet<'_>| {
        let longitude = end.resolved.site.position.longitude.value;
        format!("{}, or {}", shown(&longitude.to_string()), longitude_in_seconds(longitude))
    };
    each("Latitude, north positive", sheet, latitude, &mut table);
    each("Longitude, east positive", sheet, longitude, &mut table);
    each("Ground above sea level", sheet, |end| shown(&given_in_both(&end.resolved.site.ground_height)), &mut table);
    each("Antenna above ground", sheet, |end| shown(&given_in_both(&end.resolved.end.height)), &mut table);
    each("Antenna above sea level", sheet, |end| say_in_both(&end.lines.altitude), &mut table);
    both("True bearing to the far end", sheet, |end| &end.lines.true_bearing, &mut table);
    let date = sheet.resolved.network.date;
    let declination = format!("Declination (east +) on {date}");
    both(&declination, sheet, |end| &end.lines.declination, &mut table);
    both("Magnetic bearing to the far end", sheet, |end| &end.lines.magnetic_bearing, &mut table);
    both("Tilt, up positive", sheet, |end| &end.lines.tilt, &mut table);
    table
}

pub(super) fn path(sheet: &HopSheet<'_>) -> Table {
    let mut table = Table::new(["Item", "Value"]);
    let path = &sheet.path;
    table.row(["Distance over the ground".into(), say_in_both(&path.distance)]);
    table.row(["Distance antenna to antenna".into(), say_in_both(&path.slant)]);
    table.row(["Mean altitude of the antennas".into(), say_in_both(&path.mean_altitude)]);
    let air = [say(&path.temperature), say(&path.dry_pressure), say(&path.vapour_pressure)];
    table.row(["Air: temperature, dry pressure, vapour".into(), air.join(", ")]);
    table.row(["Rain rate exceeded 0.01 % of the year".into(), say(&path.rain_rate)]);
    let channel = &sheet.resolved.hop.channel;
    table.row(["Bandwidth, each way".into(), shown(&channel.bandwidth.to_string())]);
    table.row(["Polarisation, both ends".into(), channel.polarisation.word().into()]);
    table
}

pub(super) fn sight(sheet: &HopSheet<'_>) -> Table {
    let mut table = Table::new(["Item", "Value"]);
    let mut rows = Vec::new();
    sheet.profile.lines.rows("", &mut rows);
    let unasked = |row: &Row| row.text.as_ref().is_err_and(|missing| missing.cause == Cause::Judged);
    for row in rows.iter().filter(|row| !unasked(row)) {
        table.row([sentence(row.words), printed(row)]);
    }
    for near in sheet.near.iter().filter(|near| near.edge.is_some()) {
        let mut rows = Vec::new();
        near.lines.rows("", &mut rows);
        for row in rows.iter().filter(|row| !unasked(row)) {
            table.row([format!("End {}: {}", near.name, row.words), printed(row)]);
        }
    }
    table
}

pub(super) fn budget(sheet: &HopSheet<'_>) -> Table {
    let mut table = Table::new(["Item", "Symbol", "a to b", "b to a"]);
    let rows = |direction: &Direction<'_>| {
        let mut rows = Vec::new();
        direction.lines.rows("", &mut rows);
        direction.margins.rows("", &mut rows);
        rows
    };
    let heavy = "received level, clear sky";
    for (there, back) in rows(&sheet.a_to_b).into_iter().zip(rows(&sheet.b_to_a)) {
        // What nobody asked about needs no row; what could not be computed does.
        let unasked = |row: &Row| row.text.as_ref().is_err_and(|missing| missing.cause == Cause::Judged);
        if unasked(&there) && unasked(&back) {
            continue;
        }
        if there.words == heavy {
            table.heavy = Some(table.rows.len());
        }
        table.row([sentence(there.words), there.symbol.into(), printed(&there), printed(&back)]);
    }
    table
}

pub(super) fn service(sheet: &HopSheet<'_>) -> Table {
    let capacity = shown(&sheet.target.capacity.given.to_string());
    let mut table = Table::new([&format!("At {capacity} each way"), "Value"]);
    let service = &sheet.service;
    table.row(["Rain outage, the worse direction".into(), say(&service.outage)]);
    table.row(["Availability, equipment failure not counted".into(), say(&service.availability)]);
    table.row(["Outage in an average year".into(), say(&service.minutes)]);
    table.row(["Rain outage in the worst month".into(), say(&service.worst_month)]);
    table
}

pub(super) fn printed(row: &Row) -> String {
    match &row.text {
        Ok(text) => shown(text),
        Err(missing) => format!("— ({})", missing.reason),
    }
}

/// The first letter made a capital.
pub(super) fn sentence(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

pub(super) fn states(direction: &Direction<'_>) -> States {
    let head = ["State", "Capacity", "Threshold", "Level", "Fade margin", "Rain outage", "Availability"];
    let mut table = Table::new(head);
    for state in &direction.states {
        let lines = &state.lines;
        table.row([
            state.title.clone(),
            say(&lines.capacity),
            say(&lines.threshold),
            say(&lines.level),
            say(&lines.margin),
            say(&lines.outage),
            say(&lines.availability),
        ]);
    }
    table.heavy = direction.objective;
    States { title: format!("Modulation states {}", direction.title), table }
}

pub(super) fn mounting(sheet: &HopSheet<'_>) -> Table {
    let mut table = Table::new(["Item", "End a", "End b"]);
    each("Radio", sheet, |end| end.resolved.radio.title.to_string(), &mut table);
    each("Half, as the radio names it", sheet, |end| end.resolved.half.id.to_string(), &mut table);
    each("Antenna", sheet, |end| end.resolved.antenna.title.to_string(), &mut table);
    each("Full width of the main beam", sheet, |end| shown(&end.resolved.antenna.beamwidth.to_string()), &mut table);
    each("Support", sheet, support, &mut table);
    each("Tube, outside", sheet, |end| shown(&given_in_both(&end.resolved.support.outside_diameter)), &mut table);
    each("Base above ground", sheet, |end| shown(&given_in_both(&end.resolved.support.base_height)), &mut table);
    each("Free length", sheet, |end| shown(&given_in_both(&end.resolved.support.free_length)), &mut table);
    each("Bracket", sheet, |end| end.resolved.bracket.title.to_string(), &mut table);
    each("Bracket takes tubes of", sheet, |end| shown(&end.resolved.bracket.pole.to_string()), &mut table);
    each("Way up", sheet, |end| end.resolved.end.bracket.orientation.word().into(), &mut table);
    each(
        "Extension plate",
        sheet,
        |end| if end.resolved.end.bracket.plate { "fitted" } else { "none" }.into(),
        &mut table,
    );
    let reach = |end: &EndSheet<'_>| format!("{} to {}", say(&end.lines.tilt_least), say(&end.lines.tilt_most));
    each("Tilt it gives as mounted", sheet, reach, &mut table);
    both("Tilt needed", sheet, |end| &end.lines.tilt, &mut table);
    both("Left to the nearer end of the range", sheet, |end| &end.lines.tilt_in_hand, &mut table);
    table
}

fn support(end: &EndSheet<'_>) -> String {
    let support = end.resolved.support;
    let material = support.material.map(|material| format!(", {}", material.word())).unwrap_or_default();
    format!("{} ({}{material})", support.id, support.kind.word())
}

pub(super) fn alignment(sheet: &HopSheet<'_>) -> Table {
    let mut table = Table::new(["Item", "End a", "End b"]);
    both("Level to align to", sheet, |end| &end.lines.target_level, &mut table);
    let levels = |end: &EndSheet<'_>| band(&end.lines.level_least, &end.lines.level_most);
    each("Levels to accept", sheet, levels, &mut table);
    both("Meter reading to align to", sheet, |end| &end.lines.target_voltage, &mut table);
    let volts = |end: &EndSheet<'_>| band(&end.lines.voltage_at_least, &end.lines.voltage_at_most);
    each("Readings to accept", sheet, volts, &mut table);
    both("A stronger signal reads", sheet, |end| &end.lines.meter_sense, &mut table);
    both("Uncertainty of the level, 95 %", sheet, |end| &end.lines.level_uncertainty, &mut table);
    each("First null off the axis", sheet, lobes::nulls, &mut table);
    each("First side lobe off the axis", sheet, lobes::angles, &mut table);
    for (number, label) in ["this end on a side lobe", "the far end on one", "both ends on one"].into_iter().enumerate()
    {
        let words = |end: &EndSheet<'_>| lobes::reading(end, end.dish.readings()[number].2);
        each(&format!("Meter with {label}"), sheet, words, &mut table);
    }
    each("Meter on port", sheet, |end| end.resolved.radio.readout.port.to_string(), &mut table);
    table
}

/// Wind, and the people in front of the antenna. Rows that nobody asked about are left out.
pub(super) fn surroundings(sheet: &HopSheet<'_>) -> Table {
    let mut table = Table::new(["Item", "End a", "End b"]);
    let rows = |end: &EndSheet<'_>| {
        let mut rows = Vec::new();
        end.wind.rows("", &mut rows);
        end.people.rows("", &mut rows);
        rows
    };
    for (a, b) in rows(&sheet.a).into_iter().zip(rows(&sheet.b)) {
        let unasked = |row: &Row| row.text.as_ref().is_err_and(|missing| missing.cause == Cause::Judged);
        if !(unasked(&a) && unasked(&b)) {
            let cell = |row: &Row| if unasked(row) { "not assessed".to_owned() } else { printed(row) };
            table.row([sentence(a.words), cell(&a), cell(&b)]);
        }
    }
    table
}

/// One column a run, so that any number of lines fits under each other.
pub(super) fn power(sheet: &HopSheet<'_>) -> Table {
    let runs: Vec<_> = sheet.ends().into_iter().flat_map(|end| end.runs.iter().map(move |run| (end, run))).collect();
    let mut table = Table { head: vec!["Item".into()], ..Table::default() };
    table.head.extend(runs.iter().map(|(end, run)| format!("End {}, port {}", end.name, run.resolved.port.id)));
    let mut add = |label: &str, cells: Vec<String>| {
        table.rows.push([label.to_owned()].into_iter().chain(cells).collect());
    };
    add("Cable", runs.iter().map(|(_, run)| run.resolved.cable.title.to_string()).collect());
    add("Outdoors", runs.iter().map(|(_, run)| shown(&given_in_both(&run.resolved.run.outdoor))).collect());
    let indoor = |run: &crate::network::ResolvedRun<'_>| run.run.indoor.as_ref().map(given_in_both);
    add("Indoors", runs.iter().map(|(_, run)| given_or(indoor(run.resolved).as_ref(), "not stated")).collect());
    add("Length", runs.iter().map(|(_, run)| say_in_both(&run.lines.length)).collect());
    add("Gland insert", runs.iter().map(|(_, run)| say(&run.lines.gland)).collect());
    add("Arresters", runs.iter().map(|(_, run)| parts::arresters_in_words(run.resolved)).collect());
    let supply = |run: &crate::network::ResolvedRun<'_>| run.supply.map(|supply| supply.title.to_string());
    add(
        "Length as Ethernet counts it, hot",
        runs.iter().map(|(_, run)| say_in_both(&run.handling.hot_length)).collect(),
    );
    add("Fed by", runs.iter().map(|(_, run)| given_or(supply(run.resolved).as_ref(), "—")).collect());
    if runs.iter().any(|(_, run)| run.carries(Service::Power)) {
        // A run that feeds nothing has no power to speak of: a dash, not a reason seven times over.
        let fed = |line: &dyn Fn(&RunLines) -> String| -> Vec<String> {
            let cell = |run: &RunSheet<'_>| if run.carries(Service::Power) { line(&run.lines) } else { "—".into() };
            runs.iter().map(|(_, run)| cell(run)).collect()
        };
        add("One conductor, hot, with contacts", fed(&|lines| say(&lines.conductor_resistance)));
        add("Loop resistance", fed(&|lines| say(&lines.loop_resistance)));
        add("Least supply voltage", fed(&|lines| say(&lines.supply_voltage)));
        add("Most the radio draws", fed(&|lines| say(&lines.radio_draw)));
        add("Voltage at the radio", fed(&|lines| say(&lines.radio_voltage)));
        add("Current", fed(&|lines| say(&lines.current)));
        add("Power the supply gives", fed(&|lines| say(&lines.supply_power)));
        add("Most it takes for what it feeds", fed(&|lines| say(&lines.onward_draw)));
        add("Longest outdoor length", fed(&|lines| say_in_both(&lines.longest_outdoor)));
        add("Thinnest conductor, copper", fed(&|lines| say(&lines.thinnest)));
        add("Least supply voltage that would do", fed(&|lines| say(&lines.least_supply)));
    }
    if runs.iter().any(|(_, run)| run.onward.is_some()) {
        let onward = |line: &dyn Fn(&OnwardLines) -> String| -> Vec<String> {
            runs.iter().map(|(_, run)| run.onward.as_ref().map_or_else(|| "—".into(), line)).collect()
        };
        add("Feeds", onward(&|lines| format!("{}, {}", say(&lines.feeds), say(&lines.draw))));
        add("Voltage at what it feeds", onward(&|lines| say(&lines.voltage)));
        add("Power the port hands on", onward(&|lines| say(&lines.port_power)));
    }
    table
}

pub(super) fn grounding(sheet: &HopSheet<'_>) -> Table {
    let mut table = Table::new(["Item", "End a", "End b"]);
    let code = |end: &EndSheet<'_>| end.code.map_or("none stated", |code| code.name).to_owned();
    each("Code in force", sheet, code, &mut table);
    each(
        "Least conductor, copper",
        sheet,
        |end| format!("{} ({})", shown(&end.ground_written()), say(&end.ground.needed)),
        &mut table,
    );
    each("Conductor", sheet, |end| given_or(end.resolved.end.grounding.conductor.as_ref(), "not stated"), &mut table);
    let length = |end: &EndSheet<'_>| {
        given_or(end.resolved.end.grounding.length.as_ref().map(given_in_both).as_ref(), "not stated")
    };
    each("Length", sheet, length, &mut table);
    each("Metal", sheet, |end| end.resolved.end.grounding.material.words().into(), &mut table);
    let inductance =
        |end: &EndSheet<'_>| end.ground.inductance.get().map_or_else(|| "—".into(), |l| shown(&l.to_string()));
    each("Inductance to a surge, led straight", sheet, inductance, &mut table);
    let bond =
        |end: &EndSheet<'_>| end.resolved.earth.map_or_else(|| "not stated".into(), |point| point.title.to_string());
    each("Bonds to", sheet, bond, &mut table);
    each("Radio terminal", sheet, |end| end.resolved.radio.ground.terminal.to_string(), &mut table);
    table
}
