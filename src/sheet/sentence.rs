//! How sentences of the sheet are declared, and what they leave open.

use std::fmt::{Debug, Display};
use std::sync::Arc;

use crate::network::Owner;
use crate::spec::{EndName, Material, Way};
use crate::units::{Given, Quantity};

/// What stands in an open place of a sentence, as whoever spells it must know it.
#[derive(Debug, Clone)]
pub enum Argument {
    /// A number, with its unit if it has one.
    Number(String),
    /// What somebody called something: printed as it is.
    Name(String),
    /// A word of ours, in English.
    Word(&'static str),
    /// A clause in the sentence, itself said in every language.
    Clause(Arc<dyn Spoken>),
}

impl Argument {
    /// In English.
    #[must_use]
    pub fn english(self) -> String {
        match self {
            Self::Number(text) | Self::Name(text) => text,
            Self::Word(word) => word.to_owned(),
            Self::Clause(clause) => clause.to_string(),
        }
    }
}

/// Something that is said in every language.
pub trait Spoken: Debug + Display {
    /// How it is declared.
    fn sentence(&self) -> Sentence;
    /// What stands in its open places, by name.
    fn arguments(&self) -> Vec<(&'static str, Argument)>;
    /// In English, with what stands in its open places spelled by the caller.
    fn english(&self, spell: &dyn Fn(Argument) -> String) -> String;
}

/// What may stand in an open place.
pub(super) trait Open {
    /// As it is handed to the catalogue.
    fn argument(&self) -> Argument;
}

impl<Q: Quantity> Open for Q {
    fn argument(&self) -> Argument {
        Argument::Number(self.to_string())
    }
}

impl<Q: Quantity> Open for Box<Given<Q>> {
    fn argument(&self) -> Argument {
        Argument::Number(self.to_string())
    }
}

impl Open for Material {
    fn argument(&self) -> Argument {
        Argument::Word(self.word())
    }
}

impl Open for Way {
    fn argument(&self) -> Argument {
        Argument::Word(self.words())
    }
}

impl Open for Term {
    fn argument(&self) -> Argument {
        Argument::Word(self.0)
    }
}

/// Bare numbers and names.
macro_rules! open {
    ($($variant:ident: $($type:ty),+;)+) => {
        $($(impl Open for $type {
            fn argument(&self) -> Argument {
                Argument::$variant(self.to_string())
            }
        })+)+
    };
}

open! {
    Number: usize, u16, i32, f64, Whole, Figure;
    Name: Box<str>, &'static str, Box<Owner>, EndName, Day;
}

/// A word of ours that the catalogues know by itself.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Term(pub &'static str);

/// A number as the sheet prints it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Figure(pub Box<str>);

impl Figure {
    pub(super) fn of(number: impl Display) -> Self {
        Self(number.to_string().into())
    }
}

impl Display for Figure {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.0)
    }
}

/// A number that is told without decimals.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Whole(pub f64);

impl Display for Whole {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{:.0}", self.0)
    }
}

/// A day as it was written: it need not be one of the calendar.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Day(pub i32, pub u8, pub u8);

impl Display for Day {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{:04}-{:02}-{:02}", self.0, self.1, self.2)
    }
}

/// A sentence as it is declared.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Sentence {
    /// What it belongs to: the first word of its key.
    pub family: &'static str,
    /// Its name; the catalogues have it in kebab-case.
    pub name: &'static str,
    /// In English, its open places in braces.
    pub english: &'static str,
    /// The names of its open places.
    pub open: &'static [&'static str],
}

impl Sentence {
    /// What it stands under in a catalogue: `NoFog` of the reasons is `reason-no-fog`.
    #[must_use]
    pub fn key(&self) -> String {
        let mut key = String::from(self.family);
        for c in self.name.chars() {
            if c.is_ascii_uppercase() {
                key.push('-');
            }
            key.push(c.to_ascii_lowercase());
        }
        key
    }
}

/// Declares an enum of sentences: name, open places with their types, English.
macro_rules! sentences {
    (
        $(#[$doc:meta])*
        $name:ident in $family:literal { $($variant:ident $({ $($open:ident: $type:ty),+ })? => $english:literal;)+ }
    ) => {
        $(#[$doc])*
        #[derive(Debug, Clone, PartialEq)]
        #[non_exhaustive]
        pub enum $name {
            $(
                #[doc = concat!("\"", $english, "\"")]
                $variant $({ $(
                    #[doc = concat!("Stands for `{", stringify!($open), "}`.")]
                    $open: $type
                ),+ })?
            ),+
        }

        impl $name {
            /// All of them, as declared.
            pub const ALL: &[$crate::sheet::Sentence] = &[$($crate::sheet::Sentence {
                family: $family,
                name: stringify!($variant),
                english: $english,
                open: &[$($(stringify!($open)),+)?],
            }),+];
        }

        impl $crate::sheet::Spoken for $name {
            fn sentence(&self) -> $crate::sheet::Sentence {
                match self {
                    $(Self::$variant $({ $($open: _),+ })? => $crate::sheet::Sentence {
                        family: $family,
                        name: stringify!($variant),
                        english: $english,
                        open: &[$($(stringify!($open)),+)?],
                    }),+
                }
            }

            fn arguments(&self) -> Vec<(&'static str, $crate::sheet::Argument)> {
                match self {
                    $(Self::$variant $({ $($open),+ })? => vec![$($(
                        (stringify!($open), $crate::sheet::sentence::Open::argument($open))
                    ),+)?]),+
                }
            }

            fn english(&self, spell: &dyn Fn($crate::sheet::Argument) -> String) -> String {
                match self {
                    $(Self::$variant $({ $($open),+ })? => {
                        $($(let $open = spell($crate::sheet::sentence::Open::argument($open));)+)?
                        format!($english)
                    }),+
                }
            }
        }

        /// In English.
        impl std::fmt::Display for $name {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                f.write_str(&$crate::sheet::Spoken::english(self, &$crate::sheet::Argument::english))
            }
        }
    };
}

pub(super) use sentences;
