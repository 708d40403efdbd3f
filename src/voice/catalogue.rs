//! The sentences of a language.

use std::borrow::Cow;
use std::collections::BTreeMap;
use std::fmt::Display;
use std::sync::LazyLock;

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};

use super::numbers;
use crate::spec::{DecimalSign, Language};

const ENGLISH: &str = include_str!("en.ftl");
const GERMAN: &str = include_str!("de.ftl");

/// Every language with points before decimals, then every one with commas.
static CATALOGUES: LazyLock<[[Catalogue; 2]; 2]> = LazyLock::new(|| {
    [None, Some(with_commas as Transform)].map(|transform| {
        let [english, mut german] =
            [("en", ENGLISH), ("de", GERMAN)].map(|(code, text)| Catalogue::read(code, text, transform));
        // The templates take what nobody has translated in English, as the views do.
        for (key, sentence) in &english.plain {
            german.plain.entry(key.clone()).or_insert_with(|| sentence.clone());
        }
        [english, german]
    })
});

/// What becomes of the text of a sentence, but not of what stands in its open places.
type Transform = fn(&str) -> Cow<'_, str>;

fn with_commas(text: &str) -> Cow<'_, str> {
    Cow::Owned(numbers::with_sign(text, DecimalSign::Comma))
}

/// What the words of the sheet stand under.
const TERM: &str = "sheet-";

/// What the sheet says stands under: the views spell it from the sheet, so no template needs it.
const OF_SHEET: [&str; 5] = [TERM, "reason-", "said-", "title-of-", "assumed-"];

/// The key of English words: `free-space loss` is `sheet-free-space-loss`.
pub(super) fn term_key(english: &str) -> String {
    let mut key = String::from(TERM);
    for c in english.chars() {
        match c.to_ascii_lowercase() {
            c if c.is_ascii_alphanumeric() => key.push(c),
            _ if key.ends_with('-') => {}
            _ => key.push('-'),
        }
    }
    key.trim_end_matches('-').to_owned()
}

/// What a sentence of the catalogue leaves open, by name.
pub type Open<'a> = (&'static str, &'a dyn Display);

/// A language's sentences by key.
pub(super) struct Catalogue {
    bundle: FluentBundle<FluentResource>,
    plain: BTreeMap<String, String>,
}

impl Catalogue {
    pub(super) fn of(language: Language, sign: DecimalSign) -> &'static Self {
        let [with_points, with_commas] = &*CATALOGUES;
        let [english, german] = match sign {
            DecimalSign::Point => with_points,
            DecimalSign::Comma => with_commas,
        };
        match language {
            Language::En => english,
            Language::De => german,
        }
    }

    fn read(code: &str, text: &str, transform: Option<Transform>) -> Self {
        let locale = code.parse().expect("our own codes are sound");
        let mut bundle = FluentBundle::new_concurrent(vec![locale]);
        // Marks around what is put in are for text of mixed direction; no font of ours has a glyph for them.
        bundle.set_use_isolating(false);
        bundle.set_transform(transform);
        let resource = FluentResource::try_new(text.to_owned());
        // A test reads every catalogue without an error.
        bundle.add_resource_overriding(resource.unwrap_or_else(|(sound_part, _)| sound_part));
        let keys = text.lines().filter_map(|line| line.split_once(" =")).map(|(key, _)| key);
        let keys = keys.filter(|key| {
            key.starts_with(|c: char| c.is_ascii_lowercase()) && !OF_SHEET.iter().any(|of| key.starts_with(of))
        });
        let mut catalogue = Self { bundle, plain: BTreeMap::new() };
        catalogue.plain = keys.filter_map(|key| Some((key.to_owned(), catalogue.sentence(key, &[])?))).collect();
        catalogue
    }

    /// Every sentence that leaves nothing open.
    pub(super) fn plain(&self) -> &BTreeMap<String, String> {
        &self.plain
    }

    /// A sentence; none where there is no such key or more is open than was given.
    pub(super) fn sentence(&self, key: &str, open: &[Open<'_>]) -> Option<String> {
        let args = open.iter().map(|(name, value)| (*name, FluentValue::from(value.to_string())));
        self.format(key, &args.collect())
    }

    /// A sentence about a number of things.
    pub(super) fn count(&self, key: &str, number: usize) -> Option<String> {
        self.format(key, &[("count", FluentValue::from(number))].into_iter().collect())
    }

    fn format(&self, key: &str, args: &FluentArgs<'_>) -> Option<String> {
        let pattern = self.bundle.get_message(key)?.value()?;
        let mut errors = Vec::new();
        let sentence = self.bundle.format_pattern(pattern, Some(args), &mut errors).into_owned();
        errors.is_empty().then_some(sentence)
    }
}

#[cfg(test)]
mod tests {
    use super::{Catalogue, ENGLISH, GERMAN, term_key};
    use crate::spec::{DecimalSign, Language};
    use fluent_bundle::FluentResource;

    #[test]
    fn every_catalogue_is_sound() {
        for text in [ENGLISH, GERMAN] {
            let errors = FluentResource::try_new(text.to_owned()).err().map(|(_, errors)| errors);
            assert_eq!(errors, None);
        }
    }

    #[test]
    fn words_of_the_sheet_have_keys() {
        assert_eq!(term_key("free-space loss"), "sheet-free-space-loss");
        assert_eq!(term_key("uncertainty, 95 %"), "sheet-uncertainty-95");
    }

    #[test]
    fn what_is_open_has_to_be_given() {
        let english = Catalogue::of(Language::En, DecimalSign::Point);
        assert_eq!(english.sentence("range", &[("least", &1), ("most", &2)]).as_deref(), Some("1 to 2"));
        assert_eq!(english.sentence("range", &[("least", &1)]), None);
        assert_eq!(english.sentence("nothing-of-the-kind", &[]), None);
    }
}
