//! Reading: a scope in; texts, libraries and findings out.

use std::path::{Path, PathBuf};

use rayon::prelude::*;

use super::files::{Files, SourceFile};
use super::library::Library;
use super::profile_file::read_profiles;
use super::roots::Scope;
use super::shelving::Shelving;
use super::typing::{TypedFile, type_file};
use crate::finding::faults::{NOT_UTF8, TOO_LARGE, UNREADABLE};
use crate::finding::{Finding, Spot};
use crate::place::FileId;
use crate::source::{self, FileFault, FileFaultKind};

/// Everything that was read.
#[derive(Debug)]
pub struct Loaded {
    /// The texts.
    pub files: Files,
    /// One library a network, in order of folder.
    pub libraries: Vec<Library>,
    /// What is wrong with the files themselves.
    pub findings: Vec<Finding>,
}

/// Reads and types everything in scope.
#[must_use]
pub fn load(scope: &Scope) -> Loaded {
    let here = std::env::current_dir().ok();
    let here = here.as_deref();
    let mut findings = Vec::new();
    let named = |path: PathBuf, text| SourceFile::new(shown(&path, here), path, text);
    let read: Vec<Result<SourceFile, FileFault>> = if let Some(texts) = scope.texts() {
        texts.iter().map(|(path, text)| text.clone().map(|text| named(path.clone(), text))).collect()
    } else {
        let mut paths: Vec<PathBuf> = Vec::new();
        for root in &scope.load {
            let found = source::discover(root);
            paths.extend(found.files);
            // What stands in a text need not be in a file.
            let faults = found.faults.iter().filter(|fault| scope.text_of(&fault.path).is_none());
            findings.extend(faults.map(|fault| file_fault(fault, here)));
        }
        scope.with_instead(&mut paths);
        paths.par_sort();
        paths.dedup();
        let read = |path: &PathBuf| match scope.text_of(path) {
            Some(text) => Ok(named(path.clone(), text.to_owned())),
            None => source::read(path).map(|text| named(text.path, text.text)),
        };
        paths.par_iter().map(read).collect()
    };
    let mut files = Files::default();
    let mut folders = Vec::new();
    for text in read {
        match text {
            Ok(file) => {
                folders.push(file.origin.parent().map(Path::to_path_buf).unwrap_or_default());
                files.list.push(file);
            }
            Err(fault) => findings.push(file_fault(&fault, here)),
        }
    }

    let typed: Vec<TypedFile> = files
        .list
        .par_iter()
        .enumerate()
        .map(|(number, file)| type_file(FileId(u32::try_from(number).unwrap_or(u32::MAX)), &file.text))
        .collect();

    let mut shelving = Shelving::new(&folders, &typed);
    for (folder, file) in folders.iter().zip(typed) {
        findings.extend(file.findings);
        for entry in file.entries {
            shelving.put(folder, entry);
        }
    }
    shelving.follow_mentions();
    read_profiles(&mut shelving.libraries, &mut files, &|path| shown(path, here), &mut findings);
    findings.extend(shelving.findings);
    Loaded { files, libraries: shelving.libraries.into_iter().map(|(_, library)| library).collect(), findings }
}

/// A path as it is printed by someone who stands `here`.
fn shown(path: &Path, here: Option<&Path>) -> String {
    let short = here.and_then(|here| path.strip_prefix(here).ok()).unwrap_or(path);
    let text = short.to_string_lossy().replace('\\', "/");
    text.strip_prefix("./").map(str::to_owned).unwrap_or(text)
}

fn file_fault(fault: &FileFault, here: Option<&Path>) -> Finding {
    let rule = match fault.kind {
        FileFaultKind::Missing | FileFaultKind::Unreadable | FileFaultKind::SymlinkLoop => &UNREADABLE,
        FileFaultKind::NotUtf8 => &NOT_UTF8,
        FileFaultKind::TooLarge | FileFaultKind::TooMany => &TOO_LARGE,
    };
    let path = shown(&fault.path, here);
    Finding::new(rule, Spot::Path(path.clone()), format!("{path}: {}", fault.detail), fault.detail.clone())
}
