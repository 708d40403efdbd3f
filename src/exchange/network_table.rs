//! The sites or hops of a network as a table that import reads back: what people wrote, digit for digit.

use super::columns::{Column, Holds, What, columns_of};
use super::figures::as_written;
use super::plan::text_at;
use crate::network::{Files, Library, Slot};
use crate::place::{DocumentId, Place};
use crate::text::csv::{Marks, Out, Writer};

/// The table, rows in order of id. Of a site the first support is shown.
#[must_use]
pub fn network_table(library: &Library, files: &Files, what: What, marks: Marks) -> String {
    let columns = columns_of(what);
    let mut out = Writer::new(marks);
    out.row(columns.iter().map(|column| Out::Text(column.header())));
    for at in documents(library, what) {
        out.row(columns.iter().map(|column| cell(files, at, column)));
    }
    out.text().to_owned()
}

/// The documents in order of id, sound or not.
fn documents(library: &Library, what: What) -> Vec<DocumentId> {
    let at = |typed: &dyn Fn(usize) -> DocumentId, slot: &Slot| match slot {
        Slot::Typed(number) => typed(*number),
        Slot::Broken(at) => *at,
    };
    let mut all: Vec<(&str, DocumentId)> = match what {
        What::Sites => {
            let typed = |number: usize| library.sites.documents[number].at;
            library.sites.index.iter().map(|(id, slot)| (&*id.0, at(&typed, slot))).collect()
        }
        What::Hops => {
            let typed = |number: usize| library.hops.documents[number].at;
            library.hops.index.iter().map(|(id, slot)| (&*id.0, at(&typed, slot))).collect()
        }
    };
    all.sort_unstable_by_key(|(id, _)| *id);
    all.into_iter().map(|(_, at)| at).collect()
}

fn cell(files: &Files, at: DocumentId, column: &'static Column) -> Out {
    let index: &[usize] = if column.route.contains("[i]") { &[0] } else { &[] };
    let text = text_at(files, &Place::document(at).below(&column.route, index));
    match column.holds {
        Holds::Quantity(kind) => Out::number(text.and_then(|text| as_written(kind, &text))),
        Holds::Text | Holds::Word => {
            Out::text(text.map(|text| text.trim_end().to_owned()).filter(|text| !text.is_empty()))
        }
    }
}
