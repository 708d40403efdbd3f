//! A service is down for longer than its availability allows.

use crate::rules::prelude::*;
use crate::sheet::{Rare, Saying, ServiceSheet, Shown};
use crate::units::Percent;

rule! {
    /// A service is down for longer than its availability allows.
    ///
    /// Every hop counts by the causes that its own sheet counts, both directions together, in the state that its own objective
    /// asks for, in the average year. Of a route the outages of all hops are added up: that holds whatever falls together, while
    /// rain counted once where hops lie near each other is a hope, which the message tells beside it. Of two routes one is enough;
    /// counted are what both share, rain on both at once, and everything else of both as independent. Rain on two hops of
    /// different routes that come nearer to each other than `rain_common_within` is taken to fall in the same minutes, all rain
    /// where that is not stated. Switching over is taken as perfect and free of time.
    ///
    /// Fix the hop that takes the most of it, protect it, or lower the objective and say why.
    ///
    /// Source: Boole's inequality, the bound of Fréchet; ITU-R P.530-18 for the outages of the hops.
    severity: Error,
    waivable: SERVICE,
    check: Service(check),
}

/// Hops that are named.
const MOST_NAMED: usize = 3;

fn check(sheet: &ServiceSheet<'_>, found: &mut Findings) {
    let (service, lines) = (sheet.resolved.service, &sheet.lines);
    let (Some(wanted), Some(has)) = (&sheet.objectives.availability, lines.availability.get()) else { return };
    if has >= wanted.value() {
        return;
    }
    let (has_words, wants, _) = apart(has, wanted.value());
    let name = lines.availability.own_words().unwrap_or("availability, both directions");
    let name = name.strip_suffix(", both directions").unwrap_or(name);
    let message = format!(
        "{name} of service `{}` is {has_words}, below {wants}: {} of the average year, {} in all{}{}",
        service.id,
        causes(sheet),
        lines.minutes.get().unwrap_or_default(),
        not_counted(sheet),
        once(sheet, wanted.value()),
    );
    let finding = found.report(&RULE, at!(service.routes), message, "over these hops");
    finding.measured(has, Worse::Lower);
    finding.because(wanted.place, format!("{} required here", wanted.given));
    for (_, document, share) in sheet.worst.iter().take(MOST_NAMED) {
        let place = crate::place::Place::document(*document).below(&"id", &[]);
        finding.because(place, format!("is down for {}", Rare(*share)));
    }
    finding.help(help(sheet, wanted.value()));
}

/// What takes how much of the year.
fn causes(sheet: &ServiceSheet<'_>) -> String {
    let told = |words: &str, share: Option<Rare>| {
        share.filter(|share| share.0.0 > 0.0).map(|share| format!("{words} {share}"))
    };
    let list = match sheet.routes.as_slice() {
        [only] => vec![
            told("rain", only.rain.get()),
            told("clear air", only.clear_air.get()),
            told("equipment", only.equipment.get()),
            told("supply", only.supply.get()),
        ],
        _ => vec![
            told("what both routes share", sheet.lines.shared.get()),
            told("rain on both at once", sheet.lines.rain_at_once.get()),
            told("all together", sheet.lines.outage.get()),
        ],
    };
    list.into_iter().flatten().collect::<Vec<_>>().join(", ")
}

fn not_counted(sheet: &ServiceSheet<'_>) -> String {
    let left = sheet.lines.left_out.value().ok().filter(|left| *left != &Saying::Never);
    left.map(|left| format!("; not counted: {}", left.told())).unwrap_or_default()
}

/// What it would be with common rain counted once, where that is stated and makes a difference.
fn once(sheet: &ServiceSheet<'_>, wanted: Percent) -> String {
    let (Some(once), Some(has)) = (sheet.lines.availability_once.get(), sheet.lines.availability.get()) else {
        return String::new();
    };
    if once <= has {
        return String::new();
    }
    let enough = if once >= wanted { ", which would be enough" } else { ", which is not enough either" };
    format!("; with common rain counted once it is {once}{enough}, but nothing proves that")
}

fn help(sheet: &ServiceSheet<'_>, wanted: Percent) -> String {
    let allowed = (Percent(100.0) - wanted).tidy();
    match (sheet.worst.first(), sheet.routes.len()) {
        (Some((hop, _, share)), 1) if *share > allowed => {
            format!(
                "hop `{hop}` alone takes {} of the {allowed} allowed: fix that first, or add a second route",
                Rare(*share)
            )
        }
        (Some((hop, ..)), 1) => format!("{allowed} is allowed: begin with hop `{hop}`, or add a second route"),
        (Some((hop, ..)), _) => {
            format!("{allowed} is allowed: begin with what both routes share, then with hop `{hop}`")
        }
        (None, _) => format!("{allowed} is allowed"),
    }
}
