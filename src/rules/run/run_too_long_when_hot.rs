//! A run that carries data is too long once its cable is hot.

use crate::rules::prelude::*;
use crate::sheet::LONGEST_RUN;

rule! {
    /// A run that carries data is too long once its cable is hot.
    ///
    /// A hot cable loses more, so less of it fits into the 100 m: beside 10 m of cords, 90 m at 20 °C are 84 m at 40 °C and
    /// 75 m at 60 °C, or 87 m and 83 m with a screen. The outdoor length is taken at the hottest the cable gets, the indoor
    /// length at 20 °C. The limit is `limits.hot_length` of the network, 100 m unless it says otherwise.
    ///
    /// Source: ANSI/TIA-568, length against temperature (84 m at 40 °C second-hand, the rest from memory).
    severity: Warning,
    waivable: SERVICE,
    check: Run(check),
}

fn check(sheet: &EndSheet<'_>, run: &RunSheet<'_>, found: &mut Findings) {
    let spec = run.resolved.run;
    let limit = &sheet.practice.hot_length;
    let (Some(counted), Some(length)) = (run.handling.hot_length.get(), run.lines.length.get()) else { return };
    if !run.carries(Carried::Data) || counted <= limit.value() || length > LONGEST_RUN {
        return;
    }
    let (has, most, _) = apart(counted, limit.value());
    let hot = line(&run.lines.cable_temperature);
    let message = format!("end {}: at {hot} the run to port `{}` counts as {has}, over {most}", sheet.name, spec.port);
    let finding = found.report(&RULE, at!(spec.outdoor), message, "too long for data when hot");
    finding.measured(counted, Worse::Higher);
    threshold(finding, &sheet.hottest_air, format!("makes the cable {hot} hot"));
    threshold(finding, limit, format!("{most} at most"));
    let outdoors = run.handling.longest_hot.get().map_or_else(|| "—".into(), |most| most.rounded_down().to_string());
    finding.help(format!("{outdoors} outdoors at most, or use fibre for the data"));
}
