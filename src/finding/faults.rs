//! What can be wrong with files and references, before there is a hop to judge.
//!
//! The loader and the resolver report these; they are rules like any other to `explain`, to the severities of a network
//! and to the outputs.

macro_rules! faults {
    (@bound) => { $crate::finding::rule::Bound::NeverWaived($crate::finding::rule::IS_ABOUT_FILES) };
    (@bound $why:ident) => { $crate::finding::rule::Bound::NeverWaived($crate::finding::rule::$why) };
    ($family:literal; $($(#[doc = $doc:literal])+ $constant:ident: $name:literal, $severity:ident $(, $why:ident)?;)+) => {
        $(
            $(#[doc = $doc])+
            pub static $constant: $crate::finding::rule::Rule = $crate::finding::rule::Rule {
                name: $name,
                family: $family,
                severity: $crate::finding::rule::Severity::$severity,
                bound: faults!(@bound $($why)?),
                since: $crate::finding::rule::FIRST,
                manual: concat!($($doc, "\n"),+),
            };
        )+

        /// Every fault, in the order `explain` lists them.
        pub static ALL: &[&$crate::finding::rule::Rule] = &[$(&$constant),+];
    };
}

pub mod waivers;

faults! { "spec";
    /// A file or folder cannot be read.
    ///
    /// It does not exist, may not be read, is no regular file, or is a link that leads back to itself or out of the
    /// repository (of the folder of the network, if that is in none). Everything else is still checked.
    UNREADABLE: "file-unreadable", Error;

    /// A file is not UTF-8 text.
    ///
    /// YAML files are read as UTF-8, with or without a byte-order mark. Save the file again as UTF-8.
    NOT_UTF8: "file-not-utf8", Error;

    /// A file, or the number of files, is beyond what the program reads.
    ///
    /// Limits keep hostile or mistaken input from eating time and memory: 1 MiB a file, 64 levels of nesting, 100,000
    /// nodes after aliases are expanded, 1,000 faults a file, 64 folders one in another, 2 GiB of all files together. Split
    /// the file, or point the program at a smaller folder.
    TOO_LARGE: "input-too-large", Error;

    /// A folder of a network looks like the store of a git repository.
    ///
    /// A folder with `HEAD`, `objects` and `refs` is taken for a repository by git wherever it lies, with settings that can
    /// run commands. Committed in a network it is a trap, or a slip. Take it out.
    REPOSITORY: "repository-inside", Error;

    /// A file is not well-formed YAML.
    ///
    /// Reading stops at the place shown; documents before it are still checked.
    MALFORMED: "yaml-malformed", Error;

    /// A YAML construct is not part of the language.
    ///
    /// Merge keys (`<<`), tags of other programs, keys that are themselves lists or mappings, and anchors that contain
    /// themselves are refused. Plain anchors and aliases work.
    REFUSED: "yaml-not-allowed", Error;

    /// A key stands twice in one mapping.
    ///
    /// YAML readers disagree on which of the two counts, so neither does.
    DUPLICATE_KEY: "key-duplicate", Error;

    /// A document does not say what it describes.
    ///
    /// Every document starts with `kind` and `id`. The kinds are network, site, hop, radio, antenna, bracket, cable,
    /// supply, arrester, record and waiver.
    KIND: "kind-unknown", Error;

    /// A key is not known at this place.
    ///
    /// Most often it is misspelt or indented under the wrong parent. The help names the nearest key that is known.
    UNKNOWN_KEY: "key-unknown", Error;

    /// A key that must be there is missing.
    ///
    /// The help shows the line to add.
    MISSING_KEY: "key-missing", Error;

    /// A value cannot be read as what it should be.
    ///
    /// Quantities are a number and a unit (`24.5 m`); text that looks like a number, a date or a boolean is quoted;
    /// choices are one of a list. The help shows the value as it should read.
    BAD_VALUE: "value-not-valid", Error;

    /// Two documents of one kind have the same id.
    ///
    /// References go by id, so it must be unique within a network.
    DUPLICATE_ID: "id-duplicate", Error;

    /// A reference leads nowhere.
    ///
    /// No document, support, port, half or earth point has the id that is named. The help names the nearest one.
    DANGLING: "reference-dangling", Error;

    /// A folder of documents has no network document.
    ///
    /// Objectives, climate and codes of practice come from a document of kind `network` in the same folder or one above.
    NO_NETWORK: "network-missing", Error;

    /// Two network documents claim the same folder.
    ///
    /// A folder is one network; give the second one a folder of its own.
    TWO_NETWORKS: "network-ambiguous", Error;

    /// A library that a network names cannot be used.
    ///
    /// It is not there, lies outside of the repository, in the folder of the network or around it, or holds what cannot be
    /// shared. A library holds sites, equipment and neighbours for several networks.
    LIBRARY: "library-not-usable", Error;

    /// A network asks for a newer version of this program.
    ///
    /// Its `requires` says which version it is written for. An older program would take keys for unknown that it only does
    /// not know yet, so it reads nothing of that network.
    PROGRAM_TOO_OLD: "program-too-old", Error;

    /// A rule named under `rules` does not exist.
    ///
    /// The help names the nearest rule. `explain` lists them all.
    UNKNOWN_RULE: "rule-unknown", Error;

    /// A network switches off or lowers a rule that holds for everybody.
    ///
    /// What protects people, what codes and licences allow, what is about the files themselves and what says that something was not
    /// judged keeps its severity, whatever stands under `rules` or `rules_by_path`; it may be raised. `explain RULE` says of each
    /// rule whether it may be silenced, and why. The setting has no effect; take it out.
    NOT_TO_SILENCE: "rule-not-to-silence", Error;

    /// A hop, or part of its sheet, cannot be evaluated.
    ///
    /// Something it depends on is missing or broken. What could not be computed is not judged either, so this is an
    /// error and never a silent pass. Fix the cause and the rest follows.
    NOT_EVALUATED: "hop-not-evaluated", Error, NOT_JUDGED;
}
