//! The least version a network asks for: read before anything else, and however broken the rest of it is.
//!
//! A program that is too old would find keys unknown that are none of its business. It says that it is too old, and no more.

use super::exclude::{networks, says_network};
use crate::spec::LeastVersion;

/// The version that a network in a text asks for, if this program is older.
pub(super) fn unmet(text: &str) -> Option<LeastVersion> {
    if !text.contains(KEY) {
        return None;
    }
    let read = networks(text, |document| {
        let (_, value) = document.get(document.root(), KEY)?;
        LeastVersion::read(document.text(document.resolve(value))?)
    });
    let mut asked: Vec<LeastVersion> = read.into_iter().flatten().collect();
    // Where reading broke off, line by line.
    asked.extend(written(text));
    asked.into_iter().filter(|least| !least.is_met()).max()
}

/// The words for it.
pub(super) fn asks_for(path: &str, least: LeastVersion) -> String {
    format!("{path}: this network asks for hopwright >= {least}, this is {}", LeastVersion::of_this())
}

const KEY: &str = "requires";

/// What stands after the key at the start of a line, in documents that say at the start of a line that they are a network.
fn written(text: &str) -> Vec<LeastVersion> {
    let (mut all, mut is_network, mut found) = (Vec::new(), false, None);
    for line in text.lines().chain(["---"]) {
        if line.starts_with("---") {
            all.extend(found.take().filter(|_| is_network));
            is_network = false;
        }
        is_network |= says_network(line);
        let value = line.trim_start_matches('\u{feff}').strip_prefix(KEY).and_then(|rest| rest.strip_prefix(':'));
        if let Some(value) = value {
            let value = value.split(" #").next().unwrap_or(value).trim().trim_matches(['"', '\'']);
            found = LeastVersion::read(value).or(found);
        }
    }
    all
}

#[cfg(test)]
mod tests {
    use super::unmet;

    #[test]
    fn it_is_read_however_broken_the_rest_is() {
        let asked = |text: &str| unmet(text).map(|least| least.to_string());
        for text in [
            "kind: network\nrequires: \">=99.1\"\n",
            "requires: '>=99.1' # new keys\nkind: network\nno_such_key: 1\n",
            "\u{feff}kind: network\r\nrequires: \">=99.1\"\r\n",
            "kind: network\nid: [\nrequires: \">=99.1\"\n\t}: broken",
            "kind: site\n---\nkind: network\nrequires: >=99.1\n",
            "{kind: network, requires: \">=99.1\"}",
        ] {
            assert_eq!(asked(text).as_deref(), Some("99.1.0"), "{text}");
        }
        for text in [
            "kind: network\nrequires: \">=0.1\"\n",
            "kind: site\nrequires: \">=99.1\"\n---\nkind: network\n",
            "kind: network\nrequires: soon\n",
            "kind: network\ntitle: requires\n",
        ] {
            assert_eq!(asked(text), None, "{text}");
        }
    }
}
