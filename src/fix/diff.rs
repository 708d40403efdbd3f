//! What a fixed file differs in, as a patch that other programs apply.

use std::fmt::Write as _;

use super::Mended;

/// Lines shown around a change.
const AROUND: usize = 3;

/// How far one side may run ahead of the other.
const LOOK_AHEAD: usize = 100;

/// One line of both texts, of the old one or of the new one.
#[derive(Clone, Copy, PartialEq)]
enum Row<'t> {
    Both(&'t str),
    Old(&'t str),
    New(&'t str),
}

/// The change of a file in unified form.
#[must_use]
pub fn diff(file: &Mended) -> String {
    headed(file, ["", ""])
}

/// The same with a folder in front of each name, as `git apply` takes it off.
#[must_use]
pub fn patch(file: &Mended) -> String {
    headed(file, ["a/", "b/"])
}

fn headed(file: &Mended, [old, new]: [&str; 2]) -> String {
    let rows = rows(&file.before, &file.after);
    let mut out = format!("--- {old}{path}\n+++ {new}{path}\n", path = file.path);
    let changed: Vec<usize> = (0..rows.len()).filter(|at| !matches!(rows[*at], Row::Both(_))).collect();
    let mut next = 0;
    while let Some(&first) = changed.get(next) {
        let mut last = first;
        while let Some(&more) = changed.get(next).filter(|more| **more <= last + 2 * AROUND) {
            last = more;
            next += 1;
        }
        let (start, end) = (first.saturating_sub(AROUND), (last + 1 + AROUND).min(rows.len()));
        hunk(&mut out, &rows, start, end);
    }
    out
}

fn hunk(out: &mut String, rows: &[Row<'_>], start: usize, end: usize) {
    let old = |rows: &[Row<'_>]| rows.iter().filter(|row| !matches!(row, Row::New(_))).count();
    let new = |rows: &[Row<'_>]| rows.iter().filter(|row| !matches!(row, Row::Old(_))).count();
    let (before, inside) = (&rows[..start], &rows[start..end]);
    let (old_at, new_at) = (old(before) + 1, new(before) + 1);
    let _ = writeln!(out, "@@ -{old_at},{} +{new_at},{} @@", old(inside), new(inside));
    for row in inside {
        let (mark, line) = match row {
            Row::Both(line) => (' ', line),
            Row::Old(line) => ('-', line),
            Row::New(line) => ('+', line),
        };
        let _ = write!(out, "{mark}{line}");
        if !line.ends_with('\n') {
            out.push_str("\n\\ No newline at end of file\n");
        }
    }
}

/// Both texts line by line. Where they part, the nearest lines that agree again are looked for.
fn rows<'t>(before: &'t str, after: &'t str) -> Vec<Row<'t>> {
    let (old, new): (Vec<&str>, Vec<&str>) =
        (before.split_inclusive('\n').collect(), after.split_inclusive('\n').collect());
    let (mut i, mut j, mut rows) = (0, 0, Vec::new());
    while i < old.len() || j < new.len() {
        if i < old.len() && j < new.len() && old[i] == new[j] {
            rows.push(Row::Both(old[i]));
            (i, j) = (i + 1, j + 1);
            continue;
        }
        let meet = (1..=LOOK_AHEAD).find_map(|sum| {
            let splits = (0..=sum).map(|ahead| (i + ahead, j + sum - ahead));
            splits.into_iter().find(|(a, b)| old.get(*a).zip(new.get(*b)).is_some_and(|(one, other)| one == other))
        });
        let (old_to, new_to) = meet.unwrap_or((old.len(), new.len()));
        rows.extend(old[i..old_to].iter().copied().map(Row::Old));
        rows.extend(new[j..new_to].iter().copied().map(Row::New));
        (i, j) = (old_to, new_to);
    }
    rows
}
