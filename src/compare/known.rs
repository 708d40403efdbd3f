//! What is known to be wrong, as one side has it.

use std::collections::BTreeMap;

use crate::verdict::baseline::{Baseline, Known};

/// A baseline of a side, with its text to point into.
#[derive(Debug)]
pub struct KnownSide {
    /// The file, as it is printed.
    pub path: String,
    /// What is written there.
    pub text: String,
    /// What it says.
    pub baseline: Baseline,
}

impl KnownSide {
    /// Its entries by fingerprint.
    pub(super) fn entries(&self) -> BTreeMap<&str, &Known> {
        self.baseline.findings.iter().map(|known| (known.fingerprint.as_str(), known)).collect()
    }

    /// The line of an entry.
    pub(super) fn place(&self, fingerprint: &str) -> (String, usize) {
        let line = self.text.lines().position(|line| line.contains(fingerprint)).map_or(1, |line| line + 1);
        (self.path.clone(), line)
    }
}
