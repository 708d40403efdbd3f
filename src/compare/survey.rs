//! Survey files that hops name: a profile that is measured anew moves numbers without a word of the hop being edited.

/// Where two texts first differ: the line, from 1, and what each has there.
pub(super) fn first_difference<'t>(before: &'t str, after: &'t str) -> Option<(usize, [Option<&'t str>; 2])> {
    let (mut old, mut new) = (before.lines(), after.lines());
    (1..)
        .map_while(|line| Some((line, [old.next(), new.next()])).filter(|(_, both)| *both != [None, None]))
        .find(|(_, [before, after])| before != after)
}

#[cfg(test)]
mod tests {
    use super::first_difference;

    #[test]
    fn the_first_line_that_is_not_the_same_is_found() {
        assert_eq!(first_difference("a\nb\nc\n", "a\nx\ny\n"), Some((2, [Some("b"), Some("x")])));
        assert_eq!(first_difference("a\n", "a\nb\n"), Some((2, [None, Some("b")])));
        assert_eq!(first_difference("a\r\nb", "a\nb\n"), None);
    }
}
