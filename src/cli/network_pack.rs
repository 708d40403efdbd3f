//! `pack network`: one PDF for the whole network.

use super::args::NetworkPackArgs;
use super::scope::scope;
use super::{Exit, Stop, present, say};
use crate::door::write::write_whole;
use crate::finding::rule::Severity;
use crate::network::Trees;
use crate::pack::{Finish, Gathered, HopExtract, NetworkPack, Press};
use crate::sheet::Parts;
use crate::verdict::Read;
use crate::voice::Voice;

pub(super) fn run(args: &NetworkPackArgs) -> Result<Exit, Stop> {
    present(&args.network)?;
    let scope = scope(std::slice::from_ref(&args.network), &args.brought)?.on(args.today);
    let read = Read::of(&scope);
    let (library, network) = match read.libraries() {
        [] => return Ok(nothing(args)),
        [only] => match only.networks.documents.first() {
            Some(network) => (only, network),
            None => return Ok(nothing(args)),
        },
        _ => {
            let folder = args.network.display();
            return Err(Stop::Unknown(format!(
                "{folder} holds several networks; give the folder of one with `--network`"
            )));
        }
    };
    let voice = Voice::of(&network.print, args.language);
    let (mut gathered, mut parts) = (Gathered::new(voice), Parts::new());
    let open = read.open();
    let mut evaluation = open.judge(
        |sheet, found| (HopExtract::of(sheet, found, voice), open.part(sheet)),
        |(hop, part)| {
            gathered.hop(hop);
            parts.extend(part.map(|part| (part.document, part)));
        },
    );
    open.services(&parts, |sheet| {
        gathered.service(sheet);
        Ok::<(), Stop>(())
    })?;
    let known = args.baseline.as_deref().map(|path| Ok::<_, Stop>((path, super::baseline::read(path)?))).transpose()?;
    let known = known.map(|(path, baseline)| {
        baseline.apply(&mut evaluation);
        path.file_name().map_or_else(|| say::shown(path), |name| name.to_string_lossy().into_owned())
    });
    let failing = evaluation.findings.iter().any(|finding| finding.severity == Severity::Error);
    let pack = NetworkPack::of(library, network, gathered, &evaluation, known.as_deref());
    if pack.errors() > 0 && !args.draft {
        let noun = if pack.errors() == 1 { "error" } else { "errors" };
        let errors = pack.errors();
        say::aside(&format!(
            "network `{}` is not printed: {errors} {noun}; `check` shows them, `--draft` prints it marked",
            network.id
        ));
        return Ok(Exit::Findings);
    }
    let finish = if args.plain { Finish::Plain } else { Finish::Archival };
    let trees = Trees::of(read.files());
    let bytes = pack.set(&Press::for_finish(finish)?, args.draft, &trees)?;
    let path = args.out.join(pack.file_name());
    write_whole(&path, &bytes).map_err(|error| Stop::Write { path: path.display().to_string(), error })?;
    say::path(&path)?;
    Ok(if failing { Exit::Findings } else { Exit::Clean })
}

fn nothing(args: &NetworkPackArgs) -> Exit {
    say::aside(&format!("no network to print in {} (`check` says why)", say::shown(&args.network)));
    Exit::Nothing
}
