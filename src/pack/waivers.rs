//! The departures that somebody has accepted, with name, record and last day.

use super::words::Table;
use crate::finding::Finding;
use crate::voice::{Open, Voice, shown};

/// One row a finding that is waived.
pub(super) fn table(waived: &[&Finding], voice: Voice) -> Table {
    let mut table = Table::new(voice, ["waived-what", "waived-why", "waived-by", "waived-until"]);
    for finding in waived {
        let Some(by) = &finding.waived else { continue };
        let why = match &by.compensation {
            None => by.reason.clone(),
            Some(instead) => voice.with("waived-instead", &[("reason", &by.reason), ("instead", instead)]),
        };
        let open: [Open<'_>; 4] = [
            ("name", &by.approver),
            ("departure", &voice.term(by.departure)),
            ("date", &by.approved_on),
            ("reference", &by.reference),
        ];
        table.row([
            shown(&format!("{}: {}", finding.rule.name, finding.message)),
            shown(&why),
            voice.with("waived-by-detail", &open),
            by.expires.clone(),
        ]);
    }
    table
}
