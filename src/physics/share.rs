//! Shares of time that are known to a number or only between two bounds.

use super::rain_outage::Outage;
use super::worst_month::MonthOutage;
use crate::units::Percent;

/// All of the time.
const WHOLE: Percent = Percent(100.0);

/// A share of time between two bounds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Share {
    /// The least it can be.
    pub least: Percent,
    /// The most it can be.
    pub most: Percent,
}

impl Share {
    /// Share of the year between two fades: `shallow` is the outage of the fade at which it begins, none if it begins in
    /// clear air, `deep` that of the fade at which it ends.
    ///
    /// ```text
    /// p(shallow) - p(deep)
    /// ```
    ///
    /// Source: definition; outages known only to one side leave a range.
    #[must_use]
    pub fn between(shallow: Option<Self>, deep: Self) -> Self {
        let from = shallow.unwrap_or(Self { least: WHOLE, most: WHOLE });
        let positive = |share: Percent| if share.0 > 0.0 { share } else { Percent(0.0) };
        Self { least: positive(from.least - deep.most), most: positive(from.most - deep.least) }
    }

    /// This and another that never comes in the same minutes, or so seldom that it does not count.
    ///
    /// ```text
    /// u + v,   at most 100 %
    /// ```
    ///
    /// Source: shares of times that exclude each other; of independent ones it is the upper bound.
    #[must_use]
    pub fn plus(self, other: Percent) -> Self {
        let sum = |share: Percent| if share + other < WHOLE { share + other } else { WHOLE };
        Self { least: sum(self.least), most: sum(self.most) }
    }

    /// The larger of two that come in the same minutes, as the rain on both directions of a hop does.
    ///
    /// Source: one cause, counted once.
    #[must_use]
    pub fn or_larger(self, other: Self) -> Self {
        let larger = |one: Percent, other: Percent| if other > one { other } else { one };
        Self { least: larger(self.least, other.least), most: larger(self.most, other.most) }
    }
}

impl From<Outage> for Share {
    fn from(outage: Outage) -> Self {
        Self { least: outage.at_least(), most: outage.at_most() }
    }
}

impl From<MonthOutage> for Share {
    fn from(outage: MonthOutage) -> Self {
        Self { least: outage.at_least(), most: outage.at_most() }
    }
}
