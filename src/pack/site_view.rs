//! The pack of one visit as data: the site once, what stands on each support, then the install pack of each end.

use std::collections::HashSet;

use serde::Serialize;

use super::bill::Bill;
use super::cautions::{self, Caution};
use super::company;
use super::figures::{self, Carrier, Figure, Stand};
use super::install::{self, Install};
use super::phrases::reach;
use super::words::{Fact, Table, text_or};
use crate::sheet::{EndSheet, HopSheet, KeepClear, SharedSupply};
use crate::spec::EndName;
use crate::voice::{Open, Voice, shown};

/// Antennas that one drawing of a support shows.
const IN_ONE_DRAWING: usize = 10;

/// All pages, as the templates take them.
#[derive(Debug, Serialize)]
pub(super) struct SiteView {
    site: String,
    jobs: Vec<String>,
    position: Vec<Fact>,
    place: Option<Figure>,
    hazards: Vec<String>,
    near: Vec<String>,
    permits: Vec<String>,
    access: String,
    contacts: Table,
    supplies: Vec<Fact>,
    cautions: Vec<Caution>,
    supports: Vec<SupportView>,
    climb_call: String,
    shared: Vec<String>,
    materials: Table,
    ends: Vec<EndView>,
}

/// A support.
#[derive(Debug, Serialize)]
struct SupportView {
    title: String,
    figures: Vec<Figure>,
    table: Table,
}

/// The tasks of an end, and what its pages are headed.
#[derive(Debug, Serialize)]
struct EndView {
    title: String,
    about: String,
    here: String,
    there: String,
    install: Install,
}

/// A support that is filled end by end.
#[derive(Debug)]
struct Filling {
    id: String,
    title: String,
    carrier: Carrier,
    stands: Vec<(Stand, [String; 5])>,
}

/// A view that is made end by end.
#[derive(Debug)]
pub(super) struct Gathered {
    voice: Voice,
    view: Option<SiteView>,
    supports: Vec<Filling>,
    materials: Bill,
    /// Earth points that were spoken of.
    earths: Vec<String>,
    /// Supports whose own access and hazards were.
    told: HashSet<String>,
}

impl Gathered {
    pub(super) fn new(voice: Voice) -> Self {
        Self {
            voice,
            view: None,
            supports: Vec::new(),
            materials: Bill::default(),
            earths: Vec::new(),
            told: HashSet::new(),
        }
    }

    /// Adds an end; the first one brings the site.
    pub(super) fn add(&mut self, sheet: &HopSheet<'_>, which: EndName) {
        let (voice, end) = (self.voice, &sheet.ends[which]);
        self.materials.end(end, voice);
        self.stand(sheet, end);
        let view = self.view.get_or_insert_with(|| card(end, voice));
        let support = end.resolved.support.spec;
        if !self.told.contains(&*support.id.0) {
            self.told.insert(support.id.to_string());
            view.hazards.extend(support.hazards.iter().map(|hazard| format!("{}: {hazard}", support.id)));
            if let Some(access) = &support.access {
                view.access = format!("{}\n\n{}: {access}", view.access, support.id);
            }
        }
        let (hop, far) = (&sheet.resolved.hop.id, &end.far.site.title);
        view.jobs.push(voice.with("site-job", &[("hop", hop), ("end", &which), ("far", far)]));
        let shared = end.shared.iter().filter(|shared| shared.told_here);
        view.shared.extend(shared.map(|shared| supply(end, shared, voice)));
        // Said at the first of them.
        let point = end.resolved.earth.filter(|point| !self.earths.contains(&point.id.to_string()));
        if let (Some(point), Ok(others)) = (point, end.ground.shared_earth.value()) {
            self.earths.push(point.id.to_string());
            let point = shown(&point.title);
            let open: [Open<'_>; 4] =
                [("hop", hop), ("end", &which), ("point", &point), ("others", &voice.spoken(others))];
            view.shared.push(voice.with("site-earth-shared", &open));
        }
        let title = sheet.resolved.hop.title.as_ref().map_or_else(|| hop.to_string(), ToString::to_string);
        let at = |end: EndName, site: &dyn std::fmt::Display| voice.with("end-at", &[("end", &end), ("site", site)]);
        view.ends.push(EndView {
            title: voice.with("hop-end", &[("hop", hop), ("end", &which)]),
            about: title,
            here: at(which, &end.resolved.site.title),
            there: at(which.far(), far),
            install: Install::of(sheet, which, voice),
        });
    }

    /// Puts the antenna of an end on its support.
    fn stand(&mut self, sheet: &HopSheet<'_>, end: &EndSheet<'_>) {
        let (voice, own) = (self.voice, end.resolved);
        let (Some(diameter), Some(bearing)) = (end.diameter, end.lines.true_bearing.get()) else { return };
        let keep = end.people.workers_distance.get().map(|KeepClear(reach)| reach).filter(|reach| reach.0 > 0.0);
        let hop = sheet.resolved.hop.id.to_string();
        let stand = Stand { hop, end: end.name, height: own.end.height.clone(), diameter, bearing, keep };
        let row = [
            voice.with("hop-end", &[("hop", &stand.hop), ("end", &end.name)]),
            voice.given_in_both(&own.end.height),
            voice.line(&end.lines.true_bearing),
            reach(&end.people.workers_distance, voice),
            reach(&end.people.public_distance, voice),
        ];
        let support = own.support;
        let known = self.supports.iter_mut().find(|filling| *filling.id == *support.id.0);
        match known {
            Some(filling) => filling.stands.push((stand, row)),
            None => self.supports.push(Filling {
                id: support.id.to_string(),
                title: format!("{} ({})", support.id, voice.term(support.kind.word())),
                carrier: Carrier {
                    title: support.id.to_string(),
                    base: support.base_height.clone(),
                    length: support.free_length.value,
                    outside: support.outside_diameter.value,
                },
                stands: vec![(stand, row)],
            }),
        }
    }

    /// All of it; none of a site without an end.
    pub(super) fn finish(self) -> Option<SiteView> {
        let voice = self.voice;
        let supports = self.supports.into_iter().map(|filling| filling.view(voice)).collect();
        let materials = self.materials.table(voice);
        self.view.map(|view| SiteView { supports, materials, ..view })
    }
}

impl Filling {
    fn view(mut self, voice: Voice) -> SupportView {
        // From the foot up.
        self.stands.sort_by(|(one, _), (other, _)| one.height.value.0.total_cmp(&other.height.value.0));
        let mut table =
            Table::new(voice, ["climb-antenna", "climb-height", "climb-points", "climb-workers", "climb-public"]);
        let (stands, rows): (Vec<Stand>, Vec<[String; 5]>) = self.stands.into_iter().unzip();
        for row in rows {
            table.row(row);
        }
        let figures = stands.chunks(IN_ONE_DRAWING);
        let figures = figures.filter_map(|stands| figures::elevation(&self.carrier, stands, voice)).collect();
        SupportView { title: voice.with("site-support", &[("support", &self.title)]), figures, table }
    }
}

/// What is said of the site, by one of its ends.
fn card(end: &EndSheet<'_>, voice: Voice) -> SiteView {
    let own = end.resolved;
    let site = own.site;
    SiteView {
        site: site.title.to_string(),
        jobs: Vec::new(),
        position: install::position(own, voice),
        place: figures::place(end, voice),
        hazards: site.hazards.iter().map(ToString::to_string).collect(),
        near: install::near(own, voice),
        permits: site.permits.iter().map(ToString::to_string).collect(),
        access: text_or(site.access.as_ref(), voice.say("not-assessed-ask")),
        contacts: install::contacts(own, voice),
        supplies: install::supplies(own, voice),
        cautions: cautions::general(voice),
        supports: Vec::new(),
        climb_call: company::whom_to_call(own, voice),
        shared: Vec::new(),
        materials: Table::default(),
        ends: Vec::new(),
    }
}

/// A supply that several runs hang on, in a sentence.
fn supply(end: &EndSheet<'_>, shared: &SharedSupply<'_>, voice: Voice) -> String {
    let run = &end.resolved.runs[shared.run];
    let unit = text_or(run.run.supply_unit.as_ref(), voice.say("nothing"));
    let title = text_or(run.supply.map(|supply| &supply.title), voice.say("nothing"));
    let feeds = shared.lines.feeds.value().map_or_else(|_| voice.say("nothing"), |feeds| voice.spoken(feeds));
    let open: [Open<'_>; 5] = [
        ("unit", &unit),
        ("supply", &title),
        ("runs", &feeds),
        ("drawn", &voice.line(&shared.lines.drawn)),
        ("total", &voice.line(&shared.lines.total)),
    ];
    voice.with("site-supply-shared", &open)
}
