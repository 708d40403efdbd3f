//! The marks of an axis: round steps, and numbers with no more decimals than those ask for.

/// A round step that divides a span into four to eight parts.
pub(super) fn step(span: f64) -> f64 {
    let mut step = 1e-3;
    for factor in [2.0, 2.5, 2.0].into_iter().cycle().take(60) {
        if span / step <= 8.0 {
            break;
        }
        step *= factor;
    }
    step
}

/// The multiples of a step in a span.
pub(super) fn ticks(low: f64, high: f64, step: f64) -> impl Iterator<Item = f64> {
    let first = (low / step).ceil();
    (0..64).map(move |number| (first + f64::from(number)) * step).take_while(move |value| *value <= high + step * 1e-9)
}

/// A number of a scale with as many decimals as its step asks for.
pub(super) fn plain(value: f64, step: f64) -> String {
    let decimals = (0..4).find(|decimals| {
        let scaled = (0..*decimals).fold(step, |step, _| step * 10.0);
        (scaled - scaled.round()).abs() < 1e-6
    });
    let value = if value == 0.0 { 0.0 } else { value };
    format!("{value:.*}", decimals.unwrap_or(3)).replace('-', "\u{2212}")
}

#[cfg(test)]
mod tests {
    use super::{plain, step, ticks};

    #[test]
    fn scales_are_round() {
        for (span, expected) in [(7.0, 1.0), (100.0, 20.0), (1234.0, 200.0), (0.9, 0.2), (4200.0, 1000.0)] {
            let found = step(span);
            assert!((found - expected).abs() < 1e-9 * expected, "{span}: {found}");
        }
        assert_eq!(plain(0.4, 0.2), "0.4");
        assert_eq!(plain(-20.0, 10.0), "\u{2212}20");
        assert_eq!(plain(2.5, 2.5), "2.5");
        let found: Vec<f64> = ticks(-3.0, 4.5, 2.0).collect();
        assert_eq!(found, [-2.0, 0.0, 2.0, 4.0]);
    }
}
