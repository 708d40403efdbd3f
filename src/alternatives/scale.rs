//! A value on a line, that moves in practical steps.

/// A value on a line, in steps.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Scale {
    /// What it is today.
    pub today: f64,
    /// What it becomes: a whole number of steps.
    pub then: f64,
    /// The practical step.
    pub step: f64,
    /// The unit it is written in.
    pub unit: &'static str,
}

impl Scale {
    /// How many steps it moves, the first of them to the next whole one.
    #[must_use]
    pub fn steps(&self) -> u32 {
        let moved = ((self.then - self.today) / self.step).abs();
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "cut to a few thousand, never below 1"
        )]
        let steps = (moved - 1e-6).ceil().clamp(1.0, 10_000.0) as u32;
        steps
    }

    /// The same with only so many steps of it left, counted from today.
    #[must_use]
    pub fn at(&self, steps: u32) -> Self {
        let back = f64::from(self.steps().saturating_sub(steps)) * self.step;
        let then = if self.then < self.today { self.then + back } else { self.then - back };
        Self { then: on_grid(then, self.step), ..*self }
    }

    /// The value as it is written.
    #[must_use]
    pub fn written(&self) -> String {
        format!("{} {}", plain(self.then), self.unit)
    }
}

/// A value on its grid, without the dust of binary fractions.
pub(super) fn on_grid(value: f64, step: f64) -> f64 {
    let whole = (value / step).round() * step;
    (whole * 1e6).round() / 1e6 + 0.0
}

/// A number with no more digits than it has.
fn plain(value: f64) -> String {
    let tidy = (value * 1e6).round() / 1e6 + 0.0;
    format!("{tidy}")
}

#[cfg(test)]
mod tests {
    use super::Scale;

    #[test]
    fn a_scale_goes_back_to_whole_steps() {
        let up = Scale { today: 10.2, then: 16.0, step: 0.5, unit: "dBm" };
        assert_eq!(up.steps(), 12);
        assert_eq!([up.at(1), up.at(6), up.at(12)].map(|scale| scale.written()), ["10.5 dBm", "13 dBm", "16 dBm"]);
        let down = Scale { today: 10.0, then: -2.0, step: 0.5, unit: "dBm" };
        assert_eq!([down.at(1), down.at(20), down.at(24)].map(|scale| scale.written()), ["9.5 dBm", "0 dBm", "-2 dBm"]);
    }
}
