//! How the reasons are declared, and what a sentence leaves open.

use std::fmt::Display;

use crate::network::Owner;
use crate::spec::Material;
use crate::units::{Given, Quantity};

/// What stands in an open place of a sentence, as whoever spells it must know it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Argument {
    /// A number, with its unit if it has one.
    Number(String),
    /// What somebody called something: printed as it is.
    Name(String),
    /// A word of ours, in English.
    Word(&'static str),
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
    Number: usize, i32, f64, Whole;
    Name: String, Box<str>, &'static str, Box<Owner>, Day;
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
    /// Its name; the catalogues have it in kebab-case.
    pub name: &'static str,
    /// In English, its open places in braces.
    pub english: &'static str,
    /// The names of its open places.
    pub open: &'static [&'static str],
}

impl Sentence {
    /// What it stands under in a catalogue: `NoFog` is `reason-no-fog`.
    #[must_use]
    pub fn key(&self) -> String {
        let mut key = String::from("reason");
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
    ($(#[$doc:meta])* $name:ident { $($variant:ident $({ $($open:ident: $type:ty),+ })? => $english:literal;)+ }) => {
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
                name: stringify!($variant),
                english: $english,
                open: &[$($(stringify!($open)),+)?],
            }),+];

            /// The sentence without what stands in its open places.
            #[must_use]
            pub fn sentence(&self) -> $crate::sheet::Sentence {
                match self {
                    $(Self::$variant $({ $($open: _),+ })? => $crate::sheet::Sentence {
                        name: stringify!($variant),
                        english: $english,
                        open: &[$($(stringify!($open)),+)?],
                    }),+
                }
            }

            /// What stands in its open places.
            #[must_use]
            pub fn arguments(&self) -> Vec<(&'static str, $crate::sheet::Argument)> {
                match self {
                    $(Self::$variant $({ $($open),+ })? => vec![$($(
                        (stringify!($open), $crate::sheet::sentence::Open::argument($open))
                    ),+)?]),+
                }
            }
        }

        /// In English.
        impl std::fmt::Display for $name {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                match self {
                    $(Self::$variant $({ $($open),+ })? => write!(f, $english)),+
                }
            }
        }
    };
}

pub(super) use sentences;
