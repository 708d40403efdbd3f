//! The bracket cannot be tilted as far as the far end lies.

use crate::place::Placed as _;
use crate::rules::prelude::*;
use crate::sheet::TiltMend;

rule! {
    /// The bracket cannot be tilted as far as the far end lies.
    ///
    /// The tilt follows from the heights of both antennas and their distance. What a bracket gives depends on which way up
    /// it is mounted, on its extension plate, and without the plate on the stop where the radio meets the pole. The help
    /// names the ways to mount the same bracket that reach, and the height that would.
    ///
    /// Source of the tilt: sphere of 4/3 × 6371 km (ITU-R P.530-18 §2.2.2). Limits: the bracket's data sheet.
    severity: Error,
    waivable: SERVICE,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let lines = &sheet.lines;
    let (Some(tilt), Some(least), Some(most)) = (lines.tilt.get(), lines.tilt_least.get(), lines.tilt_most.get())
    else {
        return;
    };
    if least <= tilt && tilt <= most {
        return;
    }
    let (end, bracket, support) = (sheet.resolved.end, sheet.resolved.bracket, sheet.resolved.support);
    let limit = if tilt < least { least } else { most };
    let (needs, gives, beyond) = apart(tilt, limit);
    let orientation = end.bracket.orientation.word();
    let message = format!(
        "end {}: the far end lies at {needs}, {beyond} beyond the {gives} this bracket gives {orientation}",
        sheet.name
    );
    let label = format!("reaches {least} to {most}");
    let finding = found.report(&RULE, at!(end.bracket.model), message, label);
    finding.measured(tilt, if tilt < least { Worse::Lower } else { Worse::Higher });
    finding.because(at!(end.height), "the tilt follows from this height and that of the far end");
    what_limits(sheet, limit, finding);
    if least > most {
        finding.help(format!(
            "the bracket reaches nothing between {least} and {most}: check `tilt` and `stop` of `{}`; is a minus missing?",
            bracket.id
        ));
        return;
    }
    let mut ways: Vec<String> = sheet.mends.iter().map(way).collect();
    if let Some(rise) = sheet.height_mend {
        let height = end.height.value + rise;
        let height = if tilt < least { height.rounded_down() } else { height.rounded_up() };
        let (base, top) = (support.base_height.value, (support.base_height.value + support.free_length.value).tidy());
        if base <= height && height <= top {
            ways.push(format!("move the antenna to {height} above ground"));
        }
    }
    if let Some(first) = sheet.mends.first() {
        let mut edits = Vec::new();
        if first.orientation != end.bracket.orientation {
            edits.push((at!(end.bracket.orientation).into(), first.orientation.word().to_owned()));
        }
        if first.plate != end.bracket.plate {
            edits.push((at!(end.bracket.plate).into(), first.plate.to_string()));
        }
        finding.fix_unsafely(edits, "the crew mounts the bracket otherwise, and a plate has to be there");
    }
    finding.help(if ways.is_empty() {
        "take a bracket with more tilt, or other heights".into()
    } else {
        ways.join("; or ")
    });
}

fn way(mend: &TiltMend) -> String {
    let plate = if mend.plate { "with the extension plate" } else { "without the plate" };
    format!("mount it {} {plate} ({} to {})", mend.orientation.word(), mend.reach.least, mend.reach.most)
}
/// Labels what sets the limit: the plate, the stop, or the range of the bracket.
fn what_limits(sheet: &EndSheet<'_>, limit: Degrees, finding: &mut Finding) {
    let (end, bracket) = (sheet.resolved.end, sheet.resolved.bracket);
    match (&bracket.plate, &bracket.stop) {
        (Some(plate), _) if end.bracket.plate => {
            let _ = &plate.tilt;
            finding.because(bracket.place().below(&".plate.tilt", &[]), "its tilt range with the plate")
        }
        (_, Some(stop)) if stop.value == limit => {
            finding.because(at!(bracket.stop), "without the plate the radio meets the pole here")
        }
        (_, None) if bracket.swing.is_some() && limit != bracket.tilt.upright.min.value => {
            finding.because(at!(bracket.swing), "without the plate the radio meets the pole here")
        }
        _ => finding.because(at!(bracket.tilt), "the tilt range of the bracket"),
    };
}
