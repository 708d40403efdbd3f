//! Heights at both sides, distances below.

use super::canvas::Canvas;
use super::scale::{FIELD, Scale};
use super::ticks::{plain, step, ticks};
use crate::units::Metres;

pub(super) fn axes(canvas: &mut Canvas, scale: &Scale) {
    let (left, right, top, bottom) = FIELD;
    canvas.stroke(&format!("M{left} {top} V{bottom} H{right} V{top}"), 0.8, "");
    let high = step(scale.high - scale.low);
    for height in ticks(scale.low, scale.high, high) {
        let y = scale.y(Metres(height));
        canvas.stroke(&format!("M{:.1} {y:.1} H{left} M{right} {y:.1} H{:.1}", left - 4.0, right + 4.0), 0.8, "");
        let words = canvas.voice.number(plain(height, high));
        canvas.text(left - 7.0, y + 4.5, "end", &words);
        canvas.text(right + 7.0, y + 4.5, "start", &words);
    }
    let unit = canvas.voice.say("profile-height");
    canvas.text(left - 7.0, top - 6.0, "end", &unit);
    canvas.text(right + 7.0, top - 6.0, "start", &unit);
    let far = step(scale.length);
    let (unit, size) = if scale.length >= 3000.0 { ("km", 1000.0) } else { ("m", 1.0) };
    for distance in ticks(0.0, scale.length, far) {
        let x = scale.x(Metres(distance));
        canvas.stroke(&format!("M{x:.1} {bottom} V{:.1}", bottom + 4.0), 0.8, "");
        let words = canvas.voice.number(plain(distance / size, far / size));
        canvas.text(x, bottom + 17.0, "middle", &words);
    }
    canvas.text(right + 7.0, bottom + 17.0, "start", unit);
}
