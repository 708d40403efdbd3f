//! A support from its foot up, with every antenna that hops of the network put on it: heights to scale.

use super::Figure;
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::spec::EndName;
use crate::units::{Degrees, Given, Metres, Millimetres, Quantity as _};
use crate::voice::{Open, Voice};

const WIDTH: f64 = 178.0;
/// Where the axis of the support stands, and between which heights of the paper it reaches.
const POLE: f64 = 84.0;
const TOP: f64 = 12.0;
const FOOT: f64 = 76.0;
/// Height of the lines of a label, and where labels stand.
const LINE: f64 = 4.3;
const RIGHT: f64 = 124.0;
const LEFT: f64 = 46.0;
/// How much of a support without antennas is drawn before it is broken.
const PLAIN: f64 = 1.5;

/// An antenna on the support.
#[derive(Debug, Clone)]
pub(in crate::pack) struct Stand {
    /// Its hop.
    pub hop: String,
    /// Its end of it.
    pub end: EndName,
    /// Its centre above the ground of the site.
    pub height: Given<Metres>,
    /// How wide it is.
    pub diameter: Millimetres,
    /// Where it looks to.
    pub bearing: Degrees,
    /// The distance of trained workers in front of it, where there is one.
    pub keep: Option<Metres>,
}

/// The support.
#[derive(Debug, Clone)]
pub(in crate::pack) struct Carrier {
    /// What it is called.
    pub title: String,
    /// Height of its foot above the ground of the site.
    pub base: Given<Metres>,
    /// Length above the foot.
    pub length: Metres,
    /// Its outside diameter.
    pub outside: Millimetres,
}

/// The part of the support that is drawn: from and to, above its foot, and how many millimetres of paper a metre is.
struct Shown {
    from: f64,
    to: f64,
    scale: f64,
    foot: f64,
}

impl Shown {
    fn of(carrier: &Carrier, stands: &[Stand]) -> Self {
        let above = |stand: &Stand| (stand.height.value - carrier.base.value).0;
        let heights = stands.iter().map(above);
        let (low, high) = heights.fold((f64::INFINITY, 0.0_f64), |(low, high), at| (low.min(at), high.max(at)));
        let top = carrier.length.0.max(high + 0.2);
        let from = if low > 1.0 + PLAIN { low - 1.0 } else { 0.0 };
        let to = if top - high > 1.0 + PLAIN { high + 1.0 } else { top };
        let foot = if from > 0.0 { FOOT - 12.0 } else { FOOT };
        Self { from, to, scale: (foot - TOP) / (to - from).max(0.1), foot }
    }

    fn at(&self, above: f64) -> f64 {
        self.foot - (above - self.from) * self.scale
    }
}

/// The elevation of a support, seen across the beam of the first antenna, which points to the right; none without one.
pub(in crate::pack) fn elevation(carrier: &Carrier, stands: &[Stand], voice: Voice) -> Option<Figure> {
    let first = stands.first()?;
    let shown = Shown::of(carrier, stands);
    let mut labels = Labels::default();
    // It grows downwards with its labels.
    let tall = (crate::drawing::times(stands.len()) * (3.0 * LINE + 1.2) + TOP + 10.0).max(90.0);
    let mut drawing = Drawing::new(WIDTH, tall);
    let (name, hop) = (&carrier.title, end_of(first, voice));
    drawing.text(
        (3.0, 6.0),
        Anchor::Start,
        3.6,
        true,
        &voice.with("draw-elevation-title", &[("support", name), ("hop", &hop)]),
    );
    tube(carrier, &shown, &mut drawing);
    for stand in stands {
        antenna(carrier, first, stand, &shown, voice, &mut drawing, &mut labels);
    }
    labels.draw(&mut drawing, tall - 9.0);
    let base = voice.given_in_both(&carrier.base);
    drawing.text((3.0, tall - 4.0), Anchor::Start, 3.2, true, &voice.with("draw-elevation-foot", &[("base", &base)]));
    let told: Vec<String> = stands.iter().map(|stand| told(carrier, stand, voice)).collect();
    let open: [Open<'_>; 2] = [("support", name), ("antennas", &told.join("; "))];
    Some(Figure::of(&drawing, voice.with("draw-elevation-alt", &open)))
}

fn end_of(stand: &Stand, voice: Voice) -> String {
    voice.with("hop-end", &[("hop", &stand.hop), ("end", &stand.end)])
}

/// The height of an antenna above the foot of the support, with that above the ground as it is written.
fn height(carrier: &Carrier, stand: &Stand, voice: Voice) -> String {
    voice.in_both((stand.height.value - carrier.base.value).tidy())
}

fn told(carrier: &Carrier, stand: &Stand, voice: Voice) -> String {
    let (hop, height) = (end_of(stand, voice), height(carrier, stand, voice));
    match stand.keep {
        None => voice.with("draw-elevation-at", &[("hop", &hop), ("height", &height)]),
        Some(keep) => {
            let keep = voice.in_both(keep);
            voice.with("draw-elevation-live", &[("hop", &hop), ("height", &height), ("keep", &keep)])
        }
    }
}

/// Foot, tube and its breaks.
fn tube(carrier: &Carrier, shown: &Shown, drawing: &mut Drawing) {
    let half = half_width(carrier, shown);
    drawing.hatch((POLE - 23.0, FOOT), (46.0, 2.4));
    let (top, bottom) = (shown.at(shown.to), FOOT);
    drawing.rect((POLE - half, top), (2.0 * half, bottom - top), Fill::White, Some(Pen::Firm));
    if shown.from > 0.0 {
        cut(shown.foot + 5.0, half, drawing);
    }
    if shown.to < carrier.length.0 - 1e-9 {
        cut(top + 1.5, half, drawing);
    }
}

/// Two slanting strokes: longer than drawn.
fn cut(y: f64, half: f64, drawing: &mut Drawing) {
    let wide = half + 2.4;
    let corners = [(POLE - wide, y + 1.6), (POLE + wide, y - 1.0), (POLE + wide, y + 1.0), (POLE - wide, y + 3.6)];
    drawing.polygon(&corners, Fill::White, None);
    drawing.line(corners[0], corners[1], Pen::Firm);
    drawing.line(corners[3], corners[2], Pen::Firm);
}

fn half_width(carrier: &Carrier, shown: &Shown) -> f64 {
    (carrier.outside.0 / 1000.0 * shown.scale.min(26.0) / 2.0).clamp(1.4, 6.0)
}

fn antenna(
    carrier: &Carrier,
    first: &Stand,
    stand: &Stand,
    shown: &Shown,
    voice: Voice,
    drawing: &mut Drawing,
    labels: &mut Labels,
) {
    let y = shown.at((stand.height.value - carrier.base.value).0);
    let turn = (stand.bearing.0 - first.bearing.0).to_radians();
    let (along, across) = (libm::cos(turn), libm::sin(turn).abs());
    let side = if along >= 0.0 { 1.0 } else { -1.0 };
    let reach = (stand.diameter.0 / 2000.0 * shown.scale.min(26.0)).clamp(2.4, 11.0);
    let half = half_width(carrier, shown);
    let out = POLE + side * (half + 5.0);
    let wide = (reach * across).max(0.9);
    if stand.keep.is_some() {
        let far = 17.0 * along.abs().max(0.25);
        drawing.hatch((out.min(out + side * far), y - reach - 1.0), (far, 2.0 * reach + 2.0));
    }
    drawing.rect((POLE.min(out), y - 1.2), ((out - POLE).abs(), 2.4), Fill::White, Some(Pen::Firm));
    let oval: Vec<Point> = (0..36_u8)
        .map(|step| {
            let angle = (f64::from(step) * 10.0).to_radians();
            (out + wide * libm::cos(angle), y + reach * libm::sin(angle))
        })
        .collect();
    drawing.polygon(&oval, Fill::White, Some(Pen::Heavy));
    let reach = 16.0 * along.abs();
    if reach > 4.0 {
        drawing.arrow((out + side * wide, y), (out + side * (wide + reach), y), Pen::Heavy);
    } else if libm::sin(turn) > 0.0 {
        drawing.circle((out, y), 0.9, Fill::Black, Pen::Firm);
    } else {
        drawing.line((out - 1.3, y - 1.3), (out + 1.3, y + 1.3), Pen::Firm);
        drawing.line((out - 1.3, y + 1.3), (out + 1.3, y - 1.3), Pen::Firm);
    }
    let tip = out + side * (wide + if reach > 4.0 { reach } else { 0.0 } + 1.0);
    let (right, left) = if side > 0.0 { (tip, POLE - half) } else { (POLE + half, tip) };
    let mut words =
        vec![end_of(stand, voice), voice.with("draw-elevation-looks", &[("bearing", &voice.number(stand.bearing))])];
    words.extend(stand.keep.map(|keep| voice.with("draw-elevation-keep", &[("keep", &voice.in_both(keep))])));
    labels.right.push(Label { point: (right, y), words });
    labels.left.push(Label { point: (left, y), words: vec![height(carrier, stand, voice)] });
}

/// Words beside the drawing that belong to a point in it.
struct Label {
    point: Point,
    words: Vec<String>,
}

#[derive(Default)]
struct Labels {
    left: Vec<Label>,
    right: Vec<Label>,
}

impl Labels {
    fn draw(mut self, drawing: &mut Drawing, until: f64) {
        column(&mut self.left, LEFT, Anchor::End, until, drawing);
        column(&mut self.right, RIGHT, Anchor::Start, until, drawing);
    }
}

/// Labels in the order of their points, each level with its own where there is room, below the one before where not.
fn column(labels: &mut [Label], x: f64, anchor: Anchor, until: f64, drawing: &mut Drawing) {
    labels.sort_by(|one, other| one.point.1.total_cmp(&other.point.1));
    let tall = |label: &Label| crate::drawing::times(label.words.len()) * LINE + 1.2;
    let all: f64 = labels.iter().map(tall).sum();
    let mut free = TOP - 3.0;
    let mut left = all;
    for label in labels.iter() {
        // Room is kept for those that come.
        let wanted = label.point.1 - LINE / 2.0;
        let at = wanted.min(until - left).max(free);
        left -= tall(label);
        free = at + tall(label);
        let level = at + LINE / 2.0;
        let elbow = if anchor == Anchor::Start { x - 4.0 } else { x + 4.0 };
        let edge = if anchor == Anchor::Start { x - 1.0 } else { x + 1.0 };
        drawing.path(&[label.point, (elbow, level), (edge, level)], Pen::Thin);
        drawing.circle(label.point, 0.4, Fill::Black, Pen::Thin);
        for (number, words) in label.words.iter().enumerate() {
            let y = at + LINE * (crate::drawing::times(number) + 0.8);
            drawing.text((x, y), anchor, 3.2, number == 0 || words.contains(['.', ',']), words);
        }
    }
}
