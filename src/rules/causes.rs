//! Which findings are causes, and what is found only because of them.
//!
//! Where an input cannot be right, whatever is computed from it is not worth a reader's time: it is counted under the cause and
//! told on request. The table is in order: what stands earlier is the deeper cause, and takes what a later one would. Nothing
//! is hidden by a cause that is itself waived, known, switched off or of a lower severity.

use super::{antenna, budget, channel, interference, mount, path, record, run};
use crate::finding::rule::Rule;

/// A rule that finds an input that cannot be right.
pub struct Cause {
    /// The rule.
    pub rule: &'static Rule,
    /// What follows from it on the same hop: names of families or of rules.
    pub spoils: &'static [&'static str],
}

/// What follows from levels that are wrong.
macro_rules! levels {
    ($($more:literal),*) => {
        &[
            "budget",
            "interference",
            "level-found-outside-window",
            "ends-disagree",
            "side-lobe-found",
            "service-test-failed",
            "service",
            $($more),*
        ]
    };
}

/// What follows from a line of sight that is not there.
macro_rules! sight {
    ($($more:literal),*) => { levels!("path", "hop-not-evaluated" $(, $more)*) };
}

/// What follows from a supply that cannot work.
const VOLTAGES: &[&str] = &[
    "no-operating-point",
    "radio-undervoltage",
    "radio-overvoltage",
    "device-undervoltage",
    "device-overvoltage",
    "supply-overloaded",
    "supply-class-too-low",
    "voltage-reserve-small",
    "start-up-near-limit",
    "voltage-found-low",
    "voltage-found-out-of-window",
];

/// Every cause, the deepest first. Faults of files come before them all.
pub static CAUSES: &[Cause] = &[
    Cause {
        rule: &path::beyond_horizon::RULE,
        spoils: sight!("tilt-out-of-reach", "plate-not-made", "antenna-found-elsewhere"),
    },
    Cause {
        rule: &mount::antenna_off_support::RULE,
        spoils: sight!(
            "tilt-out-of-reach",
            "plate-not-made",
            "pole-overstressed",
            "sway-too-great",
            "wind-not-judged",
            "antenna-found-elsewhere",
            "antennas-collide",
            "antennas-too-near",
            "antenna-in-beam",
            "people"
        ),
    },
    Cause {
        rule: &channel::same_duplex_half::RULE,
        spoils: levels!("frequency-outside-radio", "frequency-outside-antenna", "licence"),
    },
    Cause {
        rule: &channel::frequency_outside_radio::RULE,
        spoils: levels!("frequency-outside-antenna", "licence", "antenna", "hop-not-evaluated"),
    },
    Cause { rule: &channel::frequency_outside_antenna::RULE, spoils: levels!("antenna", "gain-below-code") },
    Cause {
        rule: &channel::transmit_power_out_of_range::RULE,
        spoils: levels!(
            "power-above-code",
            "power-above-licence",
            "eirp-above-code",
            "eirp-above-licence",
            "people-too-near",
            "exposure-uncertain"
        ),
    },
    Cause {
        rule: &antenna::aperture_efficiency_impossible::RULE,
        spoils: levels!(
            "antenna",
            "eirp-above-code",
            "eirp-above-licence",
            "gain-below-code",
            "people-too-near",
            "exposure-uncertain",
            "hop-not-evaluated"
        ),
    },
    Cause {
        rule: &antenna::gain_and_beamwidth_disagree::RULE,
        spoils: levels!("aperture-efficiency-unusual", "gain-below-code"),
    },
    Cause { rule: &budget::threshold_impossible::RULE, spoils: levels!("threshold-unusual") },
    Cause { rule: &channel::no_common_state::RULE, spoils: levels!("channel-off-raster") },
    Cause { rule: &budget::capacity_out_of_reach::RULE, spoils: levels!("channel-off-raster") },
    Cause { rule: &path::profile_length_disagrees::RULE, spoils: sight!() },
    Cause {
        rule: &path::profile_ends_disagree::RULE,
        spoils: sight!("tilt-out-of-reach", "plate-not-made", "antenna-found-elsewhere"),
    },
    Cause { rule: &path::path_obstructed::RULE, spoils: sight!() },
    Cause { rule: &mount::pole_outside_clamp::RULE, spoils: &["pole-overstressed", "sway-too-great"] },
    Cause { rule: &run::supply_not_of_its_class::RULE, spoils: VOLTAGES },
    Cause { rule: &run::supply_not_accepted::RULE, spoils: VOLTAGES },
    Cause { rule: &run::wiring_unfit::RULE, spoils: VOLTAGES },
    Cause { rule: &run::no_operating_point::RULE, spoils: VOLTAGES },
    Cause {
        rule: &run::run_too_long::RULE,
        spoils: &["run-too-long-when-hot", "radio-undervoltage", "voltage-reserve-small"],
    },
    Cause {
        rule: &record::reading_impossible::RULE,
        spoils: &[
            "level-found-outside-window",
            "ends-disagree",
            "meter-and-radio-disagree",
            "moved-on-locking",
            "side-lobe-found",
        ],
    },
    Cause { rule: &budget::level_off_readout::RULE, spoils: &["side-lobe-off-readout"] },
    Cause { rule: &interference::interference_too_strong::RULE, spoils: levels!() },
    Cause { rule: &interference::threshold_degraded::RULE, spoils: levels!() },
    Cause {
        rule: &budget::availability_below_objective::RULE,
        spoils: &["availability-within-tolerance", "service-availability-below-objective"],
    },
];
