//! `schema`: write the JSON Schemas of the documents and of the report.

use super::args::Schema;
use super::{Exit, Stop, say};
use crate::output::report_schema;
use crate::spec::{Kind, schema_text};
use crate::text::plain::Form;

pub(super) fn run(args: &Schema) -> Result<Exit, Stop> {
    let kinds = Kind::ALL.map(|kind| (kind.word(), schema_text(kind)));
    for (name, text) in kinds.into_iter().chain([("report", report_schema())]) {
        let path = args.out.join(format!("{name}.json"));
        say::save(&path, &text, Form::Json)?;
        say::path(&path)?;
    }
    Ok(Exit::Clean)
}
