//! Severities as a network sets them.

use crate::at;
use crate::faults::UNKNOWN_RULE;
use crate::finding::{Finding, Findings, Spot};
use crate::nearest::nearest;
use crate::network::Document;
use crate::rule::{Rule, Severity};
use crate::spec::{Network, Setting};

/// The severities of one network.
pub struct Settings<'n>(Option<&'n Network>);

impl<'n> Settings<'n> {
    /// Those of a network; a rule's own where there is none.
    #[must_use]
    pub fn of(network: Option<&'n Network>) -> Self {
        Self(network)
    }

    /// The severity of a rule, `None` if it is off.
    #[must_use]
    pub fn severity(&self, rule: &Rule) -> Option<Severity> {
        match self.0.and_then(|network| network.rules.get(rule.name)) {
            None => Some(rule.severity),
            Some(Setting::Off) => None,
            Some(Setting::Advice) => Some(Severity::Advice),
            Some(Setting::Warning) => Some(Severity::Warning),
            Some(Setting::Error) => Some(Severity::Error),
        }
    }

    /// Gives every finding its severity and drops those of rules that are off.
    pub fn apply(&self, findings: &mut Vec<Finding>) {
        findings.retain_mut(|finding| {
            let severity = self.severity(finding.rule);
            finding.severity = severity.unwrap_or(finding.severity);
            severity.is_some()
        });
    }
}

/// Reports names under `rules` that no rule has.
pub fn unknown_names(network: &Document<Network>, found: &mut Findings) {
    for name in network.rules.keys().filter(|name| !super::every().any(|rule| rule.name == name.as_str())) {
        let spot = Spot::Entry(at!(network.rules), name.clone());
        let finding = found.report(&UNKNOWN_RULE, spot, format!("there is no rule `{name}`"), "not a rule");
        finding.help(match nearest(name, super::every().map(|rule| rule.name)) {
            Some(guess) => format!("did you mean `{guess}`?"),
            None => "`explain` lists every rule".into(),
        });
    }
}
