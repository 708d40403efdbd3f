//! Likely slips of the pen, each tried before it is named: with the correction the rest agrees.
//!
//! A rule that finds an input impossible asks here what it may have been. What is named is what a reader would check first,
//! never a value that is only possible.

use super::HopSheet;
use super::meter::scale;
use crate::physics::clearance::horizon;
use crate::physics::geodesy::{MEDIAN_K, Position, inverse};
use crate::physics::receiver::noise;
use crate::spec::{EndName, Support};
use crate::units::{Dbm, Decibels, Latitude, Longitude, Metres, Quantity as _, Volts};

/// The longest hop that a correction may make where there is no profile to hold it against: beyond the horizon of most masts.
const LONGEST: Metres = Metres(100_000.0);

/// How far the length of a profile may lie from that of the path: a hundredth, and 5 m. Common practice, no source.
#[must_use]
pub fn may_differ(distance: Metres) -> Metres {
    Metres((0.01 * distance.0).max(5.0))
}

/// How far apart the two ends may be to see each other over a smooth Earth at sea level; none if they are nearer, or their
/// distance is not known.
#[must_use]
pub fn beyond_horizon(hop: &HopSheet<'_>) -> Option<(Metres, Metres)> {
    let distance = hop.path.distance.get()?;
    let sees = hop.resolved.ends.each_ref().map(|end| {
        let above_sea = end.site.ground_height.value.0 + end.end.height.value.0;
        horizon(Metres(above_sea.max(0.0)), MEDIAN_K).0
    });
    let most = Metres(sees.a + sees.b);
    (distance > most).then_some((distance, most))
}

/// A position that was written another way than it was meant.
pub struct PositionSlip {
    /// Whose it is.
    pub end: EndName,
    /// `end a`.
    pub name: String,
    /// As it was meant.
    pub latitude: f64,
    /// As it was meant.
    pub longitude: f64,
    /// Whether the same correction of the other end would do as well.
    pub either: bool,
    what: &'static str,
    distance: Metres,
    by_profile: bool,
}

impl PositionSlip {
    /// What a person would have to do, and what would then be right.
    #[must_use]
    pub fn said(&self) -> String {
        if self.either {
            return format!(
                "{} at one of the two ends: the one that is wrong; with that the ends are {} apart{}",
                self.what,
                self.distance,
                if self.by_profile { ", as far as the profile is long" } else { "" }
            );
        }
        let whose = &self.name;
        let fits = if self.by_profile { ", as far as the profile is long" } else { "" };
        format!(
            "{} of {whose}: tried, with {} at {}, {} the ends are {} apart{fits}",
            self.what, self.name, self.latitude, self.longitude, self.distance
        )
    }
}

/// What the positions may have been: the one correction of one end that makes the hop as long as its profile, or at least as
/// short as a hop may be. Of several that do, the shortest hop.
#[must_use]
pub fn of_position(hop: &HopSheet<'_>) -> Option<PositionSlip> {
    let profile = hop.profile.profile().map(|ground| ground.last);
    let mut fits: Vec<PositionSlip> = Vec::new();
    for end in [EndName::A, EndName::B] {
        let positions = hop.resolved.ends.each_ref().map(|end| {
            let position = &end.site.position;
            (position.latitude.value.0, position.longitude.value.0)
        });
        let ((latitude, longitude), other) = (positions[end], positions[end.far()]);
        let tries = [
            ("swap latitude and longitude", longitude, latitude),
            ("swap east and west (the sign or the letter of the longitude)", latitude, -longitude),
            ("swap north and south (the sign or the letter of the latitude)", -latitude, longitude),
        ];
        for (what, latitude, longitude) in tries {
            if latitude.abs() > 90.0 {
                continue;
            }
            let at = |(latitude, longitude)| Position { latitude: Latitude(latitude), longitude: Longitude(longitude) };
            let Ok(way) = inverse(at((latitude, longitude)), at(other)) else { continue };
            let distance = way.distance;
            let by_profile = profile.is_some_and(|long| (long.0 - distance.0).abs() <= may_differ(distance).0);
            if by_profile || (profile.is_none() && distance <= LONGEST) {
                fits.push(PositionSlip {
                    end,
                    name: format!("end {end}"),
                    latitude,
                    longitude,
                    either: false,
                    what,
                    distance,
                    by_profile,
                });
            }
        }
    }
    let best = fits.iter().enumerate().min_by(|(_, one), (_, other)| one.distance.0.total_cmp(&other.distance.0))?.0;
    let mut best = fits.swap_remove(best);
    best.either = fits.iter().any(|other| other.what == best.what);
    Some(best)
}

/// What a height above ground may have been meant above, in words, with the height it comes to: only what then lies on the
/// support.
#[must_use]
pub fn of_height(height: Metres, ground: Metres, support: &Support) -> Option<(&'static str, Metres)> {
    let (base, top) = (support.base_height.value.0, support.base_height.value.0 + support.free_length.value.0);
    let on_support = |height: f64| (base..=top).contains(&((height * 1000.0).round() / 1000.0));
    let tries = [("above the sea", height.0 - ground.0), ("above the foot of the support", height.0 + base)];
    let fits = tries.into_iter().find(|(_, height)| on_support(*height));
    fits.map(|(what, height)| (what, Metres(height).tidy()))
}

/// Whether the profile runs from b to a: turned round, its ground agrees with both sites.
#[must_use]
pub fn profile_runs_from_b(hop: &HopSheet<'_>, most: Metres) -> bool {
    let Some(ground) = hop.profile.profile() else { return false };
    let (Some(first), Some(last)) = (ground.points.first(), ground.points.last()) else { return false };
    let sites = hop.resolved.ends.each_ref().map(|end| end.site.ground_height.value.0);
    (last.ground.0 - sites.a).abs() <= most.0 && (first.ground.0 - sites.b).abs() <= most.0
}

/// The factor by which every distance of a profile is too small or too large, and the unit it may have been meant in.
#[must_use]
pub fn of_profile_unit(last: Metres, distance: Metres) -> Option<&'static str> {
    let tries =
        [("kilometres", 1000.0), ("feet", 0.3048), ("metres written as kilometres", 0.001), ("miles", 1609.344)];
    let fits = |factor: f64| (last.0 * factor - distance.0).abs() <= may_differ(distance).0;
    tries.into_iter().find(|(_, factor)| fits(*factor)).map(|(unit, _)| unit)
}

/// Whether all channels lie within the bands of the radios if the two halves were exchanged.
#[must_use]
pub fn halves_exchange(hop: &HopSheet<'_>) -> bool {
    hop.directions.iter().all(|direction| {
        let (low, high) = hop.channel_edges(direction.way);
        let (sends, listens) = (&direction.receiver.half.transmit, &direction.sender.half.receive);
        [sends, listens].iter().all(|band| band.min.value <= low && high <= band.max.value)
    })
}

/// The level that a reading of the meter comes to at an end, and the least and the most that there can be: the thermal noise of
/// the channel, and what the far end's radio can send.
///
/// Source: kTB at 290 K; nothing between two antennas makes power.
#[must_use]
pub fn level_of_reading(hop: &HopSheet<'_>, end: EndName, volts: Volts) -> Option<(Dbm, [Dbm; 2])> {
    let level = scale(hop.ends[end].resolved).value().ok()?.level(volts);
    let least = noise(hop.resolved.hop.channel.bandwidth.value, Decibels(0.0));
    let most = hop.ends[end.far()].resolved.radio.transmit_power.max.value;
    Some((level, [least, most]))
}
