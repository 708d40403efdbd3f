//! What a rule is: a name, a manual, a severity.
//!
//! The judging functions live in [`crate::rules`], the faults a file can have before there is a hop to judge in
//! [`crate::finding::faults`]; both are made of the [`Rule`] declared here, so that `explain`, severities and outputs treat them
//! alike.

/// How much a finding matters.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Severity {
    /// Worth knowing.
    Advice,
    /// Likely to hurt.
    Warning,
    /// Must not be built.
    Error,
}

impl Severity {
    /// The word for it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Advice => "advice",
            Self::Warning => "warning",
            Self::Error => "error",
        }
    }
}

impl std::fmt::Display for Severity {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(self.word())
    }
}

/// Why a rule holds whatever anybody has agreed to: it protects people.
pub const PROTECTS_PEOPLE: &str = "it protects people";
/// The same: what it holds a hop against is law.
pub const IS_LAW: &str = "what codes and licences allow is not an approver's to give";
/// The same: it is about what is written, not about what is built.
pub const IS_ABOUT_FILES: &str = "it is about the files themselves: mend them";

/// Something that can be found wrong.
#[derive(Debug)]
pub struct Rule {
    /// Kebab-case, named for the fault.
    pub name: &'static str,
    /// The folder it lives in.
    pub family: &'static str,
    /// Severity unless the network says otherwise.
    pub severity: Severity,
    /// Why no waiver may accept what it finds; none if one may.
    pub never_waived: Option<&'static str>,
    /// Why no network may switch it off; none if one may.
    pub never_off: Option<&'static str>,
    /// Its manual: the doc comment, first line one sentence.
    pub manual: &'static str,
}

impl Rule {
    /// The first sentence of the manual.
    #[must_use]
    pub fn summary(&self) -> &'static str {
        self.manual.trim_start().lines().next().unwrap_or_default()
    }
}

impl PartialEq for Rule {
    fn eq(&self, other: &Self) -> bool {
        self.name == other.name
    }
}

/// `hopwright::rules::budget::level_above_overload` → (`budget`, `level_above_overload`).
#[must_use]
pub const fn path_tail(path: &'static str) -> (&'static str, &'static str) {
    let (rest, name) = split_last(path);
    (split_last(rest).1, name)
}

const fn split_last(path: &'static str) -> (&'static str, &'static str) {
    let bytes = path.as_bytes();
    let mut at = bytes.len();
    while at > 0 && bytes[at - 1] != b':' {
        at -= 1;
    }
    let (head, tail) = path.split_at(at);
    (head.split_at(at.saturating_sub(2)).0, tail)
}

/// `level_above_overload` as the bytes of `level-above-overload`.
#[must_use]
pub const fn kebab<const N: usize>(name: &str) -> [u8; N] {
    let mut out = [0; N];
    let mut at = 0;
    while at < N {
        let byte = name.as_bytes()[at];
        out[at] = if byte == b'_' { b'-' } else { byte };
        at += 1;
    }
    out
}

/// Declares the rule of a file: its doc comment is the manual, its name that of the file, its family that of the folder.
///
/// A rule may be waived and switched off unless it says why not: `never_waived: PROTECTS_PEOPLE`, `never_off: …`.
#[macro_export]
macro_rules! rule {
    (@or_none) => { None };
    (@or_none $why:ident) => { Some($crate::finding::rule::$why) };
    (
        $(#[doc = $doc:literal])+
        severity: $severity:ident,
        $(never_waived: $waived:ident,)?
        $(never_off: $off:ident,)?
        check: $($check:tt)+
    ) => {
        /// This rule; its manual is what `explain` prints.
        pub static RULE: $crate::finding::rule::Rule = {
            const TAIL: (&str, &str) = $crate::finding::rule::path_tail(module_path!());
            const NAME: [u8; TAIL.1.len()] = $crate::finding::rule::kebab(TAIL.1);
            $crate::finding::rule::Rule {
                name: match std::str::from_utf8(&NAME) {
                    Ok(name) => name,
                    Err(_) => TAIL.1,
                },
                family: TAIL.0,
                severity: $crate::finding::rule::Severity::$severity,
                never_waived: $crate::rule!(@or_none $($waived)?),
                never_off: $crate::rule!(@or_none $($off)?),
                manual: concat!($($doc, "\n"),+),
            }
        };

        /// This rule with the function that judges.
        pub static ENTRY: $crate::rules::Entry =
            $crate::rules::Entry { rule: &RULE, check: $crate::rules::Check::$($check)+ };
    };
}
