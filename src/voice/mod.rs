//! How the pages speak: their language, the sign before decimals, and the system of units that comes first.
//!
//! Every sentence of a page stands in the catalogue of its language under a key, as Project Fluent writes them
//! (`voice/en.ftl`, `voice/de.ftl`). What the sheet says is declared in the sheet with its English: sentences by name
//! (`reason-`, `said-`, `title-of-`, `assumed-`), words of lines and of the YAML under `sheet-` and the word itself.
//! What nobody has translated is printed in English rather than left out.

mod catalogue;
mod numbers;

use std::collections::BTreeMap;
use std::fmt::Display;

use crate::sheet::{Argument, Line, Missing, Reason, Row, Shown, Spoken, Told};
use crate::spec::{DecimalSign, Language, Print, System, Window};
use crate::units::{Given, Quantity, TwoSystems, given_in_both, in_both, in_both_imperial_first};

use catalogue::Catalogue;
pub use catalogue::Open;
pub use numbers::shown;

/// A way of speaking.
#[derive(Debug, Clone, Copy)]
pub struct Voice {
    language: Language,
    decimal_sign: DecimalSign,
    system: System,
}

impl Voice {
    /// English, decimal points, metric first: as the sheet itself speaks.
    pub const PLAIN: Self = Self { language: Language::En, decimal_sign: DecimalSign::Point, system: System::Metric };

    /// As a network has its packs printed, or in another language.
    #[must_use]
    pub fn of(print: &Print, language: Option<Language>) -> Self {
        Self {
            language: language.or(print.language).unwrap_or_default(),
            decimal_sign: print.decimal_sign.unwrap_or_default(),
            system: print.units.unwrap_or_default(),
        }
    }

    /// The language.
    #[must_use]
    pub const fn language(self) -> Language {
        self.language
    }

    /// The sentence of a key.
    #[must_use]
    pub fn say(self, key: &str) -> String {
        self.with(key, &[])
    }

    /// The sentence of a key with what it leaves open. A key that no catalogue has is printed itself; a test sees to it
    /// that there is none.
    #[must_use]
    pub fn with(self, key: &str, open: &[Open<'_>]) -> String {
        let own = self.catalogue().sentence(key, open);
        own.or_else(|| self.english().sentence(key, open)).unwrap_or_else(|| key.to_owned())
    }

    /// The sentence of a key about a number of things.
    #[must_use]
    pub fn count(self, key: &str, number: usize) -> String {
        let own = self.catalogue().count(key, number);
        own.or_else(|| self.english().count(key, number)).unwrap_or_else(|| key.to_owned())
    }

    fn catalogue(self) -> &'static Catalogue {
        Catalogue::of(self.language, self.decimal_sign)
    }

    fn english(self) -> &'static Catalogue {
        Catalogue::of(Language::En, self.decimal_sign)
    }

    /// That findings are told in English, where the page is in another language.
    #[must_use]
    pub fn of_findings(self) -> Option<String> {
        (self.language != Language::En).then(|| self.say("findings-language"))
    }

    /// A word of ours that the sheet or the YAML has in English: never one put together, for it is known as a whole.
    #[must_use]
    pub fn term(self, word: &'static str) -> String {
        let own = self.catalogue().sentence(&catalogue::term_key(word), &[]);
        own.map_or_else(|| word.to_owned(), |words| shown(&words))
    }

    /// Every sentence that leaves nothing open, by key, for the templates.
    #[must_use]
    pub fn sentences(self) -> &'static BTreeMap<String, String> {
        self.catalogue().plain()
    }

    /// A line, or why it has no value.
    #[must_use]
    pub fn line<T: Shown>(self, line: &Line<T>) -> String {
        match line.value() {
            Ok(value) => self.told(&value.told()),
            Err(missing) => self.missing(missing),
        }
    }

    /// A row, or why it has no value.
    #[must_use]
    pub fn row(self, row: &Row) -> String {
        match &row.text {
            Ok(told) => self.told(told),
            Err(missing) => self.missing(missing),
        }
    }

    /// Why there is no value.
    #[must_use]
    pub fn missing(self, missing: &Missing) -> String {
        format!("— ({})", self.reason(&missing.reason))
    }

    /// A reason as a clause.
    #[must_use]
    pub fn reason(self, reason: &Reason) -> String {
        self.spoken(reason)
    }

    /// What a line holds.
    #[must_use]
    pub fn told(self, told: &Told) -> String {
        match told {
            Told::Number(number) => self.number(number),
            Told::Said(saying) => self.spoken(saying),
        }
    }

    /// What is declared as a sentence of the sheet: by its key, or in English where nobody has translated it.
    #[must_use]
    pub fn spoken(self, spoken: &dyn Spoken) -> String {
        let arguments = spoken.arguments().into_iter();
        let given: Vec<_> = arguments.map(|(name, argument)| (name, self.argument(argument))).collect();
        let open: Vec<Open<'_>> = given.iter().map(|(name, text)| (*name, text as &dyn Display)).collect();
        let own = self.catalogue().sentence(&spoken.sentence().key(), &open);
        shown(&own.unwrap_or_else(|| spoken.english(&|argument| self.argument(argument))))
    }

    fn argument(self, argument: Argument) -> String {
        match argument {
            Argument::Number(number) => self.number(number),
            Argument::Name(name) => name,
            Argument::Word(word) => self.term(word),
            Argument::Clause(clause) => self.spoken(&*clause),
        }
    }

    /// Two lines as a band, the smaller number first.
    #[must_use]
    pub fn band<Q: Quantity>(self, one: &Line<Q>, other: &Line<Q>) -> String {
        let (one, other) = if one.get() > other.get() { (other, one) } else { (one, other) };
        self.range(&self.line(one), &self.line(other))
    }

    /// From one to another.
    #[must_use]
    pub fn range(self, least: &dyn Display, most: &dyn Display) -> String {
        self.with("range", &[("least", least), ("most", most)])
    }

    /// A computed length or torque in both systems.
    #[must_use]
    pub fn line_in_both<Q: TwoSystems>(self, line: &Line<Q>) -> String {
        match line.value() {
            Ok(value) => self.in_both(*value),
            Err(missing) => self.missing(missing),
        }
    }

    /// A computed value in both systems.
    #[must_use]
    pub fn in_both<Q: TwoSystems>(self, value: Q) -> String {
        match self.system {
            System::Metric => self.number(in_both(value)),
            System::Imperial => self.number(in_both_imperial_first(value)),
        }
    }

    /// What an author wrote, in its unit, with the other system in brackets.
    #[must_use]
    pub fn given_in_both<Q: TwoSystems>(self, given: &Given<Q>) -> String {
        self.number(given_in_both(given))
    }

    /// A quantity.
    #[must_use]
    pub fn number(self, quantity: impl Display) -> String {
        numbers::with_sign(&shown(&quantity.to_string()), self.decimal_sign)
    }

    /// A window of quantities.
    #[must_use]
    pub fn window<Q: Quantity>(self, window: &Window<Q>) -> String {
        self.range(&self.number(&window.min), &self.number(&window.max))
    }
}
