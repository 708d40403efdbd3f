//! The antenna was not found where it was designed.

use crate::rules::prelude::*;

rule! {
    /// Bearing, tilt or height as found is not that of the design.
    ///
    /// Height decides clearance, wind and the tilt of both ends, so another one is another design. A bearing or tilt that is
    /// off is either an antenna on a side lobe or a number written the wrong way: the bearing from the far end, the magnetic
    /// one, the sign of the tilt, a height above the sea. Where a number fits such a slip it is named. The thresholds are
    /// `limits.found_bearing` (3°), `found_tilt` (0.5°) and `found_height` (0.5 m).
    ///
    /// Source: geometry of the hop; the thresholds are common practice, no source.
    severity: Warning,
    waivable: SERVICE,
    check: Record(check),
}

fn check(hop: &HopSheet<'_>, sheet: &RecordSheet<'_>, found: &mut Findings) {
    let [bearing, tilt, height] = sheet.as_mounted();
    if bearing == Some(false) && tilt == Some(false) && fits_far_end(hop, sheet) {
        return of_far_end(hop, sheet, found);
    }
    if bearing == Some(false) {
        bearing_off(&hop.ends[sheet.end], sheet, found);
    }
    if tilt == Some(false) {
        tilt_off(&hop.ends[sheet.end], sheet, found);
    }
    if height == Some(false) {
        height_off(&hop.ends[sheet.end], sheet, found);
    }
}

/// Whether bearing and tilt are those of the other end.
fn fits_far_end(hop: &HopSheet<'_>, sheet: &RecordSheet<'_>) -> bool {
    let (record, far) = (sheet.document, &hop.ends[sheet.end.far()].lines);
    let (Some(bearing), Some(tilt)) = (&record.bearing, &record.tilt) else { return false };
    let like = |has: f64, wants: Option<&Degrees>, most: Degrees| {
        wants.is_some_and(|wants| turn(has - wants.0).abs() <= most.0)
    };
    like(bearing.value.0, far.true_bearing.get().as_ref(), sheet.limits.bearing.value())
        && like(tilt.value.0, far.tilt.get().as_ref(), sheet.limits.tilt.value())
}

/// One slip, told once: the record says the wrong end.
fn of_far_end(hop: &HopSheet<'_>, sheet: &RecordSheet<'_>, found: &mut Findings) {
    let (record, end, far) = (sheet.document, sheet.end, sheet.end.far());
    let wanted = line(&hop.ends[end].lines.true_bearing);
    let message = format!("end {end}: bearing and tilt as found are those of end {far}, not {wanted} as designed");
    let finding = found.report(&RULE, at!(record.end), message, format!("was it end {far}?"));
    if let Some(off) = sheet.lines.bearing_off.get() {
        finding.measured(Degrees(off.0.abs()), Worse::Higher);
    }
    finding.because(at!(record.bearing), "as found");
    finding.because(at!(record.tilt), "as found");
    finding.help(format!("write `end: {far}` if the crew stood there; else the antenna looks the wrong way"));
}

fn bearing_off(end: &EndSheet<'_>, sheet: &RecordSheet<'_>, found: &mut Findings) {
    let (record, limit, lines) = (sheet.document, &sheet.limits.bearing, &end.lines);
    let (Some(was), Some(off)) = (&record.bearing, sheet.lines.bearing_off.get()) else { return };
    let wanted = line(&lines.true_bearing);
    let message =
        format!("end {}: bearing found {was}, {} from the {wanted} of the design", sheet.end, Degrees(off.0.abs()));
    let finding = found.report(&RULE, at!(record.bearing), message, "as found");
    finding.measured(Degrees(off.0.abs()), Worse::Higher);
    if !limit.assumed {
        finding.because(limit.place, "how far off it may be");
    }
    // Close to what the slip would give, as far as a bearing is read at all.
    let like = |other: f64| (turn(was.value.0 - other)).abs() <= limit.value().0;
    finding.help(match (lines.true_bearing.get(), lines.magnetic_bearing.get()) {
        (Some(right), _) if like(right.0 + 180.0) => {
            format!("this is the back bearing, from the far end to here; the antenna looks to {wanted}")
        }
        (_, Some(magnetic)) if like(magnetic.0) => {
            format!("this fits the magnetic bearing, {magnetic}; write the true one, or sweep again")
        }
        _ => "read it again; if it is right, the antenna looks past the far end: sweep it past its side lobes".into(),
    });
}

fn tilt_off(end: &EndSheet<'_>, sheet: &RecordSheet<'_>, found: &mut Findings) {
    let (record, limit) = (sheet.document, &sheet.limits.tilt);
    let (Some(was), Some(off)) = (&record.tilt, sheet.lines.tilt_off.get()) else { return };
    let wanted = line(&end.lines.tilt);
    let message =
        format!("end {}: tilt found {was}, {} from the {wanted} of the design", sheet.end, Degrees(off.0.abs()));
    let finding = found.report(&RULE, at!(record.tilt), message, "as found");
    finding.measured(Degrees(off.0.abs()), Worse::Higher);
    if !limit.assumed {
        finding.because(limit.place, "how far off it may be");
    }
    let turned = end.lines.tilt.get().is_some_and(|tilt| (was.value.0 + tilt.0).abs() <= limit.value().0);
    finding.help(if turned {
        format!("this fits with the other sign: up is positive, so it is {wanted}")
    } else {
        "read it again; if it is right, the antenna looks past the far end: sweep it past its side lobes".into()
    });
}

fn height_off(end: &EndSheet<'_>, sheet: &RecordSheet<'_>, found: &mut Findings) {
    let (record, limit, own) = (sheet.document, &sheet.limits.height, end.resolved);
    let (Some(was), Some(off)) = (&record.height, sheet.lines.height_off.get()) else { return };
    let (spec, site) = (own.end, own.site);
    let by = Metres(off.0.abs());
    let word = if off.0 < 0.0 { "below" } else { "above" };
    let message = format!("end {}: antenna found at {was}, {by} {word} the {} of the design", sheet.end, spec.height);
    let finding = found.report(&RULE, at!(record.height), message, "as found");
    finding.measured(by, Worse::Higher);
    finding.because(at!(spec.height), "as designed");
    if !limit.assumed {
        finding.because(limit.place, "how far off it may be");
    }
    // Heights of the ground are known to some metres.
    let above_sea = (off - site.ground_height.value).0.abs() <= 10.0 && site.ground_height.value.0.abs() > 10.0;
    finding.help(if above_sea {
        "this fits the height above the sea: write the one above the ground of the site".to_owned()
    } else {
        "change the design and check clearance, tilt and wind again, or move the antenna".to_owned()
    });
}

/// The short way round.
fn turn(angle: f64) -> f64 {
    let turn = angle.rem_euclid(360.0);
    if turn > 180.0 { turn - 360.0 } else { turn }
}
