//! Single values: quantities, text, ids, choices, counts.

use std::ops::Range;

use serde_yaml::Value;

use super::check::Walk;
use super::keys::{decimals_after, list};
use super::{Mention, Shape};
use crate::finding::faults::BAD_VALUE;
use crate::place::Step;
use crate::source::{Core, NodeId, Style, ambiguous, core_type};
use crate::spec::{Date, LONGEST_ID, LONGEST_TITLE, LeastVersion, STANDARD};
use crate::text::nearest::{did_you_mean, nearest};
use crate::text::plain::upsets;
use crate::units;

/// The question what was meant, with its reason.
fn asked(meant: &units::Meant) -> String {
    let question = did_you_mean(&meant.text);
    if meant.why.is_empty() {
        question
    } else {
        format!("{question} {}{}.", meant.why[..1].to_uppercase(), &meant.why[1..])
    }
}

impl Walk<'_> {
    pub(super) fn scalar(&mut self, id: NodeId, text: &str, style: Style, shape: &Shape, key: Option<&Range<usize>>) {
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
        let before = self.faults;
        match shape {
            Shape::Quantity(kind, bounds) => self.quantity(id, kind, *bounds, text),
            Shape::Text => return self.text(id, text, style),
            Shape::Title if self.is_fit_for_a_page(id, text) => return self.text(id, text, style),
            Shape::Id => self.id(id, text, style),
            Shape::Reference(kind) => {
                match text.strip_prefix(STANDARD) {
                    Some(name) => self.standard(id, name, text, style),
                    None => self.id(id, text, style),
                }
                let span = self.uses.first().cloned().unwrap_or_else(|| self.document.node(id).span.clone());
                let (file, is_part) = (self.file, self.parts > 0);
                self.done.mentions.push(Mention { kind: *kind, id: text.to_owned(), file, span, is_part });
            }
            Shape::Date => self.date(id, text),
            Shape::LeastVersion if LeastVersion::read(text).is_none() => {
                let help = "write the least version that will do, quoted: `requires: \">=0.1\"`";
                self.bad(id, &format!("cannot be `{text}`"), "no version to ask for", help);
            }
            Shape::Choice(words) if !words.iter().any(|word| word == text) => self.choice(id, text, words),
            Shape::Count(allowed) => self.count(id, text, style, allowed),
            Shape::Flag if !matches!(core_type(text, style), Core::Bool(_)) => {
                self.bad(id, "is either `true` or `false`", "neither", "write `true` or `false`, unquoted");
            }
            Shape::Number(least) => self.number(id, text, style, *least, &shape.example()),
            _ => {}
        }
        if self.faults > before {
            self.refill(shape, self.document.node(id).span.clone());
        }
    }

    /// Whether the key is a height above ground.
    fn is_height(&self) -> bool {
        matches!(self.route.last(), Some(Step::Key("height" | "base_height")))
    }

    /// Whether the source goes on with a comma and a digit right after a value in a mapping: a decimal comma inside braces.
    fn comma_ends(&self, id: NodeId) -> bool {
        let end = self.document.node(id).span.end;
        matches!(self.route.last(), Some(Step::Key(_))) && decimals_after(self.text, end)
    }

    fn number(&mut self, id: NodeId, text: &str, style: Style, least: Option<f64>, example: &str) {
        if !is_number(text, style) {
            let help = format!("write it without unit or quotes, such as `{example}`");
            self.bad(id, "is a plain number", "not a number", &help);
        } else if let Some(least) = least.filter(|least| text.parse().is_ok_and(|number: f64| number < *least)) {
            self.bad(id, &format!("cannot be {text}"), "less than it can be", &format!("write {least} or more"));
        }
    }

    fn choice(&mut self, id: NodeId, text: &str, words: &[String]) {
        let begins = |word: &&str| !text.is_empty() && word.to_lowercase().starts_with(&text.to_lowercase());
        let mut beginning = words.iter().map(String::as_str).filter(begins);
        let only = beginning.next().filter(|_| beginning.next().is_none());
        let help = match only.or_else(|| nearest(text, words.iter().map(String::as_str))) {
            Some(guess) => format!("{} It is one of: {}", did_you_mean(guess), list(words)),
            None => format!("one of: {}", list(words)),
        };
        self.bad(id, &format!("cannot be `{text}`"), "not one of the choices", &help);
    }

    fn date(&mut self, id: NodeId, text: &str) {
        let Some(date) = Date::read(text) else {
            let help = match Date::read_other(text).as_slice() {
                [] => "write YYYY-MM-DD, such as `2026-05-18`".to_owned(),
                [only] => format!("{} Days are written YYYY-MM-DD", did_you_mean(only)),
                [one, other, ..] => format!("is that `{one}` or `{other}`? Days are written YYYY-MM-DD"),
            };
            return self.bad(id, "is not a calendar date", "not a date", &help);
        };
        let (first, last) = Date::YEARS;
        if !(first..=last).contains(&date.year) {
            let help = format!("years from {first} to {last}: nothing was surveyed, built or agreed outside them");
            self.bad(id, &format!("cannot be in the year {}", date.year), "not a year of this", &help);
        }
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

    fn quantity(&mut self, id: NodeId, kind: &'static units::Kind, bounds: [Option<f64>; 2], text: &str) {
        let node = self.document.node(id).span.clone();
        let [least, most] = bounds;
        let fault = match units::read(kind, text) {
            Err(fault) => fault,
            Ok(value) => {
                let below = least.is_some_and(|least| value < least);
                if below || most.is_some_and(|most| value > most) {
                    let limits = format!("allowed: {}", kind.limits(bounds));
                    let meant = kind.meant(text, bounds);
                    let help = match &meant {
                        Some(meant) => {
                            format!("{} Allowed: {}", asked(meant), kind.limits(bounds))
                        }
                        None if self.is_height() && !below => {
                            "is that above sea level? Give the height above the ground of the site".into()
                        }
                        None => limits,
                    };
                    let label = if below { "too low" } else { "too high" };
                    self.bad(id, &format!("cannot be {text}"), label, &help);
                }
                return;
            }
        };
        // Narrow to the part at fault where the source spells the text letter for letter, quotes aside.
        let spelled = self.text.get(node.clone()).and_then(|source| source.find(text)).map(|at| node.start + at);
        let span = match spelled {
            Some(at) => at + fault.span.start..at + fault.span.end,
            None => node,
        };
        if self.comma_ends(id) {
            // The rest of the number was taken for a key, which says what happened.
            self.faults += 1;
            return;
        }
        let meant = kind.meant(text, bounds);
        let help = match &meant {
            Some(meant) if fault.unit.is_none() => asked(meant),
            _ if fault.out_of_range && kind.name != "latitude" => format!("allowed: {}", kind.limits(bounds)),
            _ => fault.help,
        };
        let message = format!("{}: {}", self.whole(), fault.reason);
        let out_of_range = fault.out_of_range;
        let article = if kind.name.starts_with(['a', 'e', 'i', 'o', 'u']) { "an" } else { "a" };
        let label =
            if out_of_range { "not possible here".into() } else { format!("should be {article} {}", kind.name) };
        self.report(&BAD_VALUE, span.clone(), message, label, help);
        if let (Some(unit), Some(_)) = (fault.unit, spelled) {
            self.fixable(&span, unit.to_owned());
        } else if let (Some(meant), Some(at)) = (meant.filter(|meant| meant.certain), spelled) {
            self.fixable_at(&span, &(at..at + text.len()), meant.text);
        }
    }

    fn text(&mut self, id: NodeId, text: &str, style: Style) {
        if text.is_empty() {
            self.bad(id, "is empty", "nothing in the quotes", "write some text, or leave the key out if it may be");
            return self.repair(Some(Value::from("…")));
        }
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
                Some(Step::Key(key)) => format!("{key}: \"{text}\""),
                _ => format!("- \"{text}\""),
            };
            self.bad(id, "is text, and unquoted it is not", &format!("read as {what}"), &format!("quote it: `{line}`"));
            let span = self.document.node(id).span.clone();
            if self.text.get(span.clone()) == Some(text) && !text.contains(['"', '\\']) {
                self.fixable(&span, format!("\"{text}\""));
            }
            // What was meant is plain enough to go on with.
            self.repair(Some(Value::from(text)));
        }
    }

    /// Whether a title can stand in a heading; if not, that is said.
    fn is_fit_for_a_page(&mut self, id: NodeId, text: &str) -> bool {
        let length = text.chars().count();
        let seen = text.is_empty() || text.chars().any(|c| !c.is_whitespace() && !upsets(c));
        if length > LONGEST_TITLE {
            let help = format!("at most {LONGEST_TITLE}: it stands in headings and tables; a note may say more");
            self.bad(id, &format!("has {length} characters"), "too long for a page", &help);
        } else if !seen {
            self.bad(id, "holds nothing that can be seen", "nothing to read", "write a word or more");
        }
        length <= LONGEST_TITLE && seen
    }

    /// The name of a standard part, without and with what it starts with.
    fn standard(&mut self, id: NodeId, name: &str, text: &str, style: Style) {
        let before = self.faults;
        self.id(id, name, Style::Quoted);
        if self.faults == before {
            self.text(id, text, style);
        }
    }

    fn id(&mut self, id: NodeId, text: &str, style: Style) {
        let word = |part: &str| !part.is_empty() && part.bytes().all(|b| b.is_ascii_lowercase() || b.is_ascii_digit());
        if text.len() > LONGEST_ID {
            let message = format!("is an id of {} characters", text.chars().count());
            let help =
                format!("an id has at most {LONGEST_ID} characters: it names files, and stands in narrow columns");
            return self.bad(id, &message, "too long", &help);
        }
        if text.split('-').all(word) {
            return self.text(id, text, style);
        }
        if text.starts_with(STANDARD) {
            let help = "`std:` names what the program ships; give a part of your own another id";
            return self.bad(id, &format!("cannot be `{text}`"), "the name of a standard part", help);
        }
        let help = "an id has lower-case letters, digits and single hyphens, such as `north-mast`";
        self.bad(id, &format!("cannot be `{text}`"), "not an id", help);
    }
}

fn is_number(text: &str, style: Style) -> bool {
    let number = matches!(core_type(text, style), Core::Int(_) | Core::Float(_));
    number && text.parse().is_ok_and(|number: f64| number.is_finite())
}
