//! The work at one end, step by step: one action each, with the safety message that concerns it directly before.

use serde::Serialize;

use super::cautions::{self, Caution};
use super::licence;
use super::parts::{open_ports, place, way_up};
use super::words::{say, say_in_both, shown};
use crate::sheet::{EndSheet, HopSheet, RunSheet};
use crate::spec::{RunPlace, Screening, Service};
use crate::units::{Degrees, given_in_both};

/// Something to do, or something to know before doing it.
#[derive(Debug, Serialize)]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub(super) enum Item {
    /// One action, with a box to tick.
    Step {
        /// An imperative sentence, and what comes of it.
        text: String,
    },
    /// A safety message for the step that follows.
    Caution(Caution),
    /// Something that somebody may want to see before it is covered or changed; the work goes on if nobody comes.
    Witness {
        /// What there is to see.
        text: String,
    },
}

fn step(text: impl Into<String>) -> Item {
    Item::Step { text: text.into() }
}

/// A witness point. Where one stands is common practice, no source.
fn witness(text: impl Into<String>) -> Item {
    Item::Witness { text: text.into() }
}

/// From the bare support to an antenna that points roughly right.
pub(super) fn mounting(sheet: &HopSheet<'_>, end: &EndSheet<'_>) -> Vec<Item> {
    let (own, lines) = (end.resolved, &end.lines);
    let (support, bracket) = (own.support, own.bracket);
    let mut items = vec![
        step(format!(
            "Find {} ({}) and measure its tube: {} outside.",
            support.id,
            support.kind.word(),
            shown(&given_in_both(&support.outside_diameter))
        )),
        step("Stand well clear of steel and find the far end by its bearing. Pick a landmark behind it."),
        step("Look along the path. If anything stands in it, stop and call the designer."),
    ];
    if let Some(plate) = bracket.plate.as_ref().filter(|_| own.end.bracket.plate) {
        items.push(step(format!("Bolt the extension plate {} to the bracket.", plate.title)));
    }
    let mounted = way_up(own.end.bracket.orientation);
    items.push(step(format!("Turn the bracket {mounted}, seen as its maker draws it.")));
    if bracket.fine_azimuth.is_some() {
        items.push(step("Set the fine azimuth screw to the middle of its travel."));
    }
    items.push(step(format!(
        "Fix the antenna to the radio for {} polarisation.",
        sheet.resolved.hop.channel.polarisation.word()
    )));
    items.push(Item::Caution(cautions::HEIGHT));
    items.push(step(format!(
        "Lift the bracket and clamp it so that the antenna centre comes {} above the ground.",
        shown(&given_in_both(&own.end.height))
    )));
    items.push(step("Lift radio and antenna and hang them on the bracket."));
    items.push(step(format!("Set the tilt to {}.", tilt(end))));
    items.push(step(format!("Turn the antenna to {} true, towards the landmark.", say(&lines.true_bearing))));
    items.push(step("Tighten every screw only until nothing slips. The full torque comes after alignment."));
    items
}

/// The tilt with the word a crew needs.
pub(super) fn tilt(end: &EndSheet<'_>) -> String {
    let word = match end.lines.tilt.get() {
        Some(tilt) if tilt.0 > 0.0 => " (up)",
        Some(tilt) if tilt.0 < 0.0 => " (down)",
        _ => "",
    };
    format!("{}{word}", say(&end.lines.tilt))
}

/// Grounding, then each run from the radio to what feeds it.
pub(super) fn cabling(end: &EndSheet<'_>) -> Vec<Item> {
    let own = end.resolved;
    let bond = own.earth.map_or("the earth point of the site (NOT SET: ask the designer)", |point| &point.spec.title);
    let terminal = &own.radio.ground;
    let torque = terminal.torque.as_ref().map(|torque| format!(" and tighten it to {}", shown(&given_in_both(torque))));
    let mut items = vec![Item::Caution(cautions::WEATHER)];
    if own.earth.is_none_or(|earth| earth.bonded.is_none()) {
        items.push(step(
            "Make sure that this earth point is bonded to the electrode of the building. If not, stop and ask.",
        ));
    }
    items.extend([
        step(format!("Bond the grounding conductor to: {bond}.")),
        step(format!(
            "Lead it to the radio short and straight, no coil, no bend under {}, and fix it to the {}{}.",
            shown(&given_in_both(&end.practice.ground_bend.given)),
            terminal.terminal,
            torque.unwrap_or_default()
        )),
    ]);
    for (number, run) in end.runs.iter().enumerate() {
        pull(run, &mut items);
        if number == 0 {
            items.push(witness("The bond, the lug and the cable at its entry, before anything is closed or covered."));
        }
        close(run, &mut items);
    }
    let free = open_ports(own);
    for port in free.iter().filter(|port| **port != &*own.radio.readout.port) {
        items.push(step(format!("Close port {port} with the maker's blank.")));
    }
    if free.contains(&&*own.radio.readout.port) {
        items.push(step(format!("Leave port {} free for the meter.", own.radio.readout.port)));
    }
    for run in &end.runs {
        energise(run, &mut items);
    }
    items
}

fn pull(run: &RunSheet<'_>, items: &mut Vec<Item>) {
    let resolved = run.resolved;
    let port = &resolved.port.id;
    items.push(step(format!(
        "Pull the cable {} from port {port} to {} without bending it under {}, fixed not under {}. Tie it.",
        resolved.cable.title,
        to_where(run),
        say_in_both(&run.handling.pulling_radius),
        say_in_both(&run.handling.bend_radius)
    )));
}

fn close(run: &RunSheet<'_>, items: &mut Vec<Item>) {
    let (resolved, lines) = (run.resolved, &run.lines);
    let port = &resolved.port.id;
    if let Ok(insert) = &lines.gland.value {
        let by_hand = resolved.port.glands.iter().any(|gland| *gland.title == *insert.0 && gland.hand_tight);
        let how = if by_hand { " Tighten by hand only." } else { "" };
        items.push(step(format!("Close the cable in at port {port} with gland insert: {}.{how}", insert.0)));
    }
    items.push(step(format!(
        "Form a drip loop whose lowest point hangs {} below port {port}.",
        run.handling.drip_loop.value.as_ref().map_or_else(|_| "—".into(), |depth| shown(&given_in_both(depth)))
    )));
    for (arrester, used) in resolved.arresters.iter().zip(&resolved.run.arresters) {
        let at = match (used.at, &run.onward) {
            (RunPlace::Entry, Some(_)) => "at the far end",
            (at, _) => place(at),
        };
        items.push(step(format!("Fit and bond the arrester {} {at}.", arrester.title)));
    }
    if resolved.cable.screening != Screening::UUtp {
        let bonded = resolved.run.screen.words();
        let at =
            resolved.entry_earth.map_or_else(String::new, |earth| format!(", at the entry to: {}", earth.spec.title));
        items.push(step(format!("Bond the screen of the cable to port {port} {bonded}{at}.")));
    }
    items.push(step(format!("Test every pair of the cable to port {port} and its screen from end to end.")));
}

/// Where a cable goes from the radio.
fn to_where(run: &RunSheet<'_>) -> String {
    match &run.onward {
        Some(onward) => format!("the {}", onward.feeds.value.as_ref().map_or("device", |words| words.0.as_str())),
        None => "the building".into(),
    }
}

/// Power last, when every cable is in its place.
fn energise(run: &RunSheet<'_>, items: &mut Vec<Item>) {
    let (resolved, lines) = (run.resolved, &run.lines);
    let port = &resolved.port.id;
    if let (Some(supply), true) = (resolved.supply, run.carries(Service::Power)) {
        items.push(Item::Caution(cautions::ELECTRICITY));
        let at = resolved.power_point.map_or_else(|| "place NOT SET".into(), |point| point.title.to_string());
        if let Some(wiring) = supply.wiring {
            items.push(step(format!(
                "Measure contacts and poles of the supply {} before anything is plugged in: {}.",
                supply.title,
                wiring.word()
            )));
        }
        items
            .push(step(format!("Connect the run to port {port} to the supply {} ({at}) and switch on.", supply.title)));
        items.push(step(format!(
            "Measure the voltage at the radio under load: expect {} or more.",
            say(&lines.radio_voltage)
        )));
    }
}

/// What holds the level by itself hides the peak.
fn power_control_off(end: &EndSheet<'_>) -> String {
    let has = |radio: &crate::spec::Radio| radio.automatic_power_control.unwrap_or(true);
    let which = match (has(end.resolved.radio), has(end.far.radio)) {
        (true, true) => "Switch automatic power control off at both ends.",
        (true, false) => "Switch automatic power control off here; the far end has none.",
        (false, true) => "Switch automatic power control off at the far end; there is none here.",
        (false, false) => "Neither radio has automatic power control: nothing to switch off.",
    };
    which.into()
}

/// How far to sweep so that the beam shows between its side lobes.
fn sweep(end: &EndSheet<'_>) -> String {
    let far = |angle: Degrees| format!("at least {}", shown(&angle.to_string()));
    end.dish.lobes.sweep.get().map_or_else(|| "well past the first peak".into(), far)
}

/// From two powered ends to a signal on the meter.
pub(super) fn preparation(sheet: &HopSheet<'_>, end: &EndSheet<'_>) -> Vec<Item> {
    let own = end.resolved;
    let port = &own.radio.readout.port;
    let bandwidth = &sheet.resolved.hop.channel.bandwidth;
    let mut items = vec![
        step("Call the crew at the far end. Agree who moves; the other end stands still."),
        step(format!("Set bandwidth {} and the most robust modulation at both ends.", shown(&bandwidth.to_string()))),
        step(power_control_off(end)),
        step(format!(
            "Set the transmit power to {} here and to {} at the far end.",
            shown(&own.end.transmit_power.to_string()),
            shown(&end.far.end.transmit_power.to_string())
        )),
    ];
    let sending = sheet.directions().into_iter().find(|direction| std::ptr::eq(direction.sender, own));
    items.extend(sending.and_then(|direction| licence::ceiling(sheet, direction)).map(step));
    items.extend([
        Item::Caution(cautions::RADIATION),
        step("Switch both transmitters on and wait until both radios have started."),
        step(format!("Put a voltmeter that shows millivolts on port {port}.")),
    ]);
    items
}

/// From a signal on the meter to a locked and recorded antenna.
pub(super) fn alignment(end: &EndSheet<'_>) -> Vec<Item> {
    let own = end.resolved;
    let port = &own.radio.readout.port;
    let mut items = vec![
        step(format!("Sweep azimuth slowly, {} to both sides. Go back to the strongest peak.", sweep(end))),
        step("Sweep tilt in the same way. Go back to the strongest peak."),
        step("Peak with the fine screws. Then let the far end do the same. Repeat until neither end gains."),
        step("Compare with the target above. Write the reading into the record."),
    ];
    for fastener in &own.bracket.fasteners {
        items.push(step(format!(
            "{}: tighten {} × {} in turns and in stages to {}.",
            fastener.title,
            fastener.count,
            fastener.thread,
            shown(&given_in_both(&fastener.torque))
        )));
    }
    if own.bracket.fasteners.is_empty() {
        items.push(step("Tighten all screws in turns and in stages to the maker's torque."));
    }
    items.push(witness("The reading on the meter with every screw at its final torque."));
    items.push(step("Read again. If it got weaker, loosen and peak anew. Write the reading into the record."));
    items.push(step("Switch all that was switched off for aligning back on at both ends."));
    items.push(step(format!("Take the meter off and close port {port}.")));
    items
}
