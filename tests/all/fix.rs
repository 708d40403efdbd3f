//! Fixes a program makes: what they change, what they leave, and that they never make anything worse.

use std::collections::BTreeSet;
use std::fs;
use std::io::Write as _;
use std::process::{Command, Stdio};

use crate::fixture::{Bench, Edit, edits, folders, tests_folder};
use hopwright::finding::Finding;
use hopwright::fix::{Fixed, diff, fix};
use hopwright::network::Scope;

fn scope(bench: &Bench) -> Scope {
    Scope::of(&[bench.path("")])
}

/// Writes what a fix made.
fn write(fixed: &Fixed) {
    for file in &fixed.files {
        assert_eq!(fs::read_to_string(&file.origin).expect("there"), file.before);
        fs::write(&file.origin, &file.after).expect("writable");
    }
}

fn change(bench: &Bench, file: &str, old: &str, new: &str) {
    let text = fs::read_to_string(bench.path(file)).expect("there");
    assert_eq!(text.matches(old).count(), 1, "{file}: {old}");
    fs::write(bench.path(file), text.replace(old, new)).expect("writable");
}

fn with(file: &str, old: &str, new: &str) -> Bench {
    let bench = Bench::new();
    change(&bench, file, old, new);
    bench
}

fn rules(bench: &Bench) -> Vec<&'static str> {
    bench.judge().findings.iter().map(|finding| finding.rule.name).collect()
}

/// Rule, hop and place of each finding.
fn known(findings: &[Finding]) -> BTreeSet<String> {
    findings
        .iter()
        .map(|finding| {
            let spot = match &finding.labels[0].spot {
                hopwright::finding::Spot::Field(place) => place.route(),
                _ => finding.message.clone(),
            };
            format!("{} {:?} {spot}", finding.rule.name, finding.hop)
        })
        .collect()
}

/// Every edit that breaks something, in rules and in the language.
fn broken() -> Vec<(String, Edit)> {
    let mut list = Vec::new();
    for root in ["rules", "spec"] {
        let root = tests_folder().join(root);
        for rule in folders(&root).into_iter().filter(|name| name != "base") {
            for name in edits(&root.join(&rule)).into_iter().filter(|name| name.starts_with("bad")) {
                list.push((format!("{rule}/{name}"), Edit::read(&root.join(&rule).join(&name).with_extension("edit"))));
            }
        }
    }
    list
}

#[test]
fn a_fix_adds_no_finding_and_finds_nothing_to_do_the_second_time() {
    let mut made = [0, 0];
    for (name, edit) in broken() {
        for all in [false, true] {
            let bench = Bench::edited(&edit);
            let before = known(&bench.judge().findings);
            let fixed = fix(&scope(&bench), all);
            write(&fixed);
            made[usize::from(all)] += fixed.made;
            let after = known(&bench.judge().findings);
            assert!(after.is_subset(&before), "{name}: {:?}", after.difference(&before).collect::<Vec<_>>());
            assert_eq!(fixed.made > 0, after.len() < before.len(), "{name}");
            let again = fix(&scope(&bench), all);
            assert_eq!((again.made, again.files), (0, Vec::new()), "{name}");
        }
    }
    assert!(made[0] >= 3 && made[1] >= made[0] + 3, "{made:?}");
}

#[test]
fn units_keys_and_unquoted_text_are_mended_and_all_else_stays_as_it_is() {
    let bench = Bench::new();
    let hop = "hops/ridge.yaml";
    change(&bench, hop, "    height: 8 m\n", "    heigth:   8   metres   # over the roof\n");
    change(&bench, hop, "indoor: 15 m\n", "indoor: \"15 mtr\"\n");
    change(&bench, "network.yaml", "title: Fellmoor test range", "title: 007 # the range");
    change(&bench, "sites/mill.yaml", "ground_height:", "ground-height:");
    for file in [hop, "network.yaml", "sites/mill.yaml"] {
        let text = fs::read_to_string(bench.path(file)).expect("there").replace('\n', "\r\n");
        fs::write(bench.path(file), text).expect("writable");
    }
    let before = fs::read_to_string(bench.path(hop)).expect("there");
    let fixed = fix(&scope(&bench), false);
    write(&fixed);
    assert_eq!((rules(&bench), fixed.left), (Vec::new(), Vec::new()));
    let after = fs::read_to_string(bench.path(hop)).expect("there");
    let expected = before.replace("heigth:   8   metres ", "height:   8   m ").replace("\"15 mtr\"", "\"15 m\"");
    assert_eq!(after, expected);
    let network = fs::read_to_string(bench.path("network.yaml")).expect("there");
    assert!(network.contains("title: \"007\" # the range\r\n"), "{network}");
    assert!(fs::read_to_string(bench.path("sites/mill.yaml")).expect("there").contains("\r\nground_height: "));
    assert_eq!(fixed.made, 5);
}

#[test]
fn what_could_be_meant_otherwise_is_left() {
    // A letter that is both milli and mega, a comma of thousands, a key that is nearly two, one that stands there already, two that mean one.
    for (file, old, new) in [
        ("hops/ridge.yaml", "transmit_power: 10 dBm", "transmit_power: 10 MW"),
        ("hops/ridge.yaml", "outdoor: 35 m", "outdoor: 1,234 m"),
        ("hops/ridge.yaml", "height: 8 m", "height: 8"),
        ("hops/ridge.yaml", "height: 8 m", "height: 8 m\n    heigth: 9 m"),
        ("hops/ridge.yaml", "height: 8 m", "heigth: 8 m\n    hieght: 9 m"),
        ("hops/ridge.yaml", "a_to_b:", "a_to_a:"),
        ("hops/ridge.yaml", "polarisation: vertical", "polarisation: vertcal"),
    ] {
        let bench = with(file, old, new);
        let before = rules(&bench);
        assert!(!before.is_empty(), "{new}");
        let fixed = fix(&scope(&bench), true);
        assert_eq!((fixed.made, fixed.files), (0, Vec::new()), "{new}");
    }
}

#[test]
fn a_computed_mend_takes_a_person() {
    // 9.33° up is beyond the 5° the bracket gives upright.
    let upright = with("hops/ridge.yaml", "orientation: inverted", "orientation: upright");
    assert_eq!(rules(&upright), ["tilt-out-of-reach"]);
    assert_eq!(fix(&scope(&upright), false).made, 0, "not without being asked to");
    write(&fix(&scope(&upright), true));
    assert_eq!(rules(&upright), [""; 0]);
    let text = fs::read_to_string(upright.path("hops/ridge.yaml")).expect("there");
    assert_eq!(text, fs::read_to_string(Bench::new().path("hops/ridge.yaml")).expect("there"));

    // The same where nothing is written, in a mapping on one line and in one of several.
    for (old, new) in [
        ("bracket:\n      model: tilter\n      orientation: inverted", "bracket: { model: tilter }"),
        ("bracket:\n      model: tilter\n      orientation: inverted", "bracket:\n      model: tilter # the small one"),
    ] {
        let bench = with("hops/ridge.yaml", old, new);
        write(&fix(&scope(&bench), true));
        assert_eq!(rules(&bench), [""; 0], "{new}");
        let text = fs::read_to_string(bench.path("hops/ridge.yaml")).expect("there");
        let expected =
            ["bracket: { model: tilter, orientation: inverted }", "# the small one\n      orientation: inverted\n"];
        assert!(expected.iter().any(|line| text.contains(line)), "{text}");
    }

    let thin = with("hops/ridge.yaml", "conductor: 16 mm2", "conductor: 6 mm2 # as found");
    write(&fix(&scope(&thin), true));
    assert_eq!(rules(&thin), [""; 0]);
    assert!(fs::read_to_string(thin.path("hops/ridge.yaml")).expect("there").contains("conductor: 16 mm2 # as found"));
}

#[test]
fn a_mend_that_would_bring_something_out_is_left_and_said() {
    // Read as it is meant, this height is 1 m above the top of the chimney at 22 m.
    let bench = with("hops/ridge.yaml", "height: 21 m", "height: 23 metres");
    let fixed = fix(&scope(&bench), false);
    assert_eq!(fixed.made, 0);
    assert!(
        fixed.left[0].starts_with("value-not-valid: mending it would bring out antenna-off-support"),
        "{:?}",
        fixed.left
    );
    // Beside another one that does no harm, that one is made.
    change(&bench, "hops/ridge.yaml", "indoor: 15 m", "indoor: 15 metres");
    let fixed = fix(&scope(&bench), false);
    assert_eq!((fixed.made, fixed.left.len()), (1, 1));
}

fn run(bench: &Bench, args: &[&str]) -> (i32, String, String) {
    let mut command = Command::new(env!("CARGO_BIN_EXE_hopwright"));
    let output = command.current_dir(bench.path("")).args(args).output().expect("the program starts");
    let text = |bytes| String::from_utf8(bytes).expect("UTF-8");
    (output.status.code().expect("a code"), text(output.stdout), text(output.stderr))
}

#[test]
fn the_program_shows_a_patch_or_writes_files() {
    let bench = with("hops/ridge.yaml", "    height: 8 m\n", "    heigth: 8 metres # so\n");
    let before = fs::read_to_string(bench.path("hops/ridge.yaml")).expect("there");
    let (code, patch, _) = run(&bench, &["check", "--diff"]);
    assert_eq!(code, 1);
    let mut settings = insta::Settings::new();
    settings.set_snapshot_path(tests_folder().join("fix"));
    settings.set_prepend_module_to_snapshot(false);
    settings.set_omit_expression(true);
    settings.bind(|| insta::assert_snapshot!("patch", patch));
    assert_eq!(fs::read_to_string(bench.path("hops/ridge.yaml")).expect("there"), before, "nothing is written");

    // git takes the patch.
    let patched = with("hops/ridge.yaml", "    height: 8 m\n", "    heigth: 8 metres # so\n");
    let mut git = Command::new("git");
    git.current_dir(patched.path("")).args(["apply", "-p0", "--unsafe-paths", "-"]).stdin(Stdio::piped());
    git.env("GIT_CEILING_DIRECTORIES", patched.path("").parent().expect("a parent"));
    fs::remove_dir(patched.path(".git")).expect("empty");
    let mut child = git.spawn().expect("git starts");
    child.stdin.take().expect("piped").write_all(patch.as_bytes()).expect("taken");
    assert!(child.wait().expect("ends").success());

    let (code, out, err) = run(&bench, &["check", "--fix"]);
    assert_eq!((code, out.as_str()), (0, "1 hop in 8 files: no findings; 1 rule off\n"), "{err}");
    assert_eq!(err, "hopwright: 2 fixes applied in 1 file\n");
    let after = fs::read_to_string(bench.path("hops/ridge.yaml")).expect("there");
    assert_eq!(after, before.replace("heigth: 8 metres", "height: 8 m"));
    assert_eq!(fs::read_to_string(patched.path("hops/ridge.yaml")).expect("there"), after);
    assert_eq!(run(&bench, &["check", "--diff"]), (0, String::new(), String::new()));
}

#[cfg(unix)]
#[test]
fn rights_and_links_stay_and_a_file_that_may_not_be_written_is_not() {
    use std::os::unix::fs::PermissionsExt as _;
    let bench = with("hops/ridge.yaml", "height: 8 m", "height: 8 metres");
    fs::rename(bench.path("hops/ridge.yaml"), bench.path("ridge.txt")).expect("moved");
    std::os::unix::fs::symlink("../ridge.txt", bench.path("hops/ridge.yaml")).expect("linked");
    let rights = |mode| fs::set_permissions(bench.path("ridge.txt"), fs::Permissions::from_mode(mode)).expect("set");
    rights(0o440);
    let (code, _, err) = run(&bench, &["check", "--fix"]);
    assert_eq!(code, 2, "{err}");
    assert!(err.contains("cannot write hops/ridge.yaml"), "{err}");
    rights(0o640);
    assert_eq!(run(&bench, &["check", "--fix"]).0, 0);
    assert!(bench.path("hops/ridge.yaml").is_symlink());
    assert_eq!(fs::metadata(bench.path("ridge.txt")).expect("there").permissions().mode() & 0o777, 0o640);
}

#[test]
fn a_patch_keeps_to_what_changes_however_far_apart() {
    let mended = |before: String, after: String| hopwright::fix::Mended {
        origin: "x.yaml".into(),
        path: "x.yaml".into(),
        before,
        after,
    };
    let lines = (0..40).fold(String::new(), |lines, number| format!("{lines}line {number}\n"));
    let patch =
        diff(&mended(lines.clone(), lines.replace("line 5\n", "LINE\n").replace("line 30\n", "line 30\nmore\n")));
    let heads: Vec<&str> = patch.lines().filter(|line| line.starts_with("@@")).collect();
    assert_eq!(heads, ["@@ -3,7 +3,7 @@", "@@ -29,6 +29,7 @@"]);
    let patch = diff(&mended("a".into(), "b".into()));
    assert_eq!(patch.matches("\\ No newline at end of file").count(), 2);
}
