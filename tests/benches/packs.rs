//! A long run of packs: `cargo bench --bench packs`, or `cargo bench --bench packs -- 200 design` for other numbers.
//!
//! Prints time, processor time and memory as they develop: a leak or a cache that grows shows as a peak that climbs from
//! line to line. Processor time is the figure to compare on a machine that does other things too. Gates nothing.

#[allow(dead_code, reason = "the other bench uses the rest")]
mod synthetic;

use std::fs;
use std::time::Instant;

use hopwright::network::{Scope, Trees};
use hopwright::pack::{HopPacks, Pack, on_presses};
use hopwright::spec::EndName;
use hopwright::verdict::evaluate;
use synthetic::Plan;

/// Ticks of `utime` and `stime` in a second; fixed at 100 in the interface of Linux to programs (proc(5), `USER_HZ`).
const TICKS: f64 = 100.0;

fn main() {
    let words: Vec<String> = std::env::args().skip(1).filter(|word| !word.starts_with("--")).collect();
    let count = words.iter().find_map(|word| word.parse().ok()).unwrap_or(1000_usize);
    let design = words.iter().any(|word| word == "design");
    // Fifty hops of different numbers and words: what is remembered of one pack is of no more use to the next than in a real
    // network, and what all hops hold in memory does not hide what setting takes.
    let folder = tempfile::tempdir().expect("a temporary folder");
    let plan = Plan { hops: 50, seed: 7, faults: false, points: 0 };
    synthetic::write(folder.path(), plan).expect("a written network");
    let evaluation = evaluate(&Scope::of(&[folder.path().to_path_buf()]), HopPacks::of);
    let trees = Trees::of(&evaluation.files);
    let kinds = if design { vec![Pack::Design] } else { EndName::BOTH.map(Pack::Install).to_vec() };
    let of_hop = |hop| kinds.iter().map(move |kind| (hop, *kind));
    let packs: Vec<(&HopPacks, Pack)> = evaluation.hops.iter().flat_map(of_hop).collect();
    println!("packs  wall s  cpu s  packs a second  cpu ms a pack  peak MB");
    let (start, mut done) = (Instant::now(), 0);
    let mut last = (0.0, processor_time());
    // The first pack alone pays for reading templates and fonts.
    for step in std::iter::once(1).chain(std::iter::repeat(count.div_ceil(10).max(1))) {
        let jobs: Vec<_> = packs.iter().copied().cycle().skip(done).take(step.min(count - done)).collect();
        let set = |press: &_, (hop, pack): &(&HopPacks, Pack)| hop.set(press, *pack, false, &trees).is_ok();
        let set = on_presses(&jobs, set).expect("presses");
        assert!(set.iter().all(|set| *set), "every pack can be set");
        done += jobs.len();
        let (wall, cpu) = (start.elapsed().as_secs_f64(), processor_time());
        let number = u32::try_from(jobs.len()).map_or(f64::NAN, f64::from);
        let (rate, each) = (number / (wall - last.0), (cpu - last.1) / number * 1000.0);
        println!("{done:5}  {wall:6.2}  {cpu:5.1}  {rate:14.1}  {each:13.1}  {:>7}", peak());
        last = (wall, cpu);
        if done >= count {
            return;
        }
    }
}

/// Seconds all threads have worked so far; not a number where there is no `/proc`.
fn processor_time() -> f64 {
    let stat = fs::read_to_string("/proc/self/stat").unwrap_or_default();
    // The name of the program, in brackets, may hold spaces.
    let fields = stat.rsplit(')').next().unwrap_or_default().split_whitespace();
    let ticks: Vec<f64> = fields.skip(11).take(2).filter_map(|field| field.parse().ok()).collect();
    if ticks.len() == 2 { (ticks[0] + ticks[1]) / TICKS } else { f64::NAN }
}

/// The most memory held so far.
fn peak() -> String {
    let status = fs::read_to_string("/proc/self/status").unwrap_or_default();
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"));
    let kib = line.and_then(|rest| rest.split_whitespace().next()?.parse::<f64>().ok());
    kib.map_or("?".to_owned(), |kib| format!("{:.0}", kib * 1024.0 / 1e6))
}
