//! The rules: one file each, in a folder by family.
//!
//! A rule is a [`Rule`] with a manual and a plain function over the sheet. [`judge`] runs them all on one hop. To add one:
//! write its file, name it in the `mod` list of its family and in [`ALL`], and give it a folder of fixtures under
//! `tests/rules`.

pub mod antenna;
pub mod budget;
pub mod causes;
pub mod channel;
pub mod grounding;
pub mod interference;
pub mod licence;
pub mod lightning;
pub mod mount;
pub mod paper;
pub mod path;
pub mod people;
pub mod record;
pub mod run;
pub mod service;
pub mod site;

mod prelude;
mod settings;

use crate::finding::faults::{self, NOT_EVALUATED};
use crate::finding::rule::Rule;
use crate::finding::{Finding, Findings, Identity, Spot};
use crate::network::Holes;
use crate::place::Step;
use crate::sheet::{Cause, Direction, EndSheet, HopSheet, Missing, Reason, RecordSheet, RunSheet, ServiceSheet};
use crate::spec::EndName;

pub use settings::{Quieted, Settings, quieted, unread_maps, unread_tiles, unsound};

/// A rule and the function that judges by it.
pub struct Entry {
    /// Name, manual, severity.
    pub rule: &'static Rule,
    /// What it looks at.
    pub check: Check,
}

/// What a rule looks at: it is called once for each.
pub enum Check {
    /// The whole hop.
    Hop(fn(&HopSheet<'_>, &mut Findings)),
    /// Each direction.
    Direction(fn(&HopSheet<'_>, &Direction<'_>, &mut Findings)),
    /// Each end.
    End(fn(&HopSheet<'_>, &EndSheet<'_>, &mut Findings)),
    /// Each cable run of each end.
    Run(fn(&EndSheet<'_>, &RunSheet<'_>, &mut Findings)),
    /// The newest record of each end, and every one that is still a form.
    Record(fn(&HopSheet<'_>, &RecordSheet<'_>, &mut Findings)),
    /// Each service, after the hops: what it finds is about no hop.
    Service(fn(&ServiceSheet<'_>, &mut Findings)),
}

impl Check {
    /// Whether it looks at hops: what holds for several together is judged after them, and not by every command.
    #[must_use]
    pub const fn is_of_hops(&self) -> bool {
        !matches!(self, Self::Service(_))
    }
}

/// Every rule that judges a hop or a service, in the order `explain` lists them.
pub static ALL: &[&Entry] = &[
    &antenna::aperture_efficiency_impossible::ENTRY,
    &antenna::aperture_efficiency_unusual::ENTRY,
    &antenna::gain_and_beamwidth_disagree::ENTRY,
    &budget::acceptance_window_too_tight::ENTRY,
    &budget::availability_below_objective::ENTRY,
    &budget::availability_within_tolerance::ENTRY,
    &budget::canceller_unstated::ENTRY,
    &budget::capacity_out_of_reach::ENTRY,
    &budget::cross_polar_too_low::ENTRY,
    &budget::crossing_not_judged::ENTRY,
    &budget::errored_above_objective::ENTRY,
    &budget::fade_margin_below_objective::ENTRY,
    &budget::held_level_too_low::ENTRY,
    &budget::level_above_overload::ENTRY,
    &budget::level_not_shown::ENTRY,
    &budget::level_off_readout::ENTRY,
    &budget::multipath_not_judged::ENTRY,
    &budget::near_field_loss::ENTRY,
    &budget::nothing_to_align_by::ENTRY,
    &budget::power_control_unstated::ENTRY,
    &budget::side_lobe_off_readout::ENTRY,
    &budget::sweep_beyond_fine_azimuth::ENTRY,
    &budget::threshold_impossible::ENTRY,
    &budget::threshold_unusual::ENTRY,
    &budget::up_fade_above_overload::ENTRY,
    &budget::wet_antenna_not_counted::ENTRY,
    &budget::wet_snow_not_judged::ENTRY,
    &channel::frequency_outside_antenna::ENTRY,
    &channel::frequency_outside_feeder::ENTRY,
    &channel::frequency_outside_radio::ENTRY,
    &channel::no_common_state::ENTRY,
    &channel::same_duplex_half::ENTRY,
    &channel::transmit_power_out_of_range::ENTRY,
    &interference::channel_used_in_beam::ENTRY,
    &interference::channel_used_twice::ENTRY,
    &interference::halves_mixed::ENTRY,
    &interference::interference_too_strong::ENTRY,
    &interference::neighbour_disturbed::ENTRY,
    &interference::threshold_degraded::ENTRY,
    &licence::channel_off_raster::ENTRY,
    &licence::eirp_above_code::ENTRY,
    &licence::eirp_above_licence::ENTRY,
    &licence::gain_below_code::ENTRY,
    &licence::licence_not_stated::ENTRY,
    &licence::power_above_code::ENTRY,
    &licence::power_above_licence::ENTRY,
    &licence::registration_missing::ENTRY,
    &mount::antenna_off_support::ENTRY,
    &mount::fixing_overloaded::ENTRY,
    &mount::fixings_not_judged::ENTRY,
    &mount::metals_unlike::ENTRY,
    &mount::nominal_size_as_diameter::ENTRY,
    &mount::orography_not_counted::ENTRY,
    &mount::plate_not_made::ENTRY,
    &mount::pole_near_clamp_limit::ENTRY,
    &mount::pole_outside_clamp::ENTRY,
    &mount::pole_overstressed::ENTRY,
    &mount::sway_too_great::ENTRY,
    &mount::tilt_out_of_reach::ENTRY,
    &mount::torque_above_thread::ENTRY,
    &mount::wind_not_judged::ENTRY,
    &people::exposure_uncertain::ENTRY,
    &people::hazards_not_assessed::ENTRY,
    &people::people_too_near::ENTRY,
    &people::power_line_near::ENTRY,
    &paper::title_block_open::ENTRY,
    &path::beyond_horizon::ENTRY,
    &path::clearance_below_practice::ENTRY,
    &path::clearance_not_shown::ENTRY,
    &path::near_edge_in_beam::ENTRY,
    &path::path_obstructed::ENTRY,
    &path::position_imprecise::ENTRY,
    &path::profile_ends_disagree::ENTRY,
    &path::profile_length_disagrees::ENTRY,
    &path::profile_too_coarse::ENTRY,
    &path::terrain_tile_missing::ENTRY,
    &path::trees_outgrow_clearance::ENTRY,
    &run::arrester_missing::ENTRY,
    &run::arrester_unfit::ENTRY,
    &run::cable_cannot_carry::ENTRY,
    &run::cable_category_too_low::ENTRY,
    &run::cable_diameter_open::ENTRY,
    &run::cable_not_for_outdoors::ENTRY,
    &run::cable_not_sealed::ENTRY,
    &run::cable_outside_temperature::ENTRY,
    &run::cable_unscreened::ENTRY,
    &run::conductor_not_copper::ENTRY,
    &run::data_not_carried::ENTRY,
    &run::device_overvoltage::ENTRY,
    &run::device_undervoltage::ENTRY,
    &run::far_port_unfit::ENTRY,
    &run::fibre_too_long::ENTRY,
    &run::fuse_missing::ENTRY,
    &run::fuse_unfit::ENTRY,
    &run::gland_nearly_misses::ENTRY,
    &run::jumper_unprotected::ENTRY,
    &run::no_operating_point::ENTRY,
    &run::passed_on_too_much::ENTRY,
    &run::passed_on_unstated::ENTRY,
    &run::pluggables_unfit::ENTRY,
    &run::plugs_not_metal::ENTRY,
    &run::port_cannot_carry::ENTRY,
    &run::port_used_twice::ENTRY,
    &run::power_point_unstated::ENTRY,
    &run::radio_outside_temperature::ENTRY,
    &run::radio_overvoltage::ENTRY,
    &run::radio_undervoltage::ENTRY,
    &run::radio_unpowered::ENTRY,
    &run::readout_port_occupied::ENTRY,
    &run::run_too_long::ENTRY,
    &run::run_too_long_when_hot::ENTRY,
    &run::screen_bonded_at_one_end::ENTRY,
    &run::start_up_near_limit::ENTRY,
    &run::supply_class_too_low::ENTRY,
    &run::supply_in_the_weather::ENTRY,
    &run::supply_not_accepted::ENTRY,
    &run::supply_not_of_its_class::ENTRY,
    &run::supply_outside_temperature::ENTRY,
    &run::supply_overloaded::ENTRY,
    &run::supply_passes_no_data::ENTRY,
    &run::supply_rate_unstated::ENTRY,
    &run::voltage_reserve_small::ENTRY,
    &run::wiring_unfit::ENTRY,
    &run::wiring_unstated::ENTRY,
    &site::antenna_in_beam::ENTRY,
    &site::antennas_collide::ENTRY,
    &site::antennas_too_near::ENTRY,
    &site::live_antenna_on_climb::ENTRY,
    &site::supply_port_used_twice::ENTRY,
    &site::supply_shared_overloaded::ENTRY,
    &site::supply_shared_unstated::ENTRY,
    &grounding::copper_between_earths::ENTRY,
    &grounding::earth_bond_unstated::ENTRY,
    &grounding::earth_not_bonded::ENTRY,
    &grounding::ground_bond_unstated::ENTRY,
    &grounding::ground_conductor_bent::ENTRY,
    &grounding::ground_conductor_long::ENTRY,
    &grounding::ground_conductor_missing::ENTRY,
    &grounding::ground_conductor_too_thin::ENTRY,
    &grounding::ground_metal_unlisted::ENTRY,
    &lightning::antenna_outside_protected_volume::ENTRY,
    &lightning::arrester_test_unfit::ENTRY,
    &lightning::arrester_test_unstated::ENTRY,
    &lightning::lightning_facts_disagree::ENTRY,
    &lightning::lightning_not_judged::ENTRY,
    &lightning::mast_bond_unstated::ENTRY,
    &lightning::protected_volume_unstated::ENTRY,
    &lightning::protection_level_too_high::ENTRY,
    &lightning::separation_too_small::ENTRY,
    &lightning::separation_unstated::ENTRY,
    &record::antenna_found_elsewhere::ENTRY,
    &record::cable_test_failed::ENTRY,
    &record::ends_disagree::ENTRY,
    &record::ground_conductor_found_thin::ENTRY,
    &record::instrument_out_of_calibration::ENTRY,
    &record::level_found_outside_window::ENTRY,
    &record::meter_and_radio_disagree::ENTRY,
    &record::moved_on_locking::ENTRY,
    &record::polarisation_crossed::ENTRY,
    &record::read_in_wet_air::ENTRY,
    &record::reading_impossible::ENTRY,
    &record::record_incomplete::ENTRY,
    &record::record_of_another_design::ENTRY,
    &record::service_test_failed::ENTRY,
    &record::service_test_short::ENTRY,
    &record::settings_differ::ENTRY,
    &record::side_lobe_found::ENTRY,
    &record::steps_undone::ENTRY,
    &record::voltage_found_low::ENTRY,
    &record::voltage_found_out_of_window::ENTRY,
    &service::route_broken::ENTRY,
    &service::routes_share::ENTRY,
    &service::service_availability_below_objective::ENTRY,
    &service::service_capacity_below_objective::ENTRY,
    &service::service_delay_above_objective::ENTRY,
    &service::service_not_judged::ENTRY,
];

/// Every rule there is: the faults of files first, then the rules that judge a hop.
pub fn every() -> impl Iterator<Item = &'static Rule> {
    let of_files = faults::ALL.iter().chain(faults::waivers::ALL).copied();
    of_files.chain(ALL.iter().map(|entry| entry.rule))
}

/// Judges one hop by every rule, and says what could not be judged because of `holes`.
pub fn judge(hop: &HopSheet<'_>, holes: &Holes, found: &mut Findings) {
    let start = found.list.len();
    for entry in ALL {
        match entry.check {
            Check::Hop(check) => check(hop, found),
            Check::Service(_) => {}
            Check::Direction(check) => hop.directions.iter().for_each(|direction| check(hop, direction, found)),
            Check::End(check) => {
                for end in hop.ends.iter() {
                    let before = found.list.len();
                    check(hop, end, found);
                    of_end(end.name, &mut found.list[before..]);
                }
            }
            Check::Record(check) => {
                for record in hop.records.iter().filter(|record| record.judged) {
                    let before = found.list.len();
                    check(hop, record, found);
                    of_end(record.end, &mut found.list[before..]);
                }
            }
            Check::Run(check) => {
                for end in hop.ends.iter() {
                    let before = found.list.len();
                    end.runs.iter().for_each(|run| check(end, run, found));
                    of_end(end.name, &mut found.list[before..]);
                }
            }
        }
    }
    let mut broken = drop_touching(holes, found, start);
    not_evaluated(hop, found, &mut broken);
    wait_for(hop, &broken, found);
    for finding in &mut found.list[start..] {
        finding.hop = Some(hop.id().to_owned());
        finding.end = match finding.identity {
            Identity::Hop => None,
            Identity::Label | Identity::Spot(_) => finding.end.or_else(|| end_of_label(hop, finding)),
        };
    }
}

/// Judges one service by the rules that look at services. Of what rests on something broken nothing is said: the fault is.
pub fn judge_service(service: &ServiceSheet<'_>, holes: &Holes, found: &mut Findings) {
    let start = found.list.len();
    for entry in ALL {
        if let Check::Service(check) = entry.check {
            check(service, found);
        }
    }
    let hops: Vec<String> = service.resolved.service.routes.iter().flatten().map(ToString::to_string).collect();
    for finding in &mut found.list[start..] {
        finding.other_hops.clone_from(&hops);
    }
    drop_touching(holes, found, start);
}

fn of_end(end: EndName, findings: &mut [Finding]) {
    for finding in findings {
        finding.end = Some(end);
    }
}

/// The end whose part of the hop the primary label stands in.
fn end_of_label(hop: &HopSheet<'_>, finding: &Finding) -> Option<EndName> {
    let place = match &finding.labels.first()?.spot {
        Spot::Field(place) | Spot::Entry(place, _) if place.document == hop.resolved.hop.at => place,
        _ => return None,
    };
    let mut steps = place.steps();
    match (steps.next()?, steps.next()?) {
        (Step::Key("ends"), Step::Key(end)) => EndName::from_letter(end),
        _ => None,
    }
}

/// Something broken that a hop depends on: what is said of it, and where it is shown.
type Broken = (Reason, Spot);

/// Drops the findings that rest on something broken; gives what they rest on.
fn drop_touching(holes: &Holes, found: &mut Findings, start: usize) -> Vec<Broken> {
    let mut broken = Vec::new();
    if holes.is_empty() {
        return broken;
    }
    let judged = found.list.split_off(start);
    found.list.extend(judged.into_iter().filter(|finding| {
        let places = finding.labels.iter().filter_map(|label| match &label.spot {
            Spot::Field(place) | Spot::Entry(place, _) => Some(place),
            Spot::Bytes(..) | Spot::Path(_) => None,
        });
        let places = places.chain(&finding.decided_by);
        let touched: Vec<Broken> =
            places.filter_map(|place| holes.at(place)).map(|(name, spot)| (name.into(), spot)).collect();
        let sound = touched.is_empty();
        broken.extend(touched);
        sound
    }));
    broken
}

/// Says once a hop that something it depends on is broken, and so not all of it is judged.
fn wait_for(hop: &HopSheet<'_>, broken: &[Broken], found: &mut Findings) {
    let mut causes: Vec<&Broken> = Vec::new();
    for cause in broken {
        if !causes.contains(&cause) {
            causes.push(cause);
        }
    }
    let Some((_, spot)) = causes.first() else { return };
    let names: Vec<String> = causes.iter().map(|(name, _)| name.to_string()).collect();
    let spec = hop.resolved.hop;
    let message = format!("cannot be evaluated in full because of {}", names.join(", "));
    let finding = found.report(&NOT_EVALUATED, crate::at!(spec.id), message, "what depends on it is not checked");
    finding.because(spot.clone(), "broken here");
    for (_, spot) in &causes[1..] {
        finding.because(spot.clone(), "and here");
    }
    finding.help("fix it, and the rest will be checked");
}

/// How many lines of the sheet a help names; the others follow from them.
const MOST_WORDS: usize = 3;

/// Says once for each cause what could not be computed, so that a rule that did not run never looks like one that passed.
fn not_evaluated(hop: &HopSheet<'_>, found: &mut Findings, broken: &mut Vec<Broken>) {
    let mut causes: Vec<(Missing, Vec<&str>)> = Vec::new();
    for (line, missing) in hop.missing() {
        if missing.cause == Cause::Broken {
            broken.push((missing.reason, missing.spot));
            continue;
        }
        match causes.iter_mut().find(|(cause, _)| *cause == missing) {
            Some((_, lines)) if lines.contains(&line) => {}
            Some((_, lines)) => lines.push(line),
            None => causes.push((missing, vec![line])),
        }
    }
    if !broken.is_empty() {
        // What stands in for something broken may give no number; that is no cause of its own.
        causes.retain(|(cause, _)| cause.reason != Reason::Endless);
    }
    for (cause, words) in causes {
        let message = format!("cannot be evaluated: {}", cause.reason);
        let spec = hop.resolved.hop;
        let finding = found.report(&NOT_EVALUATED, cause.spot, message, "because of this");
        finding.because(crate::at!(spec.id), "this hop");
        let more = match words.len().saturating_sub(MOST_WORDS) {
            0 => String::new(),
            1 => "; nor 1 line more".into(),
            more => format!("; nor {more} lines more"),
        };
        let named: Vec<&str> = words.into_iter().take(MOST_WORDS).collect();
        finding.help(format!("without it there is no {}{more}", named.join("; no ")));
    }
}
