//! `pack` of a program that was built without its press.

use super::args::Pack as Command;
use super::{Exit, Stop};

pub(super) fn run(_: &Command) -> Result<Exit, Stop> {
    let message = "this program was built without its press and prints no pages; build it with the feature `pages`, \
                   which is on unless `--no-default-features` is given";
    Err(Stop::Unknown(message.into()))
}
