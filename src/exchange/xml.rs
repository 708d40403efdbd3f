//! XML of strangers, held against limits before anything parses it: no document type, so no entities of its own, no deep
//! nesting, no element of endless attributes, no more of it than a person has.

/// The most bytes of a file of waypoints.
pub const MOST_BYTES: u64 = 16 << 20;
/// How many elements may stand in one another.
const DEEPEST: usize = 64;
/// How many attributes an element may have; what GPX and KML have needs a handful.
const MOST_ATTRIBUTES: usize = 100;
/// How many nodes a file may have.
const MOST_NODES: u32 = 2_000_000;

/// A text as XML.
///
/// # Errors
/// The line and why it is not taken.
pub fn parsed(text: &str) -> Result<roxmltree::Document<'_>, (usize, String)> {
    let text = text.trim_start_matches('\u{feff}');
    guard(text).map_err(|(at, why)| (1 + text[..at].matches('\n').count(), why.to_owned()))?;
    let options = roxmltree::ParsingOptions { allow_dtd: false, nodes_limit: MOST_NODES, ..Default::default() };
    roxmltree::Document::parse_with_options(text, options).map_err(|error| {
        let line = usize::try_from(error.pos().row).unwrap_or_default();
        (line, format!("is no XML that can be read: {error}"))
    })
}

/// Walks from tag to tag and counts, without taking anything in.
fn guard(text: &str) -> Result<(), (usize, &'static str)> {
    let (mut at, mut depth) = (0, 0_usize);
    while let Some(found) = text[at..].find('<') {
        let open = at + found;
        let rest = &text[open..];
        let skip = |end: &str, what| rest.find(end).map(|found| open + found + end.len()).ok_or((open, what));
        if rest.starts_with("<!--") {
            at = skip("-->", "a remark is opened here and never closed")?;
        } else if rest.starts_with("<![CDATA[") {
            at = skip("]]>", "a piece of text is opened here and never closed")?;
        } else if rest.starts_with("<?") {
            at = skip("?>", "an instruction is opened here and never closed")?;
        } else if rest.starts_with("<!") {
            return Err((
                open,
                "declares a document type, which is never read: it could name files and make text without end",
            ));
        } else {
            let (end, attributes) = tag(rest).ok_or((open, "a tag is opened here and never closed"))?;
            if attributes > MOST_ATTRIBUTES {
                return Err((open, "an element has more than 100 attributes"));
            }
            if rest.starts_with("</") {
                depth = depth.saturating_sub(1);
            } else if !rest[..end].ends_with('/') {
                depth += 1;
            }
            if depth > DEEPEST {
                return Err((open, "elements stand in one another more than 64 deep"));
            }
            at = open + end + 1;
        }
    }
    Ok(())
}

/// Where a tag ends, and how many attributes it has.
fn tag(text: &str) -> Option<(usize, usize)> {
    let (mut quote, mut attributes) = (None, 0);
    for (at, byte) in text.bytes().enumerate() {
        match (quote, byte) {
            (None, b'>') => return Some((at, attributes)),
            (None, b'"' | b'\'') => {
                quote = Some(byte);
                attributes += 1;
            }
            (Some(open), byte) if open == byte => quote = None,
            _ => {}
        }
    }
    None
}

#[cfg(test)]
mod tests {
    use super::parsed;

    #[test]
    fn what_could_hurt_is_never_parsed() {
        let bomb = "<!DOCTYPE a [<!ENTITY b \"x\"><!ENTITY c \"&b;&b;\">]><a>&c;</a>";
        let outside = "<?xml version=\"1.0\"?>\n<!DOCTYPE a SYSTEM \"file:///etc/passwd\"><a/>";
        let deep = "<a>".repeat(200_000);
        let wide = format!("<a {}/>", (0..200_000).map(|n| format!("b{n}='>' ")).collect::<Vec<_>>().concat());
        let spaces = (0..65).map(|n| format!("<a xmlns:n{n}='u{n}'>")).collect::<Vec<_>>().concat();
        for (text, line, why) in [
            (bomb, 1, "document type"),
            (outside, 2, "document type"),
            (deep.as_str(), 1, "64 deep"),
            (spaces.as_str(), 1, "64 deep"),
            (wide.as_str(), 1, "100 attributes"),
            ("<a>&b;</a>", 1, "no XML"),
            ("<a><!-- ", 1, "never closed"),
            ("<a", 1, "never closed"),
            ("", 1, "no XML"),
            ("<a>\u{0}</a>", 1, "no XML"),
        ] {
            let (at, said) = parsed(text).expect_err(why);
            assert!(at == line && said.contains(why), "{at}: {said}");
        }
        assert!(parsed("\u{feff}<a b='1'><![CDATA[<!DOCTYPE]]></a>").is_ok());
    }
}
