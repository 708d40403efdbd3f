//! Trying: the hop's own text with other values in it, read and judged as `check` reads and judges.

use std::collections::HashSet;
use std::sync::atomic::{AtomicUsize, Ordering};

use super::added::Added;
use super::change::{Change, Piece};
use super::ground::{Ground, Need, Width};
use super::narrow;
use super::options::options;
use super::reach::{Lever, levers};
use super::verdict::{Found, Known, Verdict};
use crate::at;
use crate::compare::quantities;
use crate::finding::rule::Severity;
use crate::finding::{Finding, Spot};
use crate::fix::{Mended, is_anchored, rewritten};
use crate::network::{Files, Home, ResolvedHop, Scope};
use crate::plan;
use crate::verdict::{Open, OpenHop, Read, fingerprint};

/// A hop to try changes on.
pub(super) struct Bench {
    /// What a trial reads.
    scope: Scope,
    /// That as it is today.
    read: Read,
    hop: String,
    fail_on: Severity,
    today: Today,
    tried: AtomicUsize,
    /// Changes that cannot be written, and so are not tried.
    unwritten: AtomicUsize,
}

/// What is found today.
#[derive(Default)]
struct Today {
    /// About the hop.
    own: Known,
    /// In all that a trial reads.
    all: Known,
    /// What fails and no change can touch, by what it is known by.
    stays: HashSet<String>,
}

impl Bench {
    /// A hop of a network; none if there is no such hop that can be judged.
    pub(super) fn of(read: &Read, hop: &str, fail_on: Severity) -> Option<Self> {
        let scope = {
            let open = read.open();
            let own = find(&open, hop)?;
            narrow::around(read, &own).unhelped()
        };
        let read = Read::of(&scope);
        let (hop, today) = (hop.to_owned(), Today::default());
        let [tried, unwritten] = [0, 0].map(AtomicUsize::new);
        let mut bench = Self { scope, read, hop, fail_on, today, tried, unwritten };
        let today = bench.look()?;
        bench.today = today;
        Some(bench)
    }

    fn look(&self) -> Option<Today> {
        let open = self.read.open();
        let own = find(&open, &self.hop)?.judge(|_, found| known(found, self.read.files()));
        let all: Vec<Found> = open.judge(|_, _| (), |()| ()).findings.iter().map(Found::of).collect();
        let stays = own.iter().filter(|found| found.severity >= self.fail_on && levers(found.rule.name).is_empty());
        let stays = stays.map(|found| found.key.clone()).collect();
        Some(Today { own: Known::of(&own), all: Known::of(&all), stays })
    }

    /// What fails today and no change can touch.
    pub(super) fn staying(&self) -> Vec<Found> {
        let open = self.read.open();
        let found = find(&open, &self.hop).map(|hop| hop.judge(|_, found| known(found, self.read.files())));
        let found = found.unwrap_or_default().into_iter();
        found.filter(|found| self.today.stays.contains(&found.key)).collect()
    }

    /// The number of the licence of the hop, if it has one.
    pub(super) fn licence(&self) -> Option<String> {
        let open = self.read.open();
        find(&open, &self.hop)?.hop.hop.licence.number.as_ref().map(ToString::to_string)
    }

    /// The files as they are, as far as trials read them.
    pub(super) fn files(&self) -> &Files {
        self.read.files()
    }

    /// How many trials there were.
    pub(super) fn tried(&self) -> usize {
        self.tried.load(Ordering::Relaxed)
    }

    /// How many changes could not be tried, for their values cannot be written by themselves.
    pub(super) fn unwritten(&self) -> usize {
        self.unwritten.load(Ordering::Relaxed)
    }

    /// The files as some changes make them; none where a value stands under an anchor or in an alias, so that it cannot be
    /// written without writing it elsewhere.
    pub(super) fn written(&self, changes: &[Change]) -> Option<Vec<Mended>> {
        let mut edits: Vec<(Spot, String)> = Vec::new();
        for (spot, text) in changes.iter().flat_map(|change| &change.pieces).flat_map(|piece| &piece.edits) {
            edits.retain(|(known, _)| known != spot);
            edits.push((spot.clone(), text.clone()));
        }
        let files = self.read.files();
        let is_own =
            |spot: &Spot| spot.file().and_then(|file| files.get(file)).is_some_and(|file| file.home == Home::Own);
        let barred = edits.iter().any(|(spot, _)| !is_own(spot) || is_anchored(files, spot));
        let (files, left) = rewritten(files, &edits);
        (left.is_empty() && !barred).then_some(files)
    }

    fn reads(&self, changes: &[Change]) -> Option<Read> {
        Some(Read::of(&with(&self.scope, &self.written(changes)?)))
    }

    /// Judges the hop with some changes, and where it passes all that stands around it.
    pub(super) fn judge(&self, changes: &[Change]) -> Verdict {
        let Some(read) = self.reads(changes) else {
            self.unwritten.fetch_add(1, Ordering::Relaxed);
            return Verdict::default();
        };
        self.tried.fetch_add(1, Ordering::Relaxed);
        self.judged(&read, false)
    }

    /// The hop as it is.
    pub(super) fn as_it_is(&self) -> Verdict {
        self.judged(&self.read, true)
    }

    /// The verdict on a state; `in_full` with its quantities even where it does not pass.
    fn judged(&self, read: &Read, in_full: bool) -> Verdict {
        let open = read.open();
        let Some(own) = find(&open, &self.hop) else { return Verdict::default() };
        let mut verdict = own.judge(|sheet, found| {
            let mut verdict = self.of_hop(known(found, read.files()));
            if in_full || verdict.passes() {
                verdict.quantities = quantities(sheet);
            }
            verdict
        });
        if verdict.passes() {
            let found: Vec<Found> = open.judge(|_, _| (), |()| ()).findings.iter().map(Found::of).collect();
            let others = found.into_iter().filter(|found| found.hop.as_deref() != Some(self.hop.as_str())).collect();
            sort_out(others, &self.today.all, &mut verdict);
        }
        verdict
    }

    /// What is found about the hop, sorted by what speaks against it.
    fn of_hop(&self, found: Vec<Found>) -> Verdict {
        let mut verdict = Verdict { is_judged: true, ..Verdict::default() };
        for one in found {
            let (own, new) = (&self.today.own, self.today.own.lacks(&one));
            if one.is_of_a_visit() {
                verdict.told.extend(new.then_some(one));
            } else if one.severity >= self.fail_on {
                verdict.failing.extend((!self.today.stays.contains(&one.key)).then_some(one));
            } else if new && one.severity >= Severity::Warning {
                verdict.fresh.push(one);
            } else if own.is_passed_by(&one) {
                verdict.told.push(one);
            }
        }
        verdict
    }

    /// The changes that some needs ask for, of the hop as some changes make it.
    pub(super) fn options(&self, changes: &[Change], needs: &[Need]) -> Vec<Change> {
        let Some(read) = self.reads(changes) else { return Vec::new() };
        let open = read.open();
        let Some(own) = find(&open, &self.hop) else { return Vec::new() };
        let wants = |lever| needs.iter().any(|need| need.lever == lever);
        let is_licensed = own.hop.hop.licence.number.is_some();
        let moves = if wants(Lever::Channel) { plan::moves(own.air(), own.hop) } else { Vec::new() };
        let widths = if wants(Lever::Bandwidth) { self.widths(changes, own.hop) } else { Vec::new() };
        let library = own.library();
        own.judge(|sheet, _| {
            let ground = Ground { hop: own.hop, sheet, library, moves: &moves, widths: &widths, is_licensed };
            options(&ground, needs)
        })
    }

    /// The other bandwidths that both radios have, each with the channels it could be on.
    fn widths(&self, changes: &[Change], resolved: &ResolvedHop<'_>) -> Vec<Width> {
        let hop = resolved.hop;
        let of =
            |radio: &crate::spec::Radio| radio.states.iter().map(|state| state.bandwidth.clone()).collect::<Vec<_>>();
        let (mut widths, others) = (of(resolved.ends.a.radio), of(resolved.ends.b.radio));
        widths.retain(|width| width.value != hop.channel.bandwidth.value && others.contains(width));
        widths.sort_by(|one, other| one.value.0.total_cmp(&other.value.0));
        widths.dedup();
        let width = |written: String| {
            let (from, to, spot) = (hop.channel.bandwidth.to_string(), written.clone(), at!(hop.channel.bandwidth));
            let edits = vec![(Spot::from(spot), written.clone())];
            let (what, added) = ("bandwidth".into(), Added::default());
            let piece = Piece { what, end: None, from, to, edits, scale: None, away: 0.0, added };
            let mut all = changes.to_vec();
            all.push(Change::of(Lever::Bandwidth, vec![piece]));
            let read = self.reads(&all);
            let moves = read.as_ref().and_then(|read| {
                let open = read.open();
                find(&open, &self.hop).map(|own| plan::moves(own.air(), own.hop))
            });
            Width { written, moves: moves.unwrap_or_default() }
        };
        widths.iter().map(|given| width(given.to_string())).collect()
    }
}

/// The whole network, to hold against it what passed in the part that trials read.
pub(super) struct Whole {
    scope: Scope,
    today: Known,
}

impl Whole {
    pub(super) fn of(read: &Read) -> Self {
        let scope = read.scope().clone().unhelped();
        let today = Known::of(&all(&Read::of(&scope)));
        Self { scope, today }
    }

    /// What is new or worse anywhere with files as they would be, sorted by what speaks against them.
    pub(super) fn judge(&self, files: &[Mended], hop: &str) -> Verdict {
        let mut verdict = Verdict { is_judged: true, ..Verdict::default() };
        let found = all(&Read::of(&with(&self.scope, files))).into_iter();
        // The hop has been judged; what it is told follows from that.
        let others = found.filter(|found| found.hop.as_deref() != Some(hop)).collect();
        sort_out(others, &self.today, &mut verdict);
        verdict
    }
}

fn all(read: &Read) -> Vec<Found> {
    read.open().judge(|_, _| (), |()| ()).findings.iter().map(Found::of).collect()
}

/// Puts what is new or worse than today where it belongs.
fn sort_out(found: Vec<Found>, today: &Known, verdict: &mut Verdict) {
    for one in today.news_of(found) {
        // A waiver that has nothing left to accept is good news.
        let harmless = one.is_of_a_visit() || one.rule.family == "waiver" || one.severity < Severity::Warning;
        if harmless {
            if !verdict.told.iter().any(|known| known.key == one.key) {
                verdict.told.push(one);
            }
        } else {
            verdict.elsewhere.push(one);
        }
    }
}

/// What is found about a hop and is open, with what it is known by.
fn known(found: &[Finding], files: &Files) -> Vec<Found> {
    let mut open: Vec<Finding> = found.iter().filter(|finding| finding.waived.is_none()).cloned().collect();
    fingerprint::give(&mut open, files);
    open.iter().map(Found::of).collect()
}

fn find<'o>(open: &'o Open<'_>, hop: &str) -> Option<OpenHop<'o>> {
    open.open_hops().find(|own| *own.hop.hop.id.0 == *hop)
}

fn with(scope: &Scope, files: &[Mended]) -> Scope {
    let texts: Vec<_> = files.iter().map(|file| (file.origin.clone(), file.after.as_str().into())).collect();
    scope.clone().with_texts(&texts)
}
