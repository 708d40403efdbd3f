//! The JSON Schema of each kind, made from the types.

use std::sync::LazyLock;

use schemars::generate::SchemaSettings;
use schemars::transform::RecursiveTransform;
use schemars::{JsonSchema, Schema};
use serde_json::Value;

use super::partly::put_keys;
use super::{
    Antenna, Arrester, Bracket, Cable, End, Feeder, Fibre, FibreRun, Grounding, Hop, Kind, LONGEST_TITLE, Neighbour,
    Network, Radio, Record, Run, Service, Site, Supply, Template, Waiver,
};
use crate::units::{Kind as Quantity, of_tube};

/// The schema of one kind of document, JSON Schema 2020-12.
#[must_use]
pub fn schema_of(kind: Kind) -> Schema {
    let mut generator = SchemaSettings::draft2020_12()
        .with_transform(RecursiveTransform(parts))
        .with_transform(RecursiveTransform(without_null))
        .with_transform(RecursiveTransform(one_constant))
        .with_transform(RecursiveTransform(one_line_descriptions))
        .with_transform(RecursiveTransform(tubes))
        .with_transform(RecursiveTransform(limits))
        .with_transform(RecursiveTransform(titles))
        .into_generator();
    if let Kind::Network | Kind::Site | Kind::Template = kind {
        // What their parts refer to.
        generator.subschema_for::<Run>();
        generator.subschema_for::<FibreRun>();
    }
    let mut schema = match kind {
        Kind::Network => generator.into_root_schema_for::<Network>(),
        Kind::Site => generator.into_root_schema_for::<Site>(),
        Kind::Hop => generator.into_root_schema_for::<Hop>(),
        Kind::Radio => generator.into_root_schema_for::<Radio>(),
        Kind::Antenna => generator.into_root_schema_for::<Antenna>(),
        Kind::Bracket => generator.into_root_schema_for::<Bracket>(),
        Kind::Cable => generator.into_root_schema_for::<Cable>(),
        Kind::Fibre => generator.into_root_schema_for::<Fibre>(),
        Kind::Supply => generator.into_root_schema_for::<Supply>(),
        Kind::Arrester => generator.into_root_schema_for::<Arrester>(),
        Kind::Waiver => generator.into_root_schema_for::<Waiver>(),
        Kind::Record => generator.into_root_schema_for::<Record>(),
        Kind::Neighbour => generator.into_root_schema_for::<Neighbour>(),
        Kind::Service => generator.into_root_schema_for::<Service>(),
        Kind::Template => generator.into_root_schema_for::<Template>(),
        Kind::Feeder => generator.into_root_schema_for::<Feeder>(),
    };
    schema.insert("title".into(), kind.word().into());
    schema.insert("$id".into(), schema_id(kind.word()).into());
    schema
}

/// What a schema is known by: the version of the language it describes, and what it is of.
#[must_use]
pub fn schema_id(name: &str) -> String {
    format!("{SCHEMAS}{}.{}:{name}", env!("CARGO_PKG_VERSION_MAJOR"), env!("CARGO_PKG_VERSION_MINOR"))
}

/// The version of the language that the text of a schema describes, by its own words.
#[must_use]
pub fn schema_version(text: &str) -> Option<String> {
    let schema: Value = serde_json::from_str(text).ok()?;
    Some(schema["$id"].as_str()?.strip_prefix(SCHEMAS)?.split(':').next()?.to_owned())
}

/// What the names of our schemas start with.
const SCHEMAS: &str = "urn:hopwright:schema:";

/// The same, as it is written to a file.
#[must_use]
pub fn schema_text(kind: Kind) -> String {
    let mut text = serde_json::to_string_pretty(&schema_of(kind)).expect("a schema is plain JSON");
    text.push('\n');
    text
}

/// The keys of the parts that hops take in.
fn parts(schema: &mut Schema) {
    static WHOLE: LazyLock<[(&str, Value); 4]> = LazyLock::new(|| {
        fn whole<T: JsonSchema>() -> Value {
            T::json_schema(&mut SchemaSettings::draft2020_12().into_generator()).to_value()
        }
        [
            ("end", whole::<End>()),
            ("run", whole::<Run>()),
            ("fibre_run", whole::<FibreRun>()),
            ("grounding", whole::<Grounding>()),
        ]
    });
    let word = schema.get("x-part").and_then(Value::as_str);
    if let Some((_, whole)) = WHOLE.iter().find(|(name, _)| Some(*name) == word) {
        put_keys(schema, whole);
    }
}

/// A key that may be left out is left out, never written empty: takes `null` from what an optional field allows.
fn without_null(schema: &mut Schema) {
    if let Some(Value::Array(types)) = schema.get_mut("type") {
        types.retain(|name| name != "null");
        if let [only] = types.as_slice() {
            let only = only.clone();
            schema.insert("type".into(), only);
        }
    }
    let Some(Value::Array(choices)) = schema.get_mut("anyOf") else { return };
    choices.retain(|choice| choice.get("type").is_none_or(|name| name != "null"));
    if let [Value::Object(only)] = choices.as_slice() {
        let only = only.clone();
        schema.remove("anyOf");
        for (key, value) in only {
            // The field's own description says more than its type's.
            schema.ensure_object().entry(key).or_insert(value);
        }
    }
}

/// A constant needs no list of the other choices.
fn one_constant(schema: &mut Schema) {
    if schema.get("const").is_some() && schema.remove("oneOf").is_some() {
        schema.insert("type".into(), "string".into());
    }
}

/// A title is text that fits a heading.
fn titles(schema: &mut Schema) {
    let title = schema.get_mut("properties").and_then(|keys| keys.get_mut("title")).and_then(Value::as_object_mut);
    let Some(title) = title.filter(|title| title.get("type").is_some_and(|name| name == "string")) else { return };
    title.insert("maxLength".into(), LONGEST_TITLE.into());
    title.insert("x-form".into(), "title".into());
}

/// What is marked as the diameter of a tube, or as a window of such, may be the name of a size.
fn tubes(schema: &mut Schema) {
    if schema.remove("x-tube").is_none() {
        return;
    }
    if schema.get("x-quantity").is_some() {
        return of_tube(schema);
    }
    for end in ["min", "max"] {
        let inner = schema.get_mut("properties").and_then(|keys| keys.get_mut(end));
        let Some(inner) = inner.and_then(|value| <&mut Schema>::try_from(value).ok()) else { continue };
        of_tube(inner);
    }
}

/// Says of each quantity from where to where it goes: no pattern can.
fn limits(schema: &mut Schema) {
    let Some(kind) = schema.get("x-quantity").and_then(Value::as_str).and_then(Quantity::named) else { return };
    let bound = |key: &str| schema.get(key).and_then(Value::as_f64);
    let limits = kind.limits([bound("x-least"), bound("x-most")]);
    let before = schema.get("description").and_then(Value::as_str);
    let text = before.map_or_else(|| format!("F{}.", &limits[1..]), |before| format!("{before} F{}.", &limits[1..]));
    schema.insert("description".into(), text.into());
}

/// Doc comments are wrapped for the source; an editor wraps for itself.
fn one_line_descriptions(schema: &mut Schema) {
    if let Some(Value::String(text)) = schema.get_mut("description") {
        *text = text.split("\n\n").map(|paragraph| paragraph.replace('\n', " ")).collect::<Vec<_>>().join("\n\n");
    }
}
