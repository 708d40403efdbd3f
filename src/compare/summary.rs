//! How many hops became what, and the verdict in one line.

use super::change::Outcome;

/// How many hops became what.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Summary {
    /// Hops on either side.
    pub hops: usize,
    /// Hops without any change.
    pub unchanged: usize,
    /// Of these, hops that neither side can compute.
    pub never_computed: usize,
    /// Hops whose changes are all too small to list.
    pub small: usize,
    /// Changes to the gate.
    pub gate: usize,
    /// Findings about no hop that are new or fixed.
    pub findings: usize,
    outcomes: [usize; Outcome::ALL.len()],
}

impl Summary {
    pub(super) fn count(&mut self, outcome: Outcome) {
        self.outcomes[outcome as usize] += 1;
    }

    /// How many hops became that.
    #[must_use]
    pub fn of(&self, outcome: Outcome) -> usize {
        self.outcomes[outcome as usize]
    }

    /// How many hops are not what they were.
    #[must_use]
    pub fn changed(&self) -> usize {
        self.outcomes.iter().sum()
    }

    /// `3 of 41 hops change: 1 now fails, 2 within limits; 38 unchanged`.
    #[must_use]
    pub fn verdict(&self) -> String {
        let changed = self.changed();
        let noun = if self.hops == 1 { "hop" } else { "hops" };
        let mut rest = Vec::new();
        if self.small > 0 {
            rest.push(format!("{} by less than is shown", self.small));
        }
        if self.never_computed > 0 {
            rest.push(format!("{} computable on neither side", self.never_computed));
        }
        let tail = rest.iter().fold(String::new(), |tail, part| tail + ", " + part);
        if changed == 0 && self.findings == 0 && self.gate > 0 {
            return format!("the gate changes, no number does: {} {noun} unchanged{tail}", self.unchanged);
        }
        if changed == 0 && self.findings == 0 {
            return format!("no computed change: {} {noun} unchanged{tail}", self.unchanged);
        }
        let parts = Outcome::ALL.iter().filter(|outcome| self.of(**outcome) > 0).map(|outcome| {
            let (count, [one, many]) = (self.of(*outcome), outcome.words());
            format!("{count} {}", if count == 1 { one } else { many })
        });
        let mut parts: Vec<String> = parts.collect();
        if self.findings > 0 {
            let noun = if self.findings == 1 { "finding" } else { "findings" };
            parts.push(format!("{} {noun} about no hop", self.findings));
        }
        let verb = if changed == 1 { "changes" } else { "change" };
        format!("{changed} of {} {noun} {verb}: {}; {} unchanged{tail}", self.hops, parts.join(", "), self.unchanged)
    }
}
