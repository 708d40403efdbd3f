//! What the picture says: the verdict, what it shows, and the words beside the worst point.

use crate::sheet::{Fine, HopSheet, Radii, Worst};
use crate::units::Metres;
use crate::voice::{Open, Voice};

/// The verdict in a sentence.
#[must_use]
pub fn verdict(sheet: &HopSheet<'_>, voice: Voice) -> String {
    let (profile, lines) = (&sheet.profile, &sheet.profile.lines);
    let [asked, asked_low] = [profile.asked(), profile.asked_low()]
        .map(|wanted| voice.number(wanted.map_or(Radii(0.0), |(radii, _)| radii)));
    let say = |key, worst: &Worst, open: [Open<'_>; 2]| {
        let (what, distance) = (voice.spoken(&worst.what.said()), voice.number(worst.distance));
        let place: [Open<'_>; 2] = [("what", &what), ("distance", &distance)];
        voice.with(key, &[place, open].concat())
    };
    match (&profile.obstruction, &profile.worst, lines.fraction.get(), lines.in_hand.get()) {
        (Some(blocked), ..) => {
            let by = lines.lowest.get().map_or(Fine(Metres(0.0)), |lowest| Fine(Metres(-lowest.0.0)));
            say("sight-obstructed", blocked, [("by", &voice.number(by)), ("asked", &asked)])
        }
        (None, Some(worst), Some(has), Some(left)) if left.0 < 0.0 => {
            say("sight-too-little", worst, [("has", &voice.number(has)), ("asked", &asked)])
        }
        (None, Some(_), ..) if profile.passes_at_median_only() => {
            let (Some(worst), Some(has)) = (&profile.low_worst, lines.low_fraction.get()) else {
                return voice.say("sight-no-point");
            };
            say("sight-at-median-only", worst, [("has", &voice.number(has)), ("asked", &asked_low)])
        }
        (None, Some(worst), Some(has), Some(_)) => {
            say("sight-clear", worst, [("has", &voice.number(has)), ("asked", &asked)])
        }
        _ => voice.say("sight-no-point"),
    }
}

/// What the picture shows, with the verdict.
pub(super) fn alt(sheet: &HopSheet<'_>, voice: Voice) -> String {
    let (a, b) = (&sheet.resolved.ends.a.site.title, &sheet.resolved.ends.b.site.title);
    let lines = &sheet.profile.lines;
    let distance = voice.number(sheet.path.distance.get().unwrap_or_default());
    let verdict = verdict(sheet, voice);
    let mut words = voice.with("profile-alt", &[("a", a), ("b", b), ("distance", &distance), ("verdict", &verdict)]);
    if let (Some(clearance), Some(needed)) = (lines.clearance.get(), lines.needed.get()) {
        let (clearance, needed) = (voice.number(clearance), voice.number(needed));
        words.push(' ');
        words.push_str(&voice.with("profile-alt-clearance", &[("clearance", &clearance), ("needed", &needed)]));
    }
    words
}

/// The first of the words, where there is no room for all.
pub(super) fn cut(words: &str, most: usize) -> String {
    if words.chars().count() <= most {
        return words.to_owned();
    }
    words.chars().take(most - 1).chain(['…']).collect()
}

#[cfg(test)]
mod tests {
    use super::cut;

    #[test]
    fn letters_are_counted_and_not_bytes() {
        assert_eq!(cut("Übermorgen", 5), "Über…");
    }
}
