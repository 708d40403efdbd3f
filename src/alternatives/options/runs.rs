//! What is in a cable run: its cable, what feeds it, its arresters; from the network and its libraries, then from the standard
//! parts that are shipped with the program.

use crate::alternatives::added::Added;
use crate::alternatives::change::{Change, Piece};
use crate::alternatives::ground::{Ground, MOST_MODELS, Need};
use crate::alternatives::reach::Lever;
use crate::at;
use crate::network::{Document, ResolvedRun};
use crate::place::Placed as _;
use crate::spec::{Arrester, Cable, Carried, Construction, Cost, EndName, Entry, Jacket, RunPlace, Supply};
use crate::standard;

/// The runs that a need is about, with their ends.
fn runs<'g>(ground: &'g Ground<'_>, need: Need) -> impl Iterator<Item = (EndName, &'g ResolvedRun<'g>)> {
    need.ends().flat_map(move |end| {
        let runs = ground.hop.ends[end].runs.iter().enumerate();
        runs.filter(move |(number, _)| need.is_about(*number)).map(move |(_, run)| (end, run))
    })
}

fn called(what: &str, run: &ResolvedRun<'_>) -> String {
    format!("{what} to port `{}`", run.port.id)
}

/// Cables that may lie where this one does: outdoors if it does, of pairs where it carries data.
pub(super) fn cables(ground: &Ground<'_>, need: Need) -> Vec<Change> {
    let mut made = Vec::new();
    for (end, run) in runs(ground, need) {
        let outdoors = run.run.outdoor.value.0 > 0.0;
        let data = run.run.carries.contains(&Carried::Data);
        let fits = |cable: &&Document<Cable>| {
            let made_for = !outdoors || cable.jacket == Jacket::Outdoor;
            cable.at != run.cable.at && made_for && (!data || cable.construction == Construction::FourPair)
        };
        let own = ground.library.cables.documents.iter().filter(fits).take(MOST_MODELS);
        let metres = run.run.outdoor.value.0 + run.run.indoor.as_ref().map_or(0.0, |indoor| indoor.value.0);
        let own = own.map(|cable| (cable.id.to_string(), cable.cost.as_ref()));
        let known: Vec<(String, Option<&Cost>)> = own.collect();
        let names: Vec<&str> = known.iter().map(|(id, _)| id.as_str()).collect();
        let jacket = if outdoors { "jacket: outdoor" } else { "jacket:" };
        let standard = of_standard("cable", &[jacket], &names, &run.cable.id);
        for (id, cost) in known.iter().cloned().chain(standard.into_iter().map(|id| (id, None))) {
            let spec = run.run;
            let added = Added::instead(cost, run.cable.cost.as_ref(), metres);
            let piece = Piece::name(called("cable", run), end, &run.cable.id, &id, at!(spec.cable)).adding(added);
            made.push(Change::of(Lever::Cable, vec![piece]));
        }
    }
    made
}

/// Supplies of a kind that the radio takes.
pub(super) fn supplies(ground: &Ground<'_>, need: Need) -> Vec<Change> {
    let mut made = Vec::new();
    for (end, run) in runs(ground, need) {
        let Some(today) = run.supply else { continue };
        let accepts = &ground.hop.ends[end].radio.power.accepts;
        let fits = |supply: &&Document<Supply>| supply.at != today.at && accepts.contains(&supply.standard);
        let own = ground.library.supplies.documents.iter().filter(fits).take(MOST_MODELS);
        let known: Vec<(String, Option<&Cost>)> =
            own.map(|supply| (supply.id.to_string(), supply.cost.as_ref())).collect();
        let names: Vec<&str> = known.iter().map(|(id, _)| id.as_str()).collect();
        let words: Vec<String> = accepts.iter().map(|standard| format!("standard: {}\n", standard.word())).collect();
        let words: Vec<&str> = words.iter().map(String::as_str).collect();
        let standard = of_standard("supply", &words, &names, &today.id);
        for (id, cost) in known.iter().cloned().chain(standard.into_iter().map(|id| (id, None))) {
            let spec = run.run;
            let added = Added::instead(cost, today.cost.as_ref(), 1.0);
            let piece = Piece::name(called("supply", run), end, &today.id, &id, at!(spec.supply)).adding(added);
            made.push(Change::of(Lever::Supply, vec![piece]));
        }
    }
    made
}

/// Standard parts of a kind whose text has one of some words, but for those that are known already.
fn of_standard(kind: &str, words: &[&str], known: &[&str], today: &str) -> Vec<String> {
    let parts = standard::parts().iter().filter(|part| part.kind == kind);
    let fitting = parts.filter(|part| words.iter().any(|word| part.text.contains(word)));
    let names = fitting.map(standard::Part::name);
    names.filter(|name| name != today && !known.contains(&name.as_str())).take(2 * MOST_MODELS).collect()
}

/// All arresters of a run of one model, each single one of another model, and those that are missing.
pub(super) fn arresters(ground: &Ground<'_>, need: Need) -> Vec<Change> {
    let mut made = Vec::new();
    let models = &ground.library.arresters.documents;
    for (end, run) in runs(ground, need) {
        for model in models.iter().take(MOST_MODELS) {
            made.extend(missing(run, end, model));
            made.extend(others(run, end, model));
        }
    }
    made
}

/// One model in the place of every one that is another, and of each of them alone where there are several.
fn others(run: &ResolvedRun<'_>, end: EndName, model: &Document<Arrester>) -> Vec<Change> {
    let pieces: Vec<Piece> = run
        .arresters
        .iter()
        .enumerate()
        .filter(|(_, today)| today.at != model.at)
        .map(|(i, today)| {
            let (spec, added) = (run.run, Added::instead(model.cost.as_ref(), today.cost.as_ref(), 1.0));
            let what = format!("{}, {}", called("arrester", run), place(spec.arresters[i].at));
            Piece::name(what, end, &today.id, &model.id, at!(spec.arresters[i].model)).adding(added)
        })
        .collect();
    let alone = pieces.iter().filter(|_| pieces.len() > 1).map(|piece| vec![piece.clone()]);
    let sets = alone.chain((!pieces.is_empty()).then(|| pieces.clone()));
    sets.map(|pieces| Change::of(Lever::Arrester, pieces)).collect()
}

/// Arresters where the run has none and should: at the radio and at its other end.
fn missing(run: &ResolvedRun<'_>, end: EndName, model: &Document<Arrester>) -> Option<Change> {
    let spec = run.run;
    let far: &[RunPlace] =
        if spec.enters() == Entry::None { &[RunPlace::FarEnd, RunPlace::Entry] } else { &[RunPlace::Entry] };
    let lacks = |places: &[RunPlace]| !spec.arresters.iter().any(|arrester| places.contains(&arrester.at));
    let wanted = [(lacks(&[RunPlace::Radio]), RunPlace::Radio), (lacks(far), far[0])];
    let wanted: Vec<RunPlace> = wanted.into_iter().filter(|(lacks, _)| *lacks).map(|(_, place)| place).collect();
    let item = |place: RunPlace| format!("{{ model: {}, at: {} }}", model.id, word(place));
    let (spot, text) = match (spec.arresters.len(), wanted.as_slice()) {
        (_, []) => return None,
        (0, places) => {
            let items: Vec<String> = places.iter().map(|place| item(*place)).collect();
            (at!(spec.arresters), format!("[{}]", items.join(", ")))
        }
        (many, [only]) => (spec.place().below(&"arresters[i]", &[many]), item(*only)),
        // One at neither end is none that protects: to put in two in one go, the list is written anew by hand.
        _ => return None,
    };
    let places: Vec<&str> = wanted.iter().map(|wanted| place(*wanted)).collect();
    let added = wanted.iter().fold(Added::default(), |sum, _| sum.and(Added::more(model.cost.as_ref())));
    let piece = Piece {
        what: called("arrester", run),
        end: Some(end),
        from: "none".into(),
        to: format!("`{}` {}", model.id, places.join(" and ")),
        edits: vec![(spot.into(), text)],
        scale: None,
        away: 0.0,
        added,
    };
    Some(Change::of(Lever::Arrester, vec![piece]))
}

fn place(place: RunPlace) -> &'static str {
    match place {
        RunPlace::Radio => "at the radio",
        RunPlace::Entry => "at the entry",
        RunPlace::FarEnd => "at the far end",
    }
}

const fn word(place: RunPlace) -> &'static str {
    match place {
        RunPlace::Radio => "radio",
        RunPlace::Entry => "entry",
        RunPlace::FarEnd => "far-end",
    }
}
