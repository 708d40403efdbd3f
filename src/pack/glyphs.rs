//! Text that the fonts of a pack cannot set.
//!
//! An archival PDF may hold no character without a glyph. A name in a script we ship no font for must not stop a pack and
//! must not vanish from it either: each such character is spelled by its number, `[U+4E2D]`.

use std::fmt::Write as _;

use serde_json::Value;
use typst::text::Font;

/// Spells what no font covers, in every string below `value`.
pub(super) fn spell_uncovered(value: &mut Value, fonts: &[Font]) {
    match value {
        Value::String(text) if text.chars().all(|c| covered(c, fonts)) => {}
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
        }
        Value::Array(values) => values.iter_mut().for_each(|value| spell_uncovered(value, fonts)),
        Value::Object(fields) => fields.values_mut().for_each(|value| spell_uncovered(value, fonts)),
        Value::Null | Value::Bool(_) | Value::Number(_) => {}
    }
}

fn covered(c: char, fonts: &[Font]) -> bool {
    let private = matches!(c, '\u{e000}'..='\u{f8ff}' | '\u{f0000}'..);
    c == '\n' || (!c.is_control() && !private && fonts.iter().all(|font| font.info().coverage.contains(u32::from(c))))
}
