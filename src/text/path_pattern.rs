//! Patterns of paths, matched in time that grows with the pattern times the path, whatever is in either.

/// The longest pattern, in bytes.
const LONGEST: usize = 512;

/// One place of a pattern.
#[derive(Debug, Clone, PartialEq, Eq)]
enum Part {
    /// This character.
    One(char),
    /// Any character within a name: `?`.
    Any,
    /// One of these, or none of them: `[a-z]`, `[!0-9]`.
    Of { ranges: Vec<(char, char)>, wanted: bool },
    /// Any part of a name: `*`.
    Run,
    /// Any folders, none at all included: `**/`.
    Folders,
    /// Everything below: `**` at the end.
    Rest,
}

/// A pattern: `*` stays within a name, `**` goes through folders, `?` is a character, `[a-z]` one of some.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PathPattern(Vec<Part>);

impl PathPattern {
    /// Reads one.
    ///
    /// # Errors
    /// Why it is none, as one clause.
    pub fn new(text: &str) -> Result<Self, String> {
        if text.len() > LONGEST {
            return Err(format!("it is longer than {LONGEST} bytes"));
        }
        let mut parts = Vec::new();
        let mut rest = text;
        while let Some(c) = rest.chars().next() {
            let stars = rest.len() - rest.trim_start_matches('*').len();
            let length = match (c, stars) {
                ('*', 1) => {
                    parts.push(Part::Run);
                    1
                }
                ('*', _) => folders(&mut parts, &rest[stars..], stars)?,
                ('?', _) => {
                    parts.push(Part::Any);
                    1
                }
                ('[', _) => set(&mut parts, rest)?,
                _ => {
                    parts.push(Part::One(c));
                    c.len_utf8()
                }
            };
            rest = &rest[length..];
        }
        Ok(Self(parts))
    }

    /// Whether it fits a path with forward slashes.
    #[must_use]
    pub fn fits(&self, path: &str) -> bool {
        // All places of the pattern that the path so far may have led to.
        let mut at = vec![false; self.0.len() + 1];
        at[0] = true;
        self.skip(&mut at, true);
        for c in path.chars() {
            let mut next = vec![false; at.len()];
            for (number, part) in self.0.iter().enumerate().filter(|(number, _)| at[*number]) {
                match part {
                    Part::One(one) => next[number + 1] |= *one == c,
                    Part::Any => next[number + 1] |= c != '/',
                    Part::Of { ranges, wanted } => {
                        let inside = ranges.iter().any(|(low, high)| (*low..=*high).contains(&c));
                        next[number + 1] |= c != '/' && inside == *wanted;
                    }
                    Part::Run => next[number] |= c != '/',
                    Part::Folders | Part::Rest => next[number] = true,
                }
            }
            self.skip(&mut next, c == '/');
            at = next;
        }
        at[self.0.len()]
    }

    /// Goes past the places that need no character.
    fn skip(&self, at: &mut [bool], new_name: bool) {
        for (number, part) in self.0.iter().enumerate() {
            let free = match part {
                Part::Run | Part::Rest => true,
                Part::Folders => new_name,
                Part::One(_) | Part::Any | Part::Of { .. } => false,
            };
            at[number + 1] |= at[number] && free;
        }
    }
}

/// `**/`, or `**` at the end; always a name of its own.
fn folders(parts: &mut Vec<Part>, after: &str, stars: usize) -> Result<usize, String> {
    let alone = matches!(parts.last(), None | Some(Part::One('/') | Part::Folders));
    match (alone && stars == 2, after.starts_with('/'), after.is_empty()) {
        (true, true, _) => {
            parts.push(Part::Folders);
            Ok(3)
        }
        (true, _, true) => {
            parts.push(Part::Rest);
            Ok(2)
        }
        _ => Err("`**` stands for whole folders: write it between slashes, as in `hops/**/*.yaml`".into()),
    }
}

/// `[a-z0-9]` or `[!a-z]`; a closing bracket right at the start is one of the characters.
fn set(parts: &mut Vec<Part>, text: &str) -> Result<usize, String> {
    let inside = &text[1..];
    let wanted = !inside.starts_with('!');
    let start = usize::from(!wanted);
    let first = inside[start..].chars().next().map_or(0, char::len_utf8);
    let end = inside.get(start + first..).and_then(|rest| rest.find(']')).map(|at| start + first + at);
    let end = end.ok_or("a `[` is not closed")?;
    let (mut ranges, mut rest) = (Vec::new(), inside[start..end].chars().peekable());
    while let Some(low) = rest.next() {
        let mut ahead = rest.clone();
        match (ahead.next(), ahead.next()) {
            (Some('-'), Some(high)) => {
                ranges.push((low, high));
                rest = ahead;
            }
            _ => ranges.push((low, low)),
        }
    }
    parts.push(Part::Of { ranges, wanted });
    Ok(end + 2)
}

#[cfg(test)]
mod tests {
    use super::PathPattern;

    fn fits(pattern: &str, path: &str) -> bool {
        PathPattern::new(pattern).unwrap_or_else(|why| panic!("{pattern}: {why}")).fits(path)
    }

    #[test]
    fn a_star_stays_within_a_name_and_two_go_through_folders() {
        for (pattern, yes, no) in [
            ("hops/*.yaml", &["hops/a.yaml", "hops/.yaml"][..], &["hops/b/a.yaml", "a.yaml", "hops/a.yml"][..]),
            ("**/lab-*.yaml", &["lab-1.yaml", "a/lab-1.yaml", "a/b/lab-.yaml"], &["a/xlab-1.yaml", "lab-1.yaml/x"]),
            ("hops/**/x.yaml", &["hops/x.yaml", "hops/a/b/x.yaml"], &["hops/ax.yaml", "x.yaml"]),
            ("old/**", &["old/a", "old/b/c"], &["older/a", "a/old"]),
            ("**", &["a", "a/b"], &[]),
            ("h?p[0-9].yaml", &["hop1.yaml", "hüp9.yaml"], &["hop.yaml", "hopx.yaml", "h/p1.yaml"]),
            ("[!a-c]x[]]", &["dx]"], &["ax]", "/x]", "dx["]),
            ("a[-x]", &["a-", "ax"], &["ab"]),
        ] {
            assert!(yes.iter().all(|path| fits(pattern, path)), "{pattern}");
            assert!(!no.iter().any(|path| fits(pattern, path)), "{pattern}");
        }
        for wrong in ["a**", "**a", "a/**b", "***", "[a", "[", "[!]", &"a".repeat(600)] {
            assert!(PathPattern::new(wrong).is_err(), "{wrong}");
        }
    }

    #[test]
    fn many_stars_take_no_longer_than_they_are_many() {
        let pattern = format!("{}b/{}c.yaml", "*a".repeat(200), "**/".repeat(20));
        assert!(!fits(&pattern, &format!("{}/{}.yaml", "a".repeat(4000), "a/".repeat(40))));
    }
}
