//! The walk: tree beside shape, faults out.

use std::ops::Range;

use serde_yaml::Value;

use super::{Field, Shape};
use crate::faults::{BAD_VALUE, MISSING_KEY, UNKNOWN_KEY};
use crate::finding::{Finding, Spot};
use crate::nearest::nearest;
use crate::place::FileId;
use crate::rule::Rule;
use crate::source::{Core, Document, NodeId, NodeKind, Style, ambiguous, core_type};
use crate::spec::{Date, Kind};
use crate::units;

/// What came of a shape check.
#[derive(Debug, Default)]
pub struct Checked {
    /// Every fault.
    pub findings: Vec<Finding>,
    /// The documents it refers to, for a document that cannot be typed even with its holes filled.
    pub mentions: Vec<Mention>,
    /// What is to be left out or filled in so that the rest can be typed and judged.
    pub repairs: Vec<Repair>,
    /// The values that are broken or missing: nothing that depends on them may be judged.
    pub holes: Vec<Hole>,
}

/// A broken or missing value.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Hole {
    /// Its route: `ends.a.height`.
    pub route: String,
    /// Where the fault is shown.
    pub at: Range<usize>,
}

/// A change to the values of a document, not to its text.
#[derive(Debug)]
pub struct Repair {
    /// Where.
    pub route: Vec<Segment>,
    /// What to put there; `None` to take the key out.
    pub value: Option<Value>,
}

/// A step of a route through values.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Segment {
    /// Into a mapping.
    Key(String),
    /// Into a list.
    Index(usize),
}

/// A reference as it stands in the text.
#[derive(Debug)]
pub struct Mention {
    /// The kind of document it must lead to.
    pub kind: Kind,
    /// The id.
    pub id: String,
    /// Where it is written.
    pub span: Range<usize>,
}

/// Holds a document against its shape. Every fault becomes a finding in `file`.
///
/// `doubtful` are keys whose value cannot be trusted for another reason, such as a second key of the same name.
#[must_use]
pub fn check(document: &Document, text: &str, file: FileId, kind: Kind, doubtful: &[Range<usize>]) -> Checked {
    let (route, uses, done) = (Vec::new(), Vec::new(), Checked::default());
    let mut walk = Walk { document, text, file, kind, doubtful, route, uses, done };
    walk.node(document.root(), Shape::of(kind), None);
    walk.done
}

struct Walk<'a> {
    document: &'a Document,
    text: &'a str,
    file: FileId,
    kind: Kind,
    doubtful: &'a [Range<usize>],
    /// Keys and indices on the way.
    route: Vec<Segment>,
    /// Aliases on the way: a fault inside one is shown at its outermost use.
    uses: Vec<Range<usize>>,
    done: Checked,
}

impl Walk<'_> {
    fn node(&mut self, id: NodeId, shape: &Shape, key: Option<&Range<usize>>) {
        if let NodeKind::Alias { target } = self.document.node(id).kind {
            self.uses.push(self.document.node(id).span.clone());
            self.node(target, shape, key);
            self.uses.pop();
            return;
        }
        match (&self.document.node(id).kind, shape) {
            (NodeKind::Mapping(_), Shape::Map(fields)) => self.map(id, fields, key),
            (NodeKind::Mapping(_), Shape::Table(value)) => {
                for (name, value_id) in self.entries(id) {
                    self.route.push(Segment::Key(self.word(name).to_owned()));
                    self.node(value_id, value, Some(&self.document.node(name).span));
                    self.route.pop();
                }
            }
            (NodeKind::Sequence(items), Shape::List(item)) => {
                for (index, &id) in items.iter().enumerate() {
                    self.route.push(Segment::Index(index));
                    self.node(id, item, None);
                    self.route.pop();
                }
            }
            (NodeKind::Scalar { text, style, .. }, Shape::Map(_) | Shape::Table(_) | Shape::List(_)) => {
                let empty = text.is_empty() && *style == Style::Plain;
                self.wrong_form(id, shape, key, empty);
            }
            (NodeKind::Scalar { text, style, .. }, _) => self.scalar(id, text, *style, shape, key),
            _ => self.wrong_form(id, shape, key, false),
        }
    }

    fn map(&mut self, id: NodeId, fields: &[Field], key: Option<&Range<usize>>) {
        let entries = self.entries(id);
        let missing = |name: &str| !entries.iter().any(|(key, _)| self.word(*key) == name);
        // A misspelt key must not also be reported as a missing one.
        let mut meant = Vec::new();
        let mut unknown = Vec::new();
        for (name, _) in &entries {
            let word = self.word(*name);
            if word.is_empty() || fields.iter().any(|field| field.name == word) {
                continue;
            }
            let absent = fields.iter().filter(|field| missing(&field.name));
            let guess = nearest(word, absent.map(|field| field.name.as_str()))
                .or_else(|| nearest(word, fields.iter().map(|field| field.name.as_str())));
            meant.extend(guess);
            unknown.push((*name, guess));
        }
        let absent: Vec<&Field> = fields.iter().filter(|field| field.required && missing(&field.name)).collect();
        for (name, guess) in unknown {
            self.unknown_key(name, guess, fields);
        }
        for field in &absent {
            self.fill(&field.name, &field.shape);
        }
        let lacking: Vec<&Field> = absent.into_iter().filter(|field| !meant.contains(&field.name.as_str())).collect();
        if !lacking.is_empty() {
            self.missing_keys(id, &lacking, key);
        }
        self.window_order(&entries, fields);
        for (name, value) in entries {
            if let Some(field) = fields.iter().find(|field| field.name == self.word(name)) {
                let key = self.document.node(name).span.clone();
                self.route.push(Segment::Key(field.name.clone()));
                if self.doubtful.contains(&key) {
                    self.hole(key.clone());
                }
                self.node(value, &field.shape, Some(&key));
                self.route.pop();
            }
        }
    }

    /// A window the wrong way round holds nothing.
    fn window_order(&mut self, entries: &[(NodeId, NodeId)], fields: &[Field]) {
        let [Field { name: low, shape: Shape::Quantity(kind), .. }, Field { name: high, .. }] = fields else { return };
        if (low.as_str(), high.as_str()) != ("min", "max") {
            return;
        }
        let value_of = |name: &str| {
            let value = self.document.resolve(entries.iter().find(|(key, _)| self.word(*key) == name)?.1);
            Some((value, units::read(kind, self.document.text(value)?).ok()?))
        };
        if let (Some((least, low)), Some((most, high))) = (value_of("min"), value_of("max"))
            && low > high
        {
            let words = |id| self.document.text(id).unwrap_or_default().trim().to_owned();
            let message = format!("{} goes from {} down to {}", self.whole(), words(least), words(most));
            let help = format!("the lesser one is the `min`: `{{ min: {}, max: {} }}`", words(most), words(least));
            let span = self.document.node(least).span.clone();
            self.report(&BAD_VALUE, span.clone(), message, "more than the `max`", help);
            self.hole(span);
        }
    }

    fn unknown_key(&mut self, name: NodeId, guess: Option<&str>, fields: &[Field]) {
        let word = self.word(name).to_owned();
        let below = fields.iter().find(|field| match &field.shape {
            Shape::Map(inner) => inner.iter().any(|field| field.name == word),
            _ => false,
        });
        let help = match (guess, below) {
            (Some(guess), _) => format!("did you mean `{guess}`?"),
            (None, Some(parent)) => format!("it belongs under `{}`: indent it", parent.name),
            (None, None) => format!("keys known here: {}", list(fields.iter().map(|field| field.name.as_str()))),
        };
        let message = format!("`{word}` is not a key of {}", self.whole());
        let span = self.document.node(name).span.clone();
        self.report(&UNKNOWN_KEY, span.clone(), message, "not known here", help);
        self.below(word, |walk| walk.repair(None));
        if let Some(guess) = guess {
            self.below(guess.to_owned(), |walk| walk.hole(span));
        }
    }

    fn missing_keys(&mut self, id: NodeId, lacking: &[&Field], key: Option<&Range<usize>>) {
        let names = list(lacking.iter().map(|field| field.name.as_str()));
        let lines: Vec<String> =
            lacking.iter().map(|field| format!("`{}: {}`", field.name, field.shape.example())).collect();
        let message = format!("{} has no {names}", self.whole());
        let span = key.cloned().unwrap_or_else(|| self.head(id));
        self.report(&MISSING_KEY, span.clone(), message, format!("lacks {names}"), format!("add {}", lines.join(", ")));
        for field in lacking {
            self.below(field.name.clone(), |walk| walk.hole(span.clone()));
        }
    }

    fn wrong_form(&mut self, id: NodeId, shape: &Shape, key: Option<&Range<usize>>, empty: bool) {
        let wanted = match shape {
            Shape::Map(_) | Shape::Table(_) => "a mapping of keys".to_owned(),
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

    fn scalar(&mut self, id: NodeId, text: &str, style: Style, shape: &Shape, key: Option<&Range<usize>>) {
        if text.is_empty() && style == Style::Plain {
            let own = self.document.node(id).span.clone();
            if self.text[own.clone()].starts_with('*') {
                // An alias of nothing: it has been reported.
                return self.refill(shape, own);
            }
            let span = key.cloned().unwrap_or_else(|| self.document.node(id).span.clone());
            let message = format!("{} has no value", self.whole());
            let help = format!("write one, such as `{}`, or leave the key out if it may be", shape.example());
            self.report(&BAD_VALUE, span.clone(), message, "nothing after the colon", help);
            self.refill(shape, span);
            return;
        }
        let before = self.done.findings.len();
        match shape {
            Shape::Quantity(kind) => self.quantity(id, kind, text),
            Shape::Text => return self.text(id, text, style),
            Shape::Id => self.id(id, text, style),
            Shape::Reference(kind) => {
                self.id(id, text, style);
                let span = self.uses.first().cloned().unwrap_or_else(|| self.document.node(id).span.clone());
                self.done.mentions.push(Mention { kind: *kind, id: text.to_owned(), span });
            }
            Shape::Date if Date::read(text).is_none() => {
                self.bad(id, "is no day of the calendar", "not a date", "write YYYY-MM-DD, such as `2026-05-18`");
            }
            Shape::Choice(words) if !words.iter().any(|word| word == text) => self.choice(id, text, words),
            Shape::Count(allowed) => self.count(id, text, style, allowed),
            Shape::Flag if !matches!(core_type(text, style), Core::Bool(_)) => {
                self.bad(id, "is either `true` or `false`", "neither", "write `true` or `false`, unquoted");
            }
            Shape::Number if !is_number(text, style) => {
                self.bad(id, "is a plain number", "not a number", "write it without unit or quotes, such as `-4.2`");
            }
            _ => {}
        }
        if self.done.findings.len() > before {
            self.refill(shape, self.document.node(id).span.clone());
        }
    }

    fn choice(&mut self, id: NodeId, text: &str, words: &[String]) {
        let help = match nearest(text, words.iter().map(String::as_str)) {
            Some(guess) => format!("did you mean `{guess}`? It is one of: {}", list(words)),
            None => format!("one of: {}", list(words)),
        };
        self.bad(id, &format!("cannot be `{text}`"), "not one of the choices", &help);
    }

    fn count(&mut self, id: NodeId, text: &str, style: Style, allowed: &[u64]) {
        match core_type(text, style) {
            Core::Int(value)
                if u8::try_from(value).is_ok_and(|n| allowed.is_empty() || allowed.contains(&n.into())) => {}
            _ if allowed.is_empty() => {
                self.bad(id, "is a plain count", "not a count", "write a whole number from 0 to 255");
            }
            _ => {
                self.bad(
                    id,
                    &format!("cannot be `{text}`"),
                    "not one of the choices",
                    &format!("one of: {}", list(allowed)),
                );
            }
        }
    }

    fn quantity(&mut self, id: NodeId, kind: &'static units::Kind, text: &str) {
        let Err(fault) = units::read(kind, text) else { return };
        let span = self.document.node(id).span.clone();
        // Narrow to the part at fault where the source spells the text letter for letter, quotes aside.
        let span = match self.text.get(span.clone()).and_then(|source| source.find(text)) {
            Some(at) => span.start + at + fault.span.start..span.start + at + fault.span.end,
            None => span,
        };
        let message = format!("{}: {}", self.whole(), fault.reason);
        self.report(&BAD_VALUE, span, message, format!("should be a {}", kind.name), fault.help);
    }

    fn text(&mut self, id: NodeId, text: &str, style: Style) {
        if style != Style::Plain {
            return;
        }
        let taken_for = match core_type(text, style) {
            Core::Text => ambiguous(text),
            Core::Null => Some("no value"),
            Core::Bool(_) => Some("a boolean"),
            Core::Int(_) | Core::Float(_) => Some("a number"),
        };
        if let Some(what) = taken_for {
            let line = match self.route.last() {
                Some(Segment::Key(key)) => format!("{key}: \"{text}\""),
                _ => format!("- \"{text}\""),
            };
            self.bad(id, "is text, and unquoted it is not", &format!("read as {what}"), &format!("quote it: `{line}`"));
            // What was meant is plain enough to go on with.
            self.repair(Some(Value::from(text)));
        }
    }

    fn id(&mut self, id: NodeId, text: &str, style: Style) {
        let word = |part: &str| !part.is_empty() && part.bytes().all(|b| b.is_ascii_lowercase() || b.is_ascii_digit());
        if text.split('-').all(word) {
            return self.text(id, text, style);
        }
        let help = "an id has lower-case letters, digits and single hyphens, such as `north-mast`";
        self.bad(id, &format!("cannot be `{text}`"), "not an id", help);
    }

    fn bad(&mut self, id: NodeId, what: &str, label: &str, help: &str) {
        let message = format!("{} {what}", self.whole());
        self.report(&BAD_VALUE, self.document.node(id).span.clone(), message, label, help);
    }

    fn report(
        &mut self,
        rule: &'static Rule,
        span: Range<usize>,
        message: String,
        label: impl Into<String>,
        help: impl Into<String>,
    ) {
        let (file, label) = (self.file, label.into());
        let mut finding = match self.uses.first() {
            Some(at) => {
                let mut finding = Finding::new(rule, Spot::Bytes(file, at.clone()), message, "used here");
                finding.because(Spot::Bytes(file, span), format!("{label} (defined here)"));
                finding
            }
            None => Finding::new(rule, Spot::Bytes(file, span), message, label),
        };
        finding.help(help);
        self.done.findings.push(finding);
    }

    /// Marks the value being walked as broken and puts a stand-in there.
    fn refill(&mut self, shape: &Shape, at: Range<usize>) {
        self.repair(Some(shape.stand_in()));
        self.hole(at);
    }

    /// Puts a stand-in under a key that is missing.
    fn fill(&mut self, name: &str, shape: &Shape) {
        self.below(name.to_owned(), |walk| walk.repair(Some(shape.stand_in())));
    }

    fn repair(&mut self, value: Option<Value>) {
        self.done.repairs.push(Repair { route: self.route.clone(), value });
    }

    fn hole(&mut self, at: Range<usize>) {
        self.done.holes.push(Hole { route: spelled(&self.route), at });
    }

    fn below(&mut self, key: String, then: impl FnOnce(&mut Self)) {
        self.route.push(Segment::Key(key));
        then(self);
        self.route.pop();
    }

    /// The node being walked, as a message names it.
    fn whole(&self) -> String {
        let route = spelled(&self.route);
        if route.is_empty() { format!("this {}", self.kind) } else { format!("`{route}`") }
    }

    /// The first line of a node: a label over a whole mapping would hide the file.
    fn head(&self, id: NodeId) -> Range<usize> {
        let node = self.document.node(id);
        match &node.kind {
            NodeKind::Mapping(entries) => entries.first().map(|(key, _)| self.document.node(*key).span.clone()),
            NodeKind::Sequence(items) => items.first().map(|item| self.head(self.document.resolve(*item))),
            _ => None,
        }
        .unwrap_or_else(|| node.span.clone())
    }

    fn entries(&self, id: NodeId) -> Vec<(NodeId, NodeId)> {
        match &self.document.node(id).kind {
            NodeKind::Mapping(entries) => entries.clone(),
            _ => Vec::new(),
        }
    }

    fn word(&self, key: NodeId) -> &str {
        match &self.document.node(key).kind {
            NodeKind::Scalar { text, .. } => text,
            _ => "",
        }
    }
}

fn is_number(text: &str, style: Style) -> bool {
    let number = matches!(core_type(text, style), Core::Int(_) | Core::Float(_));
    number && text.parse().is_ok_and(|number: f64| number.is_finite())
}

/// `ends.a.runs[1].cable`.
fn spelled(route: &[Segment]) -> String {
    route.iter().fold(String::new(), |route, segment| match segment {
        Segment::Key(key) if route.is_empty() => key.clone(),
        Segment::Key(key) => format!("{route}.{key}"),
        Segment::Index(index) => format!("{route}[{index}]"),
    })
}

/// `a, b and c` without the Oxford question: plain commas.
fn list<T: ToString>(words: impl IntoIterator<Item = T>) -> String {
    words.into_iter().map(|word| word.to_string()).collect::<Vec<_>>().join(", ")
}
