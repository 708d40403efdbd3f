//! What would make a hop pass that fails: changes of its settings, its equipment and its heights, alone and together.
//!
//! [`seek`] reads a network, takes the findings about one hop that count, and tries changes that can touch them: one, then
//! two, then three at a time. A trial is the hop's own text with other values in it, read and judged on the way that `check`
//! goes, so what is offered has passed every rule there is, and nothing else of the network is the worse for it. Trials are
//! counted, not timed. A waiver, a lower severity, a looser limit or objective is never among the changes: all of them are
//! edits of the hop's own document, at keys that say how it is built and set.
//!
//! `reach` says which changes can touch what a rule finds, `options` makes them, `trial` judges, `search` combines,
//! `dial` looks between too little and too much, `settle` takes away what a proposal does not need.

mod added;
mod change;
mod dial;
mod ground;
mod json;
mod narrow;
mod options;
mod outcome;
mod reach;
mod scale;
mod score;
mod search;
mod settle;
mod text;
mod together;
mod trial;
mod verdict;

pub use added::Added;
pub use change::{Change, Piece};
pub use json::json;
pub use outcome::{Asked, MOST_CHANGES, Nearest, Outcome, Proposal, Then};
pub use reach::{Lever, REACH, Turn, levers};
pub use scale::Scale;
pub use search::seek;
pub use text::text;
pub use verdict::Found;
