//! What can be wrong with waivers.

faults! { "waiver";
    /// A waiver cannot hold.
    ///
    /// It is dated in the future, expires before it was approved, runs longer than the network allows (`waivers.longest_months`,
    /// 12 unless set), or accepts a value that the rule has no use for. It has no effect until that is fixed; a waiver
    /// without approver, reason or reference has none either.
    NOT_VALID: "waiver-not-valid", Error;

    /// A waiver is for a rule that cannot be waived.
    ///
    /// What protects people, grounding and the limits of codes and licences are not an approver's to give. Faults of files are fixed,
    /// not accepted.
    NOT_ALLOWED: "waiver-not-allowed", Error;

    /// A waiver has expired.
    ///
    /// Its last day has passed, in UTC or by `--today`. What it accepted counts again. Fix it, or have the departure approved again.
    EXPIRED: "waiver-expired", Warning;

    /// A waiver accepts a value however bad it gets.
    ///
    /// Its rule compares a value, and the waiver does not say which value was accepted: what was agreed for a little would hold
    /// for a lot. It holds, but write the worst value that was agreed under `accepts`.
    UNLIMITED: "waiver-unlimited", Warning;

    /// A waiver expires soon.
    ///
    /// Within `waivers.notice_days` of the network, 30 unless set. It still holds.
    EXPIRING: "waiver-expiring", Advice;

    /// What was found is worse than what a waiver accepts.
    ///
    /// The approval covered a number, not every number to come: the finding counts. Fix it, or have the worse value approved.
    EXCEEDED: "waiver-exceeded", Warning;

    /// A waiver waives nothing.
    ///
    /// Its rule was run on its target and found nothing there. Take the waiver out, or correct its target.
    UNUSED: "waiver-unused", Warning;

    /// Whether a waiver is still needed cannot be said.
    ///
    /// Its rule is switched off, or its hop cannot be evaluated in full. Keep it until the rule has run.
    WAITS: "waiver-not-evaluated", Advice;
}
