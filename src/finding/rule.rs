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

/// The first version there was. What came later says so: a rule by `since: "0.2"`, a key by `x-since`.
pub const FIRST: &str = "0.1";

/// Never waived: it protects people.
pub const PROTECTS_PEOPLE: &str = "it protects people";
/// Never waived.
pub const FALLS: &str = "it protects people: what it finds can come down on them";
/// Never waived.
pub const SHOCKS: &str = "it protects people: what it finds can shock, burn or set on fire";
/// Never waived.
pub const RADIATES: &str = "exposure and the law are judged by a power that is not the one that is sent";
/// Never waived.
pub const IS_LAW: &str = "what codes and licences allow is not an approver's to give";
/// Never waived, or never switched off.
pub const NOT_JUDGED: &str = "without what it asks for something that matters is not judged";
/// Never waived.
pub const IS_ABOUT_FILES: &str = "it is about the files themselves: fix them";
/// May be waived.
pub const SERVICE: &str = "the hop works less well or not at all, and whoever answers for it may accept that";
/// May be waived.
pub const EQUIPMENT: &str = "equipment may wear or fail, and whoever owns it may take that risk";
/// May be waived.
pub const WORK: &str = "the work takes longer and gets no more dangerous";
/// May be waived.
pub const DATA: &str = "a figure may be odd and right, and somebody may vouch for it";
/// May be waived.
pub const EVIDENCE: &str = "it is about what a record proves, and whoever accepts the work may be content with less";
/// May be waived.
pub const PAPER: &str = "nothing is built or done otherwise because of it";

/// How far a network may silence a rule, and why: decided rule by rule.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Bound {
    /// A waiver may accept what it finds, and a network may lower it or switch it off.
    Waivable(&'static str),
    /// A waiver may accept what it finds, under a name and for a time; it is neither lowered nor switched off.
    NeverOff(&'static str),
    /// Nothing silences it: no waiver, no severity, no baseline.
    NeverWaived(&'static str),
}

/// Something that can be found wrong.
#[derive(Debug)]
pub struct Rule {
    /// Kebab-case, named for the fault.
    pub name: &'static str,
    /// The folder it lives in.
    pub family: &'static str,
    /// Severity unless the network says otherwise.
    pub severity: Severity,
    /// How far it may be silenced.
    pub bound: Bound,
    /// The version of the program that had it first.
    pub since: &'static str,
    /// Its manual: the doc comment, first line one sentence.
    pub manual: &'static str,
}

impl Rule {
    /// The first sentence of the manual.
    #[must_use]
    pub fn summary(&self) -> &'static str {
        self.manual.trim_start().lines().next().unwrap_or_default()
    }

    /// Why no waiver may accept what it finds, nor a baseline know it; none if they may.
    #[must_use]
    pub const fn never_waived(&self) -> Option<&'static str> {
        match self.bound {
            Bound::NeverWaived(why) => Some(why),
            Bound::NeverOff(_) | Bound::Waivable(_) => None,
        }
    }

    /// Whether it says that something was not judged: packs list it under what was not assessed.
    #[must_use]
    pub fn says_what_was_not_judged(&self) -> bool {
        match self.bound {
            Bound::Waivable(why) | Bound::NeverOff(why) | Bound::NeverWaived(why) => why == NOT_JUDGED,
        }
    }

    /// Why no network may lower it or switch it off; none if one may. What may not be waived may not be switched off either.
    #[must_use]
    pub const fn never_off(&self) -> Option<&'static str> {
        match self.bound {
            Bound::NeverWaived(why) | Bound::NeverOff(why) => Some(why),
            Bound::Waivable(_) => None,
        }
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
/// Every rule says how far it may be silenced and why, by one of the constants of [`crate::finding::rule`]:
/// `waivable: SERVICE`, `never_off: NOT_JUDGED` or `never_waived: PROTECTS_PEOPLE`. None is the default.
#[macro_export]
macro_rules! rule {
    (@since) => { $crate::finding::rule::FIRST };
    (@since $since:literal) => { $since };
    (@bound waivable $why:ident) => { $crate::finding::rule::Bound::Waivable($crate::finding::rule::$why) };
    (@bound never_off $why:ident) => { $crate::finding::rule::Bound::NeverOff($crate::finding::rule::$why) };
    (@bound never_waived $why:ident) => { $crate::finding::rule::Bound::NeverWaived($crate::finding::rule::$why) };
    (
        $(#[doc = $doc:literal])+
        $(since: $since:literal,)?
        severity: $severity:ident,
        $bound:ident: $why:ident,
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
                bound: $crate::rule!(@bound $bound $why),
                since: $crate::rule!(@since $($since)?),
                manual: concat!($($doc, "\n"),+),
            }
        };

        /// This rule with the function that judges.
        pub static ENTRY: $crate::rules::Entry =
            $crate::rules::Entry { rule: &RULE, check: $crate::rules::Check::$($check)+ };
    };
}
