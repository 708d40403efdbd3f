//! The `service` document: what is carried from site to site over several hops.

use schemars::JsonSchema;
use serde::Deserialize;

use super::{Hop, Id, Kind, Ref, Site, Text};
use crate::units::{Given, MegabitsPerSecond, Metres, Milliseconds, Percent};

/// What is carried from one site to another over hops in a row, with a second row that stands in or without.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Service {
    /// Always `service`.
    #[schemars(extend("const" = "service"))]
    pub kind: Kind,
    /// Short name; findings and pages call it by this.
    pub id: Id,
    /// What it is to people.
    pub title: Option<Text>,
    /// The site where it begins.
    pub from: Ref<Site>,
    /// The site where it ends.
    pub to: Ref<Site>,
    /// One or two lists of hops, each in the order from `from` to `to`: the working route, and the one that stands in for it.
    pub routes: Vec<Vec<Ref<Hop>>>,
    /// What it must reach.
    #[serde(default)]
    pub objectives: ServiceObjectives,
    /// Rain on two hops counts as one rain up to this distance. Across two routes it is taken between the nearest points of the
    /// paths: nearer hops are taken to be out in the same minutes, farther ones independently of each other. Within a route it
    /// is taken between the middles of the paths, and only for the lesser of two figures: the objective is held against the
    /// outages of all hops added up, which no correlation can exceed. No default, for no such distance is known for all
    /// climates: without it all rain on one route falls on the other too, which is the careful side.
    #[schemars(extend("x-least" = 0))]
    pub rain_common_within: Option<Given<Metres>>,
}

/// What a service must reach, from end to end. What is left out is not judged.
#[derive(Debug, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct ServiceObjectives {
    /// Share of the average year in which it is there, in both directions. Every hop counts in the state that its own objective
    /// asks for.
    pub availability: Option<Given<Percent>>,
    /// Payload rate, each way, over whichever route is in use.
    pub capacity: Option<Given<MegabitsPerSecond>>,
    /// Longest delay one way, over whichever route is in use: propagation, and `latency` of the radios. Queues and whatever
    /// stands between the hops are not in it.
    #[schemars(extend("x-least" = 0))]
    pub delay: Option<Given<Milliseconds>>,
}
