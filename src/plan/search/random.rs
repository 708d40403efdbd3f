//! Chance that is the same in every run.

/// Numbers that look random, from a seed: splitmix64, of common knowledge.
#[derive(Debug)]
pub(super) struct Random(u64);

impl Random {
    pub(super) const fn seeded(seed: u64) -> Self {
        Self(seed)
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mixed = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    /// One of so many, from 0; there is at least one.
    pub(super) fn below(&mut self, count: usize) -> usize {
        let wide = u128::from(self.next()) * count as u128;
        usize::try_from(wide >> 64).expect("less than the count")
    }

    /// From 0 to below 1.
    #[expect(clippy::cast_precision_loss, reason = "53 bits fit")]
    pub(super) fn share(&mut self) -> f64 {
        (self.next() >> 11) as f64 / (1_u64 << 53) as f64
    }
}
