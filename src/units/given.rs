//! A quantity as its author wrote it.

use std::borrow::Cow;
use std::fmt;

use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::de::{Deserialize, Deserializer, Error, Unexpected, Visitor};

use super::{Millimetres, Quantity, text, tube};

/// A value together with the author's words for it, so that `4 1/2 in` is printed back as `4 1/2 in`.
///
/// Two are equal when their values are. In YAML it is text: a number and a unit.
#[derive(Debug, Clone)]
pub struct Given<Q> {
    /// The value in the base unit.
    pub value: Q,
    /// The words; none for a value that nobody wrote.
    words: Option<Box<str>>,
}

impl<Q: Quantity> Given<Q> {
    /// A value nobody wrote: a stated default. It prints in the base unit.
    #[must_use]
    pub fn assumed(value: Q) -> Self {
        Self { value, words: None }
    }
}

impl<Q> Given<Q> {
    /// How much one step of the last digit written is worth, in degrees: for `46.5123°` a ten-thousandth, for `46°30'44"` a
    /// second. None if nobody wrote it, or the words hold no number of an angle.
    #[must_use]
    pub fn step(&self) -> Option<f64> {
        let words = self.words.as_deref()?;
        let seconds = words.contains(['"', '″']);
        let minutes = words.contains(['\'', '′']);
        let (unit, part) = match (seconds, minutes) {
            (true, _) => (3600.0, words.rsplit(['\'', '′']).next()?),
            (_, true) => (60.0, words.rsplit(['°', 'd']).next()?),
            _ => (1.0, words),
        };
        let digits = |text: &str| text.bytes().take_while(u8::is_ascii_digit).count();
        let decimals = part.split_once('.').map_or(0, |(_, rest)| digits(rest));
        part.bytes().any(|byte| byte.is_ascii_digit()).then(|| {
            let steps = (0..decimals).fold(unit, |steps, _| steps * 10.0);
            1.0 / steps
        })
    }
}

impl<Q: PartialEq> PartialEq for Given<Q> {
    fn eq(&self, other: &Self) -> bool {
        self.value == other.value
    }
}

impl<Q: fmt::Display> fmt::Display for Given<Q> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match &self.words {
            Some(words) => f.write_str(words),
            None => self.value.fmt(f),
        }
    }
}

impl<'de, Q: Quantity> Deserialize<'de> for Given<Q> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Words<Q>(std::marker::PhantomData<Q>);

        impl<Q: Quantity> Visitor<'_> for Words<Q> {
            type Value = Given<Q>;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                write!(f, "a {} such as `{}`", Q::KIND.name, Q::KIND.example)
            }

            fn visit_str<E: Error>(self, words: &str) -> Result<Given<Q>, E> {
                let named = (Q::KIND.name == Millimetres::KIND.name).then(|| tube::read(words)).flatten();
                match named.unwrap_or_else(|| text::read(Q::KIND, words)) {
                    Ok(base) => Ok(Given { value: Q::new(base), words: Some(words.trim().into()) }),
                    Err(fault) => Err(E::custom(fault.reason)),
                }
            }

            fn visit_f64<E: Error>(self, bare: f64) -> Result<Given<Q>, E> {
                Err(E::invalid_type(Unexpected::Float(bare), &self))
            }
        }

        deserializer.deserialize_str(Words(std::marker::PhantomData))
    }
}

impl<Q: Quantity> JsonSchema for Given<Q> {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        Q::KIND.name.into()
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        let kind = Q::KIND;
        json_schema!({
            "type": "string",
            "pattern": pattern(kind),
            "examples": [kind.example],
            "x-quantity": kind.name,
            "x-unit": kind.unit,
        })
    }
}

/// Makes of the schema of a diameter that of a tube's: it may be the name of a size as well.
pub fn of_tube(schema: &mut Schema) {
    let plain = pattern(Millimetres::KIND);
    let inside = plain.trim_start_matches(r"^\s*").trim_end_matches(r"\s*$");
    schema.insert("pattern".into(), format!(r"^\s*({inside}|{})\s*$", tube::PATTERN).into());
    schema.insert("x-quantity".into(), super::kinds::TUBE.into());
    schema.insert("examples".into(), serde_json::json!([Millimetres::KIND.example, "DN 50", "NPS 2 1/2"]));
}

/// A regular expression for editors: a number, then one of the unit words.
///
/// It is looser than the reader (an editor need not know ranges) but never stricter.
fn pattern(kind: &super::Kind) -> String {
    let mut words: Vec<String> = kind.words().map(|word| word.replace('.', r"\.")).collect();
    words.sort_by_key(|word| std::cmp::Reverse(word.len()));
    let number = r"[-+−]?[0-9.]+([eE][-+]?[0-9]+)?([ -]?[0-9]*/[0-9]+)?";
    let plain = format!(r"{number}\s*({})", words.join("|"));
    match kind.name {
        "latitude" | "longitude" => format!(r#"^\s*({plain}|[0-9][0-9°'"′″. ]*[NSEW])\s*$"#),
        "length" => format!(r#"^\s*({plain}|-?[0-9]+\s*(ft|')\s*[0-9][0-9./ ]*(in|"))\s*$"#),
        _ => format!(r"^\s*{plain}\s*$"),
    }
}
