//! Findings with the YAML they are about: miette draws, this file decides what it draws.
//!
//! The primary label and its neighbours of the same file share a snippet; labels in other files follow in snippets of
//! their own, and the help comes last. How it looks is decided by the caller, never by the environment.

use std::collections::HashMap;
use std::fmt::{self, Write as _};
use std::ops::Range;
use std::sync::Arc;

use miette::{
    Diagnostic, GraphicalReportHandler, GraphicalTheme, LabeledSpan, MietteError, SourceCode, SourceSpan, SpanContents,
    ThemeCharacters, ThemeStyles,
};

use super::about;
use super::clip::{Clipped, clip};
use super::region::at_least_one;
use crate::finding::Finding;
use crate::finding::rule::Severity;
use crate::network::Files;
use crate::place::FileId;
use crate::source::LineTable;
use crate::text::plain::{spelled, upsets_at};
use crate::verdict::Evaluation;

/// How the output looks.
#[derive(Debug, Clone, Copy)]
pub struct Look {
    /// Columns to fill.
    pub width: usize,
    /// ANSI colours.
    pub colour: bool,
    /// Box-drawing characters; plain ASCII otherwise.
    pub unicode: bool,
}

/// The most findings that are drawn: nobody reads more, and each drawing reads its file again.
const MOST_DRAWN: usize = 100;

/// The findings with their snippets. Of a flood the first are drawn and the rest counted.
#[must_use]
pub fn full<R>(evaluation: &Evaluation<R>, look: Look) -> String {
    let theme = GraphicalTheme {
        characters: if look.unicode { ThemeCharacters::unicode() } else { ThemeCharacters::ascii() },
        styles: if look.colour { ThemeStyles::ansi() } else { ThemeStyles::none() },
    };
    let handler = GraphicalReportHandler::new_themed(theme).with_width(look.width).with_links(false);
    let mut sources = Sources { files: &evaluation.files, look, shown: HashMap::new() };
    let mut out = String::new();
    for finding in evaluation.findings.iter().take(MOST_DRAWN) {
        for (number, card) in sources.cards(finding).iter().enumerate() {
            let mut drawn = String::new();
            // Rendering into a string fails only if a source cannot be read, and ours always can.
            if handler.render_report(&mut drawn, card).is_err() {
                drawn = format!("{card}\n");
            }
            out.push_str(if number == 0 { &drawn } else { snippet_only(&drawn, look.unicode) });
        }
        out.push('\n');
    }
    let left = evaluation.findings.len().saturating_sub(MOST_DRAWN);
    if left > 0 {
        let _ = writeln!(out, "{left} more are not drawn; `--format concise` lists all, `--statistics` counts them\n");
    }
    out
}

/// A drawing without the heading above its snippet.
fn snippet_only(drawn: &str, unicode: bool) -> &str {
    let corner = if unicode { "╭─" } else { ",-" };
    let at = drawn.find(corner).map_or(0, |at| drawn[..at].rfind('\n').map_or(0, |line| line + 1));
    &drawn[at..]
}

/// A finding as miette wants it.
#[derive(Debug)]
struct Card {
    message: String,
    rule: String,
    severity: miette::Severity,
    help: Option<String>,
    source: Option<Arc<Text>>,
    labels: Vec<LabeledSpan>,
}

impl fmt::Display for Card {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.message)
    }
}

impl std::error::Error for Card {}

impl Diagnostic for Card {
    fn code<'a>(&'a self) -> Option<Box<dyn fmt::Display + 'a>> {
        Some(Box::new(&self.rule))
    }

    fn severity(&self) -> Option<miette::Severity> {
        Some(self.severity)
    }

    fn help<'a>(&'a self) -> Option<Box<dyn fmt::Display + 'a>> {
        self.help.as_ref().map(|help| Box::new(help) as Box<dyn fmt::Display>)
    }

    fn source_code(&self) -> Option<&dyn SourceCode> {
        self.source.as_deref().map(|text| text as &dyn SourceCode)
    }

    fn labels(&self) -> Option<Box<dyn Iterator<Item = LabeledSpan> + '_>> {
        (!self.labels.is_empty()).then(|| Box::new(self.labels.iter().cloned()) as Box<dyn Iterator<Item = _>>)
    }
}

/// The text of a file as it may be shown: control characters are taken out, byte for byte.
#[derive(Debug)]
struct Text {
    name: String,
    whole: Arc<str>,
    /// The lines of the text as it is in the file, where columns are counted.
    lines: Arc<Lines>,
    /// Instead of the text where lines of it are too long.
    clipped: Option<Clipped>,
}

/// A text as it is in its file, and its lines.
#[derive(Debug)]
struct Lines {
    text: String,
    table: LineTable,
}

impl Text {
    fn shown(&self) -> &str {
        self.clipped.as_ref().map_or(&*self.whole, |clipped| &clipped.text)
    }
}

impl SourceCode for Text {
    fn read_span<'a>(
        &'a self,
        span: &SourceSpan,
        before: usize,
        after: usize,
    ) -> Result<Box<dyn SpanContents<'a> + 'a>, MietteError> {
        let contents = self.shown().read_span(span, before, after)?;
        // The heading of a snippet asks for the place of the label alone. miette would count bytes; editors count UTF-16.
        let (line, column) = match before {
            0 => {
                let at = self.clipped.as_ref().map_or(span.offset(), |clipped| clipped.whole(span.offset()));
                let position = self.lines.table.position(&self.lines.text, at);
                (position.line - 1, position.column - 1)
            }
            _ => (contents.line(), contents.column()),
        };
        Ok(Box::new(miette::MietteSpanContents::new_named(
            self.name.clone(),
            contents.data(),
            *contents.span(),
            line,
            column,
            contents.line_count(),
        )))
    }
}

struct Sources<'a> {
    files: &'a Files,
    look: Look,
    shown: HashMap<FileId, Arc<Text>>,
}

impl Sources<'_> {
    /// The cards of a finding: one for each file it has labels in, the help on the last.
    fn cards(&mut self, finding: &Finding) -> Vec<Card> {
        let card = |source, labels| Card {
            message: words(&about(finding)),
            rule: format!("{}[{}]", finding.severity, finding.rule.name),
            severity: match finding.severity {
                Severity::Error => miette::Severity::Error,
                Severity::Warning => miette::Severity::Warning,
                Severity::Advice => miette::Severity::Advice,
            },
            help: None,
            source,
            labels,
        };
        let groups = self.groups(finding);
        let mut cards: Vec<Card> = groups
            .into_iter()
            .map(|(file, labels)| self.fitted(file, labels))
            .map(|(text, labels)| card(Some(text), labels))
            .collect();
        if cards.is_empty() {
            cards.push(card(None, Vec::new()));
        }
        if let Some(last) = cards.last_mut() {
            last.help = super::help(finding).as_deref().map(words);
        }
        cards
    }

    /// The labels by file, in the order the files first appear.
    fn groups(&self, finding: &Finding) -> Vec<(FileId, Vec<LabeledSpan>)> {
        let mut groups: Vec<(FileId, Vec<LabeledSpan>)> = Vec::new();
        for (number, label) in finding.labels.iter().enumerate() {
            let Some(found) = self.files.locate(&label.spot) else { continue };
            let make = if number == 0 { LabeledSpan::new_primary_with_span } else { LabeledSpan::new_with_span };
            let mark = make(Some(words(&label.text)), self.visible(found.file, found.span));
            let defined = found
                .definition
                .map(|span| LabeledSpan::new_with_span(Some("defined here".into()), self.visible(found.file, span)));
            let marks = [Some(mark), defined].into_iter().flatten();
            match groups.iter_mut().find(|(file, _)| *file == found.file) {
                Some((_, group)) => group.extend(marks),
                None => groups.push((found.file, marks.collect())),
            }
        }
        groups
    }

    /// The text of a file with the labels in it; lines too long to show are cut around the labels.
    fn fitted(&mut self, file: FileId, labels: Vec<LabeledSpan>) -> (Arc<Text>, Vec<LabeledSpan>) {
        let text = self.text(file);
        // Beside the YAML stand the number of the line, a bar and three spaces.
        let gutter = text.whole.lines().count().to_string().len() + 4;
        let spans: Vec<Range<usize>> =
            labels.iter().map(|label| label.offset()..label.offset() + label.len()).collect();
        let room = self.look.width.saturating_sub(gutter);
        let dots = if self.look.unicode { "…" } else { "..." };
        let Some(clipped) = clip(&text.whole, &spans, room, dots) else { return (text, labels) };
        let moved = labels.into_iter().zip(&spans).map(|(label, span)| {
            let words = label.label().map(str::to_owned);
            let make = if label.primary() { LabeledSpan::new_primary_with_span } else { LabeledSpan::new_with_span };
            make(words, at_least_one(&clipped.text, clipped.shown(span)))
        });
        let labels = moved.collect();
        let (whole, lines) = (Arc::clone(&text.whole), Arc::clone(&text.lines));
        let text = Text { name: text.name.clone(), whole, lines, clipped: Some(clipped) };
        (Arc::new(text), labels)
    }

    fn text(&mut self, file: FileId) -> Arc<Text> {
        let files = self.files;
        let made = self.shown.entry(file).or_insert_with(|| {
            let (name, text) = files.get(file).map_or((String::new(), ""), |file| (spelled(&file.path), &file.text));
            let whole = printable(text);
            let lines = Arc::new(Lines { text: text.to_owned(), table: LineTable::new(text) });
            Arc::new(Text { name, whole: whole.into(), lines, clipped: None })
        });
        Arc::clone(made)
    }

    /// A span miette can draw: at least one character wide and inside the text.
    fn visible(&self, file: FileId, span: Range<usize>) -> SourceSpan {
        let text = self.files.get(file).map_or("", |file| &file.text);
        at_least_one(text, span).into()
    }
}

/// Words with line breaks of our own left in.
fn words(text: &str) -> String {
    text.split('\n').map(spelled).collect::<Vec<_>>().join("\n")
}

/// Control characters of the source must not reach a terminal; each byte of one becomes `?`, so that spans still fit.
fn printable(text: &str) -> String {
    text.char_indices().fold(String::with_capacity(text.len()), |mut out, (at, c)| {
        let stays = matches!(c, '\n' | '\t') || (c == '\r' && text[at + 1..].starts_with('\n'));
        if upsets_at(text, at) && !stays {
            out.extend(std::iter::repeat_n('?', c.len_utf8()));
        } else {
            out.push(c);
        }
        out
    })
}
