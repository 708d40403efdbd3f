//! What changes add to the cost of a hop, as far as equipment states what it costs.

use std::collections::BTreeMap;

use crate::spec::Cost;

/// What a change adds to the cost.
#[derive(Debug, Clone, PartialEq)]
pub enum Added {
    /// So much in each currency; nothing for a setting, less than nothing where it becomes cheaper.
    Known(BTreeMap<String, f64>),
    /// A part of it states no cost.
    Unknown,
}

impl Default for Added {
    fn default() -> Self {
        Self::Known(BTreeMap::new())
    }
}

impl Added {
    /// One part in the place of another, so many of it.
    #[must_use]
    pub fn instead(new: Option<&Cost>, old: Option<&Cost>, many: f64) -> Self {
        let (Some(new), Some(old)) = (new, old) else { return Self::Unknown };
        Self::of(new, many).and(Self::of(old, -many))
    }

    /// One part more.
    #[must_use]
    pub fn more(new: Option<&Cost>) -> Self {
        new.map_or(Self::Unknown, |new| Self::of(new, 1.0))
    }

    fn of(cost: &Cost, many: f64) -> Self {
        Self::Known(BTreeMap::from([(cost.currency.to_string(), cost.amount.0 * many)]))
    }

    /// Both together.
    #[must_use]
    pub fn and(self, other: Self) -> Self {
        let (Self::Known(mut sums), Self::Known(others)) = (self, other) else { return Self::Unknown };
        for (currency, amount) in others {
            *sums.entry(currency).or_default() += amount;
        }
        sums.retain(|_, amount| amount.abs() > 1e-9);
        Self::Known(sums)
    }

    /// As one amount, where it is in one currency; the name is empty where it is nothing.
    #[must_use]
    pub fn single(&self) -> Option<(&str, f64)> {
        let Self::Known(sums) = self else { return None };
        match sums.len() {
            0 => Some(("", 0.0)),
            1 => sums.iter().next().map(|(currency, amount)| (currency.as_str(), *amount)),
            _ => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Added;
    use crate::spec::{Cost, Number, Text};

    #[test]
    fn costs_of_one_currency_add_up_and_others_stand_apart() {
        let cost = |amount, currency: &str| Cost { amount: Number(amount), currency: Text(currency.into()) };
        let (cheap, dear, other) = (cost(100.0, "EUR"), cost(250.0, "EUR"), cost(9.0, "SEK"));
        let more = Added::instead(Some(&dear), Some(&cheap), 2.0);
        assert_eq!(more.single(), Some(("EUR", 300.0)));
        assert_eq!(more.clone().and(Added::more(Some(&other))).single(), None);
        assert_eq!(more.and(Added::more(None)), Added::Unknown);
        assert_eq!(Added::default().single(), Some(("", 0.0)));
    }
}
