//! What is said about a text, in our own words.
//!
//! A fault found by `build` or an error of the parser comes in, and a [`TreeFault`] goes out: a
//! clause that a planner can follow, a hint where there is a usual cure, and, from the parser, at
//! least one visible character to underline. The parser knows some eighty errors; many of them mean the same to the
//! person who typed.

use granit_parser::{ErrorKind, ScanError};

use super::tree::{MAX_DEPTH, MAX_NODES, Span, TreeFault, TreeFaultKind};
use crate::text::nearest::did_you_mean;

/// The longest name that a message repeats in full, in characters.
const LONGEST_NAME: usize = 40;

pub(super) fn complex_key(span: Span) -> TreeFault {
    TreeFault::new(TreeFaultKind::ComplexKey, span, "a key cannot be a list or a mapping")
        .help("put text that starts with a bracket in quotes")
}

pub(super) fn merge_key(span: Span) -> TreeFault {
    TreeFault::new(TreeFaultKind::MergeKey, span, "merge keys are not part of YAML 1.2")
        .help("write the keys out or alias the whole value")
}

pub(super) fn duplicate_key(span: Span, key: &str, first: Span) -> TreeFault {
    let message = format!("duplicate key {}", quoted(key));
    TreeFault::new(TreeFaultKind::DuplicateKey, span, message).because(Some(first)).help("keep one of them")
}

pub(super) fn recursive_alias(span: Span, anchor: Option<Span>) -> TreeFault {
    let message = "this alias repeats a value that contains it";
    TreeFault::new(TreeFaultKind::RecursiveAlias, span, message)
        .because(anchor)
        .help("write this value out, or give the anchor to a smaller one")
}

/// `near` is a known anchor with a similar name, and its place.
pub(super) fn unknown_alias(span: Span, name: &str, near: Option<(&str, Option<Span>)>) -> TreeFault {
    let message = format!("no anchor {} comes before this alias", quoted(&format!("&{name}")));
    let fault = TreeFault::new(TreeFaultKind::UnknownAlias, span, message);
    match near {
        Some((near, place)) => fault.because(place).help(did_you_mean(short(&format!("*{near}")))),
        None => fault,
    }
}

pub(super) fn foreign_tag(text: &str, span: Span, complaint: &str) -> TreeFault {
    let message = format!("the tag {} {complaint}", quoted(&text[span.clone()]));
    TreeFault::new(TreeFaultKind::ForeignTag, span, message).help("remove it")
}

pub(super) fn too_deep(span: Span) -> TreeFault {
    let message = format!("lists and mappings are nested more than {MAX_DEPTH} deep");
    TreeFault::new(TreeFaultKind::TooDeep, span, message)
}

pub(super) fn too_many_nodes(span: Span) -> TreeFault {
    let message = format!("the file has more than {MAX_NODES} nodes, each alias counted in full");
    TreeFault::new(TreeFaultKind::TooManyNodes, span, message)
}

/// Words an error that ended a document.
pub(super) fn syntax(text: &str, error: &ScanError) -> TreeFault {
    let span = visible(text, fault_start(text, error));
    let plain = |message: String| TreeFault::new(TreeFaultKind::Malformed, span.clone(), message);
    match error.kind() {
        ErrorKind::RecursionLimitExceeded => too_deep(span),
        ErrorKind::UndeclaredTagHandle => {
            let length = text[span.start..].find([' ', '\t', '\n', '\r', ',', ']', '}']);
            let end = length.map_or(text.len(), |length| span.start + length);
            foreign_tag(text, span.start..end.max(span.end), "is not known here")
        }
        ErrorKind::UnclosedFlowCollection { open } => plain(format!("this `{open}` is never closed")),
        ErrorKind::MismatchedFlowCollectionEnd { open, close } => {
            plain(format!("this `{open}` is closed by `{close}`"))
        }
        ErrorKind::MappingValueNotAllowed | ErrorKind::InvalidColonPlacement
            if unclosed(text, span.start).is_some() =>
        {
            let open = unclosed(text, span.start).unwrap_or(span);
            let message = format!("this `{}` is not closed before the next key", &text[open.clone()]);
            TreeFault::new(TreeFaultKind::Malformed, open, message).help("close the bracket on the line it opens")
        }
        ErrorKind::UnexpectedCharacter { character } if character.is_control() => {
            let code = u32::from(*character);
            plain(format!("the control character U+{code:04X} cannot stand here"))
        }
        ErrorKind::UnexpectedCharacter { character } => {
            plain(format!("text cannot start with `{character}`")).help("put the text in quotes")
        }
        _ if indented_by_tab(text, span.start) => {
            plain("a tab cannot indent".into()).help("the line starts with a tab: delete it, and indent with spaces")
        }
        other => {
            let (message, help) = grammar(other);
            let fault = plain(message.to_owned());
            if help.is_empty() { fault } else { fault.help(help) }
        }
    }
}

/// Whether a tab is among what stands before a place on its line, and nothing but space.
fn indented_by_tab(text: &str, at: usize) -> bool {
    let line = text[..at].rfind('\n').map_or(0, |end| end + 1);
    let ahead = &text[line..at];
    let rest = text[at..].chars().next();
    ahead.chars().all(char::is_whitespace) && (ahead.contains('\t') || rest == Some('\t'))
}

/// Where an error is: a tab, unlike all else, is marked from behind or from the line before.
fn fault_start(text: &str, error: &ScanError) -> usize {
    let at = text.floor_char_boundary(error.marker().byte_offset().unwrap_or(text.len()));
    if !is_tab(error.kind()) || text[at..].starts_with('\t') {
        return at;
    }
    if text[..at].ends_with('\t') {
        return at - 1;
    }
    let mut lines = text[at..].match_indices('\n').map(|(length, _)| at + length + 1);
    let indenting = |line: usize| {
        let blank = text[line..].find(|c| !matches!(c, ' ' | '\t')).map_or(text.len(), |length| line + length);
        text[line..blank].find('\t').map(|length| line + length)
    };
    lines.find_map(indenting).unwrap_or(at)
}

/// The bracket that the line above `at` opens and does not close: the usual cause of a colon out of place.
fn unclosed(text: &str, at: usize) -> Option<Span> {
    let line_at = text[..at].rfind('\n')?;
    let above_at = text[..line_at].rfind('\n').map_or(0, |end| end + 1);
    let mut open = Vec::new();
    let mut quote = None;
    for (length, c) in text[above_at..line_at].char_indices() {
        match (quote, c) {
            (Some(mark), _) if c == mark => quote = None,
            (None, '"' | '\'') => quote = Some(c),
            (None, '#') if text[..above_at + length].ends_with([' ', '\t']) => break,
            (None, '[' | '{') => open.push(above_at + length),
            (None, ']' | '}') => {
                open.pop();
            }
            _ => {}
        }
    }
    open.last().map(|&start| start..start + 1)
}

/// A name from the file, between backticks, cut if long and without control characters.
fn quoted(name: &str) -> String {
    format!("`{}`", short(name))
}

/// A name without what could harm a terminal, and not without end.
fn short(name: &str) -> String {
    let clean = |c: char| {
        if c.is_control() { char::REPLACEMENT_CHARACTER } else { c }
    };
    let mut shown: String = name.chars().take(LONGEST_NAME).map(clean).collect();
    if name.chars().nth(LONGEST_NAME).is_some() {
        shown.push('…');
    }
    shown
}

/// The character at `at`, or at the end of a line or file the last one before it that shows.
///
/// Empty only if there is no such character.
pub(super) fn visible(text: &str, at: usize) -> Span {
    let at = text.floor_char_boundary(at);
    let here = text[at..].chars().next().filter(|c| !matches!(c, '\n' | '\r'));
    if let Some(here) = here {
        return at..at + here.len_utf8();
    }
    let before = text[..at].trim_end();
    let last = before.chars().next_back().map_or(0, char::len_utf8);
    before.len() - last..before.len()
}

/// What is wrong, and what to do about it; the latter may be empty.
type Said = (&'static str, &'static str);

fn grammar(kind: &ErrorKind) -> Said {
    in_brackets(kind).or_else(|| in_quotes(kind)).or_else(|| in_lines(kind)).unwrap_or_else(|| elsewhere(kind))
}

fn in_brackets(kind: &ErrorKind) -> Option<Said> {
    use ErrorKind as E;
    Some(match kind {
        E::MisplacedFlowCollectionEnd => ("this bracket closes nothing", ""),
        E::UnexpectedEofFlowSequence
        | E::UnexpectedEofFlowMapping
        | E::UnexpectedEofImplicitFlowMapping
        | E::ExpectedFlowMappingSeparator
        | E::ExpectedFlowSequenceSeparator
        | E::FlowMappingValueAdjacentCollection => {
            ("a `,` or a closing bracket is missing here", "separate the entries by commas and close the bracket")
        }
        E::BlockEntryInFlowCollection | E::PlainScalarStartsWithDashFlowIndicator => {
            ("a `-` cannot start an item inside brackets", "separate the items by commas")
        }
        _ => return None,
    })
}

fn in_quotes(kind: &ErrorKind) -> Option<Said> {
    use ErrorKind as E;
    Some(match kind {
        E::UnclosedQuotedScalar | E::DocumentIndicatorInQuotedScalar => ("this quote is never closed", ""),
        E::InvalidTrailingSingleQuotedScalar | E::InvalidTrailingDoubleQuotedScalar => {
            ("there is something after the closing quote", "write a quote inside quotes as `''` or `\\\"`")
        }
        E::UnknownQuotedScalarEscape
        | E::InvalidQuotedScalarHexEscape
        | E::InvalidLowSurrogateHexEscape
        | E::InvalidLowSurrogate
        | E::MissingLowSurrogate
        | E::UnpairedLowSurrogate
        | E::InvalidUnicodeEscape => (
            "this text has a backslash escape that YAML does not know",
            "write `\\\\` for a backslash, or use single quotes",
        ),
        _ => return None,
    })
}

/// Keys, items and how far they are indented.
fn in_lines(kind: &ErrorKind) -> Option<Said> {
    use ErrorKind as E;
    Some(match kind {
        E::MappingValueNotAllowed | E::InvalidColonPlacement => (
            "a `:` cannot stand here",
            "put text with a colon in quotes, and start each key at the same column as the other keys",
        ),
        E::SimpleKeyExpected | E::InvalidSimpleKey | E::InvalidMappingValueWhitespace => {
            ("a key needs a `:` and a space after it", "")
        }
        E::ExpectedBlockMappingKey | E::MappingKeyNotAllowed | E::UnexpectedEofBlockMapping => {
            ("a key was expected here", "start each key at the same column as the other keys")
        }
        E::ExpectedBlockSequenceEntry | E::UnexpectedEofBlockSequence => {
            ("a list item was expected here", "start each `- ` at the same column as the other keys")
        }
        E::BlockSequenceEntryNotAllowed | E::InvalidBlockEntryWhitespace => {
            ("a list item cannot stand here", "start each `- ` on its own line, at the same column as the other keys")
        }
        E::InvalidIndentation
        | E::InvalidQuotedScalarIndent
        | E::InvalidFlowScalarIndent
        | E::InvalidBlockScalarIndent
        | E::ZeroBlockScalarIndent => ("the indentation fits nothing above it", ""),
        E::InvalidBlockScalarHeader => ("text under `|` or `>` starts on the next line", ""),
        _ => return None,
    })
}

fn elsewhere(kind: &ErrorKind) -> Said {
    use ErrorKind as E;
    match kind {
        E::CommentNotSeparated => ("a comment needs a space before its `#`", ""),
        E::CommentInterceptedScalar => ("a comment interrupts the text here", ""),
        E::BomInsideDocument => {
            ("an invisible byte-order mark (U+FEFF) stands inside the document", "delete it; it may only open the file")
        }
        E::MissingAnchorOrAliasName => ("a name is missing after `&` or `*`", ""),
        E::InvalidDocumentEnd => ("nothing but a comment may follow `...`", ""),
        E::ExpectedDocumentStart => (
            "the document is complete before this",
            "keep all of it in one mapping, or start a new document with `---`",
        ),
        kind if is_tab(kind) => ("a tab cannot indent", "indent with spaces"),
        kind if is_directive(kind) => ("this `%` directive is not understood", "remove the line"),
        kind if is_tag(kind) => ("this tag is not well formed", "remove it"),
        _ => ("this is not valid YAML", ""),
    }
}

fn is_tab(kind: &ErrorKind) -> bool {
    use ErrorKind as E;
    matches!(
        kind,
        E::TabNotAllowed
            | E::TabInBlockIndentation
            | E::TabInIndentation
            | E::TabAtBlockScalarStart
            | E::TabInPlainScalar
    )
}

fn is_directive(kind: &ErrorKind) -> bool {
    use ErrorKind as E;
    matches!(
        kind,
        E::DuplicateVersionDirective
            | E::UnsupportedYamlMajorVersion
            | E::DuplicateTagDirective
            | E::MissingDocumentEndBeforeDirective
            | E::ExpectedTagDirectiveBang
            | E::InvalidTagDirectiveTerminator
            | E::InvalidDirectiveTerminator
            | E::MissingYamlVersionSeparator
            | E::MissingYamlVersion
            | E::YamlVersionTooLong
            | E::MissingDirectiveName
            | E::InvalidDirectiveName
            | E::DirectiveByteLimitExceeded { .. }
            | E::TooManyReservedDirectiveParams { .. }
    )
}

fn is_tag(kind: &ErrorKind) -> bool {
    use ErrorKind as E;
    matches!(
        kind,
        E::ExpectedTagBang
            | E::InvalidGlobalTagCharacter
            | E::InvalidTagTerminator
            | E::MissingTagUri
            | E::UnclosedVerbatimTag
            | E::InvalidTagEscape
            | E::InvalidTagUtf8LeadingByte
            | E::InvalidTagUtf8TrailingByte
            | E::InvalidTagUtf8
    )
}
