//! Text that the fonts of a pack cannot set.
//!
//! An archival PDF may hold no character without a glyph. A name in a script we ship no font for must not stop a pack and
//! must not vanish from it either: each such character is spelled by its number, `[U+4E2D]`. Nor may a word without end run
//! out of the page.

use std::fmt::Write as _;

use serde_json::Value;
use typst::text::Font;

/// A word of more letters than this may break anywhere.
const LONGEST_WORD: usize = 60;

/// So many letters stay together in such a word; the narrowest column holds them.
const PIECE: usize = 8;

/// Spells what no font covers and lets endless words break, in every string below `value`.
pub(super) fn spell_uncovered(value: &mut Value, fonts: &[Font]) {
    match value {
        Value::String(text) if text.chars().all(|c| covered(c, fonts)) => let_break(text),
        Value::String(text) => {
            let spelled = text.chars().fold(String::with_capacity(text.len()), |mut out, c| {
                if covered(c, fonts) {
                    out.push(c);
                } else {
                    // Writing to a string cannot fail.
                    let _ = write!(out, "[U+{:04X}]", u32::from(c));
                }
                out
            });
            *text = spelled;
            let_break(text);
        }
        Value::Array(values) => values.iter_mut().for_each(|value| spell_uncovered(value, fonts)),
        Value::Object(fields) => fields.values_mut().for_each(|value| spell_uncovered(value, fonts)),
        Value::Null | Value::Bool(_) | Value::Number(_) => {}
    }
}

/// Lets a word that no line can hold break: after every few letters a space of no width.
///
/// The longest words that anybody writes on purpose, file names and keys, stay as they are.
fn let_break(text: &mut String) {
    if text.split_whitespace().all(|word| word.chars().nth(LONGEST_WORD).is_none()) {
        return;
    }
    let piece = |word: &str| {
        let letters: Vec<char> = word.chars().collect();
        let size = if letters.len() > LONGEST_WORD { PIECE } else { letters.len().max(1) };
        letters.chunks(size).map(String::from_iter).collect::<Vec<_>>().join("\u{200b}")
    };
    *text = text.split_inclusive(char::is_whitespace).map(piece).collect();
}

fn covered(c: char, fonts: &[Font]) -> bool {
    let private = matches!(c, '\u{e000}'..='\u{f8ff}' | '\u{f0000}'..);
    c == '\n' || (!c.is_control() && !private && fonts.iter().all(|font| font.info().coverage.contains(u32::from(c))))
}
