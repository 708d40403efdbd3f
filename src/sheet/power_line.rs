//! Power lines near one end: what could fall onto them, and how far they must be.

use crate::at;
use crate::network::{ResolvedEnd, ResolvedHop};
use crate::physics::power_line::Rule;
use crate::place::Place;
use crate::spec::PowerLineCode;
use crate::units::{Metres, Quantity as _};

/// A power line of the site that something at this end could reach.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LineNear {
    /// Its number among those of the site.
    pub number: usize,
    /// How far what stands free at the end reaches when it falls.
    pub falls: Metres,
    /// What is kept beyond that.
    pub keep: Metres,
    /// Both together.
    pub reach: Metres,
    /// The rule that the distance is taken from, or where the network asks for more.
    pub rule: Result<&'static str, Place>,
    /// Where the rule in force is named.
    pub rule_at: Place,
}

/// The power lines nearer than they may be.
///
/// What falls is the support from its base up, with the antenna where that is higher; a building stays where it is.
pub(super) fn near(hop: &ResolvedHop<'_>, own: &ResolvedEnd<'_>) -> Vec<LineNear> {
    let network = hop.network;
    let (end, site, support) = (own.end, own.site, own.support);
    let above = (end.height.value - support.base_height.value).tidy();
    let free = support.free_length.value;
    let falls = if above > free { above } else { free };
    let rule = match network.codes.power_lines {
        None | Some(PowerLineCode::Cfr1926) => Rule::Cfr1926,
        Some(PowerLineCode::Dguv203) => Rule::Dguv203,
        Some(PowerLineCode::Sa64) => Rule::Sa64,
    };
    let rule_at = at!(network.codes.power_lines);
    let near = site.power_lines.iter().enumerate().filter_map(|(number, line)| {
        let by_rule = rule.distance(line.voltage.as_ref().map(|volts| volts.value)).tidy();
        let more = network.limits.power_line.as_ref().map(|given| given.value).filter(|given| *given > by_rule);
        let keep = more.unwrap_or(by_rule);
        let reach = (falls + keep).tidy();
        let rule = if more.is_some() { Err(at!(network.limits.power_line)) } else { Ok(rule.name()) };
        (line.distance.value < reach).then_some(LineNear { number, falls, keep, reach, rule, rule_at })
    });
    near.collect()
}
