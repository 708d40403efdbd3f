//! What a crew takes to one end, with quantities.

use serde::Serialize;

use super::words::shown;
use crate::network::{ResolvedEnd, ResolvedRun};
use crate::sheet::{EndSheet, RunSheet, across_flats};
use crate::spec::{Orientation, Plugs, RunPlace, Screening};
use crate::units::{Metres, given_in_both, in_both};

/// Something to take, ticked off on the ground.
#[derive(Debug, Serialize)]
pub(super) struct PartRow {
    quantity: String,
    what: String,
    detail: String,
}

fn part(quantity: impl Into<String>, what: &str, detail: impl Into<String>) -> PartRow {
    PartRow { quantity: quantity.into(), what: what.into(), detail: detail.into() }
}

/// Arresters of one model with the places they sit: `2`, `Surgoldt SG 10G/4`, `at the radio, …`.
pub(super) struct Arresters {
    pub number: usize,
    pub title: String,
    pub places: String,
}

/// The arresters of a run, each model once.
pub(super) fn arresters(run: &ResolvedRun<'_>) -> Vec<Arresters> {
    let mut models: Vec<Arresters> = Vec::new();
    for (arrester, used) in run.arresters.iter().zip(&run.run.arresters) {
        let at = place(used.at);
        match models.iter_mut().find(|model| *model.title == *arrester.title) {
            Some(model) => {
                model.number += 1;
                model.places = format!("{}, {at}", model.places);
            }
            None => models.push(Arresters { number: 1, title: arrester.title.to_string(), places: at.into() }),
        }
    }
    models
}

/// The same in one cell.
pub(super) fn arresters_in_words(run: &ResolvedRun<'_>) -> String {
    let models: Vec<String> = arresters(run).iter().map(|model| format!("{}: {}", model.title, model.places)).collect();
    if models.is_empty() { "none".into() } else { models.join("; ") }
}

pub(super) fn place(at: RunPlace) -> &'static str {
    match at {
        RunPlace::Radio => "at the radio",
        RunPlace::Entry => "at the cable entry",
    }
}

pub(super) fn way_up(orientation: Orientation) -> &'static str {
    match orientation {
        Orientation::Upright => "upright",
        Orientation::Inverted => "inverted (upside down)",
    }
}

/// All parts of an end, in the order they are mounted.
pub(super) fn list(end: &EndSheet<'_>) -> Vec<PartRow> {
    let own = end.resolved;
    let (radio, antenna, bracket) = (own.radio, own.antenna, own.bracket);
    let mass = |mass: Option<String>| mass.map(|mass| format!(", {}", shown(&mass))).unwrap_or_default();
    let radio_mass = mass(radio.mass.as_ref().map(ToString::to_string));
    let antenna_mass = mass(antenna.mass.as_ref().map(ToString::to_string));
    let bracket_mass = mass(bracket.mass.as_ref().map(ToString::to_string));
    let mut parts = vec![
        part("1", "Radio", format!("{}, half “{}”{radio_mass}", radio.title, own.half.id)),
        part("1", "Antenna", format!("{}{antenna_mass}", antenna.title)),
        part(
            "1",
            "Bracket",
            format!("{}, mounted {}{bracket_mass}", bracket.title, way_up(own.end.bracket.orientation)),
        ),
    ];
    if let Some(bands) = bracket.bands {
        let tube = shown(&given_in_both(&own.support.outside_diameter));
        parts.push(part(bands.to_string(), "Clamp band or U-bolt", format!("of the bracket, for a tube of {tube}")));
    }
    if let Some(plate) = bracket.plate.as_ref().filter(|_| own.end.bracket.plate) {
        parts.push(part("1", "Extension plate", plate.title.to_string()));
    }
    for run in &end.runs {
        of_run(run, &mut parts);
    }
    let grounding = &own.end.grounding;
    let size = grounding.conductor.as_ref().map_or_else(|| "size NOT SET".into(), |size| shown(&size.to_string()));
    let take = end.ground.to_take.get().map_or_else(|| "length NOT SET".into(), |take| shown(&in_both(take)));
    let laid = grounding.length.as_ref().map(|laid| format!(", {} laid", length(laid))).unwrap_or_default();
    parts.push(part(take, "Grounding conductor", format!("{} {size}{laid}", grounding.material.words())));
    parts.push(part("1", "Lug", format!("for {size}, at the radio: {}", radio.ground.terminal)));
    let bond = own.earth.map_or("the earth point NOT SET", |point| &point.spec.title);
    parts.push(part("1", "Lug or clamp", format!("for {size}, at: {bond}")));
    let arresters: usize = end.runs.iter().map(|run| run.resolved.arresters.len()).sum();
    if arresters > 0 {
        let detail = "short, with its lug; size as the arrester's maker and the code say";
        parts.push(part(arresters.to_string(), "Bonding lead of an arrester", detail));
    }
    for port in open_ports(own) {
        parts.push(part("1", "Blank", format!("the maker's, for port {port}")));
    }
    parts
}

/// The ports that no cable closes.
pub(super) fn open_ports<'n>(own: &ResolvedEnd<'n>) -> Vec<&'n str> {
    let used = |id: &crate::spec::Id| own.runs.iter().any(|run| run.port.id == *id);
    own.radio.spec.ports.iter().map(|port| &port.id).filter(|id| !used(id)).map(|id| &**id).collect()
}

fn length(given: &crate::units::Given<Metres>) -> String {
    shown(&given_in_both(given))
}

fn of_run(run: &RunSheet<'_>, parts: &mut Vec<PartRow>) {
    let (resolved, cable) = (run.resolved, run.resolved.cable);
    let port = &resolved.port.id;
    let screen = format!("{} {}", cable.category.word(), cable.screening.word());
    let total = run.handling.to_take.get().map_or_else(|| "—".into(), |total| shown(&in_both(total)));
    let outdoor = length(&resolved.run.outdoor);
    let indoor = resolved.run.indoor.as_ref().map_or_else(|| "not stated".into(), length);
    let detail =
        format!("{}, {screen}, {} jacket; {outdoor} outdoors, {indoor} indoors", cable.title, cable.jacket.word());
    parts.push(part(total, &format!("Cable to port {port}"), detail));
    let shell = match (resolved.run.plugs, cable.screening) {
        (Plugs::Plastic, _) | (_, Screening::UUtp) => "plain",
        (Plugs::Metal, _) => "metal shell, crimped onto the screen",
    };
    let plugs = 2 * (1 + resolved.arresters.len());
    parts.push(part(plugs.to_string(), "Plug", format!("{shell}, for {}", shown(&cable.outside_diameter.to_string()))));
    if let Ok(gland) = &run.lines.gland.value {
        parts.push(part("1", "Gland insert", format!("{} for port {port}", gland.0)));
    }
    for arrester in arresters(resolved) {
        let detail = format!("{}: {}", arrester.title, arrester.places);
        parts.push(part(arrester.number.to_string(), "Surge arrester", detail));
    }
    if let Some(supply) = resolved.supply {
        parts.push(part("1", "Supply", format!("{}, {}", supply.title, supply.standard.word())));
    }
}

/// Wrenches for the screws of the bracket, and the torques they must reach.
pub(super) fn tools(end: &EndSheet<'_>) -> String {
    let fasteners = &end.resolved.bracket.fasteners;
    let mut sizes: Vec<u8> = fasteners.iter().filter_map(|fastener| across_flats(&fastener.thread)).collect();
    sizes.sort_unstable();
    sizes.dedup();
    let torques = fasteners.iter().map(|fastener| fastener.torque.value);
    let least = torques.clone().min_by(|one, other| one.0.total_cmp(&other.0));
    let most = torques.max_by(|one, other| one.0.total_cmp(&other.0));
    let wrench = match (least, most) {
        (Some(least), Some(most)) if least == most => format!("torque wrench for {least}"),
        (Some(least), Some(most)) => format!("torque wrench from {least} to {most}"),
        _ => "torque wrench".into(),
    };
    let sockets: Vec<String> = sizes.iter().map(|size| format!("{size} mm")).collect();
    let sockets = if sockets.is_empty() { String::new() } else { format!(" with sockets {}", sockets.join(", ")) };
    shown(&format!("{wrench}{sockets}"))
}
