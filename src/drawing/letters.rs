//! How wide words are, so that a drawing can keep them apart.
//!
//! Advance widths of the face that the packs are set in, in thousandths of the size of the letters, rounded; what is not listed
//! counts as a wide letter.

const WIDTHS: [(u16, &str); 25] = [
    (240, " '\u{a0}"),
    (250, "ij"),
    (270, ",.l"),
    (285, "!:;"),
    (320, "[]f|"),
    (340, "(){}"),
    (350, "t²·"),
    (375, "r/\\"),
    (400, "-I"),
    (420, "\""),
    (450, "*"),
    (460, "z"),
    (470, "°?"),
    (490, "sv"),
    (505, "LcyçJx"),
    (530, "agkäáà"),
    (555, "eéèF_oö"),
    (570, "Thnuµüñ"),
    (585, "ESZbdpqY–"),
    (600, "$+0123456789<=>~±×−≤≥≈"),
    (615, "PVXC"),
    (635, "KARÄß"),
    (675, "BDUÜ&"),
    (720, "G#HNOQÖØΩφ"),
    (770, "w"),
];

/// A letter that is not listed.
const WIDEST: u16 = 930;

/// The width of a line of words of some size.
#[must_use]
pub fn width(words: &str, size: f64, heavy: bool) -> f64 {
    let of =
        |letter: char| WIDTHS.iter().find(|(_, letters)| letters.contains(letter)).map_or(WIDEST, |(width, _)| *width);
    let sum: f64 = words.chars().map(|letter| f64::from(of(letter))).sum();
    sum * size / 1000.0 * if heavy { 1.06 } else { 1.0 }
}

#[cfg(test)]
mod tests {
    use super::width;

    #[test]
    fn wide_letters_are_wide() {
        assert!((width("il", 10.0, false) - 5.2).abs() < 1e-9);
        assert!(
            width("MM", 10.0, false) > width("mi", 10.0, false) && width("a", 10.0, true) > width("a", 10.0, false)
        );
    }
}
