//! What a stranger may try with a pull request. Each test is named for the attack; DEVELOPERS.md says what stops it.

#![cfg(unix)]

use std::fs;
use std::os::unix::fs::{FileTypeExt as _, symlink};
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

use crate::fixture::program::{Ran, finish, program, run_in};
use crate::fixture::repository::{Repository, git};
use crate::fixture::{Bench, copy};

const SECRET: &str = "swordfish-17";

fn secret_folder() -> tempfile::TempDir {
    let folder = tempfile::tempdir().expect("a temporary folder");
    for name in ["secret.txt", "secret.yaml", "secret.csv", "R001.TXT"] {
        fs::write(folder.path().join(name), format!("{SECRET}: {SECRET}\n")).expect("written");
    }
    folder
}

/// A run that must end soon and say nothing of what it may not read.
fn silent(folder: &Path, args: &[&str]) -> Ran {
    let start = Instant::now();
    let mut command = program(folder, args);
    command.env("A_SECRET_OF_THE_MACHINE", SECRET);
    let ran = finish(command);
    assert!(start.elapsed() < Duration::from_secs(10), "{args:?} takes {:?}", start.elapsed());
    assert!(!ran.out.contains(SECRET) && !ran.err.contains(SECRET), "{}{}", ran.out, ran.err);
    ran
}

/// Makes a folder that git takes for a repository, with settings that run a command for an object it does not have.
fn trap(folder: &Path, mark: &Path) {
    for below in ["objects/info", "objects/pack", "refs/heads", "refs/remotes/origin"] {
        fs::create_dir_all(folder.join(below)).expect("made");
    }
    let run = format!("touch {}", mark.display());
    let config = format!(
        "[core]\n\trepositoryformatversion = 1\n\tbare = true\n\tsshCommand = {run}\n\tfsmonitor = {run}\n\tpager = {run}\n\
         [extensions]\n\tpartialClone = origin\n[remote \"origin\"]\n\turl = ssh://example.invalid/x\n\tpromisor = true\n\
         \tuploadpack = {run}\n"
    );
    fs::write(folder.join("config"), config).expect("written");
    fs::write(folder.join("HEAD"), "ref: refs/heads/main\n").expect("written");
    let missing = "1234567890123456789012345678901234567890\n";
    fs::write(folder.join("refs/heads/main"), missing).expect("written");
    fs::write(folder.join("refs/remotes/origin/main"), missing).expect("written");
}

#[test]
fn a_bare_repository_in_the_network_runs_no_command() {
    for place in [".", "hops", "records"] {
        let repository = Repository::new();
        repository.git(&["update-ref", "refs/remotes/origin/main", "HEAD"]);
        let mark = repository.root().join("ran");
        trap(&repository.path(place), &mark);
        repository.change("hops/ridge.yaml", "height: 8 m", "height: 9.5 m");
        repository.commit("a trap");
        let network = repository.path(place).display().to_string();
        let ran = run_in(repository.root(), &["compare", "--base", "origin/main", "--network", &network]);
        assert!(!mark.exists(), "{place}: a command ran");
        assert_eq!(ran.code, 0, "{}", ran.err);
        assert!(ran.out.contains("height: 8 m → 9.5 m"), "{place}: {}", ran.out);
        let check = run_in(&repository.net(), &["check"]);
        assert_eq!(check.code, 1);
        assert!(check.out.contains("repository-inside"), "{}", check.out);
        assert!(!mark.exists(), "{place}: a command ran");
    }
}

#[test]
fn a_bare_repository_in_the_network_brings_no_base_of_its_own() {
    let repository = Repository::new();
    repository.git(&["update-ref", "refs/remotes/origin/main", "HEAD"]);
    repository.change("hops/ridge.yaml", "transmit_power: 10 dBm", "transmit_power: 60 dBm");
    repository.commit("too much power");
    // A store with a commit of the change itself as its `origin/main`.
    let work = tempfile::tempdir().expect("a temporary folder");
    copy(&repository.net(), work.path());
    git(work.path(), &["init", "-q", "-b", "main"]);
    git(work.path(), &["add", "."]);
    git(work.path(), &["commit", "-qm", "mine"]);
    git(work.path(), &["update-ref", "refs/remotes/origin/main", "HEAD"]);
    git(work.path(), &["config", "core.bare", "true"]);
    copy(&work.path().join(".git"), &repository.net());
    let ran = run_in(&repository.net(), &["compare", "--base", "origin/main", "--fail-on", "regression"]);
    assert_eq!(ran.code, 1, "{}{}", ran.out, ran.err);
    assert!(!ran.out.contains("no computed change"), "{}", ran.out);
}

#[test]
fn a_missing_or_broken_object_is_no_file_that_is_too_large() {
    let repository = Repository::new();
    let blob = repository.git(&["rev-parse", "HEAD:net/hops/ridge.yaml"]);
    let object = repository.root().join(".git/objects").join(&blob[..2]).join(&blob[2..]);
    let bytes = fs::read(&object).expect("loose");
    fs::remove_file(&object).expect("there");
    let refused = |what: &str| {
        let ran = run_in(&repository.net(), &["compare", "HEAD"]);
        assert_eq!((ran.code, ran.out.as_str()), (2, ""), "{what}: {}", ran.err);
        assert!(!ran.err.contains("larger"), "{what}: {}", ran.err);
    };
    refused("missing");
    fs::write(&object, &bytes[..bytes.len() / 2]).expect("written");
    refused("cut");
    fs::write(&object, b"nonsense").expect("written");
    refused("broken");
    fs::write(&object, stored(b"blob 99999999999\0abc")).expect("written");
    refused("claims to be large");
    // One that is as large as it says is too large, and no fault of git.
    fs::remove_file(&object).expect("there");
    repository.write("hops/more.yaml", vec![b'#'; 2 << 20]);
    fs::write(&object, &bytes).expect("written");
    repository.commit("too much");
    let ran = run_in(&repository.net(), &["compare", "HEAD"]);
    assert_ne!(ran.code, 2, "{}", ran.err);
}

/// Bytes as zlib keeps what it does not press: RFC 1950 and 1951.
fn stored(bytes: &[u8]) -> Vec<u8> {
    let length = u16::try_from(bytes.len()).expect("short");
    let (mut low, mut high) = (1_u32, 0_u32);
    for byte in bytes {
        low = (low + u32::from(*byte)) % 65_521;
        high = (high + low) % 65_521;
    }
    let sum = (high << 16 | low).to_be_bytes();
    [&[0x78, 0x01, 0x01][..], &length.to_le_bytes(), &(!length).to_le_bytes(), bytes, &sum].concat()
}

#[test]
fn a_tree_that_repeats_itself_is_not_walked_without_end() {
    let repository = Repository::new();
    for number in 0..2_001 {
        repository.write(&format!("alike/{number}/x.yaml"), "kind: none\n");
    }
    repository.commit("small in git");
    let ran = run_in(&repository.net(), &["compare", "HEAD"]);
    assert_eq!(ran.code, 2, "{}", ran.out);
    assert!(ran.err.contains("stands at more than 2000 places"), "{}", ran.err);
}

#[test]
fn more_documents_than_can_be_counted_are_no_panic() {
    let bench = Bench::new();
    fs::write(bench.path("flood.yaml"), "---\na\n".repeat(65_540)).expect("written");
    let folder = bench.path("");
    let ran = run_in(&folder, &["compare", ".", "."]);
    assert_eq!(ran.code, 0, "{}", ran.err);
}

#[test]
fn replaced_and_borrowed_objects_have_no_say() {
    let repository = Repository::new();
    repository.change("hops/ridge.yaml", "height: 8 m", "height: 9.5 m");
    repository.commit("higher");
    let [old, new] =
        ["HEAD~1", "HEAD"].map(|revision| repository.git(&["rev-parse", &format!("{revision}:net/hops/ridge.yaml")]));
    repository.git(&["replace", &old, &new]);
    let ran = run_in(&repository.net(), &["compare", "HEAD~1", "HEAD"]);
    assert!(ran.out.contains("8 m → 9.5 m"), "{}{}", ran.out, ran.err);
    let other = Repository::new();
    let info = repository.root().join(".git/objects/info");
    fs::create_dir_all(&info).expect("made");
    fs::write(info.join("alternates"), other.root().join(".git/objects").display().to_string()).expect("written");
    let ran = run_in(&repository.net(), &["compare", "HEAD~1", "HEAD"]);
    assert_eq!(ran.code, 2);
    assert!(ran.err.contains("borrows objects"), "{}", ran.err);
}

#[test]
fn surroundings_do_not_lead_git_elsewhere() {
    let [ours, theirs] = [Repository::new(), Repository::new()];
    ours.change("hops/ridge.yaml", "height: 8 m", "height: 9.5 m");
    ours.commit("higher");
    let mut command = program(&ours.net(), &["compare", "HEAD~1", "HEAD"]);
    command.env("GIT_DIR", theirs.root().join(".git")).env("GIT_OBJECT_DIRECTORY", theirs.root().join(".git/objects"));
    let ran = finish(command);
    assert!(ran.out.contains("8 m → 9.5 m"), "{}{}", ran.out, ran.err);
}

#[test]
fn links_of_yaml_show_nothing_from_outside() {
    let secrets = secret_folder();
    for target in
        [secrets.path().join("secret.yaml"), "/proc/self/environ".into(), "/proc/kmsg".into(), "/dev/zero".into()]
    {
        let repository = Repository::new();
        symlink(&target, repository.path("hops/env.yaml")).expect("linked");
        let ran = silent(&repository.net(), &["check"]);
        assert_eq!(ran.code, 1, "{}", ran.out);
        assert!(ran.out.contains("hops/env.yaml") && ran.out.contains("leads out of"), "{}", ran.out);
        // Neither without a repository.
        let bench = Bench::new();
        fs::remove_dir(bench.path(".git")).expect("there");
        symlink(&target, bench.path("hops/env.yaml")).expect("linked");
        let ran = silent(&bench.path(""), &["check"]);
        assert!(ran.code == 1 && ran.out.contains("leads out of"), "{}", ran.out);
    }
}

#[test]
fn links_of_folders_lead_nowhere_outside() {
    for target in ["/usr", "/", "/proc/self/root"] {
        let repository = Repository::new();
        symlink(target, repository.path("more")).expect("linked");
        let ran = silent(&repository.net(), &["check"]);
        assert_eq!(ran.code, 1);
        assert!(ran.out.contains("more") && ran.out.contains("leads out of"), "{}", ran.out);
    }
    // The folder that is named may be such a link too.
    let secrets = secret_folder();
    let repository = Repository::new();
    symlink(secrets.path(), repository.root().join("linked")).expect("linked");
    let ran = silent(repository.root(), &["check", "linked"]);
    assert_ne!(ran.code, 0);
    let ran = silent(repository.root(), &["check", "linked/secret.yaml"]);
    assert_ne!(ran.code, 0);
}

#[test]
fn profiles_tiles_and_maps_show_nothing_from_outside() {
    let secrets = secret_folder();
    let absolute = secrets.path().display().to_string();
    let with = |change: &dyn Fn(&Repository)| {
        let repository = Repository::new();
        change(&repository);
        let ran = silent(&repository.net(), &["check"]);
        assert_eq!(ran.code, 1, "{}{}", ran.out, ran.err);
    };
    let hop = |repository: &Repository, name: &str| {
        let text = fs::read_to_string(repository.path("hops/ridge.yaml")).expect("there");
        let text: String = text.split_inclusive('\n').filter(|line| !line.starts_with("path:")).collect();
        repository.write("hops/ridge.yaml", format!("{text}path: {{ csv: \"{name}\" }}\n"));
    };
    with(&|repository| hop(repository, &format!("{absolute}/secret.csv")));
    with(&|repository| hop(repository, &format!("../../../../../../../../..{absolute}/secret.csv")));
    with(&|repository| {
        symlink(secrets.path().join("secret.csv"), repository.path("p.csv")).expect("linked");
        hop(repository, "../p.csv");
    });
    with(&|repository| {
        repository.git(&["config", "credential.helper", SECRET]);
        hop(repository, "../../.git/config");
    });
    let network =
        |repository: &Repository, text: &str| repository.change("network.yaml", "codes:", &format!("{text}\ncodes:"));
    with(&|repository| network(repository, &format!("terrain: {{ folder: \"{absolute}\" }}")));
    with(&|repository| {
        repository.write("tiles/readme", "");
        symlink(secrets.path().join("secret.txt"), repository.path("tiles/N54W033.hgt")).expect("linked");
        network(repository, "terrain: { folder: tiles }");
    });
    let rain = |repository: &Repository, name: &str| {
        repository.change("network.yaml", "rain_rate: 22 mm/h", &format!("rain_map: \"{name}\""));
    };
    with(&|repository| rain(repository, &absolute));
    with(&|repository| {
        symlink(secrets.path(), repository.path("map")).expect("linked");
        rain(repository, "map");
    });
}

#[test]
fn a_baseline_that_leads_outside_shows_nothing() {
    let secrets = secret_folder();
    let repository = Repository::new();
    symlink(secrets.path().join("secret.txt"), repository.path("base.json")).expect("linked");
    symlink("/dev/zero", repository.path("endless.json")).expect("linked");
    for name in ["base.json", "endless.json"] {
        assert_eq!(silent(&repository.net(), &["check", "--baseline", name]).code, 2);
    }
}

#[test]
fn a_pipe_in_a_network_holds_nobody_up() {
    let repository = Repository::new();
    rustix::fs::mkfifoat(rustix::fs::CWD, repository.path("hops/pipe.yaml"), rustix::fs::Mode::from(0o600))
        .expect("made");
    let ran = silent(&repository.net(), &["check"]);
    assert!(ran.code == 1 && ran.out.contains("not a regular file"), "{}", ran.out);
}

#[test]
fn mends_are_not_written_through_a_link_that_leads_out() {
    let bench = Bench::new();
    bench.change("hops/ridge.yaml", "height: 8 m", "height: 8 metres");
    let outside = tempfile::tempdir().expect("a temporary folder");
    let target = outside.path().join("ridge.yaml");
    fs::rename(bench.path("hops/ridge.yaml"), &target).expect("moved");
    let before = fs::read(&target).expect("there");
    symlink(&target, bench.path("hops/ridge.yaml")).expect("linked");
    assert_ne!(silent(&bench.path(""), &["check", "--fix"]).code, 0);
    assert_eq!(fs::read(&target).expect("there"), before);
}

#[test]
fn outputs_do_not_follow_links_out_of_the_checkout() {
    let outside = tempfile::tempdir().expect("a temporary folder");
    let repository = Repository::new();
    symlink(outside.path(), repository.path("packs")).expect("linked");
    let ran = run_in(&repository.net(), &["schema", "--out", "packs"]);
    assert_eq!(ran.code, 2, "{}", ran.out);
    assert!(ran.err.contains("leads out of"), "{}", ran.err);
    let ran = run_in(&repository.net(), &["check", "--output", "json=packs/more/report.json"]);
    assert_eq!(ran.code, 2, "{}", ran.out);
    assert_eq!(fs::read_dir(outside.path()).expect("there").count(), 0);
    // A link in the place of a file is replaced, and what it led to stays as it is.
    let victim = outside.path().join("victim");
    fs::write(&victim, "mine").expect("written");
    symlink(&victim, repository.path("report.json")).expect("linked");
    assert_ne!(run_in(&repository.net(), &["check", "--output", "json=report.json"]).code, 2);
    assert_eq!(fs::read_to_string(&victim).expect("there"), "mine");
    assert!(!repository.path("report.json").is_symlink());
    // Nor does a link to a pipe or a device outside lead out.
    let pipe = outside.path().join("pipe");
    rustix::fs::mkfifoat(rustix::fs::CWD, &pipe, rustix::fs::Mode::from(0o600)).expect("made");
    for (name, to) in [("pipe.json", pipe.as_path()), ("null.json", Path::new("/dev/null"))] {
        symlink(to, repository.path(name)).expect("linked");
        let ran = run_in(&repository.net(), &["check", "-qq", "--output", &format!("json={name}")]);
        assert!(ran.code == 2 && ran.err.contains("leads out of"), "{name}: {}", ran.err);
    }
}

#[test]
fn what_is_no_regular_file_is_written_into() {
    let repository = Repository::new();
    let null = run_in(&repository.net(), &["check", "-qq", "--output", "json=/dev/null"]);
    assert_eq!(null.code, 0, "{}", null.err);
    assert!(fs::metadata("/dev/null").expect("there").file_type().is_char_device());
    let out = run_in(&repository.net(), &["check", "-qq", "--output", "json=/dev/stdout"]);
    assert!(out.out.starts_with('{'), "{}{}", out.out, out.err);
    assert!(fs::symlink_metadata("/dev/stdout").expect("there").is_symlink());
    let pipe = repository.path("pipe");
    rustix::fs::mkfifoat(rustix::fs::CWD, &pipe, rustix::fs::Mode::from(0o600)).expect("made");
    let reader = std::thread::spawn({
        let pipe: PathBuf = pipe.clone();
        move || fs::read_to_string(pipe).expect("read")
    });
    assert_eq!(run_in(&repository.net(), &["check", "-qq", "--output", "json=pipe"]).code, 0);
    assert!(reader.join().expect("read").starts_with('{'));
    assert!(fs::metadata(&pipe).expect("there").file_type().is_fifo());
}

#[test]
fn parts_of_a_killed_run_are_cleared_and_those_of_a_living_one_are_not() {
    let repository = Repository::new();
    let out = repository.root().join("out");
    fs::create_dir(&out).expect("made");
    let dead = out.join(".hopwright-4194999-abcdefabcdef.part");
    let living = out.join(format!(".hopwright-{}-abcdefabcdef.part", std::process::id()));
    let other = out.join("letter.part");
    for file in [&dead, &living, &other] {
        fs::write(file, "half").expect("written");
    }
    assert_eq!(run_in(repository.root(), &["schema", "--out", "out"]).code, 0);
    assert!(!dead.exists() && living.exists() && other.exists());
    let left = fs::read_dir(&out).expect("there").flatten();
    assert_eq!(left.filter(|entry| entry.file_name().to_string_lossy().ends_with(".part")).count(), 2);
}

#[test]
fn two_ends_do_not_share_the_file_of_a_pack() {
    let bench = Bench::new();
    let sites = ["sites/scar.yaml", "sites/mill.yaml"];
    for (file, id) in sites.into_iter().zip(["b-quay", "quay"]) {
        let text = fs::read_to_string(bench.path(file)).expect("there");
        let old = text.lines().find_map(|line| line.strip_prefix("id: ")).expect("an id").to_owned();
        fs::write(bench.path(file), text.replace(&format!("id: {old}"), &format!("id: {id}"))).expect("written");
        let hop = fs::read_to_string(bench.path("hops/ridge.yaml")).expect("there");
        fs::write(bench.path("hops/ridge.yaml"), hop.replace(&format!("site: {old}"), &format!("site: {id}")))
            .expect("written");
    }
    let hop = fs::read_to_string(bench.path("hops/ridge.yaml")).expect("there");
    let id = hop.lines().find(|line| line.starts_with("id: ")).expect("an id").to_owned();
    for name in ["x", "x-a"] {
        fs::write(bench.path(&format!("hops/{name}.yaml")), hop.replace(&id, &format!("id: {name}"))).expect("written");
    }
    for args in [&["pack", "install", "x", "x-a", "--draft"][..], &["pack", "install", "x", "--draft"]] {
        let ran = run_in(&bench.path(""), args);
        assert_eq!(ran.code, 2, "{}{}", ran.out, ran.err);
        assert!(ran.err.contains("two packs would be called"), "{}", ran.err);
    }
}

#[test]
fn a_column_that_stands_twice_is_no_panic() {
    let bench = Bench::new();
    let text = fs::read_to_string(bench.path("hops/ridge.yaml")).expect("there");
    let text: String = text.split_inclusive('\n').filter(|line| !line.starts_with("path:")).collect();
    fs::write(bench.path("hops/ridge.yaml"), text + "path: { csv: ../p.csv }\n").expect("written");
    let header = "distance [m],ground [m],obstacle [m],kind,kind,kind\n0,1,2,trees,trees,trees\n5,1,,,,\n";
    fs::write(bench.path("p.csv"), header).expect("written");
    let ran = silent(&bench.path(""), &["check"]);
    assert!(ran.code == 1 && ran.out.contains("duplicate column `kind`"), "{}{}", ran.out, ran.err);
}

#[test]
fn a_pattern_of_paths_takes_no_time() {
    let repository = Repository::new();
    let name = "a".repeat(200);
    repository.write(&format!("hops/{name}.yaml"), "kind: hop\nid: x\n");
    let pattern = "*a".repeat(30) + "b/*.yaml";
    repository.change(
        "network.yaml",
        "codes:",
        &format!("exclude: [\"{pattern}\"]\nrules_by_path:\n  - paths: \"{pattern}\"\n    rules: {{ key-missing: off }}\ncodes:"),
    );
    repository.write(".gitignore", &pattern);
    silent(&repository.net(), &["check"]);
}

#[test]
fn links_among_folders_do_not_multiply() {
    let repository = Repository::new();
    for n in 0..12 {
        let folder = repository.path(&format!("deep/f{n}"));
        fs::create_dir_all(&folder).expect("made");
        for other in 0..12 {
            symlink(format!("../f{other}"), folder.join(format!("l{other}"))).expect("linked");
        }
    }
    silent(&repository.net(), &["check"]);
}

#[test]
fn a_gitignore_hides_no_hop_that_git_tracks() {
    let repository = Repository::new();
    repository.write(".gitignore", "hops/\n");
    for (name, committed) in [("first", false), ("second", true)] {
        if committed {
            repository.commit("nothing to see here");
        }
        let ran = run_in(&repository.net(), &["compare", "HEAD"]);
        // The revision has the hop, whatever it says of itself; here it is gone.
        assert!(ran.out.contains("1 removed"), "{name}: {}", ran.out);
        assert!(
            words(&ran.out).contains("passed over by `.gitignore` or `exclude` on one side only: hops"),
            "{}",
            ran.out
        );
    }
    let between = run_in(&repository.net(), &["compare", "HEAD~1", "HEAD"]);
    assert!(between.out.starts_with("no computed change: 1 hop unchanged"), "{}", between.out);
    for (pattern, counted) in
        [("hops/\n", "1 folder"), ("ridge.yaml\n", "1 YAML file"), ("*.yaml\n!network.yaml\n", "YAML files")]
    {
        repository.write(".gitignore", pattern);
        let ran = run_in(&repository.net(), &["check"]);
        assert!(ran.out.contains(&format!("{counted} passed over (`-v` names")), "{pattern}: {}", ran.out);
    }
}

/// A text with all its white space made single spaces.
fn words(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}
