//! Lists that stay short.

/// The first few of many.
#[must_use]
pub fn few<S: std::borrow::Borrow<str>>(known: &[S]) -> String {
    const MOST: usize = 8;
    match known.get(..MOST) {
        Some(first) if known.len() > MOST => format!("{}, and {} more", first.join(", "), known.len() - MOST),
        _ => known.join(", "),
    }
}
