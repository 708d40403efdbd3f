//! Which way a value of a gate has to move to let more through.

use crate::finding::rule::Severity;
use crate::rules::every;
use crate::sheet::CRITERIA;
use crate::spec::ClearanceCriteria;
use crate::units::{Kind, read};

/// What a change does to a gate.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Effect {
    /// It lets more through.
    Weaker,
    /// It lets other things through, and may let more.
    Other,
    /// It lets less through.
    Stricter,
}

impl Effect {
    /// The word for it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Weaker => "weaker",
            Self::Other => "other",
            Self::Stricter => "stricter",
        }
    }

    const fn turned(self) -> Self {
        match self {
            Self::Weaker => Self::Stricter,
            Self::Other => Self::Other,
            Self::Stricter => Self::Weaker,
        }
    }
}

/// A value that lets more through the lower it is, or the higher, and the quantity it is; none for a plain number.
struct Sense {
    ends_with: &'static str,
    quantity: Option<&'static str>,
    weaker: Worse,
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Worse {
    Lower,
    Higher,
}

const fn lower(ends_with: &'static str, quantity: &'static str) -> Sense {
    Sense { ends_with, quantity: Some(quantity), weaker: Worse::Lower }
}

const fn higher(ends_with: &'static str, quantity: &'static str) -> Sense {
    Sense { ends_with, quantity: Some(quantity), weaker: Worse::Higher }
}

const fn plain(ends_with: &'static str, weaker: Worse) -> Sense {
    Sense { ends_with, quantity: None, weaker }
}

const SENSES: &[Sense] = &[
    lower("objectives.availability", "percentage"),
    higher("objectives.errored.share", "percentage"),
    lower("objectives.capacity", "data rate"),
    lower("objectives.fade_margin", "level difference"),
    higher("objectives.acceptance_window", "level difference"),
    higher("objectives.delay", "delay"),
    lower("rain_common_within", "length"),
    lower("climate.rain_rate", "rain rate"),
    lower("climate.rain_rate_tolerance", "percentage"),
    lower("climate.fog", "water content"),
    lower("climate.up_fade", "level difference"),
    lower("climate.wind.operating", "speed"),
    lower("climate.wind.survival", "speed"),
    lower("climate.ice.thickness", "diameter"),
    lower("climate.ice.density", "density"),
    lower("climate.ice.wind_share", "percentage"),
    lower("climate.hottest_air", "temperature"),
    higher("climate.coldest_air", "temperature"),
    plain("climate.low_k", Worse::Higher),
    lower("limits.voltage_reserve", "voltage"),
    higher("limits.wind_loss", "level difference"),
    lower("limits.power_line", "length"),
    higher("limits.locking_loss", "level difference"),
    higher("limits.reciprocity", "level difference"),
    higher("limits.voltage_drop", "voltage"),
    lower("limits.start_voltage", "voltage"),
    lower("limits.contact_resistance", "resistance"),
    lower("limits.sun_on_jacket", "temperature difference"),
    higher("limits.hot_length", "length"),
    lower("limits.gland_reserve", "diameter"),
    lower("limits.drip_loop", "diameter"),
    higher("limits.ground_length", "length"),
    lower("limits.ground_bend", "diameter"),
    lower("limits.antenna_gap", "diameter"),
    lower("limits.spare", "percentage"),
    plain("limits.clearance", Worse::Lower),
    plain("limits.low_k_clearance", Worse::Lower),
    lower("limits.unseen_height", "length"),
    higher("limits.threshold_degradation", "level difference"),
    higher("limits.neighbour_disturbance", "level difference"),
    higher("licence.max_eirp", "power level"),
    higher("licence.max_power", "power level"),
    plain("waivers.longest_months", Worse::Higher),
    plain("waivers.notice_days", Worse::Lower),
];

/// What a value of a network or a hop does that was one thing and is another; `None` where it is not written.
pub(super) fn of(kind: &str, route: &str, before: Option<&str>, after: Option<&str>) -> Effect {
    if route.starts_with("rules") {
        return of_rule(route, before, after);
    }
    if route == "limits.clearance_criteria" {
        return of_criteria(before, after);
    }
    if route.starts_with("exclude[") {
        return by_presence(before, after).turned();
    }
    if let Some((_, usual, strict)) = CHOICES.iter().find(|(choice, ..)| route == *choice) {
        return of_choice(before.unwrap_or(usual), after.unwrap_or(usual), strict);
    }
    if kind == "service" && (before.is_none() || after.is_none()) {
        // Without the distance all rain is common, which is the careful side; an objective that is not written asks nothing.
        let written = by_presence(before, after);
        return if route == "rain_common_within" { written.turned() } else { written };
    }
    let (Some(before), Some(after)) = (before, after) else {
        // A hop that says nothing has what its network asks for; a limit that is not written has its default.
        let asks =
            kind == "network" && ["objectives.", "climate.", "codes."].iter().any(|head| route.starts_with(head));
        let caps = route.starts_with("licence.max_");
        let default = ["hottest_air", "acceptance_window", "low_k"].iter().any(|key| route.ends_with(key))
            || route.contains(".air.");
        return if (asks || caps) && !default { by_presence(before, after) } else { Effect::Other };
    };
    let Some(sense) = SENSES.iter().find(|sense| route == sense.ends_with) else { return Effect::Other };
    let number = |text: &str| match sense.quantity {
        None => text.parse::<f64>().ok(),
        Some(quantity) => read(Kind::named(quantity)?, text).ok(),
    };
    match (number(before), number(after)) {
        (Some(before), Some(after)) if before.total_cmp(&after).is_eq() => Effect::Other,
        (Some(before), Some(after)) => {
            if (after < before) == (sense.weaker == Worse::Lower) {
                Effect::Weaker
            } else {
                Effect::Stricter
            }
        }
        _ => Effect::Other,
    }
}

/// A choice of two words: which one it is where none is written, and which of them lets less through.
const CHOICES: [(&str, &str, &str); 2] =
    [("objectives.period", "average-year", "worst-month"), ("objectives.directions", "together", "together")];

/// What another word does that was chosen.
fn of_choice(before: &str, after: &str, strict: &str) -> Effect {
    match (before == strict, after == strict) {
        (true, false) => Effect::Weaker,
        (false, true) => Effect::Stricter,
        _ => Effect::Other,
    }
}

/// What is asked for and no longer is.
const fn by_presence(before: Option<&str>, after: Option<&str>) -> Effect {
    match (before, after) {
        (Some(_), None) => Effect::Weaker,
        (None, Some(_)) => Effect::Stricter,
        _ => Effect::Other,
    }
}

/// Criteria of clearance; where the network names none its default stands.
fn of_criteria(before: Option<&str>, after: Option<&str>) -> Effect {
    let ranks = |text: Option<&str>| match text {
        None => Some(CRITERIA.ranks()),
        Some(text) => ClearanceCriteria::ALL.iter().find(|one| one.word() == text).map(|one| one.ranks()),
    };
    let (Some(before), Some(after)) = (ranks(before), ranks(after)) else { return Effect::Other };
    let (less, more) =
        (before.iter().zip(after).any(|(old, new)| new < *old), before.iter().zip(after).any(|(old, new)| new > *old));
    match (less, more) {
        (true, false) => Effect::Weaker,
        (false, true) => Effect::Stricter,
        _ => Effect::Other,
    }
}

/// The rule a route sets the severity of.
pub(super) fn rule_of(route: &str) -> Option<&str> {
    route.strip_prefix("rules.").or_else(|| {
        let below = route.strip_prefix("rules_by_path[")?;
        below.rsplit_once("].rules.").map(|(_, rule)| rule)
    })
}

fn of_rule(route: &str, before: Option<&str>, after: Option<&str>) -> Effect {
    let own = rule_of(route).and_then(|name| every().find(|rule| rule.name == name)).map(|rule| rule.severity);
    let Some(own) = own else { return Effect::Other };
    let weight = |text: Option<&str>| match text {
        Some("off") => 0,
        Some("advice") => weight_of(Severity::Advice),
        Some("warning") => weight_of(Severity::Warning),
        Some("error") => weight_of(Severity::Error),
        _ => weight_of(own),
    };
    match (weight(before), weight(after)) {
        (before, after) if after < before => Effect::Weaker,
        (before, after) if after > before => Effect::Stricter,
        _ => Effect::Other,
    }
}

const fn weight_of(severity: Severity) -> u8 {
    match severity {
        Severity::Advice => 1,
        Severity::Warning => 2,
        Severity::Error => 3,
    }
}

#[cfg(test)]
mod tests {
    use super::{Effect, SENSES, of};
    use crate::units::Kind;

    #[test]
    fn every_quantity_named_here_is_one() {
        for sense in SENSES {
            assert!(sense.quantity.is_none_or(|name| Kind::named(name).is_some()), "{}", sense.ends_with);
        }
    }

    #[test]
    fn criteria_are_told_apart_by_what_they_ask_for() {
        let to = |before, after| of("network", "limits.clearance_criteria", before, after);
        assert_eq!(to(None, Some("free space 0.6")), Effect::Weaker);
        assert_eq!(to(Some("P.530-18 temperate isolated"), None), Effect::Stricter);
        assert_eq!(to(Some("P.530-18 temperate"), Some("P.530-18 tropical isolated")), Effect::Other);
        assert_eq!(to(Some("P.530-18 tropical"), Some("P.530-18 tropical isolated")), Effect::Weaker);
        assert_eq!(of("hop", "climate.low_k", Some("0.6"), None), Effect::Other);
    }

    #[test]
    fn units_do_not_hide_which_way_a_value_moves() {
        assert_eq!(of("network", "limits.voltage_reserve", Some("2 V"), Some("1500 mV")), Effect::Weaker);
        assert_eq!(of("network", "limits.hot_length", Some("100 m"), Some("0.09 km")), Effect::Stricter);
        assert_eq!(of("network", "rules.tilt-out-of-reach", None, Some("warning")), Effect::Weaker);
        assert_eq!(of("network", "objectives.fade_margin", Some("20 dB"), None), Effect::Weaker);
        assert_eq!(of("hop", "objectives.fade_margin", None, Some("20 dB")), Effect::Other);
        assert_eq!(of("service", "objectives.delay", Some("2 ms"), Some("2500 us")), Effect::Weaker);
        assert_eq!(of("service", "rain_common_within", None, Some("5 km")), Effect::Weaker);
        assert_eq!(of("service", "rain_common_within", Some("5 km"), Some("8 km")), Effect::Stricter);
        assert_eq!(of("service", "objectives.availability", Some("99.9 %"), None), Effect::Weaker);
        assert_eq!(of("hop", "objectives.directions", None, Some("each")), Effect::Weaker);
        assert_eq!(of("network", "objectives.directions", Some("each"), None), Effect::Stricter);
        assert_eq!(of("network", "objectives.period", Some("worst-month"), Some("average-year")), Effect::Weaker);
        assert_eq!(of("network", "objectives.period", None, Some("average-year")), Effect::Other);
    }
}
