//! Text for XML: markup is spelled out, and what XML cannot write is replaced.

/// Text as XML takes it. For control characters, and the two XML has no way to write, `instead` says what to put.
#[must_use]
pub fn escaped(text: &str, instead: impl Fn(char) -> &'static str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            c if c.is_control() || ('\u{fffe}'..='\u{ffff}').contains(&c) => out.push_str(instead(c)),
            c => out.push(c),
        }
    }
    out
}
