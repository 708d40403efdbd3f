//! Codes that a telephone reads: the position of a site, the id of a record.

use fast_qr::{ECL, QRBuilder};

use super::Figure;
use crate::drawing::{Drawing, Fill, times};
use crate::sheet::EndSheet;
use crate::voice::Voice;

/// Side of one module in millimetres; telephones read it at arm's length, wet or creased.
const MODULE: f64 = 0.8;
/// Modules that must stay white around it (ISO/IEC 18004).
const QUIET: f64 = 4.0;

/// `geo:46.51234,171.20456`, latitude first (RFC 5870); none where the coder refuses, which it has no cause to.
pub(in crate::pack) fn place(end: &EndSheet<'_>, voice: Voice) -> Option<Figure> {
    let position = &end.resolved.site.position;
    let (latitude, longitude) = (position.latitude.value.0, position.longitude.value.0);
    let words = format!("geo:{latitude:.6},{longitude:.6}");
    code(&words, voice)
}

/// Any words as a code; none where the coder refuses: they are longer than a code can hold.
pub(in crate::pack) fn code(words: &str, voice: Voice) -> Option<Figure> {
    let code = QRBuilder::new(words).ecl(ECL::Q).build().ok()?;
    let side = (times(code.size) + 2.0 * QUIET) * MODULE;
    let mut drawing = Drawing::new(side, side);
    drawing.rect((0.0, 0.0), (side, side), Fill::White, None);
    for row in 0..code.size {
        let mut column = 0;
        while column < code.size {
            let dark = |column: usize| column < code.size && code[row][column].value();
            let start = column;
            while dark(column) {
                column += 1;
            }
            if column > start {
                let at = |number: usize| (times(number) + QUIET) * MODULE;
                drawing.rect((at(start), at(row)), (times(column - start) * MODULE, MODULE), Fill::Black, None);
            }
            column += 1;
        }
    }
    Some(Figure::of(&drawing, voice.with("draw-place-alt", &[("words", &words)])))
}
