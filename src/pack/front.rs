//! What every page of a pack carries: whose it is, what it is, which revision, and whether anybody may build from it.

use serde::Serialize;

use super::attach::{self, Attachment};
use super::words::count;
use super::{End, Pack};
use crate::network::ResolvedEnd;
use crate::sheet::HopSheet;
use crate::spec::{Date, Paper};

const NOT_SET: &str = "NOT SET";

/// The names a hop's packs are known by.
#[derive(Debug)]
pub(super) struct Naming {
    network: String,
    network_title: String,
    owner: String,
    pub hop: String,
    hop_title: String,
    date: Date,
    revision: Option<String>,
    creator: Option<String>,
    approver: Option<String>,
    paper: Paper,
    ends: [Place; 2],
}

/// The site of an end.
#[derive(Debug)]
pub(super) struct Place {
    pub site: String,
    title: String,
}

/// The furniture of one pack.
#[derive(Debug, Serialize)]
pub(super) struct Front {
    kind: &'static str,
    title: String,
    network: String,
    owner: String,
    hop: String,
    hop_title: String,
    /// `End a: Ridge` and what it looks at; only for an install pack.
    here: Option<String>,
    there: Option<String>,
    number: String,
    revision: String,
    date: String,
    year: u16,
    month: u8,
    day: u8,
    creator: String,
    approver: String,
    draft: bool,
    status: String,
    mark: String,
    paper: &'static str,
}

impl Naming {
    pub(super) fn of(sheet: &HopSheet<'_>) -> Self {
        let (hop, network) = (sheet.resolved.hop, sheet.resolved.network);
        let place = |end: &ResolvedEnd<'_>| Place { site: end.site.id.to_string(), title: end.site.title.to_string() };
        let said = |text: &Option<crate::spec::Text>| text.as_ref().map(ToString::to_string);
        Self {
            network: network.id.to_string(),
            network_title: network.title.to_string(),
            owner: network.owner.to_string(),
            hop: hop.id.to_string(),
            hop_title: said(&hop.title).unwrap_or_else(|| hop.id.to_string()),
            date: network.date,
            revision: said(&network.revision),
            creator: said(&network.creator),
            approver: said(&network.approver),
            paper: network.print.paper.unwrap_or_default(),
            ends: [place(&sheet.resolved.a), place(&sheet.resolved.b)],
        }
    }

    pub(super) fn end(&self, end: End) -> &Place {
        let [a, b] = &self.ends;
        match end {
            End::A => a,
            End::B => b,
        }
    }

    pub(super) fn stem(&self, pack: Pack) -> String {
        match pack {
            Pack::Design => format!("{}-design", self.hop),
            Pack::Install(end) => format!("{}-{}-{}-install", self.hop, end.letter(), self.end(end).site),
            Pack::Acceptance(end) => format!("{}-{}-{}-acceptance", self.hop, end.letter(), self.end(end).site),
        }
    }

    pub(super) fn front(&self, pack: Pack, errors: usize, asked: bool, attached: &[Attachment]) -> Front {
        let or_not_set = |value: &Option<String>| value.clone().unwrap_or_else(|| NOT_SET.into());
        let mut reasons = Vec::new();
        if errors > 0 {
            let what = if matches!(pack, Pack::Acceptance(_)) { "accepted" } else { "built" };
            reasons.push(format!("{}, not to be {what}", count(errors, "error is open", "errors are open")));
        }
        if self.approver.is_none() {
            reasons.push("nobody has approved this revision".into());
        }
        if reasons.is_empty() && asked {
            reasons.push("printed as a draft on request".into());
        }
        let draft = !reasons.is_empty();
        let status = if draft { reasons.join("; ") } else { format!("approved by {}", or_not_set(&self.approver)) };
        let (kind, title, here, there) = match pack {
            Pack::Design => ("Design pack", format!("{}: design pack", self.hop_title), None, None),
            Pack::Install(end) | Pack::Acceptance(end) => {
                let far = if end == End::A { End::B } else { End::A };
                let (own, other) = (self.end(end), self.end(far));
                let (kind, words) = match pack {
                    Pack::Acceptance(_) => ("Acceptance record", "acceptance record"),
                    _ => ("Install pack", "install pack"),
                };
                let title = format!("{}, end {}: {words}", self.hop_title, end.letter());
                let here = format!("End {}: {}", end.letter(), own.title);
                (kind, title, Some(here), Some(format!("End {}: {}", far.letter(), other.title)))
            }
        };
        Front {
            kind,
            title,
            network: self.network_title.clone(),
            owner: self.owner.clone(),
            hop: self.hop.clone(),
            hop_title: self.hop_title.clone(),
            here,
            there,
            number: format!("{}/{}", self.network, self.stem(pack)),
            revision: or_not_set(&self.revision),
            date: self.date.to_string(),
            year: self.date.year,
            month: self.date.month,
            day: self.date.day,
            creator: or_not_set(&self.creator),
            approver: or_not_set(&self.approver),
            draft,
            status,
            mark: attach::mark(attached),
            paper: match self.paper {
                Paper::A4 => "a4",
                Paper::Letter => "us-letter",
            },
        }
    }
}
