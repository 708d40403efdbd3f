//! One door for bytes: what is judged is one state of a network, wherever it is read from.

use std::fs;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use hopwright::door::{Folder, Git, Overlay, Revision, Store};
use hopwright::network::{Scope, load};

use crate::fixture::program::{Ran, run_in, run_on};
use crate::fixture::repository::{Repository, git};
use crate::fixture::{Bench, copy, tests_folder};

fn example(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("examples").join(name)
}

fn compare(repository: &Repository, args: &[&str]) -> Ran {
    let ran = run_in(&repository.net(), &[&["compare"], args].concat());
    assert!(ran.code < 3, "{}", ran.err);
    ran
}

fn changes(ran: &Ran) -> bool {
    assert_eq!((ran.code, ran.err.as_str()), (0, ""), "{}", ran.out);
    !ran.out.starts_with("no computed change")
}

/// The ground of a profile raised at every point but the ends.
fn raised(text: &str) -> String {
    let lines: Vec<&str> = text.lines().collect();
    let points: Vec<usize> =
        (0..lines.len()).filter(|at| lines[*at].starts_with(|c: char| c.is_ascii_digit())).collect();
    let raise = |(at, line): (usize, &&str)| {
        if !points[1..points.len() - 1].contains(&at) {
            return format!("{line}\n");
        }
        let mut cells: Vec<String> = line.split(',').map(str::to_owned).collect();
        cells[1] = format!("{:.2}", cells[1].parse::<f64>().expect("a height") + 0.5);
        cells.join(",") + "\n"
    };
    lines.iter().enumerate().map(raise).collect()
}

const PROFILE: &str = "profiles/crane4-pier.csv";

#[test]
fn a_profile_file_is_read_from_the_revision_that_is_asked_for() {
    let repository = Repository::with(&example("saltmere"));
    let text = fs::read_to_string(repository.path(PROFILE)).expect("there");
    repository.write(PROFILE, raised(&text));
    repository.commit("the ground is higher");
    let ran = compare(&repository, &["HEAD~1", "HEAD"]);
    assert!(changes(&ran) && ran.out.contains("profiles/crane4-pier.csv:4") && !ran.out.contains("[?]"), "{}", ran.out);
    assert!(changes(&compare(&repository, &["HEAD~1"])));
    // The working tree says what HEAD says, then something else.
    assert!(!changes(&compare(&repository, &["HEAD"])));
    repository.write(PROFILE, text);
    assert!(changes(&compare(&repository, &["HEAD"])));
    assert!(!changes(&compare(&repository, &["HEAD~1"])));
}

#[test]
fn a_profile_file_that_is_deleted_later_is_there_in_its_revision() {
    let repository = Repository::with(&example("saltmere"));
    repository.change("hops/crane4-pier.yaml", "  csv: ../profiles/crane4-pier.csv\n", "");
    fs::remove_file(repository.path(PROFILE)).expect("there");
    repository.commit("no profile");
    let ran = compare(&repository, &["HEAD~1", "HEAD"]);
    assert!(changes(&ran) && !ran.out.contains("cannot be read"), "{}", ran.out);
}

#[test]
fn mends_are_made_in_a_network_that_has_profile_files() {
    let repository = Repository::with(&example("saltmere"));
    repository.change("hops/crane4-pier.yaml", "height: 103 ft", "height: 103 feet");
    let before = fs::read(repository.path(PROFILE)).expect("there");
    let ran = run_in(&repository.net(), &["check", "--fix"]);
    assert!(ran.err.contains("applied in 1 file"), "{}{}", ran.out, ran.err);
    assert!(!fs::read_to_string(repository.path("hops/crane4-pier.yaml")).expect("there").contains("feet"));
    assert_eq!(fs::read(repository.path(PROFILE)).expect("there"), before);
}

/// Tiles of a plane under the base network, at some height.
fn tile(repository: &Repository, height: i16) {
    let row = |row: i16| (0..1201).flat_map(move |_| (height - 10 * (row / 100)).to_be_bytes());
    repository.write("tiles/N54W033.hgt", (0..1201).flat_map(row).collect::<Vec<u8>>());
}

#[test]
fn tiles_are_read_from_the_revision_and_said_not_to_be_there_if_they_are_not() {
    let repository = Repository::new();
    repository.change("network.yaml", "codes:", "terrain: { folder: tiles }\ncodes:");
    repository.commit("terrain without tiles");
    tile(&repository, 300);
    let absent = compare(&repository, &["HEAD", "--all"]).out.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(absent.contains("it is not in git at revision `HEAD`"), "{absent}");
    repository.commit("tiles");
    tile(&repository, 310);
    repository.commit("higher tiles");
    assert!(!changes(&compare(&repository, &["HEAD"])));
    assert!(changes(&compare(&repository, &["HEAD~1", "HEAD"])));
}

/// The three texts of a rain map with one rate everywhere.
fn map(folder: &Path, rate: &str) {
    let rows: Vec<(f64, f64)> =
        [56.0, 54.0, 52.0].iter().flat_map(|lat| [-34.0, -32.0, -30.0].map(|lon| (*lat, lon))).collect();
    let text = |of: &dyn Fn(&(f64, f64)) -> String| -> String {
        rows.chunks(3).map(|row| row.iter().map(of).collect::<Vec<_>>().join(" ") + "\n").collect()
    };
    fs::create_dir_all(folder).expect("made");
    for (name, text) in [
        ("R001.TXT", text(&|_| rate.to_owned())),
        ("Lat_R001.TXT", text(&|(lat, _)| lat.to_string())),
        ("Lon_R001.TXT", text(&|(_, lon)| lon.to_string())),
    ] {
        fs::write(folder.join(name), text).expect("written");
    }
}

#[test]
fn a_rain_map_is_read_from_the_revision() {
    let repository = Repository::new();
    repository.change("network.yaml", "rain_rate: 22 mm/h", "rain_map: map");
    map(&repository.path("map"), "22");
    repository.commit("a map");
    map(&repository.path("map"), "42");
    repository.commit("more rain");
    let ran = compare(&repository, &["HEAD~1", "HEAD", "--format", "json"]);
    assert!(ran.out.contains("path.rain_rate"), "{}", ran.out);
    assert!(!changes(&compare(&repository, &["HEAD"])));
}

#[test]
fn data_outside_is_named_on_the_command_line() {
    let repository = Repository::new();
    let outside = tempfile::tempdir().expect("a temporary folder");
    map(outside.path(), "42");
    let folder = outside.path().display().to_string();
    repository.change("network.yaml", "rain_rate: 22 mm/h", &format!("rain_map: {folder}"));
    let refused = run_in(&repository.net(), &["check"]);
    assert_eq!(refused.code, 1);
    assert!(refused.out.contains("--rain-map"), "{}", refused.out);
    let brought = run_in(&repository.net(), &["sheet", "--full", "--rain-map", &folder]);
    assert!(brought.code == 0 && brought.out.contains("42.0 mm/h"), "{}{}", brought.out, brought.err);
}

#[test]
fn data_named_on_the_command_line_that_is_not_there_stops_the_command() {
    let bench = Bench::new();
    let empty = tempfile::tempdir().expect("a temporary folder");
    let folder = empty.path().display().to_string();
    for (option, holds) in [("--terrain", "no `.hgt` and no `.tif`"), ("--rain-map", "`R001.TXT` cannot be read")] {
        for (name, words) in [("nowhere", "no such file or folder"), (&folder, holds)] {
            for command in
                [&["check"][..], &["sheet"], &["pack", "design", "--out", "out"], &["baseline", "create", "known"]]
            {
                let ran = run_in(&bench.path(""), &[command, &[option, name]].concat());
                assert_eq!((ran.code, ran.out.as_str()), (2, ""), "{command:?} {option} {name}");
                let start = format!("{option} {name}: ");
                assert!(ran.err.contains(&start) && ran.err.contains(words), "{command:?}: {}", ran.err);
            }
        }
    }
}

#[test]
fn data_named_on_the_command_line_is_said_to_be_the_same_on_both_sides() {
    let repository = Repository::new();
    let outside = tempfile::tempdir().expect("a temporary folder");
    map(outside.path(), "42");
    let folder = outside.path().display().to_string();
    repository.change("network.yaml", "rain_rate: 22 mm/h", "rain_map: map");
    map(&repository.path("map"), "22");
    repository.commit("a map");
    map(&repository.path("map"), "30");
    let said = "is taken as it is now for both sides";
    for form in ["text", "markdown", "json"] {
        let brought = compare(&repository, &["HEAD", "--format", form, "--rain-map", &folder, "--width", "400"]);
        assert!(brought.out.contains(said) && brought.out.contains("--rain-map"), "{}", brought.out);
        assert!(brought.out.contains("no computed change"), "{}", brought.out);
        let own = compare(&repository, &["HEAD", "--format", form]);
        assert!(!own.out.contains(said) && !own.out.contains("no computed change"), "{}", own.out);
    }
}

#[cfg(unix)]
#[test]
fn a_linked_folder_is_followed_inside_the_repository_on_both_sides() {
    let repository = Repository::new();
    fs::rename(repository.path("equipment"), repository.root().join("shared")).expect("moved");
    std::os::unix::fs::symlink("../shared", repository.path("equipment")).expect("linked");
    repository.commit("equipment is shared");
    assert!(!changes(&compare(&repository, &["HEAD"])));
    assert!(!changes(&compare(&repository, &["HEAD~1", "HEAD"])));
    let cable = repository.root().join("shared/radio.yaml");
    let radio = if cable.exists() { cable } else { first_with(&repository.root().join("shared"), "kind: radio") };
    let text = fs::read_to_string(&radio).expect("there");
    fs::write(&radio, text.replace("draw: ", "draw: 1")).expect("written");
    repository.commit("more draw");
    let ran = compare(&repository, &["HEAD~1", "HEAD", "--all"]);
    assert!(changes(&ran), "{}", ran.out);
}

fn first_with(folder: &Path, words: &str) -> PathBuf {
    let mut files: Vec<PathBuf> =
        fs::read_dir(folder).expect("there").map(|entry| entry.expect("entry").path()).collect();
    files.sort();
    files.into_iter().find(|file| fs::read_to_string(file).is_ok_and(|text| text.contains(words))).expect("a file")
}

#[test]
fn a_submodule_is_refused_and_never_taken_for_no_change() {
    let repository = Repository::new();
    let other = tempfile::tempdir().expect("a temporary folder");
    copy(&repository.path("equipment"), other.path());
    git(other.path(), &["init", "-q", "-b", "main"]);
    git(other.path(), &["add", "."]);
    git(other.path(), &["commit", "-qm", "equipment"]);
    fs::remove_dir_all(repository.path("equipment")).expect("there");
    repository.commit("no equipment");
    repository.git(&["submodule", "--quiet", "add", &other.path().display().to_string(), "net/equipment"]);
    repository.commit("equipment is a submodule");
    repository.commit("another");
    // The working tree has its files.
    assert_eq!(run_in(&repository.net(), &["check"]).code, 0);
    for args in [&["HEAD~1", "HEAD"][..], &["HEAD"]] {
        let ran = compare(&repository, args);
        assert_eq!((ran.code, ran.out.as_str()), (2, ""));
        assert!(ran.err.contains("submodule"), "{}", ran.err);
    }
}

#[test]
fn a_network_file_in_capitals_is_found_from_above_and_from_below() {
    let bench = Bench::new();
    fs::rename(bench.path("network.yaml"), bench.path("network.YAML")).expect("moved");
    for path in ["", "hops", "hops/ridge.yaml"] {
        let evaluation = hopwright::verdict::evaluate(&Scope::of(&[bench.path(path)]), |_, _| ());
        assert_eq!((evaluation.findings.len(), evaluation.hops.len()), (0, 1), "{path}");
    }
}

#[test]
fn a_network_file_that_breaks_off_is_still_that_of_its_folder() {
    let bench = Bench::new();
    bench.change("network.yaml", "title: ", "title: [");
    let findings = bench.judge().findings;
    let names: Vec<&str> = findings.iter().map(|finding| finding.rule.name).collect();
    assert_eq!(names, ["hop-not-evaluated", "yaml-malformed"]);
}

#[test]
fn what_gitignore_and_exclude_name_is_passed_over() {
    let bench = Bench::new();
    let broken = "kind: hop\nid: [\n";
    for file in ["drafts/x.yaml", "build/y.yaml", "build/keep.yaml", "hops/old.yaml", "deep/drafts/z.yaml"] {
        fs::create_dir_all(bench.path(file).parent().expect("a folder")).expect("made");
        fs::write(bench.path(file), broken).expect("written");
    }
    let seen = || -> Vec<String> {
        let mut paths: Vec<String> = bench
            .judge()
            .findings
            .iter()
            .filter_map(|finding| {
                let files = finding.labels.first()?.spot.file()?;
                Some(files.0.to_string())
            })
            .collect();
        paths.dedup();
        paths
    };
    assert_eq!(seen().len(), 5);
    fs::write(bench.path(".gitignore"), "build/*\n!build/keep.yaml\n").expect("written");
    assert_eq!(seen().len(), 4);
    bench.change("network.yaml", "codes:", "exclude: [drafts/, hops/old.yaml]\ncodes:");
    assert_eq!(seen().len(), 1);
    let used = run_in(&bench.path(""), &["check", "-v"]);
    for name in ["build/y.yaml", "drafts", "hops/old.yaml"] {
        assert!(
            used.err.contains(&format!("passed over by `.gitignore` or `exclude`: {name}")),
            "{name}: {}",
            used.err
        );
    }
}

#[test]
fn a_network_further_down_passes_over_what_it_says_itself() {
    let bench = Bench::new();
    copy(&tests_folder().join("rules/base"), &bench.path("more"));
    bench.change("more/network.yaml", "codes:", "exclude: [drafts/]\ncodes:");
    for folder in ["drafts", "more/drafts"] {
        fs::create_dir_all(bench.path(folder)).expect("made");
        fs::write(bench.path(folder).join("x.yaml"), "kind: nonsense\n").expect("written");
    }
    let findings = bench.judge().findings;
    assert_eq!(findings.len(), 1, "{findings:?}");
}

#[test]
fn a_folder_without_a_network_is_not_searched_for_documents() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    fs::create_dir(folder.path().join(".git")).expect("made");
    copy(&tests_folder().join("rules/base"), &folder.path().join("nets/fell"));
    fs::create_dir(folder.path().join("secrets")).expect("made");
    fs::write(folder.path().join("secrets/values.yaml"), "password: swordfish\n").expect("written");
    let ran = run_in(folder.path(), &["check"]);
    assert_eq!(ran.code, 1);
    assert!(ran.out.contains("networks here: nets/fell"), "{}", ran.out);
    assert!(!ran.out.contains("swordfish") && !ran.out.contains("password"), "{}", ran.out);
    let alone = run_in(folder.path(), &["check", "secrets/values.yaml"]);
    assert!(!alone.out.contains("swordfish"), "{}", alone.out);
    // In a network it is a finding.
    fs::write(folder.path().join("nets/fell/values.yaml"), "password: swordfish\n").expect("written");
    assert_eq!(run_in(folder.path(), &["check", "nets/fell"]).code, 1);
}

#[test]
fn a_text_on_stdin_may_stand_in_a_folder_that_is_not_there_yet() {
    let bench = Bench::new();
    let text = fs::read_to_string(bench.path("hops/ridge.yaml")).expect("there");
    fs::remove_dir_all(bench.path("hops")).expect("there");
    let ran = run_on(&bench.path(""), &["check", "-", "--stdin-filename", "more/deep/ridge.yaml"], &text);
    assert_eq!(ran.code, 0, "{}{}", ran.out, ran.err);
    assert!(ran.out.contains("1 hop"), "{}", ran.out);
}

#[test]
fn sixty_thousand_files_are_no_fault() {
    let bench = Bench::new();
    let under: Arc<dyn Store> = Arc::new(Folder::around(&bench.path("")));
    let texts = (0..60_000).map(|n| {
        let text: Arc<str> = format!("kind: site\nid: s{n}\n").into();
        (bench.path(&format!("many/{n}.yaml")), text)
    });
    let store = Arc::new(Overlay::over(under, texts));
    let loaded = load(&Scope::in_store(&bench.path(""), store));
    assert!(loaded.files.list.len() > 60_000);
    assert!(!loaded.findings.iter().any(|finding| finding.rule.name == "input-too-large"));
}

#[test]
fn a_profile_file_that_many_hops_name_is_read_once() {
    let bench = Bench::new();
    let hop = fs::read_to_string(bench.path("hops/ridge.yaml")).expect("there");
    let id = hop.lines().find(|line| line.starts_with("id: ")).expect("an id").to_owned();
    let hop = hop.lines().filter(|line| !line.starts_with("path:")).collect::<Vec<_>>().join("\n");
    for n in 0..20 {
        let text = format!("{}\npath: {{ csv: ../p.csv }}\n", hop.replace(&id, &format!("id: h{n}")));
        fs::write(bench.path(&format!("hops/h{n}.yaml")), text).expect("written");
    }
    fs::write(bench.path("p.csv"), "distance [m],ground [m]\n0,850\n2961,350\n").expect("written");
    let loaded = load(&Scope::of(&[bench.path("")]));
    assert_eq!(loaded.files.list.iter().filter(|file| file.path.ends_with("p.csv")).count(), 1);
    assert_eq!(loaded.libraries[0].profiles.len(), 20);
    // What is wrong with it is said once.
    fs::write(bench.path("p.csv"), "distance [m],ground [m]\n0,850\nx,350\n").expect("written");
    let loaded = load(&Scope::of(&[bench.path("")]));
    let said = loaded.findings.iter().filter(|finding| finding.message.contains("`x` is not a number")).count();
    assert_eq!(said, 1);
}

#[test]
fn files_of_a_revision_that_are_asked_for_ahead_are_read_as_they_are() {
    let repository = Repository::new();
    let twin = fs::read(repository.path("network.yaml")).expect("there");
    repository.write("notes/twin.yaml", twin);
    repository.write("notes/large.yaml", "x".repeat(5000));
    repository.commit("more files");
    let git = Git::around(&repository.net(), "HEAD").expect("git");
    let store = Revision::of(&repository.net(), &git, "HEAD", "HEAD").expect("a revision");
    let names = ["network.yaml", "notes/twin.yaml", "notes/large.yaml", "not/there.yaml", "hops/ridge.yaml", "hops"];
    let paths = names.map(|name| repository.path(name)).to_vec();
    let read = || -> Vec<Result<Vec<u8>, String>> {
        paths.iter().map(|path| store.read(path, 4096).map_err(|refused| refused.detail)).collect()
    };
    let alone = read();
    assert_eq!(alone.iter().map(Result::is_ok).collect::<Vec<_>>(), [true, true, false, false, true, false]);
    store.expect(&paths, 4096);
    assert_eq!(read(), alone, "asked for ahead");
    assert_eq!(read(), alone, "and once more");
    assert_eq!(store.failure(), None);
}
