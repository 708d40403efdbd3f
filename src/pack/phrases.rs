//! What more than one page says, in the same words.

use std::fmt::Display;

use super::words::sentence;
use crate::sheet::{EndSheet, KeepClear, Line, OnwardLines, Row};
use crate::spec::Cable;
use crate::voice::Voice;

/// What a run feeds, and what that draws.
pub(super) fn feeds(onward: &OnwardLines, voice: Voice) -> String {
    let (device, draw) = (voice.line(&onward.feeds), voice.line(&onward.draw));
    voice.with("run-feeds-detail", &[("device", &device), ("draw", &draw)])
}

/// The least conductor as the code writes it.
pub(super) fn least_conductor_as_written(end: &EndSheet<'_>, voice: Voice) -> String {
    voice.number(end.ground_written())
}

/// The least conductor, as the code writes it and in full.
pub(super) fn least_conductor(end: &EndSheet<'_>, voice: Voice) -> String {
    let (written, needed) = (least_conductor_as_written(end, voice), voice.line(&end.ground.needed));
    voice.with("ground-least-detail", &[("written", &written), ("needed", &needed)])
}

/// How thick a cable is, in both systems: one diameter, or two that it lies between.
pub(super) fn across(cable: &Cable, voice: Voice) -> String {
    let most = voice.given_in_both(&cable.outside_diameter);
    match &cable.least_diameter {
        Some(least) => voice.range(&voice.given_in_both(least), &most),
        None => most,
    }
}

/// An angle in decimals and in seconds.
pub(super) fn angle(decimal: impl Display, seconds: String, voice: Voice) -> String {
    voice.with("or", &[("one", &voice.number(decimal)), ("other", &voice.number(seconds))])
}

/// What a row is, as a label.
pub(super) fn label(row: &Row, voice: Voice) -> String {
    sentence(&voice.term(row.words))
}

/// A distance to keep, in words where there is none.
pub(super) fn reach(line: &Line<KeepClear>, voice: Voice) -> String {
    match line.get() {
        Some(KeepClear(reach)) if reach.0 > 0.0 => voice.in_both(reach),
        Some(_) => voice.say("keep-clear-nowhere"),
        None => voice.line(line),
    }
}
