//! The nearest known word, for "did you mean".

/// The longest word, in bytes, that is compared: the work grows with the square of the length.
const LONGEST: usize = 64;

/// The known word that is fewest slips away from `word`, if it is near enough to be worth naming.
///
/// Capitals do not count. Near enough is a slip for every three letters, at least one: `heigth` for `height`, not `owner` for `power`.
pub fn nearest<'a>(word: &str, known: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    if word.len() > LONGEST {
        return None;
    }
    let limit = (word.chars().count() / 3).max(1);
    known
        .into_iter()
        .filter(|candidate| candidate.len() <= LONGEST)
        .map(|candidate| (strsim::damerau_levenshtein(&word.to_lowercase(), &candidate.to_lowercase()), candidate))
        .filter(|(slips, candidate)| *slips <= limit && *slips < candidate.chars().count())
        .min()
        .map(|(_, candidate)| candidate)
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
    use super::nearest;

    #[test]
    fn only_near_words_are_named() {
        assert_eq!(nearest("heigth", ["height", "length"]), Some("height"));
        assert_eq!(nearest("cat5e", ["Cat 5", "Cat 5e", "Cat 6"]), Some("Cat 5e"));
        assert_eq!(nearest("owner", ["power", "radio"]), None);
        assert_eq!(nearest("tilt", []), None);
        assert_eq!(nearest(&"tilt".repeat(100_000), ["tilt"]), None);
    }
}
