//! `completions` and `man`: what a shell and a reader of manuals want, made from the definition of the arguments.

use clap::CommandFactory as _;

use super::args::{Args, Completions, Man};
use super::{Exit, Stop, say};
use crate::text::plain::Form;

/// The name of the program.
const NAME: &str = "hopwright";

/// Prints the completions of a shell.
pub(super) fn completions(args: &Completions) -> Result<Exit, Stop> {
    let mut text = Vec::new();
    clap_complete::generate(args.shell, &mut Args::command(), NAME, &mut text);
    say::out_as(&String::from_utf8_lossy(&text), Form::Commands)?;
    Ok(Exit::Clean)
}

/// Prints the manual page of the program, or writes one for each command.
pub(super) fn man(args: &Man) -> Result<Exit, Stop> {
    let command = Args::command();
    let Some(folder) = &args.out else {
        say::out_as(&page(command, NAME)?, Form::Commands)?;
        return Ok(Exit::Clean);
    };
    let named = |command: &clap::Command| format!("{NAME}-{}", command.get_name());
    let mut pages = vec![(NAME.to_owned(), command.clone())];
    pages.extend(command.get_subcommands().map(|one| (named(one), one.clone())));
    for (name, command) in pages {
        let path = folder.join(format!("{name}.1"));
        say::save(&path, &page(command, &name)?, Form::Commands)?;
        say::path(&path)?;
    }
    Ok(Exit::Clean)
}

fn page(command: clap::Command, name: &str) -> Result<String, Stop> {
    let mut text = Vec::new();
    let command = command.bin_name(name.replacen('-', " ", 1));
    clap_mangen::Man::new(command).title(name).render(&mut text).map_err(Stop::Output)?;
    Ok(String::from_utf8_lossy(&text).into_owned())
}
