//! A change of a hop: what becomes of which values, what has to be written for it, what it costs.

use super::added::Added;
use super::reach::Lever;
use super::scale::Scale;
use crate::finding::Spot;
use crate::spec::EndName;

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
    pub(super) fn touched(&self) -> impl Iterator<Item = String> {
        self.pieces.iter().map(Piece::place)
    }

    fn spelled(&self, one: impl Fn(&Piece) -> String) -> String {
        let pieces: Vec<String> = self.pieces.iter().map(one).collect();
        format!("{}:{}", self.lever.word(), pieces.join(","))
    }

    /// Whether both decide the same thing.
    pub(super) fn clashes(&self, other: &Self) -> bool {
        if self.lever == other.lever {
            // One model at one end and the same at the other is one change at both.
            let same =
                |piece: &Piece| other.pieces.iter().any(|known| known.what == piece.what && known.to == piece.to);
            let halved = self.lever == Lever::Antenna && self.pieces.iter().any(same);
            if halved || self.lever.is_decided_once() {
                return true;
            }
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
