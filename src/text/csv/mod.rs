//! Tables as text, as RFC 4180 and spreadsheets of many countries have them: read strictly, every cell with its place, and
//! written so that no spreadsheet runs what stands in a cell.
//!
//! Nothing is guessed. What separates cells is told or seen in the header; which mark stands before decimals is told, unless
//! commas separate the cells, for then only the point is left.

mod read;
mod write;

use std::ops::Range;

pub use read::{Cell, Reader, Row, number};
pub use write::{Out, Writer, inert, undone};

/// What separates cells, and what stands before decimals.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Marks {
    /// Between two cells.
    pub separator: char,
    /// Before decimals; `None` where nobody has said.
    pub decimal: Option<char>,
}

/// What may separate cells.
const SEPARATORS: [char; 3] = [',', ';', '\t'];

impl Marks {
    /// Commas and points, as RFC 4180 has them.
    pub const PLAIN: Self = Self { separator: ',', decimal: Some('.') };

    /// The separator as a header shows it: the one there is between the names of its columns, quoted text aside. A header
    /// of one column has none and may be read with any.
    ///
    /// # Errors
    /// It holds several: those there are.
    pub fn of_header(header: &str) -> Result<Self, Vec<char>> {
        let bare: String = header.split('"').step_by(2).collect();
        let found: Vec<char> = SEPARATORS.into_iter().filter(|mark| bare.contains(*mark)).collect();
        match found.as_slice() {
            [] | [','] => Ok(Self::PLAIN),
            [one] => Ok(Self { separator: *one, decimal: None }),
            _ => Err(found),
        }
    }
}

/// What a separator is called.
#[must_use]
pub const fn called(mark: char) -> &'static str {
    match mark {
        ',' => "comma",
        ';' => "semicolon",
        '\t' => "tab",
        _ => "point",
    }
}

/// What is wrong with the text of a table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fault {
    /// Where.
    pub span: Range<usize>,
    /// One lower-case clause.
    pub message: String,
}

#[cfg(test)]
mod tests {
    use super::{Marks, Out, Reader, Writer, inert, number, undone};

    fn all(text: &str, marks: Marks) -> Vec<Vec<String>> {
        let rows = Reader::new(text, marks);
        rows.map(|row| row.expect(text).cells.iter().map(|cell| cell.text.to_string()).collect()).collect()
    }

    #[test]
    fn cells_are_read_as_the_standard_has_them() {
        let text = "\u{feff}a,\"b, \"\"c\"\"\",d\r\n\r\n1, x ,\n\"two\nlines\",,\"\"\n";
        assert_eq!(
            all(text, Marks::PLAIN),
            [vec!["a", "b, \"c\"", "d"], vec!["1", "x", ""], vec!["two\nlines", "", ""]]
        );
        let rows: Vec<_> = Reader::new(text, Marks::PLAIN).map(|row| row.expect("a row")).collect();
        assert_eq!(rows.iter().map(|row| row.line).collect::<Vec<_>>(), [1, 3, 4]);
        assert_eq!(&text[rows[1].cells[1].span.clone()], "x");
        assert_eq!(all("a;b,c\td", Marks { separator: ';', decimal: None }), [["a", "b,c\td"]]);
    }

    #[test]
    fn stray_and_open_quotes_are_faults_at_their_place() {
        for (text, at) in [("a,b\"c\n", "\""), ("\"a\"b,c\n", "b"), ("a\n\"open,\nnever", "\"open,\nnever")] {
            let fault = Reader::new(text, Marks::PLAIN).find_map(Result::err).expect(text);
            assert_eq!(&text[fault.span.clone()], at, "{text}: {}", fault.message);
        }
    }

    #[test]
    fn the_header_shows_what_separates() {
        assert_eq!(Marks::of_header("id,title"), Ok(Marks::PLAIN));
        assert_eq!(Marks::of_header("id"), Ok(Marks::PLAIN));
        assert_eq!(Marks::of_header("id;\"a,b\""), Ok(Marks { separator: ';', decimal: None }));
        assert_eq!(Marks::of_header("id;a,b"), Err(vec![',', ';']));
    }

    #[test]
    fn no_number_is_guessed() {
        let (point, comma) = (Some('.'), Some(','));
        for (text, decimal, read) in [
            ("47.115310", point, "47.115310"),
            ("-0,50", comma, "-0.50"),
            ("+3", None, "3"),
            ("\u{2212}12", None, "-12"),
            ("1.234", point, "1.234"),
        ] {
            assert_eq!(number(text, decimal), Ok(read.to_owned()), "{text}");
        }
        for (text, decimal, why) in [
            ("1,234", point, "1.234 or 1234"),
            ("1,5", point, "decimal mark"),
            ("1.234", comma, "1.234 or 1234"),
            ("1.5", None, "which mark"),
            ("1,234", None, "1.234 or 1234"),
            ("1.234,5", comma, "thousands"),
            ("1 234", point, "not a number"),
            ("1e3", point, "not a number"),
            (".5", point, "not a number"),
            ("5.", point, "not a number"),
            ("=1+1", point, "not a number"),
            ("", point, "not a number"),
            ("12 m", point, "not a number"),
        ] {
            let said = number(text, decimal).expect_err(text);
            assert!(said.contains(why), "{text}: {said}");
        }
    }

    #[test]
    fn what_a_spreadsheet_would_run_is_text_and_comes_back() {
        for text in ["=1+1", "+x", "-x", "@x", "\tx", "\rx", "\nx", "'=x", "''=x", "＝x", "plain", "'tis", "", "'"] {
            let cell = inert(text);
            assert!(!cell.starts_with(['=', '+', '-', '@', '\t', '\r', '\n', '＝']), "{cell}");
            assert_eq!(undone(&cell), text);
        }
        assert_eq!(inert("=1+1"), "'=1+1");
        assert_eq!(undone("=1+1"), "=1+1");
    }

    #[test]
    fn what_is_written_is_read_back() {
        let marks = Marks { separator: ';', decimal: Some(',') };
        let mut out = Writer::new(marks);
        out.row([Out::Text("a;b".into()), Out::Number("-0.02".into()), Out::Empty, Out::Text("\"q\"\n=x ".into())]);
        assert_eq!(out.text(), "\"a;b\";-0,02;;\"\"\"q\"\"\n=x \"\r\n");
        assert_eq!(all(out.text(), marks), [["a;b", "-0,02", "", "\"q\"\n=x "]]);
        let mut comma = Writer::new(Marks { separator: ',', decimal: Some(',') });
        comma.row([Out::Number("1.5".into())]);
        assert_eq!(comma.text(), "\"1,5\"\r\n");
    }
}
