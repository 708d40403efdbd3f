//! The departures that somebody has accepted, with name, record and last day.

use super::words::{Table, shown};
use crate::finding::Finding;

/// One row a finding that is waived.
pub(super) fn table(waived: &[&Finding]) -> Table {
    let mut table = Table::new(["Accepted departure", "Why", "By whom", "Until"]);
    for finding in waived {
        let Some(by) = &finding.waived else { continue };
        let instead = by.compensation.as_ref().map(|instead| format!(" Instead: {instead}")).unwrap_or_default();
        table.row([
            shown(&format!("{}: {}", finding.rule.name, finding.message)),
            shown(&format!("{}{instead}", by.reason)),
            format!("{}, {} of {}, {}", by.approver, by.departure, by.approved_on, by.reference),
            by.expires.clone(),
        ]);
    }
    table
}
