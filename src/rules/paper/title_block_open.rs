//! The title block of the packs has an empty field.

use crate::rules::prelude::*;

rule! {
    /// The title block of the packs has an empty field.
    ///
    /// Whoever holds a sheet has to see which revision it is, who drew it up and who approved it. What the network does not
    /// say is printed as `NOT SET`, and without an approver every page is a draft.
    ///
    /// Source: ISO 7200:2004, whose title block needs creator and approver; that every issue carries a revision is common
    /// practice. From memory.
    severity: Advice,
    waivable: PAPER,
    check: Hop(check),
}

fn check(hop: &HopSheet<'_>, found: &mut Findings) {
    let network = hop.resolved.network;
    let fields = [("revision", &network.revision), ("creator", &network.creator), ("approver", &network.approver)];
    let open: Vec<&str> = fields.iter().filter(|(_, value)| value.is_none()).map(|(key, _)| *key).collect();
    if open.is_empty() {
        return;
    }
    let named = open.iter().map(|key| format!("`{key}`")).collect::<Vec<_>>().join(", ");
    let message = format!("network `{}`: the title block of its packs has no {named}", network.id);
    let finding = found.report(&RULE, at!(network.title), message, "printed as `NOT SET`");
    for place in [at!(network.revision), at!(network.creator), at!(network.approver)] {
        finding.decided_by(place);
    }
    finding.help(format!("write {named} into the network file when the design is issued"));
}
