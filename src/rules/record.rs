//! Rules on records: what a crew found, held against the prediction for that day.

pub mod antenna_found_elsewhere;
pub mod cable_test_failed;
pub mod ends_disagree;
pub mod ground_conductor_found_thin;
pub mod instrument_out_of_calibration;
pub mod level_found_outside_window;
pub mod meter_and_radio_disagree;
pub mod moved_on_locking;
pub mod polarisation_crossed;
pub mod read_in_wet_air;
pub mod reading_impossible;
pub mod record_incomplete;
pub mod record_of_another_design;
pub mod service_test_failed;
pub mod service_test_short;
pub mod settings_differ;
pub mod side_lobe_found;
pub mod steps_undone;
pub mod voltage_found_low;
pub mod voltage_found_out_of_window;

use crate::at;
use crate::place::Place;
use crate::sheet::{EndSheet, HopSheet, RecordSheet};

/// Where the level after locking is written.
fn measured_at(sheet: &RecordSheet<'_>) -> Place {
    let record = sheet.document;
    if record.after_locking.meter.is_some() { at!(record.after_locking.meter) } else { at!(record.after_locking.level) }
}

/// What a finding about the level after locking is known by, whichever of its readings is written.
fn read_at(sheet: &RecordSheet<'_>) -> Place {
    let record = sheet.document;
    at!(record.after_locking)
}

/// Where the level before locking is written.
fn before_at(sheet: &RecordSheet<'_>) -> Place {
    let record = sheet.document;
    if record.before_locking.meter.is_some() {
        at!(record.before_locking.meter)
    } else {
        at!(record.before_locking.level)
    }
}

/// The sheet of the far end of a record.
fn far_of<'s, 'n>(hop: &'s HopSheet<'n>, sheet: &RecordSheet<'_>) -> &'s EndSheet<'n> {
    &hop.ends[sheet.end.far()]
}

/// How far to sweep at each end.
fn sweeps(hop: &HopSheet<'_>, sheet: &RecordSheet<'_>) -> String {
    let (here, there) = (&hop.ends[sheet.end], far_of(hop, sheet));
    let of = |end: &EndSheet<'_>| super::prelude::line(&end.dish.lobes.sweep);
    format!("{} to both sides here and {} at the far end", of(here), of(there))
}
