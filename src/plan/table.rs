//! The plan as columns, for people.

use std::fmt::Write as _;

use super::lines::{Line, Standing};
use crate::physics::raster::{Half, Numbered};
use crate::spec::Polarisation;
use crate::text::plain::spelled;

/// How wide a table is at most.
const WIDTH: usize = 80;
/// What stands over the columns behind site and hop, and how wide each is.
const HEADS: [(&str, usize); 6] = [("half", 6), ("sends", 11), ("chan.", 7), ("pol.", 4), ("I/N dB", 6), ("D dB", 6)];

/// The lines of one network in columns.
#[must_use]
pub fn table(lines: &[Line]) -> String {
    let mut out = String::new();
    let Some(first) = lines.first() else { return out };
    let _ = writeln!(out, "{}: frequency plan", spelled(&first.network));
    let behind: usize = HEADS.iter().map(|(_, width)| 1 + width).sum();
    let (site, hop) = widths(lines, WIDTH - behind - 1);
    let _ = write!(out, "\n{:<site$} {:<hop$}", "site", "hop");
    for (number, (head, width)) in HEADS.iter().enumerate() {
        let _ =
            if number == 0 || number == 3 { write!(out, " {head:<width$}") } else { write!(out, " {head:>width$}") };
    }
    out.push('\n');
    let mut at = None;
    for line in lines {
        // A site is named once.
        let named = if at == Some(&line.site) { String::new() } else { fitted(&line.site, site) };
        at = Some(&line.site);
        let called = fitted(&line.called(), hop);
        let _ = write!(out, "{named:<site$} {called:<hop$}");
        for (number, (cell, (_, width))) in cells(line).iter().zip(HEADS).enumerate() {
            let _ = if number == 0 || number == 3 {
                write!(out, " {cell:<width$}")
            } else {
                write!(out, " {cell:>width$}")
            };
        }
        out.truncate(out.trim_end().len());
        out.push('\n');
    }
    out.push('\n');
    out.push_str(&footer(lines));
    out
}

/// What a plan comes to, as a sentence.
#[must_use]
pub fn standing_in_words(standing: &Standing) -> String {
    let mut words = format!("greatest degradation {:.2}, sum {:.2}", standing.greatest, standing.sum);
    match standing.beside {
        0 => {}
        1 => words.push_str("; one receiver listens where its own site sends"),
        more => {
            let _ = write!(words, "; {more} receivers listen where their own site sends");
        }
    }
    words
}

fn footer(lines: &[Line]) -> String {
    let mut out = String::new();
    let standing = Standing::of(lines);
    let _ = writeln!(out, "{}", standing_in_words(&standing));
    let borne = lines.iter().filter_map(|line| Some((line, line.bears.as_ref()?)));
    // Of equals the first.
    let worst = borne.reduce(|worst, next| if next.1.degradation > worst.1.degradation { next } else { worst });
    if let Some((line, (name, level))) = worst.and_then(|(line, bears)| Some((line, bears.strongest.as_ref()?))) {
        let _ = writeln!(out, "most at {}", spelled(&line.called()));
        let _ = writeln!(out, "the loudest there: {} with {level}", spelled(name));
    }
    let left = lines.iter().filter(|line| line.bears.is_none()).count();
    if left > 0 {
        let _ = writeln!(out, "{left} ends are not judged, for something of them is broken (`check` says what)");
    }
    out
}

fn cells(line: &Line) -> [String; 6] {
    let (over_noise, degradation) = match &line.bears {
        None => ("—".to_owned(), "—".to_owned()),
        Some(bears) if !bears.beside.is_empty() => ("site".to_owned(), "—".to_owned()),
        Some(bears) => (
            bears.over_noise.map_or_else(|| "—".to_owned(), |over| format!("{:.1}", over.0)),
            format!("{:.2}", bears.degradation.0),
        ),
    };
    [
        fitted(&line.half, HEADS[0].1),
        line.sends.to_string(),
        line.channel.map(|channel| number(channel.numbered)).unwrap_or_default(),
        polarisation(line.polarisation).to_owned(),
        over_noise,
        degradation,
    ]
}

/// A channel by its numbers, and an apostrophe in the upper half of a pair, as rasters write it.
pub(super) fn number(Numbered { first, last, half, .. }: Numbered) -> String {
    let mark = if half == Some(Half::Upper) { "'" } else { "" };
    if first == last { format!("{first}{mark}") } else { format!("{first}{mark}–{last}{mark}") }
}

/// One letter, or two.
pub(super) const fn polarisation(polarisation: Polarisation) -> &'static str {
    match polarisation {
        Polarisation::Horizontal => "H",
        Polarisation::Vertical => "V",
        Polarisation::Dual => "H+V",
    }
}

/// How wide the names may be, the hop's at least as much as they need of half the room.
fn widths(lines: &[Line], room: usize) -> (usize, usize) {
    let most = |of: &dyn Fn(&Line) -> usize| lines.iter().map(of).max().unwrap_or_default();
    let site = most(&|line| spelled(&line.site).chars().count()).max(4);
    let hop = most(&|line| spelled(&line.called()).chars().count()).max(3);
    if site + hop <= room {
        return (site, hop);
    }
    let site = site.min((room / 2).max(room.saturating_sub(hop)));
    (site, hop.min(room - site))
}

/// A name, cut in the middle if it is too long: what tells names apart often stands at their ends.
fn fitted(name: &str, width: usize) -> String {
    let name = spelled(name);
    let count = name.chars().count();
    if count <= width {
        return name;
    }
    let (head, tail) = (width / 2, width - width / 2 - 1);
    name.chars().take(head).chain(['…']).chain(name.chars().skip(count - tail)).collect()
}
