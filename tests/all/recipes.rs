//! The recipes for CI, run: every command of theirs, on a network in a repository, with what a forge would give.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use crate::fixture::{copy, tests_folder};
use hopwright::source::{parse, to_value};
use serde_json::Value;
use tempfile::TempDir;

fn recipe(name: &str) -> Value {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("examples/ci").join(name);
    let text = fs::read_to_string(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
    let parsed = parse(&text);
    assert_eq!((parsed.faults, parsed.documents.len()), (Vec::new(), 1), "{name}");
    let document = &parsed.documents[0];
    serde_json::to_value(to_value(document, document.root())).expect("plain values")
}

/// A step with a command.
struct Step {
    name: String,
    script: String,
    env: BTreeMap<String, String>,
    folder: String,
}

/// The commands of a recipe, each with what is set for it.
fn steps(recipe: &Value) -> Vec<Step> {
    let text = |value: &Value| value.as_str().unwrap_or_default().to_owned();
    let set = |value: &Value| -> BTreeMap<String, String> {
        value
            .as_object()
            .map(|set| set.iter().map(|(name, value)| (name.clone(), text(value))).collect())
            .unwrap_or_default()
    };
    let mut list = Vec::new();
    for job in recipe["jobs"].as_object().expect("jobs").values() {
        for step in job["steps"].as_array().expect("steps").iter().filter(|step| step["run"].is_string()) {
            let env = set(&recipe["env"]).into_iter().chain(set(&step["env"])).collect();
            let folder = text(&step["working-directory"]);
            list.push(Step { name: text(&step["name"]), script: text(&step["run"]), env, folder });
        }
    }
    list
}

/// A clone of a repository with the base network, on a branch that raises one antenna; a folder of programs before all others.
struct Forge {
    folder: TempDir,
}

impl Forge {
    fn new() -> Self {
        let forge = Self { folder: tempfile::tempdir().expect("a temporary folder") };
        let origin = forge.path("origin");
        copy(&tests_folder().join("rules/base"), &origin);
        let git = |folder: &Path, args: &[&str]| {
            let mut command = Command::new("git");
            command.current_dir(folder).args(args).env("GIT_CONFIG_GLOBAL", "/dev/null");
            for name in ["AUTHOR", "COMMITTER"] {
                command
                    .env(format!("GIT_{name}_NAME"), "Tester")
                    .env(format!("GIT_{name}_EMAIL"), "tester@example.invalid");
            }
            let output = command.output().expect("git starts");
            assert!(output.status.success(), "git {args:?}: {}", String::from_utf8_lossy(&output.stderr));
        };
        git(&origin, &["init", "-q", "-b", "main"]);
        git(&origin, &["add", "."]);
        git(&origin, &["commit", "-qm", "base"]);
        git(forge.folder.path(), &["clone", "-q", "origin", "clone"]);
        let clone = forge.path("clone");
        git(&clone, &["switch", "-qc", "work"]);
        let hop = clone.join("hops/ridge.yaml");
        let text = fs::read_to_string(&hop).expect("there").replace("height: 8 m", "height: 8.5 m");
        fs::write(hop, text).expect("written");
        git(&clone, &["commit", "-qam", "higher"]);
        for own in ["bin", "temp"] {
            fs::create_dir(forge.path(own)).expect("made");
        }
        forge.program("hopwright", &format!("exec '{}' \"$@\"\n", env!("CARGO_BIN_EXE_hopwright")));
        forge
    }

    fn path(&self, inside: &str) -> PathBuf {
        self.folder.path().join(inside)
    }

    /// A program on the path.
    fn program(&self, name: &str, script: &str) {
        let path = self.path("bin").join(name);
        fs::write(&path, format!("#!/bin/sh\n{script}")).expect("written");
        #[cfg(unix)]
        {
            use std::os::unix::fs::PermissionsExt as _;
            fs::set_permissions(&path, fs::Permissions::from_mode(0o755)).expect("set");
        }
    }

    /// Runs a step as a forge does: a shell that stops at the first failure, in the clone. Exit code and both outputs.
    fn run(&self, script: &str, env: &BTreeMap<String, String>) -> (i32, String) {
        let path = std::env::var("PATH").unwrap_or_default();
        let mut shell = Command::new("bash");
        shell.args(["-e", "-o", "pipefail", "-c", script]).current_dir(self.path("clone"));
        shell
            .envs(env)
            .env("RUNNER_TEMP", self.path("temp"))
            .env("PATH", format!("{}:{path}", self.path("bin").display()));
        let output = shell.output().expect("bash starts");
        let said = [output.stdout, output.stderr].map(|bytes| String::from_utf8(bytes).expect("UTF-8")).concat();
        (output.status.code().expect("a code"), said)
    }
}

/// Whether `check` knows an option: a recipe may be ahead of it.
fn check_knows(option: &str) -> bool {
    let help = Command::new(env!("CARGO_BIN_EXE_hopwright")).args(["check", "--help"]).output().expect("it starts");
    String::from_utf8_lossy(&help.stdout).contains(option)
}

fn step<'s>(steps: &'s [Step], name: &str) -> &'s Step {
    steps.iter().find(|step| step.name == name).unwrap_or_else(|| panic!("no step {name}"))
}

#[test]
fn the_check_recipe_passes_a_sound_network_and_fails_a_broken_one() {
    let forge = Forge::new();
    let recipe = steps(&recipe("check.yml"));
    let judge = step(&recipe, "Judge");
    assert_eq!(forge.run(&judge.script, &judge.env).0, 0);
    let sarif = step(&recipe, "Write the findings for the review");
    if check_knows("--output") {
        assert_eq!(forge.run(&sarif.script, &sarif.env).0, 0);
        let text = fs::read_to_string(forge.path("temp/hopwright.sarif")).expect("written");
        assert_eq!(serde_json::from_str::<Value>(&text).expect("JSON")["version"], "2.1.0");
    }
    let hop = forge.path("clone/hops/ridge.yaml");
    let text = fs::read_to_string(&hop).expect("there");
    fs::write(&hop, text.replace("conductor: 16 mm2", "conductor: 6 mm2")).expect("written");
    let (code, said) = forge.run(&judge.script, &judge.env);
    assert_eq!(code, 1);
    let line = text.lines().position(|line| line.contains("conductor: 16 mm2")).expect("there") + 1;
    assert!(said.contains(&format!("hops/ridge.yaml:{line}:18: error[ground-conductor-too-thin]")), "{said}");
}

#[test]
fn the_check_recipe_judges_a_change_by_the_gate_of_the_branch_it_goes_to() {
    let forge = Forge::new();
    let recipe = steps(&recipe("check.yml"));
    let (own, by_base) = (step(&recipe, "Judge"), step(&recipe, "Judge by the gate of the branch it goes to"));
    assert_eq!(by_base.env["BASE"], "origin/${{ github.base_ref }}");
    let env = compare_env(&by_base.env);
    assert_eq!(forge.run(&by_base.script, &env).0, 0);
    // A worse hop, with a baseline brought along that knows it.
    let hop = forge.path("clone/hops/ridge.yaml");
    let text = fs::read_to_string(&hop).expect("there");
    fs::write(&hop, text.replace("transmit_power: 10 dBm", "transmit_power: 0 dBm")).expect("written");
    assert_eq!(forge.run("hopwright baseline create baseline.json", &BTreeMap::new()).0, 0);
    assert_eq!(forge.run(&own.script, &own.env).0, 0);
    let (code, said) = forge.run(&by_base.script, &env);
    assert_eq!(code, 1, "{said}");
    assert!(said.contains("error[fade-margin-below-objective]"), "{said}");
}

#[test]
fn the_owners_named_are_those_of_all_that_makes_the_gate() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("examples/ci/CODEOWNERS");
    let text = fs::read_to_string(path).expect("there");
    let lines: Vec<Vec<&str>> = text
        .lines()
        .filter(|line| !line.is_empty() && !line.starts_with('#'))
        .map(|line| line.split_whitespace().collect())
        .collect();
    assert!(lines.iter().all(|line| line.len() == 2 && line[1].starts_with("@example/")), "{lines:?}");
    assert_eq!(lines[0], ["*", "@example/designers"], "the last line that fits counts");
    for path in ["network.yaml", "/waivers/", "/baseline.json", "/.github/", "CODEOWNERS"] {
        assert!(lines[1..].iter().any(|line| line == &[path, "@example/gate"]), "{path}");
    }
}

#[test]
fn the_compare_recipe_makes_one_comment_and_replaces_it() {
    let forge = Forge::new();
    let recipe = steps(&recipe("compare.yml"));
    let compare = step(&recipe, "Compare");
    assert_eq!(compare.env["BASE"], "origin/${{ github.base_ref }}");
    let mut env = compare.env.clone();
    env.insert("BASE".into(), "origin/main".into());
    let (code, said) = forge.run(&compare.script, &env);
    assert_eq!(code, 0, "{said}");
    let comment = fs::read_to_string(forge.path("temp/comment.md")).expect("written");
    assert!(comment.contains("ends.a.height: 8 m → 8.5 m"), "{comment}");
    assert!(fs::metadata(forge.path("temp/compare.json")).is_ok());

    // The forge is played by a program that knows no comment at first, and then that one.
    let put = step(&recipe, "Put the comment on the change");
    let log = forge.path("log");
    let body = format!("--field body=@{}", forge.path("temp/comment.md").display());
    for (known, expected) in
        [("", format!("--method POST list {body}")), ("17", format!("--method PATCH one/17 {body}"))]
    {
        let list = format!("case \"$*\" in *--jq*) echo '{known}';; *) echo \"$*\" > '{}';; esac\n", log.display());
        forge.program("gh", &list);
        let mut env = put.env.clone();
        env.extend([("COMMENTS", "list"), ("COMMENT", "one")].map(|(name, value)| (name.to_owned(), value.to_owned())));
        let (code, said) = forge.run(&put.script, &env);
        assert_eq!(code, 0, "{said}");
        assert_eq!(fs::read_to_string(&log).expect("called").trim(), format!("api {expected}"));
    }

    let hop = forge.path("clone/hops/ridge.yaml");
    let text = fs::read_to_string(&hop).expect("there");
    fs::write(&hop, text.replace("transmit_power: 10 dBm", "transmit_power: -9 dBm")).expect("written");
    assert_eq!(forge.run(&compare.script, &compare_env(&compare.env)).0, 1, "a regression fails the change");
    let comment = fs::read_to_string(forge.path("temp/comment.md")).expect("written all the same");
    assert!(comment.starts_with("**1 of 1 hop changes: 1 now fails; 0 unchanged**"), "{comment}");
}

/// Everything a stranger may commit under the names that recipes use.
fn plant(forge: &Forge) {
    for name in ["comment.md", "compare.json", "hopwright.sarif", "packs/evil.pdf"] {
        let path = forge.path("clone").join(name);
        fs::create_dir_all(path.parent().expect("in a folder")).expect("made");
        fs::write(path, "pwned\n\") | .id, \"pwned").expect("written");
    }
}

#[test]
fn a_committed_comment_is_never_posted() {
    let forge = Forge::new();
    plant(&forge);
    let recipe = steps(&recipe("compare.yml"));
    let (compare, put) = (step(&recipe, "Compare"), step(&recipe, "Put the comment on the change"));
    let log = forge.path("log");
    forge.program("gh", &format!("echo \"$*\" >> '{}'\n", log.display()));
    let mut env = compare.env.clone();
    env.insert("BASE".into(), "origin/no-such-branch".into());
    assert_eq!(forge.run(&compare.script, &env).0, 2, "the comparison dies");
    let (code, said) = forge.run(&put.script, &put.env);
    assert_eq!(code, 0, "{said}");
    assert!(!log.exists(), "nothing was posted: {}", fs::read_to_string(&log).unwrap_or_default());
}

#[test]
fn the_mark_of_the_comment_is_no_part_of_a_program() {
    let forge = Forge::new();
    let recipe = steps(&recipe("compare.yml"));
    let put = step(&recipe, "Put the comment on the change");
    let (log, mark) = (forge.path("log"), "\") | .id, \"pwned");
    fs::write(forge.path("temp/comment.md"), mark).expect("written");
    forge.program("gh", &format!("echo \"$*\" >> '{0}'; echo \"mark: $MARK\" >> '{0}'\n", log.display()));
    assert_eq!(forge.run(&put.script, &put.env).0, 0);
    let said = fs::read_to_string(&log).expect("called");
    assert!(said.contains(&format!("mark: {mark}")), "{said}");
    let query = said.lines().find(|line| line.contains("--jq")).expect("asked");
    assert!(query.contains("contains(env.MARK)") && !query.contains("pwned"), "{query}");
}

#[test]
fn nothing_that_is_kept_or_shown_comes_from_the_checkout() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("examples/ci");
    for name in ["check.yml", "compare.yml", "packs.yml"] {
        let text = fs::read_to_string(folder.join(name)).expect("there");
        for line in
            text.lines().map(str::trim).filter(|line| line.starts_with("path:") || line.starts_with("sarif_file:"))
        {
            assert!(line.contains(": ${{ runner.temp }}/"), "{name}: {line}");
        }
        assert!(text.contains("persist-credentials: false"), "{name}");
    }
}

fn compare_env(env: &BTreeMap<String, String>) -> BTreeMap<String, String> {
    let base = ("BASE".to_owned(), "origin/main".to_owned());
    env.clone().into_iter().chain([base]).collect()
}

#[test]
fn the_packs_recipe_prints_a_pack_for_the_desk_and_one_for_each_end() {
    let forge = Forge::new();
    let recipe = steps(&recipe("packs.yml"));
    let print = step(&recipe, "Print");
    let (code, said) = forge.run(&print.script, &print.env);
    assert_eq!(code, 0, "{said}");
    let packs = fs::read_dir(forge.path("temp/packs")).expect("a folder").count();
    assert_eq!(packs, 3, "{said}");
}

#[test]
fn the_hooks_judge_and_mend_the_files_they_are_given() {
    let forge = Forge::new();
    let hooks = recipe("pre-commit-hooks.yml");
    let hooks = hooks.as_array().expect("a list");
    let entry = |id: &str| {
        let hook = hooks.iter().find(|hook| hook["id"] == id).unwrap_or_else(|| panic!("no hook {id}"));
        assert_eq!(hook["require_serial"], true, "{id}");
        format!("{} hops/ridge.yaml sites/mill.yaml", hook["entry"].as_str().expect("a command"))
    };
    assert_eq!(hooks.len(), 2);
    assert_eq!(forge.run(&entry("hopwright-check"), &BTreeMap::new()).0, 0);
    let hop = forge.path("clone/hops/ridge.yaml");
    let sound = fs::read_to_string(&hop).expect("there");
    fs::write(&hop, sound.replace("height: 8.5 m", "height: 8.5 metres")).expect("written");
    assert_eq!(forge.run(&entry("hopwright-check"), &BTreeMap::new()).0, 1);
    assert_eq!(forge.run(&entry("hopwright-fix"), &BTreeMap::new()).0, 0);
    assert_eq!(fs::read_to_string(&hop).expect("there"), sound);
}

#[test]
fn every_command_of_the_recipes_is_run_here_or_installs_the_program() {
    let names = [("check.yml", 4), ("compare.yml", 3), ("packs.yml", 2)];
    for (name, count) in names {
        let steps = steps(&recipe(name));
        assert_eq!(steps.len(), count, "{name}: a new step wants a test");
        let install = step(&steps, "Install");
        // Only packs need the press, which is most of the building.
        let press = if name == "packs.yml" { "" } else { " --no-default-features" };
        assert!(install.script.starts_with(&format!("cargo install --locked{press} --git \"$HOPWRIGHT\"")), "{name}");
        assert_eq!(install.folder, "${{ runner.temp }}", "{name}: a checkout may choose the compiler");
        // What a change says must never become part of a command.
        assert!(steps.iter().all(|step| !step.script.contains("${{")), "{name}");
    }
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("examples/ci");
    assert_eq!(fs::read_dir(folder).expect("a folder").count(), names.len() + 2, "the hooks and the owners beside");
}
