//! What a hop is made of that its network does not describe itself: where it comes from, and how sure its figures are.

use std::collections::HashSet;

use super::key::SectionKey;
use super::line::{AS_WRITTEN, Section, lines};
use super::reason::Reason;
use super::saying::Saying;
use super::sentence::Term;
use super::title::Title;
use super::traced::{Traced, see};
use crate::network::{Document, Elsewhere, Origin, ResolvedEnd, ResolvedHop};
use crate::place::{DocumentId, Place};
use crate::spec::{Id, Source, Spec};

lines! {
    /// A document that is not the network's own.
    ElsewhereLines {
        origin: Saying, "", "where it comes from", AS_WRITTEN;
        basis: Saying, "", "what its figures rest on", AS_WRITTEN;
    }
}

/// A document that is not the network's own.
#[derive(Debug)]
pub struct ElsewhereSheet {
    /// Which, and where it is from.
    pub document: Elsewhere,
    /// Its lines.
    pub lines: ElsewhereLines,
}

impl ElsewhereSheet {
    pub(super) fn section(&self) -> Section {
        let Elsewhere { kind, id, .. } = &self.document;
        let key = SectionKey::Elsewhere(kind.word(), id.to_string());
        self.lines.section(key, Title::Elsewhere { kind: Term(kind.word()), id: id.to_string().into() }).planned()
    }
}

/// Those of a hop, in the order they are met, each once.
pub(super) fn of(resolved: &ResolvedHop<'_>) -> Vec<ElsewhereSheet> {
    if resolved.elsewhere.is_empty() {
        return Vec::new();
    }
    let mut list = List { resolved, met: HashSet::new(), found: Vec::new() };
    resolved.ends.iter().for_each(|end| list.end(end));
    list.givers();
    list.found
}

struct List<'r> {
    resolved: &'r ResolvedHop<'r>,
    met: HashSet<DocumentId>,
    found: Vec<ElsewhereSheet>,
}

impl List<'_> {
    fn end(&mut self, own: &ResolvedEnd<'_>) {
        let (end, site, radio, antenna, bracket) = (own.end, own.site, own.radio, own.antenna, own.bracket);
        self.add(site, &see!(site.id).decided_by(&see!(end.site)), None);
        self.add(radio, &see!(radio.id).decided_by(&see!(end.radio)), None);
        self.add(antenna, &see!(antenna.id).decided_by(&see!(end.antenna)), None);
        self.add(bracket, &see!(bracket.id).decided_by(&see!(end.bracket.model)), None);
        if let Some(feeder) = own.feeder {
            self.add(feeder, &see!(feeder.id).decided_by(&see!(end.feeder)), None);
        }
        for resolved in &own.runs {
            let (run, cable) = (resolved.run, resolved.cable);
            self.add(cable, &see!(cable.id).decided_by(&see!(run.cable)), Some(see!(cable.sources)));
            if let Some(supply) = resolved.supply {
                self.add(supply, &see!(supply.id).decided_by(&see!(run.supply)), Some(see!(supply.sources)));
            }
            for &arrester in &resolved.arresters {
                self.add(arrester, &see!(arrester.id).decided_by(&see!(run.arresters)), None);
            }
            if let Some(radio) = resolved.feeds {
                self.add(radio, &see!(radio.id).decided_by(&see!(run.feeds)), None);
            }
        }
        self.fibres(own);
    }

    fn fibres(&mut self, own: &ResolvedEnd<'_>) {
        for resolved in &own.fibre_runs {
            let (run, fibre) = (resolved.run, resolved.fibre);
            self.add(fibre, &see!(fibre.id).decided_by(&see!(run.fibre)), Some(see!(fibre.sources)));
        }
    }

    /// The templates that values are taken from.
    fn givers(&mut self) {
        let givers = self.resolved.hop.inherits.iter().flat_map(|inherits| inherits.documents());
        for document in givers.collect::<Vec<DocumentId>>() {
            let Some(elsewhere) = self.resolved.elsewhere.get(&document) else { continue };
            let id = Traced::at(&elsewhere.id, Place::document(document).below(&"id", &[]));
            self.add_at(document, &id, None);
        }
    }

    fn add<T: Spec>(&mut self, document: &Document<T>, id: &Traced<&Id>, sources: Option<Traced<&Vec<Source>>>) {
        self.add_at(document.at, id, sources);
    }

    fn add_at(&mut self, document: DocumentId, id: &Traced<&Id>, sources: Option<Traced<&Vec<Source>>>) {
        let Some(elsewhere) = self.resolved.elsewhere.get(&document).filter(|_| self.met.insert(document)) else {
            return;
        };
        let sources = sources.map_or_else(|| id.map(|_| Vec::new()), |sources| sources.map(|list| basis(list)));
        let sources = sources.decided_by(id);
        let basis = sources.map(|said| (!said.is_empty()).then(|| Saying::list(said.into_iter())));
        let lines = ElsewhereLines {
            origin: id.map(|_| said(&elsewhere.origin)).line(),
            basis: basis.stated(Reason::NoBasis).line(),
        };
        self.found.push(ElsewhereSheet { document: elsewhere.clone(), lines });
    }
}

/// Where a document comes from.
fn said(origin: &Origin) -> Saying {
    match origin {
        Origin::Standard => Saying::StandardPart,
        Origin::Shared(name) => Saying::SharedLibrary { name: name.as_str().into() },
    }
}

/// What figures rest on, and how surely.
fn basis(sources: &[Source]) -> Vec<Saying> {
    let said = |source: &Source| match source.of.as_slice() {
        [] => Saying::basis(&source.text, source.sure),
        keys => {
            let keys: Vec<&str> = keys.iter().map(|key| &**key).collect();
            Saying::basis_of(&keys.join(", "), &source.text, source.sure)
        }
    };
    sources.iter().map(said).collect()
}
