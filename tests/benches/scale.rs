//! Networks of real size through the built program: `cargo bench --bench scale`, or with the names of rows after `--`.
//!
//! Each row is the least of a few runs as a ratio to something measured beside it, with the peak of memory. A ratio holds
//! on any machine; a time alone would prove nothing. `-- --program FILE` measures another build, `-- --write HOPS FOLDER`
//! writes a network for a profiler to look at. Gates nothing.

#[allow(dead_code, reason = "the other benches use the rest")]
mod synthetic;

use std::ffi::OsStr;
use std::fs::{self, File};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use granit_parser::Parser;
use hopwright::air::Air;
use hopwright::finding::Findings;
use hopwright::network::{self, Scope};
use pdf_extract::Document;
use rayon::prelude::*;
use synthetic::Plan;
use tempfile::TempDir;
use walkdir::WalkDir;

/// Ticks of processor time in a second; fixed at 100 in the interface of Linux to programs (proc(5), `USER_HZ`).
const TICKS: f64 = 100.0;

fn main() {
    let mut words: Vec<String> = std::env::args().skip(1).filter(|word| word != "--bench").collect();
    match words.iter().map(String::as_str).collect::<Vec<_>>()[..] {
        ["--parse", folder] => return parse(Path::new(folder)),
        ["--write", hops, folder] => return write(hops.parse().expect("a number of hops"), Path::new(folder)),
        _ => {}
    }
    let mut program = PathBuf::from(env!("CARGO_BIN_EXE_hopwright"));
    if let Some(at) = words.iter().position(|word| word == "--program") {
        program = words.drain(at..=at + 1).nth(1).expect("a file after --program").into();
    }
    let bench = Bench { program, words };
    println!("{:<58} {:>6}  {:>7}  {:>7}  {:>7}  {:>9}", "row", "ratio", "wall s", "cpu s", "peak MB", "output kB");
    bench.size();
    bench.air();
    bench.slips();
    bench.one_pack();
    bench.all_packs();
    bench.sheets();
    bench.plans();
    bench.comparisons();
}

/// What the bare parser takes: every event of every file, on as many threads as the program has.
fn parse(folder: &Path) {
    let files = WalkDir::new(folder).into_iter().filter_map(Result::ok).filter(|entry| entry.file_type().is_file());
    let paths: Vec<PathBuf> = files.map(walkdir::DirEntry::into_path).collect();
    let events = |path: &PathBuf| Parser::new_from_str(&fs::read_to_string(path).expect("text")).count();
    let count: usize = paths.par_iter().map(events).sum();
    println!("{count}");
}

/// Seconds that it takes to know what every receiver of a network hears, once its hops are known.
fn heard(folder: &Path) -> f64 {
    let loaded = network::load(&Scope::of(&[folder.to_path_buf()]));
    let library = loaded.libraries.first().expect("a network");
    let hops = network::resolve(library, &mut Findings::default());
    let start = Instant::now();
    let air = Air::of(&hops, &library.neighbours.documents);
    let count: usize = air.stations().par_iter().map(|station| air.heard_by(station).from.len()).sum();
    let took = start.elapsed().as_secs_f64();
    assert!(count > 0, "somebody is heard");
    took
}

/// What one run of a program took.
#[derive(Clone, Copy)]
struct Run {
    wall: f64,
    processor: f64,
    peak: f64,
    output: f64,
}

struct Bench {
    program: PathBuf,
    words: Vec<String>,
}

impl Bench {
    fn wants(&self, row: &str) -> bool {
        self.words.is_empty() || self.words.iter().any(|word| row == word)
    }

    /// The quickest of some runs of the program, and of another thing to hold it against, by turns.
    fn pair(&self, times: usize, one: &Task<'_>, other: &Task<'_>) -> [Run; 2] {
        let runs = (0..times).map(|_| [one.run(&self.program), other.run(&self.program)]);
        runs.reduce(|best, next| [0, 1].map(|at| if next[at].wall < best[at].wall { next[at] } else { best[at] }))
            .expect("at least one run")
    }

    fn size(&self) {
        if !self.wants("size") {
            return;
        }
        let small = made(10_000);
        let arguments = [OsStr::new("--parse"), small.path().as_os_str()];
        let bare = Task { bare: true, ..Task::of(&small, &arguments) };
        let check = Task::of(&small, &["check", "--quiet", "."]);
        let [ten, parsed] = self.pair(5, &check, &bare);
        row("check 10,000 hops / a bare parse of their files", ten, parsed);
        let large = made(100_000);
        let hundred = Task::of(&large, &["check", "--quiet", "."]).run(&self.program);
        row("check 100,000 hops / 10,000", hundred, ten);
    }

    /// What every receiver hears, by itself and in the whole of `check`.
    fn air(&self) {
        if !self.wants("air") {
            return;
        }
        let [small, large] = [10_000, 100_000].map(made);
        let [ten, hundred] = [&small, &large].map(|network| {
            let runs = (0..3).map(|_| heard(network.path()));
            runs.fold(f64::INFINITY, f64::min)
        });
        let check = Task::of(&small, &["check", "--quiet", "."]).run(&self.program);
        println!(
            "{:<58} {:>6.2}  {ten:>7.2}",
            "who hears whom, 10,000 hops / the rest of check",
            ten / (check.wall - ten)
        );
        println!("{:<58} {:>6.2}  {hundred:>7.2}", "who hears whom, 100,000 hops / 10,000", hundred / ten);
    }

    /// One letter wrong in every reference to a site.
    fn slips(&self) {
        if !self.wants("slips") {
            return;
        }
        let (clean, slipped) = (made(10_000), made(10_000));
        for number in 0..10_000 {
            let path = slipped.path().join(format!("hops/h{number}.yaml"));
            let text = fs::read_to_string(&path).expect("a hop");
            fs::write(&path, text.replace("site: s", "site: z")).expect("a hop");
        }
        let check = ["check", "--quiet", "."];
        let [wrong, right] = self.pair(3, &Task::of(&slipped, &check), &Task::of(&clean, &check));
        row("check 10,000 hops, every site reference wrong / clean", wrong, right);
    }

    fn one_pack(&self) {
        if !self.wants("one-pack") {
            return;
        }
        let (many, few) = (made(800), made(5));
        let install = ["pack", "install", "h3/a", "--no-progress", "--out", "out"];
        let [one, other] = self.pair(5, &Task::of(&many, &install), &Task::of(&few, &install));
        row("pack install of an end of 800 hops / of 5", one, other);
    }

    fn all_packs(&self) {
        if !self.wants("all-packs") {
            return;
        }
        let (many, few) = (made(1000), made(100));
        for kind in ["install", "design"] {
            let pack = ["pack", kind, "--no-progress", "--out", "out"];
            let [all, some] = self.pair(1, &Task::of(&many, &pack), &Task::of(&few, &pack));
            row(&format!("pack {kind} of 1,000 hops / of 100"), all, some);
            println!("{:<58} {:>6.0}", "  pages a second", f64::from(pages(&many.path().join("out"), kind)) / all.wall);
        }
    }

    fn sheets(&self) {
        if !self.wants("sheets") {
            return;
        }
        let network = made(1000);
        let check = Task::of(&network, &["check", "--quiet", "."]);
        let sheet = ["sheet", "--format", "json"];
        let [values, judged] = self.pair(3, &Task::of(&network, &sheet), &check);
        row("sheet --format json of 1,000 hops / check", values, judged);
        let [sourced, judged] = self.pair(3, &Task::of(&network, &[&sheet[..], &["--sources"]].concat()), &check);
        row("the same with --sources / check", sourced, judged);
    }

    fn plans(&self) {
        if !self.wants("plans") {
            return;
        }
        let network = made(1000);
        let check = Task::of(&network, &["check", "--quiet", "."]);
        let [listed, judged] = self.pair(3, &Task::of(&network, &["plan"]), &check);
        row("plan of 1,000 hops / check", listed, judged);
        let [assigned, judged] = self.pair(1, &Task::of(&network, &["plan", "--assign"]), &check);
        row("plan --assign of 1,000 hops / check", assigned, judged);
    }

    fn comparisons(&self) {
        if !self.wants("compare") {
            return;
        }
        let network = made(2400);
        committed(&network);
        let check = Task::of(&network, &["check", "--quiet", "."]);
        let compare = Task::of(&network, &["compare", "HEAD"]);
        edit(&network.path().join("hops/h7.yaml"), "height: ", "height: 1");
        let [one, judged] = self.pair(3, &compare, &check);
        row("compare 2,400 hops, one edited / check", one, judged);
        another_antenna(&network, 2400);
        committed(&network);
        edit(&network.path().join("equipment.yaml"), "wet_loss: 1.7 dB", "wet_loss: 1.8 dB");
        let [many, judged] = self.pair(3, &compare, &check);
        row("compare 2,400 hops, 800 touched by a library / check", many, judged);
    }
}

/// A program and what to ask of it.
struct Task<'a> {
    folder: &'a Path,
    arguments: Vec<&'a OsStr>,
    /// Whether this bench itself runs, as the bare parser.
    bare: bool,
}

impl<'a> Task<'a> {
    fn of<W: AsRef<OsStr> + ?Sized>(network: &'a TempDir, arguments: &'a [&'a W]) -> Self {
        Self { folder: network.path(), arguments: arguments.iter().map(|word| (*word).as_ref()).collect(), bare: false }
    }

    /// Runs it to its end. What it held at most is looked up while it runs.
    fn run(&self, program: &Path) -> Run {
        let itself = std::env::current_exe().expect("this bench");
        let output = tempfile::NamedTempFile::new().expect("a temporary file");
        let stdout = Stdio::from(File::create(output.path()).expect("a file"));
        let start = Instant::now();
        let mut child = Command::new(if self.bare { &itself } else { program })
            .args(&self.arguments)
            .current_dir(self.folder)
            .stdout(stdout)
            .stderr(Stdio::null())
            .spawn()
            .expect("a program that starts");
        let process = PathBuf::from(format!("/proc/{}", child.id()));
        let mut peak = 0.0_f64;
        let processor = loop {
            peak = peak.max(high_water(&process));
            // One that has ended stays listed until it is waited for.
            if let Some(processor) = ended(&process) {
                break processor;
            }
            std::thread::sleep(Duration::from_millis(2));
        };
        let wall = start.elapsed().as_secs_f64();
        let exit = child.wait().expect("an end");
        assert!(exit.code().is_some_and(|code| code < 2), "{:?} ended with {exit}", self.arguments);
        #[expect(clippy::cast_precision_loss, reason = "below 2^52")]
        let output = output.path().metadata().expect("a file").len() as f64;
        Run { wall, processor, peak, output }
    }
}

/// The most memory a process has held, in bytes.
fn high_water(process: &Path) -> f64 {
    let status = fs::read_to_string(process.join("status")).unwrap_or_default();
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"));
    line.and_then(|rest| rest.split_whitespace().next()?.parse::<f64>().ok()).map_or(0.0, |kib| kib * 1024.0)
}

/// Seconds of processor time of a process that has ended.
fn ended(process: &Path) -> Option<f64> {
    let stat = fs::read_to_string(process.join("stat")).unwrap_or_default();
    // The name of the program, in brackets, may hold spaces.
    let fields: Vec<&str> = stat.rsplit(')').next()?.split_whitespace().collect();
    let ticks = |at: usize| fields.get(at)?.parse::<f64>().ok();
    (*fields.first()? == "Z").then(|| Some((ticks(11)? + ticks(12)?) / TICKS))?
}

fn row(name: &str, run: Run, held_against: Run) {
    let Run { wall, processor, peak, output } = run;
    let ratio = wall / held_against.wall;
    println!("{name:<58} {ratio:>6.2}  {wall:>7.2}  {processor:>7.2}  {:>7.0}  {:>9.0}", peak / 1e6, output / 1e3);
}

/// The pages of the packs of a kind in a folder.
fn pages(folder: &Path, kind: &str) -> u32 {
    let files = WalkDir::new(folder).into_iter().filter_map(Result::ok).map(walkdir::DirEntry::into_path);
    let packs: Vec<PathBuf> = files.filter(|path| path.to_string_lossy().ends_with(&format!("-{kind}.pdf"))).collect();
    let of = |path: &PathBuf| Document::load(path).expect("a PDF").get_pages().len();
    packs.par_iter().map(|path| u32::try_from(of(path)).expect("few")).sum()
}

fn made(hops: usize) -> TempDir {
    let folder = tempfile::tempdir().expect("a temporary folder");
    write(hops, folder.path());
    folder
}

fn write(hops: usize, folder: &Path) {
    synthetic::write(folder, Plan { hops, seed: 7, faults: false, points: 0 }).expect("a written network");
}

fn edit(path: &Path, from: &str, to: &str) {
    let text = fs::read_to_string(path).expect("a file");
    assert!(text.contains(from), "{} says {from}", path.display());
    fs::write(path, text.replacen(from, to, 1)).expect("a file");
}

/// Gives every third hop an antenna of its own kind.
fn another_antenna(network: &TempDir, hops: usize) {
    let equipment = network.path().join("equipment.yaml");
    let text = fs::read_to_string(&equipment).expect("equipment");
    let dish = text.split("---\n").find(|document| document.contains("id: dish")).expect("an antenna");
    let other = dish.replace("id: dish", "id: other-dish").replace("wet_loss: 1.5 dB", "wet_loss: 1.7 dB");
    fs::write(equipment, format!("{text}---\n{other}")).expect("equipment");
    for number in (0..hops).step_by(3) {
        let path = network.path().join(format!("hops/h{number}.yaml"));
        let text = fs::read_to_string(&path).expect("a hop");
        fs::write(&path, text.replace("antenna: dish", "antenna: other-dish")).expect("a hop");
    }
}

/// Commits the folder as it stands, as nobody and with no settings of this machine.
fn committed(network: &TempDir) {
    let author = ["-c", "user.name=bench", "-c", "user.email=bench@localhost"];
    for arguments in [&["init", "--quiet"][..], &["add", "."], &["commit", "--quiet", "-m", "a state"]] {
        let mut git = Command::new("git");
        let git = git.current_dir(network.path()).env("GIT_CONFIG_GLOBAL", "/dev/null").args(author).args(arguments);
        assert!(git.status().expect("git").success(), "git {arguments:?}");
    }
}
