//! What codes allow, and where channels lie.

use std::collections::BTreeSet;

use hopwright::physics::codes::{CODES, Confidence, named};
use hopwright::physics::raster::{Channel, E_BAND, SIXTY_GHZ};
use hopwright::units::{Dbi, Dbm, Decibels, Degrees, Gigahertz, Megahertz};

use crate::table::rows;

#[test]
fn ceilings_match_the_table() {
    for row in rows(include_str!("../tables/codes.csv")) {
        let code = named(row.text("code")).expect("a code");
        let gain = Dbi(row.number("gain"));
        let limits = code.limits(gain, Megahertz(row.number("bandwidth")));
        let allowed = limits.least_gain.is_none_or(|least| gain >= least);
        assert_eq!(if allowed { "yes" } else { "no" }, row.text("allowed"));
        if !allowed {
            continue;
        }
        let reached = matches!(code.id, "cept-60-ghz" | "etsi-e-band");
        let eirp = if reached { limits.power + gain } else { limits.average_eirp };
        row.check("average_eirp", eirp.0, 0.001);
        row.check("power", limits.power.0, 0.001);
        assert_eq!(limits.peak_eirp.is_some(), row.maybe("peak_eirp").is_some());
        if let Some(peak) = limits.peak_eirp {
            row.check("peak_eirp", peak.0, 0.001);
        }
    }
}

#[test]
fn no_ceiling_is_passed_by_another() {
    for code in &CODES {
        for gain in (20..=60).map(|gain| Dbi(f64::from(gain))) {
            for bandwidth in [10.0, 50.0, 100.0, 500.0, 2160.0].map(Megahertz) {
                let limits = code.limits(gain, bandwidth);
                assert!((limits.power + gain - limits.average_eirp) <= Decibels(1e-9), "{} at {gain}", code.id);
                let wider = code.limits(gain, Megahertz(2.0 * bandwidth.0));
                assert!(wider.average_eirp >= limits.average_eirp && wider.power >= limits.power);
                let larger = code.limits(gain + Decibels(1.0), bandwidth);
                assert!(larger.average_eirp >= limits.average_eirp);
            }
        }
    }
}

#[test]
fn codes_are_told_apart_and_say_where_they_come_from() {
    assert_eq!(CODES.iter().map(|code| code.id).collect::<BTreeSet<_>>().len(), CODES.len());
    for code in &CODES {
        assert_eq!(named(code.id), Some(code));
        assert!(!code.title.is_empty() && !code.citation.is_empty() && !code.bands.is_empty());
        let unseen = code.citation.contains("from memory");
        assert_eq!(unseen, code.confidence == Confidence::Memory, "{}", code.id);
    }
    assert_eq!(named("nowhere"), None);
    assert!(Confidence::Memory < Confidence::SecondHand && Confidence::SecondHand < Confidence::Published);
}

#[test]
fn codes_know_their_bands() {
    let covering = |f| CODES.iter().filter(move |code| code.covers(Gigahertz(f))).count();
    assert_eq!(
        [56.9, 57.0, 64.0, 64.1, 70.9, 71.1, 76.0, 78.0, 81.0, 86.0].map(covering),
        [0, 5, 5, 4, 4, 3, 3, 0, 3, 3]
    );
}

#[test]
fn editions_differ_in_the_antenna_alone() {
    let [now, before] = ["fcc-e-band", "fcc-e-band-2005"].map(|id| named(id).expect("a code"));
    assert_eq!((now.least_gain, now.greatest_beamwidth), (Some(Dbi(38.0)), Some(Degrees(2.2))));
    assert_eq!((before.least_gain, before.greatest_beamwidth), (Some(Dbi(43.0)), Some(Degrees(1.2))));
    let [now, before] = [now, before].map(|code| code.limits(Dbi(45.0), Megahertz(250.0)));
    assert_eq!((now.average_eirp, now.power), (before.average_eirp, before.power));
    assert_eq!(now.average_eirp, Dbm(75.0));
}

#[test]
fn channels_of_each_width_start_and_end_where_published() {
    let published = [
        (250.0, 71_250.0, 75_750.0, 19),
        (500.0, 71_375.0, 75_375.0, 9),
        (750.0, 71_500.0, 75_250.0, 6),
        (1000.0, 71_625.0, 74_625.0, 4),
        (1250.0, 71_750.0, 74_250.0, 3),
    ];
    for (width, first, last, count) in published {
        let width = Megahertz(width);
        assert_eq!(E_BAND.count(width), count);
        assert_eq!(E_BAND.centre(1, width), Some(Gigahertz(first / 1000.0)));
        assert_eq!(E_BAND.centre(count, width), Some(Gigahertz(last / 1000.0)));
        assert_eq!((E_BAND.centre(0, width), E_BAND.centre(count + 1, width)), (None, None));
    }
    assert_eq!(SIXTY_GHZ.centre(1, Megahertz(50.0)), Some(Gigahertz(57.025)));
    assert_eq!(SIXTY_GHZ.centre(140, Megahertz(50.0)), Some(Gigahertz(63.975)));
}

#[test]
fn a_centre_leads_back_to_its_channel() {
    for raster in [E_BAND, SIXTY_GHZ] {
        for (width, count) in raster.widths {
            for number in 1..=*count {
                let centre = raster.centre(number, *width).expect("a channel");
                assert_eq!(raster.channel(centre, *width), Some(Channel { number, upper: false }));
                let partner = raster.duplex.map(|duplex| raster.channel(centre + duplex, *width));
                let upper = raster.duplex.map(|_| Some(Channel { number, upper: true }));
                assert_eq!(partner, upper);
            }
        }
    }
}

#[test]
fn a_centre_off_the_raster_is_no_channel() {
    for off in [71.0, 71.251, 71.375, 76.0, 78.0, 91.25].map(Gigahertz) {
        assert_eq!(E_BAND.channel(off, Megahertz(250.0)), None, "{off}");
    }
    assert_eq!(E_BAND.channel(Gigahertz(71.25), Megahertz(300.0)), None);
    assert_eq!(E_BAND.channel(Gigahertz(81.25), Megahertz(250.0)), Some(Channel { number: 1, upper: true }));
    assert_eq!(SIXTY_GHZ.channel(Gigahertz(57.0), Megahertz(50.0)), None);
}
