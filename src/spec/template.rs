//! What ends, runs and groundings have in common: the `template` document, and the defaults of a network, a site or a support.

use schemars::JsonSchema;
use serde::Deserialize;

use super::partly::Partly;
use super::{End, FibreRun, Grounding, Id, Kind, Run, Text};

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
    pub end: Option<Partly<End>>,
    /// Keys for a run that is `like` this.
    pub run: Option<Partly<Run>>,
    /// Keys for a run of fibre that is `like` this.
    pub fibre_run: Option<Partly<FibreRun>>,
    /// Keys for a grounding that is `like` this.
    pub grounding: Option<Partly<Grounding>>,
}

/// Keys that count where an end, a run or a grounding does not write them. Mappings are filled key by key; a list or a single
/// value counts as it is written.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline)]
pub struct Defaults {
    /// For every end.
    pub end: Option<Partly<End>>,
    /// For every run.
    pub run: Option<Partly<Run>>,
    /// For every run of fibre.
    pub fibre_run: Option<Partly<FibreRun>>,
    /// For the grounding of every end.
    pub grounding: Option<Partly<Grounding>>,
}
