//! The gate of a revision: what a change has to pass is read from where the change is to go, not from the change.

use std::path::Path;

use super::Stop;
use crate::door::{Git, GitError, Revision, Store, Why};
use crate::network::Scope;
use crate::verdict::baseline::Baseline;

/// The networks of a scope as a revision has them.
pub(super) fn of_revision(scope: &Scope, revision: &str) -> Result<Scope, Stop> {
    let mut gate = Scope::of(&[]);
    for folder in scope.folders() {
        let store = Revision::of(&folder, &Git::around(&folder, revision)?, revision, revision)?;
        if store.look(&folder).is_err_and(|refused| refused.why == Why::Missing) {
            let message = format!(
                "{} is not in `{revision}`, so there is no gate to judge it by: somebody has to agree to a network that \
                 is new or has moved",
                folder.display()
            );
            return Err(Stop::Unknown(message));
        }
        gate = gate.and(Scope::in_store(&folder, std::sync::Arc::new(store)));
    }
    super::scope::current(gate)
}

/// A baseline as a revision has it; what is in no file there is not known.
pub(super) fn baseline_of(revision: &str, path: &Path) -> Result<Option<(String, Baseline)>, Stop> {
    let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or_else(|| Path::new("."));
    let store = Revision::of(folder, &Git::around(folder, revision)?, revision, revision)?;
    baseline_in(&store, path, revision)
}

/// A baseline of some state, with its text; `None` if there is no such file.
pub(super) fn baseline_in(store: &dyn Store, path: &Path, name: &str) -> Result<Option<(String, Baseline)>, Stop> {
    let failed = |why: String| Stop::Unknown(format!("{} in {name}: {why}", path.display()));
    let read = store.read(path, super::baseline::MOST_BYTES);
    if let Some(said) = store.failure() {
        return Err(GitError::Failed { revision: name.to_owned(), said }.into());
    }
    let bytes = match read {
        Ok(bytes) => bytes,
        Err(refused) if refused.why == Why::Missing => return Ok(None),
        Err(refused) => return Err(failed(refused.detail)),
    };
    let text = String::from_utf8(bytes).map_err(|_| failed("it is not UTF-8".into()))?;
    let baseline = Baseline::read(&text).map_err(failed)?;
    Ok(Some((text, baseline)))
}
