//! Shape checking: a document's tree held against the schema of its kind, all faults at once.
//!
//! serde stops at the first thing it cannot type. A person wants the whole list, each at its place with the fix, so the
//! schema that editors use is also compiled into a [`Shape`] here and walked beside the tree. A tree that passes is then
//! typed by serde, which has the last word.

mod check;
mod checked;
mod keys;
mod leaf;
mod notes;
mod taken;

use std::sync::LazyLock;

use serde_json::Value;

use crate::spec::{Kind, schema_of};
use crate::units;

pub use check::{check, check_completed, check_written};
pub use checked::{Checked, Hole, MOST_FAULTS, Mention, TakenIn};
pub use taken::{Giver, Taken};

/// What a node of a document must look like.
#[derive(Debug)]
pub enum Shape {
    /// A mapping with these keys and no others.
    Map(Vec<Field>),
    /// A mapping with keys of the author's choosing.
    Table(Box<Shape>),
    /// Some of the keys of a mapping, which others take in.
    Part(Box<Shape>),
    /// A sequence.
    List(Box<Shape>),
    /// A number with a unit, and the least and the most it may be at this key where they are narrower than the kind says.
    Quantity(&'static units::Kind, [Option<f64>; 2]),
    /// The name of a thing.
    Id,
    /// The id of a document of a kind.
    Reference(Kind),
    /// A calendar day.
    Date,
    /// The least version of the program.
    LeastVersion,
    /// Free text.
    Text,
    /// Words that stand in headings and tables: short, and on one line.
    Title,
    /// One of a few words.
    Choice(Vec<String>),
    /// A count; one of these if the list is not empty.
    Count(Vec<u64>),
    /// A plain number without a unit.
    Number(Option<f64>),
    /// `true` or `false`.
    Flag,
}

/// A key of a mapping.
#[derive(Debug)]
pub struct Field {
    /// The key.
    pub name: String,
    /// Whether it must be there.
    pub required: bool,
    /// Whether it must be there once all is taken in that the document does not write itself.
    pub completed: bool,
    /// What its value must look like.
    pub shape: Shape,
}

impl Shape {
    /// The shape of a kind of document.
    #[must_use]
    pub fn of(kind: Kind) -> &'static Self {
        static SHAPES: LazyLock<Vec<Shape>> = LazyLock::new(|| {
            Kind::ALL
                .iter()
                .map(|kind| {
                    let schema = schema_of(*kind).to_value();
                    compile(&schema, &schema)
                })
                .collect()
        });
        &SHAPES[kind as usize]
    }

    /// A value of this shape that stands in for a broken one, so that the rest of its document can be typed.
    #[must_use]
    pub fn stand_in(&self) -> serde_yaml::Value {
        use serde_yaml::{Mapping, Value};
        match self {
            Self::Map(fields) => {
                let required = fields.iter().filter(|field| field.required || field.completed);
                Value::Mapping(required.map(|field| (field.name.clone().into(), field.shape.stand_in())).collect())
            }
            Self::Table(_) | Self::Part(_) => Value::Mapping(Mapping::new()),
            Self::List(_) => Value::Sequence(Vec::new()),
            Self::Count(counts) => counts.first().copied().unwrap_or(1).into(),
            Self::Number(_) => 1.0.into(),
            Self::Flag => false.into(),
            _ => self.example().into(),
        }
    }

    /// A value of this shape, for a line that shows how to write it.
    #[must_use]
    pub fn example(&self) -> String {
        match self {
            Self::Quantity(kind, _) => kind.example.into(),
            Self::Id => "some-id".into(),
            Self::Reference(kind) => format!("some-{kind}"),
            Self::Date => "2026-05-18".into(),
            Self::LeastVersion => ">=0.1".into(),
            Self::Text | Self::Title => "some text".into(),
            Self::Choice(words) => words.first().cloned().unwrap_or_default(),
            Self::Count(counts) => counts.first().copied().unwrap_or(1).to_string(),
            Self::Number(None) => "-4.2".into(),
            Self::Number(Some(_)) => "4.2".into(),
            Self::Flag => "true".into(),
            Self::List(_) => "[…]".into(),
            Self::Map(_) | Self::Table(_) | Self::Part(_) => "{…}".into(),
        }
    }
}

/// Our own schemas use a small part of JSON Schema; what is not in it is taken as free text, which serde then judges.
fn compile(schema: &Value, root: &Value) -> Shape {
    if let Some(target) = schema["$ref"].as_str().and_then(|path| root.pointer(path.trim_start_matches('#'))) {
        return compile(target, root);
    }
    if schema["x-part"].is_string() {
        return Shape::Part(Box::new(Shape::Map(fields(schema, root))));
    }
    if let Some(kind) = schema["x-quantity"].as_str().and_then(units::Kind::named) {
        return Shape::Quantity(kind, [schema["x-least"].as_f64(), schema["x-most"].as_f64()]);
    }
    if let Some(words) = choices(schema) {
        return Shape::Choice(words);
    }
    if let Some(kind) = schema["x-refers-to"].as_str().and_then(Kind::from_word) {
        return Shape::Reference(kind);
    }
    match (schema["type"].as_str(), schema["x-form"].as_str()) {
        (_, Some("id")) => Shape::Id,
        (_, Some("date")) => Shape::Date,
        (_, Some("requires")) => Shape::LeastVersion,
        (_, Some("title")) => Shape::Title,
        (Some("array"), _) => Shape::List(Box::new(compile(&schema["items"], root))),
        (Some("boolean"), _) => Shape::Flag,
        (Some("number"), _) => Shape::Number(schema["minimum"].as_f64()),
        (Some("integer"), _) => {
            let allowed = schema["enum"].as_array();
            Shape::Count(allowed.map(|list| list.iter().filter_map(Value::as_u64).collect()).unwrap_or_default())
        }
        (Some("object"), _) if schema["additionalProperties"].is_object() => {
            Shape::Table(Box::new(compile(&schema["additionalProperties"], root)))
        }
        (Some("object"), _) => Shape::Map(fields(schema, root)),
        _ => Shape::Text,
    }
}

fn fields(schema: &Value, root: &Value) -> Vec<Field> {
    let listed = |key: &str| -> Vec<&str> {
        schema[key].as_array().map(|names| names.iter().filter_map(Value::as_str).collect()).unwrap_or_default()
    };
    let (required, completed) = (listed("required"), listed("x-required"));
    let properties = schema["properties"].as_object();
    properties
        .into_iter()
        .flatten()
        .map(|(name, property)| Field {
            name: name.clone(),
            required: required.contains(&name.as_str()),
            completed: completed.contains(&name.as_str()),
            shape: compile(property, root),
        })
        .collect()
}

/// The words of an enumeration, however schemars chose to spell it.
fn choices(schema: &Value) -> Option<Vec<String>> {
    let word = |value: &Value| value.as_str().map(str::to_owned);
    if let Some(constant) = word(&schema["const"]) {
        return Some(vec![constant]);
    }
    if schema["type"] == "string"
        && let Some(list) = schema["enum"].as_array()
    {
        return list.iter().map(word).collect();
    }
    schema["oneOf"].as_array()?.iter().map(|choice| word(&choice["const"])).collect()
}

#[cfg(test)]
mod tests {
    use super::{Kind, Shape};

    #[test]
    fn every_kind_compiles_to_keys() {
        for kind in Kind::ALL {
            let Shape::Map(fields) = Shape::of(kind) else { panic!("{kind} is not a mapping") };
            assert_eq!(fields[0].name, "kind");
            assert!(fields.iter().any(|field| field.name == "id" && field.required));
        }
    }

    #[test]
    fn a_hop_knows_its_quantities() {
        let shape = format!("{:?}", Shape::of(Kind::Hop));
        for part in ["name: \"frequency\"", "name: \"conductor size\"", "Choice([\"upright\", \"inverted\"])"] {
            assert!(shape.contains(part), "{part} is not in {shape}");
        }
    }
}
