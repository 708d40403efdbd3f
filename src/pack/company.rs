//! What else is live on the way up, and what ends of a site share: as crews are told.

use super::phrases::reach;
use super::words::Table;
use crate::network::ResolvedEnd;
use crate::sheet::EndSheet;
use crate::voice::{Voice, shown};

/// The live antennas that are passed on the climb to an end, the lowest first.
pub(super) fn climb(end: &EndSheet<'_>, voice: Voice) -> Table {
    let mut table =
        Table::new(voice, ["climb-antenna", "climb-height", "climb-points", "climb-workers", "climb-public"]);
    let mut passed: Vec<_> = end.others.iter().filter(|beside| beside.is_passed).collect();
    passed.sort_by(|one, other| one.fellow.end.end.height.value.0.total_cmp(&other.fellow.end.end.height.value.0));
    for beside in passed {
        let (hop, other) = (&beside.fellow.hop.hop.id, beside.fellow.end);
        table.row([
            voice.with("hop-end", &[("hop", hop), ("end", &other.name)]),
            voice.given_in_both(&other.end.height),
            voice.line(&beside.lines.bearing),
            reach(&beside.lines.workers_distance, voice),
            reach(&beside.lines.public_distance, voice),
        ]);
    }
    table
}

/// Whom to call before a climb.
pub(super) fn whom_to_call(own: &ResolvedEnd<'_>, voice: Voice) -> String {
    let one = |contact: &crate::spec::Contact| {
        let role = contact.role.as_ref().map(|role| format!(" ({role})")).unwrap_or_default();
        format!("{}{role}, {}", contact.name, contact.phone)
    };
    let names: Vec<String> = own.site.contacts.iter().map(one).collect();
    if names.is_empty() {
        return voice.say("climb-call-nobody");
    }
    voice.with("climb-call", &[("names", &shown(&names.join("; ")))])
}
