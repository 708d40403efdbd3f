//! `check`: judge hops.

use std::io::IsTerminal as _;

use super::args::{Check, Format, LookArgs, When};
use super::{Exit, Stop, present, print};
use crate::evaluate::evaluate;
use crate::network::Scope;
use crate::output::{self, Look};
use crate::rule::Severity;

pub(super) fn run(args: &Check) -> Result<Exit, Stop> {
    args.paths.iter().try_for_each(|path| present(path))?;
    if args.diff {
        return super::fix::show(args);
    }
    if args.fix || args.fix_unsafe {
        super::fix::make(args)?;
    }
    let mut evaluation = evaluate(&Scope::of(&args.paths), |_, _| ());
    let fail_on = Severity::from(args.fail_on);
    let failed = evaluation.findings.iter().any(|finding| finding.severity >= fail_on);
    let least = Severity::from(args.min_severity);
    evaluation.findings.retain(|finding| finding.severity >= least);

    let empty = evaluation.files.list.is_empty() && !failed;
    match args.format {
        Format::Json => print(&output::json(&evaluation))?,
        _ if empty => eprintln!("hopwright: no YAML files found in {}", listed(&args.paths)),
        Format::Full => {
            let look = look(&args.look);
            print(&format!("{}{}\n", output::full(&evaluation, look), output::summary(&evaluation)))?;
        }
        Format::Concise => {
            print(&output::concise(&evaluation))?;
            eprintln!("{}", output::summary(&evaluation));
        }
    }
    Ok(if failed {
        Exit::Findings
    } else if empty {
        Exit::Nothing
    } else {
        Exit::Clean
    })
}

fn listed(paths: &[std::path::PathBuf]) -> String {
    paths.iter().map(|path| path.display().to_string()).collect::<Vec<_>>().join(", ")
}

/// Colour, characters and width, decided here so that the same arguments give the same bytes.
fn look(args: &LookArgs) -> Look {
    let set = |name| std::env::var_os(name).is_some_and(|value| !value.is_empty());
    let forced = |name| std::env::var_os(name).is_some_and(|value| !value.is_empty() && value != "0");
    let dumb = std::env::var_os("TERM").is_some_and(|term| term == "dumb");
    let colour = match args.color {
        When::Always => true,
        When::Never => false,
        When::Auto if set("NO_COLOR") => false,
        When::Auto if forced("FORCE_COLOR") || forced("CLICOLOR_FORCE") => true,
        When::Auto => !dumb && std::io::stdout().is_terminal(),
    };
    Look { width: args.width.unwrap_or(80).into(), colour, unicode: args.unicode != When::Never }
}
