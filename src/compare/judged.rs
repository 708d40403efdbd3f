//! The quantities a hop is decided by: which line is held against which limit, and which line says what is left.

use crate::sheet::{Direction, EndSheet, HopSheet, LONGEST_RUN};
use crate::spec::Way;

/// A quantity with a limit.
#[derive(Debug, Clone)]
pub struct Judged {
    /// Key of the line that is held against the limit.
    pub value: String,
    /// What it is, in words.
    pub name: String,
    /// The limit, in words.
    pub limit: Option<String>,
    /// Key of the line that says what is left.
    pub margin: Option<String>,
    /// Key of the line that is the limit, where no line says what is left: the value must reach it.
    pub least: Option<String>,
}

/// The quantities of a hop, those of the design pack's decision first, then every other line that says what is left.
pub(super) fn of(sheet: &HopSheet<'_>) -> Vec<Judged> {
    let target = &sheet.target;
    let with_margin = |value: String, name: String, limit: String, margin: String| Judged {
        value,
        name,
        limit: Some(limit),
        margin: Some(margin),
        least: None,
    };
    let mut list = vec![with_margin(
        "service.availability".into(),
        format!("availability, both directions, at {}", target.capacity.given),
        format!("≥ {}", target.availability.given),
        "service.in_hand".into(),
    )];
    for direction in sheet.directions.iter() {
        let Direction { way, receiver, .. } = direction;
        let name = way.key();
        if let Some(wanted) = &target.fade_margin {
            list.push(with_margin(
                format!("{name}.margins.fade_margin"),
                format!("fade margin {way}"),
                format!("≥ {}", wanted.given),
                format!("{name}.margins.fade_in_hand"),
            ));
        }
        list.push(with_margin(
            format!("{name}.level"),
            format!("received level {way}, below overload"),
            format!("≤ {}", receiver.radio.overload),
            format!("{name}.margins.overload_in_hand"),
        ));
    }
    for end in sheet.ends.iter() {
        of_end(sheet, end, &mut list);
    }
    let known: Vec<String> = list.iter().filter_map(|judged| judged.margin.clone()).collect();
    for section in sheet.sections() {
        for row in &section.rows {
            let key = named_key(sheet, &row.key);
            let word = key.rsplit('.').next().unwrap_or_default();
            if word.ends_with("in_hand") && !known.contains(&key) && row.number.is_some() {
                let name = format!("{}: {}", section.title, row.words);
                list.push(Judged { value: key.clone(), name, limit: None, margin: Some(key), least: None });
            }
        }
    }
    list
}

fn of_end(sheet: &HopSheet<'_>, end: &EndSheet<'_>, list: &mut Vec<Judged>) {
    let (name, lines) = (end.name, &end.lines);
    let reach = lines.tilt_least.get().zip(lines.tilt_most.get());
    list.push(Judged {
        value: format!("ends.{name}.tilt"),
        name: format!("tilt of the bracket, end {name}"),
        limit: reach.map(|(least, most)| format!("{least} to {most}")),
        margin: Some(format!("ends.{name}.tilt_in_hand")),
        least: None,
    });
    for (number, run) in end.runs.iter().enumerate() {
        let key = named_key(sheet, &format!("ends.{name}.runs[{number}]."));
        let port = &run.resolved.port.id;
        let pair = |value: &str, margin: &str, words: &str, limit: String| Judged {
            value: format!("{key}{value}"),
            name: format!("{words}, end {name}, port {port}"),
            limit: Some(limit),
            margin: Some(format!("{key}{margin}")),
            least: None,
        };
        let least = &end.resolved.radio.power.voltage.min;
        let limit = format!("≥ {least} and {} reserve", end.voltage_reserve.given);
        list.push(pair("radio_voltage", "voltage_in_hand", "voltage at the radio", limit));
        list.push(pair("length", "length_in_hand", "cable length", format!("≤ {LONGEST_RUN}")));
    }
    list.push(Judged {
        value: format!("ends.{name}.ground_conductor"),
        name: format!("grounding conductor, end {name}"),
        limit: Some(format!("≥ {}", end.ground_written())),
        margin: None,
        least: Some(format!("ends.{name}.ground_needed")),
    });
}

/// The key of a line with the name of a run's port or of a state instead of its number, where the name says which one it
/// is: a run put in before another is no change to that other.
pub(super) fn named_key(sheet: &HopSheet<'_>, key: &str) -> String {
    let Some((before, rest)) = key.split_once('[') else { return key.to_owned() };
    let Some((number, after)) = rest.split_once(']') else { return key.to_owned() };
    let Ok(number) = number.parse::<usize>() else { return key.to_owned() };
    let names: Vec<String> = match before {
        "ends.a.runs" => ports(&sheet.ends.a),
        "ends.b.runs" => ports(&sheet.ends.b),
        "a_to_b.states" => sheet.directions[Way::AToB].states.iter().map(|state| state.title.clone()).collect(),
        "b_to_a.states" => sheet.directions[Way::BToA].states.iter().map(|state| state.title.clone()).collect(),
        _ => return key.to_owned(),
    };
    match names.get(number) {
        Some(name) if names.iter().filter(|other| *other == name).count() == 1 => format!("{before}[{name}]{after}"),
        _ => key.to_owned(),
    }
}

fn ports(end: &EndSheet<'_>) -> Vec<String> {
    end.runs.iter().map(|run| run.resolved.port.id.to_string()).collect()
}
