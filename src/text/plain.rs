//! Text that nobody vouches for, made inert for whatever shows it.
//!
//! File names, words of git, entries of a baseline and every value of a specification come from strangers. A terminal obeys
//! control characters, a reader believes what the marks of direction turn round or hide, and the runners of forges take some
//! lines for commands. All text passes here last, on its way out.

use std::fmt::Write as _;

/// What reads the text.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Form {
    /// People, in a terminal or a log.
    People,
    /// The same, with colours of our own: the text was made inert before they were put in.
    Coloured,
    /// A program that reads JSON: the data stay, spelled by escapes.
    Json,
    /// A program that reads XML: the data stay, spelled by references.
    Xml,
    /// A runner that is to take our lines for commands; what stands in them has been escaped.
    Commands,
}

/// Whether a character changes more than its own place: controls, what breaks lines, what turns the direction of writing,
/// and what is there and not seen. Tabs and line breaks are among them.
#[must_use]
pub fn upsets(c: char) -> bool {
    if c.is_ascii() {
        return c.is_ascii_control();
    }
    c.is_control()
        || matches!(c,
            '\u{ad}' | '\u{61c}' | '\u{180e}' | '\u{200b}'..='\u{200f}' | '\u{2028}'..='\u{202e}'
            | '\u{2060}'..='\u{206f}' | '\u{feff}' | '\u{fff9}'..='\u{fffb}' | '\u{e0000}'..='\u{e0fff}')
}

/// The same of the character that starts at a byte of a text: the joiner that makes one sign of two pictures, such as a
/// woman and a spanner, hides nothing and stays.
#[must_use]
pub fn upsets_at(text: &str, at: usize) -> bool {
    let (before, rest) = text.split_at(at);
    let mut rest = rest.chars();
    let Some(c) = rest.next() else { return false };
    let mut joins = || {
        // A sign of colour may stand behind the picture, and a wish for one.
        let mut before = before.chars().rev().filter(|c| *c != '\u{fe0f}');
        before.next().is_some_and(pictures) && rest.next().is_some_and(pictures)
    };
    upsets(c) && !(c == '\u{200d}' && joins())
}

/// Whether a character is a picture of its own.
fn pictures(c: char) -> bool {
    matches!(c, '\u{2600}'..='\u{27bf}' | '\u{2b00}'..='\u{2bff}' | '\u{1f300}'..='\u{1faff}')
}

/// Words that stay on their line: what upsets is spelled out, `\u{1b}` for an escape.
#[must_use]
pub fn spelled(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for (at, c) in text.char_indices() {
        if upsets_at(text, at) { spell(&mut out, c) } else { out.push(c) }
    }
    out
}

fn spell(out: &mut String, c: char) {
    // Writing to a string cannot fail.
    let _ = match c {
        '\n' => write!(out, "\\n"),
        '\r' => write!(out, "\\r"),
        '\t' => write!(out, "\\t"),
        c => write!(out, "\\u{{{:x}}}", u32::from(c)),
    };
}

/// The whole text as it may be shown to what reads it.
#[must_use]
pub fn inert(text: &str, form: Form) -> String {
    let mut out = String::with_capacity(text.len() + text.len() / 16);
    for line in text.split_inclusive('\n') {
        let (line, end) = match line.strip_suffix("\r\n") {
            Some(line) => (line, "\r\n"),
            None => line.strip_suffix('\n').map_or((line, ""), |line| (line, "\n")),
        };
        let at = out.len();
        each(&mut out, line, form);
        if form != Form::Commands {
            break_command(&mut out, at, form);
        }
        out.push_str(end);
    }
    out
}

/// One line, character by character.
fn each(out: &mut String, line: &str, form: Form) {
    let mut at = 0;
    loop {
        // Most of a line is letters that upset nothing.
        let plain = line[at..].bytes().take_while(|byte| matches!(byte, b' '..=b'~') && *byte != b'#').count();
        out.push_str(&line[at..at + plain]);
        at += plain;
        let rest = &line[at..];
        let Some(c) = rest.chars().next() else { break };
        if let Some(length) = colour(rest).filter(|_| form == Form::Coloured) {
            out.push_str(&rest[..length]);
            at += length;
            continue;
        }
        if c == '#' && orders(rest) {
            match form {
                Form::Json => out.push_str("\\u0023"),
                Form::Xml => out.push_str("&#35;"),
                Form::People | Form::Coloured | Form::Commands => out.push_str("#\\"),
            }
        } else if c == '\t' || !upsets_at(line, at) {
            out.push(c);
        } else {
            match form {
                Form::Json => c.encode_utf16(&mut [0; 2]).iter().for_each(|unit| {
                    let _ = write!(out, "\\u{unit:04x}");
                }),
                // XML has no way at all to write the lower controls.
                Form::Xml if !c.is_ascii_control() || c == '\u{7f}' => {
                    let _ = write!(out, "&#x{:x};", u32::from(c));
                }
                Form::Xml | Form::People | Form::Coloured | Form::Commands => spell(out, c),
            }
        }
        at += c.len_utf8();
    }
}

/// The length of a change of colour at the start of a text.
fn colour(text: &str) -> Option<usize> {
    let inside = text.strip_prefix("\u{1b}[")?;
    let end = inside.find(|c: char| !c.is_ascii_digit() && c != ';')?;
    inside[end..].starts_with('m').then_some(end + 3)
}

/// Whether a text starts as an order to a runner that may stand anywhere in a line: `##[group]`, `##vso[task]`.
fn orders(text: &str) -> bool {
    let name = text.strip_prefix("##").map(|rest| rest.trim_start_matches(|c: char| c.is_ascii_alphabetic()));
    name.is_some_and(|rest| rest.starts_with('['))
}

/// A line whose first word starts with two colons is a command to a runner, however far it is indented.
fn break_command(out: &mut String, line: usize, form: Form) {
    let mut at = line;
    loop {
        let rest = &out[at..];
        let blank = rest.len() - rest.trim_start().len();
        let skip = blank + colour(&rest[blank..]).unwrap_or_default();
        if skip == 0 {
            break;
        }
        at += skip;
    }
    if out[at..].starts_with("::") {
        match form {
            Form::Xml => out.replace_range(at..=at, "&#58;"),
            // No line of ours starts so in JSON: there a value stands in quotes.
            Form::Json => {}
            Form::People | Form::Coloured | Form::Commands => out.insert(at, '\\'),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{Form, inert, spelled};

    #[test]
    fn what_upsets_is_spelled_out() {
        let text = "a\u{1b}[31mb\u{9b}c\u{202e}d\u{61c}e\u{2028}f\u{200b}g\u{e0041}h\u{7f}i\rj\tk\r\nl\n";
        assert_eq!(
            inert(text, Form::People),
            "a\\u{1b}[31mb\\u{9b}c\\u{202e}d\\u{61c}e\\u{2028}f\\u{200b}g\\u{e0041}h\\u{7f}i\\rj\tk\r\nl\n"
        );
        assert_eq!(spelled("a\nb\tc é"), "a\\nb\\tc é");
        assert_eq!(inert("\u{1b}[31;1mred\u{1b}[0m \u{1b}[2J", Form::Coloured), "\u{1b}[31;1mred\u{1b}[0m \\u{1b}[2J");
    }

    #[test]
    fn a_joiner_stays_between_pictures_and_nowhere_else() {
        for whole in ["👩\u{200d}🔧", "👩🏽\u{200d}🔧", "❤\u{fe0f}\u{200d}🔥"] {
            assert_eq!(spelled(whole), whole);
            assert_eq!(inert(whole, Form::People), whole);
        }
        assert_eq!(spelled("pass\u{200d}word 🔧\u{200d}"), "pass\\u{200d}word 🔧\\u{200d}");
        assert_eq!(spelled("\u{200d}🔧\u{200b}🔧"), "\\u{200d}🔧\\u{200b}🔧");
    }

    #[test]
    fn no_line_is_a_command() {
        assert_eq!(inert("a ::b\n  ::error::x\n::y\n", Form::People), "a ::b\n  \\::error::x\n\\::y\n");
        assert_eq!(inert("\u{a0}\u{3000}::y", Form::People), "\u{a0}\u{3000}\\::y");
        assert_eq!(inert(" \u{1b}[31m ::y", Form::Coloured), " \u{1b}[31m \\::y");
        assert_eq!(
            inert("12 | ##[group]x ##vso[a] ###[b] ## [c]", Form::People),
            "12 | #\\#[group]x #\\#vso[a] ##\\#[b] ## [c]"
        );
        assert_eq!(inert("::error ::a##[b]\u{202e}", Form::Commands), "::error ::a#\\#[b]\\u{202e}");
    }

    #[test]
    fn machines_get_the_data_back() {
        let text = "##[x] \u{7f}\u{85}\u{202e}\u{e0041}";
        let json = inert(&serde_json::to_string(text).expect("text"), Form::Json);
        assert!(json.is_ascii() && !json.contains("##["), "{json}");
        assert_eq!(serde_json::from_str::<String>(&json).expect("JSON"), text);
        let xml = inert(&format!("<a>\n  ::{text}</a>"), Form::Xml);
        assert!(xml.is_ascii() && !xml.contains("##["), "{xml}");
        let read = roxmltree::Document::parse(&xml).expect("XML");
        assert_eq!(read.root_element().text(), Some(format!("\n  ::{text}").as_str()));
    }
}
