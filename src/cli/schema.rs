//! `schema`: write the JSON Schemas.

use super::args::Schema;
use super::{Exit, Stop, print};
use crate::spec::{Kind, schema_text};
use crate::write::write_whole;

pub(super) fn run(args: &Schema) -> Result<Exit, Stop> {
    for kind in Kind::ALL {
        let path = args.out.join(format!("{kind}.json"));
        write_whole(&path, schema_text(kind).as_bytes())
            .map_err(|error| Stop::Write { path: path.display().to_string(), error })?;
        print(&format!("{}\n", path.display()))?;
    }
    Ok(Exit::Clean)
}
