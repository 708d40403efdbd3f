//! The keys of a mapping held against those it may have and must have.

use std::collections::HashSet;
use std::ops::Range;

use super::check::{Mode, Walk};
use super::{Field, MOST_FAULTS, Shape};
use crate::finding::faults::{BAD_VALUE, MISSING_KEY, UNKNOWN_KEY};
use crate::finding::{Finding, Spot};
use crate::place::Step;
use crate::place::route::spelled;
use crate::source::NodeId;
use crate::spec::Kind;
use crate::text::nearest::{did_you_mean, nearest, one_slip};
use crate::units;

/// Keys of one mapping of which the first is never above the second.
const IN_ORDER: [(&str, &str); 2] = [("min", "max"), ("operating", "survival")];

/// The unknown keys of a mapping for which the key that was meant is looked for: beyond that it is no slip.
const MOST_GUESSES: usize = 100;

impl<'a> Walk<'a> {
    pub(super) fn map(&mut self, id: NodeId, fields: &'a [Field], key: Option<&Range<usize>>) {
        let entries = self.entries(id);
        let present = Present::of(entries.iter().map(|(key, _)| self.word(*key)).collect());
        let missing = |name: &str| !present.has(name);
        let known: Vec<Option<&'a Field>> =
            present.words.iter().map(|word| fields.iter().find(|field| field.name == *word)).collect();
        // A misspelt key must not also be reported as a missing one.
        let mut meant = Vec::new();
        let mut unknown = Vec::new();
        for (((name, _), word), known) in entries.iter().zip(&present.words).zip(&known) {
            if known.is_some() {
                continue;
            }
            if unknown.len() >= MOST_GUESSES {
                unknown.push((*name, None));
                continue;
            }
            let absent = fields.iter().filter(|field| missing(&field.name));
            let guess = nearest(word, absent.map(|field| field.name.as_str()))
                .or_else(|| nearest(word, fields.iter().map(|field| field.name.as_str())));
            meant.extend(guess);
            unknown.push((*name, guess));
        }
        let completes = self.mode != Mode::Written && self.parts == 0;
        let needed = |field: &&Field| field.required || (field.completed && completes);
        let absent: Vec<&Field> = fields.iter().filter(needed).filter(|field| missing(&field.name)).collect();
        // A key that is there already, or is meant twice, is not what this one should be called.
        let once = |guess: &&str| missing(guess) && meant.iter().filter(|other| *other == guess).count() == 1;
        let unknown: Vec<_> = unknown.into_iter().map(|(name, guess)| (name, guess, guess.filter(once))).collect();
        for (name, guess, free) in unknown {
            self.unknown_key(name, guess, free, fields);
        }
        for field in &absent {
            self.fill(&field.name, &field.shape);
        }
        let lacking: Vec<&Field> = absent.into_iter().filter(|field| !meant.contains(&field.name.as_str())).collect();
        if !lacking.is_empty() {
            self.missing_keys(id, &lacking, key);
        }
        self.window_order(entries, fields);
        for (&(name, value), field) in entries.iter().zip(known) {
            let Some(field) = field else { continue };
            let key = &self.document.node(name).span;
            self.route.push(Step::Key(&field.name));
            let giver = self.taken.as_ref().and_then(|taken| taken.giver(value));
            match giver {
                Some(giver) if giver.doubtful.contains(key) => self.hole_in(giver.document.file, key.clone()),
                None if self.doubtful.contains(key) => self.hole(key.clone()),
                _ => {}
            }
            self.node(value, &field.shape, Some(key));
            self.route.pop();
        }
    }

    /// A window the wrong way round holds nothing.
    fn window_order(&mut self, entries: &[(NodeId, NodeId)], fields: &[Field]) {
        let field = |name: &str| fields.iter().find(|field| field.name == name);
        for (lower, higher) in IN_ORDER {
            let (Some(Field { shape: Shape::Quantity(kind, _), .. }), Some(_)) = (field(lower), field(higher)) else {
                continue;
            };
            let value_of = |name: &str| {
                let value = self.document.resolve(entries.iter().find(|(key, _)| self.word(*key) == name)?.1);
                Some((value, units::read(kind, self.document.text(value)?).ok()?))
            };
            let (Some((least, low)), Some((most, high))) = (value_of(lower), value_of(higher)) else { continue };
            if low <= high {
                continue;
            }
            let words = |id| self.document.text(id).unwrap_or_default().trim().to_owned();
            let message = format!("{} goes from {} down to {}", self.whole(), words(least), words(most));
            let (low, high) = (words(most), words(least));
            let help = format!("put the smaller value in `{lower}`: `{{ {lower}: {low}, {higher}: {high} }}`");
            let span = self.document.node(least).span.clone();
            self.report(&BAD_VALUE, span.clone(), message, format!("more than the `{higher}`"), help);
            self.hole(span);
        }
    }

    fn unknown_key(&mut self, name: NodeId, guess: Option<&'a str>, free: Option<&str>, fields: &[Field]) {
        let word = self.word(name);
        if self.decimals_of_a_comma(name, fields) {
            return;
        }
        let below = fields.iter().find(|field| match &field.shape {
            Shape::Map(inner) => inner.iter().any(|field| field.name == word),
            _ => false,
        });
        let help = match (guess, below) {
            (Some(guess), _) => did_you_mean(guess),
            (None, Some(parent)) => format!("it belongs under `{}`: indent it", parent.name),
            (None, None) if self.elsewhere(word).is_some() => self.elsewhere(word).unwrap_or_default(),
            (None, None) => format!("keys known here: {}", list(fields.iter().map(|field| field.name.as_str()))),
        };
        let named = if word.is_empty() { "an empty key".into() } else { format!("`{word}`") };
        let message = format!("{named} is not a key of {}", self.whole());
        let span = self.document.node(name).span.clone();
        self.report(&UNKNOWN_KEY, span.clone(), message, "not known here", help);
        if let Some(guess) = free.filter(|guess| certain(word, guess, fields)) {
            self.fixable(&span, guess.to_owned());
        }
        self.below(word, |walk| walk.repair(None));
        if let Some(guess) = guess {
            self.below(guess, |walk| walk.hole(span));
        }
    }

    /// Reports what a decimal comma inside braces does: the value ends there, and the rest is taken for a key.
    fn decimals_of_a_comma(&mut self, name: NodeId, fields: &[Field]) -> bool {
        let key = self.document.node(name).span.clone();
        let Some(comma) = key.start.checked_sub(1).filter(|at| decimals_after(self.text, *at)) else { return false };
        let start = self.text[..comma].rfind([':', ' ', '{', '[']).map_or(comma, |at| at + 1);
        let ahead = self.text[..start].trim_end_matches([' ', ':']);
        let value_of = fields.iter().find(|field| ahead.ends_with(&field.name));
        if !value_of.is_some_and(|field| matches!(field.shape, Shape::Quantity(..))) {
            return false;
        }
        let written = self.text[start..key.end].to_owned();
        let meant = written.replacen(',', ".", 1);
        let message = format!("`{written}` has a decimal comma, which ends the value inside braces");
        let help = format!("write a decimal point: `{meant}`");
        self.report(&BAD_VALUE, start..key.end, message, "read as a value and a key", help);
        self.fixable(&(start..key.end), meant);
        let word = self.word(name);
        self.below(word, |walk| walk.repair(None));
        true
    }

    /// Where else in this kind of document a key is known, or that nobody writes it.
    fn elsewhere(&self, word: &str) -> Option<String> {
        if self.kind == Kind::Hop && COMPUTED.contains(&word) {
            return Some(format!("nobody writes the {word}: it is computed, see `sheet`"));
        }
        let homes = homes(Shape::of(self.kind), word);
        let named: Vec<&str> = homes.iter().map(String::as_str).collect();
        match named.as_slice() {
            [""] => Some(format!("`{word}` belongs at the top level of the document")),
            [only] => Some(format!("`{word}` belongs under `{only}`")),
            [one, other] => Some(format!("`{word}` belongs under `{one}` or `{other}`")),
            _ => None,
        }
    }

    fn missing_keys(&mut self, id: NodeId, lacking: &[&'a Field], key: Option<&Range<usize>>) {
        let names = list(lacking.iter().map(|field| field.name.as_str()));
        let lines: Vec<String> = lacking
            .iter()
            .map(|field| format!("`{}:` with a value such as `{}`", field.name, field.shape.example()))
            .collect();
        let message = format!("{} has no {names}", self.whole());
        let span = key.cloned().unwrap_or_else(|| self.head(id));
        let help = format!("add {}", lines.join(", "));
        if self.mode == Mode::Completed {
            self.still_missing(span.clone(), lacking, &names, help);
        } else {
            self.report(&MISSING_KEY, span.clone(), message, format!("lacks {names}"), help);
        }
        for field in lacking {
            self.below(&field.name, |walk| walk.hole(span.clone()));
        }
    }

    /// Says what is missing although all is taken in. What the document itself must write has been said.
    fn still_missing(&mut self, span: Range<usize>, lacking: &[&Field], names: &str, help: String) {
        let unsure = self.taken.is_some_and(|taken| taken.is_unsure(&spelled(self.route.iter().copied())));
        let told = !self.is_foreign() && lacking.iter().all(|field| !field.completed);
        if unsure || told || self.done.findings.len() >= MOST_FAULTS {
            return;
        }
        let (message, label) = (format!("{} has no {names}", self.whole()), format!("lacks {names}"));
        let finding = match self.taken.filter(|_| self.is_foreign()) {
            Some(taken) => {
                let own = Spot::Bytes(taken.document.file, self.own_key.clone());
                let mut finding = Finding::new(&MISSING_KEY, own, message, label);
                finding.because(Spot::Bytes(self.file, span), "the rest is taken from here");
                finding
            }
            None => Finding::new(&MISSING_KEY, Spot::Bytes(self.file, span), message, label),
        };
        self.done.findings.push(finding);
        if let Some(finding) = self.done.findings.last_mut() {
            finding.help(help);
        }
    }

    pub(super) fn wrong_form(&mut self, id: NodeId, shape: &Shape, key: Option<&Range<usize>>, empty: bool) {
        let wanted = match shape {
            Shape::Map(_) | Shape::Table(_) | Shape::Part(_) => "a mapping of keys".to_owned(),
            Shape::List(_) => "a list, each item after `- `".to_owned(),
            _ => format!("a single value such as `{}`", shape.example()),
        };
        let span = if empty { key.cloned().unwrap_or_else(|| self.head(id)) } else { self.head(id) };
        let message = format!("{} should be {wanted}", self.whole());
        let help = match shape {
            Shape::Map(fields) => format!("keys known here: {}", list(fields.iter().map(|field| field.name.as_str()))),
            _ => format!("write {wanted}"),
        };
        self.report(&BAD_VALUE, span.clone(), message, if empty { "has no value" } else { "not of that form" }, help);
        self.refill(shape, span);
    }
}

/// The keys of a mapping.
struct Present<'a> {
    words: Vec<&'a str>,
    /// The same where they are many.
    index: HashSet<&'a str>,
}

/// More keys than that are looked up by their hash; fewer are compared faster than hashed.
const FEW: usize = 32;

impl<'a> Present<'a> {
    fn of(words: Vec<&'a str>) -> Self {
        let index = if words.len() > FEW { words.iter().copied().collect() } else { HashSet::new() };
        Self { words, index }
    }

    fn has(&self, word: &str) -> bool {
        if self.words.len() > FEW { self.index.contains(word) } else { self.words.contains(&word) }
    }
}

/// Whether a comma and a digit follow at a place, as in `-63,5`.
pub(super) fn decimals_after(text: &str, at: usize) -> bool {
    let before = text[..at].ends_with(|c: char| c.is_ascii_digit());
    let rest = text.get(at..).and_then(|rest| rest.strip_prefix(','));
    before && rest.is_some_and(|rest| rest.starts_with(|c: char| c.is_ascii_digit()))
}

/// What a hop is often given and never has: it follows from the rest.
const COMPUTED: &[&str] = &["tilt", "elevation", "azimuth", "bearing", "distance", "length", "eirp", "level", "margin"];

/// The mappings of a shape that have a key of a name, by their routes; lists go by their name.
fn homes(shape: &Shape, word: &str) -> Vec<String> {
    let mut found = Vec::new();
    let mut left = vec![(String::new(), shape)];
    while let Some((route, shape)) = left.pop() {
        match shape {
            Shape::Map(fields) => {
                if fields.iter().any(|field| field.name == word) {
                    found.push(route.clone());
                }
                let dot = if route.is_empty() { "" } else { "." };
                left.extend(fields.iter().map(|field| (format!("{route}{dot}{}", field.name), &field.shape)));
            }
            Shape::List(item) => left.push((route, item)),
            _ => {}
        }
    }
    found.sort();
    found
}

/// Whether a key can only be a slip of another: one letter off, or capitals and hyphens, and near to no third.
fn certain(word: &str, guess: &str, fields: &[Field]) -> bool {
    let plain = |word: &str| word.to_lowercase().replace('-', "_");
    let others = fields.iter().map(|field| field.name.as_str()).filter(|name| *name != guess);
    plain(word) == guess || (one_slip(word, guess) && nearest(word, others).is_none())
}

/// `a, b, c`: joined by commas.
pub(super) fn list<T: ToString>(words: impl IntoIterator<Item = T>) -> String {
    words.into_iter().map(|word| word.to_string()).collect::<Vec<_>>().join(", ")
}
