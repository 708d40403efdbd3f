//! The whole network on one sheet: sites where they are, hops with their verdict in the line.
//!
//! The map is flat about its middle, which is fine for a network some hundred kilometres wide.

use std::collections::HashMap;

use crate::drawing::letters::width;
use crate::drawing::paper::{Area, Paper};
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point, times};
use crate::pack::figures::Figure;
use crate::voice::{Open, Voice, shown};

/// Width of the sheet.
const WIDTH: f64 = 178.0;
/// The tallest a map may be: the rest of its page holds a heading and what stands below.
const TALLEST: f64 = 150.0;
/// The least it is.
const LOWEST: f64 = 30.0;
/// Paper around the outermost sites, for their names.
const MARGIN: f64 = 20.0;
/// Height of the strip with scale, north and the kinds of lines.
const STRIP: f64 = 15.0;
/// Size of letters.
const LETTERS: f64 = 3.2;
/// Where more sites are, none has room for a name, and the time to look for it grows with their square.
const MOST_NAMED: usize = 600;
/// More sites than this are drawn smaller.
const MANY: usize = 60;
/// Letters of a name.
const LONGEST_NAME: usize = 26;
/// A degree of latitude on a sphere of 6371 km, in metres.
const DEGREE: f64 = 111_195.0;

/// How a hop stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Standing {
    /// Nothing is found.
    Sound,
    /// Warnings are open.
    Warned,
    /// Errors are open.
    Failing,
    /// It could not be judged, or not in full.
    NotJudged,
}

impl Standing {
    pub(super) const ALL: [Self; 4] = [Self::Sound, Self::Warned, Self::Failing, Self::NotJudged];

    /// The key of its word.
    pub(super) const fn key(self) -> &'static str {
        match self {
            Self::Sound => "standing-sound",
            Self::Warned => "standing-warned",
            Self::Failing => "standing-failing",
            Self::NotJudged => "standing-not-judged",
        }
    }

    /// Its line: told apart by dashes and weight, for a copier knows no colours.
    const fn pen(self) -> Pen {
        match self {
            Self::Sound => Pen::Firm,
            Self::Warned => Pen::Dashed,
            Self::Failing => Pen::Heavy,
            Self::NotJudged => Pen::Dotted,
        }
    }
}

/// A site to draw.
#[derive(Debug, Clone)]
pub(super) struct MapSite {
    pub id: String,
    pub title: String,
    pub latitude: f64,
    pub longitude: f64,
}

/// A hop to draw, with the numbers of its sites.
#[derive(Debug, Clone)]
pub(super) struct MapHop {
    pub id: String,
    pub ends: [usize; 2],
    pub standing: Standing,
}

/// A map with the sites that found no room for their name.
pub(super) struct Map {
    pub figure: Figure,
    /// Number on the map and name.
    pub key: Vec<[String; 2]>,
    /// How many found no room for a number either.
    pub bare: usize,
}

/// Draws the map of a network; none without sites.
pub(super) fn map(title: &str, sites: &[MapSite], hops: &[MapHop], voice: Voice) -> Option<Map> {
    let scale = Scale::of(sites)?;
    let at: Vec<Point> = sites.iter().map(|site| scale.place(site)).collect();
    let mut drawing = Drawing::new(WIDTH, scale.height + STRIP);
    let mut paper = Paper::new(Area { left: 1.0, top: 1.0, right: WIDTH - 1.0, bottom: scale.height - 1.0 });
    for hop in hops {
        let [from, to] = hop.ends.map(|end| at[end]);
        drawing.line(from, to, hop.standing.pen());
        paper.line(from, to);
        if hop.standing == Standing::Failing {
            let size = (0.18 * libm::hypot(to.0 - from.0, to.1 - from.1)).clamp(0.7, 1.7);
            cross(middle(from, to), size, &mut drawing);
            paper.area(Area::around(middle(from, to), 2.4 * size, 2.4 * size));
        }
    }
    // Where many are, smaller ones, or they would hide their hops.
    let radius = if sites.len() > MANY { 0.8 } else { 1.3 };
    for point in &at {
        drawing.circle(*point, radius, Fill::White, Pen::Firm);
        paper.area(Area::around(*point, 2.2 * radius, 2.2 * radius));
    }
    let (key, bare) =
        if sites.len() <= MOST_NAMED { names(sites, &at, &mut drawing, &mut paper) } else { (Vec::new(), sites.len()) };
    if hops.len() <= MOST_NAMED {
        for hop in hops {
            name_of_hop(hop, hop.ends.map(|end| at[end]), &mut drawing, &mut paper);
        }
    }
    strip(&scale, voice, &mut drawing);
    let alt = meaning(title, sites, hops, voice);
    Some(Map { figure: Figure::of(&drawing, alt), key, bare })
}

/// From degrees to the sheet.
struct Scale {
    /// Latitude and longitude in the middle.
    middle: (f64, f64),
    /// Millimetres of paper for a metre of ground.
    per_metre: f64,
    height: f64,
}

impl Scale {
    fn of(sites: &[MapSite]) -> Option<Self> {
        let first = sites.first()?;
        let edges = |value: &dyn Fn(&MapSite) -> f64| {
            sites
                .iter()
                .map(value)
                .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), at| (low.min(at), high.max(at)))
        };
        let (south, north) = edges(&|site| site.latitude);
        // By the difference to one of them, so that the date line divides nothing.
        let (west, east) = edges(&|site| turned(site.longitude - first.longitude));
        let middle = (f64::midpoint(south, north), first.longitude + f64::midpoint(west, east));
        let across = ((east - west) * DEGREE * libm::cos(middle.0.to_radians())).max(1.0);
        let tall = ((north - south) * DEGREE).max(1.0);
        let scale = ((WIDTH - 2.0 * MARGIN) / across).min((TALLEST - MARGIN) / tall);
        let height = (tall * scale + MARGIN).max(LOWEST);
        Some(Self { middle, per_metre: scale, height })
    }

    fn place(&self, site: &MapSite) -> Point {
        let east = turned(site.longitude - self.middle.1) * DEGREE * libm::cos(self.middle.0.to_radians());
        let north = (site.latitude - self.middle.0) * DEGREE;
        (WIDTH / 2.0 + east * self.per_metre, self.height / 2.0 - north * self.per_metre)
    }

    /// The longest round length that fits into the bar, in metres.
    fn bar(&self) -> f64 {
        let lengths = (0..7).flat_map(|power| [1.0, 2.0, 5.0].map(|digit| digit * libm::exp10(f64::from(power))));
        lengths.filter(|length| length * self.per_metre <= 45.0).fold(1.0, f64::max)
    }
}

/// An angle between half a turn to either side.
fn turned(degrees: f64) -> f64 {
    (degrees + 540.0).rem_euclid(360.0) - 180.0
}

fn middle(from: Point, to: Point) -> Point {
    (f64::midpoint(from.0, to.0), f64::midpoint(from.1, to.1))
}

fn cross((x, y): Point, size: f64, drawing: &mut Drawing) {
    for sign in [-1.0, 1.0] {
        drawing.line((x - size, y - size * sign), (x + size, y + size * sign), Pen::Heavy);
    }
}

/// Names the sites, the most crowded first; who finds no room gets a number.
fn names(sites: &[MapSite], at: &[Point], drawing: &mut Drawing, paper: &mut Paper) -> (Vec<[String; 2]>, usize) {
    let near = |one: Point, other: Point| libm::hypot(one.0 - other.0, one.1 - other.1) < 22.0;
    let crowd: HashMap<usize, usize> =
        (0..sites.len()).map(|own| (own, at.iter().filter(|other| near(at[own], **other)).count())).collect();
    let mut order: Vec<usize> = (0..sites.len()).collect();
    order.sort_by_key(|number| (std::cmp::Reverse(crowd[number]), *number));
    let mut without = Vec::new();
    for number in order {
        let words = cut(&shown(&sites[number].title), LONGEST_NAME);
        if !beside(at[number], &words, false, drawing, paper) {
            without.push(number);
        }
    }
    without.sort_unstable();
    let (mut key, mut bare) = (Vec::new(), 0);
    for number in without {
        let label = (key.len() + 1).to_string();
        if beside(at[number], &label, true, drawing, paper) {
            key.push([label, sites[number].title.clone()]);
        } else {
            bare += 1;
        }
    }
    (key, bare)
}

/// Writes words beside a point where there is room: at the right, at the left, above, below, at the corners, then further out.
fn beside((x, y): Point, words: &str, heavy: bool, drawing: &mut Drawing, paper: &mut Paper) -> bool {
    let (wide, tall) = (width(words, LETTERS, heavy), LETTERS);
    let mut middles = Vec::new();
    for gap in [2.0, 3.2, 4.6] {
        let (aside, above) = (gap + wide / 2.0, gap + tall / 2.0);
        let sides = [(aside, 0.0), (-aside, 0.0), (0.0, -above), (0.0, above)];
        let corners = [(1.0, -1.0), (1.0, 1.0), (-1.0, -1.0), (-1.0, 1.0)];
        let corners = corners.map(|(right, down)| (right * (0.7 * gap + wide / 2.0), down * (0.7 * gap + tall / 2.0)));
        middles.extend(sides.into_iter().chain(corners).map(|(dx, dy)| (x + dx, y + dy)));
    }
    let areas: Vec<Area> = middles.iter().map(|middle| Area::around(*middle, wide, tall)).collect();
    let Some(number) = paper.take_first(&areas, None) else { return false };
    let (x, y) = middles[number];
    drawing.text((x, y + 1.15), Anchor::Middle, LETTERS, heavy, words);
    true
}

/// Writes the name of a hop on its line, the paper cleared behind it, else beside it; else it stands in the table alone.
fn name_of_hop(hop: &MapHop, [from, to]: [Point; 2], drawing: &mut Drawing, paper: &mut Paper) {
    let words = cut(&hop.id, LONGEST_NAME);
    let wide = width(&words, LETTERS, false);
    let long = libm::hypot(to.0 - from.0, to.1 - from.1).max(1e-9);
    let (across_x, across_y) = (-(to.1 - from.1) / long, (to.0 - from.0) / long);
    let aside = across_x.abs() * (wide / 2.0 + 0.6) + across_y.abs() * 2.6;
    let mut places = Vec::new();
    for off in [0.0, aside, -aside] {
        for share in [0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74] {
            let point = (from.0 + (to.0 - from.0) * share, from.1 + (to.1 - from.1) * share);
            // A name on a line that is hardly longer would hide it.
            if off != 0.0 || long > wide + 12.0 {
                places.push((off == 0.0, (point.0 + across_x * off, point.1 + across_y * off)));
            }
        }
    }
    for (on_line, place) in places {
        let area = Area::around(place, wide, LETTERS);
        if paper.take_first(&[area], on_line.then_some((from, to))).is_some() {
            if on_line {
                let area = area.grown(0.5);
                let size = (area.right - area.left, area.bottom - area.top);
                drawing.rect((area.left, area.top), size, Fill::White, None);
            }
            drawing.text((place.0, place.1 + 1.15), Anchor::Middle, LETTERS, false, &words);
            return;
        }
    }
}

/// Scale, north, and what the lines mean.
fn strip(scale: &Scale, voice: Voice, drawing: &mut Drawing) {
    let (y, metres) = (scale.height + 5.0, scale.bar());
    let long = metres * scale.per_metre;
    drawing.rect((4.0, y), (long / 2.0, 1.4), Fill::Black, Some(Pen::Thin));
    drawing.rect((4.0 + long / 2.0, y), (long / 2.0, 1.4), Fill::White, Some(Pen::Thin));
    drawing.text((4.0, y + 5.4), Anchor::Start, LETTERS, false, "0");
    let words = if metres >= 1000.0 { format!("{} km", metres / 1000.0) } else { format!("{metres} m") };
    let (anchor, x) = if long > 16.0 { (Anchor::Middle, 4.0 + long) } else { (Anchor::Start, 8.0) };
    drawing.text((x, y + 5.4), anchor, LETTERS, false, &voice.number(words));
    drawing.arrow((62.0, y + 6.0), (62.0, y - 4.0), Pen::Firm);
    drawing.text((64.5, y - 0.6), Anchor::Start, LETTERS, true, &voice.say("draw-north"));
    for (number, standing) in Standing::ALL.into_iter().enumerate() {
        let x = 76.0 + 26.0 * times(number);
        drawing.line((x, y), (x + 10.0, y), standing.pen());
        if standing == Standing::Failing {
            cross((x + 5.0, y), 1.7, drawing);
        }
        drawing.text((x, y + 5.4), Anchor::Start, LETTERS, false, &voice.say(standing.key()));
    }
}

/// Names of hops that the meaning lists.
const MOST_TOLD: usize = 12;

/// What it shows, for whoever cannot see it.
fn meaning(title: &str, sites: &[MapSite], hops: &[MapHop], voice: Voice) -> String {
    let count = |standing| hops.iter().filter(|hop| hop.standing == standing).count();
    let counts = Standing::ALL.into_iter().map(|standing| (standing, count(standing))).filter(|(_, many)| *many > 0);
    let counts: Vec<String> = counts.map(|(standing, many)| format!("{}: {many}", voice.say(standing.key()))).collect();
    let failing: Vec<&str> = hops
        .iter()
        .filter(|hop| hop.standing == Standing::Failing)
        .map(|hop| hop.id.as_str())
        .take(MOST_TOLD)
        .collect();
    let open: [Open<'_>; 4] =
        [("title", &title), ("sites", &sites.len()), ("hops", &hops.len()), ("counts", &counts.join(", "))];
    let map = voice.with("draw-map-alt", &open);
    if failing.is_empty() {
        map
    } else {
        format!("{map} {}", voice.with("draw-map-failing", &[("hops", &failing.join(", "))]))
    }
}

fn cut(words: &str, most: usize) -> String {
    let letters: Vec<char> = words.chars().collect();
    if letters.len() <= most { words.to_owned() } else { letters[..most - 1].iter().collect::<String>() + "…" }
}
