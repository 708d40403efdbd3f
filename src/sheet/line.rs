//! A line of the sheet: a traced value with its words, its symbol and its method.

use std::ops::Deref;

use super::key::{Key, SectionKey};
use super::method::Method;
use super::missing::Missing;
use super::saying::Told;
use super::shown::Shown;
use super::sources::Sources;
use super::title::Title;
use super::traced::{AsTraced, Traced};

/// One value of the sheet.
#[derive(Debug, Clone)]
pub struct Line<T> {
    traced: Traced<T>,
    /// How it was computed, where that is not the same for every hop.
    method: Option<Method>,
    /// What it is, where that is not the same for every hop.
    words: Option<&'static str>,
}

impl<T: Shown> Traced<T> {
    /// A line of the sheet, computed as its group says.
    pub(super) fn line(self) -> Line<T> {
        Line { traced: self.finite(), method: None, words: None }
    }

    /// A line of the sheet with a method of its own.
    pub(super) fn by(self, method: impl Into<Method>) -> Line<T> {
        Line { traced: self.finite(), method: Some(method.into()), words: None }
    }
}

impl<T> Line<T> {
    /// How it was computed, where that is not the same for every hop.
    pub(super) const fn own_method(&self) -> Option<Method> {
        self.method
    }

    /// The same line under other words than those of its group.
    pub(super) fn called(self, words: &'static str) -> Self {
        Self { words: Some(words), ..self }
    }

    /// What it is, where that is not the same for every hop.
    #[must_use]
    pub const fn own_words(&self) -> Option<&'static str> {
        self.words
    }
}

impl<T> Deref for Line<T> {
    type Target = Traced<T>;

    fn deref(&self) -> &Traced<T> {
        &self.traced
    }
}

impl<T: Clone> AsTraced for Line<T> {
    type Value = T;

    fn traced(&self) -> &Traced<T> {
        &self.traced
    }
}

/// A line without its type, to print.
#[derive(Debug, Clone)]
pub struct Row {
    /// Where it stands in the sheet.
    pub key: Key,
    /// What it is, in words.
    pub words: &'static str,
    /// Its symbol, if it has one.
    pub symbol: &'static str,
    /// How it was computed and by what source; `as written` for an input.
    pub method: Method,
    /// What it holds, or why there is nothing.
    pub text: Result<Told, Missing>,
    /// The number in its base unit.
    pub number: Option<(f64, &'static str)>,
    /// What a person would change to change it.
    pub from: Sources,
}

/// Rows that belong together.
#[derive(Debug, Clone)]
pub struct Section {
    /// Which part of the sheet it is.
    pub key: SectionKey,
    /// Heading.
    pub title: Title,
    /// Its rows.
    pub rows: Vec<Row>,
}

impl Section {
    /// The same without the rows of what nobody planned: a list of such reasons at every hop would hide the rest.
    pub(super) fn planned(mut self) -> Self {
        self.rows.retain(|row| row.text.as_ref().err().is_none_or(|missing| !missing.reason.is_unplanned()));
        self
    }
}

/// Declares a group of lines: field, type, symbol, words, method. Each line has its [`Name`](super::key::Name) as a constant
/// of the group, called as its field is, and the group can list its [`Row`]s.
macro_rules! lines {
    ($(#[$doc:meta])* $group:ident {
        $($field:ident: $type:ty, $symbol:literal, $words:literal, $method:expr;)+
    }) => {
        $(#[$doc])*
        #[derive(Debug, Clone)]
        pub struct $group {
            $(#[doc = concat!("`", $symbol, "`: ", $words, ".")] pub $field: $crate::sheet::Line<$type>,)+
        }

        #[allow(non_upper_case_globals, reason = "a name is spelled as the field it names")]
        impl $group {
            $(#[doc = concat!("Name of the line ", $words, ".")]
            pub const $field: $crate::sheet::Name = $crate::sheet::Name::new(stringify!($field));)+
        }

        impl $group {
            /// Calls `each` with the words and the reason of every line without a value.
            pub fn missing(&self, each: &mut dyn FnMut(&'static str, &$crate::sheet::Missing)) {
                $(if let Err(missing) = self.$field.value() {
                    each($words, missing);
                })+
            }

            /// Its rows, as part of a section.
            #[must_use]
            pub fn rows(&self, section: &$crate::sheet::SectionKey) -> Vec<$crate::sheet::Row> {
                use $crate::sheet::Shown as _;
                vec![$($crate::sheet::Row {
                    key: section.line(Self::$field),
                    words: self.$field.own_words().unwrap_or($words),
                    symbol: $symbol,
                    method: self.$field.own_method().unwrap_or_else(|| $crate::sheet::Method::from($method)),
                    text: self.$field.value().map(|value| value.told()).map_err(Clone::clone),
                    number: self.$field.value().ok().and_then(|value| value.number()),
                    from: self.$field.sources().clone(),
                }),+]
            }

            /// Its rows as a section of their own.
            #[must_use]
            pub fn section(&self, key: $crate::sheet::SectionKey, title: $crate::sheet::Title) -> $crate::sheet::Section {
                $crate::sheet::Section { rows: self.rows(&key), key, title }
            }
        }
    };
}

pub(super) use lines;

/// The method of a line that is an input.
pub const AS_WRITTEN: &str = "as written";
