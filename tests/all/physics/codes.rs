//! What codes allow, and where channels lie.

use std::collections::BTreeSet;

use hopwright::physics::Confidence;
use hopwright::physics::codes::{CODES, named};
use hopwright::physics::raster::{Channel, E_BAND, Raster, SIXTY_GHZ};
use hopwright::sheet::Saying;
use hopwright::spec::LicenceCode;
use hopwright::units::{Dbi, Dbm, Decibels, Degrees, Gigahertz, Megahertz};

use super::table::rows;

#[test]
fn ceilings_match_the_table() {
    for row in rows(include_str!("../../tables/codes.csv")) {
        let code = named(row.text("code")).expect("a code");
        let gain = Dbi(row.number("gain"));
        let limits = code.limits(gain, Megahertz(row.number("bandwidth")));
        let allowed = limits.least_gain.is_none_or(|least| gain >= least);
        assert_eq!(if allowed { "yes" } else { "no" }, row.text("allowed"));
        if !allowed {
            continue;
        }
        let reached = matches!(code.id, "ECC/REC/(09)01" | "EN 302 217");
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
        assert_eq!(unseen, code.known.least() == Confidence::Memory, "{}", code.id);
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
    let [now, before] = ["47 CFR 101", "47 CFR 101 before 2024"].map(|id| named(id).expect("a code"));
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
fn the_nearest_centre_is_that_of_a_channel() {
    let nearest = |centre, width| E_BAND.nearest(Gigahertz(centre), Megahertz(width)).map(|found| found.0);
    // 70 875 + 500 n by ECC/REC/(05)07: 73 375 and 73 875 lie around 73 600; the last is 75 375, the upper half 10 GHz up.
    assert_eq!(nearest(73.6, 500.0), Some(73.375));
    assert_eq!(nearest(73.65, 500.0), Some(73.875));
    assert_eq!(nearest(77.0, 500.0), Some(75.375));
    assert_eq!(nearest(80.0, 500.0), Some(81.375));
    assert_eq!(nearest(99.0, 500.0), Some(85.375));
    // Eight channels of 250 MHz from 71 125 on: centres 72 125 + 250 k; nineteen of them fill the half.
    assert_eq!(nearest(72.2, 2000.0), Some(72.125));
    assert_eq!(nearest(73.0, 4750.0), Some(73.5));
    assert_eq!((nearest(73.0, 300.0), nearest(73.0, 5000.0), nearest(73.0, 0.0)), (None, None, None));
    assert!(E_BAND.knows(Megahertz(2000.0)) && !E_BAND.knows(Megahertz(125.0)));
    for (width, _) in E_BAND.widths {
        for centre in (700..870).map(|tenths| Gigahertz(f64::from(tenths) / 10.0)) {
            let found = E_BAND.nearest(centre, *width).expect("a channel");
            assert!(E_BAND.channel(found, *width).is_some(), "{found} for {centre}");
        }
    }
}

#[test]
fn channels_are_named_in_words() {
    let words = |raster: &Raster, centre, width| {
        let numbered = raster.numbered(Gigahertz(centre), Megahertz(width))?;
        Some(Saying::channel("R", numbered).to_string())
    };
    assert_eq!(words(&E_BAND, 73.375, 500.0).as_deref(), Some("R: 5 of 500 MHz, lower half"));
    assert_eq!(words(&E_BAND, 83.375, 500.0).as_deref(), Some("R: 5 of 500 MHz, upper half"));
    assert_eq!(words(&E_BAND, 75.75, 250.0).as_deref(), Some("R: 19 of 250 MHz, lower half"));
    assert_eq!(words(&E_BAND, 73.375, 1500.0).as_deref(), Some("R: 7 to 12 of 250 MHz, lower half"));
    assert_eq!(words(&SIXTY_GHZ, 61.5, 500.0).as_deref(), Some("R: 86 to 95 of 50 MHz"));
    assert_eq!(words(&E_BAND, 73.376, 500.0), None);
}

#[test]
fn the_gain_that_is_named_allows_the_power_and_none_less_does() {
    let code = named("EN 302 217").expect("a code");
    // Power is at most gain less 15: 29 dBm asks for 44 dBi. Above 30 dBm no gain helps.
    assert_eq!(code.gain_for(Dbm(29.0), Dbi(40.0), Megahertz(500.0), Decibels(0.0)), Some(Dbi(44.0)));
    assert_eq!(code.gain_for(Dbm(30.1), Dbi(40.0), Megahertz(500.0), Decibels(0.0)), None);
    // 82 - 2 (51 - G) - G = 2 G - 20 - G: 25 dBm asks for 45 dBi by 47 CFR 15.255.
    let code = named("47 CFR 15.255 point-to-point").expect("a code");
    assert_eq!(code.gain_for(Dbm(25.0), Dbi(40.0), Megahertz(500.0), Decibels(0.0)), Some(Dbi(45.0)));
}

#[test]
fn specs_name_every_code_and_no_other() {
    let words: BTreeSet<&str> = LicenceCode::ALL.into_iter().map(LicenceCode::word).collect();
    assert_eq!(words, CODES.iter().map(|code| code.id).collect());
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
