//! From the tree to [`serde_yaml::Value`], typing scalars on the way.
//!
//! A node comes in and a value goes out, aliases expanded. Plain scalars are typed by the core
//! schema of YAML 1.2, here and not by [`serde_yaml`], which never sees any YAML text: it is slow
//! on hostile input. What the schema leaves open is decided for the reader of a specification: a
//! leading zero marks a code, not a number, so `007` is text. Keys are always text.

use serde_yaml::{Mapping, Number, Value};

use super::tree::{Document, NodeId, NodeKind, Style, Tag};

/// What a scalar means in the core schema.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Core {
    /// `null`, `~` or nothing at all.
    Null,
    /// `true` or `false`.
    Bool(bool),
    /// A whole number, which fits an `i64` or a `u64`.
    Int(i128),
    /// Any other number; infinite or not a number only if written as `.inf` or `.nan`.
    Float(f64),
    /// None of the above: its own text.
    Text,
}

/// Builds the value of a node.
///
/// The recursion is as deep as the tree with aliases expanded, which the parser has limited.
#[must_use]
pub fn to_value(document: &Document, id: NodeId) -> Value {
    match &document.node(id).kind {
        NodeKind::Scalar { text, style, tag } => scalar_value(text, tagged_type(text, *style, *tag)),
        NodeKind::Sequence(items) => items.iter().map(|&item| to_value(document, item)).collect::<Vec<_>>().into(),
        NodeKind::Mapping(entries) => entries
            .iter()
            .filter_map(|&(key, value)| Some((document.text(key)?.into(), to_value(document, value))))
            .collect::<Mapping>()
            .into(),
        NodeKind::Alias { target } => to_value(document, *target),
    }
}

fn scalar_value(text: &str, core: Core) -> Value {
    match core {
        Core::Null => Value::Null,
        Core::Bool(truth) => truth.into(),
        Core::Int(whole) => u64::try_from(whole)
            .map(Number::from)
            .or_else(|_| i64::try_from(whole).map(Number::from))
            .map_or_else(|_| text.into(), Value::Number),
        Core::Float(number) => number.into(),
        Core::Text => text.into(),
    }
}

/// The type of a scalar that may carry a tag. A tag that the text does not fit leaves text.
pub(super) fn tagged_type(text: &str, style: Style, tag: Option<Tag>) -> Core {
    let Some(tag) = tag else {
        return core_type(text, style);
    };
    match (tag, core_type(text, Style::Plain)) {
        #[expect(clippy::cast_precision_loss, reason = "a float was asked for")]
        (Tag::Float, Core::Int(whole)) => Core::Float(whole as f64),
        (Tag::Null, core @ Core::Null)
        | (Tag::Bool, core @ Core::Bool(_))
        | (Tag::Int, core @ Core::Int(_))
        | (Tag::Float, core @ Core::Float(_)) => core,
        _ => Core::Text,
    }
}

/// Types a scalar by the core schema. Only plain scalars can be anything but text.
///
/// Whole numbers beyond 64 bits become floats; numbers beyond any float, and whole numbers with a
/// leading zero, stay text.
#[must_use]
pub fn core_type(text: &str, style: Style) -> Core {
    if style != Style::Plain {
        return Core::Text;
    }
    match text {
        "" | "~" | "null" | "Null" | "NULL" => Core::Null,
        "true" | "True" | "TRUE" => Core::Bool(true),
        "false" | "False" | "FALSE" => Core::Bool(false),
        ".nan" | ".NaN" | ".NAN" => Core::Float(f64::NAN),
        ".inf" | ".Inf" | ".INF" | "+.inf" | "+.Inf" | "+.INF" => Core::Float(f64::INFINITY),
        "-.inf" | "-.Inf" | "-.INF" => Core::Float(f64::NEG_INFINITY),
        _ => number(text).unwrap_or(Core::Text),
    }
}

fn number(text: &str) -> Option<Core> {
    if let Some(digits) = text.strip_prefix("0x") {
        return based(digits, 16);
    }
    if let Some(digits) = text.strip_prefix("0o") {
        return based(digits, 8);
    }
    if is_whole(text) {
        if has_leading_zero(text) {
            return None;
        }
        let fits = |whole: &i128| (i128::from(i64::MIN)..=i128::from(u64::MAX)).contains(whole);
        if let Some(whole) = text.parse().ok().filter(fits) {
            return Some(Core::Int(whole));
        }
    } else if !is_decimal(text) {
        return None;
    }
    text.parse().ok().filter(|float: &f64| float.is_finite()).map(Core::Float)
}

/// A number without sign in base 8 or 16.
fn based(digits: &str, base: u32) -> Option<Core> {
    if digits.is_empty() {
        return None;
    }
    let digits: Vec<u32> = digits.chars().map(|digit| digit.to_digit(base)).collect::<Option<_>>()?;
    let whole = digits.iter().try_fold(0_u64, |sum, &digit| sum.checked_mul(base.into())?.checked_add(digit.into()));
    if let Some(whole) = whole {
        return Some(Core::Int(whole.into()));
    }
    let float = digits.iter().fold(0.0, |sum, &digit| sum * f64::from(base) + f64::from(digit));
    float.is_finite().then_some(Core::Float(float))
}

fn unsigned(text: &str) -> &str {
    text.strip_prefix(['-', '+']).unwrap_or(text)
}

fn all_digits(text: &str) -> bool {
    !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit())
}

fn is_whole(text: &str) -> bool {
    all_digits(unsigned(text))
}

fn has_leading_zero(text: &str) -> bool {
    let digits = unsigned(text);
    digits.len() > 1 && digits.starts_with('0')
}

/// Whether `text` is `[-+]? ( \. [0-9]+ | [0-9]+ ( \. [0-9]* )? ) ( [eE] [-+]? [0-9]+ )?`.
fn is_decimal(text: &str) -> bool {
    let (mantissa, exponent) = match text.split_once(['e', 'E']) {
        Some((mantissa, exponent)) => (mantissa, Some(exponent)),
        None => (text, None),
    };
    let digits = unsigned(mantissa);
    let (whole, fraction) = digits.split_once('.').unwrap_or((digits, ""));
    let empty_or_digits = |part: &str| part.is_empty() || all_digits(part);
    empty_or_digits(whole)
        && empty_or_digits(fraction)
        && !(whole.is_empty() && fraction.is_empty())
        && exponent.is_none_or(is_whole)
}

/// Why a plain scalar that is text to us is something else to readers of YAML 1.1, if it is.
///
/// The reason completes the sentence "without quotes, this is …".
#[must_use]
pub fn ambiguous(text: &str) -> Option<&'static str> {
    match text {
        "y" | "Y" | "yes" | "Yes" | "YES" | "n" | "N" | "no" | "No" | "NO" | "on" | "On" | "ON" | "off" | "Off"
        | "OFF" => return Some("a boolean by other YAML readers"),
        _ => {}
    }
    let digits = unsigned(text).replace('_', "");
    if !digits.starts_with(|first: char| first.is_ascii_digit()) {
        None
    } else if is_sexagesimal(&digits) {
        Some("a number in base 60 by other YAML readers")
    } else if is_date(text) {
        Some("a date by other YAML readers")
    } else if is_other_number(text, &digits) {
        Some("a number by other YAML readers")
    } else {
        None
    }
}

/// Two or more groups such as `12:30`, of which only the last may have a fraction.
fn is_sexagesimal(digits: &str) -> bool {
    let (whole, fraction) = digits.split_once('.').unwrap_or((digits, ""));
    let mut groups = whole.split(':');
    groups.next().is_some_and(all_digits)
        && whole.contains(':')
        && groups.all(|group| all_digits(group) && group.parse().is_ok_and(|value: u8| value < 60))
        && (fraction.is_empty() || all_digits(fraction))
}

/// A date such as `2026-01-02`, alone or before a time.
fn is_date(text: &str) -> bool {
    let (date, time) = match text.split_once(['T', 't', ' ', '\t']) {
        Some((date, time)) => (date, time.trim_start()),
        None => (text, "0"),
    };
    let mut parts = date.split('-');
    let mut part =
        |lengths: &[usize]| parts.next().is_some_and(|part| all_digits(part) && lengths.contains(&part.len()));
    part(&[4])
        && part(&[1, 2])
        && part(&[1, 2])
        && parts.next().is_none()
        && time.starts_with(|first: char| first.is_ascii_digit())
}

/// A leading zero (octal to some), underscores between the digits, or base 2.
fn is_other_number(text: &str, digits: &str) -> bool {
    is_whole(digits) && has_leading_zero(digits) || text.contains('_') && is_decimal(digits) || is_binary(digits)
}

fn is_binary(digits: &str) -> bool {
    digits.strip_prefix("0b").is_some_and(|bits| !bits.is_empty() && bits.bytes().all(|bit| matches!(bit, b'0' | b'1')))
}
