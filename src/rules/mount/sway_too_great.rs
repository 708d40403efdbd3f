//! The operating wind turns the antenna so far that the hop loses more than it may.

use crate::rules::prelude::*;
use crate::sheet::Cause;

rule! {
    /// The operating wind turns the antenna so far that the hop loses more than it may.
    ///
    /// A pole may be strong enough and still be far too soft: a beam of half a degree is lost on a pole that hardly shows
    /// its movement. The pole is taken as fixed at its foot; brackets and roof fixings give way too, so the real movement is
    /// greater. All that hops of the network put on the pole bends it, each antenna at its own height; forces are added by
    /// their size, which no direction of the wind exceeds. A pole to take instead is tried with all of it. Without `climate.wind`, the antenna's `wind_area` or a pole that stands free, the rule is silent.
    ///
    /// Take a thicker or shorter pole, mount lower, stay the pole, or take an antenna with a wider beam.
    ///
    /// Source: Euler–Bernoulli bending; loss by the main beam of ITU-R F.699-8. That 1 dB an end is too much is common
    /// practice (TIA-222 allows 10 dB in all, from memory, which a hop limited by rain has not to spare).
    severity: Warning,
    waivable: SERVICE,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let (lines, wanted) = (&sheet.wind, &sheet.wind_loss);
    let Some(turn) = lines.turn.get() else { return };
    let (dish, support) = (sheet.resolved.antenna, sheet.resolved.support);
    let costs = match lines.aim_loss.get() {
        Some(loss) if loss <= wanted.value() => return,
        Some(loss) => {
            let (has, allowed, by) = apart(loss, wanted.value());
            format!("costs {has}, {by} more than {allowed}")
        }
        None if matches!(lines.aim_loss.value(), Err(missing) if missing.cause == Cause::Judged) => {
            "is off the main beam".into()
        }
        None => return,
    };
    let others = with_others(sheet);
    let message = format!("end {}: the operating wind turns the antenna by {turn}, which {costs}{others}", sheet.name);
    let label = format!("turns by {turn} in a wind of {}", line(&lines.pressure));
    let finding = found.report(&RULE, at!(support.outside_diameter), message, label);
    finding.measured(turn, Worse::Higher);
    finding.because(at!(dish.beamwidth), "the beam is this wide");
    finding.because(at!(dish.wind_area), format!("{} on antenna and radio", line(&lines.force)));
    finding.because(at!(support.free_length), "free length of the pole");
    push_others(sheet, finding);
    let others = "a shorter pole, stays, or an antenna with a wider beam";
    finding.help(match &sheet.stiffer {
        Some(pipe) => {
            let (name, outside, wall) = (pipe.name, pipe.outside, pipe.wall);
            format!("take a pole of {name} ({outside} outside, wall {wall}) or thicker; or {others}")
        }
        None => format!("no pipe that this clamp takes holds still enough: take {others}"),
    });
}
