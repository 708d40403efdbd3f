//! `new`: a small network to start from, with the schemas its files point at.

use std::path::Path;

use super::args::{New, NewWhat};
use super::{Exit, Stop, new_record, say};
use crate::door::is_empty_or_missing;
use crate::spec::{Kind, schema_text};
use crate::text::plain::Form;

/// The files of the network, commented for somebody who reads them for the first time.
const FILES: [(&str, &str); 4] = [
    ("network.yaml", include_str!("../scaffold/network.yaml")),
    ("sites.yaml", include_str!("../scaffold/sites.yaml")),
    ("equipment.yaml", include_str!("../scaffold/equipment.yaml")),
    ("workshop-depot.yaml", include_str!("../scaffold/hop.yaml")),
];

pub(super) fn run(args: &New) -> Result<Exit, Stop> {
    let dir = match (&args.what, &args.dir) {
        (Some(NewWhat::Record(record)), _) => return new_record::run(record),
        (None, Some(dir)) => dir,
        (None, None) => return Err(Stop::Unknown("name a folder to make".into())),
    };
    if !is_empty_or_missing(dir) {
        let message = format!("{} is there and not empty: name a folder that is new or empty", dir.display());
        return Err(Stop::Unknown(message));
    }
    for (name, text) in FILES {
        write(&dir.join(name), text, Form::People)?;
    }
    for kind in Kind::ALL {
        write(&dir.join("schema").join(format!("{kind}.json")), &schema_text(kind), Form::Json)?;
    }
    say::hint(&format!("Now read network.yaml, then run: hopwright check {}\n", say::shown(dir)));
    Ok(Exit::Clean)
}

fn write(path: &Path, text: &str, form: Form) -> Result<(), Stop> {
    say::save(path, text, form)?;
    say::path(path)
}
