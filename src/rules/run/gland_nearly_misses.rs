//! A cable only just fits the gland insert that is to seal it.

use crate::rules::prelude::*;

rule! {
    /// A cable only just fits the gland insert that is to seal it.
    ///
    /// Cables and inserts have tolerances: at the edge of its window an insert leaks or does not close. The room it should
    /// have is `limits.gland_reserve` of the network, 0.2 mm unless it says otherwise.
    ///
    /// Source: common practice, no source; the insert sizes on the radio's data sheet.
    severity: Warning,
    waivable: EQUIPMENT,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let (Some(room), limit) = (run.handling.gland_room.get(), &sheet.practice.gland_reserve) else { return };
    if room >= limit.value() {
        return;
    }
    let (spec, port, cable) = (run.resolved.run, run.resolved.port, run.resolved.cable);
    let (has, wants, _) = apart(room, limit.value());
    let insert = run.lines.gland.value().map_or_else(|_| "—".to_owned(), ToString::to_string);
    let message = format!(
        "end {}: {} across is {has} inside the window of {insert} at port `{}`, {wants} wanted",
        sheet.name,
        cable.across(),
        port.id
    );
    let finding = found.report(&RULE, at!(spec.cable), message, format!("{} across", cable.across()));
    finding.measured(room, Worse::Lower);
    finding.because(at!(cable.outside_diameter), "its diameter");
    finding.because(at!(port.glands), "the inserts of the port");
    threshold(finding, limit, format!("{wants} to either edge"));
    let windows = port.glands.iter().filter_map(|gland| {
        let (low, high) = (gland.cable.min.value + limit.value(), gland.cable.max.value - limit.value());
        (low <= high).then(|| format!("{} to {} ({})", low.rounded_up(), high.rounded_down(), gland.title))
    });
    finding.help(format!("a cable of {}", windows.collect::<Vec<_>>().join(" or ")));
}
