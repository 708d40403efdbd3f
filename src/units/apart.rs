//! Two values that a page must tell apart.

use super::quantity::Quantity;

/// Two values of one kind and the distance between them, with enough decimals to be told apart.
///
/// A comparison is made in full precision, so `24.96` may fail a limit of `25`: it must not be printed as `25.0 is below
/// 25.0`, nor the distance as `0.0`. Stops at nine decimals.
#[must_use]
pub fn apart<Q, D>(left: Q, right: Q) -> (String, String, String)
where
    Q: Quantity + std::ops::Sub<Q, Output = D>,
    D: Quantity,
{
    let distance = D::new((left - right).base().abs());
    let mut decimals = Q::DECIMALS;
    loop {
        let (a, b, between) =
            (left.with_decimals(decimals), right.with_decimals(decimals), distance.with_decimals(decimals));
        if decimals >= 9 || (a != b && between != D::new(0.0).with_decimals(decimals)) {
            return (a, b, between);
        }
        decimals += 1;
    }
}
