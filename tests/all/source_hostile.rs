//! Input made to hurt: bombs, deep nesting, chance.

use std::fmt::Write as _;
use std::ops::Range;
use std::time::{Duration, Instant};

use hopwright::place::Step::Key;
use hopwright::source::{Document, LineIndex, MAX_DEPTH, MAX_FAULTS, NodeKind, Parsed, TreeFaultKind, parse, to_value};
use serde_yaml::Mapping;

/// Asserts that a text is refused, for this reason and without delay.
fn refused_fast(text: &str, kind: TreeFaultKind) {
    let started = Instant::now();
    let Parsed { documents, faults } = parse(text);
    assert!(started.elapsed() < Duration::from_secs(2), "took {:?}", started.elapsed());
    assert_eq!(documents, []);
    assert_eq!(faults.first().map(|fault| fault.kind), Some(kind));
}

#[test]
fn deep_nesting_is_refused_fast() {
    for opening in ["[", "{a: ", "- ", "? ", "[{a: "] {
        refused_fast(&opening.repeat(100_000), TreeFaultKind::TooDeep);
    }
    let closed = |depth: usize| format!("{}{}", "[".repeat(depth), "]".repeat(depth));
    assert_eq!(parse(&closed(MAX_DEPTH)).faults, []);
    refused_fast(&closed(MAX_DEPTH + 1), TreeFaultKind::TooDeep);
}

#[test]
fn deep_nesting_by_aliases_is_refused() {
    let mut text = String::from("- &a0 []\n");
    for level in 1..1000 {
        writeln!(text, "- &a{level} [*a{}]", level - 1).expect("memory");
    }
    refused_fast(&text, TreeFaultKind::TooDeep);
}

#[test]
fn alias_bombs_are_refused_fast() {
    let mut laughs = String::from("a0: &a0 [ha, ha, ha, ha, ha, ha, ha, ha, ha]\n");
    for level in 1..40 {
        let again = format!("*a{}, ", level - 1).repeat(9);
        writeln!(laughs, "a{level}: &a{level} [{again}]").expect("memory");
    }
    refused_fast(&laughs, TreeFaultKind::TooManyNodes);

    let keys = (0..1000).fold(String::new(), |keys, key| format!("{keys}k{key}: {key}, "));
    let fan = format!("map: &map {{{keys}}}\nlist:\n{}", "- *map\n".repeat(20_000));
    refused_fast(&fan, TreeFaultKind::TooManyNodes);

    let long = format!("- &text {}\n{}", "x".repeat(500_000), "- *text\n".repeat(50_000));
    refused_fast(&long, TreeFaultKind::TooManyNodes);
}

#[test]
fn faults_are_limited() {
    let faults = parse(&"- !x y\n".repeat(10_000)).faults;
    assert_eq!(faults.len(), MAX_FAULTS);
    let faults = parse(&"a: 1\n".repeat(10_000)).faults;
    assert_eq!(faults.len(), MAX_FAULTS);
}

/// Enough chance for mutations, the same on every run.
struct Chance(u64);

impl Chance {
    fn below(&mut self, limit: usize) -> usize {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        usize::try_from(self.0 >> 33).expect("31 bits") % limit.max(1)
    }
}

const SEED: &str = "\u{feff}site: &s !!map\r\n  name: 'Zürvel 🎉'\r\n  list: [1, {a: , b}, *s]\r\n\
    text: |-\r\n  one\r\n\r\n  two\r\n---\nfar: &f {x: \"\\u00e9\"}\nnear: *f\n? k\n: - - v\n  - # c\n\
    -\tw\n<<: *g\n...\n# end\n--- >\n folded\n";

const PIECES: [&str; 24] = [
    "&f ", "*f", "*x", "!!str ", "!t ", "- ", "? ", ": ", "[", "]", "{", "}", "|\n", ">-\n", "'", "\"", "\\", "\t",
    "\r", "\n---\n", "\u{feff}", "🎉", "#", "%TAG",
];

fn mutated(chance: &mut Chance) -> String {
    let mut bytes = SEED.as_bytes().to_vec();
    for _ in 0..=chance.below(6) {
        let at = chance.below(bytes.len());
        match chance.below(4) {
            0 => drop(bytes.drain(at..(at + chance.below(20)).min(bytes.len()))),
            1 => bytes[at] = u8::try_from(chance.below(256)).expect("a byte"),
            2 => {
                let again = bytes[at..(at + chance.below(40)).min(bytes.len())].to_vec();
                bytes.splice(at..at, again);
            }
            _ => {
                let piece = PIECES[chance.below(PIECES.len())];
                bytes.splice(at..at, piece.bytes());
            }
        }
        if bytes.is_empty() {
            bytes.push(b'a');
        }
    }
    String::from_utf8_lossy(&bytes).into_owned()
}

#[test]
fn any_input_gives_spans_within_the_text() {
    let mut chance = Chance(2026);
    let mut documents_seen = 0;
    for _ in 0..5_000 {
        let text = mutated(&mut chance);
        let Parsed { documents, faults } = parse(&text);
        for fault in &faults {
            assert_within(&text, &fault.span);
            fault.other.iter().for_each(|other| assert_within(&text, other));
            assert!(!fault.message.is_empty() && !fault.message.ends_with('.'));
        }
        for document in &documents {
            assert_nested(&text, document);
            assert_routes(&text, document);
        }
        let index = LineIndex::new(&text);
        let positions: Vec<_> = (0..=text.len()).map(|byte| index.position(byte)).collect();
        assert!(positions.is_sorted());
        documents_seen += documents.len();
    }
    assert!(documents_seen > 1_000, "mutations leave enough to look at: {documents_seen}");
}

fn assert_within(text: &str, span: &Range<usize>) {
    assert!(text.get(span.clone()).is_some(), "{span:?} in {text:?}");
}

/// Asserts that each node lies within the text and within the node around it.
fn assert_nested(text: &str, document: &Document) {
    let mut left = vec![document.root()];
    while let Some(id) = left.pop() {
        let node = document.node(id);
        assert_within(text, &node.span);
        node.anchor.iter().for_each(|anchor| assert_within(text, anchor));
        if matches!(node.kind, NodeKind::Alias { .. }) {
            continue;
        }
        let pairs = document.entries(id).flat_map(|(key, value)| [key, value]);
        for child in document.items(id).chain(pairs) {
            let (outer, inner) = (&node.span, &document.node(child).span);
            assert!(outer.start <= inner.start && inner.end <= outer.end, "{inner:?} in {outer:?} of {text:?}");
            left.push(child);
        }
    }
}

/// Asserts that each key of the root is found, and its value built.
fn assert_routes(text: &str, document: &Document) {
    let value = to_value(document, document.root());
    for key in value.as_mapping().into_iter().flat_map(Mapping::keys) {
        let found = document.find(&[Key(key.as_str().expect("keys are text"))]);
        assert!(found.complete);
        assert_within(text, &found.span);
    }
}
