//! The table a hop is decided by: requirement, limit, what was computed, what is left, and whether it is met.

use super::words::{Table, say, shown};
use crate::sheet::{Direction, EndSheet, HopSheet, LONGEST_RUN, Line, Radii, RunSheet};
use crate::spec::Service;
use crate::units::Quantity;

/// All requirements of a hop, one a row.
pub(super) fn table(sheet: &HopSheet<'_>) -> Table {
    let mut table = Table::new(["Requirement", "Limit", "Computed", "In hand", "State"]);
    let (target, service) = (&sheet.target, &sheet.service);
    table.row([
        format!("Availability, both directions, at {}", shown(&target.capacity.given.to_string())),
        at_least(&target.availability.given),
        say(&service.availability),
        say(&service.in_hand),
        state(&service.in_hand),
    ]);
    for direction in sheet.directions() {
        of_direction(sheet, direction, &mut table);
    }
    of_path(sheet, &mut table);
    for end in sheet.ends() {
        of_end(end, &mut table);
    }
    table
}

fn of_path(sheet: &HopSheet<'_>, table: &mut Table) {
    let lines = &sheet.profile.lines;
    let met = lines.in_hand.get().map(|left| left.0.0 >= 0.0);
    let computed = match lines.fraction.get() {
        Some(fraction) => shown(&fraction.to_string()),
        None => "not shown".into(),
    };
    let left = lines.in_hand.get().map_or_else(|| "—".into(), |left| shown(&left.to_string()));
    let asked = Radii(sheet.profile.asked.0);
    table.row(["Clearance of the path, k = 4/3".into(), format!("≥ {asked}"), computed, left, word(met)]);
}

fn of_direction(sheet: &HopSheet<'_>, direction: &Direction<'_>, table: &mut Table) {
    let margins = &direction.margins;
    if let Some(wanted) = &sheet.target.fade_margin {
        table.row([
            format!("Fade margin {}", direction.title),
            at_least(&wanted.given),
            say(&margins.fade_margin),
            say(&margins.fade_in_hand),
            state(&margins.fade_in_hand),
        ]);
    }
    table.row([
        format!("Received level {}, below overload", direction.title),
        format!("≤ {}", shown(&direction.receiver.radio.overload.to_string())),
        say(&direction.lines.level),
        say(&margins.overload_in_hand),
        state(&margins.overload_in_hand),
    ]);
}

fn of_end(end: &EndSheet<'_>, table: &mut Table) {
    let lines = &end.lines;
    table.row([
        format!("Tilt of the bracket, end {}", end.name),
        format!("{} to {}", say(&lines.tilt_least), say(&lines.tilt_most)),
        say(&lines.tilt),
        say(&lines.tilt_in_hand),
        state(&lines.tilt_in_hand),
    ]);
    for run in &end.runs {
        of_run(end, run, table);
    }
    let given = &end.resolved.end.grounding.conductor;
    let met = end.ground.needed.get().zip(given.as_ref()).map(|(needed, given)| given.value >= needed);
    table.row([
        format!("Grounding conductor, end {}", end.name),
        format!("≥ {}", shown(&end.ground_written())),
        given.as_ref().map_or_else(|| "not stated".into(), |given| shown(&given.to_string())),
        "—".into(),
        word(met),
    ]);
}

fn of_run(end: &EndSheet<'_>, run: &RunSheet<'_>, table: &mut Table) {
    let (lines, port) = (&run.lines, &run.resolved.port.id);
    if run.carries(Service::Power) {
        let least = &end.resolved.radio.power.voltage.min;
        table.row([
            format!("Voltage at the radio, end {}, port {port}", end.name),
            format!("≥ {} and {} reserve", shown(&least.to_string()), shown(&end.voltage_reserve.given.to_string())),
            say(&lines.radio_voltage),
            say(&lines.voltage_in_hand),
            state(&lines.voltage_in_hand),
        ]);
    }
    if run.carries(Service::Data) {
        table.row([
            format!("Cable length, end {}, port {port}", end.name),
            format!("≤ {}", shown(&LONGEST_RUN.to_string())),
            say(&lines.length),
            say(&lines.length_in_hand),
            state(&lines.length_in_hand),
        ]);
    }
}

fn at_least(limit: &impl ToString) -> String {
    format!("≥ {}", shown(&limit.to_string()))
}

/// By the sign of what is left, in full precision.
fn state<Q: Quantity>(in_hand: &Line<Q>) -> String {
    word(in_hand.get().map(|left| left.base() >= 0.0))
}

fn word(met: Option<bool>) -> String {
    match met {
        Some(true) => "met",
        Some(false) => "NOT MET",
        None => "not evaluated",
    }
    .into()
}
