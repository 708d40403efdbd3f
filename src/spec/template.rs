//! What ends, runs and groundings have in common: the `template` document, and the defaults of a network, a site or a support.

use schemars::JsonSchema;
use serde::Deserialize;

use super::partly::Partly;
use super::{Id, Kind, Text};

/// Keys of ends, runs and groundings, to be taken in by `like`. What is written there counts before the template, and the
/// template before all defaults.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Template {
    /// Always `template`.
    #[schemars(extend("const" = "template"))]
    pub kind: Kind,
    /// Short name; ends, runs and groundings refer to it by `like`.
    pub id: Id,
    /// Whether it counts in place of a document of the same id in a shared library. Default `false`: the same id twice is an
    /// error.
    #[serde(default)]
    pub replaces: bool,
    /// What it is for.
    pub title: Option<Text>,
    /// Keys for an end that is `like` this.
    #[schemars(extend("x-part" = "end"))]
    pub end: Option<Partly>,
    /// Keys for a run that is `like` this.
    #[schemars(extend("x-part" = "run"))]
    pub run: Option<Partly>,
    /// Keys for a run of fibre that is `like` this.
    #[schemars(extend("x-part" = "fibre_run"))]
    pub fibre_run: Option<Partly>,
    /// Keys for a grounding that is `like` this.
    #[schemars(extend("x-part" = "grounding"))]
    pub grounding: Option<Partly>,
}

/// Keys that count where an end, a run or a grounding does not write them. Mappings are filled key by key; a list or a single
/// value counts as it is written.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Defaults {
    /// For every end.
    #[schemars(extend("x-part" = "end"))]
    pub end: Option<Partly>,
    /// For every run.
    #[schemars(extend("x-part" = "run"))]
    pub run: Option<Partly>,
    /// For every run of fibre.
    #[schemars(extend("x-part" = "fibre_run"))]
    pub fibre_run: Option<Partly>,
    /// For the grounding of every end.
    #[schemars(extend("x-part" = "grounding"))]
    pub grounding: Option<Partly>,
}
