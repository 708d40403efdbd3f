//! `explain` of a key: what its schema says, and since which version there is one.

use serde_json::Value;

use crate::finding::rule::FIRST;
use crate::spec::{Kind, schema_of};

/// What a key means: `cable.outside_diameter`, `hop.ends.a.runs.port`. None if there is no such kind; else the nearest that is
/// known with what can follow it.
pub(super) fn key(name: &str) -> Option<Result<String, String>> {
    let mut steps = name.split('.');
    let kind = Kind::from_word(steps.next()?)?;
    let root = schema_of(kind).to_value();
    let (mut at, mut path, mut since) = (&root, kind.word().to_owned(), FIRST.to_owned());
    for step in steps {
        let step = step.split('[').next().unwrap_or(step);
        let Some(next) = keys(at, &root).and_then(|keys| keys.get(step)) else {
            let known: Vec<&str> = keys(at, &root).into_iter().flatten().map(|(key, _)| key.as_str()).collect();
            let known =
                if known.is_empty() { "it holds no keys".into() } else { format!("it has: {}", known.join(", ")) };
            return Some(Err(format!("`{path}` has no key `{step}`; {known}")));
        };
        at = next;
        path = format!("{path}.{step}");
        if let Some(later) = at["x-since"].as_str() {
            later.clone_into(&mut since);
        }
    }
    let mut text = format!("{path}\n");
    let mut add = |line: &str| text.extend(["\n", line, "\n"]);
    if let Some(words) = at["description"].as_str() {
        add(words);
    }
    if let Some(example) = at["examples"].get(0).and_then(Value::as_str) {
        add(&format!("Such as `{example}`."));
    }
    let below: Vec<&str> = keys(at, &root).into_iter().flatten().map(|(key, _)| key.as_str()).collect();
    if !below.is_empty() {
        add(&format!("Keys: {}.", below.join(", ")));
    }
    add(&format!("Since version {since}."));
    Some(Ok(text))
}

/// The keys of a mapping, or of the items of a list.
fn keys<'s>(schema: &'s Value, root: &'s Value) -> Option<&'s serde_json::Map<String, Value>> {
    let solid = |schema: &'s Value| {
        schema["$ref"].as_str().and_then(|path| root.pointer(path.trim_start_matches('#'))).unwrap_or(schema)
    };
    let schema = solid(schema);
    schema["properties"].as_object().or_else(|| solid(&schema["items"])["properties"].as_object())
}
