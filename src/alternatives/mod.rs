//! What would make a hop pass that fails: changes of its settings, its equipment and its heights, alone and together.
//!
//! [`seek`] reads a network, takes the findings about one hop that count, and tries changes that can touch them: one, then
//! two, then three at a time. A trial is the hop's own text with other values in it, read and judged on the way that `check`
//! goes, so what is offered has passed every rule there is, and nothing else of the network is the worse for it. Trials are
//! counted, not timed. A waiver, a lower severity, a looser limit or objective is never among the changes: all of them are
//! edits of the hop's own document, at keys that say how it is built and set.
//!
//! [`reach`] says which changes can touch what a rule finds, [`options`] makes them, [`trial`] judges, [`search`] combines,
//! [`settle`] takes away what a proposal does not need.

mod change;
mod dial;
mod json;
mod narrow;
mod options;
mod reach;
mod search;
mod settle;
mod text;
mod trial;
mod verdict;

pub use change::{Added, Change, Piece, Scale};
pub use json::json;
pub use reach::{Lever, Turn, levers};
pub use search::{Asked, Nearest, Outcome, Proposal, seek};
pub use text::text;
pub use verdict::Found;
