//! What a reader of a comparison must know that is no change: data that no side has of its own, files not looked at.

use super::side::Side;

/// The sentences, none if there is nothing to be known.
pub(super) fn of(old: &Side, new: &Side) -> Vec<String> {
    [brought(old, new), passed_over(old, new)].into_iter().flatten().collect()
}

/// Data that was named on the command line lies outside of both states.
fn brought(old: &Side, new: &Side) -> Option<String> {
    let options = [
        ("--terrain", [&old.brought.terrain, &new.brought.terrain]),
        ("--rain-map", [&old.brought.rain_map, &new.brought.rain_map]),
    ];
    let same = options.iter().filter_map(|(option, folders)| match folders {
        [Some(one), Some(other)] if one == other => Some(format!("`{option} {}`", one.display())),
        _ => None,
    });
    let same: Vec<String> = same.collect();
    (!same.is_empty()).then(|| {
        format!("data of {} is taken as it is now for both sides: a change of it is not seen here", same.join(" and "))
    })
}

/// A file that is passed over on one side only is a document that went or came without being touched.
fn passed_over(old: &Side, new: &Side) -> Option<String> {
    let only = |one: &Side, other: &Side| -> Vec<String> {
        one.passed_over.iter().filter(|path| !other.passed_over.contains(path)).cloned().collect()
    };
    let told = [(&old.name, only(old, new)), (&new.name, only(new, old))].into_iter().filter_map(|(name, paths)| {
        let first = paths.first()?;
        let more = if paths.len() == 1 { String::new() } else { format!(" and {} more", paths.len() - 1) };
        Some(format!("{first}{more} in {name}"))
    });
    let told: Vec<String> = told.collect();
    (!told.is_empty())
        .then(|| format!("passed over by `.gitignore` or `exclude` on one side only: {}", told.join("; ")))
}
