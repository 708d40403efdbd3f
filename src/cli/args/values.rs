//! Values that several commands take.

use clap::builder::{PossibleValuesParser, TypedValueParser};

use crate::spec::{Date, Dialect, Language};

/// Reads a day.
pub(super) fn day(text: &str) -> Result<Date, String> {
    Date::read(text).ok_or_else(|| "no day of the calendar: write YYYY-MM-DD".into())
}

/// Reads the code of a language.
pub(super) fn language() -> impl TypedValueParser<Value = Language> {
    PossibleValuesParser::new(Language::ALL.map(Language::code))
        .try_map(|code| Language::of(&code).ok_or("no such language"))
}

/// Reads the word for a form of tables.
pub(super) fn dialect() -> impl TypedValueParser<Value = Dialect> {
    PossibleValuesParser::new(Dialect::ALL.map(Dialect::word)).try_map(|word| {
        let known = Dialect::ALL.into_iter().find(|dialect| dialect.word() == word);
        known.ok_or("no such form of a table")
    })
}
