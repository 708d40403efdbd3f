//! What is wrong with files and folders, as findings.

use std::path::Path;

use crate::door::path::shown;
use crate::finding::faults::{NOT_UTF8, REPOSITORY, TOO_LARGE, UNREADABLE};
use crate::finding::{Finding, Spot};
use crate::source::{FileFault, FileFaultKind};

/// A file or folder that could not be used.
pub(super) fn file_fault(fault: &FileFault, here: Option<&Path>) -> Finding {
    let rule = match fault.kind {
        FileFaultKind::Missing | FileFaultKind::Unreadable | FileFaultKind::Outside | FileFaultKind::SymlinkLoop => {
            &UNREADABLE
        }
        FileFaultKind::Repository => &REPOSITORY,
        FileFaultKind::NotUtf8 => &NOT_UTF8,
        FileFaultKind::TooLarge | FileFaultKind::TooMany => &TOO_LARGE,
    };
    let path = shown(&fault.path, here);
    Finding::new(rule, Spot::Path(path.clone()), format!("{path}: {}", fault.detail), fault.detail.clone())
}
