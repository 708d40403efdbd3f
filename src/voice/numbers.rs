//! Numbers and their units in type.

use crate::spec::DecimalSign;

/// A value with true minus signs and no line break between number and unit.
#[must_use]
pub fn shown(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut before = None;
    let mut rest = text.chars().peekable();
    while let Some(c) = rest.next() {
        let opens = before.is_none_or(|before: char| before.is_whitespace() || before == '(');
        let minus = c == '-' && opens && rest.peek().is_some_and(char::is_ascii_digit);
        // A number keeps its unit on its line.
        let unit = c == ' '
            && before.is_some_and(|before: char| before.is_ascii_digit())
            && rest.peek().is_some_and(|next| next.is_alphabetic() || "°%Ω".contains(*next));
        out.push(match c {
            _ if minus => '\u{2212}',
            _ if unit => '\u{a0}',
            c => c,
        });
        before = Some(c);
    }
    out
}

/// A number with another sign before its decimals.
pub(super) fn with_sign(number: &str, sign: DecimalSign) -> String {
    let DecimalSign::Comma = sign else { return number.to_owned() };
    let mut letters = number.chars().peekable();
    let mut out = String::with_capacity(number.len());
    let mut before = ' ';
    while let Some(c) = letters.next() {
        let decimal = c == '.' && before.is_ascii_digit() && letters.peek().is_some_and(char::is_ascii_digit);
        out.push(if decimal { ',' } else { c });
        before = c;
    }
    out
}

#[cfg(test)]
mod tests {
    use super::{DecimalSign, shown, with_sign};

    #[test]
    fn only_a_minus_becomes_one() {
        assert_eq!(shown("-25.1 dBm"), "\u{2212}25.1\u{a0}dBm");
        assert_eq!(shown("-10.00° to -60.00°"), "\u{2212}10.00° to \u{2212}60.00°");
        assert_eq!(shown("1/4-20 stud"), "1/4-20\u{a0}stud");
        assert_eq!(shown("Cat 6A - outdoor"), "Cat 6A - outdoor");
        assert_eq!(shown("22 lbf·ft (29.8 N·m)"), "22\u{a0}lbf·ft (29.8\u{a0}N·m)");
    }

    #[test]
    fn only_the_sign_of_decimals_changes() {
        assert_eq!(with_sign("17.4 m (57.1 ft).", DecimalSign::Comma), "17,4 m (57,1 ft).");
        assert_eq!(with_sign("17.4 m", DecimalSign::Point), "17.4 m");
    }
}
