//! The nearest known word, for "did you mean".

use std::sync::OnceLock;

/// The longest word, in bytes, that is compared: the work grows with the square of the length.
const LONGEST: usize = 64;

/// The known word that is fewest slips away from `word`, if it is near enough to be worth naming.
///
/// Capitals do not count. Near enough is a slip for every three letters, at least one: `heigth` for `height`, not `owner` for `power`.
pub fn nearest<'a>(word: &str, known: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    if word.len() > LONGEST {
        return None;
    }
    let length = word.chars().count();
    let limit = (length / 3).max(1);
    let lower = word.to_lowercase();
    known
        .into_iter()
        .filter(|candidate| candidate.len() <= LONGEST && candidate.chars().count().abs_diff(length) <= limit)
        .map(|candidate| (slips(&lower, &candidate.to_lowercase()), candidate))
        .filter(|(slips, candidate)| *slips <= limit && *slips < candidate.chars().count())
        .min()
        .map(|(_, candidate)| candidate)
}

/// How many slips apart two words are. What they begin and end with alike is left out, for the work grows with the square
/// of the rest, and names of a kind tend to share most of their letters.
fn slips(one: &str, other: &str) -> usize {
    let alike = |(a, b): &(char, char)| a == b;
    let ahead: usize = one.chars().zip(other.chars()).take_while(alike).map(|(c, _)| c.len_utf8()).sum();
    let (one, other) = (&one[ahead..], &other[ahead..]);
    let pairs = one.chars().rev().zip(other.chars().rev());
    let behind: usize = pairs.take_while(alike).map(|(c, _)| c.len_utf8()).sum();
    strsim::osa_distance(&one[..one.len() - behind], &other[..other.len() - behind])
}

/// Many words, of which the nearest is asked for often: put in order once, and each time only some are compared.
///
/// A word with a slip shares its beginning or its end with the one that was meant, so its neighbours in order of the
/// beginnings and of the ends are looked at.
#[derive(Debug, Default)]
pub struct Vocabulary {
    /// In order.
    words: Vec<String>,
    /// Numbers of words in order of their letters from the end; made when the first is looked for.
    by_end: OnceLock<Vec<(String, usize)>>,
}

/// Neighbours looked at on each side, in each order.
const NEIGHBOURS: usize = 8;

impl Vocabulary {
    /// Puts words in order.
    #[must_use]
    pub fn of<'a>(words: impl IntoIterator<Item = &'a str>) -> Self {
        let mut words: Vec<String> = words.into_iter().map(str::to_owned).collect();
        words.sort_unstable();
        Self { words, by_end: OnceLock::new() }
    }

    /// The words, in order.
    #[must_use]
    pub fn words(&self) -> &[String] {
        &self.words
    }

    /// As [`nearest`], among the neighbours of the word.
    #[must_use]
    pub fn nearest(&self, word: &str) -> Option<&str> {
        if word.len() > LONGEST {
            return None;
        }
        if self.words.len() <= 4 * NEIGHBOURS {
            return nearest(word, self.words.iter().map(String::as_str));
        }
        let around = |at: usize| at.saturating_sub(NEIGHBOURS)..(at + NEIGHBOURS).min(self.words.len());
        let ahead = around(self.words.partition_point(|known| known.as_str() < word));
        let end = backwards(word);
        let by_end = self.by_end.get_or_init(|| {
            let mut by_end: Vec<_> = self.words.iter().map(|word| backwards(word)).zip(0..).collect();
            by_end.sort_unstable();
            by_end
        });
        let behind = around(by_end.partition_point(|(known, _)| *known < end));
        let behind = by_end[behind].iter().map(|(_, number)| &self.words[*number]);
        nearest(word, self.words[ahead].iter().chain(behind).map(String::as_str))
    }
}

fn backwards(word: &str) -> String {
    word.chars().rev().collect()
}

/// The question, as every message asks it.
#[must_use]
pub fn did_you_mean(guess: impl std::fmt::Display) -> String {
    format!("did you mean `{guess}`?")
}

/// Whether two words are one slip apart: a letter too many, too few, another, or two exchanged.
#[must_use]
pub fn one_slip(word: &str, other: &str) -> bool {
    word.len() <= LONGEST && other.len() <= LONGEST && strsim::damerau_levenshtein(word, other) == 1
}

#[cfg(test)]
mod tests {
    use super::{Vocabulary, nearest, slips};

    #[test]
    fn only_near_words_are_named() {
        assert_eq!(nearest("heigth", ["height", "length"]), Some("height"));
        assert_eq!(nearest("cat5e", ["Cat 5", "Cat 5e", "Cat 6"]), Some("Cat 5e"));
        assert_eq!(nearest("owner", ["power", "radio"]), None);
        assert_eq!(nearest("tilt", []), None);
        assert_eq!(nearest(&"tilt".repeat(100_000), ["tilt"]), None);
    }

    #[test]
    fn what_two_words_share_at_their_ends_is_no_slip() {
        // Every word of up to five letters of two, against every other: also `aab` and `aba`, where ends overlap.
        let words: Vec<String> = (0..6_u32)
            .flat_map(|length| (0..1 << length).map(move |bits| (length, bits)))
            .map(|(length, bits)| (0..length).map(|at| if bits >> at & 1 == 0 { 'a' } else { 'é' }).collect())
            .collect();
        for one in &words {
            for other in &words {
                assert_eq!(slips(one, other), strsim::osa_distance(one, other), "{one} {other}");
            }
        }
    }

    #[test]
    fn among_many_words_a_slip_anywhere_is_found() {
        let words: Vec<String> = (0..20_000).map(|number| format!("mast-{number:05}-north")).collect();
        let known = Vocabulary::of(words.iter().map(String::as_str));
        for (word, guess) in [
            ("mxst-01234-north", "mast-01234-north"),
            ("mast-01234-nroth", "mast-01234-north"),
            ("mast-01234north", "mast-01234-north"),
            ("ast-19999-north", "mast-19999-north"),
        ] {
            assert_eq!(known.nearest(word), Some(guess), "{word}");
        }
        assert_eq!(known.nearest("roof"), None);
        assert_eq!(Vocabulary::of(["roof", "mast"]).nearest("rof"), Some("roof"));
    }
}
