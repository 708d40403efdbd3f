//! A paragraph in the columns of a terminal.

/// Writes a paragraph `width` columns wide, what follows its first line set two further in. A number stays with the word
/// after it where that `binds`. Text of a specification cannot steer the terminal.
pub fn paragraph(out: &mut String, width: usize, indent: usize, text: &str, binds: impl Fn(&str) -> bool) {
    let clean: String = text.chars().map(|c| if c.is_control() || steers(c) { '?' } else { c }).collect();
    let mut line = " ".repeat(indent);
    let mut empty = true;
    for word in &bound(&clean, binds) {
        if !empty && line.chars().count() + 1 + word.chars().count() > width {
            out.push_str(line.trim_end());
            out.push('\n');
            line = " ".repeat(indent + 2);
            empty = true;
        }
        if !empty {
            line.push(' ');
        }
        line.push_str(word);
        empty = false;
    }
    out.push_str(line.trim_end());
    out.push('\n');
}

/// The words of a paragraph, a number together with what binds to it.
fn bound(text: &str, binds: impl Fn(&str) -> bool) -> Vec<String> {
    let mut words: Vec<String> = Vec::new();
    for word in text.split(' ').filter(|word| !word.is_empty()) {
        match words.last_mut() {
            Some(last) if last.parse::<f64>().is_ok() && binds(word) => {
                last.push(' ');
                last.push_str(word);
            }
            _ => words.push(word.to_owned()),
        }
    }
    words
}

/// The marks that turn the direction of writing.
fn steers(c: char) -> bool {
    matches!(c, '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' | '\u{feff}')
}
