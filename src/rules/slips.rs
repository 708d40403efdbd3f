//! Likely slips of the pen, each tried before it is named: with the correction the rest agrees.
//!
//! A rule that finds an input impossible asks here what it may have been. What is named is what a reader would check first,
//! never a value that is only possible.

use crate::physics::geodesy::{Position, inverse};
use crate::sheet::HopSheet;
use crate::spec::{EndName, Support};
use crate::units::{Latitude, Longitude, Metres, Quantity as _};

/// The longest hop that a correction may make where there is no profile to hold it against: beyond the horizon of most masts.
const LONGEST: Metres = Metres(100_000.0);

/// A position that was written another way than it was meant.
pub(super) struct PositionSlip {
    /// Whose it is.
    pub(super) end: EndName,
    /// `end a`.
    pub(super) name: String,
    /// As it was meant.
    pub(super) latitude: f64,
    /// As it was meant.
    pub(super) longitude: f64,
    /// Whether the same correction of the other end would do as well.
    pub(super) either: bool,
    what: &'static str,
    distance: Metres,
    by_profile: bool,
}

impl PositionSlip {
    /// What a person would have to do, and what would then be right.
    pub(super) fn said(&self) -> String {
        let whose = if self.either { "one of the ends" } else { &self.name };
        let fits = if self.by_profile { ", as far as the profile is long" } else { "" };
        format!(
            "{} of {whose}: tried, with {} at {}, {} the ends are {} apart{fits}",
            self.what, self.name, self.latitude, self.longitude, self.distance
        )
    }
}

/// What the positions may have been: the one correction of one end that makes the hop as long as its profile, or at least as
/// short as a hop may be. Of several that do, the shortest hop.
pub(super) fn of_position(hop: &HopSheet<'_>) -> Option<PositionSlip> {
    let profile = hop.profile.profile().map(|ground| ground.last);
    let mut fits: Vec<PositionSlip> = Vec::new();
    for end in [EndName::A, EndName::B] {
        let positions = hop.resolved.ends.each_ref().map(|end| {
            let position = &end.site.position;
            (position.latitude.value.0, position.longitude.value.0)
        });
        let ((latitude, longitude), other) = (positions[end], positions[end.far()]);
        let tries = [
            ("exchange latitude and longitude", longitude, latitude),
            ("turn the longitude over, west for east or east for west,", latitude, -longitude),
            ("turn the latitude over, south for north or north for south,", -latitude, longitude),
        ];
        for (what, latitude, longitude) in tries {
            if latitude.abs() > 90.0 {
                continue;
            }
            let at = |(latitude, longitude)| Position { latitude: Latitude(latitude), longitude: Longitude(longitude) };
            let Ok(way) = inverse(at((latitude, longitude)), at(other)) else { continue };
            let distance = way.distance;
            let by_profile =
                profile.is_some_and(|long| (long.0 - distance.0).abs() <= super::path::may_differ(distance).0);
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
pub(super) fn of_height(height: Metres, ground: Metres, support: &Support) -> Option<(&'static str, Metres)> {
    let (base, top) = (support.base_height.value.0, support.base_height.value.0 + support.free_length.value.0);
    let on_support = |height: f64| (base..=top).contains(&((height * 1000.0).round() / 1000.0));
    let tries = [("above the sea", height.0 - ground.0), ("above the foot of the support", height.0 + base)];
    let fits = tries.into_iter().find(|(_, height)| on_support(*height));
    fits.map(|(what, height)| (what, Metres(height).tidy()))
}

/// Whether the profile runs from b to a: turned round, its ground agrees with both sites.
pub(super) fn profile_runs_from_b(hop: &HopSheet<'_>, most: Metres) -> bool {
    let Some(ground) = hop.profile.profile() else { return false };
    let (Some(first), Some(last)) = (ground.points.first(), ground.points.last()) else { return false };
    let sites = hop.resolved.ends.each_ref().map(|end| end.site.ground_height.value.0);
    (last.ground.0 - sites.a).abs() <= most.0 && (first.ground.0 - sites.b).abs() <= most.0
}

/// The factor by which every distance of a profile is too small or too large, and the unit it may have been meant in.
pub(super) fn of_profile_unit(last: Metres, distance: Metres) -> Option<&'static str> {
    let tries =
        [("kilometres", 1000.0), ("feet", 0.3048), ("metres written as kilometres", 0.001), ("miles", 1609.344)];
    let fits = |factor: f64| (last.0 * factor - distance.0).abs() <= super::path::may_differ(distance).0;
    tries.into_iter().find(|(_, factor)| fits(*factor)).map(|(unit, _)| unit)
}

/// Whether all channels lie within the bands of the radios if the two halves were exchanged.
pub(super) fn halves_exchange(hop: &HopSheet<'_>) -> bool {
    hop.directions.iter().all(|direction| {
        let (low, high) = hop.channel_edges(direction.way);
        let (sends, listens) = (&direction.receiver.half.transmit, &direction.sender.half.receive);
        [sends, listens].iter().all(|band| band.min.value <= low && high <= band.max.value)
    })
}
