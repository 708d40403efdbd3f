//! Trees of YAML text: routes and their places, faults, values, columns.

use std::ops::Range;

use hopwright::place::Step;
use hopwright::place::Step::{Index, Key};
use hopwright::source::{
    Core, Document, LineIndex, NodeKind, Parsed, Position, Style, TreeFault, TreeFaultKind, ambiguous, core_type,
    parse, to_value,
};
use serde_yaml::Value;

/// The one document of a text without faults.
fn sound(text: &str) -> Document {
    let Parsed { mut documents, faults } = parse(text);
    assert_eq!(faults, [], "in {text:?}");
    assert_eq!(documents.len(), 1, "in {text:?}");
    documents.remove(0)
}

/// The one fault of a text.
fn fault(text: &str) -> TreeFault {
    let mut faults = parse(text).faults;
    assert_eq!(faults.len(), 1, "in {text:?}: {faults:?}");
    faults.remove(0)
}

fn value(text: &str) -> Value {
    let document = sound(text);
    to_value(&document, document.root())
}

/// What a fault underlines, and its second place.
fn underlined<'t>(text: &'t str, fault: &TreeFault) -> (&'t str, Option<&'t str>) {
    (&text[fault.span.clone()], fault.other.clone().map(|other| &text[other]))
}

/// What a route underlines: the value, its key, its definition; and whether it is complete.
fn found<'t>(text: &'t str, steps: &[Step<'_>]) -> (&'t str, Option<&'t str>, Option<&'t str>, bool) {
    let found = sound(text).find(steps);
    let part = |span: Range<usize>| &text[span];
    (part(found.span), found.key.map(part), found.definition.map(part), found.complete)
}

// Trees and routes.

#[test]
fn routes_lead_to_values_and_keys() {
    let text = "a: 1\nb:\n  - x\n  - {c: 'two'}\n";
    assert_eq!(found(text, &[Key("a")]), ("1", Some("a"), None, true));
    assert_eq!(found(text, &[Key("b"), Index(0)]), ("x", None, None, true));
    assert_eq!(found(text, &[Key("b"), Index(1), Key("c")]), ("'two'", Some("c"), None, true));
}

#[test]
fn a_broken_route_leads_to_the_deepest_key() {
    let text = "a:\n  b: 1\nc:\n- d: 2\n";
    assert_eq!(found(text, &[Key("x")]), ("a", None, None, false));
    assert_eq!(found(text, &[]), ("a", None, None, true));
    assert_eq!(found(text, &[Key("a"), Key("x")]), ("a", Some("a"), None, false));
    assert_eq!(found(text, &[Key("a"), Key("b"), Key("x")]), ("b", Some("b"), None, false));
    assert_eq!(found(text, &[Key("c"), Index(7)]), ("c", Some("c"), None, false));
    assert_eq!(found(text, &[Key("c"), Index(0), Key("x")]), ("d", None, None, false));
}

#[test]
fn aliases_keep_use_and_definition() {
    let text = "site: &mast\n  height: 30\nnear: *mast\nlist: [*mast]\n";
    let definition = "height: 30";
    assert_eq!(found(text, &[Key("near")]), ("*mast", Some("near"), Some(definition), true));
    assert_eq!(found(text, &[Key("near"), Key("height")]), ("*mast", Some("near"), Some("30"), true));
    assert_eq!(found(text, &[Key("near"), Key("x")]), ("near", Some("near"), Some("height"), false));
    assert_eq!(found(text, &[Key("list"), Index(0), Key("height")]), ("*mast", None, Some("30"), true));
}

#[test]
fn anchors_of_mappings_have_a_place() {
    let text = "a: &all\n  b: 1\nc: &one 1\n";
    let document = sound(text);
    let anchor = |key| {
        let (_, value) = document.get(document.root(), key).expect("a key of the text");
        document.node(value).anchor.clone().map(|anchor| &text[anchor])
    };
    assert_eq!((anchor("a"), anchor("c")), (Some("&all"), Some("&one")));
}

#[test]
fn keys_may_be_aliases_and_escapes() {
    let text = "&k \"na\\x6De\": 1\nother: {*k : 2}\n";
    assert_eq!(found(text, &[Key("name")]), ("1", Some("\"na\\x6De\""), None, true));
    assert_eq!(found(text, &[Key("other"), Key("name")]), ("2", Some("*k"), None, true));
}

#[test]
fn unwritten_values_have_an_empty_place() {
    let text = "a:   # nothing\nb: {c: , d}\ne:\n  -\n  - 1\n'f' :\n";
    let document = sound(text);
    for (steps, place) in [
        (vec![Key("a")], "a:"),
        (vec![Key("b"), Key("c")], "a:   # nothing\nb: {c:"),
        (vec![Key("e"), Index(0)], "a:   # nothing\nb: {c: , d}\ne:\n  -"),
        (vec![Key("f")], text.trim_end()),
    ] {
        assert_eq!(document.find(&steps).span, place.len()..place.len());
    }
    let (_, node) = document.get(document.root(), "a").expect("a key of the text");
    assert!(matches!(&document.node(node).kind,
        NodeKind::Scalar { text, style: Style::Plain, .. } if text.is_empty()));
}

#[test]
fn collections_end_where_their_content_ends() {
    let text = "a:\n  b: 1\n\n# about c\nc:\n- x\n-\n  y\n\nd: [1,\n  2]\n";
    assert_eq!(found(text, &[Key("a")]).0, "b: 1");
    assert_eq!(found(text, &[Key("c")]).0, "- x\n-\n  y");
    assert_eq!(found(text, &[Key("d")]).0, "[1,\n  2]");
}

#[test]
fn block_scalars_start_at_their_header() {
    let text = "a: |  # > no\n\n  one\n  two\n\nb: &x|y >-\n  > three\nc: |+\n\nd: 1\n";
    assert_eq!(found(text, &[Key("a")]).0, "|  # > no\n\n  one\n  two");
    assert_eq!(found(text, &[Key("b")]).0, ">-\n  > three");
    assert_eq!(found(text, &[Key("c")]).0, "|+");
}

#[test]
fn documents_are_told_apart_and_empty_ones_passed_over() {
    for text in ["", "\n\n", "# only a comment\n", "---\n", "---\n---\n# x\n...\n", "\u{feff}"] {
        assert_eq!(parse(text), Parsed::default(), "in {text:?}");
    }
    let text = "# one\n---\na: 1\n---\n---\nb: &x 2\n...\n--- ~\n";
    let Parsed { documents, faults } = parse(text);
    assert_eq!(faults, []);
    let values: Vec<Value> = documents.iter().map(|one| to_value(one, one.root())).collect();
    assert_eq!(values, [value("a: 1"), value("b: 2"), Value::Null]);
    assert_eq!(&text[documents[1].find(&[Key("b")]).span], "2");
}

#[test]
fn places_count_bytes_of_the_file() {
    let text = "\u{feff}ż: 'é🎉'\r\nkey:\r\n  - \t1\r\n  - {a: \"ß\"}\r\n";
    assert_eq!(found(text, &[Key("ż")]), ("'é🎉'", Some("ż"), None, true));
    assert_eq!(found(text, &[Key("key"), Index(0)]).0, "1");
    assert_eq!(found(text, &[Key("key"), Index(1), Key("a")]).0, "\"ß\"");
    assert_eq!(sound(text).find(&[Key("ż")]).key, Some(3..5));
}

// Faults.

#[test]
fn grammar_is_explained_in_plain_words() {
    for (text, place, message) in [
        ("a: [1, 2\n", "[", "this `[` is never closed"),
        ("a: [1, 2}\n", "[", "this `[` is closed by `}`"),
        ("a: 'x\n", "'", "this quote is never closed"),
        ("a: b: c\n", ":", "a `:` cannot stand here"),
        ("a:\n\t- b\n", "\t", "a tab cannot indent"),
        ("a: @b\n", "@", "text cannot start with `@`"),
        ("a: \u{7}\n", "\u{7}", "the control character U+0007 cannot stand here"),
        ("- a\nb: 1\n", "b", "a list item was expected here"),
        ("a: - b\n", "-", "a list item cannot stand here"),
        ("[a]\nb: 1\n", "b", "the document is complete before this"),
        ("a: \u{feff}b", "\u{feff}", "an invisible byte-order mark (U+FEFF) stands inside the document"),
    ] {
        let fault = fault(text);
        assert_eq!(fault.kind, TreeFaultKind::Malformed);
        assert_eq!((underlined(text, &fault).0, fault.message.as_str()), (place, message));
    }
}

#[test]
fn reading_goes_on_after_a_broken_document() {
    let text = "a: 1\n---\nb: 1\nb: 2\nc: [\n---\nd: 1\nd: 2\n";
    let Parsed { documents, faults } = parse(text);
    let kinds: Vec<_> = faults.iter().map(|fault| fault.kind).collect();
    assert_eq!(kinds, [TreeFaultKind::DuplicateKey, TreeFaultKind::Malformed, TreeFaultKind::DuplicateKey]);
    let values: Vec<Value> = documents.iter().map(|one| to_value(one, one.root())).collect();
    assert_eq!(values, [value("a: 1"), value("d: 1")]);
}

#[test]
fn keys_must_be_new_plain_scalars() {
    let text = "a: 1\n\"\\x61\": 2\n";
    let duplicate = fault(text);
    assert_eq!(duplicate.kind, TreeFaultKind::DuplicateKey);
    assert_eq!(underlined(text, &duplicate), ("\"\\x61\"", Some("a")));

    let text = "a: &a {b: 1}\nc:\n  <<: *a\n  '<<': fine\n";
    let merge = fault(text);
    assert_eq!((merge.kind, underlined(text, &merge).0), (TreeFaultKind::MergeKey, "<<"));
    assert_eq!(merge.help.as_deref(), Some("write the keys out or alias the whole value"));

    for (text, key) in [("{[a, b]: 1}", "[a, b]"), ("? c: 1\n: 2\n", "c: 1")] {
        let complex = fault(text);
        assert_eq!((complex.kind, underlined(text, &complex).0), (TreeFaultKind::ComplexKey, key));
    }
}

#[test]
fn the_first_of_two_keys_counts() {
    let Parsed { documents, .. } = parse("a: 1\na: 2\n<<: 3\n");
    assert_eq!(to_value(&documents[0], documents[0].root()), value("a: 1"));
}

#[test]
fn aliases_must_be_known() {
    let text = "a: &north 1\nb: *nroth\n";
    let unknown = fault(text);
    assert_eq!(unknown.kind, TreeFaultKind::UnknownAlias);
    assert_eq!(underlined(text, &unknown), ("*nroth", Some("&north")));
    assert_eq!(unknown.help.as_deref(), Some("did you mean `*north`?"));

    let far = fault("a: &north 1\nb: *elsewhere\n");
    assert_eq!((far.other, far.help), (None, None));
    // An anchor ends with its document.
    assert_eq!(fault("&a 1\n---\n*a\n").kind, TreeFaultKind::UnknownAlias);
}

#[test]
fn aliases_must_not_contain_themselves() {
    for text in ["&r [1, [*r]]", "&r {a: {b: *r}}", "&r\na:\n- *r\n", "&r {*r : 1}"] {
        let fault = fault(text);
        assert_eq!(fault.kind, TreeFaultKind::RecursiveAlias);
        assert_eq!(underlined(text, &fault), ("*r", Some("&r")));
    }
}

#[test]
fn tags_must_be_core_and_fit() {
    for (text, tag) in [
        ("a: !antenna x", "!antenna"),
        ("a: !!timestamp 2026-01-02", "!!timestamp"),
        ("a: !<tag:example.com,2026:x> {}", "!<tag:example.com,2026:x>"),
        ("a: !x!y z", "!x!y"),
        ("a: !!seq {}", "!!seq"),
        ("a: !!map 1", "!!map"),
    ] {
        let fault = fault(text);
        assert_eq!((fault.kind, underlined(text, &fault).0), (TreeFaultKind::ForeignTag, tag));
    }
    sound("a: !!str 1\nb: !!seq []\nc: !!map {d: !!null }\n");
}

// Values.

#[test]
fn plain_scalars_are_typed_by_the_core_schema() {
    let typed = |text| core_type(text, Style::Plain);
    for text in ["", "~", "null", "Null", "NULL"] {
        assert_eq!(typed(text), Core::Null, "{text}");
    }
    for (text, whole) in [
        ("0", 0),
        ("-0", 0),
        ("+12", 12),
        ("0x1F", 31),
        ("0o17", 15),
        ("-9223372036854775808", i64::MIN.into()),
        ("18446744073709551615", u64::MAX.into()),
    ] {
        assert_eq!(typed(text), Core::Int(whole), "{text}");
    }
    for (text, float) in [
        ("1.5", 1.5),
        (".5", 0.5),
        ("5.", 5.0),
        ("-1e3", -1e3),
        ("1E-6", 1e-6),
        ("007.5", 7.5),
        ("18446744073709551616", 18_446_744_073_709_551_616.0),
        ("0x10000000000000000", 18_446_744_073_709_551_616.0),
        ("-.INF", f64::NEG_INFINITY),
    ] {
        assert_eq!(typed(text), Core::Float(float), "{text}");
    }
    assert!(matches!(typed(".nan"), Core::Float(float) if float.is_nan()));
    for text in [
        "yes",
        "tRUE",
        "007",
        "-07",
        "1_000",
        "12:30",
        "2026-01-02",
        "0b1",
        "-0x1",
        "0x",
        "1e",
        "e1",
        ".",
        "-",
        "+",
        "1.2.3",
        "1e400",
        "inf",
        "nan",
        "NaN",
        ".Nan",
        "٣",
        " 1",
    ] {
        assert_eq!(typed(text), Core::Text, "{text}");
    }
    assert_eq!(core_type("1", Style::Quoted), Core::Text);
    assert_eq!(core_type("true", Style::Block), Core::Text);
}

#[test]
fn values_follow_aliases_and_tags() {
    let got = value("a: &a {b: [1, 2.5, x, ~]}\nc: *a\n12: 'true'\n");
    assert_eq!(got["c"], got["a"]);
    assert_eq!(got["a"]["b"], Value::from(vec![1.into(), 2.5.into(), "x".into(), Value::Null]));
    assert_eq!(got["12"], Value::from("true"));

    let tagged = value("[!!str 1, !!int '2', !!float 3, !!int x, !!null '', !!bool \"true\", !!str ]");
    let wanted: Vec<Value> = vec!["1".into(), 2.into(), 3.0.into(), "x".into(), Value::Null, true.into(), "".into()];
    assert_eq!(tagged, Value::from(wanted));
}

#[test]
fn text_that_others_read_otherwise_is_ambiguous() {
    for (text, kind) in [
        ("NO", "boolean"),
        ("y", "boolean"),
        ("off", "boolean"),
        ("12:30", "base 60"),
        ("-1:30:15.5", "base 60"),
        ("007", "number"),
        ("1_000", "number"),
        ("0b101", "number"),
        ("2026-01-02", "date"),
        ("2026-1-2 10:00:00", "date"),
    ] {
        assert!(ambiguous(text).is_some_and(|reason| reason.contains(kind)), "{text}");
    }
    for text in ["", "nope", "1", "1.5", "0", "12:75", "a:30", "2026-01", "2026-01-02 plan", "1_a", "_"] {
        assert_eq!(ambiguous(text), None, "{text}");
    }
}

// Lines.

#[test]
fn columns_count_as_editors_do() {
    let text = "\u{feff}a\r\nż🎉b\rc\n";
    let index = LineIndex::new(text);
    let at = |needle| {
        let Position { line, column } = index.position(text.find(needle).expect("in the text"));
        (line, column)
    };
    assert_eq!([at('a'), at('ż'), at('🎉'), at('b'), at('c')], [(1, 1), (2, 1), (2, 2), (2, 4), (3, 1)]);
    assert_eq!(index.position(0), Position { line: 1, column: 1 });
    assert_eq!(index.position(text.len()), Position { line: 4, column: 1 });
    assert_eq!(index.position(usize::MAX), index.position(text.len()));
    // Inside the emoji is at the emoji.
    assert_eq!(index.position(text.find('🎉').expect("in the text") + 2), Position { line: 2, column: 2 });
    assert_eq!(LineIndex::new("").position(0), Position { line: 1, column: 1 });
}
