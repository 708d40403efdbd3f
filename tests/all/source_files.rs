//! Finding files and reading them.

use std::fs;
use std::path::{Path, PathBuf};

use hopwright::door::Folder;
use hopwright::source::{Discovery, FileFault, FileFaultKind, MAX_BYTES, PassedOver, SourceText};
use tempfile::TempDir;

fn folder(files: &[&str]) -> TempDir {
    let folder = tempfile::tempdir().expect("a temporary folder");
    for file in files {
        let path = folder.path().join(file);
        fs::create_dir_all(path.parent().expect("inside the folder")).expect("writable");
        fs::write(path, "a: 1\n").expect("writable");
    }
    folder
}

fn discover(root: &Path) -> Discovery {
    hopwright::source::discover(&Folder::around(root), root, &PassedOver::default(), 1000)
}

fn read(path: &Path) -> Result<SourceText, FileFault> {
    hopwright::source::read(&Folder::around(path), path)
}

fn names(folder: &TempDir) -> Vec<String> {
    let discovery = discover(folder.path());
    assert_eq!(discovery.faults, []);
    let name = |path: &PathBuf| path.strip_prefix(folder.path()).expect("inside").display().to_string();
    discovery.files.iter().map(name).collect()
}

#[test]
fn yaml_files_are_found_in_order() {
    let folder = folder(&["b.yaml", "a/z.yml", "a.yaml", "C.YAML", "no.txt", ".x.yaml", ".git/y.yaml", "target/t.yml"]);
    assert_eq!(names(&folder), ["C.YAML", "a/z.yml", "a.yaml", "b.yaml", "target/t.yml"]);
}

#[test]
fn the_root_may_be_a_file_or_hidden_or_missing() {
    let folder = folder(&["any.txt", ".hidden/a.yaml"]);
    let file = folder.path().join("any.txt");
    assert_eq!(discover(&file).files, [file]);
    let hidden = folder.path().join(".hidden");
    assert_eq!(discover(&hidden).files, [hidden.join("a.yaml")]);
    let missing = discover(&folder.path().join("gone"));
    assert_eq!(missing.faults[0].kind, FileFaultKind::Missing);
}

#[cfg(unix)]
#[test]
fn links_are_followed_and_loops_are_faults() {
    use std::os::unix::fs::symlink;
    let folder = folder(&["a/x.yaml", "real/y.yaml"]);
    symlink(folder.path().join("real"), folder.path().join("a/linked")).expect("a link");
    assert_eq!(names(&folder), ["a/x.yaml", "real/y.yaml"], "no folder is walked twice");

    symlink(folder.path(), folder.path().join("a/again")).expect("a link");
    symlink("nowhere", folder.path().join("a/.lock.yaml")).expect("a link");
    symlink("nowhere", folder.path().join("a/result")).expect("a link");
    symlink("nowhere", folder.path().join("b.yaml")).expect("a link");
    let discovery = discover(folder.path());
    assert_eq!(discovery.files.len(), 2);
    let kinds: Vec<_> = discovery.faults.iter().map(|fault| fault.kind).collect();
    assert_eq!(kinds, [FileFaultKind::SymlinkLoop, FileFaultKind::Unreadable]);
}

#[cfg(unix)]
#[test]
fn devices_are_not_read() {
    for path in ["/dev/zero", "/dev"] {
        let fault = read(path.as_ref()).expect_err("not a file");
        assert_eq!(fault.kind, FileFaultKind::Unreadable);
    }
}

#[test]
fn files_are_read_as_they_are() {
    let folder = folder(&[]);
    let path = folder.path().join("x.yaml");
    let text = "\u{feff}a: 1\r\n";
    fs::write(&path, text).expect("writable");
    assert_eq!(read(&path).map(|source| source.text).as_deref(), Ok(text));
}

#[test]
fn unfit_bytes_are_explained() {
    let folder = folder(&[]);
    let path = folder.path().join("x.yaml");
    let refusal = |bytes: &[u8]| {
        fs::write(&path, bytes).expect("writable");
        let fault = read(&path).expect_err("unfit");
        (fault.kind, fault.detail)
    };
    let (kind, detail) = refusal("a: 1\n🎉: \u{e9}".as_bytes().split_last().expect("bytes").1);
    assert_eq!(kind, FileFaultKind::NotUtf8);
    assert_eq!(detail, "byte 0xc3 at offset 11 (line 2, column 5) is not UTF-8");
    for bytes in [b"\xFF\xFEa\0", b"\xFE\xFF\0a"] {
        assert_eq!(refusal(bytes), (FileFaultKind::NotUtf8, "this is UTF-16, save it as UTF-8".into()));
    }

    let limit = usize::try_from(MAX_BYTES).expect("small");
    assert_eq!(refusal(&vec![b'a'; limit + 1]).0, FileFaultKind::TooLarge);
    fs::write(&path, vec![b'a'; limit]).expect("writable");
    assert!(read(&path).is_ok());
    let gone = read(&folder.path().join("gone.yaml")).expect_err("gone");
    assert_eq!(gone.kind, FileFaultKind::Missing);
}

#[test]
fn a_walk_ends_where_there_are_too_many_names() {
    let folder = folder(&["a.yaml", "b.yaml", "c.txt"]);
    let walk =
        |most| hopwright::source::discover(&Folder::around(folder.path()), folder.path(), &PassedOver::default(), most);
    assert_eq!(walk(3).faults, []);
    assert_eq!(walk(2).faults[0].kind, FileFaultKind::TooMany);
}
