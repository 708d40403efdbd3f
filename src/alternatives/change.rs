//! A change of a hop: what becomes of which values, what has to be written for it, what it costs.

use std::collections::BTreeMap;

use super::reach::Lever;
use crate::finding::Spot;
use crate::spec::{Cost, EndName};

/// One decision: of one thing, at one end or alike at both.
#[derive(Debug, Clone, PartialEq)]
pub struct Change {
    /// What it is about.
    pub lever: Lever,
    /// What it is made of, an end or a value each.
    pub pieces: Vec<Piece>,
}

/// A value that becomes another.
#[derive(Debug, Clone, PartialEq)]
pub struct Piece {
    /// What it is, in words: `antenna`, `cable to port main`.
    pub what: String,
    /// The end it is at, if it is at one.
    pub end: Option<EndName>,
    /// What it is today.
    pub from: String,
    /// What it becomes.
    pub to: String,
    /// What has to be written, and where.
    pub edits: Vec<(Spot, String)>,
    /// Where it could also be a little less of a change.
    pub scale: Option<Scale>,
    /// How far it is from today's where it is on no line, in whatever its kind is counted in.
    pub away: f64,
    /// What it adds to the cost.
    pub added: Added,
}

/// A value on a line, in steps.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Scale {
    /// What it is today.
    pub today: f64,
    /// What it becomes: a whole number of steps.
    pub then: f64,
    /// The practical step.
    pub step: f64,
    /// The unit it is written in.
    pub unit: &'static str,
}

impl Scale {
    /// How many steps it moves, the first of them to the next whole one.
    #[must_use]
    pub fn steps(&self) -> u32 {
        let moved = ((self.then - self.today) / self.step).abs();
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "cut to a few thousand, never below 1"
        )]
        let steps = (moved - 1e-6).ceil().clamp(1.0, 10_000.0) as u32;
        steps
    }

    /// The same with only so many steps of it left, counted from today.
    #[must_use]
    pub fn at(&self, steps: u32) -> Self {
        let back = f64::from(self.steps().saturating_sub(steps)) * self.step;
        let then = if self.then < self.today { self.then + back } else { self.then - back };
        Self { then: on_grid(then, self.step), ..*self }
    }

    /// The value as it is written.
    #[must_use]
    pub fn written(&self) -> String {
        format!("{} {}", plain(self.then), self.unit)
    }
}

/// A value on its grid, without the dust of binary fractions.
pub(super) fn on_grid(value: f64, step: f64) -> f64 {
    let whole = (value / step).round() * step;
    (whole * 1e6).round() / 1e6 + 0.0
}

/// A number with no more digits than it has.
fn plain(value: f64) -> String {
    let tidy = (value * 1e6).round() / 1e6 + 0.0;
    format!("{tidy}")
}

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

impl Piece {
    /// A name of a thing in the place of another.
    pub(super) fn name(what: impl Into<String>, end: EndName, from: &str, to: &str, spot: impl Into<Spot>) -> Self {
        Self {
            what: what.into(),
            end: Some(end),
            from: format!("`{from}`"),
            to: format!("`{to}`"),
            edits: vec![(spot.into(), to.to_owned())],
            scale: None,
            away: 0.0,
            added: Added::default(),
        }
    }

    /// The same with what it adds to the cost.
    pub(super) fn adding(self, added: Added) -> Self {
        Self { added, ..self }
    }

    /// A value on a line.
    pub(super) fn scaled(what: &str, end: EndName, from: &str, scale: Scale, spot: impl Into<Spot>) -> Self {
        let to = scale.written();
        let edits = vec![(spot.into(), to.clone())];
        let (what, from, added) = (what.to_owned(), from.to_owned(), Added::default());
        Self { what, end: Some(end), from, to, edits, scale: Some(scale), away: 0.0, added }
    }

    /// The same moved by fewer steps.
    fn at(&self, steps: u32) -> Self {
        let Some(scale) = self.scale.map(|scale| scale.at(steps)) else { return self.clone() };
        let to = scale.written();
        let edits = self.edits.iter().map(|(spot, _)| (spot.clone(), to.clone())).collect();
        Self { to, edits, scale: Some(scale), ..self.clone() }
    }

    fn place(&self) -> String {
        format!("{}@{}", self.what, self.end.map_or("", EndName::letter))
    }
}

impl Change {
    /// A change of one thing.
    pub(super) fn of(lever: Lever, pieces: Vec<Piece>) -> Self {
        Self { lever, pieces }
    }

    /// What tells it from every other change.
    #[must_use]
    pub fn key(&self) -> String {
        self.spelled(|piece| format!("{}={}", piece.place(), piece.to))
    }

    /// The same whatever the values that could be a little less.
    #[must_use]
    pub fn shape(&self) -> String {
        self.spelled(|piece| match piece.scale {
            Some(scale) => format!("{}{}", piece.place(), if scale.then < scale.today { "-" } else { "+" }),
            None => format!("{}={}", piece.place(), piece.to),
        })
    }

    /// What it touches, whatever becomes of it.
    pub(super) fn touched(&self) -> String {
        self.spelled(Piece::place)
    }

    fn spelled(&self, one: impl Fn(&Piece) -> String) -> String {
        let pieces: Vec<String> = self.pieces.iter().map(one).collect();
        format!("{}:{}", self.lever.word(), pieces.join(","))
    }

    /// Whether both decide the same thing.
    pub(super) fn clashes(&self, other: &Self) -> bool {
        if self.lever == other.lever && self.lever.is_decided_once() {
            return true;
        }
        let spots = |change: &Self| -> Vec<Spot> {
            change.pieces.iter().flat_map(|piece| &piece.edits).map(|(spot, _)| spot.clone()).collect()
        };
        let own = spots(self);
        spots(other).iter().any(|spot| own.contains(spot))
    }

    /// What it adds to the cost.
    #[must_use]
    pub fn added(&self) -> Added {
        self.pieces.iter().fold(Added::default(), |sum, piece| sum.and(piece.added.clone()))
    }

    /// How much it upsets.
    #[must_use]
    pub fn size(&self) -> (u32, f64) {
        let pieces = u32::try_from(self.pieces.len()).unwrap_or(u32::MAX);
        let moved = self.pieces.iter().map(|piece| piece.scale.map_or(piece.away, |scale| f64::from(scale.steps())));
        (self.lever.weight().saturating_mul(pieces), moved.sum())
    }

    /// The most steps that a piece of it moves; zero where nothing of it is on a line.
    pub(super) fn steps(&self) -> u32 {
        self.pieces.iter().filter_map(|piece| piece.scale).map(|scale| scale.steps()).max().unwrap_or_default()
    }

    /// The same with no piece moved by more steps than these.
    pub(super) fn at(&self, steps: u32) -> Self {
        let pieces = self.pieces.iter().map(|piece| match piece.scale {
            Some(scale) if scale.steps() > steps => piece.at(steps),
            _ => piece.clone(),
        });
        Self { pieces: pieces.collect(), ..*self }
    }

    /// The same with one piece moved by other steps.
    pub(super) fn with_piece_at(&self, number: usize, steps: u32) -> Self {
        let mut changed = self.clone();
        if let Some(piece) = changed.pieces.get_mut(number) {
            *piece = piece.at(steps);
        }
        changed
    }

    /// In words: `antenna at both ends: dish-30 → dish-60`.
    #[must_use]
    pub fn words(&self) -> String {
        let mut said: Vec<String> = Vec::new();
        let mut left: Vec<&Piece> = self.pieces.iter().collect();
        while !left.is_empty() {
            let piece = left.remove(0);
            let alike = left.iter().position(|other| {
                (&other.what, &other.from, &other.to) == (&piece.what, &piece.from, &piece.to) && other.end != piece.end
            });
            let place = match (alike.map(|at| left.remove(at)), piece.end) {
                (Some(_), _) => " at both ends".to_owned(),
                (None, Some(end)) => format!(" at end {end}"),
                (None, None) => String::new(),
            };
            said.push(format!("{}{place}: {} → {}", piece.what, piece.from, piece.to));
        }
        said.join("; ")
    }
}

#[cfg(test)]
mod tests {
    use super::{Added, Scale};
    use crate::spec::{Cost, Number, Text};

    #[test]
    fn a_scale_goes_back_to_whole_steps() {
        let up = Scale { today: 10.2, then: 16.0, step: 0.5, unit: "dBm" };
        assert_eq!(up.steps(), 12);
        assert_eq!([up.at(1), up.at(6), up.at(12)].map(|scale| scale.written()), ["10.5 dBm", "13 dBm", "16 dBm"]);
        let down = Scale { today: 10.0, then: -2.0, step: 0.5, unit: "dBm" };
        assert_eq!([down.at(1), down.at(20), down.at(24)].map(|scale| scale.written()), ["9.5 dBm", "0 dBm", "-2 dBm"]);
    }

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
