//! The path profile as a drawing: geometry computed once, set as SVG for a pull request and for the design pack.
//!
//! Black on white: what a line is, its pattern says. Everything drawn comes from the sheet; text of authors is escaped.

use std::fmt::Write as _;

use crate::sheet::{Fine, HopSheet, PathPoint, Radii, Worst};
use crate::spec::ObstacleKind;
use crate::text::xml;
use crate::units::Metres;
use crate::voice::{Open, Voice};

/// A drawing.
#[derive(Debug, Clone)]
pub struct Figure {
    /// The picture.
    pub svg: String,
    /// What it shows, in words, with the verdict.
    pub alt: String,
}

/// Size of the picture in its own units, a quarter of a millimetre each when it is as wide as a page.
const SIZE: (f64, f64) = (712.0, 356.0);
/// The field the path is drawn in: left, right, top, bottom.
const FIELD: (f64, f64, f64, f64) = (56.0, 656.0, 58.0, 268.0);
/// Columns of the field; of all points in one the highest is drawn.
const COLUMNS: usize = 600;
/// Line heights of the text below the field.
const LINE: f64 = 16.0;

/// The profile of a hop, if it has one.
#[must_use]
pub fn of(sheet: &HopSheet<'_>, voice: Voice) -> Option<Figure> {
    let profile = &sheet.profile;
    // What came from something broken is not drawn.
    profile.lines.spacing.get()?;
    let points = profile.along();
    let scale = Scale::of(sheet, &points)?;
    let points = thinned(&points, &scale);
    let mut svg = Svg::new(&alt(sheet, voice), voice);
    svg.ground(&points, &scale);
    svg.standing(&points, &scale);
    svg.beam(&points, &scale);
    svg.ends(sheet, &scale);
    svg.axes(&scale);
    svg.worst(sheet, &scale);
    svg.caption(sheet, &points, &scale);
    Some(Figure { svg: svg.done(), alt: alt(sheet, voice) })
}

/// The verdict in a sentence.
#[must_use]
pub fn verdict(sheet: &HopSheet<'_>, voice: Voice) -> String {
    let (profile, lines) = (&sheet.profile, &sheet.profile.lines);
    let asked = voice.number(profile.asked().unwrap_or(Radii(0.0)));
    let say = |key, worst: &Worst, open: [Open<'_>; 2]| {
        let (what, distance) = (voice.term_and_name(&worst.plain()), voice.number(worst.distance));
        let place: [Open<'_>; 2] = [("what", &what), ("distance", &distance)];
        voice.with(key, &[place, open].concat())
    };
    match (&profile.obstruction, &profile.worst, lines.fraction.get(), lines.in_hand.get()) {
        (Some(blocked), ..) => {
            let by = lines.lowest.get().map_or(Fine(Metres(0.0)), |lowest| Fine(Metres(-lowest.0.0)));
            say("sight-obstructed", blocked, [("by", &voice.number(by)), ("asked", &asked)])
        }
        (None, Some(worst), Some(has), Some(left)) if left.0 < 0.0 => {
            say("sight-too-little", worst, [("has", &voice.number(has)), ("asked", &asked)])
        }
        (None, Some(worst), Some(has), Some(_)) => {
            say("sight-clear", worst, [("has", &voice.number(has)), ("asked", &asked)])
        }
        _ => voice.say("sight-no-point"),
    }
}

fn alt(sheet: &HopSheet<'_>, voice: Voice) -> String {
    let (a, b) = (&sheet.resolved.ends.a.site.title, &sheet.resolved.ends.b.site.title);
    let lines = &sheet.profile.lines;
    let distance = voice.number(sheet.path.distance.get().unwrap_or_default());
    let verdict = verdict(sheet, voice);
    let mut words = voice.with("profile-alt", &[("a", a), ("b", b), ("distance", &distance), ("verdict", &verdict)]);
    if let (Some(clearance), Some(needed)) = (lines.clearance.get(), lines.needed.get()) {
        let (clearance, needed) = (voice.number(clearance), voice.number(needed));
        words.push(' ');
        words.push_str(&voice.with("profile-alt-clearance", &[("clearance", &clearance), ("needed", &needed)]));
    }
    words
}

/// From metres to the field.
struct Scale {
    length: f64,
    low: f64,
    high: f64,
}

impl Scale {
    fn of(sheet: &HopSheet<'_>, points: &[PathPoint]) -> Option<Self> {
        let length = sheet.path.distance.get()?.0;
        let lowest = points.iter().map(|point| point.ground.0).fold(f64::INFINITY, f64::min);
        let highest =
            points.iter().map(|point| point.top.0.max(point.line.0 + point.radius.0)).fold(f64::MIN, f64::max);
        let room = ((highest - lowest) * 0.06).max(2.0);
        let sound = length > 0.0 && lowest.is_finite() && highest.is_finite();
        sound.then_some(Self { length, low: lowest - room, high: highest + room })
    }

    fn x(&self, distance: Metres) -> f64 {
        FIELD.0 + (FIELD.1 - FIELD.0) * distance.0 / self.length
    }

    fn y(&self, height: Metres) -> f64 {
        FIELD.3 - (FIELD.3 - FIELD.2) * (height.0 - self.low) / (self.high - self.low)
    }

    /// How many times steeper the drawing is than the path.
    fn exaggeration(&self) -> f64 {
        let (across, up) = ((FIELD.1 - FIELD.0) / self.length, (FIELD.3 - FIELD.2) / (self.high - self.low));
        up / across
    }
}

/// A round step that divides a span into four to eight parts.
fn step(span: f64) -> f64 {
    let mut step = 1e-3;
    for factor in [2.0, 2.5, 2.0].into_iter().cycle().take(60) {
        if span / step <= 8.0 {
            break;
        }
        step *= factor;
    }
    step
}

/// One point a column, the highest.
fn thinned(points: &[PathPoint], scale: &Scale) -> Vec<PathPoint> {
    if points.len() <= COLUMNS {
        return points.to_vec();
    }
    let mut kept: Vec<PathPoint> = Vec::with_capacity(COLUMNS + 1);
    let column = |point: &PathPoint| scale.x(point.distance).floor();
    for point in points {
        match kept.last_mut() {
            Some(last) if column(last) >= column(point) => {
                if point.top > last.top {
                    *last = *point;
                }
            }
            _ => kept.push(*point),
        }
    }
    kept
}

struct Svg {
    body: String,
    voice: Voice,
}

impl Svg {
    fn new(title: &str, voice: Voice) -> Self {
        let (width, height) = SIZE;
        let mut svg = Self { body: String::new(), voice };
        svg.put(&format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {width} {height}\" width=\"{width}\" height=\"{height}\" \
             role=\"img\" font-family=\"IBM Plex Sans, Helvetica, Arial, sans-serif\" font-size=\"13\" fill=\"#000\">"
        ));
        svg.put(&format!("<title>{}</title>", escaped(title)));
        svg.put(
            "<defs><pattern id=\"hatch\" width=\"7\" height=\"7\" patternUnits=\"userSpaceOnUse\">\
             <path d=\"M0 7 L7 0\" stroke=\"#000\" stroke-width=\"0.7\" fill=\"none\"/></pattern></defs>",
        );
        svg.put(&format!("<rect width=\"{width}\" height=\"{height}\" fill=\"#fff\"/>"));
        svg
    }

    fn put(&mut self, element: &str) {
        self.body.push_str(element);
        self.body.push('\n');
    }

    fn done(mut self) -> String {
        self.body.push_str("</svg>\n");
        self.body
    }

    fn text(&mut self, x: f64, y: f64, anchor: &str, words: &str) {
        self.put(&format!("<text x=\"{x:.1}\" y=\"{y:.1}\" text-anchor=\"{anchor}\">{}</text>", escaped(words)));
    }

    fn stroke(&mut self, path: &str, width: f64, dashes: &str) {
        let dashes = if dashes.is_empty() { String::new() } else { format!(" stroke-dasharray=\"{dashes}\"") };
        self.put(&format!("<path d=\"{path}\" fill=\"none\" stroke=\"#000\" stroke-width=\"{width}\"{dashes}/>"));
    }

    fn ground(&mut self, points: &[PathPoint], scale: &Scale) {
        let line = joined(points, scale, |point| point.ground);
        let corners = format!("{line} L{:.1} {:.1} L{:.1} {:.1} Z", FIELD.1, FIELD.3, FIELD.0, FIELD.3);
        self.put(&format!("<path d=\"{corners}\" fill=\"url(#hatch)\"/>"));
        self.stroke(&line, 1.4, "");
    }

    /// What stands on the ground, each kind in its own way.
    fn standing(&mut self, points: &[PathPoint], scale: &Scale) {
        let mut start = 0;
        while start < points.len() {
            let Some((number, kind)) = points[start].standing else {
                start += 1;
                continue;
            };
            let same = |point: &PathPoint| point.standing == Some((number, kind));
            let end = start + points[start..].iter().take_while(|point| same(point)).count();
            self.thing(kind, &points[start..end], scale);
            start = end;
        }
    }

    fn thing(&mut self, kind: ObstacleKind, points: &[PathPoint], scale: &Scale) {
        const NARROW: f64 = 2.5;
        let (Some(first), Some(last)) = (points.first(), points.last()) else { return };
        let (left, right) = (scale.x(first.distance), scale.x(last.distance));
        let middle = f64::midpoint(left, right);
        let top = points.iter().map(|point| scale.y(point.top)).fold(f64::INFINITY, f64::min);
        let foot = points.iter().map(|point| scale.y(point.ground)).fold(f64::MIN, f64::max);
        match kind {
            ObstacleKind::Building | ObstacleKind::Trees => {
                let (left, right) = (left.min(middle - NARROW), right.max(middle + NARROW));
                let tops: String = match points {
                    [_] => format!("L{left:.1} {top:.1} L{right:.1} {top:.1} "),
                    _ => points.iter().fold(format!("L{left:.1} {:.1} ", scale.y(first.top)), |mut path, point| {
                        let _ = write!(path, "L{:.1} {:.1} ", scale.x(point.distance), scale.y(point.top));
                        path
                    }),
                };
                let feet: String = points.iter().rev().fold(String::new(), |mut path, point| {
                    let x = if points.len() == 1 { right } else { scale.x(point.distance) };
                    let _ = write!(path, "L{x:.1} {:.1} ", scale.y(point.ground));
                    path
                });
                let path = format!("M{left:.1} {:.1} {tops}{feet}Z", scale.y(first.ground));
                let fill = if kind == ObstacleKind::Building { "#000" } else { "#fff" };
                self.put(&format!("<path d=\"{path}\" fill=\"{fill}\" stroke=\"#000\" stroke-width=\"1\"/>"));
            }
            ObstacleKind::Crane => {
                let path = format!(
                    "M{middle:.1} {foot:.1} L{middle:.1} {top:.1} M{:.1} {top:.1} L{:.1} {top:.1}",
                    middle - 4.0,
                    middle + 10.0
                );
                self.stroke(&path, 1.6, "");
            }
            ObstacleKind::PowerLine => {
                let bar = |down: f64| {
                    format!(" M{:.1} {:.1} L{:.1} {:.1}", middle - 5.0, top + down, middle + 5.0, top + down)
                };
                self.stroke(&format!("M{middle:.1} {foot:.1} L{middle:.1} {top:.1}{}{}", bar(0.0), bar(4.0)), 1.2, "");
            }
        }
    }

    /// The line and the zones around it.
    fn beam(&mut self, points: &[PathPoint], scale: &Scale) {
        for (share, dashes) in [(1.0, "7 4"), (0.6, "1.5 3")] {
            for side in [1.0, -1.0] {
                let edge = joined(points, scale, |point| point.line + Metres(side * share * point.radius.0));
                self.stroke(&edge, 0.9, dashes);
            }
        }
        let line = joined(points, scale, |point| point.line);
        self.stroke(&line, 1.7, "");
    }

    fn ends(&mut self, sheet: &HopSheet<'_>, scale: &Scale) {
        // So that two of them fit side by side.
        let room = 28;
        for (end, x, anchor) in [(&sheet.ends.a, FIELD.0, "start"), (&sheet.ends.b, FIELD.1, "end")] {
            let (site, own) = (end.resolved.site, end.resolved.end);
            let ground = site.ground_height.value;
            let antenna = ground + own.height.value;
            let path = format!("M{x:.1} {:.1} L{x:.1} {:.1}", scale.y(ground), scale.y(antenna));
            self.stroke(&path, 2.6, "");
            self.put(&format!("<circle cx=\"{x:.1}\" cy=\"{:.1}\" r=\"3.2\"/>", scale.y(antenna)));
            let title = cut(&site.title, room);
            let edge = if anchor == "start" { 4.0 } else { SIZE.0 - 4.0 };
            let height = self.voice.number(antenna);
            let open: [Open<'_>; 3] = [("end", &end.name), ("site", &title), ("height", &height)];
            let words = self.voice.with("profile-end", &open);
            self.text(edge, 14.0, anchor, &words);
        }
    }

    fn axes(&mut self, scale: &Scale) {
        let (left, right, top, bottom) = FIELD;
        self.stroke(&format!("M{left} {top} V{bottom} H{right} V{top}"), 0.8, "");
        let high = step(scale.high - scale.low);
        for height in ticks(scale.low, scale.high, high) {
            let y = scale.y(Metres(height));
            self.stroke(&format!("M{:.1} {y:.1} H{left} M{right} {y:.1} H{:.1}", left - 4.0, right + 4.0), 0.8, "");
            let words = self.voice.number(plain(height, high));
            self.text(left - 7.0, y + 4.5, "end", &words);
            self.text(right + 7.0, y + 4.5, "start", &words);
        }
        let unit = self.voice.say("profile-height");
        self.text(left - 7.0, top - 6.0, "end", &unit);
        self.text(right + 7.0, top - 6.0, "start", &unit);
        let far = step(scale.length);
        let (unit, size) = if scale.length >= 3000.0 { ("km", 1000.0) } else { ("m", 1.0) };
        for distance in ticks(0.0, scale.length, far) {
            let x = scale.x(Metres(distance));
            self.stroke(&format!("M{x:.1} {bottom} V{:.1}", bottom + 4.0), 0.8, "");
            let words = self.voice.number(plain(distance / size, far / size));
            self.text(x, bottom + 17.0, "middle", &words);
        }
        self.text(right + 7.0, bottom + 17.0, "start", unit);
    }

    /// The worst point with its numbers.
    fn worst(&mut self, sheet: &HopSheet<'_>, scale: &Scale) {
        let (profile, lines) = (&sheet.profile, &sheet.profile.lines);
        let Some(worst) = profile.obstruction.as_ref().or(profile.worst.as_ref()) else { return };
        let point = profile.along().into_iter().find(|point| point.distance == worst.distance);
        let Some(point) = point else { return };
        let (x, line, top) = (scale.x(worst.distance), scale.y(point.line), scale.y(point.top));
        let voice = self.voice;
        let (what, distance) = (voice.term_and_name(&worst.plain()), voice.number(worst.distance));
        let words = match (&profile.obstruction, lines.clearance.get(), lines.fraction.get(), lines.needed.get()) {
            (Some(_), ..) => {
                let by = voice.number(Fine(point.top - point.line));
                voice.with("profile-into-line", &[("what", &what), ("distance", &distance), ("by", &by)])
            }
            (None, Some(clearance), Some(fraction), Some(needed)) => {
                let (clearance, fraction, needed) =
                    (voice.number(clearance), voice.number(fraction), voice.number(needed));
                let open: [Open<'_>; 5] = [
                    ("what", &what),
                    ("distance", &distance),
                    ("clearance", &clearance),
                    ("fraction", &fraction),
                    ("needed", &needed),
                ];
                voice.with("profile-worst", &open)
            }
            _ => return,
        };
        self.stroke(&format!("M{x:.1} {:.1} V{:.1}", FIELD.2 - 16.0, line.min(top)), 0.6, "3 2");
        self.stroke(&format!("M{x:.1} {line:.1} V{top:.1} M{:.1} {top:.1} H{:.1}", x - 4.0, x + 4.0), 2.0, "");
        // Beside the leader, and never over the edge: letters are some 6.4 wide on the mean.
        let words = cut(&words, 105);
        let width = 6.4 * f64::from(u8::try_from(words.chars().count()).unwrap_or(u8::MAX));
        let at = (x - width / 2.0).min(SIZE.0 - 4.0 - width).max(4.0);
        self.text(at, FIELD.2 - 22.0, "start", &words);
    }

    fn caption(&mut self, sheet: &HopSheet<'_>, points: &[PathPoint], scale: &Scale) {
        let mut y = FIELD.3 + 17.0 + 1.4 * LINE;
        let mut x = FIELD.0;
        let voice = self.voice;
        for (dashes, width, key) in
            [("", 1.7, "profile-line"), ("7 4", 0.9, "profile-f1"), ("1.5 3", 0.9, "profile-06f1")]
        {
            let words = voice.say(key);
            self.stroke(&format!("M{x:.1} {:.1} h28", y - 4.5), width, dashes);
            self.text(x + 33.0, y, "start", &words);
            x += 52.0 + 7.0 * f64::from(u8::try_from(words.chars().count()).unwrap_or(u8::MAX));
        }
        let kinds = ObstacleKind::ALL
            .into_iter()
            .filter(|kind| points.iter().any(|point| point.standing.is_some_and(|(_, of)| of == *kind)))
            .map(|kind| match kind {
                ObstacleKind::Building => "profile-building",
                ObstacleKind::Trees => "profile-trees",
                ObstacleKind::Crane => "profile-crane",
                ObstacleKind::PowerLine => "profile-power-line",
            });
        let things: Vec<String> = ["profile-ground"].into_iter().chain(kinds).map(|key| voice.say(key)).collect();
        self.text(x, y, "start", &things.join("; "));
        y += LINE;
        let steeper = voice.number(format!("{:.1}", scale.exaggeration()));
        let frequency = voice.number(sheet.profile.lower_frequency().unwrap_or_default());
        let facts = voice.with("profile-facts", &[("times", &steeper), ("frequency", &frequency)]);
        self.text(FIELD.0, y, "start", &facts);
        y += LINE;
        self.text(FIELD.0, y, "start", &cut(&verdict(sheet, voice), 100));
    }
}

fn joined(points: &[PathPoint], scale: &Scale, height: impl Fn(&PathPoint) -> Metres) -> String {
    points.iter().enumerate().fold(String::new(), |mut path, (number, point)| {
        let letter = if number == 0 { 'M' } else { 'L' };
        let _ = write!(path, "{letter}{:.1} {:.1} ", scale.x(point.distance), scale.y(height(point)));
        path
    })
}

fn ticks(low: f64, high: f64, step: f64) -> impl Iterator<Item = f64> {
    let first = (low / step).ceil();
    (0..64).map(move |number| (first + f64::from(number)) * step).take_while(move |value| *value <= high + step * 1e-9)
}

/// A number of a scale with as many decimals as its step asks for.
fn plain(value: f64, step: f64) -> String {
    let decimals = (0..4).find(|decimals| {
        let scaled = (0..*decimals).fold(step, |step, _| step * 10.0);
        (scaled - scaled.round()).abs() < 1e-6
    });
    let value = if value == 0.0 { 0.0 } else { value };
    format!("{value:.*}", decimals.unwrap_or(3)).replace('-', "\u{2212}")
}

fn cut(words: &str, most: usize) -> String {
    if words.chars().count() <= most {
        return words.to_owned();
    }
    words.chars().take(most - 1).chain(['…']).collect()
}

/// Text as XML takes it, on one line.
fn escaped(words: &str) -> String {
    xml::escaped(words, |c| if matches!(c, '\n' | '\t' | '\r') { " " } else { "" })
}

#[cfg(test)]
mod tests {
    use super::{cut, escaped, plain, step, ticks};

    #[test]
    fn text_of_authors_is_no_markup() {
        assert_eq!(escaped("<script>\u{7}\"a & b\"\n"), "&lt;script&gt;&quot;a &amp; b&quot; ");
        assert_eq!(cut("Überlingen", 5), "Über…");
    }

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
