//! From the tree to typed values: serde reads the nodes themselves, and nothing is copied in between.

use std::fmt::Display;

use serde::de::value::{BorrowedStrDeserializer, StrDeserializer};
use serde::de::{self, Deserialize, DeserializeSeed, Deserializer, MapAccess, SeqAccess, Unexpected, Visitor};
use serde_yaml::Value;

use super::mends::{Change, Mends};
use super::tree::{Document, NodeId, NodeKind};
use super::value::{Core, tagged_type};
use crate::place::Step;

/// Why a document is not of its type.
#[derive(Debug, thiserror::Error)]
#[error("{message}")]
pub struct Untyped<'d> {
    /// What serde says.
    pub message: String,
    /// The way to the value at fault, from there to the root.
    way: Vec<Step<'d>>,
}

impl<'d> Untyped<'d> {
    /// The way from the root to the value at fault.
    #[must_use]
    pub fn route(&self) -> Vec<Step<'d>> {
        self.way.iter().rev().copied().collect()
    }

    fn under(mut self, step: Step<'d>) -> Self {
        self.way.push(step);
        self
    }
}

impl de::Error for Untyped<'_> {
    fn custom<T: Display>(message: T) -> Self {
        Self { message: message.to_string(), way: Vec::new() }
    }
}

/// Types a document with its fixes.
///
/// # Errors
/// What serde cannot make of it, and where.
pub fn typed<'d, T: Deserialize<'d>>(document: &'d Document, mends: &'d Mends<'d>) -> Result<T, Untyped<'d>> {
    T::deserialize(match &mends.here {
        Change::StandIn(value) => Source::StandIn(value),
        Change::Kept | Change::LeftOut => {
            Source::Written(Written { document, id: document.root(), mends: Some(mends) })
        }
    })
}

/// A value to be typed.
#[derive(Clone, Copy)]
enum Source<'d> {
    Written(Written<'d>),
    StandIn(&'d Value),
}

/// A value of the document.
#[derive(Clone, Copy)]
struct Written<'d> {
    document: &'d Document,
    id: NodeId,
    mends: Option<&'d Mends<'d>>,
}

impl<'d> Written<'d> {
    /// What is to be typed one step further down; nothing if it is left out.
    fn below(self, id: NodeId, step: Step<'_>) -> Option<Source<'d>> {
        let mends = self.mends.and_then(|mends| mends.at(step));
        match mends.map(|mends| &mends.here) {
            Some(Change::LeftOut) => None,
            Some(Change::StandIn(value)) => Some(Source::StandIn(value)),
            Some(Change::Kept) | None => Some(Source::Written(Self { id, mends, ..self })),
        }
    }

    /// What stands in under keys that are not written.
    fn put_in(self, entries: &'d [(NodeId, NodeId)]) -> Option<More<'d>> {
        let below = &self.mends.filter(|mends| !mends.below.is_empty())?.below;
        let written = move |key: &str| entries.iter().any(|(name, _)| self.document.text(*name) == Some(key));
        Some(Box::new(below.iter().filter_map(move |(step, mends)| match (step, &mends.here) {
            (Step::Key(key), Change::StandIn(value)) if !written(key) => Some((*key, Source::StandIn(value))),
            _ => None,
        })))
    }
}

/// Keys and what stands under them.
type More<'d> = Box<dyn Iterator<Item = (&'d str, Source<'d>)> + 'd>;

/// A scalar: what it means, and its text where that matters.
struct Scalar<'d>(Core, &'d str);

impl<'d> Scalar<'d> {
    fn visit<V: Visitor<'d>>(self, visitor: V) -> Result<V::Value, Untyped<'d>> {
        let Self(core, text) = self;
        match core {
            Core::Null => visitor.visit_unit(),
            Core::Bool(truth) => visitor.visit_bool(truth),
            Core::Int(whole) => match (u64::try_from(whole), i64::try_from(whole)) {
                (Ok(whole), _) => visitor.visit_u64(whole),
                (_, Ok(whole)) => visitor.visit_i64(whole),
                _ => visitor.visit_borrowed_str(text),
            },
            Core::Float(number) => visitor.visit_f64(number),
            Core::Text => visitor.visit_borrowed_str(text),
        }
    }
}

/// What a source holds.
enum Held<'d> {
    Scalar(Scalar<'d>),
    List(Items<'d>),
    Mapping(Entries<'d>),
}

impl<'d> Source<'d> {
    fn held(self) -> Held<'d> {
        match self {
            Self::Written(written) => {
                let document = written.document;
                let id = document.resolve(written.id);
                match &document.node(id).kind {
                    NodeKind::Scalar { text, style, tag } => {
                        Held::Scalar(Scalar(tagged_type(text, *style, *tag), text))
                    }
                    NodeKind::Sequence(items) => Held::List(Items::Written { list: written, items, next: 0 }),
                    NodeKind::Mapping(entries) => {
                        let more = written.put_in(entries);
                        Held::Mapping(Entries { written: Some((written, entries)), more, current: None })
                    }
                    // What an alias leads to is none.
                    NodeKind::Alias { .. } => Held::Scalar(Scalar(Core::Null, "")),
                }
            }
            Self::StandIn(value) => match value {
                Value::Sequence(items) => Held::List(Items::StandIn(items)),
                Value::Mapping(entries) => {
                    let named = |(key, value): (&'d Value, &'d Value)| Some((key.as_str()?, Source::StandIn(value)));
                    let more: More<'d> = Box::new(entries.iter().filter_map(named));
                    Held::Mapping(Entries { written: None, more: Some(more), current: None })
                }
                _ => Held::Scalar(stand_in(value)),
            },
        }
    }
}

fn stand_in(value: &Value) -> Scalar<'_> {
    match value {
        Value::Bool(truth) => Scalar(Core::Bool(*truth), ""),
        Value::Number(number) => {
            let whole = number.as_u64().map(i128::from).or_else(|| number.as_i64().map(i128::from));
            Scalar(whole.map_or_else(|| Core::Float(number.as_f64().unwrap_or(f64::NAN)), Core::Int), "")
        }
        Value::String(text) => Scalar(Core::Text, text),
        _ => Scalar(Core::Null, ""),
    }
}

impl<'d> Deserializer<'d> for Source<'d> {
    type Error = Untyped<'d>;

    fn deserialize_any<V: Visitor<'d>>(self, visitor: V) -> Result<V::Value, Untyped<'d>> {
        match self.held() {
            Held::Scalar(scalar) => scalar.visit(visitor),
            Held::List(items) => visitor.visit_seq(items),
            Held::Mapping(entries) => visitor.visit_map(entries),
        }
    }

    fn deserialize_option<V: Visitor<'d>>(self, visitor: V) -> Result<V::Value, Untyped<'d>> {
        match self.held() {
            Held::Scalar(Scalar(Core::Null, _)) => visitor.visit_none(),
            _ => visitor.visit_some(self),
        }
    }

    fn deserialize_newtype_struct<V: Visitor<'d>>(self, _: &'static str, visitor: V) -> Result<V::Value, Untyped<'d>> {
        visitor.visit_newtype_struct(self)
    }

    /// All our choices are words.
    fn deserialize_enum<V: Visitor<'d>>(
        self,
        _: &'static str,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Untyped<'d>> {
        match self.held() {
            Held::Scalar(Scalar(Core::Text, word)) => visitor.visit_enum(StrDeserializer::new(word)),
            _ => Err(de::Error::invalid_type(Unexpected::Other("no word"), &visitor)),
        }
    }

    fn deserialize_ignored_any<V: Visitor<'d>>(self, visitor: V) -> Result<V::Value, Untyped<'d>> {
        visitor.visit_unit()
    }

    serde::forward_to_deserialize_any! {
        <V: Visitor<'d>>
        bool i8 i16 i32 i64 i128 u8 u16 u32 u64 u128 f32 f64 char str string bytes byte_buf unit unit_struct seq tuple
        tuple_struct map struct identifier
    }
}

/// The items of a list that are still to come.
enum Items<'d> {
    Written { list: Written<'d>, items: &'d [NodeId], next: usize },
    StandIn(&'d [Value]),
}

impl<'d> SeqAccess<'d> for Items<'d> {
    type Error = Untyped<'d>;

    fn next_element_seed<T: DeserializeSeed<'d>>(&mut self, seed: T) -> Result<Option<T::Value>, Untyped<'d>> {
        match self {
            Self::Written { list, items, next } => {
                let Some(&id) = items.get(*next) else { return Ok(None) };
                let step = Step::Index(*next);
                *next += 1;
                let Some(item) = list.below(id, step) else { return Ok(None) };
                seed.deserialize(item).map(Some).map_err(|untyped| untyped.under(step))
            }
            Self::StandIn(items) => {
                let Some((first, rest)) = items.split_first() else { return Ok(None) };
                *items = rest;
                seed.deserialize(Source::StandIn(first)).map(Some)
            }
        }
    }

    fn size_hint(&self) -> Option<usize> {
        Some(match self {
            Self::Written { items, next, .. } => items.len() - next,
            Self::StandIn(items) => items.len(),
        })
    }
}

/// The entries of a mapping that are still to come.
struct Entries<'d> {
    written: Option<(Written<'d>, &'d [(NodeId, NodeId)])>,
    /// What follows those that are written.
    more: Option<More<'d>>,
    /// Whose key was taken and whose value was not yet.
    current: Option<(&'d str, Source<'d>)>,
}

impl<'d> Entries<'d> {
    fn next(&mut self) -> Option<(&'d str, Source<'d>)> {
        while let Some((mapping, [(key, value), rest @ ..])) = self.written {
            self.written = Some((mapping, rest));
            let Some(key) = mapping.document.text(*key) else { continue };
            if let Some(value) = mapping.below(*value, Step::Key(key)) {
                return Some((key, value));
            }
        }
        self.more.as_mut()?.next()
    }
}

impl<'d> MapAccess<'d> for Entries<'d> {
    type Error = Untyped<'d>;

    fn next_key_seed<K: DeserializeSeed<'d>>(&mut self, seed: K) -> Result<Option<K::Value>, Untyped<'d>> {
        self.current = self.next();
        let Some((key, _)) = self.current else { return Ok(None) };
        seed.deserialize(BorrowedStrDeserializer::new(key)).map(Some)
    }

    fn next_value_seed<T: DeserializeSeed<'d>>(&mut self, seed: T) -> Result<T::Value, Untyped<'d>> {
        let Some((key, value)) = self.current.take() else { return Err(de::Error::custom("a value without its key")) };
        seed.deserialize(value).map_err(|untyped| untyped.under(Step::Key(key)))
    }
}
