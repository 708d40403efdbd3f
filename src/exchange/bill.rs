//! What is bought for all ends together, as a table.

use super::figures::fixed;
use crate::pack::Bill;
use crate::text::csv::{Marks, Out, Writer};
use crate::voice::Voice;

/// The bill of materials, in the order in which things are mounted.
#[must_use]
pub fn bill(bill: &Bill, voice: Voice, marks: Marks) -> String {
    let mut out = Writer::new(marks);
    let headers = ["part", "detail", "pieces", "length [m]", "pieces of unknown length"];
    out.row(headers.map(|header| Out::Text(header.to_owned())));
    for row in bill.rows(voice) {
        out.row([
            Out::Text(row.part),
            Out::Text(row.detail),
            Out::Number(row.pieces.to_string()),
            Out::number(row.length.map(|length| fixed(length.0, 2))),
            if row.length.is_some() { Out::Number(row.unknown.to_string()) } else { Out::Empty },
        ]);
    }
    out.text().to_owned()
}
