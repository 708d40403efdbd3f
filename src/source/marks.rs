//! Where the parser says things are, fixed where it says so oddly.
//!
//! A mark of the parser comes in, with the text around it; a byte range goes out that a person
//! would draw. Four things are odd: a list written at the indentation of its key is marked after
//! its first dash, a value that is not written is marked before its colon, text under a `|` or `>`
//! is marked without that sign, and all of them keep the blank lines that follow.

use granit_parser::Span as Mark;

use super::tree::Span;

/// The bytes of a mark, kept within the text whatever the parser says.
pub(super) fn span(text: &str, mark: &Mark) -> Span {
    let range = mark.byte_range().unwrap_or_default();
    let start = text.floor_char_boundary(range.start);
    start..text.floor_char_boundary(range.end).max(start)
}

/// The start of a block list that is the value of a key: at its first dash.
pub(super) fn value_list(text: &str, marked: Span) -> Span {
    let before = text[..marked.start].trim_end_matches([' ', '\t']);
    if last_line(before).trim_start() == "-" { before.len() - 1..marked.end } else { marked }
}

/// The place of a value that is not written: after its colon, if there is one.
pub(super) fn unwritten_value(text: &str, marked: Span) -> Span {
    let rest = text[marked.start..].trim_start_matches([' ', '\t']);
    if rest.starts_with(':') {
        let after = text.len() - rest.len() + 1;
        return after..after;
    }
    marked
}

/// From the `|` or `>` to the last line with text. The sign follows `after`, the previous token.
pub(super) fn block_scalar(text: &str, after: usize, marked: &Span) -> Span {
    let between = text.get(after..marked.start).unwrap_or_default().trim_end();
    let header = last_line(between);
    let sign = header
        .match_indices(['|', '>'])
        .map(|(at, _)| at)
        .find(|&at| at == 0 || header[..at].ends_with([' ', '\t']))
        .map(|at| after + between.len() - header.len() + at);
    let start = sign.unwrap_or(marked.start);
    start..start + text[start..marked.end].trim_end().len()
}

fn last_line(text: &str) -> &str {
    text.rsplit(['\n', '\r']).next().unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::{block_scalar, unwritten_value, value_list};

    #[test]
    fn a_list_at_its_keys_indentation_starts_at_the_dash() {
        assert_eq!(value_list("a:\n-  x", 6..6), 3..6);
        assert_eq!(value_list("a:\n-\n  x", 4..4), 3..4);
        assert_eq!(value_list("a:\n  - - x", 5..5), 5..5);
    }

    #[test]
    fn an_unwritten_value_follows_the_colon() {
        assert_eq!(unwritten_value("a :\nb: 1", 1..1), 3..3);
        assert_eq!(unwritten_value("{a, b}", 2..2), 2..2);
    }

    #[test]
    fn a_block_scalar_starts_at_its_sign_and_ends_with_its_text() {
        let text = "a: &x|y >-  # |\n\n  > b\n\n";
        assert_eq!(&text[block_scalar(text, 1, &(19..text.len()))], ">-  # |\n\n  > b");
        assert_eq!(block_scalar("a: |\n\n", 1, &(3..6)), 3..4);
    }
}
