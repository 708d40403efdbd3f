//! What one hop may be set to: channels, polarisations and halves that its radios, antennas and codes allow.

use crate::air::Air;
use crate::network::{ResolvedEnd, ResolvedHop};
use crate::spec::{Both, EndName, Half, Polarisation, Window};
use crate::units::Gigahertz;

/// What a hop is set to, or may be.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Setting {
    /// What each end sends on.
    pub sends: Both<Gigahertz>,
    /// The polarisation of both.
    pub polarisation: Polarisation,
    /// The half of each radio, by its number there.
    pub halves: Both<usize>,
}

impl Setting {
    /// What a hop is set to today.
    #[must_use]
    pub fn today(resolved: &ResolvedHop<'_>) -> Self {
        let channel = &resolved.hop.channel;
        Self {
            sends: Both { a: channel.a_to_b.value, b: channel.b_to_a.value },
            polarisation: channel.polarisation,
            halves: resolved.ends.each_ref().map(own_half),
        }
    }
}

/// All that a hop may be set to with the radios and antennas it has, that of today the first. Hops that take turns on one
/// frequency go on to, and those with two carriers keep both.
pub(super) fn of(air: &Air<'_>, resolved: &ResolvedHop<'_>) -> Vec<Setting> {
    let today = Setting::today(resolved);
    let takes_turns = today.sends.a == today.sends.b;
    let polarisations: &[Polarisation] = match today.polarisation {
        Polarisation::Dual => &[Polarisation::Dual],
        Polarisation::Horizontal | Polarisation::Vertical => &[Polarisation::Horizontal, Polarisation::Vertical],
    };
    let pairs = air.pairs(resolved.hop.at).into_iter().filter(|pair| (pair.a == pair.b) == takes_turns);
    let mut settings = vec![today];
    for sends in pairs {
        let Some(halves) = halves(resolved, &sends) else { continue };
        let all = polarisations.iter().map(|polarisation| Setting { sends, polarisation: *polarisation, halves });
        settings
            .extend(all.filter(|setting| (setting.sends, setting.polarisation) != (today.sends, today.polarisation)));
    }
    settings
}

/// Today's channels with the radios in the halves that can send and listen on them.
pub(super) fn in_halves_that_fit(resolved: &ResolvedHop<'_>) -> Option<Setting> {
    let today = Setting::today(resolved);
    Some(Setting { halves: halves(resolved, &today.sends)?, ..today })
}

fn own_half(end: &ResolvedEnd<'_>) -> usize {
    end.radio.halves.iter().position(|half| half.id == end.half.id).unwrap_or_default()
}

/// Halves of both radios that can send and listen on a pair of channels, those they are in today where these can. None if one
/// has no such half, or an antenna does not take the channels.
fn halves(resolved: &ResolvedHop<'_>, sends: &Both<Gigahertz>) -> Option<Both<usize>> {
    let wide = Gigahertz(resolved.hop.channel.bandwidth.value.0 / 2000.0);
    let of = |name: EndName| {
        let end = &resolved.ends[name];
        let (sent, heard) = (sends[name], sends[name.far()]);
        let band = &end.antenna.band;
        let fits = |half: &Half| inside(&half.transmit, sent, wide) && inside(&half.receive, heard, wide);
        let mut all = std::iter::once(own_half(end)).chain(0..end.radio.halves.len());
        let found = all.find(|number| end.radio.halves.get(*number).is_some_and(fits))?;
        (inside(band, sent, wide) && inside(band, heard, wide)).then_some(found)
    };
    Some(Both { a: of(EndName::A)?, b: of(EndName::B)? })
}

fn inside(window: &Window<Gigahertz>, centre: Gigahertz, wide: Gigahertz) -> bool {
    // A kilohertz is rounding.
    let little = 1e-6;
    window.min.value.0 <= (centre - wide).0 + little && (centre + wide).0 - little <= window.max.value.0
}
