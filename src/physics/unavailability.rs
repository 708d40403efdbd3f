//! How long equipment and its supply are down, and what several causes come to together.
//!
//! Mean times and counts go in, shares of time come out. Failures are taken as independent of each other: lightning, fire
//! or a cut cable that takes more than one thing at once is not in it.

use crate::units::{Hours, Percent};

/// Share of time in which a thing is down that fails once in `MTBF` and is back after `MTTR`.
///
/// ```text
/// u = MTTR / (MTBF + MTTR)
/// ```
///
/// The time to restore counts all of it: until somebody notices, the way there and the work.
///
/// Source: definition, for a steady state; IEC 60050-192 defines the terms.
#[must_use]
pub fn of_equipment(between_failures: Hours, to_restore: Hours) -> Percent {
    Percent(100.0 * to_restore.0 / (between_failures.0 + to_restore.0))
}

/// Share of time without power where the mains fail once in `T_b` for a mean time `D`, and a store bridges `T`.
///
/// ```text
/// u = (D / T_b) exp(-T / D),   at most 100 %
/// ```
///
/// Failures last exponentially long, and the store is full when each begins.
///
/// Source: mean of what an exponential duration has left after `T`.
#[must_use]
pub fn of_supply(between: Hours, duration: Hours, autonomy: Hours) -> Percent {
    if duration.0 <= 0.0 {
        return Percent(0.0);
    }
    Percent((100.0 * duration.0 / between.0 * libm::exp(-autonomy.0 / duration.0)).min(100.0))
}

/// Share of time in which at least one of several independent things is down.
///
/// ```text
/// u = 1 - Π (1 - u_i)
/// ```
///
/// Source: definition of independence.
#[must_use]
pub fn of_any(parts: &[Percent]) -> Percent {
    // By logarithms, so that small shares keep their digits.
    let up: f64 = parts.iter().map(|part| libm::log1p(-part.0 / 100.0)).sum();
    Percent(-100.0 * libm::expm1(up))
}
