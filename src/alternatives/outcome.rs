//! What is asked for, and what comes of it.

use super::added::Added;
use super::change::Change;
use super::verdict::Found;
use crate::finding::rule::Severity;
use crate::fix::Mended;

/// The most changes that go together.
pub const MOST_CHANGES: usize = 3;

/// What is asked for.
#[derive(Debug, Clone)]
pub struct Asked {
    /// The hop, by its id.
    pub hop: String,
    /// The most proposals.
    pub most: usize,
    /// The most trials.
    pub budget: usize,
    /// The least severity that fails.
    pub fail_on: Severity,
}

/// What came of it.
#[derive(Debug)]
pub struct Outcome {
    /// The hop.
    pub hop: String,
    /// What fails and may be touched by a change.
    pub failing: Vec<Found>,
    /// What fails and no change here can touch.
    pub staying: Vec<Found>,
    /// The number of its licence, where that keeps channel and bandwidth as they are.
    pub licence: Option<String>,
    /// Proposals in order: the fewest changes, the least cost, the least change.
    pub proposals: Vec<Proposal>,
    /// What came nearest, where there is no proposal.
    pub nearest: Option<Nearest>,
    /// How many trials there were.
    pub tried: usize,
    /// Changes that were not tried, for their values stand under an anchor or in an alias.
    pub unwritten: usize,
    /// How many there might have been.
    pub budget: usize,
    /// Whether something was left untried for that.
    pub ran_out: bool,
}

/// Changes that make the hop pass, and nothing else the worse.
#[derive(Debug)]
pub struct Proposal {
    /// The changes.
    pub changes: Vec<Change>,
    /// What they add to the cost.
    pub added: Added,
    /// What kept no limit and now does.
    pub then: Vec<Then>,
    /// What follows and speaks against nothing.
    pub told: Vec<Found>,
    /// The files as they would be.
    pub files: Vec<Mended>,
}

/// A quantity before and after.
#[derive(Debug, Clone, PartialEq)]
pub struct Then {
    /// What it is.
    pub name: String,
    /// Its limit, in words.
    pub limit: Option<String>,
    /// As it is today.
    pub before: Option<String>,
    /// As it would be.
    pub after: String,
}

/// What came nearest.
#[derive(Debug)]
pub struct Nearest {
    /// The changes.
    pub changes: Vec<Change>,
    /// What is still found, or found anew.
    pub left: Vec<Found>,
}
