//! Values that several commands take.

use clap::builder::{PossibleValuesParser, TypedValueParser};

use crate::spec::{Date, Language};

/// Reads a day.
pub(super) fn day(text: &str) -> Result<Date, String> {
    Date::read(text).ok_or_else(|| "no day of the calendar: write YYYY-MM-DD".into())
}

/// Reads the code of a language.
pub(super) fn language() -> impl TypedValueParser<Value = Language> {
    PossibleValuesParser::new(Language::ALL.map(Language::code))
        .try_map(|code| Language::of(&code).ok_or("no such language"))
}
