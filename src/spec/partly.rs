//! Parts of a hop that are written elsewhere and taken in: some of the keys of an end, a run or a grounding.

use std::borrow::Cow;

use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::Deserialize;
use serde::de::{Deserializer, IgnoredAny};
use serde_json::{Map, Value};

/// Some of the keys of an end, a run or a grounding. What they say counts where a hop takes it in, and is typed there.
///
/// Of which of these is said by `x-part` at its field; `schema.rs` puts the keys in.
#[derive(Debug)]
pub struct Partly;

impl<'de> Deserialize<'de> for Partly {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        IgnoredAny::deserialize(deserializer).map(|_| Self)
    }
}

impl JsonSchema for Partly {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        "Partly".into()
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({ "type": "object" })
    }
}

/// Puts into the schema of a part the keys of the whole that it may have: all but those that are written where they count.
pub(super) fn put_keys(part: &mut Schema, whole: &Value) {
    for key in ["properties", "additionalProperties"] {
        let mut value = whole[key].clone();
        if let Value::Object(properties) = &mut value {
            properties.retain(|_, property| !is_own(property));
        }
        part.insert(key.into(), value);
    }
}

/// Makes of the keys that must be there keys that may also be taken in: `x-required` in place of `required`, through all
/// mappings. Those marked `x-own` are written where they count.
pub(super) fn completed(schema: &mut Schema) {
    relax(schema.ensure_object());
}

fn relax(keys: &mut Map<String, Value>) {
    let own = |keys: &Map<String, Value>, name: &Value| {
        let property = name.as_str().and_then(|name| keys.get("properties")?.get(name));
        property.is_some_and(is_own)
    };
    if let Some(Value::Array(required)) = keys.shift_remove("required") {
        let (own, others): (Vec<Value>, Vec<Value>) = required.into_iter().partition(|name| own(keys, name));
        for (key, names) in [("required", own), ("x-required", others)] {
            if !names.is_empty() {
                keys.insert(key.into(), names.into());
            }
        }
    }
    for (key, below) in keys.iter_mut() {
        let inner: Vec<&mut Value> = match (key.as_str(), below) {
            ("properties", Value::Object(properties)) => properties.values_mut().collect(),
            ("anyOf", Value::Array(choices)) => choices.iter_mut().collect(),
            _ => continue,
        };
        inner.into_iter().filter_map(Value::as_object_mut).for_each(relax);
    }
}

fn is_own(property: &Value) -> bool {
    property["x-own"] == true
}

#[cfg(test)]
mod tests {
    use crate::spec::{Kind, schema_of};

    #[test]
    fn what_may_be_taken_in_is_required_by_no_editor() {
        let hop = schema_of(Kind::Hop).to_value();
        let end = &hop["$defs"]["End"];
        assert_eq!(end["required"], serde_json::json!(["site", "support", "height"]));
        assert!(end["x-required"].as_array().expect("a list").contains(&"radio".into()));
        assert_eq!(end["properties"]["bracket"]["x-required"], serde_json::json!(["model"]));
        let part = &schema_of(Kind::Network).to_value()["properties"]["defaults"]["properties"]["end"];
        assert_eq!(part["x-part"], "end");
        assert!(part.get("required").is_none() && part["properties"].get("site").is_none());
        assert!(part["properties"].get("radio").is_some());
    }
}
