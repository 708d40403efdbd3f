//! `schema`: write the JSON Schemas of the documents and of the report.

use super::args::Schema;
use super::{Exit, Stop, print};
use crate::door::write::write_whole;
use crate::output::report_schema;
use crate::spec::{Kind, schema_text};

pub(super) fn run(args: &Schema) -> Result<Exit, Stop> {
    let kinds = Kind::ALL.map(|kind| (kind.word(), schema_text(kind)));
    for (name, text) in kinds.into_iter().chain([("report", report_schema())]) {
        let path = args.out.join(format!("{name}.json"));
        write_whole(&path, text.as_bytes()).map_err(|error| Stop::Write { path: path.display().to_string(), error })?;
        print(&format!("{}\n", path.display()))?;
    }
    Ok(Exit::Clean)
}
