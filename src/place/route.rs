//! Routes: the way from the root of a document to a value, a step at a time, and how it is spelled.

use std::fmt::Write as _;

/// One step of a route.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Step<'a> {
    /// To the value of a key.
    Key(&'a str),
    /// To an item of a list by its number, from 0.
    Index(usize),
    /// To an item of a list by its name, which stays when others are put in before it.
    Named(&'a str),
}

/// A route as people read it: `ends.a.runs[1].cable`, `supports[roof-pole].height`.
#[must_use]
pub fn spelled<'a>(steps: impl IntoIterator<Item = Step<'a>>) -> String {
    steps.into_iter().fold(String::new(), |mut route, step| {
        // Writing to a string cannot fail.
        let _ = match step {
            Step::Key(key) if route.is_empty() => write!(route, "{key}"),
            Step::Key(key) => write!(route, ".{key}"),
            Step::Index(index) => write!(route, "[{index}]"),
            Step::Named(name) => write!(route, "[{name}]"),
        };
        route
    })
}

/// The steps of a spelled route; items of lists by their numbers.
#[must_use]
pub fn steps(route: &str) -> Vec<Step<'_>> {
    let parts = route.split(['.', '[', ']']).filter(|part| !part.is_empty());
    parts.map(|part| part.parse().map_or(Step::Key(part), Step::Index)).collect()
}

/// Whether a spelled route is another one or leads on from it.
#[must_use]
pub fn lies_in(inner: &str, outer: &str) -> bool {
    inner.strip_prefix(outer).is_some_and(|rest| rest.is_empty() || rest.starts_with(['.', '[']))
}

#[cfg(test)]
mod tests {
    use super::{Step, lies_in, spelled, steps};

    #[test]
    fn steps_are_spelled_as_they_are_written() {
        let route = [Step::Key("ends"), Step::Key("a"), Step::Key("runs"), Step::Index(1), Step::Named("lan")];
        assert_eq!(spelled(route), "ends.a.runs[1][lan]");
        assert_eq!(spelled([]), "");
        assert_eq!(steps("ends.a.runs[1].port")[2..], [Step::Key("runs"), Step::Index(1), Step::Key("port")]);
        assert_eq!(steps(""), []);
    }

    #[test]
    fn routes_are_compared_by_their_steps() {
        assert!(lies_in("ends.a.height", "ends.a.height"));
        assert!(lies_in("ends.a.runs[0].cable", "ends.a.runs"));
        assert!(!lies_in("ends.a.heights", "ends.a.height"));
        assert!(!lies_in("ends.a", "ends.a.height"));
    }
}
