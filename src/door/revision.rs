//! A network as it was in a revision: read out of git's store, with no checkout touched.

use std::collections::{HashMap, VecDeque};
use std::ffi::{OsStr, OsString};
use std::fmt;
use std::io::Cursor;
use std::path::{Component, Path, PathBuf};
use std::sync::{Arc, Mutex, OnceLock, PoisonError};

use super::fence::{Fence, outside};
use super::git::{Git, GitError};
use super::objects::Objects;
use super::path::full;
use super::{Found, Named, Refused, Store, Stream, What, Why};

/// How many links one path may lead through.
const MOST_LINKS: usize = 40;
/// The longest target of a link.
const MOST_OF_LINK: u64 = 4096;
/// The largest list of names in a folder: some million names.
const MOST_OF_TREE: u64 = 64 << 20;
/// How often one list of names may be asked for. A tree that stands under itself by many names is small in git and has no
/// end on paper.
const MOST_ALIKE: u32 = 2_000;

/// The files of a revision. Submodules are other repositories: a network that reaches into one cannot be read here.
pub struct Revision {
    fence: Fence,
    /// What the revision is called.
    name: String,
    tree: String,
    objects: Mutex<Objects>,
    trees: Mutex<HashMap<String, Arc<[Entry]>>>,
    /// How often each list of names with folders or specifications in it was asked for.
    asked: Mutex<HashMap<String, u32>>,
    git: Git,
    failure: OnceLock<String>,
}

/// A name in a tree.
#[derive(Debug, Clone)]
struct Entry {
    name: OsString,
    sort: Sort,
    object: String,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Sort {
    File,
    Folder,
    Link,
    Submodule,
}

impl Revision {
    /// A revision of the repository around a network.
    ///
    /// # Errors
    /// No git, no repository, no such revision.
    pub fn of(folder: &Path, git: &Git, revision: &str, shown: &str) -> Result<Self, GitError> {
        let fence = Fence { root: git.root().to_path_buf(), ..Fence::around(folder) };
        let tree = git.tree(revision)?;
        let objects = Objects::of(git).map_err(|_| GitError::NoGit(shown.to_owned()))?;
        let (objects, trees, asked) = (Mutex::new(objects), Mutex::default(), Mutex::default());
        let (git, failure) = (git.clone(), OnceLock::new());
        Ok(Self { fence, name: shown.to_owned(), tree, objects, trees, asked, git, failure })
    }

    /// Remembers that something of this state is not to be had.
    fn fail(&self, path: &Path, said: &str) -> Refused {
        let detail = format!("{}: {said}", path.display());
        let _ = self.failure.set(detail);
        Refused::new(Why::Unreadable, said)
    }

    fn bytes(&self, object: &str, kind: &str, most: u64, path: &Path) -> Result<Vec<u8>, Refused> {
        let mut objects = self.objects.lock().unwrap_or_else(PoisonError::into_inner);
        let size = objects.size(object, kind).map_err(|said| self.fail(path, &said))?;
        if size > most {
            // A broken object may claim any size.
            return Err(if self.git.hands_out(object, kind, most) {
                Refused::too_large(most)
            } else {
                self.fail(path, &format!("object {object} is broken; `git fsck` tells more"))
            });
        }
        objects.bytes(object, kind).map_err(|said| self.fail(path, &said))
    }

    fn names(&self, tree: &str, path: &Path) -> Result<Arc<[Entry]>, Refused> {
        if let Some(known) = self.trees.lock().unwrap_or_else(PoisonError::into_inner).get(tree) {
            return Ok(Arc::clone(known));
        }
        let bytes = self.bytes(tree, "tree", MOST_OF_TREE, path)?;
        let read = entries(&bytes, tree.len() / 2).ok_or_else(|| self.fail(path, "its list of names is broken"))?;
        let read: Arc<[Entry]> = read.into();
        self.trees.lock().unwrap_or_else(PoisonError::into_inner).insert(tree.to_owned(), Arc::clone(&read));
        Ok(read)
    }

    /// Counts how often a list of names is asked for, and stops a tree that repeats itself without end.
    fn count(&self, tree: &str, names: &[Entry], path: &Path) -> Result<(), Refused> {
        let leads_on = |entry: &Entry| entry.sort != Sort::File || entry.name.as_encoded_bytes().ends_with(b"ml");
        if !names.iter().any(leads_on) {
            return Ok(());
        }
        let mut asked = self.asked.lock().unwrap_or_else(PoisonError::into_inner);
        let times = asked.entry(tree.to_owned()).or_default();
        *times += 1;
        if *times <= MOST_ALIKE {
            return Ok(());
        }
        Err(self.fail(path, &format!("a folder with these names stands at more than {MOST_ALIKE} places")))
    }

    /// The path of a file below the root of the repository.
    fn below_root(&self, path: &Path) -> Result<PathBuf, Refused> {
        let whole = full(path);
        let real = match whole.strip_prefix(&self.fence.named) {
            Ok(below) => self.fence.home.join(below),
            Err(_) => whole,
        };
        real.strip_prefix(&self.fence.root).map(Path::to_path_buf).map_err(|_| outside())
    }

    fn missing(&self) -> Refused {
        Refused::new(Why::Missing, format!("it is not in git at revision `{}`", self.name))
    }

    /// Follows a path from the root of the repository, links and all, as far as it stays there.
    fn find(&self, path: &Path) -> Result<(Entry, PathBuf), Refused> {
        let root = Entry { name: OsString::new(), sort: Sort::Folder, object: self.tree.clone() };
        let mut todo: VecDeque<OsString> = self.below_root(path)?.iter().map(OsStr::to_owned).collect();
        let (mut way, mut links) = (vec![root], 0);
        while let Some(part) = todo.pop_front() {
            if part == ".." {
                way.pop();
                if way.is_empty() {
                    return Err(outside());
                }
                continue;
            }
            let folder = way.last().filter(|folder| folder.sort == Sort::Folder).ok_or_else(|| self.missing())?;
            let names = self.names(&folder.object, path)?;
            // In order of name, and a folder may have hundreds of thousands.
            let at = names.binary_search_by(|entry| entry.name.cmp(&part)).map_err(|_| self.missing())?;
            let entry = &names[at];
            match entry.sort {
                Sort::File | Sort::Folder => way.push(entry.clone()),
                Sort::Submodule => {
                    return Err(self.fail(
                        path,
                        "it is a submodule, and what it holds is in another repository: compare two folders",
                    ));
                }
                Sort::Link => {
                    links += 1;
                    if links > MOST_LINKS {
                        return Err(Refused::new(Why::Unreadable, "the link leads back to itself"));
                    }
                    let target = self.bytes(&entry.object, "blob", MOST_OF_LINK, path)?;
                    for part in steps(&target)?.into_iter().rev() {
                        todo.push_front(part);
                    }
                }
            }
        }
        let real: PathBuf = way.iter().skip(1).map(|entry| &entry.name).collect();
        let real = self.fence.root.join(real);
        self.fence.admit(&real)?;
        way.pop().map(|entry| (entry, real)).ok_or_else(outside)
    }
}

/// The steps of a link's target; one from the root of the system leads out.
fn steps(target: &[u8]) -> Result<Vec<OsString>, Refused> {
    let target = String::from_utf8_lossy(target);
    let mut steps = Vec::new();
    for part in Path::new(&*target).components() {
        match part {
            Component::CurDir => {}
            Component::ParentDir | Component::Normal(_) => steps.push(part.as_os_str().to_owned()),
            Component::RootDir | Component::Prefix(_) => return Err(outside()),
        }
    }
    Ok(steps)
}

/// A tree as git keeps it: mode, name and the bytes of the object's name.
fn entries(mut bytes: &[u8], name_length: usize) -> Option<Vec<Entry>> {
    let mut found = Vec::new();
    while !bytes.is_empty() {
        let space = bytes.iter().position(|byte| *byte == b' ')?;
        let end = bytes.iter().position(|byte| *byte == 0)?;
        let (mode, name) = (&bytes[..space], bytes.get(space + 1..end)?);
        let object = bytes.get(end + 1..end + 1 + name_length)?;
        let sort = match mode {
            b"40000" | b"040000" => Sort::Folder,
            b"120000" => Sort::Link,
            b"160000" => Sort::Submodule,
            _ => Sort::File,
        };
        let name = String::from_utf8_lossy(name).into_owned();
        // No checkout has such names.
        if !matches!(name.as_str(), "" | "." | "..") && !name.contains('/') {
            let object = hexadecimal(object);
            found.push(Entry { name: name.into(), sort, object });
        }
        bytes = &bytes[end + 1 + name_length..];
    }
    found.sort_by(|one, other| one.name.cmp(&other.name));
    Some(found)
}

/// Bytes as git spells the names of objects.
fn hexadecimal(bytes: &[u8]) -> String {
    let digit = |four: u8| char::from_digit(four.into(), 16).unwrap_or_default();
    bytes.iter().flat_map(|byte| [digit(byte >> 4), digit(byte & 15)]).collect()
}

fn what(entry: &Entry) -> What {
    if entry.sort == Sort::Folder { What::Folder } else { What::File }
}

impl Store for Revision {
    fn look(&self, path: &Path) -> Result<Found, Refused> {
        let (entry, real) = self.find(path)?;
        let what = what(&entry);
        let bytes = if what == What::File {
            let mut objects = self.objects.lock().unwrap_or_else(PoisonError::into_inner);
            objects.size(&entry.object, "blob").map_err(|said| self.fail(path, &said))?
        } else {
            0
        };
        Ok(Found { what, bytes, real })
    }

    fn list(&self, folder: &Path) -> Result<Vec<Named>, Refused> {
        let (entry, real) = self.find(folder)?;
        if entry.sort != Sort::Folder {
            return Err(self.missing());
        }
        let names = self.names(&entry.object, folder)?;
        self.count(&entry.object, &names, folder)?;
        let all = names.iter().map(|entry| {
            let path = folder.join(&entry.name);
            let what = match entry.sort {
                Sort::File | Sort::Folder => Ok((what(entry), real.join(&entry.name))),
                Sort::Link | Sort::Submodule => self.find(&path).map(|(entry, real)| (what(&entry), real)),
            };
            Named { name: entry.name.clone(), link: entry.sort == Sort::Link, what }
        });
        Ok(all.collect())
    }

    fn open(&self, path: &Path, most: u64) -> Result<Box<dyn Stream>, Refused> {
        let (entry, _) = self.find(path)?;
        if what(&entry) == What::Folder {
            return Err(Refused::irregular());
        }
        Ok(Box::new(Cursor::new(self.bytes(&entry.object, "blob", most, path)?)))
    }

    fn expect(&self, paths: &[PathBuf], most: u64) {
        let found = paths.iter().filter_map(|path| Some((path, self.find(path).ok()?.0)));
        let files: Vec<(&PathBuf, String)> =
            found.filter(|(_, entry)| what(entry) == What::File).map(|(path, entry)| (path, entry.object)).collect();
        let names: Vec<&str> = files.iter().map(|(_, object)| object.as_str()).collect();
        let mut objects = self.objects.lock().unwrap_or_else(PoisonError::into_inner);
        if let Err((at, said)) = objects.expect(&names, most) {
            self.fail(files[at].0, &said);
        }
    }

    fn is_tracked(&self) -> bool {
        true
    }

    fn failure(&self) -> Option<String> {
        self.failure.get().cloned()
    }
}

impl fmt::Debug for Revision {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Revision").field("name", &self.name).finish_non_exhaustive()
    }
}

#[cfg(test)]
mod tests {
    use super::{Sort, entries};

    #[test]
    fn a_tree_is_read_as_git_keeps_it() {
        let mut tree = b"100644 b.yaml\0".to_vec();
        tree.extend([0xab; 20]);
        tree.extend(b"40000 a\0");
        tree.extend([1; 20]);
        let read = entries(&tree, 20).expect("a tree");
        assert_eq!(read.iter().map(|entry| entry.sort).collect::<Vec<_>>(), [Sort::Folder, Sort::File]);
        assert_eq!(read[1].object, "ab".repeat(20));
        assert!(entries(&tree[..30], 20).is_none());
    }
}
