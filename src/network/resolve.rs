//! Following references: a hop and everything it names.

use rayon::prelude::*;

use crate::at;
use crate::finding::faults::{DANGLING, NOT_EVALUATED};
use crate::finding::{Findings, Spot};
use crate::place::{DocumentId, Place};
use crate::spec::{
    Antenna, Arrester, Both, Bracket, Cable, EarthPoint, End, EndName, Half, Hop, Id, Network, Port, PowerPoint, Radio,
    Record, Ref, Run, Site, Supply, Support, Way,
};
use crate::text::nearest::nearest;

use super::library::{Document, Library, Look, Part, Shelved};
use super::profile_file::ProfileFile;
use super::records;

/// A hop whose references all lead somewhere.
#[derive(Debug)]
pub struct ResolvedHop<'n> {
    /// The hop's own document.
    pub hop: &'n Document<Hop>,
    /// The network it belongs to.
    pub network: &'n Document<Network>,
    /// Its ends.
    pub ends: Both<ResolvedEnd<'n>>,
    /// The profile it has in a file; where the trouble is shown if that cannot be used.
    pub profile_file: Option<&'n Result<ProfileFile, Spot>>,
    /// What came back from its ends, by end and day, the newest last.
    pub records: Vec<&'n Document<Record>>,
    /// The source mark its records are held against, where it has any: see [`super::mark`].
    pub mark: Option<String>,
}

impl ResolvedHop<'_> {
    /// Where the frequency of a way is written.
    #[must_use]
    pub fn frequency_at(&self, way: Way) -> Place {
        let hop = self.hop;
        match way {
            Way::AToB => at!(hop.channel.a_to_b),
            Way::BToA => at!(hop.channel.b_to_a),
        }
    }
}

/// One end and everything mounted there.
#[derive(Debug)]
pub struct ResolvedEnd<'n> {
    /// Which end it is.
    pub name: EndName,
    /// What the hop says of this end.
    pub end: Part<'n, End>,
    /// Its site.
    pub site: &'n Document<Site>,
    /// What it is mounted on.
    pub support: Part<'n, Support>,
    /// Its radio.
    pub radio: &'n Document<Radio>,
    /// The half of the radio that is used.
    pub half: Part<'n, Half>,
    /// Its antenna.
    pub antenna: &'n Document<Antenna>,
    /// Its bracket.
    pub bracket: &'n Document<Bracket>,
    /// Its cable runs.
    pub runs: Vec<ResolvedRun<'n>>,
    /// The earth point its grounding bonds to, if one is named.
    pub earth: Option<Part<'n, EarthPoint>>,
}

/// One cable run and everything in it.
#[derive(Debug)]
pub struct ResolvedRun<'n> {
    /// What the hop says of this run.
    pub run: Part<'n, Run>,
    /// The port it ends at.
    pub port: Part<'n, Port>,
    /// Its cable.
    pub cable: &'n Document<Cable>,
    /// What feeds it.
    pub supply: Option<&'n Document<Supply>>,
    /// Its arresters, in the order of the spec.
    pub arresters: Vec<&'n Document<Arrester>>,
    /// Where its supply stands, if that is named.
    pub power_point: Option<Part<'n, PowerPoint>>,
    /// The earth point where the outdoor cable ends, if it is named.
    pub entry_earth: Option<Part<'n, EarthPoint>>,
    /// The radio it feeds, if it feeds one.
    pub feeds: Option<&'n Document<Radio>>,
}

/// Follows the references of every hop in the library.
///
/// A hop with a reference that leads nowhere is left out and its reference reported; one that depends on a broken
/// document is left out and reported once, with all the documents it waits for.
#[must_use]
pub fn resolve<'n>(library: &'n Library, findings: &mut Findings) -> Vec<ResolvedHop<'n>> {
    let Some(network) = library.networks.documents.first() else {
        wait_for_network(library, findings);
        return Vec::new();
    };
    for radio in &library.radios.documents {
        check_readout(radio, library, findings);
    }
    let each = library.hops.documents.par_iter().map(|hop| {
        let mut found = Findings::default();
        (resolve_hop(library, network, hop, &mut found), found)
    });
    let each: Vec<(Option<ResolvedHop<'n>>, Findings)> = each.collect();
    let gather = |(hop, mut found): (Option<ResolvedHop<'n>>, Findings)| {
        findings.list.append(&mut found.list);
        hop
    };
    let mut hops: Vec<ResolvedHop<'n>> = each.into_iter().filter_map(gather).collect();
    records::bring_home(library, &mut hops, findings);
    hops
}

/// Without its network no hop can be judged; the network's own findings say why.
fn wait_for_network(library: &Library, findings: &mut Findings) {
    for hop in &library.hops.documents {
        let message = "cannot be evaluated because its network document has errors";
        let finding = findings.report(&NOT_EVALUATED, at!(hop.id), message, "not judged");
        finding.hop = Some(hop.id.to_string());
        finding.help("mend the network document first");
    }
}

/// The read-out of a radio must be at one of its own ports.
fn check_readout(radio: &Document<Radio>, library: &Library, findings: &mut Findings) {
    let port = &radio.readout.port;
    let broken = library.holes.at(&at!(radio.readout)).or_else(|| library.holes.at(&at!(radio.ports))).is_some();
    if broken || radio.ports.iter().any(|known| known.id == *port) {
        return;
    }
    let known: Vec<&str> = radio.ports.iter().map(|port| &*port.id).collect();
    let message = format!("`{}` has no port `{port}`", radio.id);
    let finding = findings.report(&DANGLING, at!(radio.readout.port), message, "leads nowhere");
    finding.help(match nearest(port, known.iter().copied()) {
        Some(guess) => format!("did you mean `{guess}`?"),
        None => format!("there are: {}", shortened(&known)),
    });
}

fn resolve_hop<'n>(
    library: &'n Library,
    network: &'n Document<Network>,
    hop: &'n Document<Hop>,
    findings: &mut Findings,
) -> Option<ResolvedHop<'n>> {
    let mut follow = Follow { library, hop, waits: Vec::new(), findings };
    let ends = Both::ends(|name| follow.end(name));
    follow.report_waits();
    let profile_file = library.profiles.get(&hop.at);
    Some(ResolvedHop { hop, network, ends: ends.all(|end| end)?, profile_file, records: Vec::new(), mark: None })
}

/// Something broken that a hop waits for.
struct Wait {
    /// What it is, as a message names it.
    cause: String,
    /// The reference that leads to a broken document, or the broken value itself.
    spot: Spot,
    /// The broken document.
    shown: Option<DocumentId>,
}

/// The references of one hop.
struct Follow<'n, 'f> {
    library: &'n Library,
    hop: &'n Document<Hop>,
    /// What is broken and the hop depends on.
    waits: Vec<Wait>,
    findings: &'f mut Findings,
}

impl<'n> Follow<'n, '_> {
    fn end(&mut self, name: EndName) -> Option<ResolvedEnd<'n>> {
        let (end_at, runs_at) = match name {
            EndName::A => (&"ends.a", &"ends.a.runs[i]"),
            EndName::B => (&"ends.b", &"ends.b.runs[i]"),
        };
        let spec = &self.hop.spec.ends[name];
        let end = self.hop.part(end_at, &[], spec);
        let site = self.document(&spec.site, at!(end.site));
        let radio = self.document(&spec.radio, at!(end.radio));
        let antenna = self.document(&spec.antenna, at!(end.antenna));
        let bracket = self.document(&spec.bracket.model, at!(end.bracket.model));
        let support = site.and_then(|site| {
            let found = self.named(
                &spec.support,
                at!(end.support),
                "support",
                site.supports.iter().map(|one| &one.id),
                (&site.id, at!(site.supports)),
            )?;
            Some(site.part(&"supports[i]", &[found], &site.supports[found]))
        });
        let half = radio.and_then(|radio| self.half(end, radio));
        let earth = self.earth(spec.grounding.bonds_to.as_ref(), at!(end.grounding.bonds_to), site);
        let runs: Vec<Option<ResolvedRun<'n>>> = spec
            .runs
            .iter()
            .enumerate()
            .map(|(i, run)| {
                self.run(self.hop.part(runs_at, &[i], run), radio, site)
            })
            .collect();
        Some(ResolvedEnd {
            name,
            end,
            site: site?,
            support: support?,
            radio: radio?,
            half: half?,
            antenna: antenna?,
            bracket: bracket?,
            runs: runs.into_iter().collect::<Option<_>>()?,
            earth: earth?,
        })
    }

    /// The half of the radio that an end uses: the one it names, or the only one there is.
    fn half(&mut self, end: Part<'n, End>, radio: &'n Document<Radio>) -> Option<Part<'n, Half>> {
        if self.broken(at!(radio.halves)) {
            return None;
        }
        let found = match (&end.spec.half, radio.halves.as_slice()) {
            (None, [_]) => Some(0),
            (Some(id), halves) => self.named(
                id,
                at!(end.half),
                "half",
                halves.iter().map(|half| &half.id),
                (&radio.id, at!(radio.halves)),
            ),
            (None, halves) => {
                let ids: Vec<&str> = halves.iter().map(|half| &*half.id).collect();
                let message =
                    format!("radio `{}` has {} halves and this end does not say which", radio.id, halves.len());
                let finding = self.findings.report(&DANGLING, at!(end.radio), message, "which half of this radio?");
                finding.hop = Some(self.hop.id.to_string());
                finding.help(format!("add `half:` and one of: {}", ids.join(", ")));
                None
            }
        }?;
        Some(radio.part(&"halves[i]", &[found], &radio.halves[found]))
    }

    /// An earth point of the site; outer none if it dangles, inner none if there is nothing to follow.
    #[allow(clippy::option_option, reason = "nothing to follow is not the same as leading nowhere")]
    fn earth(
        &mut self,
        id: Option<&Id>,
        place: Place,
        site: Option<&'n Document<Site>>,
    ) -> Option<Option<Part<'n, EarthPoint>>> {
        let (Some(id), Some(site)) = (id, site) else { return Some(None) };
        let known = site.earth.iter().map(|one| &one.id);
        let found = self.named(id, place, "earth point", known, (&site.id, at!(site.earth)))?;
        Some(Some(site.part(&"earth[i]", &[found], &site.earth[found])))
    }

    /// A power point of the site, in the same way.
    #[allow(clippy::option_option, reason = "nothing to follow is not the same as leading nowhere")]
    fn power_point(
        &mut self,
        run: Part<'n, Run>,
        site: Option<&'n Document<Site>>,
    ) -> Option<Option<Part<'n, PowerPoint>>> {
        let (Some(id), Some(site)) = (&run.spec.power_point, site) else { return Some(None) };
        let known = site.power.iter().map(|one| &one.id);
        let found = self.named(id, at!(run.power_point), "power point", known, (&site.id, at!(site.power)))?;
        Some(Some(site.part(&"power[i]", &[found], &site.power[found])))
    }

    fn run(
        &mut self,
        run: Part<'n, Run>,
        radio: Option<&'n Document<Radio>>,
        site: Option<&'n Document<Site>>,
    ) -> Option<ResolvedRun<'n>> {
        let spec = run.spec;
        let port = radio.and_then(|radio| {
            let found = self.named(
                &spec.port,
                at!(run.port),
                "port",
                radio.ports.iter().map(|port| &port.id),
                (&radio.id, at!(radio.ports)),
            )?;
            Some(radio.part(&"ports[i]", &[found], &radio.ports[found]))
        });
        let cable = self.document(&spec.cable, at!(run.cable));
        let supply = match &spec.supply {
            Some(supply) => self.document(supply, at!(run.supply)).map(Some),
            None => Some(None),
        };
        let arresters: Vec<Option<&'n Document<Arrester>>> = (0..spec.arresters.len())
            .map(|i| self.document(&spec.arresters[i].model, at!(run.arresters[i].model)))
            .collect();
        let power_point = self.power_point(run, site);
        let entry_earth = self.earth(spec.entry_earth.as_ref(), at!(run.entry_earth), site);
        let feeds = match &spec.feeds.radio {
            Some(radio) => self.document(radio, at!(run.feeds.radio)).map(Some),
            None => Some(None),
        };
        Some(ResolvedRun {
            run,
            port: port?,
            cable: cable?,
            supply: supply?,
            arresters: arresters.into_iter().collect::<Option<_>>()?,
            power_point: power_point?,
            entry_earth: entry_earth?,
            feeds: feeds?,
        })
    }

    fn document<T: Shelved>(&mut self, reference: &Ref<T>, place: Place) -> Option<&'n Document<T>> {
        if self.broken(place) {
            return None;
        }
        match self.library.look(reference) {
            Look::Found(document) => return Some(document),
            Look::Broken(document) => {
                let cause = format!("{} `{reference}`", T::KIND);
                self.waits.push(Wait { cause, spot: place.into(), shown: Some(document) });
            }
            Look::Missing(guess) => {
                let known = T::shelf(self.library).ids();
                self.dangling(reference, place, T::KIND.word(), guess, &known, "the network");
            }
        }
        None
    }

    /// Whether the value at a place is broken; the hop then waits for it.
    fn broken(&mut self, place: Place) -> bool {
        let Some((cause, spot)) = self.library.holes.at(&place) else { return false };
        self.waits.push(Wait { cause: cause.to_string(), spot, shown: None });
        true
    }

    /// The number of the thing called `id` among its siblings.
    fn named(
        &mut self,
        id: &Id,
        place: Place,
        what: &str,
        siblings: impl Iterator<Item = &'n Id>,
        owner: (&Id, Place),
    ) -> Option<usize> {
        let (owner, list) = owner;
        if self.broken(place) || self.broken(list) {
            return None;
        }
        let known: Vec<&str> = siblings.map(|sibling| &**sibling).collect();
        let found = known.iter().position(|sibling| *sibling == &**id);
        if found.is_none() {
            let guess = nearest(id, known.iter().copied());
            self.dangling(id, place, what, guess, &known, &format!("`{owner}`"));
        }
        found
    }

    fn dangling(&mut self, id: &Id, place: Place, what: &str, guess: Option<&str>, known: &[&str], owner: &str) {
        let message = format!("{owner} has no {what} `{id}`");
        let finding = self.findings.report(&DANGLING, place, message, "leads nowhere");
        finding.hop = Some(self.hop.id.to_string());
        finding.help(match guess {
            Some(guess) => format!("did you mean `{guess}`? The hop is not judged until this leads somewhere"),
            None if known.is_empty() => format!("there is no {what} at all; add one"),
            None => format!("there are: {}", shortened(known)),
        });
    }

    fn report_waits(&mut self) {
        let Some(first) = self.waits.first() else { return };
        let mut causes: Vec<&str> = Vec::new();
        for wait in &self.waits {
            if !causes.contains(&wait.cause.as_str()) {
                causes.push(&wait.cause);
            }
        }
        let hop = self.hop;
        let message = format!("cannot be evaluated because of errors in {}", causes.join(", "));
        let finding = self.findings.report(&NOT_EVALUATED, at!(hop.id), message, "not judged");
        finding.hop = Some(hop.id.to_string());
        finding.because(first.spot.clone(), "waits for this");
        let mut shown = Vec::new();
        for wait in &self.waits {
            let Some(document) = wait.shown.filter(|document| !shown.contains(document)) else { continue };
            shown.push(document);
            finding.because(Place::document(document).below(&"id", &[]), format!("{} is here", wait.cause));
        }
        finding.help("mend that first; the hop is judged then");
    }
}

/// The first few of many.
pub(super) fn shortened(known: &[&str]) -> String {
    const MOST: usize = 8;
    match known.get(..MOST) {
        Some(first) if known.len() > MOST => format!("{}, and {} more", first.join(", "), known.len() - MOST),
        _ => known.join(", "),
    }
}
