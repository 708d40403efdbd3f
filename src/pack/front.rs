//! What every page of a pack carries: whose it is, what it is, which revision, and whether anybody may build from it.

use serde::Serialize;

use super::aside::Aside;
use super::attach::{self, Attachment};
use super::kind::Pack;
use super::names::PackNames;
use crate::sheet::HopSheet;
use crate::spec::{Both, Date, EndName, Network, Paper};
use crate::voice::Voice;

/// Whose a pack is, and of which revision.
#[derive(Debug)]
pub(super) struct Imprint {
    network: String,
    network_title: String,
    owner: String,
    date: Date,
    revision: Option<String>,
    creator: Option<String>,
    approver: Option<String>,
    paper: Paper,
    pub voice: Voice,
}

/// The names a hop's packs are known by.
#[derive(Debug)]
pub(super) struct Naming {
    imprint: Imprint,
    pub names: PackNames,
    hop_title: String,
    titles: Both<String>,
    pub voice: Voice,
}

/// What one pack has of its own on every page.
pub(super) struct Heading<'a> {
    /// The key of what it is.
    pub kind: &'static str,
    /// Title of the document.
    pub title: String,
    /// What it is about.
    pub about: String,
    pub here: Option<String>,
    pub there: Option<String>,
    /// Its number within the network.
    pub stem: String,
    /// The key of what errors keep from being done.
    pub because: &'static str,
    /// How many are open.
    pub errors: usize,
    /// Whether a draft was asked for.
    pub asked: bool,
    pub aside: Aside,
    pub attached: &'a [Attachment],
}

/// The furniture of one pack.
#[derive(Debug, Serialize)]
pub(super) struct Front {
    kind: String,
    title: String,
    language: &'static str,
    network: String,
    owner: String,
    hop_title: String,
    /// `End a: Ridge` and what it looks at; only for an install pack.
    here: Option<String>,
    there: Option<String>,
    number: String,
    revision: String,
    /// `Revision B`, for the foot.
    revision_line: String,
    /// `Page {page} of {pages}`: only the pages know their numbers.
    page: String,
    date: String,
    year: u16,
    month: u8,
    day: u8,
    creator: String,
    approver: String,
    draft: bool,
    /// Why it is a draft.
    status: String,
    /// What did not count: rules that are off, findings that are waived.
    aside: Vec<String>,
    /// What was not judged for want of an input.
    unassessed: Vec<String>,
    /// In which language that is, where it is not that of the pack.
    unassessed_spoken: Option<String>,
    mark: String,
    paper: &'static str,
}

impl Imprint {
    pub(super) fn of(network: &Network, voice: Voice) -> Self {
        let said = |text: &Option<crate::spec::Text>| text.as_ref().map(ToString::to_string);
        Self {
            network: network.id.to_string(),
            network_title: network.title.to_string(),
            owner: network.owner.to_string(),
            date: network.date,
            revision: said(&network.revision),
            creator: said(&network.creator),
            approver: said(&network.approver),
            paper: network.print.paper.unwrap_or_default(),
            voice,
        }
    }

    pub(super) fn front(&self, heading: Heading<'_>) -> Front {
        let voice = self.voice;
        let or_not_set = |value: &Option<String>| value.clone().unwrap_or_else(|| voice.say("not-set"));
        let mut reasons = Vec::new();
        if heading.errors > 0 {
            reasons.push(voice.count(heading.because, heading.errors));
        }
        if self.approver.is_none() {
            reasons.push(voice.say("nobody-approved"));
        }
        if reasons.is_empty() && heading.asked {
            reasons.push(voice.say("draft-on-request"));
        }
        let draft = !reasons.is_empty();
        Front {
            kind: voice.say(heading.kind),
            title: heading.title,
            language: voice.language().code(),
            network: self.network_title.clone(),
            owner: self.owner.clone(),
            hop_title: heading.about,
            here: heading.here,
            there: heading.there,
            number: format!("{}/{}", self.network, heading.stem),
            revision: or_not_set(&self.revision),
            revision_line: voice.with("foot-revision", &[("revision", &or_not_set(&self.revision))]),
            page: voice.with("foot-page", &[("page", &"{page}"), ("pages", &"{pages}")]),
            date: self.date.to_string(),
            year: self.date.year,
            month: self.date.month,
            day: self.date.day,
            creator: or_not_set(&self.creator),
            approver: or_not_set(&self.approver),
            draft,
            status: voice.with("draft-because", &[("reasons", &reasons.join("; "))]),
            aside: heading.aside.sentences,
            unassessed: heading.aside.unassessed,
            unassessed_spoken: voice.of_findings(),
            mark: voice.with("foot-mark", &[("mark", &attach::mark(heading.attached))]),
            paper: match self.paper {
                Paper::A4 => "a4",
                Paper::Letter => "us-letter",
            },
        }
    }
}

impl Naming {
    pub(super) fn of(sheet: &HopSheet<'_>, voice: Voice) -> Self {
        let hop = sheet.resolved.hop;
        Self {
            imprint: Imprint::of(sheet.resolved.network, voice),
            names: PackNames::of(sheet.resolved),
            hop_title: hop.title.as_ref().map_or_else(|| hop.id.to_string(), ToString::to_string),
            titles: sheet.resolved.ends.each_ref().map(|end| end.site.title.to_string()),
            voice,
        }
    }

    pub(super) fn front(&self, pack: Pack, errors: usize, asked: bool, aside: Aside, attached: &[Attachment]) -> Front {
        let voice = self.voice;
        let (kind, title) = match pack {
            Pack::Design => ("pack-design", "title-design"),
            Pack::Licence => ("pack-licence", "title-licence"),
            Pack::Install(_) => ("pack-install", "title-install"),
            Pack::Acceptance(_) => ("pack-acceptance", "title-acceptance"),
        };
        let end = match pack {
            Pack::Design | Pack::Licence => None,
            Pack::Install(end) | Pack::Acceptance(end) => Some(end),
        };
        let at = |end: EndName| voice.with("end-at", &[("end", &end), ("site", &self.titles[end])]);
        let far = end.map(EndName::far);
        let letter = end.map_or("", EndName::letter);
        self.imprint.front(Heading {
            kind,
            title: voice.with(title, &[("hop", &self.hop_title), ("end", &letter)]),
            about: self.hop_title.clone(),
            here: end.map(at),
            there: far.map(at),
            stem: self.names.stem(pack),
            because: if matches!(pack, Pack::Acceptance(_)) { "errors-not-accepted" } else { "errors-not-built" },
            errors,
            asked,
            aside,
            attached,
        })
    }
}
