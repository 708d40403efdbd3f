//! The pack of a whole network: where its hops are and how they stand, on which channels they send, what they carry together,
//! what is open, what is bought and who goes where.
//!
//! Of every hop rows are kept, never its sheet: a network of any size takes the memory of its pages.

mod extract;
mod map;
mod open;
mod services;
mod tightest;
mod trips;

use serde::Serialize;

use super::aside::Aside;
use super::bill::Bill;
use super::figures::Figure;
use super::front::{Heading, Imprint};
use super::outline::is_open_error;
use super::waivers;
use super::words::Table;
use crate::finding::Finding;
use crate::listing::Places;
use crate::network::{Document, Library};
use crate::place::FileId;
use crate::sheet::ServiceSheet;
use crate::spec::Network;
use crate::verdict::{Evaluation, SetAside};
use crate::voice::{Voice, shown};

pub use extract::HopExtract;

use map::{MapHop, MapSite, Standing};
use open::Group;
use trips::Trip;

/// What is gathered of a network while its hops are judged.
#[derive(Debug)]
pub struct Gathered {
    voice: Voice,
    hops: Vec<HopExtract>,
    services: Table,
}

impl Gathered {
    /// Nothing yet.
    #[must_use]
    pub fn new(voice: Voice) -> Self {
        Self { voice, hops: Vec::new(), services: services::head(voice) }
    }

    /// Adds a hop.
    pub fn hop(&mut self, hop: HopExtract) {
        self.hops.push(hop);
    }

    /// Adds a service.
    pub fn service(&mut self, sheet: &ServiceSheet<'_>) {
        let row = services::row(sheet, self.voice);
        self.services.row(row);
    }
}

/// The pack of a network, free of what it was made from but for the places of its findings.
#[derive(Debug)]
pub struct NetworkPack {
    pub(super) imprint: Imprint,
    pub(super) stem: String,
    title: String,
    voice: Voice,
    hops: Vec<HopExtract>,
    services: Table,
    lost: Vec<String>,
    trips: Vec<Trip>,
    pub(super) findings: Vec<Finding>,
    pub(super) waived: Vec<Finding>,
    aside: SetAside,
    known: Option<(String, usize)>,
    pub(super) network: FileId,
}

/// The head of the frequency plan.
const PLAN: [&str; 10] = [
    "site",
    "end",
    "plan-half",
    "sends-on",
    "hears-on",
    "bandwidth",
    "plan-polarisation",
    "power",
    "over-noise",
    "threshold-loss",
];

/// The pages as data.
#[derive(Debug, Serialize)]
pub(super) struct Pages {
    verdict: String,
    map: Option<Figure>,
    /// Sites that found no room for their name on the map.
    sites: Table,
    /// How many found no room for a number either, if any.
    bare: Option<String>,
    hops: Table,
    /// Hops that could not be evaluated at all.
    lost: Option<String>,
    plan: Table,
    /// Who disturbs whom.
    heard: Table,
    services: Table,
    findings: Vec<Group>,
    known: Option<String>,
    bill: Table,
    trips: Vec<Trip>,
    program: String,
}

impl NetworkPack {
    /// That of a network, by what its hops gave and what came of judging it; `baseline` is what a baseline was read from.
    #[must_use]
    pub fn of<R>(
        library: &Library,
        network: &Document<Network>,
        gathered: Gathered,
        evaluation: &Evaluation<R>,
        baseline: Option<&str>,
    ) -> Self {
        let Gathered { voice, mut hops, services } = gathered;
        hops.sort_by(|one, other| one.id.cmp(&other.id));
        let known = |id: &String| hops.binary_search_by(|hop| hop.id.cmp(id)).is_ok();
        let lost = evaluation.hop_ids.iter().map(|[_, hop]| hop.clone()).filter(|id| !known(id)).collect();
        Self {
            imprint: Imprint::of(network, voice),
            stem: format!("{}-network", network.id),
            title: network.title.to_string(),
            trips: trips::of(library, &hops, voice),
            voice,
            hops,
            services,
            lost,
            findings: evaluation.findings.clone(),
            waived: evaluation.waived.clone(),
            aside: SetAside::of(evaluation),
            known: baseline.map(|path| (path.to_owned(), evaluation.baselined.len())),
            network: network.at.file,
        }
    }

    /// The name of its file.
    #[must_use]
    pub fn file_name(&self) -> String {
        format!("{}.pdf", self.stem)
    }

    /// Errors that are open: it is set in type only as a draft while there are any.
    #[must_use]
    pub fn errors(&self) -> usize {
        self.findings.iter().filter(|finding| is_open_error(finding)).count()
    }

    pub(super) fn heading<'a>(&self, asked: bool, attached: &'a [super::attach::Attachment]) -> Heading<'a> {
        Heading {
            kind: "pack-network",
            title: self.voice.with("title-network", &[("network", &self.title)]),
            about: self.title.clone(),
            here: None,
            there: None,
            stem: self.stem.clone(),
            because: "errors-not-built",
            errors: self.errors(),
            asked,
            aside: Aside::of_network(&self.aside, self.voice),
            attached,
        }
    }

    pub(super) const fn voice(&self) -> Voice {
        self.voice
    }

    /// The departures that were accepted.
    pub(super) fn waivers(&self) -> Table {
        waivers::table(&self.waived.iter().collect::<Vec<_>>(), self.voice)
    }

    pub(super) fn pages(&self, places: &Places<'_>) -> Pages {
        let voice = self.voice;
        let (sites, lines) = self.on_map();
        let drawn = map::map(&self.title, &sites, &lines, voice);
        let mut without = Table::new(voice, ["map-number", "site"]);
        let (map, key, bare) = drawn.map_or((None, Vec::new(), 0), |drawn| (Some(drawn.figure), drawn.key, drawn.bare));
        for row in key {
            without.row(row);
        }
        let mut hops =
            Table::new(voice, ["hop", "between", "length", "availability", "closest-to-limit", "open", "state"]);
        let mut plan = Table::new(voice, PLAN);
        let mut heard = Table::new(voice, ["receiver", "hears-from", "heard-level", "over-noise", "takes-alone"]);
        let mut bill = Bill::default();
        for hop in &self.hops {
            hops.row(hop.row.clone().map(|cell| shown(&cell)));
            hop.plan.iter().for_each(|row| plan.row(row.clone()));
            hop.heard.iter().for_each(|row| heard.row(row.clone()));
            bill.add(&hop.bill);
        }
        plan.rows.sort();
        Pages {
            verdict: self.verdict(),
            map,
            sites: without,
            bare: (bare > 0).then(|| voice.count("map-bare", bare)),
            hops,
            lost: (!self.lost.is_empty()).then(|| voice.with("hops-lost", &[("hops", &self.lost.join(", "))])),
            plan,
            heard,
            services: self.services.clone(),
            findings: open::groups(&self.findings, places, voice),
            known: self.known.as_ref().map(|(path, number)| {
                voice.with("known-by-baseline", &[("file", path), ("count", &voice.count("findings-known", *number))])
            }),
            bill: bill.table(voice),
            trips: self.trips.clone(),
            program: voice
                .with("network-computed-by", &[("program", &concat!("hopwright ", env!("CARGO_PKG_VERSION")))]),
        }
    }

    /// How many hops stand how, in a line.
    fn verdict(&self) -> String {
        let voice = self.voice;
        let mut words = vec![voice.count("network-hops", self.hops.len() + self.lost.len())];
        for standing in Standing::ALL {
            let lost = if standing == Standing::NotJudged { self.lost.len() } else { 0 };
            let many = lost + self.hops.iter().filter(|hop| hop.standing == standing).count();
            if many > 0 {
                words.push(format!("{many} {}", voice.say(standing.key())));
            }
        }
        words.join(", ")
    }

    /// Sites that hops stand at, each once, and the lines between them.
    fn on_map(&self) -> (Vec<MapSite>, Vec<MapHop>) {
        let mut numbers = std::collections::HashMap::new();
        let mut sites: Vec<MapSite> = Vec::new();
        let mut number = |site: &MapSite| {
            *numbers.entry(site.id.clone()).or_insert_with(|| {
                sites.push(site.clone());
                sites.len() - 1
            })
        };
        let mut hops = Vec::with_capacity(self.hops.len());
        for hop in &self.hops {
            let ends = [number(&hop.sites.a), number(&hop.sites.b)];
            hops.push(MapHop { id: hop.id.clone(), ends, standing: hop.standing });
        }
        (sites, hops)
    }
}
