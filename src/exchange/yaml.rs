//! A text as a YAML scalar on one line.

use std::fmt::Write as _;

use crate::text::plain::{upsets, upsets_at};

/// A value as it stands behind a key: plain where that is safe, else in double quotes.
#[must_use]
pub fn scalar(text: &str) -> String {
    if is_plain(text) { text.to_owned() } else { quoted(text) }
}

/// In double quotes, with what nobody sees, or what turns the direction of writing, spelled out.
fn quoted(text: &str) -> String {
    let mut out = String::from('"');
    for (at, c) in text.char_indices() {
        match c {
            '"' | '\\' => out.extend(['\\', c]),
            '\n' => out.push_str("\\n"),
            '\t' => out.push_str("\\t"),
            '\r' => out.push_str("\\r"),
            c if upsets_at(text, at) || matches!(c, '\u{fffe}' | '\u{ffff}') => {
                // Writing to a string cannot fail.
                let _ = match u32::from(c) {
                    code @ 0..=0xffff => write!(out, "\\u{code:04x}"),
                    code => write!(out, "\\U{code:08x}"),
                };
            }
            c => out.push(c),
        }
    }
    out.push('"');
    out
}

/// Whether YAML takes an unquoted text for the text it is.
fn is_plain(text: &str) -> bool {
    let starts_well = text.chars().next().is_some_and(char::is_alphabetic);
    let inside = |c: char| !upsets(c) && !matches!(c, '\u{85}' | '\u{2028}' | '\u{2029}' | '\u{fffe}' | '\u{ffff}');
    starts_well
        && text.trim() == text
        && text.chars().all(inside)
        && !text.contains(": ")
        && !text.contains(" #")
        && !text.ends_with(':')
        && !text.contains(['{', '}', '[', ']', ','])
        && !is_a_word_of_yaml(text)
}

/// Words that some reader of YAML takes for something else than text.
fn is_a_word_of_yaml(text: &str) -> bool {
    let words = ["null", "true", "false", "yes", "no", "on", "off", "y", "n"];
    words.contains(&text.to_lowercase().as_str())
}

/// A quantity as it stands behind a key: a number and a unit are safe as they are.
#[must_use]
pub fn quantity(words: &str) -> String {
    let safe = |c: char| c.is_alphanumeric() || matches!(c, ' ' | '.' | '-' | '/' | '°' | '\'' | '²' | '³' | '·');
    let starts = words.starts_with(|c: char| c.is_ascii_digit() || c == '-');
    let number = words.parse::<f64>().is_ok();
    if starts && words.chars().all(safe) && !number { words.to_owned() } else { scalar(words) }
}

#[cfg(test)]
mod tests {
    use super::{quantity, scalar};
    use crate::source::parse;

    #[test]
    fn what_is_written_is_read_back_as_text() {
        for text in [
            "Harbour mast",
            "=1+1",
            "yes",
            "No",
            "12",
            "a: b",
            "a #b",
            "#a",
            "- a",
            "é, ü",
            "\"q\"",
            "two\nlines",
            "a:",
            "tab\there",
            "\u{202e}turned",
            " lead",
            "trail ",
            "[x]",
            "{x}",
            "*a",
            "&a",
            "!a",
            "%a",
            "@a",
            "`a",
            "|",
            ">",
            "null",
            "~",
            "2026-05-18",
            "\u{0}",
            "''",
            "?",
            "a\u{2028}b",
            "1e3",
            "\u{feff}bom",
            "back\\slash",
        ] {
            let written = format!("kind: site\ntitle: {}\n", scalar(text));
            let parsed = parse(&written);
            assert!(parsed.faults.is_empty(), "{written}: {:?}", parsed.faults);
            let document = &parsed.documents[0];
            let (_, value) = document.get(document.root(), "title").expect("a title");
            assert_eq!(document.text(value), Some(text), "{written}");
        }
        assert_eq!(scalar("Harbour mast"), "Harbour mast");
        assert_eq!(quantity("47.115310° N"), "47.115310° N");
        assert_eq!(quantity("47°06'55.1\" N"), "\"47°06'55.1\\\" N\"");
    }
}
