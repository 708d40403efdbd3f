//! What the packs of a hop are called and asked for by. It is taken of every hop; what their pages say only of those whose
//! packs somebody wants.

use super::Pack;
use crate::network::ResolvedHop;
use crate::spec::{Both, EndName};

/// The names of the packs of one hop.
#[derive(Debug, Clone)]
pub struct PackNames {
    hop: String,
    sites: Both<String>,
    recorded: Both<bool>,
}

impl PackNames {
    /// Those of a hop.
    #[must_use]
    pub fn of(hop: &ResolvedHop<'_>) -> Self {
        Self {
            hop: hop.hop.id.to_string(),
            sites: hop.ends.each_ref().map(|end| end.site.id.to_string()),
            recorded: Both::ends(|end| hop.records.iter().any(|record| record.end == end)),
        }
    }

    /// The hop's id.
    #[must_use]
    pub fn hop(&self) -> &str {
        &self.hop
    }

    /// The site of an end, by id.
    #[must_use]
    pub fn site(&self, end: EndName) -> &str {
        &self.sites[end]
    }

    /// Whether there is anything to print: an acceptance needs a record.
    #[must_use]
    pub fn has(&self, pack: Pack) -> bool {
        match pack {
            Pack::Acceptance(end) => self.recorded[end],
            Pack::Design | Pack::Licence | Pack::Install(_) => true,
        }
    }

    /// What a person may call a pack by: the hop, its end, its site.
    #[must_use]
    pub fn called(&self, pack: Pack) -> Vec<String> {
        let id = self.hop.clone();
        match pack {
            Pack::Design | Pack::Licence => vec![id],
            Pack::Install(end) | Pack::Acceptance(end) => vec![format!("{id}/{end}"), id, self.site(end).to_owned()],
        }
    }

    /// The number of a pack: `ridge-dam-design`, `ridge-dam-a-ridge-install`.
    pub(super) fn stem(&self, pack: Pack) -> String {
        match pack {
            Pack::Design => format!("{}-design", self.hop),
            Pack::Licence => format!("{}-licence", self.hop),
            Pack::Install(end) => format!("{}-{end}-{}-install", self.hop, self.site(end)),
            Pack::Acceptance(end) => format!("{}-{end}-{}-acceptance", self.hop, self.site(end)),
        }
    }

    /// The name of its file: `ridge-dam-design.pdf`.
    #[must_use]
    pub fn file_name(&self, pack: Pack) -> String {
        format!("{}.pdf", self.stem(pack))
    }
}
