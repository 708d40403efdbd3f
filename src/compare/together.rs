//! The hops that are known without being computed: made of the same on both sides, and with the same company at their sites.

use std::collections::{HashMap, HashSet};

use rayon::prelude::*;

use super::alike::Alike;
use super::matching::{Here, Pair};
use super::side::Side;
use crate::place::DocumentId;
use crate::verdict::OpenHop;

/// The hops of the new side, by their documents, that are the same there as on the old one.
pub(super) struct Together<'p> {
    /// What each hop is on the old side, where it is made of the same.
    by_themselves: HashMap<DocumentId, OpenHop<'p>>,
}

impl<'p> Together<'p> {
    pub(super) fn of(pairs: &[Pair<'p>], alike: &Alike, sides: [&Side; 2]) -> Self {
        let made_alike = |pair: &Pair<'p>| match pair.here.map(Here::computed) {
            [Some(old), Some(new)] if pair.renamed_from.is_none() && alike.hop(sides, [old, new]) => {
                Some((new.hop.hop.at, old))
            }
            _ => None,
        };
        Self { by_themselves: pairs.par_iter().filter_map(made_alike).collect() }
    }

    /// Those whose company is the same too. A site is looked at once, however many hops end there.
    pub(super) fn known(&self, pairs: &[Pair<'p>]) -> HashSet<DocumentId> {
        let mut sites: HashMap<DocumentId, bool> = HashMap::new();
        let mut is_same = |[old, new]: [OpenHop<'_>; 2]| {
            old.hop.ends.iter().zip(new.hop.ends.iter()).all(|(before, after)| {
                let here = || self.stand_alike([old, new], [before.site.at, after.site.at]);
                *sites.entry(after.site.at).or_insert_with(here)
            })
        };
        let known = pairs.iter().filter_map(|pair| {
            let new = pair.here[1].computed()?;
            let old = *self.by_themselves.get(&new.hop.hop.at)?;
            is_same([old, new]).then_some(new.hop.hop.at)
        });
        known.collect()
    }

    /// Whether the same hops end at a site on both sides. One that is made of the same stands where it stood, so it is enough
    /// that all that are there now are such, and that there were no more.
    fn stand_alike(&self, [old, new]: [OpenHop<'_>; 2], [before, after]: [DocumentId; 2]) -> bool {
        let mut count = 0;
        let all = new.at_site(after).all(|fellow| {
            count += 1;
            self.by_themselves.contains_key(&fellow.hop.hop.at)
        });
        all && old.at_site(before).count() == count
    }
}
