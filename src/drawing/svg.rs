//! The one place that writes SVG: elements with their attributes, and text that stays text.

use std::fmt::{Display, Write as _};

use crate::text::xml;

/// An attribute and its value.
pub type Attribute<'a> = (&'static str, &'a dyn Display);

/// What a shape is filled with to be hatched, once [`Markup::define_hatch`] has said what that is.
pub const HATCH: &str = "url(#hatch)";

/// Elements, one a line.
#[derive(Debug, Clone, Default)]
pub struct Markup(String);

impl Markup {
    /// An element that holds nothing.
    pub fn element(&mut self, name: &str, attributes: &[Attribute<'_>]) {
        self.open(name, attributes);
        self.0.push_str("/>\n");
    }

    /// A line of text.
    pub fn text(&mut self, attributes: &[Attribute<'_>], words: &str) {
        self.open("text", attributes);
        let _ = writeln!(self.0, ">{}</text>", escaped(words));
    }

    /// Says what [`HATCH`] looks like.
    pub fn define_hatch(&mut self) {
        self.0.push_str(concat!(
            r#"<defs><pattern id="hatch" width="7" height="7" patternUnits="userSpaceOnUse">"#,
            r##"<path d="M0 7 L7 0" stroke="#000" stroke-width="0.7" fill="none"/></pattern></defs>"##,
            "\n"
        ));
    }

    /// The whole as a document with its meaning in words.
    #[must_use]
    pub fn document(&self, attributes: &[Attribute<'_>], meaning: &str) -> String {
        let mut whole = Self::default();
        let namespace: [Attribute<'_>; 1] = [("xmlns", &"http://www.w3.org/2000/svg")];
        whole.open("svg", &[&namespace, attributes].concat());
        let _ = write!(whole.0, ">\n<title>{}</title>\n{}</svg>\n", escaped(meaning), self.0);
        whole.0
    }

    fn open(&mut self, name: &str, attributes: &[Attribute<'_>]) {
        let _ = write!(self.0, "<{name}");
        for (name, value) in attributes {
            let _ = write!(self.0, " {name}=\"{}\"", escaped(&value.to_string()));
        }
    }
}

/// Text as XML takes it, on one line.
fn escaped(words: &str) -> String {
    xml::escaped(words, |c| if matches!(c, '\n' | '\t' | '\r') { " " } else { "" })
}

#[cfg(test)]
mod tests {
    use super::Markup;

    #[test]
    fn text_of_authors_is_no_markup() {
        let mut markup = Markup::default();
        markup.text(&[("id", &"a\"b")], "<script>\u{7}\"a & b\"\n");
        let svg = markup.document(&[], "x < y");
        assert!(svg.contains("<text id=\"a&quot;b\">&lt;script&gt;&quot;a &amp; b&quot; </text>"), "{svg}");
        assert!(svg.contains("<title>x &lt; y</title>"), "{svg}");
    }
}
