//! Where channels may lie.
//!
//! A raster, a channel number and a width go in, the centre frequency comes out, and the other way round. Equipment and
//! licences are set by centre frequencies; one that is off the raster is a slip of the pen.

use super::Confidence;
use crate::units::{Gigahertz, Megahertz};

/// Two centres nearer than this, one kilohertz, are the same.
const SAME: Megahertz = Megahertz(0.001);

/// A channel arrangement: channels of each width, side by side from a common edge.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Raster {
    /// Name as published.
    pub name: &'static str,
    /// The document, and what of it is less sure.
    pub citation: &'static str,
    /// How surely it is known.
    pub confidence: Confidence,
    /// Lower edge of the first channel, whatever its width.
    pub first_edge: Gigahertz,
    /// Widths, and how many channels there are of each.
    pub widths: &'static [(Megahertz, u16)],
    /// How far above a channel its partner for the other direction lies. None where both directions share the channel.
    pub duplex: Option<Gigahertz>,
}

/// A place on a raster.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Channel {
    /// Its number among the channels of its width, from one.
    pub number: u16,
    /// Whether it is the upper of a duplex pair.
    pub upper: bool,
}

/// Half of a raster whose channels are paired.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Half {
    /// The lower.
    Lower,
    /// The upper.
    Upper,
}

/// Channels of a raster by their numbers.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Numbered {
    /// The lowest.
    pub first: u16,
    /// The highest: the same unless it is a sum of several.
    pub last: u16,
    /// The width of each.
    pub step: Megahertz,
    /// The half they are in, where there are two.
    pub half: Option<Half>,
}

impl Raster {
    /// Centre of channel `n` of a width `w`, the lower of a duplex pair. None if there is no such channel.
    ///
    /// ```text
    /// f = edge + (n - 1/2) w
    /// ```
    ///
    /// Source: [`Raster::citation`], whose formulas, one for each width, come to this.
    #[must_use]
    pub fn centre(&self, number: u16, width: Megahertz) -> Option<Gigahertz> {
        (1..=self.count(width)).contains(&number).then(|| {
            let megahertz = self.first_edge.0 * 1000.0 + (f64::from(number) - 0.5) * width.0;
            Gigahertz(megahertz / 1000.0)
        })
    }

    /// The channel of a width that has this centre. None if the centre is not on the raster.
    #[must_use]
    pub fn channel(&self, centre: Gigahertz, width: Megahertz) -> Option<Channel> {
        let number = |sought: Gigahertz| {
            (1..=self.count(width)).find(|number| {
                self.centre(*number, width).is_some_and(|found| (found - sought).0.abs() * 1000.0 < SAME.0)
            })
        };
        let lower = number(centre).map(|number| Channel { number, upper: false });
        let upper = || number(centre - self.duplex?).map(|number| Channel { number, upper: true });
        lower.or_else(upper)
    }

    /// The centres a width may have: the lowest, the step between them, and how many there are.
    ///
    /// A width that is not listed may be some of the narrowest channels side by side. `None` for any other.
    fn grid(&self, width: Megahertz) -> Option<(Gigahertz, Megahertz, u16)> {
        let lowest = Gigahertz((self.first_edge.0 * 1000.0 + 0.5 * width.0) / 1000.0);
        if self.count(width) > 0 {
            return Some((lowest, width, self.count(width)));
        }
        let (narrowest, count) = *self.widths.first()?;
        let summed = (2..=count).find(|summed| (f64::from(*summed) * narrowest.0 - width.0).abs() < SAME.0)?;
        Some((lowest, narrowest, count - summed + 1))
    }

    /// Whether a width is a channel of the raster or a sum of its narrowest ones.
    #[must_use]
    pub fn knows(&self, width: Megahertz) -> bool {
        self.grid(width).is_some()
    }

    /// The centre nearest to another that a width may have on the raster, in either half. `None` for a width it does not
    /// know.
    #[must_use]
    pub fn nearest(&self, centre: Gigahertz, width: Megahertz) -> Option<Gigahertz> {
        let (lowest, step, count) = self.grid(width)?;
        let halves = [Some(Gigahertz(0.0)), self.duplex];
        let centres = halves.into_iter().flatten().flat_map(|shift| {
            (0..count).map(move |number| Gigahertz((lowest.0 * 1000.0 + f64::from(number) * step.0) / 1000.0) + shift)
        });
        centres.min_by(|one, other| (*one - centre).0.abs().total_cmp(&(*other - centre).0.abs()))
    }

    /// The channel of a centre and width by its number, or the channels that it is the sum of. `None` if it is not on the
    /// raster.
    #[must_use]
    pub fn numbered(&self, centre: Gigahertz, width: Megahertz) -> Option<Numbered> {
        let found = self.nearest(centre, width)?;
        if (found - centre).0.abs() * 1000.0 >= SAME.0 {
            return None;
        }
        let (lowest, step, count) = self.grid(width)?;
        let last = lowest.0 + f64::from(count - 1) * step.0 / 1000.0 + SAME.0 / 1000.0;
        let (half, base) = match self.duplex {
            None => (None, lowest),
            Some(duplex) if found.0 > last => (Some(Half::Upper), lowest + duplex),
            Some(_) => (Some(Half::Lower), lowest),
        };
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "counted on the raster")]
        let whole = |number: f64| number.round() as u16;
        let first = whole((found - base).0 * 1000.0 / step.0) + 1;
        let summed = whole(width.0 / step.0).max(1);
        Some(Numbered { first, last: first + summed - 1, step, half })
    }

    /// How many channels of a width there are; zero for a width the raster does not know.
    #[must_use]
    pub fn count(&self, width: Megahertz) -> u16 {
        self.widths.iter().find(|(known, _)| *known == width).map_or(0, |(_, count)| *count)
    }
}

/// 71 to 76 GHz paired with 81 to 86 GHz, with 125 MHz kept free at each edge.
///
/// ```text
/// 250 MHz    71 000 + 250 n,    n = 1 … 19
/// 500 MHz    70 875 + 500 n,    n = 1 … 9
/// 750 MHz    70 750 + 750 n,    n = 1 … 6
/// 1000 MHz   70 625 + 1000 n,   n = 1 … 4
/// 1250 MHz   70 500 + 1250 n,   n = 1 … 3        MHz
/// ```
pub const E_BAND: Raster = Raster {
    name: "ECC/REC/(05)07",
    citation: "ECC/REC/(05)07, annex 4, by a national interface specification that cites it. Channels of 62.5 and 125 \
               MHz, sums of channels up to 4750 MHz, and the pairing by 2.5 GHz within one half are left out.",
    confidence: Confidence::Published,
    first_edge: Gigahertz(71.125),
    widths: &[
        (Megahertz(250.0), 19),
        (Megahertz(500.0), 9),
        (Megahertz(750.0), 6),
        (Megahertz(1000.0), 4),
        (Megahertz(1250.0), 3),
    ],
    duplex: Some(Gigahertz(10.0)),
};

/// 57 to 64 GHz in slots of 50 MHz, used for one direction or both.
///
/// ```text
/// 50 MHz     56 975 + 50 n,     n = 1 … 140      MHz
/// ```
///
/// Low confidence: that the first slot begins at 57 000 MHz is from memory, not seen.
pub const SIXTY_GHZ: Raster = Raster {
    name: "ECC/REC/(09)01",
    citation: "ECC/REC/(09)01: slots of 50 MHz. That they begin at 57 000 MHz is from memory, not seen.",
    confidence: Confidence::Memory,
    first_edge: Gigahertz(57.0),
    widths: &[(Megahertz(50.0), 140)],
    duplex: None,
};
