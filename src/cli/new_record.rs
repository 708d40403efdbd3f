//! `new record`: the form of a record, written beside the network it belongs to and never over anything.

use super::args::NewRecord;
use super::scope::scope;
use super::{Exit, Stop, present, say};
use crate::door::write::write_whole;
use crate::pack::Form;
use crate::spec::Both;
use crate::text::nearest::{did_you_mean, nearest};
use crate::verdict::evaluate;

pub(super) fn run(args: &NewRecord) -> Result<Exit, Stop> {
    present(&args.network)?;
    let scope = scope(std::slice::from_ref(&args.network), &args.brought)?;
    let evaluation = evaluate(&scope, |sheet, _| Both::ends(|end| Form::of(sheet, end)));
    let forms = || evaluation.hops.iter().flat_map(Both::iter);
    let mut found = forms().filter(|form| form.name() == args.end);
    let (Some(form), twice) = (found.next(), found.next()) else {
        let known: Vec<String> = forms().map(Form::name).collect();
        let guess = nearest(&args.end, known.iter().map(String::as_str));
        let hint = guess.map_or("write it as HOP/a or HOP/b".into(), did_you_mean);
        let place = args.network.display();
        let message =
            format!("there is no end `{}` that can be recorded in {place}; {hint} (`check` says why)", args.end);
        return Err(Stop::Unknown(message));
    };
    if twice.is_some() {
        let message = format!("two networks have an end `{}`; give the folder of one with `--network`", args.end);
        return Err(Stop::Unknown(message));
    }
    let folder = args.out.clone().unwrap_or_else(|| form.folder(&evaluation.files));
    let (id, path) = form.place(&folder);
    let text = form.text(&id, &folder, &evaluation.files);
    write_whole(&path, text.as_bytes()).map_err(|error| Stop::Write { path: path.display().to_string(), error })?;
    say::path(&path)?;
    let next = format!("Now fill in what was found, then run: hopwright check {}\n", say::shown(&path));
    say::hint(&next);
    Ok(Exit::Clean)
}
